//go:build unix

package main

import (
	"syscall"
	"time"
)

// cpuTime is the processor time spent so far, which other programs on the
// machine don't lengthen as they do the clock.
func cpuTime() time.Duration {
	var u syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &u) != nil {
		return 0
	}
	return time.Duration(u.Utime.Nano())
}
