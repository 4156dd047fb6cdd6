package say

import (
	"context"
	"strings"
	"testing"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/plan"
	"cutbinder/layout/trade"
	"cutbinder/sheets/bag"
)

// settled lays out a plan of so many lines.
func settled(t *testing.T, lines string) (*plan.Plan, []cutting.Fabric) {
	t.Helper()
	p, problems := plan.Read("test.yaml", []byte("plan: Test\n"+lines))
	if problems.Faulty() {
		t.Fatal(problems)
	}
	lists, problems := cutting.Pieces(p)
	if problems.Faulty() {
		t.Fatal(problems)
	}
	fabrics, err := cutting.Settle(context.Background(), p, lists, cutting.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return p, fabrics
}

// What the steps say of strips that are sewn on, and of where a leftover lies.
func TestSteps(t *testing.T) {
	const one = "fabrics: {a: {}}\n"
	tests := []struct{ name, plan, want string }{
		// 2 x 60 1/2 and 2 x 52 1/2 come from 226 in of six strips with five joins of 2 1/2 in: 227 1/2 in
		{"one run for a border", one + "finished: 52 x 64\nborders: [{width: 2, fabric: a, join: true}]",
			"They are joined into one run; from it cut (2) 2 1/2 x 60 1/2 for border 1 sides, then (2) 2 1/2 x 52 1/2 for border 1 top and bottom."},
		{"strips of one use", one + "pieces: [{cut: 2 1/2 x 50, need: 1, fabric: a, join: true, for: edge}]",
			"Selvages off; they are used whole. For edge they are joined into (1) 2 1/2 x 50."},
		// 40 / 4 1/2 = 8 to a set, so that 9 take two
		{"strips of two sets", one + "pieces: [{unit: strip-set, strips: [{fabric: a, finished: 2}, {fabric: a, finished: 3}], segment: 4, need: 9, for: rails}]",
			"For rails they go into (2) strip sets, which are cut across into (9) segments 4 1/2."},
		{"strips of one set, in a block, beside others", one + "blocks: {R: {name: Rail, make: 3, pieces: [{unit: strip-set, strips: [{fabric: a, finished: 2}, {fabric: a, finished: 3}], segment: 4, each: 2}]}}\npieces: [{unit: strip, finished: 2, need: 1, fabric: a}]",
			"For R Rail (1) goes into (1) strip set, which is cut across into (6) segments 4 1/2."},
		{"one strip a cloth", "fabrics: {a: {have: [20 1/2 x 10, 20 1/2 x 10]}}\npieces: [{cut: 7 x 20 1/2, need: 2, fabric: a}, {cut: 2 x 24, need: 1, fabric: a, join: true, for: edge}]",
			"For edge (2) are joined into (1) 2 x 24."},
		{"a mix shares a run", "fabrics: {a: {}, b: {}}\nmixes: {m: [a, b]}\nfinished: 36\nbinding: {mix: m, strip: 2 1/4}",
			"with the other fabrics', joined into (1) 2 1/4 x 154."},
		{"a backing in one piece", one + "finished: 20\nbacking: {fabric: a, overhang: 4}", "it is used whole. For backing cut it to 28 x 28."},
		{"a backing of two", one + "finished: 36\nbacking: {fabric: a, overhang: 4}", "For backing they are joined into (1) 44 x 44."},
		{"bias", one + "finished: 20\nbinding: {fabric: a, strip: 2 1/4, bias: true}",
			"For binding cut the square on the bias, at 45° to its edges, into strips 2 1/4 in wide, and join them into (1) 2 1/4 x 90."},
		// 40 - 30 = 10, half of it on each side
		{"beside a piece over the fold", one + "pieces: [{cut: 30 x 6, need: 1, fabric: a}]", "opened, that is 30 in. It gives (1) piece 6 x 30. 5 x 6 is left over at each end."},
		{"between pairs", one + "pieces: [{cut: 6, need: 4, fabric: a}]", "It gives (4) squares 6. 16 x 6 is left over at the fold."},
		// beside 10 in a section 3 in wide and 12 in high: three of 3 x 2 1/2 and one of 2 3/4 x 4 1/2 that is trimmed
		{"trimming in a list", "fabrics: {a: {have: 13 x 12 1/2, one-way: true}}\npieces: [{cut: 10 x 12, need: 1, fabric: a}, {cut: 3 x 2 1/2, need: 3, fabric: a}, {cut: 2 3/4 x 4 1/2, need: 1, fabric: a}]",
			"then (1) section 3 wide, cut into (1) piece 2 3/4 x 4 1/2 (cut 4 1/2 high, trim to 2 3/4 wide) and (3) pieces 3 x 2 1/2."},
		// cuts longer than the ruler, 24 1/2 in: 60 in high and two layers, once end to end is four layers and 30 in
		{"long sub-cuts in twos", one + "pieces: [{cut: 8 x 60, need: 4, fabric: a}]",
			"Keep it folded and fold it end to end once, so that the cuts are 30 in long, and move the ruler along its own edge; selvages off; from the selvage end sub-cut at 8: twice through all four layers."},
		{"long sub-cuts of several sizes", "fabrics: {a: {one-way: true}}\npieces: [{cut: 8 x 30, need: 2, fabric: a}, {cut: 9 x 30, need: 2, fabric: a}]",
			"Keep it folded and fold it end to end once, so that the cuts are 15 in long; selvages off; from the selvage end as in the picture, through all four layers:"},
		{"one over the fold, longer than the ruler", one + "pieces: [{cut: 31 1/2, need: 1, fabric: a}]",
			"measure 15 3/4 in from the first fold: opened, that is 31 1/2 in."},
		{"opened at the fold, not end to end", "fabrics: {a: {one-way: true}}\npieces: [{cut: 8 x 31 1/2, need: 5, fabric: a}]", "through all four layers, then open the first fold for the last one."},
		// 110 in in a single layer: twice end to end is four layers and 27 1/2 in
		{"long sub-cuts of an open strip", "fabrics: {a: {one-way: true}}\npieces: [{cut: 30 x 110, need: 1, fabric: a}, {cut: 4 x 110, need: 1, fabric: a}]",
			"Open it; fold it end to end twice, so that the cuts are 27 1/2 in long, and move the ruler along its own edge; selvages off;"},
		{"of one height the longest pieces first", one + "pieces: [{cut: 2 1/2, need: 16, fabric: a}, {cut: 2 1/2 x 16 1/2, need: 2, fabric: a}]",
			"Strip 2: selvages off; from the selvage end sub-cut at 16 1/2: once through both layers. It gives (2) pieces 2 1/2 x 16 1/2. 7 x 2 1/2 is left over at the fold.\nStrip 3: selvages off; from the selvage end sub-cut at 2 1/2: eight times"},
		{"strips named", one + "pieces: [{cut: 6, need: 14, fabric: a}]", "Strips 2–3: stack two folded strips at a time at the most. Selvages off;"},
		{"wide before it is opened", one + "pieces: [{cut: 7 x 30, need: 1, fabric: a}]", "Cut (1) strip 7 in x width. That is wider than the ruler: lay two rulers side by side, or use the lines of the mat. Open the strip and look at the fold"},
		// the ruler is 6 1/2 x 24 1/2: it doesn't cover 10 x 17, nor 26 of what is 7 high, but turned 10 of 6
		{"sub-cuts of a whole cloth wider than the ruler", "fabrics: {a: {have: 21 x 17 1/2}}\npieces: [{cut: 10 x 17, need: 2, fabric: a}]",
			"Take the whole length, 17 in, as one strip.\nSelvage off; from the left as in the picture: (2) pieces 10 x 17.\nThe sub-cut at 10 is wider than the ruler: lay two rulers side by side, or use the lines of the mat.\nMeasure one"},
		{"sub-cuts longer than the ruler", "fabrics: {a: {have: 40 x 7 1/2, one-way: true}}\npieces: [{cut: 26 x 7, need: 1, fabric: a}, {cut: 12 x 7, need: 1, fabric: a}]",
			"The sub-cut at 26 is longer than the ruler: measure along both edges, mark, and cut from mark to mark."},
		{"sub-cuts in sections", "fabrics: {a: {have: 21 x 20 1/2, one-way: true}}\npieces: [{cut: 7 x 20, need: 1, fabric: a}, {cut: 7 x 10, need: 4, fabric: a}]",
			"Sub-cuts at 7 and 10 are wider than the ruler:"},
		{"sub-cuts that a turned ruler covers", one + "pieces: [{cut: 6 x 10, need: 4, fabric: a}]",
			"It gives (4) pieces 6 x 10.\nMeasure one"},
		{"sub-cuts of a strip of which it was said", one + "pieces: [{cut: 10, need: 4, fabric: a}]",
			"It gives (4) squares 10.\nMeasure one"},
		{"strips not named", one + "pieces: [{cut: 6, need: 12, fabric: a}]", "Stack two folded strips at a time at the most. Selvages off;"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			p, fabrics := settled(t, test.plan)
			var all []string
			for i := range fabrics {
				for c := range fabrics[i].Cloths {
					for _, line := range (Voice{Units: p.Units, Plain: true}).Steps(p, &fabrics[i], &fabrics[i].Cloths[c]) {
						all = append(all, line.Text)
					}
				}
			}
			if text := strings.Join(all, "\n"); !strings.Contains(text, test.want) {
				t.Errorf("want %q in\n%s", test.want, text)
			}
		})
	}
}

// A cloth that is cut to the last eighth must measure what is bought for, with
// squaring on the way: 5 strips of 7 1/2 in, 1/2 in at first and 1/4 in after four.
func TestLeast(t *testing.T) {
	tests := []struct{ plan, want string }{
		{"fabrics: {a: {}}\npieces: [{cut: WOF x 7 1/2, need: 5, fabric: a}]\nallow: {retrue: 4}", "38 1/4 in"},
		{"fabrics: {a: {}}\npieces: [{cut: WOF x 7 1/2, need: 4, fabric: a}]\nallow: {retrue: 4}", "30 1/2 in"},
		{"fabrics: {a: {}}\npieces: [{cut: WOF x 7 1/2, need: 5, fabric: a}]", "38 in"},
		{"fabrics: {a: {}}\npieces: [{cut: WOF x 7 9/16, need: 1, fabric: a}]", "8 1/8 in"},
		{"fabrics: {a: {have: 8 1/16 in}}\npieces: [{cut: WOF x 7 9/16, need: 1, fabric: a}]", "8 1/16 in"},
		{"units: metric\nfabrics: {a: {}}\npieces: [{cut: WOF x 10, need: 5, fabric: a}]\nallow: {retrue: 4, squaring: 1.5}", "52.2 cm"},
	}
	for _, test := range tests {
		p, fabrics := settled(t, test.plan)
		if got := (Voice{Units: p.Units, Plain: true}).Least(p, &fabrics[0].Cloths[0]); got != test.want {
			t.Errorf("%s: %s, want %s", test.plan, got, test.want)
		}
	}
}

// Several cloths are named together.
// What is left is what there is less what the cloth must measure: 120 - 1.5 - 6 x 6.5 - 0.7 cm
// for squaring after the fourth strip.
func TestRest(t *testing.T) {
	tests := []struct{ name, plan, want string }{
		{"on the shelf", "units: metric\nallow: {retrue: 4}\nfabrics: {a: {width: 106.5, have: 1.2 m}}\npieces: [{cut: 11.5 x 6.5, need: 50, fabric: a}]\ncutting: strips", "78.8"},
		// 14 strips of 6.5 cm and three times 0.7 cm are 93.1 cm, with squaring 94.6 cm: 1 m is bought
		{"bought", "units: metric\nallow: {retrue: 4}\nfabrics: {a: {width: 102}}\npieces: [{cut: 50 x 6.5, need: 28, fabric: a}]\ncutting: strips", "5.4"},
		// 94.6/0.97 is 97.5 cm: of 1 m the wash leaves 97 cm
		{"bought and washed", "units: metric\nallow: {retrue: 4}\nfabrics: {a: {width: 102, prewash: true, shrink: 3%}}\npieces: [{cut: 50 x 6.5, need: 28, fabric: a}]\ncutting: strips", "2.4"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			p, fabrics := settled(t, test.plan)
			if got := For(p).Len(fabrics[0].Cloths[0].Rest(p, fabrics[0].Fabric)); got != test.want {
				t.Errorf("%s left, want %s", got, test.want)
			}
		})
	}
}

func TestSpan(t *testing.T) {
	for _, test := range []struct{ first, last, want string }{
		{"fat quarter 2 of 3", "fat quarter 2 of 3", "fat quarter 2 of 3"},
		{"fat quarter 1 of 4", "fat quarter 3 of 4", "fat quarter 1–3 of 4"},
		{"fat quarter 4 of 4", "fat eighth 1 of 2", "fat quarter 4 of 4 to fat eighth 1 of 2"},
		{"half yard", "9 x 42", "half yard to 9 x 42"},
	} {
		first := &cutting.Cloth{Name: test.first}
		last := &cutting.Cloth{Name: test.last}
		if test.first == test.last {
			last = first
		}
		if got := (Voice{Plain: true}).Span(first, last); got != test.want {
			t.Errorf("%q, want %q", got, test.want)
		}
	}
}

// What a row's pieces become, in the order of the sides they are cut with.
func TestMade(t *testing.T) {
	patch := func(cut, finished string) bag.Row {
		return bag.Row{Cut: size(cut), Finished: size(finished), Unit: plan.Patch, Count: 2}
	}
	joined := func(r bag.Row, j cutting.Joined) bag.Row { r.Joined = &j; return r }
	tests := []struct {
		row  bag.Row
		want string
	}{
		{patch("2 1/2 x 12 1/2", "12 x 2"), "finished 2 x 12"},
		{patch("2 1/2 x 12 1/2", "2 x 12"), "finished 2 x 12"},
		{patch("12 1/2 x 2 1/2", "2 x 12"), "finished 12 x 2"},
		{patch("3 1/2 x 3 1/2", "3 x 3"), "finished 3"},
		{bag.Row{Cut: size("7 1/4 x 7 1/4"), Finished: size("6 x 3"), Unit: plan.Geese, Role: trade.Goose}, "goose, finished 6 x 3"},
		{bag.Row{Cut: size("3 7/8 x 3 7/8"), Finished: size("6 x 3"), Unit: plan.Geese, Role: trade.Sky}, "sky, finished 6 x 3"},
		{joined(patch("40 x 2 1/2", "52 x 2"), cutting.Joined{Size: size("2 1/2 x 52 1/2"), Count: 2, Run: 1}), "finished 2 x 52, joined into one run with the border's others for (2) 2 1/2 x 52 1/2"},
		{joined(patch("40 x 2 1/2", "0 x 0"), cutting.Joined{Size: size("2 1/2 x 66"), Count: 1}), "joined into (1) 2 1/2 x 66"},
		{joined(bag.Row{Cut: size("14 3/4 x 14 3/4"), Unit: plan.Patch, Count: 1}, cutting.Joined{Size: size("2 1/4 x 90"), Count: 1}), "bias strips, joined into (1) 2 1/4 x 90"},
		{joined(bag.Row{Cut: size("40 x 28"), Unit: plan.Patch, Count: 1}, cutting.Joined{Size: size("28 x 28"), Count: 1}), "cut to 28 x 28"},
		{bag.Row{Cut: size("40 x 2 1/2"), Unit: plan.StripSet, Count: 14, Set: &cutting.Set{Sets: 14, Segments: 40, Segment: inch("10 1/2")}}, "for (14) strip sets, cut across into (40) segments 10 1/2"},
	}
	for _, test := range tests {
		if got := (Voice{Plain: true}).Made(test.row); got != test.want {
			t.Errorf("%q, want %q", got, test.want)
		}
	}
}

func size(s string) length.Size {
	w, h, _ := strings.Cut(s, " x ")
	return length.Size{W: inch(w), H: inch(h)}
}

// A cloth's name is the plan's, in type.
func TestWritten(t *testing.T) {
	for _, test := range []struct{ name, plain, typeset string }{
		{"9 x 42", "9 x 42", "9\u00a0×\u00a042"},
		{"17 1/2 x 20 1/2", "17 1/2 x 20 1/2", "17½\u00a0×\u00a020½"},
		{"30cm x 40cm", "30cm x 40cm", "30cm x 40cm"},
		{"fat quarter", "fat quarter", "fat quarter"},
	} {
		if got := (Voice{Plain: true}).Written(test.name); got != test.plain {
			t.Errorf("plain: %q, want %q", got, test.plain)
		}
		if got := (Voice{}).Written(test.name); got != test.typeset {
			t.Errorf("%q, want %q", got, test.typeset)
		}
	}
}
