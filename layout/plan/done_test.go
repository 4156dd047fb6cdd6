package plan

import (
	"testing"

	"cutbinder/layout/length"
)

// What is done already: yes in any case is all of a fabric, sizes are those alone,
// whichever way round.
func TestDone(t *testing.T) {
	patch := length.Size{W: 2 * length.Inch, H: 4 * length.Inch}
	for _, c := range []struct {
		done string
		want bool
	}{
		{"yes", true}, {"Yes", true}, {"no", false}, {"[4 x 2]", true}, {"2 x 4", true}, {"[3, 4]", false},
	} {
		p := mustRead(t, "plan: P\nfabrics: {a: {done: "+c.done+"}}\npieces: [{cut: 2 x 4, need: 1, fabric: a}]\n")
		if got := p.Fabrics[0].IsDone(patch); got != c.want {
			t.Errorf("done: %s: %v, want %v", c.done, got, c.want)
		}
	}
}
