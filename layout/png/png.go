// Package png draws a finished page as a PNG picture, from the same items that
// the PDF is written from. Edges are smoothed by how much of a pixel they cover.
//
// Like the package pdf it thinks in floating point, for that is what its
// rasteriser takes: lengths are turned into pixels here and nowhere else.
package png

import (
	"fmt"
	"image"
	"image/color"
	"image/draw"
	stdpng "image/png"
	"io"
	"math"

	"golang.org/x/image/vector"

	"cutbinder/fonts"
	"cutbinder/layout/length"
	"cutbinder/layout/page"
)

// MaxSide is the most pixels that a picture may have on its longer side.
const MaxSide = 20_000

// maxPixels bounds a picture's memory: four bytes a pixel.
const maxPixels = 120_000_000

// Write draws a page so many pixels wide and writes it to w. The height follows
// from the paper.
func Write(w io.Writer, p *page.Page, width int) error {
	height := 0
	if p.Paper.W > 0 {
		height = int(math.Round(float64(width) * float64(p.Paper.H) / float64(p.Paper.W)))
	}
	if width < 1 || height < 1 || max(width, height) > MaxSide || width*height > maxPixels {
		return fmt.Errorf("a picture of %d x %d pixels: expected sides from 1 to %d, and no more than %d pixels in all", width, height, MaxSide, maxPixels)
	}
	return stdpng.Encode(w, Draw(p, width, height))
}

// Draw draws a page on white paper of that many pixels.
func Draw(p *page.Page, width, height int) *image.RGBA {
	x := &canvas{img: image.NewRGBA(image.Rect(0, 0, width, height)), scale: float64(width) / float64(p.Paper.W)}
	draw.Draw(x.img, x.img.Bounds(), image.White, image.Point{}, draw.Src)
	for _, it := range p.Items {
		x.item(it)
	}
	return x.img
}

// A canvas is a picture being drawn.
type canvas struct {
	img    *image.RGBA
	raster vector.Rasterizer
	scale  float64 // pixels a length unit
	shape  []loop
}

// A loop is a closed line of straight and curved edges, in pixels.
type loop []edge

// An edge leads to its last point; kind says by how many others.
type edge struct {
	kind   fonts.SegmentKind
	points [3]point
}

type point struct{ x, y float64 }

// at is a place of the page in pixels.
func (x *canvas) at(p page.Point) point { return point{float64(p.X) * x.scale, float64(p.Y) * x.scale} }

// px is a length in pixels.
func (x *canvas) px(l length.Length) float64 { return float64(l) * x.scale }

// polygon adds a loop of straight edges to the shape that is filled next.
func (x *canvas) polygon(points ...point) {
	l := make(loop, len(points))
	for i, p := range points {
		l[i] = edge{kind: fonts.LineTo, points: [3]point{p}}
	}
	if len(l) > 0 {
		l[0].kind = fonts.MoveTo
		x.shape = append(x.shape, l)
	}
}

// fill fills the shape with an ink, by the nonzero rule, and forgets it. Only the
// pixels that the shape may touch are gone through.
func (x *canvas) fill(k page.Ink) {
	shape := x.shape
	x.shape = x.shape[:0]
	box := bounds(shape).Intersect(x.img.Bounds())
	if box.Empty() {
		return
	}
	x.raster.Reset(box.Dx(), box.Dy())
	to := func(p point) (float32, float32) {
		return float32(p.x - float64(box.Min.X)), float32(p.y - float64(box.Min.Y))
	}
	for _, l := range shape {
		for _, e := range l {
			ax, ay := to(e.points[0])
			bx, by := to(e.points[1])
			cx, cy := to(e.points[2])
			switch e.kind {
			case fonts.MoveTo:
				x.raster.MoveTo(ax, ay)
			case fonts.LineTo:
				x.raster.LineTo(ax, ay)
			case fonts.QuadTo:
				x.raster.QuadTo(ax, ay, bx, by)
			case fonts.CubeTo:
				x.raster.CubeTo(ax, ay, bx, by, cx, cy)
			}
		}
		x.raster.ClosePath()
	}
	r, g, b := k.RGB()
	x.raster.Draw(x.img, box, image.NewUniform(color.RGBA{r, g, b, 255}), image.Point{})
}

// bounds are the pixels that a shape may touch.
func bounds(shape []loop) image.Rectangle {
	x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, l := range shape {
		for _, e := range l {
			for _, p := range e.points[:max(1, int(e.kind))] {
				x0, y0, x1, y1 = min(x0, p.x), min(y0, p.y), max(x1, p.x), max(y1, p.y)
			}
		}
	}
	if x1 < x0 {
		return image.Rectangle{}
	}
	return image.Rect(int(math.Floor(x0)), int(math.Floor(y0)), int(math.Ceil(x1)), int(math.Ceil(y1)))
}
