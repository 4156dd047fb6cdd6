package pack

import "fmt"

// stages is the most stages of cuts a kind allows.
func (k Kind) stages() int { return int(k) + 3 }

// Check verifies a result against its problem without trusting how it was
// found: every section lies inside and is tiled exactly by its parts, the cuts
// run edge to edge in no more stages than the kind allows, every piece has its
// item's size (turned only where allowed), counts add up, and the used length
// is right. It does not check the bounds.
func Check(p Problem, r Result) error {
	if err := p.validate(); err != nil {
		return err
	}
	if len(r.Short) != len(p.Items) {
		return fmt.Errorf("short: %d entries for %d items", len(r.Short), len(p.Items))
	}
	if want := max(1, len(p.Given)); len(r.Cloths) != want {
		return fmt.Errorf("cloths: %d, want %d", len(r.Cloths), want)
	}
	c := checker{p: p, placed: make([]int, len(p.Items))}
	var used int64
	for i, root := range r.Cloths {
		end, err := c.cloth(root, i)
		if err != nil {
			return fmt.Errorf("cloth %d: %w", i, err)
		}
		used += end
	}
	if used != r.Used {
		return fmt.Errorf("used: %d, but the last piece ends at %d", r.Used, used)
	}
	for i, it := range p.Items {
		if r.Short[i] < 0 || r.Short[i] > 0 && len(p.Given) == 0 {
			return fmt.Errorf("item %d: short by %d", i, r.Short[i])
		}
		if c.placed[i]+r.Short[i] != it.Count {
			return fmt.Errorf("item %d: %d placed and %d short, want %d in all", i, c.placed[i], r.Short[i], it.Count)
		}
	}
	return nil
}

// A checker counts the pieces met.
type checker struct {
	p      Problem
	placed []int
}

// cloth checks one cloth and gives the length used of it.
func (c *checker) cloth(root Section, i int) (int64, error) {
	w, l := c.p.Width, root.H
	if len(c.p.Given) > 0 {
		w, l = c.p.Given[i].W, c.p.Given[i].L
	}
	if root.X != 0 || root.Y != 0 || root.W != w || root.H != l {
		return 0, fmt.Errorf("is %d x %d at %d, %d, want %d x %d at 0, 0", root.W, root.H, root.X, root.Y, w, l)
	}
	if root.Dir == Along && c.p.Kind != Thrifty {
		return 0, fmt.Errorf("first cut along the length, which only thrifty allows")
	}
	end, _, err := c.section(root, 0)
	if err != nil {
		return 0, err
	}
	if len(c.p.Given) == 0 && end != root.H {
		return 0, fmt.Errorf("is %d long, but the last piece ends at %d", root.H, end)
	}
	return end, nil
}

// section checks s, reached after some stages of cuts, and gives where its last
// piece ends along y, and how many pieces it holds.
func (c *checker) section(s Section, stage int) (end int64, pieces int, err error) {
	if s.W < 0 || s.H < 0 || stage > 0 && (s.W == 0 || s.H == 0) {
		return 0, 0, fmt.Errorf("section at %d, %d is %d x %d", s.X, s.Y, s.W, s.H)
	}
	if s.Dir == None {
		return c.leaf(s)
	}
	if s.Item != -1 || s.Dir != Across && s.Dir != Along || len(s.Parts) == 0 {
		return 0, 0, fmt.Errorf("section at %d, %d: divided %d into %d parts with item %d", s.X, s.Y, s.Dir, len(s.Parts), s.Item)
	}
	if stage > 0 && len(s.Parts) == 1 {
		return 0, 0, fmt.Errorf("section at %d, %d: divided into one part", s.X, s.Y)
	}
	if stage++; stage > c.p.Kind.stages() {
		return 0, 0, fmt.Errorf("section at %d, %d: more than %d stages of cuts", s.X, s.Y, c.p.Kind.stages())
	}
	end, pieces, err = c.parts(s, stage)
	if err == nil && stage == c.p.Kind.stages() && c.p.Kind != Thrifty && pieces > 1 {
		err = fmt.Errorf("section at %d, %d: %d pieces where the last stage only trims one", s.X, s.Y, pieces)
	}
	return end, pieces, err
}

// parts checks that the parts of s tile it, and each in turn.
func (c *checker) parts(s Section, stage int) (end int64, pieces int, err error) {
	x, y := s.X, s.Y
	for _, t := range s.Parts {
		across := t.W == s.W && s.Dir == Across
		along := t.H == s.H && s.Dir == Along
		if t.X != x || t.Y != y || !across && !along {
			return 0, 0, fmt.Errorf("part %d x %d at %d, %d does not continue section %d x %d at %d, %d",
				t.W, t.H, t.X, t.Y, s.W, s.H, s.X, s.Y)
		}
		if t.Dir == s.Dir {
			return 0, 0, fmt.Errorf("section at %d, %d is divided the same way as its parent", t.X, t.Y)
		}
		if s.Dir == Across {
			y += t.H
		} else {
			x += t.W
		}
		e, n, err := c.section(t, stage)
		if err != nil {
			return 0, 0, err
		}
		end, pieces = max(end, e), pieces+n
	}
	if s.Dir == Across && y != s.Y+s.H || s.Dir == Along && x != s.X+s.W {
		return 0, 0, fmt.Errorf("parts of section %d x %d at %d, %d do not fill it", s.W, s.H, s.X, s.Y)
	}
	return end, pieces, nil
}

// leaf checks a piece or a leftover.
func (c *checker) leaf(s Section) (end int64, pieces int, err error) {
	if len(s.Parts) > 0 || s.Item < -1 || s.Item >= len(c.p.Items) {
		return 0, 0, fmt.Errorf("undivided section at %d, %d: %d parts, item %d", s.X, s.Y, len(s.Parts), s.Item)
	}
	if s.Item == -1 {
		return 0, 0, nil
	}
	it := c.p.Items[s.Item]
	w, h := it.W, it.H
	if s.Turned {
		w, h = h, w
	}
	if s.Turned && !it.Turn {
		return 0, 0, fmt.Errorf("item %d at %d, %d is turned, which it does not allow", s.Item, s.X, s.Y)
	}
	if s.W != w || s.H != h {
		return 0, 0, fmt.Errorf("item %d at %d, %d is %d x %d, want %d x %d", s.Item, s.X, s.Y, s.W, s.H, w, h)
	}
	c.placed[s.Item]++
	return s.Y + s.H, 1, nil
}
