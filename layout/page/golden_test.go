package page

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"cutbinder/layout/length"
)

// update rewrites the golden files: go test ./layout/page -update
var update = flag.Bool("update", false, "rewrite the golden files")

// golden compares a dump with testdata/pages/NAME.txt at the tree's top.
func golden(t *testing.T, name, got string) {
	t.Helper()
	file := filepath.Join("..", "..", "testdata", "pages", "engine-"+name+".txt")
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(got, "\n")); d != "" {
		t.Errorf("%s differs; if that is meant, rewrite it with -update (-want +got)\n%s", file, d)
	}
}

// TestGoldenSheet dumps a sheet of every block.
func TestGoldenSheet(t *testing.T) {
	s := testStyle()
	b := NewBook(Setup{
		Paper: Letter, Style: s, Title: "Lantern Row", Lang: "en", Head: []string{"Lantern Row · version 2"},
		Foot: []string{"K7Q"}, Check: "must be 1 in",
	})
	b.Add(Section{Head: "Fabric 1 of 2", Name: "dusk", Bookmark: "Dusk stripe", Level: 1, Thumb: "1", Blocks: []Block{
		Para{Text: s.Title.Say("Dusk stripe")},
		Heading{Text: "Cut", Aside: "in this order"},
		List{Items: []ListItem{
			{Label: s.Bold.Say("1"), Text: Rich{s.Body.Span("Cut (3) strips 3½ in × width, then "), s.Bold.Span("open the fold"), s.Body.Span(" and sub-cut each at 3 15⁄16 in.")}},
			{W: s.Tick, Draw: func(p *Pen, b Box) { p.Check(b, s.Tick, "check") }, Text: s.Body.Say("Measure one.")},
		}},
		Table{
			Columns: []Column{{}, {Align: Figures}, {Share: 1}}, Rules: Lined,
			Head: []Row{TextRow(s.Label, "", "inches", "bag")},
			Rows: []Row{
				{Mark: "size 1", Cells: []Cell{TickCell(s, "tick 1"), {Text: s.Body.Say("3½")}, {Text: s.Body.Say("A")}}},
				{Mark: "size 2", Cells: []Cell{TickCell(s, "tick 2"), {Text: s.Body.Say("12")}, {Text: s.Body.Say("B")}}},
			},
		},
		Tally{N: 12, Spare: 1, Mark: "tally dusk-1"},
		Framed{Blocks: []Block{WriteOn{After: "wide", Mark: "fill in"}}, Mark: "frame"},
		Columns{N: 2, Gutter: s.Break, Blocks: []Block{Para{Text: s.Small.Say("left")}, Para{Text: s.Small.Say("right")}}},
	}})
	golden(t, "sheet", b.Document().String())
}

// TestGoldenDrawing dumps a drawing of cloth, mirrored and cut at its window.
func TestGoldenDrawing(t *testing.T) {
	p := testPage(func(p *Pen) {
		s := p.Style
		c := &Canvas{Pen: p, At: Point{in, 2 * in}, Scale: 8, Window: Box{0, 0, 20 * in, 8 * in}, Mirror: true, Avoid: []length.Length{10 * in}}
		c.Rect(Box{0, 0, 7 * in / 2, 7 * in / 2}, Mist, s.Hair, "piece a #1")
		c.Words(Box{0, 0, 7 * in / 2, 7 * in / 2}, s.Measure, "piece a #1", "3½ × 3½", "3½")
		c.Rect(Box{8 * in, 0, 4 * in, 12 * in}, Sand, s.Hair, "piece b #1")
		left, _ := c.Hatch(Box{12 * in, 0, 8 * in, 8 * in}, Leftover, s.Hair, "leftover")
		c.Line(Point{10 * in, 0}, Point{10 * in, 20 * in}, s.Hair.Broken(Dashed), "fold")
		p.Ground(left, s.Measure, "leftover", "keep: 8 × 8")
		c.Ticks(OnTop, 2*in, 5, "scale", func(at length.Length) string { return mm(at) })
		c.Measure(OnLeft, 0, 7*in/2, s.Gap, "measure", "3½")
		c.ScaleBar(Point{in, 4 * in}, 8*in, "8 in of cloth")
		p.Disc(Point{in / 2, 2 * in}, "cut 2", "2")
		p.Snippet(Box{5 * in, 2 * in, in, in}, "tape a snippet here", "snippet")
	})
	golden(t, "drawing", p.String())
}

// TestGoldenLabel dumps a label.
func TestGoldenLabel(t *testing.T) {
	p := testPage(func(p *Pen) {
		b := Box{in, in, 21 * in / 8, in}
		p.Frame(b, NoInk, p.Style.Hair.With(Pale).Broken(Dashed), "label 7")
		p.Badge(Box{in + in/12, in + in/12, in / 3, in / 3}, p.Style.Title, "bag number", "17")
		p.Code(Box{5 * in / 2, in + in/12, in, 5 * in / 6}, 3, []bool{true, false, true, true, true, true, false, false, true}, 4, "code")
		p.Text(Box{3 * in / 2, in + in/12, in, in / 6}, p.Style.Lead, Left, "block", "A Lantern of a long name", "A Lantern of…")
		p.Ring(Point{2 * in, 7 * in / 4}, "key", "C")
		p.Link(b, "bag 7")
	})
	golden(t, "label", p.String())
}
