package page

import "cutbinder/layout/length"

// A placed is a slab with its distance from the top of where it is stacked.
type placed struct {
	*slab
	y length.Length
}

// drawAt draws the slab in a column of that box.
func (s placed) drawAt(p *Pen, b Box) {
	if s.draw != nil {
		s.draw(p, Box{b.X, b.Y + s.y, b.W, s.h})
	}
}

// stack piles slabs up to a height of h and says how many it used and how high
// they stand. Slabs that are kept together go as one chain, if a column of h
// could hold it; fresh says that the column is empty and as high as any, so
// that something must be placed even if it is too high. It stops before a slab
// that starts a page or stands for columns.
func stack(slabs []slab, h length.Length, fresh bool) (out []placed, n int, used length.Length) {
	st := stacker{h: h}
	for n < len(slabs) && !slabs[n].next {
		end := chainEnd(slabs, n)
		chain := slabs[n:end]
		if st.fits(chain) {
			if c := columnsAt(chain); c >= 0 {
				st.add(chain[:c])
				return st.out, n + c, st.y
			}
			st.add(chain)
			n = end
			continue
		}
		if fresh && !st.started {
			n += st.force(chain)
		}
		break
	}
	return st.out, n, st.y
}

// chainEnd is the end of the chain that starts at i: after the first slab that
// needs not stay with the next.
func chainEnd(slabs []slab, i int) int {
	for i < len(slabs)-1 && slabs[i].with && !slabs[i+1].next {
		i++
	}
	return i + 1
}

// columnsAt is the index of a chain's columns slab, or -1.
func columnsAt(chain []slab) int {
	for i := range chain {
		if chain[i].columns != nil {
			return i
		}
	}
	return -1
}

// A stacker is a column being filled.
type stacker struct {
	h       length.Length
	out     []placed
	y       length.Length // the foot of what is placed
	gap     length.Length // white to leave before the next slab
	started bool          // something was placed
	dry     bool          // only find out whether there is room
}

// fits reports whether all of a chain has room.
func (st *stacker) fits(chain []slab) bool {
	trial := *st
	trial.dry = true
	return trial.add(chain)
}

// add places slabs up to the first that has no room, and reports whether all
// had.
func (st *stacker) add(chain []slab) bool {
	for i := range chain {
		if !st.one(&chain[i]) {
			return false
		}
	}
	return true
}

// one places a slab, with the head it repeats where it is the column's first.
func (st *stacker) one(s *slab) bool {
	if s.gap {
		if st.started {
			st.gap = max(st.gap, s.h)
		}
		return true
	}
	if !st.started {
		st.started = true
		if !st.add(s.head) {
			return false
		}
	}
	if st.y+st.gap+s.h > st.h {
		return false
	}
	st.y += st.gap
	if !st.dry {
		st.out = append(st.out, placed{s, st.y})
	}
	st.y, st.gap = st.y+s.h, 0
	return true
}

// force places as much of a chain too high for a column as fits, at least one
// slab, and returns how many slabs it used. The last slab is not left alone, unless
// that would leave the first, which may be a heading, alone.
func (st *stacker) force(chain []slab) int {
	n := 0
	for n < len(chain) && chain[n].columns == nil && st.fits(chain[n:n+1]) {
		if len(st.out) > 1 && n == len(chain)-2 {
			break
		}
		st.one(&chain[n])
		n++
	}
	if !st.started && n < len(chain) && chain[n].columns == nil {
		st.h = endless
		st.one(&chain[n])
		n++
	}
	return n
}

// A flow fills pages with slabs.
type flow struct {
	// page starts the next page and gives its pen and body.
	page func() (*Pen, Box)
	pen  *Pen
	body Box
	y    length.Length // how much of the body is used
	gap  length.Length // white to leave before what comes next
	dry  bool          // only count the pages
}

// fill flows slabs over as many pages as they need.
func (f *flow) fill(slabs []slab) {
	for len(slabs) > 0 {
		if slabs[0].next { // ends a page, but makes no empty one
			if f.y > 0 {
				f.pen = nil
			}
			slabs = slabs[1:]
			continue
		}
		if f.pen == nil {
			f.turn()
		}
		switch s := &slabs[0]; {
		case s.gap && s.columns == nil:
			f.gap = max(f.gap, s.h)
			slabs = slabs[1:]
			continue
		case s.columns != nil:
			f.columns(s.columns)
			slabs = slabs[1:]
			continue
		}
		n := f.pile(slabs)
		slabs = slabs[n:]
		if n == 0 || len(slabs) > 0 && slabs[0].columns == nil && !slabs[0].next {
			f.pen = nil
		}
	}
}

// turn starts a page.
func (f *flow) turn() {
	f.pen, f.body = f.page()
	f.y, f.gap = 0, 0
}

// pile draws the slabs that fit on what is left of the page.
func (f *flow) pile(slabs []slab) int {
	if f.y == 0 {
		f.gap = 0
	}
	room := Box{f.body.X, f.body.Y + f.y + f.gap, f.body.W, f.body.H - f.y - f.gap}
	placed, n, used := stack(slabs, room.H, f.y == 0)
	f.draw(placed, room)
	if len(placed) > 0 {
		f.y, f.gap = f.y+f.gap+used, trailingGap(slabs[:n])
	}
	return n
}

// draw draws placed slabs in a column, unless pages are only counted.
func (f *flow) draw(slabs []placed, column Box) {
	if f.dry {
		return
	}
	for _, s := range slabs {
		s.drawAt(f.pen, column)
	}
}

// trailingGap is the white that slabs end in.
func trailingGap(slabs []slab) length.Length {
	g := length.Length(0)
	for i := len(slabs) - 1; i >= 0 && slabs[i].gap; i-- {
		g = max(g, slabs[i].h)
	}
	return g
}
