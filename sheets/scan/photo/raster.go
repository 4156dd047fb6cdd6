package photo

import (
	"image"
	"image/color"
	"image/draw"

	"cutbinder/fonts"
	"cutbinder/layout/length"
	"cutbinder/layout/page"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/image/vector"
)

// A raster draws a page's items in grey, so many pixels a millimetre.
type raster struct {
	dst   *image.Gray
	from  page.Point // the page's point at the upper left corner
	scale float64    // pixels a unit of length
	faces map[*fonts.Face]*sfnt.Font
	buf   sfnt.Buffer
}

// newRaster is a white area of a page.
func newRaster(area page.Box, perMM float64) *raster {
	scale := perMM / float64(length.MM)
	r := &raster{from: page.Point{X: area.X, Y: area.Y}, scale: scale, faces: map[*fonts.Face]*sfnt.Font{}}
	r.dst = image.NewGray(image.Rect(0, 0, int(float64(area.W)*scale)+1, int(float64(area.H)*scale)+1))
	draw.Draw(r.dst, r.dst.Rect, image.White, image.Point{}, draw.Src)
	return r
}

func (r *raster) at(p page.Point) point {
	return point{float64(p.X-r.from.X) * r.scale, float64(p.Y-r.from.Y) * r.scale}
}

// item draws what has ink: broken lines are drawn whole and hatches not at all,
// for no label has them where it matters to a camera.
func (r *raster) item(it page.Item) {
	switch it := it.(type) {
	case page.Text:
		for _, run := range it.Runs {
			r.run(it.Base, run)
		}
	case page.Line:
		r.line(it.A, it.B, it.Stroke)
	case page.Rect:
		r.fill(corners(it.Box), it.Fill)
		r.outline(corners(it.Box), it.Stroke)
	case page.Polygon:
		r.fill(it.Points, it.Fill)
		r.outline(it.Points, it.Stroke)
	case page.Code:
		for _, b := range it.Runs() {
			r.fill(corners(b), page.Black)
		}
	}
}

func corners(b page.Box) []page.Point {
	return []page.Point{{X: b.X, Y: b.Y}, {X: b.Right(), Y: b.Y}, {X: b.Right(), Y: b.Bottom()}, {X: b.X, Y: b.Bottom()}}
}

func (r *raster) outline(points []page.Point, st page.Stroke) {
	for i, p := range points {
		r.line(p, points[(i+1)%len(points)], st)
	}
}

// line draws an upright or a level line as a box, which is all that labels have;
// others are left out.
func (r *raster) line(a, b page.Point, st page.Stroke) {
	if st.Visible() && (a.X == b.X || a.Y == b.Y) {
		box := page.Box{X: min(a.X, b.X), Y: min(a.Y, b.Y), W: max(a.X, b.X) - min(a.X, b.X), H: max(a.Y, b.Y) - min(a.Y, b.Y)}
		r.fill(corners(box.Inset(-st.Width/2)), st.Ink)
	}
}

func (r *raster) fill(points []page.Point, ink page.Ink) {
	if ink == page.NoInk || len(points) < 3 {
		return
	}
	at := make([]point, len(points))
	for i, p := range points {
		at[i] = r.at(p)
	}
	r.paint(bounds(at), ink, func(v *vector.Rasterizer, dx, dy float32) {
		v.MoveTo(float32(at[0].x)-dx, float32(at[0].y)-dy)
		for _, p := range at[1:] {
			v.LineTo(float32(p.x)-dx, float32(p.y)-dy)
		}
		v.ClosePath()
	})
}

// paint draws one shape; path draws it moved so that the box is at the origin.
func (r *raster) paint(box image.Rectangle, ink page.Ink, path func(v *vector.Rasterizer, dx, dy float32)) {
	clip := box.Intersect(r.dst.Rect)
	if clip.Empty() {
		return
	}
	v := vector.NewRasterizer(clip.Dx(), clip.Dy())
	path(v, float32(clip.Min.X), float32(clip.Min.Y))
	v.Draw(r.dst, clip, image.NewUniform(color.Gray{Y: uint8(ink.Luma())}), image.Point{})
}

func bounds(points []point) image.Rectangle {
	x0, y0, x1, y1 := points[0].x, points[0].y, points[0].x, points[0].y
	for _, p := range points {
		x0, y0, x1, y1 = min(x0, p.x), min(y0, p.y), max(x1, p.x), max(y1, p.y)
	}
	return image.Rect(int(x0)-1, int(y0)-1, int(x1)+2, int(y1)+2)
}

// run draws a run of type, glyph by glyph.
func (r *raster) run(base page.Point, run page.Run) {
	face := r.faces[run.Face]
	if face == nil {
		parsed, err := sfnt.Parse(run.Face.TTF())
		if err != nil {
			return // drawn without: a camera looks for the square code
		}
		face = parsed
		r.faces[run.Face] = face
	}
	em := length.Length(run.Face.Metrics().UnitsPerEm)
	pen := page.Point{X: base.X + run.X, Y: base.Y - run.Rise}
	for _, ch := range run.S {
		r.glyph(face, ch, r.at(pen), float64(run.Size)*r.scale, run.Ink)
		pen.X += run.Size*length.Length(run.Face.Advance(ch))/em + run.Track
	}
}

func (r *raster) glyph(face *sfnt.Font, ch rune, at point, size float64, ink page.Ink) {
	index, err := face.GlyphIndex(&r.buf, ch)
	if err != nil || index == 0 {
		return
	}
	ppem := fixed.Int26_6(size * 64)
	box, _, err := face.GlyphBounds(&r.buf, index, ppem, font.HintingNone)
	if err != nil || box.Empty() {
		return
	}
	segments, err := face.LoadGlyph(&r.buf, index, ppem, nil)
	if err != nil {
		return
	}
	place := image.Rect(box.Min.X.Floor()-1, box.Min.Y.Floor()-1, box.Max.X.Ceil()+2, box.Max.Y.Ceil()+2).Add(image.Pt(int(at.x), int(at.y)))
	r.paint(place, ink, func(v *vector.Rasterizer, dx, dy float32) {
		for _, s := range segments {
			to := func(i int) (x, y float32) {
				return float32(s.Args[i].X)/64 + float32(at.x) - dx, float32(s.Args[i].Y)/64 + float32(at.y) - dy
			}
			x, y := to(0)
			switch s.Op {
			case sfnt.SegmentOpMoveTo:
				v.ClosePath()
				v.MoveTo(x, y)
			case sfnt.SegmentOpLineTo:
				v.LineTo(x, y)
			case sfnt.SegmentOpQuadTo:
				ex, ey := to(1)
				v.QuadTo(x, y, ex, ey)
			}
		}
		v.ClosePath()
	})
}
