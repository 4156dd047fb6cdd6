package main

import (
	"bufio"
	"encoding/json"
	"fmt"
	"strings"

	"cutbinder/layout/plan"
	"cutbinder/sheets/bag"
	"cutbinder/sheets/say"

	"github.com/urfave/cli/v2"
)

func (a *app) scanCommand() *cli.Command {
	return &cli.Command{
		Name: "scan", Usage: "say which block a bag belongs to", ArgsUsage: "PLAN [CODE…]",
		Description: "Codes are read from the command line or, without any, from standard input,\n" +
			"one a line, as a handheld scanner types them.",
		Flags:  []cli.Flag{jsonFlag()},
		Action: a.scan,
	}
}

// maxCodes is how many codes may stand on a command line.
const maxCodes = 100000

func (a *app) scan(c *cli.Context) error {
	p, src, err := a.readPlan(c, maxCodes)
	if err != nil {
		return err
	}
	q, err := a.bags(c, p, src)
	if err != nil {
		return err
	}
	s := scanner{a: a, bags: q.Bags, plan: p, json: c.Bool("json")}
	if c.NArg() > 1 {
		for _, code := range c.Args().Slice()[1:] {
			s.answer(code)
		}
	} else if err := s.lines(); err != nil {
		return err
	}
	if s.failed {
		return said
	}
	return nil
}

type scanner struct {
	a      *app
	bags   *bag.Sorted
	plan   *plan.Plan
	json   bool
	failed bool
}

// lines answers each line of standard input as it comes.
func (s *scanner) lines() error {
	in := bufio.NewScanner(s.a.in)
	for in.Scan() {
		if line := strings.TrimSpace(in.Text()); line != "" {
			s.answer(line)
		}
	}
	if err := in.Err(); err != nil {
		return fault("", "cannot read standard input: %v", err)
	}
	return nil
}

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

func (s *scanner) answer(text string) {
	answer := s.bags.Read(text)
	s.failed = s.failed || !answer.OK()
	if s.json {
		enc := json.NewEncoder(s.a.out)
		enc.SetEscapeHTML(false)
		enc.Encode(s.object(answer))
		return
	}
	v := say.For(s.plan).InPlain()
	if !answer.OK() {
		fmt.Fprintf(s.a.out, "%s  %s\n", answer.Code, answer.Problem)
		if answer.Hint != "" {
			fmt.Fprintf(s.a.out, "%s  hint: %s\n", strings.Repeat(" ", len(answer.Code)), answer.Hint)
		}
		return
	}
	b := answer.Bag
	fmt.Fprintf(s.a.out, "%s  bag %d of %d, %s\n", answer.Code, b.Number, b.Of, b.Heading())
	for _, row := range b.Rows {
		fmt.Fprintf(s.a.out, "%s  %s\n", strings.Repeat(" ", len(answer.Code)), v.Row(row))
	}
}

func (s *scanner) object(answer bag.Answer) answerOut {
	out := answerOut{Code: answer.Code, OK: answer.OK(), Of: len(s.bags.Bags), Contents: []contentOut{}, Problem: answer.Problem}
	if !answer.OK() {
		return out
	}
	b := answer.Bag
	out.Bag, out.Block, out.BlockName = b.Number, b.Block(), b.BlockName()
	v := say.For(s.plan).InPlain()
	for _, row := range b.Rows {
		content := contentOut{Cut: v.Size(row.Cut), Count: row.Count, Spares: row.Spares}
		for _, share := range row.Fabrics {
			content.Fabrics = append(content.Fabrics, share.ID)
		}
		out.Contents = append(out.Contents, content)
	}
	return out
}
