package cutting

import (
	"strings"
	"testing"

	"cutbinder/layout/length"
	"cutbinder/layout/plan"

	"github.com/google/go-cmp/cmp"
)

// joints is what a plan's uses are joined for, in order.
func joints(lists []List) (all []Joined) {
	for _, l := range lists {
		for _, p := range l.Pieces {
			for _, u := range p.Uses {
				if u.Joined != nil {
					all = append(all, *u.Joined)
				}
			}
		}
	}
	return all
}

func TestJoined(t *testing.T) {
	backing := func(seams plan.SeamDir) func(*plan.Plan) {
		return func(p *plan.Plan) {
			p.Backing = &plan.Backing{Source: on("wick"), Overhang: in("4"), Seams: seams}
		}
	}
	quiltSize := func(s string) func(*plan.Plan) { return func(p *plan.Plan) { p.Finished = size(s) } }
	border := func(width string) func(*plan.Plan) {
		return func(p *plan.Plan) {
			p.Borders = []*plan.Border{{Width: in(width), Source: on("dusk"), Join: true}}
		}
	}
	tests := []struct {
		name  string
		plan  *plan.Plan
		strip string
		need  []int
		want  []Joined
	}{
		// 4 sides from one run: 2 x 56 1/2 + 2 x 54 1/2 = 222; (222 - 5.5)/34.5 = 6.3
		{"a border is one run", quilt(border("5")), "40 x 5 1/2", []int{4, 3},
			[]Joined{{Size: size("5 1/2 x 56 1/2"), Count: 2, Loss: in("5 1/2"), Run: 1}, {Size: size("5 1/2 x 54 1/2"), Count: 2, Loss: in("5 1/2"), Run: 1}}},
		{"only what is too long is joined", quilt(quiltSize("44 x 60"), border("2 1/2")), "40 x 3", []int{3, 3},
			[]Joined{{Size: size("3 x 55 1/2"), Count: 2, Loss: in("3"), Run: 1}, {Size: size("3 x 44 1/2"), Count: 2, Loss: in("3"), Run: 1}}},
		{"wide strips are joined straight", quilt(quiltSize("90"), border("21")), "40 x 21 1/2", []int{3, 5},
			[]Joined{{Size: size("21 1/2 x 48 1/2"), Count: 2, Loss: in("1/2"), Run: 1}, {Size: size("21 1/2 x 90 1/2"), Count: 2, Loss: in("1/2"), Run: 1}}},
		{"straight binding", quilt(func(p *plan.Plan) {
			p.Binding = &plan.Binding{Source: on("dusk"), Strip: in("2 1/4"), Tail: in("10"), Straight: true}
		}), "40 x 2 1/4", []int{7}, []Joined{{Size: size("2 1/4 x 250"), Count: 1, Loss: in("1/2")}}},
		// 62 x 74 over all
		{"backing, the thriftier way", quilt(backing(plan.SeamsEither)), "40 x 62", []int{2}, []Joined{{Size: size("62 x 74"), Count: 1, Loss: in("1"), Halved: true, Seams: 2}}},
		{"backing, down", quilt(backing(plan.SeamsDown)), "40 x 74", []int{2}, []Joined{{Size: size("62 x 74"), Count: 1, Loss: in("1"), Halved: true, Down: true, Seams: 2}}},
		{"backing, across", quilt(backing(plan.SeamsAcross)), "40 x 62", []int{2}, []Joined{{Size: size("62 x 74"), Count: 1, Loss: in("1"), Halved: true, Seams: 2}}},
		{"backing of a one-way print", quilt(oneWay("wick"), backing(plan.SeamsEither)), "40 x 74", []int{2}, []Joined{{Size: size("62 x 74"), Count: 1, Loss: in("1"), Halved: true, Down: true, Seams: 2}}},
		{"backing of a square quilt", quilt(quiltSize("60"), backing(plan.SeamsEither)), "40 x 68", []int{2}, []Joined{{Size: size("68"), Count: 1, Loss: in("1"), Halved: true, Down: true, Seams: 2}}},
		{"backing in one width", quilt(quiltSize("30 x 40"), backing(plan.SeamsEither)), "40 x 48", []int{1}, []Joined{{Size: size("38 x 48"), Count: 1, Loss: in("1"), Down: true}}},
		// strips as long as a fat quarter is wide: (132 - 2.5)/18 = 7.2
		{"from fat quarters", quilt(have("dusk", "20 1/2 x 18", "20 1/2 x 18"), loose(line(plan.Piece{Cut: size("2 1/2 x 66"), Count: 2, Join: true}, "dusk"))),
			"20 1/2 x 2 1/2", []int{8}, []Joined{{Size: size("2 1/2 x 66"), Count: 2, Loss: in("2 1/2")}}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			lists, problems := Pieces(test.plan)
			if problems != nil {
				t.Fatal(problems)
			}
			piece := lists[0].Pieces[0]
			var need []int
			for _, u := range piece.Uses {
				need = append(need, u.Count)
			}
			if got := length.Imperial.FormatSize(piece.Size); got != test.strip || !cmp.Equal(need, test.need) {
				t.Errorf("got %v of %s, want %v of %s", need, got, test.need, test.strip)
			}
			if diff := cmp.Diff(test.want, joints(lists)); diff != "" {
				t.Errorf("joined (-want +got):\n%s", diff)
			}
			checkLists(t, lists)
		})
	}
}

// TestMetric derives a plan in centimetres.
func TestMetric(t *testing.T) {
	cm := func(s string) length.Length { return must(length.Parse(s, length.Metric)) }
	square := func(s string) length.Size { return length.Size{W: cm(s), H: cm(s)} }
	p := quilt(func(p *plan.Plan) {
		p.Units, p.Seam, p.CutStep = length.Metric, cm("0.75"), length.MM
		p.Finished = length.Size{W: cm("150"), H: cm("200")}
		for _, f := range p.Fabrics {
			f.Width = cm("102")
		}
		p.Binding = &plan.Binding{Source: on("ember"), Strip: cm("6.5"), Tail: cm("25")}
		p.Backing = &plan.Backing{Source: on("plum"), Overhang: cm("10")}
	}, block("A", 6,
		line(plan.Piece{Finished: square("10"), Count: 4}, "dusk"),
		line(plan.Piece{Unit: plan.HalfSquare, Finished: square("5"), Count: 8}, "dusk", "wick"),
		line(plan.Piece{Unit: plan.HalfSquare, Finished: square("5"), Count: 2, Trim: true}, "dusk", "wick"),
		line(plan.Piece{Unit: plan.Geese, Finished: length.Size{W: cm("10"), H: cm("5")}, Count: 2}, "dusk", "wick")))
	want := strings.Join([]string{
		"dusk-1 (3) 13.7 x 13.7: 3 A goose", // 10 + 3.62
		"dusk-2 (24) 11.5 x 11.5: 24 A",
		"dusk-3 (6) 8.1 x 8.1: 6 A",   // 5 + 2.56 + 0.5
		"dusk-4 (24) 7.6 x 7.6: 24 A", // 5 + 2.56
		"wick-1 (6) 8.1 x 8.1: 6 A",
		"wick-2 (36) 7.6 x 7.6: 24 A + 12 A sky",
		// (725 - 6.5)/95.5 = 7.5
		"ember-1 (8) 102 x 6.5 upright WOF late: 8 binding joined 1 of 65 mm x 7250 mm",
		// 170 wide: two of 220 give 2 x 99; 220 long: three of 170
		"plum-1 (2) 102 x 220 upright WOF: 2 backing joined 1 of 1700 mm x 2200 mm", ""}, "\n")
	lists, problems := Pieces(p)
	got := show(length.Metric, lists) + problems.Error()
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("pieces (-want +got):\n%s", diff)
	}
	checkLists(t, lists)
}

func TestStripSetOfPlan(t *testing.T) {
	piece := line(plan.Piece{Unit: plan.StripSet, Segment: in("10"), Strips: []plan.SetStrip{{Finished: in("2"), Source: on("dusk")}, {Finished: in("1"), Source: on("night")}}})
	tests := []struct {
		plan              *plan.Plan
		need              int
		wof               string
		perSet, sets, odd int
	}{
		{quilt(), 7, "40", 3, 3, 2},
		{quilt(width("plum", "30")), 7, "30", 2, 4, 1},
		{quilt(width("dusk", "42"), width("plum", "43"), width("ember", "42")), 8, "42", 4, 2, 0},
	}
	for _, test := range tests {
		set, wof := StripSet(test.plan, piece, test.need)
		if wof != in(test.wof) || set.PerSet != test.perSet || set.Sets != test.sets || set.Spare != test.odd {
			t.Errorf("%d segments: got %+v from %v", test.need, set, wof)
		}
	}
}
