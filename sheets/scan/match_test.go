package scan

import (
	"math/rand/v2"
	"strings"
	"testing"

	"cutbinder/sheets/bag"
	"cutbinder/sheets/scan/photo"
)

func TestAnswer(t *testing.T) {
	quilts, err := photo.Quilts()
	if err != nil {
		t.Fatal(err)
	}
	s := quilts[0].Bags
	text := s.Says(&s.Bags[1], 37)
	code, rest, _ := strings.Cut(text, " ")
	first := s.Bags[0].Code.String()
	other := quilts[1].Bags.Says(&quilts[1].Bags.Bags[0], 37)
	for _, c := range []struct {
		text    string
		verdict bag.Verdict
		says    string
	}{
		{text, bag.Good, ""},
		{s.Says(&s.Bags[1], 21), bag.Good, ""},
		{code, bag.NotACode, "not those of bag 2"}, // labels say more
		{first + " " + rest, bag.NotACode, "not those of bag 1"},
		{strings.Replace(text, "BAG 2", "BAG 3", 1), bag.NotACode, "not those of bag 2"},
		{text[:len(text)-1], bag.NotACode, "not those of bag 2"},
		{text + " ", bag.NotACode, "not those of bag 2"},
		{code[:len(code)-1] + "* " + rest, bag.NotACode, "does not check"},
		{other, bag.OtherPlan, "another plan"},
		{strings.Replace(other, "BAG 1", "BAG 2", 1), bag.NotACode, "do not agree"},
		{"a page somewhere", bag.NotACode, "not one of a bag label"},
		{"", bag.NotACode, "not one of a bag label"},
	} {
		a := Answer(s, c.text)
		if a.Verdict != c.verdict || !strings.Contains(a.Problem, c.says) || (a.Bag != nil) != (c.verdict == bag.Good) {
			t.Errorf("%q: %+v, want verdict %d, %q", c.text, a, c.verdict, c.says)
		}
	}
}

// All labels are answered by their bag, also after the plan's units have changed.
func TestAnswerLabels(t *testing.T) {
	quilts, err := photo.Quilts()
	if err != nil {
		t.Fatal(err)
	}
	for _, q := range quilts {
		other := *q.Bags
		other.Units = quilts[0].Plan.Units
		for i := range q.Bags.Bags {
			b := &q.Bags.Bags[i]
			for n := bag.MinModules; n <= maxSide; n += 4 {
				text := q.Bags.Says(b, n)
				if a := Answer(q.Bags, text); text != "" && a.Bag != b {
					t.Errorf("%q: %+v", text, a)
				}
				if a := Answer(&other, text); text != "" && a.Bag != b {
					t.Errorf("%q in other units: %+v", text, a)
				}
			}
		}
	}
}

// No change of a label's text makes it another bag's.
func TestAnswerNeverWrong(t *testing.T) {
	quilts, err := photo.Quilts()
	if err != nil {
		t.Fatal(err)
	}
	r := rand.New(rand.NewPCG(7, 8))
	const signs = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:"
	s := quilts[0].Bags
	good := 0
	for range 3000 {
		b := &s.Bags[r.IntN(len(s.Bags))]
		text := []byte(s.Says(b, 37))
		for range 1 + r.IntN(3) {
			text[r.IntN(len(text))] = signs[r.IntN(len(signs))]
		}
		if r.IntN(2) == 0 { // another bag's code before these words
			copy(text, s.Bags[r.IntN(len(s.Bags))].Code.String())
		}
		if a := Answer(s, string(text)); a.Bag != nil && a.Bag != b {
			t.Errorf("%q, of bag %d, is answered by bag %d", text, b.Number, a.Bag.Number)
		} else if a.Bag != nil {
			good++
		}
	}
	if good == 0 || good > 600 {
		t.Errorf("%d of 3000 changed texts are answered; expected few, those that changed the number of bags or nothing", good)
	}
}
