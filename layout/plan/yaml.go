package plan

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"go.yaml.in/yaml/v3"
)

// parseYAML makes the file's single document into values. ok is false where the
// file can't be read at all; then there is at least one fault.
func parseYAML(file string, data []byte) (v value, ps Problems, ok bool) {
	if ps = unreadable(file, data); len(ps) > 0 {
		return v, ps, false
	}
	dec := yaml.NewDecoder(bytes.NewReader(data))
	var doc, next yaml.Node
	err := dec.Decode(&doc)
	if err == io.EOF || err == nil && isNull(&doc) {
		at := Pos{File: file, Line: 1, Col: 1}
		return v, Problems{{At: at, What: "the file holds no plan", Hint: "start with a line such as plan: Lantern Row"}}, false
	}
	if err == nil {
		switch err = dec.Decode(&next); {
		case err == nil:
			at := Pos{File: file, Line: next.Line, Col: next.Column}
			return v, Problems{{At: at, What: "a second plan begins here; expected one plan a file",
				Hint: "leave the line of three hyphens out, or put the second plan in a file of its own"}}, false
		case err == io.EOF:
			err = nil
		}
	}
	if err != nil {
		return v, Problems{syntaxFault(file, data, err)}, false
	}
	c := converter{file: file, data: data}
	v = c.value(doc.Content[0], 0)
	return v, c.faults, true
}

// isNull says whether a document holds nothing.
func isNull(doc *yaml.Node) bool {
	return len(doc.Content) == 0 || doc.Content[0].Kind == yaml.ScalarNode && doc.Content[0].Tag == "!!null"
}

// unreadable finds what makes a file not worth parsing: its size, its encoding.
func unreadable(file string, data []byte) Problems {
	at := Pos{File: file, Line: 1, Col: 1}
	if len(data) > maxBytes {
		return Problems{{At: at, What: fmt.Sprintf("the file has %d bytes; expected at most %d", len(data), maxBytes)}}
	}
	if bytes.HasPrefix(data, []byte("\xff\xfe")) || bytes.HasPrefix(data, []byte("\xfe\xff")) {
		return Problems{{At: at, What: "the file is in UTF-16; expected UTF-8", Hint: "save it again as UTF-8"}}
	}
	marks := 0
	for i := 0; i < len(data); {
		r, n := utf8.DecodeRune(data[i:])
		switch {
		case r == utf8.RuneError && n == 1:
			return Problems{{At: placeOf(file, data, i), What: fmt.Sprintf("byte %#02x is not text; expected a text file in UTF-8", data[i]),
				Hint: "save the plan as UTF-8, and check that this is the plan's file"}}
		case r < ' ' && r != '\t' && r != '\n' && r != '\r' || r == 0x7f:
			return Problems{{At: placeOf(file, data, i), What: fmt.Sprintf("control character %#02x found; expected a text file", r),
				Hint: "check that this is the plan's file"}}
		case r == ',' || r == '\n' || r == '\r' || r == ':' || r == '[' || r == '{' || r == '-' || r == '?':
			marks++
		}
		i += n
	}
	if marks > maxMarks {
		return Problems{{At: at, What: fmt.Sprintf("the file holds too many values (%d signs that part values); expected at most %d", marks, maxMarks)}}
	}
	return nil
}

// A converter makes YAML's nodes into values and notes what plans don't use.
type converter struct {
	file   string
	data   []byte
	cell   *Pos // the place of everything, where the data stands in a cell
	faults Problems
}

// fault notes a problem at a node.
func (c *converter) fault(n *yaml.Node, what, hint string) {
	if len(c.faults) < maxFaults {
		c.faults = append(c.faults, Problem{At: c.at(n), What: what, Hint: hint})
	}
}

// at is a node's place.
func (c *converter) at(n *yaml.Node) Pos {
	if c.cell != nil {
		return *c.cell
	}
	return Pos{File: c.file, Line: n.Line, Col: n.Column}
}

// start is where a text's first character stands: behind a quote, and of a text
// of several lines behind the indentation of the line below its mark.
func (c *converter) start(n *yaml.Node) Pos {
	at := c.at(n)
	switch {
	case c.cell != nil:
	case n.Style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle) != 0:
		at.Col++
	case n.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0:
		at.Line, at.Col = at.Line+1, 1
		if lines := bytes.SplitN(c.data, []byte("\n"), at.Line+1); len(lines) >= at.Line {
			line := lines[at.Line-1]
			at.Col += len(line) - len(bytes.TrimLeft(line, " "))
		}
	}
	return at
}

// value converts a node; depth is how many values it stands in.
func (c *converter) value(n *yaml.Node, depth int) value {
	v := value{at: c.at(n), shape: broken}
	switch {
	case depth > maxDepth:
		c.fault(n, fmt.Sprintf("values stand in one another more than %d deep", maxDepth), "")
		return v
	case n.Kind == yaml.AliasNode:
		c.fault(n, fmt.Sprintf("*%s refers to another value, which plans do not do", n.Value), "write the value out here; a text that starts with * needs quotes")
		return v
	case n.Anchor != "":
		c.fault(n, fmt.Sprintf("&%s marks a value to be used again, which plans do not do", n.Anchor), "leave it out; a text that starts with & needs quotes")
	}
	if n.Style&yaml.TaggedStyle != 0 {
		c.fault(n, fmt.Sprintf("%s says what type a value is, which plans do not do", n.Tag), "leave it out; a text that starts with ! needs quotes")
	}
	switch n.Kind {
	case yaml.ScalarNode:
		v.shape = nothing
		if n.Tag != "!!null" {
			v.shape, v.text, v.start = text, n.Value, c.start(n)
		}
	case yaml.SequenceNode:
		v.shape = list
		v.items = make([]value, len(n.Content))
		for i, item := range n.Content {
			v.items[i] = c.value(item, depth+1)
		}
	case yaml.MappingNode:
		v.shape = mapping
		v.pairs = c.pairs(n, depth)
	}
	return v
}

// pairs converts a mapping's keys and values; keys that are no text and keys that
// were written before are faults and left out.
func (c *converter) pairs(n *yaml.Node, depth int) []pair {
	pairs := make([]pair, 0, len(n.Content)/2)
	seen := make(map[string]int, len(n.Content)/2)
	for i := 0; i+1 < len(n.Content); i += 2 {
		key, val := n.Content[i], n.Content[i+1]
		first, again := seen[key.Value]
		switch {
		case key.Kind != yaml.ScalarNode || key.Anchor != "" || key.Style&yaml.TaggedStyle != 0:
			c.fault(key, "expected a plain word as the key", "")
		case key.Tag == "!!merge":
			c.fault(key, "<< takes keys over from elsewhere, which plans do not do", "write the keys out here")
		case again:
			c.fault(key, fmt.Sprintf("key %q is written twice; it stands on line %d too", key.Value, first), "keep one of them")
		default:
			seen[key.Value] = key.Line
			v := c.value(val, depth+1)
			if v.shape == nothing {
				v.at = c.at(key) // YAML places a missing value behind the key
			}
			pairs = append(pairs, pair{c.at(key), key.Value, v})
		}
	}
	return pairs
}

// Remarks counts the lines of remarks in a plan's file; a spreadsheet has none
// that count.
func Remarks(name string, data []byte) (n int) {
	var doc yaml.Node
	if isSheets(name, data) || yaml.Unmarshal(data, &doc) != nil {
		return 0
	}
	var count func(*yaml.Node)
	count = func(node *yaml.Node) {
		for _, c := range []string{node.HeadComment, node.LineComment, node.FootComment} {
			n += lines(c)
		}
		for _, c := range node.Content {
			count(c)
		}
	}
	count(&doc)
	return n
}

// lines counts the lines of a text that hold something.
func lines(text string) (n int) {
	for line := range strings.Lines(text) {
		if strings.TrimSpace(line) != "" {
			n++
		}
	}
	return n
}
