package pack

// A pricer finds the most valuable strips at given prices.
type pricer interface {
	// price tells found about strips whose worth exceeds their cost, each no
	// more than what is left. It gives the largest worth over cost of any strip
	// as t (in the quote's scale) over cost; every strip is worth at most
	// t/cost times its cost, counted exactly or too high.
	//
	// A lazy pricer looks only where it hopes for most: finding nothing does not
	// mean that there is nothing, though t/cost is still true.
	price(q *quote, left []int, lazy bool, found func(pattern)) (t, cost int64)
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

func (s *stripPricer) price(q *quote, left []int, _ bool, found func(pattern)) (t, cost int64) {
	in := s.in
	r, low := ratio{0, 1}, ratio{0, 1}
	news := 0
	report := func(p pattern, worth int64) {
		if p.worth(q)+q.strip(p.h) > q.toBeat(p.h) {
			news++
			found(p)
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
			report(s.relaxed(k, left), worth)
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
		p, worth := s.forced(k, q, left)
		h := in.lies[k].h
		r.add(worth+q.strip(h), int64(h))
		report(p, worth)
	}
	return r.t, r.cost
}

// relaxed makes the strip that the first pass found for lie k as its highest
// piece, in each size's narrowest lie and no more than are left.
func (s *stripPricer) relaxed(k int, left []int) pattern {
	in := s.in
	l := in.lies[k]
	s.best = in.best(l.h, s.best)
	s.seen = resize(s.seen, len(in.sizes))
	clear(s.seen)
	s.seen[l.size] = 1
	s.knap.trace(len(s.knap.layers), in.cap-l.w, func(thing, n int) { s.seen[in.lies[thing].size] += n })
	return s.pattern(k, left)
}

// forced prices the strips with lie k as the highest piece exactly.
func (s *stripPricer) forced(k int, q *quote, left []int) (pattern, int64) {
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
	s.seen = resize(s.seen, len(in.sizes))
	clear(s.seen)
	s.seen[l.size] = 1
	s.knap.trace(len(s.knap.layers), in.cap-l.w, func(thing, n int) { s.seen[in.lies[thing].size] += n })
	return s.pattern(k, left), worth
}

// pattern makes the strip of the pieces in seen, of which lie k is the highest.
func (s *stripPricer) pattern(k int, left []int) pattern {
	in := s.in
	p := pattern{h: in.lies[k].h}
	room := in.width
	put := func(b, n int) {
		n = min(n, int(room/in.lies[b].rw))
		if n > 0 {
			room -= int64(n) * in.lies[b].rw
			p.cols = append(p.cols, column{n, in.lies[b].w, []take{{b, 1}}})
		}
	}
	put(k, 1)
	for i, b := range s.best {
		n := min(s.seen[i], left[i])
		if i == in.lies[k].size {
			n--
		}
		if b >= 0 {
			put(b, n)
		}
	}
	p.sumUp(in)
	return p
}
