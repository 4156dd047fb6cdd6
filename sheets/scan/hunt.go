package scan

import (
	"context"
	"math"
)

// A hunt looks for codes on one photo.
type hunt struct {
	ctx    context.Context
	found  []Found
	unread []Found // fits good enough to be codes that could not be read
	layers []*layer
}

// A layer is the photo at one size, and what was seen on it.
type layer struct {
	grey
	relief relief
	scale  float64 // pixels of the photo a pixel
	fs     []finder
	tried  int // the finders up to here have been tried in threes
}

// The reliefs' reaches in pixels. Near ones tell the edges of small modules, and
// are not misled by glare beside a code; far ones tell large modules from noise.
const (
	near = 4
	wide = 7
)

// small is the number of pixels up to which a photo is looked at larger than it is.
const small = 3 << 20

// hunt looks for codes until nothing new comes.
func (h *hunt) hunt(g grey) {
	sizes := []grey{g}
	for last := g; last.w >= 240 && last.h >= 240; {
		last = last.half()
		sizes = append(sizes, last)
	}
	for k := len(sizes) - 1; k >= 0; k-- {
		h.layer(sizes[k], math.Ldexp(1, k))
	}
	if !h.left() {
		return
	}
	for _, l := range h.layers {
		h.threes(l, wide)
	}
	if !h.left() {
		return
	}
	for _, l := range h.layers {
		h.twos(l)
	}
	if h.left() && g.w*g.h <= small {
		l := h.layer(g.double(), 0.5)
		h.threes(l, wide)
		h.twos(l)
	}
}

// layer looks at the photo at one size.
func (h *hunt) layer(g grey, scale float64) *layer {
	l := &layer{grey: g, scale: scale, relief: reliefOf(g, near)}
	h.layers = append(h.layers, l)
	l.fs = h.finders(l, &l.relief)
	h.triples(l)
	return l
}

// left says whether to look on: something looks like a part of a code that was not
// read, or nothing was read at all.
func (h *hunt) left() bool {
	if h.ctx.Err() != nil {
		return false
	}
	if len(h.found) == 0 {
		return true
	}
	for _, l := range h.layers {
		if len(h.loose(l)) > 0 {
			return true
		}
	}
	return false
}

// finders are those on a layer that lie on no code that was read.
func (h *hunt) finders(l *layer, rl *relief) []finder {
	step := 1
	if l.w*l.h > 1<<21 {
		step = 2 // a finder's middle is five pixels high at least
	}
	return rl.finders(step, func(x, y float64) bool { return h.read(l, x, y) })
}

// read says whether a place on a layer lies on a code that was read.
func (h *hunt) read(l *layer, x, y float64) bool {
	for i := range h.found {
		if h.found[i].holds((x+0.5)*l.scale-0.5, (y+0.5)*l.scale-0.5) {
			return true
		}
	}
	return false
}

// loose are a layer's finders that lie on no code that was read.
func (h *hunt) loose(l *layer) []finder {
	var out []finder
	for _, f := range l.fs {
		if !h.read(l, f.x, f.y) {
			out = append(out, f)
		}
	}
	return out
}

// threes looks for finders in another relief, and for codes with one of those.
func (h *hunt) threes(l *layer, reach int) {
	l.fs = h.loose(l)
	l.tried = len(l.fs)
	rl := reliefOf(l.grey, reach)
	for _, f := range h.finders(l, &rl) {
		known := false
		for _, old := range l.fs {
			known = known || math.Hypot(old.x-f.x, old.y-f.y) < 2*f.module
		}
		if !known {
			l.fs = append(l.fs, f)
		}
	}
	if len(l.fs) > l.tried {
		h.triples(l)
	}
}

// maxTries is how many threes or twos of a layer are fitted that are no codes.
const maxTries = 60

// triples reads the codes whose three finders were seen.
func (h *hunt) triples(l *layer) {
	used := make([]bool, len(l.fs))
	tries := 0
	for _, t := range triples(l.fs) {
		if used[t.a] || used[t.b] || used[t.c] || max(t.a, t.b, t.c) < l.tried {
			continue
		}
		if tries++; tries > maxTries || h.ctx.Err() != nil {
			break
		}
		a, b, c := &l.fs[t.a], &l.fs[t.b], &l.fs[t.c]
		var best fit
		for _, n := range sizesNear(t.modules) {
			f := l.relief.fit(a, b, c, n)
			if f.score > best.score {
				best = f
			}
			if h.take(l, &f, (a.module+b.module+c.module)/3) {
				used[t.a], used[t.b], used[t.c] = true, true, true
				best.score = 0
				break
			}
		}
		h.miss(l, &best)
	}
	l.tried = len(l.fs)
}

// twos reads the codes of which two finders were seen.
func (h *hunt) twos(l *layer) {
	fs := h.loose(l)
	used := make([]bool, len(fs))
	for _, p := range pairs(fs) {
		if h.ctx.Err() != nil {
			return
		}
		if !used[p.p] && !used[p.q] && h.pair(l, fs, p) {
			used[p.p], used[p.q] = true, true
		}
	}
}

func (h *hunt) pair(l *layer, fs []finder, p pair) bool {
	var best fit
	module := (fs[p.p].module + fs[p.q].module) / 2
	for _, f := range l.relief.fits(fs, p) {
		f.score = -1 // that of half the marks counts no more
		l.relief.try(&f, f.quad, marks()[(f.n-17)/4])
		l.relief.climb(&f, marks()[(f.n-17)/4], module)
		if h.take(l, &f, module) {
			return true
		}
		if f.score > best.score {
			best = f
		}
	}
	h.miss(l, &best)
	return false
}

// sizesNear are the modules a side that codes have near a number, the nearest
// first.
func sizesNear(modules float64) []int {
	v := int(math.Round((modules - 17) / 4))
	var out []int
	for _, v := range [3]int{v, v + 1, v - 1} {
		if n := 17 + 4*v; n >= 21 && n <= maxSide {
			out = append(out, n)
		}
	}
	return out
}

// The least scores of a fit: to be read, and to be told of where it can't be read.
const (
	readable = 0.5
	sure     = 0.9
)

// take reads a fit; ok is false where it is no code or can't be read.
func (h *hunt) take(l *layer, f *fit, module float64) bool {
	if f.score < readable {
		return false
	}
	s := l.square(f, module)
	text, ok := s.text()
	if !ok {
		return false
	}
	h.found = append(h.found, l.found(f, text))
	return true
}

// miss keeps a fit that could not be read.
func (h *hunt) miss(l *layer, f *fit) {
	if f.score >= sure {
		h.unread = append(h.unread, l.found(f, ""))
	}
}

// all are the codes that were read, and those that were not and lie elsewhere.
func (h *hunt) all() []Found {
	all := h.found
	for _, f := range h.unread {
		apart := true
		for i := range all {
			apart = apart && !all[i].touches(&f) && !f.touches(&all[i])
		}
		if apart {
			all = append(all, f)
		}
	}
	return all
}
