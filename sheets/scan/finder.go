package scan

import (
	"cmp"
	"math"
	"slices"
)

// A finder is one of the three nested squares in the corners of a square code,
// dark, light and dark, 7, 5 and 3 modules wide.
type finder struct {
	x, y   float64
	module float64       // pixels, roughly
	reach  [rays]float64 // pixels a module, in each direction
	good   int           // directions in which it looks as it should
	depth  float64       // levels of grey from its dark parts to its light one
	hits   int           // rows that it was seen in
}

// rays is how many directions a finder is looked at in; an even number.
const rays = 24

// directions are the rays' cosines and sines.
var directions = func() (d [rays][2]float64) {
	for k := range d {
		sin, cos := math.Sincos(2 * math.Pi * float64(k) / rays)
		d[k] = [2]float64{cos, sin}
	}
	return d
}()

// Noise and prints are full of what looks like finders: of those that stand out by
// at least so many levels of grey, the clearest are kept.
const (
	leastDepth = 12
	maxFinders = 100
	maxFound   = 5000
)

// A search looks for finders in a relief.
type search struct {
	*relief
	cells  map[[2]int][]int // the numbers of the finders near by
	found  []finder
	inside func(x, y float64) bool // where nothing is looked for
}

const cell = 24 // pixels

// finders looks for finders along every step-th row. Every straight line through a
// finder's middle, at whatever angle and from whatever side it is seen, crosses
// dark, light, dark, light and dark in the widths 1, 1, 3, 1, 1, nearly.
func (rl *relief) finders(step int, inside func(x, y float64) bool) []finder {
	s := search{relief: rl, cells: map[[2]int][]int{}, inside: inside}
	for y := step / 2; y < rl.h; y += step {
		s.row(y)
	}
	kept := s.found[:0]
	for _, f := range s.found {
		if f.hits > 1 || step > 1 {
			kept = append(kept, f)
		}
	}
	slices.SortStableFunc(kept, func(f, g finder) int { return cmp.Compare(g.clear(), f.clear()) })
	return kept[:min(len(kept), maxFinders)]
}

// row looks along one row. Where it changes between dark and light is told to a
// part of a pixel by the two values there.
func (s *search) row(y int) {
	d := s.d[y*s.w : (y+1)*s.w]
	var edge [6]float64 // the last ones, the latest in edge[5]
	n := 0
	dark := d[0] < 0
	last := d[0]
	for x := 1; x < len(d); x++ {
		v := d[x]
		if v < 0 == dark {
			last = v
			continue
		}
		at := float64(x) - float64(v)/float64(int(v)-int(last))
		edge[0], edge[1], edge[2], edge[3], edge[4], edge[5] = edge[1], edge[2], edge[3], edge[4], edge[5], at
		n++
		if dark && n >= 6 {
			if m := nested(edge, 0.5); m > 0 {
				s.hit((edge[2]+edge[3])/2, float64(y), m)
			}
		}
		dark, last = !dark, v
	}
}

// nested gives the module where six edges are those of a finder, within a part of
// a module and a third of a pixel, or else 0.
func nested(e [6]float64, slack float64) float64 {
	m := (e[5] - e[0]) / 7
	if m < 0.9 {
		return 0
	}
	off := m*slack + 0.3
	for i, want := range [5]float64{1, 1, 3, 1, 1} {
		if math.Abs(e[i+1]-e[i]-want*m) > off*(1+want)/2 {
			return 0
		}
	}
	return m
}

// hit is told of a place that looks like a finder along its row.
func (s *search) hit(x, y, m float64) {
	if s.inside != nil && s.inside(x, y) {
		return
	}
	if f := s.near(x, y, m); f != nil {
		f.hits++
		return
	}
	// Down the column, then along the row again.
	down, ok := s.across(x, y, 0, 1, m)
	if !ok {
		return
	}
	y += (down[2] + down[3]) / 2
	along, ok := s.across(x, y, 1, 0, m)
	if !ok {
		return
	}
	x += (along[2] + along[3]) / 2
	mx, my := nested(along, 0.7), nested(down, 0.7)
	if mx == 0 || my == 0 || mx > 2.5*my || my > 2.5*mx || len(s.found) == maxFound {
		return
	}
	f := finder{x: x, y: y, module: math.Sqrt(mx * my), hits: 1}
	if !s.look(&f) {
		return
	}
	if old := s.near(f.x, f.y, f.module); old != nil {
		old.hits++
		return
	}
	key := [2]int{int(f.x) / cell, int(f.y) / cell}
	s.cells[key] = append(s.cells[key], len(s.found))
	s.found = append(s.found, f)
}

// near is the finder that was found there already, or nil.
func (s *search) near(x, y, m float64) *finder {
	cx, cy := int(x)/cell, int(y)/cell
	for j := cy - 1; j <= cy+1; j++ {
		for i := cx - 1; i <= cx+1; i++ {
			for _, k := range s.cells[[2]int{i, j}] {
				f := &s.found[k]
				if math.Abs(f.x-x) < 2*f.module && math.Abs(f.y-y) < 2*f.module && m < 2.5*f.module && f.module < 2.5*m {
					return f
				}
			}
		}
	}
	return nil
}

// across follows a line through a finder's middle both ways, and gives the six
// edges' distances from where it started, along the direction.
func (s *search) across(x, y, dx, dy, m float64) (e [6]float64, ok bool) {
	fore, ok := s.ray(x, y, dx, dy, 9*m)
	if !ok {
		return e, false
	}
	back, ok := s.ray(x, y, -dx, -dy, 9*m)
	return [6]float64{-back[2], -back[1], -back[0], fore[0], fore[1], fore[2]}, ok
}

// ray follows a line from inside a finder's middle outwards and gives how far away
// the dark square, the light ring and the dark ring end.
func (s *search) ray(x, y, dx, dy, limit float64) (e [3]float64, ok bool) {
	const step = 0.5
	last := s.at(x, y)
	if last >= 0 {
		return e, false
	}
	n := 0
	for r := step; r < limit; r += step {
		v := s.at(x+r*dx, y+r*dy)
		if v < 0 != (last < 0) {
			e[n] = r - step*v/(v-last)
			if n++; n == 3 {
				return e, true
			}
		}
		last = v
	}
	return e, false
}

// look looks at a finder in all directions, moves it to its very middle and says
// whether it is one.
func (s *search) look(f *finder) bool {
	for range 2 {
		var seen [rays][3]float64
		var ok [rays]bool
		for k, d := range directions {
			e, all := s.ray(f.x, f.y, d[0], d[1], 9*f.module)
			seen[k] = e
			// The edges are 1.5, 2.5 and 3.5 modules away.
			ok[k] = all && e[0] > 0.28*e[2] && e[0] < 0.6*e[2] && e[1] > 0.55*e[2] && e[1] < 0.87*e[2]
		}
		f.measure(seen, ok)
		if f.good < rays*5/8 {
			return false
		}
	}
	for k, d := range directions {
		light, dark := 2*f.reach[k], 3*f.reach[k]
		f.depth += s.at(f.x+light*d[0], f.y+light*d[1]) - s.at(f.x+dark*d[0], f.y+dark*d[1])
	}
	f.depth /= rays
	return f.depth >= leastDepth
}

// clear is how clearly a finder is one.
func (f *finder) clear() float64 { return f.depth * float64(f.good) / rays }

// measure takes what was seen of a finder from its middle: its middle is where
// opposite edges are equally far, and a module in a direction is a fifth of the
// three edges weighed so that dark ones that look too wide don't count.
func (f *finder) measure(seen [rays][3]float64, ok [rays]bool) {
	f.good = 0
	var sum, dx, dy, n float64
	for k := range rays {
		o := (k + rays/2) % rays
		f.reach[k] = 0
		if !ok[k] {
			continue
		}
		f.good++
		f.reach[k] = (seen[k][1] + (seen[k][0]+seen[k][2])/2) / 5
		sum += f.reach[k]
		if ok[o] {
			off := (seen[k][0] + seen[k][1] + seen[k][2] - seen[o][0] - seen[o][1] - seen[o][2]) / 6
			dx += off * directions[k][0]
			dy += off * directions[k][1]
			n++
		}
	}
	if f.good == 0 {
		return
	}
	if n >= rays/2 {
		f.x += 2 * dx / n
		f.y += 2 * dy / n
	}
	mean := sum / float64(f.good)
	for k := range rays {
		if f.reach[k] == 0 {
			f.reach[k] = f.reach[(k+rays/2)%rays]
		}
		if f.reach[k] == 0 {
			f.reach[k] = mean
		}
	}
}

// along is how many pixels a module is in the direction of another point, as the
// mean of this way and the opposite one.
func (f *finder) along(x, y float64) float64 {
	turn := math.Atan2(y-f.y, x-f.x) / (2 * math.Pi) * rays
	if turn < 0 {
		turn += rays
	}
	k := int(turn)
	part := turn - float64(k)
	at := func(k int) float64 { return (f.reach[k%rays] + f.reach[(k+rays/2)%rays]) / 2 }
	return at(k)*(1-part) + at(k+1)*part
}

// mean is how many pixels a module is, over all directions.
func (f *finder) mean() float64 {
	sum := 0.0
	for _, r := range f.reach {
		sum += r
	}
	return sum / rays
}
