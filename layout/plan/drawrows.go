package plan

import (
	"strings"
	"unicode"

	"cutbinder/layout/length"
)

// lettersKey is short names for what stands in drawings.
var lettersKey = Key{Name: "letters", Kind: KindLetters, Doc: "Short names for fabrics and mixes in drawings.", Example: "{n: nightprints, w: wick}"}

// letters reads short names for fabrics and mixes.
func (r *reader) letters(k Key, v value) map[string]Source {
	if v.shape != mapping {
		r.reject(k, v)
		return nil
	}
	all := map[string]Source{}
	for _, p := range v.pairs {
		switch {
		case !r.goodName(k, p):
		case strings.ContainsAny(p.key, signLetters+"^") || strings.ContainsFunc(p.key, unicode.IsSpace):
			r.fault(p.at, "", "%s: the name %q holds a space or a sign of drawings; expected letters and digits", k.Name, p.key)
		default:
			if s, ok := r.source(Key{Name: k.Name, Kind: KindSource, Example: "dusk"}, p.val); ok {
				all[p.key] = s
			}
		}
	}
	return all
}

// lengthsField reads a list of lengths above zero.
func lengthsField[T any](name, doc, example string, at func(*T) *[]length.Length) field[T] {
	return field[T]{Key{Name: name, Kind: KindLengths, Doc: doc, Example: example}, func(r *reader, k Key, v value, into *T) {
		items, ok := r.several(k, v)
		if !ok || r.tooMany(k, v, len(items), maxGrid) {
			return
		}
		all := make([]length.Length, len(items))
		for i, item := range items {
			one := k
			one.Kind, one.Example = KindLength, "2"
			all[i], _ = r.length(one, item, limits{most: maxSize})
		}
		*at(into) = all
	}}
}

// A word is a word of a row with its place.
type word struct {
	at   Pos
	text string
}

// words are the words of a row that is written as a text or as a list; ok is
// false where it is neither.
func (r *reader) words(v value) (row []word, ok bool) {
	switch v.shape {
	case text:
		return wordsOf(v.text, v.start), true
	case list:
		for _, item := range v.items {
			if item.shape != text {
				r.fault(item.at, "", "found %s in a row; expected a word", found(item))
				continue
			}
			row = append(row, word{item.at, strings.TrimSpace(item.text)})
		}
		return row, true
	}
	return nil, v.shape == broken
}

// wordsOf cuts a line into words.
func wordsOf(line string, at Pos) (row []word) {
	begun := false
	for _, c := range line {
		switch {
		case unicode.IsSpace(c):
			begun = false
		case !begun:
			begun = true
			row = append(row, word{at, string(c)})
		default:
			row[len(row)-1].text += string(c)
		}
		at = at.right(1)
	}
	return row
}

// rowsOf are the rows of a picture: a list, or a text with a line for each.
func (r *reader) rowsOf(k Key, v value) (rows [][]word) {
	switch {
	case v.shape == text && strings.TrimSpace(v.text) != "":
		at := v.start
		for _, line := range strings.Split(v.text, "\n") {
			if row := wordsOf(line, at); len(row) > 0 {
				rows = append(rows, row)
			}
			at = at.below()
		}
		return rows
	case v.shape != list || len(v.items) == 0:
		r.reject(k, v)
		return nil
	}
	for _, item := range v.items {
		row, ok := r.words(item)
		if !ok {
			r.fault(item.at, "", "%s: found %s; expected a row such as [A, B, A]", k.Name, found(item))
			continue
		}
		if len(row) > 0 {
			rows = append(rows, row)
		}
	}
	return rows
}

// readQuilt reads the quilt's rows of blocks. A block may be turned: > behind its
// name is a quarter to the right, < one to the left, >> a half.
func readQuilt(r *reader, k Key, v value, p *Plan) {
	cells := 0
	for _, row := range r.rowsOf(k, v) {
		if cells += len(row); cells > maxCells {
			r.fault(row[0].at, "", "quilt: more than %d blocks are written", maxCells)
			return
		}
		sets := make([]Set, 0, len(row))
		for _, w := range row {
			if s, ok := r.set(w); ok {
				sets = append(sets, s)
			}
		}
		p.Quilt = append(p.Quilt, sets)
	}
}

// turns are what may stand behind a block's name, the longer first.
var turns = []struct {
	mark string
	turn int
}{{">>", 2}, {"<<", 2}, {">", 1}, {"<", 3}}

// set reads one block of a quilt's row.
func (r *reader) set(w word) (Set, bool) {
	s := Set{At: w.at, Block: w.text}
	if r.plan.Block(s.Block) == nil {
		for _, t := range turns {
			if name, ok := strings.CutSuffix(w.text, t.mark); ok {
				s.Block, s.Turn = name, t.turn
				break
			}
		}
	}
	if r.plan.Block(s.Block) != nil {
		return s, true
	}
	names := r.plan.blockIDs()
	if len(names) == 0 {
		names = []string{"blocks that the plan has none of"}
	}
	r.fault(w.at, meant(s.Block, names), "block %q is not in this plan; expected one of %s", shorten(s.Block), some(names))
	return s, false
}
