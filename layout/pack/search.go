package pack

import (
	"container/heap"
	"math"
	"slices"
)

// A search looks for the fewest strips' height on cloth of one width.
type search struct {
	m      *master
	in     *instance
	kind   Kind
	lazy   bool    // bounds are estimates only
	left   []int   // the demands
	cutoff int     // height of the best plan known; only less is of use
	plan   []usage // the best plan found, if better than what was known
	bound  int     // proved: no plan is lower
	work   *meter
	hasty  bool // gives up early
	open   queue
	goal   int                 // if not nought, a plan this high is good enough, and no other is of use
	same   func(a, b int) bool // whether two heights cost the same
	lost   int                 // least bound of a node that was given up
	nodes  int
	gains  map[branchKey]gain
	all    [2]gain
}

// A usage is a pattern of the pool used n times.
type usage struct{ pattern, n int }

// newSearch prepares a search for plans of a kind lower than cutoff.
func newSearch(in *instance, kind Kind, cutoff int, work *meter) *search {
	s := &search{in: in, kind: kind, left: in.counts(), cutoff: cutoff, work: work, lost: math.MaxInt, gains: map[branchKey]gain{}}
	s.same = func(a, b int) bool { return a == b }
	var pr pricer = newStripPricer(in, work)
	if kind != Strips {
		if sp := newStackPricer(in, cutoff, work); sp != nil {
			pr = sp
		} else {
			s.kind = Strips
		}
	}
	s.m = newMaster(in, pr, work)
	s.m.twice = s.kind != Strips
	s.level()
	if reachable(len(in.heights), s.cutoff) {
		s.m.reach = newReach(in.heights, s.cutoff, work)
	}
	return s
}

// level makes a first plan: strips as high as the highest piece left must be,
// filled with the highest pieces that still fit.
func (s *search) level() {
	in := s.in
	left := in.counts()
	var plan []usage
	least := in.least()
	for {
		h := 0
		for i, n := range left {
			if n > 0 {
				h = max(h, least[i])
			}
		}
		if h == 0 {
			break
		}
		p := pattern{h: h}
		room := in.width
		for k := len(in.lies) - 1; k >= 0; k-- {
			l := in.lies[k]
			if n := min(left[l.size], int(room/l.rw)); l.h <= h && n > 0 {
				left[l.size] -= n
				room -= int64(n) * l.rw
				p.cols = append(p.cols, column{n, l.w, []take{{k, 1}}})
			}
		}
		p.sumUp(in)
		n := 1 + p.times(left)
		for _, t := range p.cover {
			left[t.size] -= (n - 1) * t.n
		}
		plan = append(plan, usage{s.m.add(p), n})
	}
	s.accept(plan)
}

// A knot is a node of the branching tree.
type knot struct {
	limits []limit
	basis  []int
	bound  int
	depth  int
	seq    int
	from   float64 // value of the parent's relaxation
	by     limit   // what the parent was branched on
	step   float64 // and how far that is from the parent's relaxation
}

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

// A queue gives the knot of least bound first, the deepest among equals.
type queue []*knot

func (q queue) Len() int { return len(q) }
func (q queue) Less(i, j int) bool {
	a, b := q[i], q[j]
	if a.bound != b.bound {
		return a.bound < b.bound
	}
	if a.depth != b.depth {
		return a.depth > b.depth
	}
	return a.seq > b.seq
}
func (q queue) Swap(i, j int) { q[i], q[j] = q[j], q[i] }

// Push implements heap.Interface.
func (q *queue) Push(x any) { *q = append(*q, x.(*knot)) }

// Pop implements heap.Interface.
func (q *queue) Pop() any {
	old := *q
	k := old[len(old)-1]
	*q = old[:len(old)-1]
	return k
}

// run searches until the best plan is proved or the work reaches a limit. It may
// be called again to go on.
func (s *search) run(limit int64) {
	if s.nodes == 0 {
		k := &knot{}
		if s.kind == Strips {
			k.limits = s.needs()
		}
		heap.Push(&s.open, k)
	}
	total := s.work.limit
	s.work.limit = min(total, limit)
	defer func() { s.work.limit = total }()
	for len(s.open) > 0 && !s.work.stop() {
		k := s.open[0]
		s.raise(min(k.bound, s.lost))
		if k.bound >= s.cutoff || s.settled() {
			break
		}
		heap.Pop(&s.open)
		// Follow one child after the other down to a leaf.
		for k != nil && k.bound < s.cutoff && !s.work.stop() && !s.settled() {
			k = s.expand(k)
		}
		if k != nil {
			heap.Push(&s.open, k)
		}
	}
	least := min(s.cutoff, s.lost)
	if len(s.open) > 0 {
		least = min(least, s.open[0].bound)
	}
	s.raise(least)
}

// raise raises the proved bound, unless bounds are only estimates.
func (s *search) raise(bound int) {
	if !s.lazy {
		s.bound = min(max(s.bound, bound), s.cutoff)
	}
}

// expand solves a knot and branches. It gives the child to follow.
func (s *search) expand(k *knot) *knot {
	s.nodes++
	r := s.m.relax(s.left, k.limits, k.basis, 0, s.cutoff, s.lazy)
	if !r.feasible && r.bound < s.cutoff && !s.work.stop() {
		r = s.m.relax(s.left, k.limits, nil, 0, s.cutoff, s.lazy) // a basis gone bad
	}
	k.bound = max(k.bound, r.bound)
	s.learn(k, &r)
	if k.bound >= s.cutoff {
		return nil
	}
	if s.work.stop() {
		k.basis = r.basis
		return k // to be solved again, should there be more work to spend
	}
	if !r.feasible {
		s.lose(k)
		return nil
	}
	l, ok := s.branchStrips(&r)
	if s.nodes == 1 {
		s.dive(k.limits, r)
	}
	if !ok {
		s.dive(s.fixed(k.limits, &r), r)
		if s.kind == Strips {
			l, ok = s.branchPieces(&r)
		}
		if !ok {
			l, ok = s.branchAny(k, &r)
		}
	}
	if k.bound >= s.cutoff {
		return nil
	}
	if !ok {
		s.lose(k)
		return nil
	}
	v := s.sum(l, &r)
	child := func(l limit) *knot {
		return &knot{limits: with(k.limits, l), basis: r.basis, bound: k.bound, depth: k.depth + 1, seq: s.nodes,
			from: r.value, by: l, step: math.Abs(float64(l.n) - v)}
	}
	down, up := l, l
	down.le = true
	up.n, up.le = up.n+1, false
	if l.size >= 0 && l.le {
		down, up = up, down
	}
	heap.Push(&s.open, child(down))
	return child(up)
}

// lose gives a knot up unsolved.
func (s *search) lose(k *knot) { s.lost = min(s.lost, k.bound) }

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

// learn notes how much branching raised the bound.
func (s *search) learn(k *knot, r *relaxation) {
	if k.step < 1e-6 {
		return
	}
	rise := r.value - k.from
	if k.bound >= s.cutoff {
		rise = float64(s.cutoff) - k.from
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
		l := limit{h: h, size: -1}
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

// fixed adds limits that keep the number of strips of every height.
func (s *search) fixed(limits []limit, r *relaxation) []limit {
	for _, h := range s.thresholds(r) {
		l := limit{h: h, size: -1}
		l.n = int(math.Round(s.sum(l, r)))
		limits = with(limits, l)
		l.le = true
		limits = with(limits, l)
	}
	return limits
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
			limits = append(limits, limit{h: h, size: -1, n: n})
			last = n
		}
		if s.work.stop() {
			break
		}
	}
	return limits
}

// dive fixes patterns of the relaxed solution one after the other, solving
// again after each, until a plan is found or is sure to be no better.
func (s *search) dive(limits []limit, r relaxation) {
	left := append([]int(nil), s.left...)
	limits = append([]limit(nil), limits...)
	var plan []usage
	base := 0
	for !s.work.stop() {
		fix := func(j, n int) {
			p := &s.m.pool[j]
			n = min(n, p.times(left))
			if n <= 0 {
				return
			}
			plan = append(plan, usage{j, n})
			base += n * p.h
			for _, t := range p.cover {
				left[t.size] -= n * t.n
			}
			for k := range limits {
				limits[k].n -= n * limits[k].times(p)
			}
		}
		before := len(plan)
		for _, u := range r.use {
			fix(u.pattern, int(u.n+1e-6))
		}
		if len(plan) == before {
			best := share{n: -1}
			for _, u := range r.use {
				if u.n > best.n && s.m.pool[u.pattern].times(left) > 0 {
					best = u
				}
			}
			if best.n < 0 {
				return
			}
			fix(best.pattern, 1)
		}
		for k := range limits {
			if limits[k].n < 0 {
				if limits[k].le {
					return
				}
				limits[k].n = 0
			}
		}
		if base >= s.cutoff {
			return
		}
		if done(left) {
			s.cutoff = base
			s.plan = plan
			return
		}
		r = s.m.relax(left, limits, r.basis, base, s.cutoff, s.kind != Strips)
		if base+r.bound >= s.cutoff || !r.feasible {
			return
		}
	}
}

// done says whether nothing is left to cut.
func done(left []int) bool {
	for _, n := range left {
		if n > 0 {
			return false
		}
	}
	return true
}
