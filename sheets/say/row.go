package say

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"cutbinder/layout/length"
	"cutbinder/layout/plan"
	"cutbinder/layout/trade"
	"cutbinder/sheets/bag"
)

// Row is one kind of piece in a bag: "(48) 3½ × 3½ goose, finished 3, and 2
// spares: Dusk stripe 26, Ember print 24".
func (v Voice) Row(r bag.Row) string {
	text := fmt.Sprintf("%s %s", Count(r.Count), v.Size(r.Cut))
	if made := v.Made(r); made != "" {
		text += ", " + made
	}
	if r.Spares > 0 {
		text += ", and " + Spares(r.Spares)
	}
	if note := Noted(r.Note); note != "" {
		text += ", " + note
	}
	return text + ": " + v.Shares(r.Fabrics)
}

// Made is what the pieces of a row become: "half-square, finished 3".
func (v Voice) Made(r bag.Row) string {
	var words []string
	switch part := Part(r.Unit, r.Role); {
	case r.Set != nil:
		words = append(words, "for "+v.sets(r.Set, "cut across into"))
	case part != "":
		words = append(words, part)
	}
	if r.Finished.W > 0 {
		words = append(words, v.Finished(r.Finished, lies(r)))
	}
	if joined := v.Joined(r, "joined"); joined != "" {
		words = append(words, joined)
	}
	switch r.Into {
	case trade.Once:
		words = append(words, "cut corner to corner")
	case trade.Twice:
		words = append(words, "cut corner to corner both ways")
	}
	return strings.Join(words, ", ")
}

// Noted is what the plan says that pieces are for: "for corners to flip".
func Noted(note string) string {
	words := strings.Fields(note)
	switch {
	case len(words) == 0:
		return ""
	case strings.EqualFold(words[0], "for"):
		words = words[1:]
	}
	return "for " + strings.Join(words, " ")
}

// lies is the size whose order of sides a row's finished size follows: of strips
// that are joined, what they become.
func lies(r bag.Row) length.Size {
	if r.Joined != nil {
		return r.Joined.Size
	}
	return r.Cut
}

// Part is what pieces are of a unit, of one of them: "half-square", "goose", "sky",
// "square-in-square corner"; "" for patches.
func Part(u plan.Unit, role string) string {
	switch {
	case u == plan.Patch, u == plan.Geese && role != "": // "geese goose" says it twice
		return role
	case u == plan.StripSet:
		return "strip"
	}
	return strings.TrimSpace(string(u) + " " + role)
}

// Finished is what pieces finish at, its sides in the order of those they are cut
// with: "finished 2 × 12" of what is cut 2½ × 12½, though the plan calls it 12 × 2.
func (v Voice) Finished(finished, cut length.Size) string {
	if (cut.W < cut.H) != (finished.W < finished.H) && cut.W != cut.H && finished.W != finished.H {
		finished.W, finished.H = finished.H, finished.W
	}
	return "finished " + v.Short(finished)
}

// Spares is "1 spare", "3 spares".
func Spares(n int) string { return fmt.Sprintf("%d %s", n, Plural(n, "spare", "spares")) }

// Shares names fabrics with their counts where there are several.
func (v Voice) Shares(shares []bag.Share) string {
	return strings.Join(v.counted(shares), ", ")
}

// WholeShares is Shares so that a line breaks between fabrics, and in none's name.
func (v Voice) WholeShares(shares []bag.Share) string {
	names := v.counted(shares)
	for i := range names {
		names[i] = v.together(names[i])
	}
	return strings.Join(names, ", ")
}

func (v Voice) counted(shares []bag.Share) []string {
	names, counts := make([]string, len(shares)), make([]int, len(shares))
	for i, s := range shares {
		names[i], counts[i] = s.Name, s.Count+s.Spares
	}
	return v.Counted(names, counts)
}

// Counted sets counts behind the names of fabrics where there are several: "Dusk
// stripe 26"; in type a count stays with its name. All counts stand in brackets
// where a name ends in a figure, so that nobody reads on: "Scrap 1 (15)", and in
// type that figure stays with the word before it.
func (v Voice) Counted(names []string, counts []int) []string {
	if len(names) == 1 {
		return names
	}
	form := " %d"
	if slices.ContainsFunc(names, endsInFigure) {
		form = " (%d)"
	}
	words := make([]string, len(names))
	for i, name := range names {
		tail := fmt.Sprintf(form, counts[i])
		if at := strings.LastIndexByte(name, ' '); at > 0 && endsInFigure(name) {
			name, tail = name[:at], name[at:]+tail
		}
		words[i] = name + v.joined(tail)
	}
	return words
}

// joined keeps a count with its name even where the name itself is broken.
func (v Voice) joined(tail string) string {
	if v.Plain {
		return tail
	}
	return strings.ReplaceAll(tail, " ", "\u2007")
}

// endsInFigure says whether a name's last character is a figure of any kind: 7, ½.
func endsInFigure(name string) bool {
	last, _ := utf8.DecodeLastRuneInString(strings.TrimSpace(name))
	return unicode.IsNumber(last)
}
