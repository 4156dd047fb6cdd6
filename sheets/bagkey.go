package sheets

import (
	"slices"
	"strings"

	"cutbinder/layout/cutting"
	"cutbinder/layout/page"
	"cutbinder/layout/plan"
	"cutbinder/sheets/bag"
	"cutbinder/sheets/say"
)

// bagKey lists the bags, and turned round, the bags of each block.
func (b *binder) bagKey() []page.Block {
	return []page.Block{
		page.Heading{Text: "What is in each bag", Aside: "tick a bag when it is full and labelled"}, b.bagTable(),
		page.Heading{Text: "What each block is sewn from"}, b.blockTable(),
	}
}

func (b *binder) bagTable() page.Block {
	s := b.style
	t := page.Table{
		Columns: []page.Column{{Width: s.Tick}, {Align: page.Right}, {}, {Share: 3}, {Share: 4}, {Share: 5}},
		Head:    []page.Row{page.TextRow(s.Label, "", "bag", "code", "for", "pieces, as cut", "from")},
		Rules:   page.Lined,
	}
	if b.o.Large { // a column of its own would hold a word a line
		last := len(t.Columns) - 1
		t.Columns = t.Columns[:last]
		t.Head[0].Cells = append(t.Head[0].Cells[:last-1], page.Cell{Text: s.Label.Say("pieces, and from what")})
	}
	if b.q.Drawn() { // little pictures stand before the pieces
		t.Columns = slices.Insert(t.Columns, 4, page.Column{Width: pictureSide})
		t.Head[0].Cells = slices.Insert(t.Head[0].Cells, 4, page.Cell{Text: s.Label.Say("place")})
	}
	sums := b.explained()
	for i := range b.q.Bags.Bags {
		t.Rows = append(t.Rows, b.bagRows(&b.q.Bags.Bags[i], sums)...)
	}
	return t
}

// explained is the plan's pieces line by line, for their sums.
func (b *binder) explained() []cutting.Explained {
	var lists []cutting.List
	for i := range b.q.Fabrics {
		lists = append(lists, b.q.Fabrics[i].List)
	}
	return cutting.Explain(b.q.Plan, lists)
}

// shortSum is the sum behind a unit's cut size, in short; plain patches need
// none.
func (b *binder) shortSum(r bag.Row, sums []cutting.Explained) string {
	for _, e := range sums {
		if e.Unit == r.Unit && e.Role == r.Role && e.Finished == r.Finished && e.Size == r.Cut && e.Into == r.Into && r.Unit != plan.Patch {
			return b.v.ShortSum(e.CutSum)
		}
	}
	return ""
}

// bagRows is a bag's rows in the key: one for each kind of piece.
func (b *binder) bagRows(g *bag.Bag, sums []cutting.Explained) []page.Row {
	s := b.style
	again := &page.Row{Mark: "bag " + digits(g.Number) + " again", Cells: []page.Cell{
		{}, {Text: s.Label.Say(digits(g.Number))}, {Text: s.Label.Say("continued"), Span: 2}}}
	var rows []page.Row
	for i, r := range g.Rows {
		row := page.Row{With: i < len(g.Rows)-1, Again: again, Mark: "bag " + digits(g.Number), Cells: make([]page.Cell, 4, 7)}
		if i == 0 {
			code := s.Typed.Say(g.Code.String()) // never broken at its hyphens
			row.Cells = []page.Cell{b.tick("bag " + digits(g.Number)), b.bagNumber(g),
				{Text: code, W: code.Width(s.Fonts)}, {Text: s.Body.Say(g.Heading())}}
		}
		if b.q.Drawn() {
			picture := page.Cell{}
			if i == 0 {
				picture = pictureCell(b.q.spotted(g), "bag "+digits(g.Number)+" picture")
			}
			row.Cells = append(row.Cells, picture)
		}
		row.Cells = append(row.Cells, b.pieceCells(row.Mark, r, sums)...)
		rows = append(rows, row)
	}
	return rows
}

// pieceCells are a kind of piece and what it comes from, one under the other in
// large print.
func (b *binder) pieceCells(mark string, r bag.Row, sums []cutting.Explained) []page.Cell {
	words, sources := b.pieceWords(r, sums), b.sources(r)
	if !b.o.Large {
		return []page.Cell{{Text: words}, sources}
	}
	return []page.Cell{{Blocks: append([]page.Block{page.Para{Text: words, Mark: mark}}, sources.Blocks...)}}
}

// bagNumber is the cell that a fabric's sheet leads to.
func (b *binder) bagNumber(g *bag.Bag) page.Cell {
	s, number := b.style, digits(g.Number)
	return page.Cell{W: s.Bold.Say(number).Width(s.Fonts), H: s.Bold.Lead, Draw: func(p *page.Pen, box page.Box) {
		p.Anchor(page.Point{X: box.X, Y: box.Y}, "bag "+number)
		p.Para(box, s.Bold.Say(number), page.Right, "bag number")
	}}
}

// sources is a cell that names the fabrics a kind of piece comes from. The first
// one's sheet is a click away.
func (b *binder) sources(r bag.Row) page.Cell {
	s := b.style
	link := page.Drawing{Draw: func(p *page.Pen, box page.Box) {
		p.Link(page.Box{X: box.X, Y: box.Y, W: box.W, H: s.Small.Lead}, "fabric "+r.Fabrics[0].ID)
	}}
	names := page.Para{Text: s.Small.Say(b.v.Shares(r.Fabrics)), Whole: s.Small.Say(b.v.WholeShares(r.Fabrics)), Mark: "sources"}
	return page.Cell{Blocks: []page.Block{link, names}}
}

// pieceWords is a kind of piece: count, cut size, what it is when sewn, and for
// units how the cut size comes about.
func (b *binder) pieceWords(r bag.Row, sums []cutting.Explained) page.Rich {
	s := b.style
	text := s.Bold.Say(say.Count(r.Count) + "\u00a0" + b.v.Size(r.Cut))
	more := b.v.Made(r)
	if sum := b.shortSum(r, sums); sum != "" {
		more += ": " + sum
	}
	if r.Spares > 0 {
		if more != "" {
			more += ", and "
		} else {
			more = "and "
		}
		more += strings.ReplaceAll(say.Spares(r.Spares), " ", "\u00a0")
	}
	if note := say.Noted(r.Note); note != "" {
		more = strings.TrimPrefix(more+", "+note, ", ")
	}
	if more != "" {
		text = append(text, s.Label.Span("\n"+more))
	}
	return text
}

// blockTable says which bags each block, and each thing that is no block, is
// sewn from.
func (b *binder) blockTable() page.Block {
	s := b.style
	t := page.Table{
		Columns: []page.Column{{Share: 2}, {Align: page.Right}, {}, {Share: 3}},
		Head:    []page.Row{page.TextRow(s.Label, "block", "make", "finished", "bags")},
		Rules:   page.Lined,
	}
	for _, place := range b.places() {
		how, size := "", ""
		if block := b.q.Plan.Block(place.Block); block != nil && place.Block != "" {
			how = digits(block.Make)
			if block.Finished.W > 0 {
				size = b.v.Size(block.Finished)
			}
		}
		row := page.RichRow(s.Bold.Say(place.Heading()), s.Body.Say(how), s.Body.Say(size), s.Body.Say(b.bagsOfPlace(place)))
		row.Mark = "place " + place.Heading()
		t.Rows = append(t.Rows, row)
	}
	return t
}

// places lists where bags' pieces go, each once, in the order of the bags.
func (b *binder) places() []bag.Place {
	var all []bag.Place
	seen := map[string]bool{}
	for i := range b.q.Bags.Bags {
		for _, p := range b.q.Bags.Bags[i].Places {
			if key := p.Block + "\x00" + p.For; !seen[key] {
				seen[key] = true
				all = append(all, p)
			}
		}
	}
	return all
}

func (b *binder) bagsOfPlace(place bag.Place) string {
	var numbers []int
	for i := range b.q.Bags.Bags {
		for _, p := range b.q.Bags.Bags[i].Places {
			if p.Block == place.Block && p.For == place.For {
				numbers = append(numbers, i+1)
				break
			}
		}
	}
	return say.BagList(numbers)
}
