package pack

import (
	"math"
	"slices"
)

// fewSizes is for how many sizes stacks are priced in full while diving.
const fewSizes = 4

// A diver is a plan in the making.
type diver struct {
	s      *search
	left   []int
	limits []limit
	plan   []usage
	base   int // height so far

	by    *plunger // whose dive it is, if any
	noise float64  // by how much chance alters what is fixed
	tail  int      // so few pieces left are combed
	taboo []int    // patterns not to be fixed
}

// dive fixes patterns of the relaxed solution one after the other, solving
// again after each, until a plan is found or is sure to be no better.
func (s *search) dive(limits []limit, r relaxation) {
	d := diver{s: s, left: append([]int(nil), s.left...), limits: append([]limit(nil), limits...)}
	d.run(r)
}

// run fixes patterns until a plan is found or is sure to be no better.
func (d *diver) run(r relaxation) {
	s := d.s
	for !s.work.stop() && d.round(&r) && d.base < s.cutoff {
		if done(d.left) {
			s.cutoff, s.plan = d.base, d.plan
			return
		}
		if d.by != nil && d.comb() {
			return
		}
		r = s.m.relax(d.left, d.limits, r.basis, d.base, s.cutoff, s.kind != Strips && len(s.in.sizes) > fewSizes)
		if d.base+r.bound >= s.cutoff || !r.feasible {
			return
		}
	}
}

// comb completes the plan by a beam search over the last pieces, and says whether
// that made it better than the best.
func (d *diver) comb() bool {
	s := d.s
	n := sum(d.left)
	if n > d.tail || 4*n > 3*sum(s.left) {
		return false
	}
	d.tail = n / 2
	rest, ok := d.by.p.comb(d.left, s.cutoff-1-d.base, 7)
	if !ok {
		return false
	}
	was := s.cutoff
	s.accept(append(d.plan[:len(d.plan):len(d.plan)], rest...))
	return s.cutoff < was
}

// round fixes what is used a whole number of times, or else the pattern nearest
// to one. It reports whether that was possible.
func (d *diver) round(r *relaxation) bool {
	before := len(d.plan)
	best := share{n: -1}
	for _, u := range r.use {
		if slices.Contains(d.taboo, u.pattern) {
			continue
		}
		n := int(u.n + 1e-6)
		if n > 0 && d.noise > 0 && d.by.chance() < d.noise/2 {
			n--
		}
		d.fix(u.pattern, n)
		if d.s.m.pool[u.pattern].times(d.left) == 0 {
			continue
		}
		if d.noise > 0 {
			u.n += d.noise * d.by.chance()
		}
		if u.n > best.n {
			best = u
		}
	}
	if len(d.plan) == before {
		if best.n < 0 {
			return false
		}
		d.fix(best.pattern, 1)
	}
	if d.by != nil {
		if !d.part(before) {
			return false
		}
		if len(d.plan) == before {
			return d.round(r) // without what is taboo now
		}
	}
	for k := range d.limits {
		if l := &d.limits[k]; l.n < 0 {
			if l.le {
				return false
			}
			l.n = 0
		}
	}
	return true
}

// maxTaboo is how many patterns of a dive can become taboo.
const maxTaboo = 4

// part makes sure that no dive before came by here: else it takes one of the
// patterns back that were fixed last, and makes it taboo. It reports whether that
// was possible.
func (d *diver) part(last int) bool {
	for !d.by.fresh(d) {
		if len(d.taboo) == maxTaboo || len(d.plan) == last {
			return false
		}
		i := last + d.by.p.draw(len(d.plan)-last)
		u := d.plan[i]
		d.taboo = append(d.taboo, u.pattern)
		d.plan = slices.Delete(d.plan, i, i+1)
		p := &d.s.m.pool[u.pattern]
		d.base -= u.n * p.h
		for _, t := range p.cover {
			d.left[t.size] += u.n * t.n
		}
		if len(d.plan) == last {
			break
		}
	}
	return true
}

// fix takes pattern j into the plan n times, as far as pieces are left.
func (d *diver) fix(j, n int) {
	p := &d.s.m.pool[j]
	if n = min(n, p.times(d.left)); n <= 0 {
		return
	}
	d.plan = append(d.plan, usage{j, n})
	d.base += n * p.h
	for _, t := range p.cover {
		d.left[t.size] -= n * t.n
	}
	for k := range d.limits {
		d.limits[k].n -= n * d.limits[k].times(p)
	}
}

// done says whether nothing is left to cut.
func done(left []int) bool {
	for _, n := range left {
		if n > 0 {
			return false
		}
	}
	return true
}

// fixed adds limits that keep the number of strips of every height.
func (s *search) fixed(limits []limit, r *relaxation) []limit {
	for _, h := range s.thresholds(r) {
		l := limit{h: h, size: ofStrips}
		l.n = int(math.Round(s.sum(l, r)))
		limits = with(limits, l)
		l.le = true
		limits = with(limits, l)
	}
	return limits
}
