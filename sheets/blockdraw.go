package sheets

import (
	"strconv"

	"cutbinder/layout/length"
	"cutbinder/layout/page"
	"cutbinder/layout/picture"
	"cutbinder/layout/plan"
)

// A placement places a picture in a box on paper, as large as it fits, in the
// middle.
type placement struct {
	box page.Box // what the picture fills
	pic *picture.Picture
}

func place(pic *picture.Picture, in page.Box) placement {
	w, h := in.W, in.H
	if in.W*pic.H > in.H*pic.W {
		w = in.H * pic.W / pic.H
	} else {
		h = in.W * pic.H / pic.W
	}
	return placement{in.Center(w, h), pic}
}

// at is where a point of the picture lies on paper. Points are placed, not sizes:
// patches that touch in the picture touch on paper.
func (pl placement) at(q picture.Point) page.Point {
	return page.Point{X: pl.box.X + pl.box.W*q.X/pl.pic.W, Y: pl.box.Y + pl.box.H*q.Y/pl.pic.H}
}

// corners are a patch's corners on paper.
func (pl placement) corners(patch picture.Patch) []page.Point {
	out := make([]page.Point, len(patch.Points))
	for i, q := range patch.Points {
		out[i] = pl.at(q)
	}
	return out
}

// finest is the shortest side of any patch on paper.
func (pl placement) finest() length.Length {
	least := max(pl.box.W, pl.box.H)
	for _, patch := range pl.pic.Patches {
		points := pl.corners(patch)
		for i, a := range points {
			b := points[(i+1)%len(points)]
			least = min(least, max(a.X-b.X, b.X-a.X, a.Y-b.Y, b.Y-a.Y))
		}
	}
	return least
}

// shadeInks are what fabrics without a colour are drawn in, told apart by
// lightness so that they stay apart on a one-colour printer. Neighbours in the
// plan are far apart.
var shadeInks = []page.Ink{0xFFFFFFFF, 0xFF8A8A8A, 0xFFD8D8D8, 0xFF5F5F5F, 0xFFEFEFEF, 0xFFB0B0B0, 0xFF747474, 0xFFC4C4C4}

// A painter says what ink patches are drawn in.
type painter struct {
	plan  *plan.Plan
	style *page.Style
	light bool // little ink: no fills
}

// ink is a patch's: the fabric's colour where the plan states one.
func (p painter) ink(patch picture.Patch) page.Ink {
	if p.light {
		return page.White
	}
	for i, f := range p.plan.Fabrics {
		if f.ID != patch.Fabric {
			continue
		}
		if rgb, err := strconv.ParseUint(trimHash(f.Colour), 16, 24); err == nil {
			return page.Ink(0xFF000000 | uint32(rgb))
		}
		return shadeInks[i%len(shadeInks)]
	}
	return page.Wash
}

func trimHash(s string) string {
	if s == "" {
		return s
	}
	return s[1:]
}

// fineSeams is the side of patches below which seams are drawn in grey.
const fineSeams = 3 * length.MM

// draw draws a picture in its fabrics' colours.
func (p painter) draw(pen *page.Pen, pl placement, mark string) {
	finest := pl.finest()
	for _, patch := range pl.pic.Patches {
		ink := p.ink(patch)
		seam := p.style.Hair
		switch {
		case finest < 4*seam.Width:
			seam = page.Stroke{}
		case finest < fineSeams || ink.Luma() < 90:
			seam.Ink = page.Mid
		}
		pen.Polygon(pl.corners(patch), ink, seam, mark)
	}
	pen.Rect(pl.box, page.NoInk, p.style.Rule, mark+" edge")
}

// drawMarked draws a picture in black and white: black where marked says so.
func drawMarked(pen *page.Pen, pl placement, marked []bool, mark string) {
	st := pen.Style.Hair
	for i, patch := range pl.pic.Patches {
		if !marked[i] {
			pen.Polygon(pl.corners(patch), page.White, st, mark)
		}
	}
	for i, patch := range pl.pic.Patches {
		if marked[i] {
			pen.Polygon(pl.corners(patch), page.Black, st.With(page.Mid), mark+" here")
		}
	}
	pen.Rect(pl.box, page.NoInk, st, mark+" edge")
}

// roomIn is a box of that size in the middle of a patch, and whether it lies
// within the patch's edges: in a triangle the middle is where its angles' halves
// meet, else that of its corners' box.
func roomIn(points []page.Point, w, h length.Length) (page.Box, bool) {
	var mid page.Point
	if len(points) == 3 {
		mid = innerMiddle(points)
	} else {
		b := page.Polygon{Points: points}.Bounds()
		mid = page.Point{X: b.MidX(), Y: b.MidY()}
	}
	box := page.Box{X: mid.X - w/2, Y: mid.Y - h/2, W: w, H: h}
	for _, c := range page.RoundBox(box, 0) {
		for i, a := range points {
			b := points[(i+1)%len(points)]
			if (b.X-a.X)*(c.Y-a.Y)-(b.Y-a.Y)*(c.X-a.X) < 0 == clockwise(points) {
				return box, false
			}
		}
	}
	return box, true
}

// clockwise says which way round the corners go on paper.
func clockwise(points []page.Point) bool {
	var sum length.Length
	for i, a := range points {
		b := points[(i+1)%len(points)]
		sum += a.X*b.Y - b.X*a.Y
	}
	return sum > 0
}

// innerMiddle is the middle of the circle that touches a triangle's sides: the
// corners weighed by the sides that face them.
func innerMiddle(p []page.Point) page.Point {
	side := func(a, b page.Point) length.Length { return hypot(a.X-b.X, a.Y-b.Y) }
	a, b, c := side(p[1], p[2]), side(p[2], p[0]), side(p[0], p[1])
	sum := max(a+b+c, 1)
	return page.Point{X: (a*p[0].X + b*p[1].X + c*p[2].X) / sum, Y: (a*p[0].Y + b*p[1].Y + c*p[2].Y) / sum}
}

// hypot is the whole root of x² + y², by Newton's steps.
func hypot(x, y length.Length) length.Length {
	n := x*x + y*y
	if n == 0 {
		return 0
	}
	r := max(x, -x) + max(y, -y)
	for {
		next := (r + n/r) / 2
		if next >= r {
			return r
		}
		r = next
	}
}
