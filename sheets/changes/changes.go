// Package changes tells what differs between two versions of a plan in a maker's
// terms: what to buy more of, what to cut again, what the bags now hold, which
// pages and labels to print again, and which stay good.
//
// Compare compares two binders; Changes.Words says it, and Document prints the
// pages and labels that are to take the places of old ones, with a cover that
// says why.
package changes

import (
	"cutbinder/layout/length"
	"cutbinder/layout/page"
	"cutbinder/sheets"
	"cutbinder/sheets/bag"
)

// A Binder is a version of a plan, worked out and set.
type Binder struct {
	*sheets.Quilt
	Document page.Document
}

// Changes is what differs between two versions of a plan.
type Changes struct {
	Old, New *sheets.Quilt
	Fabrics  []Fabric // those that differ, in the new plan's order, then those that are gone
	Bags     []Bag    // those that differ, in the new order, then those that are gone
	Pages    []Page   // of the new binder: to print again
	Kept     []Kept   // of the old binder: those that stay good
	Labels   []int    // bags of the new plan whose labels are to be printed
	Good     []int    // bags of the new plan whose labels stay good
	Out      []int    // pages of the old binder to take out
}

// A Kind is what became of a thing.
type Kind string

// The kinds.
const (
	Added   Kind = "new"
	Gone    Kind = "gone"
	Changed Kind = "changed"
	Moved   Kind = "moved" // of a bag: it holds the same and has another number or mark
)

// A Fabric is what differs about a fabric.
type Fabric struct {
	ID, Name              string
	Kind                  Kind
	BuyBefore, Buy        length.Length // zero: nothing
	Cuts                  []Cut
	ShortBefore, ShortNow int  // pieces that find no place on the shelf
	Laid                  bool // it is cut in another way, whatever is cut
}

// A Cut is a size of which the number has changed. Where Instead has a size, it
// takes the place of that one, and Before is how many there were of it.
type Cut struct {
	Size        length.Size // W is length.WOF for strips across the width
	Before, Now int         // with spares
	Instead     length.Size
}

// A Bag is a bag that differs. Of a bag that is gone Number is the old one.
type Bag struct {
	Kind           Kind
	Number, Before int // 0: there is none
	New, Old       *bag.Bag
}

// A Page is a page of the new binder to print again.
type Page struct {
	Number  int // counted from 1
	Section string
}

// A Kept is a page of the old binder that stays good, and the number that the new
// binder gives it.
type Kept struct{ Old, New int }

// None says that nothing differs.
func (c *Changes) None() bool {
	return len(c.Fabrics)+len(c.Bags)+len(c.Pages)+len(c.Labels)+len(c.Out) == 0
}

// Compare compares two versions of a plan that were set with the same options.
func Compare(old, new Binder) *Changes {
	c := &Changes{Old: old.Quilt, New: new.Quilt}
	c.fabrics()
	c.bags()
	c.pages(old.Document, new.Document)
	return c
}
