package main

import (
	"bytes"
	"io"
	"os"
	"strings"
)

// A painter colours what problems look like on a terminal: the place, the caret
// below a line and the hint. It never changes a character.
type painter struct {
	to   io.Writer
	line []byte // what has come of the line so far
}

// painted is a writer for problems: one that colours where a person looks on. What
// is written must end with a line break.
func (a *app) painted(w io.Writer) io.Writer {
	to := w
	if s, ok := w.(*sink); ok {
		to = s.to
	}
	if f, ok := to.(*os.File); ok && colours(f) {
		return &painter{to: w}
	}
	return w
}

// colours says whether a file is a terminal whose user hasn't ruled colours out,
// by https://no-color.org.
func colours(f *os.File) bool {
	return shown(f) && os.Getenv("NO_COLOR") == "" && os.Getenv("TERM") != "dumb"
}

// shown says whether a file is a terminal.
func shown(f *os.File) bool {
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0 && terminalWidth(f) > 0
}

// The colours, as ECMA-48 sets them.
const (
	bold  = "\x1b[1m"
	red   = "\x1b[31m"
	cyan  = "\x1b[36m"
	plain = "\x1b[0m"
)

// Write colours the lines that are whole.
func (p *painter) Write(text []byte) (int, error) {
	p.line = append(p.line, text...)
	for {
		i := bytes.IndexByte(p.line, '\n')
		if i < 0 {
			return len(text), nil
		}
		if _, err := io.WriteString(p.to, paint(string(p.line[:i]))+"\n"); err != nil {
			return 0, err
		}
		p.line = p.line[i+1:]
	}
}

// paint colours one line of problems.
func paint(line string) string {
	switch {
	case line == "":
		return line
	case strings.Trim(line, " ") == "^":
		return red + line + plain
	case strings.HasPrefix(line, "  hint: "):
		return cyan + line + plain
	case strings.HasPrefix(line, "  "):
		return line
	}
	place, what, ok := strings.Cut(line, ": ")
	if !ok {
		return line
	}
	return bold + place + ":" + plain + " " + what
}
