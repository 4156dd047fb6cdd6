package page

import (
	"sort"

	"cutbinder/layout/length"
)

// measure finds the columns' widths.
//
// Fixed columns come first. Each other column has a natural width (its widest
// cell unbroken) and a least one (its widest word, but no more than two fifths of
// the table: one endless word shall not squeeze what stands beside it). If the natural widths fit,
// automatic columns take theirs and sharing columns divide the rest; if not,
// every column gets its least width and what is left is given out in
// proportion to what each still wants. Where even the least do not fit they
// are cut down alike, and words break.
func (t *Table) measure(c *setting, w length.Length) *grid {
	g := &grid{Table: t, c: c, gutter: t.Gutter, pad: t.Pad}
	g.usual()
	n := len(t.Columns)
	if n == 0 {
		g.Table = &Table{Columns: []Column{{Share: 1}}, Head: t.Head, Rows: t.Rows, Rules: t.Rules}
		n = 1
	}
	g.whole, g.tail = make([]length.Length, n), make([]length.Length, n)
	natural, least := g.wants()
	if t.Rules == Grid {
		g.edge = g.gutter / 2
	}
	room := w - g.gutter*length.Length(n-1) - 2*g.edge
	for i, col := range g.Columns {
		if col.Width == 0 && col.Align != Figures {
			least[i] = min(least[i], room*2/5)
		}
	}
	g.w = g.widths(natural, least, room)
	g.x = make([]length.Length, n)
	g.x[0] = g.edge
	for i := 1; i < n; i++ {
		g.x[i] = g.x[i-1] + g.w[i-1] + g.gutter
	}
	return g
}

// Natural is how wide the cells of one column are that span no other, their texts
// unbroken.
func (t *Table) Natural(s *Style, column int) length.Length {
	g := &grid{Table: &Table{Columns: make([]Column, column+1), Head: t.Head, Rows: t.Rows}, c: &setting{style: s, tall: endless}}
	g.whole, g.tail = make([]length.Length, column+1), make([]length.Length, column+1)
	natural, _ := g.wants()
	return natural[column]
}

// usual puts the style's distances in place of zeros.
func (g *grid) usual() {
	s := g.c.style
	switch g.gutter {
	case 0:
		g.gutter = s.Break
	case NoPad:
		g.gutter = 0
	}
	switch g.pad {
	case 0:
		g.pad = s.Gap / 2
	case NoPad:
		g.pad = 0
	}
}

// wants is the natural and the least width of each column.
func (g *grid) wants() (natural, least []length.Length) {
	n := len(g.Columns)
	natural, least = make([]length.Length, n), make([]length.Length, n)
	for _, rows := range [][]Row{g.Head, g.Rows} {
		for r := range rows {
			i := 0
			for k := range rows[r].Cells {
				cell := &rows[r].Cells[k]
				if i < n && cell.span() == 1 {
					line, word := g.cellWants(i, cell)
					natural[i], least[i] = max(natural[i], line), max(least[i], word)
				}
				i += cell.span()
			}
		}
	}
	for i, col := range g.Columns {
		if col.Width != 0 {
			natural[i], least[i] = col.Width, col.Width
		} else if col.Align == Figures {
			natural[i] = max(natural[i], g.whole[i]+g.tail[i])
			least[i] = natural[i]
		}
	}
	return natural, least
}

// cellWants is a cell's natural and least width; figures are noted for their
// column.
func (g *grid) cellWants(i int, cell *Cell) (line, word length.Length) {
	switch {
	case cell.Text != nil:
		as := cell.Text.atoms(g.c.style.Fonts)
		line, word = natural(as)
		if k := wholeFigures(as); g.Columns[i].Align == Figures && !cell.Own && (k > 0 || startsFraction(as)) {
			g.whole[i] = max(g.whole[i], measure(as[:k]).up())
			g.tail[i] = max(g.tail[i], measure(as[k:]).up())
		}
	case cell.Blocks != nil:
		line, word = blocksWant(g.c, cell.Blocks)
	}
	return max(line, cell.W), max(word, cell.W)
}

// blocksWant is the natural and least width of the paragraphs among blocks.
func blocksWant(c *setting, blocks []Block) (line, word length.Length) {
	for _, b := range blocks {
		if p, ok := b.(Para); ok {
			l, w := natural(p.Text.atoms(c.style.Fonts))
			line, word = max(line, l), max(word, w)
		}
	}
	return line, word
}

// widths gives out the room among the columns.
func (g *grid) widths(natural, least []length.Length, room length.Length) []length.Length {
	var wanted, needed length.Length
	shares := 0
	for i, col := range g.Columns {
		if col.Width == 0 && col.Share > 0 {
			shares += col.Share
			wanted += least[i]
		} else {
			wanted += natural[i]
		}
		needed += least[i]
	}
	switch {
	case wanted > room:
		return g.squeeze(natural, least, room, needed)
	case shares > 0:
		return g.share(natural, least, room)
	case g.Stretch && wanted > 0:
		return g.stretch(natural, room-wanted)
	}
	return natural
}

// share gives automatic columns their natural width and divides the rest by
// shares, but gives no column less than its least width.
func (g *grid) share(natural, least []length.Length, room length.Length) []length.Length {
	out := append([]length.Length(nil), natural...)
	var open []int
	shares, rest := 0, room
	for i, col := range g.Columns {
		if col.Width == 0 && col.Share > 0 {
			open, shares = append(open, i), shares+col.Share
		} else {
			rest -= natural[i]
		}
	}
	for again := true; again; {
		again = false
		for k, i := range open {
			share := length.Length(g.Columns[i].Share)
			if rest*share/length.Length(shares) < least[i] {
				out[i] = least[i]
				rest, shares = rest-least[i], shares-int(share)
				open = append(open[:k:k], open[k+1:]...)
				again = len(open) > 0
				break
			}
		}
	}
	for _, i := range open {
		share := length.Length(g.Columns[i].Share)
		out[i] = rest * share / length.Length(shares)
		rest, shares = rest-out[i], shares-int(share)
	}
	return out
}

// stretch adds the spare room to the columns that are not fixed, alike.
func (g *grid) stretch(natural []length.Length, spare length.Length) []length.Length {
	out := append([]length.Length(nil), natural...)
	left := 0
	for _, col := range g.Columns {
		if col.Width == 0 {
			left++
		}
	}
	for i, col := range g.Columns {
		if col.Width == 0 {
			add := spare / length.Length(left)
			out[i], spare, left = out[i]+add, spare-add, left-1
		}
	}
	return out
}

// squeeze gives least widths and divides what is left by what is wanted; where
// not even the least widths fit it cuts the widest of them down.
func (g *grid) squeeze(natural, least []length.Length, room, needed length.Length) []length.Length {
	if needed > room {
		return cutDown(least, room)
	}
	out := make([]length.Length, len(natural))
	var more length.Length
	for i := range natural {
		more += natural[i] - least[i]
	}
	rest := room - needed
	for i := range out {
		out[i] = least[i]
		if want := natural[i] - least[i]; want > 0 {
			add := min(want, rest*want/more)
			out[i], rest, more = out[i]+add, rest-add, more-want
		}
	}
	return out
}

// cutDown gives every column an even share of the room, or its least width
// where that is less: narrow columns keep their words whole, and what they
// leave goes to the wide ones.
func cutDown(least []length.Length, room length.Length) []length.Length {
	out := make([]length.Length, len(least))
	order := make([]int, len(least))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(a, b int) bool { return least[order[a]] < least[order[b]] })
	rest := max(room, 0)
	for k, i := range order {
		out[i] = min(least[i], rest/length.Length(len(order)-k))
		rest -= out[i]
	}
	return out
}
