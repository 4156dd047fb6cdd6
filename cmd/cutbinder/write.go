package main

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// writeFile writes a file whole or not at all: into a new file in the same
// folder, which takes the name only once everything is on the disk. "-" is
// standard output.
func (a *app) writeFile(name string, write func(io.Writer) error) error {
	if name == "-" {
		return write(a.out)
	}
	if info, err := os.Stat(name); err == nil && info.IsDir() {
		return fault("name a file in it: "+filepath.Join(name, "binder.pdf"), "%s is a folder", name)
	}
	tmp, err := os.CreateTemp(filepath.Dir(name), ".cutbinder-*")
	if err != nil {
		return cannotWrite(name, err)
	}
	defer os.Remove(tmp.Name()) // fails once the file has its name, as it should
	err = errors.Join(write(tmp), tmp.Chmod(0o644), tmp.Sync(), tmp.Close())
	if err == nil {
		err = os.Rename(tmp.Name(), name)
	}
	if err != nil {
		return cannotWrite(name, err)
	}
	return nil
}

func cannotWrite(name string, err error) error {
	var failed failure
	if errors.As(err, &failed) {
		return err
	}
	var where *fs.PathError
	if errors.As(err, &where) {
		err = where.Err
	}
	return fault("choose another place with -o", "cannot write %s: %v", name, err)
}
