package bag

import (
	"image"
	"image/color"
	"strings"
	"testing"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/plan"

	"github.com/boombuler/barcode/qr"
	"github.com/google/go-cmp/cmp"
	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/qrcode"
)

func TestPlain(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"Lantern", "LANTERN"}, {"Étoile d'été", "ETOILE DETE"}, {"3½ × 6½", "3 1/2 X 6 1/2"}, {"Größe", "GROSSE"},
		{"Bee & Flower (small), no. 2", "BEE + FLOWER SMALL NO. 2"}, {"Smörgås/łódź", "SMORGAS/LODZ"}, {"a\tb\x00c", "A B C"},
		{"Звезда", "ЗВЕЗДА"}, {"✂ star ✂", "STAR"}, {"", ""}, {"log—cabin", "LOG-CABIN"},
	} {
		if got := plain(c.in); got != c.want {
			t.Errorf("plain(%q) = %q, want %q", c.in, got, c.want)
		}
	}
}

func TestWords(t *testing.T) {
	p, lists := lantern()
	p.BagBy = []plan.BagKey{plan.ByBlock}
	s := Sort(p, lists)
	code := s.Bags[0].Code.String()
	for _, c := range []struct {
		max  int
		want string
	}{
		{45, code + " BAG 1 BLOCK A 72 PCS"}, // as few modules as this needs, whatever the room
		{25, code + " BAG 1 BLOCK A 72 PCS"},
		{21, code + " BAG 1 BLOCK A"}, // at the level L
		{20, ""},
	} {
		if got := s.Says(&s.Bags[0], c.max); got != c.want {
			t.Errorf("in %d modules:\n got %q\nwant %q", c.max, got, c.want)
		}
	}
	p.BagBy = []plan.BagKey{plan.ByBlock, plan.BySize}
	one := Sort(p, lists)
	p.Units = length.Metric
	lists[0].Pieces[1].Size = length.Size{W: 8 * length.CM, H: 16 * length.CM}
	metric := Sort(p, lists)
	for _, c := range []struct{ got, want string }{
		{one.Says(&one.Bags[0], 57), " BAG 1 BLOCK A 24 SQ 3 7/8"},
		{metric.Says(&metric.Bags[3], 57), " BAG 4 BLOCK B 4 OF 8X16 CM"},
	} {
		if !strings.HasSuffix(c.got, c.want) {
			t.Errorf("got %q, want …%q", c.got, c.want)
		}
	}
}

// Every bag of a plan whose blocks have letters is said in 25 modules at the level M.
func TestCoarse(t *testing.T) {
	p, lists := lantern()
	for _, by := range [][]plan.BagKey{{plan.ByBlock}, {plan.ByBlock, plan.BySize}, {plan.ByBlock, plan.ByFabric, plan.BySize}} {
		p.BagBy = by
		s := Sort(p, lists)
		for i := range s.Bags {
			text, level := s.fit(&s.Bags[i], 57)
			if n := modules(text, level); n > 25 || level != qr.M {
				t.Errorf("%q has %d modules at %v", text, n, level)
			}
		}
	}
}

// However many bags there are, a code of a block with a short letter has 25 modules.
func TestCoarseOfMany(t *testing.T) {
	p, lists := lantern()
	s := Sort(p, lists)
	for _, c := range []struct {
		number int
		want   string
	}{
		{9_999, "BAG 9999 BLOCK A 24 PCS"},
		{99_999, "BAG 99999 BLOCK A 24 PCS"},
		{999_999, "BAG 999999 BLOCK A LAN."},
	} {
		b := s.Bags[0]
		b.Number, b.Code = c.number, newCode("K7Q", c.number, "XX")
		if least := s.Says(&b, MinModules); !strings.Contains(least, " BAG ") { // the longest number fits the smallest code
			t.Errorf("in %d modules: %q", MinModules, least)
		}
		text, level := s.fit(&b, 57)
		_, rest, _ := strings.Cut(text, " ")
		if n := modules(text, level); n != 25 || level != qr.M || rest != c.want {
			t.Errorf("%q has %d modules at %v, want …%q", text, n, level, c.want)
		}
	}
}

// Wordings say the same pieces in ever fewer characters.
func TestRowWords(t *testing.T) {
	inches, cm := &Sorted{}, &Sorted{Units: length.Metric}
	square := Row{Count: 48, Cut: rect(28, 28)}
	for _, c := range []struct{ got, want string }{
		{inches.row(square, full), "48 OF 3 1/2 X 3 1/2"},
		{inches.row(square, tight), "48 SQ 3 1/2"},
		{inches.row(Row{Count: 16, Cut: rect(16, 52)}, tight), "16 OF 2X6 1/2"},
		{cm.row(Row{Count: 2, Cut: length.Size{W: 85 * length.MM, H: 16 * length.CM}}, tight), "2 OF 8.5X16 CM"},
		{cm.row(Row{Count: 2, Cut: length.Size{W: 85 * length.MM, H: 85 * length.MM}}, tight), "2 SQ 8.5 CM"},
		{pieces(1), "1 PC"}, {pieces(72), "72 PCS"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}

// nasty are names that break things: long, foreign, empty, of one letter, of signs.
var nasty = []string{"A", "Lantern", "", strings.Repeat("Grandmother's very long garden ", 12), "Звезда над морем", "夜の灯", "!!! ???",
	strings.Repeat("W", 400), "½ × ½ × ½", "Ärmel & Kragen", "a\nb\tc\x00d", "\u202Ereversed", "🧵 thread"}

func nastyLists() (*plan.Plan, []cutting.List) {
	p := &plan.Plan{Title: strings.Repeat("Title ", 30)}
	list := cutting.List{Fabric: &plan.Fabric{ID: "f", Name: nasty[3]}}
	for i, id := range nasty {
		if id != "" {
			p.Blocks = append(p.Blocks, &plan.Block{ID: id, Name: nasty[(i*5+3)%len(nasty)]})
		}
		for n := range length.Length(12) {
			list.Pieces = append(list.Pieces, &cutting.Piece{ID: id + "-" + string(rune('a'+n)), Size: rect(20+n, 333),
				Uses: []cutting.Use{{Block: id, For: nasty[(i+1)%len(nasty)], Count: 100000 - int(n), Spares: i}}})
		}
	}
	return p, []cutting.List{list}
}

// What is written is read back by an independent decoder, for every size that a
// label may allow, and the bag is found by it.
func TestSquareRoundTrip(t *testing.T) {
	for _, by := range []plan.BagKey{plan.ByBlock, plan.ByFabric} {
		p, lists := nastyLists()
		p.BagBy = []plan.BagKey{by}
		s := Sort(p, lists)
		for _, limit := range []int{21, 25, 29, 33, 37, 45, 57} {
			for i := range s.Bags {
				b := &s.Bags[i]
				m, err := s.Square(b, limit)
				if err != nil || m.Size > limit {
					t.Fatalf("bag %d in %d modules: %d, %v", b.Number, limit, m.Size, err)
				}
				text := decode(t, m)
				if text != m.Text || text != s.Says(b, limit) {
					t.Errorf("bag %d in %d modules says %q, reads %q", b.Number, limit, m.Text, text)
				}
				if !s.MaySay(b, text) {
					t.Errorf("bag %d says %q and may not", b.Number, text)
				}
				if a := s.Read(text); a.Bag != b {
					t.Errorf("%q: %+v", text, a)
				}
			}
		}
	}
}

// decode reads a code as a scanner would: with its quiet zone, four pixels a module.
func decode(t *testing.T, m Modules) string {
	t.Helper()
	const scale = 4
	side := (m.Size + 2*Quiet) * scale
	img := image.NewGray(image.Rect(0, 0, side, side))
	for y := range side {
		for x := range side {
			mx, my := x/scale-Quiet, y/scale-Quiet
			dark := mx >= 0 && my >= 0 && mx < m.Size && my < m.Size && m.Dark[my*m.Size+mx]
			if !dark {
				img.SetGray(x, y, color.Gray{Y: 255})
			}
		}
	}
	bitmap, err := gozxing.NewBinaryBitmapFromImage(img)
	if err != nil {
		t.Fatal(err)
	}
	result, err := qrcode.NewQRCodeReader().Decode(bitmap, map[gozxing.DecodeHintType]interface{}{gozxing.DecodeHintType_PURE_BARCODE: true, gozxing.DecodeHintType_CHARACTER_SET: "UTF-8"})
	if err != nil {
		t.Fatalf("%q: %v", m.Text, err)
	}
	return result.GetText()
}

// The encoder's own choice of version is what modules worked out, at every length.
func TestModulesAgreeWithEncoder(t *testing.T) {
	for _, level := range []qr.ErrorCorrectionLevel{qr.L, qr.M} {
		for n := 1; n < 320; n += 3 {
			for mode, char := range map[qr.Encoding]string{qr.AlphaNumeric: "A", qr.Unicode: "a"} {
				text := strings.Repeat(char, n)
				want := modules(text, level)
				if want == 0 {
					continue
				}
				code, err := qr.Encode(text, level, mode)
				if err != nil || code.Bounds().Dx() != want {
					t.Errorf("%d x %s at %v: %d modules, want %d (%v)", n, char, level, code.Bounds().Dx(), want, err)
				}
			}
		}
	}
}

func TestSquaresInOrder(t *testing.T) {
	p, lists := lantern()
	s := Sort(p, lists)
	numbers := []int{3, 1, 8, 1}
	all, err := s.Squares(numbers, 37)
	if err != nil {
		t.Fatal(err)
	}
	for i, n := range numbers {
		one, err := s.Square(s.Bag(n), 37)
		if d := cmp.Diff(one, all[i]); err != nil || d != "" {
			t.Errorf("bag %d: %v\n%s", n, err, d)
		}
	}
	for _, bad := range [][]int{{0}, {9}, {1, -1}} {
		if _, err := s.Squares(bad, 37); err == nil {
			t.Errorf("Squares(%v) gives no error", bad)
		}
	}
	if _, err := s.Squares([]int{1}, 20); err == nil {
		t.Error("a square of 20 modules was made")
	}
}

func BenchmarkSquares(b *testing.B) {
	p, lists := lantern()
	s := Sort(p, lists)
	var numbers []int
	for i := range 100 {
		numbers = append(numbers, 1+i%len(s.Bags))
	}
	for b.Loop() {
		if _, err := s.Squares(numbers, 37); err != nil {
			b.Fatal(err)
		}
	}
}

// A place of several is said in short, and never ends where another should follow.
func TestPlaceWords(t *testing.T) {
	border := []Place{{For: "inner border top and bottom"}}
	lantern := []Place{{Block: "A", Name: "Lantern in the window"}}
	for _, c := range []struct {
		places []Place
		br     brevity
		want   string
	}{
		{border, brevity{name: 28}, "INNER BORDER TOP + BOTTOM"},
		{border, brevity{name: 20}, "INNER BORDER TOP"},
		{border, brevity{12, true, none}, "INNER BORDER"},
		{lantern, brevity{name: 28}, "BLOCK A LANTERN IN THE WINDOW"},
		{lantern, brevity{12, true, none}, "BLOCK A"},
		{append(lantern, border...), brevity{name: 28}, "BLOCKS A INNER BORDER TOP + BOTTOM"},
		{lantern, brevity{}, ""},
	} {
		if got := placeWords(c.places, c.br); got != c.want {
			t.Errorf("%v in %d characters: %q, want %q", c.places, c.br.name, got, c.want)
		}
	}
}
