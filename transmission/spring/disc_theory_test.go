package spring_test

import (
	"math"
	"testing"

	"example.com/benchbook/transmission/spring"
	"example.com/benchbook/units"
	"pgregory.net/rapid"
)

// The five stresses by the geometry that Almen and Laszlo began with (Trans. ASME
// 58 (1936) 305, from memory) instead of by coefficients: the section turns, stiff,
// about the circle of radius c = (De - Di)/(2 ln δ) by φ = s/((De - Di)/2), so that
// a point at radius r and height z above the middle is strained around by
// (φ/r) [(c - r)(β - φ/2) + z], β being the cone's slope when free. Their own first
// coefficient belongs to it; that of EN 16984 moves all stresses alike.
func TestDiscStressesByGeometry(t *testing.T) {
	const e, nu = 206000.0, 0.3
	rapid.Check(t, func(t *rapid.T) {
		in := anyDisc(t).Spec()
		in.Formula = spring.AlmenLaszlo
		d := ok(spring.NewDisc(in))(t)
		f := d.Figures()
		h0, th := d.Travel().Millimetres(), in.Thickness.Millimetres()
		a, b := in.Outside.Millimetres()/2, in.Inside.Millimetres()/2
		s := h0 * rapid.Float64Range(0.05, 1).Draw(t, "pressed")
		c, phi, beta := (a-b)/math.Log(a/b), s/(a-b), h0/(a-b)
		stress := func(r, z float64) float64 {
			return -e / (1 - nu*nu) * phi / r * ((c-r)*(beta-phi/2) + z)
		}
		st := d.At(units.Millimetres(s))
		scale := math.Abs(stress(b, th/2))
		for _, p := range []struct {
			what string
			got  units.Pressure
			want float64
		}{{"OM", st.OM, stress(c, th/2)}, {"I", st.I, stress(b, th/2)}, {"II", st.II, stress(b, -th/2)}, {"III", st.III, stress(a, -th/2)}, {"IV", st.IV, stress(a, th/2)}} {
			if math.Abs(p.got.Megapascals()-p.want) > 1e-9*scale { // rounding of differences of coefficients near 1
				t.Fatalf("σ%s %v, by geometry %g MPa", p.what, p.got, p.want)
			}
		}
		same := func(what string, got, want float64) {
			if math.Abs(got-want) > 1e-12*math.Abs(want) {
				t.Fatalf("%s %g, want %g", what, got, want)
			}
		}
		same("height", st.Height.Millimetres(), th+h0-s)
		same("share of flat", st.FlatShare, s/h0)
		same("height over all", f.Overall.Millimetres(), th+h0)
		same("height ratio", f.HeightRatio*th, h0)
	})
}

// A cone of exactly √2 thicknesses has a load that stands still at flat and falls
// nowhere; any higher and it snaps.
func TestDiscAtTheEdgeOfSnapping(t *testing.T) {
	d := ok(spring.NewDisc(spring.DiscSpec{Outside: 80 * mm, Inside: 40 * mm, Thickness: 2 * mm, ConeHeight: units.Millimetres(2 * math.Sqrt2)}))(t)
	f := d.Figures()
	if f.HeightRatio != math.Sqrt2 {
		t.Fatalf("h0/t %v is not √2 to the last bit", f.HeightRatio)
	}
	if f.Snaps || d.Limit() != d.Travel() || d.At(d.Travel()).PastHump {
		t.Errorf("snaps %v, limit %v of %v", f.Snaps, d.Limit(), d.Travel())
	}
	if st := snapping(t).At(snapping(t).Limit()); st.PastHump || st.Reason.Given() {
		t.Errorf("the hump itself is past the hump: %+v", st)
	}
}

// The free disc is a state too, without load.
func TestDiscFree(t *testing.T) {
	if st := snapping(t).At(0); st.Reason.Given() || st.Load != 0 || st.Height != 5*mm {
		t.Errorf("%+v", st)
	}
}
