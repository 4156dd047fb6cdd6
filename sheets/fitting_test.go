package sheets_test

import (
	"testing"

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
