package timing_test

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/benchbook/refdata"
	"example.com/benchbook/timing"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
	"pgregory.net/rapid"
)

// Exhaust events that last too long, and no feeler gauge to hand: the exhaust valve
// may be held up by its lifter, the cam may be another, the follower too. Air let in
// at TDC on compression settles it. Readings are invented.
func ExampleLeakTest() {
	e := engine()
	r, err := timing.ReadEvents("25 BTDC", "65 ABDC", "80 BBDC", "40 ATDC")
	if err != nil {
		fmt.Println(err)
		return
	}
	say := func() {
		result, err := timing.Diagnose(timing.Input{Engine: e, Readings: r}, timing.Options{})
		if err != nil {
			fmt.Println(err)
			return
		}
		held, _ := result.Causes.Of("exhaust-held")
		fmt.Println(held.Text+":", held.Words())
		for _, next := range result.NextReadings {
			if next.Key == "leak-down" {
				fmt.Println("worth doing:", next.Text)
			}
		}
		if lead := result.Compression.States; len(lead.Odds) > 0 {
			fmt.Println(result.Compression.Lost, "lost;", lead.Leader().Text)
		}
	}
	say()
	r.Leak = timing.LeakTest{
		Supply:    measure.MustRead("6 bar", measure.CompressionGauge()),
		Held:      measure.MustRead("0.3 bar", measure.CompressionGauge()),
		AtExhaust: timing.Yes, AtInlet: timing.No, AtBreather: timing.No,
	}
	say()
	// Output:
	// exhaust valve held off its seat by its lifter or a tight clearance: about even
	// worth doing: take a leak-down test at top dead centre on compression, and listen where it hisses
	// exhaust valve held off its seat by its lifter or a tight clearance: as good as certain
	// 0.950 ± 0.017 lost; the exhaust valve leaks or is held off its seat
}

// The part lost by a test with two gauges, for a sheet.
func ExampleLeakTest_PartLost() {
	read := func(text string) measure.Reading[units.Pressure] {
		return measure.MustRead(text, measure.CompressionGauge())
	}
	t := timing.LeakTest{Supply: read("6.00 bar ± 0.05"), Held: read("4.20 bar ± 0.05"), HeldWet: read("5.40 bar ± 0.05")}
	dry, wet, err := t.PartLost()
	fmt.Println(t.Taken(), dry, wet, err)
	// Output: true 0.300 ± 0.010 0.100 ± 0.011 <nil>
}

// partOf is the part lost by a tester scaled in per cent.
func partOf(percent float64) measure.Reading[units.Ratio] {
	return measure.By(units.Percents(percent), measure.LeakGauge())
}

// Where it hisses weighs causes as the documented chances have it, worked here by
// hand: at the exhaust pipe, on compression, with nothing else heard. Nothing wrong:
// 0.88 x 0.05 + 0.12 x (0.50 x 0.93 + 0.50 x 0.05). Exhaust valve held:
// 0.10 x 0.05 + 0.90 x (0.85 x 0.97 + 0.15 x 0.49).
func TestHissByHand(t *testing.T) {
	e := whole(t)
	r := events("25 BTDC", "65 ABDC", "75 BBDC", "35 ATDC")
	odds := func() float64 {
		res := diagnose(t, e, r, timing.Options{SingleFaults: true})
		a, held := res.Causes.Of("exhaust-held")
		b, other := res.Causes.Of("exhaust-cam") // of another pattern
		if !held || !other {
			t.Fatal("no such causes")
		}
		return a.Share / b.Share
	}
	before := odds()
	r.Leak.AtExhaust = timing.Yes
	heard := odds() / before
	plain := 0.88*0.05 + 0.12*(0.50*0.93+0.50*0.05)
	if want := (0.10*0.05 + 0.90*(0.85*0.97+0.15*(0.50*0.93+0.50*0.05))) / plain; !(math.Abs(heard/want-1) <= 1e-6) {
		t.Errorf("a hiss in the exhaust multiplies the odds by %.4f, by hand %.4f", heard, want)
	}
	r.Leak.AtExhaust = timing.No
	quiet := odds() / before
	if want := (1 - heard*plain) / (1 - plain); !(math.Abs(quiet/want-1) <= 1e-6) { // the chances of yes and no add up
		t.Errorf("silence multiplies them by %.4f, by hand %.4f", quiet, want)
	}
}

func TestLeakBesideTheEvents(t *testing.T) {
	e := whole(t)
	state := func(r timing.Readings) string {
		return diagnose(t, e, r, timing.Options{}).Compression.States.Leader().Key
	}
	share := func(r timing.Readings, key string) float64 {
		o, ok := diagnose(t, e, r, timing.Options{}).Causes.Of(key)
		if !ok {
			t.Fatalf("no cause %s", key)
		}
		return o.Share
	}
	good := events("25 BTDC", "65 ABDC", "65 BBDC", "25 ATDC")
	for _, c := range []struct {
		name, want string
		leak       timing.LeakTest
	}{
		{"tight", "sound", timing.LeakTest{Lost: partOf(6)}},
		{"at the breather", "rings", timing.LeakTest{Lost: partOf(35), AtBreather: timing.Yes, AtInlet: timing.No, AtExhaust: timing.No}},
		{"in the exhaust", "exhaust-valve", timing.LeakTest{Lost: partOf(40), AtExhaust: timing.Yes}},
		{"at the carburettor", "inlet-valve", timing.LeakTest{Lost: partOf(40), AtInlet: timing.Yes}},
		{"oil seals it", "rings", timing.LeakTest{Lost: partOf(35), LostWet: partOf(12)}},
		{"bubbles", "head-joint", timing.LeakTest{Lost: partOf(30), AtJoint: timing.Yes}},
		{"heard only", "exhaust-valve", timing.LeakTest{AtExhaust: timing.Yes, AtInlet: timing.No, AtBreather: timing.No}},
	} {
		r := good
		r.Leak = c.leak
		if k := state(r); k != c.want {
			t.Errorf("%s: %s, want %s", c.name, k, c.want)
		}
		if k := diagnose(t, e, r, timing.Options{}).Causes.Leader().Key; k != "nothing-wrong" {
			t.Errorf("%s: %s", c.name, k) // a leaking seat is no fault of the timing
		}
	}

	// the same loss, with oil and without: not the rings
	unmoved := good
	unmoved.Leak = timing.LeakTest{Lost: partOf(35), LostWet: partOf(34)}
	if k := state(unmoved); k != "exhaust-valve" && k != "inlet-valve" {
		t.Errorf("35 %% dry and 34 %% wet: %s", k)
	}

	// dry and wet said a valve; the air says which, and both agree
	r := good
	r.CompressionDry, r.CompressionWet = gauge(3), gauge(3)
	r.Leak = timing.LeakTest{Lost: partOf(50), AtInlet: timing.Yes, AtExhaust: timing.No}
	if k := state(r); k != "inlet-valve" {
		t.Errorf("3 bar dry and wet, hiss at the carburettor: %s", k)
	}

	// a tight cylinder clears a valve that its events accused, and a loud one damns it
	long := events("25 BTDC", "65 ABDC", "80 BBDC", "40 ATDC")
	none := share(long, "exhaust-held")
	long.Leak = timing.LeakTest{Lost: partOf(5), AtExhaust: timing.No}
	clear := share(long, "exhaust-held")
	long.Leak = timing.LeakTest{Lost: partOf(95), AtExhaust: timing.Yes}
	if loud := share(long, "exhaust-held"); !(clear < none/5 && loud > 0.8 && loud > none) {
		t.Errorf("held %.3f, with a tight cylinder %.4f, with a loud one %.3f", none, clear, loud)
	}

	// rings change nothing between causes that move cams only
	late := events("10 BTDC", "80 ABDC", "65 BBDC", "25 ATDC")
	ratio := func() float64 { return share(late, "inlet-wheel:-1") / share(late, "inlet-slip") }
	before := ratio()
	late.Leak = timing.LeakTest{Lost: partOf(35), AtBreather: timing.Yes, AtInlet: timing.No, AtExhaust: timing.No}
	if after := ratio(); !(math.Abs(after/before-1) <= 0.01) {
		t.Errorf("tooth to slip %.3f, with worn rings %.3f", before, after)
	}

	// the inlet cam a whole turn out stands open at TDC on compression, but not at
	// 60° before it
	turned := share(good, "inlet-wheel:turn")
	at := func(at units.CrankPosition) float64 {
		r := good
		r.Leak = timing.LeakTest{Lost: partOf(95), AtInlet: timing.Yes, AtExhaust: timing.No, At: at}
		return share(r, "inlet-wheel:turn") / turned
	}
	if top, lower := at(units.CrankPosition{}), at(units.Before(units.TDC, 60*units.CrankDegree)); !(top > 5 && lower < top/5) {
		t.Errorf("a whole turn out is %.2f times as likely after a hiss at TDC, %.2f after one at 60° before", top, lower)
	}
}

// Where the crank stood counts: an inlet cam slipped late closes late, and a test
// made early on the compression stroke finds its valve open.
func TestLeakWhereItWasMade(t *testing.T) {
	e := whole(t)
	r := events("15 ATDC", "105 ABDC", "65 BBDC", "25 ATDC") // inlet 40° late
	r.Leak = timing.LeakTest{Lost: partOf(97), AtInlet: timing.Yes, At: units.Before(units.TDC, 100*units.CrankDegree)}
	early := diagnose(t, e, r, timing.Options{}).Compression.States
	r.Leak.At = units.CrankPosition{}
	top := diagnose(t, e, r, timing.Options{}).Compression.States
	if early.Leader().Key != "inlet-valve" || top.Leader().Key != "inlet-valve" {
		t.Errorf("%s, %s", early.Leader().Key, top.Leader().Key)
	}
	// and only there is "nothing wrong with the seat" no surprise: the odds of a cam
	// truly late against a disc read wrongly follow
	mark := func(at units.CrankPosition) float64 {
		r := events("15 ATDC", "105 ABDC", "25 BBDC", "65 ATDC") // all 40° late, or the mark is
		r.TDC = timing.TDCByMark
		r.Leak = timing.LeakTest{Lost: partOf(97), AtInlet: timing.Yes, At: at}
		res := diagnose(t, e, r, timing.Options{})
		cams, _ := res.Causes.Of("whole-train:-3")
		m, _ := res.Causes.Of("tdc-mark")
		return cams.Share / m.Share
	}
	if open, shut := mark(units.Before(units.TDC, 100*units.CrankDegree)), mark(units.CrankPosition{}); !(open > 5*shut) {
		t.Errorf("train to mark %.3g where a late cam is open, %.3g where it is shut", open, shut)
	}
}

func TestLeakFaults(t *testing.T) {
	p := func(bar float64) measure.Reading[units.Pressure] { return measure.Of(units.Bars(bar), units.Bars(0.1)) }
	for _, c := range []struct {
		leak timing.LeakTest
		path string
		code fault.Code
	}{
		{timing.LeakTest{Supply: p(6)}, "held", fault.Missing},
		{timing.LeakTest{Held: p(6)}, "supply", fault.Missing},
		{timing.LeakTest{Supply: p(6), Held: p(7)}, "held", fault.Conflict},
		{timing.LeakTest{Supply: p(6), Held: p(5), Lost: partOf(10)}, "lost", fault.Conflict},
		{timing.LeakTest{Supply: p(0), Held: p(0)}, "supply", fault.OutOfRange},
		{timing.LeakTest{Supply: p(6), Held: p(5), HeldWet: p(6.5)}, "held_wet", fault.Conflict},
		{timing.LeakTest{HeldWet: p(5)}, "supply", fault.Missing},
		{timing.LeakTest{Supply: p(6), HeldWet: p(5)}, "held", fault.Missing},
		{timing.LeakTest{LostWet: partOf(5)}, "lost", fault.Missing},
		{timing.LeakTest{Supply: p(6), Held: p(5), LostWet: partOf(5)}, "lost_wet", fault.Conflict},
		{timing.LeakTest{Supply: p(6), Held: p(-1)}, "held", fault.OutOfRange},
		{timing.LeakTest{Lost: measure.Of(units.Percents(101), 0)}, "lost", fault.OutOfRange},
		{timing.LeakTest{Lost: measure.Of(units.Percents(math.NaN()), 0)}, "lost", ""},
		{timing.LeakTest{AtJoint: 3}, "at_joint", fault.UnknownName},
		{timing.LeakTest{Lost: partOf(10), At: units.Before(units.BDC, 10*units.CrankDegree)}, "at", fault.OutOfRange},
		{timing.LeakTest{Lost: partOf(10), At: units.After(units.TDC, 91*units.CrankDegree)}, "at", fault.OutOfRange},
		{timing.LeakTest{Lost: partOf(10), At: units.After(units.TDC, units.CrankDegrees(math.NaN()))}, "at", fault.OutOfRange},
	} {
		if _, _, err := c.leak.PartLost(); err == nil {
			t.Errorf("%+v has a part lost", c.leak)
		}
		r := events("25 BTDC", "65 ABDC", "65 BBDC", "25 ATDC")
		r.Leak = c.leak
		_, err := timing.Diagnose(timing.Input{Engine: engine(), Readings: r}, timing.Options{})
		if !slices.ContainsFunc(fault.Faults(err), func(f fault.Fault) bool {
			return strings.HasPrefix(f.Path, "readings.leak."+c.path) && (c.code == "" || f.Code == c.code)
		}) {
			t.Errorf("%s %s: %v", c.path, c.code, err)
		}
	}
	// six bar and 4.2: 30 %; each gauge 0.1 bar: 0.1/6 and 0.1 x 4.2/36 in quadrature
	lost, wet, err := timing.LeakTest{Supply: p(6), Held: p(4.2)}.PartLost()
	if err != nil || math.Abs(lost.Value().Percents()-30) > 1e-9 || math.Abs(lost.U().Value()-math.Hypot(0.1/6, 0.1*4.2/36)) > 1e-12 || wet.Taken() {
		t.Errorf("%v, %v, %v", lost, wet, err)
	}
	exact := func(bar float64) measure.Reading[units.Pressure] { return measure.Exact(units.Bars(bar)) }
	if lost, _, err := (timing.LeakTest{Supply: exact(6), Held: exact(3)}).PartLost(); err != nil || lost.Err() != nil || lost.Value() != units.Value(0.5) {
		t.Errorf("exact by name: %v, %v, %v", lost, err, lost.Err())
	}
	if none, _, err := (timing.LeakTest{}).PartLost(); err != nil || none.Taken() {
		t.Errorf("no test: %v, %v", none, err)
	}
}

// The danger of air in the cylinder goes with the test, taken or only proposed.
func TestLeakCaution(t *testing.T) {
	r := events("25 BTDC", "65 ABDC", "80 BBDC", "40 ATDC")
	res := diagnose(t, engine(), r, timing.Options{})
	proposed := slices.ContainsFunc(res.NextReadings, func(g measure.Gain) bool { return g.Key == "leak-down" })
	if !proposed || !slices.Contains(res.Basis.Cautions, refdata.AirTurnsCrank) {
		t.Errorf("proposed %v, cautions %v", proposed, res.Basis.Cautions)
	}
	r.Leak.Lost = partOf(90)
	res = diagnose(t, engine(), r, timing.Options{})
	if slices.ContainsFunc(res.NextReadings, func(g measure.Gain) bool { return g.Key == "leak-down" }) || !slices.Contains(res.Basis.Cautions, refdata.AirTurnsCrank) {
		t.Errorf("taken, yet proposed; or cautions %v", res.Basis.Cautions)
	}
	if !slices.ContainsFunc(res.Basis.NotChecked, func(u refdata.Unchecked) bool { return u.What == "where the cylinder leaks" }) {
		t.Error("nobody listened, and nobody says so")
	}
}

// Whatever a sound test shows, wherever it was made, the odds are odds.
func TestAnyLeak(t *testing.T) {
	e := whole(t)
	rapid.Check(t, func(t *rapid.T) {
		part := func(name string) float64 { return rapid.Float64Range(0, 1).Draw(t, name) }
		seen := func(name string) timing.Seen { return timing.Seen(rapid.IntRange(0, 2).Draw(t, name)) }
		r := events("34 BTDC", "56 ABDC", "50 BBDC", "40 ATDC")
		supply := rapid.Float64Range(0.5, 20).Draw(t, "supply")
		u := units.Bars(rapid.SampledFrom([]float64{1e-300, 1e-9, 0.1, 100}).Draw(t, "u"))
		r.Leak = timing.LeakTest{
			Supply: measure.Of(units.Bars(supply), u), Held: measure.Of(units.Bars(supply*part("held")), u), HeldWet: measure.Of(units.Bars(supply*part("wet")), u),
			AtInlet: seen("inlet"), AtExhaust: seen("exhaust"), AtBreather: seen("breather"), AtJoint: seen("joint"),
			At: units.After(units.TDC, units.CrankDegrees(rapid.Float64Range(-180, 90).Draw(t, "at"))),
		}
		res, err := timing.Diagnose(timing.Input{Engine: e, Readings: r}, timing.Options{SingleFaults: true})
		if err != nil {
			t.Fatal(err)
		}
		for _, ranking := range []measure.Ranking{res.Causes, res.Compression.States} {
			sum := 0.0
			for _, o := range ranking.Odds {
				if !(o.Share >= 0 && o.Share <= 1) {
					t.Fatalf("%s %v", o.Key, o.Share)
				}
				sum += o.Share
			}
			if !(math.Abs(sum-1) < 1e-9) { // rounding of some two hundred shares
				t.Fatalf("shares add up to %v", sum)
			}
		}
		if _, err := json.Marshal(res); err != nil {
			t.Fatal(err)
		}
	})
}

// A low gauge that oil does not move, a cylinder that holds its air, and an inlet
// cam two teeth late: the timing, and neither rings nor valves.
func TestLowGaugeTightCylinder(t *testing.T) {
	e := whole(t)
	r := events("5 ATDC", "95 ABDC", "65 BBDC", "25 ATDC")
	want := diagnose(t, e, r, timing.Options{}).Compression.AsTimed
	low := (want.Low.Bars() + want.High.Bars()) / 2
	r.CompressionDry, r.CompressionWet = gauge(low), gauge(low)
	sound := func() float64 {
		res := diagnose(t, e, r, timing.Options{})
		if k := res.Causes.Leader().Key; k != "inlet-wheel:-2" {
			t.Errorf("%s leads", k)
		}
		o, _ := res.Compression.States.Of("sound")
		return o.Share
	}
	gauged := sound()
	r.Leak = timing.LeakTest{Lost: partOf(6)}
	if both := sound(); !(both > 0.97 && both > gauged) {
		t.Errorf("sound %.3f by the gauge, %.3f with its air held", gauged, both)
	}
}

// The part lost weighs by the documented spreads, dry and with oil, worked here apart
// from the library: log odds of the part, normal about the middle of each way of
// leaking.
func TestLossByHand(t *testing.T) {
	e := whole(t)
	r := events("25 BTDC", "65 ABDC", "75 BBDC", "35 ATDC")
	odds := func() float64 {
		res := diagnose(t, e, r, timing.Options{SingleFaults: true})
		a, held := res.Causes.Of("exhaust-held")
		b, other := res.Causes.Of("exhaust-cam")
		if !held || !other {
			t.Fatal("no such causes")
		}
		return a.Share / b.Share
	}
	before := odds()
	const dry, u, wet = 0.60, 0.03, 0.55
	r.Leak = timing.LeakTest{Lost: measure.Of(units.Value(dry), units.Value(u)), LostWet: measure.Of(units.Value(wet), units.Value(u))}
	got := odds() / before

	lo := func(p float64) float64 { return math.Log(p / (1 - p)) }
	density := func(miss, sd float64) float64 { return math.Exp(-miss*miss/sd/sd/2) / sd }
	ud, uw := u/dry/(1-dry), u/wet/(1-wet)
	way := func(lost, spread, oil, oilSD float64) float64 {
		return density(lo(dry)-lo(lost), math.Hypot(spread, ud)) * density(lo(wet)-lo(dry)-oil, math.Sqrt(oilSD*oilSD+ud*ud+uw*uw))
	}
	tight, ring, seat, joint, open := way(0.08, 0.6, -0.3, 0.3), way(0.30, 0.8, -1.2, 0.5), way(0.45, 1.1, -0.1, 0.3), way(0.35, 1.0, -0.1, 0.3), way(0.97, 1.0, -0.1, 0.3)
	valves := 0.85*seat + 0.15*joint
	want := (0.05*tight + 0.05*ring + 0.90*(0.85*open+0.15*valves)) / (0.70*tight + 0.18*ring + 0.12*valves)
	if !(math.Abs(got/want-1) <= 1e-6) { // shares are worked to some nine digits
		t.Errorf("60 %% dry and 55 %% wet multiply the odds by %.6f, by hand %.6f", got, want)
	}
}

// With no event read the tests of the cylinder still speak, averaged over what may be
// wrong with the timing.
func TestCylinderWithoutEvents(t *testing.T) {
	e := whole(t)
	for _, c := range []struct {
		want string
		r    timing.Readings
	}{
		{"rings", timing.Readings{CompressionDry: gauge(4.5), CompressionWet: gauge(7)}},
		{"valves", timing.Readings{CompressionDry: gauge(3), CompressionWet: gauge(3)}},
		{"exhaust-valve", timing.Readings{Leak: timing.LeakTest{Lost: partOf(45), AtExhaust: timing.Yes}}},
		{"sound", timing.Readings{Leak: timing.LeakTest{Lost: partOf(5), AtExhaust: timing.No, AtInlet: timing.No}}},
	} {
		res := diagnose(t, e, c.r, timing.Options{})
		if lead := res.Compression.States.Leader(); lead.Key != c.want || lead.Share < 0.7 {
			t.Errorf("%s %.2f, want %s", lead.Key, lead.Share, c.want)
		}
		if !res.NoAnswer.Given() || len(res.Causes.Odds) > 0 {
			t.Errorf("%s: a verdict on the timing from no event", c.want)
		}
	}
	if res := diagnose(t, e, timing.Readings{}, timing.Options{}); len(res.Compression.States.Odds) > 0 {
		t.Error("states of a cylinder that was not tested")
	}
}

// Without the cylinder's sizes only the change by oil speaks, and says enough.
func TestOilWithoutTheSizes(t *testing.T) {
	e := engine() // no cylinder
	for _, c := range []struct {
		dry, wet float64
		want     string
	}{{5, 7.2, "rings"}, {7, 7.1, "sound"}} {
		r := events("25 BTDC", "65 ABDC", "65 BBDC", "25 ATDC")
		r.CompressionDry, r.CompressionWet = gauge(c.dry), gauge(c.wet)
		res := diagnose(t, e, r, timing.Options{})
		if k := res.Compression.States.Leader().Key; k != c.want || res.Compression.Expected.Given() {
			t.Errorf("%v bar dry, %v wet: %s, expected %v", c.dry, c.wet, k, res.Compression.Expected)
		}
	}
}
