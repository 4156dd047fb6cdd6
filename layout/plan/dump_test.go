package plan

import (
	"flag"
	"os"
	"testing"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// TestString: the plan that has every common key, as it prints.
func TestString(t *testing.T) {
	const file = "testdata/lantern.txt"
	got := mustRead(t, lantern).String()
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

func TestPercentString(t *testing.T) {
	for p, want := range map[Percent]string{0: "0%", 500: "5%", 250: "2.5%", 1000: "10%", 5: "0.05%", 10000: "100%"} {
		if got := p.String(); got != want {
			t.Errorf("%d prints as %q, want %q", int(p), got, want)
		}
	}
}
