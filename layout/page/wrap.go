package page

import (
	"cutbinder/fonts"
	"cutbinder/layout/length"
)

// An Align is where a line stands in its room.
type Align int

// The alignments. Figures lines up the ends of the whole numbers the cells of
// a table column start with, so that 9, 12½ and ¾ stand one under another;
// outside a table it is Right.
const (
	Left Align = iota
	Right
	Center
	Figures
)

// lines breaks atoms into lines no wider than w, if w is more than 0. A line
// ends at a space (which is dropped), after a hyphen, dash or slash, or at a
// forced end; words kept together that are wider than a whole line are broken
// between words all the same, and a single one between characters. A line holds
// one atom at least, so it always ends.
func lines(as []atom, w length.Length) [][]atom {
	var out [][]atom
	limit := fine(w) * fineUnit
	for start := 0; ; {
		end, next := lineEnd(as, start, limit)
		out = append(out, trimSpace(as[start:end]))
		if next >= len(as) {
			if endsForced(as) && next == len(as) && end < next {
				out = append(out, nil)
			}
			return out
		}
		start = next
	}
}

// endsForced reports whether the last atom is a forced line end, after which
// an empty line stands.
func endsForced(as []atom) bool { return len(as) > 0 && as[len(as)-1].brk }

// lineEnd finds where the line that starts at start ends, and where the next
// one starts.
func lineEnd(as []atom, start int, limit fine) (end, next int) {
	var w fine
	stop, resume := -1, -1 // the last place where the line may end
	tied := -1             // the last space that should keep words together
	for i := start; i < len(as); i++ {
		a := &as[i]
		if a.brk {
			return i, i + 1
		}
		if a.space {
			stop, resume = i, i+1
		}
		if a.tie {
			tied = i
		}
		w += a.w
		if limit > 0 && w > limit && !a.space {
			if stop <= start && tied > start {
				stop, resume = tied, tied+1
			}
			return overfull(as, start, i, stop, resume)
		}
		if a.soft {
			stop, resume = i+1, i+1
		}
	}
	return len(as), len(as)
}

// overfull ends a line at which atom i no longer fits: at the last place that
// allows it, else before the atom.
func overfull(as []atom, start, i, stop, resume int) (end, next int) {
	if stop > start {
		for resume < len(as) && as[resume].space {
			resume++
		}
		return stop, resume
	}
	i = max(i, start+1)
	return i, i
}

// trimSpace drops the spaces at a line's end.
func trimSpace(as []atom) []atom {
	for len(as) > 0 && as[len(as)-1].space {
		as = as[:len(as)-1]
	}
	return as
}

// Lines is how the words break in a room w wide, as plain text.
func (r Rich) Lines(set fonts.Set, w length.Length) []string {
	var out []string
	for _, l := range lines(r.atoms(set), w) {
		out = append(out, plain(l))
	}
	return out
}

// plain is the characters of atoms.
func plain(as []atom) string {
	var rs []rune
	for i := range as {
		for _, g := range as[i].glyphs {
			rs = append(rs, g.r)
		}
	}
	return string(rs)
}

// offset is how far from the left a line w wide stands in a room.
func (a Align) offset(w, room length.Length) length.Length {
	switch a {
	case Right, Figures:
		return room - w
	case Center:
		return (room - w) / 2
	}
	return 0
}

// natural is how wide text wants to be: its widest line where it is not
// broken, and its widest word.
func natural(as []atom) (line, word length.Length) {
	var l, w fine
	for i := range as {
		a := &as[i]
		switch {
		case a.brk:
			l, w = 0, 0
			continue
		case a.space:
			w = 0
		default:
			w += a.w
		}
		l += a.w
		line, word = max(line, l.up()), max(word, w.up())
		if a.soft {
			w = 0
		}
	}
	return line, word
}
