package trade

import "cutbinder/layout/length"

// HalfSquareTwo makes half-squares two at a time: two squares of
// finished + (2+√2)s, sewn on both sides of a diagonal and cut apart on it. Each
// half is the triangle with short sides of the finished length, moved out by the
// seam on every side.
func (s Sewing) HalfSquareTwo(finished length.Length) Recipe {
	size, sum := s.square(exactly(Finished, 1, finished), s.halfSquareSeams(), s.trim(1))
	return pair(size, sum, 2)
}

// HalfSquareFour makes half-squares four at a time: two squares of
// √2 (finished+2s) + 2s, sewn all round and cut on both diagonals. From the
// square's middle to a seam it is half its side less s, and that is half the
// diagonal of the unit. The units' outer edges lie on the bias. The rule of
// thumb unit/0.64 is too small below a unit of 3.37 in at a seam of 1/4 in.
func (s Sewing) HalfSquareFour(finished length.Length) Recipe {
	size, sum := s.square(rooted(FinishedDiagonal, root2(finished)),
		s.quarterSeams(FourSquareSeams), rooted(Trimming, root2(s.Trim)))
	r := pair(size, sum, 4)
	r.Bias = true
	return r
}

// HalfSquareEight makes half-squares eight at a time: two squares twice as wide
// as for two at a time, sewn on both sides of both diagonals, cut in quarters
// and then on the diagonals: each quarter is a pair sewn two at a time.
func (s Sewing) HalfSquareEight(finished length.Length) Recipe {
	seams := rooted(EightSquareSeams, whole(4*s.Seam).plus(root2(2*s.Seam)))
	size, sum := s.square(exactly(Finished, 2, finished), seams, s.trim(2))
	return pair(size, sum, 8)
}

// HalfSquareFlip makes one half-square of two squares of finished + 2s: sewn
// corner to corner, one corner cut away, flipped open.
func (s Sewing) HalfSquareFlip(finished length.Length) Recipe {
	size, sum := s.square(exactly(Finished, 1, finished), s.seams(), s.trim(1))
	return pair(size, sum, 1)
}

// pair is one square of each of two fabrics. Cut on a diagonal, the triangles
// come to lie in opposite ways.
func pair(size length.Size, sum Sum, makes int) Recipe {
	part := Part{Size: size, PerBatch: 1, Turned: true, Sum: sum}
	other := part
	other.Source = 1
	return Recipe{Makes: makes, Parts: []Part{part, other}}
}

// QuarterSquare makes triangles whose long side, finished long, lies on the
// straight grain: squares of finished + (2+2√2)s cut on both diagonals.
func (s Sewing) QuarterSquare(finished length.Length) Recipe {
	size, sum := s.square(exactly(Finished, 1, finished), s.quarterSeams(QuarterSeams), s.trim(1))
	return Recipe{Makes: 4, Parts: []Part{
		{Size: size, PerBatch: 1, Diagonal: Twice, Turned: true, Sum: sum}}}
}

// Hourglass makes hourglass units of two, three or four fabrics from squares of
// finished + (2+2√2)s: pairs are made into half-squares two at a time, and two of
// those, crossed, are once more sewn on both sides of a diagonal and cut apart.
// Each seam takes (2+√2)s off and leaves 2s on. Of two fabrics a square each
// makes two units. Of four a square each makes four. Of three the first stands
// in both pairs, and two squares of it with one each of the others make four.
func (s Sewing) Hourglass(finished length.Length, fabrics int) Recipe {
	size, sum := s.square(exactly(Finished, 1, finished), s.quarterSeams(QuarterSeams), s.trim(2))
	r := Recipe{Makes: 4}
	if fabrics <= 2 {
		r.Makes = 2
	}
	for i := range min(max(fabrics, 2), 4) {
		r.Parts = append(r.Parts, Part{Source: i, Size: size, PerBatch: 1, Turned: true, Sum: sum})
	}
	if fabrics == 3 {
		r.Parts[0].PerBatch = 2
	}
	return r
}

// SquareInSquare makes a centre square set on its corner, with a triangle on
// each side of it. The centre's side is finished/√2; the triangles have short
// sides of half the finished length, from squares of finished/2 + (2+√2)s cut on
// one diagonal, which is the centre's side over √2 and as much.
func (s Sewing) SquareInSquare(finished length.Length) Recipe {
	centre, sum := s.square(rooted(HalfDiagonal, overRoot2(finished)), s.seams())
	corner, csum := s.square(term{HalfFinished, 1, halved(finished)}, s.halfSquareSeams(), s.trim(1))
	return Recipe{Makes: 1, Parts: []Part{
		{Role: Centre, Size: centre, PerBatch: 1, Sum: sum},
		{Source: 1, Role: Corner, Size: corner, PerBatch: 2, Diagonal: Once, Turned: true, Sum: csum}}}
}

// SquareInSquareFlip makes the same from a square of finished + 2s with four
// squares of finished/2 + 2s sewn corner to corner on its corners: the seam runs
// from one side's middle to the next one's, which lies s inside the cut edge.
func (s Sewing) SquareInSquareFlip(finished length.Length) Recipe {
	centre, sum := s.square(exactly(Finished, 1, finished), s.seams(), s.trim(2))
	corner, csum := s.square(term{HalfFinished, 1, halved(finished)}, s.seams(), s.trim(1))
	return Recipe{Makes: 1, Parts: []Part{
		{Role: Centre, Size: centre, PerBatch: 1, Sum: sum},
		{Source: 1, Role: Corner, Size: corner, PerBatch: 4, Turned: true, Sum: csum}}}
}
