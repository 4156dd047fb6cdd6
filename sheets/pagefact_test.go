package sheets_test

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"cutbinder/layout/cutting"
	"cutbinder/layout/page"
	"cutbinder/sheets"
)

// complaints are what a maker would say of a binder's pages beyond what page.Check
// finds: the first of it, or "".
func complaints(q *sheets.Quilt, o sheets.Options, pages []page.Page) string {
	for _, what := range []string{orphan(pages), uncontinued(pages), unmeasured(q, pages)} {
		if what != "" {
			return what
		}
	}
	if !o.Large {
		return safetySplit(pages)
	}
	return ""
}

// texts are the words on a page that bear a mark.
func texts(p page.Page, mark string) []string {
	var all []string
	for _, it := range p.Items {
		if text, ok := it.(page.Text); ok && text.What() == mark {
			all = append(all, text.Words())
		}
	}
	return all
}

// rowMark is the mark of what stands in a table's row, up to what tells the row
// from others: the rows of one table have the same first word or two.
var rowMark = regexp.MustCompile(`^(order|shopping|finishing|shelf|bag|block bag|place|short|tally row|dye record|wash) (.+)$`)

// orphan finds a table of which one row stands alone on its first or last page.
func orphan(pages []page.Page) string {
	type table struct{ kind, sheet string }
	var rows = map[table][]map[string]bool{}
	var last = map[table]int{}
	var where = map[table][]string{}
	for n, p := range pages {
		sheet := ""
		if heads := texts(p, "header"); len(heads) > 0 {
			sheet, _, _ = strings.Cut(heads[0], " · ")
		}
		for _, it := range p.Items {
			m := rowMark.FindStringSubmatch(it.What())
			if _, isText := it.(page.Text); m == nil || !isText || m[2] == "badge" || m[2] == "number" {
				continue
			}
			t := table{m[1], sheet}
			if at, ok := last[t]; !ok || at != n {
				rows[t] = append(rows[t], map[string]bool{})
				where[t] = append(where[t], p.Label)
				last[t] = n
			}
			rows[t][len(rows[t])-1][m[2]] = true
		}
	}
	for t, on := range rows {
		if n := len(on); n > 1 {
			for _, i := range []int{0, n - 1} {
				if len(on[i]) == 1 {
					return fmt.Sprintf("page %s has one row of table %q of %q", where[t][i], t.kind, t.sheet)
				}
			}
		}
	}
	return ""
}

// uncontinued finds a picture that says it is continued where no picture says that
// it continues it, or the other way round.
func uncontinued(pages []page.Page) string {
	waits := ""
	for _, p := range pages {
		for _, words := range texts(p, "aside") {
			if _, from, ok := strings.Cut(words, ", continued from "); ok {
				if waits == "" {
					return fmt.Sprintf("page %s continues %s, which doesn't say so", p.Label, from)
				}
				waits = ""
			}
			if strings.HasPrefix(words, "continued") {
				waits = p.Label
			}
		}
	}
	if waits != "" {
		return "page " + waits + " says that its picture is continued, and it isn't"
	}
	return ""
}

var noted = regexp.MustCompile(`cut strips? (\d+)(?:–(\d+))? at `)

// unmeasured finds a strip whose height stands neither beside it nor in a note.
func unmeasured(q *sheets.Quilt, pages []page.Page) string {
	said := map[string]int{}
	for _, p := range pages {
		sheet := ""
		if heads := texts(p, "header"); len(heads) > 0 {
			sheet, _, _ = strings.Cut(heads[0], " · ")
		}
		said[sheet] += len(texts(p, "strip"))
		for _, m := range noted.FindAllStringSubmatch(strings.ReplaceAll(strings.Join(texts(p, "key"), " "), "– ", "–"), -1) {
			first, last := atoi(m[1]), atoi(m[1])
			if m[2] != "" {
				last = atoi(m[2])
			}
			said[sheet] += last - first + 1
		}
	}
	for i := range q.Fabrics {
		f := &q.Fabrics[i]
		sheet := strings.ToUpper(fmt.Sprintf("Fabric %d of %d", i+1, len(q.Fabrics)))
		got, printed := said[sheet]
		if !printed {
			continue // all of it is cut
		}
		want := 0
		for j := range f.Cloths {
			if f.Cloths[j].Unused() || f.Cloths[j].Root.Dir != cutting.Across {
				continue
			}
			for _, s := range f.Cloths[j].Root.Parts {
				if s.Number > 0 {
					want++
				}
			}
		}
		if got < want {
			return fmt.Sprintf("%s: %d heights for %d strips", sheet, got, want)
		}
	}
	return ""
}

func atoi(s string) int {
	n := 0
	for _, r := range s {
		n = n*10 + int(r-'0')
	}
	return n
}

// safetySplit finds safety text that goes over a page.
func safetySplit(pages []page.Page) string {
	where := map[string]bool{}
	for _, p := range pages {
		for _, mark := range []string{"defers", "dye outcome", "dye limits"} {
			if len(texts(p, mark)) > 0 {
				where[p.Label] = true
			}
		}
	}
	if len(where) > 1 {
		return fmt.Sprintf("the safety text stands on %d pages", len(where))
	}
	return ""
}

// What is asked of every page must be able to find fault.
func TestComplaintsFind(t *testing.T) {
	text := func(mark, words string) page.Item {
		return page.Text{Mark: page.Mark(mark), Runs: []page.Run{{S: words}}}
	}
	of := func(label string, items ...page.Item) page.Page { return page.Page{Label: label, Items: items} }
	for _, tt := range []struct {
		name  string
		got   string
		found bool
	}{
		{"two rows and two", orphan([]page.Page{of("1", text("order a", "x"), text("order b", "x")), of("2", text("order c", "x"), text("order d", "x"))}), false},
		{"one row at the foot", orphan([]page.Page{of("1", text("order a", "x")), of("2", text("order c", "x"), text("order d", "x"))}), true},
		{"one row at the head", orphan([]page.Page{of("1", text("order a", "x"), text("order b", "x")), of("2", text("order c", "x"))}), true},
		{"both ends say so", uncontinued([]page.Page{of("1", text("aside", "continued in picture 2 of 2")), of("2", text("aside", "picture 2 of 2, continued from picture 1"))}), false},
		{"only the first does", uncontinued([]page.Page{of("1", text("aside", "continued"))}), true},
		{"only the second does", uncontinued([]page.Page{of("2", text("aside", "picture 2 of 2, continued from picture 1"))}), true},
		{"safety text on a page", safetySplit([]page.Page{of("1", text("defers", "x"), text("dye limits", "x"))}), false},
		{"safety text on two", safetySplit([]page.Page{of("1", text("defers", "x")), of("2", text("dye limits", "x"))}), true},
	} {
		if found := tt.got != ""; found != tt.found {
			t.Errorf("%s: %q", tt.name, tt.got)
		}
	}
}
