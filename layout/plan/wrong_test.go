package plan

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// wholePlan makes a fragment of a plan into a plan that is right but for the
// fragment, which comes first so that its lines keep their numbers.
func wholePlan(fragment string) string {
	if strings.HasPrefix(fragment, "=") {
		return fragment[1:]
	}
	text := fragment + "\n"
	for _, line := range []string{
		"plan: Test",
		"fabrics: {dusk: {}, wick: {}, ember: {}}",
		"mixes: {night: [dusk, ember]}",
		"pieces: [{cut: 2, need: 1, fabric: dusk}]",
	} {
		key, _, _ := strings.Cut(line, ":")
		if !strings.Contains("\n"+fragment, "\n"+key+":") {
			text += line + "\n"
		}
	}
	return text
}

// wrongPlans are fragments of plans and the faults they must give, as
// line:col: what | hint. A fragment that starts with = is a whole file.
var wrongPlans = []struct {
	yaml string
	want []string
}{
	// the file
	{`=`, []string{`1:1: the file holds no plan | start with a line such as plan: Lantern Row`}},
	{`=# nothing but a remark`, []string{`1:1: the file holds no plan | start with a line such as plan: Lantern Row`}},
	{`=- a list`, []string{`1:1: found a list; expected a plan: keys with values | start with a line such as plan: Lantern Row`}},
	{`=just words`, []string{`1:1: found "just words"; expected a plan: keys with values | start with a line such as plan: Lantern Row`}},
	{"=plan: A\n---\nplan: B", []string{`2:1: a second plan begins here; expected one plan a file | leave the line of three hyphens out, or put the second plan in a file of its own`}},
	{"=plan: A\nplan: B\nfabrics: {a: {}}\npieces: [{cut: 2, need: 1, fabric: a}]", []string{`2:1: key "plan" is written twice; it stands on line 1 too | keep one of them`}},
	{`=plan: A`, []string{`1:1: key "fabrics" is missing from the plan; expected names with keys under them such as {dusk: {name: Dusk stripe}} | write fabrics: {dusk: {name: Dusk stripe}}`, `1:1: the plan has nothing to cut; expected pieces or blocks | write pieces: [{cut: 2 1/2, need: 40, fabric: dusk}], or blocks`}},
	{"=plan: A\nfabrics: {}\npieces: []", []string{`2:10: fabrics: none is written; expected at least one such as dusk: {name: Dusk stripe}`}},
	{"=plan: A\nfabrics:\npieces:", []string{`2:1: fabrics has no value; expected names with keys under them such as {dusk: {name: Dusk stripe}}`, `3:1: pieces has no value; expected a list such as [{cut: 2 1/2, need: 40, fabric: dusk}]`}},
	{"=plan: A\nfabrics: {dusk: {}}", []string{`1:1: the plan has nothing to cut; expected pieces or blocks | write pieces: [{cut: 2 1/2, need: 40, fabric: dusk}], or blocks`}},
	{`=~`, []string{`1:1: the file holds no plan | start with a line such as plan: Lantern Row`}},
	// YAML
	{"by:Me\nmark: K7Q", []string{`1:4: the value stands at the colon; expected a space between them | write by: Me`}},
	{"=plan: Test\nfabrics:\n  dusk:\n    # usable\n    name:Dusk stripe\n\n    width: 42", []string{`5:10: the value stands at the colon; expected a space between them | write name: Dusk stripe`}},
	{"=plan: Test\npieces:\n  - cut:4\n    need: 3", []string{`3:9: the value stands at the colon; expected a space between them | write cut: 4`}},
	{`fabrics: {dusk: {width:41}, wick: {}, ember: {}}`, []string{`1:18: fabric has no key "width:41" | a space is missing: write width: 41`}},
	{`units: cm`, []string{`1:8: units: found "cm"; expected one of inch, metric | did you mean metric?`}},
	{`by: a: b`, []string{`1:6: a colon is not expected here | put a text that holds a colon between quotes, or line this key up with its neighbours`}},
	{`by: @home`, []string{`1:5: this character cannot begin a value | put the text between quotes, and indent with spaces`}},
	{"=plan: A\n\tby: B", []string{`2:1: the line is indented with a tab; expected spaces | use the same number of spaces as the lines around`}},
	{"=plan: A\nfabrics:\n  dusk:\n    name: Dusk\n\t  width: 40", []string{`5:1: the line is indented with a tab; expected spaces | use the same number of spaces as the lines around`}},
	{"=plan: \"A\nfabrics: {a: {}}", []string{`1:7: a quote opened here is never closed | close it with the same quote`}},
	{"=plan: A\nfabrics: {dusk: {name: Dusk, colour: #4a5578}}\npieces: []", []string{`2:17: { opened here is not closed as expected; expected , between its keys and } at the end | # after a space starts a remark: write a colour between quotes, "#4a5578"`}},
	{"=plan: A\nfabrics:\n  dusk: {name: Dusk\n  wick: {name: Wick}\n", []string{`3:9: { opened here is not closed as expected; expected , between its keys and } at the end`}},
	{"=plan: A\nfabrics: {a: {}}\npieces: [{cut: 2, need: 1, fabric: a}\nby: B\n", []string{`3:9: [ opened here is not closed as expected; expected , between its values and ] at the end`}},
	{"=plan: A\nby B\nfabrics: {a: {}}", []string{`2:1: expected a key and a colon, such as seam: 1/4`}},
	{"=plan: A\nfabrics:\n  dusk: {}\n wick: {}", []string{`4:2: the line does not fit those around it | indent it as its neighbours are, and write key: value`}},
	{"=plan: A\npieces:\n  - cut: 2\n  need: 4", []string{`4:3: the line does not fit the list it stands in; expected - in front of each value | indent it as its neighbours are`}},
	{"=plan: A\nmixes: {a: [b, , c]}", []string{`2:14: expected a value here`}},
	{"=  plan: A\n by: B", []string{`2:2: the line does not fit those above it | indent it as its neighbours are`}},
	{`by: *home`, []string{`2:5: * refers to another value, which plans do not do | write the value out here; a text that starts with * needs quotes`}},
	{`by: &home Home`, []string{`1:5: &home marks a value to be used again, which plans do not do | leave it out; a text that starts with & needs quotes`}},
	{`note: !!binary aGVsbG8=`, []string{`1:7: !!binary says what type a value is, which plans do not do | leave it out; a text that starts with ! needs quotes`}},
	{`fabrics: {dusk: &d {}, wick: *d, ember: {}}`, []string{`1:17: &d marks a value to be used again, which plans do not do | leave it out; a text that starts with & needs quotes`, `1:30: *d refers to another value, which plans do not do | write the value out here; a text that starts with * needs quotes`}},
	{`allow: {<<: {spare: 5%}}`, []string{`1:9: << takes keys over from elsewhere, which plans do not do | write the keys out here`}},
	{"? [a, b]\n: 1", []string{`1:3: expected a plain word as the key`}},
	{`by: [[[[[[[[[[[[[[[[[[[[[[[a]]]]]]]]]]]]]]]]]]]]]]]`, []string{`1:5: by: found a list; expected a text such as Example Workshop`, `1:25: values stand in one another more than 20 deep`}},
	// keys
	{`titel: A`, []string{`1:1: plan has no key "titel"; expected one of plan, by, version, date, mark, note, language, font, units, finished, seam, cut-step, cutting, allow, fabrics, mixes, letters, blocks, pieces, setting, sashing, borders, binding, backing, batting, bags, labels, paper, hand, ruler, mat, quilt, claims, accept`}},
	{`title: A`, []string{`1:1: plan has no key "title" | did you mean plan?`}},
	{`fabrcs: {}`, []string{`1:1: plan has no key "fabrcs" | did you mean fabrics?`}},
	{`spare: 5%`, []string{`1:1: plan has no key "spare" | spare belongs in allow`}},
	{`xyzzy: 1`, []string{`1:1: plan has no key "xyzzy"; expected one of plan, by, version, date, mark, note, language, font, units, finished, seam, cut-step, cutting, allow, fabrics, mixes, letters, blocks, pieces, setting, sashing, borders, binding, backing, batting, bags, labels, paper, hand, ruler, mat, quilt, claims, accept`}},
	{`fabrics: {dusk: {color: "#fff"}, wick: {}, ember: {}}`, []string{`1:18: fabric has no key "color" | did you mean colour?`}},
	{`fabrics: {dusk: {witdh: 40}, wick: {}, ember: {}}`, []string{`1:18: fabric has no key "witdh" | did you mean width?`}},
	{`pieces: [{cut: 6,5 cm, need: 1, fabric: dusk}]`, []string{`1:18: piece has no key "5 cm" | a comma parts values here: write a decimal with a point`}},
	{`pieces: [{size: 2, need: 1, fabric: dusk}]`, []string{`1:11: piece has no key "size" | did you mean finished or cut?`}},
	{`pieces: [{cut: 2, count: 4, fabric: dusk}]`, []string{`1:19: piece has no key "count" | did you mean each or need?`}},
	{`pieces: [{cut: 2, needs: 12, fabrik: dusk}]`, []string{`1:19: piece has no key "needs" | did you mean need?`, `1:30: piece has no key "fabrik" | did you mean fabric?`}},
	{`pieces: [{unit: strip-set, strip: [], segmnt: 2, need: 1}]`, []string{`1:28: piece has no key "strip" | did you mean strips?`, `1:39: piece has no key "segmnt" | did you mean segment?`}},
	{`pieces: [{cut: 2, each: 12, fabric: dusk, neeed: 12}]`, []string{`1:25: each is for pieces in a block; expected need | write need here`, `1:43: piece has no key "neeed" | did you mean need?`}},
	{"finishd: 54 x 66\nbinding: {fabrics: dusk}\nbacking: {}", []string{`1:1: plan has no key "finishd" | did you mean finished?`, `2:11: binding has no key "fabrics"; expected one of fabric, mix, strip, bias, joins, tail | did you mean fabric?`, `3:10: the backing has no fabric | write fabric: and the fabric's name`}},
	{`blocks: {A: {makes: 2, piece: []}, B: {make: 1, finishd: 6, draw: [dusk]}}`, []string{`1:14: block has no key "makes"; expected one of pieces, name, make, finished, letters, cell, columns, rows, methods, trim, draw, claims | did you mean make?`, `1:24: block has no key "piece"; expected one of pieces, name, make, finished, letters, cell, columns, rows, methods, trim, draw, claims | did you mean pieces?`, `1:49: block has no key "finishd"; expected one of pieces, name, make, finished, letters, cell, columns, rows, methods, trim, draw, claims | did you mean finished?`}},
	{"=plan: A\nfabrcs: {a: {}}\npeices: []", []string{`2:1: plan has no key "fabrcs" | did you mean fabrics?`, `3:1: plan has no key "peices" | did you mean pieces?`}},
	{`allow: {spares: 5%}`, []string{`1:9: allow has no key "spares"; expected one of spare, squaring, extra, step, retrue | did you mean spare?`}},
	{`binding: {with: 2}`, []string{`1:10: binding needs the quilt's finished size, which the plan does not state | write finished: 54 x 66 at the top of the plan`, `1:10: the binding has no fabric | write fabric: and the fabric's name`, `1:11: binding has no key "with"; expected one of fabric, mix, strip, bias, joins, tail`}},
	{`claims: {buy: 2}`, []string{`1:10: plan's claims has no key "buy"; expected one of pieces | buy belongs in fabric's claims`}},
	// texts
	{`plan:`, []string{`1:1: plan has no value; expected a text such as Lantern Row`}},
	{`plan: ""`, []string{`1:7: plan has no value; expected a text such as Lantern Row`}},
	{`plan: [A, B]`, []string{`1:7: plan: found a list; expected a text such as Lantern Row`}},
	{`by: {name: A}`, []string{`1:5: by: found keys with values; expected a text such as Example Workshop`}},
	// lengths and sizes
	{`seam: a quarter`, []string{`1:7: seam: "a quarter" has no unit named "quarter"; expected a length such as 4 1/2, 4.5 or 6.5 cm`}},
	{`seam: 0`, []string{`1:7: seam: found "0"; expected a length above zero, such as 1/4`}},
	{`seam: -1/4`, []string{`1:7: seam: "-1/4" is negative; expected a length such as 4 1/2, 4.5 or 6.5 cm`}},
	{`seam: 41/2`, []string{`1:7: seam: "41/2" may mean 4 1/2 or 20 1/2; expected a length such as 4 1/2, 4.5 or 6.5 cm`}},
	{`seam: 3`, []string{`1:7: seam: found "3"; expected at most 2 in`}},
	{`seam: [1/4]`, []string{`1:7: seam: found a list; expected a length such as 1/4`}},
	{`seam: 1/0`, []string{`1:7: seam: "1/0" divides by zero; expected a length such as 4 1/2, 4.5 or 6.5 cm`}},
	{`cut-step: 2 in`, []string{`1:11: cut-step: found "2 in"; expected at most 1 in`}},
	{`finished: 54 x`, []string{`1:11: finished: "54 x" is not a size; expected a size such as 3 1/2 x 6 1/2, or one length for a square`}},
	{`finished: 0 x 66`, []string{`1:11: finished: found "0 x 66"; expected sides above zero, such as 54 x 66`}},
	{`finished: 54 x 66 x 2`, []string{`1:11: finished: "54 x 66 x 2" has more than two sides; expected a size such as 3 1/2 x 6 1/2, or one length for a square`}},
	{`finished: 54 x WOF`, []string{`1:11: finished: found "54 x WOF"; WOF means nothing here, expected two lengths such as 54 x 66`}},
	{`finished: 2000 m`, []string{`1:11: finished: "2000 m" is too long; expected a size such as 3 1/2 x 6 1/2, or one length for a square`}},
	{`ruler: wide`, []string{`1:8: ruler: "wide" is not a size; expected a size such as 3 1/2 x 6 1/2, or one length for a square`}},
	{`mat: {w: 2}`, []string{`1:6: mat: found keys with values; expected a size such as 24 x 36`}},
	{"units: metric\nseam: nix", []string{`2:7: seam: "nix" is not a length; expected a length such as 6.5, 65 mm or 4 1/2 in`}},
	{`units: inches`, []string{`1:8: units: found "inches"; expected one of inch, metric | did you mean inch?`}},
	{`units: feet`, []string{`1:8: units: found "feet"; expected one of inch, metric`}},
	// fabrics
	{`fabrics: [dusk, wick, ember]`, []string{`1:10: fabrics: found a list; expected names with keys under them such as {dusk: {name: Dusk stripe}} | write fabrics: {dusk: {}, wick: {}, ember: {}}`}},
	{`fabrics: {dusk: Dusk stripe, wick: {}, ember: {}}`, []string{`1:17: found "Dusk stripe"; expected the keys of fabric, such as name: Dusk stripe | write {name: Dusk stripe}`}},
	{`fabrics: {"": {}, dusk: {}, wick: {}, ember: {}}`, []string{`1:11: fabrics: a name is empty; expected a short word such as dusk`}},
	{`fabrics: {" dusk": {}, dusk: {}, wick: {}, ember: {}}`, []string{`1:11: fabrics: the name " dusk" holds spaces at its ends or characters that cannot be printed`}},
	{`fabrics: {dusk: {colour: blue}, wick: {}, ember: {}}`, []string{`1:26: colour: found "blue"; expected a colour such as "#4a5578" | write # and six digits from 0 to 9 and a to f, between quotes`}},
	{`fabrics: {dusk: {colour: "#12345"}, wick: {}, ember: {}}`, []string{`1:26: colour: found "#12345"; expected a colour such as "#4a5578" | write # and six digits from 0 to 9 and a to f, between quotes`}},
	{"fabrics:\n  dusk: {}\n  wick: {}\n  ember:\n    colour: #4a5578", []string{`5:5: colour has no value; expected a colour such as "#4a5578" | write it between quotes: "#4a5578"; without them # starts a remark`}},
	{`fabrics: {dusk: {width: 0}, wick: {}, ember: {}}`, []string{`1:25: width: found "0"; expected a length above zero, such as 41 1/2`}},
	{`fabrics: {dusk: {one-way: maybe}, wick: {}, ember: {}}`, []string{`1:27: one-way: found "maybe"; expected yes or no`}},
	{`fabrics: {dusk: {bleeds: perhaps}, wick: {}, ember: {}}`, []string{`1:26: bleeds: found "perhaps"; expected one of likely, unknown, no`}},
	{`fabrics: {dusk: {cloth: flanel}, wick: {}, ember: {}}`, []string{`1:25: cloth: found "flanel"; expected one of cotton, flannel | did you mean flannel?`}},
	{`fabrics: {dusk: {shrink: lots}, wick: {}, ember: {}}`, []string{`1:26: shrink: found "lots"; expected a percentage such as 4%`}},
	{`fabrics: {dusk: {shrink: 0.04}, wick: {}, ember: {}}`, []string{`1:26: shrink: found "0.04", which may mean a share or a percentage; expected a percentage such as 4% | write 4% or 0.04%`}},
	{`fabrics: {dusk: {shrink: 60%}, wick: {}, ember: {}}`, []string{`1:26: shrink: found "60%"; expected at most 50 %`}},
	{`fabrics: {dusk: {shrink: {lenght: 3%}}, wick: {}, ember: {}}`, []string{`1:27: shrink has no key "lenght"; expected one of length, width | did you mean length?`}},
	{`fabrics: {dusk: {cutting: stack}, wick: {}, ember: {}}`, []string{`1:27: cutting: found "stack"; expected one of strips, stacks, thrifty | did you mean stacks?`}},
	{`fabrics: {dusk: {step: 0}, wick: {}, ember: {}}`, []string{`1:24: step: found "0"; expected a length above zero, such as 1/4 yd`}},
	{`fabrics: {dusk: {claims: {buy: lots}}, wick: {}, ember: {}}`, []string{`1:32: buy: "lots" is not a length; expected a length such as 4 1/2, 4.5 or 6.5 cm`}},
	{`fabrics: {dusk: {claims: 1/2 yd}, wick: {}, ember: {}}`, []string{`1:26: claims: found "1/2 yd"; expected keys with values such as {buy: 1/2 yd}`}},
	// cloth at hand
	{`fabrics: {dusk: {have: some}, wick: {}, ember: {}}`, []string{`1:24: have: "some" is not a length; expected such as half yard, 30 cm, 9 x 42 or 2 fat quarters`}},
	{`fabrics: {dusk: {have: 0}, wick: {}, ember: {}}`, []string{`1:24: have: found "0"; expected a length above zero, such as half yard`}},
	{`fabrics: {dusk: {have: 1/2}, wick: {}, ember: {}}`, []string{`1:24: have: 1/2 is read as 1/2 in, shorter than any cloth; expected a length such as 1/2 yd | did you mean 1/2 yd?`}},
	{`fabrics: {dusk: {have: [FQ, 3 7/8, {length: 1 1/4}]}, wick: {}, ember: {}}`, []string{`1:29: have: 3 7/8 is read as 3 7/8 in, shorter than any cloth; expected a length such as 1/2 yd | did you mean 3 7/8 yd?`, `1:45: length: 1 1/4 is read as 1 1/4 in, shorter than any cloth; expected a length such as 1/2 yd | did you mean 1 1/4 yd?`}},
	{"units: metric\nfabrics: {dusk: {have: 1.1}, wick: {}, ember: {}}", []string{`2:24: have: 1.1 is read as 1.1 cm, shorter than any cloth; expected a length such as 0.5 m | did you mean 1.1 m?`}},
	{`fabrics: {dusk: {have: fqs}, wick: {}, ember: {}}`, []string{`1:24: have: "fqs" does not say how many; expected such as half yard, 30 cm, 9 x 42 or 2 fat quarters | write 2 fat quarters`}},
	{`fabrics: {dusk: {have: 2 fat quaters}, wick: {}, ember: {}}`, []string{`1:24: have: "2 fat quaters" has no unit named "fat"; expected such as half yard, 30 cm, 9 x 42 or 2 fat quarters | did you mean fat quarters?`}},
	{`fabrics: {dusk: {have: three quarter yards}, wick: {}, ember: {}}`, []string{`1:24: have: found "three quarter yards", which may mean one length or three | write 3/4 yd, or 3 x quarter yard`}},
	{`fabrics: {dusk: {have: 0 fat quarters}, wick: {}, ember: {}}`, []string{`1:24: have: found "0 fat quarters"; expected a count from 1 to 2000`}},
	{`fabrics: {dusk: {have: 99999 fat quarters}, wick: {}, ember: {}}`, []string{`1:24: have: found "99999 fat quarters"; expected a count from 1 to 2000`}},
	{`fabrics: {dusk: {have: [half yard, {width: 40}]}, wick: {}, ember: {}}`, []string{`1:36: key "length" is missing from the cloth; expected a length such as 17 1/2 | write length: 17 1/2`}},
	{`fabrics: {dusk: {have: 18 x}, wick: {}, ember: {}}`, []string{`1:24: have: "18 x" is not a size; expected a size such as 3 1/2 x 6 1/2, or one length for a square`}},
	{`fabrics: {dusk: {have: [[half yard]]}, wick: {}, ember: {}}`, []string{`1:25: have: found a list; expected a length of cloth or a list of them such as half yard`}},
	{`fabrics: {dusk: {have: [1500 fat quarters]}, wick: {have: 501 fat eighths}, ember: {}}`, []string{`1:59: have: the plan has 2001 lengths of cloth; expected at most 2000`}},
	// mixes
	{`mixes: {night: dusk}`, []string{`1:16: mix night: found "dusk"; expected a list of fabrics such as [dusk, ember]`}},
	{`mixes: {night: []}`, []string{`1:16: mix night: found a list; expected a list of fabrics such as [dusk, ember]`}},
	{`mixes: {night: [dusk, wik]}`, []string{`1:23: fabric "wik" is not in this plan; expected one of dusk, wick, ember | did you mean wick?`}},
	{`mixes: {night: [dusk, dusk]}`, []string{`1:23: fabric "dusk" stands in mix "night" twice | keep one of them`}},
	{`mixes: {night: [dusk, wick], all: [night, ember]}`, []string{`1:36: "night" is a mix; expected fabrics, for a mix holds no mixes | write its fabrics here`}},
	{`mixes: {wick: [dusk, ember]}`, []string{`1:9: mix "wick" has the name of a fabric, which stands on line 3 | give the mix another name`}},
	{`mixes: [dusk, ember]`, []string{`1:8: mixes: found a list; expected names with lists of fabrics such as {nightprints: [dusk, ember]}`}},
	// pieces
	{`pieces: [{cut: 2, need: 1, fabric: dsk}]`, []string{`1:36: fabric "dsk" is not in this plan; expected one of dusk, wick, ember | did you mean dusk?`}},
	{`pieces: [{cut: 2, need: 1, fabric: night}]`, []string{`1:36: "night" is a mix; expected the name of a fabric | write mix: night`}},
	{`pieces: [{cut: 2, need: 1, mix: dusk}]`, []string{`1:33: "dusk" is a fabric; expected the name of a mix | write fabric: dusk`}},
	{`pieces: [{cut: 2, need: 1, mix: nigth}]`, []string{`1:33: mix "nigth" is not in this plan; expected one of night | did you mean night?`}},
	{`pieces: [{cut: 2, need: 1, fabric: [dusk, wick]}]`, []string{`1:36: fabric: found a list; expected the name of a fabric such as dusk | write fabrics: for several roles of a unit, or make a mix of them`}},
	{`pieces: [{cut: 2, need: 1}]`, []string{`1:10: the piece has no fabric | write fabric: and the fabric's name`}},
	{`pieces: [{cut: 2, need: 1, fabric: dusk, mix: night}]`, []string{`1:47: the piece has both fabric and mix; expected one | keep one of them`}},
	{`pieces: [{cut: 2, fabric: dusk}]`, []string{`1:10: the piece has no need; expected how many pieces, for it stands outside blocks | write need: 40`}},
	{`pieces: [{cut: 2, need: 0, fabric: dusk}]`, []string{`1:25: need: found "0"; expected a whole number from 1 to 100000`}},
	{`pieces: [{cut: 2, need: -3, fabric: dusk}]`, []string{`1:25: need: found "-3"; expected a whole number from 1 to 100000`}},
	{`pieces: [{cut: 2, need: 2.5, fabric: dusk}]`, []string{`1:25: need: found "2.5"; expected a whole number from 1 to 100000`}},
	{`pieces: [{cut: 2, need: many, fabric: dusk}]`, []string{`1:25: need: found "many"; expected a whole number from 1 to 100000`}},
	{`pieces: [{cut: 2, need: 99999999999999999999, fabric: dusk}]`, []string{`1:25: need: found "99999999999999999999"; expected a whole number from 1 to 100000`}},
	{`pieces: [{cut: 2, each: 1, fabric: dusk}]`, []string{`1:25: each is for pieces in a block; expected need | write need here`}},
	{`pieces: [{need: 1, fabric: dusk}]`, []string{`1:10: the piece has no size; expected finished or cut | write finished: or cut: and a size`}},
	{`pieces: [{cut: 2, finished: 2, need: 1, fabric: dusk}]`, []string{`1:16: the piece has both a finished and a cut size; expected one | keep the one that you know`}},
	{`pieces: [{cut: 2 x -3, need: 1, fabric: dusk}]`, []string{`1:16: cut: "2 x -3" is negative; expected a size such as 3 1/2 x 6 1/2, or one length for a square`}},
	{`pieces: [{cut: WOF, need: 1, fabric: dusk}]`, []string{`1:16: cut: "WOF" is one side only; expected a size such as 3 1/2 x 6 1/2, or one length for a square`}},
	{`pieces: [{cut: 2, need: 1, fabric: dusk, turn: sideways}]`, []string{`1:48: turn: found "sideways"; expected yes or no`}},
	{`pieces: [{cut: 2, need: 1, fabrics: [dusk, wick]}]`, []string{`1:37: fabrics: 2 are written; unit patch takes one | to cut from any of several, make a mix of them`}},
	{`pieces: [{cut: 2, need: 1, fabrics: []}]`, []string{`1:37: fabrics: found a list; expected a list of fabrics and mixes such as [wick, nightprints]`}},
	{`pieces: [{cut: 2, need: 1, fabric: dusk, method: two-at-a-time}]`, []string{`1:50: unit patch takes no method; it is made in one way | leave it out`}},
	{`pieces: [{cut: 2, need: 1, fabric: dusk, trim: yes}]`, []string{`1:48: unit patch is not trimmed after sewing | leave it out`}},
	{`pieces: [{cut: 2 x WOF, need: 1, fabric: dusk, join: yes}]`, []string{`1:54: join is for patches with two lengths such as cut: 2 1/2 x 66`}},
	{`pieces: [{cut: 2, need: 1, fabric: dusk, segment: 2}]`, []string{`1:51: segment is for a strip set; this is a patch | write unit: strip-set`}},
	{`pieces: 12`, []string{`1:9: pieces: found "12"; expected a list such as [{cut: 2 1/2, need: 40, fabric: dusk}]`}},
	{`pieces: [12]`, []string{`1:10: found "12"; expected the keys of piece, such as cut: 2 1/2, need: 40, fabric: dusk`}},
	{`pieces: [{}]`, []string{`1:10: the piece has no fabric | write fabric: and the fabric's name`, `1:10: the piece has no need; expected how many pieces, for it stands outside blocks | write need: 40`, `1:10: the piece has no size; expected finished or cut | write finished: or cut: and a size`}},
	{"pieces:\n  -", []string{`2:4: the piece has no fabric | write fabric: and the fabric's name`, `2:4: the piece has no need; expected how many pieces, for it stands outside blocks | write need: 40`, `2:4: the piece has no size; expected finished or cut | write finished: or cut: and a size`}},
	{`pieces: [{cut: 2, need: 60000, fabric: dusk}, {cut: 3, need: 60000, fabric: dusk}]`, []string{`1:62: the plan comes to 120000 pieces here; expected at most 100000`}},
	// units
	{`pieces: [{unit: half-sqare, finished: 3, need: 4, fabrics: [dusk, wick]}]`, []string{`1:17: unit: found "half-sqare"; expected one of patch, half-square, quarter-square, hourglass, geese, square-in-square, side-setting, corner-setting, strip, strip-set | did you mean half-square?`}},
	{`pieces: [{unit: flying-geese, finished: 6 x 3, need: 4, fabrics: [dusk, wick]}]`, []string{`1:17: unit: found "flying-geese"; expected one of patch, half-square, quarter-square, hourglass, geese, square-in-square, side-setting, corner-setting, strip, strip-set | did you mean geese?`}},
	{`pieces: [{unit: hst, finished: 3, need: 4, fabrics: [dusk, wick]}]`, []string{`1:17: unit: found "hst"; expected one of patch, half-square, quarter-square, hourglass, geese, square-in-square, side-setting, corner-setting, strip, strip-set | did you mean half-square?`}},
	{`pieces: [{unit: HST, finished: 3, need: 4, fabrics: [dusk, wick]}]`, []string{`1:17: unit: found "HST"; expected one of patch, half-square, quarter-square, hourglass, geese, square-in-square, side-setting, corner-setting, strip, strip-set | did you mean half-square?`}},
	{`pieces: [{unit: qst, finished: 3, need: 4, fabrics: [dusk, wick]}]`, []string{`1:17: unit: found "qst"; expected one of patch, half-square, quarter-square, hourglass, geese, square-in-square, side-setting, corner-setting, strip, strip-set | did you mean quarter-square for one triangle, or hourglass for the unit of four?`}},
	{`pieces: [{unit: FG, finished: 3, need: 4, fabrics: [dusk, wick]}]`, []string{`1:17: unit: found "FG"; expected one of patch, half-square, quarter-square, hourglass, geese, square-in-square, side-setting, corner-setting, strip, strip-set | did you mean geese?`}},
	{`pieces: [{unit: half-square, finished: 3 x 4, need: 4, fabrics: [dusk, wick]}]`, []string{`1:40: finished: found 3 x 4; unit half-square is square, expected one length such as 3`}},
	{`pieces: [{unit: half-square, cut: 3, need: 4, fabrics: [dusk, wick]}]`, []string{`1:35: unit half-square takes no cut size | write finished: and the finished size; the cut sizes follow from it`}},
	{`pieces: [{unit: half-square, need: 4, fabrics: [dusk, wick]}]`, []string{`1:10: the piece has no finished size, which unit half-square needs | write finished: and a size`}},
	{`pieces: [{unit: half-square, finished: 3, need: 4, fabrics: [dusk, wick, ember]}]`, []string{`1:61: fabrics: 3 are written; unit half-square takes 2: its two triangles`}},
	{`pieces: [{unit: geese, finished: 3, need: 4, fabrics: [dusk, wick]}]`, []string{`1:34: finished: found 3 x 3; geese made four at a time are twice as wide as high, expected 3 x 1 1/2 | write the width and the height of one goose`}},
	{`pieces: [{unit: geese, finished: 3 x 2, need: 4, fabrics: [dusk, wick]}]`, []string{`1:34: finished: found 3 x 2; geese made four at a time are twice as wide as high, expected 3 x 1 1/2 | with method: stitch-and-flip other shapes can be made`}},
	{`pieces: [{unit: geese, finished: 3 x 2, need: 4, fabrics: [dusk, wick], method: stitch-and-flip}]`, []string{`1:34: finished: found 3 x 2; a goose is at least twice as wide as high, expected such as 4 x 2`}},
	{`pieces: [{unit: geese, finished: 4 x 2, need: 4, fabrics: [dusk, wick], method: two-at-a-time}]`, []string{`1:81: unit geese is not made two-at-a-time; expected one of four-at-a-time, stitch-and-flip`}},
	{`pieces: [{unit: hourglass, finished: 3, need: 4, fabrics: [dusk, wick, ember, night, dusk]}]`, []string{`1:59: fabrics: 5 are written; unit hourglass takes 2 to 4: its triangles`}},
	{`pieces: [{unit: side-setting, finished: 3, need: 4, fabric: dusk, trim: yes}]`, []string{`1:73: unit side-setting is not trimmed after sewing | leave it out`}},
	{`pieces: [{unit: square-in-square, finished: 3 x WOF, need: 4, fabrics: [dusk, wick]}]`, []string{`1:45: finished: WOF means nothing for unit square-in-square; expected a size such as 3`}},
	{`pieces: [{unit: strip, cut: 2 x 3, need: 4, fabric: dusk}]`, []string{`1:29: a strip goes across the whole width; expected one length such as 2 1/2 | write the strip's width alone, or leave unit out`}},
	{`pieces: [{unit: strip-set, need: 4}]`, []string{`1:10: the strip set has no segment; expected the finished length that is cut off it | write segment: 2`, `1:10: the strip set has no strips | write strips: [{fabric: dusk, finished: 2}, {fabric: wick, finished: 2}]`}},
	{`pieces: [{unit: strip-set, need: 4, finished: 2, segment: 2, strips: [{fabric: dusk, finished: 2}]}]`, []string{`1:47: a strip set takes no finished | its sizes and fabrics stand in strips, and segment is what is cut off`, `1:70: the strip set has 1 strips; expected two or more`}},
	{`pieces: [{unit: strip-set, need: 4, segment: 2, strips: [{finished: 2}, {fabric: dsk, finished: 0}]}]`, []string{`1:58: a strip has no fabric | write fabric: and the fabric's name`, `1:82: fabric "dsk" is not in this plan; expected one of dusk, wick, ember | did you mean dusk?`, `1:97: finished: found "0"; expected a length above zero, such as 2`}},
	// blocks
	{`blocks: {A: {make: 2}}`, []string{`1:13: block "A" has neither pieces nor draw; expected one of them | write pieces: [{finished: 3, each: 4, fabric: dusk}], or draw: and rows of cells`}},
	{`blocks: {A: {make: 2, pieces: []}}`, []string{`1:31: block "A" has no pieces; expected at least one line of them`}},
	{`blocks: {A: {pieces: [{cut: 2, each: 1, fabric: dusk}]}}`, []string{`1:13: block "A" has no make; expected how many of this block | write make: and how many`}},
	{`blocks: {A: {make: 0, pieces: [{cut: 2, each: 1, fabric: dusk}]}}`, []string{`1:20: make: found "0"; expected a whole number from 1 to 100000`}},
	{`blocks: {A: {make: 2, pieces: [{cut: 2, need: 1, fabric: dusk}]}}`, []string{`1:47: need is for pieces outside blocks; expected each | write each here`}},
	{`blocks: {A: {make: 2, pieces: [{cut: 2, fabric: dusk}]}}`, []string{`1:32: the piece has no each; expected how many pieces, for it stands in a block | write each: 4`}},
	{`blocks: {A: {make: 1000, pieces: [{cut: 2, each: 500, fabric: dusk}]}}`, []string{`1:50: the plan comes to 500000 pieces here; expected at most 100000`}},
	{`blocks: {A: 12}`, []string{`1:13: found "12"; expected the keys of block, such as pieces: [{finished: 3, each: 4, fabric: dusk}]`}},
	{"blocks: {A: {make: 2, pieces: [{cut: 2, each: 1, fabric: dusk}]}}\nquilt: [A B, [A, C]]", []string{`2:11: block "B" is not in this plan; expected one of A`, `2:18: block "C" is not in this plan; expected one of A`}},
	{"blocks: {A: {make: 2, pieces: [{cut: 2, each: 1, fabric: dusk}]}}\nquilt: {A: A}", []string{`2:8: quilt: found keys with values; expected a list of rows such as [A B A, B A B]`}},
	{`quilt: [A]`, []string{`1:9: block "A" is not in this plan; expected one of blocks that the plan has none of`}},
	// setting and finish
	{`setting: {on-point: 3 x 4}`, []string{`1:10: key "sides" is missing from the setting; expected the name of a fabric or mix such as dusk | write sides: dusk`, `1:10: the setting has no block; expected the blocks' finished size, since the plan doesn't state one size for all of them | write block: and the finished size`}},
	{`setting: {on-point: 3, sides: dusk, block: 9}`, []string{`1:21: on-point: found "3"; expected how many across and down, such as 5 x 6, at most 100 each way`}},
	{`setting: {on-point: 3 x 4, sides: dusk}`, []string{`1:10: the setting has no block; expected the blocks' finished size, since the plan doesn't state one size for all of them | write block: and the finished size`}},
	{`setting: {on-point: 3 x 4, sides: dusk, block: 9, generous: lots}`, []string{`1:61: generous: "lots" is not a length; expected a length such as 4 1/2, 4.5 or 6.5 cm`}},
	{`sashing: {blocks: 4 x 5, width: 2}`, []string{`1:10: the sashing has no block; expected the blocks' finished size, since the plan doesn't state one size for all of them | write block: and the finished size`, `1:10: the sashing has no fabric | write fabric: and the fabric's name`}},
	{`sashing: {blocks: 0 x 5, width: 2, fabric: dusk, block: 9}`, []string{`1:19: blocks: found "0 x 5"; expected how many across and down, such as 4 x 5, at most 100 each way`}},
	{`borders: [{width: 5}]`, []string{`1:11: a border without around needs the quilt's finished size, which the plan does not state | write finished: 54 x 66 at the top of the plan`, `1:11: the border has no fabric | write fabric: and the fabric's name`}},
	{`borders: [{width: 5, fabric: dusk}]`, []string{`1:11: a border without around needs the quilt's finished size, which the plan does not state | write finished: 54 x 66 at the top of the plan`}},
	{"finished: 20 x 30\nborders: [{width: 5, fabric: dusk}, {width: 6, fabric: dusk}]", []string{`2:45: width: the borders take 22 in of the quilt's 20 x 30 in; nothing is left inside`}},
	{`borders: dusk`, []string{`1:10: borders: found "dusk"; expected a list such as [{width: 5, fabric: dusk}]`}},
	{`borders: [{width: 5, fabric: dusk, around: 40, corners: miterd}]`, []string{`1:57: corners: found "miterd"; expected one of butted, mitred | did you mean mitred?`}},
	{`fabrics: {dusk: {have: 10 in square}, wick: {}, ember: {}}`, []string{`1:24: have: found "10 in square"; expected a length of cloth, or a size of two sides | write both sides: 10 in x 10 in`}},
	{`batting: yes`, []string{`1:10: batting: found "yes"; expected keys with values such as {overhang: 4} | write batting: {} for the usual`}},
	{`bags: block`, []string{`1:7: bags: found "block"; expected keys with values such as {by: [block, size]} | write {by: block}`}},
	{`backing: yes`, []string{`1:10: backing: found "yes"; expected keys with values such as {fabric: dusk}`}},
	{`binding: dusk`, []string{`1:10: binding: found "dusk"; expected keys with values such as {fabric: dusk} | write {fabric: dusk}`}},
	{`binding: {fabric: dusk}`, []string{`1:10: binding needs the quilt's finished size, which the plan does not state | write finished: 54 x 66 at the top of the plan`}},
	{"finished: 54 x 66\nbinding: {strip: 0}", []string{`2:10: the binding has no fabric | write fabric: and the fabric's name`, `2:18: strip: found "0"; expected a length above zero, such as 2 1/2`}},
	{"finished: 54 x 66\nbinding: {fabric: dusk, mix: night}", []string{`2:30: the binding has both fabric and mix; expected one | keep one of them`}},
	{"finished: 54 x 66\nbacking: {fabric: dusk, seams: up}", []string{`2:32: seams: found "up"; expected one of either, across, down`}},
	{`batting: {overhang: 4}`, []string{`1:10: batting needs the quilt's finished size, which the plan does not state | write finished: 54 x 66 at the top of the plan`}},
	// paper
	{`mark: K7`, []string{`1:7: mark: found "K7"; expected three letters or digits such as K7Q`}},
	{`language: "english!"`, []string{`1:11: language: found "english!"; expected a language's short code such as en or pt-BR`}},
	{`paper: legal`, []string{`1:8: paper: found "legal"; expected one of letter, a4`}},
	{`hand: both`, []string{`1:7: hand: found "both"; expected one of right, left`}},
	{`cutting: any`, []string{`1:10: cutting: found "any"; expected one of strips, stacks, thrifty`}},
	{`bags: {by: colour}`, []string{`1:12: by: found "colour"; expected one of block, size, fabric`}},
	{`bags: {by: [block, block]}`, []string{`1:20: by: block is written twice | keep one of them`}},
	{`bags: {by: []}`, []string{`1:12: by: found a list; expected one of block, size, fabric`}},
	{`labels: {stock: big}`, []string{`1:17: stock: "big" is not a size; expected a size such as 3 1/2 x 6 1/2, or one length for a square`}},
	{`labels: {gutter: 3}`, []string{`1:18: gutter: found "3"; expected one of none, usual`}},
	{`labels: {columns: 3, rows: 7}`, []string{`1:9: a label sheet of one's own takes eight numbers; missing are width, height, left, top, step-across, step-down`}},
	{`labels: {stock: plain, columns: 3, rows: 7, width: 63.5 mm, height: 38.1 mm, left: 7 mm, top: 15 mm, step-across: 66 mm, step-down: 38.1 mm}`, []string{`1:17: labels: both a stock and a sheet of one's own are written | keep one of them`}},
	{`labels: {columns: 4, rows: 9, width: 63.5 mm, height: 38.1 mm, left: 7 mm, top: 15 mm, step-across: 66 mm, step-down: 38.1 mm}`, []string{`1:19: labels: the columns reach to about 10.571 in; letter paper is 8 1/2 in wide`, `1:28: labels: the rows reach to about 14.091 in; letter paper is 11 in high`}},
	{`labels: {columns: 2, rows: 2, width: 63.5 mm, height: 38.1 mm, left: 7 mm, top: 15 mm, step-across: 60 mm, step-down: 30 mm}`, []string{`1:101: step-across: about 2.362 in is less than a label's width of 2 1/2 in, so that labels overlap`, `1:119: step-down: about 1.181 in is less than a label's height of 1 1/2 in, so that labels overlap`}},
	{`accept: [x]`, []string{`1:9: accept: found a list; expected names of findings with reasons such as {claim-buy:dusk: bought before}`}},
	{`accept: {short:dusk: }`, []string{`1:10: short:dusk: found nothing; expected a text such as bought before`}},
	{`claims: {pieces: 0}`, []string{`1:18: pieces: found "0"; expected a whole number from 1 to 1000000`}},
	{`allow: {spare: 600%, squaring: 2 m, retrue: -1}`, []string{`1:16: spare: found "600%"; expected at most 500 %`, `1:32: squaring: found "2 m"; expected at most 36 in`, `1:45: retrue: found "-1"; expected a whole number from 0 to 1000`}},
	// and more of each
	{`cut-step: "1,234 mm"`, []string{`1:11: cut-step: "1,234 mm" has a comma that may mean thousands; expected a length such as 4 1/2, 4.5 or 6.5 cm | write a decimal with a point: 6.5`}},
	{`seam: 0,250 in or so`, []string{`1:7: seam: "0,250 in or so" is not a length; expected a length such as 4 1/2, 4.5 or 6.5 cm | write a decimal with a point: 6.5`}},
	{`finished: 54 x 2000`, []string{`1:11: finished: found "54 x 2000"; expected sides of at most 1080 in`}},
	{`fabrics: {dusk: {have: 300 yd}, wick: {}, ember: {}}`, []string{`1:24: have: found "300 yd"; expected at most 7200 in`}},
	{`fabrics: {dusk: {have: fat quarters}, wick: {}, ember: {}}`, []string{`1:24: have: "fat quarters" does not say how many; expected such as half yard, 30 cm, 9 x 42 or 2 fat quarters | write 2 fat quarters`}},
	{`fabrics: {dusk: {have: 0 yd}, wick: {}, ember: {}}`, []string{`1:24: have: found "0 yd"; expected a length above zero, such as half yard`}},
	{"fabrics: {a: {}, b: {}, c: {}, d: {}, e: {}, f: {}, g: {}, h: {}, i: {}, j: {}, k: {}, l: {}, m: {}}\nmixes: {}\npieces: [{cut: 2, need: 1, fabric: quince}]", []string{`3:36: fabric "quince" is not in this plan; expected one of a, b, c, d, e, f, g, h, i, j, k, l and 1 more`}},
	{"mixes: {}\npieces: [{cut: 2, need: 1, mix: night}]", []string{`2:33: mix "night" is not in this plan; it has none`}},
	{`mixes: {night: [dusk, ~]}`, []string{`1:23: mix night: found nothing; expected the name of a fabric such as dusk`}},
	{`mixes: {night: [*d, ember]}`, []string{`1:18: * refers to another value, which plans do not do | write the value out here; a text that starts with * needs quotes`}},
	{"setting: {on-point: 3 x 4, sides: night, generous: no, block: 9}\nmark: [K7Q]", []string{`2:7: mark: found a list; expected a text such as K7Q`}},
	{"blocks: {A: {make: 2, finished: 9, pieces: [{cut: 2, each: 1, fabric: dusk}]}, B: {make: 2, finished: 8, pieces: [{cut: 2, each: 1, fabric: dusk}]}}\nsashing: {blocks: 2 x 2, width: 1, fabric: dusk}", []string{`2:10: the sashing has no block; expected the blocks' finished size, since the plan doesn't state one size for all of them | write block: and the finished size`}},
	{"blocks: {A: {make: 2, finished: nine, pieces: [{cut: 2, each: 1, fabric: dusk}]}}\nsashing: {blocks: 2 x 2, width: 1, fabric: dusk}", []string{`1:33: finished: "nine" is not a size; expected a size such as 3 1/2 x 6 1/2, or one length for a square`}},
	{"blocks: {A: {make: 2, finished: 9 x 8, pieces: [{cut: 2, each: 1, fabric: dusk}]}}\nsetting: {on-point: 2 x 2, sides: dusk}", []string{`2:10: the setting takes square blocks; the plan's are 9 x 8 | write block: and the finished side`}},
	{"blocks: {A: {make: 2, pieces: [{cut: 2, each: 1, fabric: dusk}]}}\nquilt: [{A: 2}, [[A]]]", []string{`2:9: quilt: found keys with values; expected a row such as [A, B, A]`, `2:18: found a list in a row; expected a word`}},
	{`fabrics: {"a name that is longer than forty characters altogether": {}, dusk: {}, wick: {}, ember: {}}`, []string{`1:11: fabrics: the name "a name that is longer than forty characters altogether" has 54 characters; expected at most 40 | give it a short name here and the long one as its name:`}},
	{`language: [en]`, []string{`1:11: language: found a list; expected a text such as en`}},
	{`accept: {a: [b]}`, []string{`1:13: a: found a list; expected a text such as bought before`}},
	{"pieces: [{unit: strip, cut: 2 x WOF, need: 1, fabric: dusk}]\nxyz: 1", []string{`2:1: plan has no key "xyz"; expected one of plan, by, version, date, mark, note, language, font, units, finished, seam, cut-step, cutting, allow, fabrics, mixes, letters, blocks, pieces, setting, sashing, borders, binding, backing, batting, bags, labels, paper, hand, ruler, mat, quilt, claims, accept`}},
	{`pieces: [{unit: side-setting, finished: 9, need: 1, fabric: dusk, method: stitch-and-flip, join: yes}]`, []string{`1:75: unit side-setting takes no method; it is made in one way | leave it out`, `1:98: join is for patches with two lengths such as cut: 2 1/2 x 66`}},
	{`fabrics: {dusk: {have: [half yard, *x]}, wick: {}, ember: {}}`, []string{`1:37: * refers to another value, which plans do not do | write the value out here; a text that starts with * needs quotes`}},
	{`%x: 1`, []string{`1:1: a line that begins with % is not expected here | put the text between quotes`}},
}

func TestWrongPlans(t *testing.T) {
	for _, c := range wrongPlans {
		p, ps := Read("p", []byte(wholePlan(c.yaml)))
		if p != nil {
			t.Errorf("%q: a plan was read", c.yaml)
		}
		var got []string
		for _, p := range ps {
			if p.Level != Fault {
				t.Errorf("%q: %v is no fault", c.yaml, p)
			}
			got = append(got, told(p))
		}
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%q (-want +got):\n%s", c.yaml, diff)
		}
	}
}

// told is a problem on one line.
func told(p Problem) string {
	s := fmt.Sprintf("%d:%d: %s", p.At.Line, p.At.Col, p.What)
	if p.Hint != "" {
		s += " | " + p.Hint
	}
	return s
}
