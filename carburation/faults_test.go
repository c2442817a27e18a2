package carburation_test

import (
	"math"
	"testing"

	"example.com/benchbook/carburation"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

func failed[T any](_ T, err error) error { return err }

// Every formula refuses what cannot be, all at once, with a rule for each.
func TestFormulasRefuse(t *testing.T) {
	nan := math.NaN()
	choke := carburation.Choke{Area: units.SquareMillimetres(500), Coefficient: 0.8, Pressure: units.Bars(1), Temperature: units.Celsius(15)}
	bad := choke
	bad.Coefficient, bad.Temperature, bad.Gas = 7, 0, carburation.Gas{RJoulesPerKilogramKelvin: 1}
	for name, c := range map[string]struct {
		err    error
		faults int
	}{
		"intake":             {failed(carburation.Intake{Vapour: units.KilogramsPerCubicMetre(3)}.Flow()), 5},
		"efficiency":         {failed(carburation.Intake{}.EfficiencyFrom(0)), 4},
		"choke":              {failed(bad.At(units.Bars(2))), 4},
		"choke above":        {failed(choke.At(units.Bars(1.1))), 1},
		"choke flow":         {failed(choke.For(units.KilogramsPerSecond(9))), 1},
		"choke speed":        {failed(choke.Size(units.KilogramsPerSecond(0.02), units.MetresPerSecond(600), carburation.OnArea)), 1},
		"choke convention":   {failed(choke.Size(0, 0, 9)), 3},
		"suction":            {failed(carburation.Suction(-1, 0, 0, 0)), 4},
		"choke area":         {failed(carburation.ChokeArea(0, 0, 0, 0)), 4},
		"suction at speed":   {failed(carburation.SuctionAtSpeed(units.MetresPerSecond(nan), 0, 2)), 3},
		"expansibility":      {failed(carburation.Expansibility(0.9, 0.5, 9)), 3},
		"jet not known":      {carburation.FlowJet(measure.Of(units.CubicCentimetresPerMinute(139), units.CubicCentimetresPerMinute(1e9)), measure.Reading[units.Length]{}).Err(), 1},
		"air speed":          {failed(carburation.AirSpeed(1, 0, 0)), 2},
		"circle":             {failed(carburation.CircleDiameter(units.SquareMetres(-1))), 1},
		"choke diameter":     {failed(carburation.ChokeDiameter(units.SquareMetres(nan), 1)), 2},
		"reynolds":           {failed(carburation.Reynolds(1, 0, 0)), 2},
		"choke constant":     {failed(carburation.Gas{Gamma: 0.5}.ChokeConstant()), 1},
		"critical ratio":     {failed(carburation.Gas{Gamma: -1}.CriticalRatio()), 1},
		"lip":                {failed(carburation.Orifice{Lip: units.Millimetres(nan)}.LipPressure(0)), 2},
		"orifice":            {failed(carburation.Orifice{Gravity: units.MetresPerSecondSquared(20), Lip: units.Metres(9)}.Flow(units.Pascals(nan), 0)), 6},
		"orifice suction":    {failed(carburation.Orifice{}.Suction(units.KilogramsPerSecond(-1), 0)), 4},
		"orifice size":       {failed(carburation.Orifice{Coefficient: 0.7, Lip: 10 * units.Millimetre}.Size(units.GramsPerSecond(1), units.Pascals(10), units.KilogramsPerCubicMetre(745))), 1},
		"start below":        {failed(carburation.Orifice{Lip: -units.Millimetre}.StartingSpeed(0, 0, 0)), 4},
		"plain jet":          {failed(carburation.PlainJet{Expansibility: 2}.Mixture(units.Pascals(100))), 7},
		"plain jet, no fuel": {failed(carburation.PlainJet{ChokeArea: units.SquareMillimetres(300), ChokeCoefficient: 0.8, Air: units.KilogramsPerCubicMetre(1.2), Fuel: units.KilogramsPerCubicMetre(750), Jet: carburation.Orifice{Area: units.SquareMillimetres(1), Coefficient: 0.7, Lip: units.Millimetres(9)}}.Mixture(units.Pascals(20))), 1},
		"jet over choke":     {failed(carburation.PlainJet{}.JetOverChoke(0)), 5},
		"cleaner":            {failed(carburation.CleanerMixture(0, 0, -1)), 3},
		"coefficient":        {failed(carburation.ParallelBore(1, 99)), 2},
		"emptying":           {failed(carburation.EmptyingTime(0, 0, 0, units.Metres(1), units.Metres(2))), 4},
		"flow at":            {failed(carburation.FlowAt(measure.Reading[units.Area]{}, measure.Of(units.Metres(-1), units.Metres(0.1)))), 1},
		"emulsion":           {failed(carburation.Emulsion{}.Draw(0)), 6},
		"jet":                {failed(carburation.Jet{}.Size(carburation.JetOptions{Head: measure.Exact(units.Metres(99)), LengthOverBore: 1, Spread: 2, Viscosity: units.SquareMetresPerSecond(1)})), 5},
		"cutaway scale":      {failed(carburation.CutawayOf(3, 0)), 1},
		"cutaway number":     {failed(carburation.CutawayOf(300, carburation.Sixteenths)), 1},
		"level shift":        {failed(carburation.Float{}.LevelShift(0, 0)), 4},
		"level effect":       {failed(carburation.LevelEffect(0, 0, units.Metres(1), units.Metres(1))), 4},
	} {
		got := fault.Faults(c.err)
		if len(got) != c.faults {
			t.Errorf("%s: %d faults, want %d: %v", name, len(got), c.faults, c.err)
		}
		for _, f := range got {
			if f.Rule == "" || f.Path == "" || f.Code == "" {
				t.Errorf("%s: %+v", name, f)
			}
		}
	}
}

// The choke's two ways agree, and it chokes where the critical ratio says.
func TestChokeBothWays(t *testing.T) {
	c := carburation.Choke{Area: units.SquareMillimetres(600), Coefficient: 0.85, Pressure: units.Bars(1.013), Temperature: units.Celsius(15)}
	for _, suction := range []float64{10, 500, 5000, 20000, 45000} {
		th := must(c.At(units.Bars(1.013) - units.Pascals(suction)))
		back := must(c.For(th.Flow))
		if math.Abs(back.Suction.Pascals()/suction-1) > 1e-6 { // flow is flat near choking: sqrt of rounding
			t.Errorf("%v Pa comes back as %v", suction, back.Suction)
		}
		e := must(carburation.Expansibility(0, math.Max(0.75, th.PressureRatio), 1.4))
		if th.PressureRatio >= 0.75 && math.Abs(th.Expansibility/e-1) > 1e-9 {
			t.Errorf("%v Pa: expansibility %v, ISO 5167 form %v", suction, th.Expansibility, e)
		}
	}
	deep := must(c.At(units.Bars(0.3)))
	if !deep.Choked || math.Abs(deep.PressureRatio-0.5283) > 5e-5 { // 0.528 in every text
		t.Errorf("%+v", deep)
	}
	// speed of sound at the throat: sqrt(2 cp T1/(...)) = sqrt(gamma R T2), T2 = T1/1.2
	if want := math.Sqrt(1.4 * 287.05 * 288.15 / 1.2); math.Abs(deep.Speed.MetresPerSecond()/want-1) > 1e-9 {
		t.Errorf("throat at %v, sound %v", deep.Speed, want)
	}
}
