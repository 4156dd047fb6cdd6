package cutting

import (
	"context"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"cutbinder/layout/length"
	"cutbinder/layout/pack"
	"cutbinder/layout/plan"

	"github.com/google/go-cmp/cmp"
)

// little is enough work for what is tested here.
var little = Options{Effort: 200_000}

// laid is a plan's fabrics as Settle lays them out.
func laid(t *testing.T, p *plan.Plan) []Fabric {
	t.Helper()
	lists, problems := Pieces(p)
	if problems.Faulty() {
		t.Fatal(problems)
	}
	fabrics, err := Settle(context.Background(), p, lists, little)
	if err != nil {
		t.Fatal(err)
	}
	return fabrics
}

// Strips of their own for each size, as published lists reckon: recounted by
// hand at the widths that makers find.
func TestApart(t *testing.T) {
	tests := []struct {
		name, width string
		pieces      []string // size and count
		used        string
		strips      int
	}{
		{"56 of 6 1/2 at 42: six to a strip", "42", []string{"6 1/2 56"}, "65", 10},
		{"63 of 9 1/2 at 42: four to a strip", "42", []string{"9 1/2 63"}, "152", 16},
		{"168 of 5 at 40: eight to a strip", "40", []string{"5 168"}, "105", 21},
		{"48 of 2 1/2 x 4 1/2 at 40, the way that takes less: 16 to a strip 4 1/2 high", "40", []string{"2 1/2 x 4 1/2 48"}, "13 1/2", 3},
		{"52 of 4 and 20 of 3 at 44", "44", []string{"4 52", "3 20"}, "26", 7},
		{"at 42", "42", []string{"4 52", "3 20"}, "30", 8},
		{"at 40", "40", []string{"4 52", "3 20"}, "30", 8},
		{"16 of 7 1/4 at 42: five to a strip", "42", []string{"7 1/4 16"}, "29", 4},
		{"at 43 1/2 six to a strip", "43 1/2", []string{"7 1/4 16"}, "21 3/4", 3},
		{"72 of 3 1/2 x 4 3/8 at 42: 12 to a strip", "42", []string{"3 1/2 x 4 3/8 72"}, "26 1/4", 6},
		{"at 40: nine to a strip 3 1/2 high", "40", []string{"3 1/2 x 4 3/8 72"}, "28", 8},
		{"24 of 1 1/2 x 13 1/2 at 42: three to a strip", "42", []string{"1 1/2 x 13 1/2 24"}, "12", 8},
		{"at 40: 26 to a strip 13 1/2 high", "40", []string{"1 1/2 x 13 1/2 24"}, "13 1/2", 1},
		{"wider than the cloth both ways", "40", []string{"41 1"}, "0", 0},
	}
	for _, test := range tests {
		l := List{Fabric: &plan.Fabric{Width: in(test.width)}}
		for _, p := range test.pieces {
			i := strings.LastIndex(p, " ")
			piece := &Piece{Size: size(p[:i]), MayTurn: true}
			fmt.Sscan(p[i:], &piece.Need)
			l.Pieces = append(l.Pieces, piece)
		}
		if used, strips := l.Apart(); used != in(test.used) || strips != test.strips {
			t.Errorf("%s: %v in %d strips, want %s in %d", test.name, used, strips, test.used, test.strips)
		}
	}
}

// What a strip set, binding and squares take at other widths: counted by hand.
func TestWidths(t *testing.T) {
	bound := func(p *plan.Plan) {
		p.Binding = &plan.Binding{Source: on("dusk"), Strip: in("2 1/2"), Tail: in("10")}
	}
	tests := []struct {
		name string
		plan *plan.Plan
		want string
	}{
		// 70 squares of 6: six to a strip at 40 and 41, seven from 42 on.
		{"squares", quilt(width("dusk", "40"), loose(line(plan.Piece{Cut: size("6"), Count: 70}, "dusk"))), "38 72, 41 72, 42 60, 44 60"},
		{"a width on both sides", quilt(width("dusk", "42"), loose(line(plan.Piece{Cut: size("6"), Count: 70}, "dusk"))), "38 72, 41 72, 42 60, 44 60"},
		// (240 + 10 - 2.5) / (W - 2.5): 6.97 at 38, 6.43, 6.27, 5.96.
		{"binding", quilt(bound), "38 17 1/2, 41 17 1/2, 42 17 1/2, 44 15"},
		{"too wide for some", quilt(width("dusk", "42"), loose(line(plan.Piece{Cut: size("41 1/2"), Count: 1}, "dusk"))), "38 -, 41 -, 42 41 1/2, 44 41 1/2"},
		{"on the shelf", quilt(have("dusk", "40 x 80"), loose(line(plan.Piece{Cut: size("6"), Count: 6}, "dusk"))), ""},
	}
	at := func(*plan.Fabric) []length.Length { return []length.Length{in("44"), in("38"), in("41"), in("42")} }
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			found, err := Widths(context.Background(), test.plan, laid(t, test.plan), at, little)
			if err != nil {
				t.Fatal(err)
			}
			var words []string
			for _, w := range found[0] {
				used := "-"
				if w.Fits {
					used = length.Imperial.Format(w.Used)
				}
				words = append(words, length.Imperial.Format(w.Width)+" "+used)
			}
			if diff := cmp.Diff(test.want, strings.Join(words, ", ")); diff != "" {
				t.Errorf("widths (-want +got):\n%s", diff)
			}
		})
	}
}

// randomPurchase is a plan of some squares, rectangles, strip sets and binding of
// one fabric that is bought.
func randomPurchase(r *rand.Rand) *plan.Plan {
	return quilt(func(p *plan.Plan) {
		p.Allow.Spare, p.Allow.Extra = plan.Percent(r.IntN(10)*100), plan.Percent(r.IntN(3)*500)
		for range 1 + r.IntN(4) {
			z := length.Size{W: in("1/8") * length.Length(8+r.IntN(80)), H: in("1/8") * length.Length(8+r.IntN(80))}
			p.Pieces = append(p.Pieces, line(plan.Piece{Cut: z, Count: 1 + r.IntN(40)}, "dusk"))
		}
		if r.IntN(2) == 0 {
			p.Pieces = append(p.Pieces, line(plan.Piece{Unit: plan.StripSet, Segment: in("3"), Count: 1 + r.IntN(60), Strips: []plan.SetStrip{{Finished: in("2"), Source: on("dusk")}}}, "dusk"))
		}
		if r.IntN(2) == 0 {
			p.Binding = &plan.Binding{Source: on("dusk"), Strip: in("2 1/4"), Tail: in("10")}
		}
		f := p.Fabrics[0]
		f.Width, f.Step = in("1/2")*length.Length(76+r.IntN(16)), in("4 1/2")
		f.OneWay = r.IntN(3) == 0
		p.Allow.Retrue = r.IntN(5)
	})
}

// A layout of 40 3/8 in in cloth 41 1/2 in wide does for 41 in: no search that
// falls behind may say that such cloth takes more.
func TestWidthsHold(t *testing.T) {
	p := quilt(width("dusk", "41 1/2"), func(p *plan.Plan) {
		for _, l := range []struct {
			cut   string
			count int
		}{{"3 7/8", 13}, {"3 1/2", 26}, {"2 1/2", 21}} {
			p.Pieces = append(p.Pieces, line(plan.Piece{Cut: size(l.cut), Count: l.count}, "dusk"))
		}
	})
	p.Fabrics[0].Cutting, p.Fabrics[0].Step = pack.Stacks, in("4 1/2")
	p.Allow.Squaring, p.Allow.Extra = in("1/2"), 500
	lists, _ := Pieces(p)
	fabrics, err := Cut(context.Background(), p, lists, Options{})
	if err != nil {
		t.Fatal(err)
	}
	f := &fabrics[0]
	if f.Used != in("16 5/8") || widest(&f.Cloths[0]) > in("41") {
		t.Fatalf("the layout takes %v, %v wide: the test needs another", f.Used, widest(&f.Cloths[0]))
	}
	found, err := Widths(context.Background(), p, fabrics, func(*plan.Fabric) []length.Length { return []length.Length{in("41")} }, Options{Effort: 1, Brief: true})
	if err != nil || found[0][0].Used != f.Used || found[0][0].Buy != f.Buy {
		t.Errorf("at 41 in: %+v, %v; want %v used and %+v", found, err, f.Used, f.Buy)
	}
}

// Wider cloth never takes more, whatever is cut, and the fabric's own width
// stands in that row; what is bought holds what is used. Narrower cloth that the
// fabric's own strips still fit takes no more than they do.
func TestWidthsFall(t *testing.T) {
	r := rand.New(rand.NewPCG(41, 42))
	for range 60 {
		p := randomPurchase(r)
		fabrics := laid(t, p)
		f := &fabrics[0]
		at := func(f *plan.Fabric) []length.Length {
			return []length.Length{in("38"), in("40"), f.Width - in("1/8"), f.Width, f.Width + in("1/8"), in("47")}
		}
		found, err := Widths(context.Background(), p, fabrics, at, little)
		if err != nil {
			t.Fatal(err)
		}
		var before *Width
		for i := range found[0] {
			w := &found[0][i]
			switch {
			case !w.Fits:
				continue
			case w.Buy.Exact < w.Used || w.Buy.Buy < w.Buy.Exact:
				t.Fatalf("at %v %v is used, %v needed, %v bought", w.Width, w.Used, w.Buy.Exact, w.Buy.Buy)
			case w.Width < f.Fabric.Width && w.Buy.Buy > f.Buy.Buy && !strips(f.List) && widest(&f.Cloths[0]) <= w.Width:
				t.Fatalf("%v wide takes %v, though what its own %v takes, %v, needs no more than %v", w.Width, w.Buy.Buy, f.Fabric.Width, f.Buy.Buy, widest(&f.Cloths[0]))
			case before != nil && w.Buy.Buy > before.Buy.Buy:
				t.Fatalf("%v wide takes %v, %v takes more: %v", before.Width, before.Buy.Buy, w.Width, w.Buy.Buy)
			case w.Width <= f.Fabric.Width && w.Buy.Buy < f.Buy.Buy, w.Width >= f.Fabric.Width && w.Buy.Buy > f.Buy.Buy:
				t.Fatalf("%v wide takes %v, its own %v takes %v", w.Width, w.Buy.Buy, f.Fabric.Width, f.Buy.Buy)
			}
			before = w
		}
	}
}

// strips says that some pieces are strips across the width.
func strips(l List) bool {
	return slices.ContainsFunc(l.Pieces, func(p *Piece) bool { return p.WOF })
}

// widest is how wide the fullest strip of a cloth is without what is left over
// beside its columns.
func widest(c *Cloth) (most length.Length) {
	for _, strip := range c.Root.Parts {
		w := strip.W
		for _, column := range strip.Parts {
			if strip.Dir == Along && column.Leftover() {
				w -= column.W
			}
		}
		if !strip.Leftover() {
			most = max(most, w)
		}
	}
	return most
}

// Strips for binding wait; a square for bias strips, 22 1/2 in, that shares its
// strip with other pieces doesn't, but by itself it does.
func TestWaits(t *testing.T) {
	bound := func(bias bool) func(*plan.Plan) {
		return func(p *plan.Plan) {
			p.Finished = size("45 x 45")
			p.Binding = &plan.Binding{Source: on("dusk"), Strip: in("2 1/2"), Tail: in("10"), Bias: bias}
		}
	}
	few := loose(line(plan.Piece{Cut: size("4 x 22"), Count: 3}, "dusk"))
	for _, test := range []struct {
		name string
		plan *plan.Plan
		want bool
	}{
		{"strips", quilt(bound(false), few), true},
		{"a square beside other pieces", quilt(bound(true), few), false},
		{"a square alone", quilt(bound(true)), true},
	} {
		f := &laid(t, test.plan)[0]
		for i, p := range f.Pieces {
			if got := f.Waits(i); got != (test.want && p.Late) {
				t.Errorf("%s: %v waits: %v", test.name, p.Size, got)
			}
		}
	}
}

// One piece more never takes less than is proved to be needed without it, and a
// layout with it, less that piece, is one without it: the bounds of the two must
// not cross. The lengths found may, since they are found by search.
func TestMoreBoundsNoLess(t *testing.T) {
	r := rand.New(rand.NewPCG(43, 44))
	for range 60 {
		p := randomPurchase(r)
		before := laid(t, p)[0]
		p.Pieces[0].Count++
		after := laid(t, p)[0]
		if after.Used < before.Bound || after.Used < before.Any {
			t.Fatalf("%v do with one piece more, %v or %v are proved to be needed without it", after.Used, before.Bound, before.Any)
		}
	}
}

// Placed and short come to what is needed: no yield is invented, on any shelf.
func TestYield(t *testing.T) {
	r := rand.New(rand.NewPCG(45, 46))
	for range 60 {
		p := randomPurchase(r)
		f := p.Fabrics[0]
		for range 1 + r.IntN(3) {
			f.Have = append(f.Have, plan.Cloth{Name: "cloth", Size: length.Size{W: f.Width, H: in("1/4") * length.Length(20+r.IntN(150))}})
		}
		got := laid(t, p)[0]
		placed := make([]int, len(got.Pieces))
		for _, c := range got.Cloths {
			for _, q := range c.Placed {
				placed[q.Piece]++
			}
		}
		for i, piece := range got.Pieces {
			if placed[i]+got.Short[i] != piece.Need {
				t.Fatalf("%d placed and %d short of %d", placed[i], got.Short[i], piece.Need)
			}
		}
	}
}

// What is lacking, and what would help: a fat eighth of 20 1/2 x 9 in holds three
// squares of 6 in, squaring taken off.
func TestShortages(t *testing.T) {
	six := func(n int, source string) func(*plan.Plan) {
		return loose(line(plan.Piece{Cut: size("6"), Count: n}, source))
	}
	shelf := have("dusk", "20 1/2 x 9")
	tests := []struct {
		name     string
		plan     *plan.Plan
		lacks    string
		more     string
		unspared int
	}{
		{"enough", quilt(shelf, six(3, "dusk")), "", "", 0},
		{"two short: one more cut of 6 and squaring", quilt(shelf, six(5, "dusk")), "2-0", "6 1/2", 2},
		{"a spare short", quilt(shelf, spare(10), six(3, "dusk")), "1-1", "6 1/2", 0},
		{"spares and more", quilt(shelf, spare(50), six(4, "dusk")), "3-2", "6 1/2", 1},
		{"two rows short", quilt(shelf, six(10, "dusk")), "7-0", "12 1/2", 7},
		{"a mix whose shelves are all full", quilt(shelf, have("plum", "7 x 7"), have("ember", "7 x 7"), six(7, "night")), "2-0 night", "6 1/2", 2},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			fabrics := laid(t, test.plan)
			found, err := Shortages(context.Background(), test.plan, fabrics, little)
			if err != nil {
				t.Fatal(err)
			}
			var s *Shortage
			for _, short := range found {
				if short != nil {
					s = short
				}
			}
			if s == nil {
				if test.lacks != "" {
					t.Error("nothing is short")
				}
				return
			}
			l := s.Lacks[0]
			if got := strings.TrimSpace(fmt.Sprintf("%d-%d %s", l.Count, l.Spares, strings.Join(l.Mixes, " "))); got != test.lacks {
				t.Errorf("lacks %s, want %s", got, test.lacks)
			}
			if s.More != in(test.more) || s.Unspared != test.unspared || s.Buy.Buy < s.More {
				t.Errorf("more %v bought as %v, %d without spares; want %s, %d", s.More, s.Buy.Buy, s.Unspared, test.more, test.unspared)
			}
		})
	}
}

// Of a mix of plum and dusk, plum is dealt a square that its shelf has no place
// for: it moves to dusk.
func TestMoves(t *testing.T) {
	own := func(cut, id string, n int) *plan.Piece { return line(plan.Piece{Cut: size(cut), Count: n}, id) }
	p := quilt(have("plum", "20 x 7 1/2"), have("dusk", "21 1/2 x 12 1/2"),
		func(p *plan.Plan) { p.Mixes[0].Fabrics = []string{"plum", "dusk"} },
		block("A", 1, own("15 x 6", "plum", 1), own("3", "dusk", 2), own("6", "night", 6)))
	var got []string
	for _, m := range Moves(p, laid(t, p)) {
		for _, to := range m.To {
			got = append(got, fmt.Sprintf("%d of %v from %s to %s", m.Count, m.Size, m.From.ID, to.ID))
		}
	}
	if diff := cmp.Diff([]string{"1 of 6 in x 6 in from plum to dusk"}, got); diff != "" {
		t.Errorf("moves (-want +got):\n%s", diff)
	}
}

// A shelf that just does doesn't when it is a hair shorter.
func TestOnCloths(t *testing.T) {
	p := quilt(have("dusk", "40 x 6 1/2"), loose(line(plan.Piece{Cut: size("6"), Count: 6}, "dusk"), line(plan.Piece{Cut: size("WOF x 1"), Count: 1}, "wick")))
	f := laid(t, p)[0]
	if f.Missing() > 0 {
		t.Fatal("six squares of 6 don't come from 40 x 6 1/2")
	}
	short, err := f.OnCloths(context.Background(), p, f.Fabric.Width, []plan.Cloth{{Name: "x", Size: size("40 x 6 3/8")}}, little)
	if err != nil || short.Missing() != 6 {
		t.Errorf("%d missing on 40 x 6 3/8, %v", short.Missing(), err)
	}
	long, err := f.OnCloths(context.Background(), p, f.Fabric.Width, []plan.Cloth{{Name: "x", Size: size("40 x 7")}}, little)
	if err != nil || long.Missing() != 0 {
		t.Errorf("%d missing on 40 x 7, %v", long.Missing(), err)
	}
}

// What a line comes to, over fabrics and in the plan's order.
func TestExplain(t *testing.T) {
	p := quilt(block("B", 2, line(plan.Piece{Unit: plan.Geese, Finished: size("6 x 3"), Count: 4, Method: plan.FourAtATime}, "wick", "dusk")),
		loose(line(plan.Piece{Cut: size("8 1/2 x 3"), Count: 5, For: "odd"}, "night"), line(plan.Piece{Cut: size("WOF x 2"), Count: 1}, "wick")))
	lists, problems := Pieces(p)
	if problems != nil {
		t.Fatal(problems)
	}
	var got []string
	for _, e := range Explain(p, lists) {
		var from []string
		for _, s := range e.Shares {
			from = append(from, fmt.Sprintf("%s %d", s.Fabric.ID, s.Count))
		}
		w := e.Size.W
		if w == length.WOF {
			w = 0
		} else if total := e.CutSum.Total(); total != w {
			t.Errorf("%v: its sum comes to %v", e.Size, total)
		}
		got = append(got, strings.TrimSpace(fmt.Sprintf("(%d) %v %s%s%s from %s", e.Count, e.Size, e.Block, e.For, e.Role, strings.Join(from, ", "))))
	}
	want := []string{
		"(2) 7 1/4 in x 7 1/4 in Bgoose from wick 2", "(8) 3 7/8 in x 3 7/8 in Bsky from dusk 8",
		"(5) 8 1/2 in x 3 in odd from dusk 2, ember 1, plum 2", "(1) WOF x 2 in  from wick 1",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("explained (-want +got):\n%s", diff)
	}
}
