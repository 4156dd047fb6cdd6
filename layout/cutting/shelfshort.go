package cutting

import (
	"context"

	"cutbinder/layout/length"
	"cutbinder/layout/plan"
	"cutbinder/layout/trade"
)

// A Shortage says of a fabric whose shelf doesn't hold all its pieces what would
// help.
type Shortage struct {
	Lacks []Lack
	// More is the length of one more cut of the fabric's full width that holds
	// all that is lacking, squaring included; zero where no length does.
	More length.Length
	// Buy is what to ask for to get it.
	Buy trade.Purchase
	// Unspared is how many pieces are still lacking where no spares are cut.
	Unspared int
}

// A Lack is pieces of one size that found no place.
type Lack struct {
	Piece  int // index into the fabric's Pieces
	Count  int // spares among them
	Spares int
	Mixes  []string // the mixes they may come from; none of their other fabrics has room
}

// Pieces is how many pieces are lacking, spares among them.
func (s *Shortage) Pieces() (count, spares int) {
	for _, l := range s.Lacks {
		count += l.Count
		spares += l.Spares
	}
	return count, spares
}

// Shortages works out what would help each fabric that is short: an answer for
// every fabric, nil where all its pieces have a place.
func Shortages(ctx context.Context, p *plan.Plan, fabrics []Fabric, o Options) ([]*Shortage, error) {
	out := make([]*Shortage, len(fabrics))
	o.Done = nil
	for i := range fabrics {
		f := &fabrics[i]
		if f.Missing() == 0 {
			continue
		}
		s := &Shortage{Lacks: f.lacks()}
		if err := f.more(ctx, p, o, s); err != nil {
			return nil, err
		}
		lean, err := cutOne(ctx, p, f.unspared(), o)
		if err != nil {
			return nil, err
		}
		s.Unspared = lean.Missing()
		out[i] = s
	}
	return out, nil
}

// lacks lists what found no place.
func (f *Fabric) lacks() (lacks []Lack) {
	for i, n := range f.Short {
		if n == 0 {
			continue
		}
		l := Lack{Piece: i, Count: n, Spares: min(n, f.Pieces[i].Spares())}
		seen := map[string]bool{}
		for _, u := range f.Pieces[i].Uses {
			if u.Mix != "" && !seen[u.Mix] {
				seen[u.Mix] = true
				l.Mixes = append(l.Mixes, u.Mix)
			}
		}
		lacks = append(lacks, l)
	}
	return lacks
}

// more lays what is lacking out on cloth that is bought.
func (f *Fabric) more(ctx context.Context, p *plan.Plan, o Options, s *Shortage) error {
	fabric := *f.Fabric
	fabric.Have = nil
	list := List{Fabric: &fabric}
	for _, lack := range s.Lacks {
		piece := *f.Pieces[lack.Piece]
		piece.Need = lack.Count
		piece.Uses = []Use{piece.Uses[0]}
		piece.Uses[0].Count, piece.Uses[0].Spares = lack.Count, 0
		if piece.WOF {
			piece.Size.W = fabric.Width
		}
		if !fits(piece.Size, !piece.MayTurn, fabric.Width) {
			return nil
		}
		list.Pieces = append(list.Pieces, &piece)
	}
	cut, err := cutOne(ctx, p, list, o)
	if err != nil {
		return err
	}
	c := &cut.Cloths[0]
	s.More, s.Buy = c.Least(p), cut.Buy
	return nil
}

// unspared is the fabric's list without spares.
func (f *Fabric) unspared() List {
	l := List{Fabric: f.Fabric}
	for _, piece := range f.Pieces {
		own := *piece
		own.Need -= piece.Spares()
		own.Uses = append([]Use(nil), piece.Uses...)
		for i := range own.Uses {
			own.Uses[i].Spares = 0
		}
		if own.Need > 0 {
			l.Pieces = append(l.Pieces, &own)
		}
	}
	return l
}

// OnCloths lays a fabric's pieces out again as if the cloths on its shelf, and
// its usable width, were others: worn by the wash, or measured a little
// short. Of cloth that has the fabric's full width the width follows.
func (f *Fabric) OnCloths(ctx context.Context, p *plan.Plan, width length.Length, have []plan.Cloth, o Options) (Fabric, error) {
	fabric := *f.Fabric
	fabric.Width, fabric.Have = width, have
	l := List{Fabric: &fabric}
	for _, piece := range f.Pieces {
		own := *piece
		if own.WOF {
			own.Size.W = usable(&fabric)
		}
		l.Pieces = append(l.Pieces, &own)
	}
	o.Done = nil
	return cutOne(ctx, p, l, o)
}

// Apart is the length that a fabric's pieces take where every size has strips of
// its own across the width, each the way that takes less: the rule of thumb of
// published lists. Strips is how many those are. It is zero where a piece is
// wider than the cloth.
func (l *List) Apart() (used length.Length, strips int) {
	for _, p := range l.Pieces {
		s := p.StripsFor(p.Need, l.Fabric.Width)
		if s.Count == 0 {
			return 0, 0
		}
		used += s.Height * length.Length(s.Count)
		strips += s.Count
	}
	return used, strips
}

// Strips are strips across the width for pieces of one size.
type Strips struct {
	Count  int
	Each   int // pieces to a strip
	Height length.Length
}

// StripsFor is the strips across cloth of a width that n of a piece take by
// themselves, the way that takes less cloth; none where it is wider than the
// cloth.
func (p *Piece) StripsFor(n int, width length.Length) (least Strips) {
	for _, z := range []length.Size{p.Size, turned(p.Size)} {
		if z.W > width || z != p.Size && !p.MayTurn {
			continue
		}
		each := int64(width / z.W)
		s := Strips{int(ceilDiv(int64(n), each)), int(each), z.H}
		if least.Count == 0 || s.Height*length.Length(s.Count) < least.Height*length.Length(least.Count) {
			least = s
		}
	}
	return least
}
