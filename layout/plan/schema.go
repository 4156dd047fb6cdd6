package plan

import (
	"encoding/json"
	"strings"
)

// Schema is a JSON Schema (draft 7, which editors know best) of plans as YAML,
// made from the tables that the reader works from. It knows the shape of a plan:
// the keys, where lists and texts stand, and the choices, these in lower case.
// What only reading shows, such as a fabric that isn't there, it leaves to Read.
func Schema() []byte {
	s := object{
		"$schema":     "http://json-schema.org/draft-07/schema#",
		"title":       "cutbinder plan",
		"definitions": object{},
	}
	for i, t := range Tables() {
		if of := tableSchema(t); i == 0 {
			for key, value := range of {
				s[key] = value
			}
		} else {
			s["definitions"].(object)[schemaName(t.Name)] = of
		}
	}
	out, _ := json.MarshalIndent(s, "", " ") // texts, lists and maps of them
	return append(out, '\n')
}

// An object is a JSON object; the encoder sorts its keys.
type object = map[string]any

// schemaName is a table's name in the schema.
func schemaName(table string) string {
	return strings.ReplaceAll(strings.ReplaceAll(table, "'s", ""), " ", "-")
}

// tableSchema describes the mappings of a table.
func tableSchema(t Table) object {
	keys, required := object{}, []string{}
	for _, k := range t.Keys {
		of := kindSchema(k)
		of["description"] = describe(k)
		if k.Example != "" {
			of["examples"] = []any{exampleOf(k)}
		}
		keys[k.Name] = of
		if k.Required {
			required = append(required, k.Name)
		}
	}
	s := object{"type": "object", "description": t.Doc, "properties": keys, "additionalProperties": false}
	if len(required) > 0 {
		s["required"] = required
	}
	return s
}

// describe is what an editor shows of a key.
func describe(k Key) string {
	if k.Default == "" {
		return k.Doc
	}
	return k.Doc + " Without it: " + k.Default + "."
}

// exampleOf is a key's example as JSON, where it is a plain value, or as it is
// written.
func exampleOf(k Key) any { return strings.Trim(k.Example, `"`) }

// Parts of schemas that several kinds share. A plain text in YAML may look like a
// number or like yes and no.
var (
	anyText = object{"type": []string{"string", "number", "boolean"}, "not": object{"enum": []any{""}}}
)

// list1 is one or a list of one at least.
func list1(of object) object {
	return object{"anyOf": []any{of, object{"type": "array", "items": of, "minItems": 1}}}
}

// patterns of texts, for values that have a form.
const (
	// a number begins a length, or a word for one
	lengthForm  = `^\s*([0-9.½¼¾⅓⅔⅛⅜⅝⅞⅕⅖⅗⅘⅙⅚⅐⅑⅒]|[Hh]alf|[Qq]uarter|[Tt]hird|[Ee]ighth|[Aa]n?\s|[Oo]ne\s|[Tt]wo\s|[Tt]hree[\s-]|[Ff]our\s|[Ff]ive\s)`
	sizeForm    = `^\s*([Ww][Oo][Ff]\b|[0-9.½¼¾⅓⅔⅛⅜⅝⅞⅕⅖⅗⅘⅙⅚⅐⅑⅒]|[Hh]alf|[Qq]uarter|[Tt]hird|[Ee]ighth|[Aa]n?\s|[Oo]ne\s|[Tt]wo\s|[Tt]hree[\s-]|[Ff]our\s|[Ff]ive\s)`
	percentForm = `^\s*[0-9.]+\s*%?\s*$`
	gridForm    = `^\s*[1-9][0-9]*\s*[xX×]\s*[1-9][0-9]*\s*$`
	countForms  = `^\s*[+]?[0-9]+\s*$`
)

// formed is a text of a form, or a number not below zero.
func formed(pattern string) object {
	return object{"anyOf": []any{object{"type": "number", "minimum": 0}, object{"type": "string", "pattern": pattern}}}
}

// kindSchema describes the values of a kind.
func kindSchema(k Key) object {
	of := object{"$ref": "#/definitions/" + schemaName(k.Of)}
	switch k.Kind {
	case KindCount:
		return object{"anyOf": []any{object{"type": "integer", "minimum": 0}, object{"type": "string", "pattern": countForms}}}
	case KindLength:
		if k.Name == "generous" {
			return object{"anyOf": []any{formed(lengthForm), object{"enum": []any{true, false, "yes", "no"}}}}
		}
		return formed(lengthForm)
	case KindSize:
		return formed(sizeForm)
	case KindPercent:
		return formed(percentForm)
	case KindGrid:
		return object{"type": "string", "pattern": gridForm}
	case KindFlag:
		return object{"enum": []any{true, false, "yes", "no", "Yes", "No", "YES", "NO", "true", "false"}}
	case KindChoice:
		return object{"enum": choicesOf(k)}
	case KindChoices:
		return list1(object{"enum": choicesOf(k)})
	case KindColour:
		return object{"type": "string", "pattern": `^\s*#([0-9A-Fa-f]{3}|[0-9A-Fa-f]{6})\s*$`}
	case KindFabrics:
		return object{"type": "array", "items": anyText, "minItems": 1}
	case KindSources:
		return list1(anyText)
	case KindLengths:
		return list1(formed(lengthForm))
	case KindHave:
		return list1(object{"anyOf": []any{of, object{"type": []string{"string", "number"}}}})
	case KindDone:
		return list1(object{"anyOf": []any{formed(sizeForm), object{"enum": []any{true, false, "yes", "no"}}}})
	case KindShrink:
		return object{"anyOf": []any{of, formed(percentForm)}}
	case KindKeys:
		return object{"allOf": []any{of}}
	case KindList:
		return list0(of)
	default:
		return namesSchema(k, of)
	}
}

// list0 is one mapping or a list of them.
func list0(of object) object {
	return object{"anyOf": []any{of, object{"type": "array", "items": object{"anyOf": []any{of}}}}}
}

// namesSchema describes mappings with names of the writer's own, and texts.
func namesSchema(k Key, of object) object {
	names := func(of object) object { return object{"type": "object", "additionalProperties": of} }
	row := object{"anyOf": []any{object{"type": []string{"string", "number", "boolean"}}, object{"type": "array", "items": anyText}}}
	switch k.Kind {
	case KindNamed:
		return names(object{"anyOf": []any{of, object{"type": "null"}}})
	case KindMixes:
		return names(object{"type": "array", "items": anyText, "minItems": 1})
	case KindReasons:
		return names(anyText)
	case KindLetters:
		return names(anyText)
	case KindRows, KindCells:
		return object{"anyOf": []any{object{"type": "string"}, object{"type": "array", "items": row, "minItems": 1}}}
	}
	return clone(anyText)
}

// choicesOf are a key's choices; YAML takes a bare no for a choice's word or for
// false.
func choicesOf(k Key) (all []any) {
	for _, c := range k.Choices {
		if all = append(all, c); c == "no" {
			all = append(all, false)
		}
	}
	return all
}

// clone is a schema of its own, to which a description may be added.
func clone(s object) object {
	c := object{}
	for key, value := range s {
		c[key] = value
	}
	return c
}
