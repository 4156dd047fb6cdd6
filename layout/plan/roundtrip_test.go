package plan

import (
	"archive/zip"
	"bytes"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"cutbinder/layout/workbook"
)

// sameBut compares plans without the places and the spellings of their values.
var sameBut = cmp.Options{
	cmp.Exporter(func(reflect.Type) bool { return true }),
	cmp.FilterPath(func(p cmp.Path) bool {
		switch p.Last().Type() {
		case reflect.TypeFor[Pos](), reflect.TypeFor[Node](), reflect.TypeFor[value]():
			return true
		}
		return false
	}, cmp.Ignore()),
}

// asWorkbook and asFiles are a plan in its other forms.
func asWorkbook(t *testing.T, name string, data []byte) []byte {
	t.Helper()
	sheets, ps := Sheets(name, data)
	if len(ps) > 0 {
		t.Fatalf("%s: %v", name, ps.Error())
	}
	out, err := workbook.Write(sheets)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return out
}

func asFiles(t *testing.T, name string, data []byte) []byte {
	t.Helper()
	sheets, ps := Sheets(name, data)
	if len(ps) > 0 {
		t.Fatalf("%s: %v", name, ps.Error())
	}
	var out bytes.Buffer
	zw := zip.NewWriter(&out)
	for _, s := range sheets {
		w, _ := zw.Create(strings.ToLower(s.Name) + ".csv")
		w.Write(workbook.WriteCSV(s))
	}
	zw.Close()
	return out.Bytes()
}

// checkRoundTrip takes a plan through every other form and back.
func checkRoundTrip(t *testing.T, name string, data []byte) {
	t.Helper()
	want, ps := Read(name, data)
	if len(ps) > 0 {
		t.Fatalf("%s: %v", name, ps.Error())
	}
	book := asWorkbook(t, name, data)
	files := asFiles(t, "p.xlsx", book)
	again, ps := YAML("p.csv.zip", files)
	if len(ps) > 0 {
		t.Fatalf("%s: as files: %v\n%s", name, ps.Error(), data)
	}
	for _, form := range []struct {
		name string
		data []byte
	}{{"p.xlsx", book}, {"p.zip", files}, {"p.yaml", again}} {
		got, ps := Read(form.name, form.data)
		if len(ps) > 0 {
			t.Errorf("%s as %s: %v\n%s", name, form.name, ps.Error(), again)
		} else if diff := cmp.Diff(want, got, sameBut); diff != "" {
			t.Errorf("%s as %s (-want +got):\n%s\n%s", name, form.name, diff, again)
		}
	}
}

// TestRoundTrip: every sample plan is the same plan in every form.
func TestRoundTrip(t *testing.T) {
	n := 0
	for _, pattern := range []string{"../../testdata/plans/*.yaml", "../../testdata/plans/lists/*.yaml"} {
		names, err := filepath.Glob(pattern)
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range names {
			data, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			checkRoundTrip(t, name, data)
			n++
		}
	}
	if n < 10 {
		t.Errorf("only %d plans found", n)
	}
	checkRoundTrip(t, "lantern", []byte(lantern))
}

// TestRoundTripKeys: so is a plan around each key's example.
func TestRoundTripKeys(t *testing.T) {
	for _, table := range Tables() {
		for _, k := range table.Keys {
			checkRoundTrip(t, table.Name+" "+k.Name, []byte(around(table.Name, k)))
		}
	}
}

// TestRoundTripOdd: so are names and texts that could be taken for something else.
func TestRoundTripOdd(t *testing.T) {
	for _, text := range []string{
		"plan: \"=1+1\"\nby: '#1'\nnote: \"a, b; c\"\nfabrics: {\"#1\": {}, '\"q\"': {}, \"a, b\": {name: \"[x]\"}, \"{c\": {have: [fat quarter, {width: 40, length: 9}, 6,5 cm]}}\npieces: [{cut: 2, need: 1, fabric: \"#1\"}, {cut: 2, need: 1, fabric: '\"q\"'}, {unit: half-square, finished: 2, need: 1, fabrics: [\"a, b\", \"{c\"]}]",
		"plan: \"null\"\nversion: 1.0\ndate: 2026-03-01\nfabrics: {no: {note: \"- x\", shrink: {length: 3%, width: 5%}}, \"~\": {}, \"1\": {}}\nmixes: {all: [no, \"~\", \"1\"]}\npieces: {cut: 2, need: 1, mix: all}\nbatting: {}\nfinished: 50\nbags: {by: block}",
		"plan: D\nfabrics: {dusk: {}, wick: {}}\nletters: {d: dusk, \"[\": wick}\nblocks: {A: {make: 1, cell: 3, draw: [d d, \"[ d\"]}, B: {make: 1, columns: [2, 2 1/2], rows: [2, 2 1/2], draw: \"[ d\\nd [\"}, 'C c': {make: 2, cell: 3, draw: [[d, wick], [d/wick, ^]], methods: {half-square: eight-at-a-time}}}\nquilt: \"A B\\n\\nB A\"",
		"plan: \"a\\tb\"\nfabrics: {x: {}}\nquilt: [[A A, B]]\nblocks: {A A: {pieces: {cut: 2, each: 1, fabric: x}}, B: {pieces: [{cut: 2, each: 1, fabric: x}]}}\naccept: {'#a': b}",
	} {
		if _, ps := Read("p", []byte(text)); len(ps) > 0 {
			t.Errorf("%s\n%v", text, ps.Error())
			continue
		}
		checkRoundTrip(t, "odd", []byte(text))
	}
}

// TestSameBytes: the same plan gives the same workbook.
func TestSameBytes(t *testing.T) {
	if !bytes.Equal(asWorkbook(t, "p", []byte(lantern)), asWorkbook(t, "p", []byte(lantern))) {
		t.Error("two workbooks of one plan differ")
	}
}
