package bag

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"cutbinder/layout/length"
)

// A brevity says how much of a bag's contents goes into its square code: so many
// characters of the block's name, or the letter alone that the plan gives it, and
// what of the pieces.
type brevity struct {
	name   int
	letter bool
	pieces wording
}

// A wording is how pieces are said.
type wording int

const (
	none    wording = iota
	counted         // "48 PCS"
	tight           // "48 SQ 3 1/2", "16 OF 2X6 1/2"
	full            // "48 OF 3 1/2 X 3 1/2"
)

// essential is what a square code should say at least, for any phone to answer with:
// which bag this is, of which block, and how much is in it. Of ten thousand bags the
// numbers are so long that the count makes way for them.
func essential(b *Bag) brevity {
	if b.Number >= 10_000 {
		return brevity{20, true, none}
	}
	return brevity{20, true, counted}
}

// brevities are tried in order until the text fits.
var brevities = []brevity{
	{28, false, full}, {20, false, full}, {20, true, full},
	{20, false, tight}, {20, true, tight}, {20, false, counted}, {20, true, counted},
	{12, false, counted}, {12, true, counted}, {8, true, counted}, {6, true, counted},
	{6, false, none}, {6, true, none}, {},
}

// texts gives the text of a bag's square code at one brevity after another: the code
// first, then the bag's number, its block and what is in it, as anybody's camera
// shows it. It is written in the characters of the alphanumeric mode (ISO/IEC 18004:
// 0-9, A-Z, space and $%*+-./:), which need fewest modules, unless a name has letters
// that have no reading in them. What two texts have in common is made once.
func (s *Sorted) texts(b *Bag) func(brevity) string {
	head := b.Code.String() + " BAG " + strconv.Itoa(b.Number)
	places := map[brevity]string{}
	contents := [full + 1]string{counted: " " + pieces(b.Count())}
	return func(br brevity) string {
		how := br.pieces
		br.pieces = none
		place, ok := places[br]
		if !ok {
			if place = placeWords(b.Places, br); place != "" {
				place = " " + place
			}
			places[br] = place
		}
		if how != none && contents[how] == "" {
			contents[how] = s.rows(b, how)
		}
		return head + place + contents[how]
	}
}

// rows says the pieces of all sizes.
func (s *Sorted) rows(b *Bag, how wording) string {
	out := ""
	for i, r := range b.Rows {
		if i > 0 {
			out += " +"
		}
		out += " " + s.row(r, how)
	}
	return out
}

// row says the pieces of one size.
func (s *Sorted) row(r Row, how wording) string {
	switch {
	case how == full:
		return fmt.Sprintf("%d OF %s", r.Count, s.size(r.Cut))
	case r.Cut.W == r.Cut.H:
		return fmt.Sprintf("%d SQ %s", r.Count, plain(s.Units.Format(r.Cut.W, s.unit())))
	}
	return fmt.Sprintf("%d OF %s", r.Count, strings.ReplaceAll(s.size(r.Cut), " X ", "X"))
}

// pieces is a count of pieces as the trade shortens it.
func pieces(n int) string {
	if n == 1 {
		return "1 PC"
	}
	return fmt.Sprintf("%d PCS", n)
}

// size is a cut size in alphanumeric characters.
func (s *Sorted) size(z length.Size) string { return plain(s.Units.FormatSize(z, s.unit())) }

// unit is the style of lengths: a bare one is in inches.
func (s *Sorted) unit() (st length.Style) {
	if s.Units == length.Metric {
		st = length.WithUnit
	}
	return st
}

// placeWords says where pieces go in at most so many characters and the word BLOCK.
func placeWords(places []Place, br brevity) string {
	n := br.name
	if n == 0 {
		return ""
	}
	if len(places) == 1 {
		switch p := places[0]; {
		case p.Block == "":
			return clip(purpose(p), n)
		case br.letter:
			return "BLOCK " + clip(plain(p.Block), n)
		default:
			return "BLOCK " + clip(plain(p.Heading()), n)
		}
	}
	var texts []string
	for _, p := range places {
		if p.Block == "" {
			texts = append(texts, purpose(p))
		} else {
			texts = append(texts, plain(p.Block))
		}
	}
	all := clip(strings.Join(texts, " "), n)
	if places[0].Block == "" {
		return all
	}
	return "BLOCKS " + all
}

// purpose is a place that is no block's; where it lists several, in short: "TOP +
// BOTTOM".
func purpose(p Place) string { return strings.ReplaceAll(plain(p.Purpose()), " AND ", " + ") }

// clip cuts a text to at most n characters, between words where that keeps at
// least half, else inside a word, with a full stop to say so.
func clip(s string, n int) string {
	if utf8.RuneCountInString(s) <= n {
		return s
	}
	r := []rune(s)[:n]
	if []rune(s)[n] == ' ' {
		return strings.TrimRight(string(r), " +") // it ends between words
	}
	if i := strings.LastIndexByte(string(r), ' '); i >= n/2 {
		return strings.TrimRight(string(r)[:i], " +")
	}
	return strings.TrimSpace(string(r[:n-1])) + "."
}

// alphanumeric is the character set of the square code's alphanumeric mode.
const alphanumeric = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:"

// alphanumerics says of each byte whether it is one of them.
var alphanumerics = func() (set [256]bool) {
	for i := range alphanumeric {
		set[alphanumeric[i]] = true
	}
	return set
}()

func isAlphanumeric(s string) bool {
	for i := range len(s) {
		if !alphanumerics[s[i]] {
			return false
		}
	}
	return true
}

// readings writes Latin letters with marks, fractions and signs in alphanumeric
// characters.
var readings = func() map[rune]string {
	m := map[rune]string{
		'Æ': "AE", 'Œ': "OE", 'Þ': "TH", 'ß': "SS", 'ẞ': "SS", '&': "+", '×': "X", '⁄': "/",
		'½': " 1/2", '¼': " 1/4", '¾': " 3/4", '⅛': " 1/8", '⅜': " 3/8", '⅝': " 5/8", '⅞': " 7/8", '⅓': " 1/3", '⅔': " 2/3",
		'‐': "-", '‑': "-", '–': "-", '—': "-", '−': "-", '_': "-", '\'': "", '’': "", '‘': "", '"': "", '”': "", '“': "",
	}
	for _, row := range []string{
		"AÀÁÂÃÄÅĀĂĄǍ", "CÇĆĈĊČ", "DÐĎĐ", "EÈÉÊËĒĔĖĘĚẼ", "GĜĞĠĢ", "HĤĦ", "IÌÍÎÏĨĪĬĮİ", "JĴ", "KĶ", "LĹĻĽĿŁ",
		"NÑŃŅŇ", "OÒÓÔÕÖØŌŎŐ", "RŔŖŘ", "SŚŜŞŠȘ", "TŢŤŦȚ", "UÙÚÛÜŨŪŬŮŰŲ", "WŴ", "YÝŶŸ", "ZŹŻŽ",
	} {
		for _, r := range row[1:] {
			m[r] = row[:1]
		}
	}
	return m
}()

// plain writes a text in alphanumeric characters. Letters and digits that have no
// reading in them stay as they are; anything else that has none becomes a space.
func plain(s string) string {
	var out strings.Builder
	for _, r := range strings.ToUpper(s) {
		reading, known := readings[r]
		switch {
		case known:
			out.WriteString(reading)
		case r < utf8.RuneSelf && strings.IndexByte(alphanumeric, byte(r)) >= 0,
			unicode.IsLetter(r), unicode.IsMark(r) && out.Len() > 0, unicode.IsDigit(r):
			out.WriteRune(r)
		default:
			out.WriteByte(' ')
		}
	}
	return strings.Join(strings.Fields(out.String()), " ")
}
