//go:build linux

package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// program is a run of this very binary as the command.
func program(t *testing.T, dir string, args ...string) *exec.Cmd {
	t.Helper()
	exe, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	return &exec.Cmd{Path: exe, Args: append([]string{"cutbinder"}, args...), Dir: dir}
}

// TestKilled: killed or interrupted at any moment, a run leaves the old file or
// the new one.
func TestKilled(t *testing.T) {
	if testing.Short() {
		t.Skip("runs the program many times")
	}
	dir := t.TempDir()
	var whole [2][]byte
	for i, title := range []string{"One", "Two"} {
		name := filepath.Join(dir, title+".yaml")
		os.WriteFile(name, []byte("plan: "+title+"\nfabrics: {blue: {}}\npieces: [{cut: 4 1/2, need: 40, fabric: blue}]\n"), 0o644)
		if out, err := program(t, dir, "make", title+".yaml", "-o", "out.pdf").CombinedOutput(); err != nil {
			t.Fatalf("%v\n%s", err, out)
		}
		whole[i], _ = os.ReadFile(filepath.Join(dir, "out.pdf"))
	}
	if bytes.Equal(whole[0], whole[1]) {
		t.Fatal("the two plans give the same file")
	}
	start := time.Now()
	program(t, dir, "make", "One.yaml", "-o", "out.pdf").Run()
	took := time.Since(start)
	const runs = 60
	killed := 0
	for i := range runs {
		c := program(t, dir, "make", []string{"One.yaml", "Two.yaml"}[i%2], "-o", "out.pdf")
		if err := c.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(took * time.Duration(i) / (runs * 3 / 4)) // from the start of a run to behind its end
		signal := []os.Signal{syscall.SIGKILL, syscall.SIGKILL, syscall.SIGINT, syscall.SIGTERM}[i/2%4]
		c.Process.Signal(signal)
		if c.Wait() != nil {
			killed++
		}
		got, err := os.ReadFile(filepath.Join(dir, "out.pdf"))
		if err != nil || !bytes.Equal(got, whole[0]) && !bytes.Equal(got, whole[1]) {
			t.Fatalf("run %d, killed by %v: the file has %d bytes (%v); whole are %d and %d", i, signal, len(got), err, len(whole[0]), len(whole[1]))
		}
	}
	t.Logf("%d of %d runs were stopped; one takes %v", killed, runs, took)
	if killed == 0 {
		t.Error("no run was stopped before its end")
	}
	if out, err := program(t, dir, "make", "Two.yaml", "-o", "out.pdf").CombinedOutput(); err != nil {
		t.Errorf("a run after all these: %v\n%s", err, out)
	}
}

// TestInterruptedTwice: a run that waits for a plan from a pipe ends with the second
// interrupt.
func TestInterruptedTwice(t *testing.T) {
	dir := t.TempDir()
	if err := syscall.Mkfifo(filepath.Join(dir, "pipe"), 0o644); err != nil {
		t.Skip("no pipe can be made here: ", err)
	}
	c := program(t, dir, "check", "pipe")
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	ended := make(chan error)
	go func() { ended <- c.Wait() }()
	for {
		select {
		case err := <-ended:
			if err == nil {
				t.Error("an interrupted run says that all is well")
			}
			return
		case <-time.After(50 * time.Millisecond):
			c.Process.Signal(syscall.SIGINT)
		}
	}
}

// TestFullDisk: on a disk that is full the old file stays, where a small disk can
// be made.
func TestFullDisk(t *testing.T) {
	dir := t.TempDir()
	if err := syscall.Mount("none", dir, "tmpfs", 0, "size=32k"); err != nil {
		t.Skip("no small disk can be made here: ", err)
	}
	defer syscall.Unmount(dir, 0)
	os.WriteFile(filepath.Join(dir, "p.yaml"), []byte("plan: P\nfabrics: {blue: {}}\npieces: [{cut: 4 1/2, need: 4, fabric: blue}]\n"), 0o644)
	os.WriteFile(filepath.Join(dir, "p.pdf"), []byte("old"), 0o644)
	out, err := program(t, dir, "make", "p.yaml").CombinedOutput()
	if err == nil || !strings.Contains(string(out), "no space left on device") {
		t.Errorf("%v\n%s", err, out)
	}
	files, _ := os.ReadDir(dir)
	if got, _ := os.ReadFile(filepath.Join(dir, "p.pdf")); string(got) != "old" || len(files) != 2 {
		t.Errorf("%q, %v", got, files)
	}
}
