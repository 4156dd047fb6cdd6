package pack

import "slices"

// A polisher improves a plan by taking some of its strips away and cutting
// their pieces anew, proved best or nearly so, as a small problem of its own.
type polisher struct {
	s *search
	dice
	idle  int                 // tries since the last improvement
	won   [byComb + 1]float64 // height gained in each way
	spent [byComb + 1]float64 // and the work that it took
}

// The ways to cut a few strips' pieces anew.
const (
	bySearch = iota
	byShake
	byComb
)

// More pieces than this are not annealed, or not combed, anew.
const (
	maxShake = 24
	maxSmall = 120
)

// choose gives the way in which so many pieces are to be cut anew: mostly the
// one that gained most for its work, now and then the one least tried.
func (p *polisher) choose(pieces int) int {
	if p.s.kind == Strips {
		return bySearch
	}
	unit := float64(p.s.work.limit) / 128
	seldom := p.draw(3) == 0
	best, most := bySearch, -1.0
	for way := bySearch; way <= byComb; way++ {
		if way == byShake && pieces > maxShake || way == byComb && pieces > maxSmall && pieces*len(p.s.in.lies) > maxComb/8 {
			continue
		}
		score := 1 / (p.spent[way] + 1)
		if !seldom {
			score = (p.won[way] + 1) / (p.spent[way] + unit)
		}
		if score > most {
			best, most = way, score
		}
	}
	return best
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

// try takes a few strips away and cuts their pieces anew. It gives whether the
// plan became lower.
func (p *polisher) try() bool {
	s := p.s
	strips := s.strips()
	if len(strips) < 2 {
		return false
	}
	taken, left, cutoff := p.pick(strips)
	// What is cut more often than asked for needs no cutting again.
	for i, n := range s.spare() {
		left[i] -= min(left[i], n)
	}
	var plan []usage
	var ok bool
	way, from := p.choose(sum(left)), s.work.spent
	switch way {
	case byComb:
		plan, ok = p.comb(left, cutoff, 5)
	case byShake:
		plan, ok = p.shake(left, cutoff)
	default:
		plan, ok = s.anew(left, cutoff, s.work.limit/64)
	}
	p.spent[way] += float64(s.work.spent - from)
	if !ok {
		return false
	}
	for i, j := range strips {
		if !taken[i] {
			plan = append(plan, usage{j, 1})
		}
	}
	was := s.cutoff
	if s.accept(plan); s.cutoff == was {
		s.plan = plan // no lower, but another: a way to go on from
	}
	p.won[way] += float64(was - s.cutoff)
	return s.cutoff < was
}

// strips gives the pattern of each strip of the plan, the highest first.
func (s *search) strips() (strips []int) {
	for _, u := range s.plan {
		for range u.n {
			strips = append(strips, u.pattern)
		}
	}
	slices.SortStableFunc(strips, func(a, b int) int { return s.m.pool[b].h - s.m.pool[a].h })
	return strips
}

// pick chooses strips to be taken away, the more the longer nothing came of it,
// and gives their pieces and height. Strips of like heights exchange pieces most
// easily: half the tries take a run of them.
func (p *polisher) pick(strips []int) (taken map[int]bool, left []int, cutoff int) {
	s := p.s
	taken, left = map[int]bool{}, make([]int, len(s.left))
	sizes := 0
	goal, most := 5+p.draw(10)+p.idle/16, 4+p.draw(8)+p.idle/16
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
	return taken, left, cutoff
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

// sum adds up counts.
func sum(n []int) (s int) {
	for _, v := range n {
		s += v
	}
	return s
}
