package say

import (
	"fmt"
	"slices"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
)

// wide says how to measure what is wider than the ruler.
func (s *steps) wide(step cutting.Step) string {
	switch {
	case !step.Wide || s.isWhole(step):
		return ""
	case measure(step) <= s.p.Ruler.H:
		return " That is wider than the ruler: lay two rulers side by side, or use the lines of the mat."
	case step.Dir == cutting.Across:
		return " That is longer than the ruler: measure along both selvages, mark, and cut from mark to mark."
	}
	return " That is wider than the ruler: measure at both ends, mark, and cut from mark to mark."
}

// wideSubCuts says how to measure sub-cuts that the ruler doesn't cover, neither
// along the cut nor turned across it, once for each measure. Where the strip itself
// is wider than the ruler, it was said of that already.
func (s *steps) wideSubCuts(step cutting.Step) {
	two, marked := []string{}, []string{}
	for _, at := range s.uncovered(step.Then) {
		if slices.Contains(s.ruled, at) {
			continue
		}
		s.ruled = append(s.ruled, at)
		switch {
		case at > s.p.Ruler.H:
			marked = append(marked, s.Len(at))
		case !step.Wide || s.isWhole(step) || measure(step) > s.p.Ruler.H:
			two = append(two, s.Len(at))
		}
	}
	if n := len(two); n > 0 {
		s.add("", "%s %s wider than the ruler: lay two rulers side by side, or use the lines of the mat.", s.subCutsAt(two), Plural(n, "is", "are"))
	}
	if n := len(marked); n > 0 {
		s.add("", "%s %s longer than the ruler: measure along both edges, mark, and cut from mark to mark.", s.subCutsAt(marked), Plural(n, "is", "are"))
	}
}

func (s *steps) subCutsAt(measures []string) string {
	return fmt.Sprintf("%s at %s", Plural(len(measures), "The sub-cut", "Sub-cuts"), Things(measures))
}

// uncovered lists the measures of sub-cuts, in their order, that the ruler doesn't
// cover. What is cut on as cloth has steps of its own.
func (s *steps) uncovered(thens []cutting.Then) (measures []length.Length) {
	for _, t := range thens {
		cuts := kept(t.Steps)
		switch {
		case isCloth(t):
			continue
		case t.AtFold > 0:
			if !s.covers(t.AtFold, cuts[0].Size.H) {
				measures = append(measures, t.AtFold)
			}
			continue
		case len(t.Pairs) > 0:
			cuts = kept(slices.Concat(t.Pairs, t.Odd))
		}
		for _, cut := range cuts {
			run := cut.Size.W
			if cut.Dir == cutting.Along {
				run = cut.Size.H
			}
			if !s.covers(measure(cut), run) {
				measures = append(measures, measure(cut))
			}
			measures = append(measures, s.uncovered(cut.Then)...)
		}
	}
	return measures
}

// covers says whether the ruler covers what a cut frees, along the cut or turned
// across it.
func (s *steps) covers(at, run length.Length) bool {
	return at <= s.p.Ruler.W || at <= s.p.Ruler.H && run <= s.p.Ruler.W
}
