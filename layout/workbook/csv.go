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
// the commas, as they do in countries where a comma begins the decimals. Rows are
// counted as a spreadsheet counts them, blank ones too. The error is an *Error.
func ReadCSV(name string, data []byte) (Sheet, error) {
	s := Sheet{File: name, Name: strings.TrimSuffix(path.Base(name), path.Ext(name))}
	if err := noText(name, data); err != nil {
		return s, err
	}
	text := strings.TrimPrefix(string(data), "\ufeff")
	comma := separator(text)
	if first, rest, _ := strings.Cut(text, "\n"); strings.HasPrefix(strings.ToLower(first), "sep=") {
		text, s.Rows = rest, [][]Cell{nil}
	}
	skipped := len(s.Rows)
	r := csv.NewReader(strings.NewReader(text))
	r.Comma, r.FieldsPerRecord, r.LazyQuotes = comma, -1, true
	cells, next, read := 0, 1, int64(0) // next is the line behind the last record
	for {
		next += strings.Count(text[read:r.InputOffset()], "\n")
		read = r.InputOffset()
		fields, err := r.Read()
		if err == io.EOF {
			return s, nil
		}
		if err != nil {
			return s, unreadable(name, skipped, err)
		}
		line, _ := r.FieldPos(0)
		for i := next; i < line; i++ { // the reader passes blank lines over
			s.Rows = append(s.Rows, nil)
		}
		row := make([]Cell, len(fields))
		for i, field := range fields {
			row[i].Text = tidy(unguarded(field))
		}
		s.Rows = append(s.Rows, row)
		if cells += len(row); len(row) > MaxColumns || cells > MaxCells || len(s.Rows) > MaxRows {
			return s, inFile(name, "", "the file has more than %d rows, %d columns or %d cells", MaxRows, MaxColumns, MaxCells)
		}
	}
}

// inFile makes an Error about a file.
func inFile(name, hint, format string, args ...any) *Error {
	return &Error{File: name, What: fmt.Sprintf(format, args...), Hint: hint}
}

// noText says why data is no text in UTF-8; nil where it is.
func noText(name string, data []byte) error {
	switch {
	case len(data) > MaxUnzipped:
		return inFile(name, "is this the right file?", "the file is larger than %d MB", MaxUnzipped>>20)
	case bytes.HasPrefix(data, []byte("\xff\xfe")), bytes.HasPrefix(data, []byte("\xfe\xff")):
		return inFile(name, "save it as CSV UTF-8", "the file is in UTF-16; expected UTF-8")
	case !utf8.Valid(data):
		return inFile(name, "save it as CSV UTF-8", "the file is not in UTF-8")
	case bytes.IndexByte(data, 0) >= 0:
		return inFile(name, "is this the right file?", "the file is no text")
	}
	return nil
}

// unreadable makes an Error of the reader's, with its line.
func unreadable(name string, skipped int, err error) *Error {
	var at *csv.ParseError
	if errors.As(err, &at) {
		return inFile(name, "close it with the same quote", "line %d: %v", at.StartLine+skipped, at.Err)
	}
	return inFile(name, "", "%v", err)
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
