package workbook

import (
	"fmt"
	"unicode/utf8"

	"github.com/xuri/excelize/v2"
)

// Write writes sheets as a workbook. Every cell is formatted as text, so that a
// spreadsheet program doesn't make a date of 1/2. The same sheets give the same
// bytes.
func Write(sheets []Sheet) ([]byte, error) {
	f := excelize.NewFile()
	style, err := newStyles(f)
	if err != nil {
		return nil, err
	}
	for i, s := range sheets {
		if i == 0 {
			err = f.SetSheetName(f.GetSheetName(0), s.Name)
		} else {
			_, err = f.NewSheet(s.Name)
		}
		if err == nil {
			err = s.write(f, style)
		}
		if err != nil {
			return nil, fmt.Errorf("sheet %s: %w", s.Name, err)
		}
	}
	out, err := f.WriteToBuffer()
	if err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

// styles are the looks of cells.
type styles struct{ text, heading int }

func newStyles(f *excelize.File) (s styles, err error) {
	const asText = 49 // the built-in format "@"
	top := &excelize.Alignment{Vertical: "top", WrapText: true}
	if s.text, err = f.NewStyle(&excelize.Style{NumFmt: asText, Alignment: top}); err != nil {
		return s, err
	}
	s.heading, err = f.NewStyle(&excelize.Style{
		NumFmt: asText, Alignment: top, Font: &excelize.Font{Bold: true},
		Fill: excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{"E6E6E6"}},
	})
	return s, err
}

// write fills a sheet in.
func (s *Sheet) write(f *excelize.File, style styles) error {
	if err := f.SetColStyle(s.Name, "A:"+ColumnName(max(len(s.Widths), 26)), style.text); err != nil {
		return err
	}
	for i, w := range s.Widths {
		name := ColumnName(i + 1)
		if err := f.SetColWidth(s.Name, name, name, w); err != nil {
			return err
		}
	}
	for y, row := range s.Rows {
		for x, cell := range row {
			if err := s.writeCell(f, style, x+1, y+1, cell.Text); err != nil {
				return err
			}
		}
	}
	for _, d := range s.Drops {
		if err := s.writeDrop(f, d); err != nil {
			return err
		}
	}
	if s.Head == 0 {
		return nil
	}
	below := ref(1, s.Head+1)
	return f.SetPanes(s.Name, &excelize.Panes{Freeze: true, YSplit: s.Head, TopLeftCell: below, ActivePane: "bottomLeft"})
}

func (s *Sheet) writeCell(f *excelize.File, style styles, column, row int, text string) error {
	at := ref(column, row)
	if utf8.RuneCountInString(text) > excelize.TotalCellChars {
		return fmt.Errorf("cell %s: the text is longer than a cell holds", at)
	}
	if text != "" {
		if err := f.SetCellStr(s.Name, at, text); err != nil {
			return err
		}
	}
	look := style.text
	if row <= s.Head {
		look = style.heading
	}
	return f.SetCellStyle(s.Name, at, at, look)
}

// The longest texts that may stand in the help of a drop-down.
const (
	maxTitle = 32
	maxHelp  = 255
)

func (s *Sheet) writeDrop(f *excelize.File, d Drop) error {
	v := excelize.NewDataValidation(true)
	v.SetSqref(ref(d.Column, d.First) + ":" + ref(d.Column, d.Last))
	switch {
	case d.From != "":
		v.SetSqrefDropList(d.From)
		v.ShowErrorMessage = false // a name may be new, or stand for several
	case len(d.Choices) > 0:
		if err := v.SetDropList(d.Choices); err != nil {
			return err
		}
		v.SetError(excelize.DataValidationErrorStyleWarning, "Not in the list", "One of the list's words is expected here.")
	}
	if d.Help != "" {
		v.SetInput(cut(d.Title, maxTitle), cut(d.Help, maxHelp))
	}
	if v.Type == "" && d.Help == "" {
		return nil
	}
	return f.AddDataValidation(s.Name, v)
}

// cut shortens a text to n characters.
func cut(text string, n int) string {
	if r := []rune(text); len(r) > n {
		return string(r[:n-1]) + "…"
	}
	return text
}
