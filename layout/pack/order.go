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
	folds    int     // pieces lying over the fold at half the width
}

// better is the one order in which layouts are judged: all pieces placed (else
// as many as can be of the first item, then of the second, and so on); the fewest given cloths; the least
// to buy; the fewest strips; the fewest ruler settings; the fewest cuts; the
// largest rectangle left over; and last, the fewest pieces over the fold. It
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
		cmp.Compare(a.folds, b.folds),
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
		m.walk(root, set, root.W)
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

// walk adds the settings, cuts, leftovers and folded pieces inside s.
func (m *merit) walk(s *Section, set map[int64]bool, width int64) {
	if s.Dir == None {
		if s.Item < 0 {
			m.spare = max(m.spare, float64(s.W)*float64(s.H))
		} else if 2*s.X < width && 2*(s.X+s.W) > width {
			m.folds++
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
		m.walk(t, set, width)
	}
}
