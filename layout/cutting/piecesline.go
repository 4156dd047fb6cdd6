package cutting

import (
	"fmt"

	"cutbinder/layout/length"
	"cutbinder/layout/plan"
	"cutbinder/layout/trade"
)

// blocks takes in the pieces of every block, as often as it is made.
func (b *builder) blocks() {
	for _, block := range b.plan.Blocks {
		for _, piece := range block.Pieces {
			b.line(piece, times(piece.Count, block.Make), Use{At: piece.At, Block: block.ID, Note: piece.For})
		}
	}
}

// loose takes in the pieces of no block.
func (b *builder) loose() {
	for _, piece := range b.plan.Pieces {
		b.line(piece, piece.Count, Use{At: piece.At, For: piece.For})
	}
}

// line takes in what n of a line of pieces ask for.
func (b *builder) line(piece *plan.Piece, n int, use Use) {
	if n <= 0 {
		return
	}
	use.Finished, use.Unit, use.Method, use.Units = piece.Finished, piece.Unit, piece.Method, n
	use.NoTurn = piece.NoTurn
	switch piece.Unit {
	case plan.Patch, "":
		b.patch(piece, n, use)
	case plan.Strip:
		b.strip(piece, n, use)
	case plan.StripSet:
		b.stripSet(piece, n, use)
	default:
		b.unit(piece, n, use)
	}
}

// source is the line's i-th source, or its last: two fabrics may serve a unit of
// more parts.
func source(piece *plan.Piece, i int) plan.Source {
	if len(piece.Sources) == 0 {
		return plan.Source{}
	}
	return piece.Sources[min(i, len(piece.Sources)-1)]
}

// patch takes in squares and rectangles, by their finished or their cut size.
func (b *builder) patch(piece *plan.Piece, n int, use Use) {
	d := demand{at: sizePlace(piece.Node), source: source(piece, 0), fixed: piece.NoTurn, count: n, use: use}
	switch r, ok := Recipe(b.plan, piece); {
	case ok:
		d.size, d.use.Sum = r.Parts[0].Size, r.Parts[0].Sum
	case min(piece.Cut.W, piece.Cut.H, piece.Finished.W, piece.Finished.H) == length.WOF:
		b.across(&d, piece)
	default:
		d.size, d.use.Sum = piece.Cut, statedSize(piece.Cut)
	}
	if piece.Join {
		b.join(&d)
	}
	b.add(d)
}

// across makes a demand one for strips across the whole width, by their finished
// or their cut width.
func (b *builder) across(d *demand, piece *plan.Piece) {
	h := stripWidth(piece.Cut)
	sum := stated(h)
	if piece.Cut == (length.Size{}) {
		h = stripWidth(piece.Finished)
		part := sewing(b.plan, false).Patch(length.Size{W: h, H: h}).Parts[0]
		h, sum = part.Size.H, part.Sum
	}
	d.setAcross(h, sum)
}

// stripWidth is how wide a strip across the fabric's width is: makers write it on
// either side of WOF, or alone.
func stripWidth(size length.Size) length.Length {
	switch {
	case size.H == length.WOF:
		return size.W
	case size.W == length.WOF:
		return size.H
	}
	return min(size.W, size.H)
}

// setAcross makes a demand one for strips across the whole width. Sum is how
// their height comes about.
func (d *demand) setAcross(height length.Length, sum trade.Sum) {
	d.size, d.fixed, d.use.Sum = length.Size{W: length.WOF, H: height}, true, sum
}

// stated is the sum of a side that the plan states.
func stated(l length.Length) trade.Sum {
	return trade.Sum{Terms: []trade.Term{{What: trade.Stated, Times: 1, Each: l}}}
}

func statedSize(size length.Size) trade.Sum {
	sum := stated(size.W)
	if size.H != size.W {
		along := stated(size.H)
		sum.Along = &along
	}
	return sum
}

// join turns a demand for pieces longer than the fabric is wide into one for
// strips across the width, to be sewn end to end, where the pieces are longer than
// that. On a one-way fabric this turns the print of pieces meant to lie along the
// cloth; where the line itself says that they aren't turned they are cut along it,
// as long as they like, and joined only where they are too wide.
func (b *builder) join(d *demand) {
	wof := b.narrowest(d.source)
	if d.size.W == length.WOF || wof <= 0 {
		return
	}
	strip, long, sum := d.size.W, d.size.H, d.use.Sum
	lying := d.size.W > d.size.H || d.fixed
	if lying {
		strip, long, sum = d.size.H, d.size.W, d.use.Sum.Turned()
	}
	if long <= wof {
		return
	}
	loss := joinLoss(strip, b.plan.Seam, wof)
	strips := trade.Join(long*length.Length(min(d.count, MaxPieces)), wof, loss)
	if strips < 0 {
		return
	}
	d.use.Turned = !lying && !b.turns(d.source)
	d.use.Joined = &Joined{Size: length.Size{W: strip, H: long}, Count: d.count, Loss: loss}
	if sum.Along != nil {
		d.use.LongSum = *sum.Along
	}
	d.spareless = true
	d.count = strips
	sum.Along = nil
	d.setAcross(strip, sum)
}

// joinLoss is what a join eats: strips are joined at 45°, unless they are so wide
// that this would eat half the fabric's width.
func joinLoss(strip, seam, wof length.Length) length.Length {
	return trade.JoinLoss(strip, seam, 2*strip > wof)
}

// strip takes in strips across the whole width.
func (b *builder) strip(piece *plan.Piece, n int, use Use) {
	d := demand{at: sizePlace(piece.Node), source: source(piece, 0), spareless: true, count: n, use: use}
	b.across(&d, piece)
	b.add(d)
}

// StripSet is how a strip set's line gives n segments, from the narrowest of its
// fabrics, and how wide that is.
func StripSet(p *plan.Plan, piece *plan.Piece, n int) (set trade.StripSet, wof length.Length) {
	return newBuilder(p).setOf(piece, n)
}

func (b *builder) setOf(piece *plan.Piece, n int) (trade.StripSet, length.Length) {
	var finished []length.Length
	var wof length.Length
	for i, s := range piece.Strips {
		finished = append(finished, s.Finished)
		if w := b.narrowest(s.Source); i == 0 || w < wof {
			wof = w
		}
	}
	return sewing(b.plan, false).StripSet(finished, piece.Segment, wof, n), wof
}

// stripSet takes in the strips of as many strip sets as n segments take.
func (b *builder) stripSet(piece *plan.Piece, n int, use Use) {
	set, wof := b.setOf(piece, n)
	if set.Sets == 0 {
		u := b.plan.Units
		b.fault(piece.Place("segment"), fmt.Sprintf("a segment cut %s is longer than the strips: the narrowest fabric is %s wide",
			u.Format(set.Segment, length.WithUnit), u.Format(wof, length.WithUnit)), "take a shorter segment or wider cloth")
		return
	}
	use.Set = &Set{Sets: set.Sets, Segments: n, Segment: set.Segment}
	for i, s := range piece.Strips {
		d := demand{at: s.At, source: s.Source, spareless: true, count: set.Sets, use: use}
		d.setAcross(set.Strips[i], set.Sums[i])
		b.add(d)
	}
}

// unit takes in the parts of n units.
func (b *builder) unit(piece *plan.Piece, n int, use Use) {
	recipe, ok := Recipe(b.plan, piece)
	if !ok {
		b.fault(piece.Place("method"), fmt.Sprintf("unit %q can't be made %s at a finished size of %s", piece.Unit, piece.Method,
			b.plan.Units.FormatSize(piece.Finished, length.WithUnit)), "take another method, or leave it out for the usual one")
		return
	}
	use.Bias = recipe.Bias
	for _, part := range recipe.Parts {
		b.part(part, source(piece, part.Source), sizePlace(piece.Node), times(recipe.Batches(n), part.PerBatch), use)
	}
}

// part takes in count pieces of a part of a unit.
func (b *builder) part(part trade.Part, from plan.Source, at plan.Pos, count int, use Use) {
	use.Role, use.Into, use.Turned, use.Sum = part.Role, part.Diagonal, part.Turned, part.Sum
	b.add(demand{at: at, source: from, size: part.Size, fixed: use.NoTurn, count: count, use: use})
}
