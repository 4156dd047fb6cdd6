package pack

import (
	"math"
	"slices"
)

// A branchKey names what can be branched on, and the side.
type branchKey struct {
	h, size int
	le      bool
}

// A gain is how much the bound rose by branching, for each unit of change.
type gain struct {
	sum float64
	n   int
}

// learn notes how much branching raised the bound.
func (s *search) learn(k *knot, r *relaxation) {
	if k.step < 1e-6 {
		return
	}
	rise := r.value - k.from
	if k.bound >= s.vain() {
		rise = float64(s.vain()) - k.from
	}
	rise = max(0, rise) / k.step
	key := branchKey{k.by.h, k.by.size, k.by.le}
	g := s.gains[key]
	g.sum += rise
	g.n++
	s.gains[key] = g
	side := 0
	if k.by.le {
		side = 1
	}
	s.all[side].sum += rise
	s.all[side].n++
}

// expect is the rise to be expected of the bound for each unit of change.
func (s *search) expect(l limit, le bool) float64 {
	side := 0
	if le {
		side = 1
	}
	mean := 1.0
	if a := s.all[side]; a.n > 0 {
		mean = a.sum / float64(a.n)
	}
	g := s.gains[branchKey{l.h, l.size, le}]
	return (g.sum + 2*mean) / float64(g.n+2)
}

// score weighs how much is expected of branching on l, whose sum is v.
func (s *search) score(l limit, v float64) float64 {
	f := v - math.Floor(v)
	if min(f, 1-f) < 1e-5 {
		return 0
	}
	return max(f*s.expect(l, true), 1e-6) * max((1-f)*s.expect(l, false), 1e-6)
}

// thresholds are the heights from which on strips may be counted: with one piece
// a column, all there are, else those of the patterns in use.
func (s *search) thresholds(r *relaxation) []int {
	if s.kind == Strips {
		return s.in.heights
	}
	var hs []int
	for _, u := range r.use {
		hs = append(hs, s.m.pool[u.pattern].h)
	}
	slices.Sort(hs)
	return slices.Compact(hs)
}

// branchStrips chooses a height from which on the number of strips isn't whole.
func (s *search) branchStrips(r *relaxation) (limit, bool) {
	best, at := 0.0, limit{}
	for _, h := range s.thresholds(r) {
		l := limit{h: h, size: ofStrips}
		v := s.sum(l, r)
		if score := s.score(l, v); score > best {
			l.n = int(math.Floor(v))
			best, at = score, l
		}
	}
	return at, best > 0
}

// branchPieces chooses a size and a height from which on the number of its
// pieces isn't whole; le says that the lower side is the nearer.
func (s *search) branchPieces(r *relaxation) (limit, bool) {
	best, at := 0.0, limit{}
	for i := range s.left {
		for _, h := range s.in.heights {
			l := limit{h: h, size: i}
			v := s.sum(l, r)
			if score := s.score(l, v) * float64(s.in.sizes[i].w); score > best {
				l.n = int(math.Floor(v))
				l.le = v-math.Floor(v) < 0.5
				best, at = score, l
			}
		}
	}
	return at, best > 0
}

// branchAny chooses a count that is whole, but not fixed by the limits.
func (s *search) branchAny(k *knot, r *relaxation) (limit, bool) {
	sizes := len(s.left)
	if s.kind != Strips {
		sizes = 0
	}
	for i := -1; i < sizes; i++ {
		for _, h := range s.thresholds(r) {
			l := limit{h: h, size: i}
			l.n = int(math.Round(s.sum(l, r)))
			lo, hi := l.n == 0, false
			for _, o := range k.limits {
				if o.h == h && o.size == i && o.n == l.n {
					lo, hi = lo || !o.le, hi || o.le
				}
			}
			switch {
			case !lo:
				l.n--
				return l, true
			case !hi:
				l.le = i >= 0
				return l, true
			}
		}
	}
	return limit{}, false
}

// with adds a limit to limits, in place of a looser one of its kind.
func with(limits []limit, l limit) []limit {
	out := append(make([]limit, 0, len(limits)+1), limits...)
	for i, o := range out {
		if o.h == l.h && o.size == l.size && o.le == l.le {
			out[i] = l
			return out
		}
	}
	return append(out, l)
}

// sum is how often the limit's row counts the patterns used.
func (s *search) sum(l limit, r *relaxation) (v float64) {
	for _, u := range r.use {
		v += u.n * float64(l.times(&s.m.pool[u.pattern]))
	}
	return v
}

// needs gives, for heights h, the least number of strips that are at least h
// high: the pieces that fit no lower strip are packed by their least widths
// alone, which is one-dimensional cutting stock.
func (s *search) needs() []limit {
	in := s.in
	least := in.least()
	flat := make([]size, len(in.sizes))
	for _, l := range in.lies {
		if f := &flat[l.size]; f.w == 0 || l.rw < f.w {
			*f = size{w: l.rw, h: 1, n: in.sizes[l.size].n}
		}
	}
	sub := newInstance(flat, in.width)
	m := newMaster(sub, newStripPricer(sub, s.work), s.work)
	left := make([]int, len(flat))
	var limits []limit
	var basis []int
	last := 0
	for i := len(in.heights) - 1; i > 0; i-- {
		h := in.heights[i]
		any := false
		for j, l := range least {
			if l == h {
				left[j] = flat[j].n
				any = true
			}
		}
		if !any {
			continue
		}
		r := m.relax(left, nil, basis, 0, 1<<30, false)
		basis = r.basis
		if n := r.bound; n > last {
			limits = append(limits, limit{h: h, size: ofStrips, n: n})
			last = n
		}
		if s.work.stop() {
			break
		}
	}
	return limits
}
