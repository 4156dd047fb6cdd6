package pack

import (
	"math"
	"slices"
)

// A beam looks for plans with stacks by a beam search over the pieces: a partial
// plan is a few closed strips, one open strip with its closed columns, and in it
// one open column; it grows by a piece on top of that column, in a new column or
// in a new strip. A strip may grow as its columns do. Of the partial plans of
// equally many pieces the most promising are kept: those that waste little of
// the cloth that they have settled, and have placed large pieces (guides after
// Libralesso & Fontan 2021). The rows of a column come in order of width, and
// states that differ in the order of strips or columns alone count once.
type beam struct {
	in    *instance
	work  *meter
	guide guide
	tags  []uint64 // of each size, for telling states apart
	area  []int64  // of a piece of each size
	now   []state
	next  []state
	have  []int32 // pieces left of each state of now, sizes in a row
	then  []int32 // and of next
	trail []step
	whole bool // no state was left out for its cost
	seen  table
	heap  []child

	width  int   // states kept of a level
	pieces int   // in all
	placed int   // pieces
	rest   int64 // area of all pieces

	cutoff int     // of the level in the making: the height to be lower than,
	level  float64 // pieces placed,
	scale  float64 // by which a cost is compared without dividing,
	most   int64   // and the area that may be wasted
}

// A guide says how promising a partial plan is: waste is added to the part of
// the settled cloth that is wasted; noise is how much chance alters the outcome,
// drawn from seed.
type guide struct {
	waste float64
	big   bool // that placed pieces are large counts twice
	noise float64
	seed  uint64
}

// A state is a partial plan.
type state struct {
	below int   // height of the closed strips
	h     int   // of the open strip
	room  int64 // width right of the open column
	x     int   // where the open column begins, in units
	lie   int   // the open column's first and widest
	y     int   // height of the open column
	area  int64 // of the pieces placed
	tag   uint64
	step  int32 // in the trail
}

// A step is a piece put: the step before it, its lie, and where it went.
type step struct {
	before int32
	lie    int16
	kind   int8
}

// A child is a state in the making.
type child struct {
	cost   float64
	parent int32
	lie    int16
	kind   int8
}

// maxTrail bounds the steps kept.
const maxTrail = 1 << 20

// newBeam prepares a search over an instance.
func newBeam(in *instance, work *meter) *beam {
	b := &beam{in: in, work: work, tags: make([]uint64, len(in.sizes)), area: make([]int64, len(in.sizes))}
	for i := range b.tags {
		b.tags[i] = scatter(uint64(i) + 1)
	}
	for _, l := range in.lies {
		b.area[l.size] = int64(l.w) * int64(l.h)
	}
	return b
}

// scatter mixes the bits of a number (Stafford 2011).
func scatter(x uint64) uint64 {
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
}

// start begins anew, to keep up to width states a level.
func (b *beam) start(width int) {
	b.pieces, b.rest, b.placed = 0, 0, 0
	b.have = b.have[:0]
	for i, s := range b.in.sizes {
		b.pieces += s.n
		b.rest += int64(s.n) * b.area[i]
		b.have = append(b.have, int32(s.n))
	}
	b.width = min(width, max(1, maxTrail/max(1, b.pieces)))
	b.now = append(b.now[:0], state{lie: -1, step: -1})
	b.trail, b.whole = b.trail[:0], true
}

// run goes on until it is done or the work stops, and gives whether it is done,
// and the strips of the lowest plan found, if one is lower than cutoff.
func (b *beam) run(cutoff int) ([]pattern, bool) {
	if b.pieces == 0 || len(b.in.lies) > math.MaxInt16 {
		return nil, true
	}
	for ; b.placed < b.pieces; b.placed++ {
		if b.work.stop() {
			return nil, false
		}
		b.grow(cutoff)
		if len(b.next) == 0 {
			b.placed = b.pieces
			return nil, true
		}
		b.now, b.next = b.next, b.now
		b.have, b.then = b.then, b.have
	}
	best := &b.now[0]
	for i := range b.now {
		if s := &b.now[i]; s.below+s.h < best.below+best.h {
			best = s
		}
	}
	return b.patterns(best.step), true
}

// grow makes the next level.
func (b *beam) grow(cutoff int) {
	b.heap = b.heap[:0]
	b.seen.clear(8 * b.width)
	b.cutoff, b.level = cutoff, float64(b.placed+1)
	b.scale = b.level * (1 - b.guide.noise)
	if b.guide.big {
		b.scale *= b.level
	}
	b.most = int64(cutoff-1)*int64(b.in.cap) - b.rest
	if b.in.coarse {
		b.most = math.MaxInt64 // areas are rounded down
	}
	sizes := len(b.in.sizes)
	for i := range b.now {
		b.spread(i, b.have[i*sizes:(i+1)*sizes])
	}
	b.work.spend(len(b.now) * (9*len(b.in.lies) + 15))
	b.take()
}

// spread offers the children of a state, of which left are left.
func (b *beam) spread(i int, left []int32) {
	s := &b.now[i]
	unit := int64(b.in.cap)
	w, high, wide := 0, int64(s.h), int64(0)
	if s.lie >= 0 {
		l := &b.in.lies[s.lie]
		w, wide = l.w, l.rw
	}
	closed := int64(s.below) * unit
	end := int64(s.x) + int64(w)
	whole := (int64(s.below) + high) * unit
	for k := range b.in.lies {
		l := &b.in.lies[k]
		if left[l.size] == 0 {
			continue
		}
		area, h := s.area+b.area[l.size], int64(l.h)
		if l.rw <= wide {
			y := int64(s.y) + h
			b.offer(i, k, onPile, s.below+int(max(high, y)), closed+int64(s.x)*max(high, y)+int64(w)*y, area)
		}
		if s.lie >= 0 && l.rw <= s.room {
			b.offer(i, k, besidePiles, s.below+int(max(high, h)), closed+end*max(high, h)+int64(l.w)*h, area)
		}
		b.offer(i, k, newShelf, s.below+s.h+l.h, whole+int64(l.w)*h, area)
	}
}

// put gives the state after a piece of lie k goes to a kind of place.
func (b *beam) put(s *state, k, kind int) state {
	l := &b.in.lies[k]
	t := *s
	switch kind {
	case newShelf:
		t.below, t.h = s.below+s.h, 0
		t.room, t.x = b.in.width-l.rw, 0
		t.lie, t.y = k, 0
	case besidePiles:
		t.room -= l.rw
		t.x += b.in.lies[s.lie].w
		t.lie, t.y = k, 0
	}
	t.y += l.h
	t.h = max(t.h, t.y)
	t.area += b.area[l.size]
	t.tag += b.tags[l.size]
	return t
}

// key tells the states apart that a piece of lie k leads to.
func (b *beam) key(s *state, k, kind int) uint64 {
	l := &b.in.lies[k]
	below, h, x, lie, y := s.below, s.h, s.x, k, l.h
	switch kind {
	case onPile:
		lie, y = s.lie, s.y+l.h
	case besidePiles:
		x += b.in.lies[s.lie].w
	case newShelf:
		below, h, x = s.below+s.h, 0, 0
	}
	z := scatter((s.tag + b.tags[l.size]) ^ uint64(below)<<32 ^ uint64(max(h, y)))
	return scatter(z ^ uint64(x)<<44 ^ uint64(lie)<<28 ^ uint64(y))
}

// offer keeps a child, so high, with so much cloth settled and so much of it
// pieces, if it can still become a lower plan, is among the best of its level so
// far, and isn't known yet. Its cost says how unpromising it is.
func (b *beam) offer(i, k, kind, high int, settled, area int64) {
	if high >= b.cutoff || settled-area > b.most {
		return
	}
	full := len(b.heap) == b.width
	if full && b.dearer(float64(settled), float64(area)) {
		b.whole = false
		return
	}
	mean := float64(area) / b.level
	cost := (max(0, float64(settled-area)/float64(settled)) + b.guide.waste) / mean
	if b.guide.big {
		cost /= mean
	}
	b.whole = b.whole && !full
	if full && cost*(1-b.guide.noise) >= b.heap[0].cost {
		return
	}
	key := b.key(&b.now[i], k, kind)
	if b.guide.noise > 0 {
		z := scatter(key+b.guide.seed) >> 44
		cost *= 1 - float64(b.guide.noise*(float64(z)/(1<<20)))
	}
	b.work.spend(19)
	if full && cost >= b.heap[0].cost || !b.seen.add(key) {
		return
	}
	b.work.spend(23)
	b.keep(child{cost, int32(i), int16(k), int8(kind)})
}

// dearer says that a child costs more than the dearest that is kept, whatever chance
// does to it. That refuses most, so it divides nothing; where rounding might decide
// it says no.
func (b *beam) dearer(settled, area float64) bool {
	top := b.heap[0].cost * settled * area
	if b.guide.big {
		top *= area
	}
	return (max(0, settled-area)+b.guide.waste*settled)*b.scale > top*(1+1e-9)
}

// keep takes a child into the heap, whose root is the least promising.
func (b *beam) keep(c child) {
	if len(b.heap) < b.width {
		b.heap = append(b.heap, c)
		for i := len(b.heap) - 1; i > 0 && b.heap[(i-1)/2].cost < b.heap[i].cost; i = (i - 1) / 2 {
			b.heap[i], b.heap[(i-1)/2] = b.heap[(i-1)/2], b.heap[i]
		}
		return
	}
	h := b.heap
	i := 0
	for {
		j := 2*i + 1
		if j >= len(h) {
			break
		}
		if j+1 < len(h) && h[j+1].cost > h[j].cost {
			j++
		}
		if h[j].cost <= c.cost {
			break
		}
		h[i] = h[j]
		i = j
	}
	h[i] = c
}

// take makes states of the children kept.
func (b *beam) take() {
	sizes := len(b.in.sizes)
	b.next, b.then = b.next[:0], b.then[:0]
	for _, c := range b.heap {
		s := &b.now[c.parent]
		t := b.put(s, int(c.lie), int(c.kind))
		b.trail = append(b.trail, step{s.step, c.lie, c.kind})
		t.step = int32(len(b.trail) - 1)
		b.next = append(b.next, t)
		b.then = append(b.then, b.have[int(c.parent)*sizes:(int(c.parent)+1)*sizes]...)
		b.then[len(b.then)-sizes+b.in.lies[c.lie].size]--
	}
	b.work.spend(len(b.heap) * (30 + sizes/3))
}

// patterns gives the strips of the plan that a step leads to.
func (b *beam) patterns(last int32) []pattern {
	var steps []step
	for ; last >= 0; last = b.trail[last].before {
		steps = append(steps, b.trail[last])
	}
	slices.Reverse(steps)
	var ps []pattern
	for _, st := range steps {
		if st.kind == newShelf {
			ps = append(ps, pattern{})
		}
		p := &ps[len(ps)-1]
		if st.kind != onPile {
			p.cols = append(p.cols, column{n: 1, w: b.in.lies[st.lie].w})
		}
		c := &p.cols[len(p.cols)-1]
		c.add(int(st.lie), 1)
	}
	for i := range ps {
		ps[i] = ps[i].finish(b.in)
	}
	return ps
}
