package pack

import (
	"math/bits"
	"math/rand"
	"testing"
)

// staged says whether a set exactly fills w x h, waste beside it, in so many
// stages of which the first divides along the cloth or across.
func (b *brute) staged(set, w, h, stages int, dir Dir) bool {
	if set == 0 {
		return true
	}
	if set&(set-1) == 0 {
		i := bits.TrailingZeros(uint(set))
		s := b.sides[i]
		if s[0] == w && s[1] == h || b.turn[i] && s[1] == w && s[0] == h {
			return true
		}
	}
	if stages == 0 {
		return false
	}
	if b.staged(set, w, h, stages-1, Across+Along-dir) {
		return true
	}
	for first := set; first > 0; first = (first - 1) & set {
		for v := 1; v < w && dir == Along; v++ {
			if b.staged(first, v, h, stages-1, Across) && b.staged(set&^first, w-v, h, stages, Along) {
				return true
			}
		}
		for v := 1; v < h && dir == Across; v++ {
			if b.staged(first, w, v, stages-1, Along) && b.staged(set&^first, w, h-v, stages, Across) {
				return true
			}
		}
	}
	return false
}

func TestSlicerStages(t *testing.T) {
	r := rand.New(rand.NewSource(3))
	apart := 0
	for range 150 {
		p := Problem{Width: int64(3 + r.Intn(4))}
		for range 4 {
			p.Items = append(p.Items, Item{int64(1 + r.Intn(int(p.Width))), int64(1 + r.Intn(4)), 1, r.Intn(2) == 0})
		}
		b := bruteOf(p)
		var last [2]int64
		for stages := 2; stages <= 4; stages++ {
			for _, dir := range []Dir{Across, Along} {
				const longest = 9
				want := int64(0)
				for h := longest; h > 0 && b.staged(1<<4-1, b.w, h, stages, dir); h-- {
					want = int64(h)
				}
				s := newSlicer(sizesOf(p.Items), p.Width, &meter{limit: 1 << 40})
				s.found = make([]front, stages)
				root, ok, over := s.fit(dir, longest)
				if over || ok != (want > 0) || root.h != want {
					t.Fatalf("%+v: %d stages, first %v: %d, want %d", p, stages, dir, root.h, want)
				}
				if last[dir-1] != root.h && stages > 2 {
					apart++
				}
				last[dir-1] = root.h
			}
		}
	}
	if apart == 0 {
		t.Error("the number of stages never mattered")
	}
}

func TestFront(t *testing.T) {
	var f front
	for _, b := range []box{{5, 5}, {3, 7}, {4, 7}, {9, 1}, {5, 4}, {6, 4}} {
		f = f.add(b)
	}
	sums := func(join func(g front, note func(box))) (all front) {
		join(front{{2, 6}, {8, 2}}, func(b box) { all = all.add(b) })
		return all
	}
	for _, c := range []struct {
		name      string
		got, want front
	}{
		{"kept", f, front{{3, 7}, {5, 4}, {9, 1}}},
		{"above", sums(f.above), front{{3, 13}, {5, 10}, {8, 6}, {9, 3}}},
		{"beside", sums(f.beside), front{{5, 7}, {7, 6}, {13, 4}, {17, 2}}},
	} {
		if len(c.got) != len(c.want) {
			t.Fatalf("%s: %v, want %v", c.name, c.got, c.want)
		}
		for i := range c.want {
			if c.got[i] != c.want[i] {
				t.Errorf("%s: %v, want %v", c.name, c.got, c.want)
			}
		}
	}
}
