package sheets_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"cutbinder/fonts"
	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/page"
	"cutbinder/layout/plan"
	"cutbinder/layout/trade"
	"cutbinder/sheets"
	"cutbinder/sheets/bag"
	"cutbinder/sheets/say"
)

// labelNames break labels: long, of one word, of wide letters, foreign, empty.
var labelNames = []string{"Lantern", "Grandmother's very long garden path with roses and a fence", "", strings.Repeat("W", 300),
	"Donaudampfschifffahrtsgesellschaftskapitän", "Звезда над тёмным морем", "½ × ½", "a\tb\nc", "I"}

// labelQuilt has bags that break labels: names, counts and sizes of every length,
// one to thirty sizes a bag, one to eight fabrics.
func labelQuilt(random *rand.Rand, by ...plan.BagKey) *sheets.Quilt {
	name := func() string { return labelNames[random.IntN(len(labelNames))] }
	p := &plan.Plan{Title: name() + "!", Version: []string{"", "2", "final-final", "2026-01-31"}[random.IntN(4)], BagBy: by}
	if random.IntN(3) == 0 {
		p.Units = length.Metric
	}
	for i := range 9 {
		p.Blocks = append(p.Blocks, &plan.Block{ID: strings.Repeat(string(rune('A'+i)), 1+i*i/8), Name: labelNames[i]})
	}
	sides := []length.Length{7 * length.Inch / 2, 207 * length.Inch / 16, 12345, 66 * length.Inch, 40 * length.Inch, 999 * mm / 10, 1500 * length.Inch}
	var lists []cutting.List
	for f := range 1 + random.IntN(8) {
		list := cutting.List{Fabric: &plan.Fabric{ID: fmt.Sprint("f", f), Name: name(), Width: 40 * length.Inch, OneWay: f%2 == 0, Prewash: f%3 == 0, Note: name()}}
		for n := range 1 + random.IntN(5) {
			u := cutting.Use{Count: []int{1, 48, 99999}[random.IntN(3)], Spares: random.IntN(3), Into: trade.Diagonal(random.IntN(3)), For: name(), Note: name()}
			if random.IntN(4) > 0 {
				u.Block, u.Role = p.Blocks[random.IntN(9)].ID, []string{"", "goose", "centre"}[random.IntN(3)]
			}
			if random.IntN(2) == 0 {
				u.Finished = length.Size{W: sides[random.IntN(len(sides))], H: length.Inch}
			}
			list.Pieces = append(list.Pieces, &cutting.Piece{ID: fmt.Sprintf("f%d-%d", f, n), MayTurn: true, Uses: []cutting.Use{u},
				Size: length.Size{W: sides[random.IntN(len(sides))], H: sides[random.IntN(len(sides))]}})
		}
		lists = append(lists, list)
	}
	q := &sheets.Quilt{Plan: p, Bags: bag.Sort(p, lists)}
	for _, list := range lists {
		q.Fabrics = append(q.Fabrics, cutting.Fabric{List: list})
	}
	return q
}

func labelsOf(t *testing.T, q *sheets.Quilt, o sheets.LabelOptions) []page.Page {
	t.Helper()
	doc, err := sheets.Labels(q, o, page.NewStyle(fonts.Default()))
	if err != nil {
		t.Fatal(err)
	}
	return doc.Pages
}

// itemsOf collects the items of one label, by what they are.
func itemsOf(pages []page.Page, n int) map[string][]page.Item {
	items := map[string][]page.Item{}
	prefix := fmt.Sprintf("label %d ", n)
	for _, p := range pages {
		for _, it := range p.Items {
			if what, ok := strings.CutPrefix(it.What(), prefix); ok {
				items[what] = append(items[what], it)
			}
		}
	}
	return items
}

func wordsOf(items []page.Item) string {
	var all []string
	for _, it := range items {
		if t, ok := it.(page.Text); ok {
			all = append(all, t.Words())
		}
	}
	return strings.Join(all, " ")
}

// Whatever the names, counts and sizes are, on every stock: all facts of the page
// hold, everything is on its label and off its edges, and what tells the bag is
// whole: number, code, heading, the first size with its count.
func TestLabelsHold(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	for _, stock := range sheets.Stocks() {
		if stock.HoldsCode() != nil {
			continue
		}
		for _, by := range [][]plan.BagKey{{plan.ByBlock, plan.BySize}, {plan.ByBlock}, {plan.ByFabric}, {plan.BySize}} {
			q := labelQuilt(random, by...)
			t.Run(fmt.Sprint(stock.Name, by), func(t *testing.T) {
				o := sheets.LabelOptions{Stock: stock, Skip: random.IntN(stock.Labels())}
				pages := labelsOf(t, q, o)
				facts(t, pages)
				for i := range q.Bags.Bags {
					holdsLabel(t, q, &q.Bags.Bags[i], stock, stock.Label((o.Skip+i)%stock.Labels()), itemsOf(pages, i+1))
				}
			})
		}
	}
}

func holdsLabel(t *testing.T, q *sheets.Quilt, b *bag.Bag, stock sheets.Stock, label page.Box, items map[string][]page.Item) {
	t.Helper()
	safe := label.Inset(2 * mm).Intersect(page.Box{W: stock.Sheet().W, H: stock.Sheet().H}.Inset(5 * mm))
	for what, all := range items {
		for _, it := range all {
			if c, ok := it.(page.Code); ok {
				holdsCode(t, stock, c, label, safe)
			} else if !safe.Inset(-1).Contains(it.Bounds()) {
				t.Errorf("bag %d: %s is at %v, outside %v: %v", b.Number, what, it.Bounds(), safe, it)
			}
		}
	}
	v := say.For(q.Plan)
	row := b.Rows[0]
	want := packed(say.Count(row.Count) + v.Size(row.Cut))
	for what, want := range map[string]string{"number": fmt.Sprint(b.Number), "typed": b.Code.String()} {
		if got := wordsOf(items[what]); got != want {
			t.Errorf("bag %d: %s is %q, want %q", b.Number, what, got, want)
		}
	}
	if len(b.Rows) > 1 && stock.Height < 22*mm && len(items["size"]) == 0 {
		want = fmt.Sprintf("%dsizes(%d)", len(b.Rows), b.Count())
		items["size"] = items["more"]
	}
	if got := packed(wordsOf(items["size"])); !strings.HasPrefix(got, want) {
		t.Errorf("bag %d: size is %q, want %q", b.Number, got, want)
	}
	if wordsOf(items["heading"]) == "" || len(items["code"]) != 1 {
		t.Errorf("bag %d: no heading, or %d square codes", b.Number, len(items["code"]))
	}
}

// packed is a text without its spaces, which lines may break at.
func packed(s string) string { return strings.NewReplacer(" ", "", "\u00a0", "").Replace(s) }

// holdsCode checks a square: modules of 0.4 mm or more, 15 mm a side where the
// label has room, the quiet zone on the label.
func holdsCode(t *testing.T, stock sheets.Stock, c page.Code, label, safe page.Box) {
	t.Helper()
	side := c.Module * length.Length(c.Size)
	ink := c.Bounds().Inset(c.Module * length.Length(c.Quiet))
	if c.Module < 4*mm/10 || c.Quiet != bag.Quiet || !label.Contains(c.Bounds()) || !safe.Contains(ink) {
		t.Errorf("%s: %v in %v", stock.Name, c, label)
	}
	if stock.Height >= 20*mm && side < 15*mm-length.Length(c.Size) {
		t.Errorf("%s: a square of %v", stock.Name, side)
	}
}

// A label keeps what matters and leaves out the rest in order: with more room
// nothing is lost that was there with less.
func TestLabelSays(t *testing.T) {
	q := work("lantern.yaml", `
plan: Lantern Row
mark: K7Q
version: "2"
fabrics:
  dusk: {name: Dusk stripe}
  ember: {name: Ember print}
  plum: {name: Plum print}
mixes:
  night: [dusk, ember, plum]
blocks:
  A: {name: Lantern, make: 12, pieces: [{finished: 3, each: 4, mix: night}]}
allow: {spare: 2%}
`)
	for _, c := range []struct{ stock, what, want string }{
		{"4 x 2 in", "number", "1"},
		{"4 x 2 in", "of", "bag 1 of 1"},
		{"4 x 2 in", "heading", "A Lantern"},
		{"4 x 2 in", "size", "(48) 3½ × 3½"},
		{"4 x 2 in", "detail", "finished 3, and 1 spare"},
		{"4 x 2 in", "fabrics", "Dusk stripe 17, Ember print 16, Plum print 16"},
		{"4 x 2 in", "title", "Lantern Row · v2"},
		{"2 5/8 x 1 in", "heading", "A Lantern"},
		{"2 5/8 x 1 in", "size", "(48) 3½ × 3½"},
		{"2 5/8 x 1 in", "detail", "finished 3, and 1 spare"},
		{"2 5/8 x 1 in", "fabrics", "Dusk stripe +2 more"},
		{"2 5/8 x 1 in", "title", "Lantern Row · v2"},
		{"38.1 x 21.2 mm", "heading", "A Lantern"},
		{"38.1 x 21.2 mm", "size", "(48) 3½ × 3½"},
		{"38.1 x 21.2 mm", "fabrics", ""},
		{"38.1 x 21.2 mm", "title", ""},
	} {
		paper := plan.Letter
		if strings.HasSuffix(c.stock, "mm") {
			paper = plan.A4
		}
		stock, err := sheets.FindStock(c.stock, false, paper)
		if err != nil {
			t.Fatal(err)
		}
		got := strings.ReplaceAll(wordsOf(itemsOf(labelsOf(t, q, sheets.LabelOptions{Stock: stock}), 1)[c.what]), "\u00a0", " ")
		if got != c.want {
			t.Errorf("%s: %s is %q, want %q", c.stock, c.what, got, c.want)
		}
	}
}

// A label with room says the spares in a line of their own, so that its counts add
// up: 48 half-squares are 24 and 24 squares, and a spare of each.
func TestLabelSpares(t *testing.T) {
	q := work("pairs.yaml", "plan: Pairs\nfabrics: {clay: {name: Clay red}, cream: {}}\nallow: {spare: 2%}\nblocks:\n  A: {name: Furrow, make: 12, pieces: [{unit: half-square, finished: 6, each: 4, fabrics: [clay, cream]}]}")
	stock, err := sheets.FindStock("4 x 2 in", false, plan.Letter)
	if err != nil {
		t.Fatal(err)
	}
	items := itemsOf(labelsOf(t, q, sheets.LabelOptions{Stock: stock}), 1)
	for what, want := range map[string]string{"size": "(48) 6⅞ × 6⅞", "detail": "half-square · finished 6 and 2 spares", "fabrics": "Clay red 25, cream 25"} {
		if got := strings.ReplaceAll(wordsOf(items[what]), "\u00a0", " "); got != want {
			t.Errorf("%s is %q, want %q", what, got, want)
		}
	}
}

func TestLabelPlaces(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 8))
	q := labelQuilt(random, plan.ByBlock, plan.BySize)
	stock, _ := sheets.FindStock("99.1 x 38.1 mm", false, plan.A4)
	for _, c := range []struct {
		o      sheets.LabelOptions
		bags   []int // in order of the labels
		sheets int
	}{
		{sheets.LabelOptions{Bags: []int{3, 7, 8}}, []int{3, 7, 8}, 1},
		{sheets.LabelOptions{Bags: []int{3, 7, 8}, Skip: 12}, []int{3, 7, 8}, 2},
		{sheets.LabelOptions{Bags: []int{3, 7}, PerBag: 2, Skip: 1}, []int{3, 3, 7, 7}, 1},
		{sheets.LabelOptions{Bags: []int{2}, PerBag: 28}, slices.Repeat([]int{2}, 28), 2},
	} {
		c.o.Stock = stock
		pages := labelsOf(t, q, c.o)
		if len(pages) != c.sheets {
			t.Errorf("%+v: %d sheets, want %d", c.o, len(pages), c.sheets)
		}
		var got []int
		for p, pg := range pages {
			for _, it := range pg.Items {
				if _, ok := it.(page.Code); !ok {
					continue
				}
				n := 0
				fmt.Sscanf(it.What(), "label %d code", &n)
				got = append(got, n)
				at := c.o.Skip + len(got) - 1
				if p != at/stock.Labels() || !stock.Label(at%stock.Labels()).Contains(it.Bounds()) {
					t.Errorf("%+v: %s is at %v of sheet %d", c.o, it.What(), it.Bounds(), p+1)
				}
			}
		}
		if !slices.Equal(got, c.bags) {
			t.Errorf("%+v: labels of bags %v", c.o, got)
		}
	}
}

// An adjustment moves a label as a whole: the first by the shift, the last by the
// stretch too.
func TestLabelAdjust(t *testing.T) {
	q := labelQuilt(rand.New(rand.NewPCG(9, 9)), plan.ByBlock, plan.BySize)
	stock, _ := sheets.FindStock("38.1 x 21.2 mm", false, plan.A4)
	o := sheets.LabelOptions{Stock: stock, Bags: []int{1}, PerBag: stock.Labels()}
	plain := labelsOf(t, q, o)[0].Items
	for _, a := range []sheets.Adjust{
		{ShiftX: 2 * mm, ShiftY: -mm},
		{StretchX: 50, StretchY: -80},
		{ShiftX: -mm, StretchY: 100},
	} {
		o.Adjust = a
		pages := labelsOf(t, q, o)
		facts(t, pages)
		for i, it := range pages[0].Items {
			c, ok := it.(page.Code)
			if !ok {
				continue
			}
			was := plain[i].(page.Code)
			wantX := was.At.X + a.ShiftX + was.At.X*length.Length(a.StretchX)/10000
			wantY := was.At.Y + a.ShiftY + was.At.Y*length.Length(a.StretchY)/10000
			// A label keeps its size, so what is off its middle is off by the stretch of half a label.
			if d := c.At.X - wantX; d > mm/3 || d < -mm/3 {
				t.Errorf("%+v: moved across to %v, want %v", a, c.At.X, wantX)
			}
			if d := c.At.Y - wantY; d > mm/3 || d < -mm/3 {
				t.Errorf("%+v: moved down to %v, want %v", a, c.At.Y, wantY)
			}
			if c.Module != was.Module {
				t.Errorf("%+v: module %v, was %v", a, c.Module, was.Module)
			}
		}
	}
}

// Cards, fabric labels and outlines hold on every stock too.
func TestOtherLabels(t *testing.T) {
	random := rand.New(rand.NewPCG(10, 11))
	for _, stock := range sheets.Stocks() {
		q := labelQuilt(random, plan.ByBlock)
		for _, kind := range []sheets.LabelKind{sheets.BagCards, sheets.FabricLabels, sheets.LabelOutline} {
			pages := labelsOf(t, q, sheets.LabelOptions{Kind: kind, Stock: stock})
			facts(t, pages)
			want := map[sheets.LabelKind]int{sheets.BagCards: len(q.Bags.Bags), sheets.FabricLabels: len(q.Fabrics), sheets.LabelOutline: stock.Labels()}[kind]
			marks := map[string]bool{}
			for _, p := range pages {
				for _, it := range p.Items {
					if f := strings.Fields(it.What()); len(f) > 1 && f[0] != "cut" {
						marks[f[0]+f[1]] = true
					}
				}
			}
			if len(marks) != want {
				t.Errorf("%s: kind %d has %d labels, want %d", stock.Name, kind, len(marks), want)
			}
		}
	}
}

// A fabric's label says what it says in fewer words where the full ones have no
// room, rather than to cut them short.
func TestFabricLabelFacts(t *testing.T) {
	q := work("facts", "plan: Q\nfabrics: {a: {name: Sky, one-way: true, prewash: true}}\npieces: [{cut: 4, need: 1, fabric: a}]")
	for _, stock := range sheets.Stocks() {
		for _, p := range labelsOf(t, q, sheets.LabelOptions{Kind: sheets.FabricLabels, Stock: stock}) {
			for _, words := range texts(p, "fabric 1 fact") {
				if strings.HasSuffix(words, "…") && stock.Width > 35*length.MM {
					t.Errorf("%s: %q", stock.Name, words)
				}
			}
		}
	}
}

// Sheets of one's own of any size either hold a label or say why not.
func TestOwnSheetsHold(t *testing.T) {
	random := rand.New(rand.NewPCG(12, 13))
	held := 0
	for range 60 {
		w, h := length.Length(200+random.IntN(1700))*mm/10, length.Length(100+random.IntN(2600))*mm/10
		stock, err := sheets.OwnStock(plan.LabelSheet{Columns: 1, Rows: 1, Width: w, Height: h, Left: length.Length(random.IntN(30)) * mm, Top: length.Length(random.IntN(30)) * mm}, plan.A4)
		if err != nil || stock.HoldsCode() != nil {
			continue
		}
		held++
		q := labelQuilt(random, plan.ByBlock, plan.BySize)
		doc, err := sheets.Labels(q, sheets.LabelOptions{Stock: stock, Bags: []int{1, 2, 3, 4}[:min(4, len(q.Bags.Bags))]}, page.NewStyle(fonts.Default()))
		if err != nil {
			t.Error(err)
			continue
		}
		for _, f := range page.Check(doc.Pages) {
			t.Errorf("%s: %v", stock.Name, f)
			break
		}
	}
	if held < 20 {
		t.Errorf("only %d sheets were tried", held)
	}
}

func TestLabelRefusals(t *testing.T) {
	q := labelQuilt(rand.New(rand.NewPCG(14, 15)), plan.ByBlock)
	tiny, _ := sheets.FindStock("1 3/4 x 1/2 in", false, plan.Letter)
	usual, _ := sheets.FindStock("", false, plan.Letter)
	for _, c := range []struct {
		o    sheets.LabelOptions
		want string
	}{
		{sheets.LabelOptions{Stock: tiny}, "too small for a square code"},
		{sheets.LabelOptions{Stock: usual, Skip: 10}, "expected 0 to 9"},
		{sheets.LabelOptions{Stock: usual, Skip: -1}, "expected 0 to 9"},
		{sheets.LabelOptions{Stock: usual, Bags: []int{99}}, "the plan has bags 1 to"},
		{sheets.LabelOptions{Stock: usual, Bags: slices.Repeat([]int{1}, 400), PerBag: 50, Skip: 1}, "20000 labels take 2001 sheets: expected at most 2000"},
		{sheets.LabelOptions{Stock: usual, PerBag: 1 << 40}, "expected 1 to 500"},
		{sheets.LabelOptions{Stock: usual, Adjust: sheets.Adjust{ShiftX: 6 * mm}}, "no more than 5 mm"},
		{sheets.LabelOptions{Stock: usual, Adjust: sheets.Adjust{StretchY: -201}}, "no more than 2 %"},
		{sheets.LabelOptions{Stock: usual, Adjust: sheets.Adjust{ShiftX: 5 * mm, StretchX: 200}}, "moved off the paper"},
	} {
		if _, err := sheets.Labels(q, c.o, page.NewStyle(fonts.Default())); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%+v: %v, want %q", c.o, err, c.want)
		}
	}
}

func TestParseBags(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"3", "[3]"}, {"3,7-9", "[3 7 8 9]"}, {"7-9, 3", "[3 7 8 9]"}, {"3 3,2-4", "[2 3 4]"}, {"1–3", "[1 2 3]"}, {"24", "[24]"}, {"1-24", "[1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16 17 18 19 20 21 22 23 24]"},
		{"", "expected numbers"}, {",", "expected numbers"}, {"x", "expected numbers"}, {"3-", "expected numbers"}, {"-3", "expected numbers"}, {"3-5-7", "expected numbers"},
		{"9-7", "smaller number first"}, {"0", "bags 1 to 24"}, {"25", "bags 1 to 24"}, {"1-99999999999", "bags 1 to 24"}, {"1-99999999999999999999", "expected numbers"},
	} {
		got, err := sheets.ParseBags(c.text, 24)
		if s := fmt.Sprint(got); s != c.want && (err == nil || !strings.Contains(err.Error(), c.want)) {
			t.Errorf("ParseBags(%q) = %v, %v; want %s", c.text, got, err, c.want)
		}
	}
}

// A list of fabrics breaks between them where that takes no more lines, and not at a
// comma that is part of a name.
func TestLabelFabricsUnbroken(t *testing.T) {
	for names, want := range map[[2]string][]string{
		{"Storm blue print", "Foam white"}:      {"Storm\u00a0blue\u00a0print\u00a05,", "Foam\u00a0white\u00a05"},
		{"Straw from Ann, faded", "Foam white"}: {"Straw from", "Ann,\u00a0faded\u00a05,", "Foam\u00a0white\u00a05"},
	} {
		q := work("fabrics", fmt.Sprintf("plan: Q\nfabrics: {a: {name: %q}, b: {name: %q}}\nblocks: {L: {name: Beam, make: 5, pieces: [{unit: half-square, finished: 3, each: 2, fabrics: [a, b]}]}}", names[0], names[1]))
		stock, err := sheets.FindStock("4 x 2 in", false, plan.Letter)
		if err != nil {
			t.Fatal(err)
		}
		if got := texts(labelsOf(t, q, sheets.LabelOptions{Stock: stock})[0], "label 1 fabrics"); !slices.Equal(got, want) {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
