package main

import (
	"fmt"
	"runtime"
	"strings"
)

// guarded carries a command out and, where the program itself breaks on the way,
// tells what to report in place of a trace. What was being written is gone then:
// files take their names last.
func (a *app) guarded(command func() error) (err error) {
	defer func() {
		if broken := recover(); broken != nil {
			err = broke(broken)
		}
	}()
	return command()
}

// broke is the failure of the program itself.
func broke(broken any) error {
	return failure{exitBroken,
		fmt.Sprintf("the program broke, which is its own fault and not the plan's: %v\n  at %s", broken, strings.Join(where(), "\n     ")),
		fmt.Sprintf("nothing was written; please report these lines with the plan and the command (version %s, %s %s/%s)", Version, runtime.Version(), runtime.GOOS, runtime.GOARCH)}
}

// where are the places of the program on the way to a panic, the innermost first.
func where() (places []string) {
	pc := make([]uintptr, 64)
	frames := runtime.CallersFrames(pc[:runtime.Callers(1, pc)])
	for {
		f, more := frames.Next()
		name, ours := strings.CutPrefix(f.Function, "cutbinder/")
		if ours && !strings.HasSuffix(f.File, "/panic.go") && len(places) < 6 {
			places = append(places, fmt.Sprintf("%s, line %d", name, f.Line))
		}
		if !more {
			return places
		}
	}
}
