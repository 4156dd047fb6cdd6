package plan

import (
	"fmt"
	"slices"
	"strings"

	"cutbinder/layout/workbook"
)

// Sheets gives a plan's file, of whatever form, as the sheets of a workbook, with
// drop-downs and help in them. Reading them gives the same plan. A plan with
// faults gives those instead.
func Sheets(name string, data []byte) ([]workbook.Sheet, Problems) {
	v, ps := sound(name, data)
	if len(ps) > 0 {
		return nil, ps
	}
	w := &sheetWriter{plan: v}
	return w.sheets(), nil
}

// YAML gives a plan's file, of whatever form, as YAML. Remarks are left out.
// Reading it gives the same plan. A plan with faults gives those instead.
func YAML(name string, data []byte) ([]byte, Problems) {
	v, ps := sound(name, data)
	if len(ps) > 0 {
		return nil, ps
	}
	return formatYAML(v), nil
}

// sound gives the values of a plan that has no faults.
func sound(name string, data []byte) (value, Problems) {
	if _, ps := Read(name, data); len(ps) > 0 {
		return value{}, ps
	}
	v, _, _ := parse(name, data)
	return v, nil
}

// A sheetWriter makes a plan's values into sheets.
type sheetWriter struct {
	plan   value
	pieces []value // of all blocks and of none, each with its block's name in blocks
	blocks []string
}

// sheets are the plan's sheets; Quilt and Accept only where they hold something.
func (w *sheetWriter) sheets() []workbook.Sheet {
	all := []workbook.Sheet{
		w.planSheet(), w.named(fabricsSheet, "fabrics"), w.mixes(), w.named(blocksSheet, "blocks"), w.cutList(), w.borders(),
	}
	if v := w.plan.get("quilt"); v.shape != nothing {
		all = append(all, w.quilt(v))
	}
	if v := w.plan.get("accept"); v.shape != nothing {
		all = append(all, w.accept(v))
	}
	return all
}

// get is a mapping's value of a key; of the shape nothing where it has none.
func (v value) get(path ...string) value {
	for _, key := range path {
		i := slices.IndexFunc(v.pairs, func(p pair) bool { return p.key == key })
		if i < 0 {
			return value{}
		}
		v = v.pairs[i].val
	}
	return v
}

// start begins a sheet with its headings.
func start(which int, headings ...string) workbook.Sheet {
	s := workbook.Sheet{Name: sheetNames[which], Head: 1}
	s.Add(headings...)
	return s
}

// planSheet is a row for each key, those that the plan doesn't write too, with
// what the key is for behind it.
func (w *sheetWriter) planSheet() workbook.Sheet {
	s := start(planSheet, "key", "value", "about")
	s.Widths = []float64{24, 32, 90}
	docs := map[string]string{}
	for _, k := range tableOf("plan").Keys {
		docs[k.Name] = k.Doc
	}
	columns := sheetColumns()[planSheet]
	for i, c := range columns {
		if key := c.path[0]; i == 0 || columns[i-1].path[0] != key {
			if v := w.plan.get(key); v.shape == mapping && len(v.pairs) == 0 {
				s.Add(key, "yes", docs[key])
			}
		}
		s.Add(c.label(), w.cell(w.plan, c), about(c.key))
		s.Drops = append(s.Drops, drop(c.key, 2, len(s.Rows), len(s.Rows)))
	}
	return s
}

// about says what a key is for.
func about(k Key) string {
	text := k.Doc
	if k.Default != "" {
		text += " Without it: " + k.Default + "."
	}
	return text + " Example: " + strings.Trim(k.Example, `"`)
}

// lastRow is how far down drop-downs reach.
const lastRow = 500

// drop is what a key offers in the rows of a column.
func drop(k Key, column, first, last int) workbook.Drop {
	d := workbook.Drop{Column: column, First: first, Last: last, Title: k.Name, Help: about(k)}
	switch k.Kind {
	case KindChoice:
		d.Choices = k.Choices
	case KindFlag:
		d.Choices = []string{"yes", "no"}
	case KindFabric, KindSource:
		d.From = fmt.Sprintf("%s!$A$2:$A$%d", sheetNames[fabricsSheet], lastRow)
	}
	return d
}

// table is a sheet with a row for each mapping and a column for each key.
func (w *sheetWriter) table(which int, first []string, columns []column, rows []value, own func(i int) []string) workbook.Sheet {
	headings := slices.Clone(first)
	for _, c := range columns {
		headings = append(headings, c.label())
	}
	most := 0
	if slices.ContainsFunc(columns, func(c column) bool { return c.several }) {
		most = 2
	}
	for _, row := range rows {
		most = max(most, len(row.get("fabrics").items))
	}
	at := slices.IndexFunc(columns, func(c column) bool { return c.several })
	for i := 2; i <= most; i++ {
		headings = slices.Insert(headings, len(first)+at+i-1, fmt.Sprintf("fabric %d", i))
	}
	s := start(which, headings...)
	for i, row := range rows {
		cells := own(i)
		for _, c := range columns {
			if !c.several {
				cells = append(cells, w.cell(row, c))
				continue
			}
			names := w.names(row)
			cells = append(cells, append(names, make([]string, max(most-len(names), 0))...)...)
		}
		s.Add(cells...)
	}
	w.drops(&s, first, columns)
	return s
}

// drops adds the drop-downs below a table's headings.
func (w *sheetWriter) drops(s *workbook.Sheet, first []string, columns []column) {
	for i, cell := range s.Rows[0] {
		s.Widths = append(s.Widths, max(11, float64(len(cell.Text)+3)))
		if i < len(first) {
			continue
		}
		label, _, _ := strings.Cut(cell.Text, " 2")
		j := slices.IndexFunc(columns, func(c column) bool { return c.label() == cell.Text || c.label() == label })
		if j < 0 {
			j = slices.IndexFunc(columns, func(c column) bool { return c.several })
		}
		s.Drops = append(s.Drops, drop(columns[j].key, i+1, 2, lastRow))
	}
}

// names are the fabrics and mixes that a line of pieces names.
func (w *sheetWriter) names(row value) []string {
	for _, key := range []string{"fabric", "mix"} {
		if v := row.get(key); v.shape == text {
			return []string{v.text}
		}
	}
	v := row.get("fabrics")
	if v.shape == text {
		return []string{v.text}
	}
	var all []string
	for _, item := range v.items {
		all = append(all, item.text)
	}
	return all
}

// cell is what stands in the cell of a column.
func (w *sheetWriter) cell(row value, c column) string {
	if c.merged {
		stem := c.path[:len(c.path)-1]
		for _, key := range []string{"fabric", "mix"} {
			if v := row.get(append(slices.Clone(stem), key)...); v.shape != nothing {
				return cellText(c.key, v)
			}
		}
		return ""
	}
	return cellText(c.key, row.get(c.path...))
}

// named is the sheet of the fabrics or of the blocks.
func (w *sheetWriter) named(which int, key string) workbook.Sheet {
	pairs := w.plan.get(key).pairs
	rows := make([]value, len(pairs))
	for i, p := range pairs {
		rows[i] = p.val
	}
	return w.table(which, headingNames(which)[:1], sheetColumns()[which], rows, func(i int) []string { return []string{quoted(pairs[i].key)} })
}

// mixes is the sheet of the sets of fabrics.
func (w *sheetWriter) mixes() workbook.Sheet {
	pairs := w.plan.get("mixes").pairs
	most := 4
	for _, p := range pairs {
		most = max(most, len(p.val.items))
	}
	headings := []string{"mix", "fabric"}
	for i := 2; i <= most; i++ {
		headings = append(headings, fmt.Sprintf("fabric %d", i))
	}
	s := start(mixesSheet, headings...)
	k := Key{Name: "fabric", Kind: KindFabric, Doc: "A fabric of the mix.", Example: "dusk"}
	for i := range headings {
		s.Widths = append(s.Widths, 14)
		if i > 0 {
			s.Drops = append(s.Drops, drop(k, i+1, 2, lastRow))
		}
	}
	for _, p := range pairs {
		cells := []string{quoted(p.key)}
		for _, item := range p.val.items {
			cells = append(cells, item.text)
		}
		s.Add(cells...)
	}
	return s
}

// cutList is the sheet of all lines of pieces.
func (w *sheetWriter) cutList() workbook.Sheet {
	add := func(block string, v value) {
		items := v.items
		if v.shape == mapping {
			items = []value{v}
		}
		for _, line := range items {
			line.pairs = slices.Clone(line.pairs)
			for i := range line.pairs {
				if key := line.pairs[i].key; key == "each" || key == "need" {
					line.pairs[i].key = "count"
				}
			}
			w.pieces, w.blocks = append(w.pieces, line), append(w.blocks, block)
		}
	}
	for _, b := range w.plan.get("blocks").pairs {
		add(b.key, b.val.get("pieces"))
	}
	add("", w.plan.get("pieces"))
	s := w.table(piecesSheet, []string{"block"}, sheetColumns()[piecesSheet], w.pieces, func(i int) []string { return []string{quoted(w.blocks[i])} })
	s.Drops = append(s.Drops, workbook.Drop{Column: 1, First: 2, Last: lastRow, From: fmt.Sprintf("%s!$A$2:$A$%d", sheetNames[blocksSheet], lastRow),
		Title: "block", Help: "The block the pieces are for; leave it empty for pieces of no block."})
	return s
}

// borders is the sheet of the borders.
func (w *sheetWriter) borders() workbook.Sheet {
	v := w.plan.get("borders")
	rows := v.items
	if v.shape == mapping {
		rows = []value{v}
	}
	return w.table(bordersSheet, nil, sheetColumns()[bordersSheet], rows, func(int) []string { return nil })
}

// quilt is the sheet of the quilt's rows of blocks.
func (w *sheetWriter) quilt(v value) workbook.Sheet {
	s := workbook.Sheet{Name: sheetNames[quiltSheet]}
	lines := v.items
	if v.shape == text {
		for _, line := range strings.Split(v.text, "\n") {
			lines = append(lines, textAt(line, v.at))
		}
	}
	for _, line := range lines {
		var cells []string
		if line.shape == text {
			cells = strings.Fields(line.text)
		}
		for _, item := range line.items {
			cells = append(cells, strings.TrimSpace(item.text))
		}
		s.Add(cells...)
	}
	return s
}

// accept is the sheet of the doubts that the writer has looked at.
func (w *sheetWriter) accept(v value) workbook.Sheet {
	s := start(acceptSheet, "finding", "reason")
	s.Widths = []float64{32, 60}
	for _, p := range v.pairs {
		s.Add(quoted(p.key), p.val.text)
	}
	return s
}
