package sheets_test

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/page"
	"cutbinder/layout/plan"
	"cutbinder/sheets"
)

// complaints are what a maker would say of a binder's pages beyond what page.Check
// finds: the first of it, or "".
func complaints(q *sheets.Quilt, o sheets.Options, pages []page.Page) string {
	found := []string{uncontinued(pages), unmeasured(q, pages), unkeyed(pages), idleKey(pages), cutAside(pages), uneven(pages), nothingCut(pages), headingLast(pages), headAlone(pages)}
	if q.Plan.Hand == plan.LeftHand {
		found = append(found, unmirrored(pages))
	}
	if !o.Large { // in large print two rows may be too high to be kept together
		found = append(found, orphan(pages), safetySplit(pages), tallySplit(pages))
	}
	for _, what := range found {
		if what != "" {
			return what
		}
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
var rowMark = regexp.MustCompile(`^(order|shopping|finishing|shelf|bag|block bag \S+|place|short|tally row|dye record|wash) (.+)$`)

// A tablePart is what stands of a table on one page: the ways its rows are told
// apart.
type tablePart struct {
	page page.Page
	rows []string
}

// tableParts are the parts of all tables, each told by its sheet and its kind.
func tableParts(pages []page.Page) (tables []string, parts map[string][]tablePart) {
	parts = map[string][]tablePart{}
	for _, p := range pages {
		sheet := sheetOf(p)
		for _, it := range p.Items {
			m := rowMark.FindStringSubmatch(it.What())
			if _, isText := it.(page.Text); m == nil || !isText || m[2] == "badge" || m[2] == "number" {
				continue
			}
			name := sheet + ": " + m[1]
			all := parts[name]
			if len(all) == 0 {
				tables = append(tables, name)
			}
			if n := len(all); n == 0 || all[n-1].page.Label != p.Label {
				all = append(all, tablePart{page: p})
			}
			if last := &all[len(all)-1]; !slices.Contains(last.rows, m[2]) {
				last.rows = append(last.rows, m[2])
			}
			parts[name] = all
		}
	}
	return tables, parts
}

// sheetOf is the sheet that a page belongs to.
func sheetOf(p page.Page) string {
	heads := texts(p, "header")
	if len(heads) == 0 {
		return ""
	}
	sheet, _, _ := strings.Cut(heads[0], " · ")
	return sheet
}

// orphan finds a table of which one row stands alone on its first or last page,
// unless it or the rows on the next page are so high that both are too much for a
// page, or another goes on beside it.
func orphan(pages []page.Page) string {
	tables, parts := tableParts(pages)
	for _, name := range tables {
		all := parts[name]
		if len(all) == 1 {
			continue
		}
		last := len(all) - 1
		for _, ends := range [][2]tablePart{{all[0], all[1]}, {all[last], all[last-1]}} {
			if part := ends[0]; len(part.rows) == 1 && !goesOn(part) && !high(part) && !high(ends[1]) {
				return fmt.Sprintf("page %s has one row of %s", part.page.Label, name)
			}
		}
	}
	return ""
}

// goesOn says whether boxes of another row stand on the page of a part with one row:
// of a row that is too high for the page before.
func goesOn(part tablePart) bool {
	return slices.ContainsFunc(part.page.Items, func(it page.Item) bool {
		_, isBox := it.(page.Rect)
		row, ofTally := strings.CutPrefix(it.What(), "tally ")
		return isBox && ofTally && !strings.HasPrefix(row, part.rows[0]+" ")
	})
}

// high says whether the boxes to tick of a part with one row, or the fabrics that
// are named in it, take more than a quarter of the page, or it lists two kinds of
// pieces: a bag that goes on from the page before.
func high(part tablePart) bool {
	var all page.Box
	kinds := 0
	for _, it := range part.page.Items {
		if text, ok := it.(page.Text); ok && strings.HasSuffix(text.What(), " "+part.rows[0]) && strings.HasPrefix(text.Words(), "(") {
			kinds++
		}
		if strings.HasPrefix(it.What(), "tally "+part.rows[0]+" ") || it.What() == "sources" {
			if all.W == 0 {
				all = it.Bounds()
			}
			all = all.Union(it.Bounds())
		}
	}
	return kinds > 1 || all.H > part.page.Live.H/4
}

// tallySplit finds a tally of few sizes and boxes that goes over a page.
func tallySplit(pages []page.Page) string {
	tables, parts := tableParts(pages)
	for _, name := range tables {
		rows, boxes := 0, 0
		for _, part := range parts[name] {
			rows += len(part.rows)
			for _, it := range part.page.Items {
				if _, isRect := it.(page.Rect); isRect && strings.HasPrefix(it.What(), "tally ") {
					boxes++
				}
			}
		}
		if all := parts[name]; strings.HasSuffix(name, ": tally row") && len(all) > 1 && rows <= 16 && boxes <= 400 {
			return fmt.Sprintf("page %s ends in the middle of %s", all[0].page.Label, name)
		}
	}
	return ""
}

var noted = regexp.MustCompile(`cut strips? (\d+)(?:–(\d+))? at `)

// unmeasured finds a strip whose height stands neither beside it nor in a note.
func unmeasured(q *sheets.Quilt, pages []page.Page) string {
	said := map[string]int{}
	for _, p := range pages {
		sheet := sheetOf(p)
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
			if f.Cloths[j].Unused() || f.Cloths[j].Root.Dir != cutting.Across || drawnBefore(f, j) {
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

// unkeyed finds a sheet with hatching that says nowhere what it means.
func unkeyed(pages []page.Page) string {
	hatched, said := map[string]string{}, map[string]bool{}
	for _, p := range pages {
		sheet := sheetOf(p)
		for _, it := range p.Items {
			switch it.What() {
			case "leftover", "waste":
				hatched[sheet] = p.Label
			case "key", "aside":
				text, ok := it.(page.Text)
				said[sheet] = said[sheet] || ok && (strings.Contains(text.Words(), "wide: left") || strings.Contains(text.Words(), "wide hatching"))
			}
		}
	}
	for _, sheet := range slices.Sorted(maps.Keys(hatched)) {
		if !said[sheet] {
			return "page " + hatched[sheet] + " is hatched, and " + sheet + " doesn't say what that means"
		}
	}
	return ""
}

// keyed is a letter in a key.
var keyed = regexp.MustCompile(`\b([A-Z]+) = `)

// idleKey finds a letter that is explained below a picture in which it doesn't stand.
func idleKey(pages []page.Page) string {
	for _, p := range pages {
		used := map[string]bool{}
		for _, it := range p.Items {
			if text, ok := it.(page.Text); ok && strings.HasPrefix(it.What(), "key ") {
				used[text.Words()] = true
			}
		}
		for _, key := range texts(p, "key") {
			for _, m := range keyed.FindAllStringSubmatch(key, -1) {
				if !used[m[1]] {
					return "page " + p.Label + " explains the letter " + m[1] + ", which no piece bears"
				}
			}
		}
	}
	return ""
}

// cutAside finds words beside the heading of steps that are cut short.
func cutAside(pages []page.Page) string {
	for _, p := range pages {
		for _, words := range texts(p, "aside") {
			if strings.Contains(words, "frees") && strings.HasSuffix(words, "…") {
				return "page " + p.Label + " says " + words
			}
		}
	}
	return ""
}

// headingLast finds a heading that nothing stands under on its page.
func headingLast(pages []page.Page) string {
	for _, p := range pages {
		lowest := map[bool]length.Length{}
		for _, it := range p.Items {
			switch it.What() {
			case "footer", "footer rule", "page number", "print check", "thumb index", "heading rule", "aside":
			default:
				heading := it.What() == "heading"
				lowest[heading] = max(lowest[heading], it.Bounds().Bottom())
			}
		}
		if lowest[true] > lowest[false] {
			return "page " + p.Label + " ends on a heading"
		}
	}
	return ""
}

// uneven finds a drawn figure in a table that doesn't stand on a line with other
// words of its row.
func uneven(pages []page.Page) string {
	rows := map[string]string{"order page": "order ", "bag number": "bag "}
	for _, p := range pages {
		lines := map[string]bool{}
		for _, it := range p.Items {
			if text, ok := it.(page.Text); ok && rows[it.What()] == "" {
				table, _, _ := strings.Cut(it.What(), " ")
				lines[fmt.Sprint(table, " ", text.Base.Y)] = true
			}
		}
		for _, it := range p.Items {
			text, ok := it.(page.Text)
			if table := rows[it.What()]; ok && table != "" && !lines[fmt.Sprint(table, text.Base.Y)] {
				return fmt.Sprintf("page %s: %s %s is off its line", p.Label, it.What(), text.Words())
			}
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
	at := func(mark string, y length.Length) page.Item {
		return page.Rect{Mark: page.Mark(mark), Box: page.Box{Y: y, W: 1, H: 1}}
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
		{"a tally on a page", tallySplit([]page.Page{of("1", text("tally row a", "x"), text("tally row b", "x"))}), false},
		{"a tally on two", tallySplit([]page.Page{of("1", text("tally row a", "x"), text("tally row b", "x")), of("2", text("tally row c", "x"), text("tally row d", "x"))}), true},
		{"both ends say so", uncontinued([]page.Page{of("1", text("aside", "continued in picture 2 of 2")), of("2", text("aside", "picture 2 of 2, continued from picture 1"))}), false},
		{"only the first does", uncontinued([]page.Page{of("1", text("aside", "continued"))}), true},
		{"only the second does", uncontinued([]page.Page{of("2", text("aside", "picture 2 of 2, continued from picture 1"))}), true},
		{"hatching with a key", unkeyed([]page.Page{of("1", text("header", "FABRIC 1"), text("waste", "")), of("2", text("header", "FABRIC 1"), text("key", "A = 2"), text("key", "fine: squared · wide: left · crossed: waste"))}), false},
		{"hatching with another's key", unkeyed([]page.Page{of("1", text("header", "FABRIC 1"), text("waste", "")), of("2", text("header", "FABRIC 2"), text("aside", "wide hatching: left over"))}), true},
		{"a letter that a piece bears", idleKey([]page.Page{of("1", text("key a-1", "B"), text("key", "B = 3½\u00a0×\u00a03½"))}), false},
		{"a letter of another page", idleKey([]page.Page{of("1", text("key a-1", "B")), of("2", text("key", "B = 3½\u00a0×\u00a03½"))}), true},
		{"an aside in full", cutAside([]page.Page{of("1", text("aside", "cut 2 frees strip 2, above it"))}), false},
		{"an aside cut short", cutAside([]page.Page{of("1", text("aside", "cut 2 frees strip 2, abo…"))}), true},
		{"a heading over text", headingLast([]page.Page{of("1", at("heading", 10), at("step", 20), at("footer", 99))}), false},
		{"a heading at the foot", headingLast([]page.Page{of("1", at("step", 10), at("heading", 20), at("aside", 21), at("footer", 99))}), true},
		{"a head with its picture", headAlone([]page.Page{of("1", text("measure box", ""), text("piece a-1 #1", ""))}), false},
		{"a head, and its picture overleaf", headAlone([]page.Page{of("1", text("measure box", "")), of("2", text("piece a-1 #1", ""))}), true},
		{"figure on its line", uneven([]page.Page{of("1", text("order a", "x"), text("order page", "7"))}), false},
		{"figure below its line", uneven([]page.Page{of("1", text("order a", "x"), page.Text{Mark: "order page", Base: page.Point{Y: 1}})}), true},
		{"a strip goes with what is left", nothingCut([]page.Page{of("1", text("cut 1", "1"), text("cut 2", "2"), text("cut 3", "3")), of("2", text("aside", "continued from picture 1"), text("piece a", ""))}), false},
		{"only what is left", nothingCut([]page.Page{of("1", text("cut 1", "1"), text("cut 2", "2"), text("cut 3", "3")), of("2", text("aside", "continued from picture 1"), text("leftover", ""))}), true},
		{"mirrored and says so", unmirrored([]page.Page{of("1", text("header", "FABRIC 1"), text("grain words", "grain"), text("aside", "mirrored for the left hand"))}), false},
		{"mirrored and silent", unmirrored([]page.Page{of("1", text("header", "FABRIC 1"), text("grain words", "grain"), text("aside", "fold in the middle"))}), true},
		{"safety text on a page", safetySplit([]page.Page{of("1", text("defers", "x"), text("dye limits", "x"))}), false},
		{"safety text on two", safetySplit([]page.Page{of("1", text("defers", "x")), of("2", text("dye limits", "x"))}), true},
	} {
		if found := tt.got != ""; found != tt.found {
			t.Errorf("%s: %q", tt.name, tt.got)
		}
	}
}
