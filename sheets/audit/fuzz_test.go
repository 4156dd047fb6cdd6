package audit_test

import (
	"context"
	"testing"

	"cutbinder/layout/cutting"
	"cutbinder/layout/plan"
	"cutbinder/sheets/audit"
)

// FuzzAudit checks that whatever plan can be cut can be audited: every finding
// has an id and a place, and accepting all doubts and notes leaves faults only.
func FuzzAudit(f *testing.F) {
	for _, seed := range []string{
		"plan: A\nfabrics: {a: {have: [fat quarter, 9 x 42], prewash: true}, b: {claims: {buy: 1/4 yd, strips: 2}, width: 42}, c: {one-way: yes}}\nmixes: {m: [a, b, c]}\npieces:\n- {cut: 2 1/2 x 66, need: 2, fabric: c, join: true, claims: {need: 3}}\n- {cut: 3, need: 20, mix: m, for: HST}\n",
		"plan: A\nfinished: 54 x 66\nfabrics: {a: {}, b: {}}\nblocks: {A: {make: 12, finished: 9, claims: {pieces: 2}, pieces: [{finished: 3, each: 4, fabric: a}, {unit: half-square, finished: 3, each: 4, fabrics: [a, b], method: four-at-a-time}, {cut: 3, each: 1, fabric: b}]}}\nbinding: {fabric: a, bias: true}\nallow: {spare: 5%}\n",
		"plan: A\nunits: metric\nfinished: 150 x 200\nfabrics: {a: {width: 110}}\nsetting: {on-point: 5 x 6, block: 20, sides: a, alternate: a}\nborders: [{width: 5, around: 100 x 100, fabric: a, join: yes}]\naccept: {x: y}\n",
	} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		p, problems := plan.Read("plan", []byte(text))
		if problems.Faulty() {
			return
		}
		lists, problems := cutting.Pieces(p)
		if problems.Faulty() || large(lists) {
			return
		}
		o := cutting.Options{Effort: 1000}
		fabrics, err := cutting.Settle(context.Background(), p, lists, o)
		if err != nil {
			return
		}
		found, err := audit.Audit(context.Background(), p, fabrics, o)
		if err != nil {
			t.Fatal(err)
		}
		p.Accept = nil
		for _, one := range found {
			if one.ID == "" || one.What == "" || one.Hint == "" {
				t.Fatalf("a finding without id, words or hint: %+v", one)
			}
			p.Accept = append(p.Accept, plan.Accepted{At: one.At, ID: one.ID})
		}
		again, err := audit.Audit(context.Background(), p, fabrics, o)
		if err != nil {
			t.Fatal(err)
		}
		for _, one := range again {
			if one.Level == plan.Doubt {
				t.Fatalf("accepted, and still there: %+v", one)
			}
		}
	})
}

// large says that a plan would take too long here.
func large(lists []cutting.List) bool {
	n := 0
	for _, l := range lists {
		for _, p := range l.Pieces {
			n += p.Need
		}
	}
	return n > 500
}
