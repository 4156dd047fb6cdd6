package picture

import (
	"cutbinder/layout/length"
	"cutbinder/layout/plan"
)

// onPoint sets blocks on their corners: as many rows as the setting has down, or
// with the rows in between, each a block shorter, written too.
func (c *composer) onPoint(s *plan.Setting) {
	between := len(c.rows) == 2*s.Down-1 && s.Down > 1
	if !between && len(c.rows) != s.Down {
		c.doubt(c.rows[0][0].At, "", "the quilt has %d rows of blocks; the setting has %d, or %d with those in between", len(c.rows), s.Down, 2*s.Down-1)
		return
	}
	side := 2 * s.Block
	half := overRoot2(side) // half a block's diagonal
	c.pic.W, c.pic.H = 2*half*length.Length(s.Across), 2*half*length.Length(s.Down)
	for j, row := range c.rows {
		want, y := s.Across, half*length.Length(2*j+1)
		if between {
			want, y = s.Across-j%2, half*length.Length(j+1)
		}
		if len(row) != want {
			c.doubt(row[0].At, "", "the row has %d blocks; the setting has %d in it", len(row), want)
			return
		}
		for i, set := range row {
			if z := c.size(set); z.W != s.Block || z.H != s.Block {
				c.doubt(set.At, "", "block %q is %s finished; the setting is for blocks of %s", set.Block,
					c.plan.Units.FormatSize(z, length.WithUnit), c.plan.Units.Format(s.Block, length.WithUnit))
				return
			}
			c.set(set, tilted(Point{half * length.Length(2*i+1+s.Across-want), y}, side))
		}
	}
	if !between {
		c.alternates(s, side, half)
	}
	c.triangles(s, half)
}

// alternates adds the plain squares between the blocks.
func (c *composer) alternates(s *plan.Setting, side, half length.Length) {
	if s.Alternate == nil {
		return
	}
	for j := 1; j < s.Down; j++ {
		for i := 1; i < s.Across; i++ {
			place := tilted(Point{2 * half * length.Length(i), 2 * half * length.Length(j)}, side)
			points := rectangle(0, 0, side, side)
			for k, q := range points {
				points[k] = place(q)
			}
			c.add("alternate squares", *s.Alternate, points...)
		}
	}
}

// triangles fills the edge and the corners.
func (c *composer) triangles(s *plan.Setting, half length.Length) {
	W, H := c.pic.W, c.pic.H
	for i := 1; i < s.Across; i++ {
		x := 2 * half * length.Length(i)
		c.add("side triangles", s.Sides, Point{x - half, 0}, Point{x + half, 0}, Point{x, half})
		c.add("side triangles", s.Sides, Point{x - half, H}, Point{x, H - half}, Point{x + half, H})
	}
	for j := 1; j < s.Down; j++ {
		y := 2 * half * length.Length(j)
		c.add("side triangles", s.Sides, Point{0, y - half}, Point{half, y}, Point{0, y + half})
		c.add("side triangles", s.Sides, Point{W, y - half}, Point{W, y + half}, Point{W - half, y})
	}
	c.add("corner triangles", s.Corners, Point{0, 0}, Point{half, 0}, Point{0, half})
	c.add("corner triangles", s.Corners, Point{W, 0}, Point{W, half}, Point{W - half, 0})
	c.add("corner triangles", s.Corners, Point{W, H}, Point{W - half, H}, Point{W, H - half})
	c.add("corner triangles", s.Corners, Point{0, H}, Point{0, H - half}, Point{half, H})
}

// tilted places the points of a square block of that side around a middle, an
// eighth turned clockwise: its top left corner comes to stand on top.
func tilted(middle Point, side length.Length) func(Point) Point {
	return func(q Point) Point {
		x, y := q.X-side/2, q.Y-side/2
		return Point{middle.X + overRoot2(x-y), middle.Y + overRoot2(x+y)}
	}
}

// overRoot2 is a length over √2, to the nearest. 1/√2 is 0.70710678118…
func overRoot2(l length.Length) length.Length {
	const one = 1 << 31
	const root = 1518500250 // 2^31/√2
	if l < 0 {
		return -overRoot2(-l)
	}
	return (l*root + one/2) / one
}
