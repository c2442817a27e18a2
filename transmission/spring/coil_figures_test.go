package spring_test

import (
	"math"
	"testing"

	"example.com/benchbook/transmission/spring"
	"example.com/benchbook/units"
	"pgregory.net/rapid"
)

// The figures of a coil by their definitions; the wire's length is that of a
// polygon along the helix, the lead angle that of one turn unrolled.
func TestCoilFigures(t *testing.T) {
	h := ok(spring.NewHelical(spring.HelicalSpec{Wire: 3 * mm, Mean: 18 * mm, Active: 8, Free: 75 * mm, Ends: spring.SquaredGround}))(t)
	f := h.Figures()
	near(t, "index", f.Index, 6, 1e-15)
	near(t, "over the coils", f.Outside.Millimetres(), 21, 1e-15)
	near(t, "inside the coils", f.Inside.Millimetres(), 15, 1e-15)
	near(t, "slenderness", f.Slenderness*18, 75, 1e-14)
	near(t, "rise of a turn", math.Tan(f.Helix.Radians())*math.Pi*18, f.Pitch.Millimetres(), 1e-12)
	const pieces = 100000
	length := 0.0
	point := func(i int) (x, y, z float64) {
		part := float64(i) / pieces
		sin, cos := math.Sincos(2 * math.Pi * 10 * part) // ten coils in all
		return 9 * cos, 9 * sin, 72 * part               // the wire's middle rises free length less one wire
	}
	for i := range pieces {
		x0, y0, z0 := point(i)
		x1, y1, z1 := point(i + 1)
		length += math.Hypot(math.Hypot(x1-x0, y1-y0), z1-z0)
	}
	near(t, "wire", f.Wire.Millimetres(), length, 1e-7) // chords for arcs of 1/10 000 turn: 2e-8
	near(t, "least length, fatigue", f.LeastFatigue.Millimetres(), f.SolidEN.Millimetres()+1.5*8*(0.0015*18*18/3+0.1*3), 1e-12)

	s := h.At(50 * mm)
	for _, k := range []struct {
		factor spring.Factor
		got    units.Pressure
	}{{spring.DirectShear, s.DirectShear}, {spring.Wahl, s.Wahl}, {spring.Bergstraesser, s.Bergstraesser}} {
		near(t, k.factor.String(), k.got.SI(), ok(spring.Stress(s.Load, 3*mm, 18*mm, k.factor))(t).SI(), 1e-12)
	}
	near(t, "to solid", s.ToSolid.Millimetres(), 50-30, 1e-12)
	near(t, "to the least length", s.ToLeast.Millimetres(), 50-f.Least.Millimetres(), 1e-12)
	near(t, "clash share", s.ClashShare, 20.0/25, 1e-12)
	if free := h.At(75 * mm); free.Reason.Given() || free.Load != 0 || free.ClashShare != 0 {
		t.Errorf("free: %+v", free)
	}
	if solid := h.At(h.Solid()); solid.Reason.Given() || solid.ToSolid != 0 {
		t.Errorf("solid: %+v", solid)
	}
	if at := h.AtLoad(units.Newtons(1e-310)); at.ClashShare != 0 || at.Length != h.Free() {
		t.Errorf("a load that moves nothing: %+v", at)
	}
	if at := h.AtLoad(f.SolidLoad); at.Reason.Given() || math.Abs(at.ToSolid.Millimetres()) > 1e-12 {
		t.Errorf("load when solid: %+v", at)
	}
}

// A coil bows where its load P reaches that of a column that bends and shears,
// P (1 + P/γ) = π² β/(ν l)², with the stiffnesses that a coil has at length l
// (Timoshenko and Gere, Theory of Elastic Stability, art. 2.24, from memory):
// P = G I (L0 - l)/(π n R³), β = 2 E G I l/(π n R (2G + E)), γ = E I l/(π n R³).
func TestBucklingByTheColumn(t *testing.T) {
	const e, g = 206.0, 81.5
	for seat := spring.BothFlat; seat <= spring.OneFree; seat++ {
		// wire of 1 mm, solid at 7 mm: it bows on its way
		h := ok(spring.NewHelical(spring.HelicalSpec{Wire: 1 * mm, Mean: 20 * mm, Active: 5, Free: 150 * mm, Ends: spring.SquaredGround, Seating: seat}))(t)
		f := h.Figures()
		if !f.CanBuckle {
			t.Fatalf("%v: never buckles", seat)
		}
		s := f.BucklesAt.Millimetres()
		l, r := 150-s, 10.0
		p, gamma, beta := g*s/(r*r*r), e*l/(r*r*r), 2*e*g*l/(r*(2*g+e)) // each without I/(π n)
		nl := seat.LengthFactor() * l
		near(t, seat.String(), p*(1+p/gamma), math.Pi*math.Pi*beta/(nl*nl), 1e-9)
		for _, c := range []struct {
			at   float64
			want bool
		}{{s - 1e-9, false}, {s + 1e-9, true}} {
			if got := h.At(units.Millimetres(150 - c.at)).Buckles; got != c.want {
				t.Errorf("%v, pressed by %v of %v: buckles %v", seat, c.at, s, got)
			}
		}
	}
}

// Buckling begins at BucklesAt itself, and a coil solid just there does not buckle.
func TestBucklingAtTheVeryPoint(t *testing.T) {
	there, solid := false, false
	for i := range 4000 {
		in := spring.HelicalSpec{Wire: 1 * mm, Mean: 20 * mm, Active: 5, Free: units.Millimetres(110 + float64(i)/100), Ends: spring.SquaredGround}
		at := ok(spring.NewHelical(in))(t).Figures().BucklesAt
		length := in.Free - at
		if in.Free-length != at {
			continue // the subtraction rounds
		}
		there = true
		if !ok(spring.NewHelical(in))(t).At(length).Buckles {
			t.Fatalf("free %v is straight at %v, where it buckles", in.Free, at)
		}
		in.Solid = length
		if h := ok(spring.NewHelical(in))(t); h.Travel() == at {
			solid = true
			if h.Figures().CanBuckle {
				t.Fatalf("free %v buckles though solid first", in.Free)
			}
		}
	}
	if !there || !solid {
		t.Error("no such spring found")
	}
}

// A wire stressed to just 0.56 of its strength when solid takes no set.
func TestNoSetAtTheLimit(t *testing.T) {
	in := spring.HelicalSpec{Wire: 3 * mm, Mean: 18 * mm, Active: 8, Free: 60 * mm, Ends: spring.SquaredGround}
	stress := ok(spring.NewHelical(in))(t).Figures().SolidStress
	found := false
	for a, i := stress.Times(1/0.56).Times(1-1e-15), 0; i < 20; i++ {
		in.Wires = spring.Law{Form: spring.Power, A: a}
		if s := ok(spring.NewHelical(in))(t).Figures().Strength; s.SolidLimit == stress {
			found = true
			if s.TakesSet {
				t.Errorf("takes a set at its limit: %+v", s)
			}
		}
		a = units.FromSI[units.Pressure](math.Nextafter(a.SI(), math.Inf(1)))
	}
	if !found {
		t.Error("no such strength found")
	}
}

// Each of the sizing formulas undoes the one it comes from.
func TestSizesAreInverses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.Float64Range(0.5, 12).Draw(t, "wire")
		c := rapid.Float64Range(3, 20).Draw(t, "index")
		n := rapid.Float64Range(2, 20).Draw(t, "coils")
		wire, mean := units.Millimetres(d), units.Millimetres(c*d)
		k := ok(spring.Rate(wire, mean, n, 80000*mpa))(t)
		same := func(what string, got, want float64) {
			if math.Abs(got/want-1) > 1e-9 { // the wire for a law ends its search at 1e-14 of a logarithm
				t.Fatalf("%s: %g, want %g", what, got, want)
			}
		}
		same("mean", ok(spring.MeanFor(k, wire, n, 80000*mpa))(t).Millimetres(), c*d)
		same("coils", ok(spring.CoilsFor(k, wire, mean, 80000*mpa))(t), n)
		tau := units.Megapascals(rapid.Float64Range(100, 900).Draw(t, "stress"))
		f := ok(spring.LoadAtStress(tau, wire, mean, spring.Wahl))(t)
		same("wire", ok(spring.WireFor(f, c, tau, spring.Wahl))(t).Millimetres(), d)
		// the same wire by the law that has that stress as its share; a flat one
		// (B nil) has no end, a falling one holds as far as a tenth of A
		share := rapid.Float64Range(0.2, 0.6).Draw(t, "share")
		for _, b := range []float64{0, 600, 800} {
			law := spring.Law{Form: spring.Logarithmic, A: 2000 * mpa, B: units.Megapascals(b)}
			load := ok(spring.LoadAtStress(units.Megapascals(share*(2000-b*math.Log10(d))), wire, mean, spring.Uncorrected))(t)
			same("wire by law", ok(spring.WireForLaw(load, mean, 1, share, law))(t).Millimetres(), d)
		}
	})
}

// A line that is down to nothing at a wire of 21.5 mm is followed to a tenth of
// its strength at 1 mm, 10^(0.9·2000/1500) = 15.8 mm, and no further.
func TestWireForLawToTheEndOfTheLine(t *testing.T) {
	law := spring.Law{Form: spring.Logarithmic, A: 2000 * mpa, B: 1500 * mpa}
	end := math.Pow(10, 1.2)
	load := func(d float64) units.Force {
		return ok(spring.LoadAtStress(units.Megapascals(0.4*(2000-1500*math.Log10(d))), units.Millimetres(d), 100*mm, spring.Uncorrected))(t)
	}
	near(t, "inside", ok(spring.WireForLaw(load(end*0.9), 100*mm, 1, 0.4, law))(t).Millimetres(), end*0.9, 1e-9)
	if w, err := spring.WireForLaw(load(end).Times(1.1), 100*mm, 1, 0.4, law); err == nil {
		t.Errorf("carried by %v", w)
	}
}
