package timing_test

import (
	"encoding/json"
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/benchbook/refdata"
	"example.com/benchbook/timing"
	"example.com/benchbook/timing/crank"
	"example.com/benchbook/timing/gear"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// engine is the invented demonstration machine: a 24-tooth pinion between two
// 48-tooth camwheels, a tooth worth 15° of crank.
func engine() timing.Engine {
	return timing.Engine{
		Drive:   timing.TwoCamwheels(24, 48),
		Inlet:   timing.Lobe{Opens: units.Before(units.TDC, 25*units.CrankDegree), Closes: units.After(units.BDC, 65*units.CrankDegree)},
		Exhaust: timing.Lobe{Opens: units.Before(units.BDC, 65), Closes: units.After(units.TDC, 25)},
	}
}

// disc reads a bare figure off a degree disc.
func disc(text string) measure.Position { return measure.MustReadPosition(text, measure.DegreeDisc()) }

func events(io, ic, eo, ec string) timing.Readings {
	return timing.Readings{InletOpens: disc(io), InletCloses: disc(ic), ExhaustOpens: disc(eo), ExhaustCloses: disc(ec)}
}

func diagnose(t *testing.T, e timing.Engine, r timing.Readings, opt timing.Options) timing.Result {
	t.Helper()
	res, err := timing.Diagnose(timing.Input{Engine: e, Readings: r}, opt)
	if err != nil {
		t.Fatal(err)
	}
	return res
}

// Derived, worked by hand: with equal uncertainties of 1° (own), 0.7° (common) and
// 2° (each duration), residuals -12, -15, +1, -1 split into centres -13.5 and 0
// with variances 0.99 and covariance 0.49. One tooth late (-15) leaves chi^2 3.010
// and ln det 0.74; a slip of 10° leaves chi^2 1.809 and ln det 99.74; with priors
// 0.05 and 0.06 that is 0.841 to 0.159. With the 4 x 4 covariance: 0.8411, 0.1585.
func TestInferenceWorkedByHand(t *testing.T) {
	opt := timing.Options{
		SingleFaults: true, Teeth: 1, Trifle: 1e-9, Misread: timing.Misread{Chance: -1},
		Widths: timing.Widths{TDCByEye: 0.7, TDCWrong: 5, SlipAnywhere: -1},
		Priors: timing.Priors{Wheel: 0.10, Slip: 0.06, UnknownCam: -1, Clearance: -1, CheckLift: -1, Reversed: -1, Follower: -1, Held: -1, Worn: -1},
	}
	r := diagnose(t, engine(), events("13 BTDC", "80 ABDC", "66 BBDC", "26 ATDC"), opt)
	for _, want := range []struct {
		key   string
		share float64
	}{{"inlet-wheel:-1", 0.841}, {"inlet-slip", 0.159}} {
		got, _ := r.Causes.Of(want.key)
		if !(math.Abs(got.Share-want.share) < 0.0007) { // the figures by hand have three digits
			t.Errorf("%s %.4f, want %.3f", want.key, got.Share, want.share)
		}
	}
	// step 7: one tooth earlier leaves +1.5
	if m := r.Remedies[0]; m.Key != "inlet-wheel:+1" || m.InletLeft != 1.5 {
		t.Errorf("remedy %v leaves %v, want inlet-wheel:+1 and 1.5", m.Key, m.InletLeft)
	}
}

// The planted faults of the demonstration machine come first, with bare figures
// in whole degrees.
func TestTwoFaultsAtOnce(t *testing.T) {
	for _, c := range []struct{ name, io, ic, eo, ec, want, remedy string }{
		{"exhaust a tooth late, inlet slipped 9° early", "34 BTDC", "56 ABDC", "50 BBDC", "40 ATDC", "exhaust-wheel:-1/inlet-slip", "inlet-press/exhaust-wheel:+1"},
		{"exhaust a tooth early, inlet slipped 9° late", "16 BTDC", "74 ABDC", "80 BBDC", "10 ATDC", "exhaust-wheel:+1/inlet-slip", "inlet-press/exhaust-wheel:-1"},
		{"exhaust a tooth late, inlet slipped 9° late", "16 BTDC", "75 ABDC", "50 BBDC", "41 ATDC", "exhaust-wheel:-1/inlet-slip", "inlet-press/exhaust-wheel:+1"},
		{"inlet a tooth early, exhaust slipped 9° late", "40 BTDC", "50 ABDC", "56 BBDC", "34 ATDC", "inlet-wheel:+1/exhaust-slip", "inlet-wheel:-1/exhaust-press"},
		{"inlet a tooth late", "10 BTDC", "80 ABDC", "65 BBDC", "25 ATDC", "inlet-wheel:-1", "inlet-wheel:+1"},
		{"exhaust two teeth early", "25 BTDC", "66 ABDC", "95 BBDC", "5 BTDC", "exhaust-wheel:+2", "exhaust-wheel:-2"},
		{"inlet slipped 22° early", "47 BTDC", "43 ABDC", "65 BBDC", "25 ATDC", "inlet-slip", "inlet-press"},
		{"nothing", "24 BTDC", "66 ABDC", "66 BBDC", "24 ATDC", "nothing-wrong", "leave"},
		{"inlet slipped 100° late", "75 ATDC", "165 ABDC", "65 BBDC", "25 ATDC", "inlet-slip", "inlet-press"},
		{"disc the wrong way round", "25 ATDC", "65 BBDC", "65 ABDC", "25 BTDC", "disc-backwards", "turn-disc"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := diagnose(t, engine(), events(c.io, c.ic, c.eo, c.ec), timing.Options{})
			lead := r.Causes.Leader()
			if lead.Key != c.want {
				t.Errorf("leader %s %.3f, want %s", lead.Key, lead.Share, c.want)
				for _, o := range r.Causes.Odds[:5] {
					t.Logf("%s %.4f", o.Key, o.Share)
				}
			}
			if !(lead.Share > 0.4 && lead.Share < 1) {
				t.Errorf("odds %.5f of whole degrees are neither finite nor sensible", lead.Share)
			}
			if got := r.Remedies[0].Key; got != c.remedy && r.Remedies[0].Key[:4] != c.remedy[:4] {
				t.Errorf("remedy %s, want %s", got, c.remedy)
			}
		})
	}
}

// Wheel and slip are told apart by the marks, and by the lobe on its wheel in the
// hand.
func TestEvidenceBesideTheEvents(t *testing.T) {
	r := events("13 BTDC", "80 ABDC", "66 BBDC", "26 ATDC")
	before := diagnose(t, engine(), r, timing.Options{})
	wheel, _ := before.Causes.Of("inlet-wheel:-1")
	r.MarksAlign = timing.Yes
	after := diagnose(t, engine(), r, timing.Options{})
	if after.Causes.Leader().Key != "inlet-slip" {
		t.Errorf("marks in line, yet %v leads", after.Causes.Leader().Key)
	}
	r.MarksAlign = timing.No
	if got, _ := diagnose(t, engine(), r, timing.Options{}).Causes.Of("inlet-wheel:-1"); !(got.Share > wheel.Share) {
		t.Errorf("marks out of line: %v, before %v", got.Share, wheel.Share)
	}
	r.MarksAlign = timing.NotLooked
	r.InletOnWheel = measure.Of(units.CamDegrees(-6.9), units.CamDegrees(0.5))
	if got := diagnose(t, engine(), r, timing.Options{}).Causes.Leader(); got.Key != "inlet-slip" || got.Share < 0.95 {
		t.Errorf("lobe measured on its wheel: %v %v", got.Key, got.Share)
	}
	// the check that separates the leaders is offered
	found := false
	for _, g := range before.NextReadings {
		found = found || g.Key == "tooth-marks" && g.Bits > 0.1
	}
	if !found {
		t.Errorf("looking at the marks is not offered: %v", before.NextReadings)
	}
}

// All four events alike cannot be split between mark, keyway and train, unless a
// stop has found the mark right.
func TestWhatCannotBeToldApart(t *testing.T) {
	e := engine()
	e.Drive = timing.OneCamwheel(24, 48)
	r := events("10 BTDC", "80 ABDC", "50 BBDC", "40 ATDC")
	r.TDC = timing.TDCByMark
	res := diagnose(t, e, r, timing.Options{})
	tooth, _ := res.Causes.Of("whole-train:-1")
	mark, _ := res.Causes.Of("tdc-mark")
	if !(mark.Share > 0.005 && tooth.Share > 0.3) {
		t.Errorf("tooth %v, mark %v; both must stay in the list", tooth.Share, mark.Share)
	}
	if res.NextReadings[0].Key != "tdc-by-stop" && res.NextReadings[1].Key != "tdc-by-stop" {
		t.Errorf("a stop is not among the first two readings to take: %v", res.NextReadings)
	}
	r.TDC = timing.TDCByStop
	res = diagnose(t, e, r, timing.Options{})
	if _, ok := res.Causes.Of("tdc-mark"); ok {
		t.Error("TDC found by a stop, and its mark still blamed")
	}
	r.TDC, r.TDCLate = timing.TDCByMark, measure.Of(-15*units.CrankDegree, 0.3*units.CrankDegree)
	if got := diagnose(t, e, r, timing.Options{}).Causes.Leader(); got.Key != "tdc-mark" || got.Share < 0.9 {
		t.Errorf("mark shown 15° early by a stop: %v %v", got.Key, got.Share)
	}
}

func TestTrainNotOneToTwoIsRefused(t *testing.T) {
	e := engine()
	e.Drive = timing.TwoCamwheels(24, 47)
	_, err := timing.Diagnose(timing.Input{Engine: e, Readings: events("25 BTDC", "65 ABDC", "65 BBDC", "25 ATDC")}, timing.Options{})
	faults := fault.Faults(err)
	if len(faults) != 2 || faults[0].Code != fault.Conflict || faults[0].Path[:12] != "engine.drive" {
		t.Errorf("%v", err)
	}
	// a compound train of exactly two is a good one
	e.Drive = gear.Drive{
		{From: "crank", Driver: 24, To: "idler", Driven: 32}, {From: "idler", Driver: 30, To: timing.InletSpindle, Driven: 45},
		{From: "idler", Driver: 30, To: timing.ExhaustSpindle, Driven: 45},
	}
	r := diagnose(t, e, events("9 BTDC", "81 ABDC", "65 BBDC", "25 ATDC"), timing.Options{})
	if got := r.Causes.Leader().Key; got != "inlet-wheel:-1" { // 16° of crank
		t.Errorf("16° late on a 45-tooth wheel: %s", got)
	}
}

// Every fault of an input comes at once.
func TestFaultsTogether(t *testing.T) {
	e := engine()
	e.Drive = nil
	e.Inlet.Closes = units.After(units.TDC, 170)
	e.Exhaust.Opens = units.After(units.TDC, 10)
	e.Check.Lift = -1 * units.Millimetre
	e.Keyways = 99
	r := events("25 BTDC", "65 ABDC", "65 BBDC", "25 ATDC")
	r.InletOpens = measure.At(units.Before(units.TDC, 25), 0)
	r.InletMaxLift = measure.Of(units.Length(math.NaN()), units.Millimetre)
	r.Spark = 9
	_, err := timing.Diagnose(timing.Input{Engine: e, Readings: r}, timing.Options{Teeth: 99, Priors: timing.Priors{Nothing: math.NaN()}})
	want := map[string]bool{}
	for _, f := range fault.Faults(err) {
		want[f.Path] = true
	}
	for _, p := range []string{"engine.drive", "engine.exhaust.opens", "engine.check.lift", "engine.keyways", "readings.inlet_opens", "readings.inlet_max_lift", "readings.spark", "options.teeth", "options.priors.nothing"} {
		if !want[p] {
			t.Errorf("no fault at %s in %v", p, err)
		}
	}
}

// Published: an inlet valve open from 15° after TDC to 35° after BDC is open for
// 200° (question-and-answer engine handbook, c. 1910s, p. 70); opening 6° before
// and closing 5° after TDC overlap by 11° (West African Examinations Council, Auto
// Mechanics paper 220M, question 2).
func TestLobesPublished(t *testing.T) {
	l, err := timing.LobesOf(events("15 ATDC", "35 ABDC", "-", "-"), timing.Options{})
	if err != nil || l.InletDuration.Value() != 200*units.CrankDegree {
		t.Errorf("%v %v, want 200°", l.InletDuration, err)
	}
	l, err = timing.LobesOf(events("6 BTDC", "35 ABDC", "38 BBDC", "5 ATDC"), timing.Options{})
	if err != nil || l.Overlap.Value() != 11*units.CrankDegree || l.InletDuration.Value() != 221*units.CrankDegree || l.ExhaustDuration.Value() != 223*units.CrankDegree {
		t.Errorf("%v %v, want overlap 11°, open 221° and 223°", l, err)
	}
}

// Uncertainties by hand: 1° on each event and 1.5° of TDC common to all. Centre
// sqrt(1/2 + 1.5^2), duration sqrt 2, separation half of 1 (crank) in cam degrees:
// sqrt(4)/4, overlap sqrt 2.
func TestLobesUncertainty(t *testing.T) {
	l, err := timing.LobesOf(events("25 BTDC", "65 ABDC", "65 BBDC", "25 ATDC"), timing.Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"centre", l.InletCentre.U().Degrees(), math.Sqrt(0.5 + 2.25)}, {"duration", l.InletDuration.U().Degrees(), math.Sqrt2},
		{"separation", l.Separation.U().Degrees(), 0.5}, {"overlap", l.Overlap.U().Degrees(), math.Sqrt2},
		{"centre value", l.ExhaustCentre.Value().Degrees(), 110}, {"separation value", l.Separation.Value().Degrees(), 110},
	} {
		if math.Abs(c.got-c.want) > 1e-12 { // rounding
			t.Errorf("%s %v, want %v", c.name, c.got, c.want)
		}
	}
}

// A dead centre found late by a stop afterwards is taken out of centres and
// shifts: events at a mark 3° late seem 3° early.
func TestDeadCentreCorrected(t *testing.T) {
	r := events("28 BTDC", "62 ABDC", "68 BBDC", "22 ATDC")
	r.TDCLate = measure.Of(3*units.CrankDegree, 0.3*units.CrankDegree)
	res := diagnose(t, engine(), r, timing.Options{})
	for what, got := range map[string]float64{
		"inlet": res.Inlet.Crank.Value().Degrees(), "exhaust": res.Exhaust.Crank.Value().Degrees(),
		"inlet centre": res.Read.InletCentre.Value().Degrees() - 110, "exhaust centre": res.Read.ExhaustCentre.Value().Degrees() - 110,
	} {
		if math.Abs(got) > 1e-9 { // rounding
			t.Errorf("%s %v, want 0", what, got)
		}
	}
	if u := res.Inlet.Crank.U().Degrees(); math.Abs(u-math.Sqrt(0.5+0.09)) > 1e-9 {
		t.Errorf("u %v", u)
	}
	if got := res.Causes.Leader().Key; got != "nothing-wrong" && got != "tdc-mark" {
		t.Errorf("leader %s", got)
	}
}

func drawPosition(t *rapid.T, name string) measure.Position {
	if rapid.IntRange(0, 5).Draw(t, name+" taken") == 0 {
		return measure.Position{}
	}
	d := units.TDC
	if rapid.Bool().Draw(t, name+" datum") {
		d = units.BDC
	}
	return measure.At(units.After(d, units.CrankDegrees(rapid.Float64Range(-360, 360).Draw(t, name))), units.CrankDegrees(rapid.Float64Range(0.01, 20).Draw(t, name+" u")))
}

// Whatever is read, the answer is finite, adds up and writes as JSON.
func TestAnyReadings(t *testing.T) { rapid.Check(t, checkDiagnose) }

func FuzzDiagnose(f *testing.F) {
	fuzzBytes(f)
	f.Fuzz(rapid.MakeFuzz(checkDiagnose))
}

func checkDiagnose(t *rapid.T) {
	e := engine()
	if rapid.Bool().Draw(t, "one shaft") {
		e.Drive = timing.OneCamwheel(24, 48)
	}
	e.Keyways = rapid.IntRange(0, 7).Draw(t, "keyways")
	mm := func(name string, hi float64) measure.Reading[units.Length] {
		if rapid.Bool().Draw(t, name+" taken") {
			return measure.Of(units.Millimetres(rapid.Float64Range(0.1, hi).Draw(t, name)), units.Millimetres(0.02))
		}
		return measure.Reading[units.Length]{}
	}
	e.Check = timing.Check{Lift: units.Millimetres(rapid.Float64Range(0, 0.85).Draw(t, "check lift")), Clearance: units.Millimetres(rapid.Float64Range(0, 1).Draw(t, "clearance"))}
	if rapid.Bool().Draw(t, "lift known") {
		e.Inlet.MaxLift = measure.Of(units.Millimetres(rapid.Float64Range(1, 12).Draw(t, "top")), units.Millimetres(0.1))
	}
	r := timing.Readings{
		InletOpens: drawPosition(t, "io"), InletCloses: drawPosition(t, "ic"), ExhaustOpens: drawPosition(t, "eo"), ExhaustCloses: drawPosition(t, "ec"),
		TDC: timing.TDCBy(rapid.IntRange(0, 3).Draw(t, "tdc")), InletMaxLift: mm("max", 12), InletLiftAtTDC: mm("at TDC", 12), InletClearance: mm("gap", 2),
		MarksAlign: timing.Seen(rapid.IntRange(0, 2).Draw(t, "marks")), Sequence: timing.Seen(rapid.IntRange(0, 2).Draw(t, "order")),
		Spark: timing.Seen(rapid.IntRange(0, 2).Draw(t, "spark")),
	}
	if rapid.Bool().Draw(t, "other check") {
		r.Check = &timing.Check{Lift: units.Millimetres(rapid.Float64Range(0, 3).Draw(t, "other lift")), At: timing.Place(rapid.IntRange(0, 1).Draw(t, "place"))}
	}
	res, err := timing.Diagnose(timing.Input{Engine: e, Readings: r}, timing.Options{})
	if err != nil {
		t.Fatalf("%v", err)
	}
	if _, err := json.Marshal(res); err != nil {
		t.Fatalf("JSON: %v", err)
	}
	if res.NoAnswer.Given() {
		return
	}
	sum, percent := 0.0, 0
	for _, o := range res.Causes.Odds {
		if !(o.Share >= 0 && o.Share <= 1) {
			t.Fatalf("share of %s is %v", o.Key, o.Share)
		}
		sum += o.Share
		percent += o.Percent
	}
	if math.Abs(sum-1) > 1e-9 || percent != 100 { // rounding over some hundred causes
		t.Fatalf("shares add up to %v, %d %%", sum, percent)
	}
	for _, x := range res.Explained {
		for _, v := range []measure.Reading[units.CrankAngle]{x.Inlet, x.Exhaust, x.TDCLate} {
			if v.Err() != nil {
				t.Fatalf("%s: %v", x.Key, v.Err())
			}
		}
		if !(x.Tail >= 0 && x.Tail <= 1) || !(x.ChiSquared >= 0) {
			t.Fatalf("%s: chi^2 %v, tail %v", x.Key, x.ChiSquared, x.Tail)
		}
	}
}

// Turning the whole of the readings round by one turn of the disc changes
// nothing: a disc cannot tell one turn from another.
func TestReadingsWrap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := timing.Readings{InletOpens: drawPosition(t, "io"), InletCloses: drawPosition(t, "ic"), ExhaustOpens: drawPosition(t, "eo"), ExhaustCloses: disc("25 ATDC")}
		before, err := timing.Causes(timing.Input{Engine: engine(), Readings: r}, timing.Options{})
		if err != nil {
			t.Fatal(err)
		}
		round := func(p measure.Position) measure.Position {
			if !p.Taken() {
				return p
			}
			by := 360 * units.CrankDegree
			if p.Value().After() > 0 {
				by = -by
			}
			return measure.At(units.After(p.Value().Datum(), p.Value().After()+by), p.U())
		}
		r.InletOpens, r.ExhaustOpens = round(r.InletOpens), round(r.ExhaustOpens)
		after, err := timing.Causes(timing.Input{Engine: engine(), Readings: r}, timing.Options{})
		if err != nil {
			t.Fatal(err)
		}
		for _, o := range before.Odds {
			// the sum of 360 and an angle rounds in the 13th digit
			if p, _ := after.Of(o.Key); math.Abs(p.Share-o.Share) > 1e-6 {
				t.Fatalf("%s %v, a turn later %v", o.Key, o.Share, p.Share)
			}
		}
	})
}

// Cams on wrong turns, and the spark on the wrong stroke.
func TestWholeTurns(t *testing.T) {
	r := events("25 BTDC", "65 ABDC", "65 BBDC", "25 ATDC")
	r.Sequence, r.MarksAlign = timing.No, timing.No
	res := diagnose(t, engine(), r, timing.Options{})
	if k := res.Causes.Leader().Key; k != "inlet-wheel:turn" && k != "exhaust-wheel:turn" {
		t.Errorf("valves out of order: %s", k)
	}
	if res.Turning.ByHand {
		t.Error("a cam a whole turn out may be turned against its piston")
	}
	r.Sequence, r.MarksAlign, r.Spark = timing.Yes, timing.Yes, timing.No
	res = diagnose(t, engine(), r, timing.Options{})
	if res.Causes.Leader().Key != "nothing-wrong" {
		t.Errorf("spark on overlap is no valve fault: %s", res.Causes.Leader().Key)
	}
	if k := res.Firing.Leader().Key; k != "magneto-half-turn" {
		t.Errorf("spark on overlap: %s", k)
	}
	r.MagnetoMarks = timing.Yes
	res = diagnose(t, engine(), r, timing.Options{})
	if k := res.Firing.Leader().Key; k != "cams-whole-turn" {
		t.Errorf("spark on overlap, magneto's marks right: %s", k)
	}
}

func TestCautionsAndWhatWasNotChecked(t *testing.T) {
	r := diagnose(t, engine(), events("10 BTDC", "80 ABDC", "-", "-"), timing.Options{})
	caution := false
	for _, c := range r.Basis.Cautions {
		caution = caution || c == refdata.ValveMeetsPiston
	}
	if !caution || len(r.Basis.NotChecked) == 0 || len(r.Basis.Sources) == 0 {
		t.Errorf("%+v", r.Basis)
	}
	if r.Exhaust.Crank.Taken() || r.Read.Overlap.Taken() {
		t.Error("figures of a cam that was not read")
	}
	none := diagnose(t, engine(), timing.Readings{}, timing.Options{})
	if none.NoAnswer.Code != timing.TooFewReadings {
		t.Errorf("no readings: %v", none.NoAnswer)
	}
	if _, err := timing.Causes(timing.Input{Engine: engine()}, timing.Options{}); !errors.As(err, new(fault.Fault)) {
		t.Errorf("no readings: %v", err)
	}
}

func FuzzParseEvent(f *testing.F) {
	for _, s := range []string{"inlet opens 25 BTDC", "IVC 40 ABDC at 1 mm lift", "EVO 65° BBDC at 0.04 in at the follower, clearance 8 thou", "evc TDC clearance 0.3mm", "inlet opens"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		e, err := timing.ParseEvent(s)
		if err != nil {
			if len(fault.Faults(err)) != 1 || e != (timing.Event{}) {
				t.Fatalf("%q: %v %v", s, e, err)
			}
			return
		}
		back, err := timing.ParseEvent(e.String())
		if err != nil || back != e {
			t.Fatalf("%q: %q reads back as %v, %v", s, e, back, err)
		}
	})
}

// Exchanged cams show the other's duration and lift.
func TestCamsExchanged(t *testing.T) {
	e := engine()
	e.Inlet = timing.Lobe{Opens: units.Before(units.TDC, 30*units.CrankDegree), Closes: units.After(units.BDC, 70*units.CrankDegree), MaxLift: measure.Of(10*units.Millimetre, 0.05*units.Millimetre)}
	e.Exhaust = timing.Lobe{Opens: units.Before(units.BDC, 50*units.CrankDegree), Closes: units.After(units.TDC, 15*units.CrankDegree), MaxLift: measure.Of(8.5*units.Millimetre, 0.05*units.Millimetre)}
	r := events("13 BTDC", "52 ABDC", "67 BBDC", "33 ATDC")
	r.InletMaxLift, r.ExhaustMaxLift = measure.By(8.5*units.Millimetre, measure.DialGauge()), measure.By(10*units.Millimetre, measure.DialGauge())
	res := diagnose(t, e, r, timing.Options{})
	if got := res.Causes.Leader(); got.Key != "cams-exchanged" || res.Remedies[0].Key != "exchange-cams" {
		t.Errorf("%s %v, %v", got.Key, got.Share, res.Remedies[0].Key)
	}
	// cams alike are not listed as exchanged: it would do no harm and show nowhere
	if _, ok := diagnose(t, engine(), r, timing.Options{}).Causes.Of("cams-exchanged"); ok {
		t.Error("cams alike listed as exchanged")
	}
}

// One event misread by ten degrees does not condemn a cam.
func TestMisreadEvent(t *testing.T) {
	r := events("25 BTDC", "65 ABDC", "65 BBDC", "35 ATDC")
	r.TDC = timing.TDCByStop
	res := diagnose(t, engine(), r, timing.Options{})
	nothing, _ := res.Causes.Of("nothing-wrong")
	if res.Causes.Leader().Key != "nothing-wrong" && nothing.Share < 0.2 {
		t.Errorf("%v %v", res.Causes.Leader(), nothing)
	}
	for _, e := range res.Explained {
		if e.Key == "nothing-wrong" && e.Misread != "exhaust closes" {
			t.Errorf("misread %q", e.Misread)
		}
	}
	if res.NextReadings[0].Key != "again-exhaust-closes" {
		t.Errorf("next %v, want the event read again", res.NextReadings[0])
	}
	never := diagnose(t, engine(), r, timing.Options{Misread: timing.Misread{Chance: -1}})
	if got, _ := never.Causes.Of("nothing-wrong"); !(got.Share < nothing.Share/5) {
		t.Errorf("never misread, yet nothing wrong %v, before %v", got.Share, nothing.Share)
	}
}

// Events read at another lift than the specification's are moved there first;
// without that they would seem shorter by some degrees at each end.
func TestReadAtAnotherCheck(t *testing.T) {
	e := engine()
	e.Check = timing.Check{Lift: 0.3 * units.Millimetre}
	e.Inlet.MaxLift, e.Exhaust.MaxLift = measure.Of(9*units.Millimetre, 0.05*units.Millimetre), measure.Of(9*units.Millimetre, 0.05*units.Millimetre)
	r := events("18 BTDC", "58 ABDC", "58 BBDC", "18 ATDC")
	if got := diagnose(t, e, r, timing.Options{}).Causes.Leader().Key; got == "nothing-wrong" {
		t.Error("seven degrees at each end, and nothing is wrong")
	}
	r.Check = &timing.Check{Lift: 0.7 * units.Millimetre}
	res := diagnose(t, e, r, timing.Options{})
	if got := res.Causes.Leader().Key; got != "nothing-wrong" {
		t.Errorf("read at 0.7 mm: %s", got)
	}
	said := false
	for _, a := range res.Basis.Assumed {
		said = said || a.What == "events moved to the check they were read at"
	}
	if !said {
		t.Error("the move to another check is not said")
	}
}

// Both lobes on one shaft: what is wrong moves both, and only the mean of the two
// can be brought home.
func TestOneShaft(t *testing.T) {
	e := engine()
	e.Drive = timing.OneCamwheel(24, 48)
	r := events("33 BTDC", "57 ABDC", "73 BBDC", "17 ATDC")
	r.TDC = timing.TDCByStop
	res := diagnose(t, e, r, timing.Options{})
	if got := res.Causes.Leader().Key; got != "camshaft-slip" {
		t.Errorf("both 8° early: %s", got)
	}
	if m := res.Remedies[0]; m.Key != "camshaft-press" || m.InletLeft.Abs() > 0.51 || m.ExhaustLeft.Abs() > 0.51 { // the readings' own halves
		t.Errorf("%+v", m)
	}
	e.InletFixing, e.Keyways = timing.OnePiece, 5
	r = events("31 BTDC", "59 ABDC", "71 BBDC", "19 ATDC")
	r.TDC = timing.TDCByStop
	res = diagnose(t, e, r, timing.Options{})
	if got := res.Causes.Leader().Key; got != "pinion-keyway:+2" || res.Remedies[0].Key != "pinion-keyway:-2" {
		t.Errorf("both 6° early, shaft and wheel of one piece, keyways of 3°: %s, %s", got, res.Remedies[0].Key)
	}
}

// Figures at the ends of what a float can hold give a fault or an answer, never a
// panic or a NaN.
func TestExtremes(t *testing.T) {
	figure := rapid.SampledFrom([]float64{0, 1, -1, 1e-300, 1e300, -1e300, math.Inf(1), math.Inf(-1), math.NaN(), 179, 360, 1e-9, 25, 0.5})
	rapid.Check(t, func(t *rapid.T) {
		x := func(name string) float64 { return figure.Draw(t, name) }
		at := func(name string) measure.Position {
			return measure.At(units.After(units.Datum(rapid.IntRange(0, 1).Draw(t, name+" datum")), units.CrankDegrees(x(name))), units.CrankDegrees(x(name+" u")))
		}
		mm := func(name string) measure.Reading[units.Length] {
			return measure.Of(units.Millimetres(x(name)), units.Millimetres(x(name+" u")))
		}
		e := engine()
		n := rapid.IntRange(0, 9).Draw(t, "what")
		switch n {
		case 0:
			e.Inlet.Opens = units.After(units.TDC, units.CrankDegrees(x("opens")))
		case 1:
			e.Inlet.MaxLift, e.Check.Lift = mm("lift"), units.Millimetres(x("check"))
		case 2:
			e.Inlet.OpeningRise = units.Millimetres(x("rise"))
		case 3:
			e.Head = &timing.Head{Slider: crank.Slider{Stroke: units.Millimetres(x("stroke")), Rod: units.Millimetres(x("rod"))}, Inlet: timing.Valve{ToPiston: mm("gap"), Tilt: units.Degrees(x("tilt"))}}
		case 4:
			e.Cylinder = crank.Cylinder{Bore: units.Millimetres(x("bore")), Slider: crank.Slider{Stroke: units.Millimetres(x("stroke")), Rod: units.Millimetres(x("rod"))}, Clearance: units.CubicCentimetres(x("clearance"))}
		case 5:
			e.InletVernier = timing.Vernier{Wheel: rapid.IntRange(-1, 500).Draw(t, "holes"), Cam: rapid.IntRange(-1, 500).Draw(t, "holes")}
			e.InletShim = timing.Shim{Each: units.CrankDegrees(x("shim")), Most: rapid.IntRange(-1, 200).Draw(t, "shims")}
		case 6:
			e.Drive = gear.Drive{{From: "crank", Driver: rapid.IntRange(-1, 60).Draw(t, "z"), To: "inlet", Driven: rapid.IntRange(0, 60).Draw(t, "z")}, {From: "inlet", Driver: 30, To: "exhaust", Driven: 30}}
		}
		r := timing.Readings{InletOpens: at("io"), InletCloses: at("ic"), ExhaustOpens: at("eo")}
		if n > 6 {
			r.InletMaxLift, r.Lag = mm("max"), measure.Of(units.CrankDegrees(x("lag")), units.CrankDegrees(x("lag u")))
			r.CompressionDry = measure.Of(units.Bars(x("dry")), units.Bars(x("dry u")))
		}
		if n%5 == 4 {
			r.Leak = timing.LeakTest{Supply: measure.Of(units.Bars(x("supply")), units.Bars(x("supply u"))), Held: measure.Of(units.Bars(x("held")), units.Bars(x("held u"))), HeldWet: measure.Of(units.Bars(x("wet")), units.Bars(x("wet u"))), AtInlet: timing.Seen(n % 4), At: at("at").Value()}
		}
		opt := timing.Options{Trifle: units.CrankDegrees(x("trifle")), Near: units.CrankDegrees(x("near"))}
		opt.Widths.Slip, opt.Priors.Slip = units.CrankDegrees(x("slip")), x("prior")
		res, err := timing.Diagnose(timing.Input{Engine: e, Readings: r}, opt)
		if err != nil {
			if len(fault.Faults(err)) == 0 {
				t.Fatal(err)
			}
			return
		}
		for _, o := range res.Causes.Odds {
			if !(o.Share >= 0) {
				t.Fatalf("%s %v", o.Key, o.Share)
			}
		}
		if _, err := json.Marshal(res); err != nil {
			t.Fatal(err)
		}
	})
}

// Readings that nothing listed explains are not forced on a listed cause, and
// nothing is moved on such ground.
func TestNonsense(t *testing.T) {
	r := events("70 BTDC", "130 ABDC", "5 BBDC", "100 ATDC")
	r.TDC, r.InletClearance, r.ExhaustClearance = timing.TDCByStop, measure.Of(0*units.Millimetre, 0.02*units.Millimetre), measure.Of(0*units.Millimetre, 0.02*units.Millimetre)
	res := diagnose(t, engine(), r, timing.Options{})
	if got := res.Causes.Leader(); got.Key != measure.SomethingElse || len(res.Remedies) != 1 || res.Remedies[0].Key != "read-again" {
		t.Errorf("%s %v, %v", got.Key, got.Share, res.Remedies)
	}
	if res.Turning.Start {
		t.Error("not explained, and it may be started")
	}
}
