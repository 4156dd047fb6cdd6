package fonts

import (
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/gomonobold"
	"golang.org/x/image/font/gofont/goregular"
)

// The embedded faces. Mono is for codes that are typed: each of its characters
// has the same width and its zero is crossed.
var (
	regular = &Face{name: "regular", ttf: goregular.TTF}
	bold    = &Face{name: "bold", ttf: gobold.TTF}
	mono    = &Face{name: "mono", ttf: gomonobold.TTF}
)

// A Weight names one of a set's faces.
type Weight int

// The weights of a set. Mono is bold too: it is read off labels.
const (
	Regular Weight = iota
	Bold
	Mono
)

// A Set is the faces one document is set in. The fallback, which may be nil,
// draws what the others lack, character by character.
type Set struct {
	faces    [3]*Face
	fallback *Face
}

// Default is the embedded set, without a fallback.
func Default() Set { return Set{faces: [3]*Face{regular, bold, mono}} }

// WithFallback is the same set with a face that draws the characters its own
// faces lack.
func (s Set) WithFallback(f *Face) Set {
	s.fallback = f
	return s
}

// Face is the set's own face of a weight.
func (s Set) Face(w Weight) *Face { return s.faces[w] }

// All are the set's faces in a fixed order, the fallback last where there is
// one.
func (s Set) All() []*Face {
	all := append([]*Face(nil), s.faces[:]...)
	if s.fallback != nil {
		all = append(all, s.fallback)
	}
	return all
}

// Pick is the face to draw a character with: the one of that weight, else the
// regular one, else the fallback. ok is false where none has it; the face is
// then the one of that weight, whose box for missing characters is drawn.
func (s Set) Pick(w Weight, r rune) (face *Face, ok bool) {
	face = s.faces[w]
	switch {
	case face.Has(r):
		return face, true
	case s.faces[Regular].Has(r):
		return s.faces[Regular], true
	case s.fallback != nil && s.fallback.Has(r):
		return s.fallback, true
	}
	return face, false
}

// Has reports whether any face of the set can draw the character.
func (s Set) Has(r rune) bool {
	_, ok := s.Pick(Regular, r)
	return ok
}
