package main

import (
	"path/filepath"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"
)

// The scripts run the program as a user does. "cutbinder" in them is this very
// binary.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"cutbinder": func() {
			usualLimit = 50 * time.Millisecond
			main()
		},
	})
}

func TestScripts(t *testing.T) {
	plans, err := filepath.Abs("../../testdata/plans")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir: "testdata/script",
		Setup: func(e *testscript.Env) error {
			e.Setenv("PLANS", plans)
			return nil
		},
	})
}
