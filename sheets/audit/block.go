package audit

import (
	"fmt"
	"strings"

	"cutbinder/layout/length"
	"cutbinder/layout/plan"
	"cutbinder/layout/trade"
)

// blocks checks that each block's patches can make its finished size.
func (a *auditor) blocks() {
	for _, b := range a.plan.Blocks {
		if b.Finished.W <= 0 || b.Finished.H <= 0 || len(b.Pieces) == 0 {
			continue
		}
		if !a.area(b) {
			continue
		}
		a.edges(b)
	}
}

// A patchwork is what a block's lines come to when sewn.
type patchwork struct {
	area  int64         // of all, in square length units, times four: a triangle may take a quarter
	sides []length.Size // of each square or rectangle, a unit being one
	whole bool          // sides holds all there is: no triangles stand alone
	known bool          // every line's finished size is known
	extra plan.Pos      // the line that isn't known
}

// sewn is a block's patchwork.
func (a *auditor) sewn(b *plan.Block) patchwork {
	w := patchwork{whole: true, known: true}
	for _, piece := range b.Pieces {
		size, quarters := a.finished(piece)
		if quarters == 0 {
			w.known, w.extra = false, piece.At
			continue
		}
		w.area += int64(size.W) * int64(size.H) * int64(quarters) * int64(piece.Count)
		if quarters != 4 {
			w.whole = false
			continue
		}
		for range min(piece.Count, maxSides) {
			w.sides = append(w.sides, size)
		}
	}
	return w
}

// maxSides bounds how many patches of a line are tried along an edge, which is
// then longer than any block's, and maxSteps how finely.
const (
	maxSides = 400
	maxSteps = 4096
)

// finished is the finished size of a line's patch or unit, and how many quarters
// of that rectangle it covers: 4 for squares and rectangles, 1 for a triangle
// whose long side is the size's, 2 for one that is half of a square. It is 0 for
// lines that say nothing of a finished size, such as strips.
func (a *auditor) finished(piece *plan.Piece) (length.Size, int) {
	f := piece.Finished
	switch piece.Unit {
	case plan.Strip:
		return f, 0
	case plan.StripSet:
		var width length.Length
		for _, s := range piece.Strips {
			width += s.Finished
		}
		return length.Size{W: width, H: piece.Segment}, 4
	case plan.QuarterSquare, plan.CornerSetting: // long side f: f²/4
		return f, 1
	case plan.SideSetting: // short sides f: f²/2
		return f, 2
	}
	if f == (length.Size{}) && piece.Cut.W > 2*a.plan.Seam && piece.Cut.H > 2*a.plan.Seam {
		f = length.Size{W: piece.Cut.W - 2*a.plan.Seam, H: piece.Cut.H - 2*a.plan.Seam}
	}
	if f.W <= 0 || f.H <= 0 {
		return f, 0
	}
	return f, 4
}

// area checks that the patches cover just as much as the block. It is false
// where that is told, or can't be said.
func (a *auditor) area(b *plan.Block) bool {
	w := a.sewn(b)
	id := "block-size:" + b.ID
	if !w.known {
		a.find(plan.Remark, w.extra, id, "give it a finished size to have the block checked",
			"block %s can't be checked against its size: this line doesn't say how large its pieces are when sewn", b.ID)
		return false
	}
	block := 4 * int64(b.Finished.W) * int64(b.Finished.H)
	if w.area == block {
		return true
	}
	more, by := "too little", block-w.area
	if by < 0 {
		more, by = "too much", -by
	}
	a.find(plan.Doubt, b.Place("finished"), id, "look for a patch that is left out or counted twice, or for a cut size written as finished",
		"block %s finishes %s, which is %s; its patches cover %s: %s %s", b.ID, a.v.Size(b.Finished),
		a.square(block), a.square(w.area), a.square(by), more)
	return false
}

// square is an area, of which quarters are counted, in words with two decimals
// at most.
func (a *auditor) square(quarters int64) string {
	unit, words := int64(length.Inch), "square in"
	if a.plan.Units == length.Metric {
		unit, words = int64(length.CM), "square cm"
	}
	whole := 4 * unit * unit
	return decimal(100*(quarters/whole)+(100*(quarters%whole)+whole/2)/whole, 2) + " " + words
}

// decimal is a number of hundredths, thousandths or so in figures, without
// zeros at its end.
func decimal(n int64, places int) string {
	one := int64(1)
	for range places {
		one *= 10
	}
	text := fmt.Sprintf("%d.%0*d", n/one, places, n%one)
	return strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
}

// edges checks that a row of patches can be as long as the block's edge: each
// edge is made of sides of patches, end to end.
func (a *auditor) edges(b *plan.Block) {
	w := a.sewn(b)
	for _, edge := range []length.Length{b.Finished.W, b.Finished.H} {
		for _, z := range w.sides {
			if max(z.W, z.H) > max(b.Finished.W, b.Finished.H) {
				a.find(plan.Doubt, b.Place("finished"), "block-edge:"+b.ID, "see which of the two is wrong",
					"block %s finishes %s; a patch of it, %s, is longer than that", b.ID, a.v.Size(b.Finished), a.v.Size(z))
				return
			}
		}
		if near, ok := reach(w.sides, edge); !ok && w.whole {
			a.find(plan.Doubt, b.Place("finished"), "block-edge:"+b.ID, "lay the patches out on squared paper: one of the sizes is off",
				"block %s finishes %s, and no row of its patches is %s long: the nearest is %s", b.ID, a.v.Size(b.Finished), a.v.With(edge), a.v.With(near))
			return
		}
	}
}

// reach says whether sides of patches, one of each patch, add up to an edge; and
// else the nearest sum below it. A subset-sum in steps of the sides' greatest
// common divisor.
func reach(patches []length.Size, edge length.Length) (near length.Length, ok bool) {
	step := edge
	for _, z := range patches {
		step = gcd(gcd(step, z.W), z.H)
	}
	n := int(edge / step)
	if n > maxSteps || len(patches) > 10*maxSides { // more than a block of patchwork has
		return edge, true
	}
	sums := make([]bool, n+1)
	sums[0] = true
	for _, z := range patches {
		w, h := int(z.W/step), int(z.H/step)
		for i := n; i > 0; i-- {
			sums[i] = sums[i] || i >= w && sums[i-w] || i >= h && sums[i-h]
		}
	}
	for i := n; i > 0; i-- {
		if sums[i] {
			return length.Length(i) * step, i == n
		}
	}
	return 0, false
}

func gcd(a, b length.Length) length.Length {
	for b > 0 {
		a, b = b, a%b
	}
	return a
}

// quilt checks that blocks, sashing and borders add up to the quilt.
func (a *auditor) quilt() {
	p := a.plan
	made := 0
	for _, b := range p.Blocks {
		made += b.Make
	}
	switch s, g := p.Setting, p.Sashing; {
	case s != nil:
		n, how := s.Across*s.Down, fmt.Sprintf("%d x %d on point", s.Across, s.Down)
		if between := trade.Fill(s.Across, s.Down).Between; s.Alternate == nil && between > 0 {
			n, how = n+between, fmt.Sprintf("%s and %d between them", how, between)
		}
		a.blockCount(s.Place("on-point"), made, n, how)
		wide, high := trade.PointToPoint(s.Block, s.Across), trade.PointToPoint(s.Block, s.Down)
		// A centre on point is trimmed, and its sides are no even figures.
		a.centre(s.At, length.Size{W: wide, H: high}, length.Inch/4+2*s.Generous)
	case g != nil:
		a.blockCount(g.Place("blocks"), made, g.Across*g.Down, fmt.Sprintf("%d x %d", g.Across, g.Down))
		sashes := length.Length(-1)
		if g.Frame {
			sashes = 1
		}
		a.centre(g.At, length.Size{
			W: length.Length(g.Across)*g.Block.W + (length.Length(g.Across)+sashes)*g.Width,
			H: length.Length(g.Down)*g.Block.H + (length.Length(g.Down)+sashes)*g.Width}, 0)
	}
}

func (a *auditor) blockCount(at plan.Pos, made, want int, how string) {
	if made == 0 || made == want {
		return
	}
	a.find(plan.Doubt, at, "block-count", "mend the blocks' make, or the setting",
		"%s takes %s; the blocks' make comes to %d", how, plural(want, "block", "blocks"), made)
}

// centre checks what blocks and sashing come to against what the borders go
// round, and with them against the quilt's finished size.
func (a *auditor) centre(at plan.Pos, size length.Size, tolerance length.Length) {
	p := a.plan
	if len(p.Borders) > 0 && p.Borders[0].Stated("around") {
		if b := p.Borders[0]; !within(size, b.Around, tolerance) {
			a.find(plan.Doubt, b.Place("around"), "centre-size", "measure the centre before you cut the border",
				"the border goes round %s; the blocks inside come to %s", a.v.Size(b.Around), a.about(size, tolerance))
		}
		size = p.Borders[0].Around
	}
	for _, b := range p.Borders {
		size = length.Size{W: size.W + 2*b.Width, H: size.H + 2*b.Width}
	}
	if p.Stated("finished") && !within(size, p.Finished, tolerance) {
		with := ""
		if len(p.Borders) > 0 {
			with = " with the borders"
		}
		a.find(plan.Doubt, p.Place("finished"), "quilt-size", "binding, backing and borders are reckoned from finished: mend it, or the setting",
			"the quilt is said to finish %s; its blocks come to %s%s", a.v.Size(p.Finished), a.about(size, tolerance), with)
	}
}

// about is a size in words, rounded up where it isn't an even figure.
func (a *auditor) about(z length.Size, tolerance length.Length) string {
	if tolerance == 0 {
		return a.v.Size(z)
	}
	step := a.plan.CutStep
	up := func(l length.Length) length.Length { return (l + step - 1) / step * step }
	return "about " + a.v.Size(length.Size{W: up(z.W), H: up(z.H)})
}

func within(a, b length.Size, by length.Length) bool {
	return apart(a.W, b.W) <= by && apart(a.H, b.H) <= by
}

func apart(a, b length.Length) length.Length { return max(a-b, b-a) }
