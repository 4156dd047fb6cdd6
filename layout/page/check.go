package page

import "cutbinder/layout/length"

// Check asks pages what a reader would complain of. Faults come in the order of
// pages and items.
//
// What may lie over what is a matter of kind and order. Type stands on a
// ground: the last filled rectangle or polygon before it that holds all of its
// ink, else the paper. What was drawn before the ground is hidden there and
// does not count. Between the ground and the type, and after the type, no
// line, edge, hatch or other type may meet its ink; after it, no fill either. A
// box around type, a tinted piece under its size, a badge under its number are
// grounds or do not meet the ink, and are no faults. A code's quiet zone may
// lie in a box that holds all of it, and meets nothing else.
func Check(pages []Page) []Fault {
	var out []Fault
	for i := range pages {
		c := checker{page: &pages[i]}
		c.bounds = make([]Box, len(pages[i].Items))
		for k, it := range pages[i].Items {
			c.bounds[k] = it.Bounds()
		}
		for k, it := range pages[i].Items {
			c.place(k, it)
			switch it := it.(type) {
			case Text:
				c.text(k, it)
			case Line:
				c.stroke(it, it.Stroke)
			case Rect:
				c.stroke(it, it.Stroke)
			case Polygon:
				c.stroke(it, it.Stroke)
			case Code:
				c.code(k, it)
			}
		}
		out = append(out, c.faults...)
	}
	return out
}

// A checker looks over one page.
type checker struct {
	page   *Page
	bounds []Box
	faults []Fault
}

func (c *checker) fault(k FaultKind, it, with Item) {
	c.faults = append(c.faults, Fault{c.page.Label, k, it, with})
}

// place checks that an item's ink is on the page.
func (c *checker) place(k int, it Item) {
	switch it.(type) {
	case Link, Anchor:
		return
	}
	if !c.page.Live.Contains(c.bounds[k]) {
		c.fault(OffPage, it, nil)
	}
}

// stroke checks a line's width.
func (c *checker) stroke(it Item, st Stroke) {
	if st.Visible() && st.Width < MinLine {
		c.fault(TooSmall, it, nil)
	}
}

// text checks a line of type by itself, then against all else.
func (c *checker) text(k int, t Text) {
	ink := c.bounds[k]
	if t.W > t.Room.W || ink.H > t.Room.H {
		c.fault(TooWide, t, nil)
	}
	for _, r := range t.Runs {
		if r.Size < MinLabel && !r.Part {
			c.fault(TooSmall, t, nil)
		}
		if lacks(r) {
			c.fault(NoGlyph, t, nil)
		}
	}
	g := c.ground(k, ink)
	c.contrast(t, g)
	if g >= 0 && hatched(c.page.Items[g]) {
		c.fault(Crossed, t, c.page.Items[g])
	}
	for j := g + 1; j < len(c.page.Items); j++ {
		if j != k && ink.Overlaps(c.bounds[j]) {
			c.meet(k, j, t, ink)
		}
	}
}

// lacks reports whether a run's face lacks one of its characters.
func lacks(r Run) bool {
	for _, ch := range r.S {
		if !r.Face.Has(ch) {
			return true
		}
	}
	return false
}

// ground is the index of the item that type stands on, -1 for the paper.
func (c *checker) ground(k int, ink Box) int {
	for j := k - 1; j >= 0; j-- {
		if fillOf(c.page.Items[j]) != NoInk && c.bounds[j].Contains(ink) {
			return j
		}
	}
	return -1
}

// fillOf is the ink an item fills its box with.
func fillOf(it Item) Ink {
	switch it := it.(type) {
	case Rect:
		return it.Fill
	case Polygon:
		return it.Fill
	}
	return NoInk
}

// hatched reports whether an item is hatched.
func hatched(it Item) bool {
	r, ok := it.(Rect)
	return ok && r.Hatch != NoHatch
}

// contrast checks that type can be told from its ground.
func (c *checker) contrast(t Text, ground int) {
	under, with := White, Item(nil)
	if ground >= 0 {
		with = c.page.Items[ground]
		under = fillOf(with)
	}
	for _, r := range t.Runs {
		if d := r.Ink.Luma() - under.Luma(); -minContrast < d && d < minContrast {
			c.fault(Faint, t, with)
			return
		}
	}
}

// meet checks type (item k) against an item whose box meets its ink.
func (c *checker) meet(k, j int, t Text, ink Box) {
	it := c.page.Items[j]
	tight := ink.Inset(2) // a hair's breadth of rounding is no fault
	switch o := it.(type) {
	case Text:
		if j > k {
			c.fault(Overlap, t, it)
		}
	case Line:
		if o.Stroke.Visible() && crosses(o.A, o.B, o.Stroke.Width, tight) {
			c.fault(Crossed, t, it)
		}
	case Rect, Polygon:
		switch {
		case j > k && fillOf(it) != NoInk:
			c.fault(Covered, t, it)
		case hatched(it) || crossedBy(it, tight):
			c.fault(Crossed, t, it)
		}
	}
}

// crossedBy reports whether an edge of a shape that can be seen runs through a
// box. White without an outline has no edge.
func crossedBy(it Item, b Box) bool {
	var corners []Point
	var st Stroke
	switch it := it.(type) {
	case Rect:
		corners, st = RoundBox(it.Box, 0), it.Stroke
	case Polygon:
		corners, st = it.Points, it.Stroke
	}
	if fill := fillOf(it); !st.Visible() && (fill == NoInk || fill == White) {
		return false
	}
	width := length.Length(0)
	if st.Visible() {
		width = st.Width
	}
	for i, p := range corners {
		if crosses(p, corners[(i+1)%len(corners)], width, b) {
			return true
		}
	}
	return false
}

// crosses reports whether a stroke from p to q of some width runs through a
// box: the two meet unless their boxes are apart or all corners of the one lie
// on the same side of the other.
func crosses(p, q Point, width length.Length, b Box) bool {
	b = b.Inset(-width / 2)
	x0, x1 := min(p.X, q.X), max(p.X, q.X)
	y0, y1 := min(p.Y, q.Y), max(p.Y, q.Y)
	if x1 <= b.X || x0 >= b.Right() || y1 <= b.Y || y0 >= b.Bottom() {
		return false
	}
	var left, right bool
	for _, c := range RoundBox(b, 0) {
		side := (q.X-p.X)*(c.Y-p.Y) - (q.Y-p.Y)*(c.X-p.X)
		left, right = left || side < 0, right || side > 0
	}
	return left && right
}

// code checks a code's modules and its quiet zone.
func (c *checker) code(k int, code Code) {
	if code.Module < MinModule {
		c.fault(TooSmall, code, nil)
	}
	if code.Quiet < minQuiet {
		c.fault(Quiet, code, nil)
	}
	zone := c.bounds[k]
	for j, it := range c.page.Items {
		if j == k || !zone.Overlaps(c.bounds[j]) || holds(it, zone) {
			continue
		}
		switch it.(type) {
		case Link, Anchor:
			continue
		}
		c.fault(Quiet, code, it)
	}
}

// holds reports whether a box holds a quiet zone within its outline and is
// light inside.
func holds(it Item, zone Box) bool {
	fill := fillOf(it)
	if fill != NoInk && fill != White || hatched(it) {
		return false
	}
	switch it := it.(type) {
	case Rect:
		return it.Box.Inset(it.Stroke.Width / 2).Contains(zone)
	case Polygon:
		return it.Bounds().Inset(it.Stroke.Width).Contains(zone) && !crossedBy(it, zone)
	}
	return false
}
