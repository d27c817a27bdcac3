package main

import (
	"encoding/json"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

const postWords = "gauge: 16 dc = 10 cm\n" + `pictures:
  - {name: whole, draw: round}
  - {name: sizes, draw: schematic}
  - {name: shape, draw: shaping}
`

func readManifest(t *testing.T, dir string) (m manifest) {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(dir, "pattern-post.json"))
	if err == nil {
		err = json.Unmarshal(data, &m)
	}
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// Every file that the manifest names is there, as large as it says, and is the
// picture that it tells of.
func TestPostSet(t *testing.T) {
	words := postWords + "post: {widths: [300, 417]}\n" + circle("dc", 12, 4)
	dir := t.TempDir()
	status, out, errs := whorl(t, words, "draw", "-", "-o", dir)
	if status != statusDone {
		t.Fatal(errs)
	}
	m := readManifest(t, dir)
	if m.Title != "Circle of dc" || len(m.Pictures) != 3 {
		t.Fatalf("%+v", m)
	}
	for i, begins := range []string{"Round chart of the Circle, Circle of dc: 4 rounds worked outwards, from 12 to 48 double crochet", "Schematic of Circle of dc", "Shaping sheet of the Circle, Circle of dc"} {
		p := m.Pictures[i]
		if !strings.HasPrefix(p.Alt, begins) {
			t.Errorf("%q does not begin with %q", p.Alt, begins)
		}
		if len(p.Files) != 3 || p.Files[0].File != p.Name+".svg" || p.Files[1].Width != 300 || p.Files[2].Width != 417 {
			t.Errorf("%+v", p.Files)
		}
		for k, f := range p.Files {
			name := filepath.Join(dir, f.File)
			if !strings.Contains(out, name+"\n") {
				t.Errorf("%s is not said to be written", f.File)
			}
			data, err := os.Open(name)
			if err != nil {
				t.Fatal(err)
			}
			defer data.Close()
			if k == 0 {
				continue
			}
			if c, err := png.DecodeConfig(data); err != nil || c.Width != f.Width || c.Height != f.Height {
				t.Errorf("%s is %d × %d, not %d × %d: %v", f.File, c.Width, c.Height, f.Width, f.Height, err)
			}
		}
		svg, _ := os.ReadFile(filepath.Join(dir, p.Files[0].File))
		if !strings.Contains(string(svg), ">"+p.Alt) {
			t.Errorf("the description of %s does not begin with %q", p.Files[0].File, p.Alt)
		}
	}

	// The same again, to the byte; one picture alone leaves the manifest.
	before, _ := os.ReadFile(filepath.Join(dir, "pattern-post.json"))
	if _, out, _ = whorl(t, words, "draw", "-", "-o", dir, "--picture", "sizes"); strings.Contains(out, "post.json") || !strings.Contains(out, "pattern-sizes-417.png") {
		t.Error(out)
	}
	whorl(t, words, "draw", "-", "-o", dir)
	if after, _ := os.ReadFile(filepath.Join(dir, "pattern-post.json")); string(after) != string(before) {
		t.Errorf("%s\nis now\n%s", before, after)
	}
}

// The set is only what was asked for.
func TestPostOnlyWhenAsked(t *testing.T) {
	dir := t.TempDir()
	if _, out, _ := whorl(t, postWords+circle("dc", 12, 4), "draw", "-", "-o", dir); strings.Contains(out, "post") {
		t.Error(out)
	}
	words := postWords + "post: {widths: [300]}\n" + circle("dc", 12, 4)
	if _, out, _ := whorl(t, words, "draw", "-", "-o", dir, "--format", "pdf"); strings.Contains(out, "post") || strings.Contains(out, "300") {
		t.Error(out)
	}
	whorl(t, words, "draw", "-", "-o", dir, "--format", "svg")
	for _, p := range readManifest(t, dir).Pictures {
		if len(p.Files) != 1 {
			t.Errorf("%+v", p)
		}
	}
}
