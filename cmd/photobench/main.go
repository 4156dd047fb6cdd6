// Command photobench measures how many labels are read off made-up photos, and
// beside it how many zbarimg reads off the same files, where that is installed.
//
//	go run ./cmd/photobench -n 1000 -seed 1
package main

import (
	"context"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"time"

	"cutbinder/sheets/scan"
	"cutbinder/sheets/scan/photo"
)

func main() {
	n := flag.Int("n", 100, "how many photos")
	seed := flag.Uint64("seed", 1, "which photos: the same seed makes the same ones")
	cores := flag.Int("cores", 1, "how many to look at at once")
	keep := flag.String("keep", "", "keep the photos with a label that was not read in this `folder`")
	flag.Parse()
	if err := run(*n, *seed, *cores, *keep); err != nil {
		fmt.Fprintln(os.Stderr, "photobench:", err)
		os.Exit(1)
	}
}

// run makes, reads and counts photos.
func run(n int, seed uint64, cores int, keep string) error {
	labels, err := photo.Sample()
	if err != nil {
		return err
	}
	dir, err := os.MkdirTemp("", "photobench")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	b := bench{labels: labels, seed: seed, dir: dir, keep: keep}
	b.zbar, _ = exec.LookPath("zbarimg")
	photos := make(chan int)
	var wait sync.WaitGroup
	for range cores {
		wait.Go(func() {
			for i := range photos {
				b.photo(i)
			}
		})
	}
	for i := range n {
		photos <- i
	}
	close(photos)
	wait.Wait()
	b.print()
	return b.err
}

// bands are the pixels a module that results are counted by; the last one is for
// all above.
const bands = 11

// A count is how many labels there are and how many of them were read.
type count struct{ labels, ours, zbar int }

// A bench counts what is read.
type bench struct {
	labels    []photo.Label
	seed      uint64
	dir, keep string
	zbar      string // the program; "" where it isn't installed

	mu          sync.Mutex
	counts      [bands]count
	wrong       int // texts that were read and are not on the photo, by us
	wrongZbar   int
	spent, zbed time.Duration
	err         error
}

// photo makes one photo and reads it in both ways.
func (b *bench) photo(i int) {
	p := photo.New(b.labels, b.seed*1_000_003+uint64(i), photo.Options{})
	start := time.Now()
	ours, err := read(p)
	spent := time.Since(start)
	start = time.Now()
	var zbar map[string]bool
	if err == nil {
		zbar, err = b.readZbar(p, i)
	}
	zbed := time.Since(start)
	b.mu.Lock()
	defer b.mu.Unlock()
	if err != nil {
		b.err = fmt.Errorf("photo %d: %w", i, err)
		return
	}
	b.spent, b.zbed = b.spent+spent, b.zbed+zbed
	if b.count(p, ours, zbar) && b.keep != "" {
		b.err = os.WriteFile(filepath.Join(b.keep, fmt.Sprintf("%d.jpg", i)), p.JPEG, 0o644)
	}
}

// count counts one photo's labels; missed says whether one of them was not read.
func (b *bench) count(p photo.Photo, ours, zbar map[string]bool) (missed bool) {
	there := map[string]bool{}
	for _, s := range p.Seen {
		there[s.Text] = true
		c := &b.counts[min(int(s.Module), bands-1)]
		c.labels++
		if ours[s.Text] {
			c.ours++
		} else {
			missed = true
		}
		if zbar[s.Text] {
			c.zbar++
		}
	}
	b.wrong += strangers(ours, there)
	b.wrongZbar += strangers(zbar, there)
	return missed
}

// strangers is how many of the texts are not there.
func strangers(texts, there map[string]bool) int {
	n := 0
	for text := range texts {
		if !there[text] {
			n++
		}
	}
	return n
}

// read reads a photo with this project's scanner.
func read(p photo.Photo) (map[string]bool, error) {
	found, err := scan.Find(context.Background(), p.JPEG, scan.Options{})
	texts := map[string]bool{}
	for _, f := range found {
		if f.Text != "" {
			texts[f.Text] = true
		}
	}
	return texts, err
}

// readZbar reads a photo with zbarimg, which exits with 4 where it finds nothing.
func (b *bench) readZbar(p photo.Photo, i int) (map[string]bool, error) {
	if b.zbar == "" {
		return nil, nil
	}
	name := filepath.Join(b.dir, fmt.Sprintf("%d.jpg", i))
	if err := os.WriteFile(name, p.JPEG, 0o644); err != nil {
		return nil, err
	}
	defer os.Remove(name)
	out, err := exec.Command(b.zbar, "-q", "--raw", "-Sdisable", "-Sqrcode.enable", name).Output()
	if exit, ok := err.(*exec.ExitError); ok && exit.ExitCode() == 4 {
		err = nil
	}
	texts := map[string]bool{}
	for line := range strings.Lines(string(out)) {
		texts[strings.TrimSuffix(line, "\n")] = true
	}
	return texts, err
}

// print prints the counts by band, for three pixels and more, and for all.
func (b *bench) print() {
	var all, good count
	fmt.Println("pixels a module   labels     ours  zbarimg")
	for i, c := range b.counts {
		name := fmt.Sprintf("%d to %d", i, i+1)
		if i == bands-1 {
			name = fmt.Sprintf("%d and more", i)
		}
		b.row(name, c)
		all.add(c)
		if i >= 3 {
			good.add(c)
		}
	}
	b.row("3 and more", good)
	b.row("all", all)
	fmt.Printf("texts that were not there: ours %d", b.wrong)
	if b.zbar != "" {
		fmt.Printf(", zbarimg %d", b.wrongZbar)
	}
	fmt.Printf("\ntime: ours %.1f s", b.spent.Seconds())
	if b.zbar != "" {
		fmt.Printf(", zbarimg %.1f s", b.zbed.Seconds())
	}
	fmt.Println()
}

func (c *count) add(d count) {
	c.labels, c.ours, c.zbar = c.labels+d.labels, c.ours+d.ours, c.zbar+d.zbar
}

func (b *bench) row(name string, c count) {
	if c.labels == 0 {
		return
	}
	part := func(n int) string { return fmt.Sprintf("%.1f %%", 100*float64(n)/float64(c.labels)) }
	zbar := "-"
	if b.zbar != "" {
		zbar = part(c.zbar)
	}
	fmt.Printf("%-15s %8d %8s %8s\n", name, c.labels, part(c.ours), zbar)
}
