package pack

import (
	"math/rand"
	"testing"
)

func TestThriftyShorter(t *testing.T) {
	for _, c := range []struct {
		name           string
		p              Problem
		stacks, thrift int64
	}{
		// Beside a 3 x 5 piece 2 x 3 and 2 x 2 lie over one another; the rows hold two
		// pieces of 1 x 2 each: a stage more than stacks have.
		{"rows of two", Problem{Width: 5, Items: []Item{{3, 5, 1, false}, {1, 2, 2, false}, {2, 3, 1, false}}}, 7, 5},
		// A ring of four around a square can't be cut edge to edge at all.
		{"ring", Problem{Width: 3, Items: []Item{{1, 2, 2, false}, {2, 1, 2, false}, {1, 1, 1, false}}}, 4, 4},
	} {
		c.p.Kind = Stacks
		if r := solved(t, c.p); r.Used != c.stacks {
			t.Errorf("%s: %d in stacks, want %d", c.name, r.Used, c.stacks)
		}
		c.p.Kind = Thrifty
		if r := solved(t, c.p); r.Used != c.thrift || !r.Proved {
			t.Errorf("%s: %d thrifty, proved %v, want %d", c.name, r.Used, r.Proved, c.thrift)
		}
	}
}

func TestMendKeepsPieces(t *testing.T) {
	r := rand.New(rand.NewSource(11))
	won := 0
	for range 60 {
		p := Problem{Kind: Thrifty, Width: 30}
		for range 12 {
			p.Items = append(p.Items, Item{int64(3 + r.Intn(14)), int64(3 + r.Intn(14)), 1 + r.Intn(3), false})
		}
		e := &engine{p: &p, sizes: sizesOf(p.Items), work: &meter{limit: 20_000_000}}
		root := e.uniform()
		known := plan{root: root, used: root.h}
		pl := e.mend(e.sizes, p.Width, 0, 20_000_000, known)
		res := p.layOut(e.sizes, []node{pl.root})
		if err := Check(p, res); err != nil || res.Used != pl.used || pl.used > known.used {
			t.Fatalf("%+v: %d long, mended %d, laid out %d: %v", p, known.used, pl.used, res.Used, err)
		}
		if pl.used < known.used {
			won++
		}
	}
	if won < 60 {
		t.Errorf("only %d of 60 plans of one size a strip were shortened", won)
	}
}

func TestThriftyNeverWorse(t *testing.T) {
	r := rand.New(rand.NewSource(23))
	shorter := 0
	for range 40 {
		p := Problem{Width: int64(40 + r.Intn(60)), Effort: 5_000_000}
		for range 3 + r.Intn(9) {
			w, h := 4+r.Intn(30), 4+r.Intn(30)
			if r.Intn(4) == 0 {
				h = 60 + r.Intn(60)
			}
			p.Items = append(p.Items, Item{int64(w), int64(h), 1 + r.Intn(6), r.Intn(2) == 0})
		}
		p.Kind = Stacks
		stacks := solved(t, p).Used
		p.Kind = Thrifty
		switch used := solved(t, p).Used; {
		case used > stacks:
			t.Errorf("%+v: %d thrifty, %d in stacks", p, used, stacks)
		case used < stacks:
			shorter++
		}
	}
	if shorter == 0 {
		t.Error("none of 40 shorter than in stacks")
	}
}
