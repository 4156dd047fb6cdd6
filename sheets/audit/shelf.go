package audit

import (
	"fmt"
	"slices"
	"strings"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/plan"
	"cutbinder/sheets/say"
)

// shelves tells what is short of what is on the shelf, and what was moved to
// other fabrics of a mix because of it.
func (a *auditor) shelves() error {
	for _, m := range cutting.Moves(a.plan, a.fabrics) {
		var to []string
		for _, f := range m.To {
			to = append(to, f.Name)
		}
		a.find(plan.Remark, place(m.From.Node, "have"), fmt.Sprintf("moved:%s:%s", m.From.ID, a.key(m.Size)), "nothing is to be done; a larger cut of it would keep them",
			"%s holds too little for its share of the mix: (%d) %s come from %s instead", m.From.Name, m.Count, a.v.Size(m.Size), say.Things(to))
	}
	shortages, err := cutting.Shortages(a.ctx, a.plan, a.fabrics, a.o)
	if err != nil {
		return err
	}
	for i, s := range shortages {
		if s == nil {
			continue
		}
		f, level := &a.fabrics[i], plan.Fault
		if s.Unspared == 0 { // the quilt can be made
			level = plan.Doubt
		}
		a.find(level, place(f.Fabric.Node, "have"), "short:"+f.Fabric.ID, strings.Join(a.v.Remedies(f, s), "; "),
			"%s: %s is too little: %s", f.Fabric.Name, a.v.Shelf(f.Fabric.Have), a.v.Lacking(f, s))
	}
	return nil
}

// unusable tells which cloths are used up by squaring their ends.
func (a *auditor) unusable(f *plan.Fabric) {
	var all []string
	at := plan.Pos{}
	for _, c := range f.Have {
		if c.H > a.plan.Allow.Squaring {
			continue
		}
		if len(all) == 0 {
			at = c.At
		}
		if l := a.v.With(c.H); !slices.Contains(all, l) {
			all = append(all, l)
		}
	}
	if len(all) == 0 {
		return
	}
	a.find(plan.Doubt, at, "unusable:"+f.ID, "measure it again, or leave it out",
		"%s: squaring takes %s, so that nothing can be cut from a cloth %s long", f.Name, a.v.With(a.plan.Allow.Squaring), say.Things(all))
}

// tightShelf lays the pieces out once more on cloths that are a hair shorter,
// and a hair narrower.
func (a *auditor) tightShelf(f *cutting.Fabric) error {
	for _, way := range []struct {
		what          string
		narrow, short length.Length
	}{{"shorter", 0, a.hair()}, {"narrower", a.hair(), 0}} {
		n, err := a.missingOn(f, f.Fabric.Width-way.narrow, func(c *plan.Cloth) { c.W -= way.narrow; c.H -= way.short })
		if err != nil {
			return err
		}
		if n > 0 {
			a.find(plan.Doubt, place(f.Fabric.Node, "have"), "tight:"+f.Fabric.ID, "measure it before you cut anything, and cut this fabric first",
				"%s: nothing is to spare on %s: on cloth %s %s %s", f.Fabric.Name, a.v.Shelf(f.Fabric.Have), a.v.With(a.hair()), way.what,
				fmt.Sprintf("%s no place", plural(n, "piece finds", "pieces find")))
			return nil
		}
	}
	return nil
}

// washedShelf does the same for cloth that is yet to be washed.
func (a *auditor) washedShelf(f *cutting.Fabric) error {
	if !f.Fabric.Prewash {
		return nil
	}
	shrink := f.Fabric.Shrink
	n, err := a.missingOn(f, washed(f.Fabric.Width, shrink.Width), func(c *plan.Cloth) {
		c.W, c.H = washed(c.W, shrink.Width), washed(c.H, shrink.Length)
	})
	if err != nil || n == 0 {
		return err
	}
	a.find(plan.Doubt, place(f.Fabric.Node, "prewash", "have"), "wash:"+f.Fabric.ID, "wash it, measure again, and write what it measures then as have:",
		"%s: the wash may take %s of the length and %s of the width; then %s no place", f.Fabric.Name,
		say.Percent(shrink.Length), say.Percent(shrink.Width), plural(n, "piece finds", "pieces find"))
	return nil
}

// washed is what the wash leaves of a length.
func washed(l length.Length, shrink plan.Percent) length.Length {
	return length.Length(int64(l) * int64(10000-shrink) / 10000)
}

// missingOn is how many pieces find no place on the shelf's cloths after a
// change, nor anywhere else.
func (a *auditor) missingOn(f *cutting.Fabric, width length.Length, change func(*plan.Cloth)) (int, error) {
	have := slices.Clone(f.Fabric.Have)
	for i := range have {
		change(&have[i])
		if have[i].W <= 0 || have[i].H <= a.plan.Allow.Squaring {
			return 0, nil
		}
	}
	again, err := f.OnCloths(a.ctx, a.plan, width, have, a.o)
	return max(again.Missing()-a.movable(f), 0), err
}

// movable is how many of a fabric's pieces may as well come from one of their
// mix that is bought: what is short of those is no loss.
func (a *auditor) movable(f *cutting.Fabric) (n int) {
	for _, p := range f.Pieces {
		for _, u := range p.Uses {
			m := a.plan.Mix(u.Mix)
			if u.Mix != "" && slices.ContainsFunc(m.Fabrics, func(id string) bool { return len(a.plan.Fabric(id).Have) == 0 }) {
				n += u.Count + u.Spares
			}
		}
	}
	return n
}
