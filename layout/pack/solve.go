package pack

import "context"

// EffortPerSecond is the effort that one core of a small server spends in a
// second.
const EffortPerSecond = 1_000_000_000

// Solve finds the best layout it can within the problem's effort. It stops early
// with ctx's error when ctx is done.
func Solve(ctx context.Context, p Problem) (Result, error) {
	if err := p.validate(); err != nil {
		return Result{}, err
	}
	if err := ctx.Err(); err != nil {
		return Result{}, err
	}
	sizes := sizesOf(p.Items)
	if len(p.Given) == 0 {
		for _, s := range sizes {
			if !s.fits(p.Width, MaxLength) {
				return Result{}, &TooBigError{Item: s.items[0], Width: p.Width}
			}
		}
	}
	var best *Result
	var bestMerit merit
	for _, stack := range []bool{false, true}[:min(2, int(p.Kind)+1)] {
		left := make([]int, len(sizes))
		for i, s := range sizes {
			left[i] = s.n
		}
		var roots []node
		if len(p.Given) == 0 {
			roots = append(roots, greedyStrips(sizes, left, p.Width, 1<<62, stack))
		}
		for _, c := range p.Given {
			roots = append(roots, greedyStrips(sizes, left, c.W, c.L, stack))
		}
		r := p.layOut(sizes, roots)
		if m := judge(&p, &r); best == nil || m.better(&bestMerit) < 0 {
			best, bestMerit = &r, m
		}
	}
	if len(p.Given) == 0 {
		effort := p.Effort
		if effort <= 0 {
			effort = EffortPerSecond
		}
		work := &meter{limit: effort, done: func() bool { return ctx.Err() != nil }}
		in := newInstance(sizes, p.Width)
		top := int(best.Used / in.unitY)
		work.limit = effort
		if p.Kind != Strips {
			work.limit = effort / 4
		}
		s := newSearch(in, Strips, top, work)
		s.improve()
		if p.Kind != Strips {
			work.limit = effort
			t := newSearch(in, p.Kind, min(top, s.cutoff), work)
			if s.plan != nil {
				t.accept(t.borrow(s))
			}
			t.improve()
			s = t
		}
		best.Bound = int64(s.bound) * in.unitY
		best.Proved = s.bound >= s.cutoff
		if s.plan != nil {
			left := in.counts()
			root := node{dir: Across, size: -1}
			for _, u := range s.plan {
				for range u.n {
					root.parts = append(root.parts, s.m.pool[u.pattern].node(in, left))
				}
			}
			r := p.layOut(sizes, []node{root})
			r.Bound, r.Proved = best.Bound, best.Proved
			best = &r
		}
		best.Work = work.spent
		debugNodes, debugPool = s.nodes, len(s.m.pool)
	}
	return *best, nil
}

// layOut makes a result of a layout of each cloth.
func (p *Problem) layOut(sizes []size, roots []node) Result {
	d := newDealer(p.Items, sizes)
	r := Result{}
	for i, n := range roots {
		w, l := p.Width, int64(0)
		if len(p.Given) > 0 {
			w, l = p.Given[i].W, p.Given[i].L
		}
		cloth, used := d.cloth(n, w, l)
		r.Cloths = append(r.Cloths, cloth)
		r.Used += used
	}
	r.Short = d.left
	return r
}

var debugNodes, debugPool int

// Debug is temporary.
func Debug() (int, int) { return debugNodes, debugPool }
