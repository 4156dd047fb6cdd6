package sheets_test

import (
	"flag"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"cutbinder/layout/page"
	"cutbinder/sheets"
)

var update = flag.Bool("update", false, "write the golden pages")

// A fabric's sheet as plain data, item by item: what a change of the engine or
// of the sheet moves is seen here, and read in the diff.
func TestGoldenFabricSheet(t *testing.T) {
	const name = "../testdata/pages/three-lines-fabric.txt"
	doc := binder(t, samplePlans()["three-lines.yaml"], sheets.Options{Only: []sheets.Part{sheets.Fabrics}})
	var b strings.Builder
	for _, p := range doc.Pages {
		b.WriteString(p.String())
	}
	if *update {
		if err := os.WriteFile(name, []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), b.String()); diff != "" {
		t.Errorf("%s (-want +got):\n%s", name, diff)
	}
}

// Every part leads somewhere: links name anchors that stand on a page.
func TestLinksLeadSomewhere(t *testing.T) {
	for name, q := range samplePlans() {
		doc := binder(t, q, sheets.Options{})
		anchors := map[string]bool{}
		for _, p := range doc.Pages {
			for _, it := range p.Items {
				if a, ok := it.(page.Anchor); ok {
					anchors[a.Name] = true
				}
			}
		}
		links := 0
		for _, p := range doc.Pages {
			for _, it := range p.Items {
				if l, ok := it.(page.Link); ok {
					links++
					if !anchors[l.To] {
						t.Errorf("%s, page %s: a link to %q, which is nowhere", name, p.Label, l.To)
					}
				}
			}
		}
		if links == 0 {
			t.Errorf("%s: no links", name)
		}
	}
}
