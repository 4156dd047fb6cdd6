package bag

import (
	"fmt"
	"strings"
)

// An Answer says which bag a code belongs to, or why to none.
type Answer struct {
	Code    string // as it is printed; what was read, where that is no code
	Verdict Verdict
	Bag     *Bag   // where the verdict is Good
	Problem string // what is wrong, for a maker to read; "" where nothing is
	Hint    string // what to do about it; may be ""
}

// OK says whether the code belongs to a bag of this plan as it is.
func (a Answer) OK() bool { return a.Verdict == Good }

// Read reads a code, typed or from a square code, and looks it up.
func (s *Sorted) Read(text string) Answer {
	code, err := Parse(text)
	if err == nil {
		return s.Lookup(code)
	}
	e := err.(*CodeError)
	a := Answer{Code: e.Text, Verdict: e.Verdict, Problem: e.Why}
	if e.Verdict == Mistyped {
		a.Problem = "mistyped: " + e.Why
		a.Hint = "compare it with the label character by character"
	}
	if b := s.near(bare(text)); b != nil {
		a.Verdict = Mistyped
		a.Hint = fmt.Sprintf("did you mean %s (bag %d)?", b.Code, b.Number)
	}
	return a
}

// Lookup says which bag a code belongs to.
func (s *Sorted) Lookup(c Code) Answer {
	a := Answer{Code: c.String()}
	b := s.Bag(c.Bag)
	switch {
	case c.Mark != s.Mark:
		a.Verdict = OtherPlan
		a.Problem = fmt.Sprintf("another plan: this label begins with %s, those of %s begin with %s", c.Mark, s.Title, s.Mark)
		a.Hint = fmt.Sprintf("if the plan was given another title since the label was printed, write mark: %s in it", c.Mark)
	case b != nil && b.Code == c:
		a.Verdict, a.Bag = Good, b
	default:
		a.Verdict = OlderVersion
		a.Problem, a.Hint = s.changed(c)
	}
	return a
}

// changed says what became of the bag of a code of this plan that no bag has.
func (s *Sorted) changed(c Code) (problem, hint string) {
	problem = "an older version of this plan: "
	switch n := len(s.Bags); {
	case c.Bag <= n:
		problem += fmt.Sprintf("bag %d holds something else now", c.Bag)
		hint = fmt.Sprintf("check what is in the bag and print its label again (--bags %d)", c.Bag)
	case n == 1:
		problem += fmt.Sprintf("there is no bag %d any more, only 1 bag", c.Bag)
	default:
		problem += fmt.Sprintf("there is no bag %d any more, only %d bags", c.Bag, n)
	}
	if b := s.moved(c); b != nil {
		hint = fmt.Sprintf("what it held seems to be bag %d now: %s, %s; if that is what is in it, print the label (--bags %d)", b.Number, b.Heading(), b.Code, b.Number)
	}
	return problem, hint
}

// moved is the only bag that would have had a code under the number in it, or nil.
// Another than was meant has the same two characters for its contents once in 841
// times.
func (s *Sorted) moved(c Code) *Bag {
	var found *Bag
	for i := range s.Bags {
		if codeFor(s.Mark, c.Bag, holds(&s.Bags[i])) != c {
			continue
		}
		if found != nil {
			return nil
		}
		found = &s.Bags[i]
	}
	return found
}

// near is the only bag whose code is one slip away from what was typed: one
// character wrong, missing or too many, or two neighbours swapped.
func (s *Sorted) near(typed string) *Bag {
	var found *Bag
	for i := range s.Bags {
		if oneSlip(typed, bare(s.Bags[i].Code.String())) {
			if found != nil {
				return nil
			}
			found = &s.Bags[i]
		}
	}
	return found
}

func oneSlip(a, b string) bool {
	for len(a) > 0 && len(b) > 0 && a[0] == b[0] {
		a, b = a[1:], b[1:]
	}
	for len(a) > 0 && len(b) > 0 && a[len(a)-1] == b[len(b)-1] {
		a, b = a[:len(a)-1], b[:len(b)-1]
	}
	if len(a) == 2 && len(b) == 2 {
		return a[0] == b[1] && a[1] == b[0]
	}
	return len(a) <= 1 && len(b) <= 1
}

// String gives the answer in one line, for people who look into the program.
func (a Answer) String() string {
	if a.Bag != nil {
		return fmt.Sprintf("%s bag %d of %d %s", a.Code, a.Bag.Number, a.Bag.Of, a.Bag.Heading())
	}
	return strings.TrimSpace(a.Code + " " + a.Problem)
}
