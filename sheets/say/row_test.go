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
		{"Dusk stripe", "Dusk stripe", "Dusk stripe"},
		{"Scrap 1", "Scrap 1", "Scrap 1"},
		{"Dusk stripe|Ember print", "Dusk stripe 10, Ember print 11", "Dusk stripe\u00a010, Ember print\u00a011"},
		{"Scrap 1|Scrap 2", "Scrap 1 (10), Scrap 2 (11)", "Scrap\u00a01\u00a0(10), Scrap\u00a02\u00a0(11)"},
		{"Dusk stripe|nº 7", "Dusk stripe (10), nº 7 (11)", "Dusk stripe\u00a0(10), nº\u00a07\u00a0(11)"},
		{"Grey ½|30s red", "Grey ½ (10), 30s red (11)", "Grey\u00a0½\u00a0(10), 30s red\u00a0(11)"},
		{"30s red|桜の花びら", "30s red 10, 桜の花びら 11", "30s red\u00a010, 桜の花びら\u00a011"},
	} {
		var shares []bag.Share
		for i, name := range strings.Split(c.names, "|") {
			shares = append(shares, bag.Share{Name: name, Count: 8 + i, Spares: 2})
		}
		if got := (Voice{Plain: true}).Shares(shares); got != c.plain {
			t.Errorf("%s: %q, want %q", c.names, got, c.plain)
		}
		if got := (Voice{}).Shares(shares); got != c.set {
			t.Errorf("%s in type: %q, want %q", c.names, got, c.set)
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
