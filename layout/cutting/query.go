package cutting

import (
	"cutbinder/layout/length"
	"cutbinder/layout/plan"
)

// Strips counts the strips and lengthwise sections cut from the fabric: what has
// a number on its diagrams, squaring not counted.
func (f *Fabric) Strips() int {
	n := 0
	for i := range f.Cloths {
		n += numbered(f.Cloths[i].Root)
	}
	return n
}

func numbered(s Section) int {
	n := 0
	for _, part := range s.Parts {
		if part.Number > 0 {
			n++
		}
		n += numbered(part)
	}
	return n
}

// StripsWith counts the strips that hold pieces of that index.
func (f *Fabric) StripsWith(piece int) int {
	n := 0
	for i := range f.Cloths {
		n += f.Cloths[i].stripsWith(f.Cloths[i].Root, piece)
	}
	return n
}

func (c *Cloth) stripsWith(s Section, piece int) int {
	n := 0
	for _, part := range s.Parts {
		inner := c.stripsWith(part, piece)
		if inner == 0 && part.Number > 0 && c.holds(part, piece) {
			inner = 1
		}
		n += inner
	}
	return n
}

func (c *Cloth) holds(s Section, piece int) bool {
	if s.Placed >= 0 {
		return c.Placed[s.Placed].Piece == piece
	}
	for _, part := range s.Parts {
		if c.holds(part, piece) {
			return true
		}
	}
	return false
}

// For is the fabric's first piece that is for that, such as "binding", or nil.
func (f *Fabric) For(what string) *Piece {
	for _, p := range f.Pieces {
		for _, u := range p.Uses {
			if u.Block == "" && u.For == what {
				return p
			}
		}
	}
	return nil
}

// Selvages says on which sides the cloth has a woven edge: on both where it is
// as wide as the fabric is bought, on the left of a fat quarter or eighth, on
// none of a scrap.
func (c *Cloth) Selvages() (left, right bool) {
	switch {
	case c.Bought || c.W >= 36*length.Inch:
		return true, true
	case c.W >= 18*length.Inch:
		return true, false
	}
	return false, false
}

// Least is how long the cloth must be at the least for what is cut from it, with
// squaring its end, at first and again on the way where the plan asks for that.
func (c *Cloth) Least(p *plan.Plan) length.Length {
	end := c.Root.H
	if n := len(c.Root.Parts); c.Root.Dir == Across && c.Root.Parts[n-1].Leftover() {
		end = c.Root.Parts[n-1].Y
	}
	return end + c.Square + trueing(p, c.strips())
}

// Rest is what is left at the end of the cloth when all is cut from it, over its
// whole width: squaring its end is off, at first and again on the way, and of a
// cloth that is bought and washed first what the wash may take.
func (c *Cloth) Rest(p *plan.Plan, f *plan.Fabric) length.Length {
	long := c.L
	if c.Bought && f.Prewash {
		long -= length.Length((int64(long)*int64(f.Shrink.Length) + 9999) / 10000)
	}
	return max(long-c.Least(p), 0)
}
