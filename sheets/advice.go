package sheets

import (
	"context"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/sheets/say"
)

// Advise works out what the shopping list and the sheets of short fabrics tell
// beside the layout: what cloth of other widths takes, and what would help
// where a shelf is too small. It lays fabrics out once more for that, with as
// much work as is said for each; the error is ctx's. What is short is audited
// too: given the same work, list and audit say the same of it.
func (q *Quilt) Advise(ctx context.Context, short, widths cutting.Options) (err error) {
	if q.Shortages, err = cutting.Shortages(ctx, q.Plan, q.Fabrics, short); err != nil {
		return err
	}
	q.Widths, err = cutting.Widths(ctx, q.Plan, q.Fabrics, say.OtherWidths(q.Plan.Units), widths)
	return err
}

// Shortage is what would help where a fabric's shelf is too small; nil where it
// isn't, or where no advice was asked for.
func (q *Quilt) Shortage(f *cutting.Fabric) *cutting.Shortage {
	if i := q.index(f); i < len(q.Shortages) {
		return q.Shortages[i]
	}
	return nil
}

// WidthsOf is what a fabric takes at other widths; none where no advice was
// asked for.
func (q *Quilt) WidthsOf(f *cutting.Fabric) []cutting.Width {
	if i := q.index(f); i < len(q.Widths) {
		return q.Widths[i]
	}
	return nil
}

func (q *Quilt) index(f *cutting.Fabric) int {
	for i := range q.Fabrics {
		if q.Fabrics[i].Fabric.ID == f.Fabric.ID {
			return i
		}
	}
	return len(q.Fabrics)
}

// A Finishing is what binding or backing takes from one fabric, counted in that
// fabric's length.
type Finishing struct {
	What   string // cutting.ForBinding, cutting.ForBacking
	Fabric *cutting.Fabric
	Count  int
	Size   length.Size
}

// Finishings lists binding and backing, by fabric.
func (q *Quilt) Finishings() (all []Finishing) {
	for _, what := range []string{cutting.ForBinding, cutting.ForBacking} {
		for i := range q.Fabrics {
			f := &q.Fabrics[i]
			piece := f.For(what)
			if piece == nil {
				continue
			}
			n := 0
			for _, u := range piece.Uses {
				if u.Block == "" && u.For == what {
					n += u.Count + u.Spares
				}
			}
			all = append(all, Finishing{what, f, n, piece.Size})
		}
	}
	return all
}
