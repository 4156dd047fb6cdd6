package sheets_test

import (
	"context"
	"flag"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"cutbinder/fonts"
	"cutbinder/layout/cutting"
	"cutbinder/layout/page"
	"cutbinder/layout/plan"
	"cutbinder/sheets"
)

var plans = flag.Int("plans", 200, "how many random plans the page facts are checked on")

// A randomPlan is a plan from the nasty end, in parts that can be left out to
// find a small one that still fails.
type randomPlan struct {
	head    []string // top-level lines
	fabrics []string
	blocks  [][]string // name line, then a line a piece
	pieces  []string
	options sheets.Options
	stock   int
	labels  bool // one plan in four prints them: their codes cost more than all other pages
}

// randomEffort is little: what is asked of pages holds for poor layouts as for good
// ones.
const randomEffort = 500

func (r randomPlan) String() string {
	var b strings.Builder
	for _, line := range r.head {
		fmt.Fprintln(&b, line)
	}
	fmt.Fprintln(&b, "fabrics:")
	for _, line := range r.fabrics {
		fmt.Fprintln(&b, " ", line)
	}
	if len(r.blocks) > 0 {
		fmt.Fprintln(&b, "blocks:")
	}
	for _, block := range r.blocks {
		fmt.Fprintf(&b, "  %s\n    pieces:\n", block[0])
		for _, line := range block[1:] {
			fmt.Fprintln(&b, "      -", line)
		}
	}
	if len(r.pieces) > 0 {
		fmt.Fprintln(&b, "pieces:")
	}
	for _, line := range r.pieces {
		fmt.Fprintln(&b, "  -", line)
	}
	return b.String()
}

// one picks one of several.
func one[T any](r *rand.Rand, from ...T) T { return from[r.IntN(len(from))] }

// nameOf is a name: short, long, without spaces, with fractions.
func nameOf(r *rand.Rand) string {
	return one(r, "Dusk", "Wick yellow solid", "Ember", "Donaudampfschifffahrtsgesellschaftskapitänsblau",
		strings.Repeat("Long ", 8)+"name", strings.Repeat("W", 40), "½ × ⅞ fizz", "i", "Été à l'ombre", "M"+strings.Repeat("i", 30))
}

func title(r *rand.Rand) string {
	return one(r, "Q", "Lantern Row", strings.Repeat("Everlasting ", 16)+"quilt", strings.Repeat("X", 200), "Fünf & Söhne: a \\\"quilt\\\"")
}

// side is a length of a piece, in inches.
func side(r *rand.Rand) string {
	return one(r, "1/2", "1", "2 1/2", "3 1/2", "4 7/8", "6 1/2", "12 15/16", "9 3/32", "1.23", "18", "2 cm", "7.5 cm", "24 1/2")
}

func newRandomPlan(seed uint64) randomPlan {
	r := rand.New(rand.NewPCG(seed, 1))
	var p randomPlan
	p.head = []string{fmt.Sprintf("plan: \"%s\"", title(r))}
	optional := func(chance int, line string) {
		if r.IntN(100) < chance {
			p.head = append(p.head, line)
		}
	}
	optional(30, "by: \""+nameOf(r)+"\"")
	optional(30, "version: \""+one(r, "2", "2026-11-25 final, really final")+"\"")
	optional(20, "units: metric")
	optional(40, "paper: "+one(r, "a4", "letter"))
	optional(40, "hand: left")
	optional(60, "cutting: "+one(r, "strips", "stacks", "thrifty"))
	optional(50, "allow: {spare: "+one(r, "5%", "0%", "30%")+", extra: 10%, squaring: "+one(r, "0", "1/2", "2 in")+"}")
	optional(50, "bags: {by: "+one(r, "[block]", "[size]", "[fabric]", "[block, size, fabric]", "[size, fabric]")+"}")
	optional(10, "note: \""+strings.Repeat("A note that goes on and on. ", 9)+"\"")
	fabrics := one(r, 1, 2, 3, 7, 60)
	for i := range fabrics {
		p.fabrics = append(p.fabrics, fmt.Sprintf("f%d: {name: \"%s\"%s%s%s}", i, nameOf(r),
			one(r, "", "", ", width: 41 1/2", ", width: 58", ", width: 108 in", ", width: 30"),
			one(r, "", "", "", ", have: half yard", ", have: 3 fat quarters", ", have: [9 x 42, 2 yd, fat eighth]"),
			one(r, "", "", ", one-way: true", ", prewash: true, bleeds: likely", ", note: \""+nameOf(r)+"\"", ", cutting: thrifty")))
	}
	fabric := func() string { return fmt.Sprintf("f%d", r.IntN(fabrics)) }
	if fabrics > 2 {
		p.head = append(p.head, "mixes: {mixed: [f0, f1, f2]}")
	}
	piece := func(count string) string {
		size := side(r)
		if r.IntN(2) == 0 {
			size += " x " + side(r)
		}
		source := "fabric: " + fabric()
		if fabrics > 2 && r.IntN(4) == 0 {
			source = "mix: mixed"
		}
		if r.IntN(6) == 0 {
			return fmt.Sprintf("{unit: half-square, finished: %s, %s, fabrics: [%s, %s]}", side(r), count, fabric(), fabric())
		}
		return fmt.Sprintf("{cut: %s, %s, %s}", size, count, source)
	}
	for i := range r.IntN(4) {
		block := []string{fmt.Sprintf("B%d: {name: \"%s\", make: %d}", i, nameOf(r), one(r, 1, 2, 12, 60))}
		block[0] = fmt.Sprintf("B%d:\n    name: \"%s\"\n    make: %d", i, nameOf(r), one(r, 1, 2, 12, 60))
		for range 1 + r.IntN(5) {
			block = append(block, piece(fmt.Sprintf("each: %d", one(r, 1, 2, 4, 15))))
		}
		p.blocks = append(p.blocks, block)
	}
	for range one(r, 1, 1, 2, 5, 20) {
		p.pieces = append(p.pieces, piece(fmt.Sprintf("need: %d", one(r, 1, 3, 10, 60, 119, 121, 900))))
	}
	if r.IntN(4) == 0 {
		p.pieces = append(p.pieces, fmt.Sprintf("{cut: %s x %s, need: 2, fabric: %s, join: true, for: \"%s\"}", side(r), one(r, "66", "103 7/8", "200"), fabric(), nameOf(r)))
	}
	if r.IntN(3) == 0 {
		p.head = append(p.head, "finished: 54 x 66", "binding: {fabric: "+fabric()+one(r, "", ", bias: true")+"}", "backing: {fabric: "+fabric()+"}", "batting: {}")
	}
	p.options = sheets.Options{TwoSided: r.IntN(4) == 0, Large: r.IntN(4) == 0, LightInk: r.IntN(4) == 0}
	p.stock, p.labels = r.IntN(1<<16), r.IntN(4) == 0
	return p
}

// complaint is what is wrong with a plan's pages; "" where nothing is, or where
// the plan can't be worked out, which is not what is asked here.
func (r randomPlan) complaint() string {
	p, problems := plan.Read("random.yaml", []byte(r.String()))
	if problems.Faulty() {
		return ""
	}
	q, problems, err := sheets.Work(context.Background(), p, cutting.Options{Effort: randomEffort})
	if err != nil {
		return err.Error()
	}
	if problems.Faulty() {
		return ""
	}
	o := r.options
	o.Fonts = fonts.Default()
	o.Only = slices.DeleteFunc(slices.Clone(sheets.Parts), func(p sheets.Part) bool { return p == sheets.LabelPart })
	doc, problems := sheets.Binder(q, o)
	if len(problems) > 0 {
		return problems.Error()
	}
	pages := doc.Pages
	if what := complaints(q, o, pages); what != "" {
		return what
	}
	if r.labels {
		labels, err := sheets.Labels(q, sheets.LabelOptions{Stock: r.labelSheet()}, page.NewStyle(fonts.Default()))
		if err != nil {
			return err.Error()
		}
		pages = append(pages, labels.Pages...)
	}
	if faults := page.Check(pages); len(faults) > 0 {
		return fmt.Sprint(faults[0])
	}
	return ""
}

// labelSheet is one that can hold a code.
func (r randomPlan) labelSheet() sheets.Stock {
	var stocks []sheets.Stock
	for _, s := range sheets.Stocks() {
		if s.HoldsCode() == nil {
			stocks = append(stocks, s)
		}
	}
	return stocks[r.stock%len(stocks)]
}

// smaller are plans with one part less.
func (r randomPlan) smaller() []randomPlan {
	var all []randomPlan
	without := func(n int, change func(*randomPlan, int)) {
		for i := range n {
			s := r
			change(&s, i)
			all = append(all, s)
		}
	}
	cut := func(lines []string, i int) []string { return slices.Delete(slices.Clone(lines), i, i+1) }
	without(len(r.blocks), func(s *randomPlan, i int) { s.blocks = slices.Delete(slices.Clone(r.blocks), i, i+1) })
	without(len(r.pieces), func(s *randomPlan, i int) { s.pieces = cut(r.pieces, i) })
	without(len(r.fabrics), func(s *randomPlan, i int) { s.fabrics = cut(r.fabrics, i) })
	without(len(r.head)-1, func(s *randomPlan, i int) { s.head = cut(r.head, i+1) })
	for b := range r.blocks {
		without(len(r.blocks[b])-2, func(s *randomPlan, i int) {
			s.blocks = slices.Clone(r.blocks)
			s.blocks[b] = cut(r.blocks[b], i+1)
		})
	}
	return all
}

// Whatever the plan, what is printed lies in its place, over nothing else.
func TestRandomPlans(t *testing.T) {
	n := *plans
	if testing.Short() {
		n = min(n, 20)
	}
	const shards = 4
	for shard := range shards {
		t.Run(fmt.Sprint(shard), func(t *testing.T) {
			t.Parallel()
			for seed := shard; seed < n; seed += shards {
				if p, complaint := smallest(newRandomPlan(uint64(seed))); complaint != "" {
					t.Fatalf("seed %d: %s\noptions %+v stock %d\n%s", seed, complaint, p.options, p.stock, p)
				}
			}
		})
	}
}

// smallest leaves out of a plan whatever can go while something stays wrong.
func smallest(p randomPlan) (randomPlan, string) {
	complaint := p.complaint()
	for shrunk := complaint != ""; shrunk; {
		shrunk = false
		for _, s := range p.smaller() {
			if c := s.complaint(); c != "" {
				p, complaint, shrunk = s, c, true
				break
			}
		}
	}
	return p, complaint
}

// Most random plans must be plans that can be worked out, or the test above asks
// nothing.
func TestRandomPlansAreSound(t *testing.T) {
	sound := 0
	for seed := range uint64(100) {
		p, problems := plan.Read("random.yaml", []byte(newRandomPlan(seed).String()))
		if problems.Faulty() {
			continue
		}
		if _, problems := cutting.Pieces(p); !problems.Faulty() {
			sound++
		}
	}
	if sound < 60 {
		t.Errorf("only %d of 100 random plans are sound", sound)
	}
}
