package pack

import "slices"

// A polisher improves a plan by taking some of its strips away and cutting
// their pieces anew, proved best or nearly so, as a small problem of its own.
type polisher struct {
	s     *search
	state uint64 // of the sequence that chooses strips
	idle  int    // tries since the last improvement
}

// draw gives the next number below n of a fixed sequence (a linear
// congruential generator, Knuth's constants).
func (p *polisher) draw(n int) int {
	p.state = p.state*6364136223846793005 + 1442695040888963407
	return int((p.state >> 33) % uint64(n))
}

// run tries until the work reaches a limit, or nothing has improved for long.
// It gives whether the plan became better.
func (p *polisher) run(limit int64) bool {
	s := p.s
	better := false
	for s.plan != nil && s.work.spent < limit && !s.work.stop() && !s.settled() && p.idle < 400 {
		p.idle++
		if p.try() {
			p.idle = 0
			better = true
		}
	}
	return better
}

// try takes a few strips away and cuts their pieces anew.
func (p *polisher) try() bool {
	s := p.s
	var strips []int // pattern of each strip
	for _, u := range s.plan {
		for range u.n {
			strips = append(strips, u.pattern)
		}
	}
	if len(strips) < 2 {
		return false
	}
	slices.SortStableFunc(strips, func(a, b int) int { return s.m.pool[b].h - s.m.pool[a].h })
	left := make([]int, len(s.left))
	cutoff, sizes := 0, 0
	taken := map[int]bool{}
	goal, most := 5+p.draw(10)+p.idle/16, 4+p.draw(8)+p.idle/16
	// Strips of like heights exchange pieces most easily: half the tries take a
	// run of them.
	at, run := p.draw(len(strips)), p.draw(2) == 0
	for len(taken) < len(strips) && (sizes < goal && len(taken) < most || len(taken) < 2) {
		if !taken[at] {
			taken[at] = true
			pt := &s.m.pool[strips[at]]
			cutoff += pt.h
			for _, t := range pt.cover {
				if left[t.size] == 0 {
					sizes++
				}
				left[t.size] += t.n
			}
		}
		if at = (at + 1) % len(strips); !run {
			at = p.draw(len(strips))
		}
	}
	// What is cut more often than asked for needs no cutting again.
	spare := s.spare()
	for i := range left {
		left[i] -= min(left[i], spare[i])
	}
	var plan []usage
	var ok bool
	if s.kind != Strips && total(left) <= 24 && p.draw(2) == 0 {
		plan, ok = p.shake(left, cutoff)
	} else {
		plan, ok = s.anew(left, cutoff, s.work.limit/64)
	}
	if !ok {
		return false
	}
	for i, j := range strips {
		if !taken[i] {
			plan = append(plan, usage{j, 1})
		}
	}
	was := s.cutoff
	s.accept(plan)
	if s.cutoff == was {
		s.plan = plan // no lower, but another: a way to go on from
	}
	return s.cutoff < was
}

// shake cuts some pieces anew by annealing, and gives a plan in patterns of the
// pool that is at most cutoff high.
func (p *polisher) shake(left []int, cutoff int) ([]usage, bool) {
	s := p.s
	in, index := s.part(left)
	a := newAnnealer(in, s.work)
	if len(a.order) < 2 {
		return nil, false
	}
	for i := range a.order {
		j := p.draw(i + 1)
		if p.draw(2) == 0 {
			a.order[i], a.order[j] = a.order[j], a.order[i]
		}
	}
	a.state = p.state
	var plan []usage
	top := int(int64(cutoff) * s.in.unitY / in.unitY)
	a.run(s.work.spent+s.work.limit/1024, top+1, func(h int) {
		plan = plan[:0]
		for _, q := range a.patterns() {
			plan = append(plan, usage{s.m.add(s.adopt(in, &q, index)), 1})
		}
	})
	return plan, len(plan) > 0
}

// part makes an instance of some of the pieces, and gives the index here of each
// of its sizes.
func (s *search) part(left []int) (*instance, []int) {
	var sizes []size
	var index []int
	for i, n := range left {
		if n > 0 {
			z := s.in.sizes[i]
			z.n = n
			sizes = append(sizes, z)
			index = append(index, i)
		}
	}
	return newInstance(sizes, s.in.width), index
}

// spare gives how many pieces of each size the plan cuts beyond the demand.
func (s *search) spare() []int {
	n := make([]int, len(s.left))
	for _, u := range s.plan {
		for _, t := range s.m.pool[u.pattern].cover {
			n[t.size] += u.n * t.n
		}
	}
	for i := range n {
		n[i] -= s.left[i]
	}
	return n
}

// accept makes a plan the best known if it is lower.
func (s *search) accept(plan []usage) {
	h := 0
	for _, u := range plan {
		h += u.n * s.m.pool[u.pattern].h
	}
	if h < s.cutoff || h == s.cutoff && s.plan == nil {
		s.cutoff, s.plan = h, plan
	}
}

// anew cuts some pieces as a problem of their own, with so much work, and gives
// a plan in patterns of the pool if it is lower than cutoff.
func (s *search) anew(left []int, cutoff int, effort int64) ([]usage, bool) {
	if done(left) {
		return nil, true
	}
	in, index := s.part(left)
	work := &meter{limit: min(effort, s.work.limit-s.work.spent), done: s.work.done}
	top := int(int64(cutoff) * s.in.unitY / in.unitY)
	sub := newSearch(in, s.kind, top, work)
	if sub.lazy = sub.kind != Strips; sub.lazy {
		if v := newValuer(sub); v != nil {
			v.state = uint64(s.work.spent)
			v.run(work.limit / 3)
		}
	}
	sub.run(work.limit)
	s.work.spend(int(work.spent))
	if sub.plan == nil {
		return nil, false
	}
	var plan []usage
	for _, u := range sub.plan {
		plan = append(plan, usage{s.m.add(s.adopt(in, &sub.m.pool[u.pattern], index)), u.n})
	}
	return plan, true
}

// adopt translates a pattern of another instance, whose sizes have the given
// indices here.
func (s *search) adopt(from *instance, p *pattern, index []int) pattern {
	var q pattern
	for _, c := range p.cols {
		d := column{n: c.n}
		h := 0
		for _, r := range c.rows {
			l := from.lies[r.size]
			k := s.in.find(index[l.size], l.rw, l.rh)
			d.rows = append(d.rows, take{k, r.n})
			d.w = max(d.w, s.in.lies[k].w)
			h += r.n * s.in.lies[k].h
		}
		q.h = max(q.h, h)
		q.cols = append(q.cols, d)
	}
	q.sumUp(s.in)
	return q
}

// find gives the lie of a size with given sides.
func (in *instance) find(size int, w, h int64) int {
	for k, l := range in.lies {
		if l.size == size && l.rw == w && l.rh == h {
			return k
		}
	}
	return -1
}

// improve searches and polishes by turns until the work is spent or there is no
// more to be gained.
func (s *search) improve() {
	if s.kind != Strips {
		s.improveStacks()
		return
	}
	total := s.work.limit - s.work.spent
	s.run(s.work.spent + total/8)
	if s.nodes > 150 {
		s.run(s.work.spent + total/2) // small enough for a proof to be likely
	}
	p := &polisher{s: s, state: 1}
	for !s.settled() && !s.work.stop() {
		at := s.work.spent
		p.idle = 0
		p.run(at + total/4)
		s.run(s.work.spent + total/4)
		if s.work.spent == at {
			return
		}
	}
}

// improveStacks is improve for stacks, where no method is best for all: the
// search with estimated bounds, the polishing and the annealing take turns, each
// twice as long as before, and at last a proof is tried. A hasty search gives up
// when nothing has come of some times the work that led to the last gain.
func (s *search) improveStacks() {
	from := s.work.spent
	all := s.work.limit - from
	proof := all / 6
	if s.hasty {
		proof = all / 16
	}
	s.work.limit -= proof
	gain, was := from, s.cutoff
	p := &polisher{s: s, state: 1}
	s.lazy = true
	v := newValuer(s)
	turns := []func(int64){s.again, func(l int64) { p.run(l) }}
	if total(s.left) <= 80 {
		turns = append(turns, s.anneal)
	}
	if v != nil {
		turns = append(turns, v.run)
	}
	for slice := all/256 + 1; !s.settled() && !s.work.stop(); slice *= 2 {
		at := s.work.spent
		p.idle = 0
		for _, turn := range turns {
			if turn(s.work.spent + slice); s.settled() {
				break
			}
			if !s.same(s.cutoff, was) {
				gain, was = s.work.spent, s.cutoff
			}
		}
		if s.work.spent == at || s.hasty && s.work.spent-from > all/8+2*(gain-from) {
			break
		}
	}
	s.work.limit += proof
	if !s.settled() {
		s.prove(min(s.work.limit, s.work.spent+proof))
	}
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

// borrow gives the plan of another search over the same instance.
func (s *search) borrow(o *search) []usage {
	var plan []usage
	for _, u := range o.plan {
		p := o.m.pool[u.pattern]
		plan = append(plan, usage{s.m.add(pattern{h: p.h, cols: p.cols, cover: p.cover}), u.n})
	}
	return plan
}

// settled says whether searching on is of no use: the plan is as good as was
// asked for, or a better one is proved not to exist.
func (s *search) settled() bool {
	if s.goal > 0 {
		return s.cutoff <= s.goal && s.plan != nil || s.bound > s.goal
	}
	return s.plan != nil && s.same(s.bound, s.cutoff)
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

// total sums counts.
func total(n []int) (sum int) {
	for _, v := range n {
		sum += v
	}
	return sum
}
