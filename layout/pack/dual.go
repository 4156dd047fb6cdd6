package pack

import "math"

// dual runs the dual simplex method, as long as no reduced cost is negative, to
// make the basic variables positive.
func (p *program) dual() {
	tol := epsCost * p.high
	p.cost = resize(p.cost, len(p.cols))
	for iter := 0; iter < 4*p.m && !p.work.stop(); iter++ {
		at, least := -1, -1e-8
		for r, x := range p.xb {
			if x < least {
				at, least = r, x
			}
		}
		if at < 0 {
			return
		}
		if iter == 0 {
			for j := range p.cols {
				if p.cost[j] = p.reduced(j); p.cost[j] < -tol {
					return
				}
			}
			for r, y := range p.y {
				if p.le[r] == (y > tol) && math.Abs(y) > tol {
					return
				}
			}
			p.work.spend(12 * len(p.cols))
		}
		if !p.dualPivot(at) {
			return
		}
	}
}

// dualPivot takes the variable at a position out of the basis for the one that
// keeps all reduced costs from becoming negative.
func (p *program) dualPivot(at int) bool {
	m := p.m
	row := p.inv[at*m : at*m+m]
	q, best, size := math.MinInt, math.Inf(1), 0.0
	try := func(j int, d, a float64) {
		if a >= -epsPivot {
			return
		}
		t := max(d, 0) / -a
		if t < best-epsZero || t <= best+epsZero && -a > size {
			q, best, size = j, min(t, best), -a
		}
	}
	for r := range m {
		if p.le[r] {
			try(-1-r, -p.y[r], row[r])
		} else {
			try(-1-r, p.y[r], -row[r])
		}
	}
	p.alpha = resize(p.alpha, len(p.cols))
	for j := range p.cols {
		s := p.cols[j].dot(row)
		p.alpha[j] = s
		try(j, p.cost[j], s)
	}
	p.work.spend(12 * len(p.cols))
	if q == math.MinInt {
		return false
	}
	p.direction(q)
	if math.Abs(p.w[at]) < epsPivot {
		return false
	}
	var d float64
	if q >= 0 {
		d = p.cost[q]
	} else if d = p.y[-1-q]; p.le[-1-q] {
		d = -d
	}
	ratio := d / p.alphaOf(q, row)
	for j := range p.cols {
		p.cost[j] -= ratio * p.alpha[j]
	}
	t := p.xb[at] / p.w[at]
	for i := range p.xb {
		p.xb[i] -= t * p.w[i]
	}
	p.xb[at] = t
	p.eliminate(at)
	p.basis[at] = q
	for k, v := range p.inv[at*m : at*m+m] {
		p.y[k] += d * v
	}
	return true
}

// alphaOf is the entry of column q in a row of the inverse times the columns.
func (p *program) alphaOf(q int, row []float64) float64 {
	switch {
	case q >= 0:
		return p.alpha[q]
	case p.le[-1-q]:
		return row[-1-q]
	}
	return -row[-1-q]
}
