package pack

import "testing"

func TestBoundWide(t *testing.T) {
	for _, c := range []struct {
		name  string
		items []Item
		want  int64
	}{
		// Width 10.
		{"nothing", nil, 0},
		{"nothing fits beside", []Item{{10, 7, 2, false}, {4, 20, 1, false}}, 14 + 20},
		{"little fits beside", []Item{{8, 7, 2, false}, {3, 20, 1, false}, {2, 2, 1, false}}, 14 + 20},
		{"more than half, twice", []Item{{6, 3, 2, false}, {6, 4, 1, false}}, 10},
		{"half, twice", []Item{{5, 3, 2, false}}, 0},
		{"wide either way", []Item{{7, 8, 1, true}, {4, 9, 1, false}}, 7 + 9},
		{"narrow one way", []Item{{2, 8, 3, true}, {9, 1, 1, false}}, 1 + 6},
		{"too wide at all", []Item{{11, 5, 1, false}}, 0},
	} {
		if got := boundWide(sizesOf(c.items), 10); got != c.want {
			t.Errorf("%s: %d, want %d", c.name, got, c.want)
		}
	}
}
