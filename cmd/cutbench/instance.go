package main

import (
	"bufio"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"cutbinder/layout/pack"
)

// An instance is one stored problem.
type instance struct {
	name  string
	width int64
	items []pack.Item
}

// pieces counts the pieces.
func (in *instance) pieces() (n int) {
	for _, it := range in.items {
		n += it.Count
	}
	return n
}

// read reads an instance file: comments, of which one holds strip_width=W, then
// lines of w,h,count.
func read(file string, turn bool) (*instance, error) {
	f, err := os.Open(file)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	in := &instance{name: strings.TrimSuffix(filepath.Base(file), ".csv")}
	s := bufio.NewScanner(f)
	for n := 1; s.Scan(); n++ {
		line := strings.TrimSpace(s.Text())
		switch {
		case strings.HasPrefix(line, "#"):
			in.header(line)
		case line == "" || line == "w,h,count":
		default:
			it, err := item(line)
			if err != nil {
				return nil, fmt.Errorf("line %d: %w", n, err)
			}
			it.Turn = turn
			in.items = append(in.items, it)
		}
	}
	if err := s.Err(); err != nil {
		return nil, err
	}
	if in.width <= 0 {
		return nil, fmt.Errorf("no width, want a first line such as # strip_width=320")
	}
	return in, nil
}

// header takes the width from a comment.
func (in *instance) header(line string) {
	for _, word := range strings.Fields(line) {
		if v, ok := strings.CutPrefix(word, "strip_width="); ok {
			in.width, _ = strconv.ParseInt(v, 10, 64)
		}
	}
}

// item reads a line w,h,count.
func item(line string) (it pack.Item, err error) {
	var v [3]int64
	words := strings.Split(line, ",")
	if len(words) != len(v) {
		return it, fmt.Errorf("%q, want w,h,count", line)
	}
	for i, w := range words {
		if v[i], err = strconv.ParseInt(strings.TrimSpace(w), 10, 64); err != nil || v[i] <= 0 {
			return it, fmt.Errorf("%q, want w,h,count as whole numbers above nought", line)
		}
	}
	return pack.Item{W: v[0], H: v[1], Count: int(v[2])}, nil
}
