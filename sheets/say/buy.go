package say

import (
	"fmt"
	"unicode"
	"unicode/utf8"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/plan"
)

// BuySum is the sum behind what to buy: "18 1/4 in cut, 1/2 in squaring, 10 %
// extra: 20 5/8 in".
func (v Voice) BuySum(p *plan.Plan, f *cutting.Fabric) string {
	if f.Buy.Buy == 0 {
		return "nothing is cut from it"
	}
	text := v.With(f.Buy.Used) + " cut"
	if p.Allow.Squaring > 0 {
		text += ", " + v.With(p.Allow.Squaring) + " squaring"
	}
	if f.Fabric.Prewash {
		text += ", " + v.Percent(f.Fabric.Shrink.Length) + " shrinkage"
	}
	if p.Allow.Extra > 0 {
		text += ", " + v.Percent(p.Allow.Extra) + " extra"
	}
	return fmt.Sprintf("%s: %s", text, v.About(f.Buy.Exact))
}

// OtherWidths are the widths that a purchase is asked at beside a fabric's own:
// those that bolts have between the selvages. Of cloth of quite another width
// they are its own width and some less and more.
func OtherWidths(units length.System) func(*plan.Fabric) []length.Length {
	least, step := 40*length.Inch, length.Inch
	if units == length.Metric {
		least, step = 102*length.CM, 5*length.CM/2
	}
	return func(f *plan.Fabric) []length.Length {
		first := least
		if f.Width < least-2*step || f.Width > least+6*step {
			first = f.Width - 2*step
		}
		var widths []length.Length
		for i := range length.Length(5) {
			if w := first + i*step; w > 0 && w != f.Width {
				widths = append(widths, w)
			}
		}
		return widths
	}
}

// WhatIf says at which other widths a fabric's purchase changes: "at 42 in: 1 yd,
// at 44 in: 7/8 yd", each where it begins. It is empty where it never does.
func (v Voice) WhatIf(f *cutting.Fabric, widths []cutting.Width) string {
	text := ""
	for _, w := range Changes(f, widths) {
		if text != "" {
			text += ", "
		}
		buy := "too narrow"
		if w.Fits {
			buy = v.ToBuy(w.Buy.Buy)
		}
		text += "at " + v.With(w.Width) + ": " + buy
	}
	return text
}

// Changes are the widths at which what to buy changes. Of narrower cloth it is
// the widest with each answer, of wider the narrowest.
func Changes(f *cutting.Fabric, widths []cutting.Width) (changes []cutting.Width) {
	for i, w := range widths {
		next := cutting.Width{Width: f.Fabric.Width, Fits: true, Buy: f.Buy}
		narrower := w.Width < f.Fabric.Width
		switch {
		case narrower && i+1 < len(widths) && widths[i+1].Width < f.Fabric.Width:
			next = widths[i+1]
		case !narrower && i > 0 && widths[i-1].Width > f.Fabric.Width:
			next = widths[i-1]
		}
		if w.Fits != next.Fits || w.Buy.Buy != next.Buy.Buy {
			changes = append(changes, w)
		}
	}
	return changes
}

// Lacking is what finds no place: "(8) 3 1/2 x 3 1/2 and (4) 2 x 6 1/2 find no
// place", and how many of them are spares.
func (v Voice) Lacking(f *cutting.Fabric, s *cutting.Shortage) string {
	var words []string
	for _, l := range s.Lacks {
		words = append(words, Count(l.Count)+" "+v.Size(f.Pieces[l.Piece].Size))
	}
	n, spares := s.Pieces()
	text := Things(words) + Plural(n, " finds no place", " find no place")
	switch {
	case spares == n:
		text += Plural(n, "; it is a spare", "; they are spares")
	case spares > 0:
		text += fmt.Sprintf("; %d of them %s", spares, Plural(spares, "is a spare", "are spares"))
	}
	return text
}

// Remedies are what would help where a shelf is too small, the least first: to
// give up spares, one more cut, other cloth.
func (v Voice) Remedies(f *cutting.Fabric, s *cutting.Shortage) (words []string) {
	n, spares := s.Pieces()
	switch {
	case hasSpares(f) && s.Unspared == 0:
		words = append(words, "without spares all pieces fit")
	case spares > 0 && s.Unspared < n:
		words = append(words, fmt.Sprintf("without spares %s still missing", Plural(s.Unspared, "one piece is", number(s.Unspared)+" pieces are")))
	}
	if s.More > 0 {
		words = append(words, fmt.Sprintf("one more cut %s long of cloth %s wide holds what is missing: buy %s",
			v.With(s.More), v.With(f.Fabric.Width), v.ToBuy(s.Buy.Buy)))
	} else {
		words = append(words, "no cloth of this width holds what is missing")
	}
	if mixes := mixesOf(s); len(mixes) > 0 {
		words = append(words, fmt.Sprintf("any fabric of %s %s may give it, but none has room left: add a fabric", Plural(len(mixes), "mix", "the mixes"), Things(mixes)))
	}
	return words
}

// Sentences makes a sentence of each text.
func Sentences(texts []string) string {
	out := ""
	for i, t := range texts {
		if i > 0 {
			out += " "
		}
		first, size := utf8.DecodeRuneInString(t)
		out += string(unicode.ToUpper(first)) + t[size:] + "."
	}
	return out
}

func hasSpares(f *cutting.Fabric) bool {
	for _, p := range f.Pieces {
		if p.Spares() > 0 {
			return true
		}
	}
	return false
}

// mixesOf are the mixes that everything lacking may come from, each once.
func mixesOf(s *cutting.Shortage) (mixes []string) {
	seen := map[string]bool{}
	for _, l := range s.Lacks {
		if len(l.Mixes) == 0 {
			return nil
		}
		for _, m := range l.Mixes {
			if !seen[m] {
				seen[m] = true
				mixes = append(mixes, m)
			}
		}
	}
	return mixes
}
