package sheets_test

import (
	"strings"
	"testing"

	"cutbinder/layout/length"
	"cutbinder/layout/page"
	"cutbinder/sheets"
)

// No heading and no fabric's head stands alone, in any size of print: where a picture
// is as high as a page leaves room for, where steps beside it are higher than a page,
// where the boxes of one size are.
func TestNothingStandsAlone(t *testing.T) {
	for _, tt := range []struct {
		name, plan string
		large      bool
	}{
		{"a strip nearly as long as the page", "fabrics: {a: {width: 43 1/2}}\npieces: [{cut: 13 x 104, need: 2, fabric: a}, {cut: 7 3/4 x 13 1/2, need: 14, fabric: a}]", true},
		{"and in usual print", "fabrics: {a: {width: 43 1/2}}\npieces: [{cut: 13 x 104, need: 2, fabric: a}, {cut: 7 3/4 x 13 1/2, need: 14, fabric: a}]", false},
		{"boxes higher than half a page is wide", "fabrics: {a: {width: 30}}\npieces: [{cut: 18, need: 585, fabric: a}, {cut: 10, need: 119, fabric: a}, {cut: 9, need: 119, fabric: a}, {cut: 8, need: 119, fabric: a}]", false},
		{"boxes nearly as high as a page", "fabrics: {a: {}}\npieces: [{cut: 24 1/2, need: 900, fabric: a}]", false},
		{"steps higher than a page beside a picture", "hand: left\nfabrics: {a: {width: 30, one-way: true, have: 62 3/4}}\npieces: [{cut: 29 x 20, need: 1, fabric: a}, {cut: 3 x 2 1/2, need: 10, fabric: a}, {cut: 3 1/4 x 4, need: 9, fabric: a}, {cut: 7 x 4 1/4, need: 4, fabric: a}, {cut: 2 x 5, need: 7, fabric: a}, {cut: 1 1/2 x 6, need: 9, fabric: a}, {cut: 5 x 5 1/4, need: 5, fabric: a}, {cut: 9 x 3, need: 2, fabric: a}, {cut: 4 x 7 1/2, need: 3, fabric: a}]", true},
	} {
		t.Run(tt.name, func(t *testing.T) {
			q := work("alone.yaml", "plan: Alone\n"+tt.plan)
			pages := binder(t, q, sheets.Options{Large: tt.large}).Pages
			facts(t, pages)
			if what := headingLast(pages) + headAlone(pages); what != "" {
				t.Error(what)
			}
		})
	}
}

// A cloth whose scale is its own is drawn a step smaller, too, where that saves a page.
func TestWideClothOnOnePage(t *testing.T) {
	q := work("wide.yaml", "plan: Wide\nfabrics: {a: {name: Cloud sateen, width: 104}}\npieces: [{cut: 104 x 73, need: 1, fabric: a}]")
	if n := len(binder(t, q, sheets.Options{Only: []sheets.Part{sheets.Fabrics}}).Pages); n != 1 {
		t.Errorf("the sheet has %d pages, want 1", n)
	}
}

// A long cloth is drawn in parts. Two stand side by side where they have room and that
// saves a page; the steps stand beside the last of several where that saves one.
func TestPartsOfAPicture(t *testing.T) {
	for _, tt := range []struct {
		name, plan   string
		pages, first int      // how many, and how many parts the first shows
		last         []string // what the last says
	}{
		{"three of 112 in at 1:20", "finished: 104\nfabrics: {a: {}}\npieces: [{cut: 4 7/8, need: 7, fabric: a}]\nbacking: {fabric: a, overhang: 4}",
			2, 2, []string{"picture 3 of 3, continued from picture 2", "from the selvage end sub-cut", "TALLY"}},
		{"too wide to stand side by side", "fabrics: {a: {width: 62}}\npieces: [{cut: 4 7/8, need: 7, fabric: a}, {cut: 61 x 112, need: 3, fabric: a}]",
			3, 1, []string{"picture 3 of 3, continued from picture 2", "sub-cut", "TALLY"}},
	} {
		for _, hand := range []string{"right", "left"} {
			t.Run(tt.name+"/"+hand, func(t *testing.T) {
				q := work("parts.yaml", "plan: Parts\nhand: "+hand+"\n"+tt.plan)
				pages := binder(t, q, sheets.Options{Only: []sheets.Part{sheets.Fabrics}}).Pages
				facts(t, pages)
				if len(pages) != tt.pages {
					t.Fatalf("%d pages, want %d", len(pages), tt.pages)
				}
				if lefts := partsOn(pages[0]); len(lefts) != tt.first {
					t.Errorf("the first page shows parts at %v, want %d", lefts, tt.first)
				}
				for _, words := range tt.last {
					if text := pages[len(pages)-1].String(); !strings.Contains(text, words) {
						t.Errorf("the last page doesn't say %q", words)
					}
				}
			})
		}
	}
}

// partsOn is where the drawn parts of cloths on a page have their left edge.
func partsOn(p page.Page) (lefts []length.Length) {
	seen := map[length.Length]bool{}
	for _, it := range p.Items {
		if x := it.Bounds().X; strings.HasPrefix(it.What(), "piece ") && !seen[x] {
			seen[x] = true
			lefts = append(lefts, x)
		}
	}
	return lefts
}
