//go:build !unix

package main

import "time"

// began is when the program started.
var began = time.Now()

// cpuTime is the time since the program started, where processor time isn't to
// be had.
func cpuTime() time.Duration { return time.Since(began) }
