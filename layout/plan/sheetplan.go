package plan

import (
	"slices"
	"strings"
)

// readPlan reads the sheet of keys and values.
func (s *sheetReader) readPlan() {
	sh := s.sheets[planSheet]
	if sh == nil {
		return
	}
	for i, cells := range sh.Rows {
		first := firstFilled(cells)
		if first == 0 || strings.HasPrefix(strings.TrimSpace(cells[first-1].Text), "#") {
			continue
		}
		if i == 0 && plainWord(cells[first-1].Text) == "key" {
			continue
		}
		s.planRow(sh, i+1, first, false)
	}
}

// otherKeys are what people call keys of the plan.
var otherKeys = map[string]string{
	"title": "plan", "name": "plan", "quilt": "plan", "author": "by", "designer": "by",
	"size": "finished", "finishedsize": "finished", "quiltsize": "finished",
}

// planRow reads a key and the value in the next cell. A key without a value is
// left out. With maybe, a key that isn't known is no fault; false says so.
func (s *sheetReader) planRow(sh *sheet, row, first int, maybe bool) bool {
	label := strings.Trim(strings.TrimSpace(sh.At(row, first).Text), ":")
	cell, at := sh.At(row, first+1), sh.at(row, first+1)
	if strings.TrimSpace(cell.Text) == "" && (maybe || s.keyed(label) != nil || s.inner(label) != nil) {
		return !maybe
	}
	if c := s.keyed(label); c != nil {
		if c.merged {
			s.putSources(&s.plan, *c, s.sourcesIn(*c, cell, at))
		} else {
			s.place(&s.plan, *c, s.resolved(c.key, s.cellValue(c.key, cell, at)))
		}
		return true
	}
	if k := s.inner(label); k != nil {
		s.innerRow(*k, strings.TrimSpace(cell.Text), at)
		return true
	}
	if maybe {
		return false
	}
	var names []string
	hint := ""
	for _, c := range sheetColumns()[planSheet] {
		if names = append(names, c.label()); hint == "" && plainWord(c.key.Name) == plainWord(label) {
			hint = "did you mean " + c.label() + "?"
		}
	}
	if hint == "" {
		hint = meant(label, names)
	}
	if i := sheetNamed(label); hint == "" && i > planSheet {
		hint = "it has a sheet of its own, " + sheetNames[i]
	}
	s.fault(sh.at(row, first), hint, "plan has no key %q; expected one of %s", shorten(label), some(names))
	return true
}

// keyed is the column that a label of the plan stands for.
func (s *sheetReader) keyed(label string) *column {
	word := plainWord(label)
	if other, ok := otherKeys[word]; ok {
		word = other
	}
	var c column
	if known(planSheet, word, &c) == "" {
		return nil
	}
	return &c
}

// inner is the key of the plan with keys of its own that a label names whole.
func (s *sheetReader) inner(label string) *Key {
	keys := tableOf("plan").Keys
	i := slices.IndexFunc(keys, func(k Key) bool { return k.Kind == KindKeys && plainWord(k.Name) == plainWord(label) })
	if i < 0 {
		return nil
	}
	return &keys[i]
}

// innerRow reads what stands behind such a key: yes for it with all its defaults,
// no, a fabric, or its keys in braces.
func (s *sheetReader) innerRow(k Key, text string, at Pos) {
	v := value{at: at, shape: mapping}
	switch word := ticked(strings.ToLower(text)); {
	case word == "no":
		return
	case word == "yes":
	case strings.HasPrefix(text, "{"):
		v = s.flow(k, text, at)
	case s.isNamed(text) && slices.ContainsFunc(tableOf(k.Of).Keys, func(k Key) bool { return k.Name == "fabric" }):
		s.putSources(&v, column{path: []string{"fabric"}}, []value{textAt(text, at)})
	default:
		v = textAt(text, at)
	}
	for i, p := range s.plan.pairs {
		if p.key == k.Name && p.val.shape == mapping && v.shape == mapping {
			s.plan.pairs[i].val.pairs = append(p.val.pairs, v.pairs...)
			return
		}
	}
	s.place(&s.plan, column{path: []string{k.Name}}, v)
}
