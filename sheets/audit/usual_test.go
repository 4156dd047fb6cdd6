package audit_test

import (
	"strings"
	"testing"

	"cutbinder/layout/plan"
)

// Figures that nobody means are doubts, each with what was probably meant.
func TestUnusual(t *testing.T) {
	const patch = "pieces: [{cut: 3 1/2, need: 4, fabric: a}]\n"
	tests := []struct{ name, plan, id, words, hint string }{
		{"usual widths", "fabrics: {a: {width: 20}, b: {width: 120}}\n", "", "", ""},
		{"narrow", "fabrics: {a: {width: 19 1/2}}\n" + patch, "usual-width:a", "a usable width of 19 1/2 in is narrower than cloth is sold", "measure it between the selvages; accept it where the cloth has it"},
		{"a width in yards", "fabrics: {a: {width: 1 1/4}}\npieces: [{cut: 1, need: 4, fabric: a}]\n", "usual-width:a", "", "did you mean 1 1/4 yd or 1 1/4 m?"},
		{"a width in centimetres", "fabrics: {a: {width: 150}}\n" + patch, "usual-width:a", "150 in is wider than cloth is sold", "did you mean 150 cm?"},
		{"metric, a width in inches: 106.68", "units: metric\nfabrics: {a: {width: 42}}\n" + patch, "usual-width:a", "42 cm is narrower", "did you mean 42 in, or 107?"},
		{"metric, a width in metres", "units: metric\nfabrics: {a: {width: 1.1}}\npieces: [{unit: strip, cut: 2, need: 1, fabric: a}]\n", "usual-width:a", "", "did you mean 1.1 m?"},
		{"metric, a fat quarter's width", "units: metric\nfabrics: {a: {width: 54}}\n" + patch, "", "", ""},
		{"a strip along the cloth", "fabrics: {a: {have: 20 x 108}}\n" + patch, "usual-cloth:a", "a: 20 x 108 is read as 108 in wide and 20 in long, though the fabric is 40 in wide", "where it is a strip along the cloth write {width: 20, length: 108}; where all of it is so wide write width: 108"},
		{"said so", "fabrics: {a: {have: {width: 20, length: 108}}}\n" + patch, "", "", ""},
		{"a cut of full width, as the trade writes it", "fabrics: {a: {have: 9 x 44}}\n" + patch, "", "", ""},
		{"all seam", "fabrics: {a: {}}\npieces: [{cut: 1/2 x 6, need: 4, fabric: a}]\n", "all-seam:pieces.1", "cut 1/2 x 6: its two seams take 1/2 in", "where it is the finished size write finished: 1/2 x 6"},
		{"a strip that is all seam", "fabrics: {a: {}}\npieces: [{unit: strip, cut: 1/2, need: 1, fabric: a}]\n", "all-seam:pieces.1", "", "where it is the finished size write finished: WOF x 1/2"},
		{"a little more than seam", "fabrics: {a: {}}\npieces: [{cut: 5/8 x 6, need: 4, fabric: a}]\n", "", "", ""},
		{"thin binding", "finished: 40 x 50\nfabrics: {a: {}}\nbinding: {fabric: a, strip: 1}\n", "binding-strip", "strips of 1 in don't reach round the edge: four seams come to 1 in", "a binding of one layer takes four seams and a little, a folded one six and a little"},
		{"binding of one layer", "finished: 40 x 50\nfabrics: {a: {}}\nbinding: {fabric: a, strip: 1 1/8}\n", "", "", ""},
		{"a quilt in centimetres", "finished: 150 x 200\nfabrics: {a: {}}\n" + patch, "quilt-large", "finish 150 x 200 in: more than any bed takes", "did you mean 150 x 200 cm?"},
		{"a quilt in millimetres", "units: metric\nfinished: 1500 x 2000\nfabrics: {a: {}}\n" + patch, "quilt-large", "", "did you mean 1500 x 2000 mm?"},
		{"a quilt larger than that", "finished: 500 x 600\nfabrics: {a: {}}\n" + patch, "quilt-large", "", "accept it where the quilt is so large"},
		{"the largest quilt", "finished: 130\nfabrics: {a: {}}\n" + patch, "", "", ""},
		{"extra", "allow: {extra: 60%}\nfabrics: {a: {}}\n" + patch, "extra", "extra: 60 %: more than half as much again is bought", "5 to 10 % is usual"},
		{"spare", "allow: {spare: 51%}\nfabrics: {a: {}}\n" + patch, "spare", "spare: 51 %: more than half as much again of every size is cut", "5 to 10 % is usual"},
		{"half is still right", "allow: {spare: 50%, extra: 50%}\nfabrics: {a: {}}\n" + patch, "", "", ""},
	}
	kinds := []string{"usual-width", "usual-cloth", "all-seam", "binding-strip", "quilt-large", "extra", "spare"}
	for _, test := range tests {
		text := "plan: A\n" + test.plan
		if !strings.Contains(text, "need:") && !strings.Contains(text, "binding:") {
			text += "pieces: [{cut: 3 1/2, need: 4, fabric: a}, {cut: 5, need: 1, fabric: b}]\n"
		}
		_, _, found := work(t, "plan", text)
		ids := ""
		for _, p := range found {
			for _, kind := range kinds {
				if p.ID == kind || strings.HasPrefix(p.ID, kind+":") {
					ids += p.ID
				}
			}
		}
		if ids != test.id {
			t.Errorf("%s: found %q, want %q", test.name, ids, test.id)
			continue
		}
		if test.id == "" {
			continue
		}
		if p := byID(found, test.id); p.Level != plan.Doubt || !strings.Contains(p.What, test.words) || p.Hint != test.hint {
			t.Errorf("%s: found %v %q with the hint %q; want %q, %q", test.name, p.Level, p.What, p.Hint, test.words, test.hint)
		}
	}
}

// What is said of wide strips helps with the widest of them.
func TestWideStrips(t *testing.T) {
	const ways = "lay two rulers side by side, or measure with the mat"
	tests := []struct{ units, cut, hint string }{
		{"inch", "8 1/2", ways + "; or say which wider ruler you have, such as ruler: 8 1/2 x 24"},
		{"inch", "12", ways + "; or say which wider ruler you have, such as ruler: 12 1/2 x 12 1/2"},
		{"inch", "13", ways},
		{"metric", "21", ways + "; or say which wider ruler you have, such as ruler: 30 x 30"},
	}
	for _, test := range tests {
		_, _, found := work(t, "plan", "plan: A\nunits: "+test.units+"\nfabrics: {a: {}}\npieces: [{cut: "+test.cut+", need: 3, fabric: a}]\n")
		if p := byID(found, "ruler"); p == nil || p.Hint != test.hint {
			t.Errorf("%s: found %v, want the hint %q", test.cut, found, test.hint)
		}
	}
}

// Names that are easily taken for each other are noted once.
func TestAlike(t *testing.T) {
	tests := []struct{ fabrics, want, words string }{
		{"fabrics: {red: {}, Red: {}}", "note alike:red:Red 2:25", "red and Red differ in capitals only"},
		{"fabrics: {red: {}, blue: {name: RED}}", "note alike:red:blue 2:26", "red and blue are called the same: RED"},
		{"fabrics: {red: {}, blue: {}}\nmixes: {Blue: [red, blue]}", "note alike:blue:Blue 3:15", "differ in capitals only"},
		{"fabrics: {red: {}, reds: {}}", "", ""},
	}
	for _, test := range tests {
		text := "plan: A\n" + test.fabrics + "\npieces:\n"
		for _, f := range []string{"red", "Red", "blue", "reds"} {
			if strings.Contains(test.fabrics, f+": {") {
				text += "- {cut: 5, need: 1, fabric: " + f + "}\n"
			}
		}
		if strings.Contains(text, "Blue") {
			text += "- {cut: 3, need: 4, mix: Blue}\n"
		}
		_, _, found := work(t, "plan", text)
		if got := show(found); got != test.want || !strings.Contains(found.Error(), test.words) {
			t.Errorf("%s: found\n%s\n%v\nwant %s", test.fabrics, got, found, test.want)
		}
	}
}
