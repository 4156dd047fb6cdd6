package say

import (
	"strings"
	"testing"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/plan"
	"cutbinder/layout/trade"
)

// bought is a fabric so wide that so much of it is to be bought.
func bought(width, buy string) *cutting.Fabric {
	return &cutting.Fabric{List: cutting.List{Fabric: &plan.Fabric{Width: inch(width)}}, Buy: trade.Purchase{Buy: inch(buy)}}
}

// Only the widths at which the purchase changes are told.
func TestWhatIf(t *testing.T) {
	tests := []struct {
		name       string
		width, buy string
		at         []string // width and purchase, none where it doesn't fit
		want       string
	}{
		{"never", "40", "1 yd", []string{"41 in 1 yd", "42 in 1 yd", "43 in 1 yd"}, ""},
		{"once", "40", "1 yd", []string{"41 in 1 yd", "42 in 7/8 yd", "43 in 7/8 yd", "44 in 7/8 yd"}, "at 42 in: 7/8 yd"},
		{"twice", "40", "1 yd", []string{"41 in 7/8 yd", "42 in 7/8 yd", "43 in 3/4 yd", "44 in 3/4 yd"}, "at 41 in: 7/8 yd, at 43 in: 3/4 yd"},
		{"narrower too: where it begins", "42", "1 yd", []string{"40 in 1 1/4 yd", "41 in 1 1/4 yd", "43 in 1 yd", "44 in 7/8 yd"}, "at 41 in: 1 1/4 yd, at 44 in: 7/8 yd"},
		{"too narrow", "42", "1 yd", []string{"40 in", "41 in", "43 in 1 yd"}, "at 41 in: too narrow"},
	}
	for _, test := range tests {
		var widths []cutting.Width
		for _, at := range test.at {
			w, buy, fits := strings.Cut(at, " in ")
			one := cutting.Width{Width: inch(strings.TrimSuffix(w, " in")), Fits: fits}
			if fits {
				one.Buy.Buy = inch(buy)
			}
			widths = append(widths, one)
		}
		if got := (Voice{Plain: true}).WhatIf(bought(test.width, test.buy), widths); got != test.want {
			t.Errorf("%s: %q, want %q", test.name, got, test.want)
		}
	}
}

// The widths asked at are those of bolts, but a fabric's own.
func TestOtherWidths(t *testing.T) {
	tests := []struct {
		units length.System
		width length.Length
		want  string
	}{
		{length.Imperial, inch("40"), "41 42 43 44"},
		{length.Imperial, inch("41 1/2"), "40 41 42 43 44"},
		{length.Imperial, inch("108"), "106 107 109 110"},
		{length.Metric, 102 * length.CM, "104.5 107 109.5 112"},
		{length.Imperial, inch("1"), "2 3"},
	}
	for _, test := range tests {
		var got []string
		for _, w := range OtherWidths(test.units)(&plan.Fabric{Width: test.width}) {
			got = append(got, test.units.Format(w))
		}
		if strings.Join(got, " ") != test.want {
			t.Errorf("%v: %v, want %s", test.width, got, test.want)
		}
	}
}

// What would help where a shelf is too small, the least first.
func TestRemedies(t *testing.T) {
	piece := &cutting.Piece{Size: length.Size{W: inch("6"), H: inch("6")}, Need: 5, Uses: []cutting.Use{{Count: 4, Spares: 1}}}
	f := &cutting.Fabric{List: cutting.List{Fabric: &plan.Fabric{Width: inch("40")}, Pieces: []*cutting.Piece{piece}}}
	more := func(s cutting.Shortage) *cutting.Shortage {
		s.More, s.Buy = inch("6 1/2"), trade.Purchase{Buy: inch("1/4 yd")}
		return &s
	}
	cut := "one more cut 6 1/2 in long of cloth 40 in wide holds what is missing: buy 1/4 yd"
	tests := []struct {
		short *cutting.Shortage
		lacks string
		want  string
	}{
		{more(cutting.Shortage{Lacks: []cutting.Lack{{Count: 1, Spares: 1}}}), "(1) 6 x 6 finds no place; it is a spare", "without spares all pieces fit; " + cut},
		{more(cutting.Shortage{Lacks: []cutting.Lack{{Count: 3, Spares: 1}}, Unspared: 2}), "(3) 6 x 6 find no place; 1 of them is a spare", "without spares two pieces are still missing; " + cut},
		{more(cutting.Shortage{Lacks: []cutting.Lack{{Count: 3, Mixes: []string{"night"}}}, Unspared: 3}), "(3) 6 x 6 find no place", cut + "; any fabric of mix night may give it, but none has room left: add a fabric"},
		{&cutting.Shortage{Lacks: []cutting.Lack{{Count: 1}}, Unspared: 1}, "(1) 6 x 6 finds no place", "no cloth of this width holds what is missing"},
	}
	for _, test := range tests {
		v := Voice{Plain: true}
		if got := v.Lacking(f, test.short); got != test.lacks {
			t.Errorf("lacking %q, want %q", got, test.lacks)
		}
		if got := strings.Join(v.Remedies(f, test.short), "; "); got != test.want {
			t.Errorf("remedies %q, want %q", got, test.want)
		}
	}
	if got := Sentences([]string{"one more", "add a fabric"}); got != "One more. Add a fabric." {
		t.Errorf("sentences %q", got)
	}
}
