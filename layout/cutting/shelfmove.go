package cutting

import (
	"slices"

	"cutbinder/layout/length"
	"cutbinder/layout/plan"
)

// A Move is pieces of a mix that come from other fabrics than they would have
// been dealt to, because a shelf turned out too small once it was laid out.
type Move struct {
	From  *plan.Fabric
	To    []*plan.Fabric // in the plan's order
	Size  length.Size    // as the plan means it
	Count int            // spares among them
}

// Moves lists what Settle moved between the fabrics of mixes, in the order of
// the fabrics it was moved from.
func Moves(p *plan.Plan, fabrics []Fabric) []Move {
	derived, _ := Pieces(p)
	var moves []Move
	for _, l := range derived {
		for _, piece := range l.Pieces {
			for _, u := range piece.Uses {
				if u.Mix == "" {
					continue
				}
				m := Move{From: l.Fabric, Size: u.Cut, Count: u.Count + u.Spares}
				for i := range fabrics {
					g := &fabrics[i]
					now := g.List.countAlike(u)
					if g.Fabric.ID == l.Fabric.ID {
						m.Count -= now
					} else if now > listOf(derived, g.Fabric.ID).countAlike(u) {
						m.To = append(m.To, g.Fabric)
					}
				}
				if m.Count > 0 {
					moves = append(moves, m)
				}
			}
		}
	}
	return merged(moves)
}

// merged makes one move of those of the same size from the same fabric.
func merged(moves []Move) (out []Move) {
	for _, m := range moves {
		i := slices.IndexFunc(out, func(n Move) bool { return n.From == m.From && n.Size == m.Size })
		if i < 0 {
			out = append(out, m)
			continue
		}
		out[i].Count += m.Count
		for _, f := range m.To {
			if !slices.Contains(out[i].To, f) {
				out[i].To = append(out[i].To, f)
			}
		}
	}
	return out
}
