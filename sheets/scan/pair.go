package scan

import (
	"cmp"
	"math"
	"slices"
	"sync"
)

// A pair is two finders that may belong to one square code whose third finder
// can't be seen, for glare, a fold or a thumb.
type pair struct {
	p, q    int
	modules float64
	off     float64
}

// maxPairs bounds the work on pictures that are full of finders.
const maxPairs = 40

// pairs are finders that fit together, the best first.
func pairs(fs []finder) []pair {
	var out []pair
	for i := range fs {
		for j := i + 1; j < len(fs); j++ {
			f, g := &fs[i], &fs[j]
			a, b := f.along(g.x, g.y), g.along(f.x, f.y)
			d := math.Hypot(f.x-g.x, f.y-g.y) / math.Sqrt(a*b)
			if off := max(a/b, b/a); off < 1.5 && d > 12 && d < 40 {
				out = append(out, pair{i, j, d + 7, off})
			}
		}
	}
	slices.SortStableFunc(out, func(s, t pair) int { return cmp.Compare(s.off, t.off) })
	return out[:min(len(out), maxPairs)]
}

// A guess is where the corners of a code may be; those in held are finders that
// were seen.
type guess struct {
	quad
	held [4]bool
}

// quads are where the corners of a code of n modules a side may be whose finders
// are two: beside each other, the code on either side of them and the third finder
// at either end, or across from each other.
func (p pair) quads(fs []finder, n int) []guess {
	f, g := &fs[p.p], &fs[p.q]
	side := float64(n - 7)
	at, other := [2]float64{f.x, f.y}, [2]float64{g.x, g.y}
	turn := math.Atan2(g.y-f.y, g.x-f.x)
	// A module is shortest along the sides of a finder and longest across it: 0.89
	// and 1.26 of the mean over all directions.
	slant := (f.along(g.x, g.y)/f.mean() + g.along(f.x, f.y)/g.mean()) / 2
	var out []guess
	for _, way := range [2]float64{-1, 1} {
		if slant < 1.13 {
			x, y := arm(f, g, turn+way*math.Pi/2, false)
			a, b := shifted(at, x*side, y*side), shifted(other, x*side, y*side)
			if way > 0 {
				out = append(out, guess{quad{at, other, b, a}, [4]bool{0: true, 1: true}}, guess{quad{other, b, a, at}, [4]bool{0: true, 3: true}})
			} else {
				out = append(out, guess{quad{other, at, a, b}, [4]bool{0: true, 1: true}}, guess{quad{at, a, b, other}, [4]bool{0: true, 3: true}})
			}
		}
		if slant > 1 {
			x, y := arm(f, g, turn+way*math.Pi/2, true)
			mid := [2]float64{(f.x + g.x) / 2, (f.y + g.y) / 2}
			a, b := shifted(mid, x*side/2, y*side/2), shifted(mid, -x*side/2, -y*side/2)
			if way > 0 {
				out = append(out, guess{quad{a, at, b, other}, [4]bool{1: true, 3: true}})
			} else {
				out = append(out, guess{quad{a, other, b, at}, [4]bool{1: true, 3: true}})
			}
		}
	}
	return out
}

func shifted(p [2]float64, x, y float64) [2]float64 { return [2]float64{p[0] + x, p[1] + y} }

// arm is a module of two finders in the direction near turn in which it is shortest
// or longest.
func arm(f, g *finder, turn float64, longest bool) (x, y float64) {
	best := math.Inf(1)
	for part := -4; part <= 4; part++ {
		sin, cos := math.Sincos(turn + float64(part)*math.Pi/36)
		m := (f.along(f.x+cos, f.y+sin) + g.along(g.x+cos, g.y+sin)) / 2
		r := m
		if longest {
			r = -m
		}
		if r += math.Abs(float64(part)) * m * 0.004; r < best {
			best, x, y = r, m*cos, m*sin
		}
	}
	return x, y
}

// coarse tries a guess with its unseen corners moved together, a module at a time,
// and takes the place where half of the marks agree best.
func (rl *relief) coarse(g guess, n int) fit {
	side := float64(n - 7)
	best := fit{n: n, score: -1}
	q := g.quad
	ux, uy := (q[1][0]-q[0][0])/side, (q[1][1]-q[0][1])/side
	vx, vy := (q[3][0]-q[0][0])/side, (q[3][1]-q[0][1])/side
	for j := -2.0; j <= 2; j++ {
		for i := -2.0; i <= 2; i++ {
			moved := q
			for k := range moved {
				if !g.held[k] {
					moved[k] = shifted(q[k], i*ux+j*vx, i*uy+j*vy)
				}
			}
			rl.try(&best, moved, fewMarks()[(n-17)/4])
		}
	}
	return best
}

// fewMarks is every other mark.
var fewMarks = sync.OnceValue(func() (all [11][]mark) {
	for v, ms := range marks() {
		for i := 0; i < len(ms); i += 2 {
			all[v] = append(all[v], ms[i])
		}
	}
	return all
})

// maxGuesses is how many guesses of a pair are looked at closely.
const maxGuesses = 4

// fits are the views of codes that have a pair as two of their finders, the
// likeliest first. They have yet to be fitted closely.
func (rl *relief) fits(fs []finder, p pair) []fit {
	var out []fit
	for _, n := range sizesNear(p.modules) {
		for _, g := range p.quads(fs, n) {
			if f := rl.coarse(g, n); f.score > 0.25 {
				out = append(out, f)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b fit) int { return cmp.Compare(b.score, a.score) })
	return out[:min(len(out), maxGuesses)]
}
