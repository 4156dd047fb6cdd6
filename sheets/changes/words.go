package changes

import (
	"fmt"
	"strings"

	"cutbinder/layout/length"
	"cutbinder/sheets"
	"cutbinder/sheets/bag"
	"cutbinder/sheets/say"
)

// A Matter is what there is to say of one matter: a heading and its lines.
type Matter struct {
	Head  string
	Lines []string
	Paper bool // it is about pages and labels
}

// Words says what differs, matter by matter; there is nothing where nothing does.
func (c *Changes) Words(v say.Voice) (all []Matter) {
	if c.None() {
		return nil
	}
	for _, m := range []Matter{
		{"Buy", c.buyWords(v), false}, {"Cut", c.cutWords(v), false}, {"Bags", c.bagWords(v), false},
		{"Print again", c.printWords(), true}, {"Still good", c.goodWords(), true},
	} {
		if len(m.Lines) > 0 {
			all = append(all, m)
		}
	}
	return all
}

// buyWords says what to buy more or less of.
func (c *Changes) buyWords(v say.Voice) (lines []string) {
	for _, f := range c.Fabrics {
		switch {
		case f.Kind == Gone:
			lines = append(lines, f.Name+": not needed any more")
		case f.Kind == Added && f.Buy > 0:
			lines = append(lines, f.Name+" is new: buy "+v.ToBuy(f.Buy))
		case f.Buy > f.BuyBefore && f.BuyBefore == 0:
			lines = append(lines, fmt.Sprintf("%s: buy %s", f.Name, v.ToBuy(f.Buy)))
		case f.Buy > f.BuyBefore:
			lines = append(lines, fmt.Sprintf("%s: buy %s instead of %s, %s more", f.Name, v.ToBuy(f.Buy), v.ToBuy(f.BuyBefore), v.ToBuy(f.Buy-f.BuyBefore)))
		case f.Buy < f.BuyBefore:
			lines = append(lines, fmt.Sprintf("%s: %s will do instead of %s", f.Name, v.ToBuy(f.Buy), v.ToBuy(f.BuyBefore)))
		}
		if f.ShortNow != f.ShortBefore && f.ShortNow > 0 {
			lines = append(lines, fmt.Sprintf("%s: what is on the shelf is short of %s", f.Name, pieces(f.ShortNow)))
		}
	}
	if now, was := batting(c.New), batting(c.Old); now != was && now != (length.Size{}) {
		line := "batting: " + v.Size(now) + " " + v.Unit()
		if was != (length.Size{}) {
			line += " instead of " + v.Size(was)
		}
		lines = append(lines, line)
	}
	return lines
}

func batting(q *sheets.Quilt) length.Size {
	z, _ := q.BattingSize()
	return z
}

func pieces(n int) string { return fmt.Sprintf("%d %s", n, say.Plural(n, "piece", "pieces")) }

// cutWords says what to cut more of, to cut again, and what is too many.
func (c *Changes) cutWords(v say.Voice) (lines []string) {
	for _, f := range c.Fabrics {
		if f.Kind == Gone {
			continue
		}
		for _, cut := range f.Cuts {
			lines = append(lines, f.Name+": "+cutWord(v, cut))
		}
		if f.Kind == Changed && f.Laid && len(f.Cuts) == 0 {
			lines = append(lines, f.Name+": the same pieces, cut in another way")
		}
	}
	return lines
}

func cutWord(v say.Voice, cut Cut) string {
	size := v.Size(cut.Size)
	switch {
	case cut.Instead != (length.Size{}):
		return fmt.Sprintf("cut again: %s %s instead of %s %s", say.Count(cut.Now), size, say.Count(cut.Before), v.Size(cut.Instead))
	case cut.Before == 0:
		return fmt.Sprintf("cut %s %s, a new size", say.Count(cut.Now), size)
	case cut.Now == 0:
		return fmt.Sprintf("no %s any more; there were %s", size, say.Count(cut.Before))
	case cut.Now > cut.Before:
		return fmt.Sprintf("cut %s more %s, %s in all", say.Count(cut.Now-cut.Before), size, say.Count(cut.Now))
	}
	return fmt.Sprintf("%s fewer %s, %s in all", say.Count(cut.Before-cut.Now), size, say.Count(cut.Now))
}

// bagWords says what became of bags.
func (c *Changes) bagWords(v say.Voice) (lines []string) {
	for _, b := range c.Bags {
		switch b.Kind {
		case Added:
			lines = append(lines, fmt.Sprintf("bag %d is new, %s: %s", b.Number, b.New.Heading(), rows(v, b.New)))
		case Gone:
			lines = append(lines, fmt.Sprintf("the old bag %d, %s, is not needed any more", b.Before, b.Old.Heading()))
		case Moved:
			lines = append(lines, moved(b))
		default:
			now, before := rows(v, b.New), rows(v, b.Old)
			if now == before { // what they become differs
				now, before = wholeRows(v, b.New), wholeRows(v, b.Old)
			}
			line := fmt.Sprintf("bag %d, %s, now holds %s; before %s", b.Number, b.New.Heading(), now, before)
			if was := b.Old.Heading(); was != b.New.Heading() {
				line += " for " + was
			}
			lines = append(lines, line)
		}
	}
	return lines
}

// moved says that a bag holds the same under another code.
func moved(b Bag) string {
	if b.Before == b.Number {
		return fmt.Sprintf("bag %d holds the same; its code is now %s", b.Number, b.New.Code)
	}
	return fmt.Sprintf("the old bag %d, %s, is now bag %d and holds the same", b.Before, b.New.Heading(), b.Number)
}

// rows is what a bag holds, in one line.
func rows(v say.Voice, b *bag.Bag) string {
	var words []string
	for _, r := range b.Rows {
		word := say.Count(r.Count) + " " + v.Size(r.Cut)
		if part := say.Part(r.Unit, r.Role); part != "" {
			word += " " + part
		}
		if r.Spares > 0 {
			word += " and " + say.Spares(r.Spares)
		}
		words = append(words, word+" from "+v.Shares(r.Fabrics))
	}
	return strings.Join(words, "; ")
}

// wholeRows is what a bag holds with what it becomes, in one line.
func wholeRows(v say.Voice, b *bag.Bag) string {
	var words []string
	for _, r := range b.Rows {
		words = append(words, v.Row(r))
	}
	return strings.Join(words, "; ")
}

// printWords says which pages and labels to print again.
func (c *Changes) printWords() (lines []string) {
	if len(c.Pages) > 0 {
		var numbers []int
		for _, p := range c.Pages {
			numbers = append(numbers, p.Number)
		}
		line := plural(len(numbers), "page", "pages") + " " + runs(numbers)
		if sections := c.sectionWords(); sections != "" {
			line += ": " + sections
		}
		lines = append(lines, line)
	}
	if len(c.Labels) > 0 {
		lines = append(lines, plural(len(c.Labels), "the label of bag", "the labels of bags")+" "+runs(c.Labels))
	}
	if len(c.Out) > 0 {
		lines = append(lines, "take the old "+plural(len(c.Out), "page", "pages")+" "+runs(c.Out)+" out")
	}
	return lines
}

func plural(n int, one, many string) string { return say.Plural(n, one, many) }

// sectionWords names what the pages to print again are.
func (c *Changes) sectionWords() string {
	var names []string
	seen := map[string]bool{}
	for _, p := range c.Pages {
		if !seen[p.Section] {
			seen[p.Section] = true
			names = append(names, c.sectionName(p.Section))
		}
	}
	return say.Things(names)
}

// sectionName is a section in words.
func (c *Changes) sectionName(section string) string {
	if id, ok := strings.CutPrefix(section, "fabric "); ok {
		if f := c.New.Plan.Fabric(id); f != nil {
			return f.Name
		}
	}
	return strings.ToLower(sheets.Part(strings.TrimPrefix(section, "part ")).Title())
}

// goodWords says what stays good, and which pages get another number.
func (c *Changes) goodWords() (lines []string) {
	if len(c.Kept) > 0 {
		var numbers []int
		for _, k := range c.Kept {
			numbers = append(numbers, k.Old)
		}
		lines = append(lines, plural(len(numbers), "the old page", "the old pages")+" "+runs(numbers)+c.renumbered())
	}
	if len(c.Good) > 0 {
		lines = append(lines, plural(len(c.Good), "the label of bag", "the labels of bags")+" "+runs(c.Good))
	}
	return lines
}

// renumbered says which kept pages get another number, runs of them together.
func (c *Changes) renumbered() string {
	var words []string
	for i := 0; i < len(c.Kept); {
		j, by := i, c.Kept[i].New-c.Kept[i].Old
		for j < len(c.Kept) && c.Kept[j].New-c.Kept[j].Old == by && c.Kept[j].Old == c.Kept[i].Old+j-i {
			j++
		}
		if first, last := c.Kept[i], c.Kept[j-1]; by != 0 && i == j-1 {
			words = append(words, fmt.Sprintf("%d is now %d", first.Old, first.New))
		} else if by != 0 {
			words = append(words, fmt.Sprintf("%d–%d are now %d–%d", first.Old, last.Old, first.New, last.New))
		}
		i = j
	}
	if len(words) == 0 {
		return ""
	}
	return "; " + strings.Join(words, ", ")
}

// runs are numbers in order, those that follow one another as "7–9".
func runs(numbers []int) string {
	var words []string
	for i := 0; i < len(numbers); {
		j := i
		for j+1 < len(numbers) && numbers[j+1] == numbers[j]+1 {
			j++
		}
		switch {
		case j == i:
			words = append(words, fmt.Sprint(numbers[i]))
		case j == i+1:
			words = append(words, fmt.Sprint(numbers[i]), fmt.Sprint(numbers[j]))
		default:
			words = append(words, fmt.Sprintf("%d–%d", numbers[i], numbers[j]))
		}
		i = j + 1
	}
	return strings.Join(words, ", ")
}
