package changes

import (
	"fmt"
	"slices"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
)

// fabrics compares what is bought and cut.
func (c *Changes) fabrics() {
	find := func(all []cutting.Fabric, id string) *cutting.Fabric {
		i := slices.IndexFunc(all, func(f cutting.Fabric) bool { return f.Fabric.ID == id })
		if i < 0 {
			return &cutting.Fabric{}
		}
		return &all[i]
	}
	for i := range c.New.Fabrics {
		f := &c.New.Fabrics[i]
		was := find(c.Old.Fabrics, f.Fabric.ID)
		d := Fabric{ID: f.Fabric.ID, Name: f.Fabric.Name, Kind: Changed}
		if was.Fabric == nil {
			d.Kind = Added
		}
		d.compare(was, f)
		if d.Kind == Added || d.BuyBefore != d.Buy || len(d.Cuts) > 0 || d.ShortBefore != d.ShortNow || d.Laid {
			c.Fabrics = append(c.Fabrics, d)
		}
	}
	for i := range c.Old.Fabrics {
		f := &c.Old.Fabrics[i]
		if now := find(c.New.Fabrics, f.Fabric.ID); now.Fabric == nil {
			d := Fabric{ID: f.Fabric.ID, Name: f.Fabric.Name, Kind: Gone}
			d.compare(f, now)
			c.Fabrics = append(c.Fabrics, d)
		}
	}
}

// compare fills in how a fabric was and is.
func (d *Fabric) compare(was, now *cutting.Fabric) {
	d.BuyBefore, d.Buy = was.Buy.Buy, now.Buy.Buy
	d.ShortBefore, d.ShortNow = was.Missing(), now.Missing()
	d.Cuts = cuts(was, now)
	d.Laid = layout(was) != layout(now)
}

// layout is where everything lies, as a text.
func layout(f *cutting.Fabric) string {
	s := ""
	for _, c := range f.Cloths {
		s += fmt.Sprint(c.Name, c.W, c.L, c.Square, c.Bought, c.Root)
		for _, p := range c.Placed {
			s += fmt.Sprint(p.X, p.Y, p.W, p.H, f.Pieces[p.Piece].Size)
		}
	}
	return s
}

// A size is what makes cut pieces the same: their size, and which way they lie
// where they may not be turned.
type size struct {
	length.Size
	turns bool
}

// needs are how many pieces of each size a fabric is cut into, in its order.
func needs(f *cutting.Fabric) (order []size, need map[size]int, use map[size]string) {
	need, use = map[size]int{}, map[size]string{}
	for _, p := range f.Pieces {
		s := size{p.Size, p.MayTurn}
		if p.WOF {
			s.W = length.WOF
		}
		if need[s] == 0 {
			order = append(order, s)
		}
		need[s] += p.Need
		for _, u := range p.Uses {
			use[s] += fmt.Sprintf("%q %q %s %s;", u.Block, u.For, u.Unit, u.Role)
		}
	}
	return order, need, use
}

// cuts are the sizes whose number differs. A size that is gone and a new one for
// the same use are one change: those pieces are cut again.
func cuts(was, now *cutting.Fabric) (all []Cut) {
	before, had, usedFor := needs(was)
	after, has, useOf := needs(now)
	replaced := map[size]bool{}
	for _, s := range after {
		if had[s] == has[s] {
			continue
		}
		cut := Cut{Size: s.Size, Before: had[s], Now: has[s]}
		for _, o := range before {
			if had[s] == 0 && has[o] == 0 && !replaced[o] && usedFor[o] == useOf[s] {
				cut.Instead, cut.Before, replaced[o] = o.Size, had[o], true
				break
			}
		}
		all = append(all, cut)
	}
	for _, s := range before {
		if has[s] == 0 && !replaced[s] {
			all = append(all, Cut{Size: s.Size, Before: had[s]})
		}
	}
	return all
}
