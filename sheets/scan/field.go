package scan

// The field of 256 elements that square codes reckon in (ISO/IEC 18004): bytes as
// polynomials over two elements, modulo x^8 + x^4 + x^3 + x^2 + 1. Powers holds the
// powers of x twice over, so that sums of two logarithms need no division.
var powers, logs = func() (p [510]uint8, l [256]int) {
	v := 1
	for i := range 255 {
		p[i], p[i+255] = uint8(v), uint8(v)
		l[v] = i
		if v *= 2; v > 255 {
			v ^= 0x11D
		}
	}
	return p, l
}()

func times(a, b uint8) uint8 {
	if a == 0 || b == 0 {
		return 0
	}
	return powers[logs[a]+logs[b]]
}

func inverse(a uint8) uint8 { return powers[255-logs[a]] }

// value is a polynomial's at x; poly[i] is the factor of x^i.
func value(poly []uint8, x uint8) uint8 {
	var v uint8
	for i := len(poly) - 1; i >= 0; i-- {
		v = times(v, x) ^ poly[i]
	}
	return v
}

// mend puts a block of a square code right, whose last check bytes are its checks.
// Bytes that are known to be doubtful cost half of what unknown errors do: 2 errors
// + doubtful bytes may be check - spare. ok is false where more is wrong, as far as
// can be told; the block may then have been changed. It is the decoder of
// Berlekamp and Massey that starts from the doubtful bytes (Blahut 1983, section
// 9.2).
func mend(block []uint8, check int, doubtful []int, spare int) (ok bool) {
	f := len(doubtful)
	if f > check-spare {
		return false
	}
	syndromes, clean := syndromesOf(block, check)
	if clean {
		return true
	}
	locator, degree := locate(block, syndromes, doubtful)
	if 2*(degree-f)+f > check-spare {
		return false
	}
	// What is wrong with each byte (Forney 1965).
	amount := make([]uint8, check)
	for i := range amount {
		for j := 0; j <= i && j <= degree; j++ {
			amount[i] ^= times(locator[j], syndromes[i-j])
		}
	}
	roots := 0
	for at := range block {
		power := len(block) - 1 - at
		back := powers[(255-power%255)%255] // the inverse of the byte's place
		if value(locator[:degree+1], back) != 0 {
			continue
		}
		roots++
		var slope uint8
		for j := 1; j <= degree; j += 2 {
			slope ^= times(locator[j], powers[logs[back]*(j-1)%255])
		}
		if slope == 0 {
			return false
		}
		block[at] ^= times(powers[power%255], times(value(amount, back), inverse(slope)))
	}
	if roots != degree {
		return false
	}
	_, clean = syndromesOf(block, check)
	return clean
}

// syndromesOf are the values of a block at the first powers of x; all are 0 where
// nothing is wrong.
func syndromesOf(block []uint8, check int) (s []uint8, clean bool) {
	s = make([]uint8, check)
	clean = true
	for i := range s {
		for _, b := range block {
			s[i] = times(s[i], powers[i]) ^ b
		}
		clean = clean && s[i] == 0
	}
	return s, clean
}

// locate finds the polynomial whose roots tell where a block is wrong.
func locate(block, syndromes []uint8, doubtful []int) (locator []uint8, degree int) {
	check := len(syndromes)
	locator = make([]uint8, check+2)
	locator[0] = 1
	for _, at := range doubtful {
		x := powers[(len(block)-1-at)%255]
		for j := check; j > 0; j-- {
			locator[j] ^= times(locator[j-1], x)
		}
	}
	f := len(doubtful)
	degree = f
	before := append([]uint8(nil), locator...)
	next := make([]uint8, len(locator))
	for r := f + 1; r <= check; r++ {
		var off uint8
		for j := 0; j <= degree && j < r; j++ {
			off ^= times(locator[j], syndromes[r-1-j])
		}
		copy(before[1:], before[:len(before)-1]) // times x
		before[0] = 0
		if off == 0 {
			continue
		}
		for j := range next {
			next[j] = locator[j] ^ times(off, before[j])
		}
		if 2*degree <= r-1+f {
			by := inverse(off)
			for j := range before {
				before[j] = times(locator[j], by)
			}
			degree = r - degree + f
		}
		copy(locator, next)
	}
	return locator, min(degree, check)
}
