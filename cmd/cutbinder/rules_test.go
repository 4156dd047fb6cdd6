package main

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// layers are the folders in the order that imports may go: only to the right.
var layers = []string{"cmd", "sheets", "layout", "fonts"}

// only says which package alone may import a module.
var only = map[string]string{
	"github.com/signintech/gopdf":     "layout/pdf",
	"github.com/boombuler/barcode":    "sheets/bag",
	"github.com/urfave/cli/v2":        "cmd",
	"github.com/makiuchi-d/gozxing":   "sheets/scan",
	"go.yaml.in/yaml/v3":              "layout/plan",
	"github.com/xuri/excelize/v2":     "layout/workbook",
	"golang.org/x/image/font/gofont":  "fonts",
	"golang.org/x/image/font/sfnt":    "fonts",
	"github.com/rogpeppe/go-internal": "cmd/cutbinder",
}

// pure are folders whose packages read no file, no clock and no environment.
var pure = []string{"layout", "sheets", "fonts"}

// worldly are the packages that would let them.
var worldly = []string{"os", "os/exec", "net", "net/http", "time", "math/rand", "math/rand/v2", "log", "syscall"}

func TestImports(t *testing.T) {
	root := "../.."
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") || strings.Contains(path, "/.ci/") {
			return err
		}
		folder := filepath.ToSlash(strings.TrimPrefix(filepath.Dir(path), root+"/"))
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, spec := range file.Imports {
			name, _ := strconv.Unquote(spec.Path.Value)
			checkImport(t, path, folder, name)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}

func checkImport(t *testing.T, path, folder, name string) {
	t.Helper()
	if inner, ok := strings.CutPrefix(name, "cutbinder/"); ok {
		if layer(inner) < layer(folder) {
			t.Errorf("%s imports %s: imports go cmd → sheets → layout → fonts", path, name)
		}
		return
	}
	for module, home := range only {
		if within(name, module) && !within(folder, home) && !strings.HasPrefix(folder, home) {
			t.Errorf("%s imports %s: only %s knows it", path, name, home)
		}
	}
	if slices.Contains(pure, strings.Split(folder, "/")[0]) && slices.Contains(worldly, name) {
		t.Errorf("%s imports %s: only cmd touches the world", path, name)
	}
}

// layer is the place of a folder's layer in layers.
func layer(folder string) int { return slices.Index(layers, strings.Split(folder, "/")[0]) }

func within(path, parent string) bool { return path == parent || strings.HasPrefix(path, parent+"/") }
