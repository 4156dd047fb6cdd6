package scan

import (
	"cmp"
	"math"
	"slices"
)

// A triple is three finders that may belong to one square code.
type triple struct {
	a, b, c int // upper left, upper right and lower left, as the code stands
	modules float64
	off     float64 // how badly they fit together; the less, the better
}

// maxTriples bounds the work on pictures that are full of finders.
const maxTriples = 400

// triples are the finders that fit together, the best first. From one finder's
// middle to another's is as many modules, counted in the modules in that direction,
// along each side and along the diagonal; that holds from whatever side a code is
// seen, and nearly so when it is seen from near by.
func triples(fs []finder) []triple {
	n := len(fs)
	far := make([]float64, n*n) // in modules
	for i := range fs {
		for j := i + 1; j < n; j++ {
			f, g := &fs[i], &fs[j]
			d := math.Hypot(f.x-g.x, f.y-g.y) / math.Sqrt(f.along(g.x, g.y)*g.along(f.x, f.y))
			if d > 10 && d < 60 {
				far[i*n+j], far[j*n+i] = d, d
			}
		}
	}
	var out []triple
	for i := range fs {
		for j := i + 1; j < n; j++ {
			if far[i*n+j] == 0 {
				continue
			}
			for k := j + 1; k < n; k++ {
				if far[i*n+k] > 0 && far[j*n+k] > 0 {
					if t, ok := together(fs, [3]int{i, j, k}, [3]float64{far[j*n+k], far[i*n+k], far[i*n+j]}); ok {
						out = append(out, t)
					}
				}
			}
		}
	}
	slices.SortStableFunc(out, func(s, t triple) int { return cmp.Compare(s.off, t.off) })
	return out[:min(len(out), maxTriples)]
}

// together says whether three finders fit together; far[i] is the distance of the
// two others than at[i].
func together(fs []finder, at [3]int, far [3]float64) (triple, bool) {
	least, most := min(far[0], far[1], far[2]), max(far[0], far[1], far[2])
	if most > 1.5*least {
		return triple{}, false
	}
	// The corner is where the angle is largest.
	corner, cosine := 0, 2.0
	for i := range at {
		p, q, r := &fs[at[i]], &fs[at[(i+1)%3]], &fs[at[(i+2)%3]]
		ux, uy, vx, vy := q.x-p.x, q.y-p.y, r.x-p.x, r.y-p.y
		if c := (ux*vx + uy*vy) / (math.Hypot(ux, uy) * math.Hypot(vx, vy)); c < cosine {
			corner, cosine = i, c
		}
	}
	if math.Abs(cosine) > 0.6 {
		return triple{}, false
	}
	t := triple{a: at[corner], b: at[(corner+1)%3], c: at[(corner+2)%3]}
	a, b, c := &fs[t.a], &fs[t.b], &fs[t.c]
	if (b.x-a.x)*(c.y-a.y)-(b.y-a.y)*(c.x-a.x) < 0 {
		t.b, t.c = t.c, t.b
	}
	// The sides tell more than the diagonal, which grows with what is nearer.
	t.modules = (far[(corner+1)%3]+far[(corner+2)%3])/2 + 7
	t.off = most/least - 1 + math.Abs(cosine)/2
	return t, true
}
