package pack

import (
	"cmp"
	"slices"
)

// lengthwise looks for a plan of at most five stages shorter than the known one.
// Of few pieces it is the shortest there is. Otherwise long pieces lie side by
// side and end to end along the cloth, and the rest of the width is cut as
// narrower cloth: either the first cuts run along the whole length (what is left
// of the long pieces' section is cut on, too), or a block as long as the pieces
// is cut off first, and what doesn't fit beside them comes from the whole width.
// Then strips are mended a few at a time. With a goal, any plan that long will
// do. The bound it gives is one for every plan of five stages.
func (e *engine) lengthwise(sizes []size, width, goal, limit int64, known plan) plan {
	best := known
	best.bound = max(known.bound, boundAny(sizes, width))
	sub := &engine{p: &Problem{}, sizes: sizes, work: e.work}
	third := (limit - e.work.spent) / 3
	if e.slice(sizes, width, goal, e.work.spent+third, &best) {
		return best
	}
	cs := sub.lanes(width)
	if len(cs) == 0 {
		return e.mend(sizes, width, goal, limit, best)
	}
	best = e.mend(sizes, width, goal, e.work.spent+third, best)
	for at, l := range cs {
		share := e.work.spent + (limit-e.work.spent)/int64(len(cs)-at)
		for way := range 2 {
			if e.settled(&best, goal) || e.work.stop() {
				return best
			}
			half := e.work.spent + (share-e.work.spent)/int64(2-way)
			pl := plan{used: best.used}
			if way == 0 {
				pl = sub.sections(l, width, best.used, half)
			} else {
				pl = sub.block(l, width, best.used, half)
			}
			if pl.used < best.used {
				pl.bound = best.bound
				best = e.mend(sizes, width, goal, share, pl)
			}
		}
	}
	return e.mend(sizes, width, goal, limit, best)
}

// slice looks for the shortest plan by dynamic programming, for lengths from the
// bound on, which it raises. It is done where nothing better is left to be found.
func (e *engine) slice(sizes []size, width, goal, limit int64, best *plan) (done bool) {
	unit := newInstance(sizes, width).unitY
	s := newSlicer(sizes, width, e.work)
	if s == nil {
		return false
	}
	e.work.within(limit, func() {
		for step := unit; !e.settled(best, goal); step *= 2 {
			length := min(best.bound+step-unit, best.used-unit)
			root, ok, over := s.shortest(length)
			if ok {
				*best = plan{root: root, used: root.h, bound: best.bound}
			}
			switch {
			case over:
				return
			case ok:
				best.bound = best.used
			default:
				best.bound = length + unit
			}
		}
	})
	return e.settled(best, goal)
}

// settled says that no better plan than the best is to be had or of use.
func (e *engine) settled(best *plan, goal int64) bool {
	if goal > 0 {
		return best.used <= max(goal, best.bound) || best.bound > goal
	}
	return e.p.purchase(best.bound) >= e.p.purchase(best.used)
}

// A lane is long pieces that lie along the length, laid out on a width.
type lane struct {
	sizes [2]int // whose pieces are all in it; the same twice where it is but one
	width int64
	root  node
}

// mostLanes are tried.
const mostLanes = 10

// lanes lists the lanes worth trying: of one or two of the longest sizes, in
// some of their columns. Those that waste the least come first.
func (e *engine) lanes(width int64) []lane {
	long := slices.DeleteFunc(lyings(e.sizes, width), func(l lying) bool { return l.h < 2*l.w })
	long = long[:min(4, len(long))]
	var ls []lane
	for i, a := range long {
		for j, b := range long[i:] {
			if j > 0 && a.size == b.size {
				continue
			}
			ls = e.mixed(ls, a, b, width)
		}
	}
	slices.SortStableFunc(ls, func(a, b lane) int { return cmp.Compare(e.waste(a), e.waste(b)) })
	return ls[:min(mostLanes, len(ls))]
}

// mixed adds the lanes of two lyings, which may be the same, side by side or, in
// fewer columns, end to end.
func (e *engine) mixed(ls []lane, a, b lying, width int64) []lane {
	na, nb := int64(e.sizes[a.size].n), int64(0)
	if b.size != a.size {
		nb = int64(e.sizes[b.size].n)
	}
	seen := map[int64]bool{}
	for _, ca := range ranks(na) {
		for _, cb := range append(ranks(nb), 0) {
			w := ca*a.w + cb*b.w
			if w > width || seen[w] || nb > 0 && cb == 0 && b.w > w {
				continue
			}
			seen[w] = true
			if root, ok := e.lane(a, b, w); ok {
				ls = append(ls, lane{[2]int{a.size, b.size}, w, root})
			}
		}
	}
	return ls
}

// ranks lists the columns in which n pieces lie one, two, three or four deep.
func ranks(n int64) (cols []int64) {
	for deep := int64(1); deep <= min(n, 4); deep++ {
		cols = append(cols, (n+deep-1)/deep)
	}
	return slices.Compact(cols)
}

// lane lays all pieces of two lyings out on a width, in strips, so that a lane may
// be a column of a block.
func (e *engine) lane(a, b lying, width int64) (node, bool) {
	var sizes []size
	var index []int
	for i := range e.sizes {
		if i == a.size || i == b.size {
			sizes, index = append(sizes, e.sizes[i]), append(index, i)
		}
		if (i == a.size || i == b.size) && !e.sizes[i].fits(width, MaxLength) {
			return node{}, false
		}
	}
	pl := e.cut(sizes, width, Strips, 0, e.work.spent+100_000, plan{})
	return pl.root.renamed(index), true
}

// waste is the part of a lane that isn't pieces.
func (e *engine) waste(l lane) float64 {
	full := 0.0
	l.root.each(func(s int) { full += float64(e.sizes[s].w) * float64(e.sizes[s].h) })
	return 1 - full/float64(l.width)/float64(l.root.h)
}

// rest counts the pieces that are not in a lane.
func (e *engine) rest(l lane) []int {
	left := e.counts()
	left[l.sizes[0]], left[l.sizes[1]] = 0, 0
	return left
}

// sections cuts along the whole length first: the lane, after it what else fits
// its width, and beside it the rest. The shortest length is found by halving.
func (e *engine) sections(l lane, width, below, limit int64) plan {
	best := plan{used: below}
	lo, hi := max(l.root.h, boundAny(e.sizes, width)), below-1
	const tries = 8
	for try := 0; lo <= hi && try < tries && !e.work.stop(); try++ {
		share := e.work.spent + (limit-e.work.spent)/int64(tries-try)
		length := lo + (hi-lo)/2
		if try == 0 {
			length = hi
		}
		if root, ok := e.section(l, width, length, share); ok {
			best = plan{root: root, used: root.h}
			hi = min(length, root.h) - 1
		} else {
			lo = length + 1
		}
	}
	return best
}

// section lays a lane and the rest out on a length, if they fit.
func (e *engine) section(l lane, width, length, limit int64) (node, bool) {
	left := e.rest(l)
	part := l.root
	if after := length - part.h; after > 0 {
		more := e.load(left, Cloth{l.width, after}, Stacks, e.work.spent+(limit-e.work.spent)/3, true)
		part = across(append(part.parts, more.parts...))
	}
	if done(left) {
		return along([]node{part}), true
	}
	if width == l.width {
		return node{}, false
	}
	n, ok := e.attempt(left, Cloth{width - l.width, length}, Stacks, limit)
	return along([]node{part, across(n.parts)}), ok
}

// block cuts a block as long as the lane off first, cuts what fits beside the
// lane in strips, and the rest from the whole width.
func (e *engine) block(l lane, width, below, limit int64) plan {
	left := e.rest(l)
	cols := []node{l.root}
	if beside := width - l.width; beside > 0 {
		more := e.load(left, Cloth{beside, l.root.h}, Strips, e.work.spent+(limit-e.work.spent)/2, true)
		cols = append(cols, more)
	}
	parts := []node{along(cols)}
	if !done(left) {
		room := below - 1 - l.root.h
		if room <= 0 {
			return plan{used: below}
		}
		n, ok := e.attempt(left, Cloth{width, room}, Stacks, limit)
		if !ok {
			return plan{used: below}
		}
		parts = append(parts, n.parts...)
	}
	root := across(parts)
	return plan{root: root, used: root.h}
}
