// Command measure shows that what is printed lies where it belongs: it sets the
// sample binder and label outlines, has pdftoppm turn them into 300 dpi pictures,
// and finds the middle of lines in them.
//
//	go run ./.ci/measure PLAN
package main

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"sort"
	"strings"

	"cutbinder/fonts"
	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/page"
	"cutbinder/layout/pdf"
	"cutbinder/layout/plan"
	"cutbinder/sheets"
)

const dpi = 300

// How far a line may lie from its place, in millimetres.
const (
	onDiagram = 0.1
	onLabel   = 0.2
)

func main() {
	if err := run(os.Args[1]); err != nil {
		fmt.Fprintln(os.Stderr, "measure:", err)
		os.Exit(1)
	}
}

func run(name string) error {
	q, err := work(name)
	if err != nil {
		return err
	}
	doc, problems := sheets.Binder(q, sheets.Options{Fonts: fonts.Default()})
	if problems.Faulty() {
		return problems
	}
	pictures, err := rasterise(doc)
	if err != nil {
		return err
	}
	if err := rulers(doc, pictures); err != nil {
		return err
	}
	if err := diagrams(doc, pictures, 3); err != nil {
		return err
	}
	return labels(q)
}

func work(name string) (*sheets.Quilt, error) {
	text, err := os.ReadFile(name)
	if err != nil {
		return nil, err
	}
	p, problems := plan.Read(name, text)
	if problems.Faulty() {
		return nil, problems
	}
	q, problems, err := sheets.Work(context.Background(), p, cutting.Options{})
	if problems.Faulty() {
		return nil, problems
	}
	return q, err
}

// rasterise turns a document into grey pictures, one a page.
func rasterise(doc page.Document) ([]*image.Gray, error) {
	dir, err := os.MkdirTemp("", "measure")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	var b bytes.Buffer
	if err := pdf.Write(&b, doc); err != nil {
		return nil, err
	}
	cmd := exec.Command("pdftoppm", "-r", fmt.Sprint(dpi), "-gray", "-", filepath.Join(dir, "page"))
	cmd.Stdin, cmd.Stderr = &b, os.Stderr
	if err := cmd.Run(); err != nil {
		return nil, err
	}
	names, _ := filepath.Glob(filepath.Join(dir, "page*.pgm"))
	sort.Strings(names)
	var all []*image.Gray
	for _, name := range names {
		picture, err := readPGM(name)
		if err != nil {
			return nil, err
		}
		all = append(all, picture)
	}
	return all, nil
}

// readPGM reads a binary grey map, as pdftoppm writes it.
func readPGM(name string) (*image.Gray, error) {
	data, err := os.ReadFile(name)
	if err != nil {
		return nil, err
	}
	var w, h, most int
	if _, err := fmt.Sscanf(string(data[:min(len(data), 40)]), "P5\n%d %d\n%d\n", &w, &h, &most); err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return &image.Gray{Pix: data[len(data)-w*h:], Stride: w, Rect: image.Rect(0, 0, w, h)}, nil
}

func mm(l length.Length) float64 { return float64(l) / float64(length.MM) }

func px(l length.Length) float64 { return mm(l) * dpi / 25.4 }

// offUpright is how far in mm the middle of an upright line lies from x, looked
// for between y0 and y1; offLevel the same for a level line.
func offUpright(img *image.Gray, x, y0, y1 length.Length) float64 {
	return off(func(across, along int) byte { return img.GrayAt(across, along).Y }, x, y0, y1)
}

func offLevel(img *image.Gray, y, x0, x1 length.Length) float64 {
	return off(func(across, along int) byte { return img.GrayAt(along, across).Y }, y, x0, x1)
}

// off finds the centre of the ink within 0.25 mm of a place, over the middle half
// of the line. A line that isn't there is 9 mm off.
func off(at func(across, along int) byte, place, from, to length.Length) float64 {
	quarter := (to - from) / 4
	lo, hi := int(px(from+quarter)), int(px(to-quarter))
	mid, reach := px(place), 0.25*dpi/25.4
	var ink, moment float64
	for along := lo; along <= hi; along++ {
		for across := int(mid - reach); across <= int(mid+reach); across++ {
			dark := 255 - float64(at(across, along))
			if dark > 60 { // tints and paper are no ink
				ink += dark
				moment += dark * (float64(across) + 0.5)
			}
		}
	}
	if ink == 0 {
		return 9
	}
	d := (moment/ink - mid) * 25.4 / dpi
	return max(d, -d)
}

// A worst is the largest distance found, and how many lines were looked at.
type worst struct {
	mm    float64
	lines int
	what  string
	// beside are upright places where thicker ink hides a line's middle.
	beside []length.Length
}

// thick lists where a page has selvages and folds.
func thick(p page.Page) []length.Length {
	var all []length.Length
	for _, it := range p.Items {
		if it.What() == "selvage" || it.What() == "fold" {
			b := it.Bounds()
			all = append(all, b.X, b.Right())
		}
	}
	return all
}

func (w *worst) see(mm float64, what string) {
	w.lines++
	if mm > w.mm {
		w.mm, w.what = mm, what
	}
}

func (w *worst) report(name string, most float64) error {
	fmt.Printf("%-28s %4d lines, at most %.3f mm off\n", name, w.lines, w.mm)
	if w.lines == 0 || w.mm > most {
		return fmt.Errorf("%s: %s is %.3f mm off, %.1f allowed", name, w.what, w.mm, most)
	}
	return nil
}

// rulers measures the ends of the print check's rulers and its square.
func rulers(doc page.Document, pictures []*image.Gray) error {
	var w worst
	for i, p := range doc.Pages {
		for _, it := range p.Items {
			switch it := it.(type) {
			case page.Line:
				if it.A.X == it.B.X && strings.HasPrefix(it.What(), "ruler ") {
					w.see(offUpright(pictures[i], it.A.X, it.A.Y, it.B.Y), it.What())
				}
			case page.Rect:
				if strings.HasPrefix(it.What(), "print check") {
					w.edges(pictures[i], it.Box, it.What())
				}
			}
		}
	}
	return w.report("rulers and square", onDiagram)
}

func (w *worst) edges(img *image.Gray, b page.Box, what string) {
	for _, x := range []length.Length{b.X, b.Right()} {
		if !slices.ContainsFunc(w.beside, func(t length.Length) bool { return max(t-x, x-t) < length.MM }) {
			w.see(offUpright(img, x, b.Y, b.Bottom()), what)
		}
	}
	w.see(offLevel(img, b.Y, b.X, b.Right()), what)
	w.see(offLevel(img, b.Bottom(), b.X, b.Right()), what)
}

// diagrams measures the pieces on the first pages that have some.
func diagrams(doc page.Document, pictures []*image.Gray, most int) error {
	for i, p := range doc.Pages {
		w := worst{beside: thick(p)}
		for _, it := range p.Items {
			// edges of narrow pieces have other lines too near
			if r, ok := it.(page.Rect); ok && strings.HasPrefix(r.What(), "piece ") && min(r.Box.W, r.Box.H) > 5*length.MM {
				w.edges(pictures[i], r.Box, r.What())
			}
		}
		if w.lines == 0 {
			continue
		}
		if err := w.report("diagram on page "+p.Label, onDiagram); err != nil {
			return err
		}
		if most--; most == 0 {
			return nil
		}
	}
	return fmt.Errorf("too few diagrams")
}

// labels measures the outlines of four label sheets.
func labels(q *sheets.Quilt) error {
	for _, s := range []struct {
		size  string
		paper plan.Paper
	}{{"2 5/8 x 1 in", plan.Letter}, {"4 x 2 in", plan.Letter}, {"63.5 x 38.1 mm", plan.A4}, {"99.1 x 67.7 mm", plan.A4}} {
		stock, err := sheets.FindStock(s.size, false, s.paper)
		if err != nil {
			return err
		}
		doc, err := sheets.Labels(q, sheets.LabelOptions{Kind: sheets.LabelOutline, Stock: stock}, page.NewStyle(fonts.Default()))
		if err != nil {
			return err
		}
		pictures, err := rasterise(doc)
		if err != nil {
			return err
		}
		var w worst
		for i := range stock.Labels() {
			w.edges(pictures[0], stock.Label(i), fmt.Sprint("label ", i+1))
		}
		if err := w.report("labels "+s.size, onLabel); err != nil {
			return err
		}
	}
	return nil
}
