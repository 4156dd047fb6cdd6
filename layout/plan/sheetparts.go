package plan

import (
	"cmp"
	"slices"
	"strings"

	"cutbinder/layout/workbook"
)

// readNamed reads a sheet with a row for each fabric or block.
func (s *sheetReader) readNamed(which int, noun string, into *[]pair) {
	t := s.table(which)
	for _, r := range s.rows(t) {
		id, at, ok := s.own(t, r, noun, *into)
		if !ok {
			continue
		}
		if len(r.fields.pairs) == 0 {
			r.fields.shape = nothing
		}
		*into = append(*into, pair{at, id, r.fields})
	}
}

// own reads the short name that a row begins with.
func (s *sheetReader) own(t *sheetTable, r row, noun string, before []pair) (id string, at Pos, ok bool) {
	cell, at := r.special["own"], r.places["own"]
	if id = unquoted(strings.TrimSpace(cell.Text)); id == "" {
		s.fault(r.fields.at, "write one into the column "+headingNames(t.which)[0], "the row has no short name for the %s; expected one such as dusk", noun)
		return "", r.fields.at, false
	}
	if !s.sound(Key{Name: noun, Kind: KindText, Example: "dusk"}, cell, at) {
		return "", at, false
	}
	for _, p := range before {
		if p.key == id {
			s.fault(at, "keep one of them, or give one another name", "%s %q is written twice; it stands %s too", noun, shorten(id), p.at.stands())
			return "", at, false
		}
	}
	return id, at, true
}

// quoted puts a short name that would begin a remark between quotes, as unquoted
// takes it out of them.
func quoted(id string) string {
	if strings.HasPrefix(id, "#") || unquoted(id) != id {
		return `"` + id + `"`
	}
	return id
}

func unquoted(id string) string {
	if len(id) > 2 && id[0] == '"' && id[len(id)-1] == '"' {
		return id[1 : len(id)-1]
	}
	return id
}

// readMixes reads the sets of fabrics: a cell for each fabric, or several in one.
func (s *sheetReader) readMixes() {
	t := s.table(mixesSheet)
	if t == nil {
		return
	}
	for _, r := range s.rows(t) {
		id, at, ok := s.own(t, r, "mix", s.mixes)
		if !ok {
			continue
		}
		v := value{at: at, shape: list}
		for i, c := range t.Rows[r.number-1] {
			if i < len(t.heads) && t.heads[i].name == "fabric" && strings.TrimSpace(c.Text) != "" {
				v.items = append(v.items, s.sourcesIn(column{key: Key{Name: "fabric", Kind: KindFabric, Example: "dusk"}}, c, t.at(r.number, i+1))...)
			}
		}
		for i := range v.items {
			v.items[i] = s.resolved(Key{Kind: KindFabric}, v.items[i])
		}
		s.mixes = append(s.mixes, pair{at, id, v})
	}
}

// readPieces reads the cut list, and puts into blocks what belongs to them.
func (s *sheetReader) readPieces() {
	t := s.table(piecesSheet)
	if t == nil {
		return
	}
	if s.plain {
		s.above(t)
	}
	for _, r := range s.rows(t) {
		s.sides(t, &r)
		b := s.blockOf(r)
		s.counted(&r, b)
		slices.SortStableFunc(r.fields.pairs, func(a, b pair) int { return lineOrder(a.key) - lineOrder(b.key) })
		if b == nil {
			s.pieces = append(s.pieces, r.fields)
			continue
		}
		i := slices.IndexFunc(b.val.pairs, func(p pair) bool { return p.key == "pieces" })
		if i < 0 {
			b.val.shape = mapping
			b.val.pairs = append(b.val.pairs, pair{r.fields.at, "pieces", value{at: r.fields.at, shape: list}})
			i = len(b.val.pairs) - 1
		}
		b.val.pairs[i].val.items = append(b.val.pairs[i].val.items, r.fields)
	}
}

// lineOrder is where a key stands in a line of pieces as people write it.
func lineOrder(key string) int {
	first := []string{"unit", "finished", "cut", "each", "need", "fabric", "mix", "fabrics", "for"}
	if i := slices.Index(first, key); i >= 0 {
		return i
	}
	return len(first)
}

// blockOf is the block that a row names; nil where it names none. Without a sheet
// of blocks, a cut list makes each block that it names once.
func (s *sheetReader) blockOf(r row) *pair {
	cell, at := r.special["block"], r.places["block"]
	id := unquoted(strings.TrimSpace(cell.Text))
	if id == "" || !s.sound(Key{Name: "block", Kind: KindText, Example: "A"}, cell, at) {
		return nil
	}
	var names []string
	for i := range s.blocks {
		b := &s.blocks[i]
		if names = append(names, b.key); b.key == id {
			return b
		}
	}
	for i := range s.blocks {
		if b := &s.blocks[i]; strings.EqualFold(b.key, id) || strings.EqualFold(nameIn(b.val), id) {
			return b
		}
	}
	made := value{at: at, shape: mapping}
	switch {
	case s.sheets[blocksSheet] != nil:
		hint := cmp.Or(meant(id, names), "leave the cell empty for pieces of no block, and say in the column for what they are")
		s.fault(at, hint, "block %q is not in this plan; expected one of %s", shorten(id), some(names))
		return &pair{at, id, made} // what is in it is told of nowhere
	case r.special["each"].Text == "":
		made.pairs = []pair{{at, "make", textAt("1", at)}}
	}
	s.blocks = append(s.blocks, pair{at, id, made})
	return &s.blocks[len(s.blocks)-1]
}

// counted writes a row's count as the key that its place wants.
func (s *sheetReader) counted(r *row, b *pair) {
	for _, name := range []string{"count", "each", "need"} {
		cell, ok := r.special[name]
		if !ok {
			continue
		}
		key := name
		switch {
		case name == "count" && b != nil, name == "need" && b != nil && s.sheets[blocksSheet] == nil:
			key = "each"
		case name == "count":
			key = "need"
		}
		k := Key{Name: key, Kind: KindCount, Example: "4"}
		s.place(&r.fields, column{path: []string{key}}, s.cellValue(k, cell, r.places[name]))
	}
}

// sides makes one cut size of two columns for its sides.
func (s *sheetReader) sides(t *sheetTable, r *row) {
	k := Key{Name: "cut", Kind: KindSize, Example: "3 1/2 x 6 1/2"}
	wide, hasWide := r.special["wide"]
	high, hasHigh := r.special["high"]
	switch {
	case !hasWide && !hasHigh:
	case hasWide && hasHigh:
		w := withUnit(s.cellValue(k, wide, r.places["wide"]), r.units["wide"])
		h := withUnit(s.cellValue(k, high, r.places["high"]), r.units["high"])
		if w.shape == text && h.shape == text {
			w.text += " x " + h.text
		}
		s.place(&r.fields, column{path: []string{"cut"}}, w)
	default:
		name := map[bool]string{true: "wide", false: "high"}[hasWide]
		s.fault(r.places[name], "write the other side too, or both into one column size", "the piece has one side only; expected two such as 3 1/2 and 6 1/2")
		s.place(&r.fields, column{path: []string{"cut"}}, value{at: r.places[name], shape: broken})
	}
}

// above reads what stands above a cut list: keys of the plan with their values,
// and a title. A heading that says centimetres makes the plan a metric one.
func (s *sheetReader) above(t *sheetTable) {
	for i := range t.head - 1 {
		first := firstFilled(t.Rows[i])
		if first == 0 || s.planRow(t.sheet, i+1, first, true) {
			continue
		}
		if v := textAt(strings.TrimSpace(t.Rows[i][first-1].Text), t.at(i+1, first)); s.title == nil {
			s.title = &v
		}
	}
	for i, h := range t.heads {
		if at := t.at(t.head, i+1); h.unit == "cm" || h.unit == "mm" || h.unit == "m" {
			put(&s.plan, []string{"units"}, textAt("metric", at))
		}
	}
}

// readBorders reads the borders.
func (s *sheetReader) readBorders() {
	var all []value
	for _, r := range s.rows(s.table(bordersSheet)) {
		all = append(all, r.fields)
	}
	if len(all) > 0 {
		s.add("borders", value{at: all[0].at, shape: list, items: all})
	}
}

// readQuilt reads the quilt's rows of blocks.
func (s *sheetReader) readQuilt() {
	sh := s.sheets[quiltSheet]
	if sh == nil {
		return
	}
	k := Key{Name: "quilt", Kind: KindText, Example: "A"}
	v := value{at: sh.whole(), shape: list}
	for y, cells := range sh.Rows {
		line := value{at: sh.at(y+1, 1), shape: list}
		for x, c := range cells {
			at := sh.at(y+1, x+1)
			switch {
			case c.Text != "" && s.sound(k, c, at):
				line.items = append(line.items, textAt(strings.TrimSpace(c.Text), at))
			case c.Text == "" && len(line.items) > 0 && slices.ContainsFunc(cells[x:], func(c workbook.Cell) bool { return c.Text != "" }):
				s.fault(at, "", "the cell is empty; expected a block such as A")
			}
		}
		if len(line.items) > 0 {
			v.items = append(v.items, line)
		}
	}
	s.add("quilt", v)
}

// readAccept reads the doubts that the writer has looked at.
func (s *sheetReader) readAccept() {
	t := s.table(acceptSheet)
	if t == nil {
		return
	}
	v := value{at: t.whole(), shape: mapping}
	for _, r := range s.rows(t) {
		id, at, ok := s.own(t, r, "finding", v.pairs)
		if ok {
			why := value{at: at, shape: nothing}
			if c, written := r.special["reason"]; written {
				why = s.cellValue(Key{Name: shorten(id), Kind: KindText, Example: "bought before"}, c, r.places["reason"])
			}
			v.pairs = append(v.pairs, pair{at, id, why})
		}
	}
	s.add("accept", v)
}
