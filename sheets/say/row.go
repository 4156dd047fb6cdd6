package say

import (
	"fmt"
	"strings"

	"cutbinder/layout/plan"
	"cutbinder/layout/trade"
	"cutbinder/sheets/bag"
)

// Row is one kind of piece in a bag: "(48) 3½ × 3½ goose, finished 3, and 2
// spares: Dusk stripe 26, Ember print 24".
func (v Voice) Row(r bag.Row) string {
	text := fmt.Sprintf("%s %s", Count(r.Count), v.Size(r.Cut))
	if made := v.Made(r); made != "" {
		text += ", " + made
	}
	if r.Spares > 0 {
		text += ", and " + Spares(r.Spares)
	}
	return text + ": " + Shares(r.Fabrics)
}

// Made is what the pieces of a row become: "half-square, finished 3".
func (v Voice) Made(r bag.Row) string {
	var words []string
	if r.Unit != plan.Patch && r.Unit != "" {
		words = append(words, strings.TrimSpace(string(r.Unit)+" "+r.Role))
	}
	if r.Finished.W > 0 {
		words = append(words, "finished "+v.Short(r.Finished))
	}
	if j := r.Joined; j != nil {
		words = append(words, fmt.Sprintf("joined into %s %s", Count(j.Count), v.Size(j.Size)))
	}
	switch r.Into {
	case trade.Once:
		words = append(words, "cut corner to corner")
	case trade.Twice:
		words = append(words, "cut corner to corner both ways")
	}
	return strings.Join(words, ", ")
}

// Spares is "1 spare", "3 spares".
func Spares(n int) string { return fmt.Sprintf("%d %s", n, Plural(n, "spare", "spares")) }

// Shares names fabrics with their counts where there are several.
func Shares(shares []bag.Share) string {
	if len(shares) == 1 {
		return shares[0].Name
	}
	text := ""
	for i, s := range shares {
		if i > 0 {
			text += ", "
		}
		text += fmt.Sprintf("%s %d", s.Name, s.Count+s.Spares)
	}
	return text
}
