package pack

import (
	"cmp"
	"slices"
)

// A room bounds what comes from given cloths. Every bound is by prices: where no
// cutting of a cloth is worth more than so much, pieces worth more than the
// cloths together can't all come from them. All in whole numbers.
//
// For cuttings of any kind a piece is worth f(w)·g(h), and a cloth f(W)·g(L),
// with functions that never count two lengths more than their sum: then the
// mapped pieces, too, have room on the mapped cloth (Fekete & Schepers 2004 for
// one size of cloth; f(x) + f(y) <= f(x + y) is what their proof needs). A piece
// that may turn counts as it takes the least. Pieces that fit only some of the
// cloths are also looked at by themselves. For strips and stacks the prices
// come from a linear program (cover).
type room struct {
	sizes  []size
	types  []Cloth // the cloths, each size once
	count  []int   // how many there are of each
	kind   Kind
	covers *cover // nil where there is none for the kind
	work   *meter
}

// newRoom prepares bounds for layouts of a kind on cloths.
func newRoom(sizes []size, cloths []Cloth, kind Kind, work *meter) *room {
	r := &room{sizes: sizes, kind: kind, work: work}
	for _, c := range cloths {
		if i := slices.Index(r.types, c); i >= 0 {
			r.count[i]++
		} else {
			r.types, r.count = append(r.types, c), append(r.count, 1)
		}
	}
	if kind != Thrifty {
		r.covers = newCover(sizes, r.types, r.count, kind, work)
	}
	return r
}

// refutes says whether so many pieces of each size are sure not to come from any
// k of the cloths.
func (r *room) refutes(want []int, k int) bool {
	if k < 0 || sum(want) == 0 {
		return k < 0
	}
	if k == 0 || r.areas(want, k) {
		return true
	}
	all := make([]bool, len(r.types))
	for i := range all {
		all[i] = true
	}
	if r.mapped(want, all, k) {
		return true
	}
	for _, fit := range r.narrow(want) {
		if !slices.Contains(fit, true) || r.mapped(want, fit, k) {
			return true
		}
	}
	return r.covers != nil && r.covers.refutes(want, k)
}

// areas refutes by area, however great the numbers.
func (r *room) areas(want []int, k int) bool {
	if k < 0 {
		return false
	}
	var pieces []size
	for i, n := range want {
		s := r.sizes[i]
		s.n = n
		pieces = append(pieces, s)
	}
	var areas []int64
	for i, c := range r.types {
		for range r.count[i] {
			areas = append(areas, boundArea([]size{{w: c.W, h: c.L, n: 1}}, 1))
		}
	}
	slices.SortFunc(areas, func(a, b int64) int { return compare(b, a) })
	sum := int64(0)
	for _, a := range areas[:min(k, len(areas))] {
		sum += min(a, 1<<62-sum)
	}
	return boundArea(pieces, 1) > sum
}

// maxNarrow is how many sets of cloths that some pieces are bound to are looked
// at.
const maxNarrow = 12

// narrow lists the sets of cloths that some pieces are bound to, smallest first.
func (r *room) narrow(want []int) [][]bool {
	var sets [][]bool
	for i, n := range want {
		if n == 0 {
			continue
		}
		fit := make([]bool, len(r.types))
		for j, c := range r.types {
			fit[j] = r.sizes[i].fits(c.W, c.L)
		}
		if slices.Contains(fit, false) && !slices.ContainsFunc(sets, func(s []bool) bool { return slices.Equal(s, fit) }) {
			sets = append(sets, fit)
		}
		if len(sets) >= maxNarrow {
			break
		}
	}
	size := func(s []bool) (n int) {
		for _, b := range s {
			if b {
				n++
			}
		}
		return n
	}
	slices.SortStableFunc(sets, func(a, b []bool) int { return cmp.Compare(size(a), size(b)) })
	return sets
}

// A gauge is a function on whole numbers with f(x) + f(y) <= f(x + y). With div
// it is x over div, rounded down. Else what is below eps vanishes, and what
// leaves less than eps of whole counts as the whole.
type gauge struct{ div, eps, whole int64 }

// of maps x.
func (g gauge) of(x int64) int64 {
	switch {
	case g.div > 0:
		return x / g.div
	case x < g.eps:
		return 0
	case x > g.whole-g.eps:
		return g.whole
	}
	return x
}

// gauges lists the functions worth trying on sides of pieces and cloths.
func gauges(sides, cloths []int64) []gauge {
	most := 10 + 2000/(len(sides)+50)
	whole := slices.Max(cloths)
	gs := []gauge{{div: 1}}
	add := func(g gauge) {
		if len(gs) < most && !slices.Contains(gs, g) {
			gs = append(gs, g)
		}
	}
	for _, c := range cloths[:min(len(cloths), 4)] {
		for k := int64(2); k <= 4; k++ {
			add(gauge{div: c/k + 1})
		}
	}
	for _, s := range sides[:min(len(sides), 12)] {
		add(gauge{div: s})
		if 2*s <= whole {
			add(gauge{eps: s, whole: whole})
		}
		if e := whole - s + 1; 2*e <= whole {
			add(gauge{eps: e, whole: whole})
		}
	}
	return gs
}

// mapped refutes by mapped areas: of the pieces that fit no other cloths than
// some, on the k roomiest of these.
func (r *room) mapped(want []int, on []bool, k int) bool {
	lies := r.bound(want, on)
	var ws, hs, cw, ch []int64
	for _, l := range lies {
		ws, hs = append(ws, l.w), append(hs, l.h)
	}
	for i, c := range r.types {
		if on[i] {
			cw, ch = append(cw, c.W), append(ch, c.L)
		}
	}
	distinct := func(s []int64) []int64 {
		slices.SortFunc(s, func(a, b int64) int { return compare(b, a) })
		return slices.Compact(s)
	}
	if len(lies) == 0 {
		return false
	}
	ws, hs, cw, ch = distinct(ws), distinct(hs), distinct(cw), distinct(ch)
	if float64(cw[0])*float64(ch[0])*float64(sum(want)+k) > 1<<61 {
		return false
	}
	gs := gauges(hs, ch)
	for _, f := range gauges(ws, cw) {
		for _, g := range gs {
			if r.exceeds(want, lies, on, f, g, k) {
				return true
			}
		}
		r.work.spend(4 * len(gs) * (len(lies) + len(on)))
	}
	return false
}

// bound lists the pieces wanted that fit no cloths but some, as they fit those.
func (r *room) bound(want []int, on []bool) []lying {
	var all []lying
	for i, n := range want {
		if n == 0 {
			continue
		}
		s := r.sizes[i]
		var lies []lying
		inside := true
		for j, c := range r.types {
			if !on[j] {
				inside = inside && !s.fits(c.W, c.L)
				continue
			}
			for _, l := range []lying{{i, s.w, s.h}, {i, s.h, s.w}} {
				if l.w <= c.W && l.h <= c.L && (s.turn || l.w == s.w && l.h == s.h) && !slices.Contains(lies, l) {
					lies = append(lies, l)
				}
			}
		}
		if inside {
			all = append(all, lies...)
		}
	}
	return all
}

// exceeds says whether mapped pieces take more than the k roomiest cloths.
func (r *room) exceeds(want []int, lies []lying, on []bool, f, g gauge, k int) bool {
	need := int64(0)
	for i := 0; i < len(lies); {
		least := f.of(lies[i].w) * g.of(lies[i].h)
		j := i + 1
		for ; j < len(lies) && lies[j].size == lies[i].size; j++ {
			least = min(least, f.of(lies[j].w)*g.of(lies[j].h))
		}
		need += least * int64(want[lies[i].size])
		i = j
	}
	worth := make([]int64, len(on))
	for i, c := range r.types {
		if on[i] {
			worth[i] = f.of(c.W) * g.of(c.L)
		}
	}
	return need > r.best(worth, k)
}

// best sums what the k cloths are worth that are worth most.
func (r *room) best(worth []int64, k int) (sum int64) {
	order := make([]int, len(worth))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return compare(worth[b], worth[a]) })
	for _, i := range order {
		n := min(k, r.count[i])
		sum += int64(n) * worth[i]
		k -= n
	}
	return sum
}
