package page

import (
	"fmt"
	"strings"
)

// String is the document as text: its facts, then its pages.
func (d Document) String() string {
	var b strings.Builder
	fmt.Fprintf(&b, "document %q author=%q lang=%s pages=%d\n", d.Title, d.Author, d.Lang, len(d.Pages))
	for i := range d.Pages {
		b.WriteString(d.Pages[i].String())
	}
	return b.String()
}

// String is the page as text: a line for the page, then a line for each item
// in the order they are drawn, lengths in millimetres. It is the same on every
// machine, and is what golden files hold.
func (p Page) String() string {
	var b strings.Builder
	fmt.Fprintf(&b, "page %q %s %sx%s live %s\n", p.Label, p.Paper.Name, mm(p.Paper.W), mm(p.Paper.H), p.Live)
	for _, it := range p.Items {
		b.WriteString("  ")
		b.WriteString(it.String())
		if w := it.What(); w != "" {
			fmt.Fprintf(&b, " [%s]", w)
		}
		b.WriteByte('\n')
	}
	return b.String()
}

// String is the line without its mark: place, width, then its runs.
func (t Text) String() string {
	var b strings.Builder
	fmt.Fprintf(&b, "text %s w=%s", t.Base, mm(t.W))
	for _, r := range t.Runs {
		fmt.Fprintf(&b, " %s/%s", r.Face.Name(), mm(r.Size))
		if r.Ink != Black {
			fmt.Fprintf(&b, "/%s", r.Ink)
		}
		if r.Rise != 0 {
			fmt.Fprintf(&b, "/rise=%s", mm(r.Rise))
		}
		if r.Track != 0 {
			fmt.Fprintf(&b, "/track=%s", mm(r.Track))
		}
		fmt.Fprintf(&b, " %q", r.S)
	}
	return b.String()
}

// String is the line without its mark.
func (l Line) String() string { return fmt.Sprintf("line %s to %s %s", l.A, l.B, l.Stroke) }

// String is the rectangle without its mark.
func (r Rect) String() string {
	s := "rect " + r.Box.String()
	if r.Fill != NoInk {
		s += " fill=" + r.Fill.String()
	}
	if r.Hatch != NoHatch {
		s += " hatch=" + r.Hatch.String()
	}
	if r.Stroke.Visible() {
		s += " stroke=" + r.Stroke.String()
	}
	return s
}

// String is the polygon without its mark: its box and its number of corners.
func (p Polygon) String() string {
	s := fmt.Sprintf("polygon %s corners=%d", p.Bounds(), len(p.Points))
	if p.Fill != NoInk {
		s += " fill=" + p.Fill.String()
	}
	if p.Stroke.Visible() {
		s += " stroke=" + p.Stroke.String()
	}
	return s
}

// String is the code without its mark.
func (c Code) String() string {
	dark := 0
	for _, d := range c.Dark {
		if d {
			dark++
		}
	}
	return fmt.Sprintf("code %s module=%s size=%d quiet=%d dark=%d", c.Bounds(), mm(c.Module), c.Size, c.Quiet, dark)
}

// String is the link without its mark.
func (l Link) String() string { return fmt.Sprintf("link %s to %q", l.Box, l.To) }

// String is the anchor without its mark.
func (a Anchor) String() string {
	s := fmt.Sprintf("anchor %s %q", a.At, a.Name)
	if a.Title != "" {
		s += fmt.Sprintf(" bookmark=%d %q", a.Level, a.Title)
	}
	return s
}
