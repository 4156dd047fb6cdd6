package changes

import (
	"fmt"
	"strings"

	"cutbinder/sheets/bag"
)

// bags compares the bags by what they hold, first those of the same number. A
// label stays good where the bag's code is the same.
func (c *Changes) bags() {
	old, new := c.Old.Bags.Bags, c.New.Bags.Bags
	taken := make([]bool, len(old))    // old bags that have found their new one
	from := make([]*bag.Bag, len(new)) // the old bag of each new one
	match := func(i, j int) {
		from[i], taken[j] = &old[j], true
	}
	for i := range new {
		if i < len(old) && holds(&new[i]) == holds(&old[i]) {
			match(i, i)
		}
	}
	byContents := map[string][]int{}
	for j := range old {
		if !taken[j] {
			byContents[holds(&old[j])] = append(byContents[holds(&old[j])], j)
		}
	}
	for i := range new {
		if same := byContents[holds(&new[i])]; from[i] == nil && len(same) > 0 {
			match(i, same[0])
			byContents[holds(&new[i])] = same[1:]
		}
	}
	for i := range new {
		if from[i] == nil && i < len(old) && !taken[i] {
			match(i, i)
		}
	}
	for i := range new {
		c.bag(&new[i], from[i])
	}
	for j := range old {
		if !taken[j] {
			c.Bags = append(c.Bags, Bag{Kind: Gone, Number: old[j].Number, Before: old[j].Number, Old: &old[j]})
		}
	}
}

// bag notes what became of a bag.
func (c *Changes) bag(now, was *bag.Bag) {
	b := Bag{Number: now.Number, New: now, Old: was}
	switch {
	case was == nil:
		b.Kind = Added
	case holds(now) != holds(was):
		b.Kind, b.Before = Changed, was.Number
	case now.Code != was.Code:
		b.Kind, b.Before = Moved, was.Number
	default:
		c.Good = append(c.Good, now.Number)
		return
	}
	c.Bags = append(c.Bags, b)
	c.Labels = append(c.Labels, now.Number)
}

// holds is what a bag holds, as a text.
func holds(b *bag.Bag) string {
	var s strings.Builder
	fmt.Fprintf(&s, "%+v", b.Places)
	for _, r := range b.Rows {
		if r.Joined != nil {
			fmt.Fprintf(&s, "joined %+v", *r.Joined)
			r.Joined = nil
		}
		if r.Set != nil {
			fmt.Fprintf(&s, "set %+v", *r.Set)
			r.Set = nil
		}
		fmt.Fprintf(&s, "%+v", r)
	}
	return s.String()
}
