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
