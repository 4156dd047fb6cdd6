package main

import (
	"context"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"cutbinder/fonts"
	"cutbinder/layout/cutting"
	"cutbinder/layout/pack"
	"cutbinder/layout/page"
	"cutbinder/layout/plan"
	"cutbinder/sheets"
)

// galleryLine is a line of the Makefile that draws a page of a binder.
var galleryLine = regexp.MustCompile(`cutbinder picture (\S+) --page ([0-9]+) .*testdata/gallery/([a-z-]+)\.png`)

// shows is what stands on the pages that README.md shows.
var shows = map[string][]string{
	"cover":        {"PRINT CHECK", "HOW TO USE THIS BINDER"},
	"shopping":     {"TO BUY", "BINDING, BACKING, BATTING"},
	"fabric":       {"STRIPS, TO SCALE", "CUT IN THIS ORDER", "TALLY"},
	"fat-quarters": {"FAT QUARTER 1 OF 3", "TALLY"},
	"blocks":       {"BLOCKS", "make 1"},
	"labels":       {"bag 1 of ", "bag 9 of "},
}

// TestGallery: the pages that the Makefile names are those that README.md speaks of,
// wherever a change of the binder has moved them.
func TestGallery(t *testing.T) {
	root := filepath.FromSlash("../..")
	makefile, err := os.ReadFile(filepath.Join(root, "Makefile"))
	if err != nil {
		t.Fatal(err)
	}
	binders := map[string]page.Document{}
	drawn := galleryLine.FindAllStringSubmatch(strings.ReplaceAll(string(makefile), "$(DEMO)", "testdata/plans/lantern-row.yaml"), -1)
	for _, m := range drawn {
		name, picture := m[1], m[3]
		if _, done := binders[name]; !done {
			binders[name] = binderOf(t, filepath.Join(root, filepath.FromSlash(name)))
		}
		pages := binders[name].Pages
		n, _ := strconv.Atoi(m[2])
		says := func(p page.Page) bool {
			text := p.String()
			return !slices.ContainsFunc(shows[picture], func(words string) bool { return !strings.Contains(text, words) })
		}
		if n < 1 || n > len(pages) || !says(pages[n-1]) {
			t.Errorf("%s: page %d of %s doesn't say %q; page %d does: write that into the Makefile, then make gallery",
				picture, n, name, shows[picture], 1+slices.IndexFunc(pages, says))
		}
	}
	if len(drawn) != len(shows) {
		t.Errorf("the Makefile draws %d pages, README.md shows %d", len(drawn), len(shows))
	}
}

// binderOf is the binder that make prints of a plan.
func binderOf(t *testing.T, name string) page.Document {
	t.Helper()
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	p, problems := plan.Read(name, text)
	if problems.Faulty() {
		t.Fatal(problems)
	}
	q, problems, err := sheets.Work(context.Background(), p, cutting.Options{Effort: int64(usualLimit.Seconds() * pack.EffortPerSecond), Cores: 2})
	if err != nil || problems.Faulty() {
		t.Fatal(problems, err)
	}
	doc, problems := sheets.Binder(q, sheets.Options{Fonts: fonts.Default()})
	if problems.Faulty() {
		t.Fatal(problems)
	}
	return doc
}
