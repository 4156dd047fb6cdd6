package plan

import (
	"fmt"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/xuri/excelize/v2"
)

// mangled makes a cut list of which a spreadsheet or its user has made something
// else.
func mangled(t *testing.T, change func(f *excelize.File)) []byte {
	t.Helper()
	f := excelize.NewFile()
	f.SetSheetName("Sheet1", "Pieces")
	for i, row := range [][]any{{"fabric", "size", "count", "for", "turn"}, {"blue", 4.5, 4, "corners"}, {nil, nil, nil}, {"blue", "3 x 5", "8"}, {"blue", 2, 1}} {
		f.SetSheetRow("Pieces", fmt.Sprintf("A%d", i+1), &row)
	}
	change(f)
	out, err := f.WriteToBuffer()
	if err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// TestMangled: what spreadsheets do to cells is understood or told.
func TestMangled(t *testing.T) {
	date := func(f *excelize.File, at string) {
		id, _ := f.NewStyle(&excelize.Style{NumFmt: 16})
		f.SetCellValue("Pieces", at, 46024)
		f.SetCellStyle("Pieces", at, at, id)
	}
	for _, c := range []struct {
		what   string
		change func(f *excelize.File)
		want   []string
	}{
		{"nothing", func(f *excelize.File) {}, nil},
		{"a size that became a date", func(f *excelize.File) { date(f, "B2") }, []string{`Pieces!B2: cut: the spreadsheet has made a date (2026-01-02) of what was typed; expected a size such as 3 1/2 x 6 1/2`}},
		{"a count that became a date", func(f *excelize.File) { date(f, "C4") }, []string{`Pieces!C4: need: the spreadsheet has made a date (2026-01-02) of what was typed; expected a whole number such as 4`}},
		{"a formula with its value", func(f *excelize.File) { f.SetCellFormula("Pieces", "C2", "2*2") }, nil},
		{"one fabric for three rows", func(f *excelize.File) { f.MergeCell("Pieces", "A2", "A5") }, nil},
		{"one size for two rows", func(f *excelize.File) { f.MergeCell("Pieces", "B4", "B5") }, []string{`Pieces!B5: cut: the cell is merged with the one above; expected a value of its own`}},
		{"a hidden sheet of something else", func(f *excelize.File) {
			f.NewSheet("Old prices")
			f.SetCellStr("Old prices", "A1", "x")
			f.SetSheetVisible("Old prices", false)
		}, nil},
		{"a hidden sheet of the plan", func(f *excelize.File) {
			f.NewSheet("Fabrics")
			f.SetCellStr("Fabrics", "A1", "fabric")
			f.SetSheetVisible("Fabrics", false)
		}, []string{`Fabrics: the sheet Fabrics is hidden; expected it to be seen, for it belongs to the plan`}},
		{"numbers as text, ticks", func(f *excelize.File) { f.SetCellStr("Pieces", "C2", "4"); f.SetCellStr("Pieces", "E2", "n") }, nil},
		{"a column in between", func(f *excelize.File) { f.InsertCols("Pieces", "B", 2) }, nil},
	} {
		_, ps := Read("p.xlsx", mangled(t, c.change))
		var got []string
		for _, p := range ps {
			got = append(got, p.At.Cell+": "+p.What)
		}
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.what, diff)
		}
	}
}
