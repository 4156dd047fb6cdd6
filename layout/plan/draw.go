package plan

import "cutbinder/layout/length"

// A Drawing is a block drawn in cells: a grid of columns and rows, and the cells
// that fill it without a gap, from the top left.
type Drawing struct {
	Columns, Rows []length.Length // finished widths and heights
	Cells         []Cell
}

// A Cell is one patch or unit of a drawing. It covers one square of the grid or a
// rectangle of them.
//
// It is written as a word: the name of a fabric or mix, or two with a sign
// between that looks like the seams (see signs). "<" stands for more of the cell
// at the left, "^" for more of the cell above.
type Cell struct {
	At           Pos
	Word         string // as written
	Column, Row  int    // of its top left, counted from 0
	Across, Down int    // how many columns and rows it covers
	Size         length.Size
	Unit         Unit
	// Sources are the fabrics by role, as in Piece.Sources. Of a half-square the
	// left one comes first, of an hourglass the four go clockwise from the top.
	Sources []Source
	// Turn says how it lies: of geese, how many quarters clockwise the beak is
	// turned from pointing up; of a half-square 1 where the seam falls to the right
	// and 0 where it rises.
	Turn int
}

// A Set is a block in its place in the quilt, Turn quarters clockwise from how it
// is drawn.
type Set struct {
	At    Pos
	Block string
	Turn  int
}

// String is the set as plans write it: "A", "A>", "A>>", "A<".
func (s Set) String() string { return s.Block + [...]string{"", ">", ">>", "<"}[s.Turn] }

// Size is the drawing's finished size.
func (d *Drawing) Size() (z length.Size) {
	for _, w := range d.Columns {
		z.W += w
	}
	for _, h := range d.Rows {
		z.H += h
	}
	return z
}

// A sign is what stands between names in a cell and looks like the seams.
type sign struct {
	text string
	unit Unit
	turn int
	most int // names it may stand between; two at least
}

// signs are all signs, the longer ones first.
var signs = []sign{
	{`/\`, Geese, 0, 2}, {`\/`, Geese, 2, 2}, {"><", Hourglass, 0, 4}, {"<>", SquareInSquare, 0, 2},
	{"/", HalfSquare, 0, 2}, {`\`, HalfSquare, 1, 2}, {">", Geese, 1, 2}, {"<", Geese, 3, 2},
}

// signLetters are the characters that signs are made of.
const signLetters = `/\<>`

// methods say how the units of a drawing are made; "" is the usual way.
type methods struct{ halfSquare, geese, squareInSquare Method }

// of is a unit's method.
func (m methods) of(u Unit) Method {
	switch u {
	case HalfSquare:
		return m.halfSquare
	case Geese:
		return m.geese
	case SquareInSquare:
		return m.squareInSquare
	}
	return ""
}

// methodsTable is how the units of a drawing are made.
var methodsTable = table[methods]{"methods", "How the units of a drawing are made.", []field[methods]{
	choiceField("half-square", "How its half-squares are made.", methodsOf(HalfSquare), func(m *methods) *Method { return &m.halfSquare }).by("two-at-a-time"),
	choiceField("geese", "How its geese are made.", methodsOf(Geese), func(m *methods) *Method { return &m.geese }).by("four-at-a-time"),
	choiceField("square-in-square", "How its squares in squares are made.", methodsOf(SquareInSquare), func(m *methods) *Method { return &m.squareInSquare }).by("from triangles"),
}}

// methodsOf are the methods of a unit that can be written.
func methodsOf(u Unit) (all []option[Method]) {
	for _, m := range unitRules[u].methods {
		if m != "" {
			all = append(all, option[Method]{string(m), m})
		}
	}
	return all
}
