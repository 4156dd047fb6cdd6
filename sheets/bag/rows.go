package bag

import (
	"cmp"
	"slices"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/plan"
)

// A kind is what makes pieces the same row.
type kind struct {
	hi, lo   length.Length
	upright  int // which way pieces that may not be turned lie: 1 W is longer, 2 H is; 0 they may
	finished length.Size
	unit     plan.Unit
	role     string
	into     int
	joined   cutting.Joined
	set      *cutting.Set // of one line; those of two lines are two rows
	note     string
}

func (e entry) kind() kind {
	k := kind{hi: e.hi, lo: e.lo, finished: e.Finished, unit: e.Unit, role: e.Role, into: int(e.Into), set: e.Set, note: e.Note}
	if e.Joined != nil {
		k.joined = *e.Joined
	}
	switch {
	case e.turns || e.hi == e.lo:
	case e.size.W == e.hi:
		k.upright = 1
	default:
		k.upright = 2
	}
	return k
}

// settle gives pieces that may be turned the direction of those of their kind
// that may not, where there is one direction only: a mix of a striped and a plain
// fabric is one row.
func settle(kinds []kind) {
	for i, k := range kinds {
		if k.upright != 0 {
			continue
		}
		found := 0
		for _, other := range kinds {
			direction := other.upright
			other.upright = 0
			if direction != 0 && other == k {
				found |= direction
			}
		}
		if found != 3 {
			kinds[i].upright = found
		}
	}
}

func rowsOf(group []entry) []Row {
	kinds := make([]kind, len(group))
	for i, e := range group {
		kinds[i] = e.kind()
	}
	settle(kinds)
	at := map[kind]int{}
	var rows []Row
	for n, e := range group {
		i, ok := at[kinds[n]]
		if !ok {
			i = len(rows)
			at[kinds[n]] = i
			rows = append(rows, Row{Cut: kinds[n].size(e.size), Finished: e.Finished, Unit: e.Unit, Role: e.Role, Into: e.Into, Joined: e.Joined, Set: e.Set, Note: e.Note})
		}
		rows[i].add(e)
	}
	slices.SortStableFunc(rows, compareRows)
	return rows
}

// size is the row's cut size: as the plan gives it, or as it must lie.
func (k kind) size(asCut length.Size) length.Size {
	switch k.upright {
	case 1:
		return length.Size{W: k.hi, H: k.lo}
	case 2:
		return length.Size{W: k.lo, H: k.hi}
	}
	return asCut
}

func (r *Row) add(e entry) {
	r.Count += e.Count
	r.Spares += e.Spares
	i := slices.IndexFunc(r.Fabrics, func(s Share) bool { return s.ID == e.origin.fabric })
	if i < 0 {
		i = len(r.Fabrics)
		r.Fabrics = append(r.Fabrics, Share{ID: e.origin.fabric, Name: e.name})
	}
	r.Fabrics[i].Count += e.Count
	r.Fabrics[i].Spares += e.Spares
}

func compareRows(a, b Row) int {
	return cmp.Or(
		cmp.Compare(max(b.Cut.W, b.Cut.H), max(a.Cut.W, a.Cut.H)),
		cmp.Compare(min(b.Cut.W, b.Cut.H), min(a.Cut.W, a.Cut.H)),
		cmp.Compare(a.Cut.W, b.Cut.W),
		cmp.Compare(a.Unit, b.Unit), cmp.Compare(a.Role, b.Role),
		cmp.Compare(b.Finished.W, a.Finished.W), cmp.Compare(b.Finished.H, a.Finished.H))
}
