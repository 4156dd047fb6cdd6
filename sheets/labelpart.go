package sheets

import (
	"cutbinder/layout/page"
	"cutbinder/layout/plan"
)

// labelPages are the label sheets of the binder, on the stock the options or the
// plan name. A stock that can't be used is a fault where the plan names it.
func (b *binder) labelPages() ([]func(*page.Pen), plan.Problems) {
	o, err := b.q.LabelDefaults(b.o.Labels)
	if err == nil {
		if o.Bags == nil {
			o.Bags = b.q.bagsLeft()
		}
		var pages []func(*page.Pen)
		if pages, err = LabelPages(b.q, o, b.style); err == nil {
			return pages, nil
		}
	}
	return nil, b.q.noStock(err)
}

// noStock is the problem of a label sheet that can't be used.
func (q *Quilt) noStock(err error) plan.Problems {
	return plan.Problems{{At: q.Plan.Labels.Place("stock"), ID: "label-stock", What: err.Error(),
		Hint: "cutbinder stocks lists the sheets it knows"}}
}

// LabelSheets are the labels of some bags on sheets of their own, as the binder
// prints them.
func (q *Quilt) LabelSheets(bags []int, o Options) ([]page.Page, plan.Problems) {
	labels, err := q.LabelDefaults(o.Labels)
	if err == nil {
		labels.Bags = bags
		var doc page.Document
		if doc, err = Labels(q, labels, NewBook(q, o).Style); err == nil {
			return doc.Pages, nil
		}
	}
	return nil, q.noStock(err)
}

// LabelDefaults fills in what label options leave to the plan: the stock and the
// number of labels a bag.
func (q *Quilt) LabelDefaults(o LabelOptions) (LabelOptions, error) {
	var err error
	if o.Stock.Labels() == 0 {
		o.Stock, err = StockOf(q.Plan.Labels, q.Plan.Paper)
	}
	if o.PerBag == 0 {
		o.PerBag = q.Plan.Labels.PerBag
	}
	return o, err
}
