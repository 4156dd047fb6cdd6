package cutting

import (
	"slices"

	"cutbinder/layout/length"
	"cutbinder/layout/plan"
)

// A Step frees one or more parts of the same size by cuts in one direction. It
// is a section's tree again, told the way hands do it: equal neighbours together.
type Step struct {
	Dir         Dir // Across: strips across the width; Along: cut along the length
	Count       int
	Size        length.Size // of each part
	Leftover    bool        // what stays when the others are cut off
	First, Last int         // their numbers on the diagram; 0 where cuts aren't numbered
	Folds       int         // how often the cloth is folded for these cuts: layers double each time
	Wide        bool        // the measure is wider than the ruler
	Long        bool        // the cut is longer than the ruler even folded
	Then        []Then      // how they are cut on, alike ones together
}

// A Then is how some parts of a step are cut on.
type Then struct {
	Count       int
	First, Last int           // their numbers, as in Step
	Piece       int           // they are this piece as they are; -1 otherwise
	Steps       []Step        // the cuts that follow; none for a piece
	Pairs       []Step        // of a strip sub-cut while it is folded: what comes off in twos, from the selvage end
	Odd         []Step        // and what comes off after the fold is opened
	Alike       bool          // and all of it is the same
	AtFold      length.Length // a single piece over the fold: measured from the fold; 0 otherwise
}

// Steps tells how a cloth is cut. The numbers are those of its sections: number
// 1 is squaring the end, then each strip as it comes off.
func (c *Cloth) Steps(p *plan.Plan) []Step {
	s := stepper{ruler: p.Ruler, cloth: c}
	return s.divide(c.Root, 0)
}

// number numbers the strips of a section, and those of its lengthwise parts.
func number(s *Section, n *int) {
	for i := range s.Parts {
		if !s.Parts[i].Leftover() {
			*n++
			s.Parts[i].Number = *n
		}
	}
	if s.Dir != Along {
		return
	}
	for i := range s.Parts {
		if part := &s.Parts[i]; part.Dir == Across && !trimOnly(*part) {
			number(part, n)
		}
	}
}

// trimOnly says that a divided section is one piece and what is trimmed off it.
func trimOnly(s Section) bool {
	whole := 0
	for _, part := range s.Parts {
		switch {
		case part.Placed >= 0:
			whole++
		case !part.Leftover():
			return false
		}
	}
	return whole == 1
}

type stepper struct {
	ruler length.Size
	cloth *Cloth
}

// divide tells the cuts of one section, which the folds of the cloth it was cut
// with reach into.
func (st stepper) divide(s Section, folds int) []Step {
	var steps []Step
	for i := 0; i < len(s.Parts); {
		j := i + 1
		for j < len(s.Parts) && sameStep(s.Parts[i], s.Parts[j]) {
			j++
		}
		steps = append(steps, st.step(s, s.Parts[i:j], folds))
		i = j
	}
	return steps
}

func sameStep(a, b Section) bool {
	return a.W == b.W && a.H == b.H && a.Leftover() == b.Leftover() && (a.Number == 0) == (b.Number == 0)
}

func (st stepper) step(s Section, parts []Section, folds int) Step {
	first := parts[0]
	step := Step{
		Dir: s.Dir, Count: len(parts), Size: length.Size{W: first.W, H: first.H}, Leftover: first.Leftover(),
		First: first.Number, Last: parts[len(parts)-1].Number,
	}
	measure, run := first.H, s.W
	if s.Dir == Along {
		measure, run = first.W, s.H
	}
	step.Wide = measure > st.ruler.W
	if st.numbered(first) {
		step.Folds = FoldsFor(run, st.ruler.H)
		folds = 0
		if s.Dir == Across {
			folds = step.Folds
		}
	}
	step.Long = run>>step.Folds > st.ruler.H
	if !step.Leftover {
		step.Then = st.then(parts, folds)
	}
	return step
}

func (st stepper) numbered(s Section) bool { return s.Number > 0 }

func (st stepper) then(parts []Section, folds int) []Then {
	var thens []Then
	for i := 0; i < len(parts); {
		j := i + 1
		for j < len(parts) && st.cloth.alike(parts[i], parts[j]) {
			j++
		}
		t := Then{Count: j - i, First: parts[i].Number, Last: parts[j-1].Number, Piece: -1}
		if p := parts[i].Placed; p >= 0 {
			t.Piece = st.cloth.Placed[p].Piece
		} else {
			t.Steps = st.divide(parts[i], 0)
			if folds == 1 {
				st.fold(&t, parts[i])
			}
		}
		thens = append(thens, t)
		i = j
	}
	return thens
}

// fold says how a strip of a cloth that is folded once is sub-cut.
func (st stepper) fold(t *Then, strip Section) {
	f, ok := st.cloth.foldingOf(strip)
	if !ok {
		return
	}
	t.AtFold, t.Alike = f.atFold, f.alike
	for _, p := range f.pairs {
		t.Pairs = append(t.Pairs, st.step(strip, slices.Concat(p.left, p.right), 0))
	}
	strip.Parts = f.odd
	t.Odd = st.divide(strip, 0)
}

// alike says that two sections are cut on in the same way into the same pieces.
func (c *Cloth) alike(a, b Section) bool {
	if a.W != b.W || a.H != b.H || a.Dir != b.Dir || len(a.Parts) != len(b.Parts) || (a.Placed < 0) != (b.Placed < 0) {
		return false
	}
	if a.Placed >= 0 {
		return c.Placed[a.Placed].Piece == c.Placed[b.Placed].Piece
	}
	for i := range a.Parts {
		if !c.alike(a.Parts[i], b.Parts[i]) {
			return false
		}
	}
	return true
}
