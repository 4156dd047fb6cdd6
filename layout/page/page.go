// Package page holds finished pages as plain data, and the engine that sets
// text, tables and scale drawings onto them.
//
// A Page is a size and a list of items from a small closed set: Text, Line,
// Rect, Polygon, Code, Link and Anchor. Nothing is left to decide: an item has
// its place, its style and a Mark that says what its ink stands for, so a test
// can ask a page questions and the PDF writer is one switch. Lengths are
// length.Length from the page's top left corner, y downward; type sizes too.
//
// A document is made in three layers:
//
//   - A Pen draws items at given places: text, rules, boxes to tick, badges.
//     A Canvas is a pen's view of cloth, at 1:n.
//   - Blocks (Para, Heading, List, Table, Drawing, Columns, Keep, Gap …) know
//     their height for a width and are flowed onto pages.
//   - A Book takes Sections of blocks, and raw pages that are drawn by hand,
//     and numbers them: header, footer, thumb index, "page x of y", references
//     to pages.
//
// Start with NewStyle and NewBook. Check says what is wrong with pages.
package page

import "cutbinder/layout/length"

// A Paper is a sheet's name and size.
type Paper struct {
	Name string
	W, H length.Length
}

// The papers. Letter is 8 1/2 x 11 in (ANSI/ASME Y14.1), A4 is 210 x 297 mm
// (ISO 216); pages are composed for each, not scaled.
var (
	Letter = Paper{"letter", 17 * length.Inch / 2, 11 * length.Inch}
	A4     = Paper{"a4", 210 * length.MM, 297 * length.MM}
)

// Edge is how near to a paper's edge ink may come: 1/4 in (6.4 mm), which home
// printers reach. Label sheets are the exception.
const Edge = length.Inch / 4

// A Page is one finished page.
type Page struct {
	Paper Paper
	// Live is the part of the paper ink may stand on.
	Live Box
	// Label is what the page is called on paper and in a viewer: "9".
	Label string
	Items []Item
}

// A Document is finished pages and what a viewer is told about them.
type Document struct {
	Title, Author, Subject string
	// Lang is the language of the text as BCP 47 writes it, such as "en".
	Lang  string
	Pages []Page
}
