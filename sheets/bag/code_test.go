package bag

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"cutbinder/layout/plan"
)

// Worked by hand: with values v and weights 2, 4, 8 … from the right, the check
// value c makes the sum of v x weight + c leave 1 when divided by 37.
func TestCheckByHand(t *testing.T) {
	for _, c := range []struct {
		body string
		want byte
	}{
		{"0", '1'},             // 0 x 2 + 1 = 1
		{"1", '*'},             // 1 x 2 + 36 = 38 = 37 + 1
		{"A", 'I'},             // 10 x 2 + 18 = 38
		{"10", 'Y'},            // 1 x 4 + 34 = 38
		{"7Q", 'W'},            // 7 x 4 + 26 x 2 + 32 = 112 = 3 x 37 + 1
		{"G123498654321", 'H'}, // the usual worked example of a blood donation number
	} {
		if got := check(c.body); got != c.want {
			t.Errorf("check(%q) = %c, want %c", c.body, got, c.want)
		}
	}
}

func TestAlphabet(t *testing.T) {
	if len(Alphabet) != 29 {
		t.Errorf("Alphabet has %d characters, the package says 841 pairs", len(Alphabet))
	}
	for i := range checkSet {
		c := checkSet[i]
		_, left := lookalike[c]
		if want := c != '*' && !left; inAlphabet(c) != want {
			t.Errorf("%c: in Alphabet %v, want %v", c, !want, want)
		}
	}
	for letter, read := range lookalike {
		if !inAlphabet(read) {
			t.Errorf("%c is read as %c, which is not in Alphabet", letter, read)
		}
	}
}

// Codes are printed on labels: they must never change for the same plan.
func TestCodesStay(t *testing.T) {
	if got := markFrom("Lantern Row"); got != "J70" {
		t.Errorf("mark of Lantern Row is %s", got)
	}
	for _, same := range []string{"lantern row", " Lantern  Row "} {
		if markFrom(same) != markFrom("Lantern Row") {
			t.Errorf("%q has another mark", same)
		}
	}
	if got := newCode("K7Q", 7, "F3").String(); got != "K7Q-07-F3"+string(check("K7Q07F3")) {
		t.Errorf("code is %s", got)
	}
}

func TestMark(t *testing.T) {
	for _, c := range []struct{ stated, want string }{
		{"K7Q", "K7Q"}, {"k7q", "K7Q"}, {"k-7 q", "K7Q"}, {"BOB", "808"}, {"ZIG", "21G"},
		{"", markFrom("Lantern Row")}, {"summer sampler", markFrom("Summer Sampler")}, {"Ää", markFrom("Ää")},
	} {
		if got := markOf(&plan.Plan{Title: "Lantern Row", Mark: c.stated}); got != c.want {
			t.Errorf("mark: %q gives %s, want %s", c.stated, got, c.want)
		}
	}
	for i := range 2000 {
		m := markFrom(fmt.Sprint("plan ", i))
		if len(m) != 3 || strings.Trim(m, Alphabet) != "" || m[0] <= '9' || !strings.ContainsAny(m, "0123456789") {
			t.Fatalf("mark %q is no letter of Alphabet with a digit after it", m)
		}
	}
}

func TestParseForms(t *testing.T) {
	code := newCode("K7Q", 7, "F3")
	full := code.String()
	for _, text := range []string{
		full, strings.ToLower(full), strings.ReplaceAll(full, "-", ""), strings.ReplaceAll(full, "-", " "),
		strings.ReplaceAll(full, "-", "–"), strings.ReplaceAll(full, "-", "_"), strings.ReplaceAll(full, "-", " – "), `"` + full + `".`, "\ufeff" + full, "  " + full + "\r\n", "K 7 Q-0 7--F 3" + full[9:],
		"K7Q O7 F3" + full[9:], full + " BAG 7 OF 24 BLOCK A LANTERN 48 OF 3 1/2 X 3 1/2",
	} {
		if got, err := Parse(text); err != nil || got != code {
			t.Errorf("Parse(%q) = %v, %v; want %v", text, got, err, code)
		}
	}
	for number, want := range map[int]string{1: "K7Q-01-", 99: "K7Q-99-", 100: "K7Q-100-", 100000: "K7Q-100000-"} {
		c := newCode("K7Q", number, "F3")
		if got, err := Parse(c.String()); err != nil || got != c || !strings.HasPrefix(c.String(), want) {
			t.Errorf("Parse(%s) = %v, %v; want %v, printed %s…", c, got, err, c, want)
		}
	}
}

func TestParseRefuses(t *testing.T) {
	withCheck := func(body string) string { return body + string(check(body)) }
	for _, c := range []struct {
		text string
		want Verdict
	}{
		{"", NotACode}, {"hello", NotACode}, {"K7Q-07-F3", NotACode}, {"K7Q-07-F3X-K7Q-07-F3X", NotACode},
		{"K7Q/07/F3é", NotACode}, {"half yard", NotACode}, {"K7Q-07-\x00\x01\x02", NotACode}, {strings.Repeat("K7Q", 5000), NotACode},
		{"BAG 7", NotACode}, {"BAG 7 OF 24", Mistyped}, {"K7Q-07-F3*", Mistyped}, {"K7*-07-F3X", Mistyped},
		{withCheck("K7Q00F3"), Mistyped}, {withCheck("K7Q007F3"), Mistyped}, // right sums, numbers that are never printed
	} {
		_, err := Parse(c.text)
		e, ok := err.(*CodeError)
		if !ok || e.Verdict != c.want {
			t.Errorf("Parse(%q): %v, want verdict %d", c.text, err, c.want)
		}
	}
}

// Every one wrong character and every two swapped neighbours are caught: what is
// typed is never read as another code. It is read as the same code only where a
// look-alike was typed. Two digits of the number and both characters of the
// contents run through all their values, so every check character and every pair
// next to it occurs.
func TestOneSlipIsCaught(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	pick := func() string { return Alphabet[random.IntN(len(Alphabet)):][:1] }
	slips := 0
	for number := 1; number < 100; number++ {
		for i := range len(Alphabet) * len(Alphabet) {
			code := newCode(pick()+pick()+pick(), number, Alphabet[i/29:][:1]+Alphabet[i%29:][:1])
			printed := bare(code.String())
			slips += trySlips(t, code, printed, i%37 == number%37)
			if t.Failed() {
				return
			}
		}
	}
	t.Logf("%d slips", slips)
}

// trySlips tries all swaps and, where asked to, all wrong characters.
func trySlips(t *testing.T, code Code, printed string, wrong bool) (slips int) {
	for i := range len(printed) - 1 {
		if printed[i] == printed[i+1] {
			continue
		}
		slips++
		if got, err := Parse(swap(printed, i)); err == nil {
			t.Errorf("%s with characters %d and %d swapped is read as %s", code, i, i+1, got)
		}
	}
	if !wrong {
		return slips
	}
	for i := range printed {
		for j := range checkSet {
			if checkSet[j] == printed[i] {
				continue
			}
			slips++
			typed := printed[:i] + checkSet[j:j+1] + printed[i+1:]
			got, err := Parse(typed)
			forgiven := i < len(printed)-1 && lookalike[checkSet[j]] == printed[i]
			if err == nil && (got != code || !forgiven) {
				t.Errorf("%s typed as %s is read as %s", code, typed, got)
			}
		}
	}
	return slips
}

// A look-alike is forgiven wherever it can mean one thing only.
func TestLookalikesForgiven(t *testing.T) {
	ambiguous, all := 0, 0
	for i := range 29 * 29 {
		code := newCode("5A8", 12, Alphabet[i/29:][:1]+Alphabet[i%29:][:1])
		printed := bare(code.String())
		for letter, read := range lookalike {
			for j := range len(printed) - 1 {
				if printed[j] != read {
					continue
				}
				all++
				got, err := Parse(printed[:j] + string(letter) + printed[j+1:])
				switch {
				case err == nil && got == code:
				case err != nil && j == len(printed)-2:
					ambiguous++
				default:
					t.Errorf("%s with %c for %c: %v, %v", code, letter, read, got, err)
				}
			}
		}
	}
	if ambiguous*100 > all {
		t.Errorf("%d of %d look-alikes are not forgiven", ambiguous, all)
	}
}

func FuzzParse(f *testing.F) {
	f.Add("K7Q-07-F3X")
	f.Add("k7q o7 f3x")
	f.Add(" BAG K7Q")
	f.Fuzz(func(t *testing.T, text string) {
		code, err := Parse(text)
		if err != nil {
			if len(err.Error()) > 400 {
				t.Errorf("a message of %d bytes", len(err.Error()))
			}
			return
		}
		if again, err := Parse(code.String()); err != nil || again != code {
			t.Errorf("%q is read as %s, that as %s, %v", text, code, again, err)
		}
	})
}
