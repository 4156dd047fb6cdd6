package audit_test

import (
	"context"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/pack"
	"cutbinder/layout/plan"
	"cutbinder/layout/trade"
	"cutbinder/sheets/audit"
)

// effort is enough for good layouts of the samples.
const effort = pack.EffortPerSecond / 10

// work reads a plan, lays it out and audits it.
func work(t *testing.T, name, text string) (*plan.Plan, []cutting.Fabric, plan.Problems) {
	t.Helper()
	p, problems := plan.Read(name, []byte(text))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	lists, problems := cutting.Pieces(p)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	o := cutting.Options{Effort: effort}
	fabrics, err := cutting.Settle(context.Background(), p, lists, o)
	if err != nil {
		t.Fatal(err)
	}
	found, err := audit.Audit(context.Background(), p, fabrics, o)
	if err != nil {
		t.Fatal(err)
	}
	return p, fabrics, found
}

// sample reads a plan of testdata.
func sample(t *testing.T, name string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("../../testdata/plans", name))
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func inches(s string) length.Length {
	l, err := length.Parse(s, length.Imperial)
	if err != nil {
		panic(err)
	}
	return l
}

// A verdict is what is to be found of one fabric of a published list.
type verdict struct {
	apart string   // what its sizes take in strips of their own, as recounted by hand
	need  string   // no more is to be used: apart, or less where sizes share strips
	finds []string // findings by id, with the first letter of their level: "F claim-buy"
	words string   // what one of them says
}

// Ten cut lists as published, each recounted by hand: what a list's fabric needs
// in inches, and whether the length that is printed for it holds. Two are wrong:
// a backing 3 1/2 in short, and three strips where four are needed.
func TestPublishedLists(t *testing.T) {
	tests := []struct {
		list    string
		fabrics map[string]verdict
	}{
		{"rail-fence", map[string]verdict{
			"f1": {"60", "60", []string{"N claim-buy"}, "is generous"},
			"f2": {"15", "15", nil, ""},
			"f3": {"23 1/2", "23 1/2", nil, ""},
			"f4": {"15", "15", nil, ""},
			"f5": {"116", "116", []string{"F claim-buy"}, "3 1/8 yd (112 1/2 in) is 3 1/2 in short: the pieces take 116 in"}}},
		{"sashed-window", map[string]verdict{
			"f1": {"26 1/4", "26 1/4", []string{"N width"}, "1 yd still does"},
			"f2": {"33", "33", []string{"N width"}, "1 1/4 yd still does"},
			"f3": {"15", "15", nil, ""},
			"f4": {"12", "12", nil, ""},
			"f5": {"1 1/2", "1 1/2", nil, ""},
			"f6": {"43 1/2", "43 1/2", nil, ""},
			"f7": {"19", "19", nil, ""},
			"f8": {"114", "114", nil, ""}}},
		{"long-strips", map[string]verdict{
			"f1": {"39 1/2", "39 1/2", nil, ""},
			"f2": {"48 1/2", "45 1/2", nil, ""},
			"f3": {"6", "6", nil, ""},
			"f4": {"9", "9", nil, ""}}},
		{"eight-at-a-time", map[string]verdict{
			"f1": {"9 1/2", "9 1/2", nil, ""},
			"f2": {"9 1/2", "9 1/2", nil, ""}}},
		{"quarter-squares", map[string]verdict{
			"f1": {"30 1/2", "30 1/2", []string{"D claim-buy"}, "31 in is tight: 30 1/2 in are cut from it, which leaves 1/2 in"},
			"f2": {"65", "52", []string{"D claim-buy", "N nest"}, "52 in is tight: 52 in are cut from it, which leaves 0 in"},
			"f3": {"29", "29", []string{"F claim-strips"}, "claims 3 strips; at 42 in usable width it takes 4: (16) 7 1/4 x 7 1/4 take 4, 5 to a strip"}}},
		{"nested-remnants", map[string]verdict{
			"f1": {"46", "39 1/2", []string{"N nest"}, "1.1 m does only where sizes share strips: as worked out the pieces take 39 1/2 in; with strips of its own for each size they would take 46 in"},
			"f2": {"29 1/2", "29 1/2", nil, ""},
			"f3": {"10", "10", nil, ""},
			"f4": {"10", "10", nil, ""}}},
		{"two-squares", map[string]verdict{
			"f1": {"26", "26", []string{"N nominal", "N width"}, "44 in wide or more"}}},
		{"tens-and-fives", map[string]verdict{
			"f1": {"95", "95", []string{"D width"}, "only where the cloth is 40 in wide or more"},
			"f2": {"17 1/2", "17 1/2", []string{"D claim-buy"}, "1/2 yd (18 in) is tight"},
			"f3": {"136", "136", []string{"D width"}, "on cloth 39 1/2 in wide one is too wide"}}},
		{"fat-quarter-metric", map[string]verdict{
			"f1": {"", "", []string{"N nominal"}, ""},
			"f2": {"35 cm", "35 cm", []string{"N nominal"}, ""},
			"f3": {"39 cm", "39 cm", []string{"D claim-buy", "N nominal"}, "40 cm is tight: 39 cm are cut from it, which leaves 1 cm"}}},
		{"assorted-patches", map[string]verdict{
			"f1": {"57 3/4", "57 3/4", []string{"N claim-buy"}, "is generous"},
			"f2": {"55 5/8", "55 5/8", []string{"N claim-buy"}, "is generous"},
			"f3": {"48 5/8", "48 5/8", nil, ""},
			"f4": {"17 1/2", "17 1/2", nil, ""},
			"f5": {"138", "138", nil, ""}}},
	}
	for _, test := range tests {
		t.Run(test.list, func(t *testing.T) {
			_, fabrics, found := work(t, test.list, sample(t, "lists/"+test.list+".yaml"))
			if len(fabrics) != len(test.fabrics) {
				t.Errorf("%d fabrics, want %d", len(fabrics), len(test.fabrics))
			}
			for i := range fabrics {
				checkVerdict(t, &fabrics[i], found, test.fabrics[fabrics[i].Fabric.ID])
			}
		})
	}
}

func checkVerdict(t *testing.T, f *cutting.Fabric, found plan.Problems, want verdict) {
	t.Helper()
	id := f.Fabric.ID
	if want.need == "" {
		if f.Missing() > 0 {
			t.Errorf("%s: %d pieces find no place", id, f.Missing())
		}
	} else {
		if apart, _ := f.Apart(); apart != inches(want.apart) {
			t.Errorf("%s: in strips of their own %v, want %s", id, apart, want.apart)
		}
		if f.Used > inches(want.need) || f.Any > f.Used {
			t.Errorf("%s: %v used, at least %v; want no more than %s", id, f.Used, f.Any, want.need)
		}
	}
	var finds, words []string
	for _, p := range found {
		kind, of, _ := strings.Cut(p.ID, ":")
		if of != id || optional(f, want, kind, p.Level) {
			continue
		}
		finds = append(finds, strings.ToUpper(p.Level.String()[:1])+" "+kind)
		words = append(words, p.What)
	}
	slices.Sort(finds)
	slices.Sort(want.finds)
	if !slices.Equal(finds, want.finds) {
		t.Errorf("%s: found %q, want %q", id, finds, want.finds)
	}
	if all := strings.Join(words, "\n"); !strings.Contains(all, want.words) {
		t.Errorf("%s: found %q, want %q among it", id, all, want.words)
	}
}

// optional says that a note depends on how well sizes were made to share strips:
// that narrower cloth takes a little more than the best found, and that there is
// much to spare.
func optional(f *cutting.Fabric, want verdict, kind string, level plan.Level) bool {
	if level != plan.Remark || kind != "width" && kind != "claim-buy" && kind != "nest" {
		return false
	}
	return !slices.Contains(want.finds, "N "+kind)
}

// The exact figures that one list prints beside its yards: 40 in where its own
// strips come to 39 1/2, and 48 where they come to 48 1/2 unless sizes share
// strips.
func TestPublishedExactly(t *testing.T) {
	text := sample(t, "lists/long-strips.yaml")
	text = strings.Replace(text, "claims: {buy: 1 1/4 yd}", "claims: {buy: 40 in}", 1)
	text = strings.Replace(text, "claims: {buy: 1 1/2 yd}", "claims: {buy: 48 in}", 1)
	_, _, found := work(t, "long-strips", text)
	if p := byID(found, "nest:f2"); p == nil || !strings.Contains(p.What, "they would take 48 1/2 in") {
		t.Errorf("48 in holds only where sizes share strips; found %v", found)
	}
	if p := byID(found, "claim-buy:f1"); p != nil && p.Level == plan.Fault {
		t.Errorf("40 in holds 39 1/2; found %v", p)
	}
}

func byID(found plan.Problems, id string) *plan.Problem {
	for i := range found {
		if found[i].ID == id {
			return &found[i]
		}
	}
	return nil
}

// What to buy is never less than what is used, squared, whatever a plan says.
func TestBuysWhatIsUsed(t *testing.T) {
	for _, name := range []string{"lantern-row.yaml", "harbour-steps.yaml", "tide-garden.yaml", "lists/assorted-patches.yaml"} {
		p, fabrics, _ := work(t, name, sample(t, name))
		for i := range fabrics {
			f := &fabrics[i]
			if len(f.Fabric.Have) > 0 {
				continue
			}
			least := trade.ToBuy(f.Used, trade.Rules{Squaring: p.Allow.Squaring}).Exact
			if f.Buy.Exact < least || f.Buy.Buy < f.Buy.Exact {
				t.Errorf("%s: %v used, %v needed, %v to buy", f.Fabric.ID, f.Used, f.Buy.Exact, f.Buy.Buy)
			}
			if f.Any > f.Used || f.Bound > f.Used {
				t.Errorf("%s: bounds %v and %v are above %v", f.Fabric.ID, f.Bound, f.Any, f.Used)
			}
		}
	}
}
