package pack

import (
	"cmp"
	"slices"
)

// A merit is what a layout is judged by.
type merit struct {
	short    []int // of each item
	cloths   int   // given cloths cut into
	buy      int64 // purchase for the length used
	strips   int
	settings int     // different measures that the ruler is set to
	cuts     int     // cuts made
	spare    float64 // area of the largest leftover rectangle
	odd      int     // parts of strips that no other of the strip is like, so that they can't come off in twos
}

// better is the one order in which layouts are judged: all pieces placed (else
// as many as can be of the first item, then of the second, and so on); the fewest given cloths; the least
// to buy; the fewest strips; the fewest ruler settings; the fewest cuts; the
// largest rectangle left over; and last, the fewest parts of strips that can't be
// cut in twos, through both layers of folded cloth. It
// gives a negative number where a is better than b.
func (a *merit) better(b *merit) int {
	return cmp.Or(
		slices.Compare(a.short, b.short),
		cmp.Compare(a.cloths, b.cloths),
		cmp.Compare(a.buy, b.buy),
		cmp.Compare(a.strips, b.strips),
		cmp.Compare(a.settings, b.settings),
		cmp.Compare(a.cuts, b.cuts),
		cmp.Compare(b.spare, a.spare),
		cmp.Compare(a.odd, b.odd),
	)
}

// judge measures a result.
func judge(p *Problem, r *Result) merit {
	m := merit{short: r.Short}
	set := map[int64]bool{}
	for i := range r.Cloths {
		root := &r.Cloths[i]
		if root.Dir == None {
			continue
		}
		m.cloths++
		m.strips += stripsOf(root)
		m.odd += odd(root)
		m.walk(root, set)
	}
	m.settings = len(set)
	if len(p.Given) == 0 {
		m.cloths = 0
		m.buy = p.purchase(r.Used)
		rest := float64(p.Width) * float64(m.buy-r.Used)
		if m.spare = max(m.spare, rest); m.buy > r.Used {
			m.cuts++
		}
	}
	return m
}

// purchase is what must be bought for a used length.
func (p *Problem) purchase(used int64) int64 {
	if p.Purchase == nil {
		return used
	}
	return p.Purchase(used)
}

// stripsOf counts the strips of a cloth, those in its lengthwise sections
// included.
func stripsOf(root *Section) (n int) {
	for i := range root.Parts {
		t := &root.Parts[i]
		switch {
		case t.Dir == None && t.Item < 0:
		case root.Dir == Along && t.Dir == Across:
			n += stripsOf(t)
		default:
			n++
		}
	}
	return n
}

// odd counts the parts of a cloth's strips that are left when like ones are taken
// in twos.
func odd(root *Section) (n int) {
	if root.Dir != Across {
		return 0
	}
	for i := range root.Parts {
		parts := root.Parts[i].Parts
		for j, run := 0, 0; j < len(parts); j++ {
			if run++; j+1 < len(parts) && parts[j].like(&parts[j+1]) {
				continue
			}
			if parts[j].Dir != None || parts[j].Item >= 0 {
				n += run % 2
			}
			run = 0
		}
	}
	return n
}

// like says whether two sections are cut on in the same way into the same pieces.
func (s *Section) like(o *Section) bool {
	return s.W == o.W && s.H == o.H && s.Dir == o.Dir && s.Item == o.Item &&
		slices.EqualFunc(s.Parts, o.Parts, func(a, b Section) bool { return a.like(&b) })
}

// walk adds the settings, cuts and leftovers inside s.
func (m *merit) walk(s *Section, set map[int64]bool) {
	if s.Dir == None {
		if s.Item < 0 {
			m.spare = max(m.spare, float64(s.W)*float64(s.H))
		}
		return
	}
	m.cuts += len(s.Parts) - 1
	for i := range s.Parts {
		t := &s.Parts[i]
		if t.Dir != None || t.Item >= 0 {
			if s.Dir == Across {
				set[t.H] = true
			} else {
				set[t.W] = true
			}
		}
		m.walk(t, set)
	}
}
