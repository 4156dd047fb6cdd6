package sheets_test

import (
	"strings"
	"testing"

	"cutbinder/layout/page"
	"cutbinder/sheets"
	"cutbinder/sheets/say"
)

// A piece that lies turned on the cloth bears the size that its tally and its
// bag's label have, so that a maker knows it again.
func TestTurnedPiecesNamed(t *testing.T) {
	q := work("turned.yaml", "plan: Turned\nfabrics: {a: {}}\npieces: [{cut: 2 1/2, need: 16, fabric: a}, {cut: 2 1/2 x 16 1/2, need: 2, fabric: a}]")
	for _, o := range []sheets.Options{{}, {Large: true}} {
		said := map[string]int{}
		for _, p := range binder(t, q, o).Pages {
			for _, it := range p.Items {
				if text, ok := it.(page.Text); ok && strings.Contains(text.Words(), "16½") {
					mark, _, _ := strings.Cut(text.What(), " ")
					said[mark]++
					if !strings.Contains(text.Words(), "2½\u00a0×\u00a016½") && !strings.Contains(text.Words(), "sub-cut at\u00a016½") {
						t.Errorf("page %s, %s: %q", p.Label, text.What(), text.Words())
					}
				}
			}
		}
		for mark, n := range map[string]int{"size": 2, "tally": 1, "step": 1, "bag": 1, "label": 1} {
			if said[mark] < n {
				t.Errorf("large=%v: 2½ × 16½ stands in %d of %q, want %d: %v", o.Large, said[mark], mark, n, said)
			}
		}
	}
}

// Whatever the plan, what stands in a drawn piece is the size of its tally.
func TestDrawnSizes(t *testing.T) {
	each(t, func(t *testing.T, q *sheets.Quilt) {
		v := say.For(q.Plan)
		want := map[string]string{}
		for i := range q.Fabrics {
			for _, p := range q.Fabrics[i].Pieces {
				want["size "+p.ID] = v.Short(p.Size)
			}
		}
		for _, p := range binder(t, q, sheets.Options{Only: []sheets.Part{sheets.Fabrics}}).Pages {
			for _, it := range p.Items {
				if text, ok := it.(page.Text); ok && strings.HasPrefix(text.What(), "size ") && text.Words() != want[text.What()] {
					t.Fatalf("page %s: %q in a piece of %q", p.Label, text.Words(), want[text.What()])
				}
			}
		}
	})
}
