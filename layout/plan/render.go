package plan

import (
	"bufio"
	"io"
	"slices"
	"strings"
	"unicode"

	"cutbinder/layout/workbook"
)

// maxShown is how much of a source line is shown, in columns.
const maxShown = 100

// Render writes problems as makers read them, with a blank line between: the
// place and what is wrong, the source line (of a spreadsheet the row) with a caret
// under the value, then the hint. src is the file; without it, or for places that
// are no line of it, the line and the caret are left out. The error is w's.
func (ps Problems) Render(w io.Writer, src []byte) error {
	excerpt := excerptOf(ps, src)
	out := bufio.NewWriter(w)
	for i, p := range ps {
		if i > 0 {
			out.WriteString("\n")
		}
		out.WriteString(p.At.String() + ": ")
		if p.Level != Fault {
			out.WriteString(p.Level.String() + ": ")
		}
		out.WriteString(p.What + "\n")
		if text, col := excerpt(p.At); strings.TrimSpace(text) != "" {
			line, caret := window(text, col)
			out.WriteString("  " + line + "\n  " + caret + "\n")
		}
		if p.Hint != "" {
			out.WriteString("  hint: " + p.Hint + "\n")
		}
	}
	return out.Flush()
}

// excerptOf gives what shows the line of a place, and the column of the place in
// it.
func excerptOf(ps Problems, src []byte) func(Pos) (string, int) {
	if i := slices.IndexFunc(ps, func(p Problem) bool { return p.At.Cell != "" }); i >= 0 {
		if sheets, err := sheetsOf(ps[i].At.File, src); err == nil {
			return func(at Pos) (string, int) { return rowExcerpt(sheets, at) }
		}
		src = nil
	}
	lines := splitLines(strings.TrimPrefix(string(src), "\ufeff"))
	return func(at Pos) (string, int) {
		if at.Cell != "" || at.Line < 1 || at.Line > len(lines) {
			return "", 0
		}
		return lines[at.Line-1], at.Col
	}
}

// rowExcerpt shows a spreadsheet's row, its cells parted by bars.
func rowExcerpt(sheets []workbook.Sheet, at Pos) (text string, col int) {
	if at.Sheet < 1 || at.Sheet > len(sheets) || at.Line < 1 || at.Line > len(sheets[at.Sheet-1].Rows) {
		return "", 0
	}
	for i, cell := range sheets[at.Sheet-1].Rows[at.Line-1] {
		if i > 0 {
			text += " | "
		}
		if i+1 == at.Col {
			col = 1 + len([]rune(text))
		}
		text += strings.ReplaceAll(shorten(cell.Text), "\n", " ")
	}
	return text, max(col, 1)
}

// window is the part of a line around a column, counted from 1 in characters, and
// a line with a caret below that column. Tabs become spaces, and what a terminal
// would not print becomes a dot.
func window(line string, col int) (shown, caret string) {
	runes := []rune(line)
	at := min(max(col-1, 0), len(runes))
	from, cut := 0, ""
	if at > maxShown*2/3 && len(runes) > maxShown {
		from, cut = at-maxShown/2, "..."
	}
	to := min(len(runes), from+maxShown)
	var text, pad strings.Builder
	text.WriteString(cut)
	pad.WriteString(strings.Repeat(" ", len(cut)))
	for i := from; i < to; i++ {
		r := runes[i]
		switch {
		case r == '\t':
			r = ' '
		case !unicode.IsPrint(r) && !unicode.Is(unicode.Mn, r):
			r = '.'
		}
		text.WriteRune(r)
		if i < at {
			pad.WriteString(strings.Repeat(" ", columns(r)))
		}
	}
	if to < len(runes) {
		text.WriteString("...")
	}
	return strings.TrimRight(text.String(), " "), pad.String() + "^"
}

// wide are the characters that take two columns in a terminal: the wide and
// fullwidth ranges of Unicode Standard Annex #11, by block.
var wide = &unicode.RangeTable{
	R16: []unicode.Range16{{0x1100, 0x115f, 1}, {0x2e80, 0x303e, 1}, {0x3041, 0xa4cf, 1}, {0xac00, 0xd7a3, 1},
		{0xf900, 0xfaff, 1}, {0xfe30, 0xfe6f, 1}, {0xff00, 0xff60, 1}, {0xffe0, 0xffe6, 1}},
	R32: []unicode.Range32{{0x1f300, 0x1f64f, 1}, {0x1f900, 0x1f9ff, 1}, {0x20000, 0x3fffd, 1}},
}

// columns is how many columns of a terminal a character takes.
func columns(r rune) int {
	switch {
	case unicode.Is(unicode.Mn, r):
		return 0
	case unicode.Is(wide, r):
		return 2
	}
	return 1
}
