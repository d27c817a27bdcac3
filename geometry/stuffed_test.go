package geometry

import (
	"math"
	"testing"
)

// Against the sphere, and the length of an ellipse summed up in small steps.
func TestStuffed(t *testing.T) {
	for _, c := range []struct{ across, tall float64 }{{50, 50}, {50, 30}, {50, 200}, {10, 12}} {
		const steps = 20000
		length := 0.0
		for k := range steps {
			a, b := math.Pi*float64(k)/steps, math.Pi*float64(k+1)/steps
			length += math.Hypot(c.across/2*(math.Sin(b)-math.Sin(a)), c.tall/2*(math.Cos(b)-math.Cos(a)))
		}
		across, tall, ok := Stuffed(math.Pi*c.across, length)
		if !ok || math.Abs(across-c.across) > 1e-6*c.across || math.Abs(tall-c.tall) > 0.001*c.tall {
			t.Errorf("%v × %v, want %v × %v", across, tall, c.across, c.tall)
		}
	}
	for _, c := range [][2]float64{{100, 30}, {0, 10}, {math.NaN(), 3}, {3, math.NaN()}, {3, math.Inf(1)}, {-5, 3}} {
		if _, _, ok := Stuffed(c[0], c[1]); ok {
			t.Errorf("%v can be stuffed", c)
		}
	}
}
