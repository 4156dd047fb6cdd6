package workbook

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"path"
	"strings"
	"unicode/utf8"
)

// ReadCSV reads a comma-separated file. Semicolons or tabs may stand in place of
// the commas, as they do in countries where a comma begins the decimals. The
// error is an *Error.
func ReadCSV(name string, data []byte) (Sheet, error) {
	s := Sheet{File: name, Name: strings.TrimSuffix(path.Base(name), path.Ext(name))}
	fail := func(hint, format string, args ...any) (Sheet, error) {
		return s, &Error{File: name, What: fmt.Sprintf(format, args...), Hint: hint}
	}
	switch {
	case len(data) > MaxUnzipped:
		return fail("is this the right file?", "the file is larger than %d MB", MaxUnzipped>>20)
	case bytes.HasPrefix(data, []byte("\xff\xfe")), bytes.HasPrefix(data, []byte("\xfe\xff")):
		return fail("save it as CSV UTF-8", "the file is in UTF-16; expected UTF-8")
	case !utf8.Valid(data):
		return fail("save it as CSV UTF-8", "the file is not in UTF-8")
	case bytes.IndexByte(data, 0) >= 0:
		return fail("is this the right file?", "the file is no text")
	}
	text := strings.TrimPrefix(string(data), "\ufeff")
	comma := separator(text)
	skipped := 0
	if first, rest, _ := strings.Cut(text, "\n"); strings.HasPrefix(strings.ToLower(first), "sep=") {
		text, skipped = rest, 1
		s.Rows = append(s.Rows, nil)
	}
	r := csv.NewReader(strings.NewReader(text))
	r.Comma, r.FieldsPerRecord, r.LazyQuotes = comma, -1, true
	cells := 0
	for {
		next := 1 + strings.Count(text[:r.InputOffset()], "\n") // the line behind the last record
		fields, err := r.Read()
		if err == io.EOF {
			return s, nil
		}
		if err != nil {
			var at *csv.ParseError
			if errors.As(err, &at) {
				return fail("close it with the same quote", "line %d: %v", at.StartLine+skipped, at.Err)
			}
			return fail("", "%v", err)
		}
		line, _ := r.FieldPos(0)
		for ; next < line; next++ { // the reader passes blank lines over
			s.Rows = append(s.Rows, nil)
		}
		row := make([]Cell, len(fields))
		for i, field := range fields {
			row[i].Text = tidy(unguarded(field))
		}
		if s.Rows = append(s.Rows, row); len(s.Rows) > MaxRows {
			return fail("", "the file has more than %d rows", MaxRows)
		}
		if cells += len(row); len(row) > MaxColumns || cells > MaxCells {
			return fail("", "the file has more than %d columns or %d cells", MaxColumns, MaxCells)
		}
	}
}

// separator is the sign that parts the cells of a file: what its first line
// states ("sep=;") or, of tab, semicolon and comma, the one its first line with
// any holds most of outside quotes.
func separator(text string) rune {
	for line := range strings.Lines(text) {
		if s, ok := strings.CutPrefix(strings.ToLower(line), "sep="); ok && len(s) > 0 && strings.ContainsRune(",;\t|", rune(s[0])) {
			return rune(s[0])
		}
		best, most := ',', 0
		for _, c := range "\t;," {
			n, quoted := 0, false
			for _, r := range line {
				if r == '"' {
					quoted = !quoted
				}
				if r == c && !quoted {
					n++
				}
			}
			if n > most {
				best, most = c, n
			}
		}
		if most > 0 {
			return best
		}
	}
	return ','
}

// starters are what makes a spreadsheet program take a text for a formula, and
// the sign that WriteCSV puts before them.
const starters = "=+-@'"

// unguarded takes off the sign that guarded put on.
func unguarded(text string) string {
	if len(text) > 1 && text[0] == '\'' && strings.IndexByte(starters, text[1]) >= 0 {
		return text[1:]
	}
	return text
}

// guarded puts an apostrophe before a text that a spreadsheet program would
// compute: a plan may come from a stranger.
func guarded(text string) string {
	if text != "" && strings.IndexByte(starters, text[0]) >= 0 {
		return "'" + text
	}
	return text
}

// WriteCSV writes a sheet as a comma-separated file, with the mark of UTF-8 that
// spreadsheet programs look for.
func WriteCSV(s Sheet) []byte {
	var out bytes.Buffer
	out.WriteString("\ufeff")
	w := csv.NewWriter(&out)
	for _, row := range s.Rows {
		fields := make([]string, max(len(row), 1))
		for i, cell := range row {
			fields[i] = guarded(cell.Text)
		}
		w.Write(fields)
	}
	w.Flush()
	return out.Bytes()
}
