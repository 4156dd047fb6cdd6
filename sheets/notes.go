package sheets

import (
	"cutbinder/layout/length"
	"cutbinder/layout/page"
)

// notes is a page for miscuts, leftovers and what to remember.
func (b *binder) notes() []page.Block {
	s := b.style
	return []page.Block{
		page.Heading{Text: "Miscuts", Aside: "what went wrong, what it took"}, b.blank(6, "fabric", "size meant", "size cut", "what I did"),
		page.Heading{Text: "Leftovers to keep"}, b.blank(6, "fabric", "measures", "where it is", "used for"),
		page.Heading{Text: "To remember"}, page.Drawing{H: s.Body.Lead * 10, Draw: func(p *page.Pen, box page.Box) {
			for i := 1; i <= 7; i++ {
				p.HLine(box.X, box.Y+box.H*length.Length(i)/7, box.W, s.Hair, "writing line")
			}
		}},
	}
}

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
