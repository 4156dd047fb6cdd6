package length

import (
	"fmt"
	"regexp"
	"strings"
)

// Max is the longest length that is read: one kilometre, more than any bolt and
// far from where sums could overflow.
const Max = 1000 * M

// maxText is the longest text that is looked at, in bytes.
const maxText = 80

// An Error says why a text is not a length or not a size.
type Error struct {
	Text   string // what was read, shortened where it is long
	Why    string // "is not a length", "divides by zero"
	Expect string // "expected a length such as 4 1/2, 4.5 in or 6.5 cm"
}

// Error gives what was read and what was expected.
func (e *Error) Error() string { return fmt.Sprintf("%q %s; %s", e.Text, e.Why, e.Expect) }

// wrong makes an Error about a length.
func wrong(s, why string, bare System) *Error {
	expect := "expected a length such as 4 1/2, 4.5 or 6.5 cm"
	if bare == Metric {
		expect = "expected a length such as 6.5, 65 mm or 4 1/2 in"
	}
	return &Error{shorten(s), why, expect}
}

// shorten keeps a message readable whatever was read.
func shorten(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:37]) + "..."
	}
	return s
}

// Parse reads a length: "4", "4.5", "4 1/2", "4-1/2", "4½", with a unit where it
// isn't in the system's own ("in", `"`, "ft", "'", "yd", "mm", "cm", "m" and
// their long names), several units from the longest to the shortest (`5' 6"`),
// or in words ("half yard", "three quarters of a yard"). A bare number counts
// inches or, in Metric, centimetres. A comma is read as a decimal point unless
// exactly three digits follow it.
//
// What is no whole number of units, such as 1/3 in, is rounded to the nearest,
// 1/640 mm away at most; 1/3 yd is exact. The error is an *Error: the text is no
// length, may mean two, is negative, or is above Max. Zero is read.
func Parse(s string, bare System) (Length, error) {
	l, _, err := parse(s, bare.unit(), bare)
	if err != nil {
		return 0, err
	}
	return l, nil
}

// unitForm matches a unit's name or sign.
var unitForm = regexp.MustCompile(`^ *([a-z]+\.?|["'])`)

// parse reads a length whose bare number counts unit. last is the last unit that
// was written, or 0. The error is nil or an *Error.
func parse(s string, unit Length, bare System) (sum, last Length, err *Error) {
	if len(s) > maxText {
		return 0, 0, wrong(s, "is not a length", bare)
	}
	rest := tidy(s)
	if strings.HasPrefix(rest, "-") {
		return 0, 0, wrong(s, "is negative", bare)
	}
	for first := true; first || rest != ""; first = false {
		n, after, why := number(rest)
		if why != "" {
			return 0, 0, wrong(s, why, bare)
		}
		u, after, why := unitAfter(after)
		switch {
		case why != "":
			return 0, 0, wrong(s, why, bare)
		case u == 0 && after == "" && first:
			u = unit
		case u == 0, last > 0 && u >= last:
			return 0, 0, wrong(s, "is not a length", bare)
		default:
			last = u
		}
		l, ok := n.times(u)
		if sum += l; !ok || sum > Max {
			return 0, 0, wrong(s, "is too long", bare)
		}
		rest = after
	}
	return sum, last, nil
}

// unitAfter reads the unit at the start of s; 0 where there is none.
func unitAfter(s string) (u Length, rest, why string) {
	m := unitForm.FindStringSubmatch(s)
	if m == nil {
		return 0, strings.TrimLeft(s, " "), ""
	}
	u, ok := unitNamed(m[1])
	if !ok {
		return 0, s, fmt.Sprintf("has no unit named %q", m[1])
	}
	return u, strings.TrimLeft(s[len(m[0]):], " "), ""
}
