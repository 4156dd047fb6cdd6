package pdf_test

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"cutbinder/fonts"
	"cutbinder/layout/length"
	"cutbinder/layout/page"
	"cutbinder/layout/pdf"
)

// demo, given a folder, keeps the demonstration documents for looking at:
// go test ./layout/pdf -run Demo -demo /tmp
var demo = flag.String("demo", "", "write the demonstration documents to this folder")

// TestDemo makes a document with something of everything on both papers, in
// usual and in large print, and finds no fault with its pages.
func TestDemo(t *testing.T) {
	tests := []struct {
		name  string
		paper page.Paper
		opts  []page.Option
	}{
		{"letter", page.Letter, nil},
		{"a4", page.A4, nil},
		{"letter-large", page.Letter, []page.Option{page.Large}},
		{"a4-large", page.A4, []page.Option{page.Large, page.OneColor}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			doc := demoBook(tt.paper, tt.opts...).Document()
			for _, f := range page.Check(doc.Pages) {
				t.Error(f)
			}
			var buf bytes.Buffer
			if err := pdf.Write(&buf, doc); err != nil {
				t.Fatal(err)
			}
			if *demo != "" {
				if err := os.WriteFile(filepath.Join(*demo, tt.name+".pdf"), buf.Bytes(), 0o644); err != nil {
					t.Fatal(err)
				}
			}
		})
	}
}

// demoBook is a book with something of everything: contents with page
// references, a fabric sheet with a drawing to scale, a long table, long words,
// columns, labels.
func demoBook(paper page.Paper, opts ...page.Option) *page.Book {
	s := page.NewStyle(fonts.Default(), opts...)
	b := page.NewBook(page.Setup{
		Paper: paper, Style: s, TwoSided: true,
		Title: "Lantern Row", Author: "Example Workshop", Lang: "en",
		Head:   []string{"Lantern Row · version 2", "Lantern Row"},
		Foot:   []string{"K7Q · cutbinder"},
		PageOf: func(n, of int) string { return fmt.Sprintf("page %d of %d", n, of) },
		Check:  "must be 1 in",
	})
	b.Add(demoContents(s))
	b.Add(demoFabric(s, b.Body().W))
	b.Add(demoTable(s))
	b.Add(demoWords(s))
	b.Add(demoLabels())
	return b
}

func demoContents(s *page.Style) page.Section {
	build := func(at *page.Refs) []page.Block {
		row := func(title, name string) page.Row {
			return page.RichRow(s.Body.Say(title), s.Body.Say(at.Page(name)))
		}
		return []page.Block{
			page.Para{Text: s.Title.Say("Lantern Row")},
			page.Para{Text: s.Help.Say("A quilt of nine fabrics, 60 × 72½ in finished")},
			page.Heading{Text: "Contents", Aside: "page"},
			page.Table{
				Columns: []page.Column{{Share: 1}, {Align: page.Right}}, Rules: page.Lined,
				Rows: []page.Row{row("Dusk stripe", "dusk"), row("Every size", "sizes"), row("Words", "words"), row("Labels", "labels"), row("Nothing", "nothing")},
			},
			page.Heading{Text: "Check the print first"},
			page.Drawing{H: length.Inch / 2, Draw: func(p *page.Pen, b page.Box) {
				p.Ruler(page.Box{X: b.X, Y: b.Y, W: 4 * length.Inch, H: b.H}, 4*length.Inch, "", "ruler 4 in")
			}},
			page.Drawing{H: length.Inch / 2, Draw: func(p *page.Pen, b page.Box) {
				p.Ruler(page.Box{X: b.X, Y: b.Y, W: 10 * length.CM, H: b.H}, 10*length.CM, "", "ruler 10 cm")
			}},
			page.Drawing{H: length.Inch + s.Gap, Draw: func(p *page.Pen, b page.Box) {
				p.Rect(page.Box{X: b.X, Y: b.Y, W: length.Inch, H: length.Inch}, page.NoInk, s.Rule, "square 1 in")
			}},
		}
	}
	return page.Section{Head: "Lantern Row", Name: "cover", Bookmark: "Cover", Build: build}
}

func demoFabric(s *page.Style, w length.Length) page.Section {
	top := page.Table{
		Columns: []page.Column{{Share: 1}, {Width: 5 * length.Inch / 4}}, Pad: page.NoPad,
		Rows: []page.Row{{Cells: []page.Cell{
			{Sit: page.Top, Blocks: []page.Block{
				page.Para{Text: s.Title.Say("Dusk stripe")},
				page.Para{Text: s.Body.Say("Have: half yard · one-way print: stripes run along the length, do not turn pieces")},
				page.Gap{H: s.Space},
				demoMeasured(s),
			}},
			{Sit: page.Top, H: 5 * length.Inch / 4, Draw: func(p *page.Pen, b page.Box) {
				b.H = min(b.H, b.W)
				p.Snippet(b, "tape a snippet here", "snippet")
			}},
		}}},
	}
	steps := page.List{Center: true, Items: []page.ListItem{
		{Label: s.Bold.Say("1"), Text: s.Body.Say("Fold selvage to selvage. Straighten the left-hand end: take off no more than ½ in.")},
		{Label: s.Bold.Say("2–4"), Text: s.Body.Say("Cut (3) strips 3½ in × width. Open the first one and look at the fold: a straight strip, not a V. Stack two strips, selvages off, sub-cut at 3½: five times through both layers, then open the fold for the last one. Each strip gives (11) squares.")},
		{Label: s.Bold.Say("5"), Text: s.Body.Say("Cut (1) strip 4¾ in. Open it. From the left: (6) squares 4¾; the rest of the strip, 13 × 4¾, into (2) rows of 2¼; each row gives (6) pieces 2 × 2¼.")},
		{W: s.Tick, Draw: func(p *page.Pen, b page.Box) { p.Check(b, s.Tick, "check") }, Text: s.Body.Say("Measure one piece of each size before you cut the rest: 3 15⁄16, 7⁄32, 1⅓.")},
	}}
	return page.Section{
		Head: "Fabric 3 of 9", Name: "dusk", Bookmark: "Dusk stripe", Level: 1, Thumb: "3", RightHand: true,
		Blocks: []page.Block{
			top,
			page.Heading{Text: "Strips, to scale 1:8", Aside: "selvages left and right · fold in the middle"},
			demoDrawing(s, w),
			page.Heading{Text: "Cut in this order"},
			steps,
			page.Heading{Text: "Tally", Aside: "one box a piece · a number after every ten"},
			demoTally(s),
			page.Para{Text: s.Small.Say("Dotted box: a spare. Proved: these pieces can’t come from less than 15¼ in of this cloth; a shop sells ½ yd either way.")},
		},
	}
}

func demoMeasured(s *page.Style) page.Block {
	cell := func(r page.Rich) page.Cell { return page.Cell{Text: r} }
	line := func(after string) page.Cell {
		return page.Cell{Blocks: []page.Block{page.WriteOn{After: after, Mark: "fill in"}}}
	}
	return page.Framed{Mark: "measured", Blocks: []page.Block{page.Table{
		Columns: []page.Column{{}, {}, {Share: 1}, {Share: 1}}, Pad: page.NoPad,
		Rows: []page.Row{
			page.RichRow(s.Label.Say("must measure at least"), nil, s.Label.Say("I measured"), nil),
			{Cells: []page.Cell{cell(s.Bold.Say("41½ in\u00a0wide")), cell(s.Bold.Say("15¼ in\u00a0long")), line("wide"), line("long")}},
		},
	}}}
}

func demoDrawing(s *page.Style, w length.Length) page.Block {
	const in = length.Inch
	cloth := page.Box{W: 83 * in / 2, H: 18 * in}
	room := w - 2*s.DiscSize() - in/2
	n := page.PickScale(cloth.W, room)
	c := page.Canvas{Scale: n, Window: cloth, Avoid: []length.Length{cloth.W / 2}}
	return page.Drawing{H: c.Paper().H + 3*s.Label.Lead, Draw: func(p *page.Pen, b page.Box) {
		c := c
		c.Pen, c.At = p, page.Point{X: b.X + s.DiscSize(), Y: b.Y + s.Label.Lead + s.Gap}
		y := length.Length(0)
		for row := range 3 {
			for i := range length.Length(11) {
				piece := page.Box{X: i * 7 * in / 2, Y: y, W: 7 * in / 2, H: 7 * in / 2}
				mark := fmt.Sprintf("piece dusk-1 #%d", row*11+int(i)+1)
				c.Rect(piece, s.Tints[0], s.Hair, mark)
				c.Words(piece, s.Measure, mark, "3½ × 3½", "3½")
			}
			c.Hatch(page.Box{X: 77 * in / 2, Y: y, W: 3 * in, H: 7 * in / 2}, page.Waste, s.Hair, "waste")
			y += 7 * in / 2
			p.Disc(page.Point{X: b.X + s.DiscSize()/2 - s.Gap/2, Y: c.Y(y)}, "cut", fmt.Sprint(row+2))
			c.Measure(page.OnRight, y-7*in/2, y, s.Gap, "measure", "3½")
		}
		for i := range length.Length(6) {
			piece := page.Box{X: i * 19 * in / 4, Y: y, W: 19 * in / 4, H: 19 * in / 4}
			mark := fmt.Sprintf("piece dusk-2 #%d", i+1)
			c.Rect(piece, s.Tints[1], s.Hair, mark)
			c.Words(piece, s.Measure, mark, "4¾")
		}
		c.Hatch(page.Box{X: 57 * in / 2, Y: y, W: 13 * in, H: 19 * in / 4}, page.Trimmed, s.Hair, "trimmed")
		c.Measure(page.OnRight, y, y+19*in/4, s.Gap, "measure", "4¾")
		y += 19 * in / 4
		p.Disc(page.Point{X: b.X + s.DiscSize()/2 - s.Gap/2, Y: c.Y(y)}, "cut", "5")
		keep := page.Box{Y: y, W: cloth.W, H: cloth.H - y}
		c.Hatch(keep, page.Leftover, s.Hair, "leftover")
		c.Line(page.Point{X: cloth.W / 2}, page.Point{X: cloth.W / 2, Y: cloth.H}, s.Hair.Broken(page.Dashed), "fold")
		if left, ok := c.Clip(keep); ok {
			p.Ground(left, s.Measure, "leftover", "keep: 2¾ × 41½ left over")
		}
		c.Line(page.Point{}, page.Point{Y: cloth.H}, page.Stroke{Width: s.Heavy.Width * 3, Ink: page.Black}, "selvage")
		c.Line(page.Point{X: cloth.W}, page.Point{X: cloth.W, Y: cloth.H}, page.Stroke{Width: s.Heavy.Width * 3, Ink: page.Black}, "selvage")
		c.Ticks(page.OnTop, in, 6, "scale", func(at length.Length) string { return fmt.Sprint(int64(at / in)) })
		foot := page.Point{X: c.Paper().X, Y: c.Paper().Bottom() + s.Gap}
		c.ScaleBar(foot, 8*in, "8 in of cloth")
		p.TextAt(page.Point{X: c.X(cloth.W / 2), Y: foot.Y + s.Label.Lead*7/10}, s.Label, page.Center, "fold", "fold")
	}}
}

func demoTally(s *page.Style) page.Block {
	row := func(size, finished, bag string, n, spare int, mark string) page.Row {
		return page.Row{Cells: []page.Cell{
			{Sit: page.Top, Blocks: []page.Block{page.Para{Text: s.Lead.Say(size)}, page.Para{Text: s.Label.Say(finished)}}},
			{Sit: page.Top, W: 3 * length.Inch / 4, H: s.Lead.Lead * 3 / 2, Draw: func(p *page.Pen, b page.Box) {
				b.H = s.Lead.Lead * 3 / 2
				p.Badge(b, s.Bold, "bag", bag)
			}},
			{Sit: page.Top, Blocks: []page.Block{page.Tally{N: n, Spare: spare, Mark: mark}}},
		}}
	}
	return page.Table{
		Columns: []page.Column{{}, {}, {Share: 1}},
		Rows: []page.Row{
			row("3½ × 3½", "finished 3", "bag 4", 33, 1, "tally dusk-1"),
			row("4¾ × 4¾", "finished 4¼", "bag 7", 6, 0, "tally dusk-2"),
			row("2 × 2¼", "finished 1½ × 1¾", "bag 18", 12, 0, "tally dusk-3"),
		},
	}
}

func demoTable(s *page.Style) page.Section {
	sizes := []string{"3½", "12", "9¾", "¾", "4 15⁄16", "108⅞", "2 7⁄32"}
	var rows []page.Row
	for i := range 90 {
		rows = append(rows, page.Row{Cells: []page.Cell{
			page.TickCell(s, "tick"),
			{Text: s.Body.Say(fmt.Sprintf("fabric number %d", i+1))},
			{Text: s.Body.Say(sizes[i%len(sizes)])},
			{Text: s.Help.Say([]string{"plain", "a longer remark that has to be broken over more than one line of its column, which is narrow", "–"}[i%3])},
		}})
	}
	return page.Section{Head: "Every size", Name: "sizes", Bookmark: "Every size", Blocks: []page.Block{
		page.Para{Text: s.Title.Say("Every size")},
		page.Table{
			Columns: []page.Column{{}, {}, {Align: page.Figures}, {Share: 1}}, Rules: page.Lined,
			Head: []page.Row{page.TextRow(s.Label, "", "fabric", "inches", "remark")},
			Rows: rows,
		},
	}}
}

func demoWords(s *page.Style) page.Section {
	long := "A word such as Donaudampfschifffahrtselektrizitätenhauptbetriebswerkbauunterbeamtengesellschaft does not fit in a narrow column and is broken where it must be. "
	var columns []page.Block
	for i := range 7 {
		columns = append(columns, page.Para{Text: s.Body.Say(fmt.Sprintf("(%d) ", i+1) + long)}, page.Gap{H: s.Space})
	}
	return page.Section{Head: "Words", Name: "words", Bookmark: "Words", Blocks: []page.Block{
		page.Heading{Text: "Two columns"},
		page.Columns{N: 2, Gutter: s.Break, Blocks: columns},
		page.Heading{Text: "A grid"},
		page.Table{
			Columns: []page.Column{{}, {Align: page.Figures}, {Share: 1}}, Rules: page.Grid,
			Head: []page.Row{page.TextRow(s.Bold, "what", "how many", "why")},
			Rows: []page.Row{page.TextRow(s.Body, "squares", "12½", long), page.TextRow(s.Body, "strips", "3", "few words")},
		},
		page.Heading{Text: "Signs"},
		page.Para{Text: s.Body.Say("½ ¼ ¾ ⅛ ⅜ ⅝ ⅞ ⅓ ⅔ 15⁄16 1⁄64 × ″ ′ → ← – — … · • ° ± ≤ ≥ “quoted” ‘so’")},
		page.Para{Text: s.Typed.Say("K7Q-04-F3X 0123456789")},
	}}
}

func demoLabels() page.Section {
	draw := func(p *page.Pen) {
		for i := range length.Length(30) {
			gap := (p.Live.W - 3*21*length.Inch/8) / 4
			b := page.Box{X: gap + i%3*(gap+21*length.Inch/8), Y: length.Inch/2 + i/3*length.Inch, W: 21 * length.Inch / 8, H: length.Inch}
			demoLabel(p, b, int(i)+1)
		}
	}
	return page.Section{Head: "Labels", Name: "labels", Bookmark: "Labels", Raw: []func(*page.Pen){draw}}
}

func demoLabel(p *page.Pen, b page.Box, n int) {
	s := p.Style
	p.Frame(b, page.NoInk, s.Hair.With(page.Pale).Broken(page.Dashed), fmt.Sprintf("label %d", n))
	in := b.Inset(length.Inch / 12)
	side := in.H
	dark := make([]bool, 29*29)
	for i := range dark {
		dark[i] = (i*i+n*i+i/29)%3 == 0
	}
	p.Code(page.Box{X: in.Right() - side, Y: in.Y, W: side, H: side}, 29, dark, 4, "code")
	number, rest := in.Left(2 * side / 5)
	number.H = number.W
	p.Badge(number, s.Title, "bag number", fmt.Sprint(n))
	rest.X, rest.W = rest.X+s.Gap, rest.W-side-2*s.Gap
	line, rest := rest.Top(s.Lead.Lead)
	p.Text(line, s.Lead, page.Left, "", "A Lantern of a very long name")
	line, _ = rest.Top(s.Bold.Lead)
	p.Text(line, s.Bold, page.Left, "", "(32) 3½ × 3½")
	foot := page.Box{X: in.X, Y: in.Bottom() - s.Label.Lead, W: in.W - side, H: s.Label.Lead}
	p.Text(foot, s.Label, page.Left, "", fmt.Sprintf("K7Q-%02d-F3X · Lantern Row · v2", n), fmt.Sprintf("K7Q-%02d-F3X · Lantern Row", n))
}
