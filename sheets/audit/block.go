package audit

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"cutbinder/layout/length"
	"cutbinder/layout/plan"
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
	slack int64         // what a 64th of an inch on each side would come to, as area
}

// sewn is a block's patchwork.
func (a *auditor) sewn(b *plan.Block) patchwork {
	w := patchwork{whole: true, known: true}
	slack := func(z length.Size) int64 { return 4 * int64(z.W+z.H) * int64(length.Sixtyfourth) }
	w.slack = slack(b.Finished)
	for _, piece := range b.Pieces {
		size, quarters := a.finished(piece)
		if quarters == 0 {
			w.known, w.extra = false, piece.At
			continue
		}
		w.area += int64(size.W) * int64(size.H) * int64(quarters) * int64(piece.Count)
		w.slack += slack(size) * int64(piece.Count)
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
//
// Too little is a fault: seams aside, pieces never cover more than they are cut.
// So is too much, but where something may explain it: pieces of a stated cut size
// may be cut into triangles or trimmed, and a line may say that it lies on others.
// What sizes rounded to a 64th of an inch may make of it is a doubt either way.
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
	level, more, by := plan.Fault, "too little", block-w.area
	if by < 0 {
		more, by = "too much", -by
	}
	if by <= w.slack || w.area > block && a.mayOverlap(b) {
		level = plan.Doubt
	}
	hint := a.areaHint(b, block-w.area)
	if level == plan.Doubt && w.area > block+w.slack {
		hint += "; where a patch lies on others, as appliqué does, accept it"
	}
	a.find(level, b.Place("finished"), id, hint,
		"block %s finishes %s, which is %s; its patches cover %s: %s %s", b.ID, a.v.Size(b.Finished),
		a.square(block), a.square(w.area), a.square(by), more)
	return false
}

// overlaps is what a line is for that lies on other patches, or is cut down.
var overlaps = regexp.MustCompile(`(?i)appliqu|flip|trim|snowball|fold|flange|\bhsts?\b|\bqsts?\b|half[- ]square`)

// mayOverlap says that a block's lines may well come to more than the block.
func (a *auditor) mayOverlap(b *plan.Block) bool {
	return slices.ContainsFunc(b.Pieces, func(p *plan.Piece) bool { return p.Stated("cut") || overlaps.MatchString(p.For) })
}

// areaHint says where to look for an area that is lacking, or too much below zero.
// Where lines read the other way, finished for cut, fill the block, it is those.
func (a *auditor) areaHint(b *plan.Block, lacking int64) string {
	key, other, hint := "cut", "finished", "look for a patch that is left out, or for a size that is off"
	if lacking < 0 {
		key, other, hint = other, key, "look for a patch that is counted twice, or for a size that is off"
	}
	var all []*plan.Piece
	gains := int64(0)
	for _, piece := range b.Pieces {
		if !piece.Stated(key) || piece.Unit != plan.Patch {
			continue
		}
		all = append(all, piece)
		gain := a.otherway(piece)
		if gains += gain; gain == lacking {
			z := cmp.Or(piece.Cut, piece.Finished)
			return fmt.Sprintf("%s %s is probably the %s size: write %s: %s", key, a.v.Short(z), other, other, a.v.Short(z))
		}
	}
	switch {
	case len(all) == 0:
	case gains == lacking:
		hint = fmt.Sprintf("the %s sizes are probably %s ones: write %s: for %s:", key, other, other, key)
	default:
		hint = strings.Replace(hint, "a size that is off", "a "+other+" size written as "+key, 1)
	}
	return hint
}

// otherway is how much more area a patch's line covers, in quarters, where its cut
// size is read as finished, or the other way round.
func (a *auditor) otherway(piece *plan.Piece) int64 {
	seams := 2 * a.plan.Seam
	z, as := piece.Finished, length.Size{W: piece.Finished.W - seams, H: piece.Finished.H - seams}
	if piece.Stated("cut") {
		z, as = length.Size{W: piece.Cut.W - seams, H: piece.Cut.H - seams}, piece.Cut
	}
	return 4 * int64(piece.Count) * (int64(as.W)*int64(as.H) - int64(z.W)*int64(z.H))
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
