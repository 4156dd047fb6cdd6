//go:build nodynamic || linux

package scan

import (
	"context"
	_ "embed"
	"strings"
	"sync"
	"testing"
)

// labelHEIC is a part of a made-up photo of a label, written as phones do.
//
//go:embed testdata/label.heic
var labelHEIC []byte

const labelText = "W9E-03-JF5 BAG 3 OF 3 BLOCK B SCHIENEN UBER DIE HOHE 30 OF 6.5 X 31.5 CM"

func TestHEIC(t *testing.T) {
	var all sync.WaitGroup
	for range 2 { // the decoder is not for two at once; Find must see to it
		all.Go(func() {
			if found := find(t, labelHEIC); len(found) != 1 || found[0].Text != labelText {
				t.Errorf("found %+v", found)
			}
		})
	}
	all.Wait()
}

// Whatever is missing or wrong in a file, it is told, and nothing breaks.
func TestHEICDamaged(t *testing.T) {
	for _, part := range []int{13, 40, 200, 500, len(labelHEIC) / 2} {
		_, err := Find(context.Background(), labelHEIC[:part], Options{})
		if err == nil || !strings.Contains(err.Error(), "the HEIC file is") {
			t.Errorf("cut after %d bytes: %v", part, err)
		}
	}
	for at := 16; at < len(labelHEIC); at += len(labelHEIC) / 40 {
		data := append([]byte(nil), labelHEIC...)
		data[at] ^= 0x5A
		Find(context.Background(), data, Options{})
	}
}

// A picture larger than is allowed is refused before it is decoded.
func TestHEICTooLarge(t *testing.T) {
	_, err := Find(context.Background(), labelHEIC, Options{MaxPixels: 1000})
	if err == nil || !strings.Contains(err.Error(), "480 x 420 pixels") {
		t.Error(err)
	}
}
