package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"testing"
)

// FuzzMake: whatever stands in a plan, it is printed or told, and never both.
func FuzzMake(f *testing.F) {
	f.Add([]byte("plan: P\nfabrics: {blue: {}}\npieces: [{cut: 4 1/2, need: 4, fabric: blue}]\n"))
	f.Add([]byte("plan: P\nunits: metric\nfabrics: {a: {have: 3 fat quarters}, b: {one-way: yes}}\nmixes: {m: [a, b]}\nfinished: 90\nblocks: {A: {make: 3, finished: 30, pieces: [{unit: half-square, finished: 10, each: 4, fabrics: [a, m]}]}}\nbinding: {fabric: b, bias: yes}\nbacking: {fabric: b}\nallow: {spare: 5%}\nlabels: {stock: plain}\n"))
	f.Add([]byte("plan: P\nfabrics: {a: {}, b: {}}\nblocks: {A: {cell: 3, draw: [a b/a, a/\\b <]}}\nquilt: [A A>, A< A>>]\nsetting: {on-point: 2 x 2, sides: a, block: 9}\n"))
	f.Add(newPlan)
	f.Fuzz(func(t *testing.T, text []byte) {
		if len(text) > 4000 {
			return
		}
		dir := t.TempDir()
		name := filepath.Join(dir, "p.yaml")
		if err := os.WriteFile(name, text, 0o644); err != nil {
			t.Fatal(err)
		}
		var out, told bytes.Buffer
		a := &app{in: bytes.NewReader(nil), out: &out, err: &told}
		code := a.run(context.Background(), []string{"cutbinder", "make", name, "--limit", "5ms"})
		pdf, err := os.ReadFile(filepath.Join(dir, "p.pdf"))
		switch {
		case code == exitDone && (err != nil || !bytes.HasPrefix(pdf, []byte("%PDF-"))):
			t.Errorf("done, but the file begins %.20q (%v)", pdf, err)
		case code == exitFault && (err == nil || told.Len() == 0):
			t.Errorf("a fault, but a file is there (%v) or nothing is told: %s", err, &told)
		case code != exitDone && code != exitFault:
			t.Errorf("code %d: %s", code, &told)
		}
	})
}
