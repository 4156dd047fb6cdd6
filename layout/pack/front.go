package pack

// A box is how much cloth some pieces need when cut in some way.
type box struct{ w, h int64 }

// A front holds the boxes of which none needs more of both sides than another:
// from the narrowest, which is the longest, to the widest.
type front []box

// add takes a box in unless another is as good, and drops those it is as good
// as.
func (f front) add(b box) front {
	i := 0
	for i < len(f) && f[i].w < b.w {
		i++
	}
	if i > 0 && f[i-1].h <= b.h || i < len(f) && f[i].w == b.w && f[i].h <= b.h {
		return f
	}
	j := i
	for j < len(f) && f[j].h >= b.h {
		j++
	}
	if j > i {
		f[i] = b
		return append(f[:i+1], f[j:]...)
	}
	f = append(f, box{})
	copy(f[i+1:], f[i:])
	f[i] = b
	return f
}

// above calls note with the boxes worth having of one of f above one of g: for
// each width the lowest of both.
func (f front) above(g front, note func(box)) {
	for i, j := 0, 0; ; {
		w := max(f[i].w, g[j].w)
		for i+1 < len(f) && f[i+1].w <= w {
			i++
		}
		for j+1 < len(g) && g[j+1].w <= w {
			j++
		}
		note(box{w, f[i].h + g[j].h})
		switch {
		case i+1 == len(f) && j+1 == len(g):
			return
		case i+1 == len(f) || j+1 < len(g) && g[j+1].w < f[i+1].w:
			j++
		default:
			i++
		}
	}
}

// beside calls note with the boxes worth having of one of f beside one of g: for
// each height the narrowest of both.
func (f front) beside(g front, note func(box)) {
	for i, j := len(f)-1, len(g)-1; ; {
		h := max(f[i].h, g[j].h)
		for i > 0 && f[i-1].h <= h {
			i--
		}
		for j > 0 && g[j-1].h <= h {
			j--
		}
		note(box{f[i].w + g[j].w, h})
		switch {
		case i == 0 && j == 0:
			return
		case i == 0 || j > 0 && g[j-1].h < f[i-1].h:
			j--
		default:
			i--
		}
	}
}

// Fronts are those of many states, one after the other.
type fronts struct {
	boxes []box
	from  []int32
	count []int32
}

// newFronts makes room for so many states, whose fronts are empty.
func newFronts(states int) *fronts {
	return &fronts{from: make([]int32, states), count: make([]int32, states)}
}

// put sets the front of a state.
func (f *fronts) put(state int, g front) {
	f.from[state], f.count[state] = int32(len(f.boxes)), int32(len(g))
	f.boxes = append(f.boxes, g...)
}

// at is the front of a state.
func (f *fronts) at(state int) front {
	i := f.from[state]
	return f.boxes[i : i+f.count[state]]
}
