package pdf

import (
	"fmt"
	"slices"

	"github.com/signintech/gopdf"

	"cutbinder/fonts"
	"cutbinder/layout/page"
)

// item draws one item.
func (x *writer) item(it page.Item) error {
	switch it := it.(type) {
	case page.Text:
		return x.text(it)
	case page.Line:
		if it.Stroke.Visible() {
			x.stroke(it.Stroke)
			x.line(it.A, it.B)
		}
	case page.Rect:
		x.rect(it)
	case page.Polygon:
		x.polygon(it)
	case page.Code:
		x.code(it)
	case page.Link:
		if x.anchors[it.To] {
			x.gp.AddInternalLink(it.To, pt(it.Box.X), pt(it.Box.Y), pt(it.Box.W), pt(it.Box.H))
		}
	case page.Anchor:
		if it.Name != "" {
			// the library moves an anchor up by the font size
			x.gp.SetXY(pt(it.At.X), pt(it.At.Y)+x.size)
			x.gp.SetAnchor(it.Name)
		}
	}
	return nil
}

// text draws a line of type, run by run.
func (x *writer) text(t page.Text) error {
	for _, r := range t.Runs {
		x.size = pt(r.Size)
		if err := x.gp.SetFont(x.family[r.Face], "", x.size); err != nil {
			return err
		}
		if err := x.covers(r); err != nil {
			return err
		}
		if err := x.gp.SetCharSpacing(pt(r.Track)); err != nil {
			return err
		}
		x.textInk(r.Ink)
		x.gp.SetXY(pt(t.Base.X+r.X), pt(t.Base.Y-r.Rise))
		if err := x.gp.Text(r.S); err != nil {
			return err
		}
	}
	return nil
}

// covers checks that the library finds the characters of a run in the face that
// is set, for it would draw a space in their place. It reads other parts of a
// character map than others do; the embedded faces are known to agree.
func (x *writer) covers(r page.Run) error {
	if slices.Contains(fonts.Default().All(), r.Face) {
		return nil
	}
	for _, ch := range r.S {
		if ok, err := x.gp.IsCurrFontContainGlyph(ch); !ok || err != nil {
			return fmt.Errorf("typeface %s cannot be embedded: its character map hides %q (U+%04X)", r.Face.Name(), ch, ch)
		}
	}
	return nil
}

// textInk sets the ink of type. The library writes greys and colours by
// different ways, and text takes the way used last.
func (x *writer) textInk(k page.Ink) {
	r, g, b := k.RGB()
	if r == g && g == b {
		x.gp.SetGrayFill(float64(r) / 255)
		return
	}
	x.gp.SetTextColor(r, g, b)
}

// fill sets the ink of areas.
func (x *writer) fill(k page.Ink) {
	r, g, b := k.RGB()
	if r == g && g == b {
		x.gp.SetGrayFill(float64(r) / 255)
		return
	}
	x.gp.SetFillColor(r, g, b)
}

// stroke sets how lines are drawn.
func (x *writer) stroke(s page.Stroke) {
	x.gp.SetLineWidth(pt(s.Width))
	dashes := []float64{}
	for _, d := range s.Dash.Pattern() {
		dashes = append(dashes, pt(d))
	}
	x.gp.SetCustomLineType(dashes, 0)
	if r, g, b := s.Ink.RGB(); r == g && g == b {
		x.gp.SetGrayStroke(float64(r) / 255)
	} else {
		x.gp.SetStrokeColor(r, g, b)
	}
}

// line draws a line with the stroke that is set.
func (x *writer) line(a, b page.Point) { x.gp.Line(pt(a.X), pt(a.Y), pt(b.X), pt(b.Y)) }

// box draws a rectangle with what is set; style is F to fill, D to outline.
func (x *writer) box(b page.Box, style string) {
	x.gp.RectFromUpperLeftWithStyle(pt(b.X), pt(b.Y), pt(b.W), pt(b.H), style)
}

// rect draws a rectangle: ground, then hatch, then outline.
func (x *writer) rect(r page.Rect) {
	if r.Fill != page.NoInk {
		x.fill(r.Fill)
		x.box(r.Box, "F")
	}
	if r.Hatch != page.NoHatch {
		x.stroke(page.HatchStroke)
		for _, s := range r.Hatch.Lines(r.Box) {
			x.line(s.A, s.B)
		}
	}
	if r.Stroke.Visible() {
		x.stroke(r.Stroke)
		x.box(r.Box, "D")
	}
}

// polygon draws a closed shape: ground, then outline.
func (x *writer) polygon(p page.Polygon) {
	points := make([]gopdf.Point, len(p.Points))
	for i, q := range p.Points {
		points[i] = gopdf.Point{X: pt(q.X), Y: pt(q.Y)}
	}
	if len(points) == 0 {
		return
	}
	if p.Fill != page.NoInk {
		x.fill(p.Fill)
		x.gp.Polygon(points, "F")
	}
	if p.Stroke.Visible() {
		x.stroke(p.Stroke)
		x.gp.Polygon(points, "D")
	}
}
