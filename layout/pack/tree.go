package pack

import (
	"cmp"
	"slices"
)

// A node is a part of a layout before it has a place: a piece, or parts lying
// above one another (Across) or side by side (Along). What is left of its
// parent is implied.
type node struct {
	w, h  int64 // as much cloth as it needs
	dir   Dir
	parts []node
	size  int // of a piece, else -1
}

// leafNode is a piece of size s as it lies.
func leafNode(s int, w, h int64) node { return node{w: w, h: h, size: s} }

// across stacks parts along y.
func across(parts []node) node {
	n := node{dir: Across, parts: parts, size: -1}
	for _, p := range parts {
		n.w, n.h = max(n.w, p.w), n.h+p.h
	}
	return n
}

// along sets parts side by side along x.
func along(parts []node) node {
	n := node{dir: Along, parts: parts, size: -1}
	for _, p := range parts {
		n.w, n.h = n.w+p.w, max(n.h, p.h)
	}
	return n
}

// flat gives n with single parts dissolved and parts divided the same way
// spliced into their parent, so that stages alternate.
func (n node) flat() node {
	if n.dir == None {
		return n
	}
	parts := n.splice()
	switch {
	case len(parts) == 1:
		return parts[0]
	case n.dir == Across:
		return across(parts)
	}
	return along(parts)
}

// splice gives the parts of n, flat, with those divided as n is replaced by
// their own parts. Where such a part was narrower than n, its parts only gain
// leftover beside them.
func (n node) splice() []node {
	var parts []node
	for _, p := range n.parts {
		if p = p.flat(); p.dir != None && len(p.parts) == 0 {
			continue
		}
		if p.dir == n.dir {
			parts = append(parts, p.parts...)
		} else {
			parts = append(parts, p)
		}
	}
	return parts
}

// sorted puts the parts in the order that is easiest to cut: largest first
// along the cut, equal ones next to each other, pieces of one size together.
func (n node) sorted() node {
	for i := range n.parts {
		n.parts[i] = n.parts[i].sorted()
	}
	slices.SortStableFunc(n.parts, func(a, b node) int {
		if n.dir == Across {
			return cmp.Or(compare(b.h, a.h), compare(b.w, a.w), a.compare(b))
		}
		return cmp.Or(compare(b.w, a.w), compare(b.h, a.h), a.compare(b))
	})
	return n
}

// compare orders nodes of equal extent by what they hold, so that equal ones
// come together.
func (n node) compare(o node) int {
	if c := cmp.Or(cmp.Compare(n.dir, o.dir), cmp.Compare(n.size, o.size), cmp.Compare(len(n.parts), len(o.parts))); c != 0 {
		return c
	}
	for i := range n.parts {
		if c := cmp.Or(compare(n.parts[i].w, o.parts[i].w), compare(n.parts[i].h, o.parts[i].h), n.parts[i].compare(o.parts[i])); c != 0 {
			return c
		}
	}
	return 0
}

// A dealer hands out the items of each size in their order.
type dealer struct {
	items []Item
	sizes []size
	left  []int // of each item, still to be placed
}

// newDealer starts with nothing placed.
func newDealer(items []Item, sizes []size) *dealer {
	d := &dealer{items: items, sizes: sizes, left: make([]int, len(items))}
	for i, it := range items {
		d.left[i] = it.Count
	}
	return d
}

// piece gives an item for a piece of size s lying w wide, and whether it is
// turned; -1 when all are placed.
func (d *dealer) piece(s int, w int64) (item int, turned bool) {
	for _, i := range d.sizes[s].items {
		if d.left[i] > 0 {
			d.left[i]--
			return i, d.items[i].W != w
		}
	}
	return -1, false
}

// cloth lays n, a cloth's strips (Across) or lengthwise sections (Along), out
// on a cloth w wide and l long, or as long as it needs where l is nought. It
// also gives the length used.
func (d *dealer) cloth(n node, w, l int64) (Section, int64) {
	parts := n.splice()
	for n.dir == Along && len(parts) == 1 {
		n = parts[0]
		if n.dir == None {
			n = across(parts)
		}
		parts = n.splice()
	}
	if n.dir == Along {
		n = along(parts)
	} else {
		n = across(parts)
	}
	if l == 0 {
		l = n.h
	}
	root := Section{W: w, H: l, Item: -1}
	if len(parts) == 0 {
		return root, 0
	}
	n = n.sorted()
	return d.divide(root, n.dir, n.parts), n.h
}

// section lays n out inside s, one of whose sides it fills.
func (d *dealer) section(n node, s Section) Section {
	switch {
	case n.dir != None && (n.dir == Across || s.H == n.h):
		return d.divide(s, n.dir, n.parts)
	case s.H > n.h:
		return d.divide(s, Across, []node{n})
	case s.W > n.w:
		return d.divide(s, Along, []node{n})
	}
	s.Item, s.Turned = d.piece(n.size, n.w)
	return s
}

// divide cuts s in a direction into parts, and what is left over at the end.
func (d *dealer) divide(s Section, dir Dir, parts []node) Section {
	s.Dir = dir
	x, y := s.X, s.Y
	for _, n := range parts {
		t := Section{X: x, Y: y, W: s.W, H: n.h, Item: -1}
		if dir == Along {
			t.W, t.H = n.w, s.H
		}
		s.Parts = append(s.Parts, d.section(n, t))
		if dir == Along {
			x += n.w
		} else {
			y += n.h
		}
	}
	rest := Section{X: x, Y: y, W: s.W, H: s.Y + s.H - y, Item: -1}
	if dir == Along {
		rest.W, rest.H = s.X+s.W-x, s.H
	}
	if rest.W > 0 && rest.H > 0 {
		s.Parts = append(s.Parts, rest)
	}
	return s
}
