package sheets

import (
	"cutbinder/layout/length"
	"cutbinder/layout/page"
	"cutbinder/layout/picture"
)

// masthead is the cover's top: what is given, and at its right the picture of the
// quilt, where the plan lays it out.
func (b *binder) masthead(words []page.Block) []page.Block {
	pic, _ := picture.Quilt(b.q.Plan)
	if pic == nil {
		return words
	}
	drawing := page.Drawing{
		Height: func(w length.Length) length.Length { return min(w*pic.H/pic.W, w*5/4) },
		Draw:   func(p *page.Pen, box page.Box) { b.drawQuilt(p, box, pic) },
	}
	return []page.Block{page.Table{Columns: []page.Column{{Share: 3}, {Share: 2}}, Pad: page.NoPad, Gutter: 2 * b.style.Break,
		Rows: []page.Row{{Cells: []page.Cell{{Blocks: words, Sit: page.Top}, {Blocks: []page.Block{drawing}, Sit: page.Top}}}}}}
}

// drawQuilt draws the quilt's picture; blocks that aren't drawn show their letter.
func (b *binder) drawQuilt(p *page.Pen, box page.Box, pic *picture.Picture) {
	s := b.style
	pl := place(pic, box.Inset(s.Rule.Width))
	b.painter().draw(p, pl, "quilt")
	for _, patch := range pic.Patches {
		if patch.Unit != "" || patch.Block == "" {
			continue
		}
		w := s.Label.Say(patch.Block).Width(s.Fonts)
		if room, ok := roomIn(pl.corners(patch), w, s.Label.Size); ok {
			p.Text(room, s.Label.In(page.Black), page.Center, "quilt block", patch.Block)
		}
	}
}
