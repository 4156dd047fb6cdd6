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
	folded bool // the fold has been looked at
	late   bool // the lines are about what is cut last
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

// square says how the cloth is laid down and its end straightened.
func (s *steps) square(cuts []cutting.Step) {
	lay := "Lay the cloth flat in one layer."
	if first := cuts[0]; first.Dir == cutting.Across {
		switch first.Folds {
		case 1:
			lay = "Fold selvage to selvage until the fold hangs flat."
		case 2:
			lay = "Fold selvage to selvage, then the fold to the selvages: four layers."
		}
	}
	end := fmt.Sprintf("Straighten the %s-hand end", s.Near())
	if s.c.Square > 0 {
		s.add("1", "%s %s: take off no more than %s.", lay, end, s.With(s.c.Square))
		return
	}
	s.add("1", "%s %s; no cloth is allowed for it, so take off threads only.", lay, end)
}

// step says the cuts that free the parts of one size. run is what a strip's
// length is called.
func (s *steps) step(step cutting.Step, run string) {
	label := span(step.First, step.Last)
	if step.Leftover {
		if label == "" && step.Dir == cutting.Across && step.Size.W == s.c.Root.W && step.Size.H >= Keepable {
			s.add("", "Keep what is left over: %s.", s.Size(step.Size))
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
	text += s.wide(step)
	s.add(label, "%s", upperFirst(text))
	for _, then := range step.Then {
		s.then(step, then)
	}
}

// wide says how to measure what is wider than the ruler.
func (s *steps) wide(step cutting.Step) string {
	switch {
	case !step.Wide:
		return ""
	case measure(step) <= s.p.Ruler.H:
		return " That is wider than the ruler: lay two rulers side by side, or use the lines of the mat."
	case step.Dir == cutting.Across:
		return " That is longer than the ruler: measure along both selvages, mark, and cut from mark to mark."
	}
	return " That is wider than the ruler: measure at both ends, mark, and cut from mark to mark."
}

func (s *steps) across(step cutting.Step, run string) string {
	text := fmt.Sprintf("cut %s %s %s %s %s.", Count(step.Count), Plural(step.Count, "strip", "strips"),
		s.With(step.Size.H), s.Times(), run)
	if step.Folds > 0 && !s.folded {
		s.folded = true
		text += fmt.Sprintf(" Open the %s and look at the fold: a straight strip, not a V.",
			Plural(step.Count, "strip", "first one"))
	}
	return text
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

// then says how strips that are alike are cut on.
func (s *steps) then(step cutting.Step, t cutting.Then) {
	who := ""
	if len(step.Then) > 1 {
		who = whose(t)
	}
	switch {
	case t.Piece >= 0:
		s.add("", "%s", upperFirst(who+s.asTheyAre(t)))
	case t.AtFold > 0:
		s.add("", "%s", upperFirst(who+s.atFold(t)))
	case t.Doubles > 0:
		s.add("", "%s", upperFirst(who+s.doubled(t)))
	case isCloth(t):
		s.add("", "%s", upperFirst(who+s.narrow(step)))
		for _, inner := range t.Steps {
			s.step(inner, s.With(step.Size.W))
		}
	default:
		s.opened(step, t, who)
	}
}

// isCloth says that parts are cut on as cloth: with numbered strips of their own.
func isCloth(t cutting.Then) bool {
	return len(t.Steps) > 0 && t.Steps[0].First > 0
}

func (s *steps) narrow(step cutting.Step) string {
	return fmt.Sprintf("the section of %s is now cut as a narrower cloth:", s.Size(step.Size))
}

func whose(t cutting.Then) string {
	if t.First == 0 {
		return fmt.Sprintf("%s of them: ", number(t.Count))
	}
	return fmt.Sprintf("%s %s: ", Plural(t.Count, "strip", "strips"), span(t.First, t.Last))
}

func (s *steps) asTheyAre(t cutting.Then) string {
	return fmt.Sprintf("%s%s used whole%s.", s.selvages(), Plural(t.Count, "it is", "they are"), s.after(t.Piece))
}

func (s *steps) atFold(t cutting.Then) string {
	piece := s.pieces(t.Steps[0], 1)
	return fmt.Sprintf("%skeep %s folded and measure %s from the fold: opened, that is %s. %s gives %s.", s.selvages(),
		Plural(t.Count, "it", "each"), s.With(t.AtFold), s.With(2*t.AtFold), each(t.Count), piece) + s.rest(t)
}

func (s *steps) doubled(t cutting.Then) string {
	stack := ""
	if t.Count > 1 {
		stack = "Stack two folded strips at a time at the most. "
	}
	last := ""
	if t.Singles > 0 {
		last = ", then open the fold for the last one"
	}
	first := t.Steps[0]
	if first.Leftover {
		first = t.Steps[1]
	}
	cut := fmt.Sprintf("%ssub-cut at %s: %s through both layers%s. %s gives %s.%s", s.selvages(),
		s.Len(first.Size.W), times(t.Doubles), last, each(t.Count), s.pieces(first, 1), s.rest(t))
	if stack != "" {
		cut = upperFirst(cut)
	}
	return stack + cut
}

func each(n int) string { return Plural(n, "It", "Each strip") }

// opened says the sub-cuts of a strip that lies open, from the near side: in a
// sentence while they are few, else one below the other.
func (s *steps) opened(step cutting.Step, t cutting.Then, who string) {
	text := ""
	if step.First > 0 {
		text = s.selvages()
	}
	if step.Folds > 0 {
		text += Plural(t.Count, "open it; ", "open them; ")
	}
	text += s.endToEnd(step)
	text = upperFirst(who + text + "from the " + s.Near())
	if t.Count > 1 {
		text += " of each"
	}
	var parts []string
	for _, inner := range kept(t.Steps) {
		for _, then := range inner.Then {
			parts = append(parts, s.part(inner, then, then.Count))
		}
	}
	if len(parts) <= 2 {
		s.add("", "%s: %s.%s", text, strings.Join(parts, "; then "), s.rest(t))
		return
	}
	s.add("", "%s:", text)
	if rest := s.rest(t); rest != "" {
		parts = append(parts, strings.TrimSuffix(rest[1:], "."))
	}
	for _, part := range parts {
		s.lines = append(s.lines, Line{Text: part, Inner: true})
	}
}

// endToEnd says how a strip is folded whose sub-cuts are longer than the ruler.
func (s *steps) endToEnd(step cutting.Step) string {
	run := step.Size.H
	if step.Dir == cutting.Along {
		run = step.Size.W
	}
	if run <= s.p.Ruler.H {
		return ""
	}
	folds := cutting.FoldsFor(run, s.p.Ruler.H)
	return fmt.Sprintf("fold %s end to end %s, so that the cuts are %s long; ", Plural(step.Count, "it", "each"), times(folds), s.With(run>>folds))
}

// selvages asks for the cloth's woven edges to be cut off, where it has any.
func (s *steps) selvages() string {
	switch left, right := s.c.Selvages(); {
	case left && right:
		return "selvages off; "
	case left:
		return "selvage off; "
	}
	return ""
}

// Keepable is the least side of a leftover worth keeping: a patch of one inch
// with its seams.
const Keepable = 3 * length.Inch / 2

// rest names what is left at the end of a strip, where it is worth keeping.
func (s *steps) rest(t cutting.Then) string {
	for _, inner := range t.Steps {
		if inner.Leftover && min(inner.Size.W, inner.Size.H) >= Keepable {
			return fmt.Sprintf(" %s is left over.", s.Size(inner.Size))
		}
	}
	return ""
}

// pieces says what the parts of one step become: "(6) squares 4¾", "(6) pieces
// 2 × 2¼, cut 2 wide, then trimmed", "(3) sections 2 wide, each into …".
func (s *steps) pieces(step cutting.Step, times int) string {
	if len(step.Then) == 0 {
		return ""
	}
	var all []string
	for _, t := range step.Then {
		all = append(all, s.part(step, t, t.Count*times))
	}
	return Things(all)
}

func (s *steps) part(step cutting.Step, t cutting.Then, n int) string {
	if t.Piece >= 0 {
		return s.name(step.Size, t.Piece, n)
	}
	kept := kept(t.Steps)
	if len(kept) == 1 && len(kept[0].Then) == 1 && kept[0].Then[0].Piece >= 0 && kept[0].Count == 1 {
		return fmt.Sprintf("%s: cut %s %s, trim to %s %s", s.name(kept[0].Size, kept[0].Then[0].Piece, n), s.Len(measure(step)),
			side(step), s.Len(measure(kept[0])), side(kept[0]))
	}
	var into []string
	for _, inner := range kept {
		into = append(into, s.pieces(inner, 1))
	}
	which := ""
	if n > 1 {
		which = "each "
	}
	return fmt.Sprintf("%s %s %s %s, %scut into %s", Count(n), Plural(n, "section", "sections"), s.Len(measure(step)),
		side(step), which, Things(into))
}

func kept(steps []cutting.Step) []cutting.Step {
	var out []cutting.Step
	for _, s := range steps {
		if !s.Leftover {
			out = append(out, s)
		}
	}
	return out
}

// measure is what the ruler is set to for a step.
func measure(step cutting.Step) length.Length {
	if step.Dir == cutting.Across {
		return step.Size.H
	}
	return step.Size.W
}

func side(step cutting.Step) string {
	if step.Dir == cutting.Across {
		return "high"
	}
	return "wide"
}

// name is a count of pieces with their size as it lies.
func (s *steps) name(lies length.Size, piece, n int) string {
	if lies.W == lies.H {
		return fmt.Sprintf("%s %s %s%s", Count(n), Plural(n, "square", "squares"), s.Len(lies.W), s.after(piece))
	}
	return fmt.Sprintf("%s %s %s%s", Count(n), Plural(n, "piece", "pieces"), s.Size(lies), s.after(piece))
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
			Plural(n, "strip", number(n)+" strips"), s.With(cutting.RetrueCut))
	case strips > 4:
		s.add("", "Look at the fold again every few strips; where they bend, square the end by a thread or two.")
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
