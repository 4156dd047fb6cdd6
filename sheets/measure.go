package sheets

import (
	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/page"
)

// measureBox is what each cloth must measure, and lines to write down what it
// does. Neighbours that must measure the same share a row.
func (b *binder) measureBox(f *cutting.Fabric) page.Block {
	t := page.Table{Columns: []page.Column{{}, {Share: 1}, {Share: 1}}, Pad: b.style.Gap / 4}
	for _, alike := range b.measured(f) {
		must, measured := "must measure", "I measured"
		name := b.v.Span(alike[0], alike[len(alike)-1])
		switch {
		case len(alike) > 1:
			must, measured = name+" must each be", "the least I measured"
		case len(f.Cloths) > 1:
			must = name + " must be"
		}
		t.Rows = append(t.Rows, b.measureRows(alike[0], must, measured)...)
	}
	s := b.style
	inner := page.Indent{Left: s.Space, Right: s.Space, Blocks: []page.Block{t}}
	return page.Drawing{
		Height: func(w length.Length) length.Length { return page.HeightOf(s, w, inner) + s.Gap*2 },
		Draw: func(p *page.Pen, box page.Box) {
			p.Frame(box, page.NoInk, s.Hair, "measure box")
			p.Blocks(page.Box{X: box.X, Y: box.Y + s.Gap, W: box.W, H: box.H}, inner)
		},
	}
}

// measured is the cloths that are cut, neighbours that must measure the same
// together.
func (b *binder) measured(f *cutting.Fabric) (groups [][]*cutting.Cloth) {
	for i := range f.Cloths {
		c := &f.Cloths[i]
		if c.Unused() {
			continue
		}
		if n := len(groups); n > 0 && b.v.Alike(b.q.Plan, groups[n-1][0], c) {
			groups[n-1] = append(groups[n-1], c)
			continue
		}
		groups = append(groups, []*cutting.Cloth{c})
	}
	return groups
}

// measureRows is what a cloth must measure, and under it where to write what it
// does.
func (b *binder) measureRows(c *cutting.Cloth, must, measured string) []page.Row {
	s := b.style
	fill := func(after string) page.Cell {
		return page.Cell{H: s.Body.Lead, Draw: func(p *page.Pen, box page.Box) {
			p.FillIn(page.Box{X: box.X, Y: box.Y, W: box.W, H: s.Body.Lead}, after, "fill in")
		}}
	}
	return []page.Row{
		{With: true, Cells: []page.Cell{{Text: s.Label.Say(must)}, {Text: s.Bold.Say(b.v.With(c.W) + "\u00a0wide")}, {Text: s.Bold.Say(b.v.Least(b.q.Plan, c) + "\u00a0long")}}},
		{Cells: []page.Cell{{Text: s.Label.Say(measured)}, fill("wide"), fill("long")}},
	}
}
