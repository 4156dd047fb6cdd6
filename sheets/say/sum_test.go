package say

import (
	"testing"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/plan"
	"cutbinder/layout/trade"
)

func inch(s string) length.Length {
	l, err := length.Parse(s, length.Imperial)
	if err != nil {
		panic(err)
	}
	return l
}

// Every kind of term has words of its own.
func TestTerms(t *testing.T) {
	seen := map[string]trade.What{}
	for _, w := range trade.Whats {
		words := Term(w)
		if words == "" {
			t.Errorf("%s has no words", w)
		}
		if other, taken := seen[words]; taken {
			t.Errorf("%s and %s are both %q", w, other, words)
		}
		seen[words] = w
	}
	if len(terms) != len(trade.Whats) {
		t.Errorf("%d words for %d kinds of terms", len(terms), len(trade.Whats))
	}
}

// The sums of the trade's units at a seam of 1/4 in, and in metric.
func TestSum(t *testing.T) {
	s := trade.Sewing{Seam: inch("1/4"), Step: inch("1/8")}
	trim := trade.Sewing{Seam: inch("1/4"), Step: inch("1/8"), Trim: trade.TrimInch}
	cm := trade.Sewing{Seam: 75 * length.MM / 10, Step: length.MM}
	part := func(r trade.Recipe) trade.Sum { return r.Parts[0].Sum }
	plain, metric, typeset := Voice{Plain: true}, Voice{Units: length.Metric, Plain: true}, Voice{}
	tests := []struct {
		voice       Voice
		sum         trade.Sum
		want, short string
	}{
		{plain, part(s.Patch(length.Size{W: inch("3"), H: inch("3")})), "3 finished + 2 x 1/4 seam = 3 1/2", "3 + 2 x 1/4"},
		{plain, part(s.Patch(length.Size{W: inch("3"), H: inch("6")})), "3 finished + 2 x 1/4 seam = 3 1/2; 6 finished + 2 x 1/4 seam = 6 1/2", "3 + 2 x 1/4, 6 + 2 x 1/4"},
		{plain, part(s.HalfSquareTwo(inch("3"))), "3 finished + 7/8 seams of a half-square = 3 7/8", "3 + 7/8"},
		{typeset, part(s.HalfSquareTwo(inch("3"))), "3 finished + ⅞ seams of a half-square = 3⅞", "3\u00a0+\u00a0⅞"},
		{plain, part(trim.HalfSquareTwo(inch("3"))), "3 finished + 7/8 seams of a half-square + 1/8 to trim = 4", "3 + 7/8 + 1/8"},
		{plain, part(s.HalfSquareEight(inch("3"))), "2 x 3 finished + 1 3/4 seams of eight half-squares = 7 3/4", "2 x 3 + 1 3/4"},
		{plain, part(s.HalfSquareFour(inch("3"))), "about 4.243 finished diagonal + about 1.207 seams of four half-squares, rounded up = 5 1/2", ""},
		{plain, part(s.SideSetting(inch("12"), inch("1/4"))), "about 16.971 block's diagonal + about 1.207 seams of a quarter-square + 1/4 to trim the setting, rounded up = 18 1/2", ""},
		{plain, trade.Sum{Terms: []trade.Term{{What: trade.Stated, Each: inch("2 1/2")}}}, "2 1/2 as the plan states it", ""},
		{metric, part(cm.HalfSquareTwo(10 * length.CM)), "10 finished + 2.6 seams of a half-square = 12.6", "10 + 2.6"},
		{plain, trade.Sum{}, "", ""},
	}
	for _, test := range tests {
		if got := test.voice.Sum(test.sum); got != test.want {
			t.Errorf("got  %s\nwant %s", got, test.want)
		}
		if got := test.voice.ShortSum(test.sum); got != test.short {
			t.Errorf("short: got %q, want %q", got, test.short)
		}
	}
}

// What the pieces of a line become is said of every unit and method.
func TestMakes(t *testing.T) {
	use := func(unit plan.Unit, method plan.Method, role string, into trade.Diagonal) cutting.Use {
		return cutting.Use{Unit: unit, Method: method, Role: role, Into: into}
	}
	strips := cutting.Use{Unit: plan.Patch, For: cutting.ForBacking, Count: 2, Joined: &cutting.Joined{Count: 1, Size: length.Size{W: inch("64"), H: inch("78")}, Halved: true}}
	one := cutting.Use{Unit: plan.Patch, For: cutting.ForBacking, Count: 1, Joined: &cutting.Joined{Count: 1}}
	bias := cutting.Use{Unit: plan.Patch, For: cutting.ForBinding, Bias: true, Joined: &cutting.Joined{Count: 1, Size: length.Size{W: inch("2 1/4"), H: inch("304")}}}
	tests := []struct {
		use  cutting.Use
		want string
	}{
		{use(plan.Patch, "", "", trade.Whole), ""},
		{use(plan.HalfSquare, "", "", trade.Whole), "two half-squares from a pair"},
		{use(plan.HalfSquare, plan.FourAtATime, "", trade.Whole), "four half-squares from a pair"},
		{use(plan.HalfSquare, plan.EightAtATime, "", trade.Whole), "eight half-squares from a pair"},
		{use(plan.HalfSquare, plan.StitchAndFlip, "", trade.Whole), "one half-square from a pair"},
		{use(plan.Geese, plan.FourAtATime, trade.Goose, trade.Whole), "four from each, with four sky squares"},
		{use(plan.Geese, plan.FourAtATime, trade.Sky, trade.Whole), "four to a goose square"},
		{use(plan.Geese, plan.StitchAndFlip, trade.Goose, trade.Whole), "one from each"},
		{use(plan.Geese, plan.StitchAndFlip, trade.Sky, trade.Whole), "two to a goose, sewn corner to corner"},
		{use(plan.Hourglass, plan.TwoAtATime, "", trade.Whole), "two pairs sewn across each other"},
		{use(plan.SquareInSquare, "", trade.Centre, trade.Whole), "one each"},
		{use(plan.SquareInSquare, "", trade.Corner, trade.Once), "cut corner to corner"},
		{use(plan.SquareInSquare, plan.StitchAndFlip, trade.Corner, trade.Whole), "four to a centre, sewn corner to corner"},
		{use(plan.QuarterSquare, "", "", trade.Twice), "four triangles from each"},
		{use(plan.SideSetting, "", "", trade.Twice), "four triangles from each"},
		{use(plan.CornerSetting, "", "", trade.Once), "two triangles from each"},
		{cutting.Use{Unit: plan.StripSet, Set: &cutting.Set{Sets: 1, Segments: 3, Segment: 10 * length.Inch}}, "for (1) strip set, cut across into (3) segments 10"},
		{strips, "joined into (1) 64 x 78, one of them halved along its length"},
		{one, "the backing in one piece"},
		{bias, "bias strips, joined into (1) 2 1/4 x 304"},
	}
	for _, test := range tests {
		if got := (Voice{Plain: true}).Makes(cutting.Explained{Use: test.use}); got != test.want {
			t.Errorf("%s %s %s: %q, want %q", test.use.Unit, test.use.Method, test.use.Role, got, test.want)
		}
	}
}

// TestDown rounds what is left over down to what rulers show.
func TestDown(t *testing.T) {
	for _, tt := range []struct {
		units   length.System
		l, want length.Length
	}{
		{length.Imperial, 2*length.Inch + 825*length.Inch/1000, 2*length.Inch + 13*length.Inch/16},
		{length.Imperial, 2*length.Inch + length.Inch/16, 2*length.Inch + length.Inch/16},
		{length.Imperial, length.Inch/16 - 1, 0},
		{length.Metric, 7*length.CM + 9*length.MM/10, 7 * length.CM},
	} {
		if got := (Voice{Units: tt.units}).Down(tt.l); got != tt.want {
			t.Errorf("%v: %v, want %v", tt.l, got, tt.want)
		}
	}
}
