package bag

import (
	"crypto/sha256"
	"encoding/binary"
	"fmt"
	"strings"

	"cutbinder/layout/plan"
)

// Alphabet is what marks and contents are written in: the digits and the letters
// that are not easily taken for another character. B, I, L, O, S, U and Z are
// left out; see lookalike for what each is taken for.
const Alphabet = "0123456789ACDEFGHJKMNPQRTVWXY"

// lookalike is what a letter that Alphabet leaves out is read as.
var lookalike = map[byte]byte{'B': '8', 'I': '1', 'L': '1', 'O': '0', 'S': '5', 'U': 'V', 'Z': '2'}

// A Code is the code of a bag.
type Code struct {
	Mark  string // the plan's
	Bag   int    // the bag's number
	Holds string // stands for what the bag holds
	Check byte   // the check character
}

// String gives the code as it is printed: "K7Q-07-F3X".
func (c Code) String() string {
	return fmt.Sprintf("%s-%02d-%s%c", c.Mark, c.Bag, c.Holds, c.Check)
}

func newCode(mark string, number int, held string) Code {
	return Code{mark, number, held, check(fmt.Sprintf("%s%02d%s", mark, number, held))}
}

// codeFor is the code of a bag whose contents a text tells. Of the contents'
// digests it takes the first whose check character is in Alphabet too, so that
// no character of a code is easily taken for another.
func codeFor(mark string, number int, contents string) Code {
	var c Code
	for try := range mostTries {
		c = newCode(mark, number, heldAs(contents, try))
		if strings.IndexByte(Alphabet, c.Check) >= 0 {
			break
		}
	}
	return c
}

// mostTries is how many digests are tried: 29 of 37 check characters will do, so
// that the tries run out once in 10^21 codes, and then the last one stands.
const mostTries = 32

// heldAs stands for contents in two characters: one of their digests.
func heldAs(contents string, try int) string {
	if try > 0 {
		contents = fmt.Sprintf("try %d\n%s", try, contents)
	}
	return digest(contents, 2)
}

// checkSet is the character set of MOD 37-2 in order of value.
const checkSet = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ*"

// check is the check character of ISO/IEC 7064 MOD 37-2: with it in the last
// place, the sum of each character's value times 2 to the power of its place
// counted from the right is 1 modulo 37. Since 37 is prime and two neighbouring
// weights differ by a power of two, one wrong character or two swapped neighbours
// always change the sum.
func check(body string) byte {
	p := 0
	for i := range len(body) {
		p = (p + strings.IndexByte(checkSet, body[i])) * 2 % 37
	}
	return checkSet[(1-p+37)%37]
}

// markOf is the plan's mark: the one it states, or one worked out from its title.
// The letters that Alphabet leaves out are turned into what they are read as, so
// that a mark typed as it was stated is found.
func markOf(p *plan.Plan) string {
	stated := ""
	for _, r := range strings.ToUpper(p.Mark) {
		if c, ok := readable(r); ok {
			stated += string(c)
		}
	}
	if len(stated) == 3 {
		return stated
	}
	if p.Mark != "" {
		return markFrom(p.Mark)
	}
	return markFrom(p.Title)
}

// markFrom works out a mark from a text, whatever its letters' case and its
// spacing: the first of its SHA-256 digests in Alphabet that begins with a letter
// and holds a digit. So no mark is a word or looks like a number.
func markFrom(text string) string {
	text = strings.ToLower(strings.Join(strings.Fields(text), " "))
	for try := 0; ; try++ {
		mark := digest(fmt.Sprintf("mark %d %s", try, text), 3)
		if mark[0] > '9' && strings.ContainsAny(mark, "0123456789") {
			return mark
		}
	}
}

// holds tells what a bag holds: its places and rows. Everything a label says of
// the contents is in it, and nothing else: not the bag's number, nor the other
// bags.
func holds(b *Bag) string {
	var s strings.Builder
	for _, p := range b.Places {
		fmt.Fprintf(&s, "place %q %q %q %d\n", p.Block, p.Name, p.For, p.Count)
	}
	for _, r := range b.Rows {
		fmt.Fprintf(&s, "row %d %d %d %d %q %q %d %d %d\n", r.Cut.W, r.Cut.H, r.Finished.W, r.Finished.H, r.Unit, r.Role, r.Into, r.Count, r.Spares)
		if r.Joined != nil {
			fmt.Fprintf(&s, "joined %d %d %d\n", r.Joined.Size.W, r.Joined.Size.H, r.Joined.Count)
		}
		if r.Set != nil {
			fmt.Fprintf(&s, "set %d %d %d\n", r.Set.Sets, r.Set.Segments, r.Set.Segment)
		}
		if r.Note != "" {
			fmt.Fprintf(&s, "note %q\n", r.Note)
		}
		for _, f := range r.Fabrics {
			fmt.Fprintf(&s, "fabric %q %d %d\n", f.Name, f.Count, f.Spares)
		}
	}
	return s.String()
}

// digest writes the first eight bytes of a text's SHA-256, a big-endian number,
// as its n lowest digits in Alphabet.
func digest(text string, n int) string {
	sum := sha256.Sum256([]byte(text))
	number := binary.BigEndian.Uint64(sum[:])
	out := make([]byte, n)
	for i := range out {
		out[i] = Alphabet[number%uint64(len(Alphabet))]
		number /= uint64(len(Alphabet))
	}
	return string(out)
}

// readable is a character as Alphabet writes it.
func readable(r rune) (byte, bool) {
	if r > 'Z' {
		return 0, false
	}
	c := byte(r)
	if l, ok := lookalike[c]; ok {
		c = l
	}
	return c, strings.IndexByte(Alphabet, c) >= 0
}
