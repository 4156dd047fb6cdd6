package photo

import "math"

// A scene is a photo that is being made.
type scene struct {
	r      *chance
	w, h   int
	luma   []float32 // 0 black to 255 white, row by row
	labels []placed
	cond   Conditions
}

// background lays the labels on cloth: plain, striped, checked or dotted.
func (s *scene) background() {
	ground, figure := 30+200*s.r.Float64(), 30+200*s.r.Float64()
	kind, angle := s.r.IntN(5), math.Pi*s.r.Float64()
	wave := 12 + 100*s.r.Float64()
	sin, cos := math.Sincos(angle)
	weave := 4 + 8*s.r.Float64()
	for y := range s.h {
		for x := range s.w {
			u, v := (float64(x)*cos+float64(y)*sin)/wave, (float64(y)*cos-float64(x)*sin)/wave
			on := false
			switch kind {
			case 1:
				on = u-math.Floor(u) < 0.4
			case 2:
				on = (u-math.Floor(u) < 0.5) != (v-math.Floor(v) < 0.5)
			case 3:
				du, dv := u-math.Floor(u)-0.5, v-math.Floor(v)-0.5
				on = du*du+dv*dv < 0.06
			case 4:
				on = u-math.Floor(u) < 0.2 || v-math.Floor(v) < 0.2
			}
			l := ground
			if on {
				l = figure
			}
			s.luma[y*s.w+x] = float32(l + weave*(s.r.Float64()-0.5))
		}
	}
}

// draw draws one label where it was placed; a wrinkled bag bends it in waves.
func (s *scene) draw(p *placed) {
	perMM := p.side / mm(p.Code.Module) / float64(p.Code.Size)
	r := p.print(min(max(perMM*1.5, 6), 48))
	paper := float32(200 + 50*s.r.Float64())
	ink := float32(10 + 50*s.r.Float64())
	bend := s.wrinkles(p)
	from := p.to.inverse()
	w, h := mm(p.Box.W), mm(p.Box.H)
	x0, y0 := max(int(p.at.x-p.far), 0), max(int(p.at.y-p.far), 0)
	x1, y1 := min(int(p.at.x+p.far)+2, s.w), min(int(p.at.y+p.far)+2, s.h)
	for y := y0; y < y1; y++ {
		for x := x0; x < x1; x++ {
			var sum, n float32
			for k := range 4 {
				at := from.at(float64(x)-0.25+0.5*float64(k&1)-p.at.x, float64(y)-0.25+0.5*float64(k>>1)-p.at.y)
				at = bend(at)
				u, v := at.x+w/2, at.y+h/2
				if u < 0 || v < 0 || u >= w || v >= h {
					continue
				}
				sum += r.at(u, v)
				n++
			}
			if n > 0 {
				i := y*s.w + x
				s.luma[i] = s.luma[i]*(4-n)/4 + (ink*n+(paper-ink)*sum/255)/4
			}
		}
	}
}

// wrinkles bend a label in its plane: two waves of up to 0.2 mm, for half of them.
func (s *scene) wrinkles(p *placed) func(point) point {
	if s.r.IntN(2) == 0 {
		return func(at point) point { return at }
	}
	a, b := 0.2*s.r.Float64(), 0.2*s.r.Float64()
	la, lb := 2*math.Pi/(15+45*s.r.Float64()), 2*math.Pi/(15+45*s.r.Float64())
	fa, fb := 2*math.Pi*s.r.Float64(), 2*math.Pi*s.r.Float64()
	return func(at point) point {
		return point{at.x + a*math.Sin(at.y*la+fa), at.y + b*math.Sin(at.x*lb+fb)}
	}
}

// light falls unevenly: from one side, less to the corners, and for one in three
// with a soft shadow.
func (s *scene) light() {
	angle := 2 * math.Pi * s.r.Float64()
	sin, cos := math.Sincos(angle)
	fall, dim := 0.55*s.r.Float64(), 0.55+0.5*s.r.Float64()
	corner := 0.3 * s.r.Float64()
	shadow := 0.0
	if s.r.IntN(3) == 0 {
		shadow = 0.2 + 0.4*s.r.Float64()
	}
	where, soft := s.r.Float64()-0.5, 0.01+0.1*s.r.Float64()
	for y := range s.h {
		for x := range s.w {
			u, v := float64(x)/float64(s.w)-0.5, float64(y)/float64(s.h)-0.5
			l := dim * (1 - fall*(u*cos+v*sin+0.7)/1.4) * (1 - corner*2*(u*u+v*v))
			if shadow > 0 {
				l *= 1 - shadow/(1+math.Exp((u*sin-v*cos-where)/soft))
			}
			s.luma[y*s.w+x] *= float32(l)
		}
	}
}

// glare adds bright streaks, as a wrinkled bag over a label shows, to two in five.
func (s *scene) glare() {
	if s.r.IntN(5) >= 2 {
		return
	}
	for _, p := range s.labels {
		for range 1 + s.r.IntN(3) {
			s.cond.Glare++
			s.streak(p)
		}
	}
}

// streak is a ridge of light across a label, a twentieth to a fifth of its code
// wide.
func (s *scene) streak(p placed) {
	angle := 2 * math.Pi * s.r.Float64()
	sin, cos := math.Sincos(angle)
	width := p.side * (0.02 + 0.06*s.r.Float64())
	reach := p.side * (0.2 + 1.2*s.r.Float64())
	peak := 30 + 170*s.r.Float64()
	q := p.square(p.to)
	mid := point{p.at.x + (q[0].x+q[2].x)/2 + p.side*(s.r.Float64()-0.5)*1.5, p.at.y + (q[0].y+q[2].y)/2 + p.side*(s.r.Float64()-0.5)*1.5}
	far := 2 * (reach + width)
	for y := max(int(mid.y-far), 0); y < min(int(mid.y+far), s.h); y++ {
		for x := max(int(mid.x-far), 0); x < min(int(mid.x+far), s.w); x++ {
			dx, dy := float64(x)-mid.x, float64(y)-mid.y
			along, across := (dx*cos+dy*sin)/reach, (dy*cos-dx*sin)/width
			if e := along*along + across*across; e < 8 {
				s.luma[y*s.w+x] += float32(peak * math.Exp(-e))
			}
		}
	}
}

// blur is out of focus: a Gauss, rows then columns.
func (s *scene) blur() {
	sigma := s.cond.Blur
	n := int(3*sigma) + 1
	kernel := make([]float32, n+1)
	var sum float32
	for i := range kernel {
		kernel[i] = float32(math.Exp(-float64(i*i) / (2 * sigma * sigma)))
		sum += kernel[i]
		if i > 0 {
			sum += kernel[i]
		}
	}
	for i := range kernel {
		kernel[i] /= sum
	}
	tmp := make([]float32, len(s.luma))
	pass := func(dst, src []float32, length, lines, step, across int) {
		for l := range lines {
			for i := range length {
				v := src[l*across+i*step] * kernel[0]
				for k := 1; k <= n; k++ {
					v += kernel[k] * (src[l*across+max(i-k, 0)*step] + src[l*across+min(i+k, length-1)*step])
				}
				dst[l*across+i*step] = v
			}
		}
	}
	pass(tmp, s.luma, s.w, s.h, 1, s.w)
	pass(s.luma, tmp, s.h, s.w, s.w, 1)
}

// noise is the sensor's.
func (s *scene) noise() {
	for i := range s.luma {
		s.luma[i] += s.r.bell() * float32(s.cond.Noise)
	}
}
