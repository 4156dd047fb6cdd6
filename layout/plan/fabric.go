package plan

import (
	"regexp"
	"slices"
	"strings"

	"cutbinder/layout/length"
	"cutbinder/layout/pack"
)

// fabricTable is one cloth. The width comes before have, which depends on it, and
// cloth before shrink.
var fabricTable = table[Fabric]{"fabric", "One cloth of the plan.", []field[Fabric]{
	textField("name", "What the fabric is called.", "Dusk stripe", func(f *Fabric) *string { return &f.Name }).by("its short name"),
	{Key{Name: "colour", Kind: KindColour, Doc: "Its colour on the drawings, between quotes.", Example: `"#4a5578"`}, readColour},
	lengthField("width", "The usable width once the selvages are off, as measured.", "41 1/2", limits{}, func(f *Fabric) *length.Length { return &f.Width }).by("40 in, metric 102 cm"),
	{Key{Name: "have", Kind: KindHave, Doc: "What is on the shelf; without it the tool works out what to buy.", Example: "half yard", Of: "cloth"}, readHave},
	flagField("one-way", "A directional print: its pieces are never turned.", "yes", func(f *Fabric) *bool { return &f.OneWay }),
	flagField("prewash", "Washed before cutting: shrinkage is added to what to buy.", "yes", func(f *Fabric) *bool { return &f.Prewash }),
	choiceField("cloth", "What it is woven as; flannel shrinks more.", []option[bool]{{"cotton", false}, {"flannel", true}}, func(f *Fabric) *bool { return &f.Flannel }).by("cotton"),
	{Key{Name: "shrink", Kind: KindShrink, Doc: "What washing takes off.", Example: "4%", Of: "shrink", Default: "cotton 3% of the length and 5% of the width, flannel 8% and 4%"}, readShrink},
	choiceField("bleeds", "What is known of its dye; stated, it gets a row in the dye-bleed test record.", []option[Bleeds]{{"likely", BleedsLikely}, {"unknown", BleedsUnknown}, {"no", BleedsNo}}, func(f *Fabric) *Bleeds { return &f.Bleeds }),
	{Key{Name: "done", Kind: KindDone, Doc: "What is cut already: yes for all of it, or the cut sizes that are; make prints what is left.", Example: "[3 1/2, WOF x 2 1/2]", Default: "no"}, readDone},
	textField("note", "A note to whoever cuts it.", "stripes run along the length", func(f *Fabric) *string { return &f.Note }),
	choiceField("cutting", "How involved its cuts may be.", kinds, func(f *Fabric) *pack.Kind { return &f.Cutting }).by("the plan's"),
	lengthField("step", "The shop cuts it in steps of this.", "1/4 yd", limits{most: 10 * length.Yard}, func(f *Fabric) *length.Length { return &f.Step }).by("the plan's"),
	keysField("claims", "What the writer believes of the fabric.", "{buy: 1/2 yd}", &fabricClaims, func(r *reader, f *Fabric, v value) { f.Claims.Node, _ = fabricClaims.read(r, v, &f.Claims) }),
}}

// shrinkTable is what washing takes off each way.
var shrinkTable = table[Shrinkage]{"shrink", "What washing takes off each way.", []field[Shrinkage]{
	percentField("length", "Off the length.", "3%", 5000, func(s *Shrinkage) *Percent { return &s.Length }),
	percentField("width", "Off the width.", "5%", 5000, func(s *Shrinkage) *Percent { return &s.Width }),
}}

// addFabric reads one fabric. It is in the plan even where it is faulty, so that
// its name is known.
func addFabric(r *reader, p *Plan, at pair) {
	f := &Fabric{ID: at.key, Width: r.standard.width}
	f.Node, _ = fabricTable.read(r, at.val, f)
	if f.Name == "" {
		f.Name = f.ID
	}
	if !f.Stated("shrink") {
		f.Shrink = shrinks(f.Flannel)
	}
	if !f.Stated("step") {
		f.Step = p.Allow.Step
	}
	if !f.Stated("cutting") {
		f.Cutting = p.Cutting
	}
	p.Fabrics = append(p.Fabrics, f)
}

// colourForm is a colour of three or six hexadecimal digits.
var colourForm = regexp.MustCompile(`^#(?:[0-9a-f]{3}|[0-9a-f]{6})$`)

// readColour reads "#rgb" or "#rrggbb", and keeps the longer form.
func readColour(r *reader, k Key, v value, f *Fabric) {
	c := strings.ToLower(strings.TrimSpace(v.text))
	if v.shape != text || !colourForm.MatchString(c) {
		hint := "write # and six digits from 0 to 9 and a to f"
		if v.at.Cell == "" {
			hint += ", between quotes"
		}
		r.rejectFor(k, v, hint)
		return
	}
	if len(c) == 4 {
		c = string([]byte{'#', c[1], c[1], c[2], c[2], c[3], c[3]})
	}
	f.Colour = c
}

// readShrink reads one percentage for both ways, or a mapping.
func readShrink(r *reader, k Key, v value, f *Fabric) {
	if v.shape == mapping {
		f.Shrink = shrinks(f.Flannel)
		shrinkTable.read(r, v, &f.Shrink)
		return
	}
	if p, ok := r.percent(k, v, 5000); ok {
		f.Shrink = Shrinkage{p, p}
	}
}

// addMix reads one mix: a list of fabrics, each once.
func addMix(r *reader, p *Plan, at pair) {
	m := &Mix{Node: Node{At: at.val.at}, ID: at.key}
	if f := p.Fabric(at.key); f != nil {
		r.fault(at.at, "give the mix another name", "mix %q has the name of a fabric, which stands %s", at.key, f.At.stands())
	}
	k := Key{Name: "mix " + at.key, Kind: KindFabrics, Example: "[dusk, ember]"}
	if at.val.shape != list || len(at.val.items) == 0 {
		r.reject(k, at.val)
	}
	for _, item := range at.val.items {
		switch mixes := p.mixIDs(); {
		case item.shape == text && p.Fabric(item.text) == nil && (item.text == at.key || slices.Contains(mixes, item.text)):
			r.fault(item.at, "write its fabrics here", "%q is a mix; expected fabrics, for a mix holds no mixes", item.text)
		case slices.Contains(m.Fabrics, item.text):
			r.fault(item.at, "keep one of them", "fabric %q stands in mix %q twice", item.text, at.key)
		default:
			if s, ok := r.source(Key{Name: k.Name, Kind: KindFabric, Example: "dusk"}, item); ok {
				m.Fabrics = append(m.Fabrics, s.ID)
			}
		}
	}
	p.Mixes = append(p.Mixes, m)
}
