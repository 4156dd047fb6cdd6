package bag

import (
	"cmp"
	"slices"
	"strings"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/plan"
)

// Sorted is a plan's pieces sorted into bags.
type Sorted struct {
	Title string        // the plan's
	Mark  string        // the three characters that its codes begin with
	Bags  []Bag         // Bags[i] has the number i+1
	Units length.System // what sizes are told in
	of    map[origin]int
}

// An origin is where pieces come from: a use of a piece of a fabric.
type origin struct {
	fabric, piece string
	use           int
}

// Of is the number of the bag that a use of a piece goes into, or 0 where there
// is none. A piece placed as a spare goes into the bag of its use.
func (s *Sorted) Of(fabric, piece string, use int) int {
	return s.of[origin{fabric, piece, use}]
}

// Bag is the bag of that number, or nil.
func (s *Sorted) Bag(number int) *Bag {
	if number < 1 || number > len(s.Bags) {
		return nil
	}
	return &s.Bags[number-1]
}

// Sort sorts the pieces of every fabric into bags. What parts one bag from
// another is the plan's to say: block, size and fabric, any of them; what is cut
// last, binding and backing, is never put in with anything else. Bags are
// numbered in the order of the blocks, then of the pieces of no block as the plan
// lists them, then binding, then backing; within these the largest size comes
// first, then the fabrics in the plan's order.
func Sort(p *plan.Plan, lists []cutting.List) *Sorted {
	entries := entriesOf(p, lists)
	slices.SortStableFunc(entries, func(a, b entry) int {
		return cmp.Or(cmp.Compare(a.rank, b.rank), cmp.Compare(b.hi, a.hi),
			cmp.Compare(b.lo, a.lo), cmp.Compare(a.fabric, b.fabric))
	})
	groups := groupsOf(entries, p.BagBy)
	s := &Sorted{Title: p.Title, Mark: markOf(p), Units: p.Units, of: map[origin]int{}}
	for i, g := range groups {
		b := Bag{Number: i + 1, Of: len(groups), Places: placesOf(g), Rows: rowsOf(g)}
		b.Code = newCode(s.Mark, b.Number, holds(&b))
		s.Bags = append(s.Bags, b)
		for _, e := range g {
			s.of[e.origin] = b.Number
		}
	}
	return s
}

// An entry is a use of a piece, with what it is sorted by.
type entry struct {
	origin
	place  Place // without a count
	last   last
	rank   int           // of the place: blocks, then the rest, then what is cut last
	hi, lo length.Length // the longer and the shorter side
	fabric int           // index of the fabric
	name   string        // of the fabric
	size   length.Size
	turns  bool
	cutting.Use
}

// last says what is cut last and kept apart.
type last int

const (
	notLast last = iota
	binding
	backing
)

func lastOf(piece *cutting.Piece, u cutting.Use) last {
	switch {
	case u.Block != "":
		return notLast
	case piece.Late || strings.EqualFold(u.For, "binding"):
		return binding
	case strings.EqualFold(u.For, "backing"):
		return backing
	}
	return notLast
}

func entriesOf(p *plan.Plan, lists []cutting.List) []entry {
	var entries []entry
	for fi, list := range lists {
		for _, piece := range list.Pieces {
			for ui, u := range piece.Uses {
				if u.Count+u.Spares <= 0 {
					continue
				}
				e := entry{origin: origin{list.Fabric.ID, piece.ID, ui}, place: Place{Block: u.Block, For: u.For},
					last: lastOf(piece, u), fabric: fi, name: cmp.Or(list.Fabric.Name, list.Fabric.ID),
					size: piece.Size, turns: piece.MayTurn, Use: u}
				e.hi, e.lo = max(piece.Size.W, piece.Size.H), min(piece.Size.W, piece.Size.H)
				if u.Block != "" {
					e.place.For = ""
				}
				if u.Unit == "" {
					e.Unit = plan.Patch
				}
				entries = append(entries, e)
			}
		}
	}
	rankPlaces(p, entries)
	return entries
}

// rankPlaces names each entry's block and gives places their order. Fabrics come
// one after the other, so pieces of no block are first brought into the order of
// the plan's lines.
func rankPlaces(p *plan.Plan, entries []entry) {
	ranks := map[Place]int{}
	names := map[string]string{}
	for _, b := range p.Blocks {
		ranks[Place{Block: b.ID}] = len(ranks)
		names[b.ID] = b.Name
	}
	byLine := make([]*entry, len(entries))
	for i := range entries {
		byLine[i] = &entries[i]
	}
	slices.SortStableFunc(byLine, func(a, b *entry) int {
		return cmp.Or(cmp.Compare(a.last, b.last), cmp.Compare(a.At.Line, b.At.Line), cmp.Compare(a.At.Col, b.At.Col))
	})
	for _, e := range byLine {
		if _, ok := ranks[e.place]; !ok {
			ranks[e.place] = len(ranks)
		}
		e.rank = ranks[e.place]
		e.place.Name = names[e.place.Block]
	}
}

// groupsOf parts the entries by the keys, in order of each group's first entry.
func groupsOf(entries []entry, by []plan.BagKey) [][]entry {
	if len(by) == 0 {
		by = []plan.BagKey{plan.ByBlock, plan.BySize}
	}
	type key struct {
		last   last
		rank   int
		hi, lo length.Length
		fabric int
	}
	at := map[key]int{}
	var groups [][]entry
	for _, e := range entries {
		k := key{last: e.last}
		if slices.Contains(by, plan.ByBlock) {
			k.rank = e.rank
		}
		if slices.Contains(by, plan.BySize) {
			k.hi, k.lo = e.hi, e.lo
		}
		if slices.Contains(by, plan.ByFabric) {
			k.fabric = e.fabric
		}
		i, ok := at[k]
		if !ok {
			i = len(groups)
			at[k] = i
			groups = append(groups, nil)
		}
		groups[i] = append(groups[i], e)
	}
	// A group that is not parted by block may begin with what is cut last.
	slices.SortStableFunc(groups, func(a, b []entry) int { return cmp.Compare(a[0].last, b[0].last) })
	return groups
}

func placesOf(group []entry) []Place {
	var places []Place
	for _, e := range group {
		i := slices.IndexFunc(places, func(p Place) bool { return p.Block == e.place.Block && p.For == e.place.For })
		if i < 0 {
			i = len(places)
			places = append(places, e.place)
		}
		places[i].Count += e.Count
	}
	return places
}

// A kind is what makes pieces the same row.
type kind struct {
	hi, lo   length.Length
	upright  int // which way pieces that may not be turned lie: 1 W is longer, 2 H is; 0 they may
	finished length.Size
	unit     plan.Unit
	role     string
	into     int
	joined   cutting.Joined
}

func (e entry) kind() kind {
	k := kind{hi: e.hi, lo: e.lo, finished: e.Finished, unit: e.Unit, role: e.Role, into: int(e.Into)}
	if e.Joined != nil {
		k.joined = *e.Joined
	}
	switch {
	case e.turns || e.hi == e.lo:
	case e.size.W == e.hi:
		k.upright = 1
	default:
		k.upright = 2
	}
	return k
}

// settle gives pieces that may be turned the direction of those of their kind
// that may not, where there is one direction only: a mix of a striped and a plain
// fabric is one row.
func settle(kinds []kind) {
	for i, k := range kinds {
		if k.upright != 0 {
			continue
		}
		found := 0
		for _, other := range kinds {
			direction := other.upright
			other.upright = 0
			if direction != 0 && other == k {
				found |= direction
			}
		}
		if found != 3 {
			kinds[i].upright = found
		}
	}
}

func rowsOf(group []entry) []Row {
	kinds := make([]kind, len(group))
	for i, e := range group {
		kinds[i] = e.kind()
	}
	settle(kinds)
	at := map[kind]int{}
	var rows []Row
	for n, e := range group {
		i, ok := at[kinds[n]]
		if !ok {
			i = len(rows)
			at[kinds[n]] = i
			rows = append(rows, Row{Cut: kinds[n].size(e.size), Finished: e.Finished, Unit: e.Unit, Role: e.Role, Into: e.Into, Joined: e.Joined})
		}
		rows[i].add(e)
	}
	slices.SortStableFunc(rows, compareRows)
	return rows
}

// size is the row's cut size: as the plan gives it, or as it must lie.
func (k kind) size(asCut length.Size) length.Size {
	switch k.upright {
	case 1:
		return length.Size{W: k.hi, H: k.lo}
	case 2:
		return length.Size{W: k.lo, H: k.hi}
	}
	return asCut
}

func (r *Row) add(e entry) {
	r.Count += e.Count
	r.Spares += e.Spares
	i := slices.IndexFunc(r.Fabrics, func(s Share) bool { return s.ID == e.origin.fabric })
	if i < 0 {
		i = len(r.Fabrics)
		r.Fabrics = append(r.Fabrics, Share{ID: e.origin.fabric, Name: e.name})
	}
	r.Fabrics[i].Count += e.Count
	r.Fabrics[i].Spares += e.Spares
}

func compareRows(a, b Row) int {
	return cmp.Or(
		cmp.Compare(max(b.Cut.W, b.Cut.H), max(a.Cut.W, a.Cut.H)),
		cmp.Compare(min(b.Cut.W, b.Cut.H), min(a.Cut.W, a.Cut.H)),
		cmp.Compare(a.Cut.W, b.Cut.W),
		cmp.Compare(a.Unit, b.Unit), cmp.Compare(a.Role, b.Role),
		cmp.Compare(b.Finished.W, a.Finished.W), cmp.Compare(b.Finished.H, a.Finished.H))
}
