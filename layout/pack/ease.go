package pack

// ease looks for a layout that costs no more than the plan but is easier to cut
// in the order of merit: strips of one size each, and plans found where every
// strip is taken to be higher than it is, so that few strips count for more
// than little length; each then made smooth.
func (e *engine) ease(best plan) Result {
	p := e.p
	share := e.usual() / 64
	smooth := func(root node) node { return e.smooth(root, p.Width, 0, p.Kind, share) }
	r := p.layOut(e.sizes, []node{smooth(best.root)})
	if p.Brief {
		return r // nobody will cut it
	}
	m := judge(p, &r)
	try := func(root node, worth int) {
		if next := p.layOut(e.sizes, []node{root}); p.purchase(next.Used) > p.purchase(r.Used) {
			return
		}
		next := p.layOut(e.sizes, []node{smooth(root)})
		if n := judge(p, &next); n.better(&m) < worth {
			r, m = next, n
		}
	}
	try(e.uniform(), 1) // whole strips first, where nothing else tells them apart
	in := newInstance(e.sizes, p.Width)
	highest := in.heights[len(in.heights)-1]
	for _, part := range []int{8, 2} {
		try(e.fewer(highest/part+1, e.usual()/32), 0)
	}
	return r
}

// uniform cuts strips of one size each, lying so that it takes the least.
func (e *engine) uniform() node {
	root := node{dir: Across, size: -1}
	lies := lyings(e.sizes, e.p.Width)
	for i, s := range e.sizes {
		var best lying
		least := int64(-1)
		for _, l := range lies {
			each := e.p.Width / l.w
			if need := (int64(s.n) + each - 1) / each * l.h; l.size == i && (least < 0 || need < least) {
				best, least = l, need
			}
		}
		each := int(e.p.Width / best.w)
		for n := s.n; n > 0; n -= each {
			strip := node{dir: Along, size: -1}
			for range min(n, each) {
				strip.parts = append(strip.parts, leafNode(i, best.w, best.h))
			}
			root.parts = append(root.parts, along(strip.parts))
		}
	}
	return across(root.parts)
}

// fewer makes a plan in strips as if every strip were higher by a pad.
func (e *engine) fewer(pad int, effort int64) node {
	in := newInstance(e.sizes, e.p.Width)
	for k := range in.lies {
		in.lies[k].h += pad
	}
	for k := range in.heights {
		in.heights[k] += pad
	}
	work := &meter{limit: effort, done: e.work.done}
	s := newSearch(in, Strips, 1<<31-1, work)
	s.improve()
	e.work.spend(int(work.spent))
	return s.node()
}

// node gives the best plan as strips across.
func (s *search) node() node {
	left := s.in.counts()
	root := node{dir: Across, size: -1}
	for _, u := range s.plan {
		for range u.n {
			root.parts = append(root.parts, s.m.pool[u.pattern].node(s.in, left))
		}
	}
	return across(root.parts)
}
