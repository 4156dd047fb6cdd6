package pack

import (
	"cmp"
	"slices"
	"sort"
)

// The most patterns that are listed: so many for each unit that is asked for above
// the bound, and in all.
const (
	fewListed  = 300
	mostListed = 20_000
)

// A closer ends a search: it lists all patterns that a plan up to a height may
// have, and looks for a plan or a proof over these alone. Beginning at the bound,
// where they are few, it asks of twice as much each time that it proved that
// there is no plan so low.
type closer struct {
	s      *search
	must   []limit // hold for every plan, cuts among them
	proof  *quote  // the best prices known
	ask    int     // how far above the bound to look for a plan
	x      *search // the step that is not at its end
	listed int     // patterns in the last list
	full   int     // the lowest height for which the list was too long, if any
}

// run closes the search until the work reaches a limit, or there are too many
// patterns. Where no end is in sight, it spends but an eighth of the work.
func (c *closer) run(limit int64) {
	s := c.s
	if c.ask == 0 {
		if s.proof == nil {
			return
		}
		c.must, c.proof, c.ask = s.must, s.proof, 1
	}
	if c.listed == 0 {
		s.work.within(s.work.spent+(limit-s.work.spent)/8, c.steps)
	}
	if c.listed > 0 && c.listed <= fewListed {
		s.work.within(limit, c.steps)
	}
}

// steps takes one step after the other.
func (c *closer) steps() {
	s := c.s
	for !s.settled() && !s.work.stop() {
		top := s.useful()
		aim := max(s.floor(min(s.bound+c.ask-1, top)), min(s.bound, top))
		if c.full > 0 && aim >= c.full {
			return
		}
		if c.x != nil && c.x.goal <= top {
			aim = c.x.goal
		} else {
			c.x = nil
		}
		switch c.step(aim) {
		case refuted:
			c.ask *= 2
		case found, tooLong:
			c.ask = max(1, c.ask/2)
		}
	}
}

// useful is the greatest height that a plan of use may have: less than what is
// known, and cheaper.
func (s *search) useful() int {
	return s.floor(s.vain() - 1)
}

// vain is the least height at which a plan is of no use: it costs what the best
// one known does, or is beyond the goal.
func (s *search) vain() int {
	top := s.cutoff
	if s.plan != nil {
		top = sort.Search(s.cutoff, func(h int) bool { return s.same(h, s.cutoff) })
	}
	if s.goal > 0 {
		top = min(top, s.goal+1)
	}
	return top
}

// floor lowers a height to one that is a sum of heights.
func (s *search) floor(h int) int {
	if s.m.reach == nil {
		return h
	}
	return s.m.reach.floor(h)
}

// An answer says what came of a step.
type answer int

const (
	unknown answer = iota
	refuted        // there is no plan so low
	found
	tooLong // the list
)

// step looks for a plan that is at most aim high, or goes on with that.
func (c *closer) step(aim int) answer {
	s := c.s
	if c.x == nil {
		if a := c.begin(aim); a != unknown {
			return a
		}
	}
	x := c.x
	if x == nil {
		return unknown
	}
	x.run(s.work.limit)
	s.raise(s.m.lift(x.bound))
	switch {
	case x.cutoff <= aim:
		s.accept(s.borrow(x))
		c.x = nil
		return found
	case x.bound > aim:
		c.x = nil
		return refuted
	case !s.work.stop():
		c.full, c.x = aim, nil // it lost its way
		return tooLong
	}
	return unknown
}

// begin lists the patterns of plans that are at most aim high, and prepares the
// search over them.
func (c *closer) begin(aim int) answer {
	s := c.s
	l := &lister{in: s.in, q: s.proof, left: s.left, most: min(mostListed, fewListed*c.ask), work: s.work,
		gap: int64(aim)*s.proof.scale - s.proof.value(s.left)}
	switch {
	case l.run():
	case s.work.stop():
		return unknown
	default:
		c.full = aim
		return tooLong
	}
	slices.SortStableFunc(l.list, func(a, b pattern) int { return cmp.Compare(a.h, b.h) })
	list := &listPricer{list: l.list, counts: make([][]take, len(l.list)), work: s.work}
	x := newSearch(s.in, Strips, aim+1, s.work)
	x.m.pricer, x.m.lp.sparse = list, true
	x.bound, x.goal = s.bound, aim
	c.tighten(x, list)
	x.must = c.must
	c.x, c.listed = x, len(list.list)
	return unknown
}

// tighten adds cuts to what holds for every plan, and drops patterns from the
// list, as long as the bound rises.
func (c *closer) tighten(x *search, list *listPricer) {
	var basis []int
	for !x.work.stop() {
		list.keep(c.proof, x.left, int64(x.goal)*c.proof.scale-c.proof.value(x.left))
		x.m.keep = true
		r := x.m.relax(x.left, c.must, basis, 0, x.cutoff, false)
		x.m.keep = false
		x.raise(r.bound)
		if r.bound >= x.cutoff || !r.feasible {
			return
		}
		if r.proof != nil && r.proof.value(x.left) > c.proof.value(x.left) {
			c.proof = r.proof
		}
		cuts := newCutter(x.left, r.use, x.m.pool, x.work).find()
		if len(cuts) == 0 {
			c.drop()
			return
		}
		basis = r.basis
		for _, cut := range cuts {
			c.must = append(c.must[:len(c.must):len(c.must)], cut.limit(x.left))
		}
	}
}

// drop drops the cuts that are worth nothing at the best prices known.
func (c *closer) drop() {
	var must []limit
	for _, l := range c.must {
		worth := l.size != ofCut
		for k, o := range c.proof.limits {
			worth = worth || o.cut == l.cut && c.proof.dual[k] > 0
		}
		if worth {
			must = append(must, l)
		}
	}
	c.must = must
}
