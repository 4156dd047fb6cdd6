package sheets_test

import (
	"strings"
	"testing"

	"cutbinder/layout/plan"
	"cutbinder/sheets"
)

// On the smallest labels a heading stands whole in two lines of the least type, rather
// than cut short in a larger one: two borders' bags would look alike.
func TestLabelHeadingInTwoLines(t *testing.T) {
	q := work("borders.yaml", "plan: Borders\nfinished: 52 x 64\nfabrics: {a: {name: Clay red}}\nborders: [{width: 2, fabric: a, join: true}]\nblocks:\n  A: {name: Furrow, make: 12, pieces: [{finished: 6, each: 4, fabric: a}]}")
	for _, c := range []struct {
		stock string
		bag   int
		want  string
	}{
		{"38.1 x 21.2 mm", 1, "A Furrow"},
		{"38.1 x 21.2 mm", 2, "border 1 sides"},
		{"38.1 x 21.2 mm", 3, "border 1 top and bottom"},
		{"52.5 x 29.7 mm", 2, "border 1 sides"},
	} {
		stock, err := sheets.FindStock(c.stock, false, plan.A4)
		if err != nil {
			t.Fatal(err)
		}
		items := itemsOf(labelsOf(t, q, sheets.LabelOptions{Stock: stock}), c.bag)
		if got := strings.ReplaceAll(wordsOf(items["heading"]), "\u00a0", " "); got != c.want {
			t.Errorf("%s, bag %d: %q, want %q", c.stock, c.bag, got, c.want)
		}
		if wordsOf(items["size"]) == "" {
			t.Errorf("%s, bag %d says no size", c.stock, c.bag)
		}
	}
}

// What the heading says, the line below the size doesn't say again.
func TestLabelSettingTriangles(t *testing.T) {
	q := work("setting.yaml", "plan: Setting\nfabrics: {a: {name: Clay red}}\nblocks: {A: {make: 13, finished: 12, pieces: [{finished: 12, each: 1, fabric: a}]}}\nsetting: {on-point: 3 x 3, block: 12, sides: a, corners: a}")
	stock, _ := sheets.FindStock("99.1 x 38.1 mm", false, plan.A4)
	pages := labelsOf(t, q, sheets.LabelOptions{Stock: stock})
	triangles := 0
	for i := range q.Bags.Bags {
		items := itemsOf(pages, i+1)
		if strings.HasSuffix(wordsOf(items["heading"]), "setting triangles") {
			triangles++
			if got := wordsOf(items["detail"]); strings.Contains(got, "setting") || !strings.Contains(got, "finished") {
				t.Errorf("bag %d: %q", i+1, got)
			}
		}
	}
	if triangles != 2 {
		t.Errorf("%d bags of setting triangles", triangles)
	}
}
