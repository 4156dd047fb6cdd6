package pack

// level makes a first plan: strips as high as the highest piece left must be,
// filled with the highest pieces that still fit.
func (s *search) level() {
	in := s.in
	left := in.counts()
	var plan []usage
	least := in.least()
	for {
		h := 0
		for i, n := range left {
			if n > 0 {
				h = max(h, least[i])
			}
		}
		if h == 0 {
			break
		}
		p := pattern{h: h}
		room := in.width
		for k := len(in.lies) - 1; k >= 0; k-- {
			l := in.lies[k]
			if n := min(left[l.size], int(room/l.rw)); l.h <= h && n > 0 {
				left[l.size] -= n
				room -= int64(n) * l.rw
				p.cols = append(p.cols, column{n, l.w, []take{{k, 1}}})
			}
		}
		p.sumUp(in)
		n := 1 + p.times(left)
		for _, t := range p.cover {
			left[t.size] -= (n - 1) * t.n
		}
		plan = append(plan, usage{s.m.add(p), n})
	}
	s.accept(plan)
}
