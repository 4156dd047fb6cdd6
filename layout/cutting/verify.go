package cutting

import (
	"fmt"

	"cutbinder/layout/length"
)

// verify checks a laid-out fabric without asking how it came about: every piece
// is placed as often as it says, at its own size, inside its cloth, and the
// sections can be cut edge to edge because parts tile what they are cut from.
func (f *Fabric) verify() error {
	count := make([]int, len(f.Pieces))
	for _, c := range f.Cloths {
		seen := 0
		if err := c.tiles(c.Root, &seen); err != nil {
			return err
		}
		if seen != len(c.Placed) {
			return fmt.Errorf("%s: %d pieces listed, %d in its sections", c.Name, len(c.Placed), seen)
		}
		if c.Root.X != 0 || c.Root.Y != 0 || c.Root.W > c.W || c.Root.H+c.Square > c.L && !c.Unused() {
			return fmt.Errorf("%s: cut beyond its edge", c.Name)
		}
		for _, p := range c.Placed {
			if err := f.fits(p); err != nil {
				return err
			}
			count[p.Piece]++
		}
	}
	for i, p := range f.Pieces {
		if count[i]+f.Short[i] != p.Need {
			return fmt.Errorf("%s: %d placed and %d short of %d", p.ID, count[i], f.Short[i], p.Need)
		}
	}
	return nil
}

// fits checks that a placed piece has its piece's size, turned only where it may be.
func (f *Fabric) fits(p Placed) error {
	size := f.Pieces[p.Piece].Size
	upright := p.W == size.W && p.H == size.H
	turned := p.W == size.H && p.H == size.W
	if !upright && !(turned && f.Pieces[p.Piece].MayTurn) {
		return fmt.Errorf("%s: placed at another size", f.Pieces[p.Piece].ID)
	}
	return nil
}

// tiles checks that a section's parts fill it without gap or overlap, and that
// its piece has exactly its place.
func (c *Cloth) tiles(s Section, seen *int) error {
	if s.Placed >= 0 {
		*seen++
		if s.Placed >= len(c.Placed) {
			return fmt.Errorf("%s: a section names piece %d of %d", c.Name, s.Placed, len(c.Placed))
		}
		p := c.Placed[s.Placed]
		if s.Dir != None || p.X != s.X || p.Y != s.Y || p.W != s.W || p.H != s.H {
			return fmt.Errorf("%s: piece %d isn't where its section is", c.Name, s.Placed)
		}
		return nil
	}
	x, y := s.X, s.Y
	for _, part := range s.Parts {
		across := s.Dir == Across && part.X == s.X && part.W == s.W && part.Y == y
		along := s.Dir == Along && part.Y == s.Y && part.H == s.H && part.X == x
		if !across && !along || part.W <= 0 || part.H <= 0 {
			return fmt.Errorf("%s: a cut at %d,%d doesn't run edge to edge", c.Name, part.X, part.Y)
		}
		if err := c.tiles(part, seen); err != nil {
			return err
		}
		if across {
			y += part.H
		} else {
			x += part.W
		}
	}
	end := map[Dir][2]length.Length{None: {s.X, s.Y}, Across: {s.X, s.Y + s.H}, Along: {s.X + s.W, s.Y}}[s.Dir]
	if x != end[0] || y != end[1] {
		return fmt.Errorf("%s: cuts at %d,%d leave a gap", c.Name, s.X, s.Y)
	}
	return nil
}
