package workbook

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/xuri/excelize/v2"
)

// A look is how a cell's style shows its number.
type look int

const (
	plainLook look = iota
	dateLook
	percentLook
)

// readCell reads a cell whose stored value is text.
func readCell(f *excelize.File, sheet, at, text string, looks map[int]look) (Cell, error) {
	kind, err := f.GetCellType(sheet, at)
	if err != nil {
		return Cell{}, err
	}
	switch kind {
	case excelize.CellTypeError:
		return Cell{Text: text, Kind: Broken}, nil
	case excelize.CellTypeBool:
		return Cell{Text: map[bool]string{true: "yes", false: "no"}[text == "1" || strings.EqualFold(text, "true")]}, nil
	case excelize.CellTypeDate:
		day, _, _ := strings.Cut(text, "T")
		return Cell{Text: day, Kind: Date}, nil
	}
	if text == "" {
		formula, err := f.GetCellFormula(sheet, at)
		if err != nil || formula == "" {
			return Cell{}, err
		}
		if kind == excelize.CellTypeFormula { // a text, and an empty one
			return Cell{}, nil
		}
		return Cell{Text: "=" + formula, Kind: Uncomputed}, nil
	}
	if kind == excelize.CellTypeSharedString || kind == excelize.CellTypeInlineString || kind == excelize.CellTypeFormula {
		return Cell{Text: tidy(text)}, nil
	}
	style, err := f.GetCellStyle(sheet, at)
	if err != nil {
		return Cell{}, err
	}
	l, known := looks[style]
	if !known {
		l = lookOf(f, style)
		looks[style] = l
	}
	return numberCell(text, l, f), nil
}

// tidy turns the spaces that spreadsheets and web pages bring along into plain
// ones, and line breaks into one kind.
func tidy(text string) string { return strings.TrimSpace(spaces.Replace(text)) }

var spaces = strings.NewReplacer("\u00a0", " ", "\u202f", " ", "\r\n", "\n", "\r", "\n", "_x000D_\n", "\n")

// numberCell is a stored number as it is shown. Spreadsheets compute with 15
// digits and show no more, so what a sum of fractions leaves behind them is cut
// off.
func numberCell(text string, l look, f *excelize.File) Cell {
	n, err := strconv.ParseFloat(text, 64)
	if err != nil || math.IsInf(n, 0) || math.IsNaN(n) {
		return Cell{Text: tidy(text)}
	}
	switch l {
	case dateLook:
		return Cell{Text: day(n, f), Kind: Date}
	case percentLook:
		return Cell{Text: decimal(n*100) + "%"}
	}
	return Cell{Text: decimal(n)}
}

// decimal prints a number with 12 digits at most, without an exponent where it
// has a size that plans have.
func decimal(n float64) string {
	short, _ := strconv.ParseFloat(strconv.FormatFloat(n, 'g', 12, 64), 64)
	if math.Abs(short) > 1e12 {
		return strconv.FormatFloat(short, 'g', -1, 64)
	}
	return strconv.FormatFloat(short, 'f', -1, 64)
}

// day is the date of a serial number: days from the end of 1899, in a count that
// has a day too many in February 1900, or from 1904.
func day(n float64, f *excelize.File) string {
	if !(n >= 0 && n < 2958466) { // the last day of 9999
		return decimal(n)
	}
	days := int(n) - 25569 // 1 January 1970
	if props, err := f.GetWorkbookProps(); err == nil && props.Date1904 != nil && *props.Date1904 {
		days += 1462
	}
	return civil(days)
}

// civil is the date of a count of days from 1 January 1970. Years are counted
// from March, so that the leap day comes last, in cycles of 400 years.
func civil(days int) string {
	days += 719468 // from 1 March of the year 0
	cycle, day := days/146097, days%146097
	year := (day - day/1460 + day/36524 - day/146096) / 365
	day -= 365*year + year/4 - year/100
	month := (5*day + 2) / 153
	day -= (153*month + 2) / 5
	year += 400 * cycle
	if month += 3; month > 12 {
		month, year = month-12, year+1
	}
	return fmt.Sprintf("%04d-%02d-%02d", year, month, day+1)
}

// lookOf is the look of a style: by its number where it is built in (ECMA-376,
// part 1, 18.8.30), else by its letters.
func lookOf(f *excelize.File, style int) look {
	s, err := f.GetStyle(style)
	if err != nil || s == nil {
		return plainLook
	}
	if s.CustomNumFmt != nil {
		return lookOfFormat(*s.CustomNumFmt)
	}
	switch n := s.NumFmt; {
	case n == 9 || n == 10:
		return percentLook
	case n >= 14 && n <= 22, n >= 27 && n <= 36, n >= 45 && n <= 47, n >= 50 && n <= 58:
		return dateLook
	}
	return plainLook
}

// lookOfFormat is the look of a format that is written out, such as "d/m/yyyy":
// a date where letters of dates stand outside quotes and brackets.
func lookOfFormat(format string) look {
	quoted, bracket := false, false
	for i := 0; i < len(format); i++ {
		switch c := format[i]; {
		case c == '\\' || c == '_' || c == '*':
			i++
		case c == '"':
			quoted = !quoted
		case quoted:
		case c == '[':
			bracket = true
		case c == ']':
			bracket = false
		case bracket:
		case c == '%':
			return percentLook
		case strings.IndexByte("dmyhsDMYHS", c) >= 0 && !strings.HasPrefix(strings.ToLower(format[i:]), "general"):
			return dateLook
		}
	}
	return plainLook
}
