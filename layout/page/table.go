package page

import (
	"slices"

	"cutbinder/layout/length"
)

// A Table sets rows of cells in columns. It is broken over pages between rows,
// its Head repeated; its first two rows stay together, and its last two, or what is kept
// with them. A row higher than a page is broken inside its cells.
type Table struct {
	Columns []Column
	Head    []Row
	Rows    []Row
	Rules   Rules
	// Gutter is the white between columns; Pad the white above and below the
	// cells of a row. The zero of each is the style's usual one; NoPad is none.
	Gutter, Pad length.Length
	// Stretch widens automatic columns until the table fills its width.
	Stretch bool
}

// NoPad asks for no white where zero means the usual one.
const NoPad length.Length = -1

// A Column says how wide a column is and how its cells stand. Width, if it is
// not 0, fixes it. Else Share, if it is not 0, gives it that many shares of
// what the others leave. Else the column is as wide as its cells want.
type Column struct {
	Width length.Length
	Share int
	Align Align
}

// A Row is the cells of one table row. Its Mark goes to the text of cells that
// have none.
type Row struct {
	Cells []Cell
	// With keeps the row on the page of the next.
	With bool
	// Again, which all rows of a group share, stands under the table's head where
	// a page starts inside the group.
	Again *Row
	Fill  Ink
	Mark  string
}

// A Cell holds text, or blocks, or a drawing of size W x H, or nothing. A
// drawing that sits at the Baseline or Top gets the row's whole height to
// draw in, in the middle or at the bottom its own.
type Cell struct {
	Text   Rich
	Blocks []Block
	Draw   func(p *Pen, b Box)
	W, H   length.Length
	// Span is how many columns the cell covers; 0 and 1 are one.
	Span int
	// Align overrides the column's alignment if Own is set.
	Align Align
	Own   bool
	// Sit is where the cell stands in a row that is higher.
	Sit  Sit
	Mark string
}

// A Sit is where a cell stands in the height of its row.
type Sit int

// The ways to sit. Baseline puts the first baselines of a row's texts in line.
const (
	Baseline Sit = iota
	Top
	Middle
	Bottom
)

// Rules is which lines a table draws.
type Rules int

// The kinds of rules.
const (
	Open  Rules = iota // none
	Lined              // a rule under the head, hairlines between rows
	Grid               // hairlines around every cell
)

// TextRow is a row of text cells in one style.
func TextRow(st TextStyle, words ...string) Row {
	var r Row
	for _, w := range words {
		r.Cells = append(r.Cells, Cell{Text: st.Say(w)})
	}
	return r
}

// RichRow is a row of rich text cells.
func RichRow(texts ...Rich) Row {
	var r Row
	for _, t := range texts {
		r.Cells = append(r.Cells, Cell{Text: t})
	}
	return r
}

// TickCell is a cell with a box to tick, in line with the first line of running
// text in its row.
func TickCell(s *Style, mark string) Cell {
	return Cell{W: s.Tick, Blocks: []Block{Tick{mark}}}
}

// span is how many columns a cell covers.
func (c Cell) span() int { return max(c.Span, 1) }

// A grid is a table measured for a width.
type grid struct {
	*Table
	c           *setting
	x, w        []length.Length // left edge and width of each column
	whole       []length.Length // for Figures columns: the widest whole number
	tail        []length.Length // and the widest of what follows it
	gutter, pad length.Length
	edge        length.Length // white outside the first and last column
	tall        length.Length // the height a row may have: a page's, less the head's
}

func (t Table) slabs(c *setting, w length.Length) []slab {
	g := t.measure(c, w)
	g.tall = c.tall
	var head []slab
	for i := range t.Head {
		for _, s := range g.row(&t.Head[i], true) {
			s.with = true
			head = append(head, s)
		}
	}
	out := head
	// Columns are dealt row by row: there a row may stand alone.
	pairs := len(t.Rows) > 1 && !c.inColumns
	first, last := t.groupEnds()
	for i := range t.Rows {
		again := g.again(&t.Rows[i], head)
		g.tall = max(c.tall-heightOf(again), c.tall/4)
		ss := g.row(&t.Rows[i], false)
		for j := range ss {
			if ss[j].head = head; j > 0 || i > 0 && t.Rows[i-1].Again == t.Rows[i].Again {
				ss[j].head = again
			}
			ss[j].with = t.Rows[i].With || j == 0 && len(ss) > 1 ||
				pairs && (i == first && len(ss) == 1 || i == last && j == len(ss)-1)
		}
		out = append(out, ss...)
	}
	return out[:len(out):len(out)]
}

// again is the head of a page that starts inside a row's group.
func (g *grid) again(r *Row, head []slab) []slab {
	if r.Again == nil {
		return head
	}
	g.tall = g.c.tall // it is low
	head = slices.Clip(head)
	for _, s := range g.row(r.Again, false) {
		s.with = true
		head = append(head, s)
	}
	return head
}

// groupEnds are the last rows of the first group of rows that are kept together,
// and of the last group but one.
func (t *Table) groupEnds() (first, last int) {
	for first < len(t.Rows)-1 && t.Rows[first].With {
		first++
	}
	last = len(t.Rows) - 2
	for last >= 0 && t.Rows[last].With {
		last--
	}
	return first, last
}

// heightOf is how high slabs without gaps stand.
func heightOf(slabs []slab) length.Length {
	h := length.Length(0)
	for i := range slabs {
		h += slabs[i].h
	}
	return h
}

// right is the right edge of the last column.
func (g *grid) right() length.Length {
	n := len(g.x) - 1
	return g.x[n] + g.w[n] + g.edge
}

// cellBox is the x and width of a cell that starts at column i.
func (g *grid) cellBox(i int, c *Cell) (x, w length.Length) {
	last := min(i+c.span(), len(g.x)) - 1
	return g.x[i], g.x[last] + g.w[last] - g.x[i]
}
