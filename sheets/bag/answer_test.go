package bag

import (
	"strings"
	"testing"

	"cutbinder/layout/plan"
)

func TestRead(t *testing.T) {
	p, lists := lantern()
	s := Sort(p, lists)
	two := s.Bags[1].Code.String()
	other := newCode("W4H", 2, "F3").String()
	moved := codeFor("K7Q", 4, holds(&s.Bags[1])).String()
	chance := newCode("K7Q", 4, heldAs(holds(&s.Bags[1]), 5)).String() // no label of such a bag ever had it
	gone := newCode("K7Q", 30, "00").String()
	stale := newCode("K7Q", 2, "00").String()
	for _, c := range []struct {
		text    string
		verdict Verdict
		says    []string // in the problem or the hint
	}{
		{two, Good, nil},
		{strings.ToLower(strings.ReplaceAll(two, "-", " ")), Good, nil},
		{s.Says(&s.Bags[1], 45), Good, nil},
		{two[:len(two)-1] + "*", Mistyped, []string{"mistyped", "did you mean " + two + " (bag 2)"}},
		{two[:len(two)-1], Mistyped, []string{"did you mean " + two}},
		{"A" + two, Mistyped, []string{"did you mean " + two}},
		{"K7Q-99-XXX", Mistyped, []string{"compare it with the label"}},
		{"good morning", NotACode, []string{"such as K7Q-07-F3X"}},
		{other, OtherPlan, []string{"begins with W4H, those of Lantern Row begin with K7Q", "mark: W4H"}},
		{stale, OlderVersion, []string{"bag 2 holds something else now", "--bags 2"}},
		{moved, OlderVersion, []string{"bag 4 holds something else now", "bag 2 now: A Lantern, " + two}},
		{chance, OlderVersion, []string{"bag 4 holds something else now", "check what is in the bag"}},
		{gone, OlderVersion, []string{"no bag 30 any more, only 8 bags"}},
	} {
		a := s.Read(c.text)
		if a.Verdict != c.verdict || a.OK() != (c.verdict == Good) || (a.Bag != nil) != a.OK() || (a.Problem == "") != a.OK() {
			t.Errorf("Read(%q): %+v, want verdict %d", c.text, a, c.verdict)
		}
		for _, want := range c.says {
			if !strings.Contains(a.Problem+"\n"+a.Hint, want) {
				t.Errorf("Read(%q) says %q, %q; want %q in it", c.text, a.Problem, a.Hint, want)
			}
		}
	}
}

// Labels of bags that did not change stay good when the plan changes elsewhere;
// those of bags that changed do not.
func TestLabelsStayGood(t *testing.T) {
	for _, c := range []struct {
		what   string
		change func(*plan.Plan)
		stale  []int
	}{
		{"nothing", func(p *plan.Plan) {}, nil},
		{"title with a mark", func(p *plan.Plan) { p.Title = "Lantern Road" }, nil},
		{"version", func(p *plan.Plan) { p.Version = "3" }, nil},
		{"a block's name", func(p *plan.Plan) { p.Blocks[1].Name = "Star" }, []int{3, 4}},
		{"a fabric's name", func(p *plan.Plan) { p.Fabrics[0].Name = "Dusk" }, []int{2, 3, 4, 6, 7}},
	} {
		p, lists := lantern()
		before := Sort(p, lists)
		c.change(p)
		after := Sort(p, lists)
		for i, b := range before.Bags {
			want := true
			for _, n := range c.stale {
				want = want && n != i+1
			}
			if got := after.Lookup(b.Code); got.OK() != want {
				t.Errorf("%s: label of bag %d good %v, want %v (%s)", c.what, i+1, got.OK(), want, got.Problem)
			}
		}
	}
	p, lists := lantern()
	before := Sort(p, lists)
	lists[1].Pieces[3].Uses[0].Count++
	after := Sort(p, lists)
	for i, b := range before.Bags {
		if got := after.Lookup(b.Code).OK(); got != (i != 1) {
			t.Errorf("one more piece in bag 2: label of bag %d good %v", i+1, got)
		}
	}
}
