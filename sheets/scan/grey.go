package scan

// A grey is a picture in levels of grey, row by row, 0 black to 255 white.
type grey struct {
	w, h int
	pix  []uint8
}

func newGrey(w, h int) grey { return grey{w, h, make([]uint8, w*h)} }

func (g grey) row(y int) []uint8 { return g.pix[y*g.w : (y+1)*g.w] }

// half is the picture at half the size: the mean of each four pixels, which also
// takes away half of the noise.
func (g grey) half() grey {
	out := newGrey(g.w/2, g.h/2)
	for y := range out.h {
		a, b, to := g.row(2*y), g.row(2*y+1), out.row(y)
		for x := range to {
			to[x] = uint8((int(a[2*x]) + int(a[2*x+1]) + int(b[2*x]) + int(b[2*x+1]) + 2) / 4)
		}
	}
	return out
}

// double is the picture at twice the size. The values between are worked out with
// Catmull and Rom's spline, whose weights half way are -1, 9, 9 and -1 sixteenths:
// unlike straight lines it does not make edges softer.
func (g grey) double() grey {
	wide := newGrey(2*g.w, g.h)
	for y := range g.h {
		from, to := g.row(y), wide.row(y)
		for x := range from {
			to[2*x] = from[x]
			to[2*x+1] = between(from[max(x-1, 0)], from[x], from[min(x+1, g.w-1)], from[min(x+2, g.w-1)])
		}
	}
	out := newGrey(2*g.w, 2*g.h)
	for y := range g.h {
		copy(out.row(2*y), wide.row(y))
		a, b, c, d := wide.row(max(y-1, 0)), wide.row(y), wide.row(min(y+1, g.h-1)), wide.row(min(y+2, g.h-1))
		to := out.row(2*y + 1)
		for x := range to {
			to[x] = between(a[x], b[x], c[x], d[x])
		}
	}
	return out
}

func between(a, b, c, d uint8) uint8 {
	return uint8(min(max((9*(int(b)+int(c))-int(a)-int(d)+8)/16, 0), 255))
}

// A relief says how much lighter than its surroundings each pixel is: above 0 is
// light, below is dark. Slow changes of light are gone from it.
type relief struct {
	w, h int
	d    []int8
}

// reliefOf compares each pixel with the mean of the square that reaches r pixels
// from it. The sums slide along: two additions a pixel across and two down, however
// wide the square.
func reliefOf(g grey, r int) relief {
	out := relief{g.w, g.h, make([]int8, g.w*g.h)}
	sums := make([]int32, g.w)
	add := func(y int, sign int32) {
		for x, v := range g.row(y) {
			sums[x] += sign * int32(v)
		}
	}
	for y := range min(r, g.h) {
		add(y, 1)
	}
	for y := range g.h {
		if y+r < g.h {
			add(y+r, 1)
		}
		if y-r-1 >= 0 {
			add(y-r-1, -1)
		}
		rows := int32(min(y+r, g.h-1) - max(y-r, 0) + 1)
		out.level(g, sums, y, r, rows)
	}
	return out
}

// level fills one row, from the sums of the columns over so many rows.
func (rl relief) level(g grey, sums []int32, y, r int, rows int32) {
	from, to := g.row(y), rl.d[y*g.w:(y+1)*g.w]
	var sum, n int32
	for x := range min(r, g.w) {
		sum += sums[x]
		n += rows
	}
	inverse := 1 / float32(n)
	for x, v := range from {
		if x+r < g.w {
			sum += sums[x+r]
			n += rows
		}
		if x-r-1 >= 0 {
			sum -= sums[x-r-1]
			n -= rows
		}
		if x <= r || x+r >= g.w {
			inverse = 1 / float32(n)
		}
		d := float32(v) - float32(sum)*inverse
		to[x] = int8(min(max(d, -127), 127))
	}
}

// at is the relief between pixels, whose middles are at whole numbers; 0 outside.
func (rl *relief) at(x, y float64) float64 {
	if !(x >= 0 && y >= 0 && x < float64(rl.w-1) && y < float64(rl.h-1)) {
		return 0
	}
	i, j := int(x), int(y)
	fx, fy := x-float64(i), y-float64(j)
	k := j*rl.w + i
	a, b := rl.d[k:k+2:k+2], rl.d[k+rl.w:k+rl.w+2:k+rl.w+2]
	top := float64(a[0]) + (float64(a[1])-float64(a[0]))*fx
	bottom := float64(b[0]) + (float64(b[1])-float64(b[0]))*fx
	return top + (bottom-top)*fy
}
