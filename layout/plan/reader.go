package plan

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"cutbinder/layout/length"
	"cutbinder/layout/pack"
)

// A reader turns a file's values into a Plan and notes every fault on the way. A
// value that is faulty is left at its default, and reading goes on.
type reader struct {
	plan     *Plan
	standard standards
	tables   []Table
	faults   Problems
	meant    map[Pos][]string // of a mapping, the keys that its unknown ones were meant for
	loose    map[Pos]bool     // mappings from tables with columns that aren't known, which are told
	inLines  int              // faults in lines of pieces
	unsound  map[*Piece]bool  // the lines that have them
	shelf    int              // lengths of cloth at hand so far, for the limit
	ownSheet bool             // all eight numbers of a label sheet are written
}

// fault notes what is wrong at a place.
func (r *reader) fault(at Pos, hint, format string, args ...any) {
	if len(r.faults) < maxFaults {
		r.faults = append(r.faults, Problem{At: at, What: fmt.Sprintf(format, args...), Hint: hint})
	}
}

// faultyAt says whether a fault was noted at a place.
func (r *reader) faultyAt(at Pos) bool {
	return slices.ContainsFunc(r.faults, func(p Problem) bool { return p.At == at })
}

// reject notes that a key's value isn't what the key takes.
func (r *reader) reject(k Key, v value) { r.rejectFor(k, v, "") }

// rejectFor is reject with a hint.
func (r *reader) rejectFor(k Key, v value, hint string) {
	if v.shape == broken {
		return
	}
	r.fault(v.at, hint, "%s: found %s; expected %s", k.Name, found(v), k.expected())
}

// several are the values of a list; a text stands for a list of one. Whatever else
// is written, or an empty list, is rejected.
func (r *reader) several(k Key, v value) (items []value, ok bool) {
	if v.shape == text {
		return []value{v}, true
	}
	if len(v.items) == 0 {
		r.reject(k, v)
	}
	return v.items, len(v.items) > 0
}

// noValue notes that nothing stands behind a key.
func (r *reader) noValue(k Key, at Pos) {
	hint := ""
	if k.Kind == KindColour {
		hint = `write it between quotes: "#4a5578"; without them # starts a remark`
	}
	r.fault(at, hint, "%s has no value; expected %s", k.Name, k.expected())
}

// tooMany notes a list that is longer than most.
func (r *reader) tooMany(k Key, v value, n, most int) bool {
	if n <= most {
		return false
	}
	r.fault(v.at, "", "%s: %d are written; expected at most %d", k.Name, n, most)
	return true
}

// text reads a text of any kind, as it is written.
func (r *reader) text(k Key, v value) (string, bool) {
	if v.shape != text {
		r.reject(k, v)
		return "", false
	}
	if n := len([]rune(v.text)); n > maxText {
		r.fault(v.at, "", "%s: the text has %d characters; expected at most %d", k.Name, n, maxText)
		return "", false
	}
	if strings.TrimSpace(v.text) == "" {
		r.noValue(k, v.at)
		return "", false
	}
	return v.text, true
}

// count reads a whole number from least to most.
func (r *reader) count(k Key, v value, least, most int) (int, bool) {
	s, ok := r.text(k, v)
	if !ok {
		return 0, false
	}
	n, err := strconv.Atoi(strings.TrimSpace(s))
	if err != nil || n < least || n > most {
		r.fault(v.at, "", "%s: found %s; expected a whole number from %d to %d", k.Name, found(v), least, most)
		return 0, false
	}
	return n, true
}

// limits are what a length must lie within.
type limits struct {
	zero bool          // zero will do
	most length.Length // 0 stands for maxLength
}

// length reads a length within limits.
func (r *reader) length(k Key, v value, within limits) (length.Length, bool) {
	s, ok := r.text(k, v)
	if !ok {
		return 0, false
	}
	l, err := length.Parse(s, r.plan.Units)
	most := within.most
	if most == 0 {
		most = maxLength
	}
	switch {
	case err != nil:
		r.fault(v.at, commaHint(v), "%s: %s", k.Name, err)
	case l == 0 && !within.zero:
		r.fault(v.at, "", "%s: found %s; expected a length above zero, such as %s", k.Name, found(v), k.Example)
	case l > most:
		r.fault(v.at, "", "%s: found %s; expected at most %s", k.Name, found(v), r.plan.Units.Format(most, length.WithUnit))
	default:
		return l, true
	}
	return 0, false
}

// commaHint tells how to write what a comma has cut off.
func commaHint(v value) string {
	if strings.Contains(v.text, ",") {
		return "write a decimal with a point: 6.5"
	}
	return ""
}

// size reads a size whose sides are above zero. A side that is WOF comes first,
// for it lies across the width.
func (r *reader) size(k Key, v value, wof bool) (length.Size, bool) {
	s, ok := r.text(k, v)
	if !ok {
		return length.Size{}, false
	}
	z, err := length.ParseSize(s, r.plan.Units)
	switch {
	case err != nil:
		r.fault(v.at, commaHint(v), "%s: %s", k.Name, err)
		return length.Size{}, false
	case z.W == 0 || z.H == 0:
		r.fault(v.at, "", "%s: found %s; expected sides above zero, such as %s", k.Name, found(v), k.Example)
		return length.Size{}, false
	case max(z.W, z.H) > maxSize:
		r.fault(v.at, "", "%s: found %s; expected sides of at most %s", k.Name, found(v), r.plan.Units.Format(maxSize, length.WithUnit))
		return length.Size{}, false
	case !wof && (z.W == length.WOF || z.H == length.WOF):
		r.fault(v.at, "", "%s: found %s; WOF means nothing here, expected two lengths such as %s", k.Name, found(v), k.Example)
		return length.Size{}, false
	case z.H == length.WOF:
		z.W, z.H = z.H, z.W
	}
	return z, true
}

// percent reads a percentage up to most. A bare number below one may have been
// meant as a share of one, and is refused.
func (r *reader) percent(k Key, v value, most Percent) (Percent, bool) {
	s, ok := r.text(k, v)
	if !ok {
		return 0, false
	}
	number, marked := strings.CutSuffix(strings.TrimSpace(s), "%")
	n, err := strconv.ParseFloat(strings.TrimSpace(number), 64)
	hundredths := Percent(math.Round(n * 100))
	switch {
	case err != nil || !(n >= 0) || strings.ContainsAny(number, "xXpPeE_"):
		r.reject(k, v)
	case n > float64(most)/100:
		r.fault(v.at, "", "%s: found %s; expected at most %d %%", k.Name, found(v), most/100)
	case !marked && n > 0 && n < 1:
		r.fault(v.at, fmt.Sprintf("write %s%% or %s%%", strconv.FormatFloat(n*100, 'g', 6, 64), strings.TrimSpace(number)),
			"%s: found %s, which may mean a share or a percentage; expected a percentage such as %s", k.Name, found(v), k.Example)
	default:
		return hundredths, true
	}
	return 0, false
}

// flag reads yes or no.
func (r *reader) flag(k Key, v value) (yes, ok bool) {
	if yes, ok = yesOrNo(v); !ok {
		r.reject(k, v)
	}
	return yes, ok
}

// yesOrNo reads a text that says yes or no; ok is false where it says neither.
func yesOrNo(v value) (yes, ok bool) {
	if v.shape != text {
		return false, false
	}
	switch strings.ToLower(v.text) {
	case "yes", "true":
		return true, true
	case "no", "false":
		return false, true
	}
	return false, false
}

// choice reads one of the key's choices and gives its index.
func (r *reader) choice(k Key, v value) (int, bool) {
	for i, name := range k.Choices {
		if v.shape == text && strings.EqualFold(strings.TrimSpace(v.text), name) {
			return i, true
		}
	}
	r.rejectFor(k, v, choiceMeant(v.text, k.Choices))
	return 0, false
}

// grid reads two counts with x between them.
func (r *reader) grid(k Key, v value) (across, down int, ok bool) {
	a, d, two := strings.Cut(strings.ToLower(strings.ReplaceAll(v.text, "×", "x")), "x")
	across, errA := strconv.Atoi(strings.TrimSpace(a))
	down, errD := strconv.Atoi(strings.TrimSpace(d))
	if v.shape != text || !two || errA != nil || errD != nil || min(across, down) < 1 || max(across, down) > maxSide {
		r.fault(v.at, "", "%s: found %s; expected how many across and down, such as %s, at most %d each way", k.Name, found(v), k.Example, maxSide)
		return 0, 0, false
	}
	return across, down, true
}

// kinds are the kinds of layout by name.
var kinds = []option[pack.Kind]{{"strips", pack.Strips}, {"stacks", pack.Stacks}, {"thrifty", pack.Thrifty}}
