package picture

import (
	"fmt"
	"slices"
	"strings"

	"cutbinder/layout/length"
	"cutbinder/layout/plan"
)

// Check compares what a plan draws with what it says: a block's drawing with its
// pieces, where both are written, the quilt's rows with how many blocks are made,
// whether the rows fit
// together, and whether they come to the quilt's size. All it finds are doubts.
func Check(p *plan.Plan) plan.Problems {
	var found plan.Problems
	for _, b := range p.Blocks {
		if b.Drawing != nil && b.Stated("pieces") {
			found = append(found, compare(p, b)...)
		}
	}
	found = append(found, made(p)...)
	pic, doubts := Quilt(p)
	found = append(found, doubts...)
	if rows := p.Setting == nil && p.Sashing == nil; rows && pic != nil && p.Finished.W > 0 && pic.Size() != p.Finished {
		found = append(found, plan.Problem{At: p.Place("finished"), Level: plan.Doubt, ID: "quilt-size",
			What: fmt.Sprintf("finished: the plan says %s; the rows of blocks and the borders come to %s",
				p.Units.FormatSize(p.Finished, length.WithUnit), p.Units.FormatSize(pic.Size(), length.WithUnit)),
			Hint: "see whether a row, a column or a border is missing"})
	}
	found.Sort()
	return found
}

// made compares how many blocks are made with how many stand in the quilt.
func made(p *plan.Plan) (found plan.Problems) {
	if len(p.Quilt) == 0 {
		return nil
	}
	stands := map[string]int{}
	for _, row := range p.Quilt {
		for _, s := range row {
			stands[s.Block]++
		}
	}
	for _, b := range p.Blocks {
		if n := stands[b.ID]; n != b.Make {
			found = append(found, plan.Problem{At: b.Place("make"), Level: plan.Doubt, ID: "quilt-make:" + b.ID,
				What: fmt.Sprintf("block %q is made %d times; it stands in the quilt's rows %d times", b.ID, b.Make, n),
				Hint: "leave make out, and it follows from the rows"})
		}
	}
	return found
}

// A tally is how often one kind of line is drawn and written.
type tally struct {
	line           *plan.Piece // for words and the place
	drawn, written int
	at             plan.Pos // of the last line written, else of the first cell
}

// compare finds where a block's drawing and its pieces differ: line by line, or
// where some of the pieces can't be told in a drawing, such as strip sets, by how
// much of each fabric shows.
func compare(p *plan.Plan, b *plan.Block) (found plan.Problems) {
	drawn := p.DrawnPieces(b)
	if slices.ContainsFunc(b.Pieces, func(line *plan.Piece) bool { return !tellable(line) }) {
		return compareAreas(p, b, drawn)
	}
	var keys []string
	tallies := map[string]*tally{}
	take := func(line *plan.Piece, drawn, written int) {
		key := p.LineKey(line)
		t := tallies[key]
		if t == nil {
			t = &tally{line: line, at: line.At}
			tallies[key], keys = t, append(keys, key)
		}
		t.drawn, t.written = t.drawn+drawn, t.written+written
		if written > 0 {
			t.at = line.Place("each")
		}
	}
	for _, line := range drawn {
		take(line, line.Count, 0)
	}
	for _, line := range b.Pieces {
		take(line, 0, line.Count)
	}
	for _, key := range keys {
		if t := tallies[key]; t.drawn != t.written {
			found = append(found, plan.Problem{At: t.at, Level: plan.Doubt, ID: "drawing:" + b.ID,
				What: fmt.Sprintf("block %q is drawn with (%d) %s; its pieces have (%d)", b.ID, t.drawn, words(p, t.line), t.written),
				Hint: "leave pieces out, and they follow from the drawing"})
		}
	}
	return found
}

// tellable says whether a line of pieces is one that drawings have.
func tellable(line *plan.Piece) bool {
	switch line.Unit {
	case plan.Patch:
		return min(line.Cut.W, line.Cut.H, line.Finished.W, line.Finished.H) >= 0
	case plan.HalfSquare, plan.Geese, plan.Hourglass, plan.SquareInSquare:
		return true
	}
	return false
}

// words names a line's pieces.
func words(p *plan.Plan, line *plan.Piece) string {
	z := p.FinishedSize(line)
	size := p.Units.FormatSize(z)
	if z.W == z.H {
		size = p.Units.Format(z.W)
	}
	var from []string
	for _, s := range line.Sources {
		from = append(from, s.ID)
	}
	if line.Unit == plan.Patch {
		return fmt.Sprintf("%s finished from %s", size, from[0])
	}
	return fmt.Sprintf("%s %s finished from %s", line.Unit, size, strings.Join(from, ", "))
}

// compareAreas compares how much of each fabric or mix shows in the drawing and
// comes of the pieces.
func compareAreas(p *plan.Plan, b *plan.Block, drawn []*plan.Piece) (found plan.Problems) {
	shown, written := areas(p, drawn), areas(p, b.Pieces)
	if shown == nil || written == nil {
		return nil
	}
	for _, s := range sourcesOf(drawn, b.Pieces) {
		if shown[s] == written[s] {
			continue
		}
		how := "more"
		if written[s] < shown[s] {
			how = "less"
		}
		found = append(found, plan.Problem{At: b.Place("pieces"), Level: plan.Doubt, ID: "drawing:" + b.ID,
			What: fmt.Sprintf("the pieces of block %q make %s of %s than its drawing shows: %s against %s", b.ID, how, s, area(p, written[s]), area(p, shown[s])),
			Hint: "compare the drawing with the pieces"})
	}
	return found
}

// area is twice an area in words.
func area(p *plan.Plan, twice int64) string {
	unit, name := int64(length.Inch), "square inches"
	if p.Units == length.Metric {
		unit, name = int64(length.CM), "square cm"
	}
	hundredths := (twice/2*100 + unit*unit/2) / (unit * unit)
	return fmt.Sprintf("%d.%02d %s", hundredths/100, hundredths%100, name)
}

// sourcesOf are the sources of lines in the order in which they come up.
func sourcesOf(lists ...[]*plan.Piece) (all []string) {
	add := func(s plan.Source) {
		if !slices.Contains(all, s.String()) {
			all = append(all, s.String())
		}
	}
	for _, lines := range lists {
		for _, line := range lines {
			for _, s := range line.Sources {
				add(s)
			}
			for _, s := range line.Strips {
				add(s.Source)
			}
		}
	}
	return all
}

// areas are twice the finished areas of lines of pieces by source; nil where one
// has none that is known.
func areas(p *plan.Plan, lines []*plan.Piece) map[string]int64 {
	all := map[string]int64{}
	for _, line := range lines {
		n := int64(line.Count)
		if line.Unit == plan.StripSet {
			for _, s := range line.Strips {
				all[s.Source.String()] += 2 * n * int64(s.Finished) * int64(line.Segment)
			}
			continue
		}
		if !tellable(line) {
			return nil
		}
		z := p.FinishedSize(line)
		whole := 2 * n * int64(z.W) * int64(z.H)
		for s, share := range shares(line, whole, z) {
			all[s] += share
		}
	}
	return all
}

// shares parts the area of a line's units among its sources.
func shares(line *plan.Piece, whole int64, z length.Size) map[string]int64 {
	all := map[string]int64{}
	add := func(i int, a int64) { all[line.Sources[min(i, len(line.Sources)-1)].String()] += a }
	switch line.Unit {
	case plan.Patch:
		add(0, whole)
	case plan.Geese: // the sky is two triangles as high as the goose
		sky := 2 * int64(line.Count) * int64(z.H) * int64(z.H)
		add(0, whole-sky)
		add(1, sky)
	case plan.Hourglass:
		for _, i := range map[int][]int{2: {0, 1, 0, 1}, 3: {0, 1, 0, 2}, 4: {0, 1, 2, 3}}[len(line.Sources)] {
			add(i, whole/4)
		}
	default:
		add(0, whole/2)
		add(1, whole/2)
	}
	return all
}
