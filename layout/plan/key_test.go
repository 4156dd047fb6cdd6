package plan

import (
	"fmt"
	"strings"
	"testing"
)

// A host is a plan around one mapping: frame holds it as %s, base are the keys
// that it needs.
type host struct{ frame, base string }

const stripSet = "pieces: [{unit: strip-set, need: 1, segment: 2, strips: [{%s}, {finished: 2, fabric: wick}]}]"

// hosts are the hosts by table, and by table and key where a key needs others
// around it.
var hosts = map[string]host{
	"plan":            {"%s", ""},
	"plan setting":    {"blocks: {A: {make: 1, finished: 9, pieces: [{cut: 2, each: 1, fabric: dusk}]}}\n%s", ""},
	"plan sashing":    {"blocks: {A: {make: 1, finished: 9, pieces: [{cut: 2, each: 1, fabric: dusk}]}}\n%s", ""},
	"plan borders":    {"finished: 54 x 66\n%s", ""},
	"plan binding":    {"finished: 54 x 66\n%s", ""},
	"plan backing":    {"finished: 54 x 66\n%s", ""},
	"plan batting":    {"finished: 54 x 66\n%s", ""},
	"plan fabrics":    {"mixes: {}\n%s", ""},
	"plan quilt":      {"blocks: {A: {pieces: [{cut: 2, each: 1, fabric: dusk}]}, B: {pieces: [{cut: 2, each: 1, fabric: dusk}]}}\n%s", ""},
	"fabric":          {"fabrics: {dusk: {%s}, wick: {}, ember: {}}", ""},
	"cloth":           {"fabrics: {dusk: {have: {%s}}, wick: {}, ember: {}}", "length: 9"},
	"shrink":          {"fabrics: {dusk: {shrink: {%s}}, wick: {}, ember: {}}", ""},
	"block":           {"blocks: {A: {%s}}", "make: 2; pieces: [{cut: 2, each: 1, fabric: dusk}]"},
	"block letters":   {"blocks: {A: {%s}}", "make: 2; cell: 3; draw: [n w, w n]"},
	"block cell":      {"blocks: {A: {%s}}", "make: 2; draw: [dusk wick, wick dusk]"},
	"block columns":   {"blocks: {A: {%s}}", "make: 2; cell: 3; draw: [dusk wick dusk]"},
	"block rows":      {"blocks: {A: {%s}}", "make: 2; cell: 3; draw: [dusk, wick, dusk]"},
	"block methods":   {"blocks: {A: {%s}}", "make: 2; cell: 3; draw: [dusk/wick]"},
	"block trim":      {"blocks: {A: {%s}}", "make: 2; cell: 3; draw: [dusk/wick]"},
	"block draw":      {"blocks: {A: {%s}}", "make: 2; cell: 3"},
	"methods":         {"blocks: {A: {make: 2, cell: 3, draw: [dusk/wick], methods: {%s}}}", ""},
	"piece":           {"pieces: [{%s}]", "cut: 2; need: 1; fabric: dusk"},
	"piece unit":      {"pieces: [{%s}]", "finished: 2; need: 1; fabric: dusk"},
	"piece method":    {"pieces: [{%s}]", "unit: half-square; finished: 2; need: 1; fabric: dusk"},
	"piece trim":      {"pieces: [{%s}]", "unit: half-square; finished: 2; need: 1; fabric: dusk"},
	"piece finished":  {"pieces: [{%s}]", "need: 1; fabric: dusk"},
	"piece each":      {"blocks: {A: {make: 1, pieces: [{%s}]}}", "cut: 2; fabric: dusk"},
	"piece fabrics":   {"pieces: [{%s}]", "unit: half-square; finished: 2; need: 1"},
	"piece mix":       {"pieces: [{%s}]", "cut: 2; need: 1"},
	"piece strips":    {"pieces: [{%s}]", "unit: strip-set; need: 1; segment: 2"},
	"piece segment":   {"pieces: [{%s}]", "unit: strip-set; need: 1; strips: [{finished: 1, fabric: wick}, {finished: 2, fabric: dusk}]"},
	"strip":           {stripSet, "finished: 2; fabric: dusk"},
	"strip mix":       {stripSet, "finished: 2"},
	"setting":         {"setting: {%s}", "on-point: 3 x 4; sides: dusk; block: 9"},
	"sashing":         {"sashing: {%s}", "blocks: 3 x 4; block: 9; width: 2; fabric: dusk"},
	"sashing mix":     {"sashing: {%s}", "blocks: 3 x 4; block: 9; width: 2"},
	"border":          {"borders: [{%s}]", "width: 2; fabric: dusk; around: 40"},
	"border mix":      {"borders: [{%s}]", "width: 2; around: 40"},
	"binding":         {"finished: 54 x 66\nbinding: {%s}", "fabric: dusk"},
	"binding mix":     {"finished: 54 x 66\nbinding: {%s}", ""},
	"backing":         {"finished: 54 x 66\nbacking: {%s}", "fabric: dusk"},
	"backing mix":     {"finished: 54 x 66\nbacking: {%s}", ""},
	"batting":         {"finished: 54 x 66\nbatting: {%s}", ""},
	"allow":           {"allow: {%s}", ""},
	"bags":            {"bags: {%s}", ""},
	"labels":          {"labels: {%s}", "columns: 2; rows: 5; width: 66 mm; height: 33 mm; left: 7 mm; top: 10 mm; step-across: 66 mm; step-down: 38.1 mm"},
	"labels stock":    {"labels: {%s}", ""},
	"plan's claims":   {"claims: {%s}", ""},
	"fabric's claims": {"fabrics: {dusk: {claims: {%s}}, wick: {}, ember: {}}", ""},
	"block's claims":  {"blocks: {A: {make: 2, pieces: [{cut: 2, each: 1, fabric: dusk}], claims: {%s}}}", ""},
	"piece's claims":  {"pieces: [{cut: 2, need: 1, fabric: dusk, claims: {%s}}]", ""},
}

// around is a plan with a key's example in it.
func around(table string, k Key) string {
	h, ok := hosts[table+" "+k.Name]
	if !ok {
		h = hosts[table]
	}
	keys := []string{k.Name + ": " + k.Example}
	for _, b := range strings.Split(h.base, "; ") {
		if name, _, _ := strings.Cut(b, ":"); b != "" && name != k.Name {
			keys = append(keys, b)
		}
	}
	text := wholePlan(strings.Replace(h.frame, "%s", strings.Join(keys, ", "), 1))
	return strings.Replace(text, "mixes: {night: [", "mixes: {nightprints: [", 1)
}

// TestTables: every key is described, and its example is right where it stands.
func TestTables(t *testing.T) {
	names := map[string]bool{}
	for _, table := range Tables() {
		names[table.Name] = true
	}
	for _, table := range Tables() {
		if table.Doc == "" || hosts[table.Name].frame == "" {
			t.Errorf("%s is not described or has no host here", table.Name)
		}
		seen := map[string]bool{}
		for _, k := range table.Keys {
			if !strings.HasSuffix(k.Doc, ".") || k.Example == "" || expectations[k.Kind] == "" && len(k.Choices) == 0 {
				t.Errorf("%s, %s: not described: %+v", table.Name, k.Name, k)
			}
			if seen[k.Name] || k.Of != "" && !names[k.Of] {
				t.Errorf("%s, %s: written twice, or no table %q", table.Name, k.Name, k.Of)
			}
			seen[k.Name] = true
			text := around(table.Name, k)
			if _, ps := Read("p", []byte(text)); len(ps) > 0 {
				t.Errorf("%s, %s: its example gives faults:\n%v\nof:\n%s", table.Name, k.Name, ps.Error(), text)
			}
		}
	}
}

// TestStated: a key that is written is known as such, with its place.
func TestStated(t *testing.T) {
	p := mustRead(t, fmt.Sprintf(hosts["binding"].frame, "fabric: dusk, tail: 8")+"\nplan: P\nfabrics: {dusk: {}}")
	if b := p.Binding; !b.Stated("tail") || b.Stated("strip") || b.Place("tail") != (Pos{File: "test.yaml", Line: 2, Col: 31}) {
		t.Errorf("keys %v", b.Keys)
	}
}

func TestNearest(t *testing.T) {
	names := []string{"dusk", "wick", "nightprints"}
	for word, want := range map[string]string{
		"dsk": "dusk", "Dusk": "dusk", "duks": "dusk", "wik": "wick", "night": "nightprints",
		"nightprint": "nightprints", "x": "", "plum": "", "": "", strings.Repeat("d", 5000): "",
	} {
		if got := Nearest(word, names); got != want {
			t.Errorf("Nearest(%q) = %q, want %q", word, got, want)
		}
	}
}
