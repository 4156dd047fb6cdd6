// Package workbook reads and writes tables as spreadsheets keep them: workbooks
// (.xlsx), and comma-separated files alone or several in one zip. It knows
// nothing of what the tables mean, and is the only package that knows the
// workbook library.
//
// Start with Read, which gives the sheets of either form, and Write and WriteCSV,
// which give the bytes of one.
//
// A file may come from a stranger. Before the library sees a workbook, every part
// of it is unpacked once and counted, so that neither a small file that unpacks to
// a huge one nor a cell far down or far to the right makes it eat memory.
package workbook

import "fmt"

// Limits on what is read, far above any plan's.
const (
	MaxUnzipped = 32 << 20 // bytes, of all parts together
	MaxParts    = 1000     // files in the zip
	MaxSheets   = 50
	MaxRows     = 10_000 // of a sheet, counted to its last row
	MaxColumns  = 200    // of a sheet, counted to its last column
	MaxCells    = 300_000
)

// A Kind is what a cell holds beside text.
type Kind int

// The kinds.
const (
	Text       Kind = iota // text, or a number as the spreadsheet keeps it
	Date                   // a number that is shown as a date; Text is the day, "2026-03-01"
	Broken                 // an error of the spreadsheet's own; Text is its name, "#REF!"
	Uncomputed             // a formula whose value isn't stored; Text is the formula
)

// A Cell is one cell as it is read or written.
type Cell struct {
	Text string
	Kind Kind
	// Merged says that the cell lies under a merged one whose own place is above it
	// in the same column; Text is that cell's.
	Merged bool
}

// A Sheet is one table.
type Sheet struct {
	Name   string // of a comma-separated file the file's name without its ending
	File   string // of a comma-separated file its name; "" in a workbook
	Hidden bool
	Rows   [][]Cell // from row 1, column A; rows may differ in length

	// What follows is written and not read.
	Head   int       // rows at the top that are headings
	Widths []float64 // of columns, in characters
	Drops  []Drop
}

// A Drop is a choice offered where cells are filled in, and the help shown there.
type Drop struct {
	Column, First, Last int      // counted from 1
	Choices             []string // or From
	From                string   // cells that hold the choices: "Fabrics!$A$2:$A$500"
	Title, Help         string
}

// At is a sheet's cell, counted from 1; an empty one where the sheet has none.
func (s *Sheet) At(row, column int) Cell {
	if row < 1 || row > len(s.Rows) || column < 1 || column > len(s.Rows[row-1]) {
		return Cell{}
	}
	return s.Rows[row-1][column-1]
}

// Add adds a row of texts.
func (s *Sheet) Add(texts ...string) {
	row := make([]Cell, len(texts))
	for i, t := range texts {
		row[i].Text = t
	}
	s.Rows = append(s.Rows, row)
}

// Place names a cell within its file: "Fabrics!C4", or "C4" of a sheet that is a
// file of its own.
func (s *Sheet) Place(row, column int) string {
	cell := fmt.Sprintf("%s%d", ColumnName(column), row)
	if s.File != "" {
		return cell
	}
	return s.Name + "!" + cell
}

// ColumnName is a column's letters: 1 is A, 28 is AB.
func ColumnName(column int) string {
	name := ""
	for ; column > 0; column = (column - 1) / 26 {
		name = string(rune('A'+(column-1)%26)) + name
	}
	return name
}

// An Error says why a file can't be read as tables.
type Error struct {
	Where string // a sheet or a cell of it, or ""
	File  string // of a comma-separated file in a zip
	What  string
	Hint  string
}

// Error gives the place and what is wrong.
func (e *Error) Error() string {
	if e.Where == "" {
		return e.What
	}
	return e.Where + ": " + e.What
}

// wrong makes an Error about a file as a whole.
func wrong(hint, format string, args ...any) *Error {
	return &Error{What: fmt.Sprintf(format, args...), Hint: hint}
}
