package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"runtime/debug"
	"strconv"
	"strings"
	"testing"
)

// whorl runs the command and gives its exit status and what it printed.
func whorl(t testing.TB, input string, args ...string) (status int, out, errs string) {
	t.Helper()
	var o, e bytes.Buffer
	status = run(args, strings.NewReader(input), &o, &e)
	return status, o.String(), e.String()
}

// kept is a folder that lasts as long as the tests.
var kept string

func TestMain(m *testing.M) {
	debug.SetGCPercent(gcPercent)
	var err error
	if kept, err = os.MkdirTemp("", "whorl-tests-"); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	status := m.Run()
	os.RemoveAll(kept)
	os.Exit(status)
}

const examplesGlob = "../../patterns/examples/*.yaml"

// examples are the example patterns.
func examples(t testing.TB) []string {
	l, err := filepath.Glob(examplesGlob)
	if err != nil || len(l) == 0 {
		t.Fatal("no examples")
	}
	return l
}

func TestExamplesHaveNoFaults(t *testing.T) {
	for _, file := range examples(t) {
		status, out, errs := whorl(t, "", "check", file)
		if status != statusDone || errs != "" {
			t.Errorf("%s: status %d\n%s", file, status, errs)
		}
		if !strings.Contains(out, "every round works out") {
			t.Errorf("%s: %s", file, out)
		}
	}
}

func TestStarterHasNoFaults(t *testing.T) {
	status, starter, _ := whorl(t, "", "new")
	if status != statusDone {
		t.Fatal(status)
	}
	if status, _, errs := whorl(t, starter, "check", "-"); status != statusDone {
		t.Error(errs)
	}
}

// Every stated count and every number of a repeat in the examples is changed
// by one in turn; each change must be found, in the line it was made in or, for
// a number that the next round depends on, in the round after.
func TestOneWrongDigitIsFound(t *testing.T) {
	number := regexp.MustCompile(`\d+`)
	for _, file := range examples(t) {
		t.Run(filepath.Base(file), func(t *testing.T) {
			t.Parallel()
			data, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			lines := strings.Split(string(data), "\n")
			tried := 0
			for i, line := range lines {
				label := strings.Index(line, ": ")
				if !regexp.MustCompile(`^ +(Rnd|Row)s? `).MatchString(line) || label < 0 {
					continue
				}
				for _, at := range number.FindAllStringIndex(line, -1) {
					before, after := line[:at[0]], line[at[1]:]
					if at[0] < label || !counted(before, after) {
						continue
					}
					n, _ := strconv.Atoi(line[at[0]:at[1]])
					wrong := append([]string(nil), lines...)
					wrong[i] = before + strconv.Itoa(n+1) + after
					tried++
					status, _, errs := whorl(t, strings.Join(wrong, "\n"), "check", "-")
					if status != statusFaults {
						t.Errorf("%s:%d: %s: status %d", file, i+1, strings.TrimSpace(wrong[i]), status)
						continue
					}
					if m := regexp.MustCompile(`standard input:(\d+):`).FindStringSubmatch(errs); m == nil {
						t.Errorf("no place in %s", errs)
					} else if l, _ := strconv.Atoi(m[1]); l != i+1 && l != i+2 {
						t.Errorf("%s:%d: %s\nfound at line %d: %s", file, i+1, strings.TrimSpace(wrong[i]), l, errs)
					}
				}
			}
			if tried < 20 {
				t.Errorf("%s: only %d numbers tried", file, tried)
			}
		})
	}
}

// counted reports whether a number is a stated count or a number of stitches or
// times, rather than part of a stitch's name or of a beginning chain.
func counted(before, after string) bool {
	switch {
	case strings.HasSuffix(before, "Ch "), strings.HasSuffix(before, "ch "), strings.HasSuffix(before, "ch-"):
		return false
	case regexp.MustCompile(`[a-z]$`).MatchString(before): // dc2tog
		return false
	case strings.HasPrefix(after, "nd ch"), regexp.MustCompile(`R(nd|ow)s? [\d (,)-]*$`).MatchString(before):
		return false
	case strings.HasPrefix(after, " in"), strings.HasPrefix(after, " cm"), regexp.MustCompile(`^[\d (,)]* cm`).MatchString(after):
		return false
	}
	return true
}

func TestDrawWritesEveryFormatAndNamesIt(t *testing.T) {
	t.Parallel()
	dir := filepath.Join(t.TempDir(), "made", "on", "the", "way")
	status, out, errs := whorl(t, "", "draw", examples(t)[0], "-o", dir)
	if status != statusDone {
		t.Fatal(errs)
	}
	names := strings.Fields(out)
	found, err := os.ReadDir(dir)
	if err != nil || len(found) != len(names) || len(names) == 0 || len(names)%3 != 0 {
		t.Fatalf("named %v, written %v, %v", names, found, err)
	}
	head := map[string]string{".svg": "<svg ", ".pdf": "%PDF-", ".png": "\x89PNG"}
	for _, n := range names {
		data, err := os.ReadFile(n)
		if err != nil || !strings.HasPrefix(string(data), head[filepath.Ext(n)]) {
			t.Errorf("%s: %v", n, err)
		}
	}
}

func TestSameInputSameBytes(t *testing.T) {
	for _, first := range drawnExamples(t) {
		t.Run(filepath.Base(first.pattern), func(t *testing.T) {
			t.Parallel()
			again, err := drawExample(first.pattern, t.TempDir())
			if err != nil {
				t.Fatal(err)
			}
			a, b := contents(t, first.folder), contents(t, again.folder)
			if len(a) != len(b) || len(a) == 0 {
				t.Errorf("%s: %d files, then %d", first.pattern, len(a), len(b))
			}
			for n := range a {
				if !bytes.Equal(a[n], b[n]) {
					t.Errorf("%s differs from run to run", n)
				}
			}
		})
	}
}

// contents are the files in a folder, by their names.
func contents(t *testing.T, folder string) map[string][]byte {
	t.Helper()
	l, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	m := map[string][]byte{}
	for _, e := range l {
		if m[e.Name()], err = os.ReadFile(filepath.Join(folder, e.Name())); err != nil {
			t.Fatal(err)
		}
	}
	return m
}

func TestReport(t *testing.T) {
	for _, file := range examples(t) {
		status, out, errs := whorl(t, "", "check", "--json", file)
		if status != statusDone {
			t.Fatal(errs)
		}
		var r report
		d := json.NewDecoder(strings.NewReader(out))
		d.DisallowUnknownFields()
		if err := d.Decode(&r); err != nil {
			t.Fatal(err)
		}
		if len(r.Sizes) < 4 || len(r.Faults) != 0 || r.Title == "" {
			t.Errorf("%s: %d sizes, %d faults", file, len(r.Sizes), len(r.Faults))
		}
		for _, s := range r.Sizes {
			if s.Finished["circumference_mm"] <= 0 || s.Finished["depth_mm"] <= 0 {
				t.Errorf("%s, %s: finished %v", file, s.Name, s.Finished)
			}
			for _, p := range s.Parts {
				for _, round := range p.Rounds {
					n := 0
					for _, k := range round.Kinds {
						n += k
					}
					if n != round.Stitches {
						t.Errorf("%s, %s, %s: %d stitches, kinds %v", file, s.Name, round.Label, round.Stitches, round.Kinds)
					}
				}
			}
		}
	}
}

// Bad input of every kind: one clear message, the right status, and what was
// there before untouched.
func TestBadInput(t *testing.T) {
	rounds := func(words string) string {
		return "title: T\nparts:\n  - name: P\n    worked: rounds\n    text: |\n      " + words + "\n"
	}
	bomb := "a: &a [x,x,x,x,x,x,x,x,x]\n"
	for c := 'b'; c < 'k'; c++ {
		bomb += fmt.Sprintf("%c: &%c [*%c,*%c,*%c,*%c,*%c,*%c,*%c,*%c]\n", c, c, c-1, c-1, c-1, c-1, c-1, c-1, c-1, c-1)
	}
	for _, c := range []struct {
		name, input, says string
		status            int
	}{
		{"empty file", "", "empty", statusFaults},
		{"not YAML", "title: [unclosed\nparts: }{", "", statusFaults},
		{"wrong types", "title: [a, b]\nparts: 7\n", "", statusFaults},
		{"alias bomb", bomb, "", statusFaults},
		{"a repeat of a thousand million", rounds("Rnd 1: 6 sc in magic ring.") + "      Rnd 2: *sc in next st; rep from * 1000000000 more times.\n", "too large", statusFaults},
		{"many stitches", rounds("Rnd 1: [[[[9 sc] 99 times] 99 times] 99 times] 99 times in magic ring."), "20000", statusFaults},
		{"size list of the wrong length", "sizes: [S, M, L]\n" + rounds("Rnd 1: 6 (7, 8, 9) sc in magic ring."), "4 numbers for 3 sizes", statusFaults},
		{"head list of the wrong length", "sizes: [S, M, L]\nhead: 40 (50) cm\n" + rounds("Rnd 1: 6 sc in magic ring."), "size", statusFaults},
		{"invalid UTF-8", "title: \xff\xfe\n", "UTF-8", statusFaults},
		{"unknown key", "titel: T\n" + rounds("Rnd 1: 6 sc in magic ring."), `"title"`, statusFaults},
		{"unknown stitch", rounds("Rnd 1: 6 sc in magic ring.\n      Rnd 2: flarb in each st around."), "standard input:7:14", statusFaults},
		{"no ring", rounds("Rnd 1: 6 sc in ring."), "magic ring", statusFaults},
		{"runs out", rounds("Rnd 1: 6 sc in magic ring.\n      Rnd 2: *sc in next 3 sts, sc2tog; rep from * around."), "5", statusFaults},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := t.TempDir()
			keep := filepath.Join(dir, "pattern-p.svg")
			if err := os.WriteFile(keep, []byte("kept"), 0o644); err != nil {
				t.Fatal(err)
			}
			for _, args := range [][]string{{"check", "-"}, {"draw", "-", "-o", dir}} {
				status, _, errs := whorl(t, c.input, args...)
				if status != c.status {
					t.Errorf("%v: status %d: %s", args, status, errs)
				}
				if !strings.Contains(errs, c.says) || !strings.Contains(errs, "standard input") {
					t.Errorf("%v says %q", args, errs)
				}
			}
			if data, _ := os.ReadFile(keep); string(data) != "kept" {
				t.Error("a file was changed")
			}
			if l, _ := os.ReadDir(dir); len(l) != 1 {
				t.Error("something was written")
			}
		})
	}
}

func TestMisuse(t *testing.T) {
	blocked := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(blocked, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	example := examples(t)[0]
	for _, c := range []struct {
		name, says string
		args       []string
	}{
		{"missing file", "there is no file", []string{"check", "nowhere.yaml"}},
		{"folder instead of a file", "is a folder", []string{"check", "."}},
		{"no file named", "arg", []string{"draw"}},
		{"unknown command", "unknown", []string{"drawl", example}},
		{"unknown option", "unknown", []string{"draw", "--shade", example}},
		{"unknown format", `"gif" is not a format`, []string{"draw", "--format", "gif", example}},
		{"unknown size", `no size "Giant"`, []string{"draw", "--size", "Giant", example}},
		{"unknown picture", `no picture "moon"`, []string{"draw", "--picture", "moon", example}},
		{"folder that cannot be made", "", []string{"draw", example, "-o", filepath.Join(blocked, "out")}},
		{"new over a file that is there", "exists already", []string{"new", example}},
	} {
		t.Run(c.name, func(t *testing.T) {
			status, _, errs := whorl(t, "", c.args...)
			if status != statusMisuse || !strings.Contains(errs, c.says) || errs == "" {
				t.Errorf("status %d: %s", status, errs)
			}
			if strings.Count(errs, "whorl:") != 1 {
				t.Errorf("more than one message: %s", errs)
			}
		})
	}
}

func TestWindowsLineEnds(t *testing.T) {
	data, err := os.ReadFile(examples(t)[0])
	if err != nil {
		t.Fatal(err)
	}
	_, unix, _ := whorl(t, string(data), "check", "--json", "-")
	status, windows, errs := whorl(t, strings.ReplaceAll(string(data), "\n", "\r\n"), "check", "--json", "-")
	if status != statusDone || unix != windows {
		t.Errorf("status %d: %s", status, errs)
	}
}
