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
	return Purchase{Used: used, Exact: exact, Buy: inSteps(exact, r.Step)}
}

// A fraction is num/den of a yard or a metre.
type fraction struct {
	unit     length.Length
	num, den int64
}

// finest is the finest share of a yard or metre that steps are taken for.
const finest = 64

// inSteps is the least number of a shop's steps not below a length. A step that
// is a share of a yard or metre may be no whole number of length units: a seventh
// of a yard is rounded when it is read, and seven of those would come to a hair
// off a yard. So of such a step the multiples are taken of what was meant.
func inSteps(l, step length.Length) length.Length {
	f, ok := shareOf(step)
	if !ok || l > math.MaxInt64/(2*finest) {
		return roundUp(l, step)
	}
	n := int64(l) * f.den / (f.num * int64(f.unit))
	for f.times(n) < l {
		n++
	}
	return f.times(n)
}

// times is n of a fraction, as the nearest length.
func (f fraction) times(n int64) length.Length {
	whole, rest := n/f.den*f.num, n%f.den*f.num
	return length.Length(whole)*f.unit + length.Length((2*rest*int64(f.unit)+f.den)/(2*f.den))
}

// shareOf is the share of a yard or metre that a length is when rounded, with the
// least denominator; ok is false where it is none, or needs no rounding.
func shareOf(l length.Length) (f fraction, ok bool) {
	if l < 2 || l > 100*length.Yard || l%length.Sixtyfourth == 0 || l%(length.MM/10) == 0 {
		return f, false
	}
	for den := int64(2); den <= finest; den++ {
		for _, unit := range []length.Length{length.Yard, length.M} {
			all := den * int64(l)
			num := (all + int64(unit)/2) / int64(unit)
			if off := all - num*int64(unit); num > 0 && 2*max(off, -off) <= den {
				return fraction{unit, num, den}, true
			}
		}
	}
	return f, false
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
