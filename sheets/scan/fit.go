package scan

import (
	"math"
	"sync"
)

// A view maps places on a square code to the picture: (0,0) is the middle of the
// finder in the upper left, (1,0) in the upper right, (0,1) in the lower left.
type view struct{ a, b, c, d, e, f, g, h float64 }

func (v *view) at(x, y float64) (float64, float64) {
	w := v.g*x + v.h*y + 1
	return (v.a*x + v.b*y + v.c) / w, (v.d*x + v.e*y + v.f) / w
}

// A quad is where the corners (0,0), (1,0), (1,1) and (0,1) of a view are.
type quad [4][2]float64

// view works out the map from its four corners (Heckbert 1989, the square to a
// quadrilateral). ok is false where three of them are in line.
func (q *quad) view() (v view, ok bool) {
	sx := q[0][0] - q[1][0] + q[2][0] - q[3][0]
	sy := q[0][1] - q[1][1] + q[2][1] - q[3][1]
	x1, y1 := q[1][0]-q[2][0], q[1][1]-q[2][1]
	x2, y2 := q[3][0]-q[2][0], q[3][1]-q[2][1]
	det := x1*y2 - x2*y1
	if math.Abs(det) < 1e-9 {
		return v, false
	}
	v.g = (sx*y2 - x2*sy) / det
	v.h = (x1*sy - sx*y1) / det
	v.a, v.b, v.c = q[1][0]-q[0][0]+v.g*q[1][0], q[3][0]-q[0][0]+v.h*q[3][0], q[0][0]
	v.d, v.e, v.f = q[1][1]-q[0][1]+v.g*q[1][1], q[3][1]-q[0][1]+v.h*q[3][1], q[0][1]
	return v, v.g > -0.9 && v.h > -0.9 && v.g+v.h > -0.9
}

// A mark is a module whose colour is the same in every code of a size.
type mark struct {
	x, y float64 // as a view has it
	dark bool
	col  int
	row  int
}

// marksOf are the marks of a code of n modules a side (ISO/IEC 18004, 6.3): the
// finders with the light modules round them, also those of the quiet zone, the
// timing patterns, the alignment patterns and the one dark module.
func marksOf(n int) []mark {
	known := map[[2]int]bool{}
	var out []mark
	add := func(x, y int, dark bool) {
		if known[[2]int{x, y}] {
			return
		}
		known[[2]int{x, y}] = true
		side := float64(n - 7)
		out = append(out, mark{(float64(x) - 3) / side, (float64(y) - 3) / side, dark, x, y})
	}
	for _, corner := range [3][2]int{{3, 3}, {n - 4, 3}, {3, n - 4}} {
		for y := -4; y <= 4; y++ {
			for x := -4; x <= 4; x++ {
				r := max(x, -x, y, -y)
				add(corner[0]+x, corner[1]+y, r == 3 || r <= 1)
			}
		}
	}
	for _, at := range alignments(n) {
		for y := -2; y <= 2; y++ {
			for x := -2; x <= 2; x++ {
				add(at[0]+x, at[1]+y, max(x, -x, y, -y) != 1)
			}
		}
	}
	for i := 8; i < n-8; i++ {
		add(i, 6, i%2 == 0)
		add(6, i, i%2 == 0)
	}
	add(8, n-8, true)
	return out
}

// alignments are the middles of the alignment patterns. Versions 2 to 6 have one,
// 7 to 10 have six: the middle of the sides is where annex E has it.
func alignments(n int) [][2]int {
	switch {
	case n < 25:
		return nil
	case n < 45:
		return [][2]int{{n - 7, n - 7}}
	}
	m := (n - 1) / 2 // versions 7 to 10: 22, 24, 26, 28
	return [][2]int{{n - 7, n - 7}, {m, 6}, {6, m}, {m, m}, {n - 7, m}, {m, n - 7}}
}

// maxSide is the side of the largest square code that is looked for, version 10;
// bag labels hold no larger one.
const maxSide = 57

// marks are the marks by version, made when first asked for: most runs scan nothing.
var marks = sync.OnceValue(func() (all [11][]mark) {
	for v := 1; v <= 10; v++ {
		all[v] = marksOf(17 + 4*v)
	}
	return all
})

// A fit is a view of a code of so many modules, and how well its marks are there:
// 1 where all are, about 0 where it is chance.
type fit struct {
	quad
	view
	n     int
	score float64
}

// score is how well marks agree with a relief in a view: dark ones should be below
// 0 and light ones above.
func (rl *relief) score(v *view, ms []mark) float64 {
	var right, all float64
	for i := range ms {
		m := &ms[i]
		d := rl.at(v.at(m.x, m.y))
		all += math.Abs(d)
		if m.dark {
			right -= d
		} else {
			right += d
		}
	}
	if all < float64(len(ms)) {
		return 0
	}
	return right / all
}

// fit finds the view of a code of n modules a side with its finders at a, b and c.
// Where its fourth corner is, three finders don't say for a code that is seen from
// near by; so it is tried a module apart, then all four corners are moved until the
// marks agree best.
func (rl *relief) fit(a, b, c *finder, n int) fit {
	ms := marks()[(n-17)/4]
	side := float64(n - 7)
	u := [2]float64{(b.x - a.x) / side, (b.y - a.y) / side}
	v := [2]float64{(c.x - a.x) / side, (c.y - a.y) / side}
	best := fit{n: n, score: -1}
	reach := n / 6
	for j := -reach; j <= reach; j++ {
		for i := -reach; i <= reach; i++ {
			q := quad{{a.x, a.y}, {b.x, b.y}, {}, {c.x, c.y}}
			q[2] = [2]float64{b.x + c.x - a.x + float64(i)*u[0] + float64(j)*v[0], b.y + c.y - a.y + float64(i)*u[1] + float64(j)*v[1]}
			rl.try(&best, q, ms)
		}
	}
	rl.climb(&best, ms, math.Hypot(u[0]+v[0], u[1]+v[1])/math.Sqrt2)
	return best
}

// try takes a quad where it is better than the best so far.
func (rl *relief) try(best *fit, q quad, ms []mark) bool {
	v, ok := q.view()
	if !ok {
		return false
	}
	s := rl.score(&v, ms)
	if s <= best.score {
		return false
	}
	best.quad, best.view, best.score = q, v, s
	return true
}

// climb moves the corners, each across and down, by smaller and smaller parts of a
// module, as long as that makes the fit better.
func (rl *relief) climb(best *fit, ms []mark, module float64) {
	for _, part := range [...]float64{0.5, 0.25, 0.12, 0.06} {
		for range 4 {
			better := false
			for corner := range 4 {
				for axis := range 2 {
					for _, way := range [2]float64{part, -part} {
						q := best.quad
						q[corner][axis] += way * module
						if rl.try(best, q, ms) {
							better = true
							break
						}
					}
				}
			}
			if !better {
				break
			}
		}
	}
}
