package trade

import (
	"math"
	"math/bits"

	"cutbinder/layout/length"
)

// Rules is what turns a used length into what a shop must sell. Percentages are
// in hundredths of a percent: 500 is 5 %.
type Rules struct {
	Squaring length.Length // lost straightening the ends
	Shrink   int           // what the wash takes off the length
	Extra    int           // padding
	Step     length.Length // the shop cuts in steps of this
}

// hundred is 100 % in hundredths of a percent.
const hundred = 100 * 100

// ToBuy is what to ask for so that a length can be cut from it. What is cut and
// what squaring takes must be left after the wash, so that is divided by one
// less the shrinkage; then the padding is added, and all rounded up to the
// shop's step. It never falls as used rises. Nothing to cut is nothing to buy.
func ToBuy(used length.Length, r Rules) Purchase {
	if used <= 0 {
		return Purchase{}
	}
	shrink := min(max(r.Shrink, 0), hundred-1)
	exact := mulDivUp(addUp(used, max(r.Squaring, 0)), uint64(hundred+max(r.Extra, 0)), uint64(hundred-shrink))
	return Purchase{Used: used, Exact: exact, Buy: roundUp(exact, r.Step)}
}

// addUp is a+b, or the longest length there is.
func addUp(a, b length.Length) length.Length {
	if a > math.MaxInt64-b {
		return math.MaxInt64
	}
	return a + b
}

// mulDivUp is l·n/d rounded up, or the longest length there is.
func mulDivUp(l length.Length, n, d uint64) length.Length {
	hi, lo := bits.Mul64(uint64(l), n)
	if hi >= d {
		return math.MaxInt64
	}
	q, rem := bits.Div64(hi, lo, d)
	if rem > 0 {
		q++
	}
	return length.Length(min(q, math.MaxInt64))
}
