package plan

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// A Kind is what a key's value is.
type Kind string

// The kinds.
const (
	KindText    Kind = "text"
	KindCount   Kind = "count"   // a whole number
	KindLength  Kind = "length"  // "4 1/2"
	KindSize    Kind = "size"    // "3 1/2 x 6 1/2"
	KindPercent Kind = "percent" // "5%"
	KindFlag    Kind = "flag"    // yes or no
	KindChoice  Kind = "choice"  // one of Choices
	KindColour  Kind = "colour"  // "#4a5578"
	KindGrid    Kind = "grid"    // "5 x 6", two counts
	KindFabric  Kind = "fabric"  // the name of a fabric
	KindFabrics Kind = "fabrics" // a list of names of fabrics
	KindMix     Kind = "mix"     // the name of a mix
	KindSource  Kind = "source"  // the name of either
	KindSources Kind = "sources" // a list of names of either
	KindChoices Kind = "choices" // one or a list of Choices
	KindHave    Kind = "have"    // a cloth or a list of cloths; each may be a mapping as Of
	KindDone    Kind = "done"    // yes, or a cut size or a list of them
	KindShrink  Kind = "shrink"  // a percentage, or a mapping as Of
	KindKeys    Kind = "keys"    // a mapping as Of
	KindList    Kind = "list"    // a list of mappings as Of
	KindNamed   Kind = "named"   // names of the writer's own, each with a mapping as Of
	KindMixes   Kind = "mixes"   // names of the writer's own, each with a list of fabrics
	KindReasons Kind = "reasons" // names of findings, each with a text
	KindRows    Kind = "rows"    // a list of rows, each a list or a text of block names
	KindCells   Kind = "cells"   // a list of rows, each a list or a text of cells, or a text of several lines
	KindLetters Kind = "letters" // short names of the writer's own, each for a fabric or a mix
	KindLengths Kind = "lengths" // a list of lengths
)

// expectations are what messages say of each kind.
var expectations = map[Kind]string{
	KindText: "a text", KindCount: "a whole number", KindLength: "a length", KindSize: "a size",
	KindPercent: "a percentage", KindFlag: "yes or no", KindColour: "a colour", KindGrid: "two whole numbers",
	KindFabric: "the name of a fabric", KindMix: "the name of a mix", KindSource: "the name of a fabric or mix",
	KindFabrics: "a list of fabrics", KindSources: "a list of fabrics and mixes", KindHave: "a length of cloth or a list of them",
	KindShrink: "a percentage", KindKeys: "keys with values", KindList: "a list", KindNamed: "names with keys under them",
	KindMixes: "names with lists of fabrics", KindReasons: "names of findings with reasons", KindRows: "a list of rows",
	KindDone:  "yes, or a list of cut sizes",
	KindCells: "rows of cells", KindLetters: "short names, each for a fabric or mix", KindLengths: "a list of lengths",
}

// A Key is one key of a mapping in a plan file, as data: the reader works from
// it, and so does whatever describes plans to other tools.
type Key struct {
	Name     string
	Kind     Kind
	Doc      string   // one sentence
	Example  string   // a value as it is written
	Default  string   // what stands where the key isn't written; "" for nothing
	Choices  []string // of KindChoice and KindChoices
	Of       string   // the Table of what stands under it
	Required bool
}

// expected is what a message says was expected.
func (k Key) expected() string {
	what := expectations[k.Kind]
	if k.Kind == KindChoice || k.Kind == KindChoices {
		return "one of " + strings.Join(k.Choices, ", ")
	}
	if k.Example == "" || k.Kind == KindFlag {
		return what
	}
	return what + " such as " + k.Example
}

// A Table is the keys that one kind of mapping may have.
type Table struct {
	Name string // "fabric": what a mapping of it describes
	Doc  string
	Keys []Key
}

// A field is a key and how its value gets into a T. v is never nothing.
type field[T any] struct {
	Key
	read func(r *reader, k Key, v value, into *T)
}

// required marks the key as one that must be written.
func (f field[T]) required() field[T] {
	f.Required = true
	return f
}

// by states the default, for descriptions.
func (f field[T]) by(text string) field[T] {
	f.Default = text
	return f
}

// A table reads a mapping into a T. Fields are read in their order, whatever the
// order in the file.
type table[T any] struct {
	name, doc string
	fields    []field[T]
}

// data gives the table without its reading.
func (t *table[T]) data() Table {
	keys := make([]Key, len(t.fields))
	for i, f := range t.fields {
		keys[i] = f.Key
	}
	return Table{t.name, t.doc, keys}
}

// read fills into from a mapping and gives the places of its keys. ok is false
// where it is no mapping.
func (t *table[T]) read(r *reader, v value, into *T) (n Node, ok bool) {
	n = Node{At: v.at, Keys: make(map[string]Pos, len(v.pairs))}
	if v.shape == broken {
		return Node{At: v.at}, false
	}
	if v.shape != mapping && v.shape != nothing {
		n.Keys = nil // nothing was read
		r.fault(v.at, t.wrapped("name", v), "found %s; expected the keys of %s, such as %s", found(v), t.name, t.hint())
		return n, false
	}
	if v.loose {
		if r.loose == nil {
			r.loose = map[Pos]bool{}
		}
		r.loose[v.at] = true
	}
	byName := make(map[string]value, len(v.pairs))
	for _, p := range v.pairs {
		if !t.has(p.key) {
			r.unknownKey(t.data(), v.at, p)
			continue
		}
		n.Keys[p.key] = p.val.at
		byName[p.key] = p.val
	}
	for _, f := range t.fields {
		switch val, written := byName[f.Name]; {
		case written && val.shape == broken:
		case written && val.shape == nothing:
			r.noValue(f.Key, val.at)
		case written:
			f.read(r, f.Key, val, into)
		case f.Required && !r.misspelt(n, f.Name):
			r.fault(v.at, "write "+f.Name+": "+f.Example, "key %q is missing from the %s; expected %s", f.Name, t.name, f.expected())
		}
	}
	return n, true
}

// wrapped is the hint to put a name under a key that the table has; "" where it
// has none, or what was read is no name.
func (t *table[T]) wrapped(key string, v value) string {
	if !isName(v) || !t.has(key) {
		return ""
	}
	return fmt.Sprintf("write {%s: %s}", key, v.text)
}

// has says whether a mapping of the table may have a key.
func (t *table[T]) has(key string) bool {
	return slices.ContainsFunc(t.fields, func(f field[T]) bool { return f.Name == key })
}

// isName says whether a value is a text that may name something: words that YAML
// reads as they are.
func isName(v value) bool {
	first, _ := utf8.DecodeRuneInString(v.text)
	_, flag := yesOrNo(v)
	return v.shape == text && !flag && len(v.text) <= maxName && unicode.IsLetter(first) &&
		!strings.ContainsFunc(v.text, func(r rune) bool { return r != ' ' && r != '-' && !unicode.IsLetter(r) && !unicode.IsDigit(r) })
}

// hint shows what a mapping of the table may begin with.
func (t *table[T]) hint() string {
	if t.name == "piece" { // its first key alone says too little
		return "cut: 2 1/2, need: 40, fabric: dusk"
	}
	f := t.fields[0]
	for _, g := range t.fields {
		if g.Required {
			f = g
			break
		}
	}
	if f.Example == "" {
		return f.Name
	}
	return f.Name + ": " + f.Example
}

// found says what a value is, with its text.
func found(v value) string {
	if v.shape == text {
		return fmt.Sprintf("%q", shorten(v.text))
	}
	return v.shape.String()
}

// shorten keeps a message readable whatever was read.
func shorten(s string) string {
	if r := []rune(s); len(r) > 60 {
		return string(r[:57]) + "..."
	}
	return s
}
