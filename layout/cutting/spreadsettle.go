package cutting

import (
	"context"
	"slices"

	"cutbinder/layout/plan"
)

// Settle lays out every list as Cut does. Where a fabric that is on the shelf
// turns out short, it moves what it owes to a mix to the mix's other fabrics and
// lays out again those that changed, until nothing can be moved. It goes as many
// rounds as the plan has fabrics at most; pieces that still have no place are told
// in Fabric.Short.
func Settle(ctx context.Context, p *plan.Plan, lists []List, o Options) ([]Fabric, error) {
	fabrics, err := Cut(ctx, p, lists, o)
	full := map[string]bool{}
	for range p.Fabrics {
		if err != nil {
			return nil, err
		}
		moved, changed := Shift(p, fabrics, full)
		if len(changed) == 0 {
			break
		}
		fabrics, err = recut(ctx, p, fabrics, moved, changed, o)
	}
	return fabrics, err
}

// recut lays out the lists that changed and keeps the rest as they lie.
func recut(ctx context.Context, p *plan.Plan, old []Fabric, lists []List, changed []string, o Options) ([]Fabric, error) {
	fabrics := make([]Fabric, len(lists))
	var again []List
	var where []int
	for i, l := range lists {
		if slices.Contains(changed, l.Fabric.ID) {
			again, where = append(again, l), append(where, i)
			continue
		}
		fabrics[i] = old[slices.IndexFunc(old, func(f Fabric) bool { return f.Fabric == l.Fabric })]
	}
	laid, err := Cut(ctx, p, again, o)
	if err != nil {
		return nil, err
	}
	for i, f := range laid {
		fabrics[where[i]] = f
	}
	return fabrics, nil
}
