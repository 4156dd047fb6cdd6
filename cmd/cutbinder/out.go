package main

import "io"

// A sink is standard output that remembers whether all could be written, so that
// a full disk behind a > isn't taken for success.
type sink struct {
	to  io.Writer
	err error
}

// Write writes, until something went wrong.
func (s *sink) Write(text []byte) (int, error) {
	if s.err != nil {
		return 0, s.err
	}
	var n int
	n, s.err = s.to.Write(text)
	return n, s.err
}
