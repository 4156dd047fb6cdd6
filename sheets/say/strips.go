package say

import (
	"fmt"
	"slices"
	"strings"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
)

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
		s.add("", "%s", upperFirst(who+s.atFold(step, t)))
	case len(t.Pairs) > 0 && t.Alike:
		s.add("", "%s", upperFirst(who+s.doubled(step, t)))
	case len(t.Pairs) > 0:
		s.paired(step, t, who)
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
	return fmt.Sprintf("%s%s used whole%s.%s", s.selvages(), Plural(t.Count, "it is", "they are"), s.after(t.Piece), s.joining(t))
}

func (s *steps) atFold(step cutting.Step, t cutting.Then) string {
	piece := s.pieces(kept(t.Steps)[0], 1)
	return fmt.Sprintf("%s%skeep %s folded and measure %s from %s: opened, that is %s. %s gives %s.", s.endToEnd(step, "fold "+Plural(t.Count, "it", "each"), 1), s.selvages(),
		Plural(t.Count, "it", "each"), s.With(t.AtFold), s.theFold(step), s.With(2*t.AtFold), each(t.Count), piece) + s.rest(t)
}

// doubled says how a folded strip of like pieces is sub-cut.
func (s *steps) doubled(step cutting.Step, t cutting.Then) string {
	last := ""
	if len(t.Odd) > 0 {
		last = ", then open " + s.theFold(step) + " for the last one"
	} else if toTheFold(t) {
		last = "; cut the last two apart along " + s.theFold(step)
	}
	all := t.Pairs[0]
	twos := all.Count / 2
	all.Then = slices.Clone(all.Then)
	for _, odd := range t.Odd {
		all.Count += odd.Count
		all.Then[0].Count += odd.Count
	}
	lay, layers := s.laid(step, t)
	cut := fmt.Sprintf("%sfrom the selvage end sub-cut %s: %s through %s%s. %s gives %s.%s", s.selvages(),
		s.together("at "+s.Len(all.Size.W)), times(twos), layers, last, each(t.Count), s.pieces(all, 1), s.rest(t))
	return sentences(lay, cut)
}

// theFold is a folded strip's fold, told from the one made end to end after it where
// the strip is longer than the ruler.
func (s *steps) theFold(step cutting.Step) string {
	if step.Size.H > s.p.Ruler.H {
		return "the first fold"
	}
	return "the fold"
}

// sentences joins what may be a sentence, or the start of one, with what follows.
func sentences(first, then string) string {
	if strings.HasSuffix(first, ". ") {
		then = upperFirst(then)
	}
	return first + then
}

// toTheFold says that what comes off in twos takes all of the strip, so that the
// last two hang together at the fold.
func toTheFold(t cutting.Then) bool {
	return len(t.Odd) == 0 && len(kept(t.Steps)) == len(t.Steps)
}

// laid is how folded strips lie for their sub-cuts, and how many layers that
// makes: never more than four, so that strips are stacked or, where they are
// longer than the ruler, folded end to end.
func (s *steps) laid(step cutting.Step, t cutting.Then) (lay, layers string) {
	if lay = s.endToEnd(step, fmt.Sprintf("keep %s folded and fold it", Plural(t.Count, "it", "each")), 1); lay != "" {
		return lay, "all four layers"
	}
	if t.Count > 1 {
		lay = "stack two folded strips at a time at the most. "
	}
	return lay, "both layers"
}

// paired says how a folded strip of several sizes is sub-cut: what comes off in
// twos, and what after the fold is opened.
func (s *steps) paired(step cutting.Step, t cutting.Then, who string) {
	lay, layers := s.laid(step, t)
	text := sentences(lay, s.selvages()+"from the selvage end as in the picture, through "+layers)
	if t.Count > 1 {
		text += ", each"
	}
	s.add("", "%s:", upperFirst(who+text))
	inner := func(text string) { s.lines = append(s.lines, Line{Text: text, Inner: true}) }
	for _, pair := range t.Pairs {
		inner(times(pair.Count/2) + ": " + s.pieces(pair, 1))
	}
	if toTheFold(t) {
		inner("cut the last two apart along " + s.theFold(step))
	}
	for i, odd := range t.Odd {
		first := "then open " + s.theFold(step) + ": "
		if i > 0 {
			first = ""
		}
		inner(first + s.pieces(odd, 1))
	}
	if rest := s.rest(t); rest != "" {
		inner(strings.TrimSuffix(rest[1:], "."))
	}
}

func each(n int) string { return Plural(n, "It", "Each strip") }

// opened says the sub-cuts of a strip that lies open, from the near side: in a
// sentence while they are few, else one below the other.
func (s *steps) opened(step cutting.Step, t cutting.Then, who string) {
	text := ""
	if step.Folds > 0 {
		text = Plural(t.Count, "open it; ", "open them; ")
	}
	text += s.endToEnd(step, "fold "+Plural(t.Count, "it", "each"), 2)
	if step.First > 0 {
		text += s.selvages()
	}
	text = upperFirst(who + text + "from the " + s.Near() + " as in the picture")
	if t.Count > 1 {
		text += ", each"
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

// endToEnd says how strips are folded whose sub-cuts are longer than the ruler:
// so many times at the most that there are never more than four layers.
func (s *steps) endToEnd(step cutting.Step, fold string, most int) string {
	run := step.Size.H
	if step.Dir == cutting.Along {
		run = step.Size.W
	}
	if run <= s.p.Ruler.H {
		return ""
	}
	folds := min(cutting.FoldsFor(run, s.p.Ruler.H), most)
	text := fmt.Sprintf("%s end to end %s, so that the cuts are %s long", fold, times(folds), s.With(run>>folds))
	if run>>folds > s.p.Ruler.H {
		text += ", and move the ruler along its own edge"
	}
	return text + "; "
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

// rest names what is left of a strip, where it is worth keeping.
func (s *steps) rest(t cutting.Then) string {
	where := ""
	switch {
	case t.AtFold > 0: // the piece lies over the fold, and beside it
		where = " at each end"
	case len(t.Pairs) > 0:
		where = " at the fold"
	}
	for _, inner := range t.Steps {
		if inner.Leftover && min(inner.Size.W, inner.Size.H) >= Keepable {
			return fmt.Sprintf(" %s is left over%s.", s.Size(inner.Size), where)
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
		return s.name(t.Piece, n)
	}
	kept := kept(t.Steps)
	if len(kept) == 1 && len(kept[0].Then) == 1 && kept[0].Then[0].Piece >= 0 && kept[0].Count == 1 {
		return fmt.Sprintf("%s: cut %s %s, trim to %s %s", s.name(kept[0].Then[0].Piece, n), s.Len(measure(step)),
			side(step), s.Len(measure(kept[0])), side(kept[0]))
	}
	var into []string
	for _, inner := range kept {
		for _, then := range inner.Then {
			into = append(into, aside(s.part(inner, then, then.Count)))
		}
	}
	which := ""
	if n > 1 {
		which = "each "
	}
	which += s.openedOut(step)
	return s.together(fmt.Sprintf("%s %s %s %s", Count(n), Plural(n, "section", "sections"), s.Len(measure(step)), side(step))) +
		fmt.Sprintf(", %scut into %s", which, Things(into))
}

// aside puts what is said of trimming one thing of a list in brackets, so that it
// isn't read on into the next.
func aside(part string) string {
	if name, how, ok := strings.Cut(part, ": "); ok {
		return name + " (" + how + ")"
	}
	return part
}

// openedOut reminds of unfolding sections that were cut folded end to end.
func (s *steps) openedOut(step cutting.Step) string {
	if step.Dir == cutting.Along && step.Size.H > s.p.Ruler.H {
		return "opened out and "
	}
	return ""
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

// name is a count of pieces with their size, on one line: a count or a size that
// starts a line by itself is misread. The size is said as the tally and the labels
// say it, however the piece lies.
func (s *steps) name(piece, n int) string {
	size := s.f.Pieces[piece].Size
	words := fmt.Sprintf("%s %s %s", Count(n), Plural(n, "piece", "pieces"), s.Size(size))
	if size.W == size.H {
		words = fmt.Sprintf("%s %s %s", Count(n), Plural(n, "square", "squares"), s.Len(size.W))
	}
	return s.together(words) + s.after(piece)
}
