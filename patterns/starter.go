package patterns

import (
	"bytes"
	_ "embed"
)

//go:embed starter.yaml
var starter []byte

// Starter is a small complete pattern with comments, to begin a new file from.
func Starter() []byte { return bytes.Clone(starter) }
