package pack

import (
	"cmp"
	"slices"
)

// A lister lists the patterns of strips that may be part of a plan no higher
// than an aim: those whose reduced cost, at exact prices that prove a bound, is
// at most the gap between bound and aim (Baldacci, Christofides & Mingozzi
// 2008). Only maximal patterns are listed, to which no piece of any size can be
// added: as demands may be exceeded, some best plan has no others.
type lister struct {
	in   *instance
	q    *quote
	left []int
	gap  int64
	most int // patterns wanted at the most

	knap   knapsack
	best   []int
	h      int
	things []thing
	n      []int
	list   []pattern
	full   bool
	work   *meter
}

// A thing is a size as it is cut from strips of the height at hand.
type thing struct {
	lie   int
	most  int
	price int64
	top   bool    // as high as the strip
	rest  []int64 // worth of the best filling of each width with the things after it
}

// run lists the patterns; it reports false where there are too many of them.
func (l *lister) run() bool {
	l.knap.work = l.work
	for i := 0; i < len(l.in.heights) && !l.full; i++ {
		l.h = l.in.heights[i]
		l.strips()
	}
	return !l.full
}

// strips lists the strips of the height at hand.
func (l *lister) strips() {
	l.load()
	need := int64(l.h)*l.q.scale - l.q.strip(l.h) - l.gap
	tops := 0
	l.knap.reset(l.in.cap)
	for k := len(l.things) - 1; k >= 0; k-- {
		t := &l.things[k]
		t.rest = append(t.rest[:0], l.knap.worth...)
		l.knap.add(k, l.in.lies[t.lie].w, t.most, t.price)
		if t.top {
			tops++
		}
	}
	if tops > 0 && l.knap.worth[l.in.cap] >= need {
		l.n = resize(l.n, len(l.things))
		l.extend(0, l.in.cap, l.in.width, need, l.in.width, false)
	}
}

// load finds the things for the height at hand, those as high as the strip
// first, then the widest first.
func (l *lister) load() {
	in := l.in
	l.best = in.best(l.h, l.best)
	l.things = l.things[:0]
	for i, b := range l.best {
		if b >= 0 && l.left[i] > 0 {
			most := min(l.left[i], int(in.width/in.lies[b].rw))
			l.things = append(l.things, thing{lie: b, most: most, price: l.q.size(i, l.h), top: in.lies[b].h == l.h})
		}
	}
	slices.SortStableFunc(l.things, func(a, b thing) int {
		if a.top != b.top {
			if a.top {
				return -1
			}
			return 1
		}
		return cmp.Compare(in.lies[b.lie].rw, in.lies[a.lie].rw)
	})
}

// extend chooses how many there are of thing k and those after it in what is
// left of the width: cap in units, room as it is. The things are worth at least
// need; in the end, less than slack of the width may be left over.
func (l *lister) extend(k, cap int, room, need, slack int64, top bool) {
	l.work.spend(20)
	if l.full || l.work.stop() {
		l.full = true
		return
	}
	if k == len(l.things) {
		if room < slack {
			l.put()
		}
		return
	}
	t := &l.things[k]
	if !t.top && !top {
		return
	}
	lie := &l.in.lies[t.lie]
	for n := min(t.most, int(room/lie.rw)); n >= 0; n-- {
		cap, need, room := cap-n*lie.w, need-int64(n)*t.price, room-int64(n)*lie.rw
		if t.rest[cap] < need {
			continue
		}
		slack := slack
		if n < t.most {
			slack = min(slack, lie.rw)
		}
		l.n[k] = n
		l.extend(k+1, cap, room, need, slack, top || n > 0)
	}
}

// put adds the pattern at hand to the list.
func (l *lister) put() {
	if len(l.list) >= l.most {
		l.full = true
		return
	}
	p := pattern{h: l.h}
	for k, n := range l.n {
		if n > 0 {
			b := l.things[k].lie
			p.cols = append(p.cols, column{n, l.in.lies[b].w, []take{{b, 1}}})
		}
	}
	p.sumUp(l.in)
	l.list = append(l.list, p)
	l.work.spend(100)
}
