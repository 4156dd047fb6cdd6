package cutting

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"cutbinder/layout/length"
	"cutbinder/layout/plan"
	"cutbinder/layout/trade"

	"github.com/google/go-cmp/cmp"
)

func TestMixes(t *testing.T) {
	night := func(count int, cut string) *plan.Piece {
		return line(plan.Piece{Cut: size(cut), Count: count}, "night")
	}
	tests := []struct {
		name string
		plan *plan.Plan
		want string
	}{
		{"evenly, in the mix's order", quilt(block("A", 1, night(8, "3"))),
			"dusk-1 (3) 3 x 3: 3 A night\nember-1 (2) 3 x 3: 2 A night\nplum-1 (3) 3 x 3: 3 A night"},
		{"the turn goes on from line to line", quilt(block("A", 1, night(1, "5"), night(1, "4"), night(2, "3"))),
			"dusk-1 (1) 4 x 4: 1 A night\nember-1 (1) 3 x 3: 1 A night\nplum-1 (1) 5 x 5: 1 A night\nplum-2 (1) 3 x 3: 1 A night"},
		{"the largest are dealt first", quilt(block("A", 1, night(2, "3"), night(1, "5"))),
			"dusk-1 (1) 3 x 3: 1 A night\nember-1 (1) 3 x 3: 1 A night\nplum-1 (1) 5 x 5: 1 A night"},
		{"a fabric by itself and in a mix", quilt(block("A", 1, night(3, "3"), line(plan.Piece{Cut: size("3"), Count: 2}, "plum"))),
			"dusk-1 (1) 3 x 3: 1 A night\nember-1 (1) 3 x 3: 1 A night\nplum-1 (3) 3 x 3: 2 A + 1 A night"},
		{"spares are reckoned once for the mix", quilt(spare(5), block("A", 1, night(20, "3"))),
			"dusk-1 (7) 3 x 3: 7 A night\nember-1 (7) 3 x 3: 6+1 A night\nplum-1 (7) 3 x 3: 7 A night"},
		{"strips as wide as each fabric", quilt(width("dusk", "41 1/2"), loose(line(plan.Piece{Cut: length.Size{W: length.WOF, H: in("2")}, Count: 3, For: "x"}, "night"))),
			"dusk-1 (1) 41 1/2 x 2 upright WOF: 1 x night\nember-1 (1) 40 x 2 upright WOF: 1 x night\nplum-1 (1) 40 x 2 upright WOF: 1 x night"},
		{"one-way fabrics of the mix keep the size upright", quilt(oneWay("plum"), block("A", 1, night(3, "6 x 3"))),
			"dusk-1 (1) 3 x 6: 1 A night\nember-1 (1) 3 x 6: 1 A night\nplum-1 (1) 6 x 3 upright: 1 A night"},
		{"a fabric too narrow gets none", quilt(width("plum", "20"), block("A", 1, night(2, "36 x 30"))),
			"dusk-1 (1) 30 x 36: 1 A night\nember-1 (1) 30 x 36: 1 A night"},
		// Three 6 in squares lie side by side on 18 1/2 - 1/2 x 20.
		{"no more than the shelf holds", quilt(have("plum", "20 x 6 1/2"), block("A", 1, night(15, "6"))),
			"dusk-1 (6) 6 x 6: 6 A night\nember-1 (6) 6 x 6: 6 A night\nplum-1 (3) 6 x 6: 3 A night"},
		{"cloth too small for a piece gets none", quilt(have("plum", "20 x 6"), block("A", 1, night(4, "6"))),
			"dusk-1 (2) 6 x 6: 2 A night\nember-1 (2) 6 x 6: 2 A night"},
		{"what is too much for all is dealt on", quilt(have("plum", "20 x 6 1/2"), have("dusk", "20 x 6 1/2"), have("ember", "20 x 6 1/2"), block("A", 1, night(12, "6"))),
			"dusk-1 (4) 6 x 6: 4 A night\nember-1 (4) 6 x 6: 4 A night\nplum-1 (4) 6 x 6: 4 A night"},
		{"pairs of a mix and a fabric", quilt(block("A", 5, line(plan.Piece{Unit: plan.HalfSquare, Finished: size("3"), Count: 1}, "wick", "night"))),
			"dusk-1 (1) 3 7/8 x 3 7/8: 1 A night\nwick-1 (3) 3 7/8 x 3 7/8: 3 A\nember-1 (1) 3 7/8 x 3 7/8: 1 A night\nplum-1 (1) 3 7/8 x 3 7/8: 1 A night"},
		{"joined strips of a mix", quilt(loose(line(plan.Piece{Cut: size("2 1/2 x 66"), Count: 2, For: "x", Join: true}, "night"))),
			"dusk-1 (1) 40 x 2 1/2 upright WOF: 1 x night joined 2 of 2 1/2 in x 66 in\nember-1 (1) 40 x 2 1/2 upright WOF: 1 x night joined 2 of 2 1/2 in x 66 in\nplum-1 (2) 40 x 2 1/2 upright WOF: 2 x night joined 2 of 2 1/2 in x 66 in"},
		// 20, + 37 1/2, + 37 1/2, + 17 1/2, + 37 1/2 = 150 for 132; of 20 alone it would take eight
		{"a run of strips from wide and narrow cloth", quilt(width("plum", "20"), loose(line(plan.Piece{Cut: size("2 1/2 x 66"), Count: 2, For: "x", Join: true}, "night"))),
			"dusk-1 (2) 40 x 2 1/2 upright WOF: 2 x night joined 2 of 2 1/2 in x 66 in\nember-1 (1) 40 x 2 1/2 upright WOF: 1 x night joined 2 of 2 1/2 in x 66 in\nplum-1 (2) 20 x 2 1/2 upright WOF: 2 x night joined 2 of 2 1/2 in x 66 in"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			lists, problems := Pieces(test.plan)
			got := strings.TrimSpace(show(length.Imperial, lists) + problems.Error())
			if diff := cmp.Diff(test.want, got); diff != "" {
				t.Errorf("pieces (-want +got):\n%s", diff)
			}
			checkLists(t, lists)
		})
	}
}

// laidOut is lists of which some pieces found no place.
func laidOut(lists []List, short map[string]int) []Fabric {
	var fabrics []Fabric
	for _, l := range lists {
		f := Fabric{List: l, Short: make([]int, len(l.Pieces))}
		for i, p := range l.Pieces {
			f.Short[i] = min(short[p.ID], p.Need)
		}
		fabrics = append(fabrics, f)
	}
	return fabrics
}

func TestShift(t *testing.T) {
	night := func(count int, cut string) *plan.Piece {
		return line(plan.Piece{Cut: size(cut), Count: count}, "night")
	}
	tests := []struct {
		name    string
		plan    *plan.Plan
		short   map[string]int
		want    string
		changed string
	}{
		{"to the others, evenly", quilt(block("A", 1, night(9, "3"))), map[string]int{"plum-1": 2},
			"dusk-1 (4) 3 x 3: 4 A night\nember-1 (4) 3 x 3: 4 A night\nplum-1 (1) 3 x 3: 1 A night", "dusk ember plum"},
		{"not to one that is short too", quilt(block("A", 1, night(9, "3"))), map[string]int{"plum-1": 3, "ember-1": 1},
			"dusk-1 (7) 3 x 3: 7 A night\nember-1 (2) 3 x 3: 2 A night", "dusk ember plum"},
		{"nowhere to go", quilt(block("A", 1, night(9, "3"))), map[string]int{"plum-1": 1, "ember-1": 1, "dusk-1": 1},
			"dusk-1 (3) 3 x 3: 3 A night\nember-1 (3) 3 x 3: 3 A night\nplum-1 (3) 3 x 3: 3 A night", ""},
		{"only what comes from a mix", quilt(block("A", 1, line(plan.Piece{Cut: size("3"), Count: 4}, "plum"), night(3, "3"))), map[string]int{"plum-1": 3},
			"dusk-1 (2) 3 x 3: 2 A night\nember-1 (1) 3 x 3: 1 A night\nplum-1 (4) 3 x 3: 4 A", "dusk plum"},
		{"making room for what may not move", quilt(block("A", 1, line(plan.Piece{Cut: size("5"), Count: 1}, "plum"), night(9, "3"))), map[string]int{"plum-1": 1},
			"dusk-1 (5) 3 x 3: 5 A night\nember-1 (4) 3 x 3: 4 A night\nplum-1 (1) 5 x 5: 1 A", "dusk ember plum"},
		{"spares go first", quilt(spare(34), block("A", 1, night(2, "3"))), map[string]int{"ember-1": 1},
			"dusk-1 (1) 3 x 3: 1 A night\nplum-1 (2) 3 x 3: 1+1 A night", "ember plum"},
		{"to a fabric without a list", quilt(block("A", 1, night(1, "3"))), map[string]int{"plum-1": 1},
			"dusk-1 (1) 3 x 3: 1 A night", "dusk plum"},
		{"from a one-way fabric and back upright", quilt(oneWay("plum", "ember"), have("dusk", "2 x 2"), block("A", 1, night(1, "6 x 3"))), map[string]int{"plum-1": 1},
			"ember-1 (1) 6 x 3 upright: 1 A night", "ember plum"},
		{"from one that may be turned to a one-way one", quilt(oneWay("dusk"), block("A", 1, night(1, "6 x 3"))), map[string]int{"plum-1": 1},
			"dusk-1 (1) 6 x 3 upright: 1 A night", "dusk plum"},
		{"strips take the other's width", quilt(width("dusk", "41 1/2"), loose(line(plan.Piece{Cut: length.Size{W: length.WOF, H: in("2")}, Count: 1, For: "x"}, "night"))), map[string]int{"plum-1": 1},
			"dusk-1 (1) 41 1/2 x 2 upright WOF: 1 x night", "dusk plum"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			lists, _ := Pieces(test.plan)
			before := show(length.Imperial, lists)
			got, changed := Shift(test.plan, laidOut(lists, test.short), map[string]bool{})
			if diff := cmp.Diff(test.want, strings.TrimSpace(show(length.Imperial, got))); diff != "" {
				t.Errorf("lists (-want +got):\n%s", diff)
			}
			if diff := cmp.Diff(test.changed, strings.Join(changed, " ")); diff != "" {
				t.Errorf("changed (-want +got):\n%s", diff)
			}
			if after := show(length.Imperial, lists); after != before {
				t.Errorf("Shift changed its input:\n%s", cmp.Diff(before, after))
			}
			checkLists(t, got)
		})
	}
}

// A lineKey is what pieces are counted by when they may move between fabrics.
type lineKey struct {
	At   plan.Pos
	Role string
	Cut  length.Size
}

func countLines(lists []List) map[lineKey]int {
	n := map[lineKey]int{}
	for _, l := range lists {
		for _, p := range l.Pieces {
			for _, u := range p.Uses {
				n[lineKey{u.At, u.Role, u.Cut}] += u.Count
			}
		}
	}
	return n
}

// randomQuilt is a plan of a few blocks of mixed units, some fabrics on the
// shelf or one-way.
func randomQuilt(r *rand.Rand) *plan.Plan {
	sources := []string{"dusk", "wick", "ember", "plum", "night", "night", "night"}
	pick := func() string { return sources[r.IntN(len(sources))] }
	sized := func() length.Size {
		return length.Size{W: in("1/4") * length.Length(2+r.IntN(40)), H: in("1/4") * length.Length(2+r.IntN(40))}
	}
	p := quilt(spare(r.IntN(3)*5), func(p *plan.Plan) {
		for _, f := range p.Fabrics {
			f.OneWay = r.IntN(4) == 0
			for range r.IntN(3) {
				f.Have = append(f.Have, plan.Cloth{Size: length.Size{W: in("20"), H: in("1") * length.Length(5+r.IntN(30))}})
			}
		}
	})
	for i := range 1 + r.IntN(3) {
		var pieces []*plan.Piece
		for range 1 + r.IntN(4) {
			piece := plan.Piece{Count: 1 + r.IntN(9)}
			switch finished := sized(); r.IntN(5) {
			case 0:
				piece.Unit, piece.Finished = plan.HalfSquare, length.Size{W: finished.W, H: finished.W}
				piece.Method = []plan.Method{plan.TwoAtATime, plan.FourAtATime, plan.EightAtATime}[r.IntN(3)]
			case 1:
				piece.Unit, piece.Finished = plan.Geese, length.Size{W: 2 * finished.H, H: finished.H}
			case 2:
				piece.Cut = sized()
			default:
				piece.Finished, piece.NoTurn = finished, r.IntN(3) == 0
			}
			pieces = append(pieces, line(piece, pick(), pick()))
		}
		block(string(rune('A'+i)), 1+r.IntN(12), pieces...)(p)
	}
	return p
}

// wanted is what a plan's lines ask for, straight from the lines.
func wanted(p *plan.Plan) map[lineKey]int {
	n := map[lineKey]int{}
	for _, b := range p.Blocks {
		for _, piece := range b.Pieces {
			units := piece.Count * b.Make
			r, ok := Recipe(p, piece)
			if !ok {
				r = trade.Recipe{Makes: 1, Parts: []trade.Part{{Size: piece.Cut, PerBatch: 1}}}
			}
			for _, part := range r.Parts {
				n[lineKey{piece.At, part.Role, part.Size}] += (units + r.Makes - 1) / r.Makes * part.PerBatch
			}
		}
	}
	return n
}

// TestConserved checks on random plans that each line gets exactly the pieces it
// asks for, that they stay as many when they are moved between fabrics, that
// mixes of fabrics to be bought are even to within one, and that moving ends.
func TestConserved(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		p := randomQuilt(r)
		lists, problems := Pieces(p)
		if problems.Faulty() {
			t.Fatalf("faults: %v", problems)
		}
		want := wanted(p)
		if diff := cmp.Diff(want, countLines(lists)); diff != "" {
			t.Fatalf("pieces by line (-want +got):\n%s", diff)
		}
		checkLists(t, lists)
		if !slices.ContainsFunc(p.Fabrics, func(f *plan.Fabric) bool { return len(f.Have) > 0 }) {
			checkEven(t, lists)
		}
		full := map[string]bool{}
		for round := 0; ; round++ {
			short := map[string]int{}
			for _, l := range lists {
				if len(l.Fabric.Have) > 0 {
					short[l.Pieces[r.IntN(len(l.Pieces))].ID] = 1 + r.IntN(200)
				}
			}
			moved, changed := Shift(p, laidOut(lists, short), full)
			if len(changed) == 0 {
				break
			}
			lists = moved
			if diff := cmp.Diff(want, countLines(lists)); diff != "" {
				t.Fatalf("pieces by line after moving (-want +got):\n%s", diff)
			}
			checkLists(t, lists)
			if round > 100 {
				t.Fatal("pieces are moved without end")
			}
		}
	}
}

// checkEven checks that the fabrics of "night" give as many pieces each, to
// within one.
func checkEven(t *testing.T, lists []List) {
	t.Helper()
	n := map[string]int{"plum": 0, "dusk": 0, "ember": 0}
	for _, l := range lists {
		for _, p := range l.Pieces {
			for _, u := range p.Uses {
				if u.Mix == "night" {
					n[l.Fabric.ID] += u.Count + u.Spares
				}
			}
		}
	}
	if most, least := max(n["plum"], n["dusk"], n["ember"]), min(n["plum"], n["dusk"], n["ember"]); most-least > 1 {
		t.Errorf("the mix is uneven: %v", n)
	}
}
