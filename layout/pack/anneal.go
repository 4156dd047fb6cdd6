package pack

import "math"

// An annealer looks for plans with stacks by simulated annealing: the pieces,
// in an order that it changes bit by bit, are put one after the other where
// they cost least: on top of a column, beside the last column of a strip, or
// into a new strip. A strip may grow, so stacks of unlike rows come about. It is
// for a few hundred pieces at most.
type annealer struct {
	in   *instance
	work *meter
	dice
	lie   [][2]int // of each size, -1 where there's no second
	order []int    // sizes of the pieces in the order they're put
	turn  []int8   // of each piece: 0 as fits best, 1 or 2 the lie to be used
	goal  int      // a plan this high is good enough
	beta  float64  // how dear a new strip is for its height

	strips []shelf
	cols   []pile
	rows   []int // lie of each piece put, in order
	pileOf []int // and its column
}

// A shelf is a strip being filled.
type shelf struct {
	h    int
	room int64 // width left
	area float64
}

// A pile is a column being filled.
type pile struct {
	strip int
	w     int64
	used  int
}

// maxAnneal is the most pieces that annealing is of use for.
const maxAnneal = 400

// newAnnealer starts with the pieces from high to low.
func newAnnealer(in *instance, work *meter) *annealer {
	a := &annealer{in: in, work: work, dice: dice{1}, beta: 0.8, lie: make([][2]int, len(in.sizes))}
	for i := range a.lie {
		a.lie[i] = [2]int{-1, -1}
	}
	for k := len(in.lies) - 1; k >= 0; k-- {
		if l := &a.lie[in.lies[k].size]; l[0] < 0 {
			l[0] = k
		} else {
			l[1] = k
		}
	}
	for i, s := range in.sizes {
		for range s.n {
			a.order = append(a.order, i)
		}
	}
	a.turn = make([]int8, len(a.order))
	return a
}

// decode puts the pieces and gives the height, less what the emptiest strip has
// free, which leads towards plans that can do without it.
func (a *annealer) decode() float64 {
	a.strips, a.cols = a.strips[:0], a.cols[:0]
	a.rows, a.pileOf = a.rows[:0], a.pileOf[:0]
	for i, s := range a.order {
		best := math.Inf(1)
		var lie, at, kind int
		for o, k := range a.lie[s] {
			if k >= 0 && (a.turn[i] == 0 || a.lie[s][1] < 0 || int(a.turn[i]) == o+1) {
				a.place(k, &best, &lie, &at, &kind)
			}
		}
		a.put(lie, at, kind)
	}
	h, free := 0, 0.0
	for _, s := range a.strips {
		h += s.h
		free = max(free, float64(s.h)-s.area/float64(a.in.width))
	}
	return float64(h) - free
}

// The kinds of places for a piece.
const (
	onPile = iota
	besidePiles
	newShelf
)

// place finds the cheapest place of a lie.
func (a *annealer) place(k int, best *float64, lie, at, kind *int) {
	l := &a.in.lies[k]
	width := float64(a.in.width)
	try := func(cost float64, i, what int) {
		if cost < *best {
			*best, *lie, *at, *kind = cost, k, i, what
		}
	}
	for i := range a.cols {
		c := &a.cols[i]
		s := &a.strips[c.strip]
		grow := c.used + l.h - s.h
		wide := l.rw - c.w
		if wide > s.room || grow > 0 && float64(grow) >= *best {
			continue
		}
		waste := -float64(wide) * float64(l.h)
		if wide > 0 {
			waste = float64(wide) * float64(c.used)
		}
		if grow <= 0 {
			try(1e-4*(waste-0.5*float64(l.rw)*float64(l.h))/width-1e-6*float64(grow), i, onPile)
		} else {
			try(float64(grow)+1e-4*waste/width, i, onPile)
		}
	}
	for i := range a.strips {
		s := &a.strips[i]
		if l.rw > s.room {
			continue
		}
		grow := l.h - s.h
		if grow <= 0 {
			try(1e-4*float64(-grow)*float64(l.rw)/width+1e-7*float64(s.room-l.rw)/width, i, besidePiles)
		} else {
			try(float64(grow), i, besidePiles)
		}
	}
	try(a.beta*float64(l.h)+1e-3, 0, newShelf)
	a.work.spend(3*len(a.cols) + 3*len(a.strips) + 10)
}

// put lays a piece.
func (a *annealer) put(k, at, kind int) {
	l := &a.in.lies[k]
	switch kind {
	case newShelf:
		a.strips = append(a.strips, shelf{room: a.in.width})
		at = len(a.strips) - 1
		fallthrough
	case besidePiles:
		a.strips[at].room -= l.rw
		a.cols = append(a.cols, pile{strip: at, w: l.rw})
		at = len(a.cols) - 1
	}
	c := &a.cols[at]
	s := &a.strips[c.strip]
	if l.rw > c.w {
		s.room -= l.rw - c.w
		c.w = l.rw
	}
	c.used += l.h
	s.h = max(s.h, c.used)
	s.area += float64(l.rw) * float64(l.h)
	a.rows = append(a.rows, k)
	a.pileOf = append(a.pileOf, at)
}

// height is the height of the plan decoded last.
func (a *annealer) height() (h int) {
	for _, s := range a.strips {
		h += s.h
	}
	return h
}

// run anneals until the work reaches a limit, and hands every plan lower than
// the best before to found, with its height.
func (a *annealer) run(limit int64, best int, found func(h int)) {
	n := len(a.order)
	if n < 2 {
		return
	}
	energy := a.decode()
	if h := a.height(); h < best {
		best = h
		found(h)
	}
	mean := 0.0
	for _, l := range a.in.lies {
		mean += float64(l.h) / float64(len(a.in.lies))
	}
	from := a.work.spent
	for a.work.spent < limit && !a.work.stop() && best > a.goal {
		part := float64(a.work.spent-from) / float64(limit-from)
		heat := mean * 0.08 * (1 - part) * (1 - part)
		undo := a.change(n)
		e := a.decode()
		if h := a.height(); h < best {
			best = h
			found(h)
		}
		if d := e - energy; d <= 0 || heat > 0 && float64(a.draw(1<<20))/(1<<20) < math.Exp(-d/heat) {
			energy = e
		} else {
			undo()
		}
	}
}

// change alters the order a little and gives what undoes it.
func (a *annealer) change(n int) (undo func()) {
	i, j := a.draw(n), a.draw(n)
	swap := func() {
		a.order[i], a.order[j] = a.order[j], a.order[i]
		a.turn[i], a.turn[j] = a.turn[j], a.turn[i]
	}
	switch a.draw(8) {
	case 0:
		old := a.turn[i]
		a.turn[i] = int8(a.draw(3))
		return func() { a.turn[i] = old }
	case 1:
		old := a.beta
		a.beta = 0.3 + 0.9*float64(a.draw(1000))/1000
		return func() { a.beta = old }
	case 2, 3, 4:
		a.shift(i, j)
		return func() { a.shift(j, i) }
	}
	swap()
	return swap
}

// shift moves the piece at i to j.
func (a *annealer) shift(i, j int) {
	o, t := a.order[i], a.turn[i]
	for ; i < j; i++ {
		a.order[i], a.turn[i] = a.order[i+1], a.turn[i+1]
	}
	for ; i > j; i-- {
		a.order[i], a.turn[i] = a.order[i-1], a.turn[i-1]
	}
	a.order[j], a.turn[j] = o, t
}

// patterns gives the strips of the plan decoded last.
func (a *annealer) patterns() []pattern {
	in := a.in
	ps := make([]pattern, len(a.strips))
	at := make([]int, len(a.cols)) // column within its strip
	for c, col := range a.cols {
		p := &ps[col.strip]
		at[c] = len(p.cols)
		p.cols = append(p.cols, column{n: 1})
		p.h = max(p.h, col.used)
	}
	for i, k := range a.rows {
		c := &ps[a.cols[a.pileOf[i]].strip].cols[at[a.pileOf[i]]]
		c.w = max(c.w, in.lies[k].w)
		same := false
		for r := range c.rows {
			if c.rows[r].size == k {
				c.rows[r].n++
				same = true
			}
		}
		if !same {
			c.rows = append(c.rows, take{k, 1})
		}
	}
	for i := range ps {
		ps[i].cols = merge(ps[i].cols)
		ps[i].sumUp(in)
	}
	return ps
}

// anneal looks for a better plan by annealing, up to a limit of work.
func (s *search) anneal(limit int64) {
	if sum(s.left) > maxAnneal {
		return
	}
	a := newAnnealer(s.in, s.work)
	a.state = uint64(limit)
	a.goal = s.aim()
	a.run(limit, s.cutoff, func(h int) {
		var plan []usage
		for _, p := range a.patterns() {
			plan = append(plan, usage{s.m.add(p), 1})
		}
		s.accept(plan)
	})
}

// aim is the greatest height that costs no more than the bound, or the goal.
func (s *search) aim() int {
	if s.goal > 0 {
		return max(s.goal, s.bound)
	}
	lo, hi := s.bound, max(s.bound, s.cutoff)
	for lo < hi {
		if mid := (lo + hi + 1) / 2; s.same(s.bound, mid) {
			lo = mid
		} else {
			hi = mid - 1
		}
	}
	return lo
}
