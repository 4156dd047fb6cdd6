// Package pack decides how rectangles are cut from cloth with edge-to-edge cuts.
//
// It knows whole numbers only: callers choose the unit. Start with Solve; Check
// verifies any answer without trusting how it was found.
package pack

import "context"

// A Kind says how involved the cuts of a layout may be. Each kind contains the
// one before.
type Kind int

// The kinds of layout.
const (
	// Strips: strips across the width; each sub-cut along itself; a piece
	// shorter than its strip is trimmed.
	Strips Kind = iota
	// Stacks: as Strips, and a column inside a strip may hold several rows.
	Stacks
	// Thrifty: any edge-to-edge plan of at most five stages, lengthwise
	// sections included.
	Thrifty
)

// An Item is a size to be cut: W across the cloth's width, H along its length,
// Count of them. Turn says that a piece may be turned by a quarter.
type Item struct {
	W, H  int64
	Count int
	Turn  bool
}

// A Cloth is a length of cloth at hand: W wide, L long.
type Cloth struct{ W, L int64 }

// A Problem is what is to be cut and from what. With Given empty the cloth is
// bought: Width wide and as short as can be. Otherwise the pieces come from the
// given cloths, fewest of them, and what doesn't fit is told in Result.Short.
type Problem struct {
	Kind  Kind
	Items []Item
	Width int64
	Given []Cloth
	// Purchase turns a used length into what must be bought for it (the shop's
	// steps), so that layouts that cost the same may be chosen by ease. Nil
	// stands for the length itself. It must not fall as its argument rises.
	Purchase func(used int64) int64
	// Effort is how much work may be spent, in the engine's own units: see
	// EffortPerSecond. The answer depends on it and never on the clock.
	Effort int64
}

// Dir is the direction in which a Section is divided.
type Dir int

// How a section is divided.
const (
	None   Dir = iota // not divided: a piece, or leftover
	Across            // by cuts across the width (parallel to x): parts lie above one another along y
	Along             // by cuts along the length (parallel to y): parts lie side by side along x
)

// A Section is a rectangle of cloth, and how it is cut on. X runs across the
// width from the left selvage, Y along the length from the first cut end.
// Parts fill their parent without a gap, in order of x or y.
type Section struct {
	X, Y, W, H int64
	Dir        Dir
	Parts      []Section
	Item       int  // index into Problem.Items, or -1 where it isn't a piece
	Turned     bool // the piece lies turned by a quarter
}

// A Result is a layout and what is known about how good it is.
type Result struct {
	Cloths []Section // one a given cloth, in order (unused ones undivided); or the one bought, as long as used
	Short  []int     // for each item, how many found no place
	Used   int64     // length used of the cloth bought
	Bound  int64     // no layout of this kind is shorter than this
	Any    int64     // no edge-to-edge cutting of any kind is shorter than this
	Proved bool      // no better layout of this kind exists in what counts: length, or purchase
	Work   int64     // effort spent
}

// Solve finds the best layout it can within the problem's effort. It stops early
// with ctx's error when ctx is done.
var _ = context.Background
