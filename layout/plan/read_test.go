package plan

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"cutbinder/layout/length"
	"cutbinder/layout/pack"
)

// mustRead reads a plan that is right.
func mustRead(t *testing.T, text string) *Plan {
	t.Helper()
	p, ps := Read("test.yaml", []byte(text))
	if len(ps) > 0 || p == nil {
		t.Fatalf("plan %v, problems:\n%v\nof:\n%s", p, ps.Error(), text)
	}
	return p
}

// lantern has every key that a plan commonly has.
const lantern = `plan: Lantern  Row
by: Example Workshop
version: 2
date: 2026-03-01
finished: 54 x 66
units: inch
fabrics:
  dusk:
    name: Dusk stripe
    colour: "#4a5578"
    width: 41 1/2
    have: half yard
    one-way: true
    prewash: Yes
    shrink: 4%
    bleeds: likely
    note: stripes run along the length
    claims: {buy: 1/2 yd, strips: 3}
  wick: {colour: "#EB3"}
  ember: {name: Ember print, have: [fat quarter, 9 x 42], cloth: flannel, step: 1/4 yd, cutting: thrifty, bleeds: no}
  plum:
mixes:
  nightprints: [dusk, ember, plum]
blocks:
  A:
    name: Lantern
    make: 12
    finished: 9
    pieces:
      - {finished: 3, each: 4, mix: nightprints}
      - {cut: 3 1/2 x 6 1/2, each: 2, fabric: wick, turn: no, claims: {need: 24}}
      - {unit: half-square, finished: 3, each: 4, fabrics: [wick, nightprints]}
      - {unit: geese, finished: 4 x 2, each: 4, fabric: wick, trim: yes}
pieces:
  - {cut: 2 1/2 x 66, need: 2, fabric: dusk, for: side borders, join: true}
  - {unit: strip, finished: 2, need: 3, fabric: wick}
  - {cut: 2 1/2 x WOF, need: 3, fabric: wick}
  - {unit: strip-set, need: 8, segment: 2, strips: [{fabric: wick, finished: 2}, {mix: nightprints, finished: 1}]}
quilt: [A A, [A]]
setting: {on-point: 3 x 4, sides: dusk, alternate: nightprints, generous: yes}
sashing: {blocks: 4 × 5, width: 2, fabric: dusk, cornerstones: wick, frame: yes}
borders:
  - {width: 5, fabric: dusk, corners: mitred, join: yes}
  - {width: 2, mix: nightprints, around: 40 x 50, for: outer}
binding: {fabric: dusk, joins: straight, bias: yes}
backing: {fabric: wick, seams: down}
batting: {overhang: 3}
allow: {spare: 5%, extra: 2.5 %, retrue: 4}
bags: {by: fabric}
labels: {stock: 2 5/8 x 1  in, gutter: none, per-bag: 2}
hand: left
cutting: strips
ruler: 24 1/2 x 6 1/2
mark: k7q
claims: {pieces: 312}
accept: {"claim-buy:dusk": bought  before}
`

func TestReadKeys(t *testing.T) {
	p := mustRead(t, lantern)
	dusk, wick, ember := p.Fabric("dusk"), p.Fabric("wick"), p.Fabric("ember")
	a := p.Block("A")
	for _, c := range []struct{ what, got, want any }{
		{"title", p.Title, "Lantern Row"},
		{"version", p.Version, "2"},
		{"date", p.Date, "2026-03-01"},
		{"finished", p.Finished, length.Size{W: 54 * in, H: 66 * in}},
		{"width", dusk.Width, 83 * in / 2},
		{"have", dusk.Have[0].Size, length.Size{W: 83 * in / 2, H: 18 * in}},
		{"one-way", dusk.OneWay, true},
		{"prewash", dusk.Prewash, true},
		{"shrink", dusk.Shrink, Shrinkage{400, 400}},
		{"bleeds", dusk.Bleeds, BleedsLikely},
		{"claims", []any{dusk.Claims.Buy, dusk.Claims.Strips, dusk.Claims.Stated("buy")}, []any{18 * in, 3, true}},
		{"cutting from the plan", dusk.Cutting, pack.Strips},
		{"step from the plan", dusk.Step, length.Yard / 8},
		{"name from the id", wick.Name, "wick"},
		{"short colour", wick.Colour, "#eebb33"},
		{"cloth", ember.Flannel, true},
		{"flannel shrinks", ember.Shrink, Shrinkage{800, 400}},
		{"bleeds no", ember.Bleeds, BleedsNo},
		{"own step", ember.Step, length.Yard / 4},
		{"own cutting", ember.Cutting, pack.Thrifty},
		{"mix", p.Mix("nightprints").Fabrics, []string{"dusk", "ember", "plum"}},
		{"ids of a mix", p.FabricIDs(Source{ID: "nightprints", Mix: true}), []string{"dusk", "ember", "plum"}},
		{"ids of a fabric", p.FabricIDs(Source{ID: "dusk"}), []string{"dusk"}},
		{"ids of nothing", p.FabricIDs(Source{ID: "none"}), []string(nil)},
		{"make", a.Make, 12},
		{"each", a.Pieces[0].Count, 4},
		{"mix source", a.Pieces[0].Sources[0].Mix, true},
		{"cut", a.Pieces[1].Cut, length.Size{W: 7 * in / 2, H: 13 * in / 2}},
		{"turn", a.Pieces[1].NoTurn, true},
		{"claimed need", a.Pieces[1].Claims.Need, 24},
		{"usual method", a.Pieces[2].Method, TwoAtATime},
		{"one source for two roles", []string{a.Pieces[3].Sources[0].ID, a.Pieces[3].Sources[1].ID}, []string{"wick", "wick"}},
		{"join", p.Pieces[0].Join, true},
		{"for", p.Pieces[0].For, "side borders"},
		{"strip", p.Pieces[1].Finished, length.Size{W: length.WOF, H: 2 * in}},
		{"WOF lies across", p.Pieces[2].Cut, length.Size{W: length.WOF, H: 5 * in / 2}},
		{"strip set", []any{len(p.Pieces[3].Strips), p.Pieces[3].Segment, p.Pieces[3].Strips[1].Source.Mix}, []any{2, 2 * in, true}},
		{"quilt", fmt.Sprint(p.Quilt), "[[A A] [A]]"},
		{"setting", []any{p.Setting.Across, p.Setting.Down, p.Setting.Block, p.Setting.Corners.ID, p.Setting.Generous}, []any{3, 4, 9 * in, "dusk", in / 4}},
		{"alternate", p.Setting.Alternate.ID, "nightprints"},
		{"sashing", []any{p.Sashing.Across, p.Sashing.Down, p.Sashing.Block, p.Sashing.Frame, p.Sashing.Cornerstones.ID}, []any{4, 5, length.Size{W: 9 * in, H: 9 * in}, true, "wick"}},
		{"border", []any{p.Borders[0].For, p.Borders[0].Mitred, p.Borders[0].Join}, []any{"border 1", true, true}},
		{"border around", []any{p.Borders[1].For, p.Borders[1].Around}, []any{"outer", length.Size{W: 40 * in, H: 50 * in}}},
		{"binding", []any{p.Binding.Strip, p.Binding.Straight, p.Binding.Bias, p.Binding.Tail}, []any{5 * in / 2, true, true, 10 * in}},
		{"backing", []any{p.Backing.Overhang, p.Backing.Seams}, []any{4 * in, SeamsDown}},
		{"batting", p.Batting.Overhang, 3 * in},
		{"allow", []any{p.Allow.Spare, p.Allow.Extra, p.Allow.Squaring, p.Allow.Retrue}, []any{Percent(500), Percent(250), in / 2, 4}},
		{"bags", p.BagBy, []BagKey{ByFabric}},
		{"labels", []any{p.Labels.Stock, p.Labels.NoGutter, p.Labels.PerBag}, []any{"2 5/8 x 1 in", true, 2}},
		{"hand", p.Hand, LeftHand},
		{"ruler", p.Ruler, length.Size{W: 13 * in / 2, H: 49 * in / 2}},
		{"mark", p.Mark, "K7Q"},
		{"accept", []any{p.Accept[0].ID, p.Accept[0].Why}, []any{"claim-buy:dusk", "bought before"}},
		{"place of a value", p.Place("finished"), Pos{File: "test.yaml", Line: 5, Col: 11}},
		{"place of what isn't written", dusk.Place("step"), Pos{File: "test.yaml", Line: 9, Col: 5}},
	} {
		if diff := cmp.Diff(c.want, c.got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.what, diff)
		}
	}
}

func TestDefaults(t *testing.T) {
	const short = "plan: P\nfabrics: {dusk: {}}\npieces: [{cut: 2, need: 1, fabric: dusk}]\nfinished: 50\nbinding: {fabric: dusk}\nbacking: {fabric: dusk}\nbatting: {}\n"
	inch, metric := mustRead(t, short), mustRead(t, "units: metric\n"+short)
	size := func(w, h length.Length) length.Size { return length.Size{W: w, H: h} }
	for _, c := range []struct {
		what   string
		of     func(p *Plan) any
		inches any
		cms    any
	}{
		{"units", func(p *Plan) any { return p.Units }, length.Imperial, length.Metric},
		{"a bare number", func(p *Plan) any { return p.Pieces[0].Cut }, size(2*in, 2*in), size(2*cm, 2*cm)},
		{"seam", func(p *Plan) any { return p.Seam }, in / 4, 75 * cm / 100},
		{"cut-step", func(p *Plan) any { return p.CutStep }, in / 8, mm},
		{"width", func(p *Plan) any { return p.Fabrics[0].Width }, 40 * in, 102 * cm},
		{"shrink", func(p *Plan) any { return p.Fabrics[0].Shrink }, Shrinkage{300, 500}, Shrinkage{300, 500}},
		{"fabric's step", func(p *Plan) any { return p.Fabrics[0].Step }, 9 * in / 2, 10 * cm},
		{"bleeds", func(p *Plan) any { return p.Fabrics[0].Bleeds }, BleedsUnstated, BleedsUnstated},
		{"step", func(p *Plan) any { return p.Allow.Step }, 9 * in / 2, 10 * cm},
		{"squaring", func(p *Plan) any { return p.Allow.Squaring }, in / 2, 15 * mm},
		{"spare, extra", func(p *Plan) any { return p.Allow.Spare + p.Allow.Extra }, Percent(0), Percent(0)},
		{"retrue", func(p *Plan) any { return p.Allow.Retrue }, 0, 0},
		{"ruler", func(p *Plan) any { return p.Ruler }, size(13*in/2, 49*in/2), size(16*cm, 60*cm)},
		{"mat", func(p *Plan) any { return p.Mat }, size(24*in, 36*in), size(60*cm, 90*cm)},
		{"bags", func(p *Plan) any { return p.BagBy }, []BagKey{ByBlock, BySize}, []BagKey{ByBlock, BySize}},
		{"labels", func(p *Plan) any { return []any{p.Labels.Stock, p.Labels.PerBag} }, []any{"", 1}, []any{"", 1}},
		{"paper", func(p *Plan) any { return p.Paper }, Letter, A4},
		{"hand", func(p *Plan) any { return p.Hand }, RightHand, RightHand},
		{"cutting", func(p *Plan) any { return []any{p.Cutting, p.Fabrics[0].Cutting} }, []any{pack.Stacks, pack.Stacks}, []any{pack.Stacks, pack.Stacks}},
		{"language", func(p *Plan) any { return p.Language }, "en", "en"},
		{"binding", func(p *Plan) any { return []any{p.Binding.Strip, p.Binding.Tail, p.Binding.Straight} }, []any{5 * in / 2, 10 * in, false}, []any{65 * mm, 25 * cm, false}},
		{"backing", func(p *Plan) any { return []any{p.Backing.Overhang, p.Backing.Seams} }, []any{4 * in, SeamsEither}, []any{10 * cm, SeamsEither}},
		{"batting", func(p *Plan) any { return p.Batting.Overhang }, 4 * in, 10 * cm},
		{"unit", func(p *Plan) any { return p.Pieces[0].Unit }, Patch, Patch},
	} {
		if diff := cmp.Diff(c.inches, c.of(inch)); diff != "" {
			t.Errorf("%s, inch (-want +got):\n%s", c.what, diff)
		}
		if diff := cmp.Diff(c.cms, c.of(metric)); diff != "" {
			t.Errorf("%s, metric (-want +got):\n%s", c.what, diff)
		}
	}
}

// TestSound: what is left of a plan whose lines of pieces alone are faulty.
func TestSound(t *testing.T) {
	for _, c := range []struct {
		name, plan string
		want       int // lines that are left, -1 for no plan
	}{
		{"no fault", "pieces: [{cut: 2, need: 1, fabric: dusk}]", 1},
		{"one of two lines", "pieces: [{cut: 2, need: ten, fabric: dusk}, {cut: 3, need: 1, fabric: dusk}]", 1},
		{"two faults in one line, a line in a block", "pieces: [{cot: 2, need: ten, fabric: dusk}]\nblocks: {A: {make: 1, pieces: [{cut: 3, each: 1, fabric: dusk}, {cut: 4, fabric: dusk}]}}", 1},
		{"all lines", "pieces: [{cut: 2, need: ten, fabric: dusk}]", -1},
		{"elsewhere too", "seam: wide\npieces: [{cut: 2, need: ten, fabric: dusk}, {cut: 3, need: 1, fabric: dusk}]", -1},
		{"a line that isn't YAML", "pieces: [{cut: 2, need: *ten, fabric: dusk}, {cut: 3, need: 1, fabric: dusk}]", -1},
		{"nothing", "pieces: {", -1},
	} {
		got := -1
		if p := Sound("p", []byte(wholePlan(c.plan))); p != nil {
			got = len(p.Pieces)
			for _, b := range p.Blocks {
				got += len(b.Pieces)
			}
		}
		if got != c.want {
			t.Errorf("%s: %d lines, want %d", c.name, got, c.want)
		}
	}
}

// TestHave: what is on the shelf, across x along in inches (centimetres in a
// metric plan), for a fabric 40 in (102 cm) wide.
func TestHave(t *testing.T) {
	for _, c := range []struct {
		units, have string
		want        []string // name: across x along, with a star for the full width
	}{
		{"inch", "half yard", []string{"half yard: 40 x 18 *"}},
		{"inch", "1 1/4 yd", []string{"1 1/4 yd: 40 x 45 *"}},
		{"inch", "30 cm", []string{"30 cm: 40 x 11.811 *"}},
		{"inch", "4", []string{"4: 40 x 4 *"}}, // the shortest that needs no unit
		{"inch", "1/2 in", []string{"1/2 in: 40 x 1/2 *"}},
		{"inch", "27", []string{"27: 40 x 27 *"}},
		{"inch", "fat quarter", []string{"fat quarter: 20 1/2 x 18"}},
		{"inch", "a fat quarter", []string{"fat quarter: 20 1/2 x 18"}},
		{"inch", "Fat Eighth", []string{"fat eighth: 20 1/2 x 9"}},
		{"inch", "2 fat quarters", []string{"fat quarter 1 of 2: 20 1/2 x 18", "fat quarter 2 of 2: 20 1/2 x 18"}},
		{"inch", "two fat eighths", []string{"fat eighth 1 of 2: 20 1/2 x 9", "fat eighth 2 of 2: 20 1/2 x 9"}},
		{"inch", "FQ", []string{"fat quarter: 20 1/2 x 18"}},
		{"inch", "FE", []string{"fat eighth: 20 1/2 x 9"}},
		{"inch", "2 FQ", []string{"fat quarter 1 of 2: 20 1/2 x 18", "fat quarter 2 of 2: 20 1/2 x 18"}},
		{"inch", "2FQs", []string{"fat quarter 1 of 2: 20 1/2 x 18", "fat quarter 2 of 2: 20 1/2 x 18"}},
		{"inch", "two fe", []string{"fat eighth 1 of 2: 20 1/2 x 9", "fat eighth 2 of 2: 20 1/2 x 9"}},
		{"inch", "[fat eighth, 2 FQ, 9 x 42, fat eighth, fat quarter]", []string{"fat eighth 1 of 2: 20 1/2 x 9", "fat quarter 1 of 3: 20 1/2 x 18", "fat quarter 2 of 3: 20 1/2 x 18", "9 x 42: 42 x 9", "fat eighth 2 of 2: 20 1/2 x 9", "fat quarter 3 of 3: 20 1/2 x 18"}},
		{"inch", "2 half yards", []string{"half yard 1 of 2: 40 x 18 *", "half yard 2 of 2: 40 x 18 *"}},
		{"inch", "2 x quarter yard", []string{"quarter yard 1 of 2: 40 x 9 *", "quarter yard 2 of 2: 40 x 9 *"}},
		{"inch", "one half yard", []string{"half yard: 40 x 18 *"}},
		{"inch", "three quarter yard", []string{"three quarter yard: 40 x 27 *"}},
		{"inch", "2 yards", []string{"2 yards: 40 x 72 *"}},
		{"inch", "17 1/2 x 42", []string{"17 1/2 x 42: 42 x 17 1/2"}},
		{"inch", "9 x 42", []string{"9 x 42: 42 x 9"}},
		{"inch", "9 x 38", []string{"9 x 38: 38 x 9"}},
		{"inch", "9 x 37 1/2", []string{"9 x 37 1/2: 37 1/2 x 9"}}, // nine tenths of 40 are 36
		{"inch", "9 x 35 1/2", []string{"9 x 35 1/2: 9 x 35 1/2"}},
		{"inch", "18 x 22", []string{"18 x 22: 18 x 22"}},
		{"inch", "40 x 100", []string{"40 x 100: 40 x 100"}}, // the first is the width
		{"inch", "42 x 17 1/2", []string{"42 x 17 1/2: 42 x 17 1/2"}},
		{"inch", "18 x WOF", []string{"18 x WOF: 40 x 18 *"}},
		{"inch", "{width: 20, length: 60}", []string{"20 x 60: 20 x 60"}},
		{"inch", "{length: 60}", []string{"1 2/3 yd: 40 x 60 *"}},
		{"inch", "[fat quarter, 9 x 42, {length: 9}]", []string{"fat quarter: 20 1/2 x 18", "9 x 42: 42 x 9", "1/4 yd: 40 x 9 *"}},
		{"inch", "[]", nil},
		{"metric", "fat quarter", []string{"fat quarter: 54 x 50"}},
		{"metric", "3 fat eighths", []string{"fat eighth 1 of 3: 54 x 25", "fat eighth 2 of 3: 54 x 25", "fat eighth 3 of 3: 54 x 25"}},
		{"metric", "half metre", []string{"half metre: 102 x 50 *"}},
		{"metric", "2 half metres", []string{"half metre 1 of 2: 102 x 50 *", "half metre 2 of 2: 102 x 50 *"}},
		{"metric", "10", []string{"10: 102 x 10 *"}},
		{"metric", "5 cm", []string{"5 cm: 102 x 5 *"}},
		{"metric", "30", []string{"30: 102 x 30 *"}},
		{"metric", "25 x 110", []string{"25 x 110: 110 x 25"}},
		{"metric", "25 x 96", []string{"25 x 96: 96 x 25"}},
		{"metric", "50 x 55", []string{"50 x 55: 50 x 55"}},
	} {
		p := mustRead(t, fmt.Sprintf("plan: P\nunits: %s\nfabrics:\n  dusk:\n    have: %s\npieces: [{cut: 2, need: 1, fabric: dusk}]\n", c.units, c.have))
		var got []string
		for _, h := range p.Fabrics[0].Have {
			line := h.Name + ": " + p.Units.FormatSize(h.Size)
			if h.FullWidth {
				line += " *"
			}
			got = append(got, line)
			if h.At.Line != 5 {
				t.Errorf("%s: at %v, want line 5", c.have, h.At)
			}
		}
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s %s (-want +got):\n%s", c.units, c.have, diff)
		}
	}
	narrow := mustRead(t, "plan: P\nfabrics: {dusk: {width: 30, have: 9 x 27}}\npieces: [{cut: 2, need: 1, fabric: dusk}]\n")
	if got := narrow.Fabrics[0].Have[0].W; got != 27*in {
		t.Errorf("9 x 27 of a fabric 30 wide lies %v across, want 27 in", got)
	}
}

// TestSmallPlans: what is short must stay short.
func TestSmallPlans(t *testing.T) {
	for _, text := range []string{
		"plan: P\nfabrics: {a: {}}\npieces: [{cut: 2, need: 1, fabric: a}]",
		"plan: P\nfabrics:\n  a:\npieces:\n- cut: 2\n  need: 1\n  fabric: a\n",
		"\ufeffplan: P\r\nfabrics: {a: }\r\npieces: {cut: 2, need: 1, fabric: a}\r\n",
		"plan: 2024\nfabrics: {1: {}}\nblocks: {2: {make: 3, pieces: [{cut: 2, each: 1, fabric: 1}]}}",
		"plan: P\nfabrics: {a: {}}\nfinished: 40\nbinding: {fabric: a}",
		"plan: P\nfabrics: {a: {}}\nquilt: [B B]\nblocks: {B: {pieces: [{cut: 2, each: 1, fabric: a}]}}",
		"plan: P\nfabrics: {a: {}}\nlabels: {columns: 3, rows: 7, width: 60 mm, height: 35 mm, left: 0, top: 0, step-across: 66 mm, step-down: 38 mm}\npieces: [{cut: 2, need: 1, fabric: a}]",
	} {
		mustRead(t, text)
	}
	rows := mustRead(t, "plan: P\nfabrics: {a: {}}\nquilt: [B B, B]\nblocks: {B: {pieces: [{cut: 2, each: 1, fabric: a}]}}")
	if got := rows.Blocks[0].Make; got != 3 {
		t.Errorf("make from the quilt's rows is %d, want 3", got)
	}
}

// TestLimits: what is too much is told, and quickly.
func TestLimits(t *testing.T) {
	many := func(n int, format string) string {
		var s strings.Builder
		for i := range n {
			fmt.Fprintf(&s, format, i)
		}
		return s.String()
	}
	const rest = "plan: P\npieces: [{cut: 2, need: 1, fabric: f0}]\n"
	for _, c := range []struct{ name, text, want string }{
		{"bytes", rest + "note: " + strings.Repeat("long ", 1<<20), "the file has"},
		{"values", rest + "note: [" + strings.Repeat("a,", 500_000) + "]", "too many values"},
		{"fabrics", rest + "fabrics:\n" + many(501, "  f%d:\n"), "fabrics: 501 are written; expected at most 500"},
		{"blocks", rest + "fabrics: {f0: }\nblocks:\n" + many(201, "  b%d:\n"), "blocks: 201 are written; expected at most 200"},
		{"text", "plan: " + strings.Repeat("x", 3000), "the text has 3000 characters"},
		{"depth", "plan: " + strings.Repeat("[", 30000), "too many values stand in one another"},
		{"faults", rest + "fabrics:\n  f0:\n" + many(5000, "k%d: 1\n"), "k0"},
		{"anchors", "plan: [" + many(5000, "&a%d x,") + "]", "&a0 marks a value"},
		{"utf16", "\xff\xfep\x00", "UTF-16"},
		{"binary", "plan: \x00\x01", "control character 0x00"},
		{"latin", "plan: caf\xe9", "byte 0xe9 is not text"},
	} {
		p, ps := Read("p", []byte(c.text))
		if p != nil || len(ps) == 0 || len(ps) > maxFaults || !strings.Contains(ps.Error(), c.want) {
			t.Errorf("%s: plan %v, %d problems, the first %v; want %q", c.name, p != nil, len(ps), ps[:min(1, len(ps))], c.want)
		}
	}
	if p := mustRead(t, rest+"fabrics:\n"+many(500, "  f%d:\n")); len(p.Fabrics) != 500 {
		t.Errorf("%d fabrics, want 500", len(p.Fabrics))
	}
}

// expectation is what a wrong plan's file says above a faulty line, or above
// other expectations of that line.
var expectation = regexp.MustCompile(`^ *#! (.*)$`)

// TestWrongFiles: each file states its faults above their lines, as
// "#! col: what | hint".
func TestWrongFiles(t *testing.T) {
	files, err := filepath.Glob("../../testdata/plans/wrong/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatal("no wrong plans found", err)
	}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		var want, got, open []string
		for i, line := range strings.Split(string(data), "\n") {
			if m := expectation.FindStringSubmatch(line); m != nil {
				open = append(open, m[1])
				continue
			}
			for _, w := range open {
				want = append(want, fmt.Sprintf("%d:%s", i+1, w))
			}
			open = nil
		}
		p, ps := Read("p", data)
		if p != nil {
			t.Errorf("%s: a plan was read", file)
		}
		for _, p := range ps {
			got = append(got, told(p))
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", file, diff)
		}
	}
}

// FuzzRead: whatever the file, there is a plan or there are faults, never both
// and never neither, every fault has its place, and a second reading is the same.
func FuzzRead(f *testing.F) {
	f.Add([]byte(lantern))
	for _, c := range wrongPlans {
		f.Add([]byte(wholePlan(c.yaml)))
	}
	for _, c := range drawings {
		f.Add([]byte(wholePlan("blocks: {A: " + c.block + "}")))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		p, ps := Read("p", data)
		if (p == nil) == (len(ps) == 0) {
			t.Fatalf("plan %v and problems %v", p != nil, ps)
		}
		lines := len(splitLines(string(data)))
		for _, q := range ps {
			if q.Level != Fault || q.What == "" || q.At.Line < 1 || q.At.Line > lines+1 || q.At.Col < 1 {
				t.Errorf("%d lines, %+v", lines, q)
			}
		}
		var out strings.Builder
		if err := ps.Render(&out, data); err != nil {
			t.Error(err)
		}
		if _, again := Read("p", data); cmp.Diff(ps, again) != "" {
			t.Errorf("read twice, two answers: %v and %v", ps, again)
		}
	})
}
