package main

import (
	"archive/zip"
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"cutbinder/layout/plan"
)

// readTries is the patience with a file that changes while it is read.
const readTries = 3

// openPlan reads a plan: a file, or a folder of comma-separated files, which are
// handed on as a zip of them.
func (a *app) openPlan(name string) (source, error) {
	src := source{name: filepath.Clean(name)}
	info, err := os.Stat(src.name)
	if err == nil && info.IsDir() {
		src.folder = true
		src.text, err = a.readFolder(src.name)
		return src, err
	}
	if errors.Is(err, fs.ErrNotExist) {
		return src, fault(whereIs(src.name), "cannot read %s: there is no such file", src.name)
	}
	src.text, err = a.readFile(src.name, maxPlan)
	return src, err
}

// planEndings are those of files that hold plans.
var planEndings = []string{".yaml", ".yml", ".xlsx", ".csv"}

// whereIs is what to do about a plan that isn't there: to name the file beside it
// whose name is near, or to look in another folder.
func whereIs(name string) string {
	if name == "-" {
		return "a plan is read from a file; where the system has /dev/stdin, that is standard input"
	}
	folder, base := filepath.Split(name)
	if folder == "" {
		folder, _ = os.Getwd() // "" where the system doesn't tell
	}
	files, err := os.ReadDir(folder)
	if err != nil {
		return "there is no folder " + filepath.Clean(folder) + " either"
	}
	stems, whole := []string{}, map[string]string{}
	for _, f := range files {
		ending := filepath.Ext(f.Name())
		stem := strings.TrimSuffix(f.Name(), ending)
		if slices.Contains(planEndings, strings.ToLower(ending)) && whole[stem] == "" {
			stems, whole[stem] = append(stems, stem), f.Name()
		}
	}
	if ending := strings.ToLower(filepath.Ext(base)); slices.Contains(planEndings, ending) {
		base = base[:len(base)-len(ending)]
	}
	near := whole[base]
	if near == "" {
		near = whole[plan.Nearest(base, stems)]
	}
	if near == "" {
		return "it was looked for in " + filepath.Clean(folder)
	}
	return fmt.Sprintf("did you mean %s?", filepath.Join(filepath.Dir(name), near))
}

// readFolder packs a folder's comma-separated files.
func (a *app) readFolder(name string) ([]byte, error) {
	names, err := filepath.Glob(filepath.Join(escapeGlob(name), "*.[cC][sS][vV]"))
	switch {
	case err != nil:
		return nil, cannotRead(name, err)
	case len(names) == 0:
		return nil, fault("name the plan's file, or a folder with plan.csv, fabrics.csv, pieces.csv", "%s is a folder without .csv files", name)
	case len(names) > maxFiles:
		return nil, fault("", "%s holds %d .csv files; expected at most %d", name, len(names), maxFiles)
	}
	var out bytes.Buffer
	zw := zip.NewWriter(&out)
	for _, file := range names {
		text, err := a.readFile(file, maxPlan)
		if err != nil {
			return nil, err
		}
		w, err := zw.Create(filepath.Base(file))
		if err == nil {
			_, err = w.Write(text)
		}
		if err != nil {
			return nil, cannotRead(file, err)
		}
	}
	err = zw.Close()
	return out.Bytes(), err
}

// escapeGlob takes the meaning off the signs in a folder's name.
func escapeGlob(name string) string {
	return strings.NewReplacer("[", "[[]", "*", "[*]", "?", "[?]").Replace(name)
}

// readFile reads a file of at most limit bytes. One that changes meanwhile is read
// again.
func (a *app) readFile(name string, limit int64) ([]byte, error) {
	for range readTries {
		text, whole, err := readOnce(name, limit)
		if err != nil {
			return nil, err
		}
		if whole {
			a.read = append(a.read, name)
			return text, nil
		}
	}
	return nil, fault("try again once it is saved", "%s keeps changing while it is read", name)
}

// readOnce reads a file; whole is false where it has changed meanwhile.
func readOnce(name string, limit int64) (text []byte, whole bool, err error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, false, cannotRead(name, err)
	}
	defer f.Close()
	before, err := f.Stat()
	if err != nil {
		return nil, false, cannotRead(name, err)
	}
	if before.IsDir() {
		return nil, false, fault("name the file in it", "%s is a folder; a file is expected", name)
	}
	text, err = io.ReadAll(io.LimitReader(f, limit+1))
	if err != nil {
		return nil, false, cannotRead(name, err)
	}
	if int64(len(text)) > limit {
		return nil, false, fault("is this the right file?", "%s is larger than %d MB", name, limit>>20)
	}
	if !before.Mode().IsRegular() {
		return text, true, nil
	}
	after, err := os.Stat(name)
	return text, err == nil && os.SameFile(before, after) && after.Size() == int64(len(text)) && after.ModTime().Equal(before.ModTime()), nil
}

func cannotRead(name string, err error) error {
	return fault("", "cannot read %s: %v", name, cause(err))
}

// cause is why a file can't be used, without the name that the system puts before
// it.
func cause(err error) error {
	var path *fs.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &path):
		return path.Err
	case errors.As(err, &link):
		return link.Err
	}
	return err
}
