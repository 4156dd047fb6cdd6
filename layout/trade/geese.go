package trade

import "cutbinder/layout/length"

// GeeseFour makes flying geese four at a time and without waste, for geese twice
// as wide as high: a square of width + (2+2√2)s, the four triangles of which are
// the geese, and four squares of width/2 + (2+√2)s for the sky, sewn on both
// sides of their diagonals.
func (s Sewing) GeeseFour(width length.Length) Recipe {
	goose, sum := s.square(exactly(Finished, 1, width), s.quarterSeams(QuarterSeams), s.trim(2))
	sky, ssum := s.square(term{HalfFinished, 1, halved(width)}, s.halfSquareSeams(), s.trim(1))
	return Recipe{Makes: 4, Parts: []Part{
		{Role: Goose, Size: goose, PerBatch: 1, Turned: true, Sum: sum},
		{Source: 1, Role: Sky, Size: sky, PerBatch: 4, Turned: true, Sum: ssum}}}
}

// GeeseFlip makes one goose at a time: a rectangle of the finished size + 2s each
// way, and on each end a square of the height + 2s sewn corner to corner, its
// corner cut away and flipped open. The goose keeps its print upright. Where it
// is trimmed it grows by one trimming in height and by two, for two diagonal
// seams, in width.
func (s Sewing) GeeseFlip(finished length.Size) Recipe {
	high := append(s.patch(finished.H), s.trim(1))
	goose, sum := s.rectangle(append(s.patch(finished.W), s.trim(2)), high)
	sky, ssum := s.square(high...)
	return Recipe{Makes: 1, Parts: []Part{
		{Role: Goose, Size: goose, PerBatch: 1, Sum: sum},
		{Source: 1, Role: Sky, Size: sky, PerBatch: 2, Turned: true, Sum: ssum}}}
}
