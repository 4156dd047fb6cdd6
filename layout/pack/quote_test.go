package pack

import (
	"math"
	"math/rand"
	"testing"
)

func TestBoundIsExact(t *testing.T) {
	// Cloth 9 wide, 3 x 1 pieces: each strip holds three, so each is worth a
	// third, and 99,999 of them take 33,333 strips. Prices of 1/3, rounded up in
	// floating point, sum to a little more, which would claim a strip too many.
	up := math.Nextafter(1.0/3, 1)
	left := []int{99_999}
	in := newInstance([]size{{w: 3, h: 1, n: left[0], items: []int{0}}}, 9)
	if float := up * float64(left[0]); math.Ceil(float) <= 33_333 {
		t.Fatalf("%v: the case is no case", float)
	}
	q := newQuote([]float64{up}, left, nil)
	pr := newStripPricer(in, &meter{limit: 1 << 40})
	worth, h := pr.price(q, left, false, func(pattern) bool { return false })
	if b := q.bound(left, worth, h); b != 33_333 {
		t.Errorf("bound %d, want 33333", b)
	}
	// Prices a good deal too high are scaled down to feasible ones.
	q = newQuote([]float64{0.5}, left, nil)
	worth, h = pr.price(q, left, false, func(pattern) bool { return false })
	if b := q.bound(left, worth, h); b != 33_333 {
		t.Errorf("bound %d, want 33333", b)
	}
}

func TestReachLifts(t *testing.T) {
	r := newReach([]int{6, 10, 15}, 40, &meter{})
	// Sums of 6, 10 and 15 are 0 6 10 12 15 16 18 20 21 22 24 25 26 27 28 and
	// all from 30 on.
	for _, c := range [][2]int{{-3, 0}, {0, 0}, {1, 6}, {7, 10}, {11, 12}, {13, 15}, {17, 18}, {23, 24}, {29, 30}, {40, 40}, {41, 41}} {
		if got := r.lift(c[0]); got != c[1] {
			t.Errorf("lift(%d) = %d, want %d", c[0], got, c[1])
		}
	}
}

// Sums over many words, found one by one.
func TestReachOfMany(t *testing.T) {
	r := rand.New(rand.NewSource(4))
	for range 300 {
		top := r.Intn(3000)
		heights := make([]int, 1+r.Intn(12))
		for i := range heights {
			heights[i] = 1 + r.Intn(1+top/(1+r.Intn(20)))
		}
		sums := make([]bool, top+1)
		sums[0] = true
		for v := range sums {
			for _, h := range heights {
				sums[v] = sums[v] || h <= v && sums[v-h]
			}
		}
		reach := newReach(heights, top, &meter{})
		for v, want := range sums {
			if got := reach.lift(v) == v; got != want {
				t.Fatalf("sums of %v up to %d: %d is one: %v, want %v", heights, top, v, got, want)
			}
		}
	}
}

func TestBoundAny(t *testing.T) {
	for _, c := range []struct {
		name  string
		width int64
		sizes []size
		want  int64
	}{
		{"area", 10, []size{{w: 5, h: 4, n: 3}}, 8},                      // 60 over 10, and lengths are multiples of 4
		{"more than half the width", 10, []size{{w: 6, h: 4, n: 3}}, 12}, // never two side by side
		{"more than a third", 10, []size{{w: 4, h: 4, n: 4}}, 8},         // two side by side
		{"both sides", 10, []size{{w: 6, h: 6, n: 2, turn: false}}, 12},  // neither beside nor above within 11
		{"may turn", 10, []size{{w: 4, h: 6, n: 2, turn: true}}, 6},      // beside one another
	} {
		if got := boundAny(c.sizes, c.width); got != c.want {
			t.Errorf("%s: %d, want %d", c.name, got, c.want)
		}
	}
	if got := boundArea([]size{{w: 1 << 40, h: 1 << 40, n: 100_000}}, 1<<40); got != 100_000<<40 {
		t.Errorf("great numbers: %d", got)
	}
}
