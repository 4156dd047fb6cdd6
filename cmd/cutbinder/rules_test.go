package main

import (
	"go/ast"
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
	"github.com/gen2brain/heic":       "sheets/scan",
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
	for _, f := range sourceFiles(t) {
		if f.test || f.folder == ".ci/measure" {
			continue
		}
		for _, spec := range f.Imports {
			name, _ := strconv.Unquote(spec.Path.Value)
			checkImport(t, f.path, f.folder, name)
		}
	}
}

// TestPaintedProblems: problems are told in colours wherever they are told.
func TestPaintedProblems(t *testing.T) {
	told := 0
	for _, f := range sourceFiles(t) {
		ast.Inspect(f.File, func(n ast.Node) bool {
			call, ok := n.(*ast.CallExpr)
			if !ok || f.test || f.folder != "cmd/cutbinder" || !called(call, "Render") {
				return true
			}
			told++
			if to, ok := call.Args[0].(*ast.CallExpr); !ok || !called(to, "painted") {
				t.Errorf("%s:%d: problems are told without colours; expected a.painted(w)", f.path, f.line(call.Pos()))
			}
			return true
		})
	}
	if told == 0 {
		t.Error("nothing tells problems")
	}
}

// called says whether a call is of a method of this name.
func called(call *ast.CallExpr, name string) bool {
	method, ok := call.Fun.(*ast.SelectorExpr)
	return ok && method.Sel.Name == name
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
