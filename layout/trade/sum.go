package trade

import "cutbinder/layout/length"

// A Sum is how a cut size comes about, for people who want to follow it: its
// terms and what rounding added make up the cut size's width.
type Sum struct {
	Terms   []Term
	Rounded length.Length // what rounding up added
	Along   *Sum          // how the height comes about; nil for squares
}

// Total is what the terms and the rounding come to: the width it explains.
func (s Sum) Total() length.Length {
	total := s.Rounded
	for _, t := range s.Terms {
		total += t.Length()
	}
	return total
}

// Turned is the sum of the same piece turned by a quarter.
func (s Sum) Turned() Sum {
	if s.Along == nil {
		return s
	}
	width, along := s, *s.Along
	width.Along = nil
	along.Along = &width
	return along
}

// A Term is one number of a Sum.
type Term struct {
	What  What
	Times int // 0 and 1 both stand for once
	Each  length.Length
}

// Length is what the term comes to.
func (t Term) Length() length.Length { return length.Length(max(t.Times, 1)) * t.Each }

// What says what a term of a sum stands for; the words are the sheets'.
type What string

// What terms stand for. Those that say so hold the square root of two, so that
// their length is not exact: the last of them in a sum is rounded up to a whole
// length unit.
const (
	Stated           What = "stated"             // the cut size as the plan states it
	FullWidth        What = "full-width"         // the fabric's usable width
	Finished         What = "finished"           // the finished side of the patch or unit
	Seams            What = "seams"              // the seam allowance, at both ends
	HalfFinished     What = "half-finished"      // half the unit's finished side
	HalfSquareSeams  What = "half-square-seams"  // (2+√2)s: the seams of a triangle cut from half a square
	EightSquareSeams What = "eight-square-seams" // (4+2√2)s: the same for a square two units wide
	QuarterSeams     What = "quarter-seams"      // (2+2√2)s: the seams of a triangle cut from a quarter of a square
	FinishedDiagonal What = "finished-diagonal"  // √2 times the finished side
	FourSquareSeams  What = "four-square-seams"  // (2+2√2)s: a seam on each edge, and √2 times the seams of the unit
	HalfDiagonal     What = "half-diagonal"      // the finished side over √2
	BlockDiagonal    What = "block-diagonal"     // √2 times the block's finished side
	Trimming         What = "trimming"           // cut too large, to be trimmed after sewing
	Generous         What = "generous"           // added to a setting triangle's square at the plan's wish
	Block            What = "block"              // the finished side of the block beside it
	SashWidth        What = "sash-width"         // the finished width of a sash
	Side             What = "side"               // the finished side of what a border goes round
	BorderWidth      What = "border-width"       // the finished width of a border
	MitreSeams       What = "mitre-seams"        // (2+2√2)s: what the seams of two mitred ends reach out
	BindingStrip     What = "binding-strip"      // the cut width of the binding
	BiasSquare       What = "bias-square"        // the side of a square that bias strips come from; holds a square root
	QuiltSide        What = "quilt-side"         // the quilt's finished side
	Overhang         What = "overhang"           // what the backing stands over, on both sides
	Tail             What = "tail"               // what the binding is longer by, to join its ends
)

// Whats is every What there is, in the order above.
var Whats = []What{Stated, FullWidth, Finished, Seams, HalfFinished, HalfSquareSeams,
	EightSquareSeams, QuarterSeams, FinishedDiagonal, FourSquareSeams, HalfDiagonal,
	BlockDiagonal, Trimming, Generous, Block, SashWidth, Side, BorderWidth, MitreSeams,
	BindingStrip, BiasSquare, QuiltSide, Overhang, Tail}

// A term is a Term before rounding.
type term struct {
	what  What
	times int64
	each  surd
}

// exactly is a term without a root in it.
func exactly(what What, times int64, each length.Length) term { return term{what, times, whole(each)} }

// rooted is a term with a root in it.
func rooted(what What, each surd) term { return term{what, 1, each} }

// add makes a length of terms: exact where no root is in it, else rounded up to
// the step. Terms that come to nothing are left out.
func (s Sewing) add(terms ...term) (length.Length, Sum) {
	var total surd
	root := -1
	var sum Sum
	for _, t := range terms {
		if t.each == (surd{}) || t.times == 0 {
			continue
		}
		total = total.plus(t.each.times(t.times))
		if t.each.root != 0 {
			root = len(sum.Terms)
		}
		sum.Terms = append(sum.Terms, Term{t.what, int(t.times), t.each.up()})
	}
	exact := total.up()
	if root < 0 {
		sum.Rounded = exact - sum.Total()
		return exact, sum
	}
	// The last term with a root takes up the units that rounding each term by
	// itself would add.
	sum.Terms[root].Each += exact - sum.Total()
	size := roundUp(exact, s.Step)
	sum.Rounded = size - exact
	return size, sum
}

// square is the size of a square of those terms.
func (s Sewing) square(terms ...term) (length.Size, Sum) {
	side, sum := s.add(terms...)
	return length.Size{W: side, H: side}, sum
}

// rectangle is a size and its sum from a width's and a height's terms.
func (s Sewing) rectangle(width, height []term) (length.Size, Sum) {
	w, sum := s.add(width...)
	h, along := s.add(height...)
	if !sameTerms(width, height) {
		sum.Along = &along
	}
	return length.Size{W: w, H: h}, sum
}

func sameTerms(a, b []term) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}
