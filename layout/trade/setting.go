package trade

import "cutbinder/layout/length"

// SideSetting makes the triangles along the edge of a quilt whose blocks stand
// on their corners. The long side, on the quilt's edge, is the block's diagonal:
// squares of √2·block + (2+2√2)s, cut on both diagonals so that the edge lies on
// the straight grain. Block is the finished side, with its sash where one goes
// round it; generous is added so that the triangles can be trimmed.
func (s Sewing) SideSetting(block, generous length.Length) Recipe {
	size, sum := s.square(rooted(BlockDiagonal, root2(block)), s.quarterSeams(QuarterSeams), exactly(Generous, 1, generous))
	return Recipe{Makes: 4, Parts: []Part{
		{Size: size, PerBatch: 1, Diagonal: Twice, Turned: true, Sum: sum}}}
}

// CornerSetting makes the triangles in the quilt's corners, whose long side is
// the block's: squares of block/√2 + (2+√2)s, cut on one diagonal.
func (s Sewing) CornerSetting(block, generous length.Length) Recipe {
	size, sum := s.square(rooted(HalfDiagonal, overRoot2(block)), s.halfSquareSeams(), exactly(Generous, 1, generous))
	return Recipe{Makes: 2, Parts: []Part{
		{Size: size, PerBatch: 1, Diagonal: Once, Turned: true, Sum: sum}}}
}

// OnPoint is what fills an on-point setting of across by down blocks.
type OnPoint struct {
	Between int // squares between the blocks: (across-1)(down-1)
	Sides   int // side triangles: 2(across+down-2)
	Corners int // corner triangles: 4
}

// Fill counts what an on-point setting of across by down blocks takes; zero
// where it has none.
func Fill(across, down int) OnPoint {
	if across < 1 || down < 1 {
		return OnPoint{}
	}
	return OnPoint{(across - 1) * (down - 1), 2 * (across + down - 2), 4}
}

// PointToPoint is how wide n blocks are that stand on their corners side by
// side: n times √2 times the finished side, rounded up to a length unit.
func PointToPoint(block length.Length, n int) length.Length {
	return root2(block).times(int64(n)).up()
}

// A Cut is a number of pieces of one size.
type Cut struct {
	Size  length.Size
	Count int
	Sum   Sum
}

// Sashes is the sashing of a quilt.
type Sashes struct {
	Upright      Cut // between blocks that stand side by side
	Level        Cut // between rows: one below each block, or one a row where no cornerstones part them
	Cornerstones Cut
}

// Sashing is the sashing between across by down blocks. With a frame it goes
// round the outside too. With cornerstones every sash is as long as a block;
// without, those between rows run through. Across by down blocks have
// (across±1)·down upright sashes and across·(down±1) level ones, and
// (across±1)(down±1) cornerstones: plus with a frame, minus without.
func (s Sewing) Sashing(across, down int, block length.Size, width length.Length, frame, cornerstones bool) Sashes {
	more := -1
	if frame {
		more = 1
	}
	columns, rows := across+more, down+more
	sash := []term{exactly(SashWidth, 1, width), s.seams()}
	var out Sashes
	out.Upright = s.cut(sash, []term{exactly(Block, 1, block.H), s.seams()}, columns*down)
	if cornerstones {
		out.Level = s.cut([]term{exactly(Block, 1, block.W), s.seams()}, sash, across*rows)
		out.Cornerstones = s.cut(sash, sash, columns*rows)
		return out
	}
	run := []term{exactly(Block, int64(across), block.W), exactly(SashWidth, int64(columns), width), s.seams()}
	out.Level = s.cut(run, sash, rows)
	return out
}

func (s Sewing) cut(width, height []term, count int) Cut {
	size, sum := s.rectangle(width, height)
	return Cut{size, count, sum}
}
