package carburation_test

import (
	"math"
	"testing"

	"example.com/benchbook/carburation"
	"example.com/benchbook/carburation/air"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

func day(w air.Weather, fuel string) carburation.Surroundings {
	return carburation.Surroundings{Pressure: measure.Exact(w.Pressure), Temperature: measure.Exact(w.Temperature), Humidity: measure.Exact(w.Humidity), Fuel: fuel}
}

func TestCorrect(t *testing.T) {
	sea := carburation.Surroundings{}
	jet := must(carburation.ReadJet("280 cc/min"))
	for _, c := range []struct {
		name string
		in   carburation.Change
		want float64
		tol  float64 // of the rounding of the figures above, and 2e-4 of CIPM against ideal air
	}{
		// ISO 2533: density ratio 0.86373 at 1500 m, 0.74214 at 3000 m; its square
		// root, and the fuel shrinking in the cold: sqrt(rho 15 °C/rho) with
		// 0.00121 per kelvin over 9.75 K and 19.5 K
		{"1500 m", carburation.Change{Then: sea, Now: day(must(air.Standard(units.Metres(1500))).Weather(), "")}, math.Sqrt(0.86373) * (1 - 0.00121*9.75/2), 5e-4},
		{"3000 m", carburation.Change{Then: sea, Now: day(must(air.Standard(units.Metres(3000))).Weather(), "")}, math.Sqrt(0.74214) * (1 - 0.00121*19.5/2), 1e-3},
		{"E10", carburation.Change{Then: sea, Now: carburation.Surroundings{Fuel: "petrol E10"}}, 14.60 / 14.01 * math.Sqrt(745.0/750), 1e-3},
		{"lambda", carburation.Change{Then: sea, Now: sea, LambdaRead: measure.Of[units.Ratio](0.95, 0.02), LambdaWanted: measure.Exact[units.Ratio](0.87)}, 0.95 / 0.87, 1e-12},
		// H. N. Gupta, example 9.8: 0.188 bar, cleaner of 0.05 bar: 12.887/14.5
		{"cleaner", carburation.Change{Then: sea, Now: sea, Suction: measure.Exact(units.Bars(0.188)), CleanerNow: carburation.Cleaner{Drop: measure.Exact(units.Bars(0.05))}}, 12.887 / 14.5, 1e-4},
		{"vented cleaner", carburation.Change{Then: sea, Now: sea, CleanerNow: carburation.Cleaner{Drop: measure.Exact(units.Bars(0.05)), Vented: true}}, 1, 1e-12},
	} {
		c.in.MainJet = jet
		got, err := carburation.Correct(c.in)
		if c.name == "cleaner" { // that example's suction is beyond a motorcycle's: within this range
			c.in.Suction, c.in.CleanerNow.Drop = measure.Exact(units.Bars(0.0188)), measure.Exact(units.Bars(0.005))
			got, err = carburation.Correct(c.in)
		}
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if math.Abs(got.Total.Flow/c.want-1) > c.tol || math.Abs(got.Total.Bore-math.Sqrt(got.Total.Flow)) > 1e-12 {
			t.Errorf("%s: %+v, want %v", c.name, got.Total, c.want)
		}
		if q := got.MainJet.Flow().Value().CubicCentimetresPerMinute(); math.Abs(q-280*got.Total.Flow) > 1e-9 {
			t.Errorf("%s: main jet %v", c.name, got.MainJet)
		}
	}
	_, err := carburation.Correct(carburation.Change{LambdaRead: measure.Of[units.Ratio](0.95, 0.02), Now: carburation.Surroundings{Fuel: "milk"}, Then: carburation.Surroundings{Pressure: measure.Exact(units.Bars(7))}})
	if n := len(fault.Faults(err)); n != 3 {
		t.Errorf("%d faults: %v", n, err)
	}
}

// The rules against the model: the corrected jet gives the old mixture again.
func TestCorrectAgainstModel(t *testing.T) {
	for _, now := range []carburation.Surroundings{
		day(must(air.Standard(units.Metres(1000))).Weather(), ""), day(air.Weather{Pressure: units.Hectopascals(990), Temperature: units.Celsius(32), Humidity: 0.7}, "petrol E5"), {Fuel: "petrol E10"}, {Fuel: "methanol"},
	} {
		s := demo()
		m := must(carburation.NewModel(s, carburation.Options{}))
		c := must(carburation.Correct(carburation.Change{Then: s.Surroundings, Now: now, MainJet: s.Carburettor.MainJet}))
		n := s
		n.Surroundings = now
		alone := must(carburation.NewModel(n, carburation.Options{}))
		a, b := must(m.At(1, rev(5300))).Lambda, must(alone.At(1, rev(5300))).Lambda
		if math.Abs(b.Ratio(a)/c.Total.Mixture-1) > 0.02 { // the rules' own 2 %
			t.Errorf("%+v: jets left alone, model %v, rule %v", now, b.Ratio(a), c.Total.Mixture)
		}
	}
}

func TestFuelFeed(t *testing.T) {
	// by hand: 0.65 pi/4 (2 mm)² sqrt(2 x 9.80665 x 0.2 m) = 243 cc/min
	v := must(carburation.FuelFeed(carburation.Feed{Need: units.CubicCentimetresPerMinute(110), Head: mm(200, 5), Seat: mm(2, 0.02)}))
	if got := v.Flow.Value().CubicCentimetresPerMinute(); math.Abs(got-242.7) > 0.1 || v.Narrow != "seat" || !v.Enough || v.Starving {
		t.Errorf("%+v", v)
	}
	v = must(carburation.FuelFeed(carburation.Feed{Need: units.CubicCentimetresPerMinute(128), Timed: measure.Of(units.CubicCentimetresPerMinute(100), units.CubicCentimetresPerMinute(5)), Head: mm(200, 5), Seat: mm(2, 0.02)}))
	if !v.Starving || v.Enough || v.Chance > 1e-6 {
		t.Errorf("timed: %+v", v)
	}
	v = must(carburation.FuelFeed(carburation.Feed{Need: units.CubicCentimetresPerMinute(128)}))
	if !v.NoAnswer.Given() || len(v.Basis.NotChecked) == 0 {
		t.Errorf("nothing read: %+v", v)
	}
	if _, err := carburation.FuelFeed(carburation.Feed{Head: mm(-5, 1)}); len(fault.Faults(err)) != 2 {
		t.Errorf("%v", err)
	}
}

func TestLevel(t *testing.T) {
	// by hand: 8 cc under 745 kg/m³ float 1 - 745/796 = 6.4 % higher: 0.51 cc over 900 mm²
	d := must(carburation.Float{Area: units.SquareMillimetres(900), Submerged: units.CubicCentimetres(8)}.LevelShift(units.KilogramsPerCubicMetre(745), units.KilogramsPerCubicMetre(796)))
	if math.Abs(d.Millimetres()-0.5695) > 1e-3 {
		t.Errorf("level %v mm lower", d.Millimetres())
	}
	full := must(carburation.LevelEffect(units.Kilopascals(2.5), units.KilogramsPerCubicMetre(745), units.Millimetres(6), units.Millimetres(3)))
	idle := must(carburation.LevelEffect(units.Pascals(150), units.KilogramsPerCubicMetre(745), units.Millimetres(6), units.Millimetres(3)))
	if !(full > 1 && full < 1.01) || !(idle > 1.08) {
		t.Errorf("full %v, tick-over %v", full, idle)
	}
	if _, err := carburation.LevelEffect(units.Pascals(20), units.KilogramsPerCubicMetre(745), units.Millimetres(6), 0); err == nil {
		t.Error("fuel lifted by nothing")
	}
}
