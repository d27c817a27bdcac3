package patterns

import "testing"

// Sizes of hooks from the published conversion tables.
func TestHookSizes(t *testing.T) {
	for words, want := range map[string]string{
		"5.5 mm":                     "5.5 mm (US I/9)",
		"5,5mm":                      "5,5mm (US I/9)",
		"4 mm aluminium":             "4 mm (US G/6) aluminium",
		"6.5 mm":                     "6.5 mm (US K/10½)",
		"H/8":                        "H/8 (5 mm)",
		"US H-8":                     "US H-8 (5 mm)",
		"US K/10½":                   "US K/10½ (6.5 mm)",
		"5 mm (H-8)":                 "5 mm (H-8)",
		"4.5 mm (US 7)":              "4.5 mm (US 7)",
		"7 mm":                       "7 mm", // in neither table
		"":                           "",
		"two sizes under your usual": "two sizes under your usual",
	} {
		if got := HookSizes(words); got != want {
			t.Errorf("%q: %q, want %q", words, got, want)
		}
	}
}
