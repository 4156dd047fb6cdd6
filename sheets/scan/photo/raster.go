package photo

import (
	"cutbinder/layout/page"
	"cutbinder/layout/png"
)

// A raster is a label as a printer puts it on paper, in levels of grey.
type raster struct {
	pix    []uint8
	w, h   int
	perMM  float64
	x0, y0 float64 // where the label's upper left corner is, in pixels
}

// print draws a label with so many pixels a millimetre. The page it is drawn on ends
// where the label does.
func (l *Label) print(perMM float64) *raster {
	sheet := page.Page{Paper: page.Paper{W: l.Box.Right(), H: l.Box.Bottom()}, Items: l.Items}
	r := &raster{w: int(mm(sheet.Paper.W) * perMM), h: int(mm(sheet.Paper.H) * perMM)}
	r.perMM = float64(r.w) / mm(sheet.Paper.W)
	r.x0, r.y0 = mm(l.Box.X)*r.perMM, mm(l.Box.Y)*r.perMM
	img := png.Draw(&sheet, r.w, r.h)
	r.pix = make([]uint8, r.w*r.h)
	for i := range r.pix {
		c := img.Pix[4*i : 4*i+3]
		r.pix[i] = uint8((299*int(c[0]) + 587*int(c[1]) + 114*int(c[2])) / 1000)
	}
	return r
}

// at is the level at a place on the label, in millimetres from its corner.
func (r *raster) at(x, y float64) float32 {
	x, y = x*r.perMM+r.x0-0.5, y*r.perMM+r.y0-0.5
	x, y = min(max(x, 0), float64(r.w)-1.001), min(max(y, 0), float64(r.h)-1.001)
	i, j := int(x), int(y)
	fx, fy := float32(x-float64(i)), float32(y-float64(j))
	k := j*r.w + i
	top := float32(r.pix[k])*(1-fx) + float32(r.pix[k+1])*fx
	bottom := float32(r.pix[k+r.w])*(1-fx) + float32(r.pix[k+r.w+1])*fx
	return top*(1-fy) + bottom*fy
}
