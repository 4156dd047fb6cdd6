package pack

import (
	"context"
	"testing"
)

// Squares of 2 that a mixed strip would trim from 4 1/4 come out of the strip of
// 2 that is cut anyway, and so does the 6 1/2 x 2 (in 1/8 in).
func TestSmoothMovesTrimmedPieces(t *testing.T) {
	p := Problem{Width: 320, Kind: Stacks, Items: []Item{
		{52, 28, 1, true}, {52, 16, 1, true}, {34, 34, 1, false}, {31, 31, 2, false},
		{28, 28, 1, false}, {16, 16, 4, false}, {68, 16, 2, true},
	}}
	sizes := sizesOf(p.Items)
	leaf := func(w, h int64) node {
		for i, s := range sizes {
			if s.w == w && s.h == h || s.turn && s.w == h && s.h == w {
				return leafNode(i, w, h)
			}
		}
		t.Fatalf("no size %d x %d", w, h)
		return node{}
	}
	root := across([]node{
		along([]node{leaf(52, 28), leaf(52, 16), leaf(34, 34), leaf(31, 31), leaf(31, 31), leaf(28, 28),
			leaf(16, 16), leaf(16, 16), leaf(16, 16), leaf(16, 16)}),
		along([]node{leaf(68, 16), leaf(68, 16)}),
	})
	e := &engine{p: &p, sizes: sizes, work: &meter{limit: EffortPerSecond}}
	r := p.layOut(sizes, []node{e.smooth(root, p.Width, 0, Stacks, EffortPerSecond)})
	if err := Check(p, r); err != nil {
		t.Fatal(err)
	}
	if r.Used != 34+16 || len(r.Cloths[0].Parts) != 2 {
		t.Fatalf("%d used in %d strips", r.Used, len(r.Cloths[0].Parts))
	}
	if low := pieces(&r.Cloths[0].Parts[1]); low != 7 {
		t.Errorf("%d pieces are cut from the low strip, want 7: (2) 8 1/2 x 2, 6 1/2 x 2, (4) 2 x 2", low)
	}
}

// pieces counts the pieces in a section.
func pieces(s *Section) (n int) {
	if s.Dir == None && s.Item >= 0 {
		return 1
	}
	for i := range s.Parts {
		n += pieces(&s.Parts[i])
	}
	return n
}

// A smoothed plan cuts the same pieces, is no longer, and is no worse.
func TestSmoothIsNoWorse(t *testing.T) {
	better := 0
	for seed := range 300 {
		p := mixedProblem(&dice{uint64(seed)})
		sizes := sizesOf(p.Items)
		e := &engine{p: &p, sizes: sizes, work: &meter{limit: EffortPerSecond}}
		root := e.uniform()
		if seed%2 == 0 {
			in := newInstance(sizes, p.Width)
			root = newSearch(in, Strips, 1<<31-1, e.work).node()
		}
		was := p.layOut(sizes, []node{root})
		now := p.layOut(sizes, []node{e.smooth(root, p.Width, 0, Stacks, EffortPerSecond)})
		if err := Check(p, now); err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		a, b := judge(&p, &was), judge(&p, &now)
		if c := b.better(&a); c > 0 || !done(now.Short) {
			t.Fatalf("seed %d: %+v became %+v", seed, a, b)
		} else if c < 0 {
			better++
		}
	}
	if better < 100 {
		t.Errorf("only %d of 300 plans were made easier", better)
	}
}

// mixedProblem is a few sizes on narrow cloth.
func mixedProblem(d *dice) Problem {
	p := Problem{Width: int64(12 + d.draw(30)), Kind: Stacks}
	for range 2 + d.draw(5) {
		p.Items = append(p.Items, Item{int64(1 + d.draw(9)), int64(1 + d.draw(9)), 1 + d.draw(7), d.draw(2) == 0})
	}
	return p
}

// What is easier must not cost more.
func TestEaseKeepsThePurchase(t *testing.T) {
	for seed := range 60 {
		p := mixedProblem(&dice{uint64(seed)})
		p.Effort = EffortPerSecond / 200
		exact, err := Solve(context.Background(), p)
		if err != nil {
			t.Fatal(err)
		}
		p.Purchase = func(used int64) int64 { return (used + 5) / 6 * 6 }
		steps, err := Solve(context.Background(), p)
		if err != nil {
			t.Fatal(err)
		}
		if err := Check(p, steps); err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		if p.Purchase(steps.Used) > p.Purchase(exact.Used) && exact.Proved {
			t.Errorf("seed %d: %d are bought, %d would do", seed, p.Purchase(steps.Used), p.Purchase(exact.Used))
		}
	}
}
