package plan

// A shape is what a value of a plan file is.
type shape int

// The shapes.
const (
	nothing shape = iota // a key with no value behind it
	broken               // what has been told as a fault; nothing more is said of it
	text
	list
	mapping
)

// String names a shape as a message does.
func (s shape) String() string {
	return [...]string{"nothing", "nothing", "a text", "a list", "keys with values"}[s]
}

// A value is one value of a plan file with its place. It is all that the reader
// knows of a file, so that a file of another format need only be made into
// values.
type value struct {
	at    Pos
	shape shape
	text  string  // of a text, as written
	start Pos     // of a text: where its first character stands
	items []value // of a list
	pairs []pair  // of a mapping, in the order written
	loose bool    // of a mapping: it lacks what stands in columns that aren't known
}

// A pair is a key and its value in a mapping.
type pair struct {
	at  Pos // the key's place
	key string
	val value
}
