package pack

import (
	"math/rand"
	"testing"
)

// Dives make plans that are whole, within the cloth and no higher than what was
// known, and a way gone before isn't gone again.
func TestPlunge(t *testing.T) {
	r := rand.New(rand.NewSource(31))
	gained := 0
	for range 40 {
		p := Problem{Kind: Stacks, Width: int64(60 + r.Intn(60))}
		for range 6 + r.Intn(8) {
			p.Items = append(p.Items, Item{int64(8 + r.Intn(40)), int64(8 + r.Intn(40)), 1 + r.Intn(6), true})
		}
		e := &engine{p: &p, sizes: sizesOf(p.Items), work: &meter{limit: 60_000_000}}
		s := newSearch(newInstance(e.sizes, p.Width), Stacks, 1<<30, e.work)
		s.lazy = true
		was := s.cutoff
		newPlunger(s).run(e.work.limit)
		root := s.node()
		res := p.layOut(e.sizes, []node{root})
		if err := Check(p, res); err != nil || !done(res.Short) || root.h != int64(s.cutoff)*s.in.unitY || s.cutoff > was {
			t.Fatalf("%+v: %d, then %d: %v, short %v", p, was, s.cutoff, err, res.Short)
		}
		if s.cutoff < was {
			gained++
		}
	}
	if gained < 30 {
		t.Errorf("only %d of 40 first plans were lowered", gained)
	}
	s := newSearch(newInstance(sizesOf([]Item{{3, 4, 5, false}}), 10), Stacks, 1<<30, &meter{limit: 1 << 20})
	pl := newPlunger(s)
	d := &diver{plan: []usage{{0, 2}}}
	if !pl.fresh(d) || pl.fresh(d) {
		t.Error("the same plan is fresh twice, or never")
	}
	s.cutoff--
	if !pl.fresh(d) {
		t.Error("after a better plan a way may be gone again")
	}
}
