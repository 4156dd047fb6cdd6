package sheets_test

import (
	"slices"
	"strings"
	"testing"

	"cutbinder/layout/cutting"
	"cutbinder/sheets"
)

// drawnBefore says whether a cloth is cut as the one before it, so that both share a
// picture.
func drawnBefore(f *cutting.Fabric, i int) bool {
	if i == 0 || f.Cloths[i].Unused() {
		return false
	}
	c, d := &f.Cloths[i-1], &f.Cloths[i]
	return c.W == d.W && c.L == d.L && slices.EqualFunc(c.Placed, d.Placed, func(p, q cutting.Placed) bool {
		p.Use, p.Spare, q.Use, q.Spare = 0, false, 0, false
		return p == q
	})
}

// Cloths that are cut alike share a picture and its steps; others don't.
func TestAlike(t *testing.T) {
	for _, tt := range []struct {
		name, plan string
		headings   []string // of the pictures
		notes      int      // that say how many a picture is of
	}{
		// 17 1/2 x 20 1/2 holds 7 x 4 = 28 of 2 1/2 x 4 1/2: four whole ones, and 8
		{"four alike and a rest", "fabrics: {a: {have: 5 fat quarters}}\npieces: [{cut: 2 1/2 x 4 1/2, need: 120, fabric: a}]",
			[]string{"FAT QUARTER 1–4 OF 5", "FAT QUARTER 5 OF 5"}, 1},
		{"two unlike", "fabrics: {a: {have: [fat quarter, fat eighth]}}\npieces: [{cut: 2 1/2 x 4 1/2, need: 36, fabric: a}]",
			[]string{"FAT QUARTER", "FAT EIGHTH"}, 0},
	} {
		t.Run(tt.name, func(t *testing.T) {
			var got []string
			notes := 0
			for _, p := range binder(t, work("alike.yaml", "plan: Alike\n"+tt.plan), sheets.Options{Only: []sheets.Part{sheets.Fabrics}}).Pages {
				notes += len(texts(p, "alike"))
				for _, words := range texts(p, "heading") {
					if name, _, ok := strings.Cut(words, ", TO SCALE"); ok {
						got = append(got, name)
					}
				}
			}
			if !slices.Equal(got, tt.headings) || notes != tt.notes {
				t.Errorf("%q with %d notes, want %q with %d", got, notes, tt.headings, tt.notes)
			}
		})
	}
}
