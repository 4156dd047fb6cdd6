package cutting

import (
	"cmp"
	"slices"
	"strings"

	"cutbinder/layout/length"
	"cutbinder/layout/plan"
	"cutbinder/layout/trade"
)

// An Explained is pieces of one size that one line of the plan asks for, over all
// the fabrics they come from.
type Explained struct {
	Use                      // of the first fabric; Count and Spares are over all of them
	Size         length.Size // as the plan means it: across the cloth, then along it; W is length.WOF for strips across the width
	CutSum       trade.Sum   // how that size comes about; of strips across the width their height
	Shares       []Share     // in the plan's order
	Units, Makes int         // units asked for; units made of the pieces: more where they come in twos, fours or eights
}

// A Share is what one fabric gives.
type Share struct {
	Fabric        *plan.Fabric
	Piece         *Piece
	Count, Spares int // Count without the spares
}

// Explain goes through the cut list by the lines of the plan: where each cut
// size comes from, and which fabrics give it. Lines are in the plan's order:
// blocks first, then what stands in none.
func Explain(p *plan.Plan, lists []List) []Explained {
	var all []Explained
	for i := range lists {
		for _, piece := range lists[i].Pieces {
			for _, u := range piece.Uses {
				all = explain(all, lists[i].Fabric, piece, u)
			}
		}
	}
	order := lineOrder(p)
	slices.SortStableFunc(all, func(a, b Explained) int {
		return cmp.Or(order[a.At]-order[b.At], strings.Compare(a.For, b.For), strings.Compare(a.Role, b.Role)) // sides, centre and goose come first
	})
	return all
}

// explain adds a use to those of the same line and size, or as a new one.
func explain(all []Explained, f *plan.Fabric, piece *Piece, u Use) []Explained {
	share := Share{f, piece, u.Count, u.Spares}
	for i := range all {
		e := &all[i]
		if e.At == u.At && e.Block == u.Block && e.For == u.For && e.Role == u.Role && e.Into == u.Into && e.Size == u.Cut && (e.Mix == u.Mix && e.Mix != "" || e.Shares[0].Fabric == f) {
			e.Count += u.Count
			e.Spares += u.Spares
			e.Shares = append(e.Shares, share)
			return all
		}
	}
	e := Explained{Use: u, Size: u.Cut, CutSum: u.Sum, Shares: []Share{share}, Units: u.Units}
	if piece.WOF {
		e.CutSum = *u.Sum.Along
	} else if piece.Size != u.Cut {
		e.CutSum = u.Sum.Turned()
	}
	return append(all, e)
}

// lineOrder numbers the places that pieces come from, in the plan's order.
func lineOrder(p *plan.Plan) map[plan.Pos]int {
	order := map[plan.Pos]int{}
	next := func(at plan.Pos) { order[at] = len(order) }
	for _, b := range p.Blocks {
		for _, piece := range b.Pieces {
			next(piece.At)
		}
	}
	if p.Setting != nil {
		next(p.Setting.At)
	}
	if p.Sashing != nil {
		next(p.Sashing.At)
	}
	for _, b := range p.Borders {
		next(b.At)
	}
	for _, piece := range p.Pieces {
		next(piece.At)
	}
	if p.Binding != nil {
		next(p.Binding.At)
	}
	if p.Backing != nil {
		next(p.Backing.At)
	}
	return order
}
