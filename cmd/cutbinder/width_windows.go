package main

import (
	"os"

	"golang.org/x/sys/windows"
)

// terminalWidth is how many characters a line of a terminal holds; 0 where a file
// is no terminal. It makes an older console understand colours.
func terminalWidth(f *os.File) int {
	console := windows.Handle(f.Fd())
	var mode uint32
	if windows.GetConsoleMode(console, &mode) != nil {
		return 0
	}
	windows.SetConsoleMode(console, mode|windows.ENABLE_VIRTUAL_TERMINAL_PROCESSING)
	var info windows.ConsoleScreenBufferInfo
	if windows.GetConsoleScreenBufferInfo(console, &info) != nil {
		return 80
	}
	return max(int(info.Window.Right-info.Window.Left)+1, 1)
}
