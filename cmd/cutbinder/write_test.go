package main

import (
	"bytes"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// fill writes a text in two halves, with something that happens in between.
func fill(text string, between func() error) func(io.Writer) error {
	return func(w io.Writer) error {
		if _, err := io.WriteString(w, text[:len(text)/2]); err != nil {
			return err
		}
		if err := between(); err != nil {
			return err
		}
		_, err := io.WriteString(w, text[len(text)/2:])
		return err
	}
}

func well() error { return nil }

// holds checks what a folder holds: names and texts in turns.
func holds(t *testing.T, folder string, want ...string) {
	t.Helper()
	files, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	if len(files) != len(want)/2 {
		t.Errorf("the folder holds %v, want %v", files, want)
	}
	for i := 0; i < len(want); i += 2 {
		if got, err := os.ReadFile(filepath.Join(folder, want[i])); err != nil || string(got) != want[i+1] {
			t.Errorf("%s holds %q (%v), want %q", want[i], got, err, want[i+1])
		}
	}
}

// TestWriteFile: whatever happens while a file is written, its name holds the old
// text or the new one, and nothing else is left.
func TestWriteFile(t *testing.T) {
	for _, c := range []struct {
		what    string
		between func() error
		want    string // in the error; "" for none
	}{
		{"all goes well", well, ""},
		{"the disk is full", func() error { return &os.PathError{Op: "write", Err: syscall.ENOSPC} }, "no space left on device"},
		{"the program breaks", func() error { panic("index out of range") }, "the program broke"},
	} {
		dir := t.TempDir()
		name := filepath.Join(dir, "a.pdf")
		for _, old := range []string{"", "the old text"} {
			if os.Remove(name); old != "" {
				os.WriteFile(name, []byte(old), 0o640)
			}
			a := &app{err: io.Discard}
			err := a.guarded(func() error { return a.writeFile(name, fill("the new text", c.between)) })
			switch {
			case c.want == "" && err != nil, c.want != "" && (err == nil || !strings.Contains(err.Error(), c.want)):
				t.Errorf("%s: %v, want %q", c.what, err, c.want)
			case c.want == "":
				holds(t, dir, "a.pdf", "the new text")
			case old == "":
				holds(t, dir)
			default:
				holds(t, dir, "a.pdf", old)
			}
		}
		if info, err := os.Stat(name); err != nil || info.Mode().Perm() != 0o640 {
			t.Errorf("%s: the permissions are %v (%v)", c.what, info.Mode(), err)
		}
	}
}

// TestWriteLinks: a link is followed, one to nothing too, and stays a link.
func TestWriteLinks(t *testing.T) {
	dir, far := t.TempDir(), t.TempDir()
	a := &app{}
	for _, link := range []struct{ name, to string }{
		{"there", filepath.Join(far, "a.pdf")}, {"dangling", filepath.Join(far, "b.pdf")}, {"twice", "there"},
	} {
		if err := os.Symlink(link.to, filepath.Join(dir, link.name)); err != nil {
			t.Skip(err)
		}
	}
	os.WriteFile(filepath.Join(far, "a.pdf"), []byte("old"), 0o644)
	for _, name := range []string{"there", "dangling", "twice"} {
		if err := a.writeFile(filepath.Join(dir, name), fill("new "+name, well)); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if info, err := os.Lstat(filepath.Join(dir, name)); err != nil || info.Mode()&os.ModeSymlink == 0 {
			t.Errorf("%s is no link any more", name)
		}
	}
	holds(t, far, "a.pdf", "new twice", "b.pdf", "new dangling")

	round := filepath.Join(dir, "round")
	os.Symlink("round", round)
	if err := a.writeFile(round, fill("x", well)); err == nil {
		t.Error("a link to itself was written to")
	}
}

// TestWriteThrough: a device isn't replaced by a file, and a full one is told.
func TestWriteThrough(t *testing.T) {
	info, err := os.Stat("/dev/full")
	if err != nil {
		t.Skip(err)
	}
	a := &app{}
	if err := a.writeFile("/dev/full", fill("text", well)); err == nil || !strings.Contains(err.Error(), "no space left") {
		t.Errorf("a full device: %v", err)
	}
	if after, err := os.Stat("/dev/full"); err != nil || after.Mode() != info.Mode() {
		t.Fatal("the device is gone")
	}
	if err := a.writeFile("/dev/null", fill("text", well)); err != nil {
		t.Errorf("the null device: %v", err)
	}
}

// TestWriteRefused: places where nothing can be written, and the plan itself.
func TestWriteRefused(t *testing.T) {
	dir := t.TempDir()
	plan := filepath.Join(dir, "plan.yaml")
	os.WriteFile(plan, []byte("plan: P"), 0o644)
	other := filepath.Join(dir, "other.yaml")
	if err := os.Link(plan, other); err != nil {
		t.Skip(err)
	}
	a := &app{}
	if _, err := a.readFile(plan, maxPlan); err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]string{
		dir: "is a folder", plan: "is read", other: "is read", filepath.Join(dir, "no", "x.pdf"): "no such file", filepath.Join(plan, "x.pdf"): "not a directory",
	} {
		err := a.writeFile(name, fill("x", well))
		var failed failure
		if err == nil || !strings.Contains(err.Error(), want) || !errors.As(err, &failed) {
			t.Errorf("%s: %v, want %q", name, err, want)
		}
	}
	holds(t, dir, "plan.yaml", "plan: P", "other.yaml", "plan: P")
}

// TestCreateFile: a file that is there is never written over, by a link neither.
func TestCreateFile(t *testing.T) {
	dir := t.TempDir()
	name := filepath.Join(dir, "a")
	if err := createFile(name, []byte("one")); err != nil {
		t.Fatal(err)
	}
	if err := createFile(name, []byte("two")); err == nil {
		t.Error("it was written over")
	}
	holds(t, dir, "a", "one")
	os.Symlink(filepath.Join(dir, "nowhere"), filepath.Join(dir, "link"))
	if err := createFile(filepath.Join(dir, "link"), []byte("two")); err == nil {
		t.Error("it was written through a link")
	}
}

// TestBroken: what a user sees when the program itself breaks.
func TestBroken(t *testing.T) {
	var out bytes.Buffer
	a := &app{err: &out}
	err := a.guarded(func() error {
		var nothing []int
		_ = nothing[len(os.Args)]
		return nil
	})
	var failed failure
	if !errors.As(err, &failed) || failed.code != exitBroken {
		t.Fatalf("%v", err)
	}
	a.say("%s", failed)
	for _, want := range []string{"index out of range", "cmd/cutbinder.TestBroken", "please report", "nothing was written"} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("%q is not in:\n%s", want, out.String())
		}
	}
	if strings.Contains(out.String(), "goroutine") {
		t.Errorf("a trace is shown:\n%s", out.String())
	}
}
