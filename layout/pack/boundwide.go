package pack

import "slices"

// mostParts is how many ways to part the sizes by their width boundWide tries.
const mostParts = 64

// boundWide is a bound like boundAny's that looks at what can't lie side by side.
//
// With p no more than half of the width, pieces wider than the width less p lie
// beside none of their like, nor beside pieces at least p wide. Taken out of any
// placing, with the cloth on both sides closed up, they leave a placing of the
// latter: so their heights add to any bound of those. Narrower pieces are left
// out of it; of pieces that may turn those count that are wide enough either way.
func boundWide(sizes []size, width int64) (best int64) {
	ps := []int64{(width + 1) / 2}
	var all []extent
	for _, s := range sizes {
		if x := s.extent(width); x.widest > 0 {
			all = append(all, x)
		}
		for _, l := range lyings([]size{s}, width) {
			if 2*l.w <= width {
				ps = append(ps, l.w)
			}
		}
	}
	slices.Sort(ps)
	ps = slices.Compact(ps)
	for i, p := range ps[:min(len(ps), mostParts)] {
		wide, tallest := int64(0), int64(0)
		var rest []size
		for _, x := range all {
			switch {
			case x.narrowest > width-p:
				wide += int64(x.n) * min(x.lowest, (1<<61)/MaxPieces)
			case x.narrowest >= p:
				rest, tallest = append(rest, x.size), max(tallest, x.lowest)
			}
		}
		if wide == 0 {
			continue
		}
		bound := max(boundArea(rest, width), tallest)
		if i == 0 {
			bound = max(bound, boundMapped(rest, width))
		}
		best = max(best, wide+min(bound, 1<<61))
	}
	return best
}

// An extent is how wide and high pieces of a size are at least, and how wide at
// most, as they fit a width; nought where they don't.
type extent struct {
	size
	narrowest, widest, lowest int64
}

// extent finds it for a width.
func (s size) extent(width int64) extent {
	x := extent{size: s}
	for _, l := range lyings([]size{s}, width) {
		if x.widest == 0 {
			x.narrowest, x.lowest = l.w, l.h
		}
		x.narrowest, x.widest, x.lowest = min(x.narrowest, l.w), max(x.widest, l.w), min(x.lowest, l.h)
	}
	return x
}
