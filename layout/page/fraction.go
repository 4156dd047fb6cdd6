package page

import (
	"strings"
	"unicode"

	"cutbinder/fonts"
	"cutbinder/layout/length"
)

// slash is the fraction slash, U+2044: between two numbers it asks for a
// fraction (Unicode Standard, section 6.2, "Other Punctuation").
const slash = '⁄'

// A fraction is a numerator and a denominator to be composed.
type fraction struct {
	space    rune // the space that set it off from a whole number, or 0
	num, den string
}

// vulgar are fractions that have a character of their own, for faces that
// lack it.
var vulgar = map[rune]fraction{
	'½': {num: "1", den: "2"}, '¼': {num: "1", den: "4"}, '¾': {num: "3", den: "4"},
	'⅛': {num: "1", den: "8"}, '⅜': {num: "3", den: "8"}, '⅝': {num: "5", den: "8"}, '⅞': {num: "7", den: "8"},
	'⅓': {num: "1", den: "3"}, '⅔': {num: "2", den: "3"},
	'⅕': {num: "1", den: "5"}, '⅖': {num: "2", den: "5"}, '⅗': {num: "3", den: "5"}, '⅘': {num: "4", den: "5"},
	'⅙': {num: "1", den: "6"}, '⅚': {num: "5", den: "6"}, '⅐': {num: "1", den: "7"},
	'⅑': {num: "1", den: "9"}, '⅒': {num: "1", den: "10"},
}

// mayHoldFraction reports whether a text holds a fraction slash or a fraction
// character: most texts hold none and need no closer look.
func mayHoldFraction(s string) bool {
	for _, r := range s {
		if r == slash || r >= '⅐' && r <= '⅞' || r >= '¼' && r <= '¾' {
			return true
		}
	}
	return false
}

// fractionAt reads a fraction at the start of rs: digits, fraction slash,
// digits; or a fraction character that no face of the set has. One space
// before it belongs to it, so that "3 15⁄16" sets as one number. n is the
// number of characters read, 0 where there is no fraction.
func fractionAt(rs []rune, set fonts.Set) (f fraction, n int) {
	i := 0
	if len(rs) > 0 && isThinSpace(rs[0]) {
		f.space, i = rs[0], 1
	}
	if i == 0 && len(rs) > 0 {
		if v, ok := vulgar[rs[0]]; ok && !set.Has(rs[0]) {
			return v, 1
		}
	}
	num := digits(rs[i:])
	at := i + len(num)
	if len(num) == 0 || at >= len(rs) || rs[at] != slash {
		return fraction{}, 0
	}
	den := digits(rs[at+1:])
	if len(den) == 0 {
		return fraction{}, 0
	}
	f.num, f.den = string(num), string(den)
	return f, at + 1 + len(den)
}

// isThinSpace reports whether a space may stand between a whole number and its
// fraction.
func isThinSpace(r rune) bool {
	return r == ' ' || r == '\u00a0' || r == '\u2009' || r == '\u202f'
}

// digits is the run of ASCII digits rs starts with.
func digits(rs []rune) []rune {
	n := 0
	for n < len(rs) && rs[n] >= '0' && rs[n] <= '9' {
		n++
	}
	return rs[:n]
}

// fraction sets a composed fraction as one atom: a raised small numerator, the
// slash, a lowered small denominator. Its proportions are those of the ½ of
// the embedded faces: figures 0.6 of the size, the numerator's top level with
// the capitals, the denominator on the baseline; regular type takes its small
// figures from the bold face, so that their stems are as thick as the type's.
// After a whole number the space shrinks to a narrow gap, which a copied text
// still shows as a space; elsewhere it stays a space of its own.
func (t *typesetter) fraction(f fraction, st TextStyle) {
	switch after := len(t.out) > 0 && isFigure(t.out[len(t.out)-1]); {
	case after:
		f.space = '\u00a0'
	case f.space != 0:
		t.char(f.space, st)
		f.space = 0
	}
	st.Track = 0
	figures := st
	if st.Weight == fonts.Regular {
		figures = st.Heavy()
	}
	small := st.Size * 6 / 10
	m := t.set.Face(st.Weight).Metrics()
	rise := (st.Size - small) * length.Length(m.CapHeight) / length.Length(m.UnitsPerEm)
	a := atom{lead: st.Lead}
	start := len(t.glyphs)
	add := func(st TextStyle, s string, size, rise length.Length) {
		for _, r := range s {
			a.w += t.glyph(r, st, size, rise).w
			t.glyphs[len(t.glyphs)-1].part = true
		}
	}
	if f.space != 0 {
		add(st, string(f.space), st.Size*4/10, 0)
	}
	add(figures, f.num, small, rise)
	add(st, string(slash), st.Size, 0)
	add(figures, f.den, small, 0)
	a.glyphs = t.glyphs[start:]
	t.out = append(t.out, a)
}

// wholeFigures is how many atoms belong to the whole number that a text starts
// with, signs and brackets before it included: what is set to the left of the
// line on which a column's figures are aligned.
func wholeFigures(as []atom) int {
	i := 0
	for i < len(as) && isOpening(as[i]) {
		i++
	}
	for i < len(as) && isFigure(as[i]) {
		i++
	}
	return i
}

// isFigure reports whether an atom is a digit at full size.
func isFigure(a atom) bool {
	return len(a.glyphs) == 1 && unicode.IsDigit(a.glyphs[0].r)
}

// isOpening reports whether an atom may stand before a number.
func isOpening(a atom) bool {
	return len(a.glyphs) == 1 && strings.ContainsRune("(+-−±≤≥≈", a.glyphs[0].r)
}
