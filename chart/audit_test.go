package chart

import "testing"

func TestAudit(t *testing.T) {
	for _, s := range samples() {
		t.Run(s.name, func(t *testing.T) {
			c := draw(t, s)
			r := Audit(c.Scene)
			few := func(what string, n int, at func(i int) any) {
				for i := 0; i < n && i < 8; i++ {
					t.Errorf("%s: %v", what, at(i))
				}
				if n > 8 {
					t.Errorf("%s: %d in all", what, n)
				}
			}
			few("overlap", len(r.Overlaps), func(i int) any { return r.Overlaps[i] })
			few("text", len(r.Texts), func(i int) any { return r.Texts[i] })
			few("leg", len(r.Astray), func(i int) any { return r.Astray[i] })
			few("fan", len(r.Fans), func(i int) any { return r.Fans[i] })
			if r.Turn > 0.1 {
				t.Errorf("repeats differ by %.2f°", r.Turn)
			}
		})
	}
}
