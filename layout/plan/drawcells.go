package plan

import (
	"slices"
	"strings"

	"cutbinder/layout/length"
)

// readDrawing keeps a block's drawing until all of the block is read; see drawn.
func readDrawing(_ *reader, _ Key, v value, b *Block) { b.draw = v }

// drawing reads a block's rows of cells.
func (r *reader) drawing(b *Block) {
	k, v := Key{Name: "draw", Kind: KindCells, Example: "[dusk wick/dusk, wick/dusk dusk]"}, b.draw
	rows := r.rowsOf(k, v)
	if len(rows) == 0 || r.tooMany(k, v, len(rows), maxGrid) || r.tooMany(k, v, len(rows[0]), maxGrid) {
		return
	}
	for _, row := range rows[1:] {
		if len(row) != len(rows[0]) {
			r.fault(row[0].at, "< stands for more of the cell at the left, ^ for more of the cell above",
				"the row has %d cells; the first row has %d", len(row), len(rows[0]))
			return
		}
	}
	d := &Drawing{}
	if r.tracksOf(b, d, len(rows[0]), len(rows)) && r.cells(b, d, rows) {
		b.Drawing = d
	}
}

// tracksOf gives a drawing's columns and rows their finished widths and heights: as
// they are written, or all of the cell's size, or the block's size shared out.
func (r *reader) tracksOf(b *Block, d *Drawing, across, down int) bool {
	before := len(r.faults)
	d.Columns = r.tracks(b, "columns", b.columns, across, b.cell.W, b.Finished.W)
	d.Rows = r.tracks(b, "rows", b.rows, down, b.cell.H, b.Finished.H)
	return len(r.faults) == before && len(d.Columns) == across && len(d.Rows) == down
}

// tracks are the columns or the rows of a drawing.
func (r *reader) tracks(b *Block, what string, written []length.Length, n int, cell, whole length.Length) []length.Length {
	at := b.Place("draw")
	switch {
	case len(written) > 0 && len(written) != n:
		r.fault(b.Place(what), "", "%s: %d are written; the drawing has %d", what, len(written), n)
	case len(written) > 0:
		return written
	case cell > 0:
		return slices.Repeat([]length.Length{cell}, n)
	case whole == 0 && !r.misspelt(b.Node, "cell", "finished") && !r.faultyAt(b.Place("cell")) && !r.faultyAt(b.Place("finished")) && !r.faultyAt(at):
		r.fault(at, "write cell: 3, or finished: and the block's size", "the drawing of the block has no size; expected cell or finished")
	case whole%length.Length(n) != 0:
		r.fault(at, "write cell: and a cell's finished size, or columns: and rows: with theirs",
			"%s does not part into %d %s", r.plan.Units.Format(whole, length.WithUnit), n, what)
	case whole > 0:
		return slices.Repeat([]length.Length{whole / length.Length(n)}, n)
	}
	return nil
}

// cells reads the words of a drawing's rows. False says that some can't be used.
func (r *reader) cells(b *Block, d *Drawing, rows [][]word) bool {
	before := len(r.faults)
	owner := make([][]int, len(rows)) // for each square of the grid, the index of its cell
	for y, row := range rows {
		owner[y] = make([]int, len(row))
		for x, w := range row {
			switch {
			case w.text == "<" && x > 0:
				owner[y][x] = owner[y][x-1]
			case w.text == "^" && y > 0:
				owner[y][x] = owner[y-1][x]
			case w.text == "<" || w.text == "^":
				r.fault(w.at, "", "%s stands for more of the cell %s, and none is there", w.text, map[string]string{"<": "at the left", "^": "above"}[w.text])
				return false
			default:
				owner[y][x] = len(d.Cells)
				d.Cells = append(d.Cells, Cell{At: w.at, Word: w.text, Column: x, Row: y})
			}
			c := &d.Cells[owner[y][x]]
			c.Across, c.Down = max(c.Across, x-c.Column+1), max(c.Down, y-c.Row+1)
		}
	}
	whole := true
	for i := range d.Cells {
		// A name that isn't known leaves a cell empty, and isn't always told: not
		// where the plan has no fabrics at all.
		whole = r.rectangular(d, owner, i) && r.cell(b, d, &d.Cells[i]) && whole
	}
	return whole && len(r.faults) == before
}

// rectangular checks that a cell fills a rectangle.
func (r *reader) rectangular(d *Drawing, owner [][]int, i int) bool {
	c := &d.Cells[i]
	for y := c.Row; y < c.Row+c.Down; y++ {
		for x := c.Column; x < c.Column+c.Across; x++ {
			if owner[y][x] != i {
				r.fault(c.At, "", "the cell %s and the < and ^ that belong to it do not fill a rectangle", shorten(c.Word))
				return false
			}
		}
	}
	for _, w := range d.Columns[c.Column : c.Column+c.Across] {
		c.Size.W += w
	}
	for _, h := range d.Rows[c.Row : c.Row+c.Down] {
		c.Size.H += h
	}
	return true
}

// cell reads what a cell is: its unit and its fabrics. False says that they can't
// be made out.
func (r *reader) cell(b *Block, d *Drawing, c *Cell) bool {
	names, s, ok := r.parts(c)
	if !ok {
		return false
	}
	c.Unit, c.Turn = s.unit, s.turn
	for i, name := range names {
		if source, ok := r.drawnSource(b, c.At.right(nameAt(c.Word, s.text, i)), name); ok {
			c.Sources = append(c.Sources, source)
		}
	}
	if len(c.Sources) < len(names) {
		return false
	}
	if c.Unit == Hourglass {
		c.Sources = aroundHourglass(c.Sources)
	}
	r.cellShape(b, c)
	return true
}

// nameAt is how many characters into a word its i-th name begins.
func nameAt(word, sign string, i int) int {
	if i == 0 {
		return 0
	}
	parts := strings.SplitN(word, sign, i+1)
	return len([]rune(strings.Join(parts[:i], sign))) + len(sign)
}

// parts cuts a cell's word at its sign. A bare name is a patch.
func (r *reader) parts(c *Cell) (names []string, s sign, ok bool) {
	i := strings.IndexAny(c.Word, signLetters)
	if i < 0 {
		return []string{c.Word}, sign{unit: Patch, most: 1}, true
	}
	for _, s = range signs {
		if strings.HasPrefix(c.Word[i:], s.text) {
			break
		}
	}
	names = strings.Split(c.Word, s.text)
	if len(names) > s.most || slices.Contains(names, "") || strings.ContainsAny(strings.Join(names, ""), signLetters) {
		r.fault(c.At, "", "found %s in the drawing; expected a fabric such as dusk, or two with a sign between: dusk/wick, dusk\\wick, dusk/\\wick, dusk><wick, dusk<>wick", shorten(c.Word))
		return nil, s, false
	}
	return names, s, true
}

// drawnSource finds what a name in a drawing stands for: the block's letters come
// first, then the plan's, then the names of fabrics and mixes.
func (r *reader) drawnSource(b *Block, at Pos, name string) (Source, bool) {
	for _, letters := range []map[string]Source{b.letters, r.plan.letters} {
		if s, ok := letters[name]; ok {
			s.At = at
			return s, true
		}
	}
	return r.source(Key{Name: "draw", Kind: KindSource, Example: "dusk"}, value{at: at, shape: text, text: name})
}

// aroundHourglass writes out the four triangles of an hourglass clockwise from
// the top. Of two fabrics the first is above and below; of three the first is
// too, the second at the right.
func aroundHourglass(s []Source) []Source {
	switch len(s) {
	case 2:
		return []Source{s[0], s[1], s[0], s[1]}
	case 3:
		return []Source{s[0], s[1], s[0], s[2]}
	}
	return s
}

// cellShape checks that a cell has the shape its unit needs.
func (r *reader) cellShape(b *Block, c *Cell) {
	say := func(z length.Size) string { return r.plan.Units.FormatSize(z, length.WithUnit) }
	z := c.Size
	if c.Unit == Geese && c.Turn%2 == 1 {
		z.W, z.H = z.H, z.W
	}
	switch rule := unitRules[c.Unit]; {
	case rule.square && z.W != z.H:
		r.fault(c.At, "", "the cell %s is %s; a %s is square", shorten(c.Word), say(c.Size), c.Unit)
	case c.Unit == Geese && z.W < 2*z.H:
		r.fault(c.At, "let the goose cover two cells: a < behind it where it points up or down, a ^ below it where it points left or right",
			"the cell %s is %s; a goose is at least twice as wide as it is high", shorten(c.Word), say(c.Size))
	case c.Unit == Geese && z.W > 2*z.H && b.methods.geese != StitchAndFlip:
		r.fault(c.At, "write methods: {geese: stitch-and-flip} for other shapes",
			"the cell %s is %s; geese made four at a time are twice as wide as high", shorten(c.Word), say(c.Size))
	}
}
