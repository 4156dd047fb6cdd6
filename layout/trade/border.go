package trade

import "cutbinder/layout/length"

// Border is the strips of one border of a finished width round something of a
// finished size: first the two for its sides, then the two for top and bottom.
//
// Butted, the sides are as long as what they're sewn to, and top and bottom are
// longer by two widths. Mitred, all four reach to the outer corners, and the
// seam allowance of the 45° ends reaches s + √2·s further at the raw edge:
// side + 2·width + (2+2√2)s, with a seam of 1/4 in the trade's side + 2·width + 1
// and a little over.
func (s Sewing) Border(around length.Size, width length.Length, mitred bool) (sides, ends Cut) {
	strip := []term{exactly(BorderWidth, 1, width), s.seams()}
	high := []term{exactly(Side, 1, around.H), s.seams()}
	wide := []term{exactly(Side, 1, around.W), exactly(BorderWidth, 2, width), s.seams()}
	if mitred {
		mitre := s.quarterSeams(MitreSeams)
		high = []term{exactly(Side, 1, around.H), exactly(BorderWidth, 2, width), mitre}
		wide = []term{exactly(Side, 1, around.W), exactly(BorderWidth, 2, width), mitre}
	}
	return s.cut(strip, high, 2), s.cut(wide, strip, 2)
}

// Join is how many strips as long as the fabric is wide make a run of a total
// length when they are sewn end to end. Each join eats loss of the run: a
// diagonal one the strip's width, a straight one two seams. So n strips make
// n·wof - (n-1)·loss. It is 0 where nothing is needed, and -1 where the joins
// eat all they add.
func Join(total, wof, loss length.Length) int {
	switch {
	case total <= 0:
		return 0
	case total <= wof:
		return 1
	case loss >= wof:
		return -1
	}
	return int(ceilDiv(int64(total-loss), int64(wof-loss)))
}

// JoinLoss is what a join eats of a run of strips: the strip's cut width for a
// diagonal join; two seams for a straight one.
func JoinLoss(strip, seam length.Length, straight bool) length.Length {
	if straight {
		return 2 * seam
	}
	return strip
}
