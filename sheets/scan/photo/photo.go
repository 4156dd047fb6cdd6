// Package photo makes up photos of bag labels, as bad as people take them, and
// knows what is on them: labels of every stock, near and far, turned and tilted,
// out of focus, noisy, badly lit, under the glare of a wrinkled bag, and packed as
// JPEG. The scanner's tests and its bench read them.
//
// Start with Labels, then New for each photo. The same labels and seed make the
// same photo.
package photo

import (
	"bytes"
	"image"
	"image/jpeg"
	"math"

	"cutbinder/layout/length"
	"cutbinder/layout/page"
	"cutbinder/sheets"
	"cutbinder/sheets/bag"
)

// A Label is a bag label as it is printed.
type Label struct {
	Stock   string // its name
	Bag     *bag.Bag
	Code    page.Code
	Text    string   // what the square code says
	Box     page.Box // where it is on its sheet
	Items   []page.Item
	Modules int // modules a side of the square code
}

// Labels are all bag labels of a quilt, on every stock that can hold a code.
func Labels(q *sheets.Quilt, st *page.Style) ([]Label, error) {
	var all []Label
	for _, stock := range sheets.Stocks() {
		if stock.HoldsCode() != nil {
			continue
		}
		for i := range q.Bags.Bags {
			b := &q.Bags.Bags[i]
			pages, err := sheets.LabelPages(q, sheets.LabelOptions{Stock: stock, Bags: []int{b.Number}}, st)
			if err != nil {
				return nil, err
			}
			pen := page.NewPen(st, page.Box{})
			pages[0](pen)
			l := Label{Stock: stock.Name, Bag: b, Box: stock.Label(0), Items: pen.Items()}
			for _, it := range l.Items {
				if code, ok := it.(page.Code); ok {
					l.Code, l.Modules = code, code.Size
					l.Text = q.Bags.Says(b, code.Size)
				}
			}
			all = append(all, l)
		}
	}
	return all, nil
}

// Seen is a label on a photo.
type Seen struct {
	*Label
	Corners [4][2]float64 // of its square code, from the upper left, clockwise
	Module  float64       // pixels a module, the root of the mean area
}

// A Photo is a made-up photo.
type Photo struct {
	JPEG  []byte
	Size  image.Point
	Seen  []Seen
	Shown Conditions
}

// Conditions are how bad a photo is.
type Conditions struct {
	Tilt    float64 // the largest of its labels, in degrees
	Blur    float64 // standard deviation in pixels
	Noise   float64 // standard deviation in levels of grey
	Glare   int     // streaks
	Quality int     // of the JPEG
}

// Options say what is wanted of a photo.
type Options struct {
	Least, Most float64     // pixels a side of the square codes; 0 stands for 60 and 600
	Labels      int         // labels on it, none below 0; 0 leaves it to chance: one to six
	Least2D     image.Point // the smallest size of the photo; it grows to hold its labels
}

// New makes up a photo of some of the labels.
func New(labels []Label, seed uint64, o Options) Photo {
	r := &chance{seed}
	s := newScene(r, labels, o)
	s.background()
	for i := range s.labels {
		s.draw(&s.labels[i])
	}
	s.light()
	s.glare()
	s.blur()
	s.noise()
	return s.photo()
}

// A placed is one with its place on the photo.
type placed struct {
	*Label
	side float64 // of the code, in pixels
	to   plane   // from millimetres on the label to pixels
	at   point   // its middle on the photo
	far  float64 // how far it reaches from there
	tilt float64
}

type point struct{ x, y float64 }

// newScene chooses labels and lays them out on a photo large enough for them.
func newScene(r *chance, labels []Label, o Options) *scene {
	if o.Least == 0 {
		o.Least, o.Most = 60, 600
	}
	n := o.Labels
	if n == 0 {
		n = []int{1, 1, 1, 1, 2, 2, 3, 4, 5, 6}[r.IntN(10)]
	}
	s := &scene{r: r}
	// Several labels share a photo at about the same distance.
	most := o.Most
	if n > 1 {
		most = max(o.Least, o.Most/math.Sqrt(float64(n)))
	}
	side := o.Least * math.Pow(most/o.Least, r.Float64())
	for range max(n, 0) {
		p := placed{Label: &labels[r.IntN(len(labels))], side: min(max(side*(0.8+0.4*r.Float64()), o.Least), o.Most), tilt: 40 * r.Float64()}
		p.to, p.far = view(r, p)
		s.labels = append(s.labels, p)
		s.cond.Tilt = max(s.cond.Tilt, p.tilt)
	}
	s.layOut(o.Least2D)
	s.cond.Noise = 1 + 9*r.Float64()
	module := 4.0
	if n > 0 {
		module = s.labels[0].side / float64(s.labels[0].Modules)
	}
	s.cond.Blur = 0.3 + r.Float64()*max(0.7, 0.45*module-0.3)
	s.cond.Quality = 30 + r.IntN(66)
	return s
}

// view looks at a label from a chance side: tilted about a chance axis, turned by
// a chance angle, from a distance of 2.5 to 6 times its diagonal, so near that its
// code has the wanted size. The plane is of the label's own middle.
func view(r *chance, p placed) (to plane, far float64) {
	w, h := mm(p.Box.W), mm(p.Box.H)
	diagonal := math.Hypot(w, h)
	distance := diagonal * (2.5 + 3.5*r.Float64())
	axis, turn, tilt := 2*math.Pi*r.Float64(), 2*math.Pi*r.Float64(), p.tilt*math.Pi/180
	to = tilted(turn, axis, tilt, distance)
	q := p.square(to)
	to = to.scaled(p.side / math.Sqrt(area(q)))
	for _, c := range [][2]float64{{-w / 2, -h / 2}, {w / 2, -h / 2}, {w / 2, h / 2}, {-w / 2, h / 2}} {
		at := to.at(c[0], c[1])
		far = max(far, math.Hypot(at.x, at.y))
	}
	return to, far
}

// square is the corners of the label's code, without its quiet zone.
func (p placed) square(to plane) [4]point {
	quiet := mm(p.Code.Module) * float64(p.Code.Quiet)
	x, y := mm(p.Code.At.X-p.Box.X)-mm(p.Box.W)/2+quiet, mm(p.Code.At.Y-p.Box.Y)-mm(p.Box.H)/2+quiet
	s := mm(p.Code.Module) * float64(p.Code.Size)
	return [4]point{to.at(x, y), to.at(x+s, y), to.at(x+s, y+s), to.at(x, y+s)}
}

func mm(l length.Length) float64 { return float64(l) / float64(length.MM) }

// area is that of a quadrangle.
func area(q [4]point) float64 {
	a := 0.0
	for i, p := range q {
		n := q[(i+1)%4]
		a += p.x*n.y - n.x*p.y
	}
	return math.Abs(a) / 2
}

// layOut puts the labels into a row or two of cells.
func (s *scene) layOut(least image.Point) {
	columns := 1 // also for none
	for columns*columns < len(s.labels) {
		columns++
	}
	cell := 0.0
	for _, p := range s.labels {
		cell = max(cell, 2*p.far)
	}
	cell *= 1.02
	rows := (len(s.labels) + columns - 1) / columns
	s.w = max(int(cell*float64(columns)*(1+0.3*s.r.Float64())), least.X, 240)
	s.h = max(int(cell*float64(rows)*(1+0.3*s.r.Float64())), least.Y, 240)
	for i := range s.labels {
		p := &s.labels[i]
		spare := point{float64(s.w) / float64(columns), float64(s.h) / float64(rows)}
		p.at.x = spare.x*float64(i%columns) + p.far + s.r.Float64()*(spare.x-2*p.far)
		p.at.y = spare.y*float64(i/columns) + p.far + s.r.Float64()*(spare.y-2*p.far)
	}
	s.luma = make([]float32, s.w*s.h)
}

// photo packs the scene.
func (s *scene) photo() Photo {
	img := image.NewYCbCr(image.Rect(0, 0, s.w, s.h), image.YCbCrSubsampleRatio420)
	for y := range s.h {
		for x := range s.w {
			img.Y[y*img.YStride+x] = uint8(min(max(s.luma[y*s.w+x]+0.5, 0), 255))
		}
	}
	blue, red := uint8(118+s.r.IntN(21)), uint8(118+s.r.IntN(21))
	for i := range img.Cb {
		img.Cb[i], img.Cr[i] = blue, red
	}
	var out bytes.Buffer
	if err := jpeg.Encode(&out, img, &jpeg.Options{Quality: s.cond.Quality}); err != nil {
		panic(err) // a buffer takes everything
	}
	p := Photo{JPEG: out.Bytes(), Size: image.Pt(s.w, s.h), Shown: s.cond}
	for _, l := range s.labels {
		seen := Seen{Label: l.Label, Module: l.side / float64(l.Modules)}
		for i, c := range l.square(l.to) {
			seen.Corners[i] = [2]float64{c.x + l.at.x, c.y + l.at.y}
		}
		p.Seen = append(p.Seen, seen)
	}
	return p
}
