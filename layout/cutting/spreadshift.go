package cutting

import (
	"slices"

	"cutbinder/layout/length"
	"cutbinder/layout/plan"
)

// Shift moves pieces that found no place on their fabric to the other fabrics of
// the mix they come from: what is left of a fabric's shelf is known only once it
// is laid out. Where what found no place may not move, pieces that may make room
// for it. It gives all lists anew and the ids of the fabrics whose list
// changed, in the plan's order; none where nothing could be moved. Lay those out
// again, and shift again while anything changes.
//
// Full is the fabrics that were short in an earlier round, empty in the first; Shift
// adds to it. A fabric that was short takes nothing more: pieces only ever move to fabrics
// that never were, and so this ends. How many pieces of each line there are over all
// fabrics stays the same, and so pairs stay pairs.
func Shift(p *plan.Plan, fabrics []Fabric, full map[string]bool) (lists []List, changed []string) {
	s := newShifting(p, fabrics, full)
	for _, f := range fabrics {
		var stuck int64
		for i, short := range f.Short {
			left := s.rehouse(f.Fabric, f.Pieces[i], short)
			stuck = plus(stuck, product(squares(f.Pieces[i].Size), int64(left)))
		}
		s.makeRoom(f.Fabric, stuck)
	}
	for _, f := range p.Fabrics {
		l := s.lists[f.ID]
		if s.changed[f.ID] {
			l.tidy()
			changed = append(changed, f.ID)
		}
		if len(l.Pieces) > 0 {
			lists = append(lists, *l)
		}
	}
	return lists, changed
}

// A shifting is lists on the move.
type shifting struct {
	plan    *plan.Plan
	lists   map[string]*List  // by fabric, the plan's all
	shelves map[string]*shelf // by fabric
	full    map[string]bool
	changed map[string]bool
}

func newShifting(p *plan.Plan, fabrics []Fabric, full map[string]bool) *shifting {
	s := &shifting{p, map[string]*List{}, map[string]*shelf{}, full, map[string]bool{}}
	for _, f := range p.Fabrics {
		s.lists[f.ID] = &List{Fabric: f}
		s.shelves[f.ID] = newShelf(f, p.Allow.Squaring)
	}
	for _, f := range fabrics {
		l := s.lists[f.Fabric.ID]
		if slices.ContainsFunc(f.Short, func(n int) bool { return n > 0 }) {
			full[f.Fabric.ID] = true
		}
		for _, piece := range f.Pieces {
			own := *piece
			own.Uses = slices.Clone(piece.Uses)
			l.Pieces = append(l.Pieces, &own)
		}
	}
	return s
}

// rehouse moves up to n of a fabric's pieces elsewhere: those of the last use
// first, and of a use its spares first. It gives how many have nowhere to go.
func (s *shifting) rehouse(from *plan.Fabric, piece *Piece, n int) (left int) {
	if n <= 0 {
		return 0
	}
	own := s.lists[from.ID].like(piece)
	for i := len(own.Uses) - 1; i >= 0 && n > 0; i-- {
		use := &own.Uses[i]
		homes := s.homes(from, own, *use)
		if len(homes) == 0 {
			continue
		}
		moving := min(n, use.Count+use.Spares)
		n -= moving
		for j, k := range fill(homes, *use, moving) {
			s.move(own, use, homes[j], k)
		}
		s.changed[from.ID] = true
	}
	return n
}

// makeRoom moves pieces that have another home from a fabric on which pieces
// that have none found no place: the largest first, until their area comes to
// that of the others.
func (s *shifting) makeRoom(from *plan.Fabric, area int64) {
	for _, piece := range s.lists[from.ID].Pieces {
		for area > 0 && piece.Need > 0 && s.rehouse(from, piece, 1) == 0 {
			area -= squares(piece.Size)
		}
	}
}

// fill shares n pieces of a use out among lists, each to the one that has fewest
// of them; of equals to the first.
func fill(homes []*List, u Use, n int) []int {
	have, more := make([]int, len(homes)), make([]int, len(homes))
	for i, l := range homes {
		have[i] = l.countOf(u)
	}
	for range n {
		least := 0
		for i := range homes {
			if have[i]+more[i] < have[least]+more[least] {
				least = i
			}
		}
		more[least]++
	}
	return more
}

// like is the list's own copy of a piece.
func (l *List) like(p *Piece) *Piece {
	i := slices.IndexFunc(l.Pieces, func(q *Piece) bool { return q.ID == p.ID })
	return l.Pieces[i]
}

// homes is where a use's pieces may go: the other fabrics of its mix that were
// never short and that can hold one. A run of strips would be too short with a
// strip from narrower cloth.
func (s *shifting) homes(from *plan.Fabric, p *Piece, u Use) (homes []*List) {
	for _, id := range s.mix(u.Mix) {
		l := s.lists[id]
		if l == nil || s.full[id] || l.Fabric == from || u.Joined != nil && p.WOF && usable(l.Fabric) < usable(from) {
			continue
		}
		fixed := u.NoTurn || p.WOF
		if fits(u.Cut, fixed || l.Fabric.OneWay, l.Fabric.Width) && s.shelves[id].holds(s.shelves[id].load(u.Cut, fixed)) {
			homes = append(homes, l)
		}
	}
	return homes
}

func (s *shifting) mix(id string) []string {
	for _, m := range s.plan.Mixes {
		if m.ID == id {
			return m.Fabrics
		}
	}
	return nil
}

// countOf is how many pieces a list has for a use.
func (l *List) countOf(u Use) int {
	n := 0
	for _, p := range l.Pieces {
		for _, v := range p.Uses {
			if v.same(u) {
				n += v.Count + v.Spares
			}
		}
	}
	return n
}

// move takes n pieces of a use to another list.
func (s *shifting) move(p *Piece, u *Use, to *List, n int) {
	if n == 0 {
		return
	}
	spares := min(n, u.Spares)
	p.lend(*u, n-spares, spares, to)
	u.Spares -= spares
	u.Count -= n - spares
	p.Need -= n
	s.changed[to.Fabric.ID] = true
}

// lend puts so many pieces of a use on another list, as the plan means them.
func (p *Piece) lend(u Use, count, spares int, to *List) {
	u.Count, u.Spares = count, spares
	if p.WOF {
		u.Sum = *u.Sum.Along
	} else if p.Size != u.Cut {
		u.Sum = u.Sum.Turned()
	}
	to.put(u.Cut, u.NoTurn || p.WOF, p.Late, u)
}

// tidy drops uses and pieces that came to nothing, and puts the rest in order.
func (l *List) tidy() {
	for _, p := range l.Pieces {
		p.Uses = slices.DeleteFunc(p.Uses, func(u Use) bool { return u.Count+u.Spares == 0 })
	}
	l.Pieces = slices.DeleteFunc(l.Pieces, func(p *Piece) bool { return p.Need == 0 })
	l.settle()
}

// turned is a size turned by a quarter.
func turned(s length.Size) length.Size { return length.Size{W: s.H, H: s.W} }
