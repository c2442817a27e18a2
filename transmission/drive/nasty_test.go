package drive_test

import (
	"encoding/json"
	"math"
	"testing"

	"example.com/benchbook/transmission/drive"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
	"pgregory.net/rapid"
)

// anyFigure is what a front end may pass by mistake.
var anyFigure = rapid.OneOf(rapid.Float64Range(-5, 100), rapid.Float64(), rapid.SampledFrom([]float64{0, 1, math.NaN(), math.Inf(1), math.Inf(-1), 5e-324, 1e308}))

// Nothing that can be passed makes a panic or an answer that is not a number.
func TestNothingBreaks(t *testing.T) {
	sane := func(t *rapid.T, what string, v any, err error) {
		if err != nil {
			return
		}
		if _, err := json.Marshal(v); err != nil {
			t.Fatalf("%s: %v: %+v", what, err, v)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		x := func(name string) float64 { return anyFigure.Draw(t, name) }
		z := rapid.OneOf(rapid.IntRange(4, 90), rapid.IntRange(-3, 2000))
		length := func(name string) units.Length { return units.Millimetres(x(name)) }
		pair := func(name string) drive.Pair {
			return drive.Pair{Driver: z.Draw(t, name+" driver"), Driven: z.Draw(t, name+" driven")}
		}
		line := drive.Line{Primary: drive.Train{pair("primary")}, Final: drive.Train{pair("final")}, Rolling: measure.Of(units.Millimetres(x("U")), units.Millimetres(x("u")))}
		if b, err := drive.NewLayshaft(drive.Layshaft{Constant: pair("constant"), Indirect: []drive.Mesh{{Pair: pair("first")}, {Pair: pair("second")}}, Direct: "top"}); err == nil {
			line.Box = b
		}
		tab, err := line.Table(drive.TableOptions{ChangeAt: units.RevolutionsPerMinute(x("change")), At: units.MetresPerSecond(x("at"))})
		sane(t, "table", tab, err)
		saw, err := line.Sawtooth(units.RevolutionsPerMinute(x("saw")))
		sane(t, "sawtooth", saw, err)

		s := drive.Sprockets{Pitch: length("pitch"), Front: z.Draw(t, "front"), Rear: z.Draw(t, "rear")}
		m := drive.Method(rapid.IntRange(0, 2).Draw(t, "method"))
		run, err := drive.ChainLength(s, length("centre"), m)
		sane(t, "length", run, err)
		run, err = drive.CentreFor(s, x("pitches"), m)
		sane(t, "centre", run, err)
		short := length("short")
		fits, err := drive.FitChain(s, short, short+units.Millimetres(math.Mod(x("adjuster"), 100)), drive.FitOptions{Method: m})
		sane(t, "fit", fits, err)
		pull, err := drive.ChainPull(drive.PullInput{Pitch: s.Pitch, Teeth: s.Front, Speed: units.RevolutionsPerMinute(x("n")), Power: units.Watts(x("P")), Strength: units.Newtons(x("FB")), MassPerMetre: units.Kilograms(x("q"))})
		sane(t, "pull", pull, err)
		wear, err := drive.ChainWear(measure.Of(length("L"), length("uL")), z.Draw(t, "over"), s.Pitch, drive.WearOptions{})
		sane(t, "wear", wear, err)

		road := drive.Road{Mass: measure.Of(units.Kilograms(x("mass")), units.Kilograms(x("um"))), Climb: x("climb"), Headwind: units.MetresPerSecond(x("wind")), Pressure: units.Bars(x("bar")), Density: units.KilogramsPerCubicMetre(x("rho"))}
		load, err := drive.RoadLoad(road, units.MetresPerSecond(x("v")))
		sane(t, "load", load, err)
		top, err := drive.TopSpeed(road, measure.Of(units.Watts(x("power")), units.Watts(x("up"))))
		sane(t, "top", top, err)
		curve, err := drive.NewCurve(drive.PowerPoint{units.RevolutionsPerMinute(x("n1")), units.Watts(x("P1"))}, drive.PowerPoint{units.RevolutionsPerMinute(x("n2")), units.Watts(x("P2"))})
		sane(t, "curve", curve, err)
		tops, err := drive.InGears(line, curve, road)
		sane(t, "tops", tops, err)
		suit, err := drive.Suit(drive.SuitInput{Line: line, Peak: measure.Of(units.Watts(x("peak")), units.Watts(10)), PeakAt: units.RevolutionsPerMinute(x("peak at")), Road: road, Choice: drive.SprocketChoice{FrontLeast: s.Front, RearLeast: s.Rear}}, drive.SuitOptions{Taller: x("taller")})
		sane(t, "suit", suit, err)
		coast, err := drive.CoastDown(drive.CoastInput{Mass: road.Mass, Runs: []drive.Coast{
			{From: units.MetresPerSecond(x("a")), To: units.MetresPerSecond(x("b")), Time: measure.Of(units.Seconds(x("t1")), units.Seconds(x("u1")))},
			{From: units.MetresPerSecond(x("c")), To: units.MetresPerSecond(x("d")), Time: measure.Of(units.Seconds(x("t2")), units.Seconds(x("u2")))},
		}}, drive.CoastOptions{})
		sane(t, "coast", coast, err)
		best, err := drive.BestPull(drive.PullAway{Torque: units.NewtonMetres(x("T")), Mass: units.Kilograms(x("M")), Resistance: units.Newtons(x("R")), Radius: length("r"), Efficiency: x("eta"), WheelsKilogramSquareMetres: x("Iw"), EngineKilogramSquareMetres: x("Ie")})
		sane(t, "pull away", best, err)
		r, _ := drive.NewRatio(2, 1)
		speedo, err := drive.ReadSpeedometer(drive.SpeedometerInput{Rolling: line.Rolling, Drive: r, TurnsAMile: x("turns")})
		sane(t, "speedometer", speedo, err)
	})
}

// The same with figures that are sound one by one, so that the sums are reached.
func TestSoundFiguresAnswer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		road := drive.Road{Mass: measure.Of(units.Kilograms(x("mass", 1, 5000)), units.Kilograms(x("um", 0.01, 0.9))), Climb: x("climb", -0.5, 0.5), Headwind: units.MetresPerSecond(x("wind", -40, 40))}
		top, err := drive.TopSpeed(road, measure.Of(units.Watts(x("power", 1, 1e5)), units.Watts(x("up", 0.01, 0.9))))
		if err != nil {
			t.Fatal(err)
		}
		if _, err := json.Marshal(top); err != nil {
			t.Fatal(err)
		}
		in := drive.CoastInput{Mass: road.Mass}
		v := []float64{x("v0", 20, 40), 0, 0, 0}
		for i := 1; i < 4; i++ {
			v[i] = v[i-1] * x("part", 0.3, 0.95)
			sec := x("t", 0.1, 60)
			in.Runs = append(in.Runs, drive.Coast{From: units.MetresPerSecond(v[i-1]), To: units.MetresPerSecond(v[i]), Time: measure.Of(units.Seconds(sec), units.Seconds(sec*x("u", 0.01, 0.5)))})
		}
		c, err := drive.CoastDown(in, drive.CoastOptions{})
		if err != nil {
			t.Fatal(err)
		}
		if _, err := json.Marshal(c); err != nil {
			t.Fatal(err)
		}
	})
}

// A distance so exactly read that its part of a turn has no uncertainty left is
// refused, not passed on as a reading that is not one.
func TestRollOutDenormal(t *testing.T) {
	r, err := drive.RollOut(measure.Of(20*units.Kilometre, units.Metres(5e-324)), 10_000)
	if err == nil || r.Taken() {
		t.Errorf("%v, %v", r, err)
	}
}
