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
	if s.nodes > 150 {
		s.run(s.work.spent + total/2) // a proof is likely
	}
	p := &polisher{s: s, dice: dice{1}}
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
	p := &polisher{s: s, dice: dice{1}}
	s.lazy = len(s.in.sizes) > fewSizes
	v := newValuer(s)
	turns := []func(int64){s.again, func(l int64) { p.run(l) }}
	if sum(s.left) <= 80 {
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
