package picture

import (
	"fmt"

	"cutbinder/layout/length"
	"cutbinder/layout/plan"
)

// Quilt is the picture of the whole quilt where the plan lays it out: by its rows
// of blocks or, with one block only, by its setting or sashing. There is none
// where it doesn't, where a block has no size, or where the blocks don't fit
// together, which the doubts say, and none of blocks on point that are sashed.
func Quilt(p *plan.Plan) (*Picture, plan.Problems) {
	c := &composer{plan: p, rows: p.Quilt, pic: &Picture{}}
	if len(c.rows) == 0 {
		c.rows = uniform(p)
	}
	sashed := p.Setting != nil && p.Sashing != nil // blocks on point with a sash round each
	if len(c.rows) == 0 || sashed || !c.sized() {
		return nil, nil
	}
	c.coarse = c.cells() > maxCells
	switch {
	case p.Setting != nil:
		c.onPoint(p.Setting)
	default:
		c.straight(p.Sashing)
	}
	if len(c.problems) > 0 {
		return nil, c.problems
	}
	c.borders()
	c.pic.deal(p)
	return c.pic, nil
}

// maxCells bounds the cells that a quilt's picture shows. Of a quilt of more the
// blocks are shown as if they weren't drawn.
const maxCells = 20_000

// cells counts the drawn cells of all blocks in the rows.
func (c *composer) cells() (n int) {
	for _, row := range c.rows {
		for _, s := range row {
			if d := c.plan.Block(s.Block).Drawing; d != nil {
				n += len(d.Cells)
			}
		}
	}
	return n
}

// uniform are the rows of a quilt of one block only, whose setting or sashing
// says how many stand across and down.
func uniform(p *plan.Plan) [][]plan.Set {
	across, down := 0, 0
	switch {
	case len(p.Blocks) != 1:
	case p.Setting != nil:
		across, down = p.Setting.Across, p.Setting.Down
	case p.Sashing != nil:
		across, down = p.Sashing.Across, p.Sashing.Down
	}
	var rows [][]plan.Set
	for range down {
		row := make([]plan.Set, across)
		for i := range row {
			row[i].Block = p.Blocks[0].ID
		}
		rows = append(rows, row)
	}
	return rows
}

// A composer puts a quilt together.
type composer struct {
	plan     *plan.Plan
	rows     [][]plan.Set
	pic      *Picture
	coarse   bool // blocks are too many or too fine to be drawn
	problems plan.Problems
}

// doubt notes that the quilt's rows can't be as they are written.
func (c *composer) doubt(at plan.Pos, hint, format string, args ...any) {
	c.problems = append(c.problems, plan.Problem{At: at, Level: plan.Doubt, ID: "quilt-rows", What: fmt.Sprintf(format, args...), Hint: hint})
}

// sized says whether the sizes of all blocks in the rows are known.
func (c *composer) sized() bool {
	for _, row := range c.rows {
		for _, s := range row {
			if c.size(s) == (length.Size{}) {
				return false
			}
		}
	}
	return true
}

// size is a block's finished size as it lies.
func (c *composer) size(s plan.Set) length.Size {
	z := c.plan.Block(s.Block).Finished
	if s.Turn%2 == 1 {
		z.W, z.H = z.H, z.W
	}
	return z
}

// add adds a patch that belongs to no block.
func (c *composer) add(what string, source plan.Source, points ...Point) {
	c.pic.Patches = append(c.pic.Patches, Patch{Points: points, For: what, Source: source})
}

// rect adds a rectangle that belongs to no block.
func (c *composer) rect(what string, source plan.Source, x, y, w, h length.Length) {
	c.add(what, source, rectangle(x, y, w, h)...)
}

func rectangle(x, y, w, h length.Length) []Point {
	return []Point{{x, y}, {x + w, y}, {x + w, y + h}, {x, y + h}}
}

// set adds a block's patches, each point placed by a function.
func (c *composer) set(s plan.Set, place func(Point) Point) {
	b := c.plan.Block(s.Block)
	var pic *Picture
	if !c.coarse {
		pic = Block(c.plan, b)
	}
	if pic == nil {
		w, h := 2*b.Finished.W, 2*b.Finished.H
		pic = &Picture{W: w, H: h, Patches: []Patch{{Points: rectangle(0, 0, w, h), Block: b.ID}}}
	}
	for _, patch := range pic.Patches {
		patch.Points = turn(patch.Points, pic.W, pic.H, s.Turn)
		for i, q := range patch.Points {
			patch.Points[i] = place(q)
		}
		c.pic.Patches = append(c.pic.Patches, patch)
	}
}

// straight sets blocks in rows, with sashing where there is some.
func (c *composer) straight(s *plan.Sashing) {
	if !c.gridFits(s) {
		return
	}
	var sash, frame length.Length
	if s != nil {
		sash = 2 * s.Width
		if s.Frame {
			frame = sash
		}
	}
	y := frame
	for j, row := range c.rows {
		x, high := frame, 2*c.size(row[0]).H
		for _, set := range row {
			at := Point{x, y}
			c.set(set, func(q Point) Point { return Point{at.X + q.X, at.Y + q.Y} })
			x += 2*c.size(set).W + sash
		}
		if width := x - sash + frame; j == 0 {
			c.pic.W = width
		} else if width != c.pic.W {
			c.doubt(row[0].At, "", "the row of blocks comes to %s; the first row to %s", c.say(width), c.say(c.pic.W))
			return
		}
		y += high + sash
	}
	c.pic.H = y - sash + frame
	if s != nil {
		c.sashes(s)
	}
}

// say is a length of the picture in words.
func (c *composer) say(l length.Length) string {
	return c.plan.Units.Format(l/2, length.WithUnit)
}

// gridFits checks that the rows are as many and as long as the sashing says, and
// that the blocks of a row are as high as each other.
func (c *composer) gridFits(s *plan.Sashing) bool {
	if s != nil && len(c.rows) != s.Down {
		c.doubt(c.rows[0][0].At, "", "the quilt has %d rows of blocks; the sashing goes between %d", len(c.rows), s.Down)
		return false
	}
	for _, row := range c.rows {
		if s != nil && len(row) != s.Across {
			c.doubt(row[0].At, "", "the row has %d blocks; the sashing goes between %d", len(row), s.Across)
			return false
		}
		for _, set := range row {
			z := c.size(set)
			if s != nil && z != s.Block {
				c.doubt(set.At, "", "block %q is %s finished; the sashing is for blocks of %s", set.Block, c.plan.Units.FormatSize(z, length.WithUnit), c.plan.Units.FormatSize(s.Block, length.WithUnit))
				return false
			}
			if z.H != c.size(row[0]).H {
				c.doubt(set.At, "", "block %q is %s high; the row's first block is %s", set.Block, c.say(2*z.H), c.say(2*c.size(row[0]).H))
				return false
			}
		}
	}
	return true
}

// sashes adds the strips between the blocks: whole strips between rows, or with
// cornerstones one for each block.
func (c *composer) sashes(s *plan.Sashing) {
	w, bw, bh := 2*s.Width, 2*s.Block.W, 2*s.Block.H
	first, last := 1, 0 // of the strips counted from the outer edge
	if s.Frame {
		first, last = 0, 1
	}
	edge := func(i int, block length.Length) length.Length { // where strip i begins
		return length.Length(i)*(block+w) - length.Length(first)*w
	}
	for i := first; i < s.Across+last; i++ {
		for j := range s.Down {
			c.rect("sashing", s.Source, edge(i, bw), edge(j, bh)+w, w, bh)
		}
	}
	for j := first; j < s.Down+last; j++ {
		if s.Cornerstones == nil {
			c.rect("sashing", s.Source, 0, edge(j, bh), c.pic.W, w)
			continue
		}
		for i := range s.Across {
			c.rect("sashing", s.Source, edge(i, bw)+w, edge(j, bh), bw, w)
		}
		for i := first; i < s.Across+last; i++ {
			c.rect("cornerstones", *s.Cornerstones, edge(i, bw), edge(j, bh), w, w)
		}
	}
}

// borders goes round what is there, border by border.
func (c *composer) borders() {
	for _, b := range c.plan.Borders {
		w := 2 * b.Width
		for i := range c.pic.Patches {
			for k := range c.pic.Patches[i].Points {
				c.pic.Patches[i].Points[k].X += w
				c.pic.Patches[i].Points[k].Y += w
			}
		}
		in := Point{c.pic.W, c.pic.H}
		c.pic.W, c.pic.H = in.X+2*w, in.Y+2*w
		if b.Mitred {
			c.mitred(b, w)
			continue
		}
		c.rect(b.For, b.Source, 0, w, w, in.Y)
		c.rect(b.For, b.Source, w+in.X, w, w, in.Y)
		c.rect(b.For, b.Source, 0, 0, c.pic.W, w)
		c.rect(b.For, b.Source, 0, w+in.Y, c.pic.W, w)
	}
}

// mitred adds a border whose corners are seamed on the diagonal.
func (c *composer) mitred(b *plan.Border, w length.Length) {
	W, H := c.pic.W, c.pic.H
	c.add(b.For, b.Source, Point{0, 0}, Point{W, 0}, Point{W - w, w}, Point{w, w})
	c.add(b.For, b.Source, Point{W, 0}, Point{W, H}, Point{W - w, H - w}, Point{W - w, w})
	c.add(b.For, b.Source, Point{W, H}, Point{0, H}, Point{w, H - w}, Point{W - w, H - w})
	c.add(b.For, b.Source, Point{0, H}, Point{0, 0}, Point{w, w}, Point{w, H - w})
}
