package plan

import (
	"slices"
	"strconv"
	"strings"
	"unicode"

	"cutbinder/layout/workbook"
)

// A row is a row of a table made into a mapping.
type row struct {
	fields  value                    // the mapping
	special map[string]workbook.Cell // cells of own, block, wide, high, each, need, count
	places  map[string]Pos
	units   map[string]string
	number  int
}

// rows reads a table's rows below its headings. Empty rows and those whose first
// cell begins with # are left out.
func (s *sheetReader) rows(t *sheetTable) (all []row) {
	if t == nil {
		return nil
	}
	for i := t.head; i < len(t.Rows); i++ {
		first := firstFilled(t.Rows[i])
		if first == 0 || !slices.ContainsFunc(t.Rows[i], func(c workbook.Cell) bool { return c.Text != "" && !c.Merged }) || strings.HasPrefix(strings.TrimSpace(t.Rows[i][first-1].Text), "#") && t.Rows[i][first-1].Kind == workbook.Text {
			continue
		}
		r := row{number: i + 1, special: map[string]workbook.Cell{}, places: map[string]Pos{}, units: map[string]string{}}
		r.fields = value{at: t.at(i+1, first), shape: mapping, loose: t.loose}
		if s.fill(t, &r) {
			all = append(all, r)
		}
	}
	return all
}

// fill fills a row's mapping from its cells. False says that it holds nothing but
// cells of no column, or is the sum below a cut list.
func (s *sheetReader) fill(t *sheetTable, r *row) bool {
	if s.plain && t.isSum(r.number) {
		return false
	}
	var sources []value
	var from column
	filled := false
	for i, c := range t.Rows[r.number-1] {
		if strings.TrimSpace(c.Text) == "" {
			continue
		}
		at := t.at(r.number, i+1)
		if i >= len(t.heads) || t.heads[i].name == "" {
			if !s.plain && (i >= len(t.heads) || t.Rows[t.head-1][i].Text == "") {
				s.fault(at, "give the column a heading, one that begins with # to leave it out", "%q stands in a column of %s that has no heading", shorten(c.Text), t.Name)
			}
			continue
		}
		filled = true
		h := t.heads[i]
		switch {
		case h.column.key.Name == "" || h.name == "count":
			r.special[h.name], r.places[h.name], r.units[h.name] = c, at, h.unit
		case h.column.merged:
			from = h.column
			sources = append(sources, s.sourcesIn(h.column, c, at)...)
		default:
			s.place(&r.fields, h.column, s.resolved(h.column.key, withUnit(s.cellValue(h.column.key, c, at), h.unit)))
		}
	}
	if len(sources) > 0 {
		s.putSources(&r.fields, from, sources)
	}
	return filled
}

// place puts a cell's value into a mapping.
func (s *sheetReader) place(m *value, c column, v value) {
	if put(m, c.path, v) {
		s.fault(v.at, "keep one of them", "%s is written twice", c.label())
	}
}

// isSum says whether a row, by its number, is the sum below a cut list: it says so,
// or it is nothing but a count to which those above it come.
func (t *sheetTable) isSum(number int) bool {
	cells := t.Rows[number-1]
	column := firstFilled(cells) - 1
	if slices.Contains([]string{"total", "totals", "sum", "grandtotal", "inall"}, plainWord(cells[column].Text)) {
		return true
	}
	if column >= len(t.heads) || t.heads[column].name != "count" || firstFilled(cells[column+1:]) > 0 {
		return false
	}
	sum := 0
	for _, row := range t.Rows[t.head : number-1] {
		if column < len(row) {
			n, _ := strconv.Atoi(strings.TrimSpace(row[column].Text)) // 0 where it is no number
			sum += n
		}
	}
	return sum > 0 && strings.TrimSpace(cells[column].Text) == strconv.Itoa(sum)
}

// withUnit gives a text that has no unit the one of its column.
func withUnit(v value, unit string) value {
	bare := strings.NewReplacer("wof", "", "x", "").Replace(strings.ToLower(v.text))
	if v.shape == text && unit != "" && strings.ContainsFunc(bare, unicode.IsDigit) && !strings.ContainsFunc(bare, unicode.IsLetter) && !strings.ContainsAny(bare, `"'″′`) {
		v.text += " " + unit
	}
	return v
}

// resolved writes the names of fabrics and mixes in a value as the plan's own
// sheets do.
func (s *sheetReader) resolved(k Key, v value) value {
	switch k.Kind {
	case KindFabric, KindMix, KindSource, KindSources, KindFabrics:
	default:
		return v
	}
	if v.shape == text {
		v.text, _ = s.named(v.text)
	}
	for i := range v.items {
		v.items[i] = s.resolved(k, v.items[i])
	}
	return v
}

// named finds the fabric or mix that a text names: by its short name, then in any
// case, then by a fabric's long name.
func (s *sheetReader) named(text string) (id string, mix bool) {
	for _, p := range s.fabrics {
		if p.key == text {
			return text, false
		}
	}
	for _, p := range s.mixes {
		if p.key == text {
			return text, true
		}
	}
	for _, p := range s.mixes {
		if strings.EqualFold(p.key, text) {
			return p.key, true
		}
	}
	for _, p := range s.fabrics {
		if strings.EqualFold(p.key, text) || strings.EqualFold(nameIn(p.val), text) {
			return p.key, false
		}
	}
	return text, false
}

// isNamed says whether a text names a fabric or mix.
func (s *sheetReader) isNamed(text string) bool {
	id, mix := s.named(text)
	return mix || slices.ContainsFunc(s.fabrics, func(p pair) bool { return p.key == id })
}

// nameIn is the name that a mapping states; "" where it states none.
func nameIn(v value) string {
	for _, p := range v.pairs {
		if p.key == "name" {
			return p.val.text
		}
	}
	return ""
}

// sourcesIn are the fabrics and mixes that a cell names: one, or several with
// commas between. A cut list without a sheet of fabrics makes its own.
func (s *sheetReader) sourcesIn(c column, cell workbook.Cell, at Pos) []value {
	text := strings.TrimSpace(cell.Text)
	if !s.isNamed(text) {
		text = strings.Join(strings.Fields(text), " ")
	}
	if s.plain && s.sheets[mixesSheet] == nil && cell.Kind == workbook.Text {
		return []value{textAt(s.ownFabric(text, at), at)}
	}
	if s.isNamed(text) {
		return []value{textAt(text, at)}
	}
	k := c.key
	k.Kind = KindSources
	v := s.cellValue(k, cell, at)
	if v.shape == list {
		return v.items
	}
	return []value{v}
}

// ownFabric is the short name of a fabric that a cut list names, which is made
// where it isn't there yet.
func (s *sheetReader) ownFabric(text string, at Pos) string {
	if s.isNamed(text) {
		id, _ := s.named(text)
		return id
	}
	v := value{at: at, shape: nothing}
	id := text
	if r := []rune(text); len(r) > maxName {
		id = string(r[:maxName-3]) + "..."
		v = value{at: at, shape: mapping, pairs: []pair{{at, "name", textAt(text, at)}}}
	}
	s.fabrics = append(s.fabrics, pair{at, id, v})
	return id
}

// putSources writes what a row is cut from as the keys fabric, mix or fabrics.
func (s *sheetReader) putSources(m *value, c column, sources []value) {
	for i := range sources {
		sources[i] = s.resolved(Key{Kind: KindSource}, sources[i])
	}
	path := slices.Clone(c.path)
	last := &path[len(path)-1]
	v := sources[0]
	if len(sources) > 1 {
		v = value{at: v.at, shape: list, items: sources}
	}
	switch {
	case c.several && len(sources) > 1:
		*last = "fabrics"
	case len(sources) == 1 && v.shape == text:
		if _, mix := s.named(v.text); mix {
			*last = "mix"
		}
	}
	s.place(m, column{path: path}, v)
}
