package plan

import (
	"cmp"
	"fmt"
	"strings"

	"cutbinder/layout/length"
)

// textField reads a text; line breaks and runs of spaces become one space.
func textField[T any](name, doc, example string, at func(*T) *string) field[T] {
	return field[T]{Key{Name: name, Kind: KindText, Doc: doc, Example: example}, func(r *reader, k Key, v value, into *T) {
		if s, ok := r.text(k, v); ok {
			*at(into) = strings.Join(strings.Fields(s), " ")
		}
	}}
}

// countField reads a whole number from least to most.
func countField[T any](name, doc, example string, least, most int, at func(*T) *int) field[T] {
	return field[T]{Key{Name: name, Kind: KindCount, Doc: doc, Example: example}, func(r *reader, k Key, v value, into *T) {
		if n, ok := r.count(k, v, least, most); ok {
			*at(into) = n
		}
	}}
}

// lengthField reads a length within limits.
func lengthField[T any](name, doc, example string, within limits, at func(*T) *length.Length) field[T] {
	return field[T]{Key{Name: name, Kind: KindLength, Doc: doc, Example: example}, func(r *reader, k Key, v value, into *T) {
		if l, ok := r.length(k, v, within); ok {
			*at(into) = l
		}
	}}
}

// sizeField reads a size whose sides are above zero and no WOF.
func sizeField[T any](name, doc, example string, at func(*T) *length.Size) field[T] {
	return field[T]{Key{Name: name, Kind: KindSize, Doc: doc, Example: example}, func(r *reader, k Key, v value, into *T) {
		if z, ok := r.size(k, v, false); ok {
			*at(into) = z
		}
	}}
}

// percentField reads a percentage up to most.
func percentField[T any](name, doc, example string, most Percent, at func(*T) *Percent) field[T] {
	return field[T]{Key{Name: name, Kind: KindPercent, Doc: doc, Example: example}, func(r *reader, k Key, v value, into *T) {
		if p, ok := r.percent(k, v, most); ok {
			*at(into) = p
		}
	}}
}

// flagField reads yes or no.
func flagField[T any](name, doc, example string, at func(*T) *bool) field[T] {
	return field[T]{Key{Name: name, Kind: KindFlag, Doc: doc, Example: example, Default: "no"}, func(r *reader, k Key, v value, into *T) {
		if b, ok := r.flag(k, v); ok {
			*at(into) = b
		}
	}}
}

// An option is one choice of a key and what it stands for.
type option[C any] struct {
	name  string
	value C
}

// optionNames are the names of options.
func optionNames[C any](options []option[C]) (names []string) {
	for _, o := range options {
		names = append(names, o.name)
	}
	return names
}

// choiceField reads one of some options.
func choiceField[T, C any](name, doc string, options []option[C], at func(*T) *C) field[T] {
	k := Key{Name: name, Kind: KindChoice, Doc: doc, Example: options[0].name, Choices: optionNames(options)}
	return field[T]{k, func(r *reader, k Key, v value, into *T) {
		if i, ok := r.choice(k, v); ok {
			*at(into) = options[i].value
		}
	}}
}

// gridField reads two counts, "5 x 6".
func gridField[T any](name, doc, example string, at func(*T) (across, down *int)) field[T] {
	return field[T]{Key{Name: name, Kind: KindGrid, Doc: doc, Example: example}, func(r *reader, k Key, v value, into *T) {
		if a, d, ok := r.grid(k, v); ok {
			across, down := at(into)
			*across, *down = a, d
		}
	}}
}

// fabricFields reads where something is cut from: the keys fabric and mix.
func fabricFields[T any](at func(*T) *Source) []field[T] {
	read := func(r *reader, k Key, v value, into *T) {
		if s, ok := r.source(k, v); ok {
			*at(into) = s
		}
	}
	return []field[T]{
		{Key{Name: "fabric", Kind: KindFabric, Doc: "The fabric it is cut from.", Example: "dusk"}, read},
		{Key{Name: "mix", Kind: KindMix, Doc: "The mix whose fabrics it is cut from.", Example: "nightprints"}, read},
	}
}

// sourceField reads the name of a fabric or a mix.
func sourceField[T any](name, doc, example string, at func(*T) *Source) field[T] {
	return field[T]{Key{Name: name, Kind: KindSource, Doc: doc, Example: example}, func(r *reader, k Key, v value, into *T) {
		if s, ok := r.source(k, v); ok {
			*at(into) = s
		}
	}}
}

// listed is the hint where fabrics are written as a list of their names.
func listed(k Key, v value) string {
	var names []string
	for _, item := range v.items {
		if !isName(item) {
			return ""
		}
		names = append(names, item.text+": {}")
	}
	if k.Of != "fabric" || len(names) == 0 || len(names) > 8 {
		return ""
	}
	return fmt.Sprintf("write %s: {%s}", k.Name, strings.Join(names, ", "))
}

// keysField reads a mapping by a table of its own; set takes what was read and
// its places.
func keysField[T, S any](name, doc, example string, of *table[S], set func(r *reader, into *T, v value)) field[T] {
	return field[T]{Key{Name: name, Kind: KindKeys, Doc: doc, Example: example, Of: of.name}, func(r *reader, k Key, v value, into *T) {
		if v.shape != mapping {
			hint := cmp.Or(of.wrapped("fabric", v), of.wrapped("by", v))
			if yes, _ := yesOrNo(v); yes && !of.has("fabric") {
				hint = "write " + k.Name + ": {} for the usual"
			}
			r.rejectFor(k, v, hint)
			return
		}
		set(r, into, v)
	}}
}

// listField reads a list of mappings by a table of their own, most at most; a
// single mapping stands for a list of one.
func listField[T, S any](name, doc, example string, most int, of *table[S], add func(r *reader, into *T, v value)) field[T] {
	return field[T]{Key{Name: name, Kind: KindList, Doc: doc, Example: example, Of: of.name}, func(r *reader, k Key, v value, into *T) {
		items := v.items
		if v.shape == mapping {
			items = []value{v}
		}
		if v.shape == text {
			r.reject(k, v)
			return
		}
		if r.tooMany(k, v, len(items), most) {
			return
		}
		for _, item := range items {
			add(r, into, item)
		}
	}}
}

// namedField reads names of the writer's own with a mapping under each, most at
// most.
func namedField[T any](name, doc, example string, kind Kind, of string, most int, add func(r *reader, into *T, p pair)) field[T] {
	return field[T]{Key{Name: name, Kind: kind, Doc: doc, Example: example, Of: of}, func(r *reader, k Key, v value, into *T) {
		if v.shape != mapping {
			r.rejectFor(k, v, listed(k, v))
			return
		}
		if r.tooMany(k, v, len(v.pairs), most) {
			return
		}
		for _, p := range v.pairs {
			if r.goodName(k, p) {
				add(r, into, p)
			}
		}
	}}
}
