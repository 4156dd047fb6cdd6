package pack

import "slices"

// A mender shortens a plan whose first cuts run across: it takes a few strips
// out and cuts their pieces anew in the shortest way of five stages.
type mender struct {
	sizes []size
	width int64
	unit  int64
	parts []strip
	seen  map[string]bool // what was cut anew in vain, by its pieces
	dice  dice
	work  *meter
}

// A strip is a part of a plan and how many pieces of each size it holds.
type strip struct {
	node
	held []int
}

const (
	mostTaken = 4         // strips are cut anew at a time
	mostPairs = 1_000_000 // ways to part what is cut anew in two
)

// mend shortens a plan until its length is at most goal or the work is at its
// limit. It gives up after many tries in vain, a hasty engine sooner.
func (e *engine) mend(sizes []size, width, goal, limit int64, known plan) plan {
	if known.root.dir != Across {
		return known
	}
	best := known
	m := &mender{sizes: sizes, width: width, unit: newInstance(sizes, width).unitY, seen: map[string]bool{}, work: e.work}
	m.add(known.root.splice())
	most := 2000
	if e.hasty {
		most = 200
	}
	e.work.within(limit, func() {
		for vain := 0; !e.settled(&best, goal) && vain < most && !e.work.stop(); vain++ {
			if less := m.try(m.draw()); less > 0 {
				best.used -= less
				vain = 0
			}
		}
	})
	if best.used == known.used {
		return known
	}
	var parts []node
	for _, p := range m.parts {
		parts = append(parts, p.node)
	}
	best.root = across(parts)
	return best
}

// add takes strips in.
func (m *mender) add(parts []node) {
	for _, p := range parts {
		s := strip{p, make([]int, len(m.sizes))}
		p.each(func(size int) { s.held[size]++ })
		m.parts = append(m.parts, s)
	}
}

// draw takes some strips by chance.
func (m *mender) draw() (taken []int) {
	n := min(len(m.parts), 1+m.dice.draw(mostTaken))
	for len(taken) < n {
		if i := m.dice.draw(len(m.parts)); !slices.Contains(taken, i) {
			taken = append(taken, i)
		}
	}
	slices.Sort(taken)
	return taken
}

// try cuts the pieces of some strips anew, and gives how much shorter that is.
func (m *mender) try(taken []int) int64 {
	left := make([]int, len(m.sizes))
	height := int64(0)
	for _, i := range taken {
		height += m.parts[i].h
		for k, n := range m.parts[i].held {
			left[k] += n
		}
	}
	m.work.spend(100 * len(m.sizes))
	sizes, index := m.part(left)
	if sizes == nil || boundArea(sizes, m.width) > height-m.unit {
		return 0
	}
	s := newSlicer(sizes, m.width, m.work)
	if s == nil {
		return 0
	}
	root, ok, _ := s.fit(Across, height-m.unit)
	if !ok {
		return 0
	}
	for _, i := range slices.Backward(taken) {
		m.parts = slices.Delete(m.parts, i, i+1)
	}
	root = root.renamed(index)
	if root.dir == Across {
		m.add(root.splice())
	} else {
		m.add([]node{root})
	}
	return height - root.h
}

// part gives the sizes of some pieces, and which of all sizes each is; none where
// they were tried before or are too many.
func (m *mender) part(left []int) (sizes []size, index []int) {
	pairs := int64(1)
	var key []byte
	for k, n := range left {
		key = append(key, byte(n), byte(n>>8), byte(n>>16))
		if n == 0 {
			continue
		}
		z := m.sizes[k]
		z.n = n
		sizes, index = append(sizes, z), append(index, k)
		if pairs *= int64(n+1) * int64(n+2) / 2; pairs > mostPairs {
			return nil, nil
		}
	}
	if m.seen[string(key)] {
		return nil, nil
	}
	m.seen[string(key)] = true
	return sizes, index
}
