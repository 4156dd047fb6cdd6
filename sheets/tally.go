package sheets

import (
	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/page"
	"cutbinder/sheets/say"
)

// mostBoxes is how many pieces get a box each; of more, each strip gets one, or ten
// pieces do where a strip gives more than mostOfStrip: a box that is ticked after a
// hundred pieces tells nobody how far she is.
const (
	mostBoxes   = 120
	mostOfStrip = 30
)

// fewRows is how many rows of a tally are kept on one page: in two columns they
// take about half of it, and nobody turns the page back and forth to tick.
const fewRows = 16

// A heap is the pieces of a size that go into one bag.
type heap struct {
	bag, count, spares int
	finished           length.Size
	lies               length.Size // what the order of the finished sides follows
}

// heaps sorts a piece's uses by bag, in the order they are cut.
func (q *Quilt) heaps(f *cutting.Fabric, p *cutting.Piece) []heap {
	var all []heap
	at := map[int]int{}
	for u, use := range p.Uses {
		n := q.Bags.Of(f.Fabric.ID, p.ID, u)
		i, ok := at[n]
		if !ok {
			i = len(all)
			at[n] = i
			all = append(all, heap{bag: n, finished: use.Finished, lies: lies(p.Size, use)})
		}
		all[i].count += use.Count
		all[i].spares += use.Spares
		if use.Finished != all[i].finished {
			all[i].finished = length.Size{}
		}
	}
	return all
}

// lies is the size whose order of sides a finished size follows: of strips that are
// joined, what they become, as in the bags' key.
func lies(cut length.Size, use cutting.Use) length.Size {
	if use.Joined != nil {
		return use.Joined.Size
	}
	return cut
}

// tally is the boxes to tick, a row for each size and bag.
func (b *binder) tally(f *cutting.Fabric) []page.Block {
	s := b.style
	t := page.Table{Columns: []page.Column{{Width: b.tallySizes(f)}, {}, {Share: 1}}, Pad: s.Gap}
	if b.fitting.close {
		t.Pad = s.Gap / 2
	}
	spares := false
	for i, p := range f.Pieces {
		for _, h := range b.q.heaps(f, p) {
			t.Rows = append(t.Rows, b.tallyRow(f, i, h))
			spares = spares || h.spares > 0
		}
	}
	rows := b.tallyColumns(t)
	aside := "one box a piece · a number after every ten"
	if spares {
		aside = "one box a piece · dotted boxes are spares"
	}
	blocks := []page.Block{page.Heading{Text: "Tally", Aside: aside}, rows}
	if len(t.Rows) <= fewRows {
		return []page.Block{page.Keep{Blocks: blocks}}
	}
	return blocks
}

// tallyColumns sets a tally in two columns where it is lower so, and no row of it so
// high that its heading would have no room on the same page.
func (b *binder) tallyColumns(t page.Table) page.Block {
	two := page.Columns{N: 2, Gutter: b.style.Break, Blocks: []page.Block{t}}
	body := b.book.Body()
	if b.o.Large || page.HeightOf(b.style, body.W, two) >= page.HeightOf(b.style, body.W, t) {
		return t
	}
	for _, row := range t.Rows {
		one := t
		one.Rows = []page.Row{row}
		if page.HeightOf(b.style, (body.W-two.Gutter)/2, one) > body.H*3/4 {
			return t
		}
	}
	return two
}

// tallySizes is the width of the widest size, so that boxes line up.
func (b *binder) tallySizes(f *cutting.Fabric) length.Length {
	w := length.Length(0)
	for _, p := range f.Pieces {
		w = max(w, b.style.Lead.Say(b.v.Size(p.Size)).Width(b.style.Fonts))
		for _, u := range p.Uses {
			w = max(w, b.style.Label.Say(b.v.Finished(u.Finished, lies(p.Size, u))).Width(b.style.Fonts))
		}
	}
	return w
}

func (b *binder) tallyRow(f *cutting.Fabric, i int, h heap) page.Row {
	s, p := b.style, f.Pieces[i]
	size := s.Lead.Say(b.v.Size(p.Size))
	if h.finished.W > 0 {
		size = append(size, s.Label.Span("\n"+b.v.Finished(h.finished, h.lies)))
	}
	mark := "tally " + p.ID + " bag " + digits(h.bag)
	return page.Row{Mark: "tally row " + p.ID + " bag " + digits(h.bag), Cells: []page.Cell{
		{Text: size},
		{W: s.Body.Size * 5, H: s.Body.Lead * 3 / 2, Sit: page.Top, Draw: func(pen *page.Pen, box page.Box) {
			badge := page.Box{X: box.X, Y: box.Y, W: s.Body.Size * 5, H: s.Body.Lead * 3 / 2}
			pen.Badge(badge, s.Bold, "bag badge", "bag "+digits(h.bag), digits(h.bag))
			pen.Link(badge, "bag "+digits(h.bag))
		}},
		{Sit: page.Top, Blocks: b.boxes(f, i, h, mark)},
	}}
}

// boxes is a box a piece, or a box a strip or for ten where there are too many.
func (b *binder) boxes(f *cutting.Fabric, i int, h heap, mark string) []page.Block {
	s, n := b.style, h.count+h.spares
	if f.IsDone(f.Pieces[i]) {
		return []page.Block{page.Para{Text: s.Help.Say(say.Count(n) + " cut already"), Mark: "tally done"}}
	}
	if n <= mostBoxes {
		return []page.Block{page.Tally{N: n, Spare: h.spares, Mark: mark}}
	}
	boxes := f.StripsWith(i)
	text := say.Count(n) + " pieces from " + digits(boxes) + " " + say.Plural(boxes, "strip", "strips") + ": one box a strip"
	if n > boxes*mostOfStrip {
		boxes = (n + 9) / 10
		text = say.Count(n) + " pieces: one box for ten"
		if rest := n % 10; rest > 0 {
			text += ", the last for " + digits(rest)
		}
	}
	if h.spares > 0 {
		text += ", " + say.Spares(h.spares) + " among them"
	}
	return []page.Block{page.Para{Text: s.Body.Say(text), Mark: "tally note"}, page.Tally{N: boxes, Mark: mark}}
}
