package pack

// A plunger dives from the root again and again, each time rounding a little
// otherwise: a dive costs little beside a search, and which patterns are fixed
// first decides how well the last pieces go together. What the other methods
// found since enters the relaxation at the root, and what the dives find serves
// all.
type plunger struct {
	s     *search
	p     *polisher
	basis []int
	turn  int
	seen  table // what dives came by
}

// noises are how much chance alters the choice of the patterns to be fixed, of
// one dive after the other.
var noises = []float64{0, 0.1, 0.3, 0.6, 1}

// newPlunger prepares dives of a search.
func newPlunger(s *search) *plunger {
	p := &plunger{s: s, p: &polisher{s: s, dice: dice{2}}}
	p.seen.clear(1 << 12)
	return p
}

// run dives until the work reaches a limit. A dive begun is brought to its end.
func (p *plunger) run(limit int64) {
	s := p.s
	for s.work.spent < limit && !s.work.stop() && !s.settled() {
		at := s.m.clock
		var r relaxation
		stopped := false
		s.work.within(limit, func() {
			r = s.m.relax(s.left, nil, p.basis, 0, s.vain(), s.lazy)
			stopped = s.work.stop()
		})
		s.raise(r.bound)
		p.basis = r.basis
		if stopped || !r.feasible || r.bound >= s.vain() {
			return
		}
		s.rough = r.bound
		d := diver{s: s, left: append([]int(nil), s.left...), by: p, noise: noises[p.turn%len(noises)]}
		d.tail = 32 + p.p.draw(64)
		p.turn++
		d.run(r)
		s.m.clock = at + 1 // the patterns at the root stay in the program
	}
}

// chance draws a number from nought to one.
func (p *plunger) chance() float64 { return float64(p.p.draw(1<<10)) / (1 << 10) }

// fresh says whether no dive came by the same fixed patterns since the best plan
// was found, and notes them.
func (p *plunger) fresh(d *diver) bool {
	key := scatter(uint64(p.s.cutoff))
	for _, u := range d.plan {
		key += scatter(uint64(u.pattern)+1) * uint64(u.n)
	}
	return p.seen.add(key)
}
