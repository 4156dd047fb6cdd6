package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// manyBags is a plan of n bags, all of them different: 100 blocks, n/100 sizes in
// each.
func manyBags(n int) string {
	const blocks, across = 100, 20
	var b strings.Builder
	b.WriteString("plan: Lantern Hill\nbags: {by: [block, size]}\nfabrics:\n  dusk: {}\n  wick: {}\nblocks:\n")
	for i := range blocks {
		fmt.Fprintf(&b, "  B%d:\n    make: 1\n    pieces:\n", i)
		for k := range n / blocks {
			fmt.Fprintf(&b, "      - {cut: %d x %d 1/2, each: 2, fabric: %s}\n", 1+k/across, 1+k%across, []string{"dusk", "wick"}[k%2])
		}
	}
	return b.String()
}

// built builds the program as it is handed out.
func built(b *testing.B) string {
	b.Helper()
	bin := filepath.Join(b.TempDir(), "cutbinder")
	if out, err := exec.Command("go", "build", "-o", bin, ".").CombinedOutput(); err != nil {
		b.Fatalf("%v\n%s", err, out)
	}
	return bin
}

// coldRun times a new process that writes a file, in which it is not the same as
// in one that is warm, and tells what it wrote and the seconds all its threads
// worked.
func coldRun(b *testing.B, units int, unit string, args ...string) {
	bin, out := built(b), filepath.Join(b.TempDir(), "out.pdf")
	var worked time.Duration
	for b.Loop() {
		cmd := exec.Command(bin, append(args, "-o", out)...)
		if text, err := cmd.CombinedOutput(); err != nil {
			b.Fatalf("%v\n%s", err, text)
		}
		worked += cmd.ProcessState.UserTime() + cmd.ProcessState.SystemTime()
	}
	info, err := os.Stat(out)
	if err != nil {
		b.Fatal(err)
	}
	n := float64(b.N * units)
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/n, "ns/"+unit)
	b.ReportMetric(float64(worked.Nanoseconds())/n, "cpu-ns/"+unit)
	b.ReportMetric(float64(info.Size())/float64(units), "bytes/"+unit)
}

// BenchmarkLabels is a cold process that prints as many labels, no two alike, on
// sheets of thirty.
func BenchmarkLabels(b *testing.B) {
	for _, n := range []int{3000, 30000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			file := filepath.Join(b.TempDir(), "many.yaml")
			if err := os.WriteFile(file, []byte(manyBags(n)), 0o644); err != nil {
				b.Fatal(err)
			}
			coldRun(b, n, "label", "labels", file, "--stock", "2 5/8 x 1 in")
		})
	}
}

// BenchmarkBinder is a cold process that prints the sample's binder.
func BenchmarkBinder(b *testing.B) {
	coldRun(b, 1, "binder", "make", filepath.Join("..", "..", "testdata", "plans", "lantern-row.yaml"))
}
