package pack

import (
	"context"
	"math"
)

// EffortPerSecond is the effort that one core of a small server spends in a
// second.
const EffortPerSecond = 850_000_000

// Solve finds the best layout it can within the problem's effort. It stops early
// with ctx's error when ctx is done. An item too big for cloth to be bought is a
// *TooBigError; of given cloths, pieces that find no place are told in
// Result.Short.
func Solve(ctx context.Context, p Problem) (Result, error) {
	if err := p.validate(); err != nil {
		return Result{}, err
	}
	e := &engine{p: &p, sizes: sizesOf(p.Items)}
	e.work = &meter{limit: p.Effort, done: func() bool { return ctx.Err() != nil }}
	if p.Effort <= 0 {
		e.work.limit, e.hasty = EffortPerSecond, true
	}
	var r Result
	if len(p.Given) > 0 {
		e.sizes = rankedSizes(p.Items)
		r = e.given()
	} else {
		for _, s := range e.sizes {
			if !s.fits(p.Width, MaxLength) {
				return Result{}, &TooBigError{Item: s.items[0], Width: p.Width}
			}
		}
		r = e.bought()
	}
	if err := ctx.Err(); err != nil {
		return Result{}, err
	}
	r.Work = e.work.spent
	return r, nil
}

// An engine works on one problem.
type engine struct {
	p     *Problem
	sizes []size
	work  *meter
	hasty bool // gives up early
	sure  bool // every refusal so far is proved
}

// A plan is a layout of one cloth's width, and what is known about it.
type plan struct {
	root  node
	used  int64
	bound int64 // no plan of its kind is shorter
}

// usual is the work that is divided among methods: all that may be spent, but of a
// hasty engine only a quarter, the rest being for what goes on gaining.
func (e *engine) usual() int64 {
	if e.hasty {
		return e.work.limit / 4
	}
	return e.work.limit
}

// extend allows half as much work again for what thrifty plans gain, and gives the
// limit: strips and stacks have had all that they get where stacks are asked for,
// so that thrifty is never worse.
func (e *engine) extend() int64 {
	more := e.usual() / 2
	e.work.limit = max(e.work.limit, e.work.spent) + more
	return e.work.spent + more
}

// bought lays the pieces out on cloth to be bought.
func (e *engine) bought() Result {
	p := e.p
	if len(e.sizes) == 0 {
		return Result{Cloths: []Section{{W: p.Width, Item: -1}}, Short: make([]int, len(p.Items)), Proved: true}
	}
	lowest := boundAny(e.sizes, p.Width)
	best := plan{bound: lowest}
	for kind := Strips; kind <= p.Kind; kind++ {
		share := e.usual()
		switch {
		case kind == Strips && p.Kind > Strips:
			share /= 16
		case kind == Stacks:
			share = e.work.limit // it ends by itself where nothing comes of it
		case kind == Thrifty:
			share = e.extend()
		}
		var next plan
		switch known := (plan{root: best.root, used: best.used, bound: lowest}); kind {
		case Strips:
			next = e.cut(e.sizes, p.Width, Strips, 0, share, known)
		case Stacks:
			next = e.cut(e.sizes, p.Width, Stacks, 0, share, known)
		default:
			if root := e.smooth(best.root, p.Width, 0, Stacks, e.usual()/64); root.h < best.used {
				best.root, best.used = root, root.h // as it would be at last in stacks
				known.root, known.used = root, root.h
			}
			next = e.lengthwise(e.sizes, p.Width, 0, share, known)
		}
		// Of two kinds that cost the same, the simpler stays.
		if kind == Strips || p.purchase(next.used) < p.purchase(best.used) {
			best = next
		}
		best.bound = max(next.bound, lowest)
		if p.purchase(lowest) >= p.purchase(best.used) {
			best.bound = lowest
			break
		}
	}
	r := e.ease(best)
	r.Any = min(lowest, r.Used)
	r.Bound = min(best.bound, r.Used)
	r.Proved = p.purchase(r.Bound) >= p.purchase(r.Used)
	return r
}

// cut lays sizes out on a width in strips or stacks, starting from a known plan
// if it has parts. With a goal, any plan that long will do, and none longer is
// of use. It works until the work reaches limit.
func (e *engine) cut(sizes []size, width int64, kind Kind, goal int64, limit int64, known plan) plan {
	in := newInstance(sizes, width)
	defer e.work.until(limit)()
	s := newSearch(in, kind, math.MaxInt32, e.work)
	if len(known.root.parts) > 0 {
		s.accept(s.read(known.root))
	}
	s.goal, s.hasty, s.brief = int(goal/in.unitY), e.hasty, e.p.Brief
	if goal == 0 {
		s.same = func(a, b int) bool {
			return e.p.purchase(int64(a)*in.unitY) >= e.p.purchase(int64(b)*in.unitY)
		}
		if sold := e.p.Sold; sold != nil && e.hasty {
			s.trifle = func(a, b int) bool { return sold(int64(a)*in.unitY) >= sold(int64(b)*in.unitY) }
		}
	}
	s.bound = int((known.bound + in.unitY - 1) / in.unitY)
	s.improve()
	return plan{root: s.node(), used: int64(s.cutoff) * in.unitY, bound: int64(s.bound) * in.unitY}
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
