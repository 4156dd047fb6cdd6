package say

import (
	"fmt"

	"cutbinder/layout/cutting"
	"cutbinder/layout/pack"
	"cutbinder/layout/plan"
	"cutbinder/layout/trade"
)

// Proof says in one sentence how good a fabric's layout is.
func (v Voice) Proof(p *plan.Plan, f *cutting.Fabric) string {
	if len(f.Fabric.Have) > 0 {
		return v.shelfProof(f)
	}
	rules := cutting.Rules(p, f.Fabric)
	kind := Kind(f.Fabric.Cutting)
	switch {
	case f.Used == 0:
		return "Nothing is cut from this fabric."
	case trade.ToBuy(f.Any, rules).Buy >= f.Buy.Buy:
		return "Proved: no cutting of any kind can lower what must be bought."
	case f.Bound >= f.Used:
		return fmt.Sprintf("Proved: cut %s, these pieces can't come from less than %s of this cloth.", kind, v.With(f.Used))
	case f.Proved || trade.ToBuy(f.Bound, rules).Buy >= f.Buy.Buy:
		return fmt.Sprintf("Proved: no other way of cutting %s lowers what must be bought.", kind)
	}
	least := trade.ToBuy(f.Bound, rules).Buy
	return fmt.Sprintf("The best cutting %s that was found; it isn't proved that %s wouldn't do.", kind, v.ToBuy(least))
}

func (v Voice) shelfProof(f *cutting.Fabric) string {
	used, left := 0, 0
	for _, c := range f.Cloths {
		if c.Unused() {
			left++
			continue
		}
		used++
	}
	switch n := f.Missing(); {
	case n > 0 && f.Proved:
		return fmt.Sprintf("%s on what is on the shelf. Proved: cut %s, it can't give them all.", lost(n), Kind(f.Fabric.Cutting))
	case n > 0:
		return lost(n) + " on what is on the shelf."
	case left > 0 && used > 1 && f.Proved:
		return fmt.Sprintf("All pieces come from %s of %s lengths; the rest stays whole. Proved: cut %s, fewer wouldn't do.",
			number(used), number(used+left), Kind(f.Fabric.Cutting))
	case left > 0:
		return fmt.Sprintf("All pieces come from %s of %s lengths; the rest stays whole.", number(used), number(used+left))
	}
	return "All pieces come from what is on the shelf."
}

// lost says that so many pieces find no place.
func lost(n int) string {
	if n == 1 {
		return "One piece finds no place"
	}
	return fmt.Sprintf("%d pieces find no place", n)
}

// Kind is how a kind of cutting is spoken of: "in strips".
func Kind(k pack.Kind) string {
	switch k {
	case pack.Strips:
		return "in strips"
	case pack.Stacks:
		return "in strips with stacks"
	}
	return "in strips and lengthwise sections"
}

// after says what happens to squares that are cut on the diagonal, where that
// holds for every piece of the size.
func (v Voice) after(p *cutting.Piece) string {
	into := p.Uses[0].Into
	for _, u := range p.Uses {
		if u.Into != into {
			return ""
		}
	}
	switch into {
	case trade.Once:
		return ", each cut corner to corner"
	case trade.Twice:
		return ", each cut corner to corner both ways"
	}
	return ""
}
