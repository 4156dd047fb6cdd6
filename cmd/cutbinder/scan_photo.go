package main

import (
	"context"
	"errors"
	"fmt"

	"cutbinder/sheets/bag"
	"cutbinder/sheets/scan"
)

// maxPhoto is the largest photo file that is read.
const maxPhoto = 256 << 20

// photo answers every code on a photo, each once, in the order in which they stand
// on it. A photo that can't be looked at is told like a code that is wrong, so that
// the other photos are still looked at. The error is one of keeping the answers.
func (s *scanner) photo(ctx context.Context, name string) error {
	data, err := s.a.readFile(name, maxPhoto)
	var failed failure
	if errors.As(err, &failed) {
		return s.noCode(failed.message, failed.hint)
	}
	found, err := scan.Find(ctx, data, scan.Options{})
	switch {
	case errors.Is(err, context.Canceled):
		return nil
	case err != nil:
		return s.noCode(fmt.Sprintf("%s: %v", name, err), "")
	case len(found) == 0:
		return s.noCode("no code found in the photo "+name, "go nearer, until the label fills a third of the photo; hold still and keep glare off it")
	}
	answered := map[string]bool{}
	for _, f := range found {
		if f.Text != "" && answered[f.Text] {
			continue
		}
		answered[f.Text] = true
		if err := s.square(name, f); err != nil {
			return err
		}
	}
	return nil
}

// noCode answers a photo, or a part of it, on which no code could be read.
func (s *scanner) noCode(problem, hint string) error {
	return s.answer(bag.Answer{Verdict: bag.NotACode, Problem: problem, Hint: hint})
}

// fewPixels is how many pixels a module needs to be read well.
const fewPixels = 3

// square answers a square code that was found on a photo.
func (s *scanner) square(name string, f scan.Found) error {
	if f.Text == "" {
		hint := "hold still and keep glare and folds off it, or type the code that is printed under it"
		if f.Module < fewPixels {
			hint = "go nearer, or type the code that is printed under it"
		}
		x, y := (f.Corners[0].X+f.Corners[2].X)/2, (f.Corners[0].Y+f.Corners[2].Y)/2
		return s.noCode(fmt.Sprintf("%s: %s: there is a square code at %d, %d", name, scan.Unreadable, x, y), hint)
	}
	answer := scan.Answer(s.bags, f.Text)
	if !answer.OK() {
		answer.Problem = fmt.Sprintf("%s: %s", name, answer.Problem)
	}
	return s.answer(answer)
}
