package plan

import "cutbinder/layout/length"

// standards are what stands where a plan says nothing, in one system of units,
// and the system's shop sizes.
type standards struct {
	seam, cutStep   length.Length
	width           length.Length // usable width of a fabric
	squaring, step  length.Length
	strip, tail     length.Length // binding
	overhang        length.Length
	generous        length.Length // for `generous: yes`
	ruler, mat      length.Size
	paper           Paper
	quarter, eighth length.Size   // a fat quarter, a fat eighth
	full            length.Length // a cut at least this wide has the cloth's full width
}

const (
	in = length.Inch
	cm = length.CM
	mm = length.MM
)

// inchStandards: 40 in of usable width holds for all bolts sold as 44; a fat
// quarter is half of half a yard with one selvage on it.
var inchStandards = standards{
	seam: in / 4, cutStep: in / 8,
	width:    40 * in,
	squaring: in / 2, step: length.Yard / 8,
	strip: 5 * in / 2, tail: 10 * in,
	overhang: 4 * in,
	generous: in / 4,
	ruler:    length.Size{W: 13 * in / 2, H: 49 * in / 2},
	mat:      length.Size{W: 24 * in, H: 36 * in},
	paper:    Letter,
	quarter:  length.Size{W: 41 * in / 2, H: 18 * in},
	eighth:   length.Size{W: 41 * in / 2, H: 9 * in},
	full:     38 * in,
}

// metricStandards are what metric shops and makers use, not the inch ones
// converted.
var metricStandards = standards{
	seam: 75 * mm / 10, cutStep: mm,
	width:    102 * cm,
	squaring: 15 * mm, step: 10 * cm,
	strip: 65 * mm, tail: 25 * cm,
	overhang: 10 * cm,
	generous: 5 * mm,
	ruler:    length.Size{W: 16 * cm, H: 60 * cm},
	mat:      length.Size{W: 60 * cm, H: 90 * cm},
	paper:    A4,
	quarter:  length.Size{W: 54 * cm, H: 50 * cm},
	eighth:   length.Size{W: 54 * cm, H: 25 * cm},
	full:     96 * cm,
}

// standardsOf are a system's.
func standardsOf(s length.System) standards {
	if s == length.Metric {
		return metricStandards
	}
	return inchStandards
}

// What washing takes off, in cloth that is washed first: cotton is what makers
// measure on plain-woven cloth, flannel gives more.
var (
	cottonShrinks  = Shrinkage{Length: 300, Width: 500}
	flannelShrinks = Shrinkage{Length: 800, Width: 400}
)

// shrinks is what washing takes off a fabric that states nothing else.
func shrinks(flannel bool) Shrinkage {
	if flannel {
		return flannelShrinks
	}
	return cottonShrinks
}

// newPlan is a plan of which nothing is known but its units.
func newPlan(units length.System) *Plan {
	std := standardsOf(units)
	return &Plan{
		Language: "en",
		Units:    units,
		Seam:     std.seam,
		CutStep:  std.cutStep,
		Allow:    Allow{Squaring: std.squaring, Step: std.step},
		BagBy:    []BagKey{ByBlock, BySize},
		Labels:   Labels{PerBag: 1},
		Paper:    std.paper,
		Hand:     RightHand,
		Cutting:  kinds[1].value,
		Ruler:    std.ruler,
		Mat:      std.mat,
	}
}
