package pack

import (
	"cmp"
	"slices"
)

// A load is what lies on the cloths.
type load struct {
	roots []node
	held  [][]int // pieces of each size on each cloth
	left  []int   // pieces of each size without a place
}

// loaded takes stock of what lies on the cloths.
func (e *engine) loaded(roots []node) load {
	l := load{roots: slices.Clone(roots), left: e.counts()}
	for _, r := range roots {
		held := e.held(r)
		for i, n := range held {
			l.left[i] -= n
		}
		l.held = append(l.held, held)
	}
	return l
}

// used counts the cloths cut into.
func (l *load) used() (n int) {
	for _, h := range l.held {
		if !done(h) {
			n++
		}
	}
	return n
}

// short tells how many pieces of each item are without a place where so many of
// each size are: the items of a size are served in order.
func (e *engine) short(left []int) []int {
	short := make([]int, len(e.p.Items))
	for i, n := range left {
		items := e.sizes[i].items
		for k := len(items) - 1; k >= 0 && n > 0; k-- {
			t := min(n, e.p.Items[items[k]].Count)
			short[items[k]] = t
			n -= t
		}
	}
	return short
}

// compare gives a negative number where a is better than b: it places more or
// other pieces, or needs fewer cloths.
func (e *engine) compare(a, b *load) int {
	return cmp.Or(slices.Compare(e.short(a.left), e.short(b.left)), cmp.Compare(a.used(), b.used()))
}

// counts gives how many pieces of each size there are.
func (e *engine) counts() []int { return counts(e.sizes) }

// sizeOf gives the size of each item, or -1 where its count is nought.
func (e *engine) sizeOf() []int {
	of := make([]int, len(e.p.Items))
	for i := range of {
		of[i] = -1
	}
	for i, s := range e.sizes {
		for _, it := range s.items {
			of[it] = i
		}
	}
	return of
}

// least says whether what lies on the cloths is sure to be best in what counts:
// of no item can more be placed beside those before it, and fewer cloths haven't
// the room.
func (e *engine) least(r *room, l *load) bool {
	short := e.short(l.left)
	for t, n := range short {
		if n > 0 && !e.full(r, short, t) {
			return false
		}
	}
	return r.refutes(e.placed(l), l.used()-1)
}

// placed counts the pieces of each size that have a place.
func (e *engine) placed(l *load) []int {
	n := e.counts()
	for i, k := range l.left {
		n[i] -= k
	}
	return n
}

// full says whether a room proves that no more of an item can be placed beside
// what is placed of those before it.
func (e *engine) full(r *room, short []int, t int) bool {
	want := make([]int, len(e.sizes))
	of := e.sizeOf()
	for i := range t + 1 {
		if of[i] >= 0 {
			want[of[i]] += e.p.Items[i].Count - short[i]
		}
	}
	want[of[t]]++
	return r.refutes(want, len(e.p.Given))
}
