package plan

import (
	"bytes"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"go.yaml.in/yaml/v3"
)

// A wording is what the parser says and what a maker can act on.
type wording struct{ says, what, hint string }

// tabFound is about a tab that indents a line, which is said in several ways.
var tabFound = wording{"tab character", "the line is indented with a tab; expected spaces", "use the same number of spaces as the lines around"}

// syntaxWords are the wordings of the parser's errors.
var syntaxWords = []wording{
	{"mapping values are not allowed", "a colon is not expected here", `put a text that holds a colon between quotes, or line this key up with its neighbours`},
	tabFound,
	{"cannot start any token", "this character cannot begin a value", "put the text between quotes, and indent with spaces"},
	{"unexpected end of stream", "a quote opened here is never closed", "close it with the same quote"},
	{"',' or '}'", "{ opened here is not closed as expected; expected , between its keys and } at the end", ""},
	{"',' or ']'", "[ opened here is not closed as expected; expected , between its values and ] at the end", ""},
	{"could not find expected ':'", "expected a key and a colon, such as seam: 1/4", ""},
	{"did not find expected key", "the line does not fit those around it", "indent it as its neighbours are, and write key: value"},
	{"'-' indicator", "the line does not fit the list it stands in; expected - in front of each value", "indent it as its neighbours are"},
	{"node content", "expected a value here", ""},
	{"unknown anchor", "* refers to another value, which plans do not do", "write the value out here; a text that starts with * needs quotes"},
	{"max depth", "too many values stand in one another", ""},
	{"non-alphabetical", "a line that begins with % is not expected here", "put the text between quotes"},
	{"directive", "a line that begins with % is not expected here", "put the text between quotes"},
	{"document start", "the line does not fit those above it", "indent it as its neighbours are"},
}

// syntaxFault words a parser's error and finds its place, which the parser tells
// roughly at best.
func syntaxFault(file string, data []byte, err error) Problem {
	says := kindOf(err)
	p := Problem{What: "not readable as YAML: " + strings.TrimPrefix(says, "yaml: ")}
	for _, w := range syntaxWords {
		if strings.Contains(says, w.says) {
			p.What, p.Hint = w.what, w.hint
			break
		}
	}
	if strings.Contains(says, "',' or") {
		return unclosed(p, file, data, err)
	}
	at := breaksAt(data, says)
	p.At = placeOf(file, data, at)
	if crowded, ok := crowdedAbove(data, p.At); ok && strings.Contains(says, "mapping values") {
		return crowded
	}
	if at < len(data) && data[at] == '\t' {
		p.What, p.Hint = tabFound.what, tabFound.hint
	}
	line, indent := splitLines(string(data))[p.At.Line-1], " \t"
	if p.What == tabFound.what {
		indent = " "
	}
	if strings.Contains(p.What, "line") {
		p.At.Col = 1 + len(line) - len(strings.TrimLeft(line, indent))
	}
	return p
}

// crowded matches a key whose value follows its colon without a space.
var crowded = regexp.MustCompile(`^\s*(?:- +)?([a-z][a-z-]*):([^\s:/].*)$`)

// crowdedAbove tells of a key without a space behind its colon in the line above:
// what the parser then breaks off at is the next colon.
func crowdedAbove(data []byte, at Pos) (Problem, bool) {
	lines := splitLines(string(data))
	for n := at.Line - 1; n > 0; n-- {
		line := lines[n-1]
		if strings.TrimSpace(line) == "" || strings.HasPrefix(strings.TrimSpace(line), "#") {
			continue
		}
		m := crowded.FindStringSubmatchIndex(strings.TrimPrefix(line, "\ufeff"))
		if m == nil {
			break
		}
		line = strings.TrimPrefix(line, "\ufeff")
		return Problem{At: Pos{File: at.File, Line: n, Col: 1 + utf8.RuneCountInString(line[:m[4]])},
			What: "the value stands at the colon; expected a space between them",
			Hint: fmt.Sprintf("write %s: %s", line[m[2]:m[3]], shorten(line[m[4]:m[5]]))}, true
	}
	return Problem{}, false
}

// unclosed places a fault about brackets where the bracket stands: the parser
// tells the line, counted from 0 and left out where it is 0.
func unclosed(p Problem, file string, data []byte, err error) Problem {
	lines := splitLines(string(data))
	n := 0
	if m := lineNumber.FindStringSubmatch(err.Error()); m != nil {
		n, _ = strconv.Atoi(m[1])
	}
	n = min(n, len(lines)-1)
	line, remark, cut := strings.Cut(strings.TrimPrefix(lines[n], "\ufeff"), " #")
	if cut && strings.ContainsAny(remark, "]}") {
		p.Hint = `# after a space starts a remark: write a colour between quotes, "#4a5578"`
	}
	p.At = Pos{File: file, Line: n + 1, Col: 1 + lastOpen(line)}
	return p
}

// lastOpen is where, in characters, the innermost bracket stands that a line
// opens and doesn't close, or the last it opens at all.
func lastOpen(line string) int {
	var open []int
	last, quote := 0, rune(0)
	for i, r := range []rune(line) {
		switch {
		case quote != 0:
			if r == quote {
				quote = 0
			}
		case r == '"' || r == '\'':
			quote = r
		case r == '{' || r == '[':
			open, last = append(open, i), i
		case (r == '}' || r == ']') && len(open) > 0:
			open = open[:len(open)-1]
		}
	}
	if len(open) > 0 {
		return open[len(open)-1]
	}
	return last
}

// lineNumber is how the parser begins most of its errors.
var lineNumber = regexp.MustCompile(`line (\d+): `)

// kindOf is a parser's error without the line it names.
func kindOf(err error) string { return lineNumber.ReplaceAllString(err.Error(), "") }

// breaksAt finds the byte with which the file goes wrong: the last of the
// shortest beginning that fails in the same way as the whole does, among those
// that have no better one behind them. It goes backwards in doubling steps and
// then halves, so a file is parsed a few dozen times at most.
func breaksAt(data []byte, says string) int {
	fails := func(n int) bool {
		var doc yaml.Node
		dec := yaml.NewDecoder(bytes.NewReader(data[:n]))
		err := dec.Decode(&doc)
		if err == nil {
			err = dec.Decode(&doc)
		}
		return err != nil && kindOf(err) == says
	}
	bad, good := len(data), 0
	for step := 1; bad > 0; step *= 2 {
		n := max(0, bad-step)
		if !fails(n) {
			good = n
			break
		}
		bad = n
	}
	for bad-good > 1 {
		if n := (good + bad) / 2; fails(n) {
			bad = n
		} else {
			good = n
		}
	}
	at := max(0, bad-1)
	for at > 0 && !utf8.RuneStart(data[at]) {
		at--
	}
	return at
}

// placeOf is the place of a byte.
func placeOf(file string, data []byte, at int) Pos {
	lines := splitLines(string(data[:at]))
	last := lines[len(lines)-1]
	return Pos{File: file, Line: len(lines), Col: 1 + utf8.RuneCountInString(strings.TrimPrefix(last, "\ufeff"))}
}

// lineBreak matches what ends a line in YAML 1.1.
var lineBreak = regexp.MustCompile("\r\n|[\n\r\u0085\u2028\u2029]")

// splitLines cuts a text into its lines as the parser counts them.
func splitLines(s string) []string { return lineBreak.Split(s, -1) }
