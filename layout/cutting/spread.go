package cutting

import (
	"cmp"
	"slices"

	"cutbinder/layout/length"
	"cutbinder/layout/plan"
)

// A spreading deals demands out to fabrics.
type spreading struct {
	shelves map[string]*shelf // by fabric
	next    map[string]int    // by mix: whose turn it is
	pieces  map[string]*List  // by fabric
}

// spread gives each fabric its pieces.
func (b *builder) spread() []List {
	s := &spreading{map[string]*shelf{}, map[string]int{}, map[string]*List{}}
	for _, f := range b.plan.Fabrics {
		s.shelves[f.ID] = newShelf(f, b.plan.Allow.Squaring)
		s.pieces[f.ID] = &List{Fabric: f}
	}
	for _, d := range b.demands {
		if len(d.fabrics) == 1 {
			s.give(d.fabrics[0], d, d.count, d.spares)
		}
	}
	for _, d := range largestFirst(b.demands) {
		if len(d.fabrics) > 1 {
			s.deal(d)
		}
	}
	var lists []List
	for _, f := range b.plan.Fabrics {
		if l := s.pieces[f.ID]; len(l.Pieces) > 0 {
			l.settle()
			lists = append(lists, *l)
		}
	}
	return lists
}

// largestFirst is the order in which mixes are dealt: what is hard to place finds
// room first.
func largestFirst(demands []*demand) []*demand {
	sorted := slices.Clone(demands)
	slices.SortStableFunc(sorted, func(a, b *demand) int {
		return cmp.Or(cmp.Compare(max(b.size.W, b.size.H), max(a.size.W, a.size.H)),
			cmp.Compare(min(b.size.W, b.size.H), min(a.size.W, a.size.H)))
	})
	return sorted
}

// deal gives a mix's pieces to its fabrics one by one in turn: first to those
// that hold them by the rule of thumb, then by their area, then to any. Strips for
// one run are dealt until they come to it: as many as the narrowest fabric takes
// are too many where wider ones give some.
func (s *spreading) deal(d *demand) {
	shelves, loads := s.loads(d)
	hands, counts := make([]int, len(shelves)), make([]int, len(shelves))
	turn := s.next[d.source.ID]
	left, run := d.count+d.spares, newRun(d)
	for _, room := range []func(*shelf, load) bool{(*shelf).byRule, (*shelf).byArea, (*shelf).anyRoom} {
		for misses := 0; left > 0 && misses < len(shelves); turn++ {
			i := turn % len(shelves)
			if !d.fits[i] || !room(shelves[i], loads[i]) {
				misses++
				continue
			}
			misses = 0
			shelves[i].take(loads[i], 1)
			hands[i]++
			if left > d.spares {
				counts[i]++
			}
			if left--; run.add(d.fabrics[i]) {
				left = 0
			}
		}
	}
	s.next[d.source.ID] = turn % len(shelves)
	for i, f := range d.fabrics {
		if hands[i] > 0 {
			s.hand(f, d, counts[i], hands[i]-counts[i])
		}
	}
}

// A run is strips that are sewn end to end, as they are dealt.
type run struct {
	need, loss, got length.Length
}

// newRun is the run of a demand; one that never comes to what is needed where the
// demand is for something else, or for one run with others.
func newRun(d *demand) run {
	j := d.use.Joined
	if j == nil || j.Run > 0 || d.use.Bias || d.use.For == ForBacking || d.spares > 0 {
		return run{}
	}
	return run{need: j.Size.H * length.Length(j.Count), loss: j.Loss}
}

// add sews a fabric's strip on, and says whether the run is long enough.
func (r *run) add(f *plan.Fabric) bool {
	if r.need <= 0 {
		return false
	}
	if r.got > 0 {
		r.got -= r.loss
	}
	r.got += usable(f)
	return r.got >= r.need
}

// loads is the shelves of a demand's fabrics, and what one piece takes of each.
func (s *spreading) loads(d *demand) ([]*shelf, []load) {
	var shelves []*shelf
	var loads []load
	for _, f := range d.fabrics {
		shelf := s.shelves[f.ID]
		shelves, loads = append(shelves, shelf), append(loads, shelf.load(d.size, d.fixed))
	}
	return shelves, loads
}

// give takes room on the fabric's shelf and hands the pieces over.
func (s *spreading) give(f *plan.Fabric, d *demand, count, spares int) {
	shelf := s.shelves[f.ID]
	shelf.take(shelf.load(d.size, d.fixed), int64(count+spares))
	s.hand(f, d, count, spares)
}

// hand puts pieces on a fabric's list.
func (s *spreading) hand(f *plan.Fabric, d *demand, count, spares int) {
	use := d.use
	if d.source.Mix {
		use.Mix = d.source.ID
	}
	use.Count, use.Spares = count, spares
	s.pieces[f.ID].put(d.size, d.fixed, d.late, use)
}

// put adds pieces of a size to a list: to the piece of that size, or as a new
// one. A width of WOF becomes the fabric's.
func (l *List) put(size length.Size, fixed, late bool, use Use) {
	p := Piece{WOF: size.W == length.WOF, Late: late}
	use.Cut = size
	p.Size, use.Sum = asCut(size, usable(l.Fabric), use.Sum)
	p.MayTurn = p.Size.W == p.Size.H || !fixed && !l.Fabric.OneWay
	if p.MayTurn && p.Size.W > p.Size.H {
		p.Size = turned(p.Size)
		use.Sum = use.Sum.Turned()
	}
	i := slices.IndexFunc(l.Pieces, func(q *Piece) bool {
		return q.Size == p.Size && q.MayTurn == p.MayTurn && q.Late == p.Late && q.WOF == p.WOF
	})
	if i < 0 {
		i = len(l.Pieces)
		l.Pieces = append(l.Pieces, &p)
	}
	l.Pieces[i].use(use)
}

// use adds a use to a piece, or to the count of the same use.
func (p *Piece) use(u Use) {
	p.Need += u.Count + u.Spares
	for i := range p.Uses {
		if old := &p.Uses[i]; old.same(u) {
			old.Count += u.Count
			old.Spares += u.Spares
			return
		}
	}
	p.Uses = append(p.Uses, u)
}

// same says whether two uses of a piece differ in nothing but how many.
func (u Use) same(v Use) bool {
	return u.At == v.At && u.Block == v.Block && u.For == v.For && u.Role == v.Role &&
		u.Into == v.Into && u.Mix == v.Mix && u.Joined == v.Joined && u.Set == v.Set
}
