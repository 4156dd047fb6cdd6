package plan

import (
	"regexp"
	"slices"
	"strings"

	"cutbinder/layout/workbook"
)

// A heading is what a column of a sheet is for.
type heading struct {
	name   string // a column's label, or one of own, block, wide, high, each, need; "" where it isn't known
	column column
	unit   string // of its bare numbers, where the heading says so
	alias  bool   // the heading is not the plan's own word
}

// unitIn finds a unit in a heading: "size (cm)", "width in inches".
var unitIn = regexp.MustCompile(`(?i)(?:[(\[,]| in )\s*(in|inch|inches|cm|mm|m)\s*[)\]]?\s*$`)

// numbered finds a number behind a heading: "fabric 2".
var numbered = regexp.MustCompile(`^(.*?)[ -]*[0-9]{1,2}$`)

// headingOf is what a heading's text says.
func headingOf(which int, text string) heading {
	var h heading
	if m := unitIn.FindStringSubmatch(text); m != nil {
		h.unit = strings.ToLower(m[1])
		text = strings.TrimSuffix(text, m[0])
	}
	if text = strings.TrimSpace(text); text == "#" || strings.EqualFold(text, "no.") {
		text = "count"
	}
	word := plainWord(text)
	if h.name = known(which, word, &h.column); h.name != "" {
		return h
	}
	if m := numbered.FindStringSubmatch(text); m != nil {
		if h.name = known(which, plainWord(m[1]), &h.column); h.column.merged || which == mixesSheet && h.name == "fabric" {
			return h
		}
	}
	h.alias = true
	h.name = ""
	if other, ok := otherHeadings[which][word]; ok {
		h.name = known(which, plainWord(other), &h.column)
	}
	return h
}

// known is the name of a column that a word stands for; "" where it is none.
func known(which int, word string, c *column) string {
	if slices.Contains(ownNames[which], word) {
		return "own"
	}
	switch {
	case which == piecesSheet && slices.Contains([]string{"block", "wide", "high", "each", "need"}, word):
		return word
	case which == mixesSheet && slices.Contains([]string{"fabric", "fabrics"}, word):
		return "fabric"
	case which == acceptSheet && slices.Contains([]string{"reason", "why", "because"}, word):
		return "reason"
	}
	for _, col := range sheetColumns()[which] {
		label := plainWord(col.label())
		stem := strings.TrimSuffix(label, "fabric")
		if word == label || col.merged && (word == stem+"mix" || word == stem+"fabrics") {
			*c = col
			return col.label()
		}
	}
	return ""
}

// A sheetTable is a sheet with headings.
type sheetTable struct {
	*sheet
	which int
	head  int       // the row of the headings
	heads []heading // by column, from 0
	loose bool      // some of them aren't known
}

// maxHead is how far down the headings of a table are looked for.
const maxHead = 30

// findHead is the row that holds a sheet's headings: the first with the most that
// are known, of a cut list two at least and a size or a count among them; 0 where
// there is none.
func findHead(which int, sh *sheet) int {
	best, most := 0, 0
	if which == piecesSheet {
		most = 1
	}
	for i, row := range sh.Rows[:min(len(sh.Rows), maxHead)] {
		n, sized := 0, which != piecesSheet
		for _, c := range row {
			h := headingOf(which, c.Text)
			if h.name != "" && c.Text != "" {
				n++
			}
			sized = sized || slices.Contains([]string{"cut", "finished", "wide", "count", "each", "need"}, h.name)
		}
		if n > most && sized {
			best, most = i+1, n
		}
	}
	return best
}

// table finds a sheet's headings and tells those that aren't known; nil where
// there is no sheet or no headings in it.
func (s *sheetReader) table(which int) *sheetTable {
	sh := s.sheets[which]
	if sh == nil {
		return nil
	}
	t := &sheetTable{sheet: sh, which: which, head: findHead(which, sh)}
	if t.head == 0 {
		s.fault(sh.whole(), "", "%s has no headings; expected a first row such as %s", sh.Name, strings.Join(headingNames(which), ", "))
		s.add(strings.ToLower(sheetNames[which]), value{at: sh.whole(), shape: broken})
		return nil
	}
	row := sh.Rows[t.head-1]
	t.heads = make([]heading, len(row))
	for i, c := range row {
		t.heads[i] = headingOf(which, c.Text)
	}
	for i := range t.heads {
		s.checkHead(t, i, strings.TrimSpace(row[i].Text))
	}
	return t
}

// checkHead tells of a heading that isn't known, or that says what another does.
func (s *sheetReader) checkHead(t *sheetTable, i int, text string) {
	h := &t.heads[i]
	at := t.at(t.head, i+1)
	if h.name == "" {
		hint := meant(text, headingNames(t.which))
		if text != "" && !s.plain && text[0] != '#' || s.plain && strings.HasPrefix(hint, "did") && nearMiss(text, t.which) {
			t.loose = true
			if hint == "" {
				hint = "a heading that begins with # leaves the column out"
			}
			s.fault(at, hint, "%s has no column %q; expected one of %s", strings.TrimSpace(t.Name), shorten(text), strings.Join(headingNames(t.which), ", "))
		}
		return
	}
	for j, other := range t.heads {
		if j == i || other.name != h.name || !h.alias && other.alias || h.alias == other.alias && j > i {
			continue
		}
		if h.column.merged && !h.alias || t.which == mixesSheet && h.name == "fabric" {
			return // fabric 2 and so on
		}
		if !s.plain {
			s.fault(at, "give the column a heading that begins with # to leave it out", "the columns %s and %s both stand for %s", workbook.ColumnName(j+1), workbook.ColumnName(i+1), h.name)
		}
		h.name = ""
		return
	}
}

// nearMiss says whether a heading is a known one but for a letter.
func nearMiss(text string, which int) bool {
	_, d := nearest(text, headingNames(which))
	return d == 1
}

// headingNames are the headings of a sheet as they are written.
func headingNames(which int) (names []string) {
	switch which {
	case mixesSheet:
		return []string{"mix", "fabric", "fabric 2"}
	case acceptSheet:
		return []string{"finding", "reason"}
	case piecesSheet:
		names = []string{"block"}
	case fabricsSheet, blocksSheet:
		names = []string{ownNames[which][0]}
	}
	for _, c := range sheetColumns()[which] {
		names = append(names, c.label())
	}
	return names
}
