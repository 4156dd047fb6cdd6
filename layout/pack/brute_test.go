package pack

import (
	"context"
	"errors"
	"flag"
	"math/bits"
	"math/rand"
	"testing"
)

var bruteCases = flag.Int("brute", 400, "number of random problems checked against brute force")

// A brute finds the least length over all plans of a few pieces by trying them
// all, without any of the package's own machinery.
type brute struct {
	w     int
	sides [][2]int
	turn  []bool
	memo  map[[3]int]bool
}

// bruteOf makes a brute of a problem's pieces.
func bruteOf(p Problem) *brute {
	b := &brute{w: int(p.Width), memo: map[[3]int]bool{}}
	for _, it := range p.Items {
		for range it.Count {
			b.sides = append(b.sides, [2]int{int(it.W), int(it.H)})
			b.turn = append(b.turn, it.Turn)
		}
	}
	return b
}

// column is the least width of a column of the pieces of set within height h, or
// -1; single allows but one piece.
func (b *brute) column(set, h int, single bool) int {
	if single && bits.OnesCount(uint(set)) > 1 {
		return -1
	}
	best := -1
	var try func(i, used, wide int)
	try = func(i, used, wide int) {
		if used > h {
			return
		}
		if i == len(b.sides) {
			if best < 0 || wide < best {
				best = wide
			}
			return
		}
		if set>>i&1 == 0 {
			try(i+1, used, wide)
			return
		}
		s := b.sides[i]
		try(i+1, used+s[1], max(wide, s[0]))
		if b.turn[i] {
			try(i+1, used+s[0], max(wide, s[1]))
		}
	}
	try(0, 0, 0)
	return best
}

// levels is the least length in strips whose columns hold one piece or several.
func (b *brute) levels(single bool) int {
	n := len(b.sides)
	all := 1<<n - 1
	total := 0
	for _, s := range b.sides {
		total += max(s[0], s[1])
	}
	strip := make([]int, all+1) // least height of a strip of the set
	for h := total; h > 0; h-- {
		wide := make([]int, all+1)
		col := make([]int, all+1)
		for set := 1; set <= all; set++ {
			col[set] = b.column(set, h, single)
			wide[set] = 1 << 30
			for sub := set; sub > 0; sub = (sub - 1) & set {
				if col[sub] >= 0 {
					wide[set] = min(wide[set], col[sub]+wide[set&^sub])
				}
			}
			if wide[set] <= b.w {
				strip[set] = h
			}
		}
	}
	best := make([]int, all+1)
	for set := 1; set <= all; set++ {
		best[set] = 1 << 30
		for sub := set; sub > 0; sub = (sub - 1) & set {
			if strip[sub] > 0 {
				best[set] = min(best[set], strip[sub]+best[set&^sub])
			}
		}
	}
	return best[all]
}

// guillotine says whether a set fits w x h by edge-to-edge cuts of any kind.
func (b *brute) guillotine(set, w, h int) bool {
	if set == 0 {
		return true
	}
	key := [3]int{set, w, h}
	if v, ok := b.memo[key]; ok {
		return v
	}
	v := b.split(set, w, h)
	b.memo[key] = v
	return v
}

// split tries every first cut.
func (b *brute) split(set, w, h int) bool {
	if set&(set-1) == 0 {
		i := bits.TrailingZeros(uint(set))
		s := b.sides[i]
		return s[0] <= w && s[1] <= h || b.turn[i] && s[1] <= w && s[0] <= h
	}
	for sub := (set - 1) & set; sub > 0; sub = (sub - 1) & set {
		for x := 1; x < w; x++ {
			if b.guillotine(sub, x, h) && b.guillotine(set&^sub, w-x, h) {
				return true
			}
		}
		for y := 1; y < h; y++ {
			if b.guillotine(sub, w, y) && b.guillotine(set&^sub, w, h-y) {
				return true
			}
		}
	}
	return false
}

// any is the least length by edge-to-edge cuts of any kind.
func (b *brute) any() int {
	for h := 1; ; h++ {
		if b.guillotine(1<<len(b.sides)-1, b.w, h) {
			return h
		}
	}
}

func TestBruteForce(t *testing.T) {
	r := rand.New(rand.NewSource(7))
	var proved [3]int
	for range *bruteCases {
		p := Problem{Width: int64(3 + r.Intn(6)), Effort: 3_000_000}
		for n := 1 + r.Intn(6); n > 0; {
			it := Item{W: int64(1 + r.Intn(int(p.Width))), H: int64(1 + r.Intn(6)), Count: min(n, 1+r.Intn(2)), Turn: r.Intn(2) == 0}
			p.Items = append(p.Items, it)
			n -= it.Count
		}
		b := bruteOf(p)
		best := [3]int{b.levels(true), b.levels(false), b.any()}
		for k := Strips; k <= Thrifty; k++ {
			p.Kind = k
			res, err := Solve(context.Background(), p)
			if err != nil {
				t.Fatalf("%+v: %v", p, err)
			}
			if err := Check(p, res); err != nil {
				t.Fatalf("%+v: %v", p, err)
			}
			// With so few pieces no plan needs more than five stages.
			used, bound := int(res.Used), int(res.Bound)
			if used < best[k] || bound > best[k] || int(res.Any) > best[2] || res.Proved && used != best[k] {
				t.Errorf("%+v: used %d, bound %d, any %d, proved %v; best is %d, of any kind %d",
					p, used, bound, res.Any, res.Proved, best[k], best[2])
			}
			if res.Proved {
				proved[k]++
			}
		}
	}
	t.Logf("proved of %d: %d strips, %d stacks, %d thrifty", *bruteCases, proved[0], proved[1], proved[2])
	if min(proved[Strips], proved[Thrifty]) < *bruteCases {
		t.Errorf("only %d and %d of %d proved in strips and thrifty", proved[Strips], proved[Thrifty], *bruteCases)
	}
}

func FuzzSolve(f *testing.F) {
	for i := range 20 {
		f.Add(int64(i), byte(i), false)
		f.Add(int64(i), byte(i), true)
	}
	f.Add(int64(-150), byte(2), true) // nothing fitted beside a lane
	f.Fuzz(func(t *testing.T, seed int64, kind byte, odd bool) {
		p := randomProblem(rand.New(rand.NewSource(seed)), Kind(kind%3))
		if odd { // sizes without a common measure, and great lengths
			for i := range p.Items {
				p.Items[i].W = p.Items[i].W*1_000_003 + seed&1023
				p.Items[i].H = p.Items[i].H*999_983 + seed>>10&1023
				p.Items[i].Count *= 1 + int(seed>>20&31)
			}
			p.Width = p.Width*1_000_003 + 1_000
			for i := range p.Given {
				p.Given[i] = Cloth{p.Width, p.Given[i].L * 1_000_000}
			}
		}
		res, err := Solve(context.Background(), p)
		var big *TooBigError
		if errors.As(err, &big) {
			return
		}
		if err != nil {
			t.Fatalf("%+v: %v", p, err)
		}
		if err := Check(p, res); err != nil {
			t.Fatalf("%+v: %v\n%+v", p, err, res)
		}
	})
}
