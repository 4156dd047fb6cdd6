package plan

import (
	"bytes"
	"regexp"
	"strings"

	"go.yaml.in/yaml/v3"

	"cutbinder/layout/workbook"
)

// cellValue makes a cell into the value of a key. A cell that can't be what its
// key takes is a fault, and the value broken.
func (s *sheetReader) cellValue(k Key, c workbook.Cell, at Pos) value {
	text := strings.TrimSpace(c.Text)
	if !s.sound(k, c, at) {
		return value{at: at, shape: broken}
	}
	switch k.Kind {
	case KindFabric, KindMix, KindSource, KindSources, KindFabrics:
		if s.isNamed(text) {
			return textAt(text, at)
		}
	}
	if asFlow(k, text) {
		return s.flow(k, text, at)
	}
	switch k.Kind {
	case KindFlag:
		text = ticked(text)
	case KindColour:
		if bareColour.MatchString(text) {
			text = "#" + text
		}
	case KindHave, KindDone:
		return parted(text, at, ";\n")
	case KindChoices, KindFabrics, KindSources:
		return parted(text, at, ",;\n")
	case KindLengths:
		v := parted(strings.ReplaceAll(text, ", ", ";"), at, ";\n")
		if v.shape != list {
			v = value{at: at, shape: list, items: []value{v}}
		}
		return v
	}
	return textAt(text, at)
}

// bareColour is a colour whose sign was left out.
var bareColour = regexp.MustCompile(`^(?:[0-9A-Fa-f]{3}|[0-9A-Fa-f]{6})$`)

// textAt is a text in a cell.
func textAt(s string, at Pos) value { return value{at: at, shape: text, text: s, start: at} }

// sound tells what a spreadsheet has made of a cell that the writer can't have
// meant.
func (s *sheetReader) sound(k Key, c workbook.Cell, at Pos) bool {
	switch {
	case c.Kind == workbook.Broken:
		s.fault(at, "mend the formula, or type the value", "%s: the spreadsheet could not compute the cell (%s); expected %s", k.Name, shorten(c.Text), k.expected())
	case c.Kind == workbook.Uncomputed:
		s.fault(at, "open the workbook in a spreadsheet program and save it, or type the value",
			"%s: the cell holds a formula (%s) whose value is not stored; expected %s", k.Name, shorten(c.Text), k.expected())
	case c.Kind == workbook.Date && k.Name != "date":
		s.fault(at, "give the column the format Text and type the value again; a fraction alone can be typed as 0 1/2",
			"%s: the spreadsheet has made a date (%s) of what was typed; expected %s", k.Name, c.Text, k.expected())
	case c.Merged && !mayMerge(k):
		s.fault(at, "take the merging off and write a value into each", "%s: the cell is merged with the one above; expected a value of its own", k.Name)
	default:
		return true
	}
	return false
}

// mayMerge says whether one cell may stand for several rows: where it names what
// they belong to, not where it says how large or how many.
func mayMerge(k Key) bool {
	switch k.Kind {
	case KindText, KindFabric, KindMix, KindSource, KindSources, KindChoice, KindFlag:
		return true
	}
	return false
}

// ticked reads the ways in which people tick a cell.
func ticked(s string) string {
	switch strings.ToLower(s) {
	case "x", "y", "✓", "✔", "☑", "☒":
		return "yes"
	case "n", "☐", "-":
		return "no"
	}
	return s
}

// parted cuts a text at any of some signs; what needs no cutting stays a text.
func parted(s string, at Pos, signs string) value {
	parts := strings.FieldsFunc(s, func(r rune) bool { return strings.ContainsRune(signs, r) })
	var items []value
	for _, p := range parts {
		if p = strings.TrimSpace(p); p != "" {
			items = append(items, textAt(p, at))
		}
	}
	if len(items) < 2 {
		return textAt(strings.TrimSpace(strings.Trim(s, signs)), at)
	}
	return value{at: at, shape: list, items: items}
}

// flow reads what is written in a cell as within a line of YAML.
func (s *sheetReader) flow(k Key, text string, at Pos) value {
	if k.Kind == KindLetters && !strings.HasPrefix(text, "{") {
		text = "{" + text + "}"
	}
	if ps := unreadable("", []byte(text)); len(ps) > 0 {
		s.fault(at, "", "%s: %s", k.Name, ps[0].What)
		return value{at: at, shape: broken}
	}
	var doc yaml.Node
	if err := yaml.NewDecoder(bytes.NewReader([]byte(text))).Decode(&doc); err != nil || len(doc.Content) == 0 {
		s.fault(at, "", "%s: the brackets or braces in %q do not fit together; expected %s", k.Name, shorten(text), k.expected())
		return value{at: at, shape: broken}
	}
	c := converter{data: []byte(text), cell: &at}
	v := c.value(doc.Content[0], 0)
	s.faults = append(s.faults, c.faults...)
	return v
}
