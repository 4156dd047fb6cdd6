package plan

import (
	"slices"
	"strings"
	"unicode"
)

// cellText is a value as it is written into a cell, so that cellValue reads it
// back: as it is, a list with signs between, or as within a line of YAML.
func cellText(k Key, v value) string {
	switch {
	case v.shape == nothing:
		return ""
	case v.shape == text && (k.Kind == KindText || k.Kind == KindSource || k.Kind == KindFabric || k.Kind == KindMix):
		return v.text
	case v.shape == text && !asFlow(k, v.text):
		if k.Kind != KindHave && k.Kind != KindDone || !strings.ContainsAny(v.text, ";\n") {
			return v.text
		}
	case v.shape == list:
		if s, ok := joined(k, v); ok {
			return s
		}
	}
	return flowText(v)
}

// joined writes a list into one cell; ok is false where that would be read
// otherwise.
func joined(k Key, v value) (s string, ok bool) {
	sign, cuts := "", ""
	switch k.Kind {
	case KindHave, KindDone, KindLengths:
		sign, cuts = "; ", ";\n"
	case KindChoices, KindSources, KindFabrics:
		sign, cuts = ", ", ",;\n"
	case KindRows, KindCells:
		return drawn(v)
	default:
		return "", false
	}
	var parts []string
	for _, item := range v.items {
		if item.shape != text || item.text == "" || strings.ContainsAny(item.text, cuts+"[{") || k.Kind == KindLengths && strings.Contains(item.text, ", ") {
			return "", false
		}
		parts = append(parts, item.text)
	}
	return strings.Join(parts, sign), len(parts) > 0
}

// drawn writes rows of words, a line for each.
func drawn(v value) (s string, ok bool) {
	var lines []string
	for _, row := range v.items {
		words := []string{row.text}
		if row.shape == list {
			words = nil
			for _, item := range row.items {
				words = append(words, item.text)
			}
		}
		spaced := func(w string) bool { return w == "" || strings.ContainsFunc(w, unicode.IsSpace) }
		if row.shape == list && slices.ContainsFunc(words, spaced) || strings.Contains(row.text, "\n") {
			return "", false
		}
		lines = append(lines, strings.Join(words, " "))
	}
	s = strings.Join(lines, "\n")
	return s, s != "" && !asFlow(Key{Kind: KindCells}, s)
}

// asFlow says whether a cell's text is read as within a line of YAML.
func asFlow(k Key, s string) bool {
	switch k.Kind {
	case KindText:
		return false
	case KindLetters:
		return true
	case KindRows, KindCells:
		return s != "" && strings.ContainsAny(s[:1], `[{"'`)
	}
	return s != "" && strings.ContainsAny(s[:1], "[{")
}
