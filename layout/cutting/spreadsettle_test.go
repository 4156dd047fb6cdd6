package cutting

import (
	"context"
	"math/rand/v2"
	"strings"
	"testing"

	"cutbinder/layout/length"
	"cutbinder/layout/plan"
	"cutbinder/layout/trade"

	"github.com/google/go-cmp/cmp"
)

// TestSettle lays out a mix of two fabrics on the shelf. By area plum has room for
// a square beside its own piece, but none that is wide enough; dusk has room for
// one more than the rule of thumb gives it.
func TestSettle(t *testing.T) {
	own := func(cut, id string, n int) *plan.Piece { return line(plan.Piece{Cut: size(cut), Count: n}, id) }
	shelf := []func(*plan.Plan){have("plum", "20 x 7 1/2"), have("dusk", "21 1/2 x 12 1/2"),
		func(p *plan.Plan) { p.Mixes[0].Fabrics = []string{"plum", "dusk"} }}
	tests := []struct {
		name  string
		plan  *plan.Plan
		want  string
		short map[string]int
	}{
		{"moved to where there is room", quilt(append(shelf, block("A", 1, own("15 x 6", "plum", 1), own("3", "dusk", 2), own("6", "night", 6)))...),
			"dusk-1 (6) 6 x 6: 6 A night\ndusk-2 (2) 3 x 3: 2 A\nplum-1 (1) 6 x 15: 1 A", map[string]int{}},
		{"and told where there is none", quilt(append(shelf, block("A", 1, own("15 x 6", "plum", 1), own("3", "dusk", 2), own("6", "night", 7)))...),
			"dusk-1 (7) 6 x 6: 7 A night\ndusk-2 (2) 3 x 3: 2 A\nplum-1 (1) 6 x 15: 1 A", map[string]int{"dusk-1": 1}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			lists, problems := Pieces(test.plan)
			if problems != nil {
				t.Fatal(problems)
			}
			if dealt := show(length.Imperial, lists); !strings.Contains(dealt, "plum-2 (1) 6 x 6: 1 A night") {
				t.Fatalf("plum isn't dealt the square that it has no room for:\n%s", dealt)
			}
			fabrics, err := Settle(context.Background(), test.plan, lists, Options{Effort: 100_000})
			if err != nil {
				t.Fatal(err)
			}
			short := map[string]int{}
			var settled []List
			for _, f := range fabrics {
				settled = append(settled, f.List)
				for i, n := range f.Short {
					if n > 0 {
						short[f.Pieces[i].ID] = n
					}
				}
			}
			if diff := cmp.Diff(test.want, strings.TrimSpace(show(length.Imperial, settled))); diff != "" {
				t.Errorf("lists (-want +got):\n%s", diff)
			}
			if diff := cmp.Diff(test.short, short); diff != "" {
				t.Errorf("short (-want +got):\n%s", diff)
			}
		})
	}
}

// Whatever the shelves hold and wherever strips are moved to, a binding of a mix
// comes to its run, and takes no more strips than if all were as short as the
// shortest.
func TestRunsReach(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for range 200 {
		p := quilt(func(p *plan.Plan) {
			p.Binding = &plan.Binding{Source: plan.Source{ID: "night", Mix: true}, Strip: in("2 1/4"), Tail: in("10")}
		}, loose(line(plan.Piece{Cut: size("5"), Count: 5 + r.IntN(60)}, "night")))
		for _, f := range p.Fabrics {
			f.Width = in("1/2") * length.Length(70+r.IntN(20))
			for range 1 + r.IntN(3) {
				f.Have = append(f.Have, plan.Cloth{Size: length.Size{W: in("1/2") * length.Length(20+r.IntN(60)), H: in("1/2") * length.Length(10+r.IntN(80))}})
			}
		}
		run := trade.BindingRun(p.Finished, in("10"))
		shortest, got, strips := length.Length(0), in("2 1/4"), 0
		for _, id := range p.Mixes[0].Fabrics {
			if w := usable(p.Fabric(id)); shortest == 0 || w < shortest {
				shortest = w
			}
		}
		for _, f := range laid(t, p) {
			for _, piece := range f.Pieces {
				for _, u := range piece.Uses {
					if u.Joined != nil {
						strips += u.Count
						got += (piece.Size.W - u.Joined.Loss) * length.Length(u.Count)
					}
				}
			}
		}
		if most := trade.Join(run, shortest, in("2 1/4")); got < run || strips > most {
			t.Fatalf("%d strips come to %v for %v; at most %d are needed", strips, got, run, most)
		}
	}
}
