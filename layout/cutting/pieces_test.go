package cutting

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"cutbinder/layout/length"
	"cutbinder/layout/plan"
	"cutbinder/layout/trade"

	"github.com/google/go-cmp/cmp"
)

// in is a length in inches written as makers do.
func in(s string) length.Length { return must(length.Parse(s, length.Imperial)) }

// size is a size in inches.
func size(s string) length.Size { return must(length.ParseSize(s, length.Imperial)) }

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// quilt is a plan in inches of some fabrics 40 in wide and the mix "night" of
// plum, dusk and ember, made up by parts.
func quilt(parts ...func(*plan.Plan)) *plan.Plan {
	p := &plan.Plan{Seam: in("1/4"), CutStep: in("1/8"), Finished: size("54 x 66")}
	for _, id := range []string{"dusk", "wick", "ember", "plum"} {
		p.Fabrics = append(p.Fabrics, &plan.Fabric{ID: id, Name: id, Width: in("40")})
	}
	p.Mixes = []*plan.Mix{{ID: "night", Fabrics: []string{"plum", "dusk", "ember"}}}
	p.Allow.Squaring = in("1/2")
	for _, part := range parts {
		part(p)
	}
	return p
}

var lineNumber int

// line is a line of pieces; sources are fabrics, or the mix "night".
func line(set plan.Piece, sources ...string) *plan.Piece {
	lineNumber++
	set.At = plan.Pos{File: "plan", Line: lineNumber, Col: 1}
	for _, id := range sources {
		set.Sources = append(set.Sources, plan.Source{ID: id, Mix: id == "night"})
	}
	return &set
}

func block(id string, make int, pieces ...*plan.Piece) func(*plan.Plan) {
	return func(p *plan.Plan) { p.Blocks = append(p.Blocks, &plan.Block{ID: id, Make: make, Pieces: pieces}) }
}

func loose(pieces ...*plan.Piece) func(*plan.Plan) {
	return func(p *plan.Plan) { p.Pieces = append(p.Pieces, pieces...) }
}

func spare(percent int) func(*plan.Plan) {
	return func(p *plan.Plan) { p.Allow.Spare = plan.Percent(percent * 100) }
}

// oneWay makes fabrics directional.
func oneWay(ids ...string) func(*plan.Plan) {
	return func(p *plan.Plan) {
		for _, f := range p.Fabrics {
			f.OneWay = f.OneWay || slices.Contains(ids, f.ID)
		}
	}
}

// width sets a fabric's usable width.
func width(id, w string) func(*plan.Plan) {
	return func(p *plan.Plan) {
		for _, f := range p.Fabrics {
			if f.ID == id {
				f.Width = in(w)
			}
		}
	}
}

// have puts cloth on the shelf.
func have(id string, sizes ...string) func(*plan.Plan) {
	return func(p *plan.Plan) {
		for _, f := range p.Fabrics {
			for _, s := range sizes {
				if f.ID == id {
					f.Have = append(f.Have, plan.Cloth{Size: size(s), Name: s})
				}
			}
		}
	}
}

// on is a source for finishing parts.
func on(id string) plan.Source { return plan.Source{ID: id, Mix: id == "night"} }

// show prints lists, a piece a line: its id, need, size and uses.
func show(u length.System, lists []List) string {
	var out strings.Builder
	for _, l := range lists {
		for _, p := range l.Pieces {
			fmt.Fprintf(&out, "%s (%d) %s%s:", p.ID, p.Need, u.FormatSize(p.Size), flags(p))
			for i, u := range p.Uses {
				if i > 0 {
					out.WriteString(" +")
				}
				out.WriteString(showUse(u))
			}
			out.WriteString("\n")
		}
	}
	return out.String()
}

func flags(p *Piece) (s string) {
	if !p.MayTurn {
		s += " upright"
	}
	if p.WOF {
		s += " WOF"
	}
	if p.Late {
		s += " late"
	}
	return s
}

func showUse(u Use) string {
	s := fmt.Sprintf(" %d", u.Count)
	if u.Spares > 0 {
		s += fmt.Sprintf("+%d", u.Spares)
	}
	for _, word := range []string{u.Block, u.For, u.Role, u.Mix} {
		if word != "" {
			s += " " + word
		}
	}
	if u.Into != trade.Whole {
		s += fmt.Sprintf(" into %d", u.Into.Triangles())
	}
	if j := u.Joined; j != nil {
		s += fmt.Sprintf(" joined %d of %s", j.Count, j.Size)
	}
	if u.Turned && u.Joined != nil {
		s += " turned"
	}
	return s
}

func TestPieces(t *testing.T) {
	tests := []struct {
		name string
		plan *plan.Plan
		want string
	}{
		{"squares of a block", quilt(block("A", 12, line(plan.Piece{Finished: size("3"), Count: 4}, "dusk"))),
			"dusk-1 (48) 3 1/2 x 3 1/2: 48 A"},
		{"a cut size is taken as it is", quilt(block("A", 12, line(plan.Piece{Cut: size("3 1/2 x 6 1/2"), Count: 2}, "wick"))),
			"wick-1 (24) 3 1/2 x 6 1/2: 24 A"},
		{"a size written the other way is the same size", quilt(loose(line(plan.Piece{Cut: size("6 x 3"), Count: 2, For: "a"}, "wick"), line(plan.Piece{Cut: size("3 x 6"), Count: 5, For: "b"}, "wick"))),
			"wick-1 (7) 3 x 6: 2 a + 5 b"},
		{"not so on a one-way print", quilt(oneWay("wick"), loose(line(plan.Piece{Cut: size("6 x 3"), Count: 2, For: "a"}, "wick"), line(plan.Piece{Cut: size("3 x 6"), Count: 5, For: "b"}, "wick"))),
			"wick-1 (2) 6 x 3 upright: 2 a\nwick-2 (5) 3 x 6 upright: 5 b"},
		{"nor where the line says so", quilt(loose(line(plan.Piece{Cut: size("6 x 3"), Count: 2, For: "a", NoTurn: true}, "wick"), line(plan.Piece{Cut: size("3"), Count: 5, For: "b", NoTurn: true}, "wick"))),
			"wick-1 (2) 6 x 3 upright: 2 a\nwick-2 (5) 3 x 3: 5 b"},
		{"a pair of squares makes two half-squares", quilt(block("A", 12, line(plan.Piece{Unit: plan.HalfSquare, Finished: size("3"), Count: 4}, "wick", "dusk"))),
			"dusk-1 (24) 3 7/8 x 3 7/8: 24 A\nwick-1 (24) 3 7/8 x 3 7/8: 24 A"},
		{"eight at a time", quilt(block("A", 5, line(plan.Piece{Unit: plan.HalfSquare, Method: plan.EightAtATime, Finished: size("2"), Count: 5}, "wick", "dusk"))),
			"dusk-1 (4) 5 3/4 x 5 3/4: 4 A\nwick-1 (4) 5 3/4 x 5 3/4: 4 A"},
		{"four at a time, trimmed two at a time", quilt(block("A", 1,
			line(plan.Piece{Unit: plan.HalfSquare, Method: plan.FourAtATime, Finished: size("2"), Count: 5}, "wick", "dusk"),
			line(plan.Piece{Unit: plan.HalfSquare, Trim: true, Finished: size("2"), Count: 3}, "wick", "dusk"))),
			"dusk-1 (2) 4 1/8 x 4 1/8: 2 A\ndusk-2 (2) 3 x 3: 2 A\nwick-1 (2) 4 1/8 x 4 1/8: 2 A\nwick-2 (2) 3 x 3: 2 A"},
		{"geese four at a time", quilt(block("A", 3, line(plan.Piece{Unit: plan.Geese, Finished: size("4 x 2"), Count: 3}, "dusk", "wick"))),
			"dusk-1 (3) 5 1/4 x 5 1/4: 3 A goose\nwick-1 (12) 2 7/8 x 2 7/8: 12 A sky"},
		{"geese by stitch and flip, one-way", quilt(oneWay("dusk"), block("A", 3, line(plan.Piece{Unit: plan.Geese, Method: plan.StitchAndFlip, Finished: size("4 x 2"), Count: 3}, "dusk", "wick"))),
			"dusk-1 (9) 4 1/2 x 2 1/2 upright: 9 A goose\nwick-1 (18) 2 1/2 x 2 1/2: 18 A sky"},
		{"half-squares and a square in a square by flipping", quilt(block("A", 2,
			line(plan.Piece{Unit: plan.HalfSquare, Method: plan.StitchAndFlip, Finished: size("3"), Count: 3}, "dusk", "wick"),
			line(plan.Piece{Unit: plan.SquareInSquare, Method: plan.StitchAndFlip, Finished: size("4"), Count: 1}, "dusk", "wick"))),
			"dusk-1 (2) 4 1/2 x 4 1/2: 2 A centre\ndusk-2 (6) 3 1/2 x 3 1/2: 6 A\nwick-1 (6) 3 1/2 x 3 1/2: 6 A\nwick-2 (8) 2 1/2 x 2 1/2: 8 A corner"},
		{"one source for two roles", quilt(block("A", 2, line(plan.Piece{Unit: plan.SquareInSquare, Finished: size("6"), Count: 1}, "dusk"))),
			"dusk-1 (2) 4 3/4 x 4 3/4: 2 A centre\ndusk-2 (4) 3 7/8 x 3 7/8: 4 A corner into 2"},
		{"nothing of nothing", quilt(block("A", 0, line(plan.Piece{Cut: size("3"), Count: 4}, "dusk"))), ""},
		{"hourglass of three fabrics", quilt(block("A", 1, line(plan.Piece{Unit: plan.Hourglass, Finished: size("4"), Count: 5}, "dusk", "wick", "plum"))),
			"dusk-1 (4) 5 1/4 x 5 1/4: 4 A\nwick-1 (2) 5 1/4 x 5 1/4: 2 A\nplum-1 (2) 5 1/4 x 5 1/4: 2 A"},
		{"hourglass and half-square of one fabric twice", quilt(block("A", 1, line(plan.Piece{Unit: plan.Hourglass, Finished: size("4"), Count: 5}, "dusk", "dusk"))),
			"dusk-1 (6) 5 1/4 x 5 1/4: 6 A"},
		{"square in a square", quilt(block("A", 7, line(plan.Piece{Unit: plan.SquareInSquare, Finished: size("6"), Count: 1}, "dusk", "wick"))),
			"dusk-1 (7) 4 3/4 x 4 3/4: 7 A centre\nwick-1 (14) 3 7/8 x 3 7/8: 14 A corner into 2"},
		{"quarter-squares", quilt(block("A", 3, line(plan.Piece{Unit: plan.QuarterSquare, Finished: size("3"), Count: 3}, "wick"))),
			"wick-1 (3) 4 1/4 x 4 1/4: 3 A into 4"},
		{"setting triangles by the line", quilt(loose(line(plan.Piece{Unit: plan.SideSetting, Finished: size("12"), Count: 14, For: "sides"}, "wick"), line(plan.Piece{Unit: plan.CornerSetting, Finished: size("12"), Count: 4, For: "corners"}, "wick"))),
			"wick-1 (4) 18 1/4 x 18 1/4: 4 sides into 4\nwick-2 (2) 9 3/8 x 9 3/8: 2 corners into 2"},
		{"strips across the width, either way round", quilt(width("dusk", "41 1/2"), loose(
			line(plan.Piece{Cut: length.Size{W: length.WOF, H: in("2 1/2")}, Count: 3, For: "a"}, "dusk"),
			line(plan.Piece{Cut: length.Size{W: in("2 1/2"), H: length.WOF}, Count: 2, For: "b"}, "dusk"),
			line(plan.Piece{Finished: length.Size{W: length.WOF, H: in("2")}, Count: 1, For: "c"}, "dusk"),
			line(plan.Piece{Unit: plan.Strip, Finished: length.Size{W: length.WOF, H: in("2")}, Count: 4, For: "d"}, "dusk"),
			line(plan.Piece{Unit: plan.Strip, Cut: size("2 1/2"), Count: 5, For: "e"}, "dusk"))),
			"dusk-1 (15) 41 1/2 x 2 1/2 upright WOF: 3 a + 2 b + 1 c + 4 d + 5 e"},
		{"a strip set", quilt(width("wick", "42"), block("A", 20, line(plan.Piece{Unit: plan.StripSet, Segment: in("10"), Count: 1,
			Strips: []plan.SetStrip{{Finished: in("2"), Source: on("dusk")}, {Finished: in("1"), Source: on("wick")}, {Finished: in("2"), Source: on("dusk")}}}))),
			"dusk-1 (14) 40 x 2 1/2 upright WOF: 14 A\nwick-1 (7) 42 x 1 1/2 upright WOF: 7 A"},
		// 2 x 66 in from 40 in strips 2 1/2 wide: (132 - 2.5) / 37.5 = 3.45.
		{"joined from strips", quilt(spare(5), loose(line(plan.Piece{Cut: size("2 1/2 x 66"), Count: 2, For: "side borders", Join: true}, "dusk"))),
			"dusk-1 (4) 40 x 2 1/2 upright WOF: 4 side borders joined 2 of 2 1/2 in x 66 in"},
		{"not joined where it fits", quilt(loose(line(plan.Piece{Cut: size("2 1/2 x 36"), Count: 2, For: "x", Join: true}, "dusk"))),
			"dusk-1 (2) 2 1/2 x 36: 2 x"},
		{"not to be turned, along the cloth: no need to join", quilt(loose(line(plan.Piece{Cut: size("2 1/2 x 66"), Count: 2, For: "x", Join: true, NoTurn: true}, "dusk"))),
			"dusk-1 (2) 2 1/2 x 66 upright: 2 x"},
		{"one-way, joined: the print lies", quilt(oneWay("dusk"), loose(line(plan.Piece{Cut: size("2 1/2 x 66"), Count: 2, For: "x", Join: true}, "dusk"))),
			"dusk-1 (4) 40 x 2 1/2 upright WOF: 4 x joined 2 of 2 1/2 in x 66 in turned"},
		{"one-way, across: joined", quilt(oneWay("dusk"), loose(line(plan.Piece{Cut: size("66 x 2 1/2"), Count: 2, For: "x", Join: true}, "dusk"))),
			"dusk-1 (4) 40 x 2 1/2 upright WOF: 4 x joined 2 of 2 1/2 in x 66 in"},
		{"along the cloth without a join", quilt(loose(line(plan.Piece{Cut: size("2 1/2 x 66"), Count: 2, For: "x"}, "dusk"))),
			"dusk-1 (2) 2 1/2 x 66: 2 x"},
		{"spares of a size, over its uses", quilt(spare(5), block("A", 12, line(plan.Piece{Finished: size("3"), Count: 4}, "dusk")), block("B", 1, line(plan.Piece{Finished: size("3"), Count: 3}, "dusk"))),
			"dusk-1 (54) 3 1/2 x 3 1/2: 48+3 A + 3 B"},
		{"spares go to the neediest", quilt(spare(10), block("B", 1, line(plan.Piece{Finished: size("3"), Count: 10}, "dusk")), block("A", 1, line(plan.Piece{Finished: size("3"), Count: 20}, "dusk"))),
			"dusk-1 (33) 3 1/2 x 3 1/2: 10+1 B + 20+2 A"},
		{"no spares of strips and strip sets", quilt(spare(10), loose(
			line(plan.Piece{Unit: plan.Strip, Cut: size("2 1/2"), Count: 5, For: "e"}, "dusk"),
			line(plan.Piece{Unit: plan.StripSet, Segment: in("10"), Count: 20, For: "s", Strips: []plan.SetStrip{{Finished: in("1"), Source: on("wick")}}}))),
			"dusk-1 (5) 40 x 2 1/2 upright WOF: 5 e\nwick-1 (7) 40 x 1 1/2 upright WOF: 7 s"},
		{"no spares of borders", quilt(spare(10), func(p *plan.Plan) {
			p.Borders = []*plan.Border{{Width: in("1"), Source: on("wick")}}
		}), "wick-1 (2) 1 1/2 x 64 1/2: 2 border 1 sides\nwick-2 (2) 1 1/2 x 54 1/2: 2 border 1 top and bottom"},
		{"setting on point", quilt(func(p *plan.Plan) {
			wick := on("wick")
			p.Setting = &plan.Setting{Across: 5, Down: 6, Block: in("12"), Sides: on("dusk"), Alternate: &wick, Generous: in("1/4")}
		}), "dusk-1 (5) 18 1/2 x 18 1/2: 5 side setting triangles into 4\ndusk-2 (2) 9 5/8 x 9 5/8: 2 corner setting triangles into 2\nwick-1 (20) 12 1/2 x 12 1/2: 20 setting squares"},
		{"sashing with a frame and cornerstones", quilt(func(p *plan.Plan) {
			wick := on("wick")
			p.Sashing = &plan.Sashing{Across: 4, Down: 5, Block: size("12"), Width: in("2"), Frame: true, Source: on("dusk"), Cornerstones: &wick}
		}), "dusk-1 (49) 2 1/2 x 12 1/2: 49 sashing\nwick-1 (30) 2 1/2 x 2 1/2: 30 cornerstones"},
		{"sashing of a one-way print runs two ways", quilt(oneWay("dusk"), func(p *plan.Plan) {
			p.Sashing = &plan.Sashing{Across: 4, Down: 5, Block: size("8"), Width: in("2"), Source: on("dusk")}
		}), "dusk-1 (4) 38 1/2 x 2 1/2 upright: 4 sashing\ndusk-2 (15) 2 1/2 x 8 1/2 upright: 15 sashing"},
		{"butted borders, inner one first", quilt(func(p *plan.Plan) {
			p.Borders = []*plan.Border{{Width: in("1"), Source: on("wick")}, {Width: in("5"), Source: on("dusk"), Join: true}}
		}), "dusk-1 (7) 40 x 5 1/2 upright WOF: 4 border 2 sides joined 2 of 5 1/2 in x 56 1/2 in + 3 border 2 top and bottom joined 2 of 5 1/2 in x 54 1/2 in\nwick-1 (2) 1 1/2 x 54 1/2: 2 border 1 sides\nwick-2 (2) 1 1/2 x 44 1/2: 2 border 1 top and bottom"},
		{"mitred borders", quilt(func(p *plan.Plan) {
			p.Borders = []*plan.Border{{Width: in("5"), Source: on("dusk"), Mitred: true, Around: size("44 x 56"), For: "outer"}}
		}), "dusk-1 (2) 5 1/2 x 67 1/4: 2 outer sides\ndusk-2 (2) 5 1/2 x 55 1/4: 2 outer top and bottom"},
		// (240 + 10 - 2.5) / 37.5 = 6.6
		{"binding waits", quilt(spare(10), loose(line(plan.Piece{Cut: length.Size{W: length.WOF, H: in("2 1/2")}, Count: 3, For: "a"}, "dusk")), func(p *plan.Plan) {
			p.Binding = &plan.Binding{Source: on("dusk"), Strip: in("2 1/2"), Tail: in("10")}
		}), "dusk-1 (4) 40 x 2 1/2 upright WOF: 3+1 a\ndusk-2 (7) 40 x 2 1/2 upright WOF late: 7 binding joined 1 of 2 1/2 in x 250 in"},
		// 1/2 + sqrt(1/4 + 250 x 2 1/2) = 25.505
		{"bias binding", quilt(func(p *plan.Plan) {
			p.Binding = &plan.Binding{Source: on("dusk"), Strip: in("2 1/2"), Tail: in("10"), Bias: true}
		}), "dusk-1 (1) 25 5/8 x 25 5/8 late: 1 binding joined 1 of 2 1/2 in x 250 in"},
		// 62 x 74: two of 74 down the quilt, or two of 62 across it.
		{"backing with its seam across", quilt(func(p *plan.Plan) { p.Backing = &plan.Backing{Source: on("wick"), Overhang: in("4")} }),
			"wick-1 (2) 40 x 62 upright WOF: 2 backing joined 1 of 62 in x 74 in"},
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

// checkLists checks what holds for all lists: needs, sums, names and order.
func checkLists(t *testing.T, lists []List) {
	t.Helper()
	for _, l := range lists {
		for i, p := range l.Pieces {
			need := 0
			for _, u := range p.Uses {
				need += u.Count + u.Spares
				checkSum(t, p, u)
			}
			if need != p.Need || need == 0 {
				t.Errorf("%s: need is %d, its uses come to %d", p.ID, p.Need, need)
			}
			if i > 0 && bySize(l.Pieces[i-1], p) > 0 {
				t.Errorf("%s comes after a smaller piece", p.ID)
			}
		}
	}
}

// checkSum checks that a use's sum comes to the piece's sides.
func checkSum(t *testing.T, p *Piece, u Use) {
	t.Helper()
	if got := u.Sum.Total(); got != p.Size.W {
		t.Errorf("%s: the sum comes to %v, the width is %v", p.ID, got, p.Size.W)
	}
	along := u.Sum
	if along.Along != nil {
		along = *along.Along
	}
	if got := along.Total(); got != p.Size.H && p.Size.W != p.Size.H {
		t.Errorf("%s: the sum comes to %v, the height is %v", p.ID, got, p.Size.H)
	}
}
