package pack

// A comber runs beam searches over the whole problem, wider each time round,
// under one guide after the other.
type comber struct {
	s     *search
	b     *beam
	width int
	turn  int
	busy  bool // a search is unfinished
}

// maxComb is the most pieces times lies that beam searches over the whole problem
// are of use for.
const maxComb = 20_000

// newComber starts narrow.
func newComber(s *search) *comber {
	return &comber{s: s, b: newBeam(s.in, s.work), width: 16}
}

// guides are the ways to compare partial plans: what is best varies from problem
// to problem.
var guides = []guide{{waste: 0}, {waste: 0.1}, {waste: 0.02}, {waste: 0.1, big: true}, {waste: 0.03, noise: 0.1}}

// run searches until the work reaches a limit; what it leaves unfinished it goes
// on with the next time.
func (c *comber) run(limit int64) {
	s := c.s
	defer s.work.until(limit)()
	for c.width <= maxTrail && !s.work.stop() && !s.settled() {
		if !c.busy {
			c.b.guide = guides[c.turn%len(guides)]
			c.b.guide.seed = uint64(c.turn)
			c.b.start(c.width)
			c.busy = true
		}
		ps, done := c.b.run(s.cutoff)
		if !done {
			break
		}
		s.cut(ps)
		c.busy = false
		if c.b.whole {
			c.width = maxTrail + 1 // nothing was left out: there is no more to be found
		}
		if c.turn++; c.turn%len(guides) == 0 {
			c.width *= 2
		}
	}
}

// cut takes patterns as a plan.
func (s *search) cut(ps []pattern) {
	if len(ps) == 0 {
		return
	}
	var plan []usage
	for _, p := range ps {
		plan = append(plan, usage{s.m.add(p), 1})
	}
	s.accept(plan)
}

// comb cuts some pieces anew by a beam search under a guide drawn by chance, and
// gives a plan in patterns of the pool that is at most cutoff high. The width of the
// search is 8 doubled fewer than wide times.
func (p *polisher) comb(left []int, cutoff, wide int) ([]usage, bool) {
	s := p.s
	in, index := s.part(left)
	b := newBeam(in, s.work)
	b.guide = guides[p.draw(len(guides))]
	b.guide.noise, b.guide.seed = 0.05*float64(p.draw(4)), p.state
	top := int(int64(cutoff) * s.in.unitY / in.unitY)
	defer s.work.until(s.work.spent + s.work.limit/200)()
	var plan []usage
	b.start(8 << p.draw(wide))
	strips, _ := b.run(top + 1)
	for _, q := range strips {
		plan = append(plan, usage{s.m.add(s.adopt(in, &q, index)), 1})
	}
	return plan, len(plan) > 0
}
