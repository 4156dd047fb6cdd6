package png

import (
	"bytes"
	"image"
	"io"
	"testing"

	"cutbinder/fonts"
	"cutbinder/layout/length"
	"cutbinder/layout/page"
)

const mm = length.MM

// drawn draws items on paper of 40 x 30 mm at 10 pixels a millimetre.
func drawn(items ...page.Item) *image.RGBA {
	p := &page.Page{Paper: page.Paper{W: 40 * mm, H: 30 * mm}, Items: items}
	return Draw(p, 400, 300)
}

// dark is the area of ink in square pixels, and the box it lies in.
func dark(img *image.RGBA) (area float64, box image.Rectangle) {
	for y := range img.Rect.Dy() {
		for x := range img.Rect.Dx() {
			if c := img.RGBAAt(x, y); c.R < 255 {
				area += 1 - float64(c.R)/255
				box = box.Union(image.Rect(x, y, x+1, y+1))
			}
		}
	}
	return area, box
}

// TestInk: every item leaves as much ink as its measures say, where they say.
func TestInk(t *testing.T) {
	black := page.Stroke{Width: mm, Ink: page.Black}
	triangle := []page.Point{{X: 10 * mm, Y: 5 * mm}, {X: 20 * mm, Y: 15 * mm}, {X: 10 * mm, Y: 15 * mm}}
	tests := []struct {
		name string
		item page.Item
		area float64
		box  image.Rectangle
	}{
		{"line", page.Line{A: page.Point{X: 5 * mm, Y: 10 * mm}, B: page.Point{X: 25 * mm, Y: 10 * mm}, Stroke: black}, 2000, image.Rect(50, 95, 250, 105)},
		{"slanting line", page.Line{A: page.Point{X: 5 * mm, Y: 5 * mm}, B: page.Point{X: 15 * mm, Y: 15 * mm}, Stroke: black}, 1414.2, image.Rect(46, 46, 154, 154)},
		{"ground", page.Rect{Box: page.Box{X: 5 * mm, Y: 6 * mm, W: 7 * mm, H: 8 * mm}, Fill: page.Black}, 5600, image.Rect(50, 60, 120, 140)},
		{"outline", page.Rect{Box: page.Box{X: 5 * mm, Y: 6 * mm, W: 7 * mm, H: 8 * mm}, Stroke: black}, 80*90 - 60*70, image.Rect(45, 55, 125, 145)},
		{"triangle", page.Polygon{Points: triangle, Fill: page.Black}, 5000, image.Rect(100, 50, 200, 150)},
		// A band 10 wide along 100, 100 and 141.4: the corners' mitres add what
		// the inside lacks, and the area is the way round times the width.
		{"outlined triangle", page.Polygon{Points: triangle, Stroke: black}, 3414.2, image.Rect(95, 38, 212, 155)},
		{"code", page.Code{At: page.Point{X: 4 * mm, Y: 4 * mm}, Module: mm, Quiet: 4, Size: 2, Dark: []bool{true, false, true, true}}, 300, image.Rect(80, 80, 100, 100)},
		{"off the paper", page.Rect{Box: page.Box{X: 50 * mm, Y: 6 * mm, W: 7 * mm, H: 8 * mm}, Fill: page.Black}, 0, image.Rectangle{}},
	}
	for _, tt := range tests {
		area, box := dark(drawn(tt.item))
		if area < tt.area*0.99-1 || area > tt.area*1.01+1 {
			t.Errorf("%s: %.1f square pixels of ink, want %.1f", tt.name, area, tt.area)
		}
		if box != tt.box {
			t.Errorf("%s: ink in %v, want %v", tt.name, box, tt.box)
		}
	}
}

// TestDashes: a dashed line leaves the share of ink its pattern says, going on
// round the corners of an outline.
func TestDashes(t *testing.T) {
	st := page.Stroke{Width: mm, Ink: page.Black, Dash: page.Dashed}
	on, off := float64(st.Dash.Pattern()[0]), float64(st.Dash.Pattern()[1])
	area, _ := dark(drawn(page.Rect{Box: page.Box{X: 5 * mm, Y: 5 * mm, W: 30 * mm, H: 20 * mm}, Stroke: st}))
	if want := 10000 * on / (on + off); area < want*0.97 || area > want*1.03 {
		t.Errorf("%.0f square pixels of ink, want about %.0f", area, want)
	}
}

// TestType: the ink of type lies in its bounds, and fills most of their height.
func TestType(t *testing.T) {
	st := page.NewStyle(fonts.Default())
	p := page.NewPen(st, page.Box{W: 40 * mm, H: 30 * mm})
	p.Text(page.Box{X: 4 * mm, Y: 4 * mm, W: 34 * mm, H: 10 * mm}, st.Title, page.Left, "", "Hg 3½")
	_, box := dark(drawn(p.Items()...))
	b := p.Items()[0].Bounds()
	want := image.Rect(int(b.X*10/mm), int(b.Y*10/mm), int(b.Right()*10/mm)+1, int(b.Bottom()*10/mm)+1)
	if !box.In(want) || box.Dy() < want.Dy()-2 || box.Dx() < want.Dx()*9/10 {
		t.Errorf("ink in %v, bounds %v", box, want)
	}
}

// TestWrite: sizes follow from the width; what is too large is refused.
func TestWrite(t *testing.T) {
	p := &page.Page{Paper: page.A4}
	var b bytes.Buffer
	if err := Write(&b, p, 210); err != nil {
		t.Fatal(err)
	}
	c, _, err := image.DecodeConfig(&b)
	if err != nil || c.Width != 210 || c.Height != 297 {
		t.Errorf("%v, %v", c, err)
	}
	for _, width := range []int{0, -1, 15_000, 20_001} {
		if Write(io.Discard, p, width) == nil {
			t.Errorf("a picture %d pixels wide is written", width)
		}
	}
}
