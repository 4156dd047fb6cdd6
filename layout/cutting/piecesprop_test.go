package cutting

import (
	"math/rand/v2"
	"testing"

	"cutbinder/layout/length"
	"cutbinder/layout/plan"
)

// need is how many pieces of all sizes there are, but for the backing's, and how
// long that is over all: thrifty panels may be many and short.
func need(t *testing.T, p *plan.Plan) (n int, backing length.Length) {
	t.Helper()
	lists, problems := Pieces(p)
	if problems != nil {
		t.Fatal(problems)
	}
	for _, l := range lists {
		for _, piece := range l.Pieces {
			if piece.Uses[0].For == ForBacking {
				backing += piece.Size.H * length.Length(piece.Need)
			} else {
				n += piece.Need
			}
		}
	}
	return n, backing
}

// TestWiderNeedsNoMore checks that wider cloth never takes more strips or panels,
// whatever they are for, and that a larger quilt never takes fewer.
func TestWiderNeedsNoMore(t *testing.T) {
	r := rand.New(rand.NewPCG(31, 32))
	piece := line(plan.Piece{Cut: size("2 1/2 x 66"), Join: true}, "night")
	set := line(plan.Piece{Unit: plan.StripSet, Segment: in("6"), Strips: []plan.SetStrip{{Finished: in("2"), Source: on("dusk")}, {Finished: in("1"), Source: on("night")}}})
	for range 300 {
		long, strip := length.Length(1+r.IntN(120)), in("1/8")*length.Length(8+r.IntN(30))
		piece.Count, piece.Cut = 1+r.IntN(6), length.Size{W: strip, H: in("1")*long + in("41")}
		set.Count = 1 + r.IntN(200)
		straight, bias := r.IntN(2) == 0, r.IntN(3) == 0
		made := func(width, more length.Length) *plan.Plan {
			return quilt(loose(piece, set), func(p *plan.Plan) {
				p.Finished = length.Size{W: in("50") + in("1")*long + more, H: in("60") + more}
				p.Binding = &plan.Binding{Source: on("night"), Strip: strip, Tail: in("10"), Straight: straight, Bias: bias}
				p.Backing = &plan.Backing{Source: on("wick"), Overhang: in("4")}
				p.Borders = []*plan.Border{{Width: in("5"), Source: on("dusk"), Join: true}}
				for _, f := range p.Fabrics {
					f.Width = width
				}
			})
		}
		width := in("1/2") * length.Length(60+r.IntN(60))
		n, back := need(t, made(width, 0))
		if wide, wideBack := need(t, made(width+in("1/4")*length.Length(r.IntN(20)), 0)); wide > n || wideBack > back {
			t.Fatalf("%v wide cloth takes %d and %v, wider cloth %d and %v", width, n, back, wide, wideBack)
		}
		if large, largeBack := need(t, made(width, in("1")*length.Length(r.IntN(20)))); large < n || largeBack < back {
			t.Fatalf("a larger quilt takes %d and %v in place of %d and %v", large, largeBack, n, back)
		}
	}
}

// TestMoreNeedsNoLess checks that more blocks, more of a line and more spares
// never take fewer pieces.
func TestMoreNeedsNoLess(t *testing.T) {
	r := rand.New(rand.NewPCG(33, 34))
	for range 500 {
		p := randomQuilt(r)
		base, _ := need(t, p)
		b := p.Blocks[r.IntN(len(p.Blocks))]
		switch line := b.Pieces[r.IntN(len(b.Pieces))]; r.IntN(3) {
		case 0:
			b.Make++
		case 1:
			line.Count++
		default:
			p.Allow.Spare += 100
		}
		if more, _ := need(t, p); more < base {
			t.Fatalf("more blocks take %d pieces in place of %d", more, base)
		}
	}
}

// TestSpares checks on random plans that each size of each source has its share
// of spares, rounded up, and no size more than one a whole percent would ask.
func TestSpares(t *testing.T) {
	type key struct {
		source string
		size   length.Size
	}
	r := rand.New(rand.NewPCG(35, 36))
	for range 500 {
		p := randomQuilt(r)
		p.Allow.Spare = plan.Percent(1 + r.IntN(2000))
		for _, f := range p.Fabrics {
			f.OneWay = false
		}
		for _, b := range p.Blocks {
			for _, piece := range b.Pieces {
				piece.NoTurn = false
			}
		}
		counts, spares := map[key]int{}, map[key]int{}
		lists, _ := Pieces(p)
		for _, l := range lists {
			for _, piece := range l.Pieces {
				for _, u := range piece.Uses {
					k := key{u.Mix, piece.Size}
					if u.Mix == "" {
						k.source = l.Fabric.ID
					}
					counts[k] += u.Count
					spares[k] += u.Spares
				}
			}
		}
		for k, n := range counts {
			if got, want := spares[k], (n*int(p.Allow.Spare)+9999)/10000; got != want {
				t.Fatalf("%d of %v at %d: %d spares, want %d", n, k, p.Allow.Spare, got, want)
			}
		}
	}
}

// FuzzPieces checks that whatever plan can be read is derived or faulted, within
// the limit of pieces.
func FuzzPieces(f *testing.F) {
	for _, seed := range []string{
		"plan: A\nfabrics: {a: {}, b: {have: [fat quarter, 9 x 42]}, c: {one-way: yes}}\nmixes: {m: [a, b, c]}\npieces:\n- {cut: 2 1/2 x 66, need: 2, fabric: a, join: true}\n- {cut: WOF x 3, need: 2, mix: m}\n",
		"plan: A\nfinished: 54 x 66\nfabrics: {a: {}, b: {}}\nmixes: {m: [a, b]}\nblocks: {A: {make: 12, finished: 9, pieces: [{finished: 3, each: 4, mix: m}, {unit: half-square, finished: 3, each: 4, fabrics: [a, m]}, {unit: geese, finished: 4 x 2, each: 1, fabrics: [a, b]}]}}\nbinding: {fabric: a, bias: true}\nbacking: {fabric: b}\nallow: {spare: 5%}\n",
		"plan: A\nunits: metric\nfinished: 150 x 200\nfabrics: {a: {width: 110}}\nsetting: {on-point: 5 x 6, block: 20, sides: a, alternate: a}\nsashing: {blocks: 4 x 5, block: 20, width: 5, fabric: a, frame: yes, cornerstones: a}\nborders: [{width: 5, fabric: a, join: yes}, {width: 10, fabric: a, corners: mitred}]\nbinding: {fabric: a}\n",
		"plan: A\nfabrics: {a: {}}\npieces:\n- {unit: strip-set, need: 40, segment: 2, strips: [{fabric: a, finished: 2}, {fabric: a, finished: 3}]}\n- {unit: strip, finished: 2, need: 3, fabric: a}\n- {unit: side-setting, finished: 12, need: 18, fabric: a}\n- {unit: hourglass, finished: 4, need: 5, fabrics: [a, a, a]}\n",
	} {
		p, problems := plan.Read("seed", []byte(seed))
		if problems.Faulty() {
			f.Fatal(problems)
		}
		if _, problems := Pieces(p); problems.Faulty() {
			f.Fatal(problems)
		}
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		p, problems := plan.Read("plan", data)
		if problems.Faulty() {
			return
		}
		lists, problems := Pieces(p)
		if (lists == nil) == (len(problems) == 0) {
			t.Fatalf("lists %v beside %v", lists, problems)
		}
		n := 0
		for _, l := range lists {
			for _, piece := range l.Pieces {
				n += piece.Need
			}
		}
		if n > MaxPieces {
			t.Fatalf("%d pieces", n)
		}
		checkLists(t, lists)
	})
}
