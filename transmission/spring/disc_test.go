package spring_test

import (
	"math"
	"testing"

	"example.com/benchbook/transmission/spring"
	"example.com/benchbook/units"
	"pgregory.net/rapid"
)

// Loads of DIN 2093 table 1 at three quarters of flat, series A, B and C
// (dimensions and loads from memory), and the stresses σII, σIII and σOM that
// an independent evaluation of EN 16984 gave for them.
var din2093 = []struct {
	de, di, t, h0, load, ii, iii, om float64
}{
	{8, 4.2, 0.4, 0.2, 210, 1218, 1194, -1204},
	{25, 12.2, 1.5, 0.55, 2910, 1419, 1091, -1216},
	{50, 25.4, 3.0, 1.1, 12000, 1418, 1135, -1245},
	{8, 4.2, 0.3, 0.25, 119, 847, 1312, -1129},
	{31.5, 16.3, 1.25, 0.9, 1920, 917, 1187, -1082},
	{50, 25.4, 2.0, 1.4, 4760, 923, 1140, -1056},
	{8, 4.2, 0.2, 0.25, 39, 319, 1034, -752},
	{25, 12.2, 0.7, 0.9, 601, 396, 1259, -929},
	{50, 25.4, 1.25, 1.6, 1550, 312, 1035, -754},
}

func TestDIN2093(t *testing.T) {
	for _, c := range din2093 {
		d := ok(spring.NewDisc(spring.DiscSpec{Outside: units.Millimetres(c.de), Inside: units.Millimetres(c.di), Thickness: units.Millimetres(c.t), ConeHeight: units.Millimetres(c.h0)}))(t)
		s := d.At(units.Millimetres(0.75 * c.h0))
		near(t, "load", s.Load.Newtons(), c.load, 0.021) // 2 %: the table is rounded to three figures, and remembered
		// whole megapascals
		for _, p := range []struct {
			what      string
			got, want float64
		}{{"II", s.II.Megapascals(), c.ii}, {"III", s.III.Megapascals(), c.iii}, {"OM", s.OM.Megapascals(), c.om}} {
			if math.Abs(p.got-p.want) > 0.51 {
				t.Errorf("De %g t %g σ%s: %.1f, want %g", c.de, c.t, p.what, p.got, p.want)
			}
		}
		near(t, "usual load", d.Figures().UsualLoad.Newtons(), s.Load.Newtons(), 1e-12)
	}
}

// The older coefficient is smaller than K1 by 0.3 % at De/Di 1.5 and 1.4 % at
// 2.5 (computed from the two printings), so loads are that much higher.
func TestOlderCoefficient(t *testing.T) {
	for _, c := range []struct{ delta, want float64 }{{1.5, 0.003}, {2.5, 0.014}} {
		in := spring.DiscSpec{Outside: units.Millimetres(50 * c.delta), Inside: 50 * mm, Thickness: 2 * mm, ConeHeight: units.Millimetres(1.5)}
		en := ok(spring.NewDisc(in))(t)
		in.Formula = spring.AlmenLaszlo
		old := ok(spring.NewDisc(in))(t)
		if got := 1 - old.Figures().K1/en.Figures().K1; math.Abs(got-c.want) > 0.0005 {
			t.Errorf("De/Di %g: %.2f %% below", c.delta, 100*got)
		}
	}
}

func anyDisc(t *rapid.T) spring.Disc {
	di := rapid.Float64Range(5, 100).Draw(t, "inside")
	delta := rapid.Float64Range(1.3, 3).Draw(t, "ratio")
	th := di * (delta - 1) * rapid.Float64Range(0.02, 0.2).Draw(t, "thickness")
	return ok(spring.NewDisc(spring.DiscSpec{
		Outside: units.Millimetres(di * delta), Inside: units.Millimetres(di), Thickness: units.Millimetres(th),
		ConeHeight: units.Millimetres(th * rapid.Float64Range(0.06, 2.9).Draw(t, "h0/t")),
	}))(t)
}

func anyCoil(t *rapid.T) spring.Helical {
	d := rapid.Float64Range(0.5, 8).Draw(t, "wire")
	n := rapid.Float64Range(2, 20).Draw(t, "coils")
	return ok(spring.NewHelical(spring.HelicalSpec{
		Wire: units.Millimetres(d), Mean: units.Millimetres(d * rapid.Float64Range(3, 20).Draw(t, "index")), Active: n,
		Ends: spring.SquaredGround, Free: units.Millimetres(d * (n + 2) * rapid.Float64Range(1.05, 3).Draw(t, "stretch")),
	}))(t)
}

// anyElement is every kind of spring there is, so that one property holds for
// all of them.
func anyElement(t *rapid.T, depth int) spring.Element {
	kinds := 7
	if depth == 0 {
		kinds = 4
	}
	switch rapid.IntRange(0, kinds-1).Draw(t, "kind") {
	case 0:
		free := rapid.Float64Range(20, 80).Draw(t, "free")
		return ok(spring.NewLinear(units.NewtonsPerMillimetre(rapid.Float64Range(1, 100).Draw(t, "rate")), units.Millimetres(free), units.Millimetres(free*rapid.Float64Range(0, 0.8).Draw(t, "least"))))(t)
	case 1:
		return anyDisc(t)
	case 2:
		return ok(spring.NewStack(anyDisc(t), rapid.IntRange(1, 4).Draw(t, "parallel"), rapid.IntRange(1, 12).Draw(t, "series")))(t)
	case 3:
		return anyCoil(t)
	case 4:
		return ok(spring.NewLevered(anyElement(t, depth-1), rapid.Float64Range(0.2, 5).Draw(t, "lever")))(t)
	case 5:
		a, b := anyElement(t, depth-1), anyElement(t, depth-1)
		gap := a.Limit().Times(rapid.Float64Range(0, 0.9).Draw(t, "gap"))
		return ok(spring.NewParallel(spring.Part{Spring: a, Count: rapid.IntRange(0, 6).Draw(t, "count")}, spring.Part{Spring: b, Gap: gap}))(t)
	}
	return ok(spring.NewSeries(anyElement(t, depth-1), anyElement(t, depth-1)))(t)
}

// On the first rising branch load and deflection are inverse, load never falls,
// and the rate is the slope of the load; beyond the travel there is no answer.
func TestElements(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := anyElement(t, 2)
		limit := e.Limit()
		if !(limit > 0) || limit > e.Travel() {
			t.Fatalf("limit %v, travel %v", limit, e.Travel())
		}
		top, in := e.Load(limit)
		if !in || !(top > 0) {
			t.Fatalf("no load at the limit")
		}
		at := rapid.Float64Range(0, 1).Draw(t, "at")
		s := limit.Times(at)
		f, in := e.Load(s)
		if !in || f < 0 || f > top.Times(1+1e-9) {
			t.Fatalf("load %v at %v, top %v", f, s, top)
		}
		s2 := limit.Times(min(1, at+0.05))
		if f2, _ := e.Load(s2); f2 < f.Times(1-1e-9)-units.Newtons(1e-9) {
			t.Fatalf("load falls from %v to %v on the rising branch", f, f2)
		}
		if f < top.Times(0.999) { // near a hump the inverse is as flat as a root
			back, in := e.Deflection(f)
			if !in {
				t.Fatalf("%v not reached, top %v", f, top)
			}
			// a load below a gap, or with all of it at zero, is first reached earlier
			g, _ := e.Load(back)
			if back > s+limit.Times(1e-6) || (g-f).Abs() > top.Times(1e-8)+units.Newtons(1e-8) {
				t.Fatalf("%v gives %v, which came back as %v giving %v", s, f, back, g)
			}
		}
		// central difference; kinks where a part joins or goes solid excepted
		h := limit.Times(1e-6)
		if s > h.Times(2) && s < limit-h.Times(2) {
			a, _ := e.Load(s - h)
			b, _ := e.Load(s + h)
			l, _ := e.RateAt(s - h)
			r, in := e.RateAt(s + h)
			slope := (b - a).Newtons() / (2 * h.Millimetres())
			lo, hi := min(l, r).NewtonsPerMillimetre(), max(l, r).NewtonsPerMillimetre()
			tol := 1e-3*math.Abs(hi) + 1e-3*top.Newtons()/limit.Millimetres()
			if !in || slope < lo-tol || slope > hi+tol {
				t.Fatalf("slope %g, rate %g to %g", slope, lo, hi)
			}
		}
		for _, out := range []units.Length{units.Millimetres(-1e-9), e.Travel().Times(1 + 1e-9), units.Millimetres(math.NaN()), units.Millimetres(math.Inf(1))} {
			if f, in := e.Load(out); in {
				t.Fatalf("load %v at %v, outside %v", f, out, e.Travel())
			}
			if r, in := e.RateAt(out); in {
				t.Fatalf("rate %v at %v", r, out)
			}
		}
		for _, out := range []units.Force{units.Newtons(-1), top.Times(1 + 1e-6), units.Newtons(math.NaN())} {
			if s, in := e.Deflection(out); in {
				t.Fatalf("deflection %v at %v of %v", s, out, top)
			}
		}
	})
}

// The inverse of a disc against bisection, through the snap region and
// right up to the hump.
func TestDiscInverseAgainstBisection(t *testing.T) { rapid.Check(t, checkDisc) }

func FuzzDisc(f *testing.F) {
	fuzzBytes(f)
	f.Fuzz(rapid.MakeFuzz(checkDisc))
}

func checkDisc(t *rapid.T) {
	d := anyDisc(t)
	top, _ := d.Load(d.Limit())
	f := top.Times(rapid.Float64Range(0, 1).Draw(t, "share"))
	got, in := d.Deflection(f)
	if !in {
		t.Fatal("not reached")
	}
	lo, hi := units.Length(0), d.Limit()
	for range 200 {
		m := (lo + hi).Times(0.5)
		if g, _ := d.Load(m); g < f {
			lo = m
		} else {
			hi = m
		}
	}
	// near the hump a load holds only half its digits of deflection
	tol := 1e-11
	if f > top.Times(1-1e-6) {
		tol = 1e-6
	}
	if (got - lo).Abs() > d.Limit().Times(tol) {
		t.Fatalf("%v at %v: newton %v, bisection %v", f, top, got, lo)
	}
}

func TestSnapLimit(t *testing.T) {
	// h0/t = √2 is where the load stops falling anywhere; 1.3 is safe, 1.5 snaps
	for _, c := range []struct {
		ratio float64
		snaps bool
	}{{1.3, false}, {1.5, true}} {
		d := ok(spring.NewDisc(spring.DiscSpec{Outside: 80 * mm, Inside: 40 * mm, Thickness: 2 * mm, ConeHeight: units.Millimetres(2 * c.ratio)}))(t)
		f := d.Figures()
		if f.Snaps != c.snaps || (d.Limit() < d.Travel()) != c.snaps {
			t.Errorf("h0/t %g: %+v", c.ratio, f)
		}
		if c.snaps {
			r, _ := d.RateAt(d.Limit())
			near(t, "rate at the hump", 1+r.NewtonsPerMillimetre()/f.LimitLoad.Newtons(), 1, 1e-12)
			if !d.At(d.Travel()).PastHump {
				t.Error("flat is not past the hump")
			}
		}
	}
}

func TestStackBand(t *testing.T) {
	d := ok(spring.NewDisc(spring.DiscSpec{Outside: 50 * mm, Inside: units.Millimetres(25.4), Thickness: 2 * mm, ConeHeight: units.Millimetres(1.4)}))(t)
	k := ok(spring.NewStack(d, 3, 4))(t)
	near(t, "height", k.Height().Millimetres(), 4*(1.4+3*2), 1e-12)
	one, _ := d.Load(1 * mm)
	all, _ := k.Load(4 * mm)
	near(t, "load", all.Newtons(), 3*one.Newtons(), 1e-12)
	in, out, err := k.Band(4*mm, spring.StackFriction{Between: 0.015, Edge: 0.03})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "pressing", in.Ratio(all), 1/(1-0.06), 1e-12)
	near(t, "opening", out.Ratio(all), 1/(1+0.06), 1e-12)
}
