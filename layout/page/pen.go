package page

import (
	"cutbinder/layout/length"
)

// A Pen draws items onto one page, at places the caller gives. It carries the
// style, and knows the page it draws on.
type Pen struct {
	Style *Style
	// Live is the part of the page that ink may stand on: wider than the box
	// a drawing is given, for what hangs out into the margins.
	Live Box
	// LeftHand is set on left-hand pages of a two-sided document, whose
	// binding is on the right.
	LeftHand bool

	items []Item
	refs  *Refs
}

// NewPen is a pen for a page of its own, for drawings outside a Book.
func NewPen(s *Style, live Box) *Pen { return &Pen{Style: s, Live: live} }

// Items are what was drawn so far.
func (p *Pen) Items() []Item { return p.items }

// Add draws an item as it is.
func (p *Pen) Add(it Item) { p.items = append(p.items, it) }

// Line draws a straight stroke from a to b.
func (p *Pen) Line(a, b Point, st Stroke, mark string) {
	p.Add(Line{Mark(mark), a, b, st})
}

// HLine draws a level stroke to the right from (x, y).
func (p *Pen) HLine(x, y, w length.Length, st Stroke, mark string) {
	p.Line(Point{x, y}, Point{x + w, y}, st, mark)
}

// VLine draws an upright stroke down from (x, y).
func (p *Pen) VLine(x, y, h length.Length, st Stroke, mark string) {
	p.Line(Point{x, y}, Point{x, y + h}, st, mark)
}

// Rect draws a rectangle: filled, outlined, or both.
func (p *Pen) Rect(b Box, fill Ink, st Stroke, mark string) {
	p.Add(Rect{Mark: Mark(mark), Box: b, Fill: fill, Stroke: st})
}

// Hatch draws a hatched rectangle.
func (p *Pen) Hatch(b Box, h Hatch, st Stroke, mark string) {
	p.Add(Rect{Mark: Mark(mark), Box: b, Hatch: h, Stroke: st})
}

// Polygon draws a closed shape.
func (p *Pen) Polygon(points []Point, fill Ink, st Stroke, mark string) {
	p.Add(Polygon{Mark(mark), points, fill, st})
}

// Code draws a square code with its quiet zone from the box's top left: the
// largest whole module that lets it fit. It returns the box it fills and the
// module's side; the caller decides whether that is large enough.
func (p *Pen) Code(b Box, size int, dark []bool, quiet int, mark string) (Box, length.Length) {
	c := Code{Mark: Mark(mark), At: Point{b.X, b.Y}, Quiet: quiet, Size: size, Dark: dark}
	c.Module = min(b.W, b.H) / length.Length(size+2*quiet)
	p.Add(c)
	return c.Bounds(), c.Module
}

// Link makes a box lead to an anchor.
func (p *Pen) Link(b Box, to string) { p.Add(Link{Box: b, To: to}) }

// Anchor names a place for links and page references.
func (p *Pen) Anchor(at Point, name string) { p.Add(Anchor{At: at, Name: name}) }

// Bookmark names a place and shows it in the viewer's outline, level deep.
func (p *Pen) Bookmark(at Point, name, title string, level int) {
	p.Add(Anchor{At: at, Name: name, Title: title, Level: level})
}

// PageOf is the number of the page that an anchor stands on; see Refs.
func (p *Pen) PageOf(name string) string { return p.refs.Page(name) }

// Text sets one line in a box: aligned in its width, its capitals centred in
// its height. The wordings are the same thing from the fullest to the
// shortest: the first that fits is set, or the last one cut with "…". It
// returns the line's ink, of width 0 where nothing fits.
func (p *Pen) Text(b Box, st TextStyle, al Align, mark string, wordings ...string) Box {
	s := st.Shorten(p.Style.Fonts, b.W, wordings...)
	return p.RichText(b, st.Say(s), al, mark)
}

// RichText sets one line of rich text in a box as Text does, but does not
// shorten it.
func (p *Pen) RichText(b Box, r Rich, al Align, mark string) Box {
	as := r.atoms(p.Style.Fonts)
	base := b.MidY() + p.capHeight(as)/2
	return p.set(as, b, base, al, mark)
}

// TextAt sets one line from, around or up to a point on its baseline, as al
// says, without a box to fit.
func (p *Pen) TextAt(at Point, st TextStyle, al Align, mark, s string) Box {
	as := st.Say(s).atoms(p.Style.Fonts)
	w := measure(as).up()
	return p.set(as, Box{at.X - al.from(w), at.Y - st.Size, w, st.Size}, at.Y, Left, mark)
}

// from is how much of a line w wide lies left of the point it is set at.
func (a Align) from(w length.Length) length.Length { return -a.offset(w, 0) }

// Para sets text in a box from its top, broken into lines, and returns the
// height it took. Words are not shortened: a box too low is overrun.
func (p *Pen) Para(b Box, r Rich, al Align, mark string) length.Length {
	y := b.Y
	lead := length.Length(0)
	for _, l := range lines(r.atoms(p.Style.Fonts), max(b.W, 1)) {
		lead = leadOf(l, lead)
		p.set(l, Box{b.X, y, b.W, lead}, y+p.baseline(l, lead), al, mark)
		y += lead
	}
	return y - b.Y
}

// set places a line of atoms on a baseline.
func (p *Pen) set(as []atom, room Box, base length.Length, al Align, mark string) Box {
	rs, w := runs(as)
	t := Text{Mark(mark), room, Point{room.X + al.offset(w, room.W), base}, w, rs}
	if len(rs) > 0 {
		p.Add(t)
	}
	return t.Bounds()
}

// capHeight is the height of the capitals of the largest glyph in a line.
func (p *Pen) capHeight(as []atom) length.Length {
	m := p.Style.Fonts.Face(0).Metrics()
	return largest(as) * length.Length(m.CapHeight) / length.Length(m.UnitsPerEm)
}

// baseline is where in a line of that leading the baseline lies: the capitals
// and a descender of a quarter of the size are centred in it.
func (p *Pen) baseline(as []atom, lead length.Length) length.Length {
	size, capital := largest(as), p.capHeight(as)
	return (lead-capital-size/5)/2 + capital
}

// largest is the size of the largest glyph in a line.
func largest(as []atom) length.Length {
	size := length.Length(0)
	for i := range as {
		for j := range as[i].glyphs {
			size = max(size, as[i].glyphs[j].size)
		}
	}
	return size
}
