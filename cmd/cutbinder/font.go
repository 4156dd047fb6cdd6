package main

import (
	"path/filepath"

	"cutbinder/fonts"
	"cutbinder/layout/plan"

	"github.com/urfave/cli/v2"
)

func fontFlag() cli.Flag {
	return &cli.StringFlag{Name: "font", Usage: "a TrueType `FILE` for characters that the built-in faces lack"}
}

// faces are the faces to print in: the built-in ones and, for what they lack,
// the one that --font or the plan names. A plan may come from a stranger, so its
// font must lie in or below the plan's own folder.
func (a *app) faces(c *cli.Context, p *plan.Plan, src source) (fonts.Set, error) {
	set := fonts.Default()
	name := c.String("font")
	if name == "" && p.Font != "" {
		if !filepath.IsLocal(filepath.FromSlash(p.Font)) {
			return set, fault("put the font beside the plan, or name it with --font",
				"%s: font: %q lies outside the plan's folder", p.Place("font"), p.Font)
		}
		name = filepath.Join(src.dir(), filepath.FromSlash(p.Font))
	}
	if name == "" {
		return set, nil
	}
	ttf, err := a.readFile(name, maxFont)
	if err != nil {
		return set, err
	}
	face, err := fonts.Parse(filepath.Base(name), ttf)
	if err != nil {
		return set, fault("a TrueType font (.ttf) is expected", "%s: %v", name, err)
	}
	return set.WithFallback(face), nil
}
