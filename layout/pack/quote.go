package pack

import (
	"math"
	"math/bits"
)

// A limit is a row of the master problem beyond the demands: it bounds, over
// all strips at least h high, their number (size is ofStrips) or the number of
// pieces of one size cut from them. The dual of such a row only shifts the prices
// in those strips, so the pricing stays the same knapsack. Or it is a cut.
type limit struct {
	h, size int
	le      bool // at most n, else at least n
	n       int
	cut     *cut // if size is ofCut
}

// What a limit may bound beside the pieces of a size.
const (
	ofStrips = -1
	ofCut    = -2
)

// times gives how often the row counts a pattern.
func (l *limit) times(p *pattern) int {
	switch {
	case l.size == ofCut:
		return l.cut.times(p)
	case p.h < l.h:
		return 0
	case l.size == ofStrips:
		return 1
	}
	for _, t := range p.cover {
		if t.size == l.size {
			return t.n
		}
	}
	return 0
}

// A quote is a set of prices, whole numbers in units of 1/scale: one for a
// piece of each size and, through the limits, one for a strip from a height on.
// Being whole, they make bounds that hold in exact arithmetic.
type quote struct {
	scale  int64
	base   []int64
	limits []limit
	dual   []int64 // of each limit
	free   bool    // strips cost nothing: sought is a proof that there is no solution
	byCut  bool    // some limit is on a size: prices differ with the height
}

// newQuote rounds the duals of the demands (y[:len(left)]) and limits down to
// whole numbers. Duals of the wrong sign become nought.
func newQuote(y []float64, left []int, limits []limit) *quote {
	sum := 1.0
	for i, n := range left {
		sum += max(0, y[i]) * float64(n)
	}
	for k, l := range limits {
		sum += math.Abs(y[len(left)+k]) * float64(l.n+1)
	}
	_, e := math.Frexp(sum)
	q := &quote{scale: 1 << max(0, min(40, 57-e)), limits: limits}
	q.base = make([]int64, len(left))
	for i := range left {
		q.base[i] = int64(max(0, y[i]) * float64(q.scale))
	}
	for k, l := range limits {
		v := y[len(left)+k]
		if l.le == (v > 0) {
			v = 0
		}
		q.dual = append(q.dual, int64(math.Floor(v*float64(q.scale))))
		q.byCut = q.byCut || l.size >= 0
	}
	return q
}

// size is the price of a piece of a size cut from a strip h high.
func (q *quote) size(s, h int) int64 {
	v := q.base[s]
	if q.byCut {
		for k, l := range q.limits {
			if l.size == s && l.h <= h {
				v += q.dual[k]
			}
		}
	}
	return v
}

// most is the highest price of a size over all heights of strips.
func (q *quote) most(s int) int64 {
	v := q.base[s]
	if q.byCut {
		for k, l := range q.limits {
			if l.size == s && q.dual[k] > 0 {
				v += q.dual[k]
			}
		}
	}
	return v
}

// strip is the price of a strip h high as such.
func (q *quote) strip(h int) (v int64) {
	for k, l := range q.limits {
		if l.size == ofStrips && l.h <= h {
			v += q.dual[k]
		}
	}
	return v
}

// value is the whole worth of what is left to cut.
func (q *quote) value(left []int) (v int64) {
	for i, n := range left {
		v += q.base[i] * int64(n)
	}
	for k, l := range q.limits {
		v += q.dual[k] * int64(l.n)
	}
	return v
}

// toBeat is the worth above which a strip h high improves the solution.
func (q *quote) toBeat(h int) int64 {
	if q.free {
		return q.scale >> 24
	}
	return int64(h) * q.scale
}

// bound is the least total height of strips that the prices prove, where no
// strip of height h is worth more than t/cost·h: the prices times cost/t are
// feasible for the dual problem (Farley 1990). It is rounded up, as heights are
// whole.
func (q *quote) bound(left []int, t, cost int64) int {
	v := q.value(left)
	if v <= 0 {
		return 0
	}
	t = max(t, 1)
	if q.free || t > cost*q.scale {
		hi, lo := bits.Mul64(uint64(v), uint64(cost*q.scale))
		if hi >= uint64(t)>>2 {
			return math.MaxInt32
		}
		d, _ := bits.Div64(hi, lo, uint64(t))
		v = int64(d)
	}
	return int(min((v+q.scale-1)/q.scale, math.MaxInt32))
}

// fair gives the prices scaled down so far that no strip is worth more than its
// height, where none of height h is worth more than t/cost·h.
func (q *quote) fair(t, cost int64) *quote {
	if t <= cost*q.scale {
		return q
	}
	part := func(v int64) int64 {
		hi, lo := bits.Mul64(uint64(max(v, -v)), uint64(cost*q.scale))
		d, r := bits.Div64(hi, lo, uint64(t))
		if v >= 0 {
			return int64(d)
		}
		return -int64(d + min(r, 1))
	}
	f := &quote{scale: q.scale, limits: q.limits, byCut: q.byCut}
	for _, v := range q.base {
		f.base = append(f.base, part(v))
	}
	for _, v := range q.dual {
		f.dual = append(f.dual, part(v))
	}
	return f
}

// less128 says whether a·b < c·d, all positive.
func less128(a, b, c, d int64) bool {
	h1, l1 := bits.Mul64(uint64(a), uint64(b))
	h2, l2 := bits.Mul64(uint64(c), uint64(d))
	return h1 < h2 || h1 == h2 && l1 < l2
}
