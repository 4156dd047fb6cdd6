package pack

// improve searches and polishes by turns until the work is spent or there is no
// more to be gained.
func (s *search) improve() {
	if s.kind != Strips {
		s.improveStacks()
		return
	}
	total := s.work.limit - s.work.spent
	s.run(s.work.spent + total/8)
	if s.nice() {
		return
	}
	c := &closer{s: s}
	c.run(s.work.spent + total*3/8)
	if s.nodes > quickNodes {
		s.run(s.work.limit)
	}
	p := &polisher{s: s, dice: dice{1}}
	for !s.settled() && !s.work.stop() {
		at := s.work.spent
		p.idle = 0
		p.run(at + total/4)
		s.run(s.work.spent + total/4)
		c.run(s.work.spent + total/8)
		if s.work.spent == at {
			return
		}
	}
}

// quickNodes is how many nodes an eighth of the work must solve for a proof to be
// likely with all of it; the plans on the way are then as good as those that
// polishing finds.
const quickNodes = 60

// improveStacks is improve for stacks, where no method is best for all: dives
// from the root, the polishing, the beam searches, the annealing, the value
// correction and the search with estimated bounds take turns, each half as long
// again as before, and at last a proof is tried. A hasty search gives up when
// nothing has come of some times the work that led to the last gain.
func (s *search) improveStacks() {
	from := s.work.spent
	all := s.work.limit - from
	proof := all / 12
	if s.hasty {
		all /= 4
		proof = all / 16
	}
	s.work.limit -= proof
	s.lazy = len(s.in.sizes) > fewSizes
	r := &round{s: s, gain: from, was: s.cutoff, turns: s.turns(), long: usualDives}
	r.dry, r.wait = make([]int, len(r.turns)), make([]int, len(r.turns))
	idle := 0 // rounds without any work
	for slice := all/256 + 1; !s.settled() && !s.work.stop(); slice += slice / 2 {
		if proof > 0 && !s.hasty && s.rough > 0 && s.rough <= s.bound {
			// Even the estimate is no more than what is proved already.
			s.work.limit, proof = s.work.limit+proof, 0
		}
		at, most := s.work.spent, s.work.limit
		if s.hasty {
			most = from + s.patience(all) + 2*(r.gain-from)
		}
		if at >= most || s.brief && s.far(float64(at-from)/float64(all)) {
			break
		}
		s.work.within(most, func() { r.run(slice) })
		idle++
		if s.work.spent > at {
			idle = 0
		}
		if idle > maxWait {
			break
		}
	}
	s.work.limit += proof
	if s.nice() {
		proof = min(proof, all/64)
	}
	if !s.settled() {
		s.prove(min(s.work.limit, s.work.spent+proof))
	}
}

// patience is how much of all its work a hasty search does without a gain.
func (s *search) patience(all int64) int64 {
	if s.nice() {
		return all / 64
	}
	return all / 8
}

// nice says whether all that a better plan could bring is worth little work.
func (s *search) nice() bool { return s.trifle != nil && s.trifle(s.bound, s.cutoff) }

// hopeless is how much longer than a plan of use the best one may be, of its
// length, at the end of a brief search; at a quarter of it, four times as much. Of
// 300 fabrics drawn by chance that brings two an eighth yard more to buy, for a
// quarter less work.
const hopeless = 0.0075

// far says whether the best plan is so much longer than would be of use that a
// brief search gives up when that part of its work is done.
func (s *search) far(part float64) bool {
	return s.plan != nil && part > 0.25 && float64(s.cutoff-s.vain())*part >= hopeless*float64(s.cutoff)
}

// turns lists the methods that suit the problem's number of pieces.
func (s *search) turns() []func(int64) {
	p := &polisher{s: s, dice: dice{1}}
	d := newPlunger(s)
	turns := []func(int64){d.run, func(l int64) { p.idle = 0; p.run(l) }}
	pieces := sum(s.left)
	if pieces*len(s.in.lies) <= maxComb {
		turns = append(turns, newComber(s).run) // at combing
	}
	if pieces <= 80 {
		turns = append(turns, s.anneal)
	}
	if v := newValuer(s); v != nil {
		turns = append(turns, v.run)
	}
	return append(turns, s.again)
}

// A round gives every method its turn. One that gains nothing sits out some of
// the rounds that follow.
type round struct {
	s     *search
	turns []func(int64)
	dry   []int // turns of each method since it last gained
	wait  []int // rounds that it sits out yet
	long  int64 // how much more work than others the dives get now, which begin anew each time
	gain  int64 // work spent until the last gain
	was   int   // height then
}

// combing is where the beam searches stand among the turns, if at all: they go on
// from turn to turn, so that what gains nothing yet is no loss.
const combing = 2

// usualDives is how much more work than others the dives get; twice as much while
// not even the root is solved.
const usualDives = 2

// maxWait is the most rounds that a method sits out.
const maxWait = 2

// run takes a round of turns of so much work each, and another turn of the
// method that gained most.
func (r *round) run(slice int64) {
	best, most := -1, 0
	for i := range r.turns {
		if r.wait[i] > 0 {
			r.wait[i]--
			continue
		}
		work := slice
		if i == 0 {
			work *= r.long
		}
		d := r.take(i, work)
		if d > most {
			best, most = i, d
		}
		if r.dry[i]++; d > 0 {
			r.dry[i] = 0
		}
		switch {
		case i == 0 && d == 0 && r.s.rough == 0:
			r.long = 2 * usualDives
			r.dry[i] = 0
		case i == 0:
			r.long = usualDives
		}
		if i != combing {
			r.wait[i] = min(r.dry[i], maxWait)
		}
	}
	if best >= 0 {
		r.take(best, slice)
	}
}

// take takes one turn and gives how much lower the plan became.
func (r *round) take(i int, work int64) int {
	s := r.s
	if s.settled() || s.work.stop() {
		return 0
	}
	before := s.cutoff
	r.turns[i](s.work.spent + work)
	if !s.same(s.cutoff, r.was) {
		r.gain, r.was = s.work.spent, s.cutoff
	}
	return before - s.cutoff
}

// again searches from the root anew, with the patterns found since.
func (s *search) again(limit int64) {
	s.open, s.nodes = nil, 0
	s.run(limit)
}

// prove raises the bound by a search whose bounds are true.
func (s *search) prove(limit int64) {
	x := newSearch(s.in, s.kind, s.cutoff, s.work)
	x.bound, x.goal, x.same = s.bound, s.goal, s.same
	for _, p := range s.m.pool {
		x.m.add(pattern{h: p.h, cols: p.cols, cover: p.cover})
	}
	x.accept(x.borrow(s))
	x.run(limit)
	s.bound = x.bound
	if x.cutoff < s.cutoff {
		s.accept(s.borrow(x))
	}
}

// settled says whether searching on is of no use: the plan is as good as was
// asked for, or a better one is proved not to exist.
func (s *search) settled() bool {
	if s.goal > 0 {
		return s.cutoff <= s.goal && s.plan != nil || s.bound > s.goal
	}
	return s.plan != nil && s.same(s.bound, s.cutoff)
}

// borrow gives the plan of another search over the same instance.
func (s *search) borrow(o *search) []usage {
	var plan []usage
	for _, u := range o.plan {
		p := o.m.pool[u.pattern]
		plan = append(plan, usage{s.m.add(pattern{h: p.h, cols: p.cols, cover: p.cover}), u.n})
	}
	return plan
}

// read gives a plan of strips laid out as nodes in patterns of the pool.
func (s *search) read(root node) []usage {
	var plan []usage
	for _, strip := range root.parts {
		var p pattern
		for _, col := range strip.list(Along) {
			c := column{n: 1}
			h := 0
			for _, row := range col.list(Across) {
				k := s.in.find(row.size, row.w, row.h)
				c.rows = append(c.rows, take{k, 1})
				c.w = max(c.w, s.in.lies[k].w)
				h += s.in.lies[k].h
			}
			p.h = max(p.h, h)
			p.cols = append(p.cols, c)
		}
		p.cols = merge(p.cols)
		p.sumUp(s.in)
		plan = append(plan, usage{s.m.add(p), 1})
	}
	return plan
}

// list gives the parts of a node divided so, or the node itself.
func (n node) list(dir Dir) []node {
	if n.dir == dir {
		return n.parts
	}
	return []node{n}
}
