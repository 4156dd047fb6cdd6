package pack

import (
	"cmp"
	"slices"
)

// given lays the pieces out on the given cloths: all of them on as few as can
// be, else as many as can be, item by item. The cloths are filled one after the
// other, the largest or the smallest first, with as much area as can be or with
// as many pieces in the order of the items, in strips and then in more involved
// ways; the best of all these is taken.
func (e *engine) given() Result {
	p := e.p
	var best Result
	var bestMerit merit
	total := e.usual()
	ways := e.ways()
	tries := len(ways) * (int(p.Kind) + 1)
	at := 0
	for kind := Strips; kind <= p.Kind; kind++ {
		for _, w := range ways {
			limit := e.work.spent + (total-e.work.spent)/int64(tries-at)
			at++
			e.sure = len(p.Given) == 1
			r := e.fill(w, kind, limit)
			m := judge(p, &r)
			if best.Cloths == nil || m.beats(&bestMerit) {
				best, bestMerit = r, m
			}
			if e.least(&best) {
				best.Proved = true
				e.boundGiven(&best)
				return best
			}
		}
	}
	best.Proved = e.sure
	e.boundGiven(&best)
	return best
}

// beats says whether a more involved layout is worth its cuts: it places more
// or other pieces, or needs fewer cloths.
func (a *merit) beats(b *merit) bool {
	c := *a
	c.buy, c.strips, c.settings, c.cuts, c.spare, c.odd = b.buy, b.strips, b.settings, b.cuts, b.spare, b.odd
	return c.better(b) < 0
}

// A way is an order in which to fill the given cloths, and whether with as much
// area as can be rather than by the order of the items.
type way struct {
	order []int
	area  bool
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
	area := func(i int) float64 { return float64(g[i].W) * float64(g[i].L) }
	slices.SortStableFunc(down, func(a, b int) int { return cmp.Compare(area(b), area(a)) })
	ws := []way{{down, true}, {down, false}}
	if slices.ContainsFunc(g, func(c Cloth) bool { return c != g[0] }) {
		up := slices.Clone(down)
		slices.Reverse(up)
		ws = append(ws, way{up, true}, way{up, false})
	}
	return ws
}

// least says whether a layout is sure to be best in what counts: everything is
// placed, and fewer of the cloths haven't the room.
func (e *engine) least(r *Result) bool {
	used := 0
	for i := range r.Cloths {
		if r.Cloths[i].Dir != None {
			used++
		}
	}
	if !done(r.Short) {
		return false
	}
	var areas []int64
	for _, c := range e.p.Given {
		areas = append(areas, boundArea([]size{{w: c.W, h: c.L, n: 1}}, 1))
	}
	slices.SortFunc(areas, func(a, b int64) int { return compare(b, a) })
	need, sum := 0, int64(0)
	for area := boundArea(e.sizes, 1); need < len(areas) && sum < area; need++ {
		sum += min(areas[need], 1<<62-sum)
	}
	return used <= need
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
func (e *engine) fill(w way, kind Kind, limit int64) Result {
	left := make([]int, len(e.sizes))
	for i, s := range e.sizes {
		left[i] = s.n
	}
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
		roots[i] = e.smooth(roots[i], c.W, c.L, kind, e.usual()/int64(64*len(w.order)))
	}
	return e.p.layOut(e.sizes, roots)
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
	k := knapsack{work: &meter{}}
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
	order := make([]int, len(e.sizes))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		x, y := &e.sizes[a], &e.sizes[b]
		if area {
			return cmp.Compare(float64(y.w)*float64(y.h), float64(x.w)*float64(x.h))
		}
		return cmp.Compare(x.items[0], y.items[0])
	})
	has := e.held(best)
	for at, i := range order {
		share := e.work.spent + (limit-e.work.spent)/int64(len(order)-at)
		lo, hi := 0, min(want[i]-has[i], boundRoom(e.sizes, has, c, i))
		for lo < hi && !e.work.stop() { // lo more do fit; more than hi don't, or weren't found to
			mid := (lo + hi + 1) / 2
			if hi == want[i]-has[i] && lo == 0 {
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
		has[i] += lo
	}
	return best
}

// boundRoom bounds by area how many more pieces of a size fit a cloth.
func boundRoom(sizes []size, has []int, c Cloth, i int) int {
	free := float64(c.W) * float64(c.L)
	for j, n := range has {
		free -= float64(n) * float64(sizes[j].w) * float64(sizes[j].h)
	}
	return max(0, int(free/float64(sizes[i].w)/float64(sizes[i].h)+1e-6))
}
