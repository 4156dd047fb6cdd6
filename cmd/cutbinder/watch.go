package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"time"

	"github.com/urfave/cli/v2"
)

// glance is how long watch waits between two looks at a plan.
const glance = 300 * time.Millisecond

// watch makes a plan's binder, and again each time the plan is saved, until it is
// interrupted. A plan with faults is told and waited for.
func (a *app) watch(c *cli.Context, once func(*cli.Context) error) error {
	if c.String("output") == "-" {
		return usage("name a file with -o", "--watch writes a file again and again, which standard output can't hold")
	}
	name := c.Args().First()
	for seen := "nothing yet"; ; {
		now := stamp(name)
		if now != seen && now == settled(c.Context, name, now) {
			seen = now
			a.read = nil
			err := a.guarded(func() error { return once(c) })
			var failed failure
			switch {
			case errors.Is(err, context.Canceled):
			case errors.As(err, &failed) && failed.code == exitUsage:
				return err
			case err != nil && err.Error() != "":
				a.complain(err)
			}
			a.say("waiting for %s to change; Ctrl-C ends this", name)
		}
		select {
		case <-c.Context.Done():
			return nil
		case <-time.After(glance):
		}
	}
}

// settled looks again after a moment, so that a file isn't read while it is being
// saved.
func settled(ctx context.Context, name, now string) string {
	select {
	case <-ctx.Done():
		return now
	case <-time.After(glance / 6):
		return stamp(name)
	}
}

// stamp is a text that changes when a plan's files do.
func stamp(name string) (s string) {
	names := []string{name}
	if files, err := filepath.Glob(filepath.Join(escapeGlob(name), "*.[cC][sS][vV]")); err == nil {
		names = append(names, files...)
	}
	for _, n := range names {
		if info, err := os.Stat(n); err == nil {
			s += fmt.Sprintf("%s %d %d\n", n, info.Size(), info.ModTime().UnixNano())
		}
	}
	return s
}
