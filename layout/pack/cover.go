package pack

import "slices"

// A cover proves that pieces can't come from given cloths by column generation
// over them: a column is a way to cut one cloth, a row for each size asks for
// its pieces, others bound how many cloths there are. The program seeks to be
// short of the least; its duals are prices, rounded to whole numbers, at which
// no cutting of a cloth is worth more than its filler's bound. Pieces worth more
// than the cloths together are refuted, in exact arithmetic.
type cover struct {
	sizes   []size
	types   []Cloth
	count   []int
	fillers []*filler
	cuts    []clothCut // known so far, for any pieces
	work    *meter
	room    *room
}

// A clothCut is what a cutting of a cloth of some type yields.
type clothCut struct {
	typ   int
	cover []take
}

// Limits of a cover: the program is dense, and every round prices each type of
// cloth.
const (
	maxCoverSizes = 60
	maxCoverTypes = 12
	maxCoverTurns = 60
)

// newCover makes a cover for cuttings in strips or stacks. It is nil where the
// sizes are too many or too fine.
func newCover(sizes []size, types []Cloth, count []int, kind Kind, work *meter) *cover {
	if len(sizes) > maxCoverSizes || len(types) > maxCoverTypes {
		return nil
	}
	c := &cover{sizes: sizes, types: types, count: count, work: work, room: &room{count: count}}
	for _, t := range types {
		f := newFiller(sizes, t, kind, false, work)
		if f == nil && slices.ContainsFunc(sizes, func(s size) bool { return s.fits(t.W, t.L) }) {
			return nil
		}
		c.fillers = append(c.fillers, f)
	}
	return c
}

// refutes says whether the pieces are sure not to come from any k of the cloths.
func (c *cover) refutes(want []int, k int) bool {
	p := program{work: c.work, high: 1}
	rows := make([]int, len(want))
	for i, n := range want {
		rows[i] = -1
		if n > 0 {
			rows[i] = p.m
			p.demand(float64(n), false)
		}
	}
	first := p.m
	for _, n := range c.count {
		p.demand(float64(n), true)
	}
	p.demand(float64(k), true)
	for i := range c.cuts {
		if !slices.ContainsFunc(c.cuts[i].cover, func(t take) bool { return t.n > want[t.size] }) {
			c.column(&p, &c.cuts[i], rows, first)
		}
	}
	var basis []int
	for range maxCoverTurns {
		p.start(basis)
		if !p.solve() || p.artificial() < 1e-6 || c.work.stop() {
			return false
		}
		base := make([]int64, len(want))
		for i, r := range rows {
			if r >= 0 {
				base[i] = int64(max(0, p.y[r]) * (1 << 32))
			}
		}
		refuted, fresh := c.price(&p, base, want, rows, first, k)
		if refuted || fresh == 0 {
			return refuted
		}
		basis = slices.Clone(p.basis)
	}
	return false
}

// demand adds a row.
func (p *program) demand(n float64, le bool) {
	p.m++
	p.le, p.rhs = append(p.le, le), append(p.rhs, n)
}

// column adds what a cutting yields to the program.
func (c *cover) column(p *program, cut *clothCut, rows []int, first int) {
	v := vector{}
	for _, t := range cut.cover {
		if r := rows[t.size]; r >= 0 {
			v.row, v.val = append(v.row, int32(r)), append(v.val, float64(t.n))
		}
	}
	v.row, v.val = append(v.row, int32(first+cut.typ), int32(p.m-1)), append(v.val, 1, 1)
	p.cols = append(p.cols, v)
}

// price refutes the pieces at prices, or adds cuttings that are worth more than
// their cloths.
func (c *cover) price(p *program, base []int64, want, rows []int, first, k int) (refuted bool, fresh int) {
	q := prices(base)
	worth := make([]int64, len(c.types))
	for t, f := range c.fillers {
		if f != nil {
			worth[t] = f.bound(q, want)
		}
	}
	if q.value(want) > c.room.best(worth, k) {
		return true, 0
	}
	for t, f := range c.fillers {
		if f == nil {
			continue
		}
		left := slices.Clone(want)
		f.fill(left, q)
		cut := clothCut{typ: t}
		gain := p.y[first+t] + p.y[p.m-1]
		for i, n := range left {
			if n < want[i] {
				cut.cover = append(cut.cover, take{i, want[i] - n})
				gain += p.y[rows[i]] * float64(want[i]-n)
			}
		}
		if gain > 1e-7 {
			c.cuts = append(c.cuts, cut)
			c.column(p, &cut, rows, first)
			fresh++
		}
	}
	return false, fresh
}
