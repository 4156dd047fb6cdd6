// Package cutting turns a plan into the cutting of each of its fabrics: the list
// of pieces, where each lies on the cloth, and the steps that cut it.
//
// Pieces derives the cut list; Cut lays it out.
package cutting

import (
	"cutbinder/layout/length"
	"cutbinder/layout/plan"
	"cutbinder/layout/trade"
)

// A List is what is to be cut from one fabric.
type List struct {
	Fabric *plan.Fabric
	Pieces []*Piece // largest first
}

// A Piece is one cut size from one fabric, for all the uses it has.
type Piece struct {
	ID      string      // "dusk-1"
	Size    length.Size // as cut; W across the width where it may not be turned, else the shorter side
	Need    int         // how many to cut, spares counted: the sum over Uses
	MayTurn bool        // true for squares
	WOF     bool        // a strip across the whole usable width
	Late    bool        // waits until all else is cut: binding
	Uses    []Use       // at least one
}

// Spares is how many of Need are spares.
func (p *Piece) Spares() int {
	n := 0
	for _, u := range p.Uses {
		n += u.Spares
	}
	return n
}

// A Use is what some pieces of a size are for: one line of the plan.
type Use struct {
	At       plan.Pos    // the line of the plan it comes from
	Block    string      // the block's id; "" for pieces of no block
	For      string      // what pieces of no block are for: "side borders", "binding"
	Note     string      // what the plan says a block's pieces are for: "corners to flip"; may be ""
	Count    int         // how many, spares not counted
	Spares   int         // spares beside them
	Finished length.Size // of the unit or patch they make; zero where it isn't known
	Unit     plan.Unit
	Method   plan.Method
	Role     string         // what part of the unit: "goose", "sky", "centre", "corner"; "" where all are alike
	Into     trade.Diagonal // cut on the diagonal afterwards
	Units    int            // how many units of the line these pieces are for, over all fabrics of a mix
	Bias     bool           // the units' outer edges, or the binding, lie on the bias
	Turned   bool           // the method turns the print: on a one-way fabric it runs several ways
	NoTurn   bool           // the plan says that the piece isn't turned, whatever the fabric
	Cut      length.Size    // as the plan means it, across the cloth and along it, where Piece.Size may be turned from it; W is length.WOF for strips across the width
	Sum      trade.Sum      // how the cut size comes about
	Mix      string         // the mix that this fabric stands in for, or ""
	Joined   *Joined        // they are sewn end to end into longer strips, or nil
	Set      *Set           // they are sewn side by side into strip sets, or nil; one for all strips of a line
	LongSum  trade.Sum      // how the length of each joined strip comes about; of a backing its width, and its length along
}

// A Joined says what strips are sewn end to end for.
type Joined struct {
	Size   length.Size   // of each long strip, as it is cut from the joined one: W is its width, H its length; of a backing its whole size
	Count  int           // how many of them
	Loss   length.Length // what each join eats of the run
	Run    int           // uses of one fabric or mix with the same number, but 0, are joined into one run and cut from it in order
	Halved bool          // of a backing: one panel is cut in half along its length, a half for each side
	Down   bool          // of a backing: its seams run along the quilt's length, else along its width
	Seams  int           // of a backing
}

// A Set says what strips are sewn side by side for.
type Set struct {
	Sets     int           // how many strip sets
	Segments int           // how many segments the line asks for, over all sets
	Segment  length.Length // how long a segment is, as it is cut across a set
}

// A Fabric is one fabric laid out.
type Fabric struct {
	List
	Cloths []Cloth
	Short  []int          // for each piece, how many found no place
	Used   length.Length  // of the cloth to buy: the length that pieces are cut from
	Bound  length.Length  // no layout of this kind uses less
	Any    length.Length  // no edge-to-edge cutting of any kind uses less
	Proved bool           // no better layout of this kind: in length, or in what must be bought
	Buy    trade.Purchase // what to buy; zero where the shelf is to do
}

// A Cloth is one length of a fabric and how it is cut. X runs across the width
// from the left selvage, Y along the length from the squared end.
type Cloth struct {
	Name   string        // "to buy", "half yard", "fat quarter 2 of 3"
	W, L   length.Length // before squaring
	Square length.Length // taken off the first end to square it
	Bought bool
	Root   Section  // W wide; as long as is left after squaring, or as is used of a cloth to buy
	Placed []Placed // in the order they are cut
}

// A Section is a rectangle of cloth and how it is cut on: a tree of edge-to-edge
// cuts. Parts fill it without a gap.
type Section struct {
	X, Y, W, H length.Length
	Dir        Dir
	Parts      []Section
	Placed     int // index into Cloth.Placed, or -1: divided, or left over
	Number     int // the number of the cut that frees it, on the diagram; 0 for cuts inside strips
}

// Dir is how a section is divided.
type Dir int

// How a section is divided.
const (
	None   Dir = iota
	Across     // by cuts across the width; parts lie along y
	Along      // by cuts along the length; parts lie along x
)

// A Placed is one piece where it lies.
type Placed struct {
	Piece      int // index into List.Pieces
	Use        int // index into the piece's Uses
	Spare      bool
	X, Y, W, H length.Length // as it lies: turned pieces have their sides swapped
}

// Leftover says that a section is neither a piece nor divided.
func (s Section) Leftover() bool { return s.Dir == None && s.Placed < 0 }
