package cutting

import "cutbinder/layout/length"

// FoldsFor is how often cloth is folded so that a cut of this run is no longer
// than the ruler. Past two folds layers creep, so the ruler is moved instead.
func FoldsFor(run, ruler length.Length) int {
	n := 0
	for n < 2 && run>>n > ruler {
		n++
	}
	return n
}

// A folding is how a strip is sub-cut while it is still folded once: pieces of
// one size come off in twos from the selvage end, the odd one after the fold is
// opened; a single piece over the fold is measured from the fold.
type folding struct {
	doubles, singles int
	atFold           length.Length
}

// foldingOf works it out for a strip; ok is false where the strip is opened
// first: because its pieces differ, or too few come off in twos.
func (c *Cloth) foldingOf(strip Section) (f folding, ok bool) {
	if strip.Dir != Along {
		return f, false
	}
	var first Section
	n := 0
	for _, part := range strip.Parts {
		switch {
		case part.Leftover():
			continue
		case n == 0:
			first = part
		case !c.alike(first, part):
			return f, false
		}
		n++
	}
	double := min(n/2, int(strip.W/2/first.W))
	switch {
	case n == 1 && first.W > strip.W/2 && first.W < strip.W && (strip.W-first.W)%2 == 0:
		return folding{atFold: first.W / 2}, first.W%2 == 0
	case n > 1 && n-2*double <= 1:
		return folding{doubles: double, singles: n - 2*double}, true
	}
	return f, false
}

// pairUp moves the pieces of strips that are sub-cut folded to where they come
// from: half of them at each selvage, what is left over at the fold.
func (c *Cloth) pairUp(ruler length.Length) {
	if c.Root.Dir != Across || FoldsFor(c.Root.W, ruler) != 1 {
		return
	}
	for i := range c.Root.Parts {
		strip := &c.Root.Parts[i]
		if f, ok := c.foldingOf(*strip); ok {
			strip.Parts = f.arrange(strip.Parts)
			c.closeUp(strip)
		}
	}
}

// arrange puts a strip's parts in the order in which they lie.
func (f folding) arrange(parts []Section) []Section {
	var pieces, left, out []Section
	for _, part := range parts {
		if part.Leftover() {
			left = append(left, part)
		} else {
			pieces = append(pieces, part)
		}
	}
	if len(left) != 1 {
		return parts
	}
	if f.atFold > 0 {
		half := left[0]
		half.W /= 2
		return append(out, half, pieces[0], half)
	}
	near := f.doubles + f.singles
	out = append(out, pieces[:near]...)
	out = append(out, left[0])
	return append(out, pieces[near:]...)
}

// closeUp puts a strip's parts side by side again.
func (c *Cloth) closeUp(strip *Section) {
	x := strip.X
	for i := range strip.Parts {
		c.shift(&strip.Parts[i], x-strip.Parts[i].X)
		x += strip.Parts[i].W
	}
}

// shift moves a section, and the pieces in it, across the cloth.
func (c *Cloth) shift(s *Section, by length.Length) {
	s.X += by
	if s.Placed >= 0 {
		c.Placed[s.Placed].X += by
	}
	for i := range s.Parts {
		c.shift(&s.Parts[i], by)
	}
}
