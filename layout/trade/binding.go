package trade

import (
	"math/big"

	"cutbinder/layout/length"
)

// BindingRun is the length of binding for a quilt: once round it, and a tail for
// joining the ends and turning the corners.
func BindingRun(quilt length.Size, tail length.Length) length.Length {
	return 2*(quilt.W+quilt.H) + tail
}

// BiasSide is the side of a square from which a run of bias binding of a cut
// width comes in one go. The square is cut on a diagonal, its halves are sewn
// together along one pair of short sides and the tube's edges along the other:
// two seams as long as the side take 2s each off the area, so that
// side² - 4·seam·side = run·strip, which gives side = 2s + √(4s² + run·strip).
// With a seam of zero it is the trade's √(run·strip). It is rounded up to the
// step.
func BiasSide(run, strip, seam, step length.Length) length.Length {
	if run <= 0 || strip <= 0 {
		return 0
	}
	area := new(big.Int).Mul(big.NewInt(int64(run)), big.NewInt(int64(strip)))
	area.Add(area, new(big.Int).Mul(big.NewInt(int64(2*seam)), big.NewInt(int64(2*seam))))
	return roundUp(2*seam+length.Length(ceilSqrt(area)), step)
}

// BiasYield is the run of bias binding of a cut width that a square gives: the
// inverse of BiasSide, rounded down.
func BiasYield(side, strip, seam length.Length) length.Length {
	if side <= 4*seam || strip <= 0 {
		return 0
	}
	area := new(big.Int).Mul(big.NewInt(int64(side)), big.NewInt(int64(side-4*seam)))
	return length.Length(area.Quo(area, big.NewInt(int64(strip))).Int64())
}

// BiasSquares is how many equal squares no wider than a fabric, and of what
// side, give a run of bias binding; a further square costs one more join, which
// eats a strip's width. It is 0 of them where no number up to 100 does.
func BiasSquares(run, strip, seam, step, wof length.Length) (count int, side length.Length) {
	for n := length.Length(1); n <= 100; n++ {
		side = BiasSide((run+(n-1)*strip+n-1)/n, strip, seam, step)
		if side <= wof {
			return int(n), side
		}
	}
	return 0, 0
}
