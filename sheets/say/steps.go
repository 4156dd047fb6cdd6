package say

import (
	"fmt"
	"strings"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/plan"
)

// A Line is one cutting step in words. Label is its number on the diagram, or
// its range, or "" for what goes with the line before.
type Line struct {
	Label string
	Text  string
	Inner bool // one of several things that the line before lists
}

// Check is the label of the line that asks for a first measured piece.
const Check = "✓"

// steps says the steps of one cloth.
type steps struct {
	Voice
	p      *plan.Plan
	f      *cutting.Fabric
	c      *cutting.Cloth
	lines  []Line
	layers int             // that strips are cut through
	folded bool            // the fold has been looked at
	late   bool            // the lines are about what is cut last
	ruled  []length.Length // sub-cuts of which it was said how to measure them
}

// Steps says how one cloth of a fabric is cut, in the order of the cuts.
func (v Voice) Steps(p *plan.Plan, f *cutting.Fabric, c *cutting.Cloth) []Line {
	if c.Unused() {
		return nil
	}
	s := &steps{Voice: v, p: p, f: f, c: c}
	cuts := c.Steps(p)
	s.square(cuts)
	if f.Fabric.OneWay {
		s.add("", "One-way print: keep the cloth as it lies and turn no piece.")
	}
	for _, step := range cuts {
		s.step(step, "width")
	}
	s.add(Check, "Measure one piece of each size before you cut the rest.")
	s.retrue(cuts)
	return s.lines
}

func (s *steps) add(label, format string, args ...any) {
	s.lines = append(s.lines, Line{Label: label, Text: fmt.Sprintf(format, args...)})
}

// square says how the cloth is laid down and its end straightened. The selvages
// run away from the hand that holds the ruler, so that strips come off the near
// end; in the picture that end is edge 1.
func (s *steps) square(cuts []cutting.Step) {
	lay := "Lay the cloth flat in one layer" + s.lying()
	s.layers = 1
	if first := cuts[0]; first.Dir == cutting.Across {
		switch first.Folds {
		case 1:
			lay, s.layers = "Fold selvage to selvage until the fold hangs flat, and lay it so that the fold runs from left to right", 2
		case 2:
			lay, s.layers = "Fold selvage to selvage, then the fold to the selvages (four layers), and lay it so that the folds run from left to right", 4
		}
	}
	end := fmt.Sprintf("Straighten the end at your %s, edge 1 in the picture", s.Near())
	if s.c.Square > 0 {
		s.add("1", "%s. %s: take off no more than %s.", lay, end, s.With(s.c.Square))
		return
	}
	s.add("1", "%s. %s; no cloth is allowed for it, so take off threads only.", lay, end)
}

// lying says which way a single layer lies.
func (s *steps) lying() string {
	switch left, right := s.c.Selvages(); {
	case left && right:
		return ", its selvages from left to right"
	case left:
		return ", its selvage from left to right"
	}
	return ", its length from left to right"
}

// step says the cuts that free the parts of one size. run is what a strip's
// length is called.
func (s *steps) step(step cutting.Step, run string) {
	label := span(step.First, step.Last)
	if step.Leftover {
		if label == "" && step.Dir == cutting.Across && step.Size.W == s.c.Root.W {
			if rest := s.c.Rest(s.p, s.f.Fabric); rest >= Keepable {
				s.add("", "Keep what is left over: %s.", s.Size(length.Size{W: step.Size.W, H: rest}))
			}
		}
		return
	}
	text := ""
	if s.lateStep(step) && !s.late {
		s.late = true
		text = "Last of all: "
	}
	if step.Dir == cutting.Along {
		text += s.lengthwise(step)
	} else {
		text += s.across(step, run)
	}
	text += s.wide(step) + s.look(step)
	s.add(label, "%s", upperFirst(text))
	for _, then := range step.Then {
		s.then(step, then)
	}
	s.wideSubCuts(step)
	if label != "" {
		s.onBias(step)
	}
}

// isWhole says that a strip takes all the length there is, so that nothing is cut.
func (s *steps) isWhole(step cutting.Step) bool {
	return !s.c.Bought && step.Dir == cutting.Across && step.Size.H == s.c.Root.H
}

func (s *steps) across(step cutting.Step, run string) string {
	if s.isWhole(step) {
		return fmt.Sprintf("take the whole length, %s, as one strip.", s.With(step.Size.H))
	}
	return fmt.Sprintf("cut %s %s %s %s %s.", Count(step.Count), Plural(step.Count, "strip", "strips"),
		s.With(step.Size.H), s.Times(), run)
}

// look asks to look at the fold, once the first strip that was cut over it is off.
func (s *steps) look(step cutting.Step) string {
	if step.Dir != cutting.Across || step.Folds == 0 || s.folded || s.isWhole(step) {
		return ""
	}
	s.folded = true
	return fmt.Sprintf(" Open the %s and look at the fold: a straight strip, not a V.",
		Plural(step.Count, "strip", "first one"))
}

func (s *steps) lengthwise(step cutting.Step) string {
	text := fmt.Sprintf("cut %s lengthwise %s %s wide, along the selvage.", Count(step.Count),
		Plural(step.Count, "section", "sections"), s.With(step.Size.W))
	if step.Folds > 0 {
		text += fmt.Sprintf(" Fold the cloth end to end %s first, so that the cut is %s long.",
			times(step.Folds), s.With(step.Size.H>>step.Folds))
	}
	if step.Long {
		text += " Move the ruler along its own edge where the cut is longer than it."
	}
	return text
}

// lateStep says that everything a step frees waits until all else is cut.
func (s *steps) lateStep(step cutting.Step) bool {
	for _, t := range step.Then {
		if t.Piece >= 0 && !s.f.Pieces[t.Piece].Late {
			return false
		}
		for _, inner := range t.Steps {
			if !inner.Leftover && !s.lateStep(inner) {
				return false
			}
		}
	}
	return len(step.Then) > 0
}

// retrue reminds of squaring the end again on the way.
func (s *steps) retrue(cuts []cutting.Step) {
	strips := 0
	for _, c := range cuts {
		if c.Dir == cutting.Across && !c.Leftover {
			strips += c.Count
		}
	}
	switch n := s.p.Allow.Retrue; {
	case n > 0 && strips > n:
		s.add("", "Square the end again after every %s: %s each time is allowed for.",
			Plural(n, "strip", number(n)+" strips"), s.With(cutting.RetrueCut(s.p.Units)))
	case strips > 4 && s.layers > 1:
		s.add("", "Look at the fold again every few strips; where they bend, square the end by a thread or two.")
	case strips > 4:
		s.add("", "Check every few strips that the end is still square; take off a thread or two where it isn't.")
	}
}

// span is a range of numbers: "2–4".
func span(first, last int) string {
	switch {
	case first == 0:
		return ""
	case first == last:
		return fmt.Sprint(first)
	}
	return fmt.Sprintf("%d–%d", first, last)
}

func upperFirst(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

func (s *steps) after(piece int) string { return s.Voice.after(s.f.Pieces[piece]) }
