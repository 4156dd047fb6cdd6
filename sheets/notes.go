package sheets

import (
	"slices"

	"cutbinder/layout/length"
	"cutbinder/layout/page"
)

// notes is a page for miscuts, leftovers and what to remember, with lines to write
// on down to its foot; in large print two.
func (b *binder) notes() []page.Block {
	s, body := b.style, b.book.Body()
	blocks := []page.Block{
		page.Heading{Text: "Miscuts", Aside: "what went wrong, what it took"}, b.blank(6, "fabric", "size meant", "size cut", "what I did"),
		page.Heading{Text: "Leftovers to keep"}, b.blank(6, "fabric", "measures", "where it is", "used for"),
		page.Heading{Text: "To remember"},
	}
	step := s.Body.Lead * 3 / 2
	lines := func(n length.Length) []page.Block {
		return append(slices.Clip(blocks), page.Drawing{H: step * n, Draw: func(p *page.Pen, box page.Box) {
			for i := range n {
				p.HLine(box.X, box.Y+step*(i+1), box.W, s.Hair, "writing line")
			}
		}})
	}
	least, _ := b.book.Extent(page.Section{Blocks: lines(fewLines)})
	n := body.H / step
	for ; n > fewLines; n-- {
		if pages, _ := b.book.Extent(page.Section{Blocks: lines(n)}); pages == least {
			break
		}
	}
	return lines(n)
}

// fewLines is how many lines to write on there are at the least.
const fewLines = 7

// blank is a table of empty rows to write in.
func (b *binder) blank(rows int, heads ...string) page.Block {
	s := b.style
	t := page.Table{Head: []page.Row{page.TextRow(s.Label, heads...)}, Rules: page.Grid}
	for range heads {
		t.Columns = append(t.Columns, page.Column{Share: 1})
	}
	for range rows {
		row := page.Row{Cells: make([]page.Cell, len(heads))}
		row.Cells[0].H = s.Body.Lead * 3 / 2
		t.Rows = append(t.Rows, row)
	}
	return t
}
