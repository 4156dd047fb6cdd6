package photo

import (
	"context"
	"fmt"

	"cutbinder/fonts"
	"cutbinder/layout/cutting"
	"cutbinder/layout/page"
	"cutbinder/layout/plan"
	"cutbinder/sheets"
)

// Plans are two plans whose labels are photographed: one in inches with bags of
// many sizes, and one in centimetres whose blocks have names that a square code
// writes letter by letter, and so in more modules.
var Plans = []string{`plan: Harvest Path
finished: 40 x 40
units: inch
seam: 1/4
fabrics:
  corn: {name: Corn yellow solid}
  rye: {name: Rye check}
  plough: {name: Plough brown print}
  sky: {name: Sky blue stripe}
blocks:
  A:
    name: Furrow
    make: 9
    finished: 10
    pieces:
      - {finished: 5, each: 2, fabric: corn}
      - {finished: 5 x 2 1/2, each: 4, fabric: rye}
  B:
    name: Gatepost and hedge
    make: 7
    finished: 10
    pieces:
      - {finished: 2 1/2, each: 8, fabric: plough}
      - {finished: 7 1/2 x 2 1/2, each: 2, fabric: sky}
      - {finished: 1 1/4 x 5, each: 4, fabric: corn}
      - {finished: 1 1/4, each: 4, fabric: rye}
bags: {by: [block, size]}
`, `plan: Nachtzug
finished: 90 x 90
units: metric
seam: 0.75
fabrics:
  ruß: {name: Ruß}
  лёд: {name: Лёд голубой}
blocks:
  A:
    name: Полярная звезда
    make: 4
    finished: 30
    pieces:
      - {finished: 15, each: 2, fabric: ruß}
      - {finished: 15 x 7.5, each: 4, fabric: лёд}
  B:
    name: Schienen über die Höhe
    make: 5
    finished: 30
    pieces:
      - {finished: 30 x 5, each: 3, fabric: ruß}
      - {finished: 30 x 5, each: 3, fabric: лёд}
`}

// Quilts are the plans worked out, as far as labels need it.
func Quilts() ([]*sheets.Quilt, error) {
	var all []*sheets.Quilt
	for _, text := range Plans {
		p, problems := plan.Read("", []byte(text))
		if problems.Faulty() {
			return nil, fmt.Errorf("sample: %v", problems)
		}
		q, problems, err := sheets.Sort(context.Background(), p, cutting.Options{})
		if err != nil || problems.Faulty() {
			return nil, fmt.Errorf("sample: %v %v", problems, err)
		}
		all = append(all, q)
	}
	return all, nil
}

// Sample is the labels of the sample plans on every stock.
func Sample() ([]Label, error) {
	quilts, err := Quilts()
	if err != nil {
		return nil, err
	}
	var all []Label
	for _, q := range quilts {
		labels, err := Labels(q, page.NewStyle(fonts.Default()))
		if err != nil {
			return nil, err
		}
		all = append(all, labels...)
	}
	return all, nil
}
