package sheets

import (
	"fmt"
	"slices"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/page"
	"cutbinder/sheets/say"
)

// A diagram draws one cloth to scale, in one or more windows along its length.
type diagram struct {
	b       *binder
	f       *cutting.Fabric
	c       *cutting.Cloth
	scale   int
	nth     []int                  // for each placed piece, the how manieth of its size it is
	sizes   map[length.Size]string // how sizes are written: most are asked for many times
	keyed   map[int]string         // letters that stand in pieces in place of their size, by piece
	small   map[int][]page.Box     // pieces that their size doesn't fit into, by piece, while letters are given out
	keys    []key                  // what the letters stand for, in order, and what has no room beside the strips
	folded  []length.Length        // where folds lie across the cloth
	avoid   []length.Length        // what sizes must not stand on: folds, and the edge of wide discs
	flanks  length.Length          // how far beyond the cloth the widest number and height of a strip reach
	legend  length.Length          // how wide the scale bar and the words beside it are
	abreast bool                   // its parts stand two side by side
	hatch   bool                   // what hatching means is said below the picture
	rest    length.Length          // how much of what is left at the cloth's end is drawn at the most
}

// A key is said below those windows that show what it is about.
type key struct {
	words string
	at    []extent
}

// An extent is a stretch along the cloth.
type extent struct{ from, to length.Length }

// shownIn says whether a window shows what a key is about.
func (k key) shownIn(window page.Box) bool {
	return slices.ContainsFunc(k.at, func(e extent) bool { return e.from < window.Bottom() && e.to > window.Y })
}

// newDiagram prepares a drawing: it draws once into nothing to learn which sizes
// don't fit into their pieces and need a letter.
func (b *binder) newDiagram(f *cutting.Fabric, cloth int) *diagram {
	c := &f.Cloths[cloth]
	d := &diagram{b: b, f: f, c: c, scale: b.scaleOf(c), sizes: map[length.Size]string{}, keyed: map[int]string{}, small: map[int][]page.Box{}, rest: drawnEnd}
	seen := make([]int, len(f.Pieces))
	for i := range f.Cloths[:cloth+1] {
		for _, p := range f.Cloths[i].Placed {
			seen[p.Piece]++
			if i == cloth {
				d.nth = append(d.nth, seen[p.Piece])
			}
		}
	}
	d.legend = d.legendWidth()
	d.flanks = d.flanksWidth()
	d.abreast = d.isAbreast()
	d.hatch = (d.abreast || d.besideSteps()) && !slices.ContainsFunc(f.Cloths[:cloth], func(c cutting.Cloth) bool { return !c.Unused() })
	d.folded = b.folds(c)
	d.avoid = append(d.discs(), d.folded...)
	all := d.whole()
	nowhere := d.canvas(page.NewPen(b.style, page.Box{}), page.Point{}, all)
	d.pieces(nowhere, c.Root)
	for i, p := range f.Pieces {
		if _, ok := d.keyed[i]; ok {
			d.keyed[i] = keyLetter(len(d.keys))
			d.keys = append(d.keys, key{d.keyed[i] + " = " + b.v.Size(p.Size), d.lettered(nowhere, i)})
		}
	}
	d.small = nil
	d.keys = append(d.keys, d.heightNotes()...)
	return d
}

// lettered is where along the cloth those of a piece lie that its letter fits into.
func (d *diagram) lettered(c *page.Canvas, piece int) (at []extent) {
	for _, box := range d.small[piece] {
		if d.words(c, box, "key", d.keyed[piece]) {
			at = append(at, extent{box.Y, box.Bottom()})
		}
	}
	return at
}

// folds lists where the cloth's folds lie across it.
func (b *binder) folds(c *cutting.Cloth) []length.Length {
	if c.Root.Dir != cutting.Across {
		return nil
	}
	steps := c.Steps(b.q.Plan)
	switch steps[0].Folds {
	case 0:
		return nil
	case 1:
		return []length.Length{c.W / 2}
	}
	return []length.Length{c.W / 4, c.W / 2, 3 * c.W / 4}
}

// keyLetter is the i-th key letter: A to Z, then AA.
func keyLetter(i int) string {
	if i >= 26 {
		return keyLetter(i/26-1) + keyLetter(i%26)
	}
	return string(rune('A' + i))
}

// drawnEnd is how much of what is left at a cloth's end is drawn where there is
// room for it.
const drawnEnd = 3 * length.Inch

// end is how far along the cloth the drawing goes: what is cut, and a little of
// what is left.
func (d *diagram) end() length.Length {
	end := d.c.Root.H
	if d.c.Bought {
		end += min(d.leftLong(), d.rest)
	}
	if at := d.restAt(); at < d.c.Root.H {
		end = min(end, at+d.rest)
	}
	return end
}

// leftLong is the length that is left at the cloth's end.
func (d *diagram) leftLong() length.Length { return d.c.Rest(d.b.q.Plan, d.f.Fabric) }

// restAt is where what is left at the cloth's end begins, or the cloth's end.
func (d *diagram) restAt() length.Length {
	root := &d.c.Root
	if n := len(root.Parts); root.Dir == cutting.Across && n > 1 && root.Parts[n-1].Leftover() {
		return root.Parts[n-1].Y
	}
	return root.H
}

// whole is all of the drawing, in cloth lengths, with what squaring takes off.
func (d *diagram) whole() page.Box {
	return page.Box{X: 0, Y: -d.c.Square, W: d.c.W, H: d.end() + d.c.Square}
}

// canvas is the view of one window.
func (d *diagram) canvas(p *page.Pen, at page.Point, window page.Box) *page.Canvas {
	return &page.Canvas{Pen: p, At: at, Scale: d.scale, Window: window, Mirror: d.b.v.Left, Avoid: d.avoid}
}

// windows cuts the drawing into parts no higher on paper than room, the first, or
// the first two side by side, no higher than first, between strips where that can be.
func (d *diagram) windows(first, room length.Length) []page.Box {
	all := d.whole()
	var out []page.Box
	top := all.Y
	for top < d.end() {
		limit := top + first*length.Length(d.scale)
		bottom := d.lastCut(top, limit)
		if bottom <= top {
			limit = top + room*length.Length(d.scale)
			bottom = d.lastCut(top, limit)
		}
		if bottom <= top { // not even one strip fits on a page
			bottom = min(limit, d.end())
		}
		if bottom == d.restAt() && bottom < d.end() {
			bottom = d.withRest(top, bottom, limit)
		}
		out = append(out, page.Box{X: 0, Y: top, W: all.W, H: bottom - top})
		if !d.abreast || len(out) > 1 {
			first = room
		}
		top = bottom
	}
	return out
}

// withRest is where a window from top ends that would end at what is left at the
// cloth's end, so that no page holds nothing but that: less of it is drawn where
// that is still high enough for its size, else the last strip goes with it.
func (d *diagram) withRest(top, bottom, limit length.Length) length.Length {
	if room := limit - bottom; room >= d.b.style.Measure.Lead*length.Length(d.scale) {
		d.rest = room
		return d.end()
	}
	if before := d.lastCut(top, bottom-1); before > top {
		return before
	}
	return bottom
}

// lastCut is the last place between top and limit where the drawing may be
// broken: the end of a strip, or of the whole. It is top where there is none.
func (d *diagram) lastCut(top, limit length.Length) length.Length {
	if end := d.end(); end <= limit {
		return end
	}
	best := top
	if d.c.Root.Dir == cutting.Across {
		for _, s := range d.c.Root.Parts {
			if y := s.Y + s.H; y > top && y <= limit {
				best = y
			}
		}
	}
	return best
}

// pieces draws a section and all that is cut from it.
func (d *diagram) pieces(c *page.Canvas, s cutting.Section) {
	box := page.Box{X: s.X, Y: s.Y, W: s.W, H: s.H}
	if box.Y >= c.Window.Bottom() || box.Bottom() <= c.Window.Y {
		return
	}
	switch {
	case s.Placed >= 0:
		d.piece(c, s.Placed, box)
	case s.Leftover():
		d.leftover(c, box)
	}
	for _, part := range s.Parts {
		d.pieces(c, part)
	}
}

func (d *diagram) piece(c *page.Canvas, placed int, box page.Box) {
	st, p := d.b.style, d.c.Placed[placed]
	piece := d.f.Pieces[p.Piece]
	tint := st.Tints[p.Piece%len(st.Tints)]
	done := d.f.IsDone(piece)
	if done {
		tint = page.White
	}
	c.Rect(box, tint, st.Hair, fmt.Sprintf("piece %s #%d", piece.ID, d.nth[placed]))
	if paper, ok := c.Clip(box); done && ok && min(paper.W, paper.H) > st.Tick {
		c.Pen.Check(paper, st.Tick*3/4, "cut already")
		return
	}
	size := d.size(piece.Size) // as the tally says it, also where it lies turned
	if d.words(c, box, "size "+piece.ID, size) {
		return
	}
	if d.keyed[p.Piece] == "" {
		d.keyed[p.Piece] = keyLetter(0) // for now: newDiagram gives them out in order
	}
	if d.small != nil {
		d.small[p.Piece] = append(d.small[p.Piece], box)
	}
	d.words(c, box, "key "+piece.ID, d.keyed[p.Piece])
}

// size is a size as it stands in a piece.
func (d *diagram) size(z length.Size) string {
	words, known := d.sizes[z]
	if !known {
		words = d.b.v.Short(z)
		d.sizes[z] = words
	}
	return words
}

// words sets words into a piece, as large as running text where they fit.
func (d *diagram) words(c *page.Canvas, box page.Box, mark, words string) bool {
	st := d.b.style
	return c.Words(box, st.Body, mark, words) || c.Words(box, st.Measure, mark, words)
}

// leftover hatches what no piece is cut from, and names it where it is worth
// keeping.
func (d *diagram) leftover(c *page.Canvas, box page.Box) {
	st := d.b.style
	if min(box.W, box.H) < say.Keepable {
		c.Hatch(box, page.Waste, st.Hair, "waste")
		return
	}
	c.Hatch(box, page.Leftover, st.Hair, "leftover")
	size := length.Size{W: box.W, H: box.H}
	if !d.c.Bought && box.W == d.c.W && box.Y == d.restAt() {
		size.H = d.leftLong()
	}
	d.leftoverSize(c, box, "keep ", size, box.Bottom() <= d.end())
}

// leftoverSize writes the size of what is left over into it, with as many words as
// it has room for.
func (d *diagram) leftoverSize(c *page.Canvas, box page.Box, keep string, z length.Size, whole bool) {
	size := d.b.v.Size(z)
	wordings := []string{keep + size, size}
	if !whole {
		const part = ", not drawn whole"
		wordings = []string{keep + size + part, size + part, keep + size, size}
	}
	c.Label(box, d.b.style.Measure, "leftover size", wordings...)
}
