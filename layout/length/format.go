package length

import (
	"fmt"
	"math/big"
	"strings"
)

// A Style says how a length is printed; styles add up.
type Style uint8

// The styles. Without any, a length is printed for text and data: "4 1/2", "6.5".
const (
	WithUnit Style = 1 << iota // "4 1/2 in", "6.5 cm"
	Typeset                    // "4½", "12 15⁄16", "3½ × 6½", and "≈" for "about"
)

// style adds styles up.
func style(how []Style) (all Style) {
	for _, h := range how {
		all |= h
	}
	return all
}

// Format prints a length in the system's unit, and never a rounded value as if it
// were the true one. In inches, multiples of 1/64 are printed as fractions, for
// so makers write them, and everything else as a decimal; in Metric all are
// decimal centimetres. A decimal has three places at most and Parse reads it back
// as the same length; any other length is rounded (to 0.001 in or 0.1 mm) and says
// so with "about", typeset "≈". WOF is "WOF".
//
// Parse(Format(l)) is l for every multiple of 1/64 in and of 0.1 mm in its own
// system.
func (s System) Format(l Length, how ...Style) string {
	st := style(how)
	text := s.bare(l, st)
	if st&WithUnit != 0 && l != WOF {
		text += " " + s.suffix()
	}
	return text
}

// FormatSize prints a size as Format prints its sides: "3 1/4 x 3 1/4", typeset
// "3¼ × 3¼", with the unit once at the end.
func (s System) FormatSize(z Size, how ...Style) string {
	st := style(how)
	sign := " x "
	if st&Typeset != 0 {
		sign = " × "
	}
	text := s.bare(z.W, st) + sign + s.bare(z.H, st)
	if st&WithUnit != 0 && (z.W != WOF || z.H != WOF) {
		if z.H == WOF { // "2 1/2 in x WOF": the unit belongs to the number
			return s.bare(z.W, st) + " " + s.suffix() + sign + "WOF"
		}
		text += " " + s.suffix()
	}
	return text
}

// FormatCloth prints a length of cloth as shops sell it, always with its unit:
// in yards where it is a whole number of sixteenths or thirds of a yard
// ("1 1/4 yd", "2/3 yd"), or as near to one of sevenths as a length can be, else
// in inches; in metres from one metre on ("1.2 m"), else in centimetres ("35 cm").
func (s System) FormatCloth(l Length, how ...Style) string {
	st := style(how)
	switch {
	case s == Metric && l >= M:
		return decimalOf(l, M, 4, 4, st) + " m"
	case s == Metric || l <= 0:
		return s.Format(l, st|WithUnit)
	}
	for _, den := range []Length{16, 3} {
		if l%(Yard/den) == 0 {
			return fractionOf(l/(Yard/den), den, st) + " yd"
		}
	}
	if n := (7*l + Yard/2) / Yard; l == (2*n*Yard+7)/14 {
		return fractionOf(n, 7, st) + " yd"
	}
	return s.Format(l, st|WithUnit)
}

// bare prints a length without its unit.
func (s System) bare(l Length, st Style) string {
	switch {
	case l == WOF:
		return "WOF"
	case l < 0:
		return "-" + s.bare(-l, st)
	case s == Metric:
		return decimalOf(l, CM, 3, 2, st)
	case l%Sixtyfourth == 0:
		return fractionOf(l/Sixtyfourth, 64, st)
	}
	return decimalOf(l, Inch, 3, 3, st)
}

// decimalOf prints l/unit with as few decimals as read back as l, up to most; or
// else rounded to places and marked.
func decimalOf(l, unit Length, most, places int, st Style) string {
	r := new(big.Rat).SetFrac64(int64(l), int64(unit))
	for n := 0; n <= most; n++ {
		if text := r.FloatString(n); readsAs(text, unit, l) {
			return text
		}
	}
	text := trimZeros(r.FloatString(places))
	if st&Typeset != 0 {
		return "≈" + text
	}
	return "about " + text
}

// readsAs says whether a decimal of a unit is read as l: whether l is the whole
// length nearest to it.
func readsAs(text string, unit, l Length) bool {
	r, ok := new(big.Rat).SetString(text)
	if !ok {
		return false
	}
	off := r.Mul(r, big.NewRat(int64(unit), 1)).Sub(r, big.NewRat(int64(l), 1))
	return off.Cmp(big.NewRat(-1, 2)) >= 0 && off.Cmp(big.NewRat(1, 2)) < 0
}

// trimZeros drops a decimal's trailing zeros, and its point where nothing is left
// behind it.
func trimZeros(s string) string {
	if strings.Contains(s, ".") {
		s = strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
	}
	return s
}

// glyphs are the fractions that have a character of their own in ordinary faces.
var glyphs = map[[2]Length]string{
	{1, 2}: "½", {1, 4}: "¼", {3, 4}: "¾", {1, 8}: "⅛", {3, 8}: "⅜", {5, 8}: "⅝", {7, 8}: "⅞",
}

// fractionOf prints num/den as a mixed number in lowest terms.
func fractionOf(num, den Length, st Style) string {
	whole, num := num/den, num%den
	for num > 0 && num%2 == 0 && den%2 == 0 {
		num, den = num/2, den/2
	}
	switch g, ok := glyphs[[2]Length{num, den}]; {
	case num == 0:
		return fmt.Sprint(int64(whole))
	case st&Typeset != 0 && ok && whole == 0:
		return g
	case st&Typeset != 0 && ok:
		return fmt.Sprint(int64(whole)) + g
	}
	text := fmt.Sprintf("%d/%d", int64(num), int64(den))
	if st&Typeset != 0 {
		text = strings.Replace(text, "/", "⁄", 1)
	}
	if whole > 0 {
		text = fmt.Sprintf("%d %s", int64(whole), text)
	}
	return text
}

// Inches is the length in inches, for data; multiples of 1/64 in are exact and
// print short.
func (l Length) Inches() float64 { return float64(l) / float64(Inch) }

// String prints a length exactly, for dumps: "4 1/2 in" where it is a whole number
// of 64ths, else in millimetres ("66.675 mm").
func (l Length) String() string {
	if l == WOF || l%Sixtyfourth == 0 {
		return Imperial.Format(l, WithUnit)
	}
	return trimZeros(new(big.Rat).SetFrac64(int64(l), int64(MM)).FloatString(6)) + " mm"
}

// String prints a size exactly, for dumps.
func (z Size) String() string { return z.W.String() + " x " + z.H.String() }
