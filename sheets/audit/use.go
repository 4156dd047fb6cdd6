package audit

import (
	"slices"
	"strings"

	"cutbinder/layout/cutting"
	"cutbinder/layout/plan"
)

// uses looks for fabrics and mixes that don't do what they are for.
func (a *auditor) uses() {
	a.alike()
	mixes := a.mixesUsed()
	for _, f := range a.plan.Fabrics {
		if slices.ContainsFunc(a.fabrics, func(g cutting.Fabric) bool { return g.Fabric.ID == f.ID }) {
			continue
		}
		why := "no line asks for it"
		for _, m := range a.plan.Mixes {
			if slices.Contains(m.Fabrics, f.ID) && mixes[m.ID] {
				why = "mix " + m.ID + " has fewer pieces than fabrics, or the other fabrics give them all"
			}
		}
		a.find(plan.Doubt, f.At, "unused:"+f.ID, "take it out, or see which line should name it",
			"nothing is cut from %s: %s", f.Name, why)
	}
	for _, m := range a.plan.Mixes {
		switch {
		case !mixes[m.ID]:
			a.find(plan.Doubt, m.At, "unused-mix:"+m.ID, "take it out, or see which line should name it", "no line asks for mix %s", m.ID)
		case len(m.Fabrics) == 1:
			a.find(plan.Doubt, m.At, "mix-small:"+m.ID, "add fabrics to it, or write fabric: "+m.Fabrics[0]+" where it is asked for",
				"mix %s has one fabric only, so that nothing is mixed", m.ID)
		}
	}
	a.eachLine(func(_ *plan.Block, piece *plan.Piece, id string) {
		if len(piece.Sources) > 1 {
			a.sameFabric(piece, id)
		}
	})
}

// mixesUsed are the mixes that some piece comes from.
func (a *auditor) mixesUsed() map[string]bool {
	used := map[string]bool{}
	for _, e := range a.lines {
		if e.Mix != "" {
			used[e.Mix] = true
		}
	}
	return used
}

// sameFabric tells of a unit whose parts may come from one and the same fabric.
func (a *auditor) sameFabric(piece *plan.Piece, id string) {
	first, second := a.plan.FabricIDs(piece.Sources[0]), a.plan.FabricIDs(piece.Sources[1])
	var both []string
	for _, id := range first {
		if slices.Contains(second, id) {
			both = append(both, id)
		}
	}
	switch {
	case len(both) == 0:
	case len(first) == 1 && len(second) == 1:
		a.find(plan.Doubt, piece.Sources[1].At, "same-fabric:"+id, "name another fabric for one of them",
			"both parts of the %s come from %s: its seam won't show", piece.Unit, both[0])
	default:
		a.find(plan.Remark, piece.Sources[1].At, "same-fabric:"+id, "pair them by eye when you sew, or leave it out of one of the two",
			"%s can be both parts of a %s", strings.Join(both, ", "), piece.Unit)
	}
}

// alike notes fabrics and mixes whose names differ in capitals only, and fabrics
// that are called the same.
func (a *auditor) alike() {
	type named struct {
		id, name string
		at       plan.Pos
	}
	var before []named
	look := func(id, name string, at plan.Pos) {
		i := slices.IndexFunc(before, func(n named) bool { return strings.EqualFold(n.id, id) })
		what := "%s and %s differ in capitals only"
		if i < 0 {
			i = slices.IndexFunc(before, func(n named) bool { return name != "" && strings.EqualFold(n.name, name) })
			what = "%s and %s are called the same: " + name
		}
		if i >= 0 {
			a.find(plan.Remark, at, "alike:"+before[i].id+":"+id, "give one of them another name: on labels and lists they are taken for each other", what, before[i].id, id)
		}
		before = append(before, named{id, name, at})
	}
	for _, f := range a.plan.Fabrics {
		look(f.ID, f.Name, f.At)
	}
	for _, m := range a.plan.Mixes {
		look(m.ID, "", m.At)
	}
}
