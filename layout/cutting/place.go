package cutting

import (
	"cmp"
	"slices"

	"cutbinder/layout/length"
	"cutbinder/layout/pack"
)

// newCloth turns a packed section into a cloth whose strips lie in the order they
// are best cut in, its cuts numbered.
func newCloth(root pack.Section, pieces []*Piece, ruler length.Length) Cloth {
	var c Cloth
	if root.Dir == pack.Across {
		root.Parts = inOrder(root, pieces)
	}
	c.Root = c.place(root)
	c.pairUp(ruler)
	squared := 1 // the first cut
	number(&c.Root, &squared)
	return c
}

// inOrder moves strips of nothing but late pieces behind the others, before what
// is left over, and of strips of one height those with the longest pieces to the
// front: strips may change places without any cut changing.
func inOrder(root pack.Section, pieces []*Piece) []pack.Section {
	parts := slices.Clone(root.Parts)
	slices.SortStableFunc(parts, func(a, b pack.Section) int { return rank(a, pieces) - rank(b, pieces) })
	for i := 0; i < len(parts); {
		j := i + 1
		for j < len(parts) && parts[j].H == parts[i].H && rank(parts[j], pieces) == rank(parts[i], pieces) {
			j++
		}
		slices.SortStableFunc(parts[i:j], func(a, b pack.Section) int { return cmp.Compare(longest(b), longest(a)) })
		i = j
	}
	y := root.Y
	for i := range parts {
		parts[i] = movedDown(parts[i], y-parts[i].Y)
		y += parts[i].H
	}
	return parts
}

// rank is 0 for strips with something that doesn't wait, 1 for those that wait,
// 2 for leftover.
func rank(s pack.Section, pieces []*Piece) int {
	if s.Dir == pack.None {
		switch {
		case s.Item < 0:
			return 2
		case pieces[s.Item].Late:
			return 1
		}
		return 0
	}
	least := 2
	for _, part := range s.Parts {
		least = min(least, rank(part, pieces))
	}
	return least
}

// longest is the longest side of a piece in a section.
func longest(s pack.Section) int64 {
	if s.Dir == pack.None {
		if s.Item < 0 {
			return 0
		}
		return max(s.W, s.H)
	}
	most := int64(0)
	for _, part := range s.Parts {
		most = max(most, longest(part))
	}
	return most
}

func movedDown(s pack.Section, by int64) pack.Section {
	if by == 0 {
		return s
	}
	s.Y += by
	s.Parts = slices.Clone(s.Parts)
	for i := range s.Parts {
		s.Parts[i] = movedDown(s.Parts[i], by)
	}
	return s
}

// place copies a section and lists its pieces in the order they are cut.
func (c *Cloth) place(s pack.Section) Section {
	out := Section{
		X: length.Length(s.X), Y: length.Length(s.Y), W: length.Length(s.W), H: length.Length(s.H),
		Dir: Dir(s.Dir), Placed: -1,
	}
	if s.Dir == pack.None && s.Item >= 0 {
		out.Placed = len(c.Placed)
		c.Placed = append(c.Placed, Placed{Piece: s.Item, X: out.X, Y: out.Y, W: out.W, H: out.H})
	}
	for _, part := range s.Parts {
		out.Parts = append(out.Parts, c.place(part))
	}
	return out
}

// share hands the placed pieces to their uses, in the order they are cut: what
// is needed first, over all uses, then the spares, so that a shortage takes the
// spares first.
func (f *Fabric) share() {
	type slot struct {
		use   int
		spare bool
	}
	queue := make([][]slot, len(f.Pieces))
	for i, piece := range f.Pieces {
		for u, use := range piece.Uses {
			queue[i] = append(queue[i], slices.Repeat([]slot{{use: u}}, use.Count)...)
		}
		for u, use := range piece.Uses {
			queue[i] = append(queue[i], slices.Repeat([]slot{{u, true}}, use.Spares)...)
		}
	}
	next := make([]int, len(f.Pieces))
	for c := range f.Cloths {
		placed := f.Cloths[c].Placed
		for j := range placed {
			i := placed[j].Piece
			s := queue[i][next[i]]
			next[i]++
			placed[j].Use, placed[j].Spare = s.use, s.spare
		}
	}
}

// Waits says that a piece is cut when all else is: one that should wait doesn't
// where it shares a strip with what can't, as a square for bias strips may.
func (f *Fabric) Waits(piece int) bool {
	if !f.Pieces[piece].Late {
		return false
	}
	for i := range f.Cloths {
		c := &f.Cloths[i]
		strips := []Section{c.Root}
		if c.Root.Dir == Across {
			strips = c.Root.Parts
		}
		for _, s := range strips {
			if holds, soon := f.holdsOf(c, s, piece); holds && soon {
				return false
			}
		}
	}
	return true
}

// holdsOf says whether a section gives a piece, and whether it gives any that
// doesn't wait.
func (f *Fabric) holdsOf(c *Cloth, s Section, piece int) (holds, soon bool) {
	if s.Placed >= 0 {
		p := c.Placed[s.Placed].Piece
		return p == piece, !f.Pieces[p].Late
	}
	for _, part := range s.Parts {
		h, now := f.holdsOf(c, part, piece)
		holds, soon = holds || h, soon || now
	}
	return holds, soon
}

// strips counts the strips cut one after another from the squared end.
func (c *Cloth) strips() int {
	if c.Root.Dir != Across {
		return 0
	}
	n := 0
	for _, s := range c.Root.Parts {
		if !s.Leftover() {
			n++
		}
	}
	return n
}

// leftAtEnd is the length left over at the cloth's far end.
func (c *Cloth) leftAtEnd() length.Length {
	if c.Root.Leftover() {
		return c.Root.H
	}
	if c.Root.Dir != Across {
		return 0
	}
	if last := c.Root.Parts[len(c.Root.Parts)-1]; last.Leftover() {
		return last.H
	}
	return 0
}

// Unused says that nothing is cut from the cloth.
func (c *Cloth) Unused() bool { return len(c.Placed) == 0 }

// Missing is how many pieces found no place, over all sizes.
func (f *Fabric) Missing() int {
	n := 0
	for _, s := range f.Short {
		n += s
	}
	return n
}
