package pack

import (
	"context"
	"math/bits"
	"math/rand"
	"slices"
	"testing"
)

// randomGiven draws a small problem on a few cloths.
func randomGiven(r *rand.Rand, kind Kind, pieces int) Problem {
	p := Problem{Kind: kind, Effort: 20_000_000}
	for range 1 + r.Intn(3) {
		c := Cloth{W: int64(3 + r.Intn(7)), L: int64(2 + r.Intn(8))}
		for range 1 + r.Intn(2) {
			p.Given = append(p.Given, c)
		}
	}
	for n := 1 + r.Intn(pieces); n > 0; {
		it := Item{W: int64(1 + r.Intn(8)), H: int64(1 + r.Intn(6)), Count: min(n, 1+r.Intn(3)), Turn: r.Intn(2) == 0}
		if len(p.Items) > 0 && r.Intn(5) == 0 {
			it.W, it.H, it.Turn = p.Items[0].W, p.Items[0].H, p.Items[0].Turn // a size of two items
		}
		p.Items = append(p.Items, it)
		n -= it.Count
	}
	return p
}

// usedOf counts the cloths of a result that are cut into.
func usedOf(r Result) (n int) {
	for _, c := range r.Cloths {
		if c.Dir != None {
			n++
		}
	}
	return n
}

// byStarts tells the pieces short and the cloths cut into where cloths are only
// filled one after the other.
func byStarts(p Problem) (short []int, used int) {
	e := &engine{p: &p, sizes: rankedSizes(p.Items), work: &meter{limit: p.Effort}}
	if p.Effort == 0 {
		e.work.limit, e.hasty = EffortPerSecond, true
	}
	for _, l := range e.starts(newRoom(e.sizes, p.Given, p.Kind, e.work)) {
		if s := e.short(l.left); short == nil || slices.Compare(s, short) < 0 || slices.Equal(s, short) && l.used() < used {
			short, used = s, l.used()
		}
	}
	return short, used
}

func TestGivenIsNoWorseThanOneByOne(t *testing.T) {
	r := rand.New(rand.NewSource(8))
	better := 0
	for i := range 300 {
		p := randomGiven(r, Kind(i%3), 24)
		res := solved(t, p)
		short, used := byStarts(p)
		c := slices.Compare(res.Short, short)
		if c > 0 || c == 0 && usedOf(res) > used {
			t.Errorf("%+v: short %v on %d, one by one %v on %d", p, res.Short, usedOf(res), short, used)
		}
		if c < 0 || usedOf(res) < used {
			better++
		}
	}
	t.Logf("better in %d of 300", better)
	if better == 0 {
		t.Error("never better than one by one")
	}
}

func TestGivenChoice(t *testing.T) {
	// Four squares of 5: the larger cloth takes two strips, the wider one.
	squares := []Item{{5, 5, 4, false}}
	long := []Item{{3, 11, 1, false}, {2, 2, 3, false}}
	for _, c := range []struct {
		name  string
		items []Item
		given []Cloth
		want  []int // which cloths are cut into
	}{
		{"fewest strips", squares, []Cloth{{10, 12}, {20, 5}}, []int{1}},
		{"fewest cloths first", squares, []Cloth{{10, 5}, {10, 5}, {10, 10}}, []int{2}},
		{"the long piece needs the long cloth", long, []Cloth{{10, 10}, {5, 11}}, []int{1}},
	} {
		r := solved(t, Problem{Kind: Stacks, Items: c.items, Given: c.given})
		var got []int
		for i, cloth := range r.Cloths {
			if cloth.Dir != None {
				got = append(got, i)
			}
		}
		if !slices.Equal(got, c.want) || !r.Proved || !done(r.Short) {
			t.Errorf("%s: cut into %v, proved %v, short %v, want %v", c.name, got, r.Proved, r.Short, c.want)
		}
	}
}

func TestGivenProofs(t *testing.T) {
	for _, c := range []struct {
		name  string
		kind  Kind
		items []Item
		given []Cloth
		short []int
	}{
		{"no two fit one cloth", Thrifty, []Item{{6, 6, 3, false}, {1, 1, 1, false}}, []Cloth{{10, 10}, {10, 10}}, []int{1, 0}},
		{"only one cloth is long enough", Thrifty, []Item{{6, 12, 2, true}}, []Cloth{{10, 10}, {10, 12}, {10, 10}}, []int{1}},
		{"by strips alone", Strips, []Item{{5, 6, 2, false}, {5, 4, 4, false}}, []Cloth{{5, 10}, {5, 11}}, []int{0, 2}},
		{"squares in an uneven cloth", Stacks, []Item{{3, 3, 20, true}}, []Cloth{{8, 8}, {11, 5}}, []int{13}},
	} {
		r := solved(t, Problem{Kind: c.kind, Items: c.items, Given: c.given})
		if !slices.Equal(r.Short, c.short) || !r.Proved {
			t.Errorf("%s: short %v, proved %v, want %v", c.name, r.Short, r.Proved, c.short)
		}
	}
}

// onCloth says of every set of the pieces whether it fits a cloth in a kind of
// cutting.
func (b *brute) onCloth(c Cloth, kind Kind) []bool {
	fits := make([]bool, 1<<len(b.sides))
	for set := range fits {
		if kind == Thrifty {
			fits[set] = b.guillotine(set, int(c.W), int(c.L))
			continue
		}
		part := &brute{w: int(c.W)}
		for i := range b.sides {
			if set>>i&1 == 1 {
				part.sides, part.turn = append(part.sides, b.sides[i]), append(part.turn, b.turn[i])
			}
		}
		// What is too wide in every orientation makes levels see no way.
		fits[set] = set == 0 || part.fitWidth() && part.levels(kind == Strips) <= int(c.L)
	}
	return fits
}

// fitWidth says whether each piece fits the width by itself.
func (b *brute) fitWidth() bool {
	for i, s := range b.sides {
		if s[0] > b.w && !(b.turn[i] && s[1] <= b.w) {
			return false
		}
	}
	return true
}

// bestOn finds by trying all: the fewest pieces short, item by item, and the
// fewest cloths then.
func bestOn(p Problem) (short []int, used int) {
	b := bruteOf(p)
	reach := make([]int, 1<<len(b.sides)) // cloths used for a set, -1 for none
	for set := range reach {
		reach[set] = -1
	}
	reach[0] = 0
	for _, c := range p.Given {
		fits := b.onCloth(c, p.Kind)
		next := slices.Clone(reach)
		for set, n := range reach {
			for add := range fits {
				if n >= 0 && add > 0 && add&set == 0 && fits[add] && (next[set|add] < 0 || n+1 < next[set|add]) {
					next[set|add] = n + 1
				}
			}
		}
		reach = next
	}
	for set, n := range reach {
		if n < 0 {
			continue
		}
		var s []int
		at := 0
		for _, it := range p.Items {
			s = append(s, it.Count-bits.OnesCount(uint(set>>at&(1<<it.Count-1))))
			at += it.Count
		}
		if c := slices.Compare(s, short); short == nil || c < 0 || c == 0 && n < used {
			short, used = s, n
		}
	}
	return short, used
}

func TestGivenBruteForce(t *testing.T) {
	r := rand.New(rand.NewSource(9))
	var same, proved [3]int
	n := *bruteCases / 2
	for i := range 3 * n {
		kind := Kind(i % 3)
		p := randomGiven(r, kind, 6)
		p.Given = p.Given[:min(2, len(p.Given))]
		res, err := Solve(context.Background(), p)
		if err == nil {
			err = Check(p, res)
		}
		if err != nil {
			t.Fatalf("%+v: %v", p, err)
		}
		short, used := bestOn(p)
		c := slices.Compare(res.Short, short)
		if c == 0 && usedOf(res) == used {
			same[kind]++
		} else if c < 0 || c == 0 && usedOf(res) < used || res.Proved {
			t.Errorf("%+v: short %v on %d, proved %v; best %v on %d", p, res.Short, usedOf(res), res.Proved, short, used)
		}
		if res.Proved {
			proved[kind]++
		}
	}
	t.Logf("of %d each: best %v, proved %v", n, same, proved)
	for k, least := range [3]int{n, n, n * 98 / 100} {
		if same[k] < least {
			t.Errorf("%v: the best in only %d of %d", Kind(k), same[k], n)
		}
	}
}
