package plan

import (
	"errors"
	"fmt"
	"path"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"cutbinder/layout/workbook"
)

// A sheetReader makes sheets into the values that a YAML file of the same plan
// would give, so that one reader and its messages serve all forms.
type sheetReader struct {
	file   string
	sheets [sheetCount]*sheet // by what they hold; nil where there is none
	plain  bool               // a cut list alone, with names of its own
	faults Problems

	fabrics, mixes, blocks []pair
	pieces                 []value
	title                  *value // of a cut list that has one above its headings
	plan                   value
}

// A sheet is one of the plan's, with its number for the order of messages.
type sheet struct {
	*workbook.Sheet
	file   string
	number int
}

// at is a cell's place.
func (s *sheet) at(row, column int) Pos {
	return Pos{File: s.file, Line: row, Col: column, Cell: s.Place(row, column), Sheet: s.number}
}

// whole is the sheet's own place.
func (s *sheet) whole() Pos {
	at := s.at(1, 1)
	if at.Cell = s.Name; s.File != "" {
		at.Cell = "A1"
	}
	return at
}

// fault notes what is wrong at a place.
func (s *sheetReader) fault(at Pos, hint, format string, args ...any) {
	if len(s.faults) < maxFaults {
		s.faults = append(s.faults, Problem{At: at, What: fmt.Sprintf(format, args...), Hint: hint})
	}
}

// isSheets says whether a plan's file is a workbook, a comma-separated file, or a
// zip of such files, by its first bytes and its name.
func isSheets(name string, data []byte) bool {
	return workbook.IsZip(data) || workbook.IsOldWorkbook(data) || strings.EqualFold(path.Ext(name), ".csv")
}

// sheetsOf reads a file's sheets.
func sheetsOf(name string, data []byte) (sheets []workbook.Sheet, err error) {
	if len(data) > maxBytes {
		return nil, &workbook.Error{What: fmt.Sprintf("the file has %d bytes; expected at most %d", len(data), maxBytes)}
	}
	if !workbook.IsZip(data) && !workbook.IsOldWorkbook(data) {
		one, err := workbook.ReadCSV(path.Base(name), data)
		return []workbook.Sheet{one}, err
	}
	return workbook.Read(data)
}

// parseSheets makes a file's sheets into values. ok is false where they can't be
// read at all; then there is at least one fault.
func parseSheets(name string, data []byte) (v value, ps Problems, ok bool) {
	sheets, err := sheetsOf(name, data)
	if err != nil {
		p := Problem{At: Pos{File: name}, What: err.Error()}
		var why *workbook.Error
		if errors.As(err, &why) {
			p.What, p.Hint, p.At.Cell = why.What, why.Hint, why.Where
			p.At.File = within(name, why.File)
		}
		return v, Problems{p}, false
	}
	s := &sheetReader{file: name, plan: value{at: Pos{File: name}, shape: mapping}}
	if s.sort(sheets); s.missing() {
		return v, s.faults, false
	}
	s.read()
	return s.plan, s.faults, true
}

// within is the name of a file that may stand in a folder.
func within(folder, file string) string {
	if file == "" || file == path.Base(folder) {
		return folder
	}
	return strings.TrimSuffix(folder, "/") + "/" + file
}

// asides are names of sheets that people keep beside a plan, which are left out.
var asides = []string{"note", "notes", "comments", "remarks", "readme", "todo"}

// sort finds out what each sheet holds.
func (s *sheetReader) sort(sheets []workbook.Sheet) {
	var others []*sheet
	for i := range sheets {
		sh := &sheet{&sheets[i], within(s.file, sheets[i].File), i + 1}
		switch which := sheetNamed(sh.Name); {
		case sh.blank():
		case which < 0 && slices.Contains(asides, plainWord(sh.Name)):
		case which < 0 && sh.Hidden, which < 0 && (strings.HasPrefix(sh.Name, "#") || strings.HasPrefix(sh.Name, "_")):
		case which < 0:
			others = append(others, sh)
		case sh.Hidden:
			s.fault(sh.whole(), "show the sheet, or give it a name that begins with # to leave it out", "the sheet %s is hidden; expected it to be seen, for it belongs to the plan", sh.Name)
		case s.sheets[which] != nil:
			s.fault(sh.whole(), "put them together, or give one a name that begins with # to leave it out", "the sheets %s and %s hold the same", s.sheets[which].Name, sh.Name)
		default:
			s.sheets[which] = sh
		}
	}
	known := slices.ContainsFunc(s.sheets[:], func(sh *sheet) bool { return sh != nil })
	s.plain = s.sheets[planSheet] == nil && s.sheets[fabricsSheet] == nil && s.sheets[blocksSheet] == nil
	if !known {
		s.cutList(others)
		return
	}
	for _, sh := range others {
		if !s.plain {
			hint := meant(sh.Name, sheetNames)
			if hint == "" {
				hint = "give it a name that begins with # to leave it out"
			}
			s.fault(sh.whole(), hint, "%s is no sheet of a plan; expected one of %s", sh.Name, strings.Join(sheetNames, ", "))
		}
	}
}

// cutList finds the one table that is a cut list among sheets of other names.
func (s *sheetReader) cutList(sheets []*sheet) {
	for _, sh := range sheets {
		head := findHead(piecesSheet, sh)
		if head == 0 {
			continue
		}
		if s.sheets[piecesSheet] != nil {
			s.fault(sh.whole(), "hide one of them, or give it a name that begins with #", "the sheets %s and %s both hold a cut list; expected one", s.sheets[piecesSheet].Name, sh.Name)
			continue
		}
		s.sheets[piecesSheet] = sh
	}
}

// missing tells where no sheet belongs to a plan.
func (s *sheetReader) missing() bool {
	if slices.ContainsFunc(s.sheets[:], func(sh *sheet) bool { return sh != nil }) {
		return false
	}
	if len(s.faults) == 0 {
		s.fault(Pos{File: s.file}, "name the columns in the first row: fabric, size, count, for", "no table of pieces is in it; expected headings such as fabric, size and count, or the sheets %s", strings.Join(sheetNames, ", "))
	}
	return true
}

// blank says whether a sheet holds nothing.
func (s *sheet) blank() bool {
	return !slices.ContainsFunc(s.Rows, func(row []workbook.Cell) bool { return firstFilled(row) > 0 })
}

// firstFilled is the first column of a row that holds something, counted from 1;
// 0 where none does.
func firstFilled(row []workbook.Cell) int {
	return 1 + slices.IndexFunc(row, func(c workbook.Cell) bool { return strings.TrimSpace(c.Text) != "" })
}

// read reads the sheets, those that name things before those that use the names.
func (s *sheetReader) read() {
	s.readNamed(fabricsSheet, "fabric", &s.fabrics)
	s.readMixes()
	s.readNamed(blocksSheet, "block", &s.blocks)
	s.readPieces()
	s.readPlan()
	s.titled()
	for _, part := range []struct {
		key   string
		pairs []pair
	}{{"fabrics", s.fabrics}, {"mixes", s.mixes}, {"blocks", s.blocks}} {
		if len(part.pairs) > 0 {
			s.add(part.key, value{at: part.pairs[0].at, shape: mapping, pairs: part.pairs})
		}
	}
	if len(s.pieces) > 0 {
		s.add("pieces", value{at: s.pieces[0].at, shape: list, items: s.pieces})
	}
	s.readBorders()
	s.readQuilt()
	s.readAccept()
	keys := tableOf("plan").Keys
	place := func(p pair) int { return slices.IndexFunc(keys, func(k Key) bool { return k.Name == p.key }) }
	slices.SortStableFunc(s.plan.pairs, func(a, b pair) int { return place(a) - place(b) })
}

// add adds a key of the plan.
func (s *sheetReader) add(key string, v value) {
	s.plan.pairs = append(s.plan.pairs, pair{v.at, key, v})
}

// titled gives a plan without a title the one above its cut list, or its file's
// name.
func (s *sheetReader) titled() {
	if s.sheets[planSheet] != nil || slices.ContainsFunc(s.plan.pairs, func(p pair) bool { return p.key == "plan" }) {
		return
	}
	if s.title != nil {
		s.add("plan", *s.title)
		return
	}
	base := path.Base(strings.TrimSuffix(s.file, "/"))
	words := strings.FieldsFunc(strings.TrimSuffix(base, path.Ext(base)), func(r rune) bool { return r == '-' || r == '_' || unicode.IsSpace(r) })
	title := []rune(strings.Map(printable, strings.Join(words, " ")))
	if len(title) == 0 {
		title = []rune("Cut list")
	}
	title[0] = unicode.ToUpper(title[0])
	s.add("plan", textAt(string(title), Pos{File: s.file}))
}

// printable drops characters that a text in a plan can't hold.
func printable(r rune) rune {
	if r == utf8.RuneError || !unicode.IsPrint(r) {
		return -1
	}
	return r
}

// put puts a value under a path of keys into a mapping.
func put(m *value, path []string, v value) (again bool) {
	i := slices.IndexFunc(m.pairs, func(p pair) bool { return p.key == path[0] })
	if len(path) == 1 {
		if i < 0 {
			m.pairs = append(m.pairs, pair{v.at, path[0], v})
		}
		return i >= 0
	}
	if i < 0 {
		m.pairs = append(m.pairs, pair{v.at, path[0], value{at: v.at, shape: mapping}})
		i = len(m.pairs) - 1
	}
	if m.pairs[i].val.shape != mapping {
		return true
	}
	return put(&m.pairs[i].val, path[1:], v)
}
