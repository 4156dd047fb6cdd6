package page

import (
	"cutbinder/fonts"
	"cutbinder/layout/length"
)

// An Item is one thing on a page. The set is closed: Text, Line, Rect,
// Polygon, Code, Link, Anchor.
type Item interface {
	// Bounds is the box the item's ink (for Link and Anchor: its reach) fills.
	Bounds() Box
	// What is the item's mark: what its ink stands for, such as
	// "piece dusk-1 #3", "tally dusk-1 7", "label 7", "scale bar". It may be
	// empty.
	What() string
	// String is the item as a line of text, for golden files.
	String() string
	item()
}

// A Mark says what an item's ink stands for. Marks that start with the same
// word belong to the same kind of thing.
type Mark string

// What is the mark's text.
func (m Mark) What() string { return string(m) }

// A Text is one line of type.
type Text struct {
	Mark
	// Room is the box the line was set for; the line must not be wider.
	Room Box
	// Base is the left end of the baseline.
	Base Point
	// W is the measured width.
	W    length.Length
	Runs []Run
}

// A Run is a piece of a line in one face, size and ink.
type Run struct {
	S    string
	Face *fonts.Face
	Size length.Length
	Ink  Ink
	// X is how far right of the line's start the run starts.
	X length.Length
	// Rise is how far the run's baseline is above the line's.
	Rise length.Length
	// Track is extra space after each character.
	Track length.Length
	// Part is true for the small figures of a composed fraction; they are
	// exempt from the least type size, as the figures inside ½ are.
	Part bool
}

// Bounds is the line's ink: from its start to its end, from the top of its
// highest character to the foot of its lowest.
func (t Text) Bounds() Box {
	var up, down length.Length
	for _, r := range t.Runs {
		bottom, top := 0, 0
		for _, ch := range r.S {
			b, t := r.Face.Extent(ch)
			bottom, top = min(bottom, b), max(top, t)
		}
		em := length.Length(r.Face.Metrics().UnitsPerEm)
		up = max(up, r.Size*length.Length(top)/em+r.Rise)
		down = max(down, -r.Size*length.Length(bottom)/em-r.Rise)
	}
	return Box{t.Base.X, t.Base.Y - up, t.W, up + down}
}

// Words is the line's text without its styling.
func (t Text) Words() string {
	s := ""
	for _, r := range t.Runs {
		s += r.S
	}
	return s
}

// A Line is a straight stroke.
type Line struct {
	Mark
	A, B   Point
	Stroke Stroke
}

// Bounds is the line with its width.
func (l Line) Bounds() Box {
	x, y := min(l.A.X, l.B.X), min(l.A.Y, l.B.Y)
	b := Box{x, y, max(l.A.X, l.B.X) - x, max(l.A.Y, l.B.Y) - y}
	half := l.Stroke.Width / 2
	switch {
	case b.H == 0: // butt ends: no longer than from A to B
		return Box{b.X, b.Y - half, b.W, 2 * half}
	case b.W == 0:
		return Box{b.X - half, b.Y, 2 * half, b.H}
	}
	return b.Inset(-half)
}

// A Rect is a rectangle: filled, hatched, outlined, or all of it. The outline
// is centred on the edge.
type Rect struct {
	Mark
	Box    Box
	Fill   Ink
	Hatch  Hatch
	Stroke Stroke
}

// Bounds is the rectangle with its outline.
func (r Rect) Bounds() Box {
	if r.Stroke.Visible() {
		return r.Box.Inset(-r.Stroke.Width / 2)
	}
	return r.Box
}

// A Polygon is a closed shape with straight edges; curves are cut into edges
// too short to be seen.
type Polygon struct {
	Mark
	Points []Point
	Fill   Ink
	Stroke Stroke
}

// Bounds is the box around the corners and the outline.
func (p Polygon) Bounds() Box {
	if len(p.Points) == 0 {
		return Box{}
	}
	b := Box{p.Points[0].X, p.Points[0].Y, 0, 0}
	for _, q := range p.Points[1:] {
		b = b.Union(Box{q.X, q.Y, 0, 0})
	}
	if p.Stroke.Visible() {
		b = b.Inset(-p.Stroke.Width / 2)
	}
	return b
}

// A Link makes its box lead to an anchor.
type Link struct {
	Mark
	Box Box
	To  string
}

// Bounds is the box that can be clicked.
func (l Link) Bounds() Box { return l.Box }

// An Anchor is a place that links and page references lead to. With a Title
// it is a bookmark too, Level deep (0 for parts, 1 for what is in them).
type Anchor struct {
	Mark
	At    Point
	Name  string
	Title string
	Level int
}

// Bounds is the anchor's point, of no size.
func (a Anchor) Bounds() Box { return Box{a.At.X, a.At.Y, 0, 0} }

func (Text) item()    {}
func (Line) item()    {}
func (Rect) item()    {}
func (Polygon) item() {}
func (Code) item()    {}
func (Link) item()    {}
func (Anchor) item()  {}
