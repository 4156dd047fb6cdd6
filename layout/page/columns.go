package page

import (
	"sort"

	"cutbinder/layout/length"
)

// Columns sets blocks in N columns side by side, as level as they come. Columns
// within columns are not set side by side again.
type Columns struct {
	N      int
	Gutter length.Length
	Blocks []Block
}

// A columnSet is the slabs of blocks in columns.
type columnSet struct {
	n       int
	w, step length.Length // a column's width, and from one's left to the next's
	slabs   []slab
}

func (k Columns) slabs(c *setting, w length.Length) []slab {
	if c.inColumns {
		return slabsOf(c, w, k.Blocks)
	}
	in := *c
	in.inColumns = true
	n := max(k.N, 1)
	each := (w - k.Gutter*length.Length(n-1)) / length.Length(n)
	set := &columnSet{n: n, w: each, step: each + k.Gutter, slabs: solid(slabsOf(&in, each, k.Blocks))}
	if len(set.slabs) == 0 {
		return nil
	}
	return []slab{{h: set.least(), columns: set}}
}

// least is the height that columns need at least on a page: that of the higher of
// the first two things in them, so that none stands alone.
func (c *columnSet) least() length.Length {
	h := length.Length(0)
	for at, n := 0, 0; at < len(c.slabs) && n < min(2, c.n); {
		end := chainEnd(c.slabs, at)
		if _, _, tall := stack(c.slabs[at:end], endless, false); tall > 0 {
			h, n = max(h, tall), n+1
		}
		at = end
	}
	return h
}

// spare is how many of n slabs to place where more follow: without the last thing
// of them, if else the thing that follows stood alone on its page.
func spare(slabs []slab, n int) int {
	if n == len(slabs) || things(slabs[n:]) > 1 || things(slabs[:n]) < 3 {
		return n
	}
	last := 0
	for at := 0; at < n; at = chainEnd(slabs, at) {
		if !slabs[at].gap {
			last = at
		}
	}
	return last
}

// things counts what is kept together, without the white between.
func things(slabs []slab) int {
	n := 0
	for at := 0; at < len(slabs); at = chainEnd(slabs, at) {
		if !slabs[at].gap {
			n++
		}
	}
	return n
}

// deal fills the columns up to a height of h and says how many slabs it used
// and how high the highest column stands.
func (c *columnSet) deal(slabs []slab, h length.Length, fresh bool) (cols [][]placed, n int, used length.Length) {
	for range c.n {
		out, k, top := stack(slabs[n:], h, fresh)
		cols = append(cols, out)
		n, used = n+k, max(used, top)
	}
	return cols, n, used
}

// columns flows blocks in columns: level if all fit on the page, else full.
func (f *flow) columns(c *columnSet) {
	rest := c.slabs
	for len(rest) > 0 {
		if f.pen == nil {
			f.turn()
		}
		if f.y == 0 {
			f.gap = 0
		}
		room := Box{f.body.X, f.body.Y + f.y + f.gap, f.body.W, f.body.H - f.y - f.gap}
		cols, n, used := c.level(rest, room.H, f.y == 0)
		for i, col := range cols {
			f.draw(col, Box{room.X + c.step*length.Length(i), room.Y, c.w, room.H})
		}
		rest = rest[n:]
		f.y, f.gap = f.y+f.gap+used, 0
		if len(rest) > 0 {
			f.pen = nil
		}
	}
}

// level finds the least height at which all slabs fit into the columns. More
// height never holds less, so it is found by halving. Where they do not fit
// into h, the columns are filled to h.
func (c *columnSet) level(slabs []slab, h length.Length, fresh bool) ([][]placed, int, length.Length) {
	cols, n, used := c.deal(slabs, h, fresh)
	if n < len(slabs) {
		return c.deal(slabs[:spare(slabs, n)], h, fresh)
	}
	least := sort.Search(int(max(h, 0)), func(i int) bool {
		_, n, _ := c.deal(slabs, length.Length(i), false)
		return n == len(slabs)
	})
	if cols, n, used := c.deal(slabs, length.Length(least), false); n == len(slabs) {
		return cols, n, used
	}
	return cols, n, used
}

// solid makes slabs that can be stacked in one piece: page breaks are dropped,
// and columns become a slab of their levelled height.
func solid(slabs []slab) []slab {
	out := slabs[:0:0]
	for _, s := range slabs {
		switch {
		case s.next:
			continue
		case s.columns != nil:
			out = append(out, s.columns.block(s.with))
		default:
			out = append(out, s)
		}
	}
	return out
}

// block is the set as one slab.
func (c *columnSet) block(with bool) slab {
	cols, _, h := c.level(c.slabs, 100*length.M, true)
	draw := func(p *Pen, b Box) {
		for i, col := range cols {
			for _, s := range col {
				s.drawAt(p, Box{b.X + c.step*length.Length(i), b.Y, c.w, b.H})
			}
		}
	}
	return slab{h: h, draw: draw, with: with}
}
