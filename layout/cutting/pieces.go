package cutting

import (
	"cmp"
	"fmt"
	"slices"

	"cutbinder/layout/length"
	"cutbinder/layout/plan"
)

// MaxPieces is how many pieces a plan may come to.
const MaxPieces = 100_000

// Pieces derives the cut list: for every fabric that anything is cut from, in
// the plan's order, its sizes, largest first. Equal sizes are one Piece, whatever
// they are for; its Uses say that.
//
// Pieces of a mix are dealt to its fabrics in turn, and the turn goes on from one
// size to the next, so that a mix's fabrics give as many pieces as each other, to
// within one; a fabric that is on the shelf gives no more than it seems to hold.
// Spares are reckoned once for each size of a fabric or mix. The strips of units
// and strip sets, borders, binding and backing get none.
//
// Where anything can't be cut as planned, the problems hold every fault and there
// are no lists.
func Pieces(p *plan.Plan) ([]List, plan.Problems) {
	b := newBuilder(p)
	b.blocks()
	b.loose()
	b.setting()
	b.sashing()
	b.borders()
	b.binding()
	b.backing()
	if len(b.problems) > 0 {
		b.problems.Sort()
		return nil, b.problems
	}
	if spares := giveSpares(p.Allow.Spare, b.demands); b.total+spares > MaxPieces {
		b.fault(p.Allow.Place("spare"), fmt.Sprintf("with %d spares the plan comes to more than %d pieces", spares, MaxPieces),
			"ask for fewer spares")
		return nil, b.problems
	}
	return b.spread(), nil
}

// A demand is a number of pieces of one size from one fabric or mix, for one use.
type demand struct {
	at        plan.Pos
	source    plan.Source
	fabrics   []*plan.Fabric // of the source
	fits      []bool         // those wide enough
	size      length.Size    // W is length.WOF for strips across the whole width
	fixed     bool           // never turned
	late      bool           // waits until all else is cut
	spareless bool           // no spares: joined strips have their reserve in the run, and a whole strip or border is too dear for one
	count     int
	spares    int
	use       Use // what is the same whatever the fabric; its Sum is the height's where size.W is WOF
}

// A builder gathers the demands of a plan, and its faults.
type builder struct {
	plan     *plan.Plan
	fabrics  map[string]*plan.Fabric
	mixes    map[string]*plan.Mix
	demands  []*demand
	total    int // pieces so far
	problems plan.Problems
}

func newBuilder(p *plan.Plan) *builder {
	b := &builder{plan: p, fabrics: map[string]*plan.Fabric{}, mixes: map[string]*plan.Mix{}}
	for _, f := range p.Fabrics {
		b.fabrics[f.ID] = f
	}
	for _, m := range p.Mixes {
		b.mixes[m.ID] = m
	}
	return b
}

// of is the fabrics of a source, in the order written.
func (b *builder) of(s plan.Source) []*plan.Fabric {
	ids := []string{s.ID}
	if m := b.mixes[s.ID]; s.Mix && m != nil {
		ids = m.Fabrics
	}
	var fabrics []*plan.Fabric
	for _, id := range ids {
		if f := b.fabrics[id]; f != nil {
			fabrics = append(fabrics, f)
		}
	}
	return fabrics
}

// narrowest is how long strips across the width are at least, whichever of a
// source's fabrics they come from.
func (b *builder) narrowest(s plan.Source) length.Length {
	var w length.Length
	for i, f := range b.of(s) {
		if i == 0 || usable(f) < w {
			w = usable(f)
		}
	}
	return w
}

// turns says whether pieces of a source may be turned on all its fabrics.
func (b *builder) turns(s plan.Source) bool {
	return !slices.ContainsFunc(b.of(s), func(f *plan.Fabric) bool { return f.OneWay })
}

// add takes a demand in, or tells why it can't be met.
func (b *builder) add(d demand) {
	if d.count <= 0 {
		return
	}
	before := b.total
	b.total = min(b.total+min(d.count, MaxPieces+1), MaxPieces+1)
	switch {
	case b.total > MaxPieces:
		if before <= MaxPieces {
			b.fault(d.at, fmt.Sprintf("with this line the plan comes to more than %d pieces", MaxPieces),
				"see whether a count has a digit too many, or split the plan")
		}
	case len(b.of(d.source)) == 0:
		b.fault(d.at, fmt.Sprintf("there is no fabric or mix %q to cut this from", d.source.ID), "name a fabric or mix of this plan")
	case d.size.H <= 0 || d.size.W <= 0 && d.size.W != length.WOF:
		b.fault(d.at, "this piece has no size", "give its finished or its cut size")
	default:
		b.fit(&d)
	}
}

// fit finds the fabrics that are wide enough for a demand, and takes it in.
func (b *builder) fit(d *demand) {
	d.fabrics = b.of(d.source)
	for _, f := range d.fabrics {
		d.fits = append(d.fits, fits(d.size, d.fixed || f.OneWay, f.Width))
	}
	if !slices.Contains(d.fits, true) {
		b.tooWide(d)
		return
	}
	b.demands = append(b.demands, d)
}

func (b *builder) fault(at plan.Pos, what, hint string) {
	b.problems = append(b.problems, plan.Problem{At: at, Level: plan.Fault, What: what, Hint: hint})
}

// times is a·b, or more than MaxPieces where it would be.
func times(a, b int) int {
	if a <= 0 || b <= 0 {
		return 0
	}
	if a > MaxPieces/b {
		return MaxPieces + 1
	}
	return a * b
}

// settle puts a fabric's pieces in order, largest first, and names them.
func (l *List) settle() {
	slices.SortStableFunc(l.Pieces, bySize)
	for i, p := range l.Pieces {
		p.ID = fmt.Sprintf("%s-%d", l.Fabric.ID, i+1)
	}
}

// bySize is the order of pieces: by the longer side, the shorter, those that may
// be turned first, the wider first, what waits last.
func bySize(a, b *Piece) int {
	return cmp.Or(
		cmp.Compare(max(b.Size.W, b.Size.H), max(a.Size.W, a.Size.H)),
		cmp.Compare(min(b.Size.W, b.Size.H), min(a.Size.W, a.Size.H)),
		falseLast(a.MayTurn, b.MayTurn),
		cmp.Compare(b.Size.W, a.Size.W),
		falseLast(!a.Late, !b.Late),
		falseLast(a.WOF, b.WOF))
}

func falseLast(a, b bool) int {
	switch {
	case a == b:
		return 0
	case a:
		return -1
	}
	return 1
}
