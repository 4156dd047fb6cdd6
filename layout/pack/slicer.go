package pack

// A slicer finds the shortest plan of at most five stages for few pieces, by
// dynamic programming over what is cut from a section: a state is how many
// pieces of each size that is. For each state and number of stages it keeps the
// front of the boxes that the pieces may need. A section divided across is a
// part divided along, which holds one of the state's last pieces, above a
// section of its other pieces; likewise the other way. So no plan is left out.
//
// All that a plan may waste is what is left of width times length: boxes that
// waste more are dropped, and most states then have none. Near the bound a
// length takes little work to refute; so lengths are asked for from there on.
type slicer struct {
	sizes  []size
	width  int64
	step   []int   // what a piece of each size counts in the index of a state
	area   []int64 // of each state
	stages []*fronts
	dir    Dir // of the first cuts
	work   *meter
	length int64 // asked for
	slack  int64 // that may be wasted
	found  []front
	some   []uint8 // the stages in which a state has any boxes, as bits
}

// mostStates bounds the memory of a slicer.
const mostStates = 1 << 17

// newSlicer prepares for sizes on a width; nil where there are too many states,
// or areas too large to be summed.
func newSlicer(sizes []size, width int64, work *meter) *slicer {
	s := &slicer{sizes: sizes, width: width, work: work, step: make([]int, len(sizes))}
	states, total := 1, 0.0
	for i, z := range sizes {
		s.step[i] = states
		if states *= z.n + 1; states > mostStates {
			return nil
		}
		total += float64(z.w) * float64(z.h) * float64(z.n)
	}
	if total > 1<<60 {
		return nil
	}
	s.found = make([]front, Thrifty.stages())
	s.area, s.some = make([]int64, states), make([]uint8, states)
	work.spend(20 * states)
	for state := 1; state < states; state++ {
		i := s.last(state)
		s.area[state] = s.area[state-s.step[i]] + sizes[i].w*sizes[i].h
	}
	return s
}

// last is the size with the greatest index of which a state holds pieces.
func (s *slicer) last(state int) int {
	i := len(s.step) - 1
	for s.step[i] > state {
		i--
	}
	return i
}

// held is how many pieces of a size a state holds.
func (s *slicer) held(state, i int) int { return state / s.step[i] % (s.sizes[i].n + 1) }

// fit finds the shortest plan whose first cuts run in a direction, if it is no
// longer than length. It is over where the work ended before that was known.
func (s *slicer) fit(dir Dir, length int64) (root node, ok, over bool) {
	all := len(s.area) - 1
	if float64(s.width)*float64(length) > 1<<60 {
		return node{}, false, true
	}
	s.dir, s.length, s.slack = dir, length, s.width*length-s.area[all]
	if s.slack < 0 {
		return node{}, false, false
	}
	s.stages = s.stages[:0]
	for range s.found {
		s.stages = append(s.stages, newFronts(len(s.area)))
	}
	clear(s.some)
	s.work.spend(40 * len(s.area))
	for state := 1; state <= all; state++ {
		if s.state(state); s.work.stop() {
			return node{}, false, true
		}
	}
	top := len(s.found) - 1
	f := s.stages[top].at(all)
	if len(f) == 0 {
		return node{}, false, false
	}
	return s.build(all, top, f[len(f)-1]), true, false
}

// shortest finds the shortest plan if it is no longer than length. It is over
// where the work ended before it was known to be that.
func (s *slicer) shortest(length int64) (root node, ok, over bool) {
	root, ok, over = s.fit(Across, length)
	if over {
		return node{}, false, true
	}
	if ok {
		length = root.h - 1
	}
	other, shorter, over := s.fit(Along, length)
	if shorter {
		return other, true, over
	}
	return root, ok, over
}

// way is the direction in which a section of so many stages less one is divided:
// the first cuts are those of the last.
func (s *slicer) way(k int) Dir {
	if (len(s.found)-1-k)%2 == 0 {
		return s.dir
	}
	return Across + Along - s.dir
}

// state finds the fronts of a state.
func (s *slicer) state(state int) {
	for k := range s.found {
		s.found[k] = s.found[k][:0]
	}
	s.even(state)
	s.each(state, func(part int) bool {
		both := s.some[part] << 1 & s.some[state-part]
		for k := 1; both>>k > 0; k++ {
			if both>>k&1 > 0 {
				s.join(state, k, s.stages[k-1].at(part), s.stages[k].at(state-part))
			}
		}
		return true
	})
	for k := range s.found {
		if k > 0 { // the whole of it as the only part
			for _, b := range s.found[k-1] {
				s.note(state, k, b)
			}
		}
		if len(s.found[k]) > 0 {
			s.some[state] |= 1 << k
			s.stages[k].put(state, s.found[k])
		}
	}
}

// note takes a box for a state unless it is too large. Of first cuts across only
// the length matters, as they run over the whole width.
func (s *slicer) note(state, k int, b box) {
	if b.w > s.width || b.h > s.length {
		return
	}
	if k == len(s.found)-1 && s.dir == Across {
		b.w = s.width
	}
	if b.w*b.h-s.area[state] <= s.slack {
		s.work.spend(10)
		s.found[k] = s.found[k].add(b)
	}
}

// even notes what a state needs in a single stage: all its pieces have the same
// width, one above the other, or the same height, side by side.
func (s *slicer) even(state int) {
	z := &s.sizes[s.last(state)]
	for _, l := range [2]box{{z.w, z.h}, {z.h, z.w}} {
		if l.w != z.w && !z.turn {
			continue
		}
		if b, ok := s.row(state, l); ok {
			s.note(state, 0, b)
		}
	}
}

// row is the box of all pieces of a state that are as wide, or as high, as one
// of them.
func (s *slicer) row(state int, l box) (b box, ok bool) {
	for i, z := range s.sizes[:s.last(state)+1] {
		n := int64(s.held(state, i))
		if n == 0 {
			continue
		}
		w, h := z.w, z.h
		if s.way(0) == Across {
			if w != l.w && z.turn {
				w, h = h, w
			}
			if w != l.w {
				return b, false
			}
			b = box{w, b.h + n*h}
			continue
		}
		if h != l.h && z.turn {
			w, h = h, w
		}
		if h != l.h {
			return b, false
		}
		b = box{b.w + n*w, h}
	}
	return b, true
}

// each calls f with every state that holds one of a state's last pieces, but not
// all of it, until that gives false.
func (s *slicer) each(state int, f func(part int) bool) {
	last := s.last(state)
	digits, most := make([]int, last+1), make([]int, last+1)
	for i := range most {
		most[i] = s.held(state, i)
	}
	digits[last] = 1
	part := s.step[last]
	for ops := 0; ; ops++ {
		if ops&63 == 0 {
			s.work.spend(64 * 3)
		}
		if part == state {
			return
		}
		if !f(part) {
			return
		}
		for i := 0; ; i++ {
			if digits[i] < most[i] {
				digits[i]++
				part += s.step[i]
				break
			}
			part -= digits[i] * s.step[i]
			digits[i] = 0
		}
	}
}

// join notes the boxes of a part and of what it is beside or above.
func (s *slicer) join(state, k int, a, b front) {
	s.work.spend(10 * (len(a) + len(b)))
	if s.way(k) == Across {
		a.above(b, func(c box) { s.note(state, k, c) })
	} else {
		a.beside(b, func(c box) { s.note(state, k, c) })
	}
}

// build gives a plan of a state whose box is no larger than b.
func (s *slicer) build(state, k int, b box) node {
	dir := s.way(k)
	n := node{dir: dir, size: -1}
	if k == 0 {
		return s.pieces(state, b)
	}
	for _, c := range s.stages[k-1].at(state) {
		if c.w <= b.w && c.h <= b.h {
			return s.build(state, k-1, c)
		}
	}
	s.each(state, func(part int) bool {
		p, q := s.stages[k-1].at(part), s.stages[k].at(state-part)
		for _, c := range p {
			for _, d := range q {
				sum := box{max(c.w, d.w), c.h + d.h}
				if dir == Along {
					sum = box{c.w + d.w, max(c.h, d.h)}
				}
				if sum.w <= b.w && sum.h <= b.h {
					n.parts = []node{s.build(part, k-1, c), s.build(state-part, k, d)}
					return false
				}
			}
		}
		return true
	})
	return grown(n.dir, n.parts)
}

// pieces is a plan in a single stage.
func (s *slicer) pieces(state int, b box) node {
	var parts []node
	for i, z := range s.sizes {
		l := leafNode(i, z.w, z.h)
		if turned := s.way(0) == Across && z.w != b.w || s.way(0) == Along && z.h != b.h; turned {
			l = leafNode(i, z.h, z.w)
		}
		for range s.held(state, i) {
			parts = append(parts, l)
		}
	}
	return grown(s.way(0), parts)
}

// grown makes a node of parts in a direction.
func grown(dir Dir, parts []node) node {
	if dir == Along {
		return along(parts)
	}
	return across(parts)
}
