package say

import (
	"testing"

	"cutbinder/layout/cutting"
	"cutbinder/layout/pack"
	"cutbinder/layout/plan"
)

// What is said of cloth on the shelf claims a proof only where there is one.
func TestShelfProof(t *testing.T) {
	for _, c := range []struct {
		short, used, left int
		kind              pack.Kind
		proved            bool
		want              string
	}{
		{0, 1, 0, pack.Strips, true, "All pieces come from what is on the shelf."},
		{0, 1, 2, pack.Strips, true, "All pieces come from one of three lengths; the rest stays whole."},
		{0, 2, 1, pack.Strips, false, "All pieces come from two of three lengths; the rest stays whole."},
		{0, 2, 1, pack.Strips, true, "All pieces come from two of three lengths; the rest stays whole. Proved: cut in strips, fewer wouldn't do."},
		{1, 1, 0, pack.Strips, false, "One piece finds no place on what is on the shelf."},
		{12, 4, 0, pack.Stacks, true, "12 pieces find no place on what is on the shelf. Proved: cut in strips with stacks, it can't give them all."},
	} {
		f := &cutting.Fabric{List: cutting.List{Fabric: &plan.Fabric{Cutting: c.kind, Have: make([]plan.Cloth, c.used+c.left)}},
			Short: []int{0, c.short}, Proved: c.proved}
		for i := range c.used + c.left {
			var cloth cutting.Cloth
			if i < c.used {
				cloth.Placed = make([]cutting.Placed, 1)
			}
			f.Cloths = append(f.Cloths, cloth)
		}
		if got := (Voice{}).Proof(&plan.Plan{}, f); got != c.want {
			t.Errorf("%+v:\n%s\nwant\n%s", c, got, c.want)
		}
	}
}
