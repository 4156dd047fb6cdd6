package sheets_test

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"

	"cutbinder/fonts"
	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/page"
	"cutbinder/layout/pdf"
	"cutbinder/layout/plan"
	"cutbinder/sheets"
)

// effort is enough for good layouts of the samples; what is tested here is the
// paper.
const effort = 200_000

// samplePlans are the plans in testdata, worked out once.
var samplePlans = sync.OnceValue(func() map[string]*sheets.Quilt {
	all := map[string]*sheets.Quilt{}
	for _, pattern := range []string{"../testdata/plans/*.yaml", "../testdata/plans/lists/*.yaml", "../testdata/plans/blocks/*.yaml"} {
		names, _ := filepath.Glob(pattern)
		for _, name := range names {
			text, err := os.ReadFile(name)
			if err != nil {
				panic(err)
			}
			all[filepath.Base(name)] = work(name, string(text))
		}
	}
	return all
})

// work reads a plan and works it out; a faulty plan is a mistake of the test.
func work(name, text string) *sheets.Quilt {
	p, problems := plan.Read(name, []byte(text))
	if problems.Faulty() {
		panic(problems)
	}
	q, problems, err := sheets.Work(context.Background(), p, cutting.Options{Effort: effort, Cores: 2})
	if err != nil || problems.Faulty() {
		panic(fmt.Sprint(err, problems))
	}
	return q
}

// each runs a test for every sample plan on both papers in both hands.
func each(t *testing.T, test func(t *testing.T, q *sheets.Quilt)) {
	for name, q := range samplePlans() {
		for _, paper := range []plan.Paper{plan.Letter, plan.A4} {
			for _, hand := range []plan.Hand{plan.RightHand, plan.LeftHand} {
				t.Run(fmt.Sprintf("%s/%s/%s", name, paper, hand), func(t *testing.T) {
					p := *q.Plan
					p.Paper, p.Hand, p.Labels = paper, hand, plan.Labels{}
					again := *q
					again.Plan = &p
					test(t, &again)
				})
			}
		}
	}
}

func binder(t *testing.T, q *sheets.Quilt, o sheets.Options) page.Document {
	t.Helper()
	o.Fonts = fonts.Default()
	doc, problems := sheets.Binder(q, o)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return doc
}

// facts reports what page.Check finds, the first few of it.
func facts(t *testing.T, pages []page.Page) {
	t.Helper()
	for i, f := range page.Check(pages) {
		if i == 5 {
			t.Fatal("and more")
		}
		t.Error(f)
	}
}

func TestPageFacts(t *testing.T) {
	for _, o := range []sheets.Options{{}, {TwoSided: true}, {Large: true}, {LightInk: true}} {
		name := fmt.Sprintf("two-sided=%v,large=%v,light=%v", o.TwoSided, o.Large, o.LightInk)
		t.Run(name, func(t *testing.T) {
			each(t, func(t *testing.T, q *sheets.Quilt) {
				pages := binder(t, q, o).Pages
				facts(t, pages)
				announced(t, pages)
				if what := complaints(q, o, pages); what != "" {
					t.Error(what)
				}
			})
		})
	}
}

// announced reports steps that end a page with a colon: what they announce is over
// the page.
func announced(t *testing.T, pages []page.Page) {
	t.Helper()
	for _, p := range pages {
		last := ""
		for _, it := range p.Items {
			if text, ok := it.(page.Text); ok && text.What() == "step" {
				last = text.Words()
			}
		}
		if strings.HasSuffix(last, ":") {
			t.Errorf("page %s: the last step on it is %q", p.Label, last)
		}
	}
}

func TestLabelFacts(t *testing.T) {
	for name, q := range samplePlans() {
		for _, stock := range sheets.Stocks() {
			if stock.HoldsCode() != nil {
				continue
			}
			t.Run(fmt.Sprint(name, "/", stock), func(t *testing.T) {
				doc, err := sheets.Labels(q, sheets.LabelOptions{Stock: stock, Skip: 1}, page.NewStyle(fonts.Default()))
				if err != nil {
					t.Fatal(err)
				}
				facts(t, doc.Pages)
				if n := count(doc.Pages, func(it page.Item) bool { _, ok := it.(page.Code); return ok }); n != len(q.Bags.Bags) {
					t.Errorf("%d square codes for %d bags", n, len(q.Bags.Bags))
				}
			})
		}
	}
}

func count(pages []page.Page, is func(page.Item) bool) int {
	n := 0
	for _, p := range pages {
		for _, it := range p.Items {
			if is(it) {
				n++
			}
		}
	}
	return n
}

// A drawnPiece is a piece on a page, and the scale that the page states.
type drawnPiece struct {
	box   page.Box
	scale length.Length
}

// drawnPieces are all pieces drawn on pages, by mark.
func drawnPieces(t *testing.T, pages []page.Page) map[string][]drawnPiece {
	all := map[string][]drawnPiece{}
	for _, p := range pages {
		scale := statedScale(t, &p)
		for _, it := range p.Items {
			if r, ok := it.(page.Rect); ok && strings.HasPrefix(r.What(), "piece ") {
				all[r.What()] = append(all[r.What()], drawnPiece{r.Box, scale})
			}
		}
	}
	return all
}

// statedScale is the scale 1:n that stands beside a page's scale bars: 0 where
// there is none.
func statedScale(t *testing.T, p *page.Page) length.Length {
	scale := 0
	for _, it := range p.Items {
		text, ok := it.(page.Text)
		if !ok || text.What() != "scale" {
			continue
		}
		_, n, _ := strings.Cut(text.Words(), "1:")
		stated, err := strconv.Atoi(n)
		if err != nil || scale != 0 && stated != scale {
			t.Fatalf("page %s states %q beside 1:%d", p.Label, text.Words(), scale)
		}
		scale = stated
	}
	return length.Length(scale)
}

// Every placed piece is drawn once, at its size divided by the scale that stands
// on its page.
func TestPiecesToScale(t *testing.T) {
	each(t, func(t *testing.T, q *sheets.Quilt) {
		drawn := drawnPieces(t, binder(t, q, sheets.Options{Only: []sheets.Part{sheets.Fabrics}}).Pages)
		total := 0
		for i := range q.Fabrics {
			f := &q.Fabrics[i]
			seen := make([]int, len(f.Pieces))
			for i, c := range f.Cloths {
				for _, placed := range c.Placed {
					seen[placed.Piece]++
					if drawnBefore(f, i) {
						continue
					}
					total++
					mark := fmt.Sprintf("piece %s #%d", f.Pieces[placed.Piece].ID, seen[placed.Piece])
					if len(drawn[mark]) != 1 {
						t.Fatalf("%s is drawn %d times", mark, len(drawn[mark]))
					}
					if d := drawn[mark][0]; off(d.box.W*d.scale, placed.W) > d.scale || off(d.box.H*d.scale, placed.H) > d.scale {
						t.Fatalf("%s: %v at 1:%d, lies %v x %v", mark, d.box, d.scale, placed.W, placed.H)
					}
				}
			}
		}
		if total != len(drawn) {
			t.Errorf("%d pieces drawn, %d placed", len(drawn), total)
		}
	})
}

func off(a, b length.Length) length.Length { return max(a-b, b-a) }

// The tally has a box for each piece, or for each strip of many pieces, or for ten
// of them where a strip gives more than 30.
func TestTallies(t *testing.T) {
	each(t, func(t *testing.T, q *sheets.Quilt) {
		boxes := map[string]int{}
		for _, p := range binder(t, q, sheets.Options{Only: []sheets.Part{sheets.Fabrics}}).Pages {
			for _, it := range p.Items {
				if r, ok := it.(page.Rect); ok && strings.HasPrefix(r.What(), "tally ") {
					words := strings.Fields(r.What())
					boxes[words[1]+" "+words[3]]++
				}
			}
		}
		for i := range q.Fabrics {
			f := &q.Fabrics[i]
			for j, p := range f.Pieces {
				want := map[int]int{}
				for u, use := range p.Uses {
					want[q.Bags.Of(f.Fabric.ID, p.ID, u)] += use.Count + use.Spares
				}
				for bag, n := range want {
					if strips := f.StripsWith(j); n > 30*strips && n > 120 {
						n = (n + 9) / 10
					} else if n > 120 {
						n = strips
					}
					if got := boxes[fmt.Sprint(p.ID, " ", bag)]; got != n {
						t.Errorf("%s bag %d: %d boxes, want %d", p.ID, bag, got, n)
					}
				}
			}
		}
	})
}

// 200 squares of 1 from one strip 5 in high have a box for ten of them each, and
// 125 an odd one.
func TestTensTallied(t *testing.T) {
	for count, want := range map[int]struct {
		note  string
		boxes int
	}{200: {"(200) pieces: one box for ten", 20}, 125: {"(125) pieces: one box for ten, the last for 5", 13}} {
		q := work("tens.yaml", fmt.Sprintf("plan: Tens\nfabrics: {a: {have: 41 x 6}}\npieces: [{cut: 1, need: %d, fabric: a}]", count))
		boxes, note := 0, ""
		for _, p := range binder(t, q, sheets.Options{Only: []sheets.Part{sheets.Fabrics}}).Pages {
			for _, it := range p.Items {
				if r, ok := it.(page.Rect); ok && strings.HasPrefix(r.What(), "tally ") {
					boxes++
				}
				if text, ok := it.(page.Text); ok && text.What() == "tally note" {
					note = strings.TrimSpace(note + " " + text.Words())
				}
			}
		}
		if strips := q.Fabrics[0].StripsWith(0); count > 30*strips && (boxes != want.boxes || note != want.note) {
			t.Errorf("%d: %d boxes, %q; want %v", count, boxes, note, want)
		} else if count <= 30*strips {
			t.Errorf("%d come from %d strips: the test needs others", count, strips)
		}
	}
}

// What strips are joined into is written with its sides in the same order on a
// fabric's sheet and in the bags' key.
func TestFinishedSides(t *testing.T) {
	q := work("sides.yaml", "plan: Sides\nfinished: 52 x 64\nfabrics: {a: {}}\nborders: [{width: 2, fabric: a, join: true}]")
	for _, p := range binder(t, q, sheets.Options{Only: []sheets.Part{sheets.Fabrics, sheets.BagKey}}).Pages {
		n := 0
		for _, it := range p.Items {
			text, ok := it.(page.Text)
			if !ok || !strings.HasPrefix(text.Words(), "finished ") {
				continue
			}
			n++
			if words := strings.Fields(text.Words()); words[1] != "2" {
				t.Errorf("page %s: %q", p.Label, text.Words())
			}
		}
		if n != 2 {
			t.Errorf("page %s: %d finished sizes, want those of the sides and of top and bottom", p.Label, n)
		}
	}
}

func TestSameBytes(t *testing.T) {
	q := samplePlans()["lantern-row.yaml"]
	var a, b bytes.Buffer
	for _, w := range []*bytes.Buffer{&a, &b} {
		if err := pdf.Write(w, binder(t, q, sheets.Options{})); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(a.Bytes(), b.Bytes()) {
		t.Error("the same plan gives other bytes")
	}
}
