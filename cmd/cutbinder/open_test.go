package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cutbinder/layout/plan"
)

// TestReadChanging: a file that is replaced all the while is read as it was at one
// moment, or not at all.
func TestReadChanging(t *testing.T) {
	dir := t.TempDir()
	name := filepath.Join(dir, "p.yaml")
	texts := [2][]byte{bytes.Repeat([]byte("a"), 300_000), bytes.Repeat([]byte("b"), 300_000)}
	replace := func(i int) {
		next := filepath.Join(dir, "next")
		os.WriteFile(next, texts[i%2], 0o644)
		os.Rename(next, name)
	}
	replace(0)
	stop := make(chan bool)
	done := make(chan bool)
	go func() {
		defer close(done)
		for i := 0; ; i++ {
			select {
			case <-stop:
				return
			default:
				replace(i)
			}
		}
	}()
	a := &app{}
	whole := 0
	for range 300 {
		text, err := a.readFile(name, maxPlan)
		switch {
		case err != nil && strings.Contains(err.Error(), "keeps changing"):
		case err != nil:
			t.Fatal(err)
		case !bytes.Equal(text, texts[0]) && !bytes.Equal(text, texts[1]):
			t.Fatalf("%d bytes of neither text", len(text))
		default:
			whole++
		}
	}
	close(stop)
	<-done
	t.Logf("read whole %d times of 300", whole)
	if text, err := a.readFile(name, maxPlan); err != nil || len(text) != 300_000 {
		t.Errorf("once it rests: %d bytes, %v", len(text), err)
	}
}

// TestReadLimits: files that are too large, endless or no files are told.
func TestReadLimits(t *testing.T) {
	dir := t.TempDir()
	large := filepath.Join(dir, "large.yaml")
	os.WriteFile(large, bytes.Repeat([]byte("#"), maxPlan+1), 0o644)
	a := &app{}
	for name, want := range map[string]string{large: "larger than 4 MB", "/dev/zero": "larger than 4 MB", dir: "is a folder without .csv files", filepath.Join(dir, "none"): "cannot read"} {
		if _, err := os.Stat(name); strings.HasPrefix(name, "/dev") && err != nil {
			continue
		}
		if _, err := a.openPlan(name); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want %q", name, err, want)
		}
	}
	for i := range maxFiles + 1 {
		os.WriteFile(filepath.Join(dir, strings.Repeat("x", i+1)+".csv"), nil, 0o644)
	}
	if _, err := a.openPlan(dir); err == nil || !strings.Contains(err.Error(), "holds 51 .csv files; expected at most 50") {
		t.Errorf("many files: %v", err)
	}
}

// TestOddFolders: a folder's name may hold what shells give a meaning.
func TestOddFolders(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "my [quilt]* ?")
	if err := os.Mkdir(dir, 0o755); err != nil {
		t.Skip(err)
	}
	os.WriteFile(filepath.Join(dir, "Cut List.CSV"), []byte("fabric,size,count\nblue,4,4\n"), 0o644)
	src, err := (&app{}).openPlan(dir + "/")
	if err != nil {
		t.Fatal(err)
	}
	if p, ps := plan.Read(src.name, src.text); p == nil || p.Title != "My [quilt]* ?" || len(p.Pieces) != 1 {
		t.Errorf("%v\n%v", p, ps)
	}
}
