package sheets

import (
	"fmt"
	"strings"

	"cutbinder/layout/length"
	"cutbinder/layout/page"
	"cutbinder/layout/plan"
)

// A Stock is a sheet of labels: the size its pack states and the eight numbers
// that place its labels on the paper.
type Stock struct {
	Name  string // the size as the pack states it: "2 5/8 x 1 in"
	Paper plan.Paper
	plan.LabelSheet
	Plain bool // plain paper, cut apart along lines
}

// Labels is how many labels a sheet has.
func (s Stock) Labels() int { return s.Columns * s.Rows }

// Gapless says that labels touch on all sides, so that a sheet has no gutter.
func (s Stock) Gapless() bool {
	return s.StepAcross <= s.Width && s.StepDown <= s.Height
}

// Label is the box of the sheet's label i, counted from 0 row by row.
func (s Stock) Label(i int) page.Box {
	return page.Box{
		X: s.Left + length.Length(i%s.Columns)*s.StepAcross,
		Y: s.Top + length.Length(i/s.Columns)*s.StepDown,
		W: s.Width, H: s.Height,
	}
}

// Sheet is the page paper of the stock.
func (s Stock) Sheet() page.Paper {
	if s.Paper == plan.A4 {
		return page.A4
	}
	return page.Letter
}

// mm100 is a length in hundredths of a millimetre, to the nearest unit.
func mm100(n length.Length) length.Length { return (n*length.MM + 50) / 100 }

// in96 is whole inches and 1/96ths, to the nearest unit (96 is 32 x 3: labels come
// in 32nds and in thirds of an inch).
func in96(whole, ninetysixths length.Length) length.Length {
	return whole*length.Inch + (ninetysixths*length.Inch+48)/96
}

// a4 is a sheet by its eight numbers in hundredths of a millimetre.
func a4(name string, columns, rows int, width, height, left, top, across, down length.Length) Stock {
	return Stock{Name: name, Paper: plan.A4, LabelSheet: plan.LabelSheet{Columns: columns, Rows: rows,
		Width: mm100(width), Height: mm100(height), Left: mm100(left), Top: mm100(top), StepAcross: mm100(across), StepDown: mm100(down)}}
}

// letter is a sheet whose labels touch above and below.
func letter(name string, columns, rows int, width, height, left, top, across length.Length) Stock {
	return Stock{Name: name, Paper: plan.Letter, LabelSheet: plan.LabelSheet{Columns: columns, Rows: rows,
		Width: width, Height: height, Left: left, Top: top, StepAcross: across, StepDown: height}}
}

// stocks are the common blank sheets. Makers' figures agree to about 0.4 mm, less
// than a printer's own error; where they differ, left and top centre the labels.
var stocks = []Stock{
	letter("2 5/8 x 1 in", 3, 10, in96(2, 60), in96(1, 0), in96(0, 18), in96(0, 48), in96(2, 72)),
	letter("4 x 1 in", 2, 10, in96(4, 0), in96(1, 0), in96(0, 15), in96(0, 48), in96(4, 18)),
	letter("4 x 1 1/3 in", 2, 7, in96(4, 0), in96(1, 32), in96(0, 15), in96(0, 80), in96(4, 18)),
	letter("4 x 2 in", 2, 5, in96(4, 0), in96(2, 0), in96(0, 15), in96(0, 48), in96(4, 18)),
	letter("4 x 3 1/3 in", 2, 3, in96(4, 0), in96(3, 32), in96(0, 15), in96(0, 48), in96(4, 18)),
	letter("1 3/4 x 1/2 in", 4, 20, in96(1, 72), in96(0, 48), in96(0, 27), in96(0, 48), in96(2, 6)),
	a4("99.1 x 67.7 mm", 2, 4, 9910, 6770, 465, 1310, 10160, 6770),
	a4("99.1 x 38.1 mm", 2, 7, 9910, 3810, 465, 1515, 10160, 3810),
	a4("63.5 x 46.6 mm", 3, 6, 6350, 4660, 721, 870, 6604, 4660),
	a4("63.5 x 38.1 mm", 3, 7, 6350, 3810, 721, 1515, 6604, 3810),
	a4("63.5 x 33.9 mm", 3, 8, 6350, 3390, 721, 1290, 6604, 3390),
	a4("63.5 x 29.6 mm", 3, 9, 6350, 2960, 725, 1530, 6600, 2960),
	a4("38.1 x 21.2 mm", 5, 13, 3810, 2120, 467, 1070, 4064, 2120),
	a4("38 x 21.2 mm", 5, 13, 3800, 2120, 1000, 1070, 3800, 2120),
	a4("70 x 37 mm", 3, 8, 7000, 3700, 0, 50, 7000, 3700),
	a4("70 x 36 mm", 3, 8, 7000, 3600, 0, 450, 7000, 3600),
	a4("70 x 35 mm", 3, 8, 7000, 3500, 0, 850, 7000, 3500),
	a4("52.5 x 29.7 mm", 4, 10, 5250, 2970, 0, 0, 5250, 2970),
	a4("105 x 37 mm", 2, 8, 10500, 3700, 0, 50, 10500, 3700),
	a4("105 x 57 mm", 2, 5, 10500, 5700, 0, 600, 10500, 5700),
}

// plains are plain paper, cut apart along lines: as many labels of a useful size
// as fit between margins that every printer keeps.
var plains = map[plan.Paper]Stock{
	plan.Letter: plainOf(letter("plain", 2, 5, in96(4, 0), in96(2, 0), in96(0, 24), in96(0, 48), in96(4, 0))),
	plan.A4:     plainOf(a4("plain", 2, 5, 9800, 5600, 700, 850, 9800, 5600)),
}

// cards are quarters of a page, to slip into the bag.
var cards = map[plan.Paper]Stock{
	plan.Letter: plainOf(letter("card", 2, 2, in96(4, 0), in96(5, 24), in96(0, 24), in96(0, 24), in96(4, 0))),
	plan.A4:     plainOf(a4("card", 2, 2, 9800, 14200, 700, 650, 9800, 14200)),
}

func plainOf(s Stock) Stock {
	s.Plain = true
	return s
}

// Stocks lists the label sheets that are known, by paper, then plain paper.
func Stocks() []Stock {
	all := append([]Stock(nil), stocks...)
	return append(all, plains[plan.Letter], plains[plan.A4])
}

// Row is the stock as a row of a table, its cells parted by tabs: paper, label
// size as the pack states it and in millimetres, labels a sheet, left and top of
// the first label, step across and down, gutter.
func (s Stock) Row() string {
	gutter := "yes"
	switch {
	case s.Plain:
		gutter = "cut apart"
	case s.Gapless():
		gutter = "none"
	}
	if s.HoldsCode() != nil {
		gutter += "; too small for a square code"
	}
	return strings.Join([]string{string(s.Paper), s.Name, mmPair(s.Width, " x ", s.Height),
		fmt.Sprintf("%d (%d x %d)", s.Labels(), s.Columns, s.Rows),
		mmPair(s.Left, ", ", s.Top), mmPair(s.StepAcross, ", ", s.StepDown), gutter}, "\t")
}

// mmPair is two lengths in millimetres with two decimals.
func mmPair(a length.Length, sign string, b length.Length) string {
	return mmText(a) + sign + mmText(b)
}

// mmText is a length in millimetres, to two decimals, without trailing zeros.
func mmText(l length.Length) string {
	hundredths := (l*100 + length.MM/2) / length.MM
	text := fmt.Sprintf("%d.%02d", int64(hundredths/100), int64(hundredths%100))
	return strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
}

// String names the stock: "2 5/8 x 1 in labels, 30 a sheet of letter paper".
func (s Stock) String() string {
	return fmt.Sprintf("%s labels, %d a sheet of %s paper", s.Name, s.Labels(), s.Paper)
}
