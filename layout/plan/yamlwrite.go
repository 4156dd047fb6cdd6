package plan

import (
	"bytes"
	"strings"

	"go.yaml.in/yaml/v3"
)

// widest is how long a line may get that holds a mapping or a list whole.
const widest = 100

// formatYAML writes a plan's values as YAML: the plan's keys a line each, and
// what stands in them on one line where there is room.
func formatYAML(v value) []byte {
	var out bytes.Buffer
	enc := yaml.NewEncoder(&out)
	enc.SetIndent(2)
	enc.Encode(nodeOf(v, 0)) // a buffer takes everything, and nodeOf's nodes are whole
	enc.Close()
	return out.Bytes()
}

// flowText writes a value within a line.
func flowText(v value) string {
	var out bytes.Buffer
	n := nodeOf(v, 0)
	inFlow(n)
	enc := yaml.NewEncoder(&out)
	enc.Encode(n)
	enc.Close()
	return strings.TrimSpace(out.String())
}

// nodeOf makes a value into a node; depth is how many values it stands in.
func nodeOf(v value, depth int) *yaml.Node {
	n := &yaml.Node{}
	switch v.shape {
	case text:
		n.Kind, n.Value = yaml.ScalarNode, v.text
		if strings.Contains(v.text, "\n") {
			n.Style = yaml.LiteralStyle
		}
		if plainNull(v.text) || !plainText(v.text) {
			n.Style = yaml.DoubleQuotedStyle
		}
	case list:
		n.Kind = yaml.SequenceNode
		for _, item := range v.items {
			n.Content = append(n.Content, nodeOf(item, depth+1))
		}
	case mapping:
		n.Kind = yaml.MappingNode
		for _, p := range v.pairs {
			n.Content = append(n.Content, nodeOf(textAt(p.key, p.at), depth), nodeOf(p.val, depth+1))
		}
	default:
		n.Kind, n.Tag, n.Value = yaml.ScalarNode, "!!null", ""
		if depth > 0 {
			n.Kind, n.Tag = yaml.MappingNode, ""
		}
	}
	if (v.shape == list || v.shape == mapping) && depth > 0 && inLine(v, depth) {
		inFlow(n)
	}
	return n
}

// inLine says whether a value stands on one line: where there is room, and but for
// names and lines of pieces, which are easier to read and to change below each
// other.
func inLine(v value, depth int) bool {
	s := v.String()
	if len(s) > widest || v.shape == list && isLines(v) || strings.Contains(s, "\n") || strings.Contains(s, "pieces: [") || strings.Contains(s, "pieces: {") {
		return false
	}
	holds := func(v value) bool { return v.shape == list || v.shape == mapping }
	for _, p := range v.pairs {
		if depth == 1 && holds(p.val) {
			return false
		}
	}
	for _, item := range v.items {
		if depth == 1 && holds(item) {
			return false
		}
	}
	return true
}

// isLines says whether a list is one of lines of pieces.
func isLines(v value) bool {
	return len(v.items) > 0 && (v.items[0].get("each").shape == text || v.items[0].get("need").shape == text)
}

// plainNull says whether a text without quotes would stand for nothing, or for
// what plans do not use.
func plainNull(s string) bool {
	switch strings.ToLower(s) {
	case "", "~", "null", "<<":
		return true
	}
	return false
}

// plainText says whether a text can stand in YAML without the escapes of double
// quotes.
func plainText(s string) bool {
	for _, r := range s {
		if r < ' ' && r != '\n' || r == 0x7f || r == '\u0085' || r == '\u2028' || r == '\u2029' || r == '\ufeff' {
			return false
		}
	}
	return strings.TrimSpace(s) == s
}

// inFlow makes a node and what is in it stand within a line.
func inFlow(n *yaml.Node) {
	n.Style |= yaml.FlowStyle
	if n.Kind == yaml.ScalarNode {
		n.Style &^= yaml.FlowStyle
		if n.Style == yaml.LiteralStyle {
			n.Style = yaml.DoubleQuotedStyle
		}
	}
	for _, c := range n.Content {
		inFlow(c)
	}
}

// String is a value about as it stands within a line of YAML.
func (v value) String() string {
	var parts []string
	for _, item := range v.items {
		parts = append(parts, item.String())
	}
	for _, p := range v.pairs {
		parts = append(parts, p.key+": "+p.val.String())
	}
	switch v.shape {
	case list:
		return "[" + strings.Join(parts, ", ") + "]"
	case mapping:
		return "{" + strings.Join(parts, ", ") + "}"
	}
	return v.text
}
