package sheets

import (
	"slices"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/page"
	"cutbinder/layout/plan"
	"cutbinder/layout/trade"
	"cutbinder/sheets/say"
)

// shopping is the list to take to the shop.
func (b *binder) shopping() []page.Block {
	s := b.style
	var buy, have page.Table
	buy = b.shopTable("what to buy", "comes from")
	have = b.shopTable("on the shelf", "is it enough?")
	for i := range b.q.Fabrics {
		f := &b.q.Fabrics[i]
		if b.doneWords(f) != "" {
			continue // it is at hand
		}
		if len(f.Fabric.Have) > 0 {
			row := b.shopRow(f, s.Body.Say(b.v.Shelf(f.Fabric.Have)), b.enough(f))
			row.Mark = "shelf " + f.Fabric.ID
			have.Rows = append(have.Rows, row)
		} else {
			buy.Rows = append(buy.Rows, b.shopRow(f, b.ask(f), b.comesFrom(f)))
		}
	}
	b.shopColumns(&buy, &have)
	blocks := []page.Block{page.Para{Text: s.Help.Say(b.widthNote(len(buy.Rows) > 0, len(have.Rows) > 0)), Mark: "note"}}
	if len(buy.Rows) > 0 {
		blocks = append(blocks, page.Heading{Text: "To buy", Aside: "tape a snippet in the box"}, buy)
	}
	if rows := b.finishing(); len(rows) > 0 {
		t := page.Table{Columns: []page.Column{{Width: s.Tick}, {}, {Share: 1}}, Rows: rows, Rules: page.Lined}
		blocks = append(blocks, page.Heading{Text: "Binding, backing, batting"}, t)
	}
	if len(have.Rows) > 0 {
		blocks = append(blocks, page.Heading{Text: "On the shelf already"}, have)
	}
	return append(blocks, b.cutAlready()...)
}

// widthNote says what the figures assume, or that there is nothing they are for.
func (b *binder) widthNote(buys, shelf bool) string {
	if !buys && !slices.ContainsFunc(b.q.Fabrics, func(f cutting.Fabric) bool { return f.Missing() > 0 }) {
		note := "There is no fabric to buy."
		if shelf {
			note += " Measure what is on the shelf before you cut: each fabric's sheet says what it must measure."
		}
		return note
	}
	note := "Lengths hold for the usable widths named here, without the selvages. Measure before you buy: a narrower cloth may take more."
	if b.q.Plan.Allow.Extra > 0 {
		note += " " + b.v.Percent(b.q.Plan.Allow.Extra) + " is added for safety."
	}
	return note
}

func (b *binder) shopTable(third, fourth string) page.Table {
	s := b.style
	return page.Table{
		Head:  []page.Row{page.TextRow(s.Label, "", "snippet", "fabric", third, fourth)},
		Rules: page.Lined,
	}
}

// shopColumns gives the columns of both tables their widths: names and what to buy
// so much as they need, unless that is more than a fair part, so that what the
// figures come from has room beside them. Names take as much in both.
func (b *binder) shopColumns(tables ...*page.Table) {
	s, body := b.style, b.book.Body().W
	names := page.Column{}
	for _, t := range tables {
		names.Width = max(names.Width, t.Natural(s, 2))
	}
	if names.Width > body/3 {
		names = page.Column{Share: 3}
	}
	for _, t := range tables {
		asks := page.Column{Width: t.Natural(s, 3)}
		if asks.Width > body/4 {
			asks = page.Column{Share: 3}
		}
		t.Columns = []page.Column{{Width: s.Tick}, {Width: s.Body.Size * 5}, names, asks, {Share: 4}}
	}
}

func (b *binder) shopRow(f *cutting.Fabric, third, fourth page.Rich) page.Row {
	s := b.style
	id := f.Fabric.ID
	name := s.Bold.Say(f.Fabric.Name)
	if onBolt(f.Fabric) {
		name = append(name, s.Label.Span("\n"+b.v.With(f.Fabric.Width)+" wide"))
	}
	return page.Row{Mark: "shopping " + id, Cells: []page.Cell{
		b.tick("shopping " + id),
		{H: s.Body.Size * 4, W: s.Body.Size * 5, Draw: func(p *page.Pen, box page.Box) {
			box.H = min(box.H, s.Body.Size*5) // no higher than wide, however long the words beside it are
			p.Snippet(box, "", "snippet "+id)
		}},
		{Text: name}, {Text: third}, {Text: fourth},
	}}
}

// onBolt says that some cloth of a fabric is as wide as it comes off the bolt: fat
// quarters and scraps have widths of their own.
func onBolt(f *plan.Fabric) bool {
	return len(f.Have) == 0 || slices.ContainsFunc(f.Have, func(c plan.Cloth) bool { return c.FullWidth })
}

// tick is a cell with a box to tick.
func (b *binder) tick(mark string) page.Cell {
	s := b.style
	return page.Cell{W: s.Tick, H: s.Body.Lead, Draw: func(p *page.Pen, box page.Box) {
		p.TickBox(b.tickRoom(box), mark)
	}}
}

// tickRoom is where a tick box stands in its cell: in the middle of the capitals of
// the row's first line, which leave room for what hangs below them.
func (b *binder) tickRoom(cell page.Box) page.Box {
	s := b.style
	return page.Box{X: cell.X, Y: cell.Y - s.Body.Size/10, W: s.Tick, H: s.Body.Lead}
}

// ask is what to ask for: in the plan's way of measuring, and the other.
func (b *binder) ask(f *cutting.Fabric) page.Rich {
	s := b.style
	if f.Buy.Buy == 0 {
		return s.Body.Say("nothing")
	}
	return append(s.Lead.Say(b.v.ToBuy(f.Buy.Buy)), s.Help.Span("\n"+b.v.Elsewhere(f.Buy.Buy)))
}

// comesFrom is the sum behind what to buy, and at which widths it changes.
func (b *binder) comesFrom(f *cutting.Fabric) page.Rich {
	text := b.style.Small.Say(b.v.BuySum(b.q.Plan, f))
	if what := b.v.WhatIf(f, b.q.WidthsOf(f)); what != "" {
		text = append(text, b.style.Help.Span("\n"+what))
	}
	return text
}

// enough says whether what is at hand will do.
func (b *binder) enough(f *cutting.Fabric) page.Rich {
	s := b.style
	if f.Missing() == 0 {
		return append(s.Bold.Say("yes"), s.Small.Span("\n"+b.v.Proof(b.q.Plan, f)))
	}
	text := s.Bold.Say("no: short of")
	for i, n := range f.Short {
		if n > 0 {
			text = append(text, s.Body.Span("\n"+say.Count(n)+" "+b.v.Size(f.Pieces[i].Size)))
		}
	}
	if short := b.q.Shortage(f); short != nil {
		text = append(text, s.Small.Span("\n"+say.Sentences(b.v.Remedies(f, short))))
	}
	return text
}

// finishing is rows for binding, backing and batting.
func (b *binder) finishing() []page.Row {
	s, p := b.style, b.q.Plan
	var rows []page.Row
	add := func(what string, text string) {
		rows = append(rows, page.Row{Mark: "finishing " + what, Cells: []page.Cell{b.tick("shopping " + what), {Text: s.Bold.Say(what)}, {Text: s.Body.Say(text)}}})
	}
	for _, f := range b.q.Finishings() {
		add(f.What, say.Count(f.Count)+" "+b.v.Size(f.Size)+" from "+f.Fabric.Fabric.Name+", counted in its length")
	}
	if size, ok := b.q.BattingSize(); ok {
		add("batting", b.v.Size(size)+" "+b.v.Unit()+": the quilt and "+b.v.With(p.Batting.Overhang)+" on each side")
	}
	return rows
}

// BattingSize is the size of the batting: the quilt and what stands over on each
// side. ok is false where the plan has none, or no finished size.
func (q *Quilt) BattingSize() (size length.Size, ok bool) {
	p := q.Plan
	if p.Batting == nil || p.Finished.W == 0 {
		return size, false
	}
	return trade.WithOverhang(p.Finished, p.Batting.Overhang), true
}
