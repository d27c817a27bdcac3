package main

import (
	"bytes"
	"fmt"
	"html"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// golden holds pictures against those in a folder. With -update it writes the new
// ones there, and a contact sheet of those that changed into a folder of its own: a
// page that shows old beside new.
type golden struct {
	folder string
	pairs  []pair
}

// pair is a picture as it was, nil where there was none, and as it is now.
type pair struct {
	name     string
	old, now []byte
}

// check compares one picture, or writes it.
func (g *golden) check(t *testing.T, name string, now []byte) {
	t.Helper()
	file := filepath.Join(g.folder, name)
	old, err := os.ReadFile(file)
	if err == nil && bytes.Equal(old, now) {
		return
	}
	g.pairs = append(g.pairs, pair{name, old, now})
	if !*update {
		t.Errorf("%s differs from the golden picture; look at both, and run go test ./cmd/whorl -update if the new one is right", name)
		return
	}
	if err := os.WriteFile(file, now, 0o644); err != nil {
		t.Fatal(err)
	}
}

// contact writes the contact sheet, when pictures were rewritten: whorl-contact in the
// folder for temporary files.
func (g *golden) contact(t *testing.T) {
	t.Helper()
	if !*update || len(g.pairs) == 0 {
		return
	}
	dir := filepath.Join(os.TempDir(), "whorl-contact", filepath.Base(g.folder))
	if err := os.RemoveAll(dir); err != nil {
		t.Fatal(err)
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		t.Fatal(err)
	}
	page, err := contactSheet(dir, g.pairs)
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%d pictures changed: old beside new is in %s", len(g.pairs), page)
}

// contactSheet writes a page that shows every pair beside one another into a folder,
// with the pictures, and gives its name.
func contactSheet(dir string, pairs []pair) (string, error) {
	var b strings.Builder
	b.WriteString("<!DOCTYPE html>\n<html lang=\"en\"><meta charset=\"utf-8\"><title>Changed pictures</title>\n" +
		"<style>body{font-family:sans-serif;background:#ddd}table{width:100%;table-layout:fixed}td,th{vertical-align:top}img{width:100%;background:#fff}</style>\n" +
		"<h1>Changed pictures</h1>\n")
	picture := func(p pair, when string, data []byte) error {
		if data == nil {
			b.WriteString("<td>none</td>")
			return nil
		}
		file := when + "-" + p.name
		fmt.Fprintf(&b, `<td><img src="%s" alt="%s, %s"></td>`, html.EscapeString(file), html.EscapeString(p.name), when)
		return os.WriteFile(filepath.Join(dir, file), data, 0o644)
	}
	for _, p := range pairs {
		fmt.Fprintf(&b, "<h2>%s</h2>\n<table><tr><th>old</th><th>new</th></tr><tr>", html.EscapeString(p.name))
		if err := picture(p, "old", p.old); err != nil {
			return "", err
		}
		if err := picture(p, "new", p.now); err != nil {
			return "", err
		}
		b.WriteString("</tr></table>\n")
	}
	b.WriteString("</html>\n")
	page := filepath.Join(dir, "contact.html")
	return page, os.WriteFile(page, []byte(b.String()), 0o644)
}

// A contact sheet has both pictures of what changed, and one of what is new.
func TestContactSheet(t *testing.T) {
	dir := t.TempDir()
	page, err := contactSheet(dir, []pair{{"cap.svg", []byte("<svg>1</svg>"), []byte("<svg>2</svg>")}, {"new & good.svg", nil, []byte("<svg>3</svg>")}})
	if err != nil {
		t.Fatal(err)
	}
	words, err := os.ReadFile(page)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`src="old-cap.svg"`, `src="new-cap.svg"`, `<td>none</td>`, `src="new-new &amp; good.svg"`} {
		if strings.Count(string(words), want) != 1 {
			t.Errorf("no %s in %s", want, words)
		}
	}
	for file, want := range map[string]string{"old-cap.svg": "<svg>1</svg>", "new-cap.svg": "<svg>2</svg>", "new-new & good.svg": "<svg>3</svg>"} {
		if got, err := os.ReadFile(filepath.Join(dir, file)); err != nil || string(got) != want {
			t.Errorf("%s is %s (%v)", file, got, err)
		}
	}
}
