package timing

import (
	"math"
	"testing"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// benchOf is the demonstration machine with readings: its inlet valve open from 25°
// before overlap TDC to 245° after it, its exhaust valve from 475° to 745°.
func benchOf(t *testing.T, r Readings) *bench {
	t.Helper()
	e := Engine{
		Drive:   TwoCamwheels(24, 48),
		Inlet:   Lobe{Opens: units.After(units.TDC, -25*units.CrankDegree), Closes: units.After(units.BDC, 65*units.CrankDegree)},
		Exhaust: Lobe{Opens: units.After(units.BDC, -65*units.CrankDegree), Closes: units.After(units.TDC, 25*units.CrankDegree)},
	}
	opt := Options{}.filled()
	in := Input{Engine: e, Readings: r}
	if err := in.check(&opt); err != nil {
		t.Fatal(err)
	}
	b, err := newBench(newSheet(&in, &opt))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := b.rank(); err != nil {
		t.Fatal(err)
	}
	return b
}

func faultOn(f family, c Cam) *atom { return &atom{family: f, cams: []Cam{c}} }

// How likely a valve stands open: by the normal integral of the distance from its
// nearest event over 6°. One standard deviation either side of an event is 0.8413447
// and 0.1586553, in any table of it.
func TestChanceThatAValveIsOpen(t *testing.T) {
	const in, out = 0.841344746, 0.158655254
	b := benchOf(t, Readings{})
	for _, c := range []struct {
		at     float64
		of     Cam
		turned bool
		want   float64
	}{
		{245, Inlet, false, 0.5}, {239, Inlet, false, in}, {251, Inlet, false, out},
		{-25, Inlet, false, 0.5}, {-19, Inlet, false, in}, {-31, Inlet, false, out}, {695, Inlet, false, 0.5}, {689, Inlet, false, out}, {701, Inlet, false, in},
		{110, Inlet, false, 1}, {470, Inlet, false, 0}, {360, Inlet, false, 0},
		{475, Exhaust, false, 0.5}, {469, Exhaust, false, out}, {481, Exhaust, false, in}, {25, Exhaust, false, 0.5}, {19, Exhaust, false, in}, {31, Exhaust, false, out},
		{335, Inlet, true, 0.5}, {329, Inlet, true, out}, {341, Inlet, true, in}, {605, Inlet, true, 0.5}, {611, Inlet, true, out}, {110, Inlet, true, 0},
		{115, Exhaust, true, 0.5}, {385, Exhaust, true, 0.5}, {391, Exhaust, true, out},
	} {
		v := &verdict{}
		if c.turned {
			v.faults = []*atom{faultOn(wholeTurn, c.of)}
		}
		if got := b.openAt(v, c.at)[c.of]; !(math.Abs(got-c.want) <= 1e-9) { // digits of the table
			t.Errorf("%v at %v°, turned %v: %.9f, want %v", c.of, c.at, c.turned, got, c.want)
		}
	}
	// all events 30° early of a dead centre surely right: so are the valves
	at := func(d units.Datum, x float64) measure.Position {
		return measure.At(units.After(d, units.CrankDegrees(x)), 0.5*units.CrankDegree)
	}
	b = benchOf(t, Readings{
		InletOpens: at(units.TDC, -55), InletCloses: at(units.BDC, 35), ExhaustOpens: at(units.BDC, -95), ExhaustCloses: at(units.TDC, -5),
		TDCLate: measure.Of(0*units.CrankDegree, 0.001*units.CrankDegree),
	})
	v := &b.verdicts[b.index["whole-train:+2"]]
	for _, c := range []struct {
		at   float64
		of   Cam
		want float64
	}{{-55, Inlet, 0.5}, {-61, Inlet, out}, {215, Inlet, 0.5}, {221, Inlet, out}, {445, Exhaust, 0.5}, {-5, Exhaust, 0.5}} {
		if got := b.openAt(v, c.at)[c.of]; !(math.Abs(got-c.want) <= 1e-3) { // the dead centre is known to some hundredths
			t.Errorf("early by 30°, %v at %v°: %.5f, want %v", c.of, c.at, got, c.want)
		}
	}
}

// What may be the matter, by hand from the documented shares: sound, rings and valves
// 0.70, 0.18, 0.12, with a valve held 0.05, 0.05, 0.90, on the wrong turn 0.02, 0.02,
// 0.96; of valves 0.35, 0.50 and 0.15 inlet, exhaust and joint, but 0.85 for the one
// that is held or turned; a valve open by its timing goes before all that.
func TestConditionsByHand(t *testing.T) {
	type key struct{ state, leak, shown int }
	seat := func(m map[key]float64, share float64) {
		m[key{valves, pastInlet, inletValve}] += 0.35 * share
		m[key{valves, pastExhaust, exhaustValve}] += 0.50 * share
		m[key{valves, pastJoint, headJoint}] += 0.15 * share
	}
	for name, c := range map[string]struct {
		at     float64 // after firing TDC
		faults []*atom
		want   func(m map[key]float64)
	}{
		"shut, nothing wrong": {0, nil, func(m map[key]float64) {
			m[key{sound, tight, sound}], m[key{rings, pastRings, rings}] = 0.70, 0.18
			seat(m, 0.12)
		}},
		"inlet held": {0, []*atom{faultOn(held, Inlet)}, func(m map[key]float64) {
			m[key{sound, tight, sound}], m[key{rings, pastRings, rings}], m[key{valves, inletOpen, inletValve}] = 0.05, 0.05, 0.90*0.85
			seat(m, 0.90*0.15)
		}},
		"exhaust held": {0, []*atom{faultOn(held, Exhaust)}, func(m map[key]float64) {
			m[key{sound, tight, sound}], m[key{rings, pastRings, rings}], m[key{valves, exhaustOpen, exhaustValve}] = 0.05, 0.05, 0.90*0.85
			seat(m, 0.90*0.15)
		}},
		"inlet on the wrong turn, opening here": {-25, []*atom{faultOn(wholeTurn, Inlet)}, func(m map[key]float64) {
			m[key{sound, inletOpen, inletValve}], m[key{rings, inletOpen, inletValve}], m[key{valves, inletOpen, inletValve}] = 0.01, 0.01, 0.48
			m[key{sound, tight, sound}], m[key{rings, pastRings, rings}], m[key{valves, tight, inletValve}] = 0.01, 0.01, 0.48*0.85
			seat(m, 0.48*0.15)
		}},
		"exhaust on the wrong turn, closing here": {25, []*atom{faultOn(wholeTurn, Exhaust)}, func(m map[key]float64) {
			m[key{sound, exhaustOpen, exhaustValve}], m[key{rings, exhaustOpen, exhaustValve}], m[key{valves, exhaustOpen, exhaustValve}] = 0.01, 0.01, 0.48
			m[key{sound, tight, sound}], m[key{rings, pastRings, rings}], m[key{valves, tight, exhaustValve}] = 0.01, 0.01, 0.48*0.85
			seat(m, 0.48*0.15)
		}},
		"both on the wrong turn, one closing": {25, []*atom{faultOn(wholeTurn, Exhaust), faultOn(wholeTurn, Inlet)}, func(m map[key]float64) {
			// open 1 and 1/2, so two thirds and one third; nothing is left shut
			for state, share := range [states]float64{0.02, 0.02, 0.96} {
				m[key{state, inletOpen, inletValve}], m[key{state, exhaustOpen, exhaustValve}] = share*2/3, share/3
			}
		}},
	} {
		b := benchOf(t, Readings{Leak: LeakTest{Lost: measure.Of(10*units.Percent, 2*units.Percent), At: units.After(units.TDC, units.CrankDegrees(c.at))}})
		v := &verdict{faults: c.faults}
		want, got, sum := map[key]float64{}, map[key]float64{}, 0.0
		c.want(want)
		for _, x := range b.conditions(v) {
			got[key{x.state, x.leak, x.shown}] += x.share
			sum += x.share
		}
		if !(math.Abs(sum-1) <= 1e-12) {
			t.Errorf("%s: shares add up to %v", name, sum)
		}
		for k, x := range got { // a valve four deviations from its event is open once in 30 000 times
			if !(math.Abs(x-want[k]) <= 1e-4) {
				t.Errorf("%s: %+v has %.6f, want %.6f", name, k, x, want[k])
			}
		}
		for k, x := range want {
			if !(math.Abs(x-got[k]) <= 1e-4) {
				t.Errorf("%s: %+v has %.6f, want %.6f", name, k, got[k], x)
			}
		}
	}
}

// A valve open is a valve open, inlet or exhaust, where nobody listened.
func TestOpenValvesAlike(t *testing.T) {
	lost := func(x float64) measure.Reading[units.Ratio] {
		return measure.Of(units.Percents(x), 2*units.Percent)
	}
	logs := benchOf(t, Readings{Leak: LeakTest{Lost: lost(90), LostWet: lost(85)}}).leakLogs()
	if logs[inletOpen] != logs[exhaustOpen] || logs[pastInlet] != logs[pastExhaust] {
		t.Errorf("%v", logs)
	}
}

// The pressures' likelihoods against a normal of two figures written out: with
// variances a, b and covariance c of misses x, y it is
// -((b x² - 2 c x y + a y²)/(ab - c²) + ln(ab - c²))/2 - ln 2 pi.
func TestPressuresByHand(t *testing.T) {
	normal2 := func(x, y, a, b, c float64) float64 {
		det := a*b - c*c
		return -((b*x*x-2*c*x*y+a*y*y)/det+math.Log(det))/2 - math.Log(2*math.Pi)
	}
	const atmosphere = 1.01325 // bar
	dry, wet := 5.0, 6.0
	b := benchOf(t, Readings{CompressionDry: measure.Of(units.Bars(dry), units.Bars(0.3)), CompressionWet: measure.Of(units.Bars(wet), units.Bars(0.4))})
	ln := func(bar float64) float64 { return math.Log((bar + atmosphere) * 1e5) }
	ud, uw := 0.3/(dry+atmosphere), 0.4/(wet+atmosphere)
	d := b.pressures()
	// no listed cause: 5 and, by oil, e^0.1 times as many atmospheres, e^±0.8 and e^±0.2
	level := math.Log(5 * atmosphere * 1e5)
	if got, want := b.anyPressure(d), normal2(ln(dry)-level, ln(wet)-level-0.1, ud*ud+0.64, uw*uw+0.64+0.04, 0.64); !(math.Abs(got-want) <= 1e-9) {
		t.Errorf("anything else: %v, want %v", got, want)
	}
	b.squeeze = &squeeze{level: math.Log(8e5), sd: 0.12} // and e^-0.5 of what it should be, where that is known
	level = b.squeeze.level - 0.5
	if got, want := b.anyPressure(d), normal2(ln(dry)-level, ln(wet)-level-0.1, ud*ud+0.64, uw*uw+0.68, 0.64); !(math.Abs(got-want) <= 1e-9) {
		t.Errorf("anything else, sizes known: %v, want %v", got, want)
	}
	level = b.squeeze.level
	for state, x := range [states]struct{ drop, dropSD, rise, riseSD float64 }{{0, 0, 0.03, 0.05}, {0.40, 0.25, 0.25, 0.15}, {0.70, 0.45, 0.03, 0.06}} {
		common := 0.12*0.12 + x.dropSD*x.dropSD
		want := normal2(ln(dry)-level+x.drop, ln(wet)-level+x.drop-x.rise, ud*ud+common, uw*uw+common+x.riseSD*x.riseSD, common)
		if got := b.shown(state, level).LogLikelihood(d); !(math.Abs(got-want) <= 1e-9) { // rounding
			t.Errorf("state %d: %v, want %v", state, got, want)
		}
	}
}

// What a dry test may show: the law of total variance over the three states, each a
// normal of 5 % gauge, the level (7 atmospheres to a factor of e without the sizes)
// and the state's own spread.
func TestPressureOutlookByHand(t *testing.T) {
	b := benchOf(t, Readings{})
	o := b.pressureOutlook(&verdict{})
	level := math.Log(7 * 101325)
	share, drop, own := [3]float64{0.70, 0.18, 0.12}, [3]float64{0, 0.40, 0.70}, [3]float64{0, 0.25, 0.45}
	mean := level
	for i := range share {
		mean -= share[i] * drop[i]
	}
	variance := 0.0
	for i := range share {
		variance += share[i] * (0.05*0.05 + 1 + own[i]*own[i] + (level-drop[i]-mean)*(level-drop[i]-mean))
	}
	if !(math.Abs(o.Mean-mean) <= 1e-9 && math.Abs(o.SD-math.Sqrt(variance)) <= 1e-9) { // rounding of squares near 180
		t.Errorf("%+v, want %v and %v", o, mean, math.Sqrt(variance))
	}
}

// What a leak-down test may show, with the pressures in hand: Bayes by hand over the
// five ways of a sound verdict, each heard right 0.88 of the time, else 0.03 each.
func TestLeakOutlookByHand(t *testing.T) {
	b := benchOf(t, Readings{CompressionDry: measure.Of(units.Bars(4), units.Bars(0.3)), CompressionWet: measure.Of(units.Bars(6), units.Bars(0.3))})
	v := &verdict{}
	told := b.stateLogs(v)
	p := [leakOutcomes]float64{0.70 * math.Exp(told[sound]), 0.18 * math.Exp(told[rings])}
	for i, x := range [3]float64{0.35, 0.50, 0.15} {
		p[pastInlet+i] = 0.12 * x * math.Exp(told[valves])
	}
	sum := 0.0
	for _, x := range p {
		sum += x
	}
	for i, got := range b.leakOutlook(v).Chances {
		if want := 0.88*p[i]/sum + 0.03*(1-p[i]/sum); !(math.Abs(got-want) <= 1e-9) { // a shut valve ten deviations away
			t.Errorf("%d: %v, want %v", i, got, want)
		}
	}
}

// The sum of no chances is none.
func TestLogSum(t *testing.T) {
	none := math.Inf(-1)
	for _, c := range []struct {
		x    []float64
		want float64
	}{{nil, none}, {[]float64{none, none}, none}, {[]float64{none, 2}, 2}, {[]float64{math.Log(2), math.Log(3)}, math.Log(5)}, {[]float64{-2000, -2000}, -2000 + math.Ln2}} {
		if got := logSum(c.x); got != c.want && !(math.Abs(got-c.want) <= 1e-12) {
			t.Errorf("%v: %v, want %v", c.x, got, c.want)
		}
	}
}
