package main

import (
	"encoding/json"
	"fmt"
	"strings"

	"cutbinder/layout/plan"
	"cutbinder/sheets/bag"
	"cutbinder/sheets/say"
)

// A scanner answers codes and keeps what it has seen.
type scanner struct {
	a       *app
	bags    *bag.Sorted
	voice   say.Voice
	json    bool
	seen    map[int]bool // bags by number
	journal journal
	failed  bool // an answer names no bag, or bags are missing
}

func newScanner(a *app, bags *bag.Sorted, p *plan.Plan, json bool) *scanner {
	return &scanner{a: a, bags: bags, voice: say.For(p).InPlain(), json: json, seen: map[int]bool{}}
}

// answer prints an answer and keeps the bag it names. The error is one of keeping.
func (s *scanner) answer(answer bag.Answer) error {
	if s.json {
		s.print(s.object(answer))
	} else {
		s.tell(answer)
	}
	if !answer.OK() {
		s.failed = true
		return nil
	}
	s.seen[answer.Bag.Number] = true
	return s.journal.add(answer.Bag)
}

// tell prints an answer for people.
func (s *scanner) tell(answer bag.Answer) {
	start := answer.Code
	if start != "" {
		start += "  "
	}
	indent := strings.Repeat(" ", len([]rune(start)))
	if !answer.OK() {
		fmt.Fprintf(s.a.out, "%s%s\n", start, answer.Problem)
		if answer.Hint != "" {
			fmt.Fprintf(s.a.out, "%shint: %s\n", indent, answer.Hint)
		}
		return
	}
	fmt.Fprintf(s.a.out, "%s%s\n", start, title(answer.Bag))
	for _, row := range answer.Bag.Rows {
		fmt.Fprintf(s.a.out, "%s%s\n", indent, s.voice.Row(row))
	}
}

// title is a bag in one line: "bag 3 of 24, A Lantern".
func title(b *bag.Bag) string { return fmt.Sprintf("bag %d of %d, %s", b.Number, b.Of, b.Heading()) }

// The shape of "scan --json".
type (
	answerOut struct {
		Code      string       `json:"code"`
		OK        bool         `json:"ok"`
		Bag       int          `json:"bag"`
		Of        int          `json:"of"`
		Block     string       `json:"block"`
		BlockName string       `json:"block_name"`
		Contents  []contentOut `json:"contents"`
		Problem   string       `json:"problem"`
	}
	contentOut struct {
		Cut     string   `json:"cut"`
		Count   int      `json:"count"` // spares not counted
		Spares  int      `json:"spares,omitempty"`
		Fabrics []string `json:"fabrics"`
	}
)

// print prints an object on a line of its own.
func (s *scanner) print(out answerOut) {
	enc := json.NewEncoder(s.a.out)
	enc.SetEscapeHTML(false)
	enc.Encode(out)
}

func (s *scanner) object(answer bag.Answer) answerOut {
	out := answerOut{Code: answer.Code, OK: answer.OK(), Of: len(s.bags.Bags), Contents: []contentOut{}, Problem: answer.Problem}
	if answer.OK() {
		s.fill(&out, answer.Bag)
	}
	return out
}

// fill says what a bag is and holds.
func (s *scanner) fill(out *answerOut, b *bag.Bag) {
	out.Bag, out.Block, out.BlockName = b.Number, b.Block(), b.BlockName()
	for _, row := range b.Rows {
		content := contentOut{Cut: s.voice.Size(row.Cut), Count: row.Count, Spares: row.Spares}
		for _, share := range row.Fabrics {
			content.Fabrics = append(content.Fabrics, share.ID)
		}
		out.Contents = append(out.Contents, content)
	}
}

// missing says which bags were not seen: for people in one list, as data a line
// each, like an answer that is not ok.
func (s *scanner) missing() {
	var gone []*bag.Bag
	for i := range s.bags.Bags {
		if b := &s.bags.Bags[i]; !s.seen[b.Number] {
			gone = append(gone, b)
		}
	}
	s.failed = s.failed || len(gone) > 0
	if s.json {
		for _, b := range gone {
			out := answerOut{Code: b.Code.String(), Of: b.Of, Contents: []contentOut{}, Problem: "not seen"}
			s.fill(&out, b)
			s.print(out)
		}
		return
	}
	if len(gone) == 0 {
		fmt.Fprintf(s.a.out, "all %s seen\n", counted(len(s.bags.Bags), "bag", "bags"))
		return
	}
	fmt.Fprintf(s.a.out, "not seen: %s of %d\n", counted(len(gone), "bag", "bags"), len(s.bags.Bags))
	for _, b := range gone {
		fmt.Fprintf(s.a.out, "  %s  bag %d, %s\n", b.Code, b.Number, b.Heading())
	}
}
