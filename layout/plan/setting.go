package plan

import "cutbinder/layout/length"

// settingTable is an on-point setting.
var settingTable = table[Setting]{"setting", "An on-point setting: blocks stand on their corners.", []field[Setting]{
	gridField("on-point", "How many blocks across and down, those that touch the edges.", "5 x 6", func(s *Setting) (a, d *int) { return &s.Across, &s.Down }).required(),
	lengthField("block", "The finished side of a block, with its sash where one goes round it.", "9", limits{}, func(s *Setting) *length.Length { return &s.Block }).by("the blocks' own where all are alike"),
	sourceField("sides", "The fabric or mix of the side triangles.", "dusk", func(s *Setting) *Source { return &s.Sides }).required(),
	sourceField("corners", "The fabric or mix of the corner triangles.", "dusk", func(s *Setting) *Source { return &s.Corners }).by("that of the sides"),
	sourceField("alternate", "The fabric or mix of plain squares between the blocks.", "wick", func(s *Setting) *Source { s.Alternate = &Source{}; return s.Alternate }),
	{Key{Name: "generous", Kind: KindLength, Doc: "Added to setting triangles so that they can be trimmed; yes adds 1/4 in, metric 5 mm.", Example: "1/4", Default: "0"}, readGenerous},
}}

// sashingTable is the strips between blocks.
var sashingTable = table[Sashing]{"sashing", "The strips between blocks.", append([]field[Sashing]{
	gridField("blocks", "How many blocks across and down.", "4 x 5", func(s *Sashing) (a, d *int) { return &s.Across, &s.Down }).required(),
	sizeField("block", "The finished size of a block.", "9", func(s *Sashing) *length.Size { return &s.Block }).by("the blocks' own where all are alike"),
	lengthField("width", "The strips' finished width.", "2", limits{}, func(s *Sashing) *length.Length { return &s.Width }).required(),
	flagField("frame", "Strips stand round the outside too.", "yes", func(s *Sashing) *bool { return &s.Frame }),
	sourceField("cornerstones", "The fabric or mix of squares where strips cross; without it strips in rows run through.", "wick", func(s *Sashing) *Source { s.Cornerstones = &Source{}; return s.Cornerstones }),
}, fabricFields(func(s *Sashing) *Source { return &s.Source })...)}

// readGenerous reads a length, or yes for the usual one.
func readGenerous(r *reader, k Key, v value, s *Setting) {
	switch v.text {
	case "yes", "true":
		s.Generous = r.standard.generous
		return
	case "no", "false":
		return
	}
	if l, ok := r.length(k, v, limits{zero: true, most: 4 * in}); ok {
		s.Generous = l
	}
}

// readSetting reads the on-point setting.
func readSetting(r *reader, p *Plan, v value) {
	s := &Setting{}
	s.Node, _ = settingTable.read(r, v, s)
	if !s.Stated("corners") {
		s.Corners = s.Sides
	}
	if !s.Stated("block") {
		z := r.blockSize(s.Node, "setting")
		if z.W != z.H {
			r.fault(s.At, "write block: and the finished side", "the setting takes square blocks; the plan's are %s", r.plan.Units.FormatSize(z))
		}
		s.Block = z.W
	}
	p.Setting = s
}

// readSashing reads the sashing.
func readSashing(r *reader, p *Plan, v value) {
	s := &Sashing{}
	s.Node, _ = sashingTable.read(r, v, s)
	r.oneSource(s.Node, "the sashing")
	if !s.Stated("block") {
		s.Block = r.blockSize(s.Node, "sashing")
	}
	p.Sashing = s
}

// blockSize is the finished size that all of the plan's blocks have.
func (r *reader) blockSize(n Node, what string) (z length.Size) {
	told := false // a block's size is missing for a fault that is told already
	for _, b := range r.plan.Blocks {
		told = told || b.Finished == (length.Size{}) && (b.Stated("finished") || b.Stated("draw"))
	}
	for _, b := range r.plan.Blocks {
		if z != (length.Size{}) && b.Finished != z || b.Finished == (length.Size{}) {
			z = length.Size{}
			break
		}
		z = b.Finished
	}
	if z == (length.Size{}) && !told && !r.misspelt(n, "block") {
		r.fault(n.At, "write block: and the finished size", "the %s has no block; expected the blocks' finished size, since the plan doesn't state one size for all of them", what)
	}
	return z
}
