package audit

import (
	"fmt"
	"slices"
	"strings"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/plan"
	"cutbinder/sheets/say"
)

// cloths looks for cloth without an inch to spare, and for strips that the ruler
// can't measure.
func (a *auditor) cloths() error {
	a.wideStrips()
	for i := range a.fabrics {
		f := &a.fabrics[i]
		a.nominal(f)
		if len(f.Fabric.Have) == 0 {
			a.tightPurchase(f)
			continue
		}
		a.unusable(f.Fabric)
		if f.Missing() > 0 {
			continue
		}
		if err := a.tightShelf(f); err != nil {
			return err
		}
		if err := a.washedShelf(f); err != nil {
			return err
		}
	}
	return nil
}

// tightPurchase tells where what is to be bought is what is needed, to a hair.
func (a *auditor) tightPurchase(f *cutting.Fabric) {
	if f.Buy.Buy == 0 || f.Fabric.Claims.Buy > 0 || a.plan.Allow.Extra > 0 || f.Buy.Buy-f.Buy.Exact >= a.hair() {
		return
	}
	at := f.Fabric.At
	a.find(plan.Doubt, at, "tight:"+f.Fabric.ID, "ask for "+a.v.ToBuy(a.nextStep(f, f.Buy.Buy))+", or add padding: allow: {extra: 5%}",
		"%s: %s is just what is needed, %s with squaring: nothing is left where the shop cuts it crooked", f.Fabric.Name,
		a.v.ToBuy(f.Buy.Buy), a.v.About(f.Buy.Exact))
}

// rulers are those that are sold wider than the usual one, the narrower first.
var rulers = map[length.System][]length.Size{
	length.Imperial: {{W: 17 * length.Inch / 2, H: 24 * length.Inch}, {W: 25 * length.Inch / 2, H: 25 * length.Inch / 2}},
	length.Metric:   {{W: 20 * length.CM, H: 60 * length.CM}, {W: 30 * length.CM, H: 30 * length.CM}},
}

// wideStrips notes strips that are wider than the ruler, all in one finding.
// Backing panels are not cut with one, nor is what is longer than the mat.
func (a *auditor) wideStrips() {
	var all []string
	widest := length.Length(0)
	for i := range a.fabrics {
		var texts []string
		for _, h := range a.wideHeights(&a.fabrics[i]) {
			texts = append(texts, a.v.Len(h))
			widest = max(widest, h)
		}
		if len(texts) > 0 {
			all = append(all, a.fabrics[i].Fabric.Name+" "+say.Things(texts))
		}
	}
	if len(all) == 0 {
		return
	}
	hint := "lay two rulers side by side, or measure with the mat"
	if i := slices.IndexFunc(rulers[a.plan.Units], func(z length.Size) bool { return z.W >= widest }); i >= 0 {
		hint += "; or say which wider ruler you have, such as ruler: " + a.v.Size(rulers[a.plan.Units][i])
	}
	a.find(plan.Remark, a.plan.Place("ruler"), "ruler", hint,
		"some strips are wider than the ruler, %s: %s", a.v.With(a.plan.Ruler.W), strings.Join(all, "; "))
}

// wideHeights is how wide a fabric's strips are that the ruler can't measure.
func (a *auditor) wideHeights(f *cutting.Fabric) (heights []length.Length) {
	for i := range f.Cloths {
		c := &f.Cloths[i]
		for _, s := range c.Root.Parts {
			if s.Number == 0 || c.Root.Dir != cutting.Across || s.H <= a.plan.Ruler.W || s.H > a.plan.Mat.H || a.backing(f, c, s) {
				continue
			}
			if !slices.Contains(heights, s.H) {
				heights = append(heights, s.H)
			}
		}
	}
	return heights
}

func (a *auditor) backing(f *cutting.Fabric, c *cutting.Cloth, s cutting.Section) bool {
	if s.Placed < 0 {
		return false
	}
	p := c.Placed[s.Placed]
	return f.Pieces[p.Piece].Uses[p.Use].For == cutting.ForBacking
}

// nominal notes a width that is what a bolt's label says, selvages and all.
func (a *auditor) nominal(f *cutting.Fabric) {
	least := 87 * length.Inch / 2
	if a.plan.Units == length.Metric {
		least = 109 * length.CM
	}
	if !f.Fabric.Stated("width") || f.Fabric.Width < least || f.Fabric.Width > 46*length.Inch {
		return
	}
	a.find(plan.Remark, f.Fabric.Place("width"), "nominal:"+f.Fabric.ID, "measure between the selvages, or leave width out for what all such bolts have",
		"%s: %s is what bolts are sold as; between the selvages they mostly have less", f.Fabric.Name, a.v.With(f.Fabric.Width))
}

// widths lays fabrics to buy out once more on cloth that is a little narrower
// than the plan states, or as narrow as the wash may leave it.
func (a *auditor) widths() error {
	less := length.Inch / 2
	if a.plan.Units == length.Metric {
		less = length.CM
	}
	narrow, wash := map[*plan.Fabric]length.Length{}, map[*plan.Fabric]length.Length{}
	at := func(f *plan.Fabric) (widths []length.Length) {
		if f.Stated("width") && f.Width > 2*less {
			narrow[f] = f.Width - less
			widths = append(widths, narrow[f])
		}
		if f.Prewash {
			wash[f] = washed(f.Width, f.Shrink.Width) / a.hair() * a.hair()
			widths = append(widths, wash[f])
		}
		return widths
	}
	found, err := cutting.Widths(a.ctx, a.plan, a.fabrics, at, a.o)
	if err != nil {
		return err
	}
	for i, widths := range found {
		f := &a.fabrics[i]
		for _, w := range widths {
			switch w.Width {
			case wash[f.Fabric]:
				a.widthFinding(f, w, place(f.Fabric.Node, "prewash"), "wash:"+f.Fabric.ID,
					fmt.Sprintf("the wash may leave %s of its width: ", a.v.With(w.Width)), "wash it first, measure it, and write what it has then as width:")
			case narrow[f.Fabric]:
				a.widthFinding(f, w, f.Fabric.Place("width"), "width:"+f.Fabric.ID, "", "measure the cloth before you buy, or plan for less: width: "+a.v.Len(w.Width))
			}
		}
	}
	return nil
}

// widthFinding tells what narrower cloth takes more, as a doubt where it must be
// bought or breaks what is claimed.
func (a *auditor) widthFinding(f *cutting.Fabric, w cutting.Width, at plan.Pos, id, lead, hint string) {
	name := f.Fabric.Name + ": " + lead
	if !w.Fits {
		a.find(plan.Doubt, at, id, hint, "%sits pieces need all of the %s: on cloth %s wide one is too wide", name, a.v.With(f.Fabric.Width), a.v.With(w.Width))
		return
	}
	claim := f.Fabric.Claims.Buy
	if w.Used <= f.Used || claim > 0 && a.lean(f.Fabric, f.Buy.Used) > claim { // short at any width
		return
	}
	what := fmt.Sprintf("%sthe pieces come from %s only where the cloth is %s wide or more; at %s they take %s", name,
		a.v.With(f.Used), a.v.With(f.Fabric.Width), a.v.With(w.Width), a.v.With(w.Used))
	level := plan.Remark
	switch {
	case claim > 0 && a.lean(f.Fabric, w.Buy.Used) <= claim:
		what += ": " + a.v.ToBuy(claim) + " still does"
	case claim > 0:
		level, what = plan.Doubt, what+", more than the "+a.v.ToBuy(claim)+" claimed"
	case w.Buy.Buy > f.Buy.Buy:
		level, what = plan.Doubt, what+fmt.Sprintf(": %s to buy instead of %s", a.v.ToBuy(w.Buy.Buy), a.v.ToBuy(f.Buy.Buy))
	default:
		what += ": " + a.v.ToBuy(f.Buy.Buy) + " still does"
	}
	a.find(level, at, id, hint, "%s", what)
}
