package pack

import (
	"context"
	"testing"
)

// eighths makes items in units of 1/8 in from w, h and count.
func eighths(turn bool, v ...int64) (items []Item) {
	for i := 0; i < len(v); i += 3 {
		items = append(items, Item{W: v[i], H: v[i+1], Count: int(v[i+2]), Turn: turn})
	}
	return items
}

// solved solves a problem and checks the layout.
func solved(t *testing.T, p Problem) Result {
	t.Helper()
	r, err := Solve(context.Background(), p)
	if err != nil {
		t.Fatal(err)
	}
	if err := Check(p, r); err != nil {
		t.Fatal(err)
	}
	return r
}

func TestHalfYard(t *testing.T) {
	// 18 in of cloth 42 in wide; 66 squares of 3 in and 6 of 4 1/4 in.
	items := eighths(true, 34, 34, 6, 24, 24, 66)
	for _, c := range []struct {
		kind  Kind
		short int
	}{
		{Strips, 5}, // one strip of 4 1/4 in, with 5 of 3 in, and four of 3 in
		{Stacks, 0},
		{Thrifty, 0},
	} {
		r := solved(t, Problem{Kind: c.kind, Items: items, Given: []Cloth{{336, 144}}})
		if r.Short[1] != c.short || r.Short[0] != 0 || !r.Proved {
			t.Errorf("%v: short %v, proved %v, want %d of the second", c.kind, r.Short, r.Proved, c.short)
		}
	}
}

func TestFatQuarters(t *testing.T) {
	// Four of 18 x 20 1/2 in; 60 squares of 3 1/2 in, 40 pieces of 4 1/2 x 2 1/2
	// in and 8 squares of 6 1/2 in. What the first two leave of the area is room
	// for 6 of the squares at the most.
	items := eighths(true, 28, 28, 60, 36, 20, 40, 52, 52, 8)
	g := []Cloth{{164, 144}, {164, 144}, {164, 144}, {164, 144}}
	for _, c := range []struct {
		kind  Kind
		short int
	}{{Strips, 6}, {Stacks, 4}, {Thrifty, 4}} {
		r := solved(t, Problem{Kind: c.kind, Items: items, Given: g})
		if r.Short[0] != 0 || r.Short[1] != 0 || r.Short[2] > c.short || r.Short[2] < 2 {
			t.Errorf("%v: short %v, want %d at most of the third alone", c.kind, r.Short, c.short)
		}
	}
}

func TestBordersAlongTheSelvage(t *testing.T) {
	// 2 1/4 yd of cloth 42 in wide; four borders of 4 1/2 x 70 in, and 60
	// squares of 4 1/2 in from the rest.
	items := append(eighths(false, 36, 560, 4), eighths(true, 36, 36, 60)...)
	r := solved(t, Problem{Kind: Thrifty, Items: items, Given: []Cloth{{336, 648}}})
	if r.Short[0] != 0 || r.Short[1] != 0 {
		t.Errorf("short %v", r.Short)
	}
}

// Pieces so narrow that they count for more than they are on coarse cloth raise no
// bound: these fit one strip, though in units of two they would not.
func TestNarrowPieces(t *testing.T) {
	in := newInstance(sizesOf([]Item{{8188, 10, 1, false}, {1, 10, 3, false}}), 8191)
	s := newSearch(in, Strips, 1<<20, &meter{limit: 1 << 30})
	s.cutoff = 1 << 20
	m := newMaster(in, newStripPricer(in, s.work), s.work) // without the plan that s begins with
	r := m.relax(s.left, nil, nil, 0, s.cutoff, false)
	if s.raise(r.bound); r.bound < 2 || s.bound > 1 {
		t.Errorf("the program's bound is %d strips, and %d is believed; one strip does", r.bound, s.bound)
	}
}
