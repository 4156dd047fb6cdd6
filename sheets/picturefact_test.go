package sheets_test

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"

	"cutbinder/layout/page"
)

var pictureBefore = regexp.MustCompile(`from picture \d+$`)

// uncontinued finds a picture that says it is continued where no picture says that
// it continues it, or the other way round.
func uncontinued(pages []page.Page) string {
	waits := ""
	for _, p := range pages {
		for _, words := range texts(p, "aside") {
			switch from := pictureBefore.FindString(words); {
			case from != "" && waits == "":
				return fmt.Sprintf("page %s goes on %s, which doesn't say so", p.Label, from)
			case from != "":
				waits = ""
			case strings.HasPrefix(words, "continued"):
				waits = p.Label
			}
		}
	}
	if waits != "" {
		return "page " + waits + " says that its picture is continued, and it isn't"
	}
	return ""
}

// nothingCut finds a picture that goes on overleaf with nothing but what is left at
// the cloth's end, though a strip of the page before could have gone with it.
func nothingCut(pages []page.Page) string {
	count := func(p page.Page, mark string) (n int) {
		for _, it := range p.Items {
			if _, isText := it.(page.Text); strings.HasPrefix(it.What(), mark) && (isText || mark == "piece ") {
				n++
			}
		}
		return n
	}
	for i, p := range pages {
		goesOn := slices.ContainsFunc(texts(p, "aside"), func(s string) bool { return pictureBefore.MatchString(s) })
		if goesOn && count(p, "piece ") == 0 && count(pages[i-1], "cut ") > 2 { // the first cut is the squaring
			return "page " + p.Label + " shows nothing but what is left over"
		}
	}
	return ""
}

// unmirrored finds a sheet with a picture for the left hand that doesn't say so.
func unmirrored(pages []page.Page) string {
	pictured, said := map[string]string{}, map[string]bool{}
	for _, p := range pages {
		sheet := sheetOf(p)
		if len(texts(p, "grain words")) > 0 {
			pictured[sheet] = p.Label
		}
		said[sheet] = said[sheet] || strings.Contains(strings.Join(texts(p, "aside"), " "), "mirrored")
	}
	for _, sheet := range slices.Sorted(maps.Keys(pictured)) {
		if !said[sheet] {
			return "page " + pictured[sheet] + " is mirrored and doesn't say so"
		}
	}
	return ""
}

// headAlone finds a fabric's head that stands on a page without its first picture,
// or what else may come before that.
func headAlone(pages []page.Page) string {
	for _, p := range pages {
		head, more := false, false
		for _, it := range p.Items {
			switch kind, _, _ := strings.Cut(it.What(), " "); kind {
			case "measure":
				head = true
			case "piece", "unused", "short":
				more = true
			}
		}
		if head && !more {
			return "page " + p.Label + " holds a fabric's head alone"
		}
	}
	return ""
}
