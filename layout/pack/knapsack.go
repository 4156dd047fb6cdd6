package pack

import "slices"

// A knapsack fills a capacity with copies of things of whole widths so that
// their worth is greatest. Things are added one after the other, and after each
// the best filling of every capacity by the things so far is known, so one pass
// in order of height prices the strips of every height.
//
// Copies are bounded by splitting them into bundles of 1, 2, 4 … (each taken or
// not), or unbounded where the bound exceeds what fits. Worth is a whole
// number: sums are exact.
type knapsack struct {
	capacity int
	worth    []int64 // of the best filling of each capacity
	layers   []layer
	took     []bool // one row of capacity+1 for each layer
	work     *meter
}

// A layer is a bundle of copies of one thing.
type layer struct {
	thing  int
	width  int // of the bundle
	copies int
	repeat bool // may be taken again and again
}

// reset empties the knapsack and sets its capacity.
func (k *knapsack) reset(capacity int) {
	k.capacity = capacity
	k.layers = k.layers[:0]
	k.took = k.took[:0]
	if cap(k.worth) <= capacity {
		k.worth = make([]int64, capacity+1)
	}
	k.worth = k.worth[:capacity+1]
	clear(k.worth)
}

// add lets up to most copies of a thing be taken.
func (k *knapsack) add(thing, width, most int, worth int64) {
	if worth <= 0 || width > k.capacity || most <= 0 {
		return
	}
	if most >= k.capacity/width {
		k.push(layer{thing, width, 1, k.capacity/width > 1}, worth)
		return
	}
	for n := 1; most > 0; n *= 2 {
		n = min(n, most)
		k.push(layer{thing, width * n, n, false}, worth*int64(n))
		most -= n
	}
}

// push adds one layer.
func (k *knapsack) push(l layer, worth int64) {
	k.layers = append(k.layers, l)
	row := len(k.took)
	// What is below the bundle's width isn't read, nor cleared therefore.
	k.took = slices.Grow(k.took, k.capacity+1)[:row+k.capacity+1]
	k.work.spend(k.capacity - l.width + 60)
	// The fillings without the bundle, and those with it: as many. Nothing branches
	// on what is worth more, which nobody could foretell.
	with, took := k.worth[l.width:], k.took[row+l.width:]
	took = took[:len(with)]
	without := k.worth[:len(with)]
	if l.repeat {
		for i := range without {
			t := without[i] + worth
			took[i] = t > with[i]
			with[i] = max(t, with[i])
		}
		return
	}
	for i := len(without) - 1; i >= 0; i-- {
		t := without[i] + worth
		took[i] = t > with[i]
		with[i] = max(t, with[i])
	}
}

// trace tells what fills a capacity best by the first so many layers, as long
// as no more layers have been added since worth was read.
func (k *knapsack) trace(layers, capacity int, take func(thing, copies int)) {
	row := k.capacity + 1
	for i := layers - 1; i >= 0; i-- {
		l := k.layers[i]
		for capacity >= l.width && k.took[i*row+capacity] {
			take(l.thing, l.copies)
			capacity -= l.width
			if !l.repeat {
				break
			}
		}
	}
}

// A meter counts the work spent, and says when to stop.
type meter struct {
	spent, limit int64
	done         func() bool // whether the caller gave up
	next         int64       // when to ask done again
	stopped      bool
}

// spend adds work.
func (m *meter) spend(n int) {
	m.spent += int64(n)
}

// until lowers the limit, unless it is lower already, and gives what restores it.
func (m *meter) until(limit int64) (restore func()) {
	old := m.limit
	m.limit = min(old, limit)
	return func() { m.limit = old }
}

// within does something that stops at a limit.
func (m *meter) within(limit int64, do func()) {
	defer m.until(limit)()
	do()
}

// stop says whether the work is at its limit or was given up.
func (m *meter) stop() bool {
	if m.stopped || m.spent >= m.limit {
		return true
	}
	if m.spent >= m.next {
		m.next = m.spent + 1<<20
		m.stopped = m.done != nil && m.done()
	}
	return m.stopped
}
