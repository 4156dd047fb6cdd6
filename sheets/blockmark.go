package sheets

import (
	"slices"

	"cutbinder/layout/length"
	"cutbinder/layout/picture"
	"cutbinder/layout/plan"
	"cutbinder/sheets/bag"
)

// InBag says of every patch of a block's picture whether a bag's pieces go there,
// and whether any do: those of the same unit, finished size and part, from a
// fabric that the bag holds.
func InBag(p *plan.Plan, pic *picture.Picture, g *bag.Bag) (marked []bool, any bool) {
	marked = make([]bool, len(pic.Patches))
	for i, patch := range pic.Patches {
		ids := p.FabricIDs(patch.Source)
		for _, r := range g.Rows {
			if sameUse(p, patch, r) && slices.ContainsFunc(r.Fabrics, func(s bag.Share) bool { return slices.Contains(ids, s.ID) }) {
				marked[i], any = true, true
			}
		}
	}
	return marked, any
}

// sameUse says whether a row of a bag is for patches such as this one.
func sameUse(p *plan.Plan, patch picture.Patch, r bag.Row) bool {
	unit := r.Unit
	if unit == "" {
		unit = plan.Patch
	}
	z := r.Finished
	if unit == plan.Patch && z == (length.Size{}) {
		z = length.Size{W: r.Cut.W - 2*p.Seam, H: r.Cut.H - 2*p.Seam}
	}
	same := z == patch.Finished || unit == plan.Patch && z.W == patch.Finished.H && z.H == patch.Finished.W
	return same && unit == patch.Unit && r.Role == patch.Role
}

// A spotted is a block's picture with the patches marked that a bag goes to.
type spotted struct {
	pic    *picture.Picture
	marked []bool
}

// spotted are the pictures of the blocks that a bag is for, those that are drawn
// and show where its pieces go.
func (q *Quilt) spotted(g *bag.Bag) (all []spotted) {
	for _, place := range g.Places {
		b := q.Plan.Block(place.Block)
		if place.Block == "" || b == nil {
			continue
		}
		if pic := picture.Block(q.Plan, b); pic != nil {
			if marked, any := InBag(q.Plan, pic, g); any {
				all = append(all, spotted{pic, marked})
			}
		}
	}
	return all
}

// Drawn says whether any block of the plan is drawn.
func (q *Quilt) Drawn() bool {
	return slices.ContainsFunc(q.Plan.Blocks, func(b *plan.Block) bool { return b.Drawing != nil })
}
