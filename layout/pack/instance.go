package pack

import (
	"cmp"
	"math/bits"
	"slices"
)

// An instance is a problem on cloth of one width in whole numbers as small as
// can be: lengths are divided by the greatest common divisor of the sides, the
// width is rounded down to it.
type instance struct {
	sizes   []size
	width   int64 // of the cloth
	cap     int   // width in units across
	unitY   int64 // the unit along the length
	lies    []lie // lowest first
	heights []int // the distinct heights of lies, ascending

	coarse bool // widths across are rounded down, so fillings need checking
	narrow bool // some width was rounded up instead, from nought: no bound holds
}

// A lie is a size in one orientation that fits the width.
type lie struct {
	size   int
	w, h   int   // in units
	rw, rh int64 // as they are
}

// maxCap bounds the units across; finer widths are rounded down, which keeps
// bounds valid, and fillings are then checked against the true width.
const maxCap = 4096

// newInstance normalises sizes for a width. Sizes that don't fit have no lie.
func newInstance(sizes []size, width int64) *instance {
	in := &instance{sizes: sizes, width: width}
	var gx, gy int64
	turn := false
	for _, s := range sizes {
		gx, gy = gcd(s.w, gx), gcd(s.h, gy)
		turn = turn || s.turn
	}
	if turn {
		gx = gcd(gx, gy)
		gy = gx
	}
	if len(sizes) == 0 {
		gx, gy = 1, 1
	}
	if width/gx > maxCap {
		in.coarse = true
		gx = (width + maxCap - 1) / maxCap
	}
	in.unitY, in.cap = gy, int(width/gx)
	for i, s := range sizes {
		if s.w <= width {
			in.lies = append(in.lies, lie{i, max(1, int(s.w/gx)), int(s.h / gy), s.w, s.h})
		}
		if s.turn && s.h <= width {
			in.lies = append(in.lies, lie{i, max(1, int(s.h/gx)), int(s.w / gy), s.h, s.w})
		}
	}
	slices.SortStableFunc(in.lies, func(a, b lie) int { return cmp.Or(cmp.Compare(a.h, b.h), cmp.Compare(b.w, a.w)) })
	for _, l := range in.lies {
		in.narrow = in.narrow || l.rw < gx
		if n := len(in.heights); n == 0 || in.heights[n-1] != l.h {
			in.heights = append(in.heights, l.h)
		}
	}
	return in
}

// counts gives how many pieces there are of each size.
func (in *instance) counts() []int { return counts(in.sizes) }

// least gives the lowest height of each size.
func (in *instance) least() []int {
	h := make([]int, len(in.sizes))
	for k := len(in.lies) - 1; k >= 0; k-- {
		h[in.lies[k].size] = in.lies[k].h
	}
	return h
}

// best gives the narrowest lie of each size that is no higher than h, or -1.
func (in *instance) best(h int, into []int) []int {
	into = resize(into, len(in.sizes))
	for i := range into {
		into[i] = -1
	}
	for k, l := range in.lies {
		if l.h > h {
			break
		}
		if b := into[l.size]; b < 0 || l.w < in.lies[b].w {
			into[l.size] = k
		}
	}
	return into
}

// A reach tells which lengths are sums of heights.
type reach struct {
	bits []uint64
	top  int
	full int // all words from here on are full, as they soon are where heights are many
}

// reachable says whether the sums of so many heights up to top are few enough to
// be computed.
func reachable(heights, top int) bool {
	return top < 1<<22 && top/64*heights < 1<<22
}

// newReach computes the sums of heights up to top.
func newReach(heights []int, top int, work *meter) *reach {
	r := &reach{bits: make([]uint64, top/64+1), top: top, full: top/64 + 1}
	r.bits[0] = 1
	for _, h := range heights {
		if h > top {
			continue
		}
		// Doubling the shift closes the set under adding h any number of times.
		for s := h; s <= top; s *= 2 {
			r.or(s)
			work.spend(len(r.bits) / 8)
		}
	}
	return r
}

// or adds the set shifted up by s.
func (r *reach) or(s int) {
	q, b := s/64, uint(s%64)
	for i := r.full - 1; i >= q; i-- {
		v := r.bits[i-q] << b
		if b > 0 && i > q {
			v |= r.bits[i-q-1] >> (64 - b)
		}
		r.bits[i] |= v
	}
	for r.full > 0 && r.bits[r.full-1] == ^uint64(0) {
		r.full--
	}
}

// lift gives the least sum that is at least v; beyond the top, v itself.
func (r *reach) lift(v int) int {
	if v < 0 {
		return 0
	}
	if v > r.top {
		return v
	}
	w := r.bits[v/64] >> uint(v%64)
	if w != 0 {
		return v + bits.TrailingZeros64(w)
	}
	for i := v/64 + 1; i < len(r.bits); i++ {
		if r.bits[i] != 0 {
			return i*64 + bits.TrailingZeros64(r.bits[i])
		}
	}
	return r.top + 1
}

// floor gives the greatest sum that is at most v, which is no more than the top.
func (r *reach) floor(v int) int {
	for i := v / 64; i >= 0; i-- {
		w := r.bits[i]
		if i == v/64 {
			w &= 2<<uint(v%64) - 1
		}
		if w != 0 {
			return i*64 + 63 - bits.LeadingZeros64(w)
		}
	}
	return 0
}
