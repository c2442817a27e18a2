package drive_test

import (
	"encoding/json"
	"math"
	"testing"

	"example.com/benchbook/transmission/drive"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
	"pgregory.net/rapid"
)

// Çengel & Cimbala, Fluid Mechanics, 2nd ed. 2010, ex. 11-1: 300 N on 2.07 m² at
// 95 km/h is a drag coefficient of 0.35 (printed to two figures).
func TestDragCoefficient(t *testing.T) {
	a := ok(drive.DragAreaFrom(units.Newtons(300), units.KilogramsPerCubicMetre(1.204), units.KilometresPerHour(95)))(t)
	near(t, "Cd", a.Ratio(units.SquareMetres(2.07)), 0.35, 0.02)
}

// Khurmi & Gupta, Theory of Machines, 2009, ex. 3.15: 1500 kg up a slope of sine
// 0.25 against 300 N more; the book rounds the ratio to 22 and goes on from there.
func TestBestPull(t *testing.T) {
	in := drive.PullAway{
		Torque: units.NewtonMetres(200), Mass: units.Kilograms(1500), Resistance: units.Newtons(300 + 1500*9.81*0.25), Radius: units.Metres(0.3),
		Efficiency: 0.85, WheelsKilogramSquareMetres: 8, EngineKilogramSquareMetres: 1,
	}
	best := ok(drive.BestPull(in))(t)
	if r := math.Round(best.Overall); r != 22 {
		t.Errorf("ratio %.3f", best.Overall)
	}
	at := ok(in.Pull(22))(t)
	near(t, "acceleration", at.Acceleration.MetresPerSecondSquared(), 1.38, 3e-3)
	engine := units.KilometresPerHour(24).MetresPerSecond() / 0.3 * 22
	near(t, "engine, rad/s", engine, 489, 1e-3)
	near(t, "power, kW", engine*200/1000, 97.8, 1e-3)
}

// No other ratio pulls harder.
func TestBestPullIsBest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		in := drive.PullAway{
			Torque: units.NewtonMetres(f("torque", 10, 60)), Mass: units.Kilograms(f("mass", 150, 500)), Resistance: units.Newtons(f("resistance", 0, 800)),
			Radius: units.Metres(f("radius", 0.25, 0.35)), Efficiency: f("efficiency", 0.7, 1), WheelsKilogramSquareMetres: f("wheels", 0, 2), EngineKilogramSquareMetres: f("engine", 0.01, 0.3),
		}
		best := ok(drive.BestPull(in))(t)
		for _, k := range []float64{0.5, 0.99, 1.01, 2} {
			if a := ok(in.Pull(best.Overall * k))(t); a.Acceleration > best.Acceleration {
				t.Fatalf("%.3f pulls %.5f, %.3f pulls %.5f", best.Overall, best.Acceleration.MetresPerSecondSquared(), a.Overall, a.Acceleration.MetresPerSecondSquared())
			}
		}
	})
}

// UN Regulation 39, clause 5.3, with pairs of values printed in the press for an
// allowance of 4 km/h.
func TestGreatestIndicated(t *testing.T) {
	for v, want := range map[float64]float64{50: 59, 70: 81, 90: 103, 110: 125, 130: 147} {
		got := ok(drive.GreatestIndicated(units.KilometresPerHour(v), units.KilometresPerHour(4)))(t)
		near(t, "greatest", got.KilometresPerHour(), want, 1e-9)
	}
}

// A head of 1000 turns a mile shows 60 mile/h at 1000 rev/min of its cable: at a
// true 60 mile/h a drive that gives 1000 turns a mile reads true.
func TestSpeedometer(t *testing.T) {
	rolling := measure.Of(units.Millimetres(1975), units.Millimetres(20))
	want := ok(drive.SpeedometerDrive(rolling, 1600))(t)
	near(t, "drive wanted", want.Value().SI(), 1600*1975/1609344.0, 1e-12)
	s := ok(drive.ReadSpeedometer(drive.SpeedometerInput{Rolling: rolling, Drive: ok(drive.NewRatio(2, 1))(t), TurnsAMile: 1600}))(t)
	near(t, "factor", s.Factor.Value().SI(), 1609344.0/1975*2/1600, 1e-12)
	// the slope of 1/U is taken over ± u, which is good to (u/U)² = 1e-4
	near(t, "its uncertainty", s.Factor.U().Ratio(s.Factor.Value()), 20.0/1975, 2e-4)
	near(t, "drive to read true", s.DriveWanted, want.Value().SI(), 1e-12)
	if s.ReadsLow || len(s.At) != 8 {
		t.Errorf("%+v", s)
	}
	// from the gearbox: the final drive comes in
	g := ok(drive.ReadSpeedometer(drive.SpeedometerInput{Rolling: rolling, Drive: ok(drive.NewRatio(8, 11))(t), FromGearbox: drive.Train{{18, 46}}, TurnsAKilometre: 1000}))(t)
	near(t, "turns a mile", g.CableTurnsAMile.Value().SI(), 1609344.0/1975*8/11*46/18, 1e-12)
	near(t, "head", g.HeadTurnsAMile, 1609.344, 1e-12)
	if _, err := json.Marshal(g); err != nil {
		t.Error(err)
	}
}

func solo() drive.Road { return drive.Road{Mass: measure.Of(units.Kilograms(245), units.Kilograms(5))} }

// At top speed the power is used up, by the load reckoned apart from it; and
// what was assumed is said.
func TestTopSpeedBalances(t *testing.T) { rapid.Check(t, checkTopSpeed) }

func FuzzTopSpeed(f *testing.F) {
	fuzzBytes(f)
	f.Fuzz(rapid.MakeFuzz(checkTopSpeed))
}

func checkTopSpeed(t *rapid.T) {
	r := drive.Road{
		Mass: measure.Exact(units.Kilograms(rapid.Float64Range(120, 500).Draw(t, "mass"))), Climb: rapid.Float64Range(-0.1, 0.2).Draw(t, "climb"),
		Headwind: units.MetresPerSecond(rapid.Float64Range(-10, 15).Draw(t, "wind")), Sidecar: rapid.Bool().Draw(t, "sidecar"),
	}
	if rapid.Bool().Draw(t, "by pressure") {
		r.Pressure = units.Bars(1.8)
	}
	p := units.Kilowatts(rapid.Float64Range(1, 40).Draw(t, "power"))
	top := ok(drive.TopSpeed(r, measure.Exact(p)))(t)
	if top.Reason.Given() {
		t.Fatal(top.Reason)
	}
	need := ok(drive.RoadLoad(r, top.Speed.Value()))(t)
	if math.Abs(need.Power.Value().Ratio(p)-1) > 1e-8 {
		t.Fatalf("%v at %v of %v", need.Power, top.Speed, p)
	}
	if len(top.Basis.Assumed) < 3 || !(top.Speed.U() > 0) {
		t.Fatalf("assumed %v, u %v", top.Basis.Assumed, top.Speed.U())
	}
}

// On the level with still air the cubic has a closed root (Cardano).
func TestTopSpeedAgainstCardano(t *testing.T) {
	r := solo()
	r.DragArea, r.Rolling, r.Efficiency = measure.Exact(units.SquareMetres(0.5)), measure.Exact(units.Value(0.02)), measure.Exact(units.Value(0.9))
	top := ok(drive.TopSpeed(r, measure.Exact(units.Kilowatts(16))))(t)
	a, b, c := 0.5*1.225*0.5, 245*9.80665*0.02, -0.9*16000
	p, q := b/a, c/a
	d := math.Sqrt(q*q/4 + p*p*p/27)
	near(t, "speed", top.Speed.Value().MetresPerSecond(), math.Cbrt(-q/2+d)+math.Cbrt(-q/2-d), 1e-9)
}

func demoCurve(t failer) drive.Curve {
	rpm, kw := units.RevolutionsPerMinute, units.Kilowatts
	return ok(drive.NewCurve(
		drive.PowerPoint{rpm(2000), kw(6)}, drive.PowerPoint{rpm(3000), kw(10)}, drive.PowerPoint{rpm(4000), kw(14)},
		drive.PowerPoint{rpm(5000), kw(16.8)}, drive.PowerPoint{rpm(5500), kw(17)}, drive.PowerPoint{rpm(6000), kw(16)}))(t)
}

// In each gear the fastest is the last engine speed at which power still covers
// the load, found here by walking down the whole curve.
func TestInGearsAgainstWalking(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		line, c := demo(t), demoCurve(t)
		r := solo()
		r.Climb = rapid.Float64Range(-0.05, 0.25).Draw(t, "climb")
		r.Headwind = units.MetresPerSecond(rapid.Float64Range(-5, 15).Draw(t, "wind"))
		tops := ok(drive.InGears(line, c, r))(t)
		for _, g := range tops.Gears {
			want := 0.0
			for n := 6000.0; n >= 2000; n -= 5 {
				v := ok(line.SpeedAt(g.Gear, units.RevolutionsPerMinute(n)))(t).Value()
				p, _ := c.At(units.RevolutionsPerMinute(n))
				if need := ok(drive.RoadLoad(r, v))(t).Power.Value(); p >= need {
					want = n
					break
				}
			}
			got := g.Engine.RevolutionsPerMinute()
			if math.Abs(got-want) > 5.01 {
				t.Fatalf("gear %s: %.1f rev/min, walking %.0f", g.Gear, got, want)
			}
			if g.Reason.Given() != (want == 0) || (g.Limit == "engine speed") != (want == 6000) {
				t.Fatalf("%+v, walking %.0f", g, want)
			}
		}
	})
}

// The gearing that suits puts peak power at top speed, and a sidecar's is lower.
func TestSuit(t *testing.T) {
	in := drive.SuitInput{
		Line: demo(t), Peak: measure.Of(units.Kilowatts(17), units.Kilowatts(0.5)), PeakAt: units.RevolutionsPerMinute(5500), Road: solo(),
		Choice: drive.SprocketChoice{FrontLeast: 15, FrontMost: 20, RearLeast: 42, RearMost: 50},
	}
	one := ok(drive.Suit(in, drive.SuitOptions{}))(t)
	v := one.Top.Speed.Value().MetresPerSecond()
	near(t, "fastest", one.Fastest.Value().SI(), 5500.0/60*1.975/v, 1e-9)
	near(t, "engine at top", one.Options[0].EngineAtTop.RevolutionsPerMinute(), 5500*(1+one.Options[0].Off), 1e-9)
	if math.Abs(one.Options[0].Off) > 0.01 || len(one.Options) != 6 {
		t.Errorf("%+v", one.Options)
	}
	in.Road.Sidecar, in.Road.Mass = true, measure.Of(units.Kilograms(370), units.Kilograms(10))
	two := ok(drive.Suit(in, drive.SuitOptions{}))(t)
	c := drive.Compare(one, two)
	near(t, "lower", c.Lower, two.Fastest.Value().Ratio(one.Fastest.Value())-1, 1e-12)
	if c.Lower < 0.1 || c.Lower > 0.4 {
		t.Errorf("sidecar %.1f %% lower", 100*c.Lower)
	}
	tall := ok(drive.Suit(in, drive.SuitOptions{Taller: 0.05, Most: 1}))(t)
	near(t, "taller", tall.Aim, 0.95*two.Aim, 1e-12)
	if _, err := json.Marshal(tall); err != nil {
		t.Error(err)
	}
}

func TestRoadFaultsAreGathered(t *testing.T) {
	_, err := drive.TopSpeed(drive.Road{Climb: 2, Headwind: units.MetresPerSecond(math.NaN()), Density: units.KilogramsPerCubicMetre(-1)}, measure.Reading[units.Power]{})
	if n := len(fault.Faults(err)); n != 5 {
		t.Errorf("%d faults: %v", n, err)
	}
	if _, err := drive.InGears(drive.Line{}, drive.Curve{}, drive.Road{}); len(fault.Faults(err)) != 4 {
		t.Error(err)
	}
}

func TestRollingAt(t *testing.T) {
	// the law's own figures at 2 bar and 100 km/h (from memory)
	near(t, "cr", ok(drive.RollingAt(units.Bars(2), units.KilometresPerHour(100)))(t).SI(), 0.0085+0.009+0.00795, 1e-12)
}
