package pack

import (
	"cmp"
	"math"
	"slices"
)

// A stackPricer prices strips whose columns hold several rows. A column of a
// width is worth the best stack of rows under the strip's height, a bounded
// knapsack over the height; a strip is worth the best row of columns, a
// knapsack over the width. One pass over the lies, narrowest first, gives the
// columns of every width and height. As the columns don't know of each other,
// a strip may count more pieces of a size than are left; so its worth is an
// upper bound, and the pattern made of it is filled column by column with what
// is really left.
type stackPricer struct {
	in     *instance
	widths []int   // the distinct widths of lies, ascending
	groups [][]int // the lies of each width
	top    int     // heights of strips are at most this
	near   int     // and at most this where only the likely ones are looked at
	sums   *reach
	plain  *stripPricer
	stack  knapsack
	row    knapsack
	one    knapsack
	worth  []int64 // of a column of each width and height
	upto   []int   // layers of the stack's knapsack up to each width
	offers []offer
}

// An offer is a strip that promises a worth.
type offer struct {
	h      int
	worth  int64
	each   float64 // worth over height
	across []int   // group of each column
}

// maxStack bounds the heights of strips with stacks, in units: the tables grow
// with them.
const maxStack = 4096

// newStackPricer makes a pricer for strips up to top high. It is nil where the
// heights are too fine for its tables.
func newStackPricer(in *instance, top int, work *meter) *stackPricer {
	if len(in.heights) == 0 || in.heights[len(in.heights)-1] > maxStack {
		return nil
	}
	s := &stackPricer{in: in, top: min(top, maxStack)}
	s.near = min(s.top, 3*in.heights[len(in.heights)-1])
	s.plain = newStripPricer(in, work)
	s.stack.work, s.row.work, s.one.work = work, work, work
	order := make([]int, len(in.lies))
	for k := range order {
		order[k] = k
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(in.lies[a].w, in.lies[b].w) })
	for _, k := range order {
		if n := len(s.widths); n == 0 || s.widths[n-1] != in.lies[k].w {
			s.widths = append(s.widths, in.lies[k].w)
			s.groups = append(s.groups, nil)
		}
		n := len(s.groups) - 1
		s.groups[n] = append(s.groups[n], k)
	}
	s.sums = newReach(in.heights, s.top, work)
	return s
}

// columns computes the worth of the best column of every width and height.
func (s *stackPricer) columns(q *quote, left []int, top int) {
	s.stack.reset(top)
	s.worth = resize(s.worth, len(s.widths)*(top+1))
	s.upto = resize(s.upto, len(s.widths))
	for g, lies := range s.groups {
		for _, k := range lies {
			l := s.in.lies[k]
			s.stack.add(k, l.h, left[l.size], q.base[l.size])
		}
		copy(s.worth[g*(top+1):], s.stack.worth)
		s.upto[g] = len(s.stack.layers)
	}
	s.stack.work.spend(len(s.worth) / 8)
}

// price implements pricer. Where a limit is on pieces of a size it is not to be
// used.
func (s *stackPricer) price(q *quote, left []int, lazy bool, found func(pattern) bool) (t, cost int64) {
	plain := false
	s.plain.price(q, left, lazy, func(p pattern) bool {
		fresh := found(p)
		plain = plain || fresh
		return fresh
	})
	if plain {
		return math.MaxInt64, 1 // strips of one piece a column say nothing of others
	}
	top := s.top
	if lazy {
		top = s.near
	}
	s.columns(q, left, top)
	s.sift(q, top)
	// Heights come in the order of what they promise at best; so the first that
	// isn't looked at bounds all the others.
	r := ratio{0, 1}
	news, tries := 0, 0
	for len(s.offers) > 0 {
		o := s.best()
		if r.t > 0 && !less128(r.t, int64(o.h), o.worth, r.cost) {
			break // no other is worth more than what was found
		}
		if news >= enough || lazy && tries >= 3*enough || o.worth <= q.toBeat(o.h) || s.stack.work.stop() {
			r.add(o.worth, int64(o.h))
			break
		}
		o = s.strip(o.h, q)
		r.add(o.worth, int64(o.h))
		if o.worth <= q.toBeat(o.h) {
			tries++
			continue
		}
		if tries >= 3*enough {
			continue // only its worth is wanted
		}
		if s.try(o, q, left, found) {
			news++
		} else {
			tries++
		}
	}
	if lazy || s.top == maxStack {
		r.add(s.density(q, left)) // higher strips are of use, too
	}
	return r.t, r.cost
}

// try makes patterns of an offer in several ways, and gives whether one of them
// is of use and was news.
func (s *stackPricer) try(o offer, q *quote, left []int, found func(pattern) bool) bool {
	news := false
	for _, p := range []pattern{s.fill(o, q, left), s.build(o.h, true, q, left), s.build(o.h, false, q, left)} {
		if p.h > 0 && p.worth(q)+q.strip(p.h) > q.toBeat(p.h) {
			news = found(p) || news
		}
	}
	return news
}

// sift bounds the worth of strips of every height by their densest column, and
// makes offers of them.
func (s *stackPricer) sift(q *quote, top int) {
	s.offers = s.offers[:0]
	n := top + 1
	for h := s.sums.lift(s.in.heights[0]); h <= top; h = s.sums.lift(h + 1) {
		most, last := 0.0, int64(0)
		for g, w := range s.widths {
			if v := s.worth[g*n+h]; v > last {
				last = v
				most = max(most, float64(v)/float64(w))
			}
		}
		// The margin covers what floating point may have lost.
		worth := int64(most*float64(s.in.cap)*(1+1e-9)) + q.strip(h) + 1
		s.offers = append(s.offers, offer{h: h, worth: worth, each: float64(worth) / float64(h)})
	}
	s.stack.work.spend(2 * len(s.widths) * len(s.offers))
	for i := len(s.offers)/2 - 1; i >= 0; i-- {
		s.sink(i)
	}
}

// best takes the most promising of the offers, a heap, out.
func (s *stackPricer) best() offer {
	o := s.offers[0]
	n := len(s.offers) - 1
	s.offers[0] = s.offers[n]
	s.offers = s.offers[:n]
	s.sink(0)
	return o
}

// sink restores the heap of offers below i.
func (s *stackPricer) sink(i int) {
	for {
		c := 2*i + 1
		if c >= len(s.offers) {
			return
		}
		if c+1 < len(s.offers) && s.offers[c+1].each > s.offers[c].each {
			c++
		}
		if s.offers[i].each >= s.offers[c].each {
			return
		}
		s.offers[i], s.offers[c] = s.offers[c], s.offers[i]
		i = c
	}
}

// strip finds the best strip of a height.
func (s *stackPricer) strip(h int, q *quote) offer {
	in := s.in
	s.row.reset(in.cap)
	last := int64(0)
	for g, w := range s.widths {
		if v := s.worth[g*(s.stack.capacity+1)+h]; v > last {
			last = v
			s.row.add(g, w, in.cap/w, v)
		}
	}
	o := offer{h: h, worth: s.row.worth[in.cap] + q.strip(h)}
	if o.worth > q.toBeat(h) {
		s.row.trace(len(s.row.layers), in.cap, func(g, n int) {
			for range n {
				o.across = append(o.across, g)
			}
		})
	}
	return o
}

// density bounds worth over height of strips of any height: every column is
// taken to be full of the rows that are worth most for their height.
func (s *stackPricer) density(q *quote, left []int) (t, cost int64) {
	s.row.reset(s.in.cap)
	last := int64(0)
	for g, lies := range s.groups {
		for _, k := range lies {
			l := s.in.lies[k]
			if left[l.size] > 0 {
				last = max(last, q.base[l.size]/int64(l.h)+1)
			}
		}
		s.row.add(g, s.widths[g], s.in.cap/s.widths[g], last)
	}
	extra := int64(0)
	for k, l := range q.limits {
		if l.size < 0 && q.dual[k] > 0 {
			extra += q.dual[k]
		}
	}
	return s.row.worth[s.in.cap] + extra/int64(s.top+1) + 1, 1
}

// fill makes the pattern of an offer from what is left, each column anew.
func (s *stackPricer) fill(o offer, q *quote, left []int) pattern {
	in := s.in
	rem := append([]int(nil), left...)
	p := pattern{}
	room := in.width
	put := func(g int) bool {
		c, w, ok := s.known(g, o.h, room, rem)
		if !ok {
			c, w = s.column(s.widths[g], o.h, room, q, rem)
		}
		if len(c.rows) == 0 {
			return false
		}
		room -= w
		p.cols = append(p.cols, c)
		return true
	}
	slices.SortStableFunc(o.across, func(a, b int) int { return b - a })
	for _, g := range o.across {
		put(g)
	}
	for g := len(s.widths) - 1; g >= 0; {
		if int64(s.lies(g)) > room || !put(g) {
			g--
		}
	}
	return p.finish(s.in)
}

// build makes a pattern of a height column by column: each time the one worth
// most beyond what its width should bring, or for its width.
func (s *stackPricer) build(h int, beyond bool, q *quote, left []int) pattern {
	in := s.in
	rem := append([]int(nil), left...)
	p := pattern{}
	room := in.width
	each := float64(q.toBeat(h)-q.strip(h)) / float64(in.cap)
	for {
		s.one.reset(h)
		best, upto := math.Inf(-1), 0
		for g, lies := range s.groups {
			if s.lies(g) > room {
				break
			}
			for _, k := range lies {
				if l := in.lies[k]; l.rw <= room {
					s.one.add(k, l.h, rem[l.size], q.base[l.size])
				}
			}
			v := float64(s.one.worth[h])
			if v == 0 {
				continue
			}
			if beyond {
				v -= each * float64(s.widths[g])
			} else {
				v /= float64(s.widths[g])
			}
			if v > best {
				best, upto = v, len(s.one.layers)
			}
		}
		if upto == 0 {
			break
		}
		c, wide := s.take(upto, h, rem)
		room -= wide
		p.cols = append(p.cols, c)
	}
	return p.finish(s.in)
}

// take reads a column off the knapsack and lowers what is left by it. It gives
// the column's true width, too.
func (s *stackPricer) take(layers, h int, left []int) (column, int64) {
	c := column{n: 1}
	wide := int64(0)
	s.one.trace(layers, h, func(k, n int) {
		l := s.in.lies[k]
		if n = min(n, left[l.size]); n == 0 {
			return // taken in its other orientation
		}
		left[l.size] -= n
		wide = max(wide, l.rw)
		c.w = max(c.w, l.w)
		c.add(k, n)
	})
	return c, wide
}

// known reads the best column of a group and height off the tables, if so many
// pieces are left, and lowers what is left by them.
func (s *stackPricer) known(g, h int, room int64, left []int) (column, int64, bool) {
	in := s.in
	c := column{n: 1}
	wide := int64(0)
	ok := true
	s.stack.trace(s.upto[g], h, func(k, n int) {
		l := in.lies[k]
		wide = max(wide, l.rw)
		c.w = max(c.w, l.w)
		ok = ok && n <= left[l.size]
		left[l.size] -= n
		c.add(k, n)
	})
	s.stack.work.spend(s.upto[g] + 20)
	if ok && wide <= room {
		return c, wide, true
	}
	for _, r := range c.rows {
		left[in.lies[r.size].size] += r.n
	}
	return c, 0, false
}

// add puts n rows of lie k into the column.
func (c *column) add(k, n int) {
	for i := range c.rows {
		if c.rows[i].size == k {
			c.rows[i].n += n
			return
		}
	}
	c.rows = append(c.rows, take{k, n})
}

// lies is the true width of the narrowest lie of a group.
func (s *stackPricer) lies(g int) int64 {
	w := s.in.lies[s.groups[g][0]].rw
	for _, k := range s.groups[g] {
		w = min(w, s.in.lies[k].rw)
	}
	return w
}

// column makes the best column up to w wide and h high from what is left, which
// it lowers, and gives its true width.
func (s *stackPricer) column(w, h int, room int64, q *quote, left []int) (column, int64) {
	in := s.in
	s.one.reset(h)
	for k, l := range in.lies {
		if l.w <= w && l.rw <= room && l.h <= h {
			s.one.add(k, l.h, left[l.size], q.base[l.size])
		}
	}
	return s.take(len(s.one.layers), h, left)
}

// merge joins equal columns.
func merge(cols []column) []column {
	var out []column
next:
	for _, c := range cols {
		for i := range out {
			if out[i].w == c.w && slices.Equal(out[i].rows, c.rows) {
				out[i].n += c.n
				continue next
			}
		}
		out = append(out, c)
	}
	return out
}
