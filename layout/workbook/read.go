package workbook

import (
	"bytes"
	"path"
	"strings"

	"github.com/xuri/excelize/v2"
)

// Read reads a workbook, or a zip of comma-separated files. The error is an
// *Error.
func Read(data []byte) (sheets []Sheet, err error) {
	if IsOldWorkbook(data) {
		return nil, wrong("save it as a workbook of the newer kind (.xlsx) without a password, or as .csv",
			"the workbook is of an older kind (.xls) or has a password")
	}
	parts, err := unzip(data)
	if err != nil {
		return nil, err
	}
	switch {
	case partNamed(parts, "xl/workbook.xml") != nil:
		if err := guard(parts); err != nil {
			return nil, err
		}
		return readWorkbook(data)
	case partNamed(parts, "content.xml") != nil || partNamed(parts, "Index/Document.iwa") != nil:
		return nil, wrong("save or export it as .xlsx", "the file is a spreadsheet of another kind; expected .xlsx")
	}
	return readFiles(parts)
}

// readFiles reads the comma-separated files of a zip.
func readFiles(parts []part) (sheets []Sheet, err error) {
	for _, p := range parts {
		if !strings.EqualFold(path.Ext(p.name), ".csv") || strings.HasPrefix(path.Base(p.name), ".") || strings.HasPrefix(p.name, "__") {
			continue
		}
		s, err := ReadCSV(p.name, p.data)
		if err != nil {
			return nil, err
		}
		if sheets = append(sheets, s); len(sheets) > MaxSheets {
			return nil, wrong("", "there are more than %d .csv files", MaxSheets)
		}
	}
	if len(sheets) == 0 {
		return nil, wrong("name a workbook (.xlsx) or a folder of .csv files", "no table is in it")
	}
	return sheets, nil
}

// readWorkbook reads a workbook that has passed guard. What the library can't
// bear is told like any other damage.
func readWorkbook(data []byte) (sheets []Sheet, err error) {
	defer func() {
		if broken := recover(); broken != nil {
			sheets, err = nil, wrong("open it in a spreadsheet program and save it again", "the workbook is damaged: %v", broken)
		}
	}()
	f, err := excelize.OpenReader(bytes.NewReader(data), excelize.Options{
		UnzipSizeLimit: 2 * MaxUnzipped, UnzipXMLSizeLimit: MaxUnzipped, // equal limits keep parts out of the file system
	})
	if err != nil {
		return nil, wrong("open it in a spreadsheet program and save it again", "the workbook is damaged: %v", err)
	}
	for _, name := range f.GetSheetList() {
		s, err := readSheet(f, name)
		if err != nil {
			return nil, &Error{Where: name, What: "the sheet is damaged: " + err.Error()}
		}
		sheets = append(sheets, s)
	}
	if len(sheets) == 0 {
		return nil, wrong("", "the workbook has no sheets")
	}
	return sheets, nil
}

func readSheet(f *excelize.File, name string) (s Sheet, err error) {
	s.Name = name
	visible, err := f.GetSheetVisible(name)
	if err != nil {
		return s, err
	}
	s.Hidden = !visible
	rows, err := f.GetRows(name, excelize.Options{RawCellValue: true})
	if err != nil {
		return s, err
	}
	looks := map[int]look{}
	for y, texts := range rows {
		row := make([]Cell, len(texts))
		for x, text := range texts {
			at := ref(x+1, y+1)
			if row[x], err = readCell(f, name, at, text, looks); err != nil {
				return s, err
			}
		}
		s.Rows = append(s.Rows, row)
	}
	return s, s.unmerge(f)
}

// unmerge writes the value of merged cells into those below it in its column.
func (s *Sheet) unmerge(f *excelize.File) error {
	merged, err := f.GetMergeCells(s.Name)
	if err != nil {
		return err
	}
	for _, m := range merged {
		column, top, ok1 := parseRef(m.GetStartAxis())
		_, bottom, ok2 := parseRef(m.GetEndAxis())
		cell := s.At(top, column)
		if !ok1 || !ok2 || cell.Text == "" {
			continue
		}
		cell.Merged = true
		for row := top + 1; row <= min(bottom, len(s.Rows)); row++ {
			for len(s.Rows[row-1]) < column {
				s.Rows[row-1] = append(s.Rows[row-1], Cell{})
			}
			s.Rows[row-1][column-1] = cell
		}
	}
	return nil
}

// ref is a cell's name.
func ref(column, row int) string {
	s := Sheet{File: "-"}
	return s.Place(row, column)
}
