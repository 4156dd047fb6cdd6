package sheets

import (
	"strconv"

	"cutbinder/layout/length"
	"cutbinder/layout/page"
	"cutbinder/sheets/say"
)

const printFirst = "Measure these with your own ruler before anything else. If they are off, print again at 100\u00a0% (actual size), without \"fit to page\"; drawings to scale and labels depend on it."

var howTo = []string{
	"Measure your cloth first: write its real width and length on the fabric's sheet.",
	"Do the dye test and the washing before any cutting.",
	"Cut fabric by fabric in the cutting order; each sheet has the picture, the steps and boxes to tick.",
	"Put each size into its bag as soon as it is cut, and stick the label on the bag, never on cloth.",
	"Lost track? Scan or type the code on the label: it says which block the bag belongs to.",
}

// cover is the title page: what the quilt is, the print check, the contents.
func (b *binder) cover() []page.Block {
	s, p := b.style, b.q.Plan
	blocks := []page.Block{page.Para{Text: s.Title.Say(p.Title), Mark: "title"}}
	if line := b.imprint(); line != "" {
		blocks = append(blocks, page.Para{Text: s.Help.Say(line), Mark: "imprint"})
	}
	if p.Note != "" {
		blocks = append(blocks, page.Gap{H: s.Gap}, page.Para{Text: s.Body.Say(p.Note), Mark: "note"})
	}
	if note := b.doneNote(); note != "" {
		blocks = append(blocks, page.Gap{H: s.Gap}, page.Para{Text: s.Body.Say(note), Mark: "cut already"})
	}
	blocks = b.masthead(append(blocks, page.Gap{H: s.Break}, b.totals()))
	return append(blocks,
		page.Keep{Blocks: []page.Block{page.Heading{Text: "Print check"}, page.Para{Text: s.Body.Say(printFirst), Mark: "print check"},
			page.Gap{H: s.Space}, b.printCheck()}},
		page.Heading{Text: "How to use this binder"}, numbered(s, howTo),
		page.Keep{Blocks: []page.Block{page.Heading{Text: "Contents"}, b.contents()}},
	)
}

// imprint is the line under the title.
func (b *binder) imprint() string {
	p := b.q.Plan
	var parts []string
	if p.By != "" {
		parts = append(parts, "by "+p.By)
	}
	if p.Version != "" {
		parts = append(parts, "version "+p.Version)
	}
	if p.Date != "" {
		parts = append(parts, p.Date)
	}
	if p.Finished.W > 0 {
		parts = append(parts, "finished "+b.v.Size(p.Finished)+" "+b.v.Unit())
	}
	return dotted(parts...)
}

// totals is the row of large figures.
func (b *binder) totals() page.Block {
	s := b.style
	t := page.Table{Columns: []page.Column{{Share: 1}, {Share: 1}, {Share: 1}, {Share: 1}}, Pad: page.NoPad}
	pieces, strips := 0, 0
	for i := range b.q.Fabrics {
		f := &b.q.Fabrics[i]
		for _, piece := range f.Pieces {
			pieces += piece.Need
		}
		strips += f.Strips()
	}
	var figures, words page.Row
	for _, total := range []struct {
		n         int
		one, many string
	}{{len(b.q.Fabrics), "fabric", "fabrics"}, {strips, "strip", "strips"}, {pieces, "piece", "pieces"}, {len(b.q.Bags.Bags), "bag", "bags"}} {
		figures.Cells = append(figures.Cells, page.Cell{Text: s.Title.Say(strconv.Itoa(total.n))})
		words.Cells = append(words.Cells, page.Cell{Text: s.Help.Say(say.Plural(total.n, total.one, total.many))})
	}
	figures.With = true
	t.Rows = []page.Row{figures, words}
	return t
}

// printCheck draws a 4 in ruler, a 10 cm ruler and a 1 in square, exact.
func (b *binder) printCheck() page.Block {
	s := b.style
	lead := s.Body.Lead * 3 / 2
	return page.Drawing{H: max(2*lead, length.Inch) + s.Rule.Width, Draw: func(p *page.Pen, box page.Box) {
		square := page.Box{X: box.X, Y: box.Y + s.Rule.Width/2, W: length.Inch, H: length.Inch}
		p.Rect(square, page.NoInk, s.Rule, "print check 1 in square")
		p.Text(square, s.Label, page.Center, "print check", "1 in")
		x := square.Right() + s.Break
		drawRuler(p, page.Point{X: x, Y: box.Y + lead*3/4}, 4*length.Inch, length.Inch/4, 4, "4 in", "ruler 4 in")
		drawRuler(p, page.Point{X: x, Y: box.Y + lead*7/4}, 10*length.CM, length.CM/2, 2, "10 cm", "ruler 10 cm")
	}}
}

// drawRuler draws a ruler from a point on its line to the right, with a tick
// every step and a longer one every so many, and what it measures behind it.
func drawRuler(p *page.Pen, at page.Point, l, step length.Length, long int, words, mark string) {
	s := p.Style
	p.HLine(at.X, at.Y, l, s.Rule, mark)
	for i := 0; length.Length(i)*step <= l; i++ {
		h := s.Gap
		if i%long == 0 {
			h = s.Gap * 2
		}
		p.VLine(at.X+length.Length(i)*step, at.Y-h, h, s.Hair, mark+" tick")
	}
	p.TextAt(page.Point{X: at.X + l + s.Gap*2, Y: at.Y}, s.Label, page.Left, mark+" words", words)
}

// contents lists the parts and the fabrics with their pages.
func (b *binder) contents() page.Block {
	s := b.style
	t := page.Table{Columns: []page.Column{{Share: 1}, {Width: s.Body.Size * 5 / 2, Align: page.Right}}, Pad: page.NoPad}
	for _, part := range b.parts {
		if part == Cover {
			continue
		}
		row := b.entry(s.Body, partTitles[part], "part "+string(part), 0)
		row.With = part == Fabrics // a column doesn't end between it and its fabrics
		t.Rows = append(t.Rows, row)
		if part == Fabrics {
			for i := range b.q.Fabrics {
				if b.q.Fabrics[i].AllDone() {
					continue
				}
				f := b.q.Fabrics[i].Fabric
				t.Rows = append(t.Rows, b.entry(s.Small.In(page.Grey), digits(i+1)+"  "+f.Name, "fabric "+f.ID, 1))
			}
		}
	}
	return page.Columns{N: 2, Gutter: s.Break * 2, Blocks: []page.Block{t}}
}

// entry is a line of the contents; all of it leads to the page. Parts and fabrics
// take the same height, so that the lines of both columns stand side by side.
func (b *binder) entry(st page.TextStyle, words, anchor string, level int) page.Row {
	in := b.style.Break * length.Length(level)
	return page.Row{Cells: []page.Cell{
		{Draw: func(p *page.Pen, box page.Box) {
			p.Text(page.Box{X: box.X + in, Y: box.Y, W: box.W - in, H: box.H}, st, page.Left, "contents", words)
			p.Link(box, anchor)
		}, H: b.style.Body.Lead},
		{Draw: func(p *page.Pen, box page.Box) {
			p.Text(box, st, page.Right, "contents page", p.PageOf(anchor))
			p.Link(box, anchor)
		}, H: b.style.Body.Lead},
	}}
}
