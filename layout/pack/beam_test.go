package pack

import (
	"context"
	"math"
	"math/rand"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// A beam that leaves nothing out for its cost finds the best plan there is.
func TestBeamBruteForce(t *testing.T) {
	r := rand.New(rand.NewSource(11))
	for range *bruteCases / 4 {
		p := Problem{Kind: Stacks, Width: int64(3 + r.Intn(6))}
		for n := 1 + r.Intn(6); n > 0; {
			it := Item{W: int64(1 + r.Intn(int(p.Width))), H: int64(1 + r.Intn(6)), Count: min(n, 1+r.Intn(2)), Turn: r.Intn(2) == 0}
			p.Items = append(p.Items, it)
			n -= it.Count
		}
		best := bruteOf(p).levels(false)
		in := newInstance(sizesOf(p.Items), p.Width)
		b := newBeam(in, &meter{limit: math.MaxInt64})
		b.guide = guides[r.Intn(len(guides))]
		b.start(1 << 15)
		ps, done := b.run(math.MaxInt32)
		h := 0
		for i := range ps {
			h += ps[i].h * int(in.unitY)
		}
		if !done || h < best || b.whole && h != best {
			t.Errorf("%+v: %d high, done %v, nothing left out %v; best is %d", p, h, done, b.whole, best)
		}
		// Nothing is lower than the best.
		if b.start(1 << 15); b.whole {
			if ps, _ := b.run(best / int(in.unitY)); len(ps) > 0 {
				t.Errorf("%+v: a plan lower than %d", p, best)
			}
		}
	}
}

// A beam that is stopped and goes on finds what it finds in one go.
func TestBeamGoesOn(t *testing.T) {
	r := rand.New(rand.NewSource(5))
	for range 20 {
		p := fabric(r, 8, 40)
		in := newInstance(sizesOf(p.Items), p.Width)
		whole := newBeam(in, &meter{limit: math.MaxInt64})
		whole.start(16)
		want, _ := whole.run(math.MaxInt32)
		parts := newBeam(in, &meter{})
		parts.start(16)
		var got []pattern
		for done := false; !done; {
			parts.work.limit += 5_000
			got, done = parts.run(math.MaxInt32)
		}
		if d := cmp.Diff(want, got, cmp.AllowUnexported(pattern{}, column{}, take{})); d != "" {
			t.Fatal(d)
		}
	}
}

// The same effort gives the same layout of stacks.
func TestStacksSame(t *testing.T) {
	r := rand.New(rand.NewSource(9))
	for range 10 {
		p := fabric(r, 8, 60)
		p.Effort = 20_000_000
		a, err := Solve(context.Background(), p)
		if err != nil {
			t.Fatal(err)
		}
		b, err := Solve(context.Background(), p)
		if err != nil {
			t.Fatal(err)
		}
		if d := cmp.Diff(a, b); d != "" {
			t.Error(d)
		}
	}
}
