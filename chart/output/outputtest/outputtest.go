// Package outputtest has what tests of pictures share: the outside programs
// that read what was written, and a scene with something of everything.
package outputtest

import (
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

// Tool finds an outside program. Where it is missing the test is skipped, or
// fails if the environment sets WHORL_NEED_TOOLS=1.
func Tool(t testing.TB, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err == nil {
		return path
	}
	if os.Getenv("WHORL_NEED_TOOLS") == "1" {
		t.Fatalf("%s is not installed and WHORL_NEED_TOOLS=1 asks for it", name)
	}
	t.Skipf("%s is not installed: what it checks is not checked", name)
	return ""
}

// Run runs an outside program found by Tool and gives what it printed; the
// test fails if the program does.
func Run(t testing.TB, name string, args ...string) string {
	t.Helper()
	out, err := exec.Command(Tool(t, name), args...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s %v: %v\n%s", name, args, err, out)
	}
	return string(out)
}

// Outside is the folder that the npm packages in .ci/outside are installed in, which
// the environment names as WHORL_OUTSIDE. Where there is none the test is skipped, or
// fails, as in Tool.
func Outside(t testing.TB) string {
	t.Helper()
	dir := os.Getenv("WHORL_OUTSIDE")
	if dir != "" {
		if _, err := os.Stat(filepath.Join(dir, "node_modules")); err == nil {
			return dir
		}
	}
	if os.Getenv("WHORL_NEED_TOOLS") == "1" {
		t.Fatalf("WHORL_OUTSIDE=%s has no node_modules and WHORL_NEED_TOOLS=1 asks for them", dir)
	}
	t.Skip("WHORL_OUTSIDE names no folder with the packages of .ci/outside: what they check is not checked")
	return ""
}
