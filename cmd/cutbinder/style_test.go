package main

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// The measures of style, in lines.
const (
	mostFile     = 450 // of a file
	longFunction = 40  // that nine functions in ten stay under
	mostCase     = 15  // of a case in a flat switch
)

// A measure is how long functions may be: each but for what flat leaves out, and
// the one in the middle.
type measure struct {
	name         string
	each, middle int
}

// Tests may be longer, as they are read one at a time.
var ofCode, ofTests = measure{"code", 60, 12}, measure{"tests", 80, 20}

// vague are names of packages that hold anything.
var vague = []string{"util", "utils", "common", "helper", "helpers", "core", "model", "models", "manager", "misc", "shared", "base"}

// A sourceFile is one parsed file of the tree.
type sourceFile struct {
	path, folder string
	test         bool
	*ast.File
	set *token.FileSet
}

// line is the line of a place.
func (f *sourceFile) line(p token.Pos) int { return f.set.Position(p).Line }

// lines counts the lines that a node takes.
func (f *sourceFile) lines(n ast.Node) int { return f.line(n.End()) - f.line(n.Pos()) + 1 }

// sourceFiles parses every Go file of the tree.
func sourceFiles(t *testing.T) (all []*sourceFile) {
	t.Helper()
	root := filepath.FromSlash("../..")
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") {
			return err
		}
		set := token.NewFileSet()
		file, err := parser.ParseFile(set, path, nil, parser.ParseComments|parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		name, err := filepath.Rel(root, path)
		name = filepath.ToSlash(name)
		all = append(all, &sourceFile{name, filepath.ToSlash(filepath.Dir(name)), strings.HasSuffix(name, "_test.go"), file, set})
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// TestSizes: files and functions are short enough to be read. With -v it logs how
// long they are, and the share of comments.
func TestSizes(t *testing.T) {
	sizes(t, ofCode, func(f *sourceFile) bool { return !f.test })
	sizes(t, ofTests, func(f *sourceFile) bool { return f.test })
}

// sizes measures some of the files.
func sizes(t *testing.T, m measure, some func(*sourceFile) bool) {
	t.Helper()
	var files, functions []int
	comments := 0
	for _, f := range sourceFiles(t) {
		if !some(f) {
			continue
		}
		n := f.line(f.FileEnd)
		if n > mostFile {
			t.Errorf("%s has %d lines; expected at most %d", f.path, n, mostFile)
		}
		files = append(files, n)
		for _, c := range f.Comments {
			comments += f.lines(c)
		}
		for _, d := range f.Decls {
			fn, ok := d.(*ast.FuncDecl)
			if !ok || fn.Body == nil {
				continue
			}
			n := f.lines(fn)
			if rest := n - f.flat(fn); rest > m.each {
				t.Errorf("%s:%d: %s has %d lines beside tables and flat switches; expected at most %d", f.path, f.line(fn.Pos()), fn.Name.Name, rest, m.each)
			}
			functions = append(functions, n)
		}
	}
	m.told(t, files, functions, comments)
}

// flat counts the lines of a function's tables, and of its switches whose cases
// are short.
func (f *sourceFile) flat(fn *ast.FuncDecl) (n int) {
	ast.Inspect(fn.Body, func(node ast.Node) bool {
		var cases *ast.BlockStmt
		switch node := node.(type) {
		case *ast.CompositeLit:
			n += f.lines(node) - 1
			return false
		case *ast.SwitchStmt:
			cases = node.Body
		case *ast.TypeSwitchStmt:
			cases = node.Body
		default:
			return true
		}
		if slices.ContainsFunc(cases.List, func(s ast.Stmt) bool { return f.lines(s) > mostCase }) {
			return true
		}
		n += f.lines(cases) - 1
		return false
	})
	return n
}

// told logs the figures, and holds those of all functions to their bounds.
func (m measure) told(t *testing.T, files, functions []int, comments int) {
	t.Helper()
	slices.Sort(files)
	slices.Sort(functions)
	lines := 0
	for _, n := range files {
		lines += n
	}
	under, _ := slices.BinarySearch(functions, longFunction)
	middle, most := functions[len(functions)/2], functions[len(functions)-1]
	t.Logf("%s: %d files of %d lines, the middle one %d, the longest %d; %.1f %% comments", m.name, len(files), lines, files[len(files)/2], files[len(files)-1], 100*float64(comments)/float64(lines))
	t.Logf("%s: %d functions, the middle one %d lines, the longest %d; %.1f %% under %d lines", m.name, len(functions), middle, most, 100*float64(under)/float64(len(functions)), longFunction)
	if middle > m.middle {
		t.Errorf("%s: the middle function has %d lines; expected at most %d", m.name, middle, m.middle)
	}
	if 10*under < 9*len(functions) {
		t.Errorf("%s: %d of %d functions are under %d lines; expected nine in ten", m.name, under, len(functions), longFunction)
	}
}

// TestDocumented: every package says what it is, and every exported name too.
func TestDocumented(t *testing.T) {
	said := map[string]bool{}
	names := 0
	for _, f := range sourceFiles(t) {
		if f.test {
			continue
		}
		said[f.folder] = said[f.folder] || f.Doc.Text() != ""
		if slices.Contains(vague, f.Name.Name) {
			t.Errorf("%s: package %s: the name says nothing of what is in it", f.path, f.Name.Name)
		}
		for _, d := range f.Decls {
			for _, e := range exported(d) {
				names++
				if e.doc == "" {
					t.Errorf("%s:%d: %s has no comment", f.path, f.line(e.pos), e.name)
				}
			}
		}
	}
	for folder, ok := range said {
		if !ok {
			t.Errorf("package %s has no comment", folder)
		}
	}
	t.Logf("%d packages and %d exported names", len(said), names)
}

// An exportedName is a name that other packages see, and its comment.
type exportedName struct {
	name string
	pos  token.Pos
	doc  string
}

// exported are the exported names of a declaration. A name in a group may share
// the group's comment.
func exported(d ast.Decl) (all []exportedName) {
	add := func(name *ast.Ident, docs ...*ast.CommentGroup) {
		text := ""
		for _, doc := range docs {
			text += doc.Text()
		}
		if name.IsExported() {
			all = append(all, exportedName{name.Name, name.Pos(), text})
		}
	}
	switch d := d.(type) {
	case *ast.FuncDecl:
		if owner := receiver(d); owner == "" || ast.IsExported(owner) {
			add(d.Name, d.Doc)
		}
	case *ast.GenDecl:
		for _, s := range d.Specs {
			switch s := s.(type) {
			case *ast.TypeSpec:
				add(s.Name, d.Doc, s.Doc, s.Comment)
				if of, ok := s.Type.(*ast.InterfaceType); ok && s.Name.IsExported() {
					for _, m := range of.Methods.List {
						for _, name := range m.Names {
							add(name, m.Doc, m.Comment)
						}
					}
				}
			case *ast.ValueSpec:
				for _, name := range s.Names {
					add(name, d.Doc, s.Doc, s.Comment)
				}
			}
		}
	}
	return all
}

// receiver is the type that a method is of; "" for a function.
func receiver(fn *ast.FuncDecl) string {
	if fn.Recv == nil {
		return ""
	}
	of := fn.Recv.List[0].Type
	for {
		switch t := of.(type) {
		case *ast.StarExpr:
			of = t.X
		case *ast.IndexExpr:
			of = t.X
		case *ast.Ident:
			return t.Name
		default:
			return fmt.Sprint(of)
		}
	}
}
