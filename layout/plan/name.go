package plan

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
)

// goodName says whether a name of the writer's own will do.
func (r *reader) goodName(k Key, p pair) bool {
	switch {
	case strings.TrimSpace(p.key) == "":
		r.fault(p.at, "", "%s: a name is empty; expected a short word such as dusk", k.Name)
	case len([]rune(p.key)) > maxName:
		r.fault(p.at, "give it a short name here and the long one as its name:", "%s: the name %q has %d characters; expected at most %d", k.Name, shorten(p.key), len([]rune(p.key)), maxName)
	case strings.ContainsFunc(p.key, func(c rune) bool { return !unicode.IsPrint(c) }) || strings.TrimSpace(p.key) != p.key:
		r.fault(p.at, "", "%s: the name %q holds spaces at its ends or characters that cannot be printed", k.Name, p.key)
	default:
		return true
	}
	return false
}

// source reads the name of a fabric, a mix, or either, as the key wants.
func (r *reader) source(k Key, v value) (Source, bool) {
	if v.shape != text {
		hint := ""
		if v.shape == list && k.Kind != KindSource {
			hint = "write fabrics: for several roles of a unit, or make a mix of them"
		}
		r.rejectFor(k, v, hint)
		return Source{}, false
	}
	id := v.text
	isFabric, isMix := r.plan.Fabric(id) != nil, r.plan.Mix(id) != nil
	switch {
	case isFabric && k.Kind != KindMix:
		return Source{v.at, id, false}, true
	case isMix && k.Kind != KindFabric:
		return Source{v.at, id, true}, true
	case isFabric:
		r.fault(v.at, "write fabric: "+id, "%q is a fabric; expected the name of a mix", id)
	case isMix:
		r.fault(v.at, "write mix: "+id, "%q is a mix; expected the name of a fabric", id)
	case k.Kind == KindMix:
		r.unknownName(v, "mix", r.plan.mixIDs())
	case k.Kind == KindFabric:
		r.unknownName(v, "fabric", r.plan.fabricIDs())
	default:
		r.unknownName(v, "fabric or mix", slices.Concat(r.plan.fabricIDs(), r.plan.mixIDs()))
	}
	return Source{}, false
}

// unknownName notes that no noun of that name is in the plan. Where the plan has
// none at all, that is told elsewhere.
func (r *reader) unknownName(v value, noun string, names []string) {
	switch {
	case len(r.faults) >= maxFaults, len(names) == 0 && noun != "mix":
		return
	case len(names) == 0:
		r.fault(v.at, "", "%s %q is not in this plan; it has none", noun, shorten(v.text))
		return
	}
	r.fault(v.at, meant(v.text, names), "%s %q is not in this plan; expected one of %s", noun, shorten(v.text), some(names))
}

// unknownKey notes a key that the mapping at a place doesn't have, and names the
// one that was probably meant.
func (r *reader) unknownKey(t Table, at Pos, p pair) {
	if len(r.faults) >= maxFaults {
		return
	}
	names := make([]string, len(t.Keys))
	for i, k := range t.Keys {
		names[i] = k.Name
	}
	if words := r.keysMeant(p.key, names); len(words) > 0 {
		if r.meant == nil {
			r.meant = map[Pos][]string{}
		}
		r.meant[at] = append(r.meant[at], words...)
	}
	hint := r.keyHint(p, names)
	if hint != "" && len(names) > 12 {
		r.fault(p.at, hint, "%s has no key %q", t.Name, shorten(p.key))
		return
	}
	r.fault(p.at, hint, "%s has no key %q; expected one of %s", t.Name, shorten(p.key), strings.Join(names, ", "))
}

// otherWords are keys that writers try, and what plans call them.
var otherWords = map[string][]string{
	"title": {"plan"}, "author": {"by"}, "designer": {"by"},
	"size": {"finished", "cut"}, "count": {"each", "need", "make"}, "quantity": {"each", "need", "make"},
	"wof": {"width"}, "directional": {"one-way"}, "stash": {"have"},
}

// keyHint says what to write for a key that isn't known: a name that was probably
// meant, or the mapping the key belongs in.
func (r *reader) keyHint(p pair, names []string) string {
	if p.val.shape == nothing && p.key != "" && p.key[0] >= '0' && p.key[0] <= '9' {
		return "a comma parts values here: write a decimal with a point"
	}
	if name, rest, ok := strings.Cut(p.key, ":"); ok && rest != "" && slices.Contains(names, strings.TrimSpace(name)) {
		return fmt.Sprintf("a space is missing: write %s: %s", strings.TrimSpace(name), shorten(rest))
	}
	if words := r.keysMeant(p.key, names); len(words) > 0 {
		return "did you mean " + strings.Join(words, " or ") + "?"
	}
	return r.belongs(p.key)
}

// keysMeant are the keys that an unknown one was probably meant for: a name that
// is almost the same, the plan's words for it, or a near name, unless the key
// belongs in another mapping.
func (r *reader) keysMeant(key string, names []string) (words []string) {
	near, d := nearest(key, names)
	if d == 1 {
		return []string{near}
	}
	for _, name := range otherWords[strings.ToLower(key)] {
		if slices.Contains(names, name) {
			words = append(words, name)
		}
	}
	if len(words) == 0 && near != "" && r.belongs(key) == "" {
		words = []string{near}
	}
	return words
}

// misspelt says that a key isn't told as missing: one that was probably meant for
// it, or for another of the keys that would do, stands in the same mapping and is
// told already.
func (r *reader) misspelt(n Node, keys ...string) bool {
	return r.loose[n.At] || slices.ContainsFunc(keys, func(k string) bool { return slices.Contains(r.meant[n.At], k) })
}

// belongs names the mappings that do have a key.
func (r *reader) belongs(key string) string {
	var owners []string
	for _, t := range r.tables {
		if slices.ContainsFunc(t.Keys, func(k Key) bool { return k.Name == key }) {
			owners = append(owners, t.Name)
		}
	}
	if len(owners) == 0 || len(owners) > 4 {
		return ""
	}
	return key + " belongs in " + strings.Join(owners, ", ")
}

// some lists names, the first dozen of them.
func some(names []string) string {
	if len(names) > 12 {
		return fmt.Sprintf("%s and %d more", strings.Join(names[:12], ", "), len(names)-12)
	}
	return strings.Join(names, ", ")
}

// shortNames are what the trade writes for choices of plans, in lower case.
var shortNames = map[string]string{
	"hst": string(HalfSquare), "hsts": string(HalfSquare),
	"qst": string(QuarterSquare) + " for one triangle, or " + string(Hourglass) + " for the unit of four",
	"fg":  string(Geese), "fgs": string(Geese), "goose": string(Geese),
	"flying-geese": string(Geese), "flying geese": string(Geese), "flying goose": string(Geese),
	"cm": "metric", "mm": "metric", "centimetre": "metric", "centimetres": "metric", "centimeters": "metric",
	"in": "inch", "imperial": "inch",
}

// choiceMeant asks whether a choice was meant: one that the trade abbreviates so,
// or the nearest.
func choiceMeant(word string, choices []string) string {
	name := shortNames[strings.ToLower(strings.TrimSpace(word))]
	if first, _, _ := strings.Cut(name, " "); slices.Contains(choices, first) {
		return "did you mean " + name + "?"
	}
	return meant(word, choices)
}

// meant asks whether the nearest name was meant; "" where none is near.
func meant(word string, names []string) string {
	if name := Nearest(word, names); name != "" {
		return "did you mean " + name + "?"
	}
	return ""
}

// Nearest is the name that a mistyped word was probably meant for, the first of
// several that are as near; "" where none is near.
func Nearest(word string, names []string) string {
	name, _ := nearest(word, names)
	return name
}

// nearest is the name most like a word, and how many letters part them; the first
// of several; "" where none is near. A word of three letters or more is also near
// the first name that begins with it.
func nearest(word string, names []string) (best string, least int) {
	word = strings.ToLower(word)
	n := len([]rune(word))
	if n < 2 || n > maxName {
		return "", 0
	}
	least = 2 + n/4
	for _, name := range names {
		if d := distance(word, strings.ToLower(name), least-1); d < least {
			best, least = name, d
		}
	}
	if best == "" && n > 2 {
		for _, name := range names {
			if strings.HasPrefix(strings.ToLower(name), word) && best == "" {
				best = name
			}
		}
	}
	return best, least
}

// distance is how many letters must be put in, left out, changed or swapped with
// a neighbour to make a into b (optimal string alignment); most+1 where it is
// more than most.
func distance(a, b string, most int) int {
	s, t := []rune(a), []rune(b)
	if len(s)-len(t) > most || len(t)-len(s) > most {
		return most + 1
	}
	var before, last []int
	row := make([]int, len(t)+1)
	for j := range row {
		row[j] = j
	}
	for i := 1; i <= len(s); i++ {
		before, last, row = last, row, make([]int, len(t)+1)
		row[0] = i
		for j := 1; j <= len(t); j++ {
			change := last[j-1]
			if s[i-1] != t[j-1] {
				change++
			}
			row[j] = min(change, last[j]+1, row[j-1]+1)
			if i > 1 && j > 1 && s[i-1] == t[j-2] && s[i-2] == t[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
	}
	return min(row[len(t)], most+1)
}
