package sheets_test

import (
	"strings"
	"testing"

	"cutbinder/layout/page"
	"cutbinder/sheets"
)

// The note at the head of the shopping list and what must be measured suit what is
// on the shelf.
func TestShelfWords(t *testing.T) {
	const pieces = "\npieces: [{cut: 4, need: 30, fabric: a}]\n"
	for _, tt := range []struct{ name, text, mark, want string }{
		{"to buy", "plan: T\nfabrics: {a: {}}" + pieces, "note", "Measure before you buy"},
		{"enough at hand", "plan: T\nfabrics: {a: {have: 1 yd}}" + pieces, "note", "Measure what is on the shelf before you cut"},
		{"too little at hand", "plan: T\nfabrics: {a: {have: fat eighth}}" + pieces, "note", "Measure before you buy"},
		{"all of it cut", "plan: T\nfabrics: {a: {done: yes}}" + pieces, "note", "There is no fabric to buy."},
		{"one length", "plan: T\nfabrics: {a: {have: 1 yd}}" + pieces, "", "must measure|I measured"},
		{"unlike lengths", "plan: T\nfabrics: {a: {have: 2 fat quarters}}" + pieces, "", "fat quarter 1 of 2 must be|I measured|fat quarter 2 of 2 must be|I measured"},
		{"lengths alike", "plan: T\nfabrics: {a: {have: 2 fat quarters}}\npieces: [{cut: 4, need: 40, fabric: a}]\n", "", "fat quarter 1–2 of 2 must each be|the least I measured"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			var said []string
			for _, p := range binder(t, work(tt.name, tt.text), sheets.Options{Only: []sheets.Part{sheets.Shopping, sheets.Fabrics}}).Pages {
				for _, it := range p.Items {
					text, ok := it.(page.Text)
					measure := ok && (strings.Contains(text.Words(), " measured") || strings.Contains(text.Words(), "must "))
					if ok && it.What() == tt.mark && (tt.mark != "" || measure) {
						said = append(said, text.Words())
					}
				}
			}
			if got := strings.Join(said, "|"); !strings.Contains(got, tt.want) {
				t.Errorf("%q, want %q", got, tt.want)
			}
		})
	}
}

// What a figure comes from stands on one line beside its fabric, where names and what
// to buy leave room for it; a fabric's name is never broken for it.
func TestShoppingColumns(t *testing.T) {
	plans := map[string]string{
		"short": "plan: Short\nallow: {extra: 10%}\nfabrics: {a: {name: Dusk stripe}, b: {name: Moss print, have: 3 fat quarters}}\npieces: [{cut: 4 1/2, need: 20, fabric: a}, {cut: 4 1/2, need: 20, fabric: b}]",
		"long":  "plan: Long\nallow: {extra: 10%}\nfabrics: {a: {name: \"" + strings.Repeat("Dusk stripe ", 6) + "\"}}\npieces: [{cut: 4 1/2, need: 20, fabric: a}]",
	}
	for _, c := range []struct {
		plan  string
		large bool
		sums  int // lines of "13½ in cut, ½ in squaring, 10 % extra: 15½ in"
		names int // lines of the name
	}{
		{"short", false, 1, 1},
		{"short", true, 2, 1},
		{"long", false, 1, 3},
	} {
		q := work(c.plan+".yaml", plans[c.plan])
		sums, names := 0, 0
		for _, p := range binder(t, q, sheets.Options{Large: c.large, Only: []sheets.Part{sheets.Shopping}}).Pages {
			for _, words := range texts(p, "shopping a") {
				if strings.Contains(words, "cut,") || strings.Contains(words, "extra") {
					sums++
				}
				if strings.Contains(words, "Dusk") {
					names++
				}
			}
		}
		if sums != c.sums || names != c.names {
			t.Errorf("%s, large=%v: the sum on %d lines, want %d; the name on %d, want %d", c.plan, c.large, sums, c.sums, names, c.names)
		}
	}
}
