//go:build unix

package main

import (
	"os"

	"golang.org/x/sys/unix"
)

// terminalWidth is how many characters a line of a terminal holds; 0 where a file
// is no terminal.
func terminalWidth(f *os.File) int {
	size, err := unix.IoctlGetWinsize(int(f.Fd()), unix.TIOCGWINSZ)
	if err != nil {
		return 0
	}
	return max(int(size.Col), 1)
}
