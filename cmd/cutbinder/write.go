package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
)

// writeFile writes a file whole or not at all: into a new file in the same
// folder, which takes the name only once everything is on the disk. A link is
// followed, a device or a pipe written to as it is. "-" is standard output.
func (a *app) writeFile(name string, write func(io.Writer) error) error {
	if name == "-" {
		return write(a.out)
	}
	target, err := a.target(name)
	if err != nil {
		return err
	}
	info, err := os.Stat(target)
	if err == nil && !info.Mode().IsRegular() {
		return writeThrough(name, target, write)
	}
	tmp, err := createBeside(target)
	if err != nil {
		return cannotWrite(name, err)
	}
	defer os.Remove(tmp.Name()) // fails once the file has its name, as it should
	defer tmp.Close()           // again where all went well, which does nothing
	err = write(tmp)
	if info != nil && err == nil {
		err = tmp.Chmod(info.Mode().Perm())
	}
	if err = errors.Join(err, tmp.Sync(), tmp.Close()); err == nil {
		err = os.Rename(tmp.Name(), target)
	}
	if err != nil {
		return cannotWrite(name, err)
	}
	syncFolder(filepath.Dir(target))
	return nil
}

// target is the file that a name stands for, links followed. It is no folder and
// none of the files that were read.
func (a *app) target(name string) (string, error) {
	target := name
	for links := 0; ; links++ {
		to, err := os.Readlink(target)
		if err != nil {
			break
		}
		if links == 40 { // as many as systems follow
			return "", fault("choose another name with -o", "%s is a link that leads to itself", name)
		}
		if !filepath.IsAbs(to) {
			to = filepath.Join(filepath.Dir(target), to)
		}
		target = to
	}
	info, err := os.Stat(target)
	if err != nil {
		return target, nil
	}
	if info.IsDir() {
		return "", fault("name a file in it: "+filepath.Join(name, "binder.pdf"), "%s is a folder", name)
	}
	same := func(read string) bool {
		other, err := os.Stat(read)
		return err == nil && other.Mode().IsRegular() && os.SameFile(info, other)
	}
	if slices.ContainsFunc(a.read, same) {
		return "", fault("choose another name with -o", "%s is read; it is not written over", name)
	}
	return target, nil
}

// createBeside makes a new file in the folder of another, with the permissions
// that new files get.
func createBeside(target string) (*os.File, error) {
	for n := 0; ; n++ {
		name := filepath.Join(filepath.Dir(target), fmt.Sprintf(".cutbinder-%d-%d", os.Getpid(), n))
		f, err := os.OpenFile(name, os.O_RDWR|os.O_CREATE|os.O_EXCL, 0o666)
		if !errors.Is(err, fs.ErrExist) {
			return f, err
		}
	}
}

// writeThrough writes to a device or a pipe.
func writeThrough(name, target string, write func(io.Writer) error) error {
	f, err := os.OpenFile(target, os.O_WRONLY, 0)
	if err == nil {
		err = errors.Join(write(f), f.Close())
	}
	if err != nil {
		return cannotWrite(name, err)
	}
	return nil
}

// syncFolder brings a new name to the disk where the system can.
func syncFolder(name string) {
	if f, err := os.Open(name); err == nil {
		_ = f.Sync() // the file itself is whole either way
		f.Close()
	}
}

func cannotWrite(name string, err error) error {
	var failed failure
	if errors.As(err, &failed) {
		return err
	}
	return fault("choose another place with -o", "cannot write %s: %v", name, cause(err))
}
