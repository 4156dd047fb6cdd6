package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cutbinder/sheets/scan/photo"
)

// scanPhotos runs the command on photos of labels of the first sample plan.
func scanPhotos(t *testing.T, photos []photo.Photo, in string, args ...string) (out string, code int) {
	t.Helper()
	dir := t.TempDir()
	plan := filepath.Join(dir, "plan.yaml")
	write := func(name string, data []byte) {
		if err := os.WriteFile(name, data, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	write(plan, []byte(photo.Plans[0]))
	call := []string{"cutbinder", "scan", plan}
	for i, p := range photos {
		name := filepath.Join(dir, fmt.Sprintf("a, b %d.jpg", i))
		write(name, p.JPEG)
		if i == 0 {
			call = append(call, "--photo")
		}
		call = append(call, name)
		in = strings.ReplaceAll(in, fmt.Sprintf("PHOTO%d", i), "'"+name+"'")
	}
	var stdout, stderr bytes.Buffer
	code = (&app{in: strings.NewReader(in), out: &stdout, err: &stderr}).run(context.Background(), append(call, args...))
	if stderr.Len() > 0 {
		t.Errorf("said %q", &stderr)
	}
	return stdout.String(), code
}

// Two photos of several labels: every bag on them is named, and the others are
// missing.
func TestScanPhotos(t *testing.T) {
	quilts, err := photo.Quilts()
	if err != nil {
		t.Fatal(err)
	}
	sample, err := photo.Sample()
	if err != nil {
		t.Fatal(err)
	}
	var labels []photo.Label
	for _, l := range sample {
		if quilts[0].Bags.Bag(l.Bag.Number) != nil && quilts[0].Bags.Bag(l.Bag.Number).Code == l.Bag.Code {
			labels = append(labels, l)
		}
	}
	easy := photo.Options{Least: 200, Most: 210, Labels: 2}
	photos := []photo.Photo{photo.New(labels, 5, easy), photo.New(labels, 6, easy)}
	out, code := scanPhotos(t, photos, "", "--missing")
	seen := map[int]bool{}
	for _, p := range photos {
		for _, l := range p.Seen {
			seen[l.Bag.Number] = true
			if want := fmt.Sprintf("%s  bag %d of %d, ", l.Bag.Code, l.Bag.Number, l.Bag.Of); !strings.Contains(out, want) {
				t.Errorf("%q is not in:\n%s", want, out)
			}
		}
	}
	all := len(quilts[0].Bags.Bags)
	if want := fmt.Sprintf("not seen: %s of %d\n", counted(all-len(seen), "bag", "bags"), all); !strings.Contains(out, want) || code != exitFault {
		t.Errorf("exit %d; %q is not in:\n%s", code, want, out)
	}
}

// A name that is typed or dropped on a terminal is a photo too, and a photo without
// a label says so.
func TestScanNoLabel(t *testing.T) {
	none := photo.New(nil, 1, photo.Options{Labels: -1})
	out, code := scanPhotos(t, []photo.Photo{none}, "PHOTO0\n", "-")
	if n := strings.Count(out, "no code found in the photo"); n != 2 || code != exitFault {
		t.Errorf("exit %d, %d times in:\n%s", code, n, out)
	}
	out, _ = scanPhotos(t, []photo.Photo{none}, "", "--json")
	if !strings.HasPrefix(out, `{"code":"","ok":false,"bag":0,"of":`) || !strings.Contains(out, `"problem":"no code found in the photo `) {
		t.Errorf("printed %s", out)
	}
}
