package plan

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"cutbinder/layout/workbook"
)

// sheetOf makes lines with bars into a sheet.
func sheetOf(name, text string) workbook.Sheet {
	s := workbook.Sheet{Name: name}
	for _, line := range strings.Split(strings.TrimSpace(text), "\n") {
		cells := strings.Split(line, "|")
		for i := range cells {
			cells[i] = strings.TrimSpace(cells[i])
		}
		s.Add(cells...)
	}
	return s
}

// bookOf makes "# Name" and lines with bars into a workbook.
func bookOf(t *testing.T, text string) []byte {
	t.Helper()
	var sheets []workbook.Sheet
	for _, part := range strings.Split("\n"+text, "\n= ")[1:] {
		name, rows, _ := strings.Cut(part, "\n")
		sheets = append(sheets, sheetOf(name, rows))
	}
	data, err := workbook.Write(sheets)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// Cut lists as people keep them, each the same plan as some YAML.
func TestCutLists(t *testing.T) {
	for _, c := range []struct{ what, csv, yaml string }{
		{"plain", "fabric,size,count,for\nblue,4 1/2,4,corners\nred,2 1/2 x 4 1/2,8,\n",
			"plan: List\nfabrics: {blue: {}, red: {}}\npieces: [{cut: 4 1/2, need: 4, fabric: blue, for: corners}, {cut: 2 1/2 x 4 1/2, need: 8, fabric: red}]"},
		{"any order and case, semicolons", "How many;FOR;Cut Size;Material\n4;corners;4,5;blue\n",
			"plan: List\nfabrics: {blue: {}}\npieces: [{cut: 4.5, need: 4, fabric: blue, for: corners}]"},
		{"title, blank rows, a sum, columns of no use", "Autumn throw,,,\n,,,\nFabric,Qty,Cut,Price\nblue,4,4 1/2,3.20\n,,,\nBlue,2,3,1\nTotal,6,,4.20\n",
			"plan: Autumn throw\nfabrics: {blue: {}}\npieces: [{cut: 4 1/2, need: 4, fabric: blue}, {cut: 3, need: 2, fabric: blue}]"},
		{"a sum without a word", "Fabric,Qty,Cut\nblue,4,4 1/2\nblue,12,3\n,16,\n",
			"plan: List\nfabrics: {blue: {}}\npieces: [{cut: 4 1/2, need: 4, fabric: blue}, {cut: 3, need: 12, fabric: blue}]"},
		{"two sides, centimetres", "fabric,width (cm),height (cm),pieces\nblue,10,6.5,4\n",
			"plan: List\nunits: metric\nfabrics: {blue: {}}\npieces: [{cut: 10 x 6.5, need: 4, fabric: blue}]"},
		{"a column in inches in a metric list", "units,metric\nfabric,size (in),count\nblue,4 x 5,4\nblue,WOF x 2,4\nblue,3 cm,4\n",
			"plan: List\nunits: metric\nfabrics: {blue: {}}\npieces: [{cut: 4 x 5 in, need: 4, fabric: blue}, {cut: WOF x 2 in, need: 4, fabric: blue}, {cut: 3 cm, need: 4, fabric: blue}]"},
		{"keys above the headings", "finished,54 x 66\nseam,3/8\nbinding strip,2\nbinding fabric,blue\nfabric,size,count\nblue,4,4\n",
			"plan: List\nfinished: 54 x 66\nseam: 3/8\nbinding: {strip: 2, fabric: blue}\nfabrics: {blue: {}}\npieces: [{cut: 4, need: 4, fabric: blue}]"},
		{"blocks are bags", "block,fabric,size,count\nA,blue,4,4\nB,blue,3,8\nA,red,2,1\n",
			"plan: List\nfabrics: {blue: {}, red: {}}\nblocks: {A: {make: 1, pieces: [{cut: 4, each: 4, fabric: blue}, {cut: 2, each: 1, fabric: red}]}, B: {make: 1, pieces: [{cut: 3, each: 8, fabric: blue}]}}"},
		{"tabs and a byte order mark", "\ufefffabric\tfinished size\t#\nblue\t3\t4\n",
			"plan: List\nfabrics: {blue: {}}\npieces: [{finished: 3, need: 4, fabric: blue}]"},
		{"units with two fabrics", "sep=,\nunit,finished,count,fabric,fabric 2\nhalf-square,3,8,blue,red\n# a remark,,,,\n",
			"plan: List\nfabrics: {blue: {}, red: {}}\npieces: [{unit: half-square, finished: 3, need: 8, fabrics: [blue, red]}]"},
	} {
		want := mustRead(t, c.yaml)
		got, ps := Read("list.csv", []byte(c.csv))
		if len(ps) > 0 {
			t.Errorf("%s: %v", c.what, ps.Error())
		} else if diff := cmp.Diff(want, got, sameBut); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.what, diff)
		}
	}
}

// Workbooks written in ways of their own, each the same plan as some YAML.
func TestWorkbooks(t *testing.T) {
	const rest = "= Plan\nplan | P\n"
	for _, c := range []struct{ what, book, yaml string }{
		{"names in any case, long names, several in a cell", rest + "= Fabrics\nfabric | name\ndusk | Dusk stripe\nwick |\n= Mixes\nmix | fabrics\nNight | Dusk, wick\n= Pieces\ncut | count | fabric\n2 | 1 | Dusk stripe\n3 | 1 | night\n= Borders\nwidth | mix | around\n2 | Night | 40",
			"plan: P\nfabrics: {dusk: {name: Dusk stripe}, wick: {}}\nmixes: {Night: [dusk, wick]}\npieces: [{cut: 2, need: 1, fabric: dusk}, {cut: 3, need: 1, mix: Night}]\nborders: [{width: 2, mix: Night, around: 40}]"},
		{"ticks and bare colours", rest + "= Fabrics\nfabric | directional | color | prewash\ndusk | x | 4a5578 | \nwick | n | #fff | Y\n= Cut list\ncut | count | fabric\n2 | 1 | dusk",
			"plan: P\nfabrics: {dusk: {one-way: yes, colour: '#4a5578'}, wick: {one-way: no, prewash: yes, colour: '#fff'}}\npieces: [{cut: 2, need: 1, fabric: dusk}]"},
		{"the plan's keys in any order", "= plan\nSeam Allowance of | \n= Plan\nFinished Size | 40\ntitle: | P\nbinding | dusk\nBinding strip | 2\nbatting | yes\nbags by | size, block\nallow spare | 5%\n= Fabrics\nfabric\ndusk\n= Pieces\ncut | count | fabric\n2 | 1 | dusk",
			""},
		{"blocks by name", rest + "= Fabrics\nid\ndusk\n= Blocks\nblock | name | make\nA | Star | 3\n= Pieces\nblock | cut | each | fabric\nstar | 2 | 4 | dusk",
			"plan: P\nfabrics: {dusk: {}}\nblocks: {A: {name: Star, make: 3, pieces: [{cut: 2, each: 4, fabric: dusk}]}}"},
	} {
		if c.yaml == "" {
			c.book = c.book[strings.LastIndex(c.book, "= Plan"):]
			c.yaml = "plan: P\nfinished: 40\nbinding: {fabric: dusk, strip: 2}\nbatting: {}\nbags: {by: [size, block]}\nallow: {spare: 5%}\nfabrics: {dusk: {}}\npieces: [{cut: 2, need: 1, fabric: dusk}]"
		}
		want := mustRead(t, c.yaml)
		got, ps := Read("p.xlsx", bookOf(t, c.book))
		if len(ps) > 0 {
			t.Errorf("%s: %v", c.what, ps.Error())
		} else if diff := cmp.Diff(want, got, sameBut); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.what, diff)
		}
	}
}

// wrongSheets are workbooks and the faults they must give, as cell: what | hint.
var wrongSheets = []struct {
	book string
	want []string
}{
	{"= Fabrics\nfabric | witdh\ndusk | 40\n= Pieces\ncut | count | fabric\n2 | 1 | dusk", []string{
		`Fabrics!B1: Fabrics has no column "witdh"; expected one of fabric, name, colour, width, have, one-way, prewash, cloth, shrink, bleeds, done, note, cutting, step, claims buy, claims strips | did you mean width?`}},
	{"= Fabrics\nfabric | colour\ndusk | blue\n= Pieces\ncut | count | fabric\n2 | 1 | dusk", []string{
		`Fabrics!B2: colour: found "blue"; expected a colour such as "#4a5578" | write # and six digits from 0 to 9 and a to f`}},
	{"= Fabrics\nfabric | width | have\ndusk | 0 | \nwick | | 2 fat quaters\n= Pieces\ncut | count | fabric\n-2 | 1 | dsk\n2 | 0 | dusk\n | 3 | wick", []string{
		`Fabrics!B2: width: found "0"; expected a length above zero, such as 41 1/2`,
		`Fabrics!C3: have: "2 fat quaters" has no unit named "fat"; expected such as half yard, 30 cm, 9 x 42 or 2 fat quarters | did you mean fat quarters?`,
		`Pieces!A2: cut: "-2" is negative; expected a size such as 3 1/2 x 6 1/2, or one length for a square`,
		`Pieces!C2: fabric "dsk" is not in this plan; expected one of dusk, wick | did you mean dusk?`,
		`Pieces!B3: need: found "0"; expected a whole number from 1 to 100000`,
		`Pieces!B4: the piece has no size; expected finished or cut | write finished: or cut: and a size`}},
	{"= Fabrics\nfabric | name\ndusk |\n | Wick\ndusk | again\n= Pieces\ncut | count | fabric\n2 | 1 | dusk", []string{
		`Fabrics!B3: the row has no short name for the fabric; expected one such as dusk | write one into the column fabric`,
		`Fabrics!A4: fabric "dusk" is written twice; it stands in Fabrics!A2 too | keep one of them, or give one another name`}},
	{"= Plan\nplan | P\nunits | inches\nfabrics | 3\nspare | 5%\nallow spare | lots\n= Fabrics\nfabric | name\ndusk |\n= Pieces\ncut | count | fabric\n2 | 1 | dusk", []string{
		`Plan!B2: units: found "inches"; expected one of inch, metric | did you mean inch?`,
		`Plan!A3: plan has no key "fabrics"; expected one of plan, by, version, date, mark, note, language, font, units, finished, seam, cut-step and 45 more | it has a sheet of its own, Fabrics`,
		`Plan!A4: plan has no key "spare"; expected one of plan, by, version, date, mark, note, language, font, units, finished, seam, cut-step and 45 more | did you mean allow spare?`,
		`Plan!B5: spare: found "lots"; expected a percentage such as 5%`}},
	{"= Fabrics\nfabric | name\ndusk |\n= Pieces\nblock | cut | count | fabric\nA | 2 | 1 | dusk\n= Blocks\nblock | make\nB | 2\n= Stash\na | b\n= Cut list\ncut | count", []string{
		`Pieces!A2: block "A" is not in this plan; expected one of B | leave the cell empty for pieces of no block, and say in the column for what they are`,
		`Blocks!A2: block "B" has neither pieces nor draw; expected one of them | write pieces: [{finished: 3, each: 4, fabric: dusk}], or draw: and rows of cells`,
		`Stash: Stash is no sheet of a plan; expected one of Plan, Fabrics, Mixes, Blocks, Pieces, Borders, Quilt, Accept | give it a name that begins with # to leave it out`,
		`Cut list: the sheets Pieces and Cut list hold the same | put them together, or give one a name that begins with # to leave it out`}},
	// rows lack what stands below a heading that isn't known: that is told once
	{"= Pieces\nfinished | number of them | fabric | fabric 2 | knit\n3 | 4 | a | b | half-square\n3 | 2 | a | |\n= Fabrics\nfabric | name\na |\nb |\n= Notes\ncall the shop", []string{
		`Pieces!B1: Pieces has no column "number of them"; expected one of block, unit, finished, cut, count, fabric, for, method, trim, join, turn, strips, segment, claims need, claims strips | a heading that begins with # leaves the column out`,
		`Pieces!E1: Pieces has no column "knit"; expected one of block, unit, finished, cut, count, fabric, for, method, trim, join, turn, strips, segment, claims need, claims strips | did you mean unit?`}},
	{"= Sheet1\nhello\n= Sheet2\nworld", []string{
		`: no table of pieces is in it; expected headings such as fabric, size and count, or the sheets Plan, Fabrics, Mixes, Blocks, Pieces, Borders, Quilt, Accept | name the columns in the first row: fabric, size, count, for`}},
	{"= Sheet1\nfabric | size | count\nblue | 3 | 4\n= Sheet2\nfabric | size | count\nblue | 3 | 4", []string{
		`Sheet2: the sheets Sheet1 and Sheet2 both hold a cut list; expected one | hide one of them, or give it a name that begins with #`}},
	{"= Sheet1\nfabric | width | count\nblue | 3 | 4", []string{
		`Sheet1!B2: the piece has one side only; expected two such as 3 1/2 and 6 1/2 | write the other side too, or both into one column size`}},
	{"= Fabrics\nfabric | have | width\ndusk | [half yard | 40 | 3\n= Pieces\ncut | cut | count | fabric\n2 | 2 | 1 | dusk", []string{
		`Fabrics!B2: have: the brackets or braces in "[half yard" do not fit together; expected a length of cloth or a list of them such as half yard`,
		`Fabrics!D2: "3" stands in a column of Fabrics that has no heading | give the column a heading, one that begins with # to leave it out`,
		`Pieces!B1: the columns A and B both stand for cut | give the column a heading that begins with # to leave it out`}},
	{"= Fabrics\nfabric | name\ndusk |\n= Blocks\nblock | make | cell | draw\nA | 1 | 3 | dusk dsk\n= Quilt\nA | B", []string{
		`Blocks!D2: fabric or mix "dsk" is not in this plan; expected one of dusk | did you mean dusk?`,
		`Quilt!B1: block "B" is not in this plan; expected one of A`}},
}

func TestWrongSheets(t *testing.T) {
	for _, c := range wrongSheets {
		p, ps := Read("p.xlsx", bookOf(t, c.book))
		if p != nil {
			t.Errorf("%s\na plan was read", c.book)
		}
		var got []string
		for _, p := range ps {
			s := fmt.Sprintf("%s: %s", p.At.Cell, p.What)
			if p.Hint != "" {
				s += " | " + p.Hint
			}
			got = append(got, s)
		}
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s\n(-want +got):\n%s", c.book, diff)
		}
	}
}

// TestRenderCells: a spreadsheet's row is shown with a caret under the cell.
func TestRenderCells(t *testing.T) {
	book := bookOf(t, "= Fabrics\nfabric | name\ndusk |\n= Pieces\ncut | count | fabric\n2 | 1 | dsk")
	_, ps := Read("p.xlsx", book)
	var out bytes.Buffer
	ps.Render(&out, book)
	want := `p.xlsx:Pieces!C2: fabric "dsk" is not in this plan; expected one of dusk
  2 | 1 | dsk
          ^
  hint: did you mean dusk?
`
	if diff := cmp.Diff(want, out.String()); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// FuzzSheets: no cut list makes the reader panic, and what it reads is sound.
func FuzzSheets(f *testing.F) {
	f.Add("fabric,size,count\nblue,4 1/2,4\n", "list.csv")
	f.Add("fabric;size;count\nblue;{4};4\n", "pieces.csv")
	f.Add("key,value\nplan,P\nletters,{a: b\nbatting,yes\n", "plan.csv")
	f.Add("a b,^\n\"x\ny\",\n", "quilt.csv")
	f.Fuzz(func(t *testing.T, text, name string) {
		if len(text) > 1<<14 {
			return
		}
		p, ps := Read(name+".csv", []byte(text))
		if (p == nil) == (len(ps) == 0) {
			t.Fatalf("plan %v, problems %v", p, ps)
		}
		if p != nil {
			checkRoundTrip(t, name+".csv", []byte(text))
		}
	})
}
