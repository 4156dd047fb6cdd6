package pack

import "math"

// A filler cuts one cloth in strips or stacks so that what comes from it is
// worth most at given prices: a knapsack of strips over the length, in which a
// strip of each height counts as the best knapsack over the width. Strips don't
// know of each other's pieces, so the knapsack's worth is an upper bound on
// every cutting of the kind; for a filling the strips are cut one after the
// other, each from what is really left, and the knapsack is solved again for
// the rest of the length.
type filler struct {
	in     *instance
	top    int          // the cloth's length in units
	flip   bool         // strips run along the cloth
	stacks *stackPricer // nil where columns hold one piece each
	knap   knapsack     // over the width
	long   knapsack     // over the length
	best   []int
	heads  []int // heights that strips may have
	most   []int64
}

// maxFill bounds a filler's length in units: its tables grow with it.
const maxFill = 4096

// newFiller makes a filler for a cloth; with flip, strips run along it. It is nil
// where nothing fits or where the sizes are too fine for its tables.
func newFiller(sizes []size, c Cloth, kind Kind, flip bool, work *meter) *filler {
	if flip {
		turned := make([]size, len(sizes))
		for i, s := range sizes {
			turned[i] = size{w: s.h, h: s.w, n: s.n, turn: s.turn}
		}
		sizes, c = turned, Cloth{c.L, c.W}
	}
	in := newInstance(sizes, c.W)
	f := &filler{in: in, flip: flip}
	if len(in.lies) == 0 || in.narrow || in.lies[0].rh > c.L || c.L/in.unitY > maxFill {
		return nil
	}
	f.top = int(c.L / in.unitY)
	f.knap.work, f.long.work = work, work
	if kind == Strips {
		return f
	}
	f.stacks = newStackPricer(in, f.top, work)
	if f.stacks == nil {
		return nil
	}
	return f
}

// prices makes a quote of prices alone.
func prices(base []int64) *quote { return &quote{base: base} }

// fill cuts the cloth from what is left, which it lowers.
func (f *filler) fill(left []int, q *quote) node {
	root := node{dir: Across, size: -1}
	for rest := f.top; rest > 0; {
		h, n := f.next(rest, q, left)
		if h == 0 {
			break
		}
		p := f.strip(h, q, left)
		if p.h == 0 {
			break
		}
		for ; n > 0 && p.h <= rest && p.proper(left); n-- {
			root.parts = append(root.parts, p.node(f.in, left))
			rest -= p.h
		}
	}
	root = across(root.parts)
	if f.flip {
		root = root.flipped()
	}
	return root
}

// flipped gives the node with width and length exchanged.
func (n node) flipped() node {
	n.w, n.h = n.h, n.w
	switch n.dir {
	case Across:
		n.dir = Along
	case Along:
		n.dir = Across
	}
	parts := make([]node, len(n.parts))
	for i, p := range n.parts {
		parts[i] = p.flipped()
	}
	n.parts = parts
	return n
}

// next gives the highest strip of the best filling of a length, and how many of
// this height there are in it; nought where nothing fits.
func (f *filler) next(length int, q *quote, left []int) (h, n int) {
	f.hopes(length, q, left)
	f.fit(length)
	f.long.trace(len(f.long.layers), length, func(k, times int) {
		switch {
		case f.heads[k] > h:
			h, n = f.heads[k], times
		case f.heads[k] == h:
			n += times
		}
	})
	return h, n
}

// fit solves the knapsack over a length.
func (f *filler) fit(length int) {
	f.long.reset(length)
	for k, h := range f.heads {
		if v := f.most[k]; v > 0 {
			f.long.add(k, h, length/h, v)
		}
	}
}

// hopes estimates the worth of a strip of every height up to top.
func (f *filler) hopes(top int, q *quote, left []int) {
	f.heads, f.most = f.heads[:0], f.most[:0]
	if f.stacks != nil {
		s := f.stacks
		s.columns(q, left, top)
		s.sift(q, top)
		for _, o := range s.offers {
			if o.worth > 1 {
				f.heads, f.most = append(f.heads, o.h), append(f.most, o.worth)
			}
		}
		return
	}
	in := f.in
	f.knap.reset(in.cap)
	for k, l := range in.lies {
		if l.h > top {
			break
		}
		f.knap.add(k, l.w, left[l.size], q.base[l.size])
		if k+1 == len(in.lies) || in.lies[k+1].h != l.h {
			f.heads, f.most = append(f.heads, l.h), append(f.most, f.knap.worth[in.cap])
		}
	}
}

// strip cuts one strip of a height, after hopes for the same prices and pieces.
func (f *filler) strip(h int, q *quote, left []int) pattern {
	if f.stacks == nil {
		return f.plain(h, q, left)
	}
	s := f.stacks
	p := s.fill(s.strip(h, q), q, left)
	return p
}

// row fills the knapsack over the width for a strip of one piece a column.
func (f *filler) row(h int, q *quote, left []int) {
	f.best = f.in.best(h, f.best)
	f.knap.reset(f.in.cap)
	for i, b := range f.best {
		if b >= 0 {
			f.knap.add(b, f.in.lies[b].w, left[i], q.base[i])
		}
	}
}

// plain cuts a strip of one piece a column.
func (f *filler) plain(h int, q *quote, left []int) pattern {
	in := f.in
	f.row(h, q, left)
	p := pattern{}
	room := in.width
	f.knap.trace(len(f.knap.layers), in.cap, func(k, n int) {
		l := in.lies[k]
		if n = min(n, int(room/l.rw)); n > 0 {
			room -= int64(n) * l.rw
			p.cols = append(p.cols, column{n, l.w, []take{{k, 1}}})
		}
	})
	return p.finish(in)
}

// bound is a worth that no cutting of the cloth in strips, or in stacks, exceeds.
func (f *filler) bound(q *quote, left []int) int64 {
	f.heads, f.most = f.heads[:0], f.most[:0]
	if s := f.stacks; s != nil {
		s.columns(q, left, f.top)
		for h := s.sums.lift(f.in.heights[0]); h <= f.top; h = s.sums.lift(h + 1) {
			f.heads, f.most = append(f.heads, h), append(f.most, s.strip(h, q).worth)
		}
	} else {
		for _, h := range f.in.heights {
			if h <= f.top {
				f.row(h, q, left)
				f.heads, f.most = append(f.heads, h), append(f.most, f.knap.worth[f.in.cap])
			}
		}
	}
	f.fit(f.top)
	if v := f.long.worth[f.top]; v < math.MaxInt64/2 {
		return v
	}
	return math.MaxInt64 / 2
}
