package cutting

import (
	"strings"
	"testing"

	"cutbinder/layout/length"
	"cutbinder/layout/plan"

	"github.com/google/go-cmp/cmp"
)

// lone is a plan of one line at line 7, column 3, its cut size at column 9.
func lone(set plan.Piece, sources ...string) func(*plan.Plan) {
	return func(p *plan.Plan) {
		piece := line(set, sources...)
		piece.At = plan.Pos{File: "plan", Line: 7, Col: 3}
		piece.Keys = map[string]plan.Pos{"cut": {File: "plan", Line: 7, Col: 9}, "segment": {File: "plan", Line: 7, Col: 20}, "method": {File: "plan", Line: 7, Col: 30}}
		p.Pieces = append(p.Pieces, piece)
	}
}

func TestFaults(t *testing.T) {
	tests := []struct {
		name       string
		plan       *plan.Plan
		want, hint string
	}{
		{"too wide both ways", quilt(lone(plan.Piece{Cut: size("41 x 70"), Count: 1}, "dusk")),
			`plan:7:9: a piece cut 41 x 70 in is wider than the fabric: fabric "dusk" is 40 in wide`, "join it from strips (join: true), or take wider cloth"},
		{"too wide for a one-way print", quilt(oneWay("dusk"), lone(plan.Piece{Cut: size("70 x 2 1/2"), Count: 1}, "dusk")),
			`plan:7:9: a piece cut 70 x 2 1/2 in is wider than the fabric: fabric "dusk" is 40 in wide and one-way, so that the piece may not be turned`,
			"cut it with its longer side along the cloth, join it from strips (join: true), or take wider cloth"},
		{"a border too wide for a one-way print", quilt(oneWay("dusk"), func(p *plan.Plan) {
			p.Borders = []*plan.Border{{Node: plan.Node{At: plan.Pos{File: "plan", Line: 9, Col: 5}}, Width: in("2"), Around: size("60 x 50"), Source: on("dusk")}}
		}),
			`plan:9:5: a piece cut 64 1/2 x 2 1/2 in is wider than the fabric: fabric "dusk" is 40 in wide and one-way, so that the border's top and bottom can't lie along it`,
			"join them from strips (join: true), or take wider cloth; where the print may lie on its side there, leave one-way out and tell it in the fabric's note"},
		{"too wide and not to be turned", quilt(lone(plan.Piece{Cut: size("70 x 2 1/2"), Count: 1, NoTurn: true}, "dusk")),
			`plan:7:9: a piece cut 70 x 2 1/2 in is wider than the fabric: fabric "dusk" is 40 in wide and the piece may not be turned`,
			"let it be turned, join it from strips (join: true), or take wider cloth"},
		{"too wide for all of a mix", quilt(width("plum", "38"), width("ember", "42 1/2"), lone(plan.Piece{Cut: size("43"), Count: 1}, "night")),
			`plan:7:9: a piece cut 43 x 43 in is wider than the fabric: the widest fabric of mix "night", "ember", is 42 1/2 in wide`, "join it from strips (join: true), or take wider cloth"},
		{"a thread too wide", quilt(lone(plan.Piece{Cut: length.Size{W: in("40") + 1, H: in("40") + 1}, Count: 1}, "dusk")),
			`plan:7:9: a piece cut about 40 x about 40 in is wider than the fabric: fabric "dusk" is 40 in wide`, "join it from strips (join: true), or take wider cloth"},
		{"a segment too long", quilt(lone(plan.Piece{Unit: plan.StripSet, Segment: in("40"), Count: 1, Strips: []plan.SetStrip{{Finished: in("2"), Source: on("dusk")}}})),
			"plan:7:20: a segment cut 40 1/2 in is longer than the strips: the narrowest fabric is 40 in wide", "take a shorter segment or wider cloth"},
		{"a method that doesn't make the unit", quilt(lone(plan.Piece{Unit: plan.Geese, Method: plan.FourAtATime, Finished: size("3"), Count: 1}, "dusk", "wick")),
			`plan:7:30: unit "geese" can't be made four-at-a-time at a finished size of 3 x 3 in`, "take another method, or leave it out for the usual one"},
		{"a fabric that isn't there", quilt(lone(plan.Piece{Cut: size("3"), Count: 1}, "tusk")),
			`plan:7:9: there is no fabric or mix "tusk" to cut this from`, "name a fabric or mix of this plan"},
		{"no size", quilt(lone(plan.Piece{Count: 1}, "dusk")), "plan:7:9: this piece has no size", "give its finished or its cut size"},
		{"too many pieces", quilt(lone(plan.Piece{Cut: size("1"), Count: 60_000}, "dusk"), lone(plan.Piece{Cut: size("2"), Count: 60_000}, "dusk"), lone(plan.Piece{Cut: size("2"), Count: 60_000}, "dusk")),
			"plan:7:9: with this line the plan comes to more than 100000 pieces", "see whether a count has a digit too many, or split the plan"},
		{"far too many pieces", quilt(block("A", 1<<62, line(plan.Piece{Cut: size("1"), Count: 1 << 62}, "dusk"))),
			"plan:0:1: with this line the plan comes to more than 100000 pieces", "see whether a count has a digit too many, or split the plan"},
		{"too many spares", quilt(spare(50), lone(plan.Piece{Cut: size("1"), Count: 90_000}, "dusk")),
			": with 45000 spares the plan comes to more than 100000 pieces", "ask for fewer spares"},
		{"binding of a quilt of no size", quilt(func(p *plan.Plan) {
			p.Finished, p.Binding = length.Size{}, &plan.Binding{Source: on("dusk"), Strip: in("2")}
		}),
			": the binding can't be reckoned: the quilt's finished size isn't stated", "write finished: WIDTH x LENGTH"},
		{"backing of a quilt of no size", quilt(func(p *plan.Plan) { p.Finished, p.Backing = length.Size{}, &plan.Backing{Source: on("dusk")} }),
			": the backing can't be reckoned: the quilt's finished size isn't stated", "write finished: WIDTH x LENGTH"},
		{"binding from ribbon", quilt(width("dusk", "2"), func(p *plan.Plan) { p.Binding = &plan.Binding{Source: on("dusk"), Strip: in("2 1/2")} }),
			": binding strips cut 2 1/2 in can't be had from fabric 2 in wide", "take narrower strips or wider cloth"},
		{"backing from ribbon", quilt(width("dusk", "1"), func(p *plan.Plan) { p.Backing = &plan.Backing{Source: on("dusk")} }),
			": a backing can't be made from fabric 1 in wide", "take wider cloth"},
		{"a border round nothing", quilt(func(p *plan.Plan) { p.Borders = []*plan.Border{{Width: in("27"), Source: on("dusk")}} }),
			": border 1 has nothing to go round", "give the quilt's finished size, or what the border goes round"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			lists, problems := Pieces(test.plan)
			if lists != nil {
				t.Errorf("there are lists beside the faults")
			}
			got := problems.Error()
			if test.name == "far too many pieces" {
				got = "plan:0:1" + got[strings.Index(got, ": with"):]
			}
			if diff := cmp.Diff(test.want, got); diff != "" {
				t.Errorf("faults (-want +got):\n%s", diff)
			}
			if !problems.Faulty() || problems[0].Hint != test.hint {
				t.Errorf("got hint %q, want %q", problems[0].Hint, test.hint)
			}
		})
	}
}

// TestAllFaults checks that no fault stops the others, and that they are sorted.
func TestAllFaults(t *testing.T) {
	p := quilt(func(p *plan.Plan) { p.Borders = []*plan.Border{{Width: in("27"), Source: on("dusk")}} },
		loose(line(plan.Piece{Cut: size("41"), Count: 1}, "dusk"), line(plan.Piece{Cut: size("3"), Count: 1}, "dusk"), line(plan.Piece{Cut: size("50"), Count: 1}, "wick")))
	_, problems := Pieces(p)
	if len(problems) != 3 || !strings.Contains(problems[1].What, "41 x 41") || !strings.Contains(problems[2].What, "50 x 50") {
		t.Errorf("got %v", problems)
	}
}

func TestFits(t *testing.T) {
	tests := []struct {
		size  string
		fixed bool
		width string
		want  bool
	}{
		{"40 x 70", false, "40", true}, {"70 x 40", false, "40", true}, {"70 x 40", true, "40", false},
		{"40 1/16 x 41", false, "40", false}, {"2 1/2 x 66", true, "40", true}, {"41", false, "41 1/2", true},
	}
	for _, test := range tests {
		if got := fits(size(test.size), test.fixed, in(test.width)); got != test.want {
			t.Errorf("%s on %s (fixed %v): got %v", test.size, test.width, test.fixed, got)
		}
	}
}

func TestUsable(t *testing.T) {
	tests := []struct {
		have []string
		want string
	}{
		{nil, "40"}, {[]string{"20 1/2 x 18"}, "20 1/2"}, {[]string{"20 1/2 x 18", "30 x 9"}, "30"}, {[]string{"20 1/2 x 18", "42 x 9"}, "40"},
	}
	for _, test := range tests {
		p := quilt(have("dusk", test.have...))
		if got := usable(p.Fabrics[0]); got != in(test.want) {
			t.Errorf("%v: got %v, want %s", test.have, got, test.want)
		}
	}
}
