package pack

import (
	"cmp"
	"slices"
)

// given lays the pieces out on the given cloths: all of them on as few as can
// be, else as many as can be, item by item. For each kind the cloths are filled
// one after the other first, then pieces are exchanged between them. Of two
// kinds that place the same pieces on as many cloths, the simpler stays.
func (e *engine) given() Result {
	r := newRoom(e.sizes, e.p.Given, e.p.Kind, e.work)
	starts := e.starts(r)
	var best load
	kind, sure := Strips, false
	for k := range starts {
		s := &starts[k]
		if k == 0 || e.compare(&s.load, &best) < 0 {
			best, kind = s.load, Kind(k)
		}
		if sure = e.least(r, &best) || s.sure && Kind(k) == e.p.Kind; sure {
			break
		}
		if s.sure || Kind(k) < e.p.Kind && e.least(newRoom(e.sizes, e.p.Given, Kind(k), e.work), &best) {
			continue // this kind can do no more
		}
		x := newExchange(e, Kind(k), best)
		part := int64(len(starts) - k)
		// What goes on gaining may take all the work there is.
		x.better(r, e.work.spent+max(0, e.work.limit-e.work.spent)/part, e.usual()/(4*part*part))
		if e.compare(&x.best, &best) < 0 {
			best, kind = x.best, Kind(k)
		}
		if sure = e.least(r, &best); sure {
			break
		}
	}
	for i, root := range best.roots {
		best.roots[i] = e.smoothOn(root, i, kind)
	}
	e.elsewhere(&best, kind)
	out := e.p.layOut(e.sizes, best.roots)
	out.Proved = sure
	e.boundGiven(&out)
	return out
}

// smoothOn makes what lies on a given cloth easier to cut.
func (e *engine) smoothOn(root node, cloth int, kind Kind) node {
	c := e.p.Given[cloth]
	return e.smooth(root, c.W, c.L, kind, e.usual()/int64(64*len(e.p.Given)))
}

// elsewhere moves what lies on a cloth to one that isn't needed, where that is
// easier to cut.
func (e *engine) elsewhere(l *load, kind Kind) {
	was := e.p.layOut(e.sizes, l.roots)
	m := judge(e.p, &was)
	for c, held := range l.held {
		tried := []Cloth{e.p.Given[c]}
		for u, cloth := range e.p.Given {
			if done(held) || !done(l.held[u]) || slices.Contains(tried, cloth) {
				continue
			}
			tried = append(tried, cloth)
			root, ok := e.attempt(held, cloth, kind, e.work.spent+e.usual()/256)
			if !ok {
				continue
			}
			roots := slices.Clone(l.roots)
			roots[c], roots[u] = node{dir: Across, size: -1}, e.smoothOn(root, u, kind)
			r := e.p.layOut(e.sizes, roots)
			if n := judge(e.p, &r); n.better(&m) < 0 {
				l.roots, m = roots, n
				l.held[c], l.held[u] = l.held[u], held
				break
			}
		}
	}
}

// A start is what filling the cloths one after the other comes to, and whether
// the search for one cloth, where there is but one, proved it best of its kind.
type start struct {
	load
	sure bool
}

// starts fills the cloths one after the other in every kind, up to one that is
// sure to be best.
func (e *engine) starts(r *room) (all []start) {
	for k := Strips; k <= e.p.Kind; k++ {
		share := max(0, e.usual()-e.work.spent) / int64(e.p.Kind-k+1)
		l := e.oneByOne(r, k, e.work.spent+share)
		all = append(all, start{l, e.sure})
		if e.least(r, &l) {
			break
		}
	}
	return all
}

// oneByOne fills the cloths one after the other: the largest or the smallest
// first, with as much area as can be or with as many pieces in the order of the
// items; the best of these ways is taken.
func (e *engine) oneByOne(r *room, kind Kind, limit int64) load {
	var best load
	ways := e.ways()
	for at, w := range ways {
		e.sure = len(e.p.Given) == 1
		l := e.loaded(e.fill(w, kind, e.work.spent+(limit-e.work.spent)/int64(len(ways)-at)))
		if at == 0 || e.compare(&l, &best) < 0 {
			best = l
		}
		if done(best.left) && r.areas(e.counts(), best.used()-1) {
			break
		}
	}
	return best
}

// A way is an order in which to fill the given cloths, and whether with as much
// area as can be rather than by the order of the items.
type way struct {
	order []int
	area  bool
}

// larger orders cloths by area.
func larger(a, b Cloth) int {
	return cmp.Compare(float64(b.W)*float64(b.L), float64(a.W)*float64(a.L))
}

// ways lists the ways worth trying.
func (e *engine) ways() []way {
	g := e.p.Given
	down := make([]int, len(g))
	for i := range down {
		down[i] = i
	}
	if len(g) == 1 {
		return []way{{down, false}}
	}
	slices.SortStableFunc(down, func(a, b int) int { return larger(g[a], g[b]) })
	ws := []way{{down, true}, {down, false}}
	if slices.ContainsFunc(g, func(c Cloth) bool { return c != g[0] }) {
		up := slices.Clone(down)
		slices.Reverse(up)
		ws = append(ws, way{up, true}, way{up, false})
	}
	return ws
}

// boundGiven sets the bounds on the length used in all: laid end to end, the
// cloths used are cloth as wide as the widest.
func (e *engine) boundGiven(r *Result) {
	if !done(r.Short) || len(e.sizes) == 0 {
		return
	}
	width := int64(0)
	for _, c := range e.p.Given {
		width = max(width, c.W)
	}
	r.Any = min(boundAny(e.sizes, width), r.Used)
	r.Bound = r.Any
}

// fill lays the pieces out on the cloths in a way.
func (e *engine) fill(w way, kind Kind, limit int64) []node {
	left := e.counts()
	roots := make([]node, len(e.p.Given))
	for i := range roots {
		roots[i] = node{dir: Across, size: -1}
	}
	for at, i := range w.order {
		if done(left) {
			break
		}
		share := e.work.spent + (limit-e.work.spent)/int64(len(w.order)-at)
		c := e.p.Given[i]
		roots[i] = e.load(left, c, kind, share, w.area && at < len(w.order)-1)
	}
	return roots
}

// load fills one cloth from what is left, which it lowers: with everything if
// it fits, else with as much area as can be, or item by item.
func (e *engine) load(left []int, c Cloth, kind Kind, limit int64, area bool) node {
	want := make([]int, len(left))
	for i, n := range left {
		if e.sizes[i].fits(c.W, c.L) {
			want[i] = n
		}
	}
	best, ok := e.attempt(want, c, kind, e.work.spent+(limit-e.work.spent)/4)
	if !ok {
		if !area {
			best = node{}
		}
		best = e.topUp(choose(best, c.L, e.sizes), want, c, kind, limit, area)
	}
	for i, n := range e.held(best) {
		left[i] -= n
	}
	return best
}

// attempt lays so many pieces of each size out on a cloth's width, and says
// whether they fit its length.
func (e *engine) attempt(want []int, c Cloth, kind Kind, limit int64) (node, bool) {
	var sizes []size
	var index []int
	for i, n := range want {
		if n > 0 {
			s := e.sizes[i]
			s.n = n
			sizes, index = append(sizes, s), append(index, i)
		}
	}
	none := node{dir: Across, size: -1}
	if len(sizes) == 0 {
		return none, true
	}
	for _, s := range sizes {
		if !s.fits(c.W, c.L) {
			return none, false
		}
	}
	// Making the plan's parts and the bound are work, too.
	e.work.spend(200*sum(want) + 5000*len(sizes))
	sure := boundAny(sizes, c.W) > c.L
	if sure {
		kind = Strips // there's no fitting; a plan to choose strips from is enough
		limit = e.work.spent + (limit-e.work.spent)/8
	}
	pl := e.cut(sizes, c.W, Strips, c.L, limit, plan{})
	for k := Stacks; k <= kind && pl.used > c.L; k++ {
		pl.bound = 0
		if k == Stacks {
			pl = e.cut(sizes, c.W, Stacks, c.L, limit, pl)
		} else {
			pl = e.lengthwise(sizes, c.W, c.L, limit, pl)
		}
	}
	if pl.used > c.L && pl.bound <= c.L && !sure {
		e.sure = false
	}
	return pl.root.renamed(index), pl.used <= c.L
}

// renamed gives the node with its sizes replaced.
func (n node) renamed(index []int) node {
	if n.size >= 0 {
		n.size = index[n.size]
	}
	parts := make([]node, len(n.parts))
	for i, p := range n.parts {
		parts[i] = p.renamed(index)
	}
	n.parts = parts
	return n
}

// held counts the pieces of each size in a node.
func (e *engine) held(n node) []int {
	count := make([]int, len(e.sizes))
	n.each(func(s int) { count[s]++ })
	return count
}

// each calls f with the size of every piece.
func (n node) each(f func(size int)) {
	if n.dir == None && n.size >= 0 && n.w > 0 {
		f(n.size)
	}
	for _, p := range n.parts {
		p.each(f)
	}
}

// choose takes the strips of a plan that hold the most area and fit a length.
func choose(plan node, length int64, sizes []size) node {
	out := node{dir: Across, size: -1}
	if plan.dir != Across {
		return out
	}
	plan = across(plan.parts)
	// Coarse enough for a table of four million cells.
	g := max(1, length>>14, length/(1<<22)*int64(len(plan.parts)+1))
	k := knapsack{work: &meter{}, took: make([]bool, 0, (int(length/g)+1)*len(plan.parts))}
	k.reset(int(length / g))
	for i, s := range plan.parts {
		v := 0.0
		s.each(func(size int) { v += float64(sizes[size].w) * float64(sizes[size].h) })
		// Area as a part of the plan's, of which there are 2^40.
		k.add(i, int((s.h+g-1)/g), 1, 1+int64(v/float64(plan.h+1)/float64(plan.w+1)*(1<<40)))
	}
	k.trace(len(k.layers), k.capacity, func(i, _ int) { out.parts = append(out.parts, plan.parts[i]) })
	return across(out.parts)
}

// topUp adds pieces to those of a plan as long as they can be laid out anew on
// the cloth: the largest first, or item by item.
func (e *engine) topUp(best node, want []int, c Cloth, kind Kind, limit int64, area bool) node {
	order := e.order(area)
	has := e.held(best)
	for at, t := range order {
		i := t.size
		share := e.work.spent + (limit-e.work.spent)/int64(len(order)-at)
		more := max(0, min(want[i], t.n)-has[i])
		lo, hi := 0, min(more, boundRoom(e.sizes, has, c, i))
		for lo < hi && !e.work.stop() { // lo more do fit; more than hi don't, or weren't found to
			mid := (lo + hi + 1) / 2
			if hi == more && lo == 0 {
				mid = hi // often all do
			}
			has[i] += mid
			n, ok := e.attempt(has, c, kind, e.work.spent+(share-e.work.spent)/4)
			has[i] -= mid
			if ok {
				lo, best = mid, n
			} else {
				hi = mid - 1
			}
		}
		e.sure = e.sure && lo == hi
		has[i] += lo
	}
	return best
}

// order lists the sizes in the order in which they are to be placed, and up to
// how many of each: by area all of each size, or item by item.
func (e *engine) order(area bool) (order []take) {
	if !area {
		upto := make([]int, len(e.sizes))
		of := e.sizeOf()
		for t, it := range e.p.Items {
			if i := of[t]; it.Count > 0 {
				upto[i] += it.Count
				order = append(order, take{i, upto[i]})
			}
		}
		return order
	}
	for i, s := range e.sizes {
		order = append(order, take{i, s.n})
	}
	slices.SortStableFunc(order, func(a, b take) int {
		x, y := &e.sizes[a.size], &e.sizes[b.size]
		return cmp.Compare(float64(y.w)*float64(y.h), float64(x.w)*float64(x.h))
	})
	return order
}

// boundRoom bounds by area how many more pieces of a size fit a cloth.
func boundRoom(sizes []size, has []int, c Cloth, i int) int {
	free := float64(c.W) * float64(c.L)
	for j, n := range has {
		free -= float64(n) * float64(sizes[j].w) * float64(sizes[j].h)
	}
	return max(0, int(free/float64(sizes[i].w)/float64(sizes[i].h)+1e-6))
}
