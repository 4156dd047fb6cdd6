package pack

import (
	"errors"
	"fmt"
)

// A Kind says how involved the cuts of a layout may be. Each kind contains the
// one before.
type Kind int

// The kinds of layout.
const (
	// Strips: strips across the width; each sub-cut along itself; a piece
	// shorter than its strip is trimmed. At most three stages.
	Strips Kind = iota
	// Stacks: as Strips, and a column inside a strip may hold several rows, of
	// one piece each, trimmed in width where they are narrower than the column.
	// At most four stages.
	Stacks
	// Thrifty: any edge-to-edge plan of at most five stages; the first cut may
	// also run along the length.
	Thrifty
)

// String gives the kind's name as plans spell it.
func (k Kind) String() string {
	switch k {
	case Strips:
		return "strips"
	case Stacks:
		return "stacks"
	case Thrifty:
		return "thrifty"
	}
	return fmt.Sprintf("kind %d", int(k))
}

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
	// stands for the length itself. It must not fall as its argument rises, nor
	// give less than its argument.
	Purchase func(used int64) int64
	// Sold is what the shop sells for a used length, where Purchase also prefers
	// some layouts for which it sells the same: that is worth little work to an
	// engine to which the effort is left. Nil stands for Purchase.
	Sold func(used int64) int64
	// Effort is how much work may be spent, in the engine's own units: see
	// EffortPerSecond. Nought leaves it to the engine: a second's at
	// most, less where nothing comes of it. Thrifty may take half as much
	// again. The answer depends on it and never on the clock.
	Effort int64
	// Brief is for questions beside the layout that is to be cut: stacks that stay
	// far longer than would be of use are given up, and no plan easier to cut is
	// looked for.
	Brief bool
}

// Limits of a problem; beyond them Solve gives an error that wraps ErrLimit.
const (
	MaxItems  = 2_000   // entries of Problem.Items
	MaxPieces = 100_000 // sum of their counts
	MaxGiven  = 1_000   // entries of Problem.Given
	MaxLength = 1 << 40 // any length or width
)

// ErrLimit is wrapped by the error for a problem beyond the limits above, or
// with a size or count that isn't positive.
var ErrLimit = errors.New("outside the limits")

// A TooBigError says that an item fits the cloth in no orientation that it
// allows.
type TooBigError struct {
	Item  int   // index into Problem.Items
	Width int64 // the cloth's width
}

// Error implements error.
func (e *TooBigError) Error() string {
	return fmt.Sprintf("item %d is wider than the cloth's %d in every orientation it allows", e.Item, e.Width)
}

// validate checks the problem against the limits.
func (p *Problem) validate() error {
	if p.Kind < Strips || p.Kind > Thrifty {
		return fmt.Errorf("%v: want strips, stacks or thrifty: %w", p.Kind, ErrLimit)
	}
	if len(p.Items) > MaxItems || len(p.Given) > MaxGiven {
		return fmt.Errorf("%d items and %d given lengths, want at most %d and %d: %w",
			len(p.Items), len(p.Given), MaxItems, MaxGiven, ErrLimit)
	}
	if len(p.Given) == 0 && (p.Width <= 0 || p.Width > MaxLength) {
		return fmt.Errorf("width %d, want 1 to %d: %w", p.Width, int64(MaxLength), ErrLimit)
	}
	for i, c := range p.Given {
		if min(c.W, c.L) <= 0 || max(c.W, c.L) > MaxLength {
			return fmt.Errorf("given length %d is %d x %d, want 1 to %d: %w", i, c.W, c.L, int64(MaxLength), ErrLimit)
		}
	}
	pieces := 0
	for i, it := range p.Items {
		if min(it.W, it.H) <= 0 || max(it.W, it.H) > MaxLength {
			return fmt.Errorf("item %d is %d x %d, want 1 to %d: %w", i, it.W, it.H, int64(MaxLength), ErrLimit)
		}
		if it.Count < 0 || it.Count > MaxPieces {
			return fmt.Errorf("item %d counts %d, want 0 to %d: %w", i, it.Count, MaxPieces, ErrLimit)
		}
		if pieces += it.Count; pieces > MaxPieces {
			return fmt.Errorf("more than %d pieces: %w", MaxPieces, ErrLimit)
		}
	}
	return nil
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
// Parts fill their parent without a gap, in order of x or y. Only a cloth
// itself may be divided into a single part.
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
	// Used is the length used of the cloth bought; of given cloths, the sum of
	// the lengths used of each.
	Used int64
	// Bound: no layout of this kind that places all pieces is shorter (of given
	// cloths, uses less length in all). Nought where pieces are short.
	Bound int64
	// Any: no edge-to-edge cutting of any kind is shorter. Nought where pieces
	// are short.
	Any int64
	// Proved: no layout of this kind is better in what counts: for cloth to be
	// bought, the purchase; for given cloths, the pieces placed and the number
	// of cloths cut into.
	Proved bool
	Work   int64 // effort spent
}
