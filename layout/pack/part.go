package pack

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
