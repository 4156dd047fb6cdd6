package plan

import (
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"cutbinder/layout/length"
)

// clothTable is a length of cloth by its two measures.
var clothTable = table[Cloth]{"cloth", "A length of cloth at hand.", []field[Cloth]{
	lengthField("width", "Across the cloth.", "42", limits{}, func(c *Cloth) *length.Length { return &c.W }).by("the fabric's"),
	lengthField("length", "Along the cloth.", "17 1/2", limits{}, func(c *Cloth) *length.Length { return &c.H }).required(),
}}

// readHave reads what is on the shelf: one cloth or a list of them.
func readHave(r *reader, k Key, v value, f *Fabric) {
	items := v.items
	if v.shape != list {
		items = []value{v}
	}
	for _, item := range items {
		cloths := r.cloths(k, item, f)
		if r.shelf += len(cloths); r.shelf > maxCloths {
			r.fault(item.at, "", "%s: the plan has %d lengths of cloth; expected at most %d", k.Name, r.shelf, maxCloths)
			return
		}
		f.Have = append(f.Have, cloths...)
	}
	numberAlike(f.Have)
}

// nthCloth is what tells cloths of one name apart: "fat quarter 2 of 3".
var nthCloth = regexp.MustCompile(` \d+ of \d+$`)

// numberAlike numbers cloths of one name, whether they were counted or listed one
// by one: each has a picture of its own.
func numberAlike(cloths []Cloth) {
	all, so := map[string]int{}, map[string]int{}
	for i := range cloths {
		cloths[i].Name = nthCloth.ReplaceAllString(cloths[i].Name, "")
		all[cloths[i].Name]++
	}
	for i := range cloths {
		if name := cloths[i].Name; all[name] > 1 {
			so[name]++
			cloths[i].Name = fmt.Sprintf("%s %d of %d", name, so[name], all[name])
		}
	}
}

// countForm is a count in digits or words before what it counts.
var countForm = regexp.MustCompile(`^(\d{1,6}|an?|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)(?: +| *[x×] *)(fat +(?:quarter|eighth)s?|(?:half|quarter|third|eighth)[ -](?:yard|metre|meter)s?)$`)

// briefForm is a fat quarter or eighth, or some, as the trade abbreviates them.
var briefForm = regexp.MustCompile(`^(|.*[^a-z])f([qe])(s?)$`)

// inFull writes the trade's abbreviations out: "2 fq" is "2 fat quarter". words
// are in lower case.
func inFull(words string) string {
	m := briefForm.FindStringSubmatch(words)
	if m == nil {
		return words
	}
	what := map[string]string{"q": "fat quarter", "e": "fat eighth"}[m[2]]
	return strings.TrimSpace(strings.TrimSpace(m[1]) + " " + what + m[3])
}

// countWords are the counts in words from one.
var countWords = strings.Fields("one two three four five six seven eight nine ten eleven twelve")

// cloths reads one entry of have:
//
//   - a length, at the fabric's full width: "half yard", "1 1/4 yd", "30 cm"
//   - "fat quarter", "fat eighth", or FQ, FE
//   - a count of those or of half yards and the like, in digits or words
//   - a size, across the cloth first and then along it. But a cut of full width
//     is written length first in the trade ("9 x 42"): where the second number is
//     at least 38 in (96 cm), or at least nine tenths of the fabric's width, and
//     the first is smaller than it and not itself that wide, the second is the
//     width.
//   - a mapping of width and length
func (r *reader) cloths(k Key, v value, f *Fabric) []Cloth {
	if v.shape == mapping {
		return []Cloth{r.measured(v, f)}
	}
	s, ok := r.text(k, v)
	if !ok {
		return nil
	}
	c := Cloth{At: v.at, Name: strings.Join(strings.Fields(s), " ")}
	words := inFull(strings.ToLower(c.Name))
	if side, square := strings.CutSuffix(words, " square"); square {
		r.fault(v.at, fmt.Sprintf("write both sides: %s x %[1]s", side), "%s: found %s; expected a length of cloth, or a size of two sides", k.Name, found(v))
		return nil
	}
	if words == "three quarter yards" {
		r.fault(v.at, "write 3/4 yd, or 3 x quarter yard", "%s: found %s, which may mean one length or three", k.Name, found(v))
		return nil
	}
	if m := countForm.FindStringSubmatch(words); m != nil && words != "three quarter yard" {
		return r.counted(k, v, countOf(m[1]), strings.TrimSuffix(m[2], "s"), f)
	}
	if words == "fat quarter" || words == "fat eighth" {
		return r.counted(k, v, 1, words, f)
	}
	if !r.oneCloth(k, v, &c, f) {
		return nil
	}
	return []Cloth{c}
}

// measured reads a cloth that is written as a mapping, and names it by its
// measures.
func (r *reader) measured(v value, f *Fabric) Cloth {
	c := Cloth{At: v.at}
	n, _ := clothTable.read(r, v, &c)
	if n.Stated("width") {
		c.Name = r.plan.Units.FormatSize(c.Size)
		return c
	}
	r.longEnough("length", v.get("length"))
	c.W, c.FullWidth = f.Width, true
	c.Name = r.plan.Units.FormatCloth(c.H)
	return c
}

// longEnough notes a number without a unit that comes to less than any cloth is
// long: in the plan's units it is inches or centimetres, and yards or metres were
// meant.
func (r *reader) longEnough(key string, v value) bool {
	inches, err := length.Parse(v.text, length.Imperial)
	cms, errCM := length.Parse(v.text, length.Metric)
	l, least, unit, sells := inches, 4*in, "in", "yd"
	if r.plan.Units == length.Metric {
		l, least, unit, sells = cms, 10*cm, "cm", "m"
	}
	if v.shape != text || err != nil || errCM != nil || inches == cms || l <= 0 || l >= least {
		return true
	}
	said := strings.TrimSpace(v.text)
	example := map[string]string{"yd": "1/2 yd", "m": "0.5 m"}[sells]
	r.fault(v.at, fmt.Sprintf("did you mean %s %s?", said, sells), "%s: %s is read as %s %s, shorter than any cloth; expected a length such as %s", key, said, said, unit, example)
	return false
}

// counted writes a count of fat quarters, half yards and the like out.
func (r *reader) counted(k Key, v value, count int, what string, f *Fabric) []Cloth {
	if count < 1 || count > maxCloths {
		r.fault(v.at, "", "%s: found %s; expected a count from 1 to %d", k.Name, found(v), maxCloths)
		return nil
	}
	c := Cloth{At: v.at}
	switch what = strings.ReplaceAll(what, "-", " "); what {
	case "fat quarter":
		c.Size = r.standard.quarter
	case "fat eighth":
		c.Size = r.standard.eighth
	default: // countForm leaves lengths that Parse reads
		c.H, _ = length.Parse(what, r.plan.Units)
		c.W, c.FullWidth = f.Width, true
	}
	cloths := make([]Cloth, count)
	for i := range cloths {
		cloths[i] = c
		cloths[i].Name = what
	}
	return cloths
}

// countOf is a count written in digits or as a word.
func countOf(s string) int {
	for i, w := range countWords {
		if s == w {
			return i + 1
		}
	}
	if s == "a" || s == "an" {
		return 1
	}
	n, _ := strconv.Atoi(s)
	return n
}

// oneCloth reads a length or a size into c.
func (r *reader) oneCloth(k Key, v value, c *Cloth, f *Fabric) bool {
	_, err := length.Parse(v.text, r.plan.Units)
	if err == nil {
		l, ok := r.length(k, v, limits{})
		c.W, c.H, c.FullWidth = f.Width, l, true
		return ok && r.longEnough(k.Name, v)
	}
	if !strings.ContainsAny(strings.ToLower(v.text), "x×") && !strings.Contains(v.text, " by ") {
		r.noCloth(k, v, err)
		return false
	}
	z, ok := r.size(k, v, true)
	if z.W == length.WOF {
		c.W, c.H, c.FullWidth = f.Width, z.H, true
	} else {
		c.Size = r.acrossFirst(z, f.Width)
		c.Turned = c.Size != z
	}
	return ok
}

// noCloth notes that a text is no length of cloth.
func (r *reader) noCloth(k Key, v value, err error) {
	const forms = "expected such as half yard, 30 cm, 9 x 42 or 2 fat quarters"
	hint := meant(strings.TrimLeft(v.text, "0123456789 "), []string{"fat quarter", "fat quarters", "fat eighth", "half yard", "quarter yard"})
	why := "is not a length"
	var e *length.Error
	switch words := inFull(strings.ToLower(strings.TrimSpace(v.text))); {
	case words == "fat quarters" || words == "fat eighths":
		why, hint = "does not say how many", "write 2 "+words
	case errors.As(err, &e):
		why = e.Why
	}
	r.fault(v.at, hint, "%s: %s %s; %s", k.Name, found(v), why, forms)
}

// acrossFirst turns a written size round where its second number is the width.
func (r *reader) acrossFirst(z length.Size, width length.Length) length.Size {
	wide := func(l length.Length) bool { return l >= r.standard.full || 10*l >= 9*width }
	if wide(z.H) && z.W < z.H && !wide(z.W) {
		return length.Size{W: z.H, H: z.W}
	}
	return z
}
