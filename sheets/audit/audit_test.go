package audit_test

import (
	"fmt"
	"strings"
	"testing"

	"cutbinder/layout/plan"

	"github.com/google/go-cmp/cmp"
)

// show is findings a line each: level, id, line and column.
func show(found plan.Problems) string {
	var out []string
	for _, p := range found {
		out = append(out, fmt.Sprintf("%s %s %d:%d", p.Level, p.ID, p.At.Line, p.At.Col))
	}
	return strings.Join(out, "\n")
}

// Each plan has one mistake that a maker would make, and each is told at the
// place of the key it is about. Plans begin with a title on line 1 and fabrics
// a and b on line 2, unless they bring their own.
func TestFindings(t *testing.T) {
	const two = "fabrics: {a: {}, b: {}}\n"
	both := "- {cut: 3 1/2, need: 4, fabric: a}\n- {cut: 5 1/2, need: 4, fabric: b}\n"
	tests := []struct {
		name, plan string
		want       string
		words      string
	}{
		{"nothing", two + "pieces:\n" + both, "", ""},

		{"pieces of the plan", two + "claims: {pieces: 9}\npieces:\n" + both, "fault claim-pieces 3:18", "the plan claims 9 pieces; its lines come to 8: 1 too many"},
		{"pieces with spares are right too", two + "claims: {pieces: 10}\nallow: {spare: 5%}\npieces:\n" + both, "", ""},
		{"pieces of a block: units, patches and cut pieces are right", two + "blocks:\n  A: {make: 4, claims: {pieces: 12}, pieces: [{unit: half-square, finished: 2, each: 4, fabrics: [a, b]}, {finished: 3, each: 4, fabric: a}]}\nruler: 24 x 24\n", "", ""},
		{"pieces of a block", two + "blocks:\n  A: {make: 4, claims: {pieces: 9}, pieces: [{unit: half-square, finished: 2, each: 4, fabrics: [a, b]}, {finished: 3, each: 4, fabric: a}]}\nruler: 24 x 24\n", "fault claim-pieces:A 4:33", "8 units, which are 12 patches when sewn"},
		{"need of a line", two + "blocks:\n  A: {make: 12, pieces: [{finished: 3, each: 4, fabric: a, claims: {need: 40}}, {finished: 5, each: 1, fabric: b}]}\nallow: {extra: 1%}\n", "fault claim-need:A.1 4:75", "this line claims that 40 are needed; it comes to 48 (4 for each of 12 blocks): 8 too few"},
		{"need of a unit: what is cut is right too", two + "blocks:\n  A: {make: 12, pieces: [{unit: half-square, finished: 3, each: 4, fabrics: [a, b], claims: {need: 24}}]}\n", "", ""},
		{"strips of a line", two + "pieces:\n- {cut: 3 1/2, need: 48, fabric: a, claims: {strips: 4}}\n- {cut: 5 1/2, need: 4, fabric: b}\nallow: {extra: 1%}\n", "fault claim-strips:pieces.1 4:54", "this line claims 4 strips; its pieces take 5: (11) 3 1/2 x 3 1/2 to a strip at 40 in"},
		{"too many strips", two + "pieces:\n- {cut: 3 1/2, need: 48, fabric: a, claims: {strips: 6}}\n- {cut: 5 1/2, need: 4, fabric: b}\nallow: {extra: 1%}\n", "note claim-strips:pieces.1 4:54", "5 hold its pieces"},
		{"strips of a fabric", "fabrics: {a: {claims: {strips: 4}}}\npieces:\n- {cut: 3 1/2, need: 48, fabric: a}\nallow: {extra: 1%}\n", "fault claim-strips:a 2:32", "a claims 4 strips; at 40 in usable width it takes 5"},
		{"less bought than used", "fabrics: {a: {claims: {buy: 1/4 yd}}}\npieces:\n- {cut: 3 1/2, need: 48, fabric: a}\n", "fault claim-buy:a 2:29", "1/4 yd (9 in) is 9 in short: the pieces take 17 1/2 in"},
		{"nothing left to straighten", "fabrics: {a: {claims: {buy: 17 3/4 in}}}\npieces:\n- {cut: 3 1/2, need: 48, fabric: a}\n", "doubt claim-buy:a 2:29", "it leaves 1/4 in for straightening"},
		{"tight", "fabrics: {a: {claims: {buy: 1/2 yd}}}\npieces:\n- {cut: 3 1/2, need: 48, fabric: a}\n", "doubt claim-buy:a 2:29", "1/2 yd (18 in) is tight"},
		{"without the padding", "fabrics: {a: {claims: {buy: 19 in}}}\nallow: {extra: 20%}\npieces:\n- {cut: 3 1/2, need: 48, fabric: a}\n", "note claim-buy:a 2:29", "not the padding of 20 %"},
		{"generous", "fabrics: {a: {claims: {buy: 3 yd}}}\npieces:\n- {cut: 3 1/2, need: 48, fabric: a}\n", "note claim-buy:a 2:29", "is generous: 1/2 yd do"},

		{"a block that adds up", two + "blocks:\n  A: {make: 1, finished: 6, pieces: [{finished: 3, each: 2, fabric: a}, {unit: half-square, finished: 3, each: 2, fabrics: [a, b]}]}\n", "", ""},
		{"patches left out", two + "blocks:\n  A: {make: 1, finished: 6, pieces: [{finished: 3, each: 2, fabric: a}, {finished: 3, each: 1, fabric: b}]}\n", "fault block-size:A 4:26", "finishes 6 x 6, which is 36 square in; its patches cover 27 square in: 9 square in too little"},
		{"patches too many", two + "blocks:\n  A: {make: 1, finished: 6, pieces: [{finished: 3, each: 4, fabric: a}, {finished: 1, each: 1, fabric: b}]}\n", "fault block-size:A 4:26", "1 square in too much"},
		{"too much, and a line that lies on others", two + "blocks:\n  A: {make: 1, finished: 6, pieces: [{finished: 6, each: 1, fabric: a}, {finished: 1, each: 4, fabric: b, for: corners to flip}]}\n", "doubt block-size:A 4:26", "4 square in too much"},
		{"too much, of squares that may be cut in two", two + "blocks:\n  A: {make: 1, finished: 6, pieces: [{finished: 3 x 6, each: 1, fabric: a}, {cut: 3 7/8, each: 2, fabric: b}]}\n", "doubt block-size:A 4:26", "4.78 square in too much"},
		{"too little, whatever they are cut into", two + "blocks:\n  A: {make: 1, finished: 6, pieces: [{finished: 3 x 6, each: 1, fabric: a}, {cut: 3 1/2, each: 1, fabric: b}]}\n", "fault block-size:A 4:26", "9 square in too little"},
		{"sizes in rounded thirds: 3 x 2.33 are 6.99", "fabrics: {a: {}}\nblocks:\n  A: {make: 1, finished: 7, pieces: [{finished: 2.33, each: 9, fabric: a}]}\n", "doubt block-size:A 4:26", "0.14 square in too little"},
		{"the area fits, no row does: 2 x 18 in 6 x 6", two + "blocks:\n  A: {make: 1, finished: 6, pieces: [{finished: 2 x 9, each: 1, fabric: a}, {finished: 2 x 9, each: 1, fabric: b}]}\n", "doubt block-edge:A 4:26", "2 x 9, is longer than that"},
		{"no sum of sides makes the edge: 4 and 5 don't make 6", two + "blocks:\n  A: {make: 1, finished: 6, pieces: [{finished: 4 x 4, each: 1, fabric: a}, {finished: 4 x 5, each: 1, fabric: b}]}\n", "doubt block-edge:A 4:26", "no row of its patches is 6 in long: the nearest is 5 in"},
		{"four quarters make a square", two + "blocks:\n  A: {make: 1, finished: 6, pieces: [{unit: quarter-square, finished: 6, each: 2, fabric: a}, {unit: quarter-square, finished: 6, each: 2, fabric: b}]}\nruler: 24 x 24\n", "", ""},
		{"strips say nothing of size", two + "blocks:\n  A: {make: 1, finished: 6, pieces: [{unit: strip, finished: 2, each: 1, fabric: a}, {finished: 6, each: 1, fabric: b}]}\n", "note block-size:A 4:38", "can't be checked"},
		{"quilt that doesn't add up", "fabrics: {a: {}}\nfinished: 30 x 40\nsashing: {blocks: 2 x 3, block: 12, width: 2, frame: true, fabric: a}\nallow: {extra: 1%}\n", "doubt quilt-size 3:11", "finish 30 x 40; its blocks come to 30 x 44"},
		{"with borders, it does", "fabrics: {a: {}}\nfinished: 34 x 48\nsashing: {blocks: 2 x 3, block: 12, width: 2, frame: true, fabric: a}\nborders: [{width: 2, fabric: a, join: true}]\n", "", ""},
		{"border round another centre", "fabrics: {a: {}}\nsashing: {blocks: 2 x 3, block: 12, width: 2, frame: true, fabric: a}\nborders: [{width: 2, around: 30 x 40, fabric: a}]\n", "doubt centre-size 4:30", "the border goes round 30 x 40; the blocks inside come to 30 x 44"},
		{"on point, within what trimming takes", "fabrics: {a: {}}\nfinished: 51 x 68\nsetting: {on-point: 3 x 4, block: 12, sides: a}\n", "note ruler 1:1", ""},
		{"on point, wrong", "fabrics: {a: {}}\nfinished: 51 x 66\nsetting: {on-point: 3 x 4, block: 12, sides: a}\n", "note ruler 1:1\ndoubt quilt-size 3:11", "come to about 51 x 68"},
		{"too few blocks", two + "blocks:\n  A: {make: 5, finished: 6, pieces: [{finished: 6 x 3, each: 1, fabric: a}, {finished: 6 x 3, each: 1, fabric: b}]}\nsashing: {blocks: 2 x 3, width: 2, fabric: a}\nallow: {extra: 1%}\nruler: 24 x 24\n", "doubt block-count 5:19", "2 x 3 takes 6 blocks; the blocks' make comes to 5"},

		{"drawn otherwise than written", two + "letters: {a: a, b: b}\nblocks:\n  A: {make: 1, cell: 3, draw: [a b, b a], pieces: [{finished: 3, each: 3, fabric: a}, {finished: 3, each: 2, fabric: b}]}\n", "fault block-size:A 5:6\ndoubt drawing:A 5:72", "is drawn with (2)"},
		{"near sizes, bagged apart", two + "pieces:\n- {cut: 3 1/2, need: 4, fabric: a}\n- {cut: 3 1/4 x 3 1/2, need: 4, fabric: a}\n- {cut: 5, need: 1, fabric: b}\n", "note near:a:3.5x3.5:3.25x3.5 5:3", "(4) 3 1/2 x 3 1/2 and (4) 3 1/4 x 3 1/2 are within 1/4 in"},
		{"near sizes in one bag", two + "bags: {by: [block]}\npieces:\n- {cut: 3 1/2, need: 4, fabric: a}\n- {cut: 3 3/4, need: 4, fabric: a}\n- {cut: 5, need: 1, fabric: b}\n", "doubt near:a:3.75x3.75:3.5x3.5 5:3", ""},
		{"just not near", two + "pieces:\n- {cut: 3 1/2, need: 4, fabric: a}\n- {cut: 3 13/16, need: 4, fabric: a}\n- {cut: 5, need: 1, fabric: b}\n", "", ""},
		{"a finished size written as cut", two + "blocks:\n  A: {make: 4, pieces: [{finished: 3, each: 4, fabric: a}, {cut: 3, each: 1, fabric: b}]}\n", "doubt cut-finished:A.2 4:66", "cut so, it finishes 2 1/2 x 2 1/2"},
		{"a copied sum that is wrong: 1 1/2 + 7/8", two + "pieces:\n- {cut: 2 1/4, need: 4, fabric: a, for: HST}\n- {cut: 5, need: 1, fabric: b}\n", "doubt rule:pieces.1 4:9", "cut 2 1/4 is 1/8 in short of the rule for a half-square that finishes 1 1/2: 2 3/8 in"},
		{"the same to be trimmed is right", two + "pieces:\n- {cut: 2 1/2, need: 4, fabric: a, for: HST}\n- {cut: 5, need: 1, fabric: b}\n", "", ""},
		{"short of a size that the plan has", two + "pieces:\n- {finished: 3, need: 4, fabric: a}\n- {cut: 3 3/4, need: 4, fabric: b}\n", "doubt rule:pieces.2 5:9", "finishes 3: 3 7/8 in"},
		{"metric: the usual 2.5 for 2.6 cm", "units: metric\nfabrics: {a: {}}\npieces:\n- {cut: 7.5, need: 4, fabric: a, for: half-square}\n", "doubt rule:pieces.1 5:9", "0.1 cm short"},

		{"four at a time", two + "blocks:\n  A: {make: 4, pieces: [{unit: half-square, finished: 3, each: 4, fabrics: [a, b], method: four-at-a-time}]}\n", "note bias:A.1 4:92", "edges on the bias"},
		{"a one-way print turned", "fabrics: {a: {one-way: true}, b: {}}\nblocks:\n  A: {make: 4, pieces: [{unit: geese, finished: 6 x 3, each: 4, fabrics: [b, a]}]}\n", "note ruler 1:1\ndoubt one-way:a:A.1 4:25", "a is a one-way print, and in geese made four-at-a-time it runs several ways"},
		{"a one-way print joined across", "fabrics: {a: {one-way: true}}\npieces:\n- {cut: 2 1/2 x 66, need: 2, fabric: a, join: true}\n", "doubt one-way:a:pieces.1 4:47", "lying on its side"},
		{"bolts' width", "fabrics: {a: {width: 44}, b: {width: 43}}\npieces:\n- {cut: 3, need: 2, fabric: a}\n- {cut: 3, need: 2, fabric: b}\n", "note nominal:a 2:22", "44 in is what bolts are sold as"},
		{"a one-way print sewn upright", "fabrics: {a: {one-way: true}, b: {}}\nblocks:\n  A: {make: 4, pieces: [{unit: geese, finished: 6 x 3, each: 4, fabrics: [a, b], method: stitch-and-flip}]}\n", "", ""},

		{"unused fabric", "fabrics: {a: {}, b: {}}\npieces: [{cut: 3, need: 4, fabric: a}]\n", "doubt unused:b 2:21", "nothing is cut from b: no line asks for it"},
		{"unused mix, and one of one fabric", "fabrics: {a: {}, b: {}}\nmixes: {m: [a], n: [a, b]}\npieces: [{cut: 3, need: 4, mix: m}, {cut: 5, need: 4, fabric: b}]\n", "doubt mix-small:m 3:12\ndoubt unused-mix:n 3:20", "has one fabric only"},
		{"more fabrics than pieces", "fabrics: {a: {}, b: {}}\nmixes: {n: [a, b]}\npieces: [{cut: 3, need: 1, mix: n}]\n", "doubt unused:b 2:21", "has fewer pieces than fabrics"},
		{"both halves of one fabric", two + "blocks:\n  A: {make: 4, pieces: [{unit: half-square, finished: 3, each: 4, fabrics: [a, a]}, {finished: 3, each: 1, fabric: b}]}\n", "doubt same-fabric:A.1 4:80", "come from a"},

		{"bought to a hair", two + "pieces:\n- {cut: 8 1/2, need: 4, fabric: a}\n- {cut: 5, need: 1, fabric: b}\n", "note ruler 1:1\ndoubt tight:a 2:14", "1/4 yd is just what is needed"},
		{"the shelf to a hair", "fabrics: {a: {have: 9 in}}\npieces:\n- {cut: 4 1/4, need: 18, fabric: a}\n", "doubt tight:a 2:21", "on cloth 1/8 in shorter"},
		{"the shelf to a hair in width", "fabrics: {a: {have: 21 x 9 in}}\npieces:\n- {cut: 5 1/4, need: 4, fabric: a}\n", "doubt tight:a 2:21", "on cloth 1/8 in narrower 1 piece finds no place"},
		{"to a hair, but the rest of the mix is bought", "fabrics: {a: {have: 9 in}, b: {}}\nmixes: {m: [a, b]}\npieces:\n- {cut: 4 1/4, need: 36, mix: m}\n", "", ""},
		{"used up by squaring", "fabrics: {a: {have: [1/2 in, 10 in]}}\npieces:\n- {cut: 4 1/4, need: 18, fabric: a}\n", "doubt unusable:a 2:22", "squaring takes 1/2 in, so that nothing can be cut from a cloth 1/2 in long"},
		{"each length once", "fabrics: {a: {have: [1/2 in, 10 in, 1/4 x 20, 10 x 1/4]}}\npieces:\n- {cut: 4 1/4, need: 18, fabric: a}\n", "doubt unusable:a 2:22", "a cloth 1/2 in and 1/4 in long"},
		{"a hair more than squaring takes", "fabrics: {a: {have: [5/8 in, 10 in]}}\npieces:\n- {cut: 4 1/4, need: 18, fabric: a}\n", "", ""},
		{"washed, the shelf is too small", "fabrics: {a: {have: 9 1/4 in, prewash: true}}\npieces:\n- {cut: 4 1/4, need: 18, fabric: a}\n", "doubt wash:a 2:40", "the wash may take 3 % of the length and 5 % of the width; then"},
		{"washed, the cloth is too narrow", "fabrics: {a: {prewash: true}}\npieces:\n- {cut: 8, need: 45, fabric: a}\n", "note ruler 1:1\ndoubt wash:a 2:24", "the wash may leave 38 in of its width"},
		{"only at the stated width", "fabrics: {a: {width: 42}}\npieces:\n- {cut: 6, need: 70, fabric: a}\n", "doubt width:a 2:22", "come from 60 in only where the cloth is 42 in wide or more; at 41 1/2 in they take 72 in: 2 1/8 yd to buy instead of 1 3/4 yd"},
		{"all of the width", "fabrics: {a: {width: 42}}\npieces:\n- {cut: 42 x 50, need: 1, fabric: a, turn: false}\n", "doubt width:a 2:22", "on cloth 41 1/2 in wide one is too wide"},
		{"wide strips", "ruler: 6 x 12\nfabrics: {a: {}}\npieces:\n- {cut: 8, need: 3, fabric: a}\n", "note ruler 2:8", "wider than the ruler, 6 in: a 8"},
		{"too little on the shelf", "fabrics: {a: {have: fat eighth}}\npieces:\n- {cut: 6, need: 5, fabric: a, for: x}\n", "fault short:a 2:21", "fat eighth is too little: (2) 6 x 6 find no place"},
		{"moved within a mix", "fabrics: {plum: {have: 20 x 7 1/2}, dusk: {have: 21 1/2 x 12 3/4}}\nmixes: {m: [plum, dusk]}\npieces:\n- {cut: 15 x 6, need: 1, fabric: plum}\n- {cut: 3, need: 2, fabric: dusk}\n- {cut: 6, need: 6, mix: m}\n", "note moved:plum:6x6 2:24", "plum holds too little for its share of the mix: (1) 6 x 6 come from dusk instead"},
		{"too little in a mix", "fabrics: {plum: {have: 20 x 7 1/2}, dusk: {have: 21 1/2 x 12 3/4}}\nmixes: {m: [plum, dusk]}\npieces:\n- {cut: 15 x 6, need: 1, fabric: plum}\n- {cut: 3, need: 2, fabric: dusk}\n- {cut: 6, need: 7, mix: m}\n", "note moved:plum:6x6 2:24\nfault short:dusk 2:50", "(1) 6 x 6 finds no place"},
		{"too little for the spares", "fabrics: {a: {have: 21 x 7 in}}\nallow: {spare: 1%}\npieces:\n- {cut: 6, need: 3, fabric: a}\n", "doubt short:a 2:21", "(1) 6 x 6 finds no place; it is a spare"},
		{"accepted", "accept: {unused:b: for the next quilt, near:a:1x1:2x2: long gone}\nfabrics: {a: {}, b: {}}\npieces: [{cut: 3, need: 4, fabric: a}]\n", "note accept:near:a:1x1:2x2 2:40", "there is no such finding any more"},
		{"a fault is not accepted", "accept: {claim-pieces: so be it}\nclaims: {pieces: 5}\nfabrics: {a: {}}\npieces: [{cut: 3, need: 4, fabric: a}]\n", "note accept:claim-pieces 2:10\nfault claim-pieces 3:18", "only doubts and notes"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			_, _, found := work(t, "plan", "plan: A\n"+test.plan)
			if diff := cmp.Diff(test.want, show(found)); diff != "" {
				t.Errorf("findings (-want +got):\n%s\n%v", diff, found)
			}
			if all := found.Error(); !strings.Contains(all, test.words) {
				t.Errorf("found %q, want %q among it", all, test.words)
			}
		})
	}
}

// A block's patches that don't fill it point at what is read the wrong way.
func TestAreaHint(t *testing.T) {
	tests := []struct{ pieces, hint string }{
		{"{cut: 6, each: 1, fabric: a}", "cut 6 is probably the finished size: write finished: 6"},
		{"{finished: 6 x 3, each: 1, fabric: b}, {cut: 6 x 3, each: 1, fabric: a}", "cut 6 x 3 is probably the finished size: write finished: 6 x 3"},
		{"{cut: 6 x 2, each: 1, fabric: b}, {cut: 3 x 4, each: 2, fabric: a}", "the cut sizes are probably finished ones: write finished: for cut:"},
		{"{finished: 3, each: 2, fabric: b}, {cut: 3 1/2, each: 1, fabric: a}", "look for a patch that is left out, or for a finished size written as cut"},
		{"{finished: 3, each: 2, fabric: b}", "look for a patch that is left out, or for a size that is off"},
		{"{finished: 6 1/2, each: 1, fabric: a}", "finished 6 1/2 is probably the cut size: write cut: 6 1/2"},
		{"{finished: 3 1/2, each: 2, fabric: a}, {finished: 3 1/2, each: 2, fabric: b}", "the finished sizes are probably cut ones: write cut: for finished:"},
		{"{finished: 6, each: 1, fabric: a}, {cut: 3, each: 1, fabric: b, for: shape to appliqué}", "look for a patch that is counted twice, or for a cut size written as finished; where a patch lies on others, as appliqué does, accept it"},
		{"{finished: 3, each: 5, fabric: a}", "look for a patch that is counted twice, or for a cut size written as finished"},
	}
	for _, test := range tests {
		_, _, found := work(t, "plan", "plan: A\nfabrics: {a: {}, b: {}}\nblocks: {A: {make: 1, finished: 6, pieces: ["+test.pieces+"]}}\n")
		if p := byID(found, "block-size:A"); p == nil || p.Hint != test.hint {
			t.Errorf("%s: found %v, want the hint %q", test.pieces, p, test.hint)
		}
	}
}

// A finding has an id that no other has, says what to do, and begins and ends
// as messages do.
func TestForm(t *testing.T) {
	for _, name := range []string{"lantern-row.yaml", "harbour-steps.yaml", "tide-garden.yaml", "lists/quarter-squares.yaml", "lists/rail-fence.yaml"} {
		_, _, found := work(t, name, sample(t, name))
		seen := map[string]bool{}
		for _, p := range found {
			switch {
			case p.ID == "" || seen[p.ID]:
				t.Errorf("%s: id %q of %q is empty or taken", name, p.ID, p.What)
			case p.Hint == "" || p.At.Line == 0:
				t.Errorf("%s: %s says neither where nor what to do: %+v", name, p.ID, p)
			case strings.HasSuffix(p.What, ".") || strings.HasSuffix(p.Hint, "."):
				t.Errorf("%s: %s ends in a full stop", name, p.ID)
			}
			seen[p.ID] = true
		}
	}
}

// The samples have no fault, and the doubts of the one on point are accepted.
func TestSamples(t *testing.T) {
	for _, name := range []string{"lantern-row.yaml", "harbour-steps.yaml", "tide-garden.yaml", "three-lines.yaml"} {
		_, _, found := work(t, name, sample(t, name))
		for _, p := range found {
			if p.Level == plan.Fault || p.Level == plan.Doubt && name == "tide-garden.yaml" || strings.HasPrefix(p.ID, "accept:") {
				t.Errorf("%s: %s: %s", name, p.ID, p.What)
			}
		}
	}
}

// Ids can be written as keys just as they are shown.
func TestAcceptedAsShown(t *testing.T) {
	plans := map[string]string{
		"harbour-steps":   sample(t, "harbour-steps.yaml"),
		"quarter-squares": sample(t, "lists/quarter-squares.yaml"),
		"borders":         "plan: A\nfinished: 66 x 77\nfabrics: {a: {one-way: true, width: 44}, b: {}, c: {have: 9 in}}\nborders: [{width: 2, fabric: a, join: true, for: \"Anna's outer border\"}]\npieces:\n- {cut: 3 1/4, need: 4, fabric: a}\n- {cut: 3 1/2, need: 4, fabric: a}\n- {cut: 5, need: 40, fabric: c}\nbags: {by: [block]}\n",
	}
	for name, text := range plans {
		_, _, found := work(t, name, text)
		for _, p := range found {
			if p.Level != plan.Fault {
				if !strings.Contains(text, "\naccept:") {
					text += "\naccept:\n"
				}
				text = strings.Replace(text, "\naccept:\n", "\naccept:\n  "+p.ID+": looked at\n", 1)
			}
		}
		_, _, left := work(t, name, text)
		for _, p := range left {
			if p.Level != plan.Fault {
				t.Errorf("%s: accepted, and still there: %s", name, p.ID)
			}
		}
		if len(found) < 2 {
			t.Errorf("%s: nothing to accept", name)
		}
	}
}
