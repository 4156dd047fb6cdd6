package pack

import (
	"math/rand"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// smallSearch draws a search over up to six pieces of few sizes, and a brute over
// the same.
func smallSearch(r *rand.Rand) (*search, *brute) {
	p := Problem{Width: int64(5 + r.Intn(8))}
	for n := 2 + r.Intn(5); n > 0; {
		it := Item{W: int64(1 + r.Intn(int(p.Width))), H: int64(1 + r.Intn(9)), Count: min(n, 1+r.Intn(3)), Turn: r.Intn(2) == 0}
		p.Items = append(p.Items, it)
		n -= it.Count
	}
	return newSearch(newInstance(sizesOf(p.Items), p.Width), Strips, 1<<20, &meter{limit: 1 << 30}), bruteOf(p)
}

// Over the list alone, every small problem is decided as brute force decides it,
// from the first solution's prices and whatever plan there was at first.
func TestCloserAgainstBruteForce(t *testing.T) {
	r := rand.New(rand.NewSource(11))
	for i := range 600 {
		s, b := smallSearch(r)
		s.must = s.needs()
		s.m.keep = true
		s.proof = s.m.relax(s.left, s.must, nil, 0, s.cutoff, false).proof
		c := &closer{s: s}
		c.run(1 << 29)
		if best := b.levels(true) / int(s.in.unitY); s.cutoff != best || s.bound != best {
			t.Fatalf("case %d: %v wide %d: bound %d, plan %d, brute force says %d", i, s.in.sizes, s.in.width, s.bound, s.cutoff, best)
		}
	}
}

// bruteList lists the patterns that a lister should, by trying all counts.
func bruteList(l *lister) (keys []string) {
	in := l.in
	n := make([]int, len(in.sizes))
	for _, h := range in.heights {
		best := in.best(h, nil)
		room := func() int64 {
			w := in.width
			for i, k := range n {
				if k > 0 {
					w -= int64(k) * in.lies[best[i]].rw
				}
			}
			return w
		}
		var try func(i int)
		try = func(i int) {
			if i < len(n) {
				for n[i] = 0; n[i] <= l.left[i] && (n[i] == 0 || best[i] >= 0 && room() >= 0); n[i]++ {
					try(i + 1)
				}
				n[i] = 0
				return
			}
			p := pattern{h: h}
			tops, w := false, room()
			for i, k := range n {
				if k > 0 {
					tops = tops || in.lies[best[i]].h == h
					p.cover = append(p.cover, take{i, k})
				}
				if k < l.left[i] && best[i] >= 0 && in.lies[best[i]].rw <= w {
					return // not maximal
				}
			}
			if tops && w >= 0 && int64(h)*l.q.scale-p.worth(l.q)-l.q.strip(h) <= l.gap {
				keys = append(keys, p.key())
			}
		}
		try(0)
	}
	slices.Sort(keys)
	return keys
}

func TestListerAgainstBruteForce(t *testing.T) {
	r := rand.New(rand.NewSource(12))
	for i := range 600 {
		s, _ := smallSearch(r)
		q := &quote{scale: 100}
		for range s.left {
			q.base = append(q.base, int64(r.Intn(300)))
		}
		l := &lister{in: s.in, q: q, left: s.left, gap: int64(r.Intn(600) - 200), most: 1 << 20, work: s.work}
		if !l.run() {
			t.Fatalf("case %d: the list is not whole", i)
		}
		var keys []string
		for _, p := range l.list {
			keys = append(keys, p.key())
		}
		slices.Sort(keys)
		if d := cmp.Diff(bruteList(l), keys); d != "" {
			t.Fatalf("case %d: %v wide %d (-want +got):\n%s", i, s.in.sizes, s.in.width, d)
		}
	}
}

// A list that is too long is given up, not cut short.
func TestListerGivesUp(t *testing.T) {
	in := newInstance(sizesOf([]Item{{3, 3, 20, false}, {4, 3, 20, false}, {5, 3, 20, false}}), 60)
	q := &quote{scale: 1, base: []int64{0, 0, 0}}
	l := &lister{in: in, q: q, left: in.counts(), gap: 1 << 20, most: 5, work: &meter{limit: 1 << 30}}
	if l.run() || len(l.list) > 5 {
		t.Errorf("whole, with %d patterns", len(l.list))
	}
}

// No cut cuts off a whole plan, however much it cuts beyond the demands.
func TestCutsHoldForPlans(t *testing.T) {
	r := rand.New(rand.NewSource(13))
	for range 2000 {
		n := 1 + r.Intn(6)
		left, rest := make([]int, n), make([]int, n)
		for i := range left {
			left[i] = 1 + r.Intn(5)
			rest[i] = left[i]
		}
		var plan []pattern
		for !done(rest) {
			p := pattern{h: 1}
			for i := range left {
				if k := min(r.Intn(4), left[i]); k > 0 {
					p.cover = append(p.cover, take{i, k})
					rest[i] -= min(rest[i], k)
				}
			}
			plan = append(plan, p)
		}
		c := cut{part: 2 + r.Intn(3)}
		for i := range left {
			if r.Intn(2) == 0 {
				c.sizes = append(c.sizes, i)
			}
		}
		l, sum := c.limit(left), 0
		for i := range plan {
			sum += l.times(&plan[i])
		}
		if sum < l.n {
			t.Fatalf("%+v wants %d of a plan for %v, which has %d: %v", c, l.n, left, sum, plan)
		}
	}
}

// The cutter finds the classic cut: three sizes, of which a pattern holds any two
// and half of each of three patterns would do.
func TestCutterFindsOddCycle(t *testing.T) {
	pool := []pattern{{cover: []take{{0, 1}, {1, 1}}}, {cover: []take{{1, 1}, {2, 1}}}, {cover: []take{{0, 1}, {2, 1}}}}
	use := []share{{0, 0.5}, {1, 0.5}, {2, 0.5}}
	cuts := newCutter([]int{1, 1, 1}, use, pool, &meter{limit: 1 << 20}).find()
	if d := cmp.Diff([]cut{{[]int{0, 1, 2}, 2}}, cuts, cmp.AllowUnexported(cut{})); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
}

// Prices that floating point would call fair are scaled down until no pattern is
// worth more than its height.
func TestFairPrices(t *testing.T) {
	q := &quote{scale: 1000, base: []int64{334}, limits: []limit{{h: 1, size: ofStrips, n: 1}}, dual: []int64{7}}
	// Three pieces in a strip 1 high are worth 1009 with it, 9 too much.
	f := q.fair(1009, 1)
	if worth := 3*f.base[0] + f.dual[0]; worth > f.scale || f.base[0] != 331 || f.dual[0] != 6 {
		t.Errorf("%+v: a strip is worth %d of %d", f, worth, f.scale)
	}
	if same := q.fair(900, 1); same != q {
		t.Errorf("fair prices became %+v", same)
	}
}
