package page

import "cutbinder/layout/length"

// A Hatch is a pattern of lines laid over a rectangle. The hatches differ in
// direction and spacing, not in colour, so they stay apart on a one-colour
// printer and in a copy.
type Hatch int

// The hatches.
const (
	NoHatch  Hatch = iota
	Leftover       // worth keeping: wide lines rising to the right
	Waste          // scraps: narrow crossed lines
	Trimmed        // squaring and selvages: narrow lines falling to the right
)

// String is the hatch's name.
func (h Hatch) String() string {
	return [...]string{"none", "leftover", "waste", "trimmed"}[h]
}

// HatchStroke is how hatch lines are drawn: the thinnest line allowed, in grey.
var HatchStroke = Stroke{Width: MinLine, Ink: Mid}

// A Segment is a straight piece of a line.
type Segment struct{ A, B Point }

// Lines is the hatch as line segments inside the box. Lines are counted from
// the page's corner, not from the box's, so that neighbouring boxes with the
// same hatch join without a step. Rising lines have x + y = c, falling lines
// x - y = c, with c at whole multiples of the spacing; each is clipped to the
// box by solving for y at its left and right edges, which is exact in whole
// units because the slope is one.
func (h Hatch) Lines(b Box) []Segment {
	if b.W <= 0 || b.H <= 0 {
		return nil
	}
	switch h {
	case Leftover:
		return rising(b, length.Inch/9)
	case Waste:
		return append(rising(b, length.Inch/13), falling(b, length.Inch/13)...)
	case Trimmed:
		return falling(b, length.Inch/18)
	}
	return nil
}

// rising clips the lines x + y = c to the box.
func rising(b Box, step length.Length) []Segment {
	var out []Segment
	for c := ceilTo(b.X+b.Y+1, step); c < b.Right()+b.Bottom(); c += step {
		x0 := max(b.X, c-b.Bottom())
		x1 := min(b.Right(), c-b.Y)
		if x0 < x1 {
			out = append(out, Segment{Point{x0, c - x0}, Point{x1, c - x1}})
		}
	}
	return out
}

// falling clips the lines x - y = c to the box.
func falling(b Box, step length.Length) []Segment {
	var out []Segment
	for c := ceilTo(b.X-b.Bottom()+1, step); c < b.Right()-b.Y; c += step {
		x0 := max(b.X, c+b.Y)
		x1 := min(b.Right(), c+b.Bottom())
		if x0 < x1 {
			out = append(out, Segment{Point{x0, x0 - c}, Point{x1, x1 - c}})
		}
	}
	return out
}

// ceilTo is the smallest multiple of step that is v or more.
func ceilTo(v, step length.Length) length.Length {
	q := v / step
	if v%step > 0 {
		q++
	}
	return q * step
}
