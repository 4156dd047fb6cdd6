package pack

import (
	"context"
	"errors"
	"math/rand"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// randomProblem draws a small problem.
func randomProblem(r *rand.Rand, kind Kind) Problem {
	p := Problem{Kind: kind, Width: int64(4 + r.Intn(9)), Effort: 1_000_000}
	for i := 1 + r.Intn(4); i > 0; i-- {
		p.Items = append(p.Items, Item{
			W: int64(1 + r.Intn(int(p.Width))), H: int64(1 + r.Intn(9)),
			Count: 1 + r.Intn(3), Turn: r.Intn(2) == 0,
		})
	}
	for i := r.Intn(3); i > 0; i-- {
		p.Given = append(p.Given, Cloth{W: p.Width, L: int64(2 + r.Intn(12))})
	}
	return p
}

func TestSolveChecks(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	for i := range 900 {
		p := randomProblem(r, Kind(i%3))
		res, err := Solve(context.Background(), p)
		if err != nil {
			t.Fatalf("%+v: %v", p, err)
		}
		if err := Check(p, res); err != nil {
			t.Fatalf("%+v: %v\n%+v", p, err, res)
		}
		again, _ := Solve(context.Background(), p)
		if d := cmp.Diff(res, again); d != "" {
			t.Fatalf("%+v: not the same again:\n%s", p, d)
		}
	}
}

func TestSolveErrors(t *testing.T) {
	gone, cancel := context.WithCancel(context.Background())
	cancel()
	one := []Item{{2, 2, 1, false}}
	for _, c := range []struct {
		name string
		ctx  context.Context
		p    Problem
		want error
	}{
		{"cancelled", gone, Problem{Items: one, Width: 5}, context.Canceled},
		{"no width", context.Background(), Problem{Items: one}, ErrLimit},
		{"no size", context.Background(), Problem{Items: []Item{{0, 2, 1, false}}, Width: 5}, ErrLimit},
		{"too many", context.Background(), Problem{Items: []Item{{1, 2, MaxPieces + 1, false}}, Width: 5}, ErrLimit},
		{"too long", context.Background(), Problem{Items: []Item{{1, MaxLength + 1, 1, false}}, Width: 5}, ErrLimit},
		{"no kind", context.Background(), Problem{Kind: 7, Items: one, Width: 5}, ErrLimit},
		{"no cloth", context.Background(), Problem{Items: one, Given: []Cloth{{0, 5}}}, ErrLimit},
	} {
		if _, err := Solve(c.ctx, c.p); !errors.Is(err, c.want) {
			t.Errorf("%s: %v, want %v", c.name, err, c.want)
		}
	}
	_, err := Solve(context.Background(), Problem{Items: []Item{{2, 2, 1, true}, {6, 2, 1, false}}, Width: 5})
	var big *TooBigError
	if !errors.As(err, &big) || big.Item != 1 || big.Width != 5 {
		t.Errorf("%v, want item 1 too big for 5", err)
	}
}

func TestGivenTooSmall(t *testing.T) {
	p := Problem{Items: []Item{{6, 2, 2, false}, {2, 2, 3, false}}, Given: []Cloth{{5, 2}}}
	r := solved(t, p)
	if d := cmp.Diff(r.Short, []int{2, 1}); d != "" || !r.Proved {
		t.Errorf("proved %v, short %s", r.Proved, d)
	}
}

func TestNothingToCut(t *testing.T) {
	for _, g := range [][]Cloth{nil, {{5, 5}}} {
		if r := solved(t, Problem{Items: []Item{{2, 2, 0, false}}, Width: 5, Given: g}); r.Used != 0 || !r.Proved {
			t.Errorf("%+v", r)
		}
	}
}

func TestSimplerKindStays(t *testing.T) {
	// In stacks 30 long would do for what takes 36 in strips; sold in steps of
	// 36 it costs the same, so the strips stay.
	p := Problem{Kind: Thrifty, Width: 10, Items: []Item{{5, 12, 3, false}, {5, 6, 4, false}}}
	short := solved(t, p)
	p.Purchase = func(v int64) int64 { return (v + 35) / 36 * 36 }
	strips := p
	strips.Kind = Strips
	if d := cmp.Diff(solved(t, strips).Cloths, solved(t, p).Cloths); d != "" || short.Used != 30 {
		t.Errorf("%d\n%s", short.Used, d)
	}
}

// TestLittleWork asks what may be answered with less work: niceties of what is
// sold all the same, and questions beside the layout. The same is sold as with all
// the work where niceties alone are open, and nothing is claimed that isn't so.
func TestLittleWork(t *testing.T) {
	r := rand.New(rand.NewSource(5))
	var nice, brief, full int64
	for range 30 {
		p := fabric(r, 6, 60)
		sold := p.Purchase
		p.Purchase = func(v int64) int64 { // a purchase to the last eighth costs a little more
			c := 2 * sold(v)
			if sold(v)-v < 1 {
				c++
			}
			return c
		}
		all := solved(t, p)
		p.Sold = sold
		less := solved(t, p)
		if sold(less.Used) < sold(all.Bound) || less.Bound > all.Used {
			t.Errorf("with Sold %d to %d, without %d to %d", less.Bound, less.Used, all.Bound, all.Used)
		}
		if sold(all.Bound) == sold(all.Used) && sold(less.Used) != sold(all.Used) {
			t.Errorf("%d is sold with Sold, %d without", sold(less.Used), sold(all.Used))
		}
		full, nice = full+all.Work, nice+less.Work
		p.Effort = EffortPerSecond / 20
		long := solved(t, p)
		p.Brief = true
		short := solved(t, p)
		if short.Work > long.Work || short.Bound > long.Used {
			t.Errorf("brief takes %d for %d to %d, else %d for %d to %d", short.Work, short.Bound, short.Used, long.Work, long.Bound, long.Used)
		}
		brief += long.Work - short.Work
	}
	if nice >= full || brief <= 0 {
		t.Errorf("work with Sold %d, without %d; brief saves %d", nice, full, brief)
	}
}
