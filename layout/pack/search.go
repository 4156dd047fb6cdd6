package pack

import (
	"container/heap"
	"math"
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
	brief  bool // gives up what is far from being of use
	open   queue
	goal   int                 // if not nought, a plan this high is good enough, and no other is of use
	same   func(a, b int) bool // whether two heights cost the same
	trifle func(a, b int) bool // whether what they differ in is worth little work; nil: it never is
	rough  int                 // bound at the root, if only estimated: the true one is no higher
	lost   int                 // least bound of a node that was given up
	nodes  int
	gains  map[branchKey]gain
	all    [2]gain
	must   []limit // hold for every plan
	proof  *quote  // prices that prove the bound at the root
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
		if s.kind == Strips && s.must == nil {
			s.must = s.needs()
		}
		heap.Push(&s.open, &knot{limits: s.must})
	}
	defer s.work.until(limit)()
	for len(s.open) > 0 && !s.work.stop() {
		k := s.open[0]
		s.raise(min(k.bound, s.lost))
		if k.bound >= s.vain() || s.settled() {
			break
		}
		heap.Pop(&s.open)
		// Follow one child after the other down to a leaf.
		for k != nil && k.bound < s.vain() && !s.work.stop() && !s.settled() {
			k = s.expand(k)
		}
		if k != nil {
			heap.Push(&s.open, k)
		}
	}
	least := min(s.vain(), s.lost)
	if len(s.open) > 0 {
		least = min(least, s.open[0].bound)
	}
	s.raise(least)
}

// raise raises the proved bound, unless bounds are only estimates.
func (s *search) raise(bound int) {
	if !s.lazy && !s.in.narrow {
		s.bound = min(max(s.bound, bound), s.cutoff)
	}
}

// expand solves a knot and branches. It gives the child to follow.
func (s *search) expand(k *knot) *knot {
	s.nodes++
	s.m.keep = s.nodes == 1
	r := s.m.relax(s.left, k.limits, k.basis, 0, s.vain(), s.lazy)
	if !r.feasible && r.bound < s.vain() && !s.work.stop() {
		r = s.m.relax(s.left, k.limits, nil, 0, s.vain(), s.lazy) // a basis gone bad
	}
	if s.nodes == 1 && s.lazy && r.feasible && !s.work.stop() {
		s.rough = r.bound
	}
	if s.m.keep {
		s.m.keep, s.proof = false, r.proof
	}
	k.bound = max(k.bound, r.bound)
	s.learn(k, &r)
	if k.bound >= s.vain() {
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
	if k.bound >= s.vain() {
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
