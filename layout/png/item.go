package png

import (
	"math"

	"cutbinder/fonts"
	"cutbinder/layout/page"
)

// item draws one item.
func (x *canvas) item(it page.Item) {
	switch it := it.(type) {
	case page.Text:
		x.text(it)
	case page.Line:
		if it.Stroke.Visible() {
			x.line(it.A, it.B, it.Stroke, 0)
			x.fill(it.Stroke.Ink)
		}
	case page.Rect:
		x.rect(it)
	case page.Polygon:
		x.area(it.Points, it.Fill)
		x.outline(it.Points, it.Stroke)
	case page.Code:
		for _, b := range it.Runs() {
			x.polygon(x.corners(page.RoundBox(b, 0))...)
		}
		x.fill(page.Black)
	case page.Link, page.Anchor:
	}
}

// text draws a line of type: glyphs stand where their advances put them.
func (x *canvas) text(t page.Text) {
	for _, r := range t.Runs {
		em := float64(r.Face.Metrics().UnitsPerEm)
		unit := x.px(r.Size) / em
		at := point{x.px(t.Base.X + r.X), x.px(t.Base.Y - r.Rise)}
		for _, c := range r.S {
			x.glyph(r.Face.Outline(c), at, unit/64)
			at.x += float64(r.Face.Advance(c))*unit + x.px(r.Track)
		}
		x.fill(r.Ink)
	}
}

// glyph adds an outline to the shape, with its origin at a place.
func (x *canvas) glyph(outline []fonts.Segment, at point, scale float64) {
	for _, s := range outline {
		e := edge{kind: s.Kind}
		for k, p := range s.Points {
			e.points[k] = point{at.x + float64(p[0])*scale, at.y + float64(p[1])*scale}
		}
		if s.Kind == fonts.MoveTo {
			x.shape = append(x.shape, nil)
		}
		last := len(x.shape) - 1
		x.shape[last] = append(x.shape[last], e)
	}
}

// rect draws a rectangle: ground, then hatch, then outline.
func (x *canvas) rect(r page.Rect) {
	corners := page.RoundBox(r.Box, 0)
	x.area(corners, r.Fill)
	for _, s := range r.Hatch.Lines(r.Box) {
		x.line(s.A, s.B, page.HatchStroke, 0)
	}
	x.fill(page.HatchStroke.Ink)
	x.outline(corners, r.Stroke)
}

// area fills a closed shape.
func (x *canvas) area(points []page.Point, k page.Ink) {
	if k != page.NoInk {
		x.polygon(x.corners(points)...)
		x.fill(k)
	}
}

func (x *canvas) corners(points []page.Point) []point {
	out := make([]point, len(points))
	for i, p := range points {
		out[i] = x.at(p)
	}
	return out
}

// line adds a straight stroke with butt ends to the shape, in dashes where it has
// some; before is how much of the dashed line lies before it. It returns how much
// lies behind it.
func (x *canvas) line(a, b page.Point, st page.Stroke, before float64) float64 {
	p, q := x.at(a), x.at(b)
	long := math.Hypot(q.x-p.x, q.y-p.y)
	if long == 0 {
		return before
	}
	ux, uy := (q.x-p.x)/long, (q.y-p.y)/long
	half := x.px(st.Width) / 2
	dash := func(from, to float64) {
		x.polygon(
			point{p.x + ux*from - uy*half, p.y + uy*from + ux*half},
			point{p.x + ux*from + uy*half, p.y + uy*from - ux*half},
			point{p.x + ux*to + uy*half, p.y + uy*to - ux*half},
			point{p.x + ux*to - uy*half, p.y + uy*to + ux*half})
	}
	pattern := st.Dash.Pattern()
	if len(pattern) == 0 {
		dash(0, long)
		return before + long
	}
	for at, i := -before, 0; at < long; i++ {
		next := at + x.px(pattern[i%len(pattern)])
		if i%2 == 0 && next > 0 {
			dash(max(at, 0), min(next, long))
		}
		at = next
	}
	return before + long
}

// outline strokes a closed shape: the band between its edge moved outward and
// inward by half the width, its corners mitred. A broken outline is stroked edge
// after edge.
func (x *canvas) outline(points []page.Point, st page.Stroke) {
	if !st.Visible() || len(points) < 2 {
		return
	}
	if st.Dash != page.Solid {
		before := 0.0
		for i, p := range points {
			before = x.line(p, points[(i+1)%len(points)], st, before)
		}
		x.fill(st.Ink)
		return
	}
	corners := distinct(x.corners(points))
	half := x.px(st.Width) / 2
	x.polygon(moved(corners, half)...)
	inner := moved(corners, -half)
	for i, j := 0, len(inner)-1; i < j; i, j = i+1, j-1 {
		inner[i], inner[j] = inner[j], inner[i]
	}
	x.polygon(inner...)
	x.fill(st.Ink)
}

// distinct drops corners that lie on the one before.
func distinct(points []point) (out []point) {
	for i, p := range points {
		q := points[(i+len(points)-1)%len(points)]
		if math.Hypot(p.x-q.x, p.y-q.y) > 1e-9 {
			out = append(out, p)
		}
	}
	return out
}

// moved moves the edges of a closed shape sideways; each corner goes to where the
// moved edges meet. The distance to there is bounded, for very sharp corners.
func moved(points []point, by float64) []point {
	out := make([]point, len(points))
	for i, p := range points {
		a, b := points[(i+len(points)-1)%len(points)], points[(i+1)%len(points)]
		nx, ny := normal(a, p)
		mx, my := normal(p, b)
		// The corner moves along the middle of both normals, by/cos of half
		// the angle between them.
		k := by / max(1+nx*mx+ny*my, 0.02)
		out[i] = point{p.x + (nx+mx)*k, p.y + (ny+my)*k}
	}
	return out
}

// normal is across the way from a to b, of length one.
func normal(a, b point) (nx, ny float64) {
	long := math.Hypot(b.x-a.x, b.y-a.y)
	return (b.y - a.y) / long, -(b.x - a.x) / long
}
