package sheets

import (
	"cmp"
	"slices"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/page"
)

// order is the cutting order of the whole quilt, a row a fabric.
func (b *binder) order() []page.Block {
	s := b.style
	t := page.Table{
		Columns: []page.Column{{Width: s.Tick}, {Align: page.Right}, {Share: 3}, {Align: page.Right}, {Align: page.Right}, {Align: page.Right}, {Share: 3}},
		Head:    []page.Row{page.TextRow(s.Label, "", "no.", "fabric", "page", "strips", "pieces", "mind")},
		Rules:   page.Lined,
	}
	for _, i := range b.q.CuttingOrder() {
		t.Rows = append(t.Rows, b.orderRow(i))
	}
	return []page.Block{
		page.Para{Text: s.Help.Say("Largest and longest pieces first, while the cloth is whole; within a fabric the steps keep that order too. Tick a fabric when its pieces are counted and bagged."), Mark: "note"},
		page.Gap{H: s.Space}, t,
	}
}

func (b *binder) orderRow(i int) page.Row {
	s, f := b.style, &b.q.Fabrics[i]
	pieces := 0
	for _, p := range f.Pieces {
		pieces += p.Need
	}
	anchor := "fabric " + f.Fabric.ID
	return page.Row{Mark: "order " + f.Fabric.ID, Cells: []page.Cell{
		b.orderTick(f), {Text: s.Body.Say(digits(i + 1))}, {Text: s.Bold.Say(f.Fabric.Name)},
		{W: s.Body.Size * 2, H: s.Body.Lead, Draw: func(p *page.Pen, box page.Box) {
			p.Para(box, s.Body.Say(p.PageOf(anchor)), page.Right, "order page")
			p.Link(box, anchor)
		}},
		{Text: s.Body.Say(digits(f.Strips()))}, {Text: s.Body.Say(digits(pieces))}, {Text: s.Small.Say(b.mind(f))},
	}}
}

// orderTick is the box to tick of a fabric, ticked where all of it is cut.
func (b *binder) orderTick(f *cutting.Fabric) page.Cell {
	cell := b.tick("order " + f.Fabric.ID)
	if draw := cell.Draw; f.AllDone() {
		cell.Draw = func(p *page.Pen, box page.Box) {
			draw(p, box)
			p.Check(b.tickRoom(box), b.style.Tick*3/4, "cut already")
		}
	}
	return cell
}

// mind is what to keep in mind about a fabric.
func (b *binder) mind(f *cutting.Fabric) string {
	var notes []string
	if f.AllDone() {
		return "cut already"
	}
	if bleedWord(f.Fabric.Bleeds) != "" {
		notes = append(notes, "test its dye")
	}
	if f.Fabric.Prewash {
		notes = append(notes, "wash first")
	}
	if f.Fabric.OneWay {
		notes = append(notes, "one-way print: turn no piece")
	}
	if n := f.Missing(); n > 0 {
		notes = append(notes, "short of "+digits(n)+": see its sheet")
	}
	for i, p := range f.Pieces {
		if f.Waits(i) {
			notes = append(notes, p.Uses[0].For+" waits until all else is cut")
		}
	}
	return dotted(notes...)
}

// CuttingOrder lists the fabrics, as indices, in the order to cut them: the
// longest piece first, fabrics of which everything waits last.
func (q *Quilt) CuttingOrder() []int {
	longest := func(i int) length.Length {
		l := length.Length(0)
		for _, p := range q.Fabrics[i].Pieces {
			if !p.Late {
				l = max(l, p.Size.W, p.Size.H)
			}
		}
		return l
	}
	var all []int
	for i := range q.Fabrics {
		all = append(all, i)
	}
	slices.SortStableFunc(all, func(a, b int) int { return cmp.Compare(longest(b), longest(a)) })
	return all
}
