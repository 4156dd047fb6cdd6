package pack

import "math"

// A master is the master problem of the column generation of Gilmore and Gomory
// (1965): choose how often to cut each pattern so that the demands are met with
// the least sum of strip heights. Its patterns grow as they are found.
type master struct {
	in     *instance
	pricer pricer
	pool   []pattern
	known  map[string]int
	twice  bool  // the pricer is to be asked again when it finds nothing lazily
	used   []int // when each pattern of the pool was last of use
	clock  int   // relaxations so far
	reach  *reach
	lp     program
	at     []int // pool index of the program's columns
	where  []int // program's column of a pool index, or -1
	rows   []int // the program's row of each size, or -1 where none is left
	sized  int   // number of sizes with a row
	y      []float64
	free   bool // strips cost nothing at the moment
	keep   bool // the prices that prove the bound are asked for
	work   *meter
	row    []int32
	val    []float64
}

// newMaster starts with the pattern of one size each.
func newMaster(in *instance, pr pricer, work *meter) *master {
	m := &master{in: in, pricer: pr, known: map[string]int{}, work: work}
	m.lp.work = work
	return m
}

// add gives the pool index of a pattern, taking it in where it is new.
func (m *master) add(p pattern) int {
	m.work.spend(100)
	k := p.key()
	j, ok := m.known[k]
	if !ok {
		j = len(m.pool)
		m.known[k] = j
		for _, t := range p.cover {
			p.row, p.val = append(p.row, int32(t.size)), append(p.val, float64(t.n))
		}
		m.pool = append(m.pool, p)
		m.used = append(m.used, m.clock)
		m.where = append(m.where, -1)
	}
	return j
}

// A relaxation is the solution of the master problem without whole numbers.
type relaxation struct {
	value    float64
	bound    int // exact lower bound, lifted to a sum of heights
	use      []share
	basis    []int  // pool indices, and -1-row for slacks
	feasible bool   // false: not proved feasible, no solution within the limits found
	whole    bool   // the pricing came to its end
	proof    *quote // the prices that prove the bound, if asked for
}

// A share is how often a pattern of the pool is used.
type share struct {
	pattern int
	n       float64
}

// relax solves the master problem for what is left under limits, starting from
// an earlier basis. It stops as soon as base plus the bound reaches cutoff; base
// is the height of strips already fixed.
//
// Where artificial variables stay in the solution, it goes on at no cost but
// theirs, until they are gone or the prices prove that there is no solution: a
// bound beyond every cutoff. With lazy pricing the bound is only an estimate.
func (m *master) relax(left []int, limits []limit, warm []int, base, cutoff int, lazy bool) relaxation {
	r := relaxation{}
	m.load(left, limits, warm, cutoff)
	m.lp.start(m.columns(warm))
	for near := true; ; {
		if !m.lp.solve() {
			return m.result(r, false)
		}
		if m.free && m.lp.artificial() < 1e-6 {
			m.charge(false, cutoff)
			continue
		}
		q := newQuote(m.spread(left, limits), left, limits)
		q.free = m.free
		fresh := 0
		t, cost := m.pricer.price(q, left, near, func(p pattern) bool {
			j := m.add(p)
			if m.where[j] >= 0 {
				return false
			}
			fresh++
			m.column(j, left, limits)
			return true
		})
		if b := m.lift(base+q.bound(left, t, cost)) - base; b > r.bound {
			r.bound = b
		}
		if m.keep && !q.free {
			if f := q.fair(t, cost); r.proof == nil || f.value(left) > r.proof.value(left) {
				r.proof = f
			}
		}
		if fresh > 0 {
			near = true
		} else if near && !lazy && m.twice && base+r.bound < cutoff {
			near = false
			continue
		}
		switch {
		case base+r.bound >= cutoff:
			return r
		case fresh == 0 && lazy && (m.free || m.lp.artificial() > 1e-4):
			return m.result(r, false)
		case fresh == 0 && lazy:
			r = m.result(r, false)
			r.bound = max(r.bound, m.lift(base+int(math.Ceil(r.value-1e-6)))-base)
			return r
		case m.work.stop():
			return m.result(r, false)
		case fresh == 0 && !m.free && m.lp.artificial() > 1e-4:
			m.charge(true, cutoff)
		case fresh == 0:
			return m.result(r, true)
		}
	}
}

// charge sets the costs: free makes artificial variables alone cost something.
func (m *master) charge(free bool, cutoff int) {
	m.free = free
	for k := range m.lp.cols {
		m.lp.cols[k].cost = m.cost(m.at[k])
	}
	m.lp.high = 3 * float64(cutoff)
	if free {
		m.lp.high = 1
	}
	m.lp.duals()
}

// cost is the present cost of a pattern.
func (m *master) cost(j int) float64 {
	if m.free {
		return 0
	}
	return float64(m.pool[j].h)
}

// spread gives the duals with one for each size, also those without a row.
func (m *master) spread(left []int, limits []limit) []float64 {
	m.y = resize(m.y, len(left)+len(limits))
	for i, r := range m.rows {
		m.y[i] = 0
		if r >= 0 {
			m.y[i] = m.lp.y[r]
		}
	}
	copy(m.y[len(left):], m.lp.y[m.lp.m-len(limits):])
	return m.y
}

// lift raises a bound to the next sum of heights.
func (m *master) lift(v int) int {
	if m.reach == nil {
		return v
	}
	return m.reach.lift(v)
}

// load makes the program's rows, and columns of the patterns that fit what is
// left.
func (m *master) load(left []int, limits []limit, warm []int, cutoff int) {
	p := &m.lp
	m.rows = resize(m.rows, len(left))
	p.le, p.rhs = p.le[:0], p.rhs[:0]
	for i, n := range left {
		m.rows[i] = -1
		if n > 0 {
			m.rows[i] = len(p.rhs)
			p.le, p.rhs = append(p.le, false), append(p.rhs, float64(n))
		}
	}
	m.sized = len(p.rhs)
	for _, l := range limits {
		p.le, p.rhs = append(p.le, l.le), append(p.rhs, float64(l.n))
	}
	p.m = len(p.rhs)
	p.high, m.free = 3*float64(cutoff), false
	p.cols, m.at = p.cols[:0], m.at[:0]
	m.row, m.val = m.row[:0], m.val[:0]
	m.clock++
	for j := range m.pool {
		m.where[j] = -1
		if m.clock-m.used[j] < keep {
			m.column(j, left, limits)
		}
	}
	for _, j := range warm {
		if j >= 0 && m.where[j] < 0 {
			m.column(j, left, limits)
		}
	}
}

// keep is for how many relaxations a pattern is kept in the program without
// being of use. The pricing brings back what is missed.
const keep = 30

// column adds pattern j to the program where it fits what is left.
func (m *master) column(j int, left []int, limits []limit) {
	pt := &m.pool[j]
	if !pt.proper(left) {
		return
	}
	from := len(m.row)
	row := pt.row
	if m.sized < len(left) {
		for _, i := range pt.row {
			m.row = append(m.row, int32(m.rows[i]))
			m.val = append(m.val, 0)
		}
		row = m.row[from:len(m.row):len(m.row)]
		from = len(m.row)
	}
	first := m.lp.m - len(limits)
	for k := range limits {
		l := &limits[k]
		if pt.h < l.h {
			continue
		}
		n := 1
		if l.size != ofStrips {
			if n = l.times(pt); n == 0 {
				continue
			}
		}
		m.row, m.val = append(m.row, int32(first+k)), append(m.val, float64(n))
	}
	m.where[j] = len(m.at)
	m.used[j] = max(m.used[j], m.clock-keep/2)
	m.at = append(m.at, j)
	m.lp.cols = append(m.lp.cols, vector{m.cost(j), row, pt.val, m.row[from:len(m.row):len(m.row)], m.val[from:len(m.val):len(m.val)]})
	m.work.spend(30 + 2*len(limits))
}

// columns gives the program's columns and slacks of a basis.
func (m *master) columns(basis []int) []int {
	var q []int
	first := len(m.rows) - m.sized
	for _, j := range basis {
		switch r := -1 - j; {
		case j >= 0 && m.where[j] >= 0:
			q = append(q, m.where[j])
		case j < 0 && r < len(m.rows) && m.rows[r] >= 0:
			q = append(q, -1-m.rows[r])
		case j < 0 && r >= len(m.rows):
			q = append(q, -1-(r-first))
		}
	}
	return q
}

// basis gives the present basis: pool indices, and -1-k for the slack of the
// row of size k, or of limit k less the number of sizes.
func (m *master) basis() []int {
	var b []int
	of := make([]int, 0, m.lp.m)
	for i, r := range m.rows {
		if r >= 0 {
			of = append(of, i)
		}
	}
	for i := len(m.rows); len(of) < m.lp.m; i++ {
		of = append(of, i)
	}
	for r, q := range m.lp.basis {
		switch {
		case q >= 0 && !m.lp.art[r]:
			b = append(b, m.at[q])
			m.used[m.at[q]] = m.clock
		case q < 0:
			b = append(b, -1-of[-1-q])
		}
	}
	return b
}

// result reads the solution off the program.
func (m *master) result(r relaxation, whole bool) relaxation {
	r.whole = whole
	m.lp.settle()
	r.feasible = m.lp.artificial() < 1e-6
	r.basis = m.basis()
	for i, q := range m.lp.basis {
		if q < 0 || m.lp.art[i] {
			continue
		}
		r.value += float64(m.pool[m.at[q]].h) * m.lp.xb[i]
		if m.lp.xb[i] > 1e-6 {
			r.use = append(r.use, share{m.at[q], m.lp.xb[i]})
		}
	}
	return r
}
