package pack

// A valuer makes plans with stacks strip by strip under values of the pieces
// that it corrects from plan to plan: what lay in wasteful strips becomes
// dearer, so that it comes into good company sooner (sequential value
// correction, Mukhacheva & Zalgaller 1993). The strips of all its plans also
// serve the master problem as patterns.
type valuer struct {
	s     *search
	p     *stackPricer
	value []float64
	dice
}

// newValuer starts with values by area. It is nil where the search has no
// tables for stacks.
func newValuer(s *search) *valuer {
	p, ok := s.m.pricer.(*stackPricer)
	if !ok {
		return nil
	}
	v := &valuer{s: s, p: p, value: make([]float64, len(s.in.sizes)), dice: dice{1}}
	for i, z := range s.in.sizes {
		v.value[i] = v.area(z)
	}
	return v
}

// area is a size's area as a part of a strip one unit high.
func (v *valuer) area(z size) float64 {
	return float64(z.w) * float64(z.h) / float64(v.s.in.width) / float64(v.s.in.unitY)
}

// run makes plans until the work reaches a limit.
func (v *valuer) run(limit int64) {
	s := v.s
	for s.work.spent < limit && !s.work.stop() && !s.settled() {
		left := s.in.counts()
		var plan []usage
		h := 0
		for !done(left) && h < 2*s.cutoff && !s.work.stop() {
			p := v.strip(left)
			if p.h == 0 {
				return
			}
			n := 1
			if t := p.times(left); t > 1 {
				n = 1 + v.draw(t)
			}
			for _, t := range p.cover {
				left[t.size] -= n * t.n
			}
			h += n * p.h
			v.correct(&p)
			plan = append(plan, usage{s.m.add(p), n})
		}
		if done(left) {
			s.accept(plan)
		}
	}
}

// strip makes the strip worth most for its height, of a few heights that suit
// the piece that needs the highest.
func (v *valuer) strip(left []int) pattern {
	in := v.s.in
	q := &quote{scale: 1 << 20, base: make([]int64, len(left))}
	high := 0
	for i, h := range in.least() {
		if left[i] > 0 {
			high = max(high, h)
			q.base[i] = int64(v.value[i] * float64(q.scale))
		}
	}
	var best pattern
	most := 0.0
	h := high
	for try := range 5 {
		p := v.p.build(h, v.draw(2) == 0, q, left)
		worth := float64(p.worth(q)) / float64(max(1, p.h))
		if p.h > 0 && worth > most {
			best, most = p, worth
		}
		if try == 0 && v.draw(3) == 0 {
			h = in.heights[0] // not always the highest first
		}
		if h = v.p.sums.lift(h + 1 + v.draw(1+high/2)); h > v.p.top {
			h = high
		}
	}
	return best
}

// correct moves the values of a strip's pieces towards what they cost in it.
func (v *valuer) correct(p *pattern) {
	used := 0.0
	for _, t := range p.cover {
		used += float64(t.n) * v.area(v.s.in.sizes[t.size])
	}
	cost := float64(p.h) / used // of a unit of area, 1 without waste
	for _, t := range p.cover {
		a := v.area(v.s.in.sizes[t.size])
		v.value[t.size] = 0.8*v.value[t.size] + 0.2*a*cost*cost
	}
}
