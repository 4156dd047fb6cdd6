package pack

import "slices"

// An exchange betters what lies on given cloths: a few cloths at a time are
// cleared and filled again from their pieces and those that found no place
// (ruin and recreate, Schrimpf et al. 2000), at prices that rise for pieces left
// over. A step is taken where no piece is lost in the order of the items; an
// empty cloth may take the place of a full one. Now and then a single piece is
// forced on a cloth by the search for one cloth.
type exchange struct {
	e       *engine
	kind    Kind
	types   []Cloth
	typ     []int       // of each cloth
	fillers [][]*filler // of each type: strips across it, and along it
	most    int         // cloths that may be cut into
	now     load
	best    load            // so far
	rise    []float64       // of each size's price over its area
	tried   map[string]bool // by force
	cuts    [][]*filling    // remembered, of each type
	known   map[string]bool // the cuts that were ever made
	spent   int64           // work on filling cloths again
	forced  int64           // and on forcing pieces
	work    *meter
	dice
}

// newExchange prepares an exchange between the cloths of a problem that betters a
// load.
func newExchange(e *engine, kind Kind, best load) *exchange {
	x := &exchange{e: e, kind: kind, best: best, most: len(e.p.Given), tried: map[string]bool{}, known: map[string]bool{}, work: e.work, dice: dice{1}}
	for _, c := range e.p.Given {
		i := slices.Index(x.types, c)
		if i < 0 {
			i = len(x.types)
			x.types = append(x.types, c)
			fs := []*filler{newFiller(e.sizes, c, min(kind, Stacks), false, e.work)}
			if kind == Thrifty {
				fs = append(fs, newFiller(e.sizes, c, Stacks, true, e.work))
			}
			x.fillers = append(x.fillers, slices.DeleteFunc(fs, func(f *filler) bool { return f == nil }))
		}
		x.typ = append(x.typ, i)
	}
	x.rise = make([]float64, len(e.sizes))
	x.cuts = make([][]*filling, len(x.types))
	for c, held := range best.held {
		if !done(held) {
			x.note(x.typ[c], &filling{best.roots[c], held})
		}
	}
	return x
}

// run exchanges until no item from the one in focus on is short, the work
// reaches a limit, or long nothing was gained.
func (x *exchange) run(focus int, limit, patience int64) {
	from := x.work.spent
	for last := from; !x.work.stop() && x.work.spent < limit && x.work.spent-last <= patience+(last-from); {
		short := x.e.short(x.now.left)
		for focus < len(short) && short[focus] == 0 {
			focus++
		}
		if focus == len(short) {
			return
		}
		if x.step(short, focus) {
			last = x.work.spent
		}
	}
}

// step tries one exchange and gives whether more pieces of the item in focus
// found a place. What becomes of later items is of no account for going on, but
// the best load is kept.
func (x *exchange) step(short []int, focus int) bool {
	x.work.spend(2000) // so that steps that do nothing end, too
	set := x.choose()
	if len(set) == 0 {
		return false
	}
	from := x.work.spent
	next := x.refill(set, focus)
	x.spent += x.work.spent - from
	got := x.e.short(next.left)
	x.correct(next.left)
	c := slices.Compare(got[:focus+1], short[:focus+1])
	if c < 0 || c == 0 && (x.draw(3) == 0 || x.uneven(&next, set, focus) >= x.uneven(&x.now, set, focus)) {
		x.now = next
		x.keep()
	}
	if c < 0 {
		return true
	}
	if x.forced > 6*x.spent {
		return false
	}
	from = x.work.spent
	ok := x.force(set[x.draw(len(set))], focus)
	x.forced += x.work.spent - from
	return ok
}

// keep remembers the load if it is the best.
func (x *exchange) keep() {
	if x.e.compare(&x.now, &x.best) < 0 {
		x.best = x.now
	}
}

// uneven tells how unevenly the pieces up to the item in focus lie on some
// cloths: room that is left on one cloth is of more use than on several.
func (x *exchange) uneven(l *load, set []int, focus int) (v float64) {
	for _, c := range set {
		area := 0.0
		for i, n := range l.held[c] {
			if s := &x.e.sizes[i]; n > 0 && s.items[0] <= focus {
				area += float64(n) * float64(s.w) * float64(s.h)
			}
		}
		v += area * area
	}
	return v
}

// choose draws the cloths to be filled again, in the order in which they will be.
func (x *exchange) choose() []int {
	var full, free []int
	seen := map[int]bool{}
	for i, h := range x.now.held {
		switch t := x.typ[i]; {
		case !done(h):
			full = append(full, i)
		case !seen[t]:
			seen[t] = true
			free = append(free, i)
		}
	}
	var set []int
	n := 1 + x.draw(min(4, max(1, len(full))))
	for ; n > 0 && len(full) > 0; n-- {
		k := x.draw(len(full))
		set = append(set, full[k])
		full = slices.Delete(full, k, k+1)
	}
	used := len(set) + len(full)
	if len(free) > 0 && (used < x.most || x.draw(3) == 0) {
		at := x.draw(len(set) + 1)
		set = slices.Insert(set, at, free[x.draw(len(free))])
	}
	return set
}

// refill clears some cloths and fills them again; no more are filled than may be.
func (x *exchange) refill(set []int, focus int) load {
	next := load{roots: slices.Clone(x.now.roots), held: slices.Clone(x.now.held), left: slices.Clone(x.now.left)}
	for _, c := range set {
		for i, n := range next.held[c] {
			next.left[i] += n
		}
		next.held[c], next.roots[c] = make([]int, len(next.left)), node{dir: Across, size: -1}
	}
	q := x.prices(focus)
	used := next.used()
	for _, c := range set {
		fs := x.fillers[x.typ[c]]
		if used >= x.most || len(fs) == 0 {
			continue
		}
		used++
		t := x.typ[c]
		own := x.noisy(q)
		before := next.left
		made := &filling{held: make([]int, len(before))}
		next.left = slices.Clone(before)
		made.root = fs[x.draw(len(fs))].fill(next.left, own)
		for i, n := range next.left {
			made.held[i] = before[i] - n
		}
		x.note(t, made)
		if x.draw(4) > 0 {
			made = x.recall(t, own, before, made)
		}
		next.roots[c], next.held[c] = made.root, made.held
		for i, n := range made.held {
			next.left[i] = before[i] - n
		}
	}
	return next
}

// A filling is a cloth filled before.
type filling struct {
	root node
	held []int
}

// maxCuts is how many cuts are remembered of a type of cloth.
const maxCuts = 512

// note remembers a cut.
func (x *exchange) note(t int, c *filling) {
	key := x.key(t, c.held)
	if x.known[key] {
		return
	}
	x.known[key] = true
	if len(x.cuts[t]) < maxCuts {
		x.cuts[t] = append(x.cuts[t], c)
		return
	}
	x.cuts[t][x.draw(maxCuts)] = c
}

// recall gives the cut worth most, of those remembered that what is left
// suffices for, if it is worth more than the one made.
func (x *exchange) recall(t int, q *quote, left []int, made *filling) *filling {
	best, most := made, q.value(made.held)
	for _, c := range x.cuts[t] {
		v := int64(0)
		for i, n := range c.held {
			if n > left[i] {
				v = -1
				break
			}
			v += int64(n) * q.base[i]
		}
		if v > most {
			best, most = c, v
		}
	}
	x.work.spend(2 * len(x.cuts[t]))
	return best
}

// prices sets prices by area, dearer for pieces that were often left over and,
// now and then, for large ones and those of items before the focus; those of
// items after it are worth little.
func (x *exchange) prices(focus int) *quote {
	most := 1.0
	for _, s := range x.e.sizes {
		most = max(most, float64(s.w)*float64(s.h))
	}
	base := make([]int64, len(x.e.sizes))
	bulk := float64(x.draw(4)) / 4
	noise := float64(x.draw(4)) / 8
	lead := 1.0
	if x.draw(4) == 0 {
		lead = float64(int(2) << x.draw(6))
	}
	for i, s := range x.e.sizes {
		part := float64(s.w) * float64(s.h) / most
		v := part * (1 + bulk*part) * (1 + x.rise[i]) * (1 + noise*float64(x.draw(1000))/1000)
		switch {
		case s.items[0] > focus:
			v /= 1 << 12
		case s.items[0] < focus:
			v *= lead
		}
		base[i] = 1 + int64(v*(1<<32))
	}
	return prices(base)
}

// noisy gives prices that differ a little by chance.
func (x *exchange) noisy(q *quote) *quote {
	base := slices.Clone(q.base)
	for i := range base {
		base[i] += base[i] / 4096 * int64(x.draw(1024))
	}
	return prices(base)
}

// correct raises the prices of what is left over and lets all others fall.
func (x *exchange) correct(left []int) {
	for i := range x.rise {
		x.rise[i] *= 0.95
		if left[i] > 0 {
			x.rise[i] += 0.05
		}
	}
}

// force puts one more piece of the item in focus on a cloth by the search for
// one cloth, giving up pieces of later items where it must.
func (x *exchange) force(c, focus int) bool {
	e := x.e
	s := e.sizeOf()[focus]
	cloth := e.p.Given[c]
	want := slices.Clone(x.now.held[c])
	later := make([]int, len(want))
	for i := range want {
		if e.sizes[i].items[0] > focus {
			later[i], want[i] = want[i], 0
		}
	}
	if x.now.left[s] == 0 || done(x.now.held[c]) || !e.sizes[s].fits(cloth.W, cloth.L) || boundRoom(e.sizes, want, cloth, s) == 0 {
		return false
	}
	want[s]++
	key := x.key(x.typ[c], want)
	if x.tried[key] {
		return false
	}
	x.tried[key] = true
	root, ok := e.attempt(want, cloth, x.kind, x.work.spent+e.usual()/16)
	if !ok {
		return false
	}
	for i, n := range later {
		want[i] += n + x.now.left[i]
		if i == s || e.sizes[i].items[0] <= focus {
			want[i] -= x.now.left[i]
		}
	}
	root = e.topUp(root, want, cloth, x.kind, x.work.spent+e.usual()/16, false)
	roots := slices.Clone(x.now.roots)
	roots[c] = root
	x.now = e.loaded(roots)
	x.note(x.typ[c], &filling{root, x.now.held[c]})
	x.keep()
	return true
}

// key tells pieces on cloths of a type apart.
func (x *exchange) key(t int, want []int) string {
	p := pattern{h: t}
	for i, n := range want {
		if n > 0 {
			p.cover = append(p.cover, take{i, n})
		}
	}
	return p.key()
}

// fewer tries to do without one of the cloths, as long as that succeeds.
func (x *exchange) fewer(r *room, limit, patience int64) {
	for !x.work.stop() && x.work.spent < limit {
		used := x.now.used()
		if used < 2 || r.refutes(x.e.placed(&x.now), used-1) {
			return
		}
		if !x.without(used-1, limit, patience) {
			return
		}
	}
}

// without places what is placed on fewer cloths, if it can: the cloth that holds
// least is cleared first.
func (x *exchange) without(most int, limit, patience int64) bool {
	was, old := x.now, x.most
	goal := x.e.short(was.left)
	least, at := 0.0, -1
	for c, h := range was.held {
		area := 0.0
		for i, n := range h {
			area += float64(n) * float64(x.e.sizes[i].w) * float64(x.e.sizes[i].h)
		}
		if area > 0 && (at < 0 || area < least) {
			least, at = area, c
		}
	}
	roots := slices.Clone(was.roots)
	roots[at] = node{dir: Across, size: -1}
	x.now, x.most = x.e.loaded(roots), most
	from := x.work.spent
	for last := from; !x.work.stop() && x.work.spent < limit && x.work.spent-last < patience+(last-from); {
		short := x.e.short(x.now.left)
		if slices.Compare(short, goal) <= 0 {
			return true
		}
		f := slices.IndexFunc(short, func(n int) bool { return n > 0 })
		for f < len(short)-1 && short[f] <= goal[f] {
			f++
		}
		if x.step(short, f) {
			last = x.work.spent
		}
	}
	x.now, x.most = was, old
	return false
}

// better places more pieces, item by item, and then tries with fewer cloths; what
// that frees may take more pieces again. It gives up what gains nothing for so
// much work as patience.
func (x *exchange) better(r *room, limit, patience int64) {
	for again := true; again; {
		x.most = len(x.typ)
		for t, it := range x.e.p.Items {
			if it.Count == 0 || x.work.stop() {
				continue
			}
			x.now = x.best
			if short := x.e.short(x.now.left); short[t] > 0 && !x.e.full(r, short, t) {
				x.run(t, x.work.spent+(limit-x.work.spent)/2, patience)
			}
		}
		x.now = x.best
		used := x.now.used()
		x.fewer(r, limit, patience)
		again = x.now.used() < used && !done(x.now.left)
		x.best = x.now
	}
}
