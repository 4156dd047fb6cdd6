//go:build !nodynamic && !linux

package scan

// formatHEIC has no decoder in this build: see heicdecode.go.
var formatHEIC = format{name: "HEIC"}
