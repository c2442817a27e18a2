package ignition_test

import (
	"math"
	"testing"

	"example.com/benchbook/timing/crank"
	"example.com/benchbook/timing/gear"
	"example.com/benchbook/timing/ignition"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
	"pgregory.net/rapid"
)

// A mark on a rim is its arc over the radius, before TDC; the doubts of both lengths
// add as parts. 50 mm of arc on a rim of 180 mm is 5/9 of a radian.
func TestRimToDegrees(t *testing.T) {
	w := ignition.Where{Rim: measure.Of(units.Millimetres(50), units.Millimetres(0.05))}
	g := ignition.Gauges{RimDiameter: measure.Of(units.Millimetres(180), units.Millimetres(0.18)), Slider: slider()}
	got, err := w.Locate(g)
	want := 5.0 / 9 * 180 / math.Pi
	if err != nil || math.Abs(got.At.Value().Before().Degrees()-want) > 1e-9 || math.Abs(got.At.U().Degrees()/(want*0.001*math.Sqrt2)-1) > 1e-5 { // of first order
		t.Errorf("%v, want %v, %v", got.At, want, err)
	}
	// The travel there, by the slider-crank written out.
	r, l := 41.5, 165.0
	sin, cos := math.Sincos(5.0 / 9)
	if x := r*(1-cos) + l - math.Sqrt(l*l-r*r*sin*sin); math.Abs(got.Travel.Millimetres()-x) > 1e-9 {
		t.Errorf("travel %v, want %v", got.Travel, x)
	}
	g.Slider = crank.Slider{}
	if got, err := w.Locate(g); err != nil || got.Travel != 0 {
		t.Errorf("no slider: %v, %v", got.Travel, err)
	}
	exact := ignition.Where{Rim: measure.Exact(units.Millimetres(50))}
	if got, err := exact.Locate(ignition.Gauges{RimDiameter: measure.Exact(180 * units.Millimetre)}); err != nil || got.At.Err() != nil || got.At.U() > 0.01 {
		t.Errorf("declared exact: %v, %v", got.At, err)
	}
}

// Degrees to travel where the rod is not known: throws over rod halfway between 0.22
// and 0.30 are taken, whether stroke or throw was given.
func TestTravelWithoutARod(t *testing.T) {
	const r, l = 41.5, 41.5 / 0.26
	sin, cos := math.Sincos(38 * math.Pi / 180)
	x := r*(1-cos) + l - math.Sqrt(l*l-r*r*sin*sin)
	rim := ignition.Where{Rim: measure.Of(units.Millimetres(38*math.Pi/180*90), units.Millimetres(0.5))}
	for _, s := range []crank.Slider{{Stroke: 83}, {Throw: units.Millimetres(41.5)}} {
		g := ignition.Gauges{Slider: s, RimDiameter: measure.Exact(180 * units.Millimetre)}
		for _, w := range []ignition.Where{at("38 BTDC"), rim} {
			got, err := w.Locate(g)
			if err != nil || math.Abs(got.Travel.Millimetres()-x) > 1e-9 {
				t.Errorf("%v of %+v: %v, want %v, %v", w, s, got.Travel, x, err)
			}
		}
		back, err := ignition.Where{Travel: measure.Exact(units.Millimetres(x))}.Locate(g)
		if err != nil || math.Abs(back.At.Value().Before().Degrees()-38) > 1e-9 || len(back.Basis.Assumed) != 1 {
			t.Errorf("%+v: back to %v, %v", s, back.At, err)
		}
		// Rods from 0.22 to 0.30 alike: half their distance over the root of three.
		long, short := s, s
		long.Rod, short.Rod = units.Millimetres(r/0.22), units.Millimetres(r/0.30)
		a, _ := long.Positions(units.Millimetres(x))
		b, _ := short.Positions(units.Millimetres(x))
		if u := (a.Before.Before() - b.Before.Before()).Abs().Degrees() / 2 / math.Sqrt(3); math.Abs(back.At.U().Degrees()/u-1) > 1e-9 {
			t.Errorf("%+v: u %v, want %v", s, back.At.U(), u)
		}
	}
	// A slider that is none gives no travel, and is no fault where degrees were given.
	if got, err := at("38 BTDC").Locate(ignition.Gauges{Slider: crank.Slider{Stroke: 83, Rod: 20}}); err != nil || got.Travel != 0 {
		t.Errorf("%v, %v", got.Travel, err)
	}
	if got, err := rim.Locate(ignition.Gauges{Slider: crank.Slider{Stroke: 83, Rod: 20}, RimDiameter: measure.Exact(180 * units.Millimetre)}); err != nil || got.Travel != 0 {
		t.Errorf("%v, %v", got.Travel, err)
	}
}

// A gauge's doubt about a travel becomes the half-width of the places it allows, held
// inside the stroke, also of a crank given by its throw.
func TestTravelDoubtStaysInTheStroke(t *testing.T) {
	s := crank.Slider{Throw: 40, Rod: 160, Offset: 3}
	dc, _ := s.DeadCentres()
	place := func(x units.Length) float64 {
		p, err := s.Positions(x)
		if err != nil {
			t.Fatal(err)
		}
		return p.Before.Before().Degrees()
	}
	u := units.Millimetres(0.5)
	for _, x := range []units.Length{units.Millimetres(0.2), 20, dc.Stroke - units.Millimetres(0.2)} {
		got, err := ignition.Where{Travel: measure.Of(x, u)}.Locate(ignition.Gauges{Slider: s})
		want := (place(min(x+u, dc.Stroke)) - place(max(x-u, 0))) / 2
		if err != nil || math.Abs(got.At.U().Degrees()-want) > 1e-9 {
			t.Errorf("%v: u %v, want %v, %v", x, got.At.U(), want, err)
		}
	}
}

// Half a turn of the shaft against sparks counted round the cycle one by one.
func TestHalfTurnByCounting(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sparks := rapid.IntRange(1, 64).Draw(t, "sparks a turn")
		cycle := rapid.IntRange(1, 12).Draw(t, "sparks a cycle") // in two turns of the crank
		d := ignition.Drive{Ratio: gear.NewRational(int64(cycle), 2*int64(sparks)), Sparks: sparks}
		if err := d.Err(); err != nil {
			t.Fatal(err)
		}
		if got := d.Period().Degrees(); got != 720/float64(cycle) {
			t.Fatalf("period %v", got)
		}
		h, err := d.HalfTurn()
		if err != nil {
			t.Fatal(err)
		}
		// Half a turn of the shaft is so many degrees of the crank; the nearest spark.
		moved := 180 * 2 * float64(sparks) / float64(cycle)
		least := math.Inf(1)
		for k := -1; k <= sparks+1; k++ {
			least = min(least, math.Abs(moved-720/float64(cycle)*float64(k)))
		}
		if math.Abs(h.Shift.Abs().Degrees()-least) > 1e-9 || h.Harmless != (least < 1e-9) || h.OnOverlap != (math.Abs(least-360) < 1e-9) {
			t.Fatalf("%+v, the nearest spark is %v° away", h, least)
		}
	})
}

// DriveOf is the train's own ratio, whichever way it turns.
func TestDriveOfAnyTrain(t *testing.T) {
	for _, c := range []struct {
		train gear.Train
		want  ignition.Drive
	}{{gear.Simple(20, 20), ignition.EngineSpeed()}, {gear.Simple(20, 40), ignition.HalfSpeed()}, {gear.Simple(20, 30, 40), ignition.HalfSpeed()}} {
		if d, err := ignition.DriveOf(c.train); err != nil || d != c.want {
			t.Errorf("%v: %+v, %v", c.train, d, err)
		}
	}
}
