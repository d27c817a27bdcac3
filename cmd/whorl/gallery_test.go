package main

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "rewrite the golden pictures in testdata/gallery")

// layouts are pictures of the textured example beside those that its file asks
// for.
const layouts = `pictures:
  - {name: repeat, draw: wedge, part: Body, size: Toddler}
  - {name: panel, draw: panel, part: Body, size: Toddler, rounds: 1-10, repeats: 2}
  - {name: brim, draw: rows, part: Brim, size: Toddler}
`

// hung are the files that the gallery has the pictures of.
func hung(t *testing.T) []string {
	words, err := os.ReadFile("../../patterns/examples/bulrush-hat.yaml")
	if err != nil {
		t.Fatal(err)
	}
	before, _, _ := strings.Cut(string(words), "pictures:")
	more := filepath.Join(t.TempDir(), "bulrush.yaml")
	if err := os.WriteFile(more, []byte(before+layouts), 0o644); err != nil {
		t.Fatal(err)
	}
	files := append(examples(t), more)
	for _, name := range []string{"ripple-a", "wheel-scarf-a", "mandala-c", "granny-square-a", "hexagon-a"} {
		files = append(files, filepath.Join("..", "..", "testdata", "patterns", name+".yaml"))
	}
	return files
}

// The pictures of the examples and of a few others, and the sheet of symbols, are
// those in testdata/gallery, to the byte.
func TestGallery(t *testing.T) {
	hanging := golden{folder: filepath.Join("..", "..", "testdata", "gallery")}
	defer hanging.contact(t)
	dir := t.TempDir()
	calls := [][]string{{"symbols"}}
	for _, file := range hung(t) {
		calls = append(calls, []string{"draw", file})
	}
	for _, call := range calls {
		status, out, errs := whorl(t, "", append(call, "-o", dir, "--format", "svg")...)
		if status != statusDone {
			t.Fatal(errs)
		}
		for _, name := range strings.Fields(out) {
			got, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			hanging.check(t, filepath.Base(name), got)
		}
	}
}
