package pack

import (
	"cmp"
	"slices"
)

// lengthwise looks for a plan shorter than the known one in which long pieces
// lie side by side along the cloth, and the rest of the width is cut as narrower
// cloth. Either the first cuts run along the whole length (what is left of the
// long pieces' section is cut on, too), or a block as long as the pieces is cut
// off first, and what doesn't fit beside them comes from the whole width. With a
// goal, any plan that long will do. The bound it gives is one for every kind.
func (e *engine) lengthwise(sizes []size, width, goal, limit int64, known plan) plan {
	best := known
	best.bound = boundAny(sizes, width)
	sub := &engine{p: &Problem{}, sizes: sizes, work: e.work}
	cs := sub.lanes(width)
	for at, l := range cs {
		share := e.work.spent + (limit-e.work.spent)/int64(len(cs)-at)
		for way := range 2 {
			if best.used <= max(goal, best.bound) || e.work.stop() {
				return best
			}
			half := e.work.spent + (share-e.work.spent)/int64(2-way)
			var pl plan
			if way == 0 {
				pl = sub.sections(l, width, best.used, half)
			} else {
				pl = sub.block(l, width, best.used, half)
			}
			if pl.used < best.used {
				pl.bound = best.bound
				best = pl
			}
		}
	}
	return best
}

// A lane is a number of columns of pieces of one size, lying along the length.
type lane struct {
	size  int
	w, h  int64 // of the piece as it lies
	deep  int   // pieces in each column; the last one may hold fewer
	width int64
}

// lanes lists the lanes worth trying: of the longest sizes, in all the columns
// they need, two pieces deep at most.
func (e *engine) lanes(width int64) []lane {
	var ls []lane
	long := slices.DeleteFunc(lyings(e.sizes, width), func(l lying) bool { return l.h < 2*l.w })
	for _, l := range long[:min(4, len(long))] {
		n := e.sizes[l.size].n
		for deep := 1; deep <= min(2, n); deep++ {
			if cols := int64((n + deep - 1) / deep); cols <= width/l.w {
				ls = append(ls, lane{l.size, l.w, l.h, deep, cols * l.w})
			}
		}
	}
	slices.SortStableFunc(ls, func(a, b lane) int { return cmp.Compare(b.long(), a.long()) })
	return ls
}

// long is the length of a lane.
func (l lane) long() int64 { return l.h * int64(l.deep) }

// rest counts the pieces that are not in a lane.
func (e *engine) rest(l lane) []int {
	left := make([]int, len(e.sizes))
	for i, s := range e.sizes {
		left[i] = s.n
	}
	left[l.size] = 0
	return left
}

// columns makes the columns of a lane.
func (e *engine) columns(l lane) []node {
	var cols []node
	for n := e.sizes[l.size].n; n > 0; n -= l.deep {
		var rows []node
		for range min(n, l.deep) {
			rows = append(rows, leafNode(l.size, l.w, l.h))
		}
		cols = append(cols, across(rows))
	}
	return cols
}

// sections cuts along the whole length first: the lane, after it what else fits
// its width, and beside it the rest. The shortest length is found by halving.
func (e *engine) sections(l lane, width, below, limit int64) plan {
	best := plan{used: below}
	lo, hi := max(l.long(), boundAny(e.sizes, width)), below-1
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
	part := across([]node{along(e.columns(l))})
	if after := length - part.h; after > 0 {
		more := e.load(left, Cloth{l.width, after}, Strips, e.work.spent+(limit-e.work.spent)/3, true)
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
	cols := e.columns(l)
	if beside := width - l.width; beside > 0 {
		more := e.load(left, Cloth{beside, l.long()}, Strips, e.work.spent+(limit-e.work.spent)/2, true)
		cols = append(cols, more)
	}
	parts := []node{along(cols)}
	if !done(left) {
		room := below - 1 - l.long()
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
