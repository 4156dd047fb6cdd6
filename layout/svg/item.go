package svg

import (
	"fmt"
	"strings"

	"cutbinder/layout/length"
	"cutbinder/layout/page"
)

// item draws one item.
func (x *writer) item(it page.Item) {
	switch it := it.(type) {
	case page.Text:
		x.text(it)
	case page.Line:
		if it.Stroke.Visible() {
			fmt.Fprintf(x, "<path d=\"M%d %dL%d %d\"%s/>\n", it.A.X, it.A.Y, it.B.X, it.B.Y, stroke(it.Stroke))
		}
	case page.Rect:
		x.rect(it)
	case page.Polygon:
		x.polygon(it)
	case page.Code:
		var b strings.Builder
		for _, r := range it.Runs() {
			fmt.Fprintf(&b, "M%d %dh%dv%dh%dz", r.X, r.Y, r.W, r.H, -r.W)
		}
		fmt.Fprintf(x, "<path d=\"%s\" fill=\"%s\"/>\n", b.String(), ink(page.Black))
	case page.Link, page.Anchor:
	}
}

// text draws a line of type, run by run, in font units: glyphs stand where their
// advances put them, as in the PDF.
func (x *writer) text(t page.Text) {
	for _, r := range t.Runs {
		em := int64(r.Face.Metrics().UnitsPerEm)
		fmt.Fprintf(x, "<g transform=\"translate(%d %d) scale(%s)\" fill=\"%s\">", t.Base.X+r.X, t.Base.Y-r.Rise, decimal(int64(r.Size), em), ink(r.Ink))
		track, at := int64(r.Track)*em, int64(0) // in font units times the size
		for _, c := range r.S {
			if id := x.glyphs[glyph{x.face(r.Face), c}]; id != "" {
				fmt.Fprintf(x, "<use href=\"#%s\" x=\"%s\"/>", id, decimal(at, int64(r.Size)))
			}
			at += int64(r.Face.Advance(c))*int64(r.Size) + track
		}
		fmt.Fprintln(x, "</g>")
	}
}

// rect draws a rectangle: ground, then hatch, then outline.
func (x *writer) rect(r page.Rect) {
	box := fmt.Sprintf("<rect x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\"", r.Box.X, r.Box.Y, r.Box.W, r.Box.H)
	outline := ` fill="none"`
	if r.Stroke.Visible() {
		outline += stroke(r.Stroke)
	}
	if r.Fill != page.NoInk {
		fmt.Fprintf(x, "%s fill=\"%s\"/>\n", box, ink(r.Fill))
	}
	if lines := r.Hatch.Lines(r.Box); len(lines) > 0 {
		var b strings.Builder
		for _, s := range lines {
			fmt.Fprintf(&b, "M%d %dL%d %d", s.A.X, s.A.Y, s.B.X, s.B.Y)
		}
		fmt.Fprintf(x, "<path d=\"%s\"%s/>\n", b.String(), stroke(page.HatchStroke))
	}
	if r.Stroke.Visible() {
		fmt.Fprintf(x, "%s%s/>\n", box, outline)
	}
}

// polygon draws a closed shape: ground, then outline.
func (x *writer) polygon(p page.Polygon) {
	if len(p.Points) == 0 {
		return
	}
	var b strings.Builder
	for i, q := range p.Points {
		fmt.Fprintf(&b, "%c%d %d", "ML"[min(i, 1)], q.X, q.Y)
	}
	b.WriteByte('Z')
	fill, line := "none", ""
	if p.Fill != page.NoInk {
		fill = ink(p.Fill)
	}
	if p.Stroke.Visible() {
		line = stroke(p.Stroke)
	}
	fmt.Fprintf(x, "<path d=\"%s\" fill=\"%s\"%s/>\n", b.String(), fill, line)
}

// stroke is how a line is drawn, as attributes.
func stroke(s page.Stroke) string {
	out := fmt.Sprintf(` stroke="%s" stroke-width="%d"`, ink(s.Ink), s.Width)
	if dashes := s.Dash.Pattern(); len(dashes) > 0 {
		out += fmt.Sprintf(` stroke-dasharray="%s"`, strings.Trim(fmt.Sprint(units(dashes)), "[]"))
	}
	return out
}

// units are lengths as plain numbers.
func units(lengths []length.Length) (out []int64) {
	for _, l := range lengths {
		out = append(out, int64(l))
	}
	return out
}

// ink is a colour as "#rrggbb".
func ink(k page.Ink) string {
	r, g, b := k.RGB()
	return fmt.Sprintf("#%02x%02x%02x", r, g, b)
}
