package plan

import (
	"strings"

	"cutbinder/layout/length"
	"cutbinder/layout/pack"
)

// Read reads a plan file. name is the file's name for messages; nothing is
// opened. It gives the whole plan and no problems, or no plan and every fault of
// the file (the first thousand, where it is no plan at all), sorted by place:
// never both, and no doubts. It doesn't panic, whatever the data, and takes files
// up to 4 MiB.
//
// The file is YAML, a workbook (.xlsx), a cut list as a comma-separated file, or a
// zip of such files, one for each sheet of a workbook.
func Read(name string, data []byte) (*Plan, Problems) {
	v, faults, ok := parse(name, data)
	if ok {
		r := &reader{faults: faults, tables: Tables()}
		r.read(v)
		faults = r.faults
		if len(faults) == 0 {
			return r.plan, nil
		}
	}
	faults.Sort()
	return nil, faults
}

// Sound reads a plan file that has faults in lines of pieces alone: it gives the
// plan of the other lines, so that they can be looked at too, and nil where there
// are faults elsewhere, or nothing is left. It is no plan to cut from.
func Sound(name string, data []byte) *Plan {
	v, faults, ok := parse(name, data)
	if !ok || len(faults) > 0 {
		return nil
	}
	r := &reader{tables: Tables()}
	r.read(v)
	if r.inLines != len(r.faults) || len(r.faults) >= maxFaults {
		return nil
	}
	r.plan.Pieces = r.sound(r.plan.Pieces)
	left := len(r.plan.Pieces)
	for _, b := range r.plan.Blocks {
		b.Pieces = r.sound(b.Pieces)
		left += len(b.Pieces)
	}
	if left == 0 {
		return nil
	}
	return r.plan
}

// sound are the lines in which there was no fault.
func (r *reader) sound(lines []*Piece) (sound []*Piece) {
	for _, p := range lines {
		if !r.unsound[p] {
			sound = append(sound, p)
		}
	}
	return sound
}

// parse makes a file of any form into values.
func parse(name string, data []byte) (value, Problems, bool) {
	if isSheets(name, data) {
		return parseSheets(name, data)
	}
	return parseYAML(name, data)
}

// Tables are all mappings that a plan file is made of, the file's own first.
func Tables() []Table {
	return []Table{
		planTable.data(), fabricTable.data(), clothTable.data(), shrinkTable.data(), blockTable.data(), methodsTable.data(),
		pieceTable.data(), stripTable.data(), settingTable.data(), sashingTable.data(), borderTable.data(),
		bindingTable.data(), backingTable.data(), battingTable.data(), allowTable.data(), bagsTable.data(),
		labelsTable.data(), planClaims.data(), fabricClaims.data(), blockClaims.data(), pieceClaims.data(),
	}
}

// read reads the file's mapping into the plan and checks what only the whole shows.
func (r *reader) read(v value) {
	r.plan = newPlan(unitsOf(v))
	r.standard = standardsOf(r.plan.Units)
	if v.shape != mapping {
		r.fault(v.at, "start with a line such as plan: Lantern Row", "found %s; expected a plan: keys with values", found(v))
		return
	}
	n, _ := planTable.read(r, v, r.plan)
	r.plan.Node = n
	r.whole()
}

// unitsOf looks for the plan's units, by which all else is read. A wrong one is
// told when its turn comes.
func unitsOf(v value) length.System {
	for _, p := range v.pairs {
		if p.key == "units" && strings.EqualFold(strings.TrimSpace(p.val.text), "metric") {
			return length.Metric
		}
	}
	return length.Imperial
}

// planTable is the plan file itself. Fabrics and mixes come before all that names
// them.
var planTable = table[Plan]{"plan", "A quilt's cut plan.", []field[Plan]{
	textField("plan", "The quilt's title.", "Lantern Row", func(p *Plan) *string { return &p.Title }).required(),
	textField("by", "Who made the plan; printed in the footer.", "Example Workshop", func(p *Plan) *string { return &p.By }),
	textField("version", "The plan's version, printed as written.", `"2"`, func(p *Plan) *string { return &p.Version }),
	textField("date", "The plan's date, printed as written.", "March 2026", func(p *Plan) *string { return &p.Date }),
	{Key{Name: "mark", Kind: KindText, Doc: "Three letters or digits that stand for the plan in its bag codes.", Example: "K7Q", Default: "made from the title"}, readMark},
	textField("note", "A note to whoever cuts.", "Press before cutting.", func(p *Plan) *string { return &p.Note }),
	{Key{Name: "language", Kind: KindText, Doc: "The language of the plan's own texts, as its short code.", Example: "en", Default: "en"}, readLanguage},
	textField("font", "A TrueType file for scripts that the built-in face lacks.", "fonts/Face.ttf", func(p *Plan) *string { return &p.Font }),
	choiceField("units", "How a number without a unit is read, and how sizes are printed.", []option[length.System]{{"inch", length.Imperial}, {"metric", length.Metric}}, func(p *Plan) *length.System { return &p.Units }).by("inch"),
	sizeField("finished", "The quilt's finished size; needed for binding, backing and batting.", "54 x 66", func(p *Plan) *length.Size { return &p.Finished }),
	lengthField("seam", "The seam allowance.", "1/4", limits{most: 2 * in}, func(p *Plan) *length.Length { return &p.Seam }).by("1/4 in, metric 0.75 cm"),
	lengthField("cut-step", "Computed cut sizes are rounded up to multiples of this.", "1/8", limits{most: 1 * in}, func(p *Plan) *length.Length { return &p.CutStep }).by("1/8 in, metric 1 mm"),
	choiceField("cutting", "How involved the cuts may be.", kinds, func(p *Plan) *pack.Kind { return &p.Cutting }).by("stacks"),
	keysField("allow", "What is added for safety.", "{spare: 5%}", &allowTable, func(r *reader, p *Plan, v value) { p.Allow.Node, _ = allowTable.read(r, v, &p.Allow) }),
	namedField("fabrics", "The fabrics, each by a short name.", "{dusk: {name: Dusk stripe}}", KindNamed, "fabric", maxFabrics, addFabric).required(),
	namedField("mixes", "Sets of fabrics that pieces may come from.", "{nightprints: [dusk, ember]}", KindMixes, "", maxFabrics, addMix),
	{lettersKey, func(r *reader, k Key, v value, p *Plan) { p.letters = r.letters(k, v) }},
	namedField("blocks", "The blocks, each by a short name.", "{A: {make: 12, pieces: [{finished: 3, each: 4, fabric: dusk}]}}", KindNamed, "block", maxBlocks, addBlock),
	listField("pieces", "Pieces of no block: borders, sashing, a ready-made cut list.", "[{cut: 2 1/2, need: 40, fabric: dusk}]", maxLines, &pieceTable, func(r *reader, p *Plan, v value) { p.Pieces = append(p.Pieces, r.piece(v, nil)) }),
	keysField("setting", "An on-point setting.", "{on-point: 3 x 4, sides: dusk}", &settingTable, readSetting),
	keysField("sashing", "The strips between blocks.", "{blocks: 4 x 5, width: 2, fabric: dusk}", &sashingTable, readSashing),
	listField("borders", "The borders, from the inside out.", "[{width: 5, fabric: dusk}]", maxBorders, &borderTable, addBorder),
	keysField("binding", "The binding.", "{fabric: dusk}", &bindingTable, readBinding),
	keysField("backing", "The quilt's back.", "{fabric: dusk}", &backingTable, readBacking),
	keysField("batting", "The layer in between.", "{overhang: 4}", &battingTable, readBatting),
	keysField("bags", "How cut pieces are sorted into bags.", "{by: [block, size]}", &bagsTable, func(r *reader, p *Plan, v value) { bagsTable.read(r, v, p) }),
	keysField("labels", "The sheet the bag labels are printed on.", "{stock: 2 5/8 x 1 in}", &labelsTable, readLabels),
	choiceField("paper", "The paper of the binder.", []option[Paper]{{"letter", Letter}, {"a4", A4}}, func(p *Plan) *Paper { return &p.Paper }).by("letter, metric a4"),
	choiceField("hand", "The hand that holds the cutter.", []option[Hand]{{"right", RightHand}, {"left", LeftHand}}, func(p *Plan) *Hand { return &p.Hand }).by("right"),
	sizeField("ruler", "The longest and widest that can be cut along in one go.", "6 1/2 x 24 1/2", func(p *Plan) *length.Size { return &p.Ruler }).by("6 1/2 x 24 1/2 in, metric 16 x 60 cm"),
	sizeField("mat", "The cutting mat.", "24 x 36", func(p *Plan) *length.Size { return &p.Mat }).by("24 x 36 in, metric 60 x 90 cm"),
	{Key{Name: "quilt", Kind: KindRows, Doc: "The quilt's rows of blocks, from the top.", Example: "[A B A, B A B]"}, readQuilt},
	keysField("claims", "What the writer believes of the plan.", "{pieces: 312}", &planClaims, func(r *reader, p *Plan, v value) { p.Claims.Node, _ = planClaims.read(r, v, &p.Claims) }),
	{Key{Name: "accept", Kind: KindReasons, Doc: "Doubts the writer has looked at, each with the reason why it stands.", Example: "{claim-buy:dusk: bought before}"}, readAccept},
}}
