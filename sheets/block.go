package sheets

import (
	"slices"
	"strings"

	"cutbinder/layout/length"
	"cutbinder/layout/page"
	"cutbinder/layout/picture"
	"cutbinder/layout/plan"
	"cutbinder/sheets/bag"
	"cutbinder/sheets/say"
)

// blocksPart is every block: its picture, its finished size and its fabrics, and
// the bags it is sewn from.
func (b *binder) blocksPart() []page.Block {
	var blocks []page.Block
	for _, block := range b.q.Plan.Blocks {
		if len(blocks) > 0 {
			blocks = append(blocks, page.Gap{H: 2 * b.style.Break})
		}
		blocks = append(blocks, page.Keep{Blocks: b.blockSheet(block)})
	}
	return blocks
}

// blockSheet is one block.
func (b *binder) blockSheet(block *plan.Block) []page.Block {
	gap, pic := page.Gap{H: b.style.Space}, picture.Block(b.q.Plan, block)
	if pic == nil {
		return append(append(b.blockWords(block), gap), b.blockBags(block, nil)...)
	}
	return append([]page.Block{b.blockTop(block, pic), gap}, b.blockBags(block, pic)...)
}

// blockWords is a block's name and what it is.
func (b *binder) blockWords(block *plan.Block) []page.Block {
	place := bag.Place{Block: block.ID, Name: block.Name}
	return []page.Block{
		anchored(b.style, "block "+block.ID, place.Heading()),
		page.Para{Text: b.style.Body.Say(b.aboutBlock(block)), Mark: "about"},
	}
}

// blockTop is a block's picture, with its name and its fabrics beside it.
func (b *binder) blockTop(block *plan.Block, pic *picture.Picture) page.Block {
	words := append(b.blockWords(block), page.Gap{H: b.style.Space}, b.legend(pic))
	picture := page.Drawing{
		Height: func(w length.Length) length.Length { return min(w, w*pic.H/pic.W) },
		Draw:   func(p *page.Pen, box page.Box) { b.drawBlock(p, box, block, pic) },
	}
	return page.Table{Columns: []page.Column{{Share: 4}, {Share: 5}}, Pad: page.NoPad, Gutter: 2 * b.style.Break, Rows: []page.Row{{
		Cells: []page.Cell{{Blocks: []page.Block{picture}, Sit: page.Top}, {Blocks: words, Sit: page.Top}}}}}
}

// anchored is a title that links lead to.
func anchored(s *page.Style, name, title string) page.Block {
	text := page.Para{Text: s.Title.Say(title), Mark: "title"}
	return page.Drawing{
		Height: func(w length.Length) length.Length { return page.HeightOf(s, w, text) },
		Draw: func(p *page.Pen, box page.Box) {
			p.Bookmark(page.Point{X: box.X, Y: box.Y}, name, title, 1)
			p.Blocks(box, text)
		},
	}
}

// aboutBlock is the line under the block's name.
func (b *binder) aboutBlock(block *plan.Block) string {
	size := ""
	if z := block.Finished; z.W > 0 {
		seam := 2 * b.q.Plan.Seam
		size = "finished " + b.v.Size(z) + ", before it is sewn into the quilt " + b.v.Size(length.Size{W: z.W + seam, H: z.H + seam}) + " " + b.v.Unit()
	}
	return dotted("make "+digits(block.Make), size)
}

// drawBlock draws the block's picture, with the number of its fabric in every
// patch that has room for it.
func (b *binder) drawBlock(p *page.Pen, box page.Box, block *plan.Block, pic *picture.Picture) {
	pl := place(pic, box.Inset(b.style.Rule.Width))
	b.painter().draw(p, pl, "block "+block.ID)
	d := b.style.DiscSize()
	for _, patch := range pic.Patches {
		if room, ok := roomIn(pl.corners(patch), d*5/4, d*5/4); ok {
			p.Ring(page.Point{X: room.MidX(), Y: room.MidY()}, "key "+block.ID, b.keyOf(patch.Source))
		}
	}
}

// painter paints in the binder's way.
func (b *binder) painter() painter { return painter{b.q.Plan, b.style, b.o.LightInk} }

// keyOf is what stands for a source in pictures: a fabric's number, a small letter
// for a mix.
func (b *binder) keyOf(s plan.Source) string {
	if s.Mix {
		i := slices.IndexFunc(b.q.Plan.Mixes, func(m *plan.Mix) bool { return m.ID == s.ID })
		return mixLetter(i)
	}
	for i := range b.q.Fabrics {
		if b.q.Fabrics[i].Fabric.ID == s.ID {
			return digits(i + 1)
		}
	}
	return "–"
}

// mixLetter is the letter of the i-th mix: a to z, then aa.
func mixLetter(i int) string {
	if i >= 26 {
		return mixLetter(i/26-1) + mixLetter(i%26)
	}
	return string(rune('a' + i))
}

// legend says what the keys in a picture stand for.
func (b *binder) legend(pic *picture.Picture) page.Block {
	s := b.style
	t := page.Table{Columns: []page.Column{{Width: max(s.DiscWidth("00"), s.DiscSize())}, {Share: 1}}, Pad: s.Gap / 2}
	seen := map[string]bool{}
	for _, patch := range pic.Patches {
		source := patch.Source
		if seen[source.String()] {
			continue
		}
		seen[source.String()] = true
		ink := b.painter().ink(patch)
		if source.Mix {
			ink = page.White
		}
		key := b.keyOf(source)
		t.Rows = append(t.Rows, page.Row{Cells: []page.Cell{
			{W: s.DiscSize(), H: s.Body.Lead, Draw: func(p *page.Pen, box page.Box) {
				at := page.Box{X: box.X, Y: box.Y, W: box.W, H: s.Body.Lead}.Center(box.W, s.DiscSize()*6/5)
				p.Rect(at, ink, s.Hair.With(page.Mid), "swatch")
				p.Ring(page.Point{X: at.MidX(), Y: at.MidY()}, "key", key)
			}},
			{Text: b.sourceWords(source)},
		}})
	}
	return t
}

// sourceWords names a fabric, or a mix with its fabrics.
func (b *binder) sourceWords(source plan.Source) page.Rich {
	s := b.style
	if !source.Mix {
		return s.Body.Say(b.q.Plan.Fabric(source.ID).Name)
	}
	var names []string
	for _, id := range b.q.Plan.FabricIDs(source) {
		names = append(names, strings.ReplaceAll(b.q.Plan.Fabric(id).Name, " ", "\u00a0")) // a line breaks between fabrics
	}
	return append(s.Body.Say("any of "+source.ID), s.Label.Span("\n"+say.Things(names)))
}

// blockBags lists the bags a block is sewn from, each with the patches marked that
// its pieces go to.
func (b *binder) blockBags(block *plan.Block, pic *picture.Picture) []page.Block {
	s, pieces := b.style, "pieces, as cut"
	if block.Make > 1 {
		pieces += ", for all " + digits(block.Make)
	}
	t := page.Table{
		Columns: []page.Column{{Align: page.Right}, {Width: pictureSide}, {Share: 4}, {Share: 5}},
		Head:    []page.Row{page.TextRow(s.Label, "bag", "", pieces, "from")},
		Rules:   page.Lined,
	}
	if pic == nil {
		t.Columns[1].Width = s.Gap
	}
	for i := range b.q.Bags.Bags {
		g := &b.q.Bags.Bags[i]
		if slices.ContainsFunc(g.Places, func(p bag.Place) bool { return p.Block == block.ID }) {
			t.Rows = append(t.Rows, b.blockBagRows(g, block, pic)...)
		}
	}
	return []page.Block{t}
}

func (b *binder) blockBagRows(g *bag.Bag, block *plan.Block, pic *picture.Picture) []page.Row {
	s := b.style
	var rows []page.Row
	for i, r := range g.Rows {
		row := page.Row{With: i < len(g.Rows)-1, Mark: "block bag " + block.ID + " " + digits(g.Number), Cells: make([]page.Cell, 2, 4)}
		if i == 0 {
			row.Cells[0] = page.Cell{Text: s.Bold.Say(digits(g.Number))}
			if pic != nil {
				if marked, any := InBag(b.q.Plan, pic, g); any {
					row.Cells[1] = pictureCell([]spotted{{pic, marked}}, "block "+block.ID+" bag "+digits(g.Number))
				}
			}
		}
		row.Cells = append(row.Cells, page.Cell{Text: b.pieceWords(r, nil)}, b.sources(r))
		rows = append(rows, row)
	}
	return rows
}

// pictureSide is how large a block's little picture is.
const pictureSide = 11 * length.MM

// pictureCell is a cell with little pictures side by side, those that are not too
// fine to be told apart.
func pictureCell(pictures []spotted, mark string) page.Cell {
	var shown []spotted
	for _, sp := range pictures {
		if place(sp.pic, page.Box{W: pictureSide, H: pictureSide}).finest() >= finestPatch {
			shown = append(shown, sp)
		}
	}
	if len(shown) == 0 {
		return page.Cell{}
	}
	return page.Cell{W: pictureSide, H: pictureSide, Sit: page.Top, Draw: func(p *page.Pen, box page.Box) {
		for i, sp := range shown {
			at := page.Box{X: box.X + length.Length(i)*(pictureSide+2*hair), Y: box.Y, W: pictureSide, H: pictureSide}
			if i > 0 && at.Right() > box.Right() {
				return
			}
			drawMarked(p, place(sp.pic, at.Inset(p.Style.Hair.Width/2)), sp.marked, mark)
		}
	}}
}

// finestPatch is the least side of a patch in a little picture.
const finestPatch = 7 * length.MM / 10
