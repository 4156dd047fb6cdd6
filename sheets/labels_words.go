package sheets

import (
	"fmt"
	"slices"
	"strings"

	"cutbinder/layout/plan"
	"cutbinder/layout/trade"
	"cutbinder/sheets/bag"
	"cutbinder/sheets/say"
)

// headings word a bag's places from the fullest to the shortest.
func headings(b *bag.Bag) []string {
	if len(b.Places) == 1 {
		return []string{oneLine(b.Heading())}
	}
	first := oneLine(b.Places[0].Heading())
	return []string{oneLine(b.Heading()), fmt.Sprintf("%s + %d more", first, len(b.Places)-1)}
}

// rowWords words a row's count and size, in one line.
func (b *bagLabel) rowWords(r bag.Row) []string {
	return []string{say.Count(r.Count) + " " + b.voice.Size(r.Cut)}
}

// partWords is what part of a unit a row is: "half-square", "goose"; "" for
// patches.
func partWords(r bag.Row) string {
	if part := oneLine(r.Role); part != "" {
		return part
	}
	if r.Unit == plan.Patch {
		return ""
	}
	return string(r.Unit)
}

// rowParts is a row's count and size in pieces that may stand in lines of their own.
func (b *bagLabel) rowParts(r bag.Row) []string {
	across, down, _ := strings.Cut(b.voice.Size(r.Cut), b.voice.Times())
	return []string{say.Count(r.Count), strings.TrimSpace(across) + " " + b.voice.Times(), strings.TrimSpace(down)}
}

// details words what else there is to say of a row, from the fullest to the
// shortest: "half-square · finished 3, and 1 spare".
func (b *bagLabel) details(r bag.Row) []string {
	var all []string
	if part := partWords(r); part != "" && !strings.HasPrefix(b.bag.Heading(), strings.ReplaceAll(part, "-", " ")) {
		all = append(all, part)
	}
	switch {
	case r.Set != nil:
		all = append(all, "cut into "+b.voice.Segments(r.Set))
	case r.Joined != nil:
		all = append(all, b.voice.Joined(r, "join"))
	case r.Finished.W > 0:
		all = append(all, b.voice.Finished(r.Finished, r.Cut))
	}
	if r.Spares > 0 {
		all = append(all, "and "+say.Spares(r.Spares))
	}
	switch r.Into {
	case trade.Once:
		all = append(all, "cut corner to corner")
	case trade.Twice:
		all = append(all, "cut corner to corner both ways")
	}
	if note := say.Noted(oneLine(r.Note)); note != "" {
		all = append(all, note)
	}
	texts := shorter(all)
	if r.Set != nil {
		texts = slices.Insert(texts, len(texts)-1, "for "+b.voice.Segments(r.Set))
	}
	if j := r.Joined; j != nil { // at the least what it comes to
		long := say.Count(j.Count) + " " + b.voice.Size(j.Size)
		if j.Run > 0 {
			texts = append(texts, "in one run: "+long)
		} else {
			texts = append(texts, "makes "+long)
		}
		texts = append(texts, "for "+long)
	}
	return texts
}

// dot stands between details in one line.
const dot = " · "

// comma stands in place of a dot before spares, which are beside what was counted.
const comma = ", and "

// shorter are the parts in one line, then without the last, the one before and so on.
func shorter(parts []string) []string {
	var texts []string
	for n := len(parts); n > 0; n-- {
		texts = append(texts, strings.ReplaceAll(strings.Join(parts[:n], dot), dot+"and ", comma))
	}
	return texts
}

// parted is the parts of what is left of a line of them.
func parted(rest string) []string {
	rest = strings.ReplaceAll(rest, comma, dot+"and ")
	return strings.Split(strings.TrimPrefix(rest, dot), dot)
}

// fabricWords words the fabrics from the fullest to the shortest: with counts,
// without, then fewer of them "+3 more". A comma in a name of several isn't one that
// parts them.
func fabricWords(v say.Voice, shares []bag.Share) []string {
	if len(shares) == 1 {
		return []string{oneLine(shares[0].Name)}
	}
	names, counts := make([]string, len(shares)), make([]int, len(shares))
	for i, s := range shares {
		names[i], counts[i] = strings.ReplaceAll(oneLine(s.Name), ", ", ",\u00a0"), s.Count+s.Spares
	}
	texts := []string{strings.Join(v.Counted(names, counts), ", "), strings.Join(names, ", ")}
	for n := min(len(names)-1, 12); n > 0; n-- {
		texts = append(texts, fmt.Sprintf("%s +%d\u00a0more", strings.Join(names[:n], ", "), len(names)-n))
	}
	return append(texts, fmt.Sprintf("%d fabrics", len(names)))
}

// ofWords words which bag it is, from the fullest to the shortest.
func ofWords(b *bag.Bag) []string {
	return []string{fmt.Sprintf("bag %d of %d", b.Number, b.Of), fmt.Sprintf("%d of %d", b.Number, b.Of), fmt.Sprintf("of %d", b.Of)}
}

// titleWords words the plan's title and version from the fullest to the shortest.
func (l *labeler) titleWords() []string {
	title, version := oneLine(l.q.Plan.Title), oneLine(l.q.Plan.Version)
	if version == "" {
		return []string{title}
	}
	return []string{title + " · " + shortVersion(version), title}
}
