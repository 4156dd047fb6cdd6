package page

import (
	"slices"

	"cutbinder/layout/length"
)

// A laid is a cell cut into slabs.
type laid struct {
	cell  *Cell
	x, w  length.Length
	slabs []slab
	h     length.Length
	base  length.Length // its first baseline, 0 where it has none
}

// row cuts a table row into slabs: one, or several where it is higher than a page, or
// so high that a heading above it has no room and parts of it are low. Drawings stand
// in the first, and a line under the last.
func (g *grid) row(r *Row, head bool) []slab {
	cells := g.cells(r, head)
	tall := g.tall - 2*g.pad
	most := tall * 3 / 4
	if holdsHigher(cells, tall/2) { // then parts would be hardly lower, and what is beside it torn
		most = tall
	}
	if rowHeight(cells) <= most {
		return []slab{g.strip(r, cells, head, false)}
	}
	var out []slab
	for more := true; more; {
		var part []laid
		part, cells, more = breakRow(cells, tall/2)
		out = append(out, g.strip(r, part, head, more))
	}
	return out
}

// holdsHigher says whether something that isn't broken, such as a drawing, is higher
// than h.
func holdsHigher(cells []laid, h length.Length) bool {
	return slices.ContainsFunc(cells, func(c laid) bool {
		return slices.ContainsFunc(c.slabs, func(s slab) bool { return s.h > h })
	})
}

// cells lays out the cells of a row.
func (g *grid) cells(r *Row, head bool) []laid {
	var out []laid
	i := 0
	for k := range r.Cells {
		cell := &r.Cells[k]
		if i >= len(g.Columns) {
			break
		}
		x, w := g.cellBox(i, cell)
		mark := cell.Mark
		if mark == "" {
			mark = r.Mark
		}
		l := laid{cell: cell, x: x, w: w, slabs: g.content(i, cell, w, mark, head)}
		l.size()
		out = append(out, l)
		i += cell.span()
	}
	return out
}

// size measures a cell's slabs.
func (l *laid) size() {
	placed, _, h := stack(l.slabs, endless, false)
	l.h = h
	if len(placed) > 0 {
		l.base = placed[0].base
	}
}

// content is a cell's slabs.
func (g *grid) content(i int, cell *Cell, w length.Length, mark string, head bool) []slab {
	align := g.Columns[i].Align
	if cell.Own {
		align = cell.Align
	}
	switch {
	case cell.Draw != nil:
		return []slab{{h: cell.H, draw: cell.Draw}}
	case cell.Blocks != nil:
		return solid(slabsOf(g.c, w, cell.Blocks))
	case cell.Text == nil:
		return []slab{{h: cell.H}}
	case align == Figures && !head && cell.span() == 1:
		if s, ok := g.figures(i, cell, w, mark); ok {
			return []slab{s}
		}
	}
	return Para{Text: cell.Text, Align: align, Mark: mark}.slabs(g.c, w)
}

// figures sets a cell on one line with the end of its whole number in line
// with the others of its column.
func (g *grid) figures(i int, cell *Cell, w length.Length, mark string) (slab, bool) {
	as := cell.Text.atoms(g.c.style.Fonts)
	ls := lines(as, w)
	k := wholeFigures(as)
	if len(ls) != 1 || g.whole[i]+g.tail[i] > w || k == 0 && !startsFraction(as) {
		return slab{}, false
	}
	lead := leadOf(as, 0)
	base := (&Pen{Style: g.c.style}).baseline(as, lead)
	left := w - g.tail[i] - measure(as[:k]).up()
	draw := func(p *Pen, b Box) {
		p.set(as, Box{b.X + left, b.Y, b.W - left, b.H}, b.Y+base, Left, mark)
	}
	return slab{h: lead, base: base, draw: draw}, true
}

// startsFraction reports whether a text starts with a fraction of no whole
// number.
func startsFraction(as []atom) bool {
	if len(as) == 0 || len(as[0].glyphs) == 0 {
		return false
	}
	g := as[0].glyphs[0]
	_, ok := vulgar[g.r]
	return ok || g.part
}

// rowHeight is how high the highest cell of a row is, with baselines in line.
func rowHeight(cells []laid) length.Length {
	base := rowBase(cells)
	h := length.Length(0)
	for _, c := range cells {
		h = max(h, c.drop(base)+c.h, c.cell.H)
	}
	return h
}

// rowBase is the lowest first baseline among the cells that line up.
func rowBase(cells []laid) length.Length {
	base := length.Length(0)
	for _, c := range cells {
		if c.cell.Sit == Baseline {
			base = max(base, c.base)
		}
	}
	return base
}

// drop is how far a cell is moved down to put its first baseline in line.
func (l *laid) drop(base length.Length) length.Length {
	if l.cell.Sit == Baseline && l.base > 0 {
		return base - l.base
	}
	return 0
}

// strip is a row of laid cells as one slab, with more of them to come or not.
func (g *grid) strip(r *Row, cells []laid, head, more bool) slab {
	h, base := rowHeight(cells), rowBase(cells)
	draw := func(p *Pen, b Box) {
		g.ground(p, b, r)
		inner := b.Y + g.pad
		for i := range cells {
			c := &cells[i]
			y := inner + c.sit(base, h)
			room := Box{b.X + c.x, y, c.w, max(c.h, h-(y-inner))}
			c.drawIn(p, room, Box{b.X + c.x, inner, c.w, h})
		}
		g.rules(p, b, cells, head, more)
	}
	return slab{h: h + 2*g.pad, draw: draw, base: baseIn(base, g.pad)}
}

// baseIn is a row's first baseline as its table's first one.
func baseIn(base, pad length.Length) length.Length {
	if base == 0 {
		return 0
	}
	return base + pad
}

// sit is how far below the row's top a cell stands.
func (l *laid) sit(base, h length.Length) length.Length {
	switch l.cell.Sit {
	case Middle:
		return (h - l.h) / 2
	case Bottom:
		return h - l.h
	}
	return l.drop(base)
}

// drawIn draws a cell's slabs in its room; a cell that is one drawing gets the
// row's whole height.
func (l *laid) drawIn(p *Pen, room, full Box) {
	if l.cell.Draw != nil {
		if len(l.slabs) == 0 { // it stands above
			return
		}
		if l.cell.Sit == Baseline || l.cell.Sit == Top {
			room = full
		} else {
			room.H = l.h
		}
		l.cell.Draw(p, room)
		return
	}
	placed, _, _ := stack(l.slabs, endless, false)
	for _, s := range placed {
		s.drawAt(p, room)
	}
}

// ground fills the row.
func (g *grid) ground(p *Pen, b Box, r *Row) {
	if r.Fill != NoInk {
		p.Rect(Box{b.X, b.Y, g.right(), b.H}, r.Fill, Stroke{}, "row ground")
	}
}

// rules draws a row's lines.
func (g *grid) rules(p *Pen, b Box, cells []laid, head, more bool) {
	s := p.Style
	switch g.Rules {
	case Lined:
		if more {
			return
		}
		st := s.Hair.With(Mid)
		if head {
			st = s.Hair
		}
		p.HLine(b.X, b.Bottom(), g.right(), st, "table rule")
	case Grid:
		half := g.gutter / 2
		for _, c := range cells {
			p.Rect(Box{b.X + c.x - half, b.Y, c.w + 2*half, b.H}, NoInk, s.Hair.With(Mid), "cell")
		}
	}
}

// breakRow takes from each cell what fits into a height; more is set while any
// cell has something left.
func breakRow(cells []laid, h length.Length) (part, rest []laid, more bool) {
	for _, c := range cells {
		_, n, _ := stack(c.slabs, h, true)
		p, q := c, c
		p.slabs, q.slabs = c.slabs[:n], c.slabs[n:]
		p.size()
		q.size()
		part, rest = append(part, p), append(rest, q)
		more = more || len(q.slabs) > 0
	}
	return part, rest, more
}
