package main

import (
	"fmt"
	"io"
	"os"
	"sync"
	"time"
)

// patience is how long a plan may take before a terminal is told that it does.
const patience = time.Second

// A progress is a line on a terminal that says how far the cutting is. It shows
// only once a plan has taken longer than people's patience, and wipes itself.
type progress struct {
	out   io.Writer
	start time.Time
	mu    sync.Mutex
	done  int
	shown bool
}

// newProgress is a progress line, or nil where nobody watches.
func newProgress(w io.Writer) *progress {
	f, ok := w.(*os.File)
	if !ok {
		return nil
	}
	if info, err := f.Stat(); err != nil || info.Mode()&os.ModeCharDevice == 0 {
		return nil
	}
	return &progress{out: w, start: time.Now()}
}

// fabric counts a fabric that is laid out.
func (p *progress) fabric(string) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.done++
	if time.Since(p.start) > patience {
		fmt.Fprintf(p.out, "\rcutting: %s laid out ", counted(p.done, "fabric", "fabrics"))
		p.shown = true
	}
}

// end wipes the line.
func (p *progress) end() {
	if p != nil && p.shown {
		fmt.Fprint(p.out, "\r\x1b[K")
	}
}
