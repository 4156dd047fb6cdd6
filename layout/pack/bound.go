package pack

import "math/bits"

// boundAny is a length that no edge-to-edge cutting of any kind, nor indeed any
// placing without overlap, of the sizes from a width can do with less of.
func boundAny(sizes []size, width int64) int64 {
	return max(boundMapped(sizes, width), boundWide(sizes, width))
}

// boundMapped is a bound like boundAny's.
//
// It rests on dual feasible functions (Fekete & Schepers 2004): functions f of
// a part of the whole with Σ f(x) <= 1 wherever Σ x <= 1. If widths and heights
// are each mapped by such a function, the pieces still fit by area. With widths
// alone mapped, the area over the width is a bound; with heights mapped too, a
// length is refuted where the mapped area exceeds one. A piece that may turn
// counts as it takes the least. All in whole numbers.
func boundMapped(sizes []size, width int64) int64 {
	in := newInstance(sizes, width)
	if in.coarse || len(in.lies) == 0 {
		return boundArea(sizes, width)
	}
	fw := in.stretches(in.cap, func(l lie) int { return l.w })
	best, heights := 0, 0
	for _, f := range fw {
		sum, den := in.area(f, stretch{den: 1}, in.cap, 1)
		best = max(best, int((sum+den-1)/den))
	}
	for i, s := range in.sizes {
		heights += s.n * in.least()[i]
	}
	best = max(best, in.tallest())
	if !reachable(len(in.heights), heights) {
		return int64(best) * in.unitY
	}
	work := &meter{}
	r := newReach(in.heights, heights, work)
	best = r.lift(best)
	for tries := 0; tries < 20 && in.refutes(best, fw); tries++ {
		best = r.lift(best + 1)
	}
	return int64(best) * in.unitY
}

// boundArea is the area over the width, rounded up.
func boundArea(sizes []size, width int64) int64 {
	var hi, lo uint64
	for _, s := range sizes {
		ah, al := bits.Mul64(uint64(s.w), uint64(s.h))
		// Counts are below 2^17 and sides below 2^41, so ah·n stays small.
		nh, nl := bits.Mul64(al, uint64(s.n))
		var c uint64
		lo, c = bits.Add64(lo, nl, 0)
		hi += nh + ah*uint64(s.n) + c
	}
	if hi >= uint64(width) {
		return 1 << 62
	}
	q, rem := bits.Div64(hi, lo, uint64(width))
	if rem > 0 {
		q++
	}
	return int64(min(q, 1<<62))
}

// A stretch is a dual feasible function on whole numbers 0 … whole: values are
// over den. With k > 0 it is u(k) of Fekete & Schepers: x where (k+1)·x is
// whole, else the part of it rounded down, over k. With eps > 0 it is U(eps):
// what is below eps vanishes, and what leaves less than eps counts as the whole.
// With neither it is x itself.
type stretch struct {
	k, eps, den int
}

// of maps x; the value is over den.
func (f stretch) of(x, whole int) int64 {
	switch {
	case f.k > 0:
		if n := (f.k + 1) * x; n%whole != 0 {
			return int64(n/whole) * int64(whole)
		}
		return int64(f.k) * int64(x)
	case f.eps > 0 && x < f.eps:
		return 0
	case f.eps > 0 && x > whole-f.eps:
		return int64(whole)
	}
	return int64(x)
}

// stretches lists the functions worth trying on a side.
func (in *instance) stretches(whole int, side func(lie) int) []stretch {
	fs := []stretch{{den: whole}}
	for k := 1; k <= 6; k++ {
		fs = append(fs, stretch{k: k, den: k * whole})
	}
	seen := map[int]bool{}
	most := 8 + 6000/(len(in.lies)+100)
	for _, l := range in.lies {
		// U(eps) changes where eps passes a side, or the rest of one.
		for _, e := range []int{side(l), side(l) + 1, whole - side(l) + 1} {
			if e > 1 && 2*e <= whole && !seen[e] && len(fs) < most {
				seen[e] = true
				fs = append(fs, stretch{eps: e, den: whole})
			}
		}
	}
	return fs
}

// area sums the mapped areas, each piece as it takes the least, over den. It
// gives nought where the numbers would grow too large.
func (in *instance) area(f, g stretch, width, length int) (sum, den int64) {
	den = int64(f.den) * int64(g.den)
	top := float64(MaxPieces) * float64(f.den) * float64(max(in.tallest(), g.den))
	if top > 1<<62 {
		return 0, 1
	}
	least := make([]int64, len(in.sizes))
	for i := range least {
		least[i] = -1
	}
	for _, l := range in.lies {
		h := int64(l.h)
		if length > 1 {
			h = g.of(l.h, length)
		}
		if length > 1 && l.h > length {
			continue
		}
		if v := f.of(l.w, width) * h; least[l.size] < 0 || v < least[l.size] {
			least[l.size] = v
		}
	}
	for i, v := range least {
		if v > 0 {
			sum += v * int64(in.sizes[i].n)
		}
	}
	return sum, den
}

// refutes says whether all pieces cannot fit a length.
func (in *instance) refutes(length int, fw []stretch) bool {
	if length <= 1 {
		return false
	}
	fh := in.stretches(length, func(l lie) int { return l.h })
	for _, f := range fw {
		for _, g := range fh {
			if sum, den := in.area(f, g, in.cap, length); sum > den {
				return true
			}
		}
	}
	return false
}

// tallest is the greatest height that some piece takes at least.
func (in *instance) tallest() (h int) {
	for _, l := range in.least() {
		h = max(h, l)
	}
	return h
}
