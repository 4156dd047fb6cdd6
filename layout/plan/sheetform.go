package plan

import (
	"slices"
	"strings"
	"sync"
	"unicode"
)

// A plan may be kept as sheets of a workbook or as a folder of comma-separated
// files instead of as YAML. Each sheet holds what one key of the plan holds; the
// key tables say which columns it has, so a new key needs nothing here:
//
//   - Plan: a key and its value in each row; a key within another is both their
//     names, "binding strip".
//   - Fabrics, Blocks: a row each, its short name first.
//   - Mixes: a row each, its short name and then its fabrics, a cell each.
//   - Pieces: a line of pieces in each row; a block's short name in its first
//     column puts the line into that block.
//   - Borders: a row each, from the inside out.
//   - Quilt: a block's short name in each cell.
//   - Accept: a finding and the reason in each row.
//
// In a cell fabric stands for the keys fabric, mix and fabrics, and count for the
// keys each and need. What fits no cell is written as it would be within a line
// of YAML, in braces or brackets.

// The sheets, in their order in a workbook.
const (
	planSheet = iota
	fabricsSheet
	mixesSheet
	blocksSheet
	piecesSheet
	bordersSheet
	quiltSheet
	acceptSheet
	sheetCount
)

// sheetNames are the names of the sheets as they are written.
var sheetNames = []string{"Plan", "Fabrics", "Mixes", "Blocks", "Pieces", "Borders", "Quilt", "Accept"}

// otherSheets are names that a sheet may have instead.
var otherSheets = map[string]int{
	"cutlist": piecesSheet, "cuttinglist": piecesSheet, "cuts": piecesSheet, "cut": piecesSheet, "cutting": piecesSheet,
	"layout": quiltSheet, "accepted": acceptSheet,
}

// sheetNamed is the sheet of a name, in any case, in the singular too; -1 where
// there is none.
func sheetNamed(name string) int {
	word := plainWord(name)
	for i, n := range sheetNames {
		if n := plainWord(n); word == n || word+"s" == n || word == n+"s" {
			return i
		}
	}
	if i, ok := otherSheets[word]; ok {
		return i
	}
	return -1
}

// plainWord is a name without case, spaces and signs, as names are compared.
func plainWord(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			return unicode.ToLower(r)
		}
		return -1
	}, s)
}

// A column is what a cell of a sheet fills in: a key, or one within others.
type column struct {
	path []string // the keys, from the sheet's own mapping on
	key  Key      // the last of them
	// merged columns are for fabric, mix and fabrics together; path ends with fabric.
	merged, several bool
}

// label is the column's heading, "claims buy".
func (c column) label() string { return strings.Join(c.path, " ") }

// columnsOf are the columns of a mapping's keys; those of skipped keys are left
// out.
func columnsOf(tableName string, skip ...string) (all []column) {
	t := tableOf(tableName)
	has := func(name string) bool {
		return slices.ContainsFunc(t.Keys, func(k Key) bool { return k.Name == name })
	}
	merged := has("fabric") && has("mix")
	for _, k := range t.Keys {
		switch {
		case slices.Contains(skip, k.Name), merged && (k.Name == "mix" || k.Name == "fabrics"):
		case merged && k.Name == "fabric":
			k.Kind, k.Doc = KindSource, strings.TrimSuffix(k.Doc, ".")+"; a mix will do."
			all = append(all, column{path: []string{k.Name}, key: k, merged: true, several: has("fabrics")})
		case k.Kind == KindKeys:
			for _, c := range columnsOf(k.Of) {
				c.path = append([]string{k.Name}, c.path...)
				all = append(all, c)
			}
		default:
			all = append(all, column{path: []string{k.Name}, key: k})
		}
	}
	return all
}

// tableOf is the table of a name.
func tableOf(name string) Table {
	all := Tables()
	return all[slices.IndexFunc(all, func(t Table) bool { return t.Name == name })]
}

// sheetColumns are the columns of each sheet, behind the short name that each row
// of Fabrics and Blocks begins with. Pieces have a column for their block first.
var sheetColumns = sync.OnceValue(func() (all [sheetCount][]column) {
	all[planSheet] = columnsOf("plan", "fabrics", "mixes", "blocks", "pieces", "borders", "quilt", "accept")
	all[fabricsSheet] = columnsOf("fabric")
	all[blocksSheet] = columnsOf("block", "pieces")
	all[piecesSheet] = pieceColumns()
	all[bordersSheet] = columnsOf("border")
	return all
})

// pieceColumns are the columns of Pieces in the order that people write a cut
// list in: fabric, sizes and count come before what few lines need.
func pieceColumns() []column {
	all := columnsOf("piece", "each", "need")
	count := column{path: []string{"count"}, key: Key{Name: "count", Kind: KindCount, Doc: "How many: for each block, or in all where no block is named.", Example: "4"}}
	first := []string{"unit", "finished", "cut", "count", "fabric", "for"}
	all = append(all, count)
	slices.SortStableFunc(all, func(a, b column) int { return rank(first, a) - rank(first, b) })
	return all
}

// rank is a column's place among the first ones.
func rank(first []string, c column) int {
	if i := slices.Index(first, c.label()); i >= 0 {
		return i
	}
	return len(first)
}

// ownNames are the headings of the column that holds a row's short name.
var ownNames = map[int][]string{
	fabricsSheet: {"fabric", "id", "shortname"},
	mixesSheet:   {"mix", "id", "name", "shortname"},
	blocksSheet:  {"block", "id", "shortname"},
	acceptSheet:  {"finding", "id", "doubt"},
}

// otherHeadings are what people call columns, by what plans call them.
var otherHeadings = map[int]map[string]string{
	fabricsSheet: {
		"color": "colour", "usablewidth": "width", "wof": "width", "onhand": "have", "stash": "have", "ihave": "have",
		"onshelf": "have", "directional": "one-way", "onewayprint": "one-way", "notes": "note",
	},
	blocksSheet: {"howmany": "make", "count": "make", "qty": "make", "quantity": "make", "number": "make", "blockname": "name", "size": "finished", "finishedsize": "finished", "drawing": "draw"},
	piecesSheet: {
		"size": "cut", "cutsize": "cut", "cutat": "cut", "measure": "cut", "measures": "cut", "measurement": "cut", "measurements": "cut",
		"dimensions": "cut", "dimension": "cut", "cutto": "cut", "finishedsize": "finished", "finishesat": "finished", "sizefinished": "finished",
		"width": "wide", "wide": "wide", "w": "wide", "across": "wide", "cutwidth": "wide",
		"height": "high", "high": "high", "h": "high", "length": "high", "long": "high", "l": "high", "cutlength": "high", "cutheight": "high",
		"qty": "count", "quantity": "count", "number": "count", "no": "count", "howmany": "count", "pieces": "count", "pcs": "count",
		"amount": "count", "numberofpieces": "count", "noofpieces": "count", "piecesneeded": "count", "needed": "count", "total": "count",
		"need": "need", "each": "each", "perblock": "each", "eachblock": "each", "countperblock": "each", "qtyperblock": "each", "quantityperblock": "each",
		"cloth": "fabric", "material": "fabric", "print": "fabric", "fabricname": "fabric", "from": "fabric", "color": "fabric", "colour": "fabric",
		"type": "unit", "use": "for", "usedfor": "for", "whatfor": "for", "purpose": "for", "what": "for", "where": "for", "part": "for", "description": "for",
		"note": "for", "notes": "for", "comment": "for", "comments": "for", "remarks": "for", "piece": "for", "blockname": "block",
	},
	bordersSheet: {"name": "for", "border": "for"},
}
