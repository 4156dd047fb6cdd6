package sheets

import (
	"iter"

	"cutbinder/layout/length"
	"cutbinder/layout/page"
)

// A strictness says what may be shortened to make things fit.
type strictness int

const (
	whole       strictness = iota // nothing
	fabricsOnly                   // the list of fabrics
	twoLines                      // that, and the heading stands in two lines, shortened if it must be
	headingToo                    // the heading too
	sizesToo                      // and a size may stand in several lines
)

// A scale is the type of a heading, of sizes and of the rest, in hundredths of the
// least size.
type scale struct{ head, row, small length.Length }

// scales from the largest. Down to easy all can be read at arm's length.
var scales = []scale{
	{400, 340, 172}, {330, 290, 157}, {260, 240, 143}, {230, 215, 143}, {200, 190, 136}, {172, 164, 129},
	{157, 150, 121}, {143, 136, 114}, {129, 129, 107}, {114, 114, 100}, {100, 100, 100},
}

const (
	large = 6 // scales before this one are for labels with room
	easy  = 9 // scales from this one on are for want of anything else
)

// suits says whether a scale is in keeping with an area of that height: 18 pt in
// one of 47 mm, 11 pt in one of 21 mm.
func (s scale) suits(h length.Length) bool {
	return page.MinLabel*s.head/100 <= 2*length.MM+h/10
}

// An attempt is what a label is to hold, how large, and what may be shortened.
type attempt struct {
	rows    int // how many sizes are listed; with none it says how many there are
	details bool
	fabrics int // lines of fabrics
	title   bool
	scale
	strict strictness
}

// attempts are the ways to fill an area h high with n sizes, in the order in which
// they are tried. Less important things are left out first: the plan's title, then
// a long list of fabrics, finished sizes and spares, sizes beyond the first, the
// fabrics altogether, and for want of any other way the sizes of a bag of several.
// They are made as they are asked for: most labels take one of the first.
func attempts(n int, h length.Length) iter.Seq[attempt] {
	lines := 1 + int(h/(12*length.MM))
	n = min(n, 24)
	fill := []attempt{
		{rows: n, details: true, fabrics: lines, title: true},
		{rows: n, details: true, fabrics: lines},
		{rows: n, details: true, fabrics: 1},
		{rows: n, fabrics: 1},
		{rows: n},
	}
	for k := n - 1; k > 0; k-- {
		fill = append(fill, attempt{rows: k, fabrics: 1})
	}
	fill = append(fill, attempt{rows: 1})
	return func(yield func(attempt) bool) {
		try := func(f attempt, scales []scale, strict strictness) bool {
			for _, s := range scales {
				f.scale, f.strict = s, strict
				if s.suits(h) && !yield(f) {
					return false
				}
			}
			return true
		}
		for _, f := range fill {
			more := try(f, scales[:large], whole) &&
				try(f, scales[:large], fabricsOnly) &&
				try(f, scales[large:easy], whole) &&
				try(f, scales[large:easy], fabricsOnly) &&
				try(f, scales[large:], twoLines) &&
				try(f, scales[large:easy], headingToo)
			if !more {
				return
			}
		}
		for _, strict := range []strictness{headingToo, sizesToo} {
			for _, f := range fill[2:] {
				if !try(f, scales[easy:], strict) {
					return
				}
			}
		}
		if n > 1 {
			try(attempt{}, scales[easy:], sizesToo)
		}
	}
}
