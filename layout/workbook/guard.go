package workbook

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"path"
	"strings"
)

// IsZip says whether data looks like a zip, as a workbook is.
func IsZip(data []byte) bool { return bytes.HasPrefix(data, []byte("PK\x03\x04")) }

// IsOldWorkbook says whether data is in the binary form that workbooks had before,
// in which workbooks with a password still are.
func IsOldWorkbook(data []byte) bool { return bytes.HasPrefix(data, []byte("\xd0\xcf\x11\xe0")) }

// A part is one file of a zip, unpacked.
type part struct {
	name string
	data []byte
}

// unzip unpacks a zip. What the zip says of its own sizes isn't believed.
func unzip(data []byte) ([]part, error) {
	zr, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return nil, wrong("save it again, or fetch it again if it was sent", "the file is damaged: %v", err)
	}
	if len(zr.File) > MaxParts {
		return nil, wrong("", "the file holds %d parts; expected at most %d", len(zr.File), MaxParts)
	}
	var parts []part
	left := int64(MaxUnzipped)
	for _, f := range zr.File {
		if f.Flags&1 != 0 {
			return nil, wrong("save it without one", "the file is protected by a password")
		}
		if strings.HasSuffix(f.Name, "/") {
			continue
		}
		r, err := f.Open()
		if err != nil {
			return nil, wrong("", "the file is damaged: %v", err)
		}
		text, err := io.ReadAll(io.LimitReader(r, left+1))
		r.Close()
		if err != nil {
			return nil, wrong("save it again, or fetch it again if it was sent", "the file is damaged: %v", err)
		}
		if left -= int64(len(text)); left < 0 {
			return nil, wrong("is this the right file?", "the file unpacks to more than %d MB", MaxUnzipped>>20)
		}
		parts = append(parts, part{f.Name, text})
	}
	return parts, nil
}

// partNamed is the part of a name; nil where there is none.
func partNamed(parts []part, name string) *part {
	for i := range parts {
		if strings.EqualFold(parts[i].name, name) {
			return &parts[i]
		}
	}
	return nil
}

// guard checks that a workbook's sheets stay within the limits.
func guard(parts []part) error {
	cells, sheets := 0, 0
	for _, p := range parts {
		if !strings.HasPrefix(strings.ToLower(p.name), "xl/worksheets/") || path.Ext(p.name) != ".xml" {
			continue
		}
		if sheets++; sheets > MaxSheets {
			return wrong("", "the workbook has more than %d sheets", MaxSheets)
		}
		rows, columns, err := extent(p.data)
		if err == nil && rows*columns > 0 {
			cells += rows * columns
		}
		switch {
		case err != nil:
			return wrong("open it in a spreadsheet program and save it again", "the workbook is damaged: %s: %v", path.Base(p.name), err)
		case rows > MaxRows:
			return wrong("delete the empty rows below the table, or copy the table to a new workbook",
				"a sheet of the workbook (%s) goes down to row %d; expected at most %d", path.Base(p.name), rows, MaxRows)
		case columns > MaxColumns:
			return wrong("delete the columns to the right of the table",
				"a sheet of the workbook (%s) goes to column %s; expected %s at most", path.Base(p.name), ColumnName(columns), ColumnName(MaxColumns))
		case cells > MaxCells:
			return wrong("delete the empty rows and columns round the tables", "the workbook has more than %d cells", MaxCells)
		}
	}
	return nil
}

// extent finds a sheet's last row and last column without building the sheet.
func extent(data []byte) (rows, columns int, err error) {
	dec := xml.NewDecoder(bytes.NewReader(data))
	row, column := 0, 0
	for {
		tok, err := dec.RawToken()
		if err == io.EOF {
			return rows, columns, nil
		}
		if err != nil {
			return 0, 0, err
		}
		start, ok := tok.(xml.StartElement)
		if !ok {
			continue
		}
		switch start.Name.Local {
		case "row":
			row, column = row+1, 0
			if n, ok := number(attr(start, "r")); ok {
				row = n
			}
			rows = max(rows, row)
		case "c":
			column++
			if c, r, ok := parseRef(attr(start, "r")); ok {
				column, rows = c, max(rows, r)
			}
			columns = max(columns, column)
		case "mergeCell":
			if err := smallMerge(attr(start, "ref")); err != nil {
				return 0, 0, err
			}
		}
		if rows > MaxRows || columns > MaxColumns {
			return rows, columns, nil
		}
	}
}

// smallMerge checks that merged cells lie within the limits.
func smallMerge(ref string) error {
	_, end, _ := strings.Cut(ref, ":")
	if c, r, ok := parseRef(end); ok && (c > MaxColumns || r > MaxRows) {
		return fmt.Errorf("the cells %s are merged", ref)
	}
	return nil
}

// attr is an element's attribute; "" where it has none.
func attr(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name && a.Name.Space == "" {
			return a.Value
		}
	}
	return ""
}

// parseRef reads a cell's name, "C4". Numbers too large to be cells are cut off
// well above the limits.
func parseRef(ref string) (column, row int, ok bool) {
	i := 0
	for ; i < len(ref) && ref[i] >= 'A' && ref[i] <= 'Z'; i++ {
		column = min(column*26+int(ref[i]-'A')+1, 1<<20)
	}
	row, ok = number(ref[i:])
	return column, row, ok && column > 0
}

// number reads a whole number above zero, cut off at a thousand million.
func number(s string) (n int, ok bool) {
	for i := range len(s) {
		if s[i] < '0' || s[i] > '9' {
			return 0, false
		}
		n = min(n*10+int(s[i]-'0'), 1_000_000_000)
	}
	return n, n > 0
}
