package cutting

import (
	"context"
	"slices"

	"cutbinder/layout/cores"
	"cutbinder/layout/length"
	"cutbinder/layout/plan"
	"cutbinder/layout/trade"
)

// A Width is what a fabric to buy takes at another usable width than the plan's.
type Width struct {
	Width length.Length
	Fits  bool          // its pieces go between the selvages; else all that follows is zero
	Used  length.Length // cut from
	Buy   trade.Purchase
}

// Widths works out what the fabrics to buy take at other usable widths: for each
// fabric those that at gives, in rising order. Fabrics on the shelf and those of
// which at gives none have no answer. The pieces are derived anew, since strips
// across the width are fewer of wider cloth.
//
// Whatever is cut from cloth can be cut from wider cloth, so that a wider one
// never takes more: where the search finds no such layout, the narrower one's
// purchase stands, the fabric's own among them. The other way round, cloth that is
// narrower but holds the fabric's own layout takes what that takes.
func Widths(ctx context.Context, p *plan.Plan, fabrics []Fabric, at func(*plan.Fabric) []length.Length, o Options) ([][]Width, error) {
	derived, problems := Pieces(p)
	if problems.Faulty() {
		return nil, problems
	}
	asked := make([][]length.Length, len(fabrics))
	for i := range fabrics {
		if f := &fabrics[i]; len(f.Fabric.Have) == 0 && f.Used > 0 {
			asked[i] = slices.Sorted(slices.Values(at(f.Fabric)))
		}
	}
	out, open := make([][]Width, len(fabrics)), make([][]List, len(fabrics))
	cores.Each(len(fabrics), max(o.Cores, 1), func(i int) {
		if asked[i] != nil {
			out[i], open[i] = fabrics[i].widths(p, derived, asked[i])
		}
	})
	var lists []List
	var homes []*Width
	for i := range open {
		for j, l := range open[i] {
			if l.Fabric != nil {
				lists, homes = append(lists, l), append(homes, &out[i][j])
			}
		}
	}
	o.Done = nil
	laid, err := Cut(ctx, p, lists, o)
	if err != nil {
		return nil, err
	}
	for i, f := range laid {
		homes[i].Used, homes[i].Buy = f.Used, f.Buy
	}
	for i := range fabrics {
		fabrics[i].riseAndFall(out[i])
	}
	return out, nil
}

// widths begins the fabric's answers, one for each width, and gives the lists that
// are to be laid out for them: none with a fabric where nothing need be.
func (f *Fabric) widths(p *plan.Plan, derived []List, all []length.Length) ([]Width, []List) {
	out, open := make([]Width, len(all)), make([]List, len(all))
	for i, w := range all {
		out[i].Width = w
		l, ok := f.at(p, derived, w)
		out[i].Fits = ok
		switch {
		case ok && w >= f.Fabric.Width && f.asMuch(p, l), ok && w < f.Fabric.Width && f.holds(l):
			out[i].Used, out[i].Buy = f.Used, f.Buy
		case ok:
			open[i] = l
		}
	}
	return out, open
}

// asMuch says that a list on other cloth can't be bought as less than the fabric
// is: by its area alone, and by its longest piece. No search is needed then.
func (f *Fabric) asMuch(p *plan.Plan, l List) bool {
	var area int64
	least := length.Length(0)
	for _, piece := range l.Pieces {
		area = plus(area, product(squares(piece.Size), int64(piece.Need)))
		height := piece.Size.H
		if piece.MayTurn && max(piece.Size.W, piece.Size.H) <= l.Fabric.Width {
			height = min(piece.Size.W, piece.Size.H)
		}
		least = max(least, height)
	}
	least = max(least, length.Length(area/int64(l.Fabric.Width/length.Sixtyfourth+1))*length.Sixtyfourth)
	return trade.ToBuy(least, Rules(p, l.Fabric)).Buy >= f.Buy.Buy
}

// holds says that the fabric's own layout gives a list for narrower cloth too: it
// asks for the same pieces, strips across the width being as many, and what is
// left over beside them has the difference.
func (f *Fabric) holds(l List) bool {
	type ask struct {
		size    length.Size
		mayTurn bool
		wof     bool
	}
	need := map[ask]int{}
	count := func(pieces []*Piece, sign int) {
		for _, p := range pieces {
			a := ask{p.Size, p.MayTurn, p.WOF}
			if p.WOF {
				a.size.W = 0
			}
			need[a] += sign * p.Need
		}
	}
	count(f.Pieces, 1)
	count(l.Pieces, -1)
	for _, n := range need {
		if n != 0 {
			return false
		}
	}
	return !slices.ContainsFunc(f.Cloths, func(c Cloth) bool { return f.across(&c, c.Root) > l.Fabric.Width })
}

// across is the width that the pieces of a section need: strips across the width
// make do with any.
func (f *Fabric) across(c *Cloth, s Section) (w length.Length) {
	if s.Placed >= 0 && !f.Pieces[c.Placed[s.Placed].Piece].WOF {
		return s.W
	}
	for _, part := range s.Parts {
		if s.Dir == Along {
			w += f.across(c, part)
		} else {
			w = max(w, f.across(c, part))
		}
	}
	return w
}

// riseAndFall sees to it that no wider cloth takes more than a narrower one, the
// fabric as it is laid out among them.
func (f *Fabric) riseAndFall(widths []Width) {
	var least *Width
	own := Width{Width: f.Fabric.Width, Fits: true, Used: f.Used, Buy: f.Buy}
	for i := range widths {
		w := &widths[i]
		switch {
		case !w.Fits:
			continue
		case w.Width < own.Width && w.Buy.Exact < own.Buy.Exact:
			w.Used, w.Buy = own.Used, own.Buy
		case w.Width >= own.Width && own.Buy.Exact < w.Buy.Exact:
			w.Used, w.Buy = own.Used, own.Buy
		}
		if least != nil && least.Buy.Exact < w.Buy.Exact {
			w.Used, w.Buy = least.Used, least.Buy
		}
		least = w
	}
}

// at is the fabric's list were it so wide: what the plan asks of it at that
// width, and what was moved to it from the shelves of other fabrics. It is false
// where a piece is too wide.
func (f *Fabric) at(p *plan.Plan, derived []List, width length.Length) (List, bool) {
	fabric := *f.Fabric
	fabric.Width = width
	other := *p
	other.Fabrics = slices.Clone(p.Fabrics)
	other.Fabrics[slices.IndexFunc(p.Fabrics, func(g *plan.Fabric) bool { return g.ID == fabric.ID })] = &fabric
	lists, problems := Pieces(&other)
	if problems.Faulty() {
		return List{}, false
	}
	l := List{Fabric: &fabric}
	if own := listOf(lists, fabric.ID); own != nil {
		l = *own
	}
	before := listOf(derived, fabric.ID)
	for _, piece := range f.Pieces {
		for _, u := range piece.Uses {
			n := u.Count + u.Spares - before.countAlike(u)
			if u.Mix == "" || n <= 0 {
				continue
			}
			if !fits(u.Cut, u.NoTurn || piece.WOF || fabric.OneWay, width) {
				return List{}, false
			}
			piece.lend(u, n, 0, &l)
		}
	}
	l.settle()
	return l, true
}

// listOf is a fabric's list; nil where it has none.
func listOf(lists []List, id string) *List {
	for i := range lists {
		if lists[i].Fabric.ID == id {
			return &lists[i]
		}
	}
	return nil
}

// countAlike is how many pieces a list, which may be nil, has for a use, of
// whichever derivation of the plan the use is.
func (l *List) countAlike(u Use) (n int) {
	if l == nil {
		return 0
	}
	for _, p := range l.Pieces {
		for _, v := range p.Uses {
			alike := v
			if u.Joined != nil && v.Joined != nil {
				alike.Joined = u.Joined
			}
			if u.Set != nil && v.Set != nil {
				alike.Set = u.Set
			}
			if alike.same(u) && v.Cut == u.Cut {
				n += v.Count + v.Spares
			}
		}
	}
	return n
}
