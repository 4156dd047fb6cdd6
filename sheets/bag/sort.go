package bag

import (
	"cmp"
	"fmt"
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

// String lists the bags, one a line, for people who look into the program:
// "2/8 K7Q-02-79L A Lantern: 3 1/2 x 3 1/2 48+3 dusk=24+2 ember=24+1;", where 48+3
// stands for 48 pieces and 3 spares.
func (s *Sorted) String() string {
	var out strings.Builder
	for i := range s.Bags {
		b := &s.Bags[i]
		fmt.Fprintf(&out, "%d/%d %s %s:", b.Number, b.Of, b.Code, b.Heading())
		for _, r := range b.Rows {
			fmt.Fprintf(&out, " %s %d+%d", s.Units.FormatSize(r.Cut), r.Count, r.Spares)
			if r.Unit != plan.Patch {
				fmt.Fprintf(&out, " %s", r.Unit)
			}
			for _, f := range r.Fabrics {
				fmt.Fprintf(&out, " %s=%d+%d", f.ID, f.Count, f.Spares)
			}
			out.WriteString(";")
		}
		out.WriteString("\n")
	}
	return out.String()
}

// Sort sorts the pieces of every fabric into bags. What parts one bag from
// another is the plan's to say: block, size and fabric, any of them; what is cut
// last, binding and backing, is never put in with anything else. Bags are
// numbered in the order of the blocks, then of setting, sashing, borders and other
// pieces of no block, each as the plan lists them, then binding, then backing;
// within these the largest size comes first, then the fabrics in the plan's order.
// The parts of a plan may stand anywhere in a text and have tables of their own in a
// workbook: the numbers are the same whichever is read.
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
		b.Code = codeFor(s.Mark, b.Number, holds(&b))
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
// the plan's parts, and of the lines of each.
func rankPlaces(p *plan.Plan, entries []entry) {
	ranks := map[Place]int{}
	names := map[string]string{}
	for _, b := range p.Blocks {
		ranks[Place{Block: b.ID}] = len(ranks)
		names[b.ID] = b.Name
	}
	parts := partsOf(p)
	byLine := make([]*entry, len(entries))
	for i := range entries {
		byLine[i] = &entries[i]
	}
	slices.SortStableFunc(byLine, func(a, b *entry) int {
		return cmp.Or(cmp.Compare(a.last, b.last), cmp.Compare(parts[a.At], parts[b.At]),
			cmp.Compare(a.At.Line, b.At.Line), cmp.Compare(a.At.Col, b.At.Col))
	})
	for _, e := range byLine {
		if _, ok := ranks[e.place]; !ok {
			ranks[e.place] = len(ranks)
		}
		e.rank = ranks[e.place]
		e.place.Name = names[e.place.Block]
	}
}

// partsOf says which part of the plan stands where, in the order that a quilt is
// sewn in: the setting first, with anything else that isn't named here.
func partsOf(p *plan.Plan) map[plan.Pos]int {
	parts := map[plan.Pos]int{}
	if p.Sashing != nil {
		parts[p.Sashing.At] = 1
	}
	for _, b := range p.Borders {
		parts[b.At] = 2
	}
	for _, piece := range p.Pieces {
		parts[piece.At] = 3
	}
	return parts
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
