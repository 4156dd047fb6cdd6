package pack

import (
	"slices"
)

// A smoother makes a cloth that is cut in strips easier to cut without using
// more of it, in the order of merit: pieces and columns move to strips where
// they take fewer cuts or ruler settings, or change places, one step after the
// other as long as each is better.
type smoother struct {
	p      *Problem
	width  int64
	long   int64 // of a given cloth; nought where cloth is bought
	sizes  []size
	blank  []Item // one of each size, to lay strips out by themselves
	work   *meter
	strips []*ribbon
	merit  merit
}

// A ribbon is a strip of the cloth and what it adds to the merit.
type ribbon struct {
	cols   []node // each a piece, or rows of one piece each
	w, h   int64
	sets   []int64 // ruler settings
	merit  merit
	leaves int
}

// smooth gives a plan of a cloth's strips that is as easy as root or easier. A
// root that isn't cut in strips comes back as it is.
func (e *engine) smooth(root node, width, long int64, kind Kind, effort int64) node {
	if root.dir != Across || len(root.parts) == 0 {
		return root
	}
	s := &smoother{p: e.p, width: width, long: long, sizes: e.sizes, work: &meter{limit: effort, done: e.work.done}}
	defer func() { e.work.spend(int(s.work.spent)) }()
	for i := range e.sizes {
		s.blank = append(s.blank, Item{W: e.sizes[i].w, H: e.sizes[i].h})
	}
	for _, part := range root.splice() {
		cols := part.list(Along)
		if !plain(cols) {
			return root
		}
		s.strips = append(s.strips, s.ribbon(slices.Clone(cols)))
	}
	s.merit = s.judge(s.strips)
	for s.step(kind) {
	}
	return s.root()
}

// plain says whether columns hold rows of one piece each.
func plain(cols []node) bool {
	for _, c := range cols {
		for _, row := range c.list(Across) {
			if row.dir != None {
				return false
			}
		}
	}
	return true
}

// root is the plan as it stands.
func (s *smoother) root() node {
	var parts []node
	for _, r := range s.strips {
		parts = append(parts, along(r.cols))
	}
	return across(parts)
}

// ribbon measures a strip of columns: it is laid out by itself.
func (s *smoother) ribbon(cols []node) *ribbon {
	r := &ribbon{cols: cols}
	for _, c := range cols {
		r.w, r.h = r.w+c.w, max(r.h, c.h)
		r.leaves += len(c.list(Across))
	}
	d := &dealer{items: s.blank, sizes: make([]size, len(s.sizes)), left: make([]int, len(s.sizes))}
	for i := range d.sizes {
		d.sizes[i].items, d.left[i] = []int{i}, MaxPieces
	}
	root, _ := d.cloth(across([]node{along(cols)}), s.width, 0)
	r.merit.strips = stripsOf(&root)
	set := map[int64]bool{}
	r.merit.odd = odd(&root)
	r.merit.walk(&root, set)
	for h := range set {
		r.sets = append(r.sets, h)
	}
	slices.Sort(r.sets)
	s.work.spend(400 * (r.leaves + 2))
	return r
}

// judge adds up what strips of a cloth come to.
func (s *smoother) judge(strips []*ribbon) merit {
	var m merit
	set := map[int64]bool{}
	used := int64(0)
	for _, r := range strips {
		used += r.h
		m.strips += r.merit.strips
		m.cuts += r.merit.cuts + 1
		m.odd += r.merit.odd
		m.spare = max(m.spare, r.merit.spare)
		for _, h := range r.sets {
			set[h] = true
		}
	}
	m.settings = len(set)
	end := s.long
	if end == 0 {
		m.buy = s.p.purchase(used)
		end = m.buy
	}
	if end == used {
		m.cuts--
	}
	m.spare = max(m.spare, float64(s.width)*float64(end-used))
	s.work.spend(20 * len(strips))
	return m
}

// step makes one change for the better, and says whether it found any.
func (s *smoother) step(kind Kind) bool {
	for i, from := range s.strips {
		if s.same(i) {
			continue
		}
		for j, to := range s.strips {
			if s.work.stop() {
				return false
			}
			if i != j && !s.same(j) && (s.moves(i, j, from, to, kind) || i < j && s.swaps(i, j, from, to)) {
				return true
			}
		}
	}
	return false
}

// same says whether a strip is the same as the one before it, so that what is
// tried with one needn't be tried with the other; the last of such a run stands
// for all.
func (s *smoother) same(i int) bool {
	return i+1 < len(s.strips) && slices.EqualFunc(s.strips[i].cols, s.strips[i+1].cols, alike)
}

// alike says whether two columns are the same.
func alike(a, b node) bool { return a.w == b.w && a.h == b.h && a.compare(b) == 0 }

// moves tries to bring a piece, or all its like, from one strip to another.
func (s *smoother) moves(i, j int, from, to *ribbon, kind Kind) bool {
	for c, col := range from.cols {
		if c > 0 && alike(col, from.cols[c-1]) {
			continue
		}
		for r, row := range col.list(Across) {
			if r > 0 && row.size == col.parts[r-1].size {
				continue
			}
			for _, lie := range s.lies(row) {
				if lie.h > to.h {
					continue
				}
				for _, n := range []int{likes(from.cols, col), 1} {
					if s.beside(i, j, c, r, n, lie) {
						return true
					}
				}
				if kind >= Stacks && s.onTop(i, j, c, r, lie) {
					return true
				}
			}
		}
	}
	return false
}

// likes counts the columns that are the same as one.
func likes(cols []node, col node) (n int) {
	for _, c := range cols {
		if alike(c, col) {
			n++
		}
	}
	return n
}

// lies are the ways a piece may lie, its own first.
func (s *smoother) lies(piece node) []node {
	all := []node{piece}
	if s.sizes[piece.size].turn {
		all = append(all, leafNode(piece.size, piece.h, piece.w))
	}
	return all
}

// without gives the columns of a strip without row r of column c, n times: of
// the column and of those like it.
func without(cols []node, c, r, n int) []node {
	var out []node
	like := cols[c]
	for i, col := range cols {
		if i < c || n == 0 || !alike(col, like) {
			out = append(out, col)
			continue
		}
		n--
		if rows := slices.Clone(col.list(Across)); len(rows) > 1 {
			rows = slices.Delete(rows, r, r+1)
			if len(rows) == 1 {
				out = append(out, rows[0])
			} else {
				out = append(out, across(rows))
			}
		}
	}
	return out
}

// beside tries to set n pieces from a strip beside the columns of another.
func (s *smoother) beside(i, j, c, r, n int, lie node) bool {
	to := s.strips[j]
	if to.w+int64(n)*lie.w > s.width {
		return false
	}
	cols := slices.Clone(to.cols)
	for range n {
		cols = append(cols, lie)
	}
	return s.try(i, j, without(s.strips[i].cols, c, r, n), cols)
}

// onTop tries to set a piece from a strip on a column of another that has the
// height.
func (s *smoother) onTop(i, j, c, r int, lie node) bool {
	to := s.strips[j]
	for k, under := range to.cols {
		if k > 0 && alike(under, to.cols[k-1]) || under.h+lie.h > to.h || lie.w > under.w {
			continue
		}
		cols := slices.Clone(to.cols)
		cols[k] = across(append(slices.Clone(under.list(Across)), lie))
		if s.try(i, j, without(s.strips[i].cols, c, r, 1), cols) {
			return true
		}
	}
	return false
}

// swaps tries to exchange a column of one strip with one of another.
func (s *smoother) swaps(i, j int, a, b *ribbon) bool {
	for c, x := range a.cols {
		if c > 0 && alike(x, a.cols[c-1]) {
			continue
		}
		for d, y := range b.cols {
			if d > 0 && alike(y, b.cols[d-1]) || alike(x, y) || a.w-x.w+y.w > s.width || b.w-y.w+x.w > s.width {
				continue
			}
			left, right := slices.Clone(a.cols), slices.Clone(b.cols)
			left[c], right[d] = y, x
			if s.try(i, j, left, right) {
				return true
			}
		}
	}
	return false
}

// try puts other columns into two strips, and keeps them if that is better.
func (s *smoother) try(i, j int, a, b []node) bool {
	used := int64(0)
	next := make([]*ribbon, 0, len(s.strips))
	for k, r := range s.strips {
		switch {
		case k == i && len(a) == 0:
			continue
		case k == i:
			r = s.ribbon(ordered(a))
		case k == j:
			r = s.ribbon(ordered(b))
		}
		used += r.h
		next = append(next, r)
	}
	if s.long > 0 && used > s.long {
		return false
	}
	if m := s.judge(next); m.better(&s.merit) < 0 {
		s.strips, s.merit = next, m
		return true
	}
	return false
}

// ordered puts columns in the order of layouts, so that equal ones come
// together.
func ordered(cols []node) []node {
	return node{dir: Along, parts: cols}.sorted().parts
}
