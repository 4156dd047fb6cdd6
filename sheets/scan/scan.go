// Package scan reads the square codes off a photo: small, turned, tilted, blurred,
// badly lit and several at a time, as phones take them.
//
// Start with Find, which gives the codes of a photo, and Answer, which says what
// bag of a plan a code belongs to, and only where all that the code says agrees.
//
// # How
//
// A photo is decoded to levels of grey and looked at from coarse to fine, each time
// at twice the size. At each size
//
//   - a relief takes the light away: each pixel less the mean of those around it;
//   - finders, the nested squares in a code's corners, are looked for along rows,
//     by the widths that every line through their middle has, and then from their
//     middle in all directions;
//   - three finders whose distances agree, in modules, are a code's corners, or,
//     where one is hidden, two that face each other;
//   - a fit moves the four corners of a code of each likely size until the modules
//     that are the same in all codes are where they should be, so that perspective
//     needs no fourth finder;
//   - the modules are measured, parted into dark and light in several ways, and put
//     right with the code's own checks, the most doubtful modules taken for unknown.
//
// What is cheap comes first; what is dear is done only where something is left over
// that looks like a part of a code, or where nothing was found at all. No clock is
// asked: the same photo gives the same answer.
package scan

import (
	"cmp"
	"context"
	"image"
	"math"
	"slices"
)

// Options say how a photo is read.
type Options struct {
	// MaxPixels is how large a photo may be, width times height; 0 stands for
	// DefaultMaxPixels. A larger one is refused by what its header says.
	MaxPixels int
}

// DefaultMaxPixels is enough for the sharpest phones that write 50 megapixels, and
// for those that write 64.
const DefaultMaxPixels = 65_000_000

// A Found is a square code that was seen on a photo.
type Found struct {
	Text    string         // what it says; "" where it can't be read
	Corners [4]image.Point // from the code's own upper left, clockwise, on the photo as it is shown
	Modules int            // modules a side; where it can't be read, what is likely
	Module  float64        // pixels a module
}

// Find finds the square codes of a photo, a file of JPEG, PNG, WebP or HEIC, from top to
// bottom, row by row. Those that are seen but can't be read have no text. The error says why
// the photo can't be looked at, for a maker to read, or is ctx's.
func Find(ctx context.Context, data []byte, o Options) ([]Found, error) {
	p, err := decode(data, o)
	if err != nil {
		return nil, err
	}
	h := hunt{ctx: ctx}
	h.hunt(p.grey)
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	all := h.all()
	for i := range all {
		for k, c := range all[i].Corners {
			all[i].Corners[k] = p.turn.point(c, p.grey.w, p.grey.h)
		}
	}
	inOrder(all)
	return all, nil
}

// inOrder sorts codes as one reads: in rows from the top, from the left in each. A
// code belongs to a row whose first is less than half of its height above it.
func inOrder(all []Found) {
	slices.SortStableFunc(all, func(a, b Found) int {
		p, q := a.middle(), b.middle()
		return cmp.Or(cmp.Compare(p.Y, q.Y), cmp.Compare(p.X, q.X))
	})
	for len(all) > 0 {
		n, top := 1, all[0].middle().Y
		for n < len(all) && float64(all[n].middle().Y-top) < all[0].Module*float64(all[0].Modules)/2 {
			n++
		}
		slices.SortStableFunc(all[:n], func(a, b Found) int { return cmp.Compare(a.middle().X, b.middle().X) })
		all = all[n:]
	}
}

// middle is the middle of a code.
func (f *Found) middle() image.Point {
	var sum image.Point
	for _, c := range f.Corners {
		sum = sum.Add(c)
	}
	return sum.Div(4)
}

// holds says whether a point lies on a code.
func (f *Found) holds(x, y float64) bool {
	left, right := true, true
	for i, c := range f.Corners {
		n := f.Corners[(i+1)%4]
		side := float64(n.X-c.X)*(y-float64(c.Y)) - float64(n.Y-c.Y)*(x-float64(c.X))
		left, right = left && side <= 0, right && side >= 0
	}
	return left || right
}

// touches says whether the middle or a corner of another code lies on a code.
func (f *Found) touches(g *Found) bool {
	m := g.middle()
	on := f.holds(float64(m.X), float64(m.Y))
	for _, c := range g.Corners {
		on = on || f.holds(float64(c.X), float64(c.Y))
	}
	return on
}

// found is a fit on a layer as a code on the photo.
func (l *layer) found(f *fit, text string) Found {
	side := float64(f.n - 7)
	out := Found{Text: text, Modules: f.n}
	out.Module = l.scale * math.Hypot(f.quad[1][0]-f.quad[0][0], f.quad[1][1]-f.quad[0][1]) / side
	far := side + 3.5
	for i, c := range [4][2]float64{{-3.5, -3.5}, {far, -3.5}, {far, far}, {-3.5, far}} {
		x, y := f.at(c[0]/side, c[1]/side)
		out.Corners[i] = image.Pt(l.photo(x), l.photo(y))
	}
	return out
}

// photo is a place across or down a layer on the photo, as the nearest pixel. A view
// of nonsense may lead anywhere; it is kept where sums don't run over.
func (l *layer) photo(x float64) int {
	return int(math.Round(min(max((x+0.5)*l.scale-0.5, -1e6), 1e6)))
}
