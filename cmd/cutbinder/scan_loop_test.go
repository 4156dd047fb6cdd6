package main

import (
	"bytes"
	"context"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cutbinder/sheets/scan/photo"
)

// A line is answered at once, before the next one comes, and an interrupt ends the
// command as the end of input does: with what was asked for, and without a fault.
func TestScanInterrupt(t *testing.T) {
	plan := filepath.Join(t.TempDir(), "plan.yaml")
	if err := os.WriteFile(plan, []byte(photo.Plans[0]), 0o644); err != nil {
		t.Fatal(err)
	}
	quilts, err := photo.Quilts()
	if err != nil {
		t.Fatal(err)
	}
	ctx, interrupt := context.WithCancel(context.Background())
	defer interrupt()
	in, typed := io.Pipe()
	answers, out := io.Pipe()
	var stderr bytes.Buffer
	code := make(chan int)
	go func() {
		code <- (&app{in: in, out: out, err: &stderr}).run(ctx, []string{"cutbinder", "scan", "--json", plan})
		out.Close()
	}()
	for i := range quilts[0].Bags.Bags {
		b := &quilts[0].Bags.Bags[i]
		io.WriteString(typed, b.Code.String()+"\n")
		answer := make([]byte, 4096)
		n, err := answers.Read(answer)
		if want := `{"code":"` + b.Code.String() + `","ok":true`; err != nil || !strings.HasPrefix(string(answer[:n]), want) {
			t.Errorf("answered %q (%v), want %s", answer[:n], err, want)
		}
	}
	interrupt()
	if got := <-code; got != exitDone || stderr.Len() > 0 {
		t.Errorf("exit %d, said %q", got, &stderr)
	}
}
