package sheets_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"cutbinder/layout/cutting"
	"cutbinder/layout/page"
	"cutbinder/layout/plan"
	"cutbinder/sheets"
)

const halfCut = `plan: Half cut
fabrics:
  red: {name: Red, done: yes}
  blue: {name: Blue, done: [2 1/2, WOF x 2]}
  green: {name: Green}
pieces:
  - {cut: 4 1/2, need: 8, fabric: red, for: corners}
  - {cut: 2 1/2, need: 6, fabric: blue, for: middles}
  - {cut: WOF x 2, need: 1, fabric: blue, for: strips}
  - {cut: 3 1/2 x 6 1/2, need: 6, fabric: blue, for: sides}
  - {cut: 5, need: 4, fabric: green, for: corners}
bags: {by: [size]}
`

// What is cut already has no sheet, no boxes and no labels; what is left has, and
// codes are those of the plan without done.
func TestDone(t *testing.T) {
	q := work("half", halfCut)
	fresh := work("half", strings.NewReplacer(", done: yes", "", ", done: [2 1/2, WOF x 2]", "").Replace(halfCut))
	for i := range q.Bags.Bags {
		if a, b := q.Bags.Bags[i].Code, fresh.Bags.Bags[i].Code; a != b {
			t.Errorf("bag %d has the code %v, before %v", i+1, a, b)
		}
	}
	doc := binder(t, q, sheets.Options{})
	facts(t, doc.Pages)
	var marks, words []string
	for _, p := range doc.Pages {
		for _, it := range p.Items {
			marks = append(marks, it.What())
			if text, ok := it.(page.Text); ok {
				words = append(words, text.Words())
			}
			if a, ok := it.(page.Anchor); ok && a.Name == "fabric red" {
				t.Error("red has a sheet")
			}
		}
	}
	has := func(start string) bool {
		return slices.ContainsFunc(marks, func(m string) bool { return strings.HasPrefix(m, start) })
	}
	all := strings.Join(words, "\n")
	for start, want := range map[string]bool{
		"tally red": false, "tally blue-1 bag": false, "tally blue-2 bag": true, "tally blue-3 bag": false, "tally green-1 bag": true,
		"shopping red": false, "shopping blue": false, "shopping green": true, "cut already": true,
	} {
		if has(start) != want {
			t.Errorf("items %q: %v, want %v", start, !want, want)
		}
	}
	for _, want := range []string{"Cut already, and left out here: Red; Blue", "(6) cut already", "Cut already, or begun: Red and Blue."} {
		if !strings.Contains(all, want) {
			t.Errorf("%q is not said", want)
		}
	}
	for step, ink := range map[string]page.Ink{"Cut (1) strip 3½": page.Black, "Cut (1) strip 2½": page.Grey} {
		if got := inkOf(doc.Pages, step); got != ink {
			t.Errorf("%q is printed %v, want %v", step, got, ink)
		}
	}
	for n := 1; n <= len(q.Bags.Bags); n++ {
		if has(fmt.Sprintf("label %d ", n)) == q.BagDone(n) {
			t.Errorf("bag %d: done and labelled are both %v", n, q.BagDone(n))
		}
	}
}

// inkOf is the ink of the first line that starts so.
func inkOf(pages []page.Page, start string) page.Ink {
	for _, p := range pages {
		for _, it := range p.Items {
			if text, ok := it.(page.Text); ok && strings.HasPrefix(strings.ReplaceAll(text.Words(), "\u00a0", " "), start) {
				return text.Runs[0].Ink
			}
		}
	}
	return page.NoInk
}

// A size that nothing is cut to can't be done.
func TestDoneUnknown(t *testing.T) {
	p, problems := plan.Read("half", []byte(strings.Replace(halfCut, "done: [2 1/2, ", "done: [2 3/4, ", 1)))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	_, problems, err := sheets.Sort(t.Context(), p, cutting.Options{})
	want := "half:4:29: done: nothing is cut 2 3/4 x 2 3/4 from blue; its cut sizes are 40 x 2, 3 1/2 x 6 1/2, 2 1/2 x 2 1/2"
	if err != nil || problems.Error() != want {
		t.Errorf("%v, %v, want %s", err, problems, want)
	}
}
