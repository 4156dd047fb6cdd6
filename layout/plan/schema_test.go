package plan

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"go.yaml.in/yaml/v3"
)

// mustSchema compiles the schema, which checks it against its own.
func mustSchema(t *testing.T) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(Schema()))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("plan.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("plan.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// asJSON is a YAML file as an editor hands it to a schema; ok is false where it is
// no YAML, or YAML that JSON has no word for.
func asJSON(t *testing.T, text []byte) (v any, ok bool) {
	t.Helper()
	var doc any
	if yaml.Unmarshal(text, &doc) != nil {
		return nil, false
	}
	out, err := json.Marshal(doc)
	if err != nil {
		return nil, false
	}
	v, err = jsonschema.UnmarshalJSON(bytes.NewReader(out))
	return v, err == nil
}

// TestSchemaSamples: every sample plan and every key's example fits the schema.
func TestSchemaSamples(t *testing.T) {
	s := mustSchema(t)
	texts := map[string]string{"lantern": lantern}
	for _, pattern := range []string{"../../testdata/plans/*.yaml", "../../testdata/plans/lists/*.yaml", "../../cmd/cutbinder/new.yaml"} {
		names, _ := filepath.Glob(pattern)
		if len(names) == 0 {
			t.Errorf("%s: no plan", pattern)
		}
		for _, name := range names {
			data, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			texts[name] = string(data)
		}
	}
	for _, table := range Tables() {
		for _, k := range table.Keys {
			texts[table.Name+" "+k.Name] = around(table.Name, k)
		}
	}
	for name, text := range texts {
		v, ok := asJSON(t, []byte(text))
		if !ok {
			t.Errorf("%s: not YAML that JSON can hold", name)
		} else if err := s.Validate(v); err != nil {
			t.Errorf("%s: %v\n%s", name, err, text)
		}
	}
}

// structural are the faults that the shape of a plan shows.
var structural = regexp.MustCompile(`has no key "|found (a list|keys with values);|expected the keys of|is missing from the (plan|setting|sashing|border|strip|cloth)|expected one of (inch|letter|right|strips|patch|block, size|likely|cotton|none|butted)|expected a colour|expected yes or no|expected how many across|has no value|expected keys with values|expected a list such as \[|expected names with`)

// TestSchemaWrong: what is wrong by its shape doesn't fit.
func TestSchemaWrong(t *testing.T) {
	s := mustSchema(t)
	checked := 0
	check := func(name, text string) {
		_, ps := Read("p", []byte(text))
		v, ok := asJSON(t, []byte(text))
		if !ok || v == nil {
			return
		}
		shape := ""
		for _, p := range ps {
			if structural.MatchString(p.What) {
				shape = p.What
			}
		}
		if shape == "" {
			return
		}
		checked++
		if s.Validate(v) == nil {
			t.Errorf("%s fits, though: %s", name, shape)
		}
	}
	for _, c := range wrongPlans {
		check(c.yaml, wholePlan(c.yaml))
	}
	names, _ := filepath.Glob("../../testdata/plans/wrong/*.yaml")
	for _, name := range names {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		check(name, string(data))
	}
	if checked < 60 {
		t.Errorf("only %d wrong plans are wrong by their shape", checked)
	}
	t.Logf("%d wrong plans", checked)
}

// TestSchemaDescribes: every key of every table is in the schema with its words.
func TestSchemaDescribes(t *testing.T) {
	text := string(Schema())
	for _, table := range Tables() {
		for _, k := range table.Keys {
			doc, _ := json.Marshal(describe(k))
			if !strings.Contains(text, string(doc)) {
				t.Errorf("%s, %s: not described", table.Name, k.Name)
			}
		}
	}
}
