package pack

import "testing"

func TestOrderOfMerit(t *testing.T) {
	base := merit{short: []int{0, 1}, cloths: 2, buy: 36, strips: 4, settings: 3, cuts: 20, spare: 100, odd: 2}
	for _, c := range []struct {
		name   string
		change func(m *merit)
	}{
		{"more of the first item", func(m *merit) { m.short, m.buy = []int{0, 0}, 99 }},
		{"fewer given cloths", func(m *merit) { m.cloths, m.buy = 1, 99 }},
		{"less to buy", func(m *merit) { m.buy, m.strips = 27, 9 }},
		{"fewer strips", func(m *merit) { m.strips, m.settings = 3, 9 }},
		{"fewer settings", func(m *merit) { m.settings, m.cuts = 2, 99 }},
		{"fewer cuts", func(m *merit) { m.cuts, m.spare = 19, 1 }},
		{"larger rectangle left over", func(m *merit) { m.spare, m.odd = 101, 9 }},
		{"more in twos", func(m *merit) { m.odd = 1 }},
	} {
		m := base
		c.change(&m)
		if m.better(&base) >= 0 || base.better(&m) <= 0 {
			t.Errorf("%s is not better", c.name)
		}
	}
	if base.better(&base) != 0 {
		t.Error("not equal to itself")
	}
}

func TestJudge(t *testing.T) {
	// Two strips of 4 and 2 on cloth 10 wide: a piece of 4 x 4 and one of 3 x 2
	// trimmed, then five of 2 x 2. Measures: strips 4, 2; widths 4, 3, 2.
	p := Problem{Width: 10, Items: []Item{{4, 4, 1, false}, {3, 2, 1, false}, {2, 2, 5, false}}}
	root := across([]node{
		along([]node{leafNode(0, 4, 4), leafNode(1, 3, 2)}),
		along([]node{leafNode(2, 2, 2), leafNode(2, 2, 2), leafNode(2, 2, 2), leafNode(2, 2, 2), leafNode(2, 2, 2)}),
	})
	r := p.layOut(sizesOf(p.Items), []node{root})
	if err := Check(p, r); err != nil {
		t.Fatal(err)
	}
	m := judge(&p, &r)
	// Cuts: 1 between the strips, 2 and 1 in the first, 4 in the second. The
	// 4 x 4, the 3 x 2 and the fifth 2 x 2 can't come off in twos.
	if m.strips != 2 || m.settings != 3 || m.cuts != 8 || m.odd != 3 || m.spare != 12 || m.buy != 6 {
		t.Errorf("%+v", m)
	}
}
