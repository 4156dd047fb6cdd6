// Package trade holds the trade's arithmetic: what to cut for a unit, how many a
// pair of squares makes, what binding, backing, borders and setting triangles
// take, and what a shop must sell.
//
// Every figure is exact in length units; what involves the square root of two is
// rounded up to the plan's step, never down, because a short triangle can't be
// mended and a long one is trimmed.
package trade

import "cutbinder/layout/length"

// A Diagonal says how a square is cut on after it is cut.
type Diagonal int

// Diagonal cuts.
const (
	Whole Diagonal = iota
	Once           // corner to corner: two triangles
	Twice          // both diagonals: four triangles
)

// A Sum is how a cut size comes about, for people who want to follow it: its
// terms add up to the cut size's width, before rounding up.
type Sum struct {
	Terms   []Term
	Rounded length.Length // what rounding up added
}

// A Term is one number of a Sum.
type Term struct {
	What  What
	Times int // 0 and 1 both stand for once
	Each  length.Length
}

// What says what a term of a sum stands for; the words are the sheets'.
type What string

// A Purchase is what to ask for in the shop.
type Purchase struct {
	Used  length.Length // cut from
	Exact length.Length // with squaring, shrinkage and padding
	Buy   length.Length // rounded up to the shop's step; zero: nothing
}
