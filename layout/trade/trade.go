// Package trade holds the trade's arithmetic: what to cut for a unit, how many a
// pair of squares makes, what binding, backing, borders and setting triangles
// take, and what a shop must sell.
//
// Every figure is exact in length units; what involves the square root of two is
// rounded up to the plan's step, never down, because a short triangle can't be
// mended and a long one is trimmed.
//
// Start with a Sewing, whose methods give a Recipe for each unit. Join, Bias and
// Panels give what is sewn from strips and lengths, and ToBuy what to ask for.
//
// All unit formulas follow from one fact: a right triangle with two equal sides,
// moved out by the seam s on every side, has short sides longer by (2+√2)s and a
// long side longer by √2 times that, (2+2√2)s. With s = 1/4 in these are 0.854
// and 1.207 in, the trade's 7/8 and 1 1/4.
package trade

import "cutbinder/layout/length"

// A Sewing is what cut sizes depend on beside the finished size.
type Sewing struct {
	Seam length.Length // the seam allowance
	Step length.Length // sizes with a square root in them are rounded up to multiples of this; zero for whole length units
	Trim length.Length // a unit grows by this for every diagonal seam across it, to be trimmed; zero for none
}

// What a unit is cut too large by for each diagonal seam across it where it is
// trimmed after sewing. An eighth of an inch turns the exact sizes at a quarter
// inch seam into the trade's round ones: 7/8 into 1 for a pair of half-squares,
// 1 1/4 into 1 1/2 for an hourglass, which has two diagonal seams, and
// 1 3/4 into 2 for eight half-squares, whose square is two units wide.
const (
	TrimInch   = length.Inch / 8
	TrimMetric = 5 * length.MM
)

// A Diagonal says how a square is cut on after it is cut.
type Diagonal int

// Diagonal cuts.
const (
	Whole Diagonal = iota
	Once           // corner to corner: two triangles
	Twice          // both diagonals: four triangles
)

// Triangles is how many pieces one square becomes.
func (d Diagonal) Triangles() int { return [...]int{1, 2, 4}[d] }

// A Purchase is what to ask for in the shop.
type Purchase struct {
	Used  length.Length // cut from
	Exact length.Length // with squaring, shrinkage and padding
	Buy   length.Length // rounded up to the shop's step; zero: nothing
}
