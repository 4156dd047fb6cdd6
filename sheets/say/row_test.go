package say

import (
	"strings"
	"testing"

	"cutbinder/layout/plan"
	"cutbinder/layout/trade"
	"cutbinder/sheets/bag"
)

// A count behind a name can't be taken for a part of it.
func TestShares(t *testing.T) {
	for _, c := range []struct{ names, plain, set string }{
		{"Dusk stripe", "Dusk stripe", "Dusk\u00a0stripe"},
		{"Scrap 1", "Scrap 1", "Scrap\u00a01"},
		{"Dusk stripe|Ember print", "Dusk stripe 10, Ember print 11", "Dusk\u00a0stripe\u200710, Ember\u00a0print\u200711"},
		{"Scrap 1|Scrap 2", "Scrap 1 (10), Scrap 2 (11)", "Scrap\u20071\u2007(10), Scrap\u20072\u2007(11)"},
		{"Dusk stripe|nº 7", "Dusk stripe (10), nº 7 (11)", "Dusk\u00a0stripe\u2007(10), nº\u20077\u2007(11)"},
		{"Grey ½|30s red", "Grey ½ (10), 30s red (11)", "Grey\u2007½\u2007(10), 30s\u00a0red\u2007(11)"},
		{"30s red|桜の花びら", "30s red 10, 桜の花びら 11", "30s\u00a0red\u200710, 桜の花びら\u200711"},
	} {
		var shares []bag.Share
		for i, name := range strings.Split(c.names, "|") {
			shares = append(shares, bag.Share{Name: name, Count: 8 + i, Spares: 2})
		}
		if got := (Voice{Plain: true}).Shares(shares); got != c.plain {
			t.Errorf("%s: %q, want %q", c.names, got, c.plain)
		}
		if got := (Voice{}).WholeShares(shares); got != c.set {
			t.Errorf("%s in type: %q, want %q", c.names, got, c.set)
		}
		if got, want := (Voice{}).Shares(shares), strings.ReplaceAll(c.set, "\u00a0", " "); got != want {
			t.Errorf("%s in type: %q, want %q", c.names, got, want)
		}
	}
}

// What pieces are is said once: a goose isn't a "geese goose".
func TestPart(t *testing.T) {
	for _, c := range []struct {
		unit       plan.Unit
		role, want string
	}{
		{plan.Patch, "", ""},
		{plan.HalfSquare, "", "half-square"},
		{plan.Geese, trade.Goose, "goose"},
		{plan.Geese, trade.Sky, "sky"},
		{plan.SquareInSquare, trade.Corner, "square-in-square corner"},
		{plan.StripSet, "", "strip"},
	} {
		if got := Part(c.unit, c.role); got != c.want {
			t.Errorf("%s %s: %q, want %q", c.unit, c.role, got, c.want)
		}
	}
}

// What the plan says that pieces are for stands behind their spares.
func TestRow(t *testing.T) {
	tests := []struct {
		row  bag.Row
		want string
	}{
		{bag.Row{Count: 4, Note: "tail  ends"}, "(4) 4 x 6, for tail ends: Dusk"},
		{bag.Row{Count: 4, Spares: 1, Finished: size("3 1/2 x 5 1/2"), Note: "For ties"}, "(4) 4 x 6, finished 3 1/2 x 5 1/2, and 1 spare, for ties: Dusk"},
		{bag.Row{Count: 4, Spares: 2}, "(4) 4 x 6, and 2 spares: Dusk"},
	}
	for _, test := range tests {
		test.row.Cut, test.row.Unit, test.row.Fabrics = size("4 x 6"), plan.Patch, []bag.Share{{Name: "Dusk"}}
		if got := (Voice{Plain: true}).Row(test.row); got != test.want {
			t.Errorf("%q, want %q", got, test.want)
		}
	}
}
