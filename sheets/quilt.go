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

	Widths    [][]cutting.Width   // what each fabric takes at other widths, where Advise was asked
	Shortages []*cutting.Shortage // what would help each fabric that is short, where Advise was asked
}

// Work derives a plan's pieces, lays them out and sorts them into bags. Problems
// hold what the plan has wrong; with a fault among them there is no quilt. The
// error is ctx's, or a layout that failed its check.
func Work(ctx context.Context, p *plan.Plan, o cutting.Options) (*Quilt, plan.Problems, error) {
	lists, problems := cutting.Pieces(p)
	problems = append(problems, undone(p, lists)...)
	if problems.Faulty() {
		return nil, problems, nil
	}
	fabrics, err := cutting.Settle(ctx, p, lists, o)
	if err != nil {
		return nil, problems, err
	}
	return &Quilt{Plan: p, Fabrics: fabrics, Bags: bag.Sort(p, listsOf(fabrics))}, problems, nil
}

// Sort works out only what a plan's bags hold. No cutting is needed for that,
// unless pieces of a mix may move to another fabric because one on the shelf is
// too small; then it is Work. Without cutting, the fabrics have pieces but no
// layout.
func Sort(ctx context.Context, p *plan.Plan, o cutting.Options) (*Quilt, plan.Problems, error) {
	if shelfInMix(p) {
		return Work(ctx, p, o)
	}
	lists, problems := cutting.Pieces(p)
	problems = append(problems, undone(p, lists)...)
	if problems.Faulty() {
		return nil, problems, nil
	}
	q := &Quilt{Plan: p, Bags: bag.Sort(p, lists)}
	for _, l := range lists {
		q.Fabrics = append(q.Fabrics, cutting.Fabric{List: l})
	}
	return q, problems, nil
}

// shelfInMix says whether a fabric that is on the shelf belongs to a mix.
func shelfInMix(p *plan.Plan) bool {
	for _, m := range p.Mixes {
		for _, id := range m.Fabrics {
			if len(p.Fabric(id).Have) > 0 {
				return true
			}
		}
	}
	return false
}

func listsOf(fabrics []cutting.Fabric) []cutting.List {
	var lists []cutting.List
	for _, f := range fabrics {
		lists = append(lists, f.List)
	}
	return lists
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
