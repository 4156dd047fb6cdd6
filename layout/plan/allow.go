package plan

import (
	"regexp"
	"slices"
	"strings"

	"cutbinder/layout/length"
)

// allowTable is what is added for safety.
var allowTable = table[Allow]{"allow", "What is added for safety.", []field[Allow]{
	percentField("spare", "Extra pieces of every size, rounded up.", "5%", 50000, func(a *Allow) *Percent { return &a.Spare }).by("0%"),
	lengthField("squaring", "Length lost straightening the cut ends, for each length of fabric.", "1/2", limits{zero: true, most: length.Yard}, func(a *Allow) *length.Length { return &a.Squaring }).by("1/2 in, metric 1.5 cm"),
	percentField("extra", "Padding on what to buy.", "10%", 50000, func(a *Allow) *Percent { return &a.Extra }).by("0%"),
	lengthField("step", "Shops cut in steps of this.", "1/8 yd", limits{most: 10 * length.Yard}, func(a *Allow) *length.Length { return &a.Step }).by("1/8 yd, metric 10 cm"),
	countField("retrue", "The edge is squared again after this many strips; 0 is never.", "4", 0, 1000, func(a *Allow) *int { return &a.Retrue }).by("0"),
}}

// bagsTable is how cut pieces are sorted into bags.
var bagsTable = table[Plan]{"bags", "How cut pieces are sorted into bags.", []field[Plan]{
	{Key{Name: "by", Kind: KindChoices, Doc: "What parts one bag from another.", Example: "[block, size]", Default: "[block, size]", Choices: []string{string(ByBlock), string(BySize), string(ByFabric)}}, readBagKeys},
}}

// readBagKeys reads one bag key or a list of them, each once.
func readBagKeys(r *reader, k Key, v value, p *Plan) {
	items, ok := r.several(k, v)
	if !ok {
		return
	}
	p.BagBy = nil
	for _, item := range items {
		i, ok := r.choice(k, item)
		if !ok {
			continue
		}
		key := BagKey(k.Choices[i])
		if slices.Contains(p.BagBy, key) {
			r.fault(item.at, "keep one of them", "by: %s is written twice", key)
			continue
		}
		p.BagBy = append(p.BagBy, key)
	}
}

// markForm is a plan's mark on codes.
var markForm = regexp.MustCompile(`^[A-Z0-9]{3}$`)

// readMark reads the plan's mark, in capitals.
func readMark(r *reader, k Key, v value, p *Plan) {
	s, ok := r.text(k, v)
	if !ok {
		return
	}
	if p.Mark = strings.ToUpper(s); !markForm.MatchString(p.Mark) {
		r.fault(v.at, "", "%s: found %s; expected three letters or digits such as %s", k.Name, found(v), k.Example)
	}
}

// languageForm is the shape of a BCP 47 language tag.
var languageForm = regexp.MustCompile(`^[A-Za-z]{2,8}(?:-[A-Za-z0-9]{1,8})*$`)

// readLanguage reads a language's code.
func readLanguage(r *reader, k Key, v value, p *Plan) {
	s, ok := r.text(k, v)
	if !ok {
		return
	}
	if !languageForm.MatchString(s) || len(s) > 35 {
		r.fault(v.at, "", "%s: found %s; expected a language's short code such as en or pt-BR", k.Name, found(v))
		return
	}
	p.Language = s
}

// readAccept reads the doubts that the writer has looked at.
func readAccept(r *reader, k Key, v value, p *Plan) {
	if v.shape != mapping {
		r.reject(k, v)
		return
	}
	for _, pair := range v.pairs {
		why, ok := r.text(Key{Name: shorten(pair.key), Kind: KindText, Example: "bought before"}, pair.val)
		if ok {
			p.Accept = append(p.Accept, Accepted{pair.at, pair.key, strings.Join(strings.Fields(why), " ")})
		}
	}
}
