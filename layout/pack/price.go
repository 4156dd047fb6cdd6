package pack

// A pricer finds the most valuable strips at given prices.
type pricer interface {
	// price tells found about strips whose worth exceeds their cost, each no
	// more than what is left; found says whether that was news. It gives the largest worth over cost of any strip
	// as t (in the quote's scale) over cost; every strip is worth at most
	// t/cost times its cost, counted exactly or too high.
	//
	// A lazy pricer looks only where it hopes for most: finding nothing does not
	// mean that there is nothing, though t/cost is still true.
	price(q *quote, left []int, lazy bool, found func(pattern) bool) (t, cost int64)
}

// A stripPricer prices strips whose columns hold one piece each. Every strip
// holds a piece as high as itself; for each lie as that piece, the rest of the
// width is a bounded knapsack over the lies that are no higher.
//
// A first pass serves all heights with one knapsack, the lies being added
// lowest first. It is exact up to the bound on a size that fits in both
// orientations, or is the forced piece. Only where it finds nothing new are
// single heights priced exactly.
type stripPricer struct {
	in    *instance
	knap  knapsack
	exact []int   // lies left to the second pass
	loose []int64 // and what the first pass found them worth
	best  []int
	seen  []int
}

// enough is the number of strips priced exactly that the second pass is content
// with.
const enough = 8

// newStripPricer makes a pricer for an instance.
func newStripPricer(in *instance, work *meter) *stripPricer {
	return &stripPricer{in: in, knap: knapsack{work: work}}
}

// ratio keeps the largest t/cost seen.
type ratio struct{ t, cost int64 }

// add takes a strip of some worth and height into account.
func (r *ratio) add(worth, h int64) {
	if worth > 0 && (r.t == 0 || less128(r.t, h, worth, r.cost)) {
		r.t, r.cost = worth, h
	}
}

func (s *stripPricer) price(q *quote, left []int, _ bool, found func(pattern) bool) (t, cost int64) {
	in := s.in
	r, low := ratio{0, 1}, ratio{0, 1}
	news := 0
	report := func(k int) {
		if p, ok := s.pattern(k, q, left); ok && found(p) {
			news++
		}
	}
	s.exact, s.loose = s.exact[:0], s.loose[:0]
	s.knap.reset(in.cap)
	for i := 0; i < len(in.lies); {
		j := i
		for ; j < len(in.lies) && in.lies[j].h == in.lies[i].h; j++ {
			l := in.lies[j]
			s.knap.add(j, l.w, left[l.size], q.most(l.size))
		}
		h := in.lies[i].h
		extra := q.strip(h)
		for k := i; k < j; k++ {
			l := in.lies[k]
			if left[l.size] == 0 {
				continue
			}
			worth := q.most(l.size) + s.knap.worth[in.cap-l.w] + extra
			if worth <= q.toBeat(h) {
				low.add(worth, int64(h))
				continue
			}
			r.add(worth, int64(h))
			s.exact, s.loose = append(s.exact, k), append(s.loose, worth)
			s.relaxed(k)
			report(k)
		}
		i = j
	}
	if r.t == 0 {
		return low.t, low.cost
	}
	if news > 0 {
		return r.t, r.cost
	}
	r = low
	for i, k := range s.exact {
		if news >= enough {
			// The rest counts as the first pass saw it.
			r.add(s.loose[i], int64(in.lies[k].h))
			continue
		}
		worth := s.forced(k, q, left)
		h := in.lies[k].h
		r.add(worth+q.strip(h), int64(h))
		report(k)
	}
	return r.t, r.cost
}

// relaxed reads off the strip that the first pass found for lie k as its highest
// piece.
func (s *stripPricer) relaxed(k int) {
	l := s.in.lies[k]
	s.best = s.in.best(l.h, s.best)
	s.read(k)
}

// read counts the pieces of lie k and the knapsack's best filling beside it.
func (s *stripPricer) read(k int) {
	in := s.in
	l := in.lies[k]
	s.seen = resize(s.seen, len(in.sizes))
	clear(s.seen)
	s.seen[l.size] = 1
	s.knap.trace(len(s.knap.layers), in.cap-l.w, func(thing, n int) { s.seen[in.lies[thing].size] += n })
}

// forced prices the strips with lie k as the highest piece exactly.
func (s *stripPricer) forced(k int, q *quote, left []int) int64 {
	in := s.in
	l := in.lies[k]
	s.best = in.best(l.h, s.best)
	s.knap.reset(in.cap - l.w)
	for i, b := range s.best {
		if b >= 0 {
			n := left[i]
			if i == l.size {
				n--
			}
			s.knap.add(b, in.lies[b].w, n, q.size(i, l.h))
		}
	}
	worth := q.size(l.size, l.h) + s.knap.worth[in.cap-l.w]
	s.read(k)
	return worth
}

// pattern makes the strip of the pieces seen, of which lie k is the highest, in
// each size's narrowest lie, no more than are left, and no wider than the cloth.
// It reports whether the strip improves the solution.
func (s *stripPricer) pattern(k int, q *quote, left []int) (pattern, bool) {
	in := s.in
	h := in.lies[k].h
	room := in.width - in.lies[k].rw
	worth := q.size(in.lies[k].size, h) + q.strip(h)
	cols := 1
	for i, b := range s.best {
		n := min(s.seen[i], left[i])
		if i == in.lies[k].size {
			n--
		}
		if s.seen[i] = 0; b >= 0 && n > 0 {
			n = min(n, int(room/in.lies[b].rw))
			room -= int64(n) * in.lies[b].rw
			worth += int64(n) * q.size(i, h)
			s.seen[i] = n
			cols++
		}
	}
	s.knap.work.spend(4 * len(s.best))
	if worth <= q.toBeat(h) {
		return pattern{}, false
	}
	p := pattern{h: h, cols: make([]column, 0, cols), cover: make([]take, 0, cols)}
	rows := make([]take, 0, cols)
	put := func(b, n int) {
		rows = append(rows, take{b, 1})
		p.cols = append(p.cols, column{n, in.lies[b].w, rows[len(rows)-1 : len(rows) : len(rows)]})
	}
	put(k, 1)
	for i, b := range s.best {
		if s.seen[i] > 0 {
			put(b, s.seen[i])
		}
	}
	p.sumUp(in)
	s.knap.work.spend(200)
	return p, true
}
