package trade

import (
	"math"
	"math/big"

	"cutbinder/layout/length"
)

// A surd is the number (half + root·√2) / 2 in length units. Halves and the root
// of two are all that quilt geometry on straight grain and true bias asks for.
type surd struct{ half, root int64 }

// whole is a length as a surd.
func whole(l length.Length) surd { return surd{half: 2 * int64(l)} }

// halved is half a length.
func halved(l length.Length) surd { return surd{half: int64(l)} }

// root2 is a length times √2.
func root2(l length.Length) surd { return surd{root: 2 * int64(l)} }

// overRoot2 is a length over √2, which is half of it times √2.
func overRoot2(l length.Length) surd { return surd{root: int64(l)} }

func (x surd) plus(y surd) surd   { return surd{x.half + y.half, x.root + y.root} }
func (x surd) times(n int64) surd { return surd{x.half * n, x.root * n} }

// up is the least whole number of length units not below x. Its root part must
// not be negative.
func (x surd) up() length.Length {
	return length.Length(ceilDiv(x.half+ceilRoot2(x.root), 2))
}

// ceilRoot2 is n·√2 rounded up to a whole number: the square root of 2n², in
// whole numbers. That root is irrational for every n but 0, so its floor plus
// one is its ceiling.
func ceilRoot2(n int64) int64 {
	if n <= 0 {
		return 0
	}
	return ceilSqrt(new(big.Int).Mul(big.NewInt(2*n), big.NewInt(n)))
}

// ceilSqrt is the least whole number whose square is not below n.
func ceilSqrt(n *big.Int) int64 {
	if n.Sign() <= 0 {
		return 0
	}
	r := new(big.Int).Sqrt(new(big.Int).Sub(n, big.NewInt(1)))
	return r.Int64() + 1
}

// ceilDiv is a/b rounded up, for b over zero.
func ceilDiv(a, b int64) int64 {
	q := a / b
	if a%b > 0 {
		q++
	}
	return q
}

// roundUp is the least multiple of step not below l; l itself for a step under 2.
func roundUp(l, step length.Length) length.Length {
	if step < 2 || l > math.MaxInt64-step {
		return l
	}
	return length.Length(ceilDiv(int64(l), int64(step))) * step
}
