package scan

import (
	"fmt"
	"regexp"

	"cutbinder/layout/length"
	"cutbinder/sheets/bag"
)

// Unreadable is the problem of a square code that is seen on a photo and can't be
// read, or whose words don't agree with each other.
const Unreadable = "not readable"

// typeIt is what helps with any label.
const typeIt = "type the code that is printed under the square code"

// Answer says which bag the text of a square code belongs to. It names a bag only
// where everything in the text agrees: the code and its check character, the bag's
// number, the block and the contents, word by word as a label says them. Anything
// else is not readable, whatever its code says.
func Answer(s *bag.Sorted, text string) bag.Answer {
	a := s.Read(text)
	switch a.Verdict {
	case bag.Good:
		if says(s, a.Bag, text) {
			return a
		}
		return refused(a, "the words in the square code are not those of bag %d's label", a.Bag.Number)
	case bag.OtherPlan, bag.OlderVersion:
		code, err := bag.Parse(text)
		m := numbered.FindStringSubmatch(text)
		if err == nil && m != nil && m[1] == fmt.Sprint(code.Bag) {
			return a
		}
		return refused(a, "the words in the square code do not agree with its bag code")
	case bag.Mistyped:
		return refused(a, "the code in the square code does not check")
	}
	return refused(a, "the square code is not one of a bag label")
}

// refused is the answer to a text that is not to be trusted.
func refused(a bag.Answer, why string, args ...any) bag.Answer {
	return bag.Answer{Code: a.Code, Verdict: bag.NotACode, Problem: Unreadable + ": " + fmt.Sprintf(why, args...), Hint: typeIt}
}

// numbered is the part of a label's text that says which bag it is.
var numbered = regexp.MustCompile(` BAG (\d+)`)

// says says whether a bag's label may say a text: in a square code of any size and
// in either system of units.
func says(s *bag.Sorted, b *bag.Bag, text string) bool {
	for _, units := range [2]length.System{length.Imperial, length.Metric} {
		t := bag.Sorted{Title: s.Title, Mark: s.Mark, Bags: s.Bags, Units: units}
		if t.MaySay(b, text) {
			return true
		}
	}
	return false
}
