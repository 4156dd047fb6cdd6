package pack

import (
	"strings"
	"testing"
)

func TestCheckRefuses(t *testing.T) {
	// Two strips: a 4 x 4 with a trimmed 3 x 2 beside it, and a turned 2 x 3.
	p := Problem{Width: 8, Items: []Item{{4, 4, 1, false}, {3, 2, 1, false}, {2, 3, 1, true}}}
	layout := func() Result {
		return Result{Used: 6, Short: []int{0, 0, 0}, Cloths: []Section{{W: 8, H: 6, Dir: Across, Item: -1, Parts: []Section{
			{W: 8, H: 4, Dir: Along, Item: -1, Parts: []Section{
				{W: 4, H: 4, Item: 0},
				{X: 4, W: 3, H: 4, Dir: Across, Item: -1, Parts: []Section{
					{X: 4, W: 3, H: 2, Item: 1}, {X: 4, Y: 2, W: 3, H: 2, Item: -1}}},
				{X: 7, W: 1, H: 4, Item: -1}}},
			{Y: 4, W: 8, H: 2, Dir: Along, Item: -1, Parts: []Section{
				{Y: 4, W: 3, H: 2, Item: 2, Turned: true}, {X: 3, Y: 4, W: 5, H: 2, Item: -1}}},
		}}}}
	}
	if err := Check(p, layout()); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		want   string
		change func(p *Problem, r *Result)
	}{
		{"cloths", func(p *Problem, r *Result) { r.Cloths = nil }},
		{"entries", func(p *Problem, r *Result) { r.Short = nil }},
		{"used", func(p *Problem, r *Result) { r.Used = 5 }},
		{"want 9 x 6", func(p *Problem, r *Result) { p.Width = 9 }},
		{"short by", func(p *Problem, r *Result) { r.Short[0] = 1 }},
		{"want 2 in all", func(p *Problem, r *Result) { p.Items[0].Count = 2 }},
		{"does not allow", func(p *Problem, r *Result) { p.Items[2].Turn = false }},
		{"want 2 x 3", func(p *Problem, r *Result) { r.Cloths[0].Parts[1].Parts[0].Turned = false }},
		{"does not continue", func(p *Problem, r *Result) { r.Cloths[0].Parts[1].Y = 3 }},
		{"do not fill", func(p *Problem, r *Result) { r.Cloths[0].Parts[0].Parts = r.Cloths[0].Parts[0].Parts[:2] }},
		{"last stage only trims one", func(p *Problem, r *Result) {
			p.Items[1].Count = 2
			r.Cloths[0].Parts[0].Parts[1].Parts[1].Item = 1
		}},
		{"first cut along", func(p *Problem, r *Result) { r.Cloths[0].Dir = Along }},
		{"last piece ends", func(p *Problem, r *Result) { r.Cloths[0].Parts[1].Parts[0].Item = -1 }},
		{"item 7", func(p *Problem, r *Result) { r.Cloths[0].Parts[0].Parts[0].Item = 7 }},
		{"into one part", func(p *Problem, r *Result) {
			s := &r.Cloths[0].Parts[0].Parts[0]
			s.Parts, s.Dir, s.Item = []Section{*s}, Across, -1
		}},
		{"same way as its parent", func(p *Problem, r *Result) { r.Cloths[0].Parts[0].Dir = Across }},
		{"outside the limits", func(p *Problem, r *Result) { p.Items[0].W = 0 }},
	} {
		q, r := p, layout()
		q.Items = append([]Item(nil), p.Items...)
		c.change(&q, &r)
		if err := Check(q, r); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("want an error with %q, got %v", c.want, err)
		}
	}
}
