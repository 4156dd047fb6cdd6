package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"cutbinder/sheets/bag"
)

// A journal keeps which bags were seen, in a text file that only grows: a line for
// each bag, "K7Q-07-F3X bag 7 of 24, A Lantern", in the order in which they were
// seen. Its zero value keeps nothing.
type journal struct {
	file *os.File
	kept map[string]bool // the codes in it
	torn bool            // its last line has no end
}

// maxJournal is the largest journal that is read.
const maxJournal = 64 << 20

// readJournal reads the codes of the bags that a journal says were seen, in order,
// each once. A last line without an end was torn by a crash and doesn't count; nor
// do lines that begin with no code. A file that isn't there is empty.
func readJournal(name string) (codes []bag.Code, torn bool, err error) {
	text, _, err := readOnce(name, maxJournal)
	if err != nil {
		if _, missing := os.Stat(name); os.IsNotExist(missing) {
			return nil, false, nil
		}
		return nil, false, err
	}
	end := bytes.LastIndexByte(text, '\n') + 1
	seen := map[bag.Code]bool{}
	for line := range strings.Lines(string(text[:end])) {
		first, _, _ := strings.Cut(strings.TrimSpace(line), " ")
		code, err := bag.Parse(first)
		if err == nil && !seen[code] {
			seen[code] = true
			codes = append(codes, code)
		}
	}
	return codes, end < len(text), nil
}

// open opens a journal, and counts the bags in it as seen where their codes are
// still good. Without a name nothing is kept.
func (s *scanner) open(name string) error {
	if name == "" {
		return nil
	}
	codes, torn, err := readJournal(name)
	if err != nil {
		return err
	}
	kept := map[string]bool{}
	for _, code := range codes {
		kept[code.String()] = true
		if a := s.bags.Lookup(code); a.OK() {
			s.seen[a.Bag.Number] = true
		}
	}
	file, err := os.OpenFile(name, os.O_CREATE|os.O_APPEND|os.O_WRONLY, 0o644)
	if err != nil {
		return fault("choose another place with --journal", "cannot write %s: %v", filepath.Clean(name), cause(err))
	}
	s.journal = journal{file, kept, torn}
	return nil
}

// add adds a bag, unless it is there already: a whole line in one write at the
// file's end, on the disk before anything else is answered.
func (j *journal) add(b *bag.Bag) error {
	code := b.Code.String()
	if j.file == nil || j.kept[code] {
		return nil
	}
	line := fmt.Sprintf("%s %s\n", code, strings.Join(strings.Fields(title(b)), " "))
	if j.torn {
		line = "\n" + line
	}
	if _, err := j.file.WriteString(line); err != nil {
		return fault("", "cannot write %s: %v", j.file.Name(), cause(err))
	}
	if err := j.file.Sync(); err != nil {
		return fault("", "cannot write %s: %v", j.file.Name(), cause(err))
	}
	j.kept[code], j.torn = true, false
	return nil
}

// Close closes the journal.
func (j *journal) Close() error {
	if j.file == nil {
		return nil
	}
	return j.file.Close()
}
