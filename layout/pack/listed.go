package pack

import (
	"cmp"
	"slices"
)

// A listPricer prices the patterns of a list, which holds all that a plan of use
// can be made of. So every bound that it leads to holds for such plans alone.
type listPricer struct {
	list   []pattern // lowest first
	cuts   []*cut
	counts [][]take // of each pattern, which cuts count it and how often
	prices []int64
	duals  []int64 // of each cut
	offers []bid
	work   *meter
}

// A bid is a pattern of the list that improves the solution, and how much so.
type bid struct {
	at   int
	gain int64
}

// mostBids is how many patterns are told at a time.
const mostBids = 24

// price implements pricer. Of what is not left patterns are told without it.
func (l *listPricer) price(q *quote, left []int, _ bool, found func(pattern) bool) (t, cost int64) {
	r := ratio{0, 1}
	l.offers = l.offers[:0]
	l.each(q, left, func(i int, worth int64) {
		h := l.list[i].h
		r.add(worth, int64(h))
		if gain := worth - q.toBeat(h); gain > 0 {
			l.offers = append(l.offers, bid{i, gain})
		}
	})
	l.work.spend(20 * len(l.offers))
	slices.SortStableFunc(l.offers, func(a, b bid) int { return cmp.Compare(b.gain, a.gain) })
	for _, o := range l.offers[:min(len(l.offers), mostBids)] {
		found(l.list[o.at].within(left))
	}
	return r.t, r.cost
}

// each tells the worth of every pattern.
func (l *listPricer) each(q *quote, left []int, f func(i int, worth int64)) {
	l.load(q)
	h, extra := -1, int64(0)
	work := 0
	for i := range l.list {
		p := &l.list[i]
		if p.h != h {
			h = p.h
			extra = q.strip(h)
			l.quoteAt(q, h, len(left))
		}
		worth := extra
		for _, t := range p.cover {
			worth += l.prices[t.size] * int64(min(t.n, left[t.size]))
		}
		for _, t := range l.counts[i] {
			worth += l.duals[t.size] * int64(t.n)
		}
		work += 6 + len(p.cover) + len(l.counts[i])
		f(i, worth)
	}
	l.work.spend(work)
}

// load notes the prices of cuts, and counts the patterns in those that are new.
func (l *listPricer) load(q *quote) {
	clear(l.duals)
	at := 0
	for k, lim := range q.limits {
		if lim.size != ofCut {
			continue
		}
		for at < len(l.cuts) && l.cuts[at] != lim.cut {
			at++ // it is no more in use
		}
		if at == len(l.cuts) {
			l.count(lim.cut)
		}
		l.duals[at] = q.dual[k]
	}
}

// count adds a cut.
func (l *listPricer) count(c *cut) {
	at := len(l.cuts)
	l.cuts, l.duals = append(l.cuts, c), append(l.duals, 0)
	for i := range l.list {
		if n := c.times(&l.list[i]); n > 0 {
			l.counts[i] = append(l.counts[i], take{at, n})
		}
	}
	l.work.spend(10 * len(l.list))
}

// quoteAt notes what pieces are worth in strips h high.
func (l *listPricer) quoteAt(q *quote, h, sizes int) {
	l.prices = resize(l.prices, sizes)
	for i := range l.prices {
		l.prices[i] = q.size(i, h)
	}
	l.work.spend(sizes * (1 + len(q.limits)/4))
}

// keep drops the patterns that cost more than they are worth by more than a gap.
func (l *listPricer) keep(q *quote, left []int, gap int64) {
	n := 0
	l.each(q, left, func(i int, worth int64) {
		if int64(l.list[i].h)*q.scale-worth <= gap {
			l.list[n], l.counts[n] = l.list[i], l.counts[i]
			n++
		}
	})
	l.list, l.counts = l.list[:n], l.counts[:n]
}

// within gives the pattern with no more pieces than are left.
func (p pattern) within(left []int) pattern {
	if p.proper(left) {
		return p
	}
	out := pattern{h: p.h, cols: p.cols}
	for _, t := range p.cover {
		if n := min(t.n, left[t.size]); n > 0 {
			out.cover = append(out.cover, take{t.size, n})
		}
	}
	return out
}
