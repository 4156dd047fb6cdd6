package sheets_test

import (
	"context"
	"strings"
	"testing"

	"cutbinder/layout/cutting"
	"cutbinder/layout/page"
	"cutbinder/sheets"
)

// advised is a plan worked out, and what other widths and short shelves take.
func advised(t *testing.T, q *sheets.Quilt) *sheets.Quilt {
	t.Helper()
	again := *q
	if err := again.Advise(context.Background(), cutting.Options{Effort: effort}, cutting.Options{Effort: effort}); err != nil {
		t.Fatal(err)
	}
	return &again
}

// Pages hold together with all advice there is on them.
func TestAdvisedFacts(t *testing.T) {
	only := []sheets.Part{sheets.Shopping, sheets.Fabrics, sheets.BagKey}
	short := work("short", "plan: Short\nfabrics: {a: {name: Apple, have: [fat eighth, fat quarter]}, b: {width: 42}}\nmixes: {m: [a]}\nallow: {spare: 10%}\npieces:\n- {cut: 6, need: 30, mix: m}\n- {cut: 2 x 11, need: 9, fabric: a}\n- {cut: 6, need: 70, fabric: b}\n")
	for name, q := range map[string]*sheets.Quilt{"short": short, "tide-garden": samplePlans()["tide-garden.yaml"], "lantern-row": samplePlans()["lantern-row.yaml"], "harbour-steps": samplePlans()["harbour-steps.yaml"]} {
		for _, large := range []bool{false, true} {
			t.Run(name, func(t *testing.T) {
				facts(t, binder(t, advised(t, q), sheets.Options{Only: only, Large: large}).Pages)
			})
		}
	}
}

// The shopping list says where the purchase changes with the width, and a short
// fabric's sheet what would help.
func TestAdviceShown(t *testing.T) {
	q := advised(t, work("short", "plan: Short\nfabrics: {a: {have: fat eighth}, b: {}}\npieces:\n- {cut: 6, need: 5, fabric: a}\n- {cut: 6, need: 70, fabric: b}\n"))
	words := func(part sheets.Part) string {
		var out []string
		for _, p := range binder(t, q, sheets.Options{Only: []sheets.Part{part}}).Pages {
			for _, it := range p.Items {
				if text, ok := it.(page.Text); ok {
					for _, run := range text.Runs {
						out = append(out, strings.ReplaceAll(run.S, "\u00a0", " "))
					}
				}
			}
		}
		return strings.Join(out, " ")
	}
	if got := words(sheets.Shopping); !strings.Contains(got, "at 42 in: 1¾ yd") {
		t.Errorf("the shopping list doesn't say what 42 in takes: %s", got)
	}
	if got := words(sheets.Fabrics); !strings.Contains(got, "One more cut 6½ in long") {
		t.Errorf("the sheet doesn't say what would help: %s", got)
	}
}
