package plan

import (
	"fmt"

	"cutbinder/layout/length"
	"cutbinder/layout/workbook"
)

// Limits on a plan's file, before anything is made of it. Those of workbooks stand
// in package workbook.
const (
	maxBytes  = 4 << 20 // of the file
	maxMarks  = 400_000 // signs that may part values, which bounds the values
	maxDepth  = 20      // of values in values; a plan needs seven
	maxFaults = 1000    // that one run tells of a file that is no plan at all
)

// Limits on a plan, far above any quilt's.
const (
	maxFabrics = 500 // and as many mixes
	maxBlocks  = 200
	maxLines   = 2000 // lines of pieces in one list
	maxPieces  = 100_000
	maxCloths  = 2000 // lengths of cloth at hand
	maxBorders = 20
	maxStrips  = 50     // of a strip set
	maxGrid    = 64     // columns and rows of a drawing
	maxCells   = 10_000 // blocks in the quilt's rows
	maxSide    = 100    // blocks across and down of a setting
	maxName    = 40     // characters of a short name
	maxText    = 2000   // characters of any other text
)

// The longest length and the longest side of a size: far above any bolt's and any
// quilt's, and low enough that sums and areas stay small.
const (
	maxLength = 200 * length.Yard
	maxSize   = 30 * length.Yard
)

// A Limit is one limit as a manual tells it.
type Limit struct{ What, Most string }

// Limits are the limits of plans that a maker could meet.
func Limits() []Limit {
	n := func(what string, most int) Limit { return Limit{what, fmt.Sprint(most)} }
	return []Limit{
		{"a plan's file", fmt.Sprintf("%d MB", maxBytes>>20)},
		{"a workbook, unpacked", fmt.Sprintf("%d MB", workbook.MaxUnzipped>>20)},
		n("rows of a sheet", workbook.MaxRows), n("columns of a sheet", workbook.MaxColumns), n("sheets of a workbook", workbook.MaxSheets),
		n("fabrics", maxFabrics), n("mixes", maxFabrics), n("blocks", maxBlocks), n("lines of pieces in a list", maxLines),
		n("pieces", maxPieces), n("lengths of cloth at hand", maxCloths), n("borders", maxBorders),
		n("columns or rows of a drawn block", maxGrid), n("blocks across or down", maxSide), n("blocks in the quilt's rows", maxCells),
		{"a length", length.Imperial.Format(maxLength, length.WithUnit)}, {"a side of a size", length.Imperial.Format(maxSize, length.WithUnit)},
		n("characters of a short name", maxName), n("characters of another text", maxText),
	}
}
