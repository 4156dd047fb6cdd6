package length

import (
	"math/bits"
	"regexp"
	"strconv"
	"strings"
)

// A ratio is a number as it was written, exact: num/den, den above zero.
type ratio struct{ num, den uint64 }

// maxDigits bounds the digits of one written number so that a ratio's sums stay
// far inside 64 bits.
const maxDigits = 15

// numberForm matches a number at the start of a text that tidy has been over:
// a mixed number, a fraction, a decimal with a comma, or a decimal. Mixed numbers
// come first, because the leftmost alternative wins.
var numberForm = regexp.MustCompile(`^(?:(\d+)(?:-| +)(\d+) ?/ ?(\d+)|(\d+) ?/ ?(\d+)|(\d+),(\d+)|(\d+)\.?(\d*)|\.(\d+))`)

// number reads the number at the start of s. rest is what follows it. why is ""
// or says what is wrong with it.
func number(s string) (r ratio, rest, why string) {
	m := numberForm.FindStringSubmatch(s)
	if m == nil {
		return r, s, "is not a length"
	}
	rest = s[len(m[0]):]
	if len(m[0]) > maxDigits+1 {
		return r, rest, "has too many digits"
	}
	switch {
	case m[2] != "":
		r, why = mixed(m[1], m[2], m[3])
	case m[4] != "":
		r, why = fraction(m[4], m[5])
	case m[6] != "":
		if len(m[7]) == 3 && m[6] != "0" {
			return r, rest, "has a comma that may mean thousands"
		}
		r = decimal(m[6], m[7])
	case m[8] != "":
		r = decimal(m[8], m[9])
	default:
		r = decimal("0", m[10])
	}
	return r, rest, why
}

// mixed is whole + num/den.
func mixed(whole, num, den string) (ratio, string) {
	w, n, d := digits(whole), digits(num), digits(den)
	switch {
	case d == 0:
		return ratio{}, "divides by zero"
	case n >= d:
		return ratio{}, "has a fraction that is not below one"
	}
	return ratio{w*d + n, d}, ""
}

// fraction is num/den. A fraction above one whose first digits may have been
// meant as a whole number ("41/2" for "4 1/2") is refused: guessing wrong spoils
// cloth.
func fraction(num, den string) (ratio, string) {
	n, d := digits(num), digits(den)
	if d == 0 {
		return ratio{}, "divides by zero"
	}
	if n > d {
		for i := 1; i < len(num); i++ {
			if tail := digits(num[i:]); tail > 0 && tail < d {
				return ratio{}, "may mean " + num[:i] + " " + num[i:] + "/" + den + " or " + mixedText(n, d)
			}
		}
	}
	return ratio{n, d}, ""
}

// mixedText prints n/d as a mixed number, not reduced.
func mixedText(n, d uint64) string {
	s := strconv.FormatUint(n/d, 10)
	if n%d > 0 {
		s += " " + strconv.FormatUint(n%d, 10) + "/" + strconv.FormatUint(d, 10)
	}
	return s
}

// decimal is whole.frac.
func decimal(whole, frac string) ratio {
	r := ratio{digits(whole + frac), 1}
	for range frac {
		r.den *= 10
	}
	return r
}

// digits reads what numberForm has found to be digits, few enough to fit.
func digits(s string) uint64 {
	n, _ := strconv.ParseUint(s, 10, 64)
	return n
}

// times gives the ratio of a unit, rounded to the nearest whole Length (halves
// up). ok is false where it doesn't fit.
func (r ratio) times(unit Length) (l Length, ok bool) {
	hi, lo := bits.Mul64(r.num, uint64(unit))
	if hi >= r.den {
		return 0, false
	}
	q, rem := bits.Div64(hi, lo, r.den)
	if rem >= r.den-rem {
		q++
	}
	return Length(q), q <= uint64(Max)
}

// spellings turns the ways a sign may be typed into the one that numberForm and
// the unit names know.
var spellings = strings.NewReplacer(
	"−", "-", "–", "-", "‐", "-", "‑", "-", "⁄", "/", "∕", "/",
	"\u00a0", " ", "\u2009", " ", "\u202f", " ", "\t", " ",
	"″", `"`, "”", `"`, "“", `"`, "''", `"`, "′′", `"`, "’’", `"`, "′", "'", "’", "'",
	"-½", " 1/2", "-¼", " 1/4", "-¾", " 3/4",
	"½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅓", " 1/3", "⅔", " 2/3",
	"⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
	"⅕", " 1/5", "⅖", " 2/5", "⅗", " 3/5", "⅘", " 4/5", "⅙", " 1/6", "⅚", " 5/6",
	"⅐", " 1/7", "⅑", " 1/9", "⅒", " 1/10",
)

// spoken are the words that may open a length, as the number they stand for.
var spoken = regexp.MustCompile(`^(?:(an?|one|two|three|four|five) +and +a +half|(?:an? +)?(half|quarter|third|eighth)(?: +of)?(?: +an?)?|(three)[ -]quarters?(?: +of)?(?: +an?)?|(an?|one)) +`)

// tidy brings a written length into the one form that is read: lower case, plain
// signs, words for numbers as figures.
func tidy(s string) string {
	s = strings.TrimSpace(spellings.Replace(strings.ToLower(s)))
	m := spoken.FindStringSubmatch(s)
	if m == nil {
		return s
	}
	rest := s[len(m[0]):]
	whole := map[string]string{"a": "1", "an": "1", "one": "1", "two": "2", "three": "3", "four": "4", "five": "5"}
	switch {
	case m[1] != "":
		return whole[m[1]] + " 1/2 " + rest
	case m[2] != "":
		return map[string]string{"half": "1/2 ", "quarter": "1/4 ", "third": "1/3 ", "eighth": "1/8 "}[m[2]] + rest
	case m[3] != "":
		return "3/4 " + rest
	}
	return "1 " + rest
}
