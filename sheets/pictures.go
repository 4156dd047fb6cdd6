package sheets

import (
	"fmt"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/page"
)

// pictures is the diagram's windows, each a drawing that stays whole, or two of them
// side by side. Where there are several, each says which it is and where it goes on.
func (b *binder) pictures(d *diagram, windows []page.Box, title string) []page.Block {
	across := 1
	if d.abreast {
		across = 2
	}
	var blocks []page.Block
	for k := 0; k < len(windows); k += across {
		if k > 0 {
			blocks = append(blocks, page.Heading{
				Text:    fmt.Sprintf("%s, continued, to scale 1:%d", title, d.scale),
				Aside:   continues(k, len(windows)),
				Shorter: []string{fmt.Sprintf("continued from picture %d", k), fmt.Sprintf("from picture %d", k)},
			})
		}
		if d.abreast && k+1 < len(windows) {
			blocks = append(blocks, b.abreast(d, windows, k))
			continue
		}
		blocks = append(blocks, d.picture(windows, k))
	}
	return blocks
}

// continues says which of several pictures one is.
func continues(k, of int) string {
	return fmt.Sprintf("picture %d of %d, continued from picture %d", k+1, of, k)
}

// windows cuts a cloth's drawing into parts that have room on a page: the first below
// the fabric's head, each below its heading.
func (b *binder) windows(f *cutting.Fabric, i int, d *diagram) []page.Box {
	body := b.book.Body()
	heading := page.Heading{Text: "continued"}
	first := body.H - d.head() - d.foot(d.whole()) - b.style.Break
	if d.abreast {
		first -= page.HeightOf(b.style, d.width(), d.caption(1, 2))
	}
	room := first - page.HeightOf(b.style, body.W, heading)
	first -= page.HeightOf(b.style, body.W, b.alikeNote(f, i)...)
	if i == 0 {
		first -= page.HeightOf(b.style, body.W, b.fabricHead(f)...) + 2*b.style.Break + b.style.Caps.Lead
	}
	return d.windows(first, room)
}

// picture is one window.
func (d *diagram) picture(windows []page.Box, k int) page.Block {
	w, next := windows[k], ""
	if k+1 < len(windows) {
		next = fmt.Sprintf("picture %d of %d", k+2, len(windows))
	}
	h := (w.H+length.Length(d.scale)-1)/length.Length(d.scale) + d.head() + d.foot(w)
	return page.Drawing{H: h, Draw: func(p *page.Pen, box page.Box) { d.draw(p, box, w, next) }}
}

// abreast is the windows k and k+1 side by side, in the order of reading for either hand.
func (b *binder) abreast(d *diagram, windows []page.Box, k int) page.Block {
	t := page.Table{Columns: []page.Column{{Width: d.width()}, {Width: d.width()}}, Pad: page.NoPad, Gutter: abreastGutter(b.style)}
	cells := make([]page.Cell, 2)
	for j := range cells {
		cells[j] = page.Cell{Blocks: []page.Block{d.caption(k+j, len(windows)), d.picture(windows, k+j)}, Sit: page.Top}
	}
	t.Rows = []page.Row{{Cells: cells}}
	return t
}

// caption says which of several pictures side by side one is. Of the first of a page
// the heading says it.
func (d *diagram) caption(k, of int) page.Block {
	words, mark := fmt.Sprintf("picture %d of %d", k+1, of), "caption"
	if k%2 == 1 {
		words, mark = continues(k, of), "aside"
	}
	return page.Para{Text: d.b.style.Label.Say(words), Mark: mark}
}
