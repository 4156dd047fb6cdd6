package say

import (
	"fmt"
	"slices"
	"strings"

	"cutbinder/layout/cutting"
	"cutbinder/sheets/bag"
)

// alone says that one strip or panel does, so that nothing is joined: it may be a
// backing no wider than its cloth, or the binding of something small.
func alone(count int, j *cutting.Joined) bool { return count == 1 && j.Count == 1 && j.Run == 0 }

// isBias says that a square is cut into strips on the bias.
func isBias(u cutting.Use) bool { return u.Bias && u.Joined != nil }

// joining says what strips and panels are sewn into, and which is halved first.
func (s *steps) joining(t cutting.Then) string {
	uses := s.f.Pieces[t.Piece].Uses
	text := ""
	for i, u := range uses {
		inRun := func(other cutting.Use) bool { return sameRun(u, other) }
		switch {
		case u.Set != nil:
			text += s.set(t, u)
		case u.Joined == nil || isBias(u) || slices.ContainsFunc(uses[:i], inRun):
		case u.Mix == "" && alone(u.Count, u.Joined):
			text += fmt.Sprintf(" For %s cut it to %s.", u.For, s.Size(u.Joined.Size))
		case slices.ContainsFunc(uses[i+1:], inRun):
			text += s.run(t, uses[i:], inRun)
		default:
			if u.Joined.Halved {
				text += " Cut one of them in half along its length: a half goes to each side."
			}
			text += fmt.Sprintf(" For %s %s joined into %s.", u.For, s.strips(t, u.Mix, u.Count+u.Spares), s.long(u.Joined))
		}
	}
	return text
}

// set says which strip sets strips go into, and what those are cut into.
func (s *steps) set(t cutting.Then, u cutting.Use) string {
	who := Plural(t.Count, "it goes", "they go")
	if n := u.Count + u.Spares; n < t.Count {
		who = Count(n) + Plural(n, " goes", " go")
	}
	if what := s.place(u); what != "" {
		who = "for " + what + " " + who
	}
	return fmt.Sprintf(" %s into %s.", upperFirst(who), s.sets(u.Set, "which "+Plural(u.Set.Sets, "is", "are")+" cut across into"))
}

// place is what a use is for: a block, or what the plan calls pieces of no block.
func (s *steps) place(u cutting.Use) string {
	if b := s.p.Block(u.Block); b != nil {
		return bag.Place{Block: b.ID, Name: b.Name}.Heading()
	}
	return u.For
}

// sets is how many strip sets there are and how many segments come of them, with
// words for that between.
func (v Voice) sets(set *cutting.Set, cut string) string {
	return fmt.Sprintf("%s, %s %s", v.together(Count(set.Sets)+" strip "+Plural(set.Sets, "set", "sets")), cut, v.Segments(set))
}

// Segments is what is cut across strip sets: "(40) segments 10½".
func (v Voice) Segments(set *cutting.Set) string {
	return v.together(fmt.Sprintf("%s %s %s", Count(set.Segments), Plural(set.Segments, "segment", "segments"), v.Len(set.Segment)))
}

// sameRun says that the strips of two uses are joined into one run.
func sameRun(a, b cutting.Use) bool {
	return a.Joined != nil && b.Joined != nil && a.Joined.Run > 0 && a.Joined.Run == b.Joined.Run
}

// run says what comes from a run that several uses share: one use's strips alone
// may be too short for it.
func (s *steps) run(t cutting.Then, uses []cutting.Use, inRun func(cutting.Use) bool) string {
	n, mix := 0, ""
	var cut []string
	for _, u := range uses {
		if inRun(u) {
			n, mix = n+u.Count+u.Spares, u.Mix
			cut = append(cut, fmt.Sprintf("%s for %s", s.long(u.Joined), u.For))
		}
	}
	return fmt.Sprintf(" %s joined into one run; from it cut %s.", upperFirst(s.strips(t, mix, n)), strings.Join(cut, ", then "))
}

// onBias says how squares of a step become bias strips.
func (s *steps) onBias(step cutting.Step) {
	for _, t := range step.Then {
		for _, inner := range t.Steps {
			s.onBias(inner)
		}
		if t.Piece < 0 {
			continue
		}
		for _, u := range s.f.Pieces[t.Piece].Uses {
			if isBias(u) {
				s.add("", "For %s cut %s on the bias, at 45° to its edges, into strips %s wide, and join them into %s.", u.For,
					Plural(u.Count+u.Spares, "the square", "the squares"), s.With(u.Joined.Size.W), s.long(u.Joined))
			}
		}
	}
}

// strips says which strips are joined: those of this step where they are all
// there are, else so many.
func (s *steps) strips(t cutting.Then, mix string, n int) string {
	switch {
	case mix != "":
		return Plural(t.Count, "it is", "they are") + ", with the other fabrics',"
	case n == t.Count && n > 1:
		return "they are"
	}
	return Count(n) + Plural(n, " is", " are")
}

// long is what strips are joined into.
func (v Voice) long(j *cutting.Joined) string {
	return v.together(Count(j.Count) + " " + v.Size(j.Size))
}

// Joined is what a row's strips or panels are joined into, in words that begin
// with one for joining them; "" where they aren't.
func (v Voice) Joined(r bag.Row, join string) string {
	j := r.Joined
	switch {
	case j == nil:
		return ""
	case r.Cut.W == r.Cut.H && j.Size.W < r.Cut.W && j.Size.H > r.Cut.H: // strips are as wide as what they are joined into
		return "bias strips, " + join + " into " + v.long(j)
	case alone(r.Count, j):
		return "cut to " + v.Size(j.Size)
	case j.Run > 0:
		return join + " into one run with the border's others for " + v.long(j)
	}
	return join + " into " + v.long(j)
}
