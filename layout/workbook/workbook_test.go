package workbook

import (
	"archive/zip"
	"bytes"
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/xuri/excelize/v2"
)

// typed makes a workbook as a person at a spreadsheet would.
func typed(t *testing.T, fill func(f *excelize.File)) []byte {
	t.Helper()
	f := excelize.NewFile()
	fill(f)
	out, err := f.WriteToBuffer()
	if err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// styled sets a cell with a number format.
func styled(t *testing.T, f *excelize.File, at string, v any, format int, custom string) {
	t.Helper()
	s := &excelize.Style{NumFmt: format}
	if custom != "" {
		s = &excelize.Style{CustomNumFmt: &custom}
	}
	id, err := f.NewStyle(s)
	if err := errors.Join(err, f.SetCellValue("Sheet1", at, v), f.SetCellStyle("Sheet1", at, at, id)); err != nil {
		t.Fatal(err)
	}
}

// TestCells: what cells hold, and what a spreadsheet has made of them.
func TestCells(t *testing.T) {
	for _, c := range []struct {
		what string
		fill func(f *excelize.File)
		want Cell
	}{
		{"a text", func(f *excelize.File) { f.SetCellStr("Sheet1", "A1", " 4 1/2\u00a0") }, Cell{Text: "4 1/2"}},
		{"a number", func(f *excelize.File) { f.SetCellValue("Sheet1", "A1", 4.5) }, Cell{Text: "4.5"}},
		{"a whole number", func(f *excelize.File) { f.SetCellValue("Sheet1", "A1", 1200) }, Cell{Text: "1200"}},
		{"a number as text", func(f *excelize.File) { f.SetCellStr("Sheet1", "A1", "4") }, Cell{Text: "4"}},
		{"what a sum leaves behind", func(f *excelize.File) { f.SetCellValue("Sheet1", "A1", 0.1+0.2) }, Cell{Text: "0.3"}},
		{"a fraction's format", func(f *excelize.File) { styled(t, f, "A1", 4.5, 12, "") }, Cell{Text: "4.5"}},
		{"a percentage", func(f *excelize.File) { styled(t, f, "A1", 0.05, 9, "") }, Cell{Text: "5%"}},
		{"a percentage with decimals", func(f *excelize.File) { styled(t, f, "A1", 0.025, 0, "0.0%") }, Cell{Text: "2.5%"}},
		{"a date", func(f *excelize.File) { styled(t, f, "A1", 46024, 16, "") }, Cell{Text: "2026-01-02", Kind: Date}},
		{"a date in another way", func(f *excelize.File) { styled(t, f, "A1", 46082, 0, "d/m/yyyy") }, Cell{Text: "2026-03-01", Kind: Date}},
		{"a leap day", func(f *excelize.File) { styled(t, f, "A1", 45351, 14, "") }, Cell{Text: "2024-02-29", Kind: Date}},
		{"no date: a unit in the format", func(f *excelize.File) { styled(t, f, "A1", 4.5, 0, `0.0" yd"`) }, Cell{Text: "4.5"}},
		{"no date: General", func(f *excelize.File) { styled(t, f, "A1", 4.5, 0, `General`) }, Cell{Text: "4.5"}},
		{"yes", func(f *excelize.File) { f.SetCellBool("Sheet1", "A1", true) }, Cell{Text: "yes"}},
		{"a formula", func(f *excelize.File) { f.SetCellValue("Sheet1", "A1", 8); f.SetCellFormula("Sheet1", "A1", "2*4") }, Cell{Text: "8"}},
		{"a formula that gives no text", func(f *excelize.File) { f.SetCellFormula("Sheet1", "A1", `""`) }, Cell{}},
	} {
		sheets, err := Read(typed(t, c.fill))
		if err != nil {
			t.Errorf("%s: %v", c.what, err)
		} else if got := sheets[0].At(1, 1); got != c.want {
			t.Errorf("%s: %+v, want %+v", c.what, got, c.want)
		}
	}
}

// TestStored: cells as other programs store them.
func TestStored(t *testing.T) {
	for _, c := range []struct {
		xml  string
		want Cell
	}{
		{`<c r="A1"><f>2*4</f></c>`, Cell{Text: "=2*4", Kind: Uncomputed}},
		{`<c r="A1"><f>2*4</f><v>8</v></c>`, Cell{Text: "8"}},
		{`<c r="A1" t="str"><f>B1</f><v></v></c>`, Cell{}},
		{`<c r="A1" t="str"><f>B1</f><v>4 1/2</v></c>`, Cell{Text: "4 1/2"}},
		{`<c r="A1" t="e"><f>1/0</f><v>#DIV/0!</v></c>`, Cell{Text: "#DIV/0!", Kind: Broken}},
		{`<c r="A1" t="b"><v>0</v></c>`, Cell{Text: "no"}},
		{`<c r="A1" t="d"><v>2026-01-02T00:00:00</v></c>`, Cell{Text: "2026-01-02", Kind: Date}},
		{`<c r="A1" t="inlineStr"><is><t>fat </t><r><t>quarter</t></r></is></c>`, Cell{Text: "fat quarter"}},
		{`<c r="A1"><v>4.4999999999999996</v></c>`, Cell{Text: "4.5"}},
		{`<c r="A1"><v>1E3</v></c>`, Cell{Text: "1000"}},
		{`<c><v>7</v></c>`, Cell{Text: "7"}},
	} {
		sheets, err := Read(sheetXML(`<row r="1">` + c.xml + `</row>`))
		if err != nil {
			t.Errorf("%s: %v", c.xml, err)
		} else if got := sheets[0].At(1, 1); got != c.want {
			t.Errorf("%s: %+v, want %+v", c.xml, got, c.want)
		}
	}
}

// TestSheets: merged cells, hidden sheets, rows and columns left empty.
func TestSheets(t *testing.T) {
	data := typed(t, func(f *excelize.File) {
		f.SetCellStr("Sheet1", "A2", "blue")
		f.SetCellStr("Sheet1", "B4", "4")
		f.MergeCell("Sheet1", "A2", "A4")
		f.NewSheet("Lists")
		f.SetSheetVisible("Lists", false)
		f.SetRowVisible("Sheet1", 4, false)
	})
	sheets, err := Read(data)
	if err != nil {
		t.Fatal(err)
	}
	want := []Sheet{
		{Name: "Sheet1", Rows: [][]Cell{nil, {{Text: "blue"}}, {{Text: "blue", Merged: true}}, {{Text: "blue", Merged: true}, {Text: "4"}}}},
		{Name: "Lists", Hidden: true},
	}
	for i := range sheets { // of no importance
		for y := range sheets[i].Rows {
			if len(sheets[i].Rows[y]) == 0 {
				sheets[i].Rows[y] = nil
			}
		}
	}
	if diff := cmp.Diff(want, sheets); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// TestWriteRead: what is written is read back, as a workbook and as a file.
func TestWriteRead(t *testing.T) {
	s := Sheet{Name: "Odd", Head: 1}
	s.Add("a", "=1+1", "'quoted", "-", "+3")
	s.Add("", "4 1/2", "two\nlines", "a, \"b\"; c", "@home")
	s.Rows = append(s.Rows, nil)
	s.Add("007", "", "1/2")
	data, err := Write([]Sheet{s})
	if err != nil {
		t.Fatal(err)
	}
	sheets, err := Read(data)
	if err != nil {
		t.Fatal(err)
	}
	file, err := ReadCSV("Odd.csv", WriteCSV(s))
	if err != nil {
		t.Fatal(err)
	}
	for row := 1; row <= 5; row++ {
		for column := 1; column <= 6; column++ {
			if want, got := s.At(row, column), sheets[0].At(row, column); got != want {
				t.Errorf("workbook %s: %q, want %q", ref(column, row), got.Text, want.Text)
			}
			if want, got := s.At(row, column), file.At(row, column); got != want {
				t.Errorf("file %s: %q, want %q", ref(column, row), got.Text, want.Text)
			}
		}
	}
}

// TestReadCSV: what parts cells, and where rows are when lines are blank.
func TestReadCSV(t *testing.T) {
	for _, c := range []struct{ text, at, want string }{
		{"a,b\n\n\nc,d\n", "B4", "d"},
		{"a;b;1,5\n", "C1", "1,5"},
		{"\ufeffa\tb\n", "B1", "b"},
		{"sep=|\na|b,c\n", "B2", "b,c"},
		{"a,\"x\ny\"\nb,c\n", "B2", "c"},
		{"a,\"x\ny\"\n\nb,c\n", "A3", "b"},
		{"a,'=1\n", "B1", "=1"},
		{"a,2 1/2\" x 4\"\n", "B1", `2 1/2" x 4"`},
		{"\r\na,b\r\n", "A2", "a"},
	} {
		s, err := ReadCSV("x.csv", []byte(c.text))
		column, row, _ := parseRef(c.at)
		if got := s.At(row, column).Text; err != nil || got != c.want {
			t.Errorf("%q: %s is %q (%v), want %q", c.text, c.at, got, err, c.want)
		}
	}
}

// zipped packs parts, named and filled in turns.
func zipped(parts ...string) []byte {
	var out bytes.Buffer
	zw := zip.NewWriter(&out)
	for i := 0; i < len(parts); i += 2 {
		w, _ := zw.Create(parts[i])
		w.Write([]byte(parts[i+1]))
	}
	zw.Close()
	return out.Bytes()
}

// sheetXML is the smallest workbook around some rows.
func sheetXML(rows string) []byte {
	return zipped(
		"[Content_Types].xml", `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/></Types>`,
		"_rels/.rels", `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
		"xl/workbook.xml", `<workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets><sheet name="A" sheetId="1" r:id="rId1"/></sheets></workbook>`,
		"xl/_rels/workbook.xml.rels", `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`,
		"xl/worksheets/sheet1.xml", `<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>`+rows+`</sheetData></worksheet>`)
}

// TestRefused: files that can't be read, or that would eat memory.
func TestRefused(t *testing.T) {
	many := make([]string, 0, 2*MaxParts+4)
	for i := range MaxParts + 1 {
		many = append(many, fmt.Sprint(i), "")
	}
	for _, c := range []struct {
		what string
		data []byte
		want string
	}{
		{"a bomb", zipped("xl/workbook.xml", "", "xl/worksheets/sheet1.xml", strings.Repeat("\x00", MaxUnzipped)+"x"), "unpacks to more than 32 MB"},
		{"a bomb in parts", zipped("xl/workbook.xml", "", "a", strings.Repeat("a", MaxUnzipped/2), "b", strings.Repeat("b", MaxUnzipped/2), "c", "c"), "unpacks to more than 32 MB"},
		{"many parts", zipped(many...), "1001 parts; expected at most 1000"},
		{"a row far down", sheetXML(`<row r="1048576"><c r="A1048576"><v>1</v></c></row>`), "down to row 1048576; expected at most 10000"},
		{"a row beyond all", sheetXML(`<row r="99999999999999999999"><c><v>1</v></c></row>`), "down to row 1000000000"},
		{"a column far right", sheetXML(`<row r="1"><c r="XFD1"><v>1</v></c></row>`), "goes to column XFD"},
		{"many cells", sheetXML(`<row r="9000"><c r="GA9000"><v>1</v></c></row>`), "more than 300000 cells"},
		{"broken XML", sheetXML(`<row r="1"><c r="A1"><v>1</c>`), "damaged"},
		{"no workbook", zipped("readme.txt", "hello"), "no table is in it"},
		{"another kind", zipped("content.xml", "<x/>"), "another kind; expected .xlsx"},
		{"an older kind", []byte("\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1 and more"), "older kind (.xls) or has a password"},
		{"cut off", sheetXML("")[:300], "damaged"},
		{"a file that is no text", zipped("pieces.csv", "a\x00b"), "no text"},
		{"a file in another encoding", zipped("pieces.csv", "caf\xe9"), "not in UTF-8"},
	} {
		_, err := Read(c.data)
		var e *Error
		if err == nil || !strings.Contains(err.Error(), c.want) || !errors.As(err, &e) {
			t.Errorf("%s: %v; want %q", c.what, err, c.want)
		}
	}
	if sheets, err := Read(sheetXML(`<row r="1"><c r="A1"><v>1</v></c></row>`)); err != nil || sheets[0].At(1, 1).Text != "1" {
		t.Errorf("the workbook around these is no good: %v", err)
	}
}

// FuzzRead: no file makes Read panic or keep what is beyond the limits.
func FuzzRead(f *testing.F) {
	f.Add(sheetXML(`<row r="1"><c r="A1" t="inlineStr"><is><t>fabric</t></is></c></row>`))
	f.Add(sheetXML(`<row r="1"><c r="A1" s="9" t="s"><v>5</v></c></row><mergeCells><mergeCell ref="A1:B2"/></mergeCells>`))
	f.Add(zipped("a.csv", "fabric,size\nblue,4"))
	f.Add([]byte("PK\x03\x04"))
	f.Fuzz(func(t *testing.T, data []byte) {
		sheets, err := Read(data)
		if (err == nil) == (len(sheets) == 0) {
			t.Fatalf("%d sheets, %v", len(sheets), err)
		}
		for _, s := range sheets {
			if len(s.Rows) > MaxRows {
				t.Fatalf("%d rows", len(s.Rows))
			}
		}
	})
}

// FuzzSheetXML is FuzzRead inside a workbook's one sheet, which chance would hardly
// get into.
func FuzzSheetXML(f *testing.F) {
	f.Add(`<row r="1"><c r="A1" t="inlineStr"><is><t>fabric</t></is></c></row>`)
	f.Add(`<row><c t="b"><v>1</v></c><c t="e"><v>#REF!</v></c><c t="s"><v>0</v></c><c t="d"><v>2026-01-02T00:00:00</v></c><c t="str"><f>A1</f><v>x</v></c></row>`)
	f.Add(`<row r="3"><c r="B3" s="1"><f t="shared" ref="B3:B4" si="0">A1</f><v>1</v></c></row></sheetData><mergeCells><mergeCell ref="A1:B2"/></mergeCells><sheetData>`)
	f.Fuzz(func(t *testing.T, rows string) {
		if sheets, err := Read(sheetXML(rows)); (err == nil) == (len(sheets) == 0) {
			t.Fatalf("%d sheets, %v", len(sheets), err)
		}
	})
}

// TestDrops: choices, choices from other cells, and help are in the workbook, and
// its cells are texts, so that 1/2 stays what it is.
func TestDrops(t *testing.T) {
	s := Sheet{Name: "Pieces", Head: 1, Drops: []Drop{
		{Column: 1, First: 2, Last: 9, Choices: []string{"patch", "geese"}, Title: "unit", Help: strings.Repeat("long ", 80)},
		{Column: 2, First: 2, Last: 9, From: "Fabrics!$A$2:$A$9"},
		{Column: 3, First: 2, Last: 9, Title: "size", Help: "Its size."},
	}}
	s.Add("unit", "fabric", "size")
	data, err := Write([]Sheet{s, {Name: "Fabrics"}})
	if err != nil {
		t.Fatal(err)
	}
	f, err := excelize.OpenReader(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	valid, err := f.GetDataValidations("Pieces")
	if err != nil || len(valid) != 3 {
		t.Fatalf("%d drop-downs, %v", len(valid), err)
	}
	text := fmt.Sprint(valid[0].Formula1, valid[1].Formula1, valid[2].Formula1)
	for _, want := range []string{"patch,geese", "Fabrics!$A$2:$A$9"} {
		if !strings.Contains(text, want) {
			t.Errorf("%s: no %s", text, want)
		}
	}
	for _, at := range []string{"A1", "C5"} {
		id, err := f.GetCellStyle("Pieces", at)
		if err != nil {
			t.Fatal(err)
		}
		if style, err := f.GetStyle(id); err != nil || style.NumFmt != 49 {
			t.Errorf("%s is no text: %+v, %v", at, style, err)
		}
	}
	long := Sheet{Name: "A"}
	long.Add(strings.Repeat("x", 40_000))
	if _, err := Write([]Sheet{long}); err == nil {
		t.Error("a text that is too long for a cell was cut")
	}
}
