package pack

import "math"

// A program is a linear program, min cost·x with rows A x >= b or <= b and
// x >= 0, solved by the primal simplex method with an explicit inverse of the
// basis. It is small (a row for each size and a few more) and has many columns.
//
// A solve starts from any set of columns: those that are independent make up
// the basis, slacks fill the rest, and where a basic variable comes out
// negative its column is negated and made artificial at a high cost. So a
// changed right side, or a row added, costs a few pivots rather than a new
// start.
type program struct {
	m      int
	le     []bool
	rhs    []float64
	cols   []vector
	high   float64 // cost of the artificial variables
	basis  []int   // column, or -1-row for the row's slack, at each position
	art    []bool  // the variable at the position is artificial
	inv    []float64
	xb     []float64
	y      []float64 // duals
	w      []float64
	short  []int     // candidates for entering
	held   []bool    // rows whose slack stays in the basis at the start
	cost   []float64 // reduced costs during the dual method
	alpha  []float64
	sparse bool // many entries of the inverse are nought, so that less work is counted
	work   *meter
}

// A vector is a sparse column: entries that it keeps, and entries in the rows
// added for the moment.
type vector struct {
	cost   float64
	row    []int32
	val    []float64
	extra  []int32
	weight []float64
}

// dot multiplies a row vector with the column.
func (c *vector) dot(y []float64) (s float64) {
	for k, r := range c.row {
		s += y[r] * c.val[k]
	}
	for k, r := range c.extra {
		s += y[r] * c.weight[k]
	}
	return s
}

// eps are the tolerances of the simplex method, relative to the largest cost.
const (
	epsCost  = 1e-9
	epsPivot = 1e-8
	epsZero  = 1e-9
)

// start makes a basis of the columns wanted (q >= 0), as far as they are
// independent, and of the slacks wanted (row -1-q); other slacks fill the rest.
// Where that leaves negative variables, the dual simplex method is tried first.
func (p *program) start(want []int) {
	m := p.m
	p.basis, p.art = resize(p.basis, m), resize(p.art, m)
	p.xb, p.y, p.w = resize(p.xb, m), resize(p.y, m), resize(p.w, m)
	p.inv = resize(p.inv, m*m)
	p.held = resize(p.held, m)
	clear(p.inv)
	clear(p.art)
	clear(p.held)
	p.short = p.short[:0]
	for r := range m {
		p.basis[r] = -1 - r
		p.inv[r*m+r] = -1
		if p.le[r] {
			p.inv[r*m+r] = 1
		}
	}
	for _, q := range want {
		if q < 0 && -1-q < m {
			p.held[-1-q] = true
		}
	}
	for _, q := range want {
		if q >= 0 && !p.work.stop() {
			p.insert(q)
		}
	}
	p.values()
	p.duals()
	p.dual()
	bad := false
	for r := range m {
		if p.xb[r] < 0 {
			bad = true
			p.art[r] = true
			p.xb[r] = -p.xb[r]
			row := p.inv[r*m : r*m+m]
			for k := range row {
				row[k] = -row[k]
			}
		}
	}
	if bad {
		p.duals()
	}
}

// insert puts column q into the basis in place of a slack, if it can.
func (p *program) insert(q int) {
	p.direction(q)
	best, at := 1e-6, -1
	for r, b := range p.basis {
		if a := math.Abs(p.w[r]); b < 0 && !p.held[r] && a > best {
			best, at = a, r
		}
	}
	if at >= 0 {
		p.eliminate(at)
		p.basis[at] = q
	}
}

// values computes the basic variables. The right side is moved apart by tiny
// steps so that the method doesn't stall on ties.
func (p *program) values() {
	m := p.m
	for r := range m {
		s := 0.0
		for k, v := range p.inv[r*m : r*m+m] {
			s += v * (p.rhs[k] + shift(k, p.le[k]))
		}
		p.xb[r] = s
	}
}

// settle solves for the right side as it is, once the shifted one is solved.
func (p *program) settle() {
	m := p.m
	for r := range m {
		s := 0.0
		for k, v := range p.inv[r*m : r*m+m] {
			s += v * p.rhs[k]
		}
		p.xb[r] = s
	}
	for _, a := range p.art {
		if a {
			return
		}
	}
	p.dual()
}

// shift is the step by which row k's right side is moved.
func shift(k int, le bool) float64 {
	s := 1e-8 * float64(1+k*7919%1009)
	if le {
		return s
	}
	return -s
}

// duals computes the duals of the basis.
func (p *program) duals() {
	m := p.m
	clear(p.y)
	for r := range m {
		if c := p.costAt(r); c != 0 {
			for k, v := range p.inv[r*m : r*m+m] {
				p.y[k] += c * v
			}
		}
	}
	p.work.spend(m * m)
}

// costAt is the cost of the variable at a position of the basis.
func (p *program) costAt(r int) float64 {
	switch {
	case p.art[r]:
		return p.high
	case p.basis[r] < 0:
		return 0
	}
	return p.cols[p.basis[r]].cost
}

// direction computes w = inverse · column q (q < 0: the slack of row -1-q).
func (p *program) direction(q int) {
	m := p.m
	if q < 0 {
		r := -1 - q
		s := -1.0
		if p.le[r] {
			s = 1
		}
		for i := range m {
			p.w[i] = s * p.inv[i*m+r]
		}
		return
	}
	c := &p.cols[q]
	for i := range m {
		p.w[i] = c.dot(p.inv[i*m : i*m+m])
	}
	p.work.spend(m * (len(c.row) + len(c.extra)))
}

// eliminate makes position at of the basis that of the direction w.
func (p *program) eliminate(at int) {
	m := p.m
	pr := p.inv[at*m : at*m+m]
	f := 1 / p.w[at]
	for k := range pr {
		pr[k] *= f
	}
	rows := m / 4 // what zeros cost, too
	for i := range m {
		if i == at || p.w[i] == 0 {
			continue
		}
		g := p.w[i]
		row := p.inv[i*m : i*m+m]
		for k, v := range pr {
			row[k] -= g * v
		}
		rows++
	}
	if !p.sparse {
		rows = m
	}
	p.work.spend(m * rows)
}

// reduced is the reduced cost of a column.
func (p *program) reduced(q int) float64 {
	c := &p.cols[q]
	return c.cost - c.dot(p.y)
}

// solve runs the simplex method from the present basis over all columns. It
// reports false where it gave up, which only a numerical fault explains.
func (p *program) solve() bool {
	tol := epsCost * p.high
	for iter := 0; iter < 200+60*p.m; iter++ {
		if p.work.stop() {
			return false
		}
		q, d := p.entering(tol)
		if d >= -tol {
			return true
		}
		p.direction(q)
		at := p.leaving()
		if at < 0 {
			return false
		}
		p.pivot(q, at, d)
	}
	return false
}

// entering picks a column or slack of low reduced cost. It looks through a
// short list of candidates, and through all columns only when that runs dry.
func (p *program) entering(tol float64) (q int, d float64) {
	for r := range p.m {
		v := p.y[r]
		if p.le[r] {
			v = -v
		}
		if v < d {
			q, d = -1-r, v
		}
	}
	best := -tol
	list := p.short[:0]
	for _, j := range p.short {
		if v := p.reduced(j); v < -tol {
			list = append(list, j)
			if v < best && v < d {
				q, d, best = j, v, v
			}
		}
	}
	p.work.spend(p.m + 12*len(p.short))
	p.short = list
	if d < -tol {
		return q, d
	}
	p.work.spend(12 * len(p.cols))
	for j := range p.cols {
		v := p.reduced(j)
		if v >= -tol {
			continue
		}
		if v < d {
			q, d = j, v
		}
		if len(p.short) < shortList {
			p.short = append(p.short, j)
		} else if v < d*0.999 {
			p.short[j%shortList] = j
		}
	}
	return q, d
}

// shortList is the number of candidates kept.
const shortList = 24

// leaving does the ratio test; among ties an artificial variable goes first,
// then the largest pivot.
func (p *program) leaving() int {
	at, least := -1, math.Inf(1)
	for i, w := range p.w {
		if w <= epsPivot {
			continue
		}
		t := max(p.xb[i], 0) / w
		if t < least-epsZero || t <= least+epsZero && (p.art[i] && !p.art[at] || p.art[i] == p.art[at] && w > p.w[at]) {
			at, least = i, min(t, least)
		}
	}
	return at
}

// pivot exchanges the variable at a position for q with reduced cost d.
func (p *program) pivot(q, at int, d float64) {
	t := max(p.xb[at], 0) / p.w[at]
	for i := range p.xb {
		p.xb[i] -= t * p.w[i]
	}
	p.xb[at] = t
	p.eliminate(at)
	p.basis[at], p.art[at] = q, false
	for k, v := range p.inv[at*p.m : at*p.m+p.m] {
		p.y[k] += d * v
	}
}

// artificial is the sum of the artificial variables.
func (p *program) artificial() (s float64) {
	for r, a := range p.art {
		if a {
			s += p.xb[r]
		}
	}
	return s
}

// resize gives a slice of n elements, reusing s.
func resize[T any](s []T, n int) []T {
	if cap(s) < n {
		return make([]T, n, n+n/2)
	}
	return s[:n]
}
