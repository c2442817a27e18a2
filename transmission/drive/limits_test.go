package drive_test

import (
	"testing"

	"example.com/benchbook/transmission/drive"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// only keeps the error of a call.
func only[T any](_ T, err error) error { return err }

// limit is a call that is taken at one figure and refused, with one fault at the
// path, just past it.
type limit struct {
	name        string
	call        func(x float64) error
	taken, past float64
	path        string
	code        fault.Code
}

func checkLimits(t *testing.T, all []limit) {
	t.Helper()
	for _, c := range all {
		if err := c.call(c.taken); err != nil {
			t.Errorf("%s: %v is refused: %v", c.name, c.taken, err)
		}
		faults := fault.Faults(c.call(c.past))
		if len(faults) != 1 || faults[0].Path != c.path || faults[0].Code != c.code {
			t.Errorf("%s: %v, want one fault %s at %s: %v", c.name, c.past, c.code, c.path, faults)
		}
	}
}

func millimetres(x, u float64) measure.Reading[units.Length] {
	return measure.Of(units.Millimetres(x), units.Millimetres(u))
}

// What the doc comments allow is taken at the very limit.
func TestLimitsOfChains(t *testing.T) {
	half := units.Inches(0.5)
	s := drive.Sprockets{Pitch: half, Front: 18, Rear: 46}
	d1, d2 := ok(drive.PitchDiameter(half, 18))(t).Millimetres(), ok(drive.PitchDiameter(half, 46))(t).Millimetres()
	meet := (d1 + d2) / 2
	pull := func(in drive.PullInput) error { return only(drive.ChainPull(in)) }
	wear := func(length float64, opt drive.WearOptions) error {
		return only(drive.ChainWear(millimetres(length, 0.1), 10, 10*mm, opt))
	}
	// as long as at the centre where equal sprockets meet: twice the centre, a
	// pitch circle, and half of each round
	round := 2*(ok(drive.PitchDiameter(half, 20))(t).Millimetres()/half.Millimetres()) + 20
	checkLimits(t, []limit{
		{"roller below the pitch", func(x float64) error { return only(drive.FormOf(half, units.Millimetres(x), 20)) }, 12.69, 12.7, "roller", fault.Conflict},
		{"sprockets that meet", func(x float64) error { return only(drive.ChainLength(s, units.Millimetres(x), drive.Series)) }, meet + 1e-9, meet, "centre", fault.OutOfRange},
		{"an adjuster where they meet", func(x float64) error {
			return only(drive.FitChain(s, units.Millimetres(x), 200*mm, drive.FitOptions{}))
		}, meet + 1e-9, meet, "shortest", fault.OutOfRange},
		{"longest below shortest", func(x float64) error {
			return only(drive.FitChain(s, 500*mm, units.Millimetres(x), drive.FitOptions{}))
		}, 500, 499.9, "longest", fault.Conflict},
		{"ten thousand pitches", func(x float64) error {
			return only(drive.FitChain(s, half.Times(x), half.Times(x), drive.FitOptions{}))
		}, 1e4, 1.0001e4, "longest", fault.OutOfRange},
		{"a chain too short, by tangents", func(x float64) error {
			return only(drive.CentreFor(drive.Sprockets{half, 20, 20}, x, drive.Tangent))
		}, round + 1e-9, round, "pitches", fault.OutOfRange},
		{"a chain too short, by the series", func(x float64) error {
			return only(drive.CentreFor(drive.Sprockets{half, 20, 20}, x, drive.Series))
		}, round + 1e-9, round, "pitches", fault.OutOfRange},
		{"pitch beside number", func(x float64) error {
			return pull(drive.PullInput{Number: "08B", Pitch: units.Millimetres(x), Teeth: 18, Speed: units.RevolutionsPerMinute(2000), Power: units.Kilowatts(5)})
		}, 12.7634, 12.7636, "pitch", fault.Conflict},
		{"pitch below number", func(x float64) error {
			return pull(drive.PullInput{Number: "08B", Pitch: units.Millimetres(x), Teeth: 18, Speed: units.RevolutionsPerMinute(2000), Power: units.Kilowatts(5)})
		}, 12.6366, 12.6364, "pitch", fault.Conflict},
		{"mass", func(x float64) error {
			return pull(drive.PullInput{Pitch: half, Teeth: 18, Speed: units.RevolutionsPerMinute(2000), MassPerMetre: units.FromSI[units.Mass](x)})
		}, 1e12, 1.01e12, "mass_per_metre", fault.OutOfRange},
		{"speed", func(x float64) error {
			return pull(drive.PullInput{Pitch: half, Teeth: 18, Speed: units.RadiansPerSecond(x), Power: units.Kilowatts(5)})
		}, 1e12, 1.01e12, "speed", fault.OutOfRange},
		{"least torque", func(x float64) error {
			return only(drive.BestPull(drive.PullAway{Torque: units.NewtonMetres(x), Mass: units.Kilograms(200), Radius: 300 * mm, Efficiency: 0.9, EngineKilogramSquareMetres: 0.1}))
		}, 1e-9, 0.99e-9, "torque", fault.OutOfRange},
		{"no torque", func(x float64) error {
			return only(drive.BestPull(drive.PullAway{Torque: units.NewtonMetres(x), Mass: units.Kilograms(200), Radius: 300 * mm, Efficiency: 0.9, EngineKilogramSquareMetres: 0.1}))
		}, 40, 0, "torque", fault.Missing},
		{"ten pitches read short", func(x float64) error { return wear(x, drive.WearOptions{}) }, 90, 89.9, "length", fault.Conflict},
		{"ten pitches read long", func(x float64) error { return wear(x, drive.WearOptions{}) }, 110, 110.1, "length", fault.Conflict},
		{"watch above finish", func(x float64) error {
			return wear(101, drive.WearOptions{Watch: units.Percents(x), Finish: units.Percents(2)})
		}, 2, 2.1, "watch", fault.Conflict},
		{"uncertainty of a length", func(x float64) error {
			return only(drive.ChainWear(millimetres(100, x), 10, 10*mm, drive.WearOptions{}))
		}, 99.9, 100, "length", fault.OutOfRange},
		{"no teeth", func(x float64) error { return only(drive.Pair{18, int(x)}.Ratio()) }, 4, 0, "driven", fault.Missing},
		{"too few teeth", func(x float64) error { return only(drive.Pair{int(x), 46}.Ratio()) }, 4, 3, "driver", fault.OutOfRange},
		{"sprockets to choose, least", func(x float64) error {
			return only(drive.SprocketOptions(5, drive.OneToOne(), drive.SprocketChoice{FrontLeast: int(x), RearLeast: 40}))
		}, 4, 3, "front", fault.OutOfRange},
		{"sprockets to choose, most", func(x float64) error {
			return only(drive.SprocketOptions(5, drive.OneToOne(), drive.SprocketChoice{FrontLeast: 18, RearLeast: 40, RearMost: int(x)}))
		}, 200, 201, "rear", fault.OutOfRange},
	})
	unsound := fault.Faults(only(drive.ChainWear(millimetres(100, -1), 10, 10*mm, drive.WearOptions{})))
	if len(unsound) != 1 || unsound[0].Path != "length" {
		t.Error(unsound)
	}
}

func TestLimitsOfTheRoad(t *testing.T) {
	line, curve, road := demo(t), demoCurve(t), solo()
	coastTo := func(from, to float64) error {
		in := coast(nil, 245, 0.018, 0.6, 0.1)
		in.Runs = append(in.Runs[:2:2], drive.Coast{From: units.MetresPerSecond(from), To: units.MetresPerSecond(to), Time: measure.Of(units.Seconds(3), units.Seconds(0.1))})
		return only(drive.CoastDown(in, drive.CoastOptions{}))
	}
	runs := coast(nil, 245, 0.018, 0.6, 0.1)
	rpm := units.RevolutionsPerMinute
	suit := func(most float64) error {
		return only(drive.Suit(drive.SuitInput{
			Line: line, Peak: measure.Exact(units.Kilowatts(17)), PeakAt: rpm(5500), Road: road, Choice: drive.SprocketChoice{FrontLeast: 18, RearLeast: 46},
		}, drive.SuitOptions{Most: int(most)}))
	}
	checkLimits(t, []limit{
		{"points of a curve", func(x float64) error { return only(drive.NewCurve(curve.Points()[:int(x)]...)) }, 2, 1, "points", fault.Missing},
		{"two points of one speed", func(x float64) error {
			return only(drive.NewCurve(drive.PowerPoint{rpm(3000), units.Kilowatts(5)}, drive.PowerPoint{rpm(4000), units.Kilowatts(8)}, drive.PowerPoint{rpm(x), units.Kilowatts(9)}))
		}, 3001, 3000, "points", fault.Conflict},
		{"fewest steps", func(x float64) error { return only(drive.Thrusts(line, curve, road, int(x))) }, 2, 1, "steps", fault.OutOfRange},
		{"most steps", func(x float64) error { return only(drive.Thrusts(line, curve, road, int(x))) }, 10000, 10001, "steps", fault.OutOfRange},
		{"engine speed", func(x float64) error { return only(line.SpeedAt("1", rpm(x))) }, 0, -1, "engine", fault.OutOfRange},
		{"road speed", func(x float64) error { return only(line.EngineAt("1", units.MilesPerHour(x))) }, 0, -1, "road", fault.OutOfRange},
		{"stretches", func(x float64) error {
			return only(drive.CoastDown(drive.CoastInput{Mass: runs.Mass, Runs: runs.Runs[:int(x)]}, drive.CoastOptions{}))
		}, 2, 1, "runs", fault.Missing},
		{"a stretch that slows", func(x float64) error { return coastTo(20, x) }, 19.9, 20, "runs.2.to", fault.Conflict},
		{"fastest stretch", func(x float64) error { return coastTo(x, 90) }, 100, 100.1, "runs.2.to", fault.Conflict},
		{"stretches that differ in one speed", func(x float64) error {
			return only(drive.CoastDown(drive.CoastInput{Mass: runs.Mass, Runs: []drive.Coast{runs.Runs[0], {From: runs.Runs[0].From, To: units.MetresPerSecond(x), Time: runs.Runs[0].Time}}}, drive.CoastOptions{}))
		}, 24, 25, "runs", fault.Conflict},
		{"stretches that differ in the other", func(x float64) error {
			return only(drive.CoastDown(drive.CoastInput{Mass: runs.Mass, Runs: []drive.Coast{runs.Runs[0], {From: units.MetresPerSecond(x), To: runs.Runs[0].To, Time: runs.Runs[0].Time}}}, drive.CoastOptions{}))
		}, 29, 30, "runs", fault.Conflict},
		{"sprocket pairs", suit, 0, -1, "most", fault.OutOfRange},
		{"shortest roll-out", func(x float64) error { return only(drive.RollOut(measure.Of(units.Metres(x), units.Metres(0.01)), 2)) }, 1, 0.99, "distance", fault.OutOfRange},
		{"longest roll-out", func(x float64) error { return only(drive.RollOut(measure.Of(units.Metres(x), units.Metres(0.01)), 2)) }, 10, 10.1, "distance", fault.OutOfRange},
		{"turns a mile", func(x float64) error {
			return only(drive.ReadSpeedometer(drive.SpeedometerInput{Rolling: line.Rolling, Drive: drive.OneToOne(), TurnsAMile: x}))
		}, 1600, 0, "turns_a_mile", fault.Missing},
	})
}

// A ratio is of parts above zero, of at most six digits on either side of the
// point, and stays exact to 63 bits.
func TestRatioTexts(t *testing.T) {
	for s, want := range map[string][2]int64{
		"46/19": {46, 19}, "46:19": {46, 19}, "2.42": {121, 50}, ".5": {1, 2}, "5.": {5, 1}, "10/20": {1, 2}, "2.5/1.25": {2, 1}, "1.25/2.5": {1, 2}, "9/0.09": {100, 1},
		"999999/0.000001": {999999000000, 1}, "0.000001": {1, 1000000},
	} {
		if r, err := drive.ParseRatio(s); err != nil || r.Num() != want[0] || r.Den() != want[1] {
			t.Errorf("%q: %v, %v", s, r, err)
		}
	}
	for _, s := range []string{".", "", "/", "0/5", "5/0", "0", "1000000", "1.0000000", "1/2/3", "-1", "+1", "2,4"} {
		if _, err := drive.ParseRatio(s); len(fault.Faults(err)) != 1 || fault.Faults(err)[0].Code != fault.BadForm {
			t.Errorf("%q: %v", s, err)
		}
	}
	for _, p := range [][2]int64{{0, 1}, {1, 0}, {-1, 1}, {1, -1}} {
		if r, err := drive.NewRatio(p[0], p[1]); err == nil {
			t.Errorf("%v: %v", p, r)
		}
	}
	half, more := ok(drive.NewRatio(1<<31, 1))(t), ok(drive.NewRatio(1<<32, 1))(t)
	if r, err := half.Times(half); err != nil || r.Num() != 1<<62 {
		t.Errorf("2⁶²: %v, %v", r, err)
	}
	if r, err := half.Times(more); err == nil {
		t.Errorf("2⁶³ does not fit: %v", r)
	}
	if half.Compare(half) != 0 || half.Compare(more) != -1 || more.Compare(half) != 1 {
		t.Error("order of ratios")
	}
}
