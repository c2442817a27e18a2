package transmission

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// plate is an invented clutch to trim: n springs on a circle of 90 mm, rim 140 mm.
func plate(n int) Clutch {
	c := demo()
	c.Springs.Count, c.Nuts.Circle, c.Plates.Rim = n, 90*units.Millimetre, 140*units.Millimetre
	return c
}

// rimOf is what a gauge reads at the rim with the nuts out of true by dn turns: the
// plate settles where the springs' moments about both diameters balance, found
// here by solving the two balances, not by the formula.
func rimOf(c Clutch, dn []float64, u float64) Rim {
	n := len(dn)
	rs, ro, p := c.Nuts.Circle.Millimetres()/2, c.Plates.Rim.Millimetres()/2, c.Nuts.Pitch.Millimetres()
	var m [2][3]float64 // sum over springs of (slopes . position - dn p) times position = 0
	for i, d := range dn {
		x, y := rs*math.Cos(2*math.Pi*float64(i)/float64(n)), rs*math.Sin(2*math.Pi*float64(i)/float64(n))
		for r, at := range [2]float64{x, y} {
			m[r][0] += x * at
			m[r][1] += y * at
			m[r][2] -= d * p * at
		}
	}
	det := m[0][0]*m[1][1] - m[0][1]*m[1][0]
	sx, sy := (m[0][2]*m[1][1]-m[0][1]*m[1][2])/det, (m[0][0]*m[1][2]-m[0][2]*m[1][0])/det
	r := Rim{Heights: make([]measure.Reading[units.Length], n)}
	for i := range dn {
		a := 2 * math.Pi * float64(i) / float64(n)
		r.Heights[i] = measure.Of(units.Millimetres(1+ro*(sx*math.Cos(a)+sy*math.Sin(a))), units.Millimetres(u))
	}
	return r
}

// One nut out by dn turns tilts the plate by 2 dn P/(N Rs) and reads
// 4 dn P Ro/(N Rs) at the rim.
func TestOneNutOut(t *testing.T) {
	for n := 3; n <= 8; n++ {
		dn := make([]float64, n)
		dn[1] = 0.75
		got, err := plate(n).Even(rimOf(plate(n), dn, 0.01))
		if err != nil {
			t.Fatal(err)
		}
		tilt := 2 * 0.75 * 1.27 / (float64(n) * 45)
		// a dozen rounded operations
		if math.Abs(got.Tilt.Radians()/tilt-1) > 1e-9 || math.Abs(got.RunOut.Value().Millimetres()/(2*tilt*70)-1) > 1e-9 || math.Abs(got.OneNut.Turns()-0.75) > 1e-9 {
			t.Errorf("%d springs: tilt %v, run-out %v, one nut %v turns", n, got.Tilt, got.RunOut, got.OneNut.Turns())
		}
		if got.Lowest != 1 {
			t.Errorf("%d springs: lowest at nut %d", n, got.Lowest)
		}
	}
}

// Whatever the nuts are out by, turning them as told leaves less run-out than
// before, no more than whole flats must, and the clamp as it was.
func TestTrimTakesTiltOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 8).Draw(t, "springs")
		c := plate(n)
		dn := make([]float64, n)
		for i := range dn {
			dn[i] = rapid.Float64Range(-1.5, 1.5).Draw(t, "turns")
		}
		got, err := c.Even(rimOf(c, dn, 0.005))
		if err != nil {
			t.Fatal(err)
		}
		sum := 0
		for i, f := range got.Flats {
			sum += f
			dn[i] += float64(f) / 6
		}
		if sum != 0 {
			t.Fatalf("the moves add up to %d flats", sum)
		}
		after, err := c.Even(rimOf(c, dn, 0.005))
		if err != nil {
			t.Fatal(err)
		}
		if d := after.RunOut.Value() - got.After; !got.Reason.Given() && math.Abs(d.Millimetres()) > 1e-9 {
			t.Fatalf("left %v, told %v", after.RunOut, got.After)
		}
		if after.RunOut.Value() > got.RunOut.Value()+units.Millimetres(1e-9) {
			t.Fatalf("run-out %v, before %v", after.RunOut, got.RunOut)
		}
		// each nut within a flat of exact, in phase at worst: 4 (1 flat) P Ro/(2 Rs)
		if most := 2 * flat * 1.27 * 70 / 45; after.RunOut.Value().Millimetres() > most {
			t.Fatalf("left %v of at most %v mm", after.RunOut, most)
		}
	})
}
