package say

import (
	"fmt"

	"cutbinder/layout/cutting"
	"cutbinder/layout/plan"
)

// BuySum is the sum behind what to buy: "18 1/4 in cut, 1/2 in squaring, 10 %
// extra: 20 5/8 in".
func (v Voice) BuySum(p *plan.Plan, f *cutting.Fabric) string {
	if f.Buy.Buy == 0 {
		return "nothing is cut from it"
	}
	text := v.With(f.Buy.Used) + " cut"
	if p.Allow.Squaring > 0 {
		text += ", " + v.With(p.Allow.Squaring) + " squaring"
	}
	if f.Fabric.Prewash {
		text += ", " + Percent(f.Fabric.Shrink.Length) + " shrinkage"
	}
	if p.Allow.Extra > 0 {
		text += ", " + Percent(p.Allow.Extra) + " extra"
	}
	return fmt.Sprintf("%s: %s", text, v.About(f.Buy.Exact))
}
