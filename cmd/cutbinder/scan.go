package main

import (
	"context"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"
)

func (a *app) scanCommand() *cli.Command {
	return &cli.Command{
		Name: "scan", Usage: "say which block a bag belongs to", ArgsUsage: "PLAN [CODE…]",
		Description: "Codes are read from the command line or, without any, from standard input,\n" +
			"one a line, as a handheld scanner types them; - reads them from there too.\n" +
			"Square codes are found on photos (JPEG, PNG, WebP, HEIC), several on one.",
		Flags: []cli.Flag{
			jsonFlag(),
			&cli.GenericFlag{Name: "photo", Value: &names{}, Usage: "find the labels on a photo, `FILE`; more files may follow"},
			&cli.BoolFlag{Name: "missing", Usage: "say in the end which bags of the plan were not seen"},
			&cli.StringFlag{Name: "journal", Usage: "add each bag that is seen to `FILE`, and count those in it as seen"},
		},
		Action: a.scan,
	}
}

// maxCodes is how many codes may stand on a command line.
const maxCodes = 100000

// names are the values of an option that may be given several times. Unlike the
// library's own, they may have commas in them.
type names []string

// Set adds a value.
func (n *names) Set(s string) error {
	*n = append(*n, s)
	return nil
}

// String is the values.
func (n *names) String() string { return strings.Join(*n, " ") }

// A word is something to answer: a code, a photo, or standard input.
type word struct {
	text  string
	photo bool
}

// asks are what a command line asks for after the plan: photos as they were named,
// then codes; words after --photo that are files are photos too.
func asks(c *cli.Context) []word {
	var out []word
	photos, _ := c.Generic("photo").(*names)
	for _, name := range *photos {
		out = append(out, word{name, true})
	}
	for _, text := range c.Args().Tail() {
		out = append(out, word{text, isPhoto(text, len(*photos) > 0)})
	}
	return out
}

// endings are those of files that cameras and phones write.
var endings = []string{".jpg", ".jpeg", ".png", ".webp", ".heic", ".heif", ".avif"}

// isPhoto says whether a word names a photo: by its ending, or, where photos are
// expected, because there is such a file.
func isPhoto(text string, expected bool) bool {
	if slices.Contains(endings, strings.ToLower(filepath.Ext(text))) {
		return true
	}
	if !expected || text == "-" {
		return false
	}
	info, err := os.Stat(text)
	return err == nil && !info.IsDir()
}

func (a *app) scan(c *cli.Context) error {
	if first := c.Args().First(); isPhoto(first, false) {
		return usage("cutbinder scan PLAN --photo "+first, "%s is a photo; the plan comes first", first)
	}
	p, src, err := a.readPlan(c, maxCodes)
	if err != nil {
		return err
	}
	q, err := a.bags(c, p, src)
	if err != nil {
		return err
	}
	s := newScanner(a, q.Bags, p, c.Bool("json"))
	if err := s.open(c.String("journal")); err != nil {
		return err
	}
	defer s.journal.Close()
	asked := asks(c)
	if len(asked) == 0 {
		asked = []word{{text: "-"}}
	}
	if err := s.all(c.Context, asked); err != nil {
		return err
	}
	if c.Bool("missing") {
		s.missing()
	}
	if s.failed {
		return said
	}
	return nil
}

// all answers words in order. An interrupt ends it as if that were all.
func (s *scanner) all(ctx context.Context, asked []word) error {
	for _, w := range asked {
		var err error
		switch {
		case ctx.Err() != nil:
			return nil
		case w.photo:
			err = s.photo(ctx, w.text)
		case w.text == "-":
			err = s.lines(ctx)
		default:
			err = s.answer(s.scanned(w.text))
		}
		if err != nil {
			return err
		}
	}
	return nil
}
