package cutting

import (
	"cmp"
	"slices"

	"cutbinder/layout/length"
)

// FoldsFor is how often cloth is folded so that a cut of this run is no longer
// than the ruler. Past two folds layers creep, so the ruler is moved instead.
func FoldsFor(run, ruler length.Length) int {
	n := 0
	for n < 2 && run>>n > ruler {
		n++
	}
	return n
}

// A folding is how a strip is sub-cut while it is still folded once: like parts
// come off in twos from the selvage end, the odd ones after the fold is opened; a
// single piece over the fold is measured from the fold.
type folding struct {
	pairs  []pair
	odd    []Section
	alike  bool // all parts are
	atFold length.Length
}

// A pair is like parts that come off in twos.
type pair struct{ left, right []Section }

// foldingOf works it out for a strip; ok is false where the strip is opened
// first, because too few of its parts come off in twos.
func (c *Cloth) foldingOf(strip Section) (f folding, ok bool) {
	if strip.Dir != Along {
		return f, false
	}
	groups := c.groups(strip)
	if len(groups) == 1 && len(groups[0]) == 1 {
		first := groups[0][0]
		over := first.W > strip.W/2 && first.W < strip.W && (strip.W-first.W)%2 == 0 && first.W%2 == 0
		return folding{atFold: first.W / 2}, over
	}
	f.alike = len(groups) == 1
	twos := 0
	for _, g := range groups {
		n := len(g) / 2 // half of what fits the strip fits half of it
		twos += n
		if n > 0 {
			f.pairs = append(f.pairs, pair{g[:n], g[len(g)-n:]})
		}
		f.odd = append(f.odd, g[n:len(g)-n]...) // the middle one, once they lie in twos
	}
	slices.SortStableFunc(f.odd, func(a, b Section) int { return cmp.Compare(a.X, b.X) })
	switch odd := len(f.odd); {
	case f.alike:
		return f, twos > 0 && odd <= 1
	case odd == 0:
		return f, true
	}
	return f, twos >= 2*len(f.odd)
}

// groups sorts a strip's parts by what they become, in the order in which they
// first come. Leftover is left out.
func (c *Cloth) groups(strip Section) (groups [][]Section) {
next:
	for _, part := range strip.Parts {
		if part.Leftover() {
			continue
		}
		for i, g := range groups {
			if c.alike(g[0], part) {
				groups[i] = append(g, part)
				continue next
			}
		}
		groups = append(groups, []Section{part})
	}
	return groups
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
func (f folding) arrange(parts []Section) (out []Section) {
	var left []Section
	var piece Section
	for _, part := range parts {
		if part.Leftover() {
			left = append(left, part)
		} else {
			piece = part
		}
	}
	switch {
	case f.atFold > 0 && len(left) == 1:
		half := left[0]
		half.W /= 2
		return append(out, half, piece, half)
	case f.atFold > 0:
		return parts
	}
	for _, p := range f.pairs {
		out = append(out, p.left...)
	}
	out = append(append(out, f.odd...), left...)
	for _, p := range slices.Backward(f.pairs) {
		out = append(out, p.right...)
	}
	return out
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
