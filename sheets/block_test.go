package sheets_test

import (
	"fmt"
	"strings"
	"testing"

	"cutbinder/fonts"
	"cutbinder/layout/page"
	"cutbinder/layout/picture"
	"cutbinder/sheets"
)

// Every patch of a drawn block lies in just one of the block's bags where bags are
// parted by block and size.
func TestEveryPatchHasItsBag(t *testing.T) {
	drawn := 0
	for name, q := range samplePlans() {
		for _, b := range q.Plan.Blocks {
			pic := picture.Block(q.Plan, b)
			if pic == nil {
				continue
			}
			drawn++
			in := make([]int, len(pic.Patches))
			for i := range q.Bags.Bags {
				g := &q.Bags.Bags[i]
				if g.Places[0].Block != b.ID {
					continue
				}
				marked, any := sheets.InBag(q.Plan, pic, g)
				if !any {
					t.Errorf("%s: bag %d goes nowhere in block %s", name, g.Number, b.ID)
				}
				for k, m := range marked {
					if m {
						in[k]++
					}
				}
			}
			for k, n := range in {
				if n != 1 {
					t.Errorf("%s: patch %d of block %s, %+v, lies in %d bags", name, k, b.ID, pic.Patches[k], n)
				}
			}
		}
	}
	if drawn < 10 {
		t.Errorf("only %d blocks of the samples are drawn", drawn)
	}
}

// The blocks' pages show each drawn block once with all its patches, and each of
// its bags; labels show where their pieces go.
func TestBlocksArePrinted(t *testing.T) {
	for _, name := range []string{"star.yaml", "sampler.yaml", "log-cabin.yaml"} {
		q := samplePlans()[name]
		marks := map[string]int{}
		for _, p := range binder(t, q, sheets.Options{}).Pages {
			for _, it := range p.Items {
				if _, ok := it.(page.Polygon); ok {
					marks[it.What()]++
				}
			}
		}
		for _, b := range q.Plan.Blocks {
			pic := picture.Block(q.Plan, b)
			if got := marks["block "+b.ID]; got != len(pic.Patches) {
				t.Errorf("%s: block %s shows %d patches of %d", name, b.ID, got, len(pic.Patches))
			}
			for i := range q.Bags.Bags {
				g := &q.Bags.Bags[i]
				if g.Places[0].Block != b.ID {
					continue
				}
				here := fmt.Sprintf("block %s bag %d here", b.ID, g.Number)
				marked, _ := sheets.InBag(q.Plan, pic, g)
				if want := strings.Count(fmt.Sprint(marked), "true"); marks[here] != want {
					t.Errorf("%s: %q marks %d patches, want %d", name, here, marks[here], want)
				}
			}
		}
	}
}

// Pictures that stand alone are as sound as pages, and hold what they should.
func TestPicturesAlone(t *testing.T) {
	o := sheets.Options{Fonts: fonts.Default()}
	for name, q := range samplePlans() {
		for i := range q.Fabrics {
			pic := sheets.FabricPicture(q, o, q.Fabrics[i].Fabric.ID)
			facts(t, []page.Page{pic.Page})
			if n := count([]page.Page{pic.Page}, func(it page.Item) bool { return strings.HasPrefix(it.What(), "piece ") }); n == 0 {
				t.Errorf("%s: the picture of %s shows no piece", name, q.Fabrics[i].Fabric.ID)
			}
		}
		for _, b := range q.Plan.Blocks {
			if pic := sheets.BlockPicture(q, o, b.ID); pic != nil {
				facts(t, []page.Page{pic.Page})
			} else if b.Drawing != nil {
				t.Errorf("%s: block %s has no picture", name, b.ID)
			}
		}
		if pic, _ := sheets.QuiltPicture(q, o); pic != nil {
			facts(t, []page.Page{pic.Page})
		} else if len(q.Plan.Quilt) > 0 {
			t.Errorf("%s: the quilt has no picture", name)
		}
	}
	if sheets.FabricPicture(samplePlans()["star.yaml"], o, "none") != nil || sheets.BlockPicture(samplePlans()["star.yaml"], o, "none") != nil {
		t.Error("there is a picture of what isn't in the plan")
	}
}

// On a block's page a list of fabrics breaks between them, not in a name.
func TestBlockFabricsWhole(t *testing.T) {
	listed := 0
	for _, p := range binder(t, samplePlans()["lantern-row.yaml"], sheets.Options{Only: []sheets.Part{sheets.Blocks}}).Pages {
		for _, line := range texts(p, "sources") {
			if !strings.Contains(line, ",") {
				continue // one fabric, or the last of several
			}
			listed++
			last := line[len(line)-1]
			if last != ',' && (last < '0' || last > '9') {
				t.Errorf("page %s: a line ends in %q", p.Label, line)
			}
		}
	}
	if listed == 0 {
		t.Error("no lists of fabrics")
	}
}
