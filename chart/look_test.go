package chart

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"whorl/chart/output"
)

// TestLook writes the pictures of all samples into the folder that the
// environment variable CHART_LOOK names, to be looked at.
func TestLook(t *testing.T) {
	dir := os.Getenv("CHART_LOOK")
	if dir == "" {
		t.Skip("CHART_LOOK is not set")
	}
	for _, s := range samples() {
		c := draw(t, s)
		var b bytes.Buffer
		if err := output.SVG(&b, c.Scene); err != nil {
			t.Errorf("%s: %v", s.name, err)
			continue
		}
		if err := os.WriteFile(filepath.Join(dir, s.name+".svg"), b.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
		n := 0
		for _, r := range s.f.Parts[0].Rounds {
			n += len(r.Stitches)
		}
		t.Logf("%s: %d bytes, %d stitches, %.0f a stitch; smallest %.2f; %v", s.name, b.Len(), n, float64(b.Len())/float64(n), c.Smallest, c.Findings)
	}
}
