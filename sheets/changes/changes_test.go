package changes

import (
	"context"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"cutbinder/fonts"
	"cutbinder/layout/cutting"
	"cutbinder/layout/page"
	"cutbinder/layout/plan"
	"cutbinder/sheets"
	"cutbinder/sheets/say"

	"github.com/google/go-cmp/cmp"
)

// set works a plan out and sets its binder.
func set(t *testing.T, text string) Binder {
	t.Helper()
	p, problems := plan.Read("plan", []byte(text))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	q, problems, err := sheets.Work(context.Background(), p, cutting.Options{Effort: 50_000, Cores: 1})
	if err != nil || problems.Faulty() {
		t.Fatal(err, problems)
	}
	doc, problems := sheets.Binder(q, sheets.Options{Fonts: fonts.Default()})
	if problems.Faulty() {
		t.Fatal(problems)
	}
	return Binder{q, doc}
}

func read(t *testing.T, name string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("../../testdata/plans", name))
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// edits are changes to sample plans: a text and what takes its place.
var edits = []struct{ plan, name, from, to string }{
	{"lantern-row.yaml", "version", `version: "2"`, `version: "3"`},
	{"lantern-row.yaml", "note on a fabric", "note: the stripes run along the length", "note: cut with care"},
	{"lantern-row.yaml", "name of a block", "name: Moth", "name: Night moth"},
	{"lantern-row.yaml", "more spares", "spare: 5%", "spare: 10%"},
	{"lantern-row.yaml", "seam", "seam: 1/4", "seam: 3/8"},
	{"lantern-row.yaml", "title", "plan: Lantern Row", "plan: Lantern Lane"},
	{"lantern-row.yaml", "without a loose piece", "  - {cut: 4 1/2 x 6 1/2, need: 1, fabric: wick, for: name patch}\n", ""},
	{"blocks/star.yaml", "other fabric", "draw: |\n      s    s/r  s", "draw: |\n      s    s/g  s"},
	{"blocks/star.yaml", "turned", "- F S F", "- F S> F"},
	{"blocks/nine-patch.yaml", "border", "width: 4 1/2", "width: 5"},
	{"three-lines.yaml", "more", "need: 4", "need: 40"},
}

// TestSame: nothing differs between a plan and itself.
func TestSame(t *testing.T) {
	for _, name := range []string{"lantern-row.yaml", "harbour-steps.yaml", "three-lines.yaml", "blocks/star.yaml"} {
		text := read(t, name)
		c := Compare(set(t, text), set(t, text))
		if !c.None() || len(c.Words(say.Voice{})) > 0 {
			t.Errorf("%s: %+v", name, c)
		}
	}
}

// TestApplied: doing what the changes say to the old binder gives the new one:
// every page of it was kept or is printed, no kept page differs but in its frame,
// what isn't kept is taken out, and labels stay good just where codes do.
func TestApplied(t *testing.T) {
	for _, e := range edits {
		t.Run(e.plan+"/"+e.name, func(t *testing.T) {
			text := read(t, e.plan)
			if !strings.Contains(text, e.from) {
				t.Fatalf("%q is not in the plan", e.from)
			}
			old, new := set(t, text), set(t, strings.Replace(text, e.from, e.to, 1))
			for _, way := range [][2]Binder{{old, new}, {new, old}} {
				applied(t, way[0], way[1])
			}
		})
	}
}

func applied(t *testing.T, old, new Binder) {
	t.Helper()
	c := Compare(old, new)
	if c.None() {
		t.Error("nothing is found")
	}
	was, now := leaves(old.Document), leaves(new.Document)
	mended := make([]string, len(now))
	for _, k := range c.Kept {
		mended[k.New-1] = was[k.Old-1].body
	}
	for _, p := range c.Pages {
		if mended[p.Number-1] != "" {
			t.Errorf("page %d is kept and printed", p.Number)
		}
		mended[p.Number-1] = now[p.Number-1].body
	}
	for i, l := range now {
		if l.section != labelSection && mended[i] != l.body {
			t.Errorf("page %d, %s, is not as it should be", i+1, l.section)
		}
	}
	for i, l := range was {
		kept := slices.ContainsFunc(c.Kept, func(k Kept) bool { return k.Old == i+1 })
		if l.section != labelSection && kept == slices.Contains(c.Out, i+1) {
			t.Errorf("old page %d: kept %v and taken out %v", i+1, kept, !kept)
		}
	}
	for i := range new.Bags.Bags {
		b := &new.Bags.Bags[i]
		other := old.Bags.Bag(b.Number)
		good := other != nil && other.Code == b.Code
		if good != slices.Contains(c.Good, b.Number) || good == slices.Contains(c.Labels, b.Number) {
			t.Errorf("bag %d: good is %v, told %v", b.Number, good, !good)
		}
	}
	printed(t, c, new)
}

// printed checks the pages that bring a binder up to date: cover, the pages to
// print, and a square code for each label.
func printed(t *testing.T, c *Changes, new Binder) {
	t.Helper()
	doc, problems := c.Document(new, sheets.Options{Fonts: fonts.Default()})
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	codes := 0
	for _, p := range doc.Pages {
		for _, it := range p.Items {
			if _, ok := it.(page.Code); ok {
				codes++
			}
		}
	}
	if codes != len(c.Labels)*max(new.Plan.Labels.PerBag, 1) {
		t.Errorf("%d codes for %d labels", codes, len(c.Labels))
	}
	for _, f := range page.Check(doc.Pages) {
		t.Error(f)
	}
	if first := doc.Pages[0].String(); !strings.Contains(first, `"PRINT AGAIN"`) {
		t.Errorf("the cover does not say what is printed:\n%s", first)
	}
}

// TestWords: what is said, on a small plan that can be checked by hand.
func TestWords(t *testing.T) {
	const base = "plan: Small\nfabrics: {red: {name: Red}, blue: {name: Blue}}\npieces:\n" +
		"  - {cut: 4 1/2, need: 8, fabric: red, for: corners}\n" +
		"  - {cut: 2 1/2, need: 16, fabric: blue, for: middles}\n"
	tests := []struct {
		from, to string
		want     []string
	}{
		{"need: 8", "need: 10", []string{
			"Buy: Red: buy 3/8 yd instead of 1/4 yd, 1/8 yd more",
			"Cut: Red: cut (2) more 4 1/2 x 4 1/2, (10) in all",
			"Bags: bag 1, corners, now holds (10) 4 1/2 x 4 1/2 from Red; before (8) 4 1/2 x 4 1/2 from Red"}},
		{"cut: 4 1/2", "cut: 4", []string{
			"Buy: Red: 1/8 yd will do instead of 1/4 yd",
			"Cut: Red: cut again: (8) 4 x 4 instead of (8) 4 1/2 x 4 1/2",
			"Bags: bag 1, corners, now holds (8) 4 x 4 from Red; before (8) 4 1/2 x 4 1/2 from Red"}},
		{"fabric: red", "fabric: blue", []string{
			"Buy: Blue: buy 1/4 yd instead of 1/8 yd, 1/8 yd more",
			"Buy: Red: not needed any more",
			"Cut: Blue: cut (8) 4 1/2 x 4 1/2, a new size",
			"Bags: bag 1, corners, now holds (8) 4 1/2 x 4 1/2 from Blue; before (8) 4 1/2 x 4 1/2 from Red"}},
		{"  - {cut: 4 1/2, need: 8, fabric: red, for: corners}\n", "", []string{
			"Buy: Red: not needed any more",
			"Bags: the old bag 2, middles, is now bag 1 and holds the same",
			"Bags: the old bag 1, corners, is not needed any more"}},
	}
	for _, tt := range tests {
		c := Compare(set(t, base), set(t, strings.Replace(base, tt.from, tt.to, 1)))
		var got []string
		for _, m := range c.Words(say.For(c.New.Plan).InPlain()) {
			for _, line := range m.Lines {
				if m.Head == "Buy" || m.Head == "Cut" || m.Head == "Bags" {
					got = append(got, m.Head+": "+line)
				}
			}
		}
		if diff := cmp.Diff(tt.want, got); diff != "" {
			t.Errorf("%s to %s (-want +got):\n%s", tt.from, tt.to, diff)
		}
	}
}

func TestRuns(t *testing.T) {
	for want, numbers := range map[string][]int{"": nil, "3": {3}, "3, 4": {3, 4}, "1, 3–5, 9": {1, 3, 4, 5, 9}} {
		if got := runs(numbers); got != want {
			t.Errorf("%v is %q, want %q", numbers, got, want)
		}
	}
}

// Binding of as many strips that are joined into a longer run: 4 x 36 + 10 = 154 in
// and 4 x 36 + 14 = 158 in. The line says what differs.
func TestLongerRun(t *testing.T) {
	const text = "plan: Run\nfinished: 36\nfabrics: {a: {name: Apple}}\nbinding: {fabric: a, tail: 10}\nbatting: {overhang: 4}\n"
	new := strings.NewReplacer("tail: 10", "tail: 14", "overhang: 4", "overhang: 3").Replace(text)
	var got []string
	for _, m := range Compare(set(t, text), set(t, new)).Words(say.Voice{Plain: true}) {
		if m.Head == "Bags" || m.Head == "Buy" {
			got = append(got, m.Lines...)
		}
	}
	want := []string{
		"batting: 42 x 42 in instead of 44 x 44",
		"bag 1, binding, now holds (5) 40 x 2 1/2, joined into (1) 2 1/2 x 158: Apple; before (5) 40 x 2 1/2, joined into (1) 2 1/2 x 154: Apple",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("words (-want +got):\n%s", diff)
	}
}
