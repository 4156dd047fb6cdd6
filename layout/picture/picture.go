// Package picture works out what a drawn block and a whole quilt look like: every
// patch as a polygon, with what it is sewn of.
//
// Block gives a block's picture, Quilt the quilt's: blocks in rows or on point,
// turned as the plan says, with sashing and borders. Check tells where a plan
// draws one thing and says another.
//
// Coordinates are halves of a length unit, from the top left corner, y downward,
// so that the middle of any side is a whole number. Whatever involves √2, as
// everything on point does, is rounded to the nearest.
package picture

import (
	"slices"

	"cutbinder/layout/length"
	"cutbinder/layout/plan"
	"cutbinder/layout/trade"
)

// A Point is a place in a picture, in halves of a length unit.
type Point struct{ X, Y length.Length }

// A Picture is patches that fill a rectangle of W x H, in halves of a length unit.
type Picture struct {
	W, H    length.Length
	Patches []Patch
}

// A Patch is one piece of cloth as it shows in the finished quilt.
type Patch struct {
	Points   []Point // its corners, in order
	Block    string  // the block's id; "" between and round the blocks
	For      string  // what a patch of no block is: "sashing", "border 1"
	Source   plan.Source
	Fabric   string // the fabric's id; of a mix the one whose turn it is; "" for a block that isn't drawn
	Unit     plan.Unit
	Finished length.Size // of the patch or unit, as the block's line of pieces has it
	Role     string      // what part of the unit: trade.Goose; "" where all are alike
}

// Size is the picture's finished size, rounded to whole length units.
func (p *Picture) Size() length.Size { return length.Size{W: (p.W + 1) / 2, H: (p.H + 1) / 2} }

// Area is twice a patch's area, in quarters of a square length unit.
func (p Patch) Area() int64 {
	var sum int64
	for i, a := range p.Points {
		b := p.Points[(i+1)%len(p.Points)]
		sum += int64(a.X)*int64(b.Y) - int64(b.X)*int64(a.Y)
	}
	return max(sum, -sum)
}

// Block is a block's picture, or nil where it isn't drawn. Patches of a mix are
// its fabrics in turn.
func Block(p *plan.Plan, b *plan.Block) *Picture {
	if b.Drawing == nil {
		return nil
	}
	size := b.Drawing.Size()
	pic := &Picture{W: 2 * size.W, H: 2 * size.H}
	for i := range b.Drawing.Cells {
		c := &b.Drawing.Cells[i]
		for _, patch := range patchesOf(c, corner(b.Drawing, c)) {
			patch.Block = b.ID
			patch.Finished, _ = p.Line(c)
			pic.Patches = append(pic.Patches, patch)
		}
	}
	pic.deal(p)
	return pic
}

// corner is the top left of a cell.
func corner(d *plan.Drawing, c *plan.Cell) (at Point) {
	for _, w := range d.Columns[:c.Column] {
		at.X += 2 * w
	}
	for _, h := range d.Rows[:c.Row] {
		at.Y += 2 * h
	}
	return at
}

// A shape is a patch of a unit that fills a square from 0 to 2 each way: corners,
// source, role.
type shape struct {
	corners []Point
	source  int
	role    string
}

// The shapes of the units, as they stand unturned.
var shapes = map[plan.Unit][]shape{
	plan.Patch: {{[]Point{{0, 0}, {2, 0}, {2, 2}, {0, 2}}, 0, ""}},
	plan.HalfSquare: {
		{[]Point{{0, 0}, {2, 0}, {0, 2}}, 0, ""},
		{[]Point{{2, 0}, {2, 2}, {0, 2}}, 1, ""}},
	plan.Hourglass: {
		{[]Point{{0, 0}, {2, 0}, {1, 1}}, 0, ""},
		{[]Point{{2, 0}, {2, 2}, {1, 1}}, 1, ""},
		{[]Point{{2, 2}, {0, 2}, {1, 1}}, 2, ""},
		{[]Point{{0, 2}, {0, 0}, {1, 1}}, 3, ""}},
	plan.SquareInSquare: {
		{[]Point{{1, 0}, {2, 1}, {1, 2}, {0, 1}}, 0, trade.Centre},
		{[]Point{{0, 0}, {1, 0}, {0, 1}}, 1, trade.Corner},
		{[]Point{{1, 0}, {2, 0}, {2, 1}}, 1, trade.Corner},
		{[]Point{{2, 1}, {2, 2}, {1, 2}}, 1, trade.Corner},
		{[]Point{{1, 2}, {0, 2}, {0, 1}}, 1, trade.Corner}},
}

// patchesOf are a cell's patches.
func patchesOf(c *plan.Cell, at Point) (out []Patch) {
	unit := shapes[c.Unit]
	switch {
	case c.Unit == plan.Geese:
		return geese(c, at)
	case c.Unit == plan.HalfSquare && c.Turn == 1: // the left one lies below
		unit = []shape{
			{[]Point{{0, 0}, {2, 2}, {0, 2}}, 0, ""},
			{[]Point{{0, 0}, {2, 0}, {2, 2}}, 1, ""}}
	}
	for _, s := range unit {
		patch := Patch{Source: c.Sources[s.source], Unit: c.Unit, Role: s.role}
		for _, q := range s.corners {
			patch.Points = append(patch.Points, Point{at.X + q.X*c.Size.W, at.Y + q.Y*c.Size.H})
		}
		out = append(out, patch)
	}
	return out
}

// geese are the patches of a goose. Its beak is at a right angle, so a goose
// wider than twice its height is cut off at the sides: it is drawn as stitching
// and flipping makes it, with a blunt beak.
func geese(c *plan.Cell, at Point) []Patch {
	w, h := 2*c.Size.W, 2*c.Size.H
	if c.Turn%2 == 1 {
		w, h = h, w
	}
	goose := []Point{{0, h}, {h, 0}, {w - h, 0}, {w, h}}
	if w == 2*h {
		goose = []Point{{0, h}, {h, 0}, {w, h}}
	}
	patches := []Patch{
		{Points: goose, Source: c.Sources[0], Role: trade.Goose},
		{Points: []Point{{0, 0}, {h, 0}, {0, h}}, Source: c.Sources[1], Role: trade.Sky},
		{Points: []Point{{w - h, 0}, {w, 0}, {w, h}}, Source: c.Sources[1], Role: trade.Sky},
	}
	for i := range patches {
		patches[i].Unit = plan.Geese
		patches[i].Points = turn(patches[i].Points, w, h, c.Turn)
		for k := range patches[i].Points {
			patches[i].Points[k].X += at.X
			patches[i].Points[k].Y += at.Y
		}
	}
	return patches
}

// turn turns points that lie in a rectangle of w x h by quarters clockwise; they
// then lie in one whose top left is 0, 0 as well.
func turn(points []Point, w, h length.Length, quarters int) []Point {
	out := slices.Clone(points)
	for range quarters % 4 {
		for i, q := range out {
			out[i] = Point{h - q.Y, q.X}
		}
		w, h = h, w
	}
	return out
}

// deal gives patches of a mix its fabrics in turn.
func (p *Picture) deal(of *plan.Plan) {
	next := map[string]int{}
	for i := range p.Patches {
		s := p.Patches[i].Source
		if s.ID == "" {
			continue
		}
		p.Patches[i].Fabric = s.ID
		if ids := of.FabricIDs(s); s.Mix && len(ids) > 0 {
			p.Patches[i].Fabric = ids[next[s.ID]%len(ids)]
			next[s.ID]++
		}
	}
}
