package sheets_test

import (
	"fmt"
	"strings"
	"testing"

	"cutbinder/layout/length"
	"cutbinder/layout/plan"
	"cutbinder/sheets"
)

const mm = length.MM

// amiss says whether a length is farther from hundredths of a millimetre than
// rounding to 0.01 mm explains.
func amiss(l length.Length, hundredths int64) bool {
	d := int64(l)*100 - hundredths*int64(mm)
	return d > int64(mm)*3/5 || d < -int64(mm)*3/5
}

// The measures of the sheets in hundredths of a millimetre: columns, rows, label,
// first label, steps.
func TestStockMeasures(t *testing.T) {
	for _, c := range []struct {
		size                                   string
		paper                                  plan.Paper
		columns, rows                          int
		width, height, left, top, across, down int64
	}{
		{"2 5/8 x 1 in", plan.Letter, 3, 10, 6668, 2540, 476, 1270, 6985, 2540},
		{"4 x 1 in", plan.Letter, 2, 10, 10160, 2540, 397, 1270, 10636, 2540},
		{"4 x 1 1/3 in", plan.Letter, 2, 7, 10160, 3387, 397, 2117, 10636, 3387},
		{"4 x 2 in", plan.Letter, 2, 5, 10160, 5080, 397, 1270, 10636, 5080},
		{"4 x 3 1/3 in", plan.Letter, 2, 3, 10160, 8467, 397, 1270, 10636, 8467},
		{"1 3/4 x 1/2 in", plan.Letter, 4, 20, 4445, 1270, 714, 1270, 5239, 1270},
		{"99.1 x 67.7 mm", plan.A4, 2, 4, 9910, 6770, 465, 1310, 10160, 6770},
		{"99.1 x 38.1 mm", plan.A4, 2, 7, 9910, 3810, 465, 1515, 10160, 3810},
		{"63.5 x 46.6 mm", plan.A4, 3, 6, 6350, 4660, 721, 870, 6604, 4660},
		{"63.5 x 38.1 mm", plan.A4, 3, 7, 6350, 3810, 721, 1515, 6604, 3810},
		{"70 x 37 mm", plan.A4, 3, 8, 7000, 3700, 0, 50, 7000, 3700},
		{"70 x 36 mm", plan.A4, 3, 8, 7000, 3600, 0, 450, 7000, 3600},
		{"70 x 35 mm", plan.A4, 3, 8, 7000, 3500, 0, 850, 7000, 3500},
		{"63.5 x 33.9 mm", plan.A4, 3, 8, 6350, 3390, 721, 1290, 6604, 3390},
		{"63.5 x 29.6 mm", plan.A4, 3, 9, 6350, 2960, 725, 1530, 6600, 2960},
		{"52.5 x 29.7 mm", plan.A4, 4, 10, 5250, 2970, 0, 0, 5250, 2970},
		{"38.1 x 21.2 mm", plan.A4, 5, 13, 3810, 2120, 467, 1070, 4064, 2120},
		{"38.0 x 21.2 mm", plan.A4, 5, 13, 3800, 2120, 1000, 1070, 3800, 2120},
		{"105 x 37 mm", plan.A4, 2, 8, 10500, 3700, 0, 50, 10500, 3700},
		{"105 x 57 mm", plan.A4, 2, 5, 10500, 5700, 0, 600, 10500, 5700},
	} {
		s, err := sheets.FindStock(c.size, false, c.paper)
		if err != nil {
			t.Error(err)
			continue
		}
		if s.Paper != c.paper || s.Columns != c.columns || s.Rows != c.rows || amiss(s.Width, c.width) || amiss(s.Height, c.height) ||
			amiss(s.Left, c.left) || amiss(s.Top, c.top) || amiss(s.StepAcross, c.across) || amiss(s.StepDown, c.down) {
			t.Errorf("%s: %s", c.size, s.Row())
		}
	}
}

// Every sheet's labels are on its paper, do not overlap and stand in its middle,
// as far as sources agree.
func TestStocksOnPaper(t *testing.T) {
	for _, s := range sheets.Stocks() {
		first, last := s.Label(0), s.Label(s.Labels()-1)
		left, right := first.X, s.Sheet().W-last.Right()
		top, bottom := first.Y, s.Sheet().H-last.Bottom()
		if left < 0 || top < 0 || right < -mm/2 || bottom < -mm/2 || left-right > mm/2 || right-left > mm/2 || top-bottom > mm || bottom-top > mm {
			t.Errorf("%s: margins left %v right %v top %v bottom %v", s, left, right, top, bottom)
		}
		for i := range s.Labels() {
			for j := range i {
				if s.Label(i).Overlaps(s.Label(j)) {
					t.Errorf("%s: labels %d and %d overlap", s, i+1, j+1)
				}
			}
		}
		if n := strings.Count(s.Row(), "\t"); n != 6 {
			t.Errorf("%s: a row of %d cells", s, n+1)
		}
	}
}

func TestFindStock(t *testing.T) {
	for _, c := range []struct {
		text     string
		noGutter bool
		paper    plan.Paper
		want     string // the stock's name, or what the error says
	}{
		{"", false, plan.Letter, "4 x 2 in"},
		{"", false, plan.A4, "99.1 x 38.1 mm"},
		{"plain", false, plan.Letter, "plain"},
		{" Plain ", false, plan.A4, "plain"},
		{"2 5/8 x 1 in", false, plan.Letter, "2 5/8 x 1 in"},
		{"2 5/8 x 1", false, plan.Letter, "2 5/8 x 1 in"},
		{"1 x 2 5/8 in", false, plan.Letter, "2 5/8 x 1 in"},
		{`1" x 2-5/8"`, false, plan.Letter, "2 5/8 x 1 in"},
		{"2⅝ × 1 in", false, plan.Letter, "2 5/8 x 1 in"},
		{"2.625 x 1", false, plan.Letter, "2 5/8 x 1 in"},
		{"66.7 x 25.4 mm", false, plan.Letter, "2 5/8 x 1 in"},
		{"66.7 x 25.4", false, plan.Letter, "2 5/8 x 1 in"},
		{"4 x 1.33 in", false, plan.Letter, "4 x 1 1/3 in"},
		{"3 1/3 x 4", false, plan.Letter, "4 x 3 1/3 in"},
		{"63.5 x 38.1 mm", false, plan.A4, "63.5 x 38.1 mm"},
		{"63,5 x 38,1", false, plan.A4, "63.5 x 38.1 mm"},
		{"63.5mm x 38.1mm", false, plan.A4, "63.5 x 38.1 mm"},
		{"6.35 x 3.81 cm", false, plan.A4, "63.5 x 38.1 mm"},
		{"10.5 x 3.7", false, plan.A4, "105 x 37 mm"},
		{"38 by 64 mm", false, plan.A4, "nearest are 63.5 x 38.1 mm"},
		{"63.4 x 38 mm", false, plan.A4, "63.5 x 38.1 mm"},
		{"38.1 x 21.2", false, plan.A4, "38.1 x 21.2 mm"},
		{"38 x 21.2", false, plan.A4, "38 x 21.2 mm"},
		{"38.1 x 21.2", true, plan.A4, "38 x 21.2 mm"},
		{"70 x 36", true, plan.A4, "70 x 36 mm"},
		{"63.5 x 38.1 mm", true, plan.A4, "without a gutter is not known on a4 paper; with one it is"},
		{"63.5 x 38.1 mm", false, plan.Letter, "comes on a4 paper, and the paper is letter"},
		{"4 x 2 in", false, plan.A4, "comes on letter paper, and the paper is a4"},
		{"3 x 5 in", false, plan.Letter, "not known on letter paper; the nearest are"},
		{"30 up", false, plan.Letter, "is not a size; expected what the pack of sheets says"},
		{"4 x 0", false, plan.Letter, "is not a size"},
		{strings.Repeat("9", 5000), false, plan.A4, "is not a size"},
	} {
		s, err := sheets.FindStock(c.text, c.noGutter, c.paper)
		got := s.Name
		if err != nil {
			got = err.Error()
		}
		if got != c.want && (err == nil || !strings.Contains(got, c.want)) || len(got) > 400 {
			t.Errorf("FindStock(%q, %v, %s) = %q, want %q", c.text, c.noGutter, c.paper, got, c.want)
		}
		if err == nil && s.Paper != c.paper {
			t.Errorf("FindStock(%q, %v, %s) is on %s", c.text, c.noGutter, c.paper, s.Paper)
		}
	}
}

// sheet is a sheet by its eight numbers in millimetres.
func sheet(columns, rows int, width, height, left, top, across, down length.Length) plan.LabelSheet {
	return plan.LabelSheet{Columns: columns, Rows: rows, Width: width * mm, Height: height * mm,
		Left: left * mm, Top: top * mm, StepAcross: across * mm, StepDown: down * mm}
}

func TestOwnStock(t *testing.T) {
	for _, c := range []struct {
		sheet plan.LabelSheet
		want  string // what the error says; "" where there is none
	}{
		{sheet(2, 5, 90, 50, 10, 10, 95, 52), ""},
		{sheet(1, 1, 190, 280, 10, 8, 0, 0), ""},
		{sheet(0, 5, 90, 50, 10, 10, 95, 52), "0 columns"},
		{sheet(2, -5, 90, 50, 10, 10, 95, 52), "-5 rows"},
		{sheet(40, 40, 5, 5, 0, 0, 5, 5), "expected 1 to 500 labels"},
		{sheet(1<<40, 1<<40, 5, 5, 0, 0, 5, 5), "expected 1 to 500 labels"},
		{sheet(2, 5, 0, 50, 10, 10, 95, 52), "expected a width and a height"},
		{sheet(2, 5, 90, -50, 10, 10, 95, 52), "expected a width and a height"},
		{sheet(2, 5, 90, 50, -1, 10, 95, 52), "expected left and top on the paper"},
		{sheet(2, 5, 90, 50, 10, 10, 80, 52), "steps 80, 52 mm"},
		{sheet(2, 5, 90, 50, 10, 10, 95, 80), "reaches beyond a4 paper, which is 210 x 297 mm"},
		{sheet(2, 5, 90, 50, 1<<40, 10, 95, 52), "reaches beyond"},
		{sheet(3, 5, 90, 50, 10, 10, 95, 52), "reaches beyond"},
	} {
		_, err := sheets.OwnStock(c.sheet, plan.A4)
		if got := fmt.Sprint(err); (err == nil) != (c.want == "") || !strings.Contains(got, c.want) {
			t.Errorf("%+v: %v, want %q", c.sheet, err, c.want)
		}
	}
}

func TestHoldsCode(t *testing.T) {
	for _, s := range sheets.Stocks() {
		if got, want := s.HoldsCode() == nil, s.Name != "1 3/4 x 1/2 in"; got != want {
			t.Errorf("%s holds a code: %v, want %v", s, got, want)
		}
	}
}

func FuzzFindStock(f *testing.F) {
	for _, s := range []string{"2 5/8 x 1 in", "63,5 x 38,1", "plain", "4x2", "½ × ½", "1e9 x 1e9"} {
		f.Add(s, false)
	}
	f.Fuzz(func(t *testing.T, text string, noGutter bool) {
		for _, paper := range []plan.Paper{plan.Letter, plan.A4} {
			s, err := sheets.FindStock(text, noGutter, paper)
			if (err == nil) != (s.Labels() > 0) || err == nil && s.Paper != paper {
				t.Errorf("%q on %s: %v, %v", text, paper, s, err)
			}
		}
	})
}
