package pack

// given lays the pieces out on the given cloths.
func (e *engine) given() Result {
	left := make([]int, len(e.sizes))
	for i, s := range e.sizes {
		left[i] = s.n
	}
	var roots []node
	for _, c := range e.p.Given {
		roots = append(roots, greedyStrips(e.sizes, left, c.W, c.L, false))
	}
	return e.p.layOut(e.sizes, roots)
}
