package plan

import (
	"fmt"
	"slices"
	"strings"

	"cutbinder/layout/length"
)

// drawn fills in what follows from a block's drawing: its finished size and, where
// none are written, its pieces. It checks what only the whole block shows.
func (r *reader) drawn(b *Block) {
	for _, key := range []string{"cell", "columns", "rows", "methods", "trim"} {
		if b.Stated(key) && !b.Stated("draw") {
			r.fault(b.Place(key), "leave it out, or draw the block", "%s is for a block that is drawn; block %q has no draw", key, b.ID)
		}
	}
	if b.draw.shape == nothing {
		return
	}
	if r.drawing(b); b.Drawing == nil {
		return
	}
	size := b.Drawing.Size()
	switch {
	case max(size.W, size.H) > maxSize:
		r.fault(b.Place("draw"), "", "the drawing comes to %s; expected sides of at most %s", r.plan.Units.FormatSize(size, length.WithUnit), r.plan.Units.Format(maxSize, length.WithUnit))
	case b.Finished == (length.Size{}):
		b.Finished = size
	case b.Finished != size:
		r.fault(b.Place("finished"), "leave finished out, or leave out what gives the cells' sizes",
			"finished: found %s; the block's drawing comes to %s", r.plan.Units.FormatSize(b.Finished, length.WithUnit), r.plan.Units.FormatSize(size, length.WithUnit))
	}
	if !b.Stated("pieces") {
		b.Pieces = r.plan.DrawnPieces(b)
	}
}

// DrawnPieces are the lines of pieces that follow from a block's drawing, in the
// order in which they first stand in it; nil where it isn't drawn. Cells that are
// the same when turned are one line, patches of a one-way fabric excepted.
func (p *Plan) DrawnPieces(b *Block) []*Piece {
	if b.Drawing == nil {
		return nil
	}
	var lines []*Piece
	at := map[string]*Piece{}
	for i := range b.Drawing.Cells {
		c := &b.Drawing.Cells[i]
		size, sources := p.Line(c)
		key := p.LineKey(&Piece{Unit: c.Unit, Finished: size, Sources: sources})
		line := at[key]
		if line == nil {
			line = &Piece{Node: Node{At: c.At, Keys: map[string]Pos{"finished": c.At, "each": c.At}}, Unit: c.Unit, Finished: size, Sources: sources}
			if rule := unitRules[c.Unit]; len(rule.methods) > 0 {
				line.Method, line.Trim = b.methods.of(c.Unit), b.trim && rule.trim
				if line.Method == "" {
					line.Method = rule.methods[0]
				}
			}
			at[key] = line
			lines = append(lines, line)
		}
		line.Count++
	}
	return lines
}

// LineKey is the same for lines that ask for the same patches or units, however
// they are written: "half-square 3 dusk, mix nightprints".
func (p *Plan) LineKey(line *Piece) string {
	z, sources := p.FinishedSize(line), line.Sources
	names := sourceNames(sources)
	switch {
	case line.Unit == Patch && z.H > z.W && !p.oneWay(sources[0]):
		z.W, z.H = z.H, z.W
	case line.Unit == HalfSquare:
		slices.Sort(names)
	case line.Unit == Hourglass:
		names = sourceNames(hourglassSources(aroundHourglass(sources)))
	}
	return fmt.Sprintf("%s %s %s", line.Unit, p.Units.FormatSize(z), strings.Join(names, ", "))
}

// FinishedSize is a line's finished size; of a patch whose cut size is stated it
// is that without the seams.
func (p *Plan) FinishedSize(line *Piece) length.Size {
	if line.Unit == Patch && line.Finished == (length.Size{}) {
		return length.Size{W: max(line.Cut.W-2*p.Seam, 0), H: max(line.Cut.H-2*p.Seam, 0)}
	}
	return line.Finished
}

// sourceNames are sources as texts.
func sourceNames(sources []Source) (names []string) {
	for _, s := range sources {
		names = append(names, s.String())
	}
	return names
}

// Line is the finished size and the sources that a line of pieces for a cell has:
// those of the cell set upright. A patch lies with its longer side across unless
// it comes from a one-way fabric, whose print stands upright in the block.
func (p *Plan) Line(c *Cell) (length.Size, []Source) {
	z := c.Size
	switch {
	case c.Unit == Geese && c.Turn%2 == 1,
		c.Unit == Patch && z.H > z.W && !p.oneWay(c.Sources[0]):
		z.W, z.H = z.H, z.W
	case c.Unit == Hourglass:
		return z, hourglassSources(c.Sources)
	}
	return z, c.Sources
}

// oneWay says whether a fabric, or any of a mix, is one-way.
func (p *Plan) oneWay(s Source) bool {
	return slices.ContainsFunc(p.FabricIDs(s), func(id string) bool { return p.Fabric(id).OneWay })
}

// hourglassSources are the sources of an hourglass line for four triangles around
// it: two where opposite ones are alike, three where one pair of opposites is,
// else the four from whichever comes first as a text.
func hourglassSources(s []Source) []Source {
	names := sourceNames(s)
	first := 0
	for i := 1; i < 4; i++ {
		if slices.Compare(turned(names, i), turned(names, first)) < 0 {
			first = i
		}
	}
	s, names = turned(s, first), turned(names, first)
	switch {
	case names[0] == names[2] && names[1] == names[3]:
		return s[:2]
	case names[0] == names[2]:
		return []Source{s[0], s[1], s[3]}
	case names[1] == names[3]:
		return []Source{s[1], s[0], s[2]}
	}
	return s
}

// turned is a ring begun at its i-th.
func turned[T any](ring []T, i int) []T { return slices.Concat(ring[i:], ring[:i]) }
