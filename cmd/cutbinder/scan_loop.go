package main

import (
	"bufio"
	"context"
	"fmt"
	"io"
	"os"
	"regexp"
	"runtime"
	"strings"

	"cutbinder/sheets/bag"
	"cutbinder/sheets/scan"
)

// endOfInput is the key that ends what is typed at a terminal.
var endOfInput = func() string {
	if runtime.GOOS == "windows" {
		return "Ctrl-Z and Enter"
	}
	return "Ctrl-D"
}()

// lines answers each line of standard input as it comes, until there are no more or
// an interrupt. A person at a terminal is told how far it is.
func (s *scanner) lines(ctx context.Context) error {
	watched := !s.json && isTerminal(s.a.in)
	if watched {
		s.a.say("scan or type a code, or name a photo; %s ends", endOfInput)
	}
	lines, failed := readLines(ctx, s.a.in)
	for {
		select {
		case <-ctx.Done():
			s.sum(watched)
			return nil
		case line, more := <-lines:
			if !more {
				s.sum(watched)
				return <-failed
			}
			if err := s.line(ctx, line, watched); err != nil {
				return err
			}
		}
	}
}

// readLines reads lines in the background, since reading a terminal can't be
// interrupted. What went wrong comes after the last one.
func readLines(ctx context.Context, in io.Reader) (<-chan string, <-chan error) {
	lines, failed := make(chan string), make(chan error, 1)
	go func() {
		scanner := bufio.NewScanner(in)
		for scanner.Scan() {
			select {
			case lines <- scanner.Text():
			case <-ctx.Done():
				return
			}
		}
		if err := scanner.Err(); err != nil {
			failed <- fault("", "cannot read standard input: %v", err)
		}
		close(failed)
		close(lines)
	}()
	return lines, failed
}

// line answers one line: what a square code says, a code, or the name of a photo,
// as a terminal writes it when a file is dropped on it.
func (s *scanner) line(ctx context.Context, line string, watched bool) error {
	text := strings.TrimSpace(line)
	if text == "" {
		return nil
	}
	before := len(s.seen)
	var err error
	if name := strings.Trim(text, `'"`); isPhoto(name, false) {
		err = s.photo(ctx, name)
	} else {
		err = s.answer(s.scanned(text))
	}
	if watched && len(s.seen) > before {
		s.a.say("seen %d of %s", len(s.seen), counted(len(s.bags.Bags), "bag", "bags"))
	}
	return err
}

// inWords finds what a square code says beside the code.
var inWords = regexp.MustCompile(` BAG \d+ `)

// scanned is the answer to a text that may be typed or be all that a square code
// says, in whatever case the scanner types; then all of it must agree.
func (s *scanner) scanned(text string) bag.Answer {
	whole := strings.ToUpper(strings.Join(strings.Fields(text), " "))
	if inWords.MatchString(whole) {
		return scan.Answer(s.bags, whole)
	}
	return s.bags.Read(text)
}

// sum says at the end what a person at a terminal has seen.
func (s *scanner) sum(watched bool) {
	if watched {
		fmt.Fprintln(s.a.err)
		s.a.say("seen %d of %s", len(s.seen), counted(len(s.bags.Bags), "bag", "bags"))
	}
}

// isTerminal says whether a person may be typing. The null device looks like a
// terminal.
func isTerminal(in io.Reader) bool {
	f, ok := in.(*os.File)
	if !ok {
		return false
	}
	info, err := f.Stat()
	if err != nil || info.Mode()&os.ModeCharDevice == 0 {
		return false
	}
	null, err := os.Stat(os.DevNull)
	return err != nil || !os.SameFile(info, null)
}
