package bag

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"
)

// A Verdict says what came of reading a code.
type Verdict int

// The verdicts.
const (
	Good         Verdict = iota
	NotACode             // nothing like a code was read
	Mistyped             // a character is wrong, or two are swapped
	OtherPlan            // a right code, of another plan
	OlderVersion         // a right code of this plan, whose bag has changed since
)

// A CodeError says why a text is no code.
type CodeError struct {
	Verdict Verdict // NotACode or Mistyped
	Text    string  // what was read, shortened
	Why     string
}

// Error says what was read and what is wrong with it.
func (e *CodeError) Error() string { return fmt.Sprintf("%q: %s", e.Text, e.Why) }

// Parse reads a code as it was typed, or the whole text of a square code, which
// begins with one. Lower case is accepted, and so are missing hyphens and anything
// that is no letter or digit in their place. A letter that Alphabet leaves out is read as what it is taken for, but not in the
// place of the check character, where every letter has a meaning of its own. The
// error is a *CodeError.
func Parse(text string) (Code, error) {
	typed := bare(text)
	fail := func(v Verdict, why string, args ...any) (Code, error) {
		return Code{}, &CodeError{v, shorten(strings.TrimSpace(text), 40), fmt.Sprintf(why, args...)}
	}
	if i := strings.IndexFunc(typed, func(r rune) bool { return r > 'Z' || strings.IndexByte(checkSet, byte(r)) < 0 }); i >= 0 {
		return fail(NotACode, "%q does not occur in a bag code; expected one such as K7Q-07-F3X", []rune(typed[i:])[0])
	}
	digits := len(typed) - 6
	if digits < 2 || digits > 6 {
		return fail(NotACode, "expected a bag code such as K7Q-07-F3X: 3 characters, the bag's number, 3 characters")
	}
	if !strings.ContainsAny(typed[3:3+digits], "0123456789") {
		return fail(NotACode, "expected a bag code such as K7Q-07-F3X, with the bag's number in the middle")
	}
	code, ok := readCode(typed)
	if !ok {
		return fail(Mistyped, "a character is wrong or two are swapped: the code does not check")
	}
	if swapped := swap(typed, len(typed)-2); swapped != typed && !inAlphabet(typed[len(typed)-2]) && inAlphabet(swapped[len(typed)-2]) {
		if _, ok := readCode(swapped); ok {
			return fail(Mistyped, "its last two characters can be read in two ways")
		}
	}
	return code, nil
}

// bare is the code in a text, without what may stand between its characters.
func bare(text string) string {
	text = strings.ToUpper(text)
	if i := strings.Index(text, " BAG "); i >= 8 {
		text = text[:i]
	}
	return strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) || r == '*' {
			return r
		}
		return -1
	}, text)
}

// readCode reads the characters of a code, at least eight of checkSet.
func readCode(typed string) (Code, bool) {
	last := len(typed) - 1
	body := make([]byte, last)
	for i := range body {
		c, ok := readable(rune(typed[i]))
		if !ok {
			return Code{}, false
		}
		body[i] = c
	}
	digits := string(body[3 : last-2])
	number, err := strconv.Atoi(digits)
	if err != nil || number == 0 || digits != fmt.Sprintf("%02d", number) {
		return Code{}, false
	}
	code := newCode(string(body[:3]), number, string(body[last-2:]))
	return code, code.Check == typed[last]
}

func inAlphabet(c byte) bool { return strings.IndexByte(Alphabet, c) >= 0 }

// swap swaps the characters at i and i+1.
func swap(s string, i int) string {
	return s[:i] + s[i+1:i+2] + s[i:i+1] + s[i+2:]
}

// shorten cuts a text to at most n characters.
func shorten(s string, n int) string {
	r := []rune(s)
	if len(r) <= n {
		return s
	}
	return string(r[:n-1]) + "…"
}
