package scan

import "math"

// A square is the modules of a code as they were measured: levels of grey with one
// ring of the quiet zone round them.
type square struct {
	n    int       // modules a side, without the ring
	grey []float64 // (n+2)*(n+2)
}

func (s *square) wide() int { return s.n + 2 }

// at is the level between pixels, whose middles are at whole numbers. Outside is
// what is at the edge.
func (g grey) at(x, y float64) float64 {
	x, y = min(max(x, 0), float64(g.w)-1.001), min(max(y, 0), float64(g.h)-1.001)
	i, j := int(x), int(y)
	fx, fy := x-float64(i), y-float64(j)
	k := j*g.w + i
	top := float64(g.pix[k])*(1-fx) + float64(g.pix[k+1])*fx
	bottom := float64(g.pix[k+g.w])*(1-fx) + float64(g.pix[k+g.w+1])*fx
	return top*(1-fy) + bottom*fy
}

// square measures the modules of a fit: the mean of five places in each, which lie
// close together where a module is few pixels.
func (g grey) square(f *fit, module float64) square {
	s := square{n: f.n}
	s.grey = make([]float64, s.wide()*s.wide())
	side := float64(f.n - 7)
	off := 0.0
	if module > 3 {
		off = 0.25
	}
	for y := range s.wide() {
		for x := range s.wide() {
			var sum float64
			u, v := float64(x-4)/side, float64(y-4)/side
			if off == 0 {
				sum = 5 * g.at(f.at(u, v))
			} else {
				d := off / side
				for _, p := range [5][2]float64{{0, 0}, {d, 0}, {-d, 0}, {0, d}, {0, -d}} {
					sum += g.at(f.at(u+p[0], v+p[1]))
				}
			}
			s.grey[y*s.wide()+x] = sum / 5
		}
	}
	return s
}

// sharpen takes from each module the part of its four neighbours that a blur put
// into it.
func (s *square) sharpen(k float64) square {
	out := square{s.n, make([]float64, len(s.grey))}
	w := s.wide()
	at := func(x, y int) float64 {
		return s.grey[min(max(y, 0), w-1)*w+min(max(x, 0), w-1)]
	}
	for y := range w {
		for x := range w {
			mean := (at(x-1, y) + at(x+1, y) + at(x, y-1) + at(x, y+1)) / 4
			out.grey[y*w+x] = at(x, y) + k*(at(x, y)-mean)
		}
	}
	return out
}

// A grid is the modules of a code as they are read: below 0 is dark, above is
// light, and the farther from 0, the surer.
type grid struct {
	n    int
	soft []float64
}

// grid parts dark from light by the mean of the modules at most r away, or by the
// middle between the darkest and the lightest of them. How sure a module is counts
// in half the difference of these two.
func (s *square) grid(r int, middle bool) grid {
	w := s.wide()
	out := grid{s.n, make([]float64, s.n*s.n)}
	for y := range s.n {
		for x := range s.n {
			least, most, sum, n := math.Inf(1), math.Inf(-1), 0.0, 0
			for j := max(y+1-r, 0); j <= min(y+1+r, w-1); j++ {
				for _, v := range s.grey[j*w+max(x+1-r, 0) : j*w+min(x+1+r, w-1)+1] {
					least, most = min(least, v), max(most, v)
					sum += v
					n++
				}
			}
			level := sum / float64(n)
			if middle {
				level = (least + most) / 2
			}
			out.soft[y*s.n+x] = (s.grey[(y+1)*w+x+1] - level) / (most - least + 8)
		}
	}
	return out
}

// wrong is the part of a grid's marks that are not as they should be, 0 to 1.
func (g *grid) wrong() float64 {
	n, bad := 0, 0
	for _, m := range marks()[(g.n-17)/4] {
		if m.col >= 0 && m.row >= 0 && m.col < g.n && m.row < g.n {
			n++
			if g.soft[m.row*g.n+m.col] < 0 != m.dark {
				bad++
			}
		}
	}
	return float64(bad) / float64(n)
}

// ways are how modules are parted into dark and light, for even and uneven light,
// and how much of a blur is taken out before.
var ways = [...]struct {
	sharpen float64
	r       int
	middle  bool
}{
	{0, 3, false}, {0, 2, true}, {0, 5, false}, {0, 1, false},
	{0.7, 3, false}, {0.7, 2, true}, {0.7, 5, false}, {0.7, 1, false},
	{1.5, 3, false}, {1.5, 2, true}, {1.5, 5, false}, {1.5, 1, false},
}

// text reads a square's text, in any of the ways. A photo may show a code as in a
// mirror, where all its marks but one stay as they are, so that is tried last.
func (s *square) text() (string, bool) {
	var likely []grid
	for _, w := range ways {
		sharp := *s
		if w.sharpen > 0 {
			sharp = s.sharpen(w.sharpen)
		}
		g := sharp.grid(w.r, w.middle)
		if g.wrong() > 0.3 {
			continue
		}
		if text, ok := g.text(); ok {
			return text, true
		}
		likely = append(likely, g)
	}
	for _, g := range likely {
		if text, ok := g.mirrored().text(); ok {
			return text, true
		}
	}
	return "", false
}

// mirrored is a grid with its rows as columns.
func (g *grid) mirrored() *grid {
	out := grid{g.n, make([]float64, len(g.soft))}
	for i, v := range g.soft {
		out.soft[i%g.n*g.n+i/g.n] = v
	}
	return &out
}
