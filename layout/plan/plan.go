// Package plan reads a cut plan: what a designer or a maker wrote about a quilt,
// checked, with the place of every value kept for messages.
//
// Start with Read, which gives a Plan or every fault of the file.
package plan

import (
	"cutbinder/layout/length"
	"cutbinder/layout/pack"
)

// A Plan is a whole cut plan after reading: names are resolved, defaults filled
// in, and every length is exact.
type Plan struct {
	Node
	Title    string
	By       string
	Version  string
	Date     string
	Mark     string // the plan's mark on codes, where the plan states one
	Note     string
	Language string // BCP 47, for the PDF; "en" by default
	Font     string // path of a TrueType face for scripts ours lacks, as written

	Finished length.Size   // the quilt's finished size; zero where not stated
	Units    length.System // how bare numbers were read and sizes are printed
	Seam     length.Length // seam allowance
	CutStep  length.Length // computed cut sizes are rounded up to multiples of this
	Fabrics  []*Fabric     // in the order written
	Mixes    []*Mix        // in the order written
	Blocks   []*Block      // in the order written
	Pieces   []*Piece      // pieces of no block
	Setting  *Setting      // on-point setting, or nil
	Sashing  *Sashing      // sashing between blocks, or nil
	Borders  []*Border     // from the inside out
	Binding  *Binding      // or nil
	Backing  *Backing      // or nil
	Batting  *Batting      // or nil
	Allow    Allow         // what is added for safety
	BagBy    []BagKey      // what parts one bag from another
	Labels   Labels        // the label sheet
	Paper    Paper         // the paper of the binder
	Hand     Hand          // the hand that holds the cutter
	Cutting  pack.Kind     // how involved cuts may be
	Ruler    length.Size   // longest and widest cut in one go: W is its width, H its length
	Mat      length.Size   // W is the shorter side
	Claims   Claims        // what the writer believes of the whole plan
	Accept   []Accepted    // doubts the writer has looked at
	Quilt    [][]Set       // the quilt's rows of blocks, where the plan lays it out
	letters  map[string]Source
}

// A Node is where something stands in the plan: its own place and those of its
// keys, so that a message about any value can say where that value is.
type Node struct {
	At   Pos
	Keys map[string]Pos // the value's place by key
}

// Place is the place of a key's value, or of the whole where the key isn't written.
func (n Node) Place(key string) Pos {
	if p, ok := n.Keys[key]; ok {
		return p
	}
	return n.At
}

// Stated says whether the plan writes the key.
func (n Node) Stated(key string) bool { _, ok := n.Keys[key]; return ok }

// A Fabric is one cloth of the plan.
type Fabric struct {
	Node
	ID        string
	Name      string // the id where no name is written
	Colour    string // "#rrggbb", or ""
	Width     length.Length
	Have      []Cloth // what is on the shelf, one entry a length, counts written out
	OneWay    bool    // pieces are never turned
	Prewash   bool
	Flannel   bool          // shrinks more than plain-woven cotton
	Shrink    Shrinkage     // expected in the wash; counts only where Prewash is set
	Bleeds    Bleeds        // what is known of its dye
	Note      string        //
	Done      bool          // all of it is cut already
	DoneSizes []DoneSize    // cut sizes that are, where it is not all
	Cutting   pack.Kind     // the plan's, unless the fabric states its own
	Step      length.Length // the shop cuts this fabric in steps of this
	Claims    Claims
}

// A Cloth is one length at hand. W is across the cloth, H along it.
type Cloth struct {
	At   Pos
	Name string // "half yard", "fat quarter 2 of 3", "17 1/2 x 42"
	length.Size
	// FullWidth says that the width was not written, so that it is the fabric's.
	FullWidth bool
	// Turned says that its length was written first, as the trade writes cuts of full
	// width.
	Turned bool
}

// Percent is in hundredths of a percent: 500 is 5 %.
type Percent int

// Shrinkage is what washing takes off the length and the width.
type Shrinkage struct{ Length, Width Percent }

// Bleeds is what is known of a fabric's dye.
type Bleeds int

// What may be known of a dye.
const (
	BleedsUnstated Bleeds = iota
	BleedsUnknown
	BleedsLikely
	BleedsNo
)

// A Mix is a set of fabrics that pieces may come from.
type Mix struct {
	Node
	ID      string
	Fabrics []string // fabric ids, as written
}

// A Block is one design, made Make times.
type Block struct {
	Node
	ID       string
	Name     string
	Make     int
	Finished length.Size // zero where not stated
	Pieces   []*Piece    // worked out from Drawing where none are written
	Drawing  *Drawing    // or nil
	Claims   Claims

	letters       map[string]Source
	cell          length.Size
	columns, rows []length.Length
	methods       methods
	trim          bool
	draw          value
}

// A Unit is what a line of pieces is sewn into.
type Unit string

// The units.
const (
	Patch          Unit = "patch"
	HalfSquare     Unit = "half-square"      // two triangles make a square
	QuarterSquare  Unit = "quarter-square"   // a triangle whose long side lies on the straight grain
	Hourglass      Unit = "hourglass"        // four triangles make a square
	Geese          Unit = "geese"            // one goose and two sky triangles
	SquareInSquare Unit = "square-in-square" // a centre square and four corners
	SideSetting    Unit = "side-setting"     // triangles that fill the edge of an on-point quilt
	CornerSetting  Unit = "corner-setting"   // triangles that fill its corners
	Strip          Unit = "strip"            // strips across the whole width
	StripSet       Unit = "strip-set"        // strips sewn side by side, then cut across
)

// A Method is how a unit is made, where the trade has several ways.
type Method string

// The methods.
const (
	TwoAtATime    Method = "two-at-a-time"
	FourAtATime   Method = "four-at-a-time"
	EightAtATime  Method = "eight-at-a-time"
	StitchAndFlip Method = "stitch-and-flip"
)

// A Piece is one line of pieces: a patch, or a unit from which patches follow.
type Piece struct {
	Node
	Unit     Unit
	Method   Method        // the unit's usual one where not stated; "" for patches
	Trim     bool          // cut oversize, trimmed after sewing
	Finished length.Size   // zero where the cut size is stated; W is length.WOF for strips across the width
	Cut      length.Size   // zero where the finished size is stated; W may be length.WOF, whichever side it was written for
	Count    int           // how many a block (each), or in all for a loose piece (need)
	Sources  []Source      // as many as the unit has roles, the only one written standing for all: one for patches; by role for units: half-square A and B; geese: goose, sky; hourglass: 2 to 4; square-in-square: centre, corners
	For      string        // what a loose piece is for
	Join     bool          // may be joined from strips
	NoTurn   bool          // never turned, whatever the fabric says
	Strips   []SetStrip    // of a strip set, in sewing order
	Segment  length.Length // of a strip set: the finished length that is cut off it
	Claims   Claims
}

// A Source is where pieces come from: a fabric, or a mix of fabrics.
type Source struct {
	At  Pos
	ID  string
	Mix bool
}

// A SetStrip is one strip of a strip set.
type SetStrip struct {
	At       Pos
	Finished length.Length // its finished width
	Source   Source
}

// A Setting is an on-point setting: Across by Down blocks stand on their corners.
type Setting struct {
	Node
	Across, Down int
	Block        length.Length // finished side of a block
	Sides        Source        // side triangles
	Corners      Source        // corner triangles; Sides where not stated
	Alternate    *Source       // plain squares between the blocks, or nil
	Generous     length.Length // added to setting triangles' squares so that they can be trimmed
}

// Sashing is the strips between blocks, and the squares where they cross.
type Sashing struct {
	Node
	Across, Down int
	Block        length.Size   // finished
	Width        length.Length // finished
	Frame        bool          // strips stand round the outside too
	Source       Source
	Cornerstones *Source // or nil: sashes in rows run through
}

// A Border goes round what is inside it.
type Border struct {
	Node
	Width  length.Length // finished
	Source Source
	Mitred bool        // else butted: sides first, then top and bottom
	Join   bool        // joined from strips across the width; else cut in one length
	Around length.Size // finished size of what it goes round; worked out from the quilt's where not stated
	For    string      // its name; "border 1" where not stated
}

// A Binding finishes the edge.
type Binding struct {
	Node
	Source   Source
	Strip    length.Length // cut width
	Bias     bool
	Straight bool          // straight joins instead of diagonal ones
	Tail     length.Length // added to the perimeter for joining the ends
}

// A Backing is the quilt's back.
type Backing struct {
	Node
	Source   Source
	Overhang length.Length // a side
	Seams    SeamDir
}

// A SeamDir says which way a backing's seams run.
type SeamDir int

// Seam directions.
const (
	SeamsEither SeamDir = iota // whichever takes less
	SeamsAcross                // along the quilt's width
	SeamsDown                  // along the quilt's length
)

// A Batting is the layer in between.
type Batting struct {
	Node
	Overhang length.Length // a side
}

// Allow is what is added for safety.
type Allow struct {
	Node
	Spare    Percent       // extra pieces of every size
	Squaring length.Length // lost straightening, a length of fabric
	Extra    Percent       // padding on what to buy
	Step     length.Length // shops cut in steps of this
	Retrue   int           // the edge is squared again after this many strips; 0 never
}

// A BagKey is one thing by which bags are parted.
type BagKey string

// The bag keys.
const (
	ByBlock  BagKey = "block"
	BySize   BagKey = "size"
	ByFabric BagKey = "fabric"
)

// Labels says what sheet the labels are printed on.
type Labels struct {
	Node
	Stock    string // as written: "2 5/8 x 1 in", "plain"; "" for the paper's usual one
	NoGutter bool   // picks between sheets that share a size
	PerBag   int    // labels a bag; 1 by default
	Sheet    *LabelSheet
}

// A LabelSheet is a sheet of one's own by its eight numbers.
type LabelSheet struct {
	Columns, Rows        int
	Width, Height        length.Length // of a label
	Left, Top            length.Length // of the first label
	StepAcross, StepDown length.Length // from one label to the next
}

// Paper is a paper size.
type Paper string

// The papers.
const (
	Letter Paper = "letter"
	A4     Paper = "a4"
)

// Hand is the hand that holds the cutter.
type Hand string

// The hands.
const (
	RightHand Hand = "right"
	LeftHand  Hand = "left"
)

// Claims are what the writer believes; zero where nothing is claimed.
type Claims struct {
	Node
	Buy    length.Length // of a fabric
	Strips int           // of a fabric or a piece
	Need   int           // of a piece
	Pieces int           // of a block or the plan
}

// Accepted is a doubt the writer has looked at, and why it stands.
type Accepted struct {
	At  Pos
	ID  string
	Why string
}
