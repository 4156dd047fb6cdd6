// Package sheets sets what stands on the paper: one file a part of the binder.
//
// Work works a plan out into a Quilt; Binder sets its pages; Labels sets only
// the labels.
package sheets

import (
	"context"
	"slices"

	"cutbinder/layout/cutting"
	"cutbinder/layout/plan"
	"cutbinder/sheets/bag"
)

// A Quilt is a plan worked out: what the pages are about.
type Quilt struct {
	Plan    *plan.Plan
	Fabrics []cutting.Fabric // those that pieces are cut from, in plan order
	Bags    *bag.Sorted
}

// Work derives a plan's pieces, lays them out and sorts them into bags. Problems
// hold what the plan has wrong; with a fault among them there is no quilt. The
// error is ctx's, or a layout that failed its check.
func Work(ctx context.Context, p *plan.Plan, o cutting.Options) (*Quilt, plan.Problems, error) {
	lists, problems := cutting.Pieces(p)
	if problems.Faulty() {
		return nil, problems, nil
	}
	fabrics, err := cutting.Cut(ctx, p, lists, o)
	if err != nil {
		return nil, problems, err
	}
	for i := range fabrics {
		lists[i] = fabrics[i].List
	}
	return &Quilt{Plan: p, Fabrics: fabrics, Bags: bag.Sort(p, lists)}, problems, nil
}

// Uncut is a quilt whose cutting isn't worked out: its bags and labels are known,
// its fabrics have pieces but no layout.
func Uncut(p *plan.Plan, lists []cutting.List) *Quilt {
	q := &Quilt{Plan: p, Bags: bag.Sort(p, lists)}
	for _, l := range lists {
		q.Fabrics = append(q.Fabrics, cutting.Fabric{List: l})
	}
	return q
}

// BagsOf lists the numbers of the bags that a fabric's piece goes into, each once.
func (q *Quilt) BagsOf(f *cutting.Fabric, p *cutting.Piece) []int {
	var numbers []int
	for u := range p.Uses {
		if n := q.Bags.Of(f.Fabric.ID, p.ID, u); !slices.Contains(numbers, n) {
			numbers = append(numbers, n)
		}
	}
	slices.Sort(numbers)
	return numbers
}
