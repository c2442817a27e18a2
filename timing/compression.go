package timing

import (
	"math"

	"example.com/benchbook/timing/crank"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// The cylinder's state, as a compression test tells it.
const (
	sound = iota
	rings
	valves
	states
)

// What a leak-down test tells apart in place of valves.
const (
	inletValve = states + iota
	exhaustValve
	headJoint
	shownStates
)

// state is what one state does to the pressure, in logarithms of absolute
// pressure: the drop from what a sound cylinder shows, and the rise by a spoonful
// of oil, which seals worn rings for a few strokes and does nothing for valves:
// common practice, no source, the figures too.
var cylinderStates = [states]struct {
	key, text              string
	prior                  float64
	drop, dropSD           float64
	rise, riseSD           float64
	priorHeld, priorOpened float64 // where a valve is held, where one is on the wrong turn
}{
	{"sound", "cylinder sound for its valve timing", 0.70, 0, 0, 0.03, 0.05, 0.05, 0.02},
	{"rings", "rings or bore leak: oil brings the pressure up", 0.18, 0.40, 0.25, 0.25, 0.15, 0.05, 0.02},
	{"valves", "a valve, its seat or the gasket leaks: oil changes nothing", 0.12, 0.70, 0.45, 0.03, 0.06, 0.90, 0.96},
}

// leakStates is how a leak-down test divides valves, with the part of its prior.
var leakStates = [shownStates]struct {
	key, text string
	part      float64
}{
	inletValve:   {"inlet-valve", "the inlet valve leaks or is held off its seat", leakOfValves[pastInlet]},
	exhaustValve: {"exhaust-valve", "the exhaust valve leaks or is held off its seat", leakOfValves[pastExhaust]},
	headJoint:    {"head-joint", "the head joint or the plug's thread leaks", leakOfValves[pastJoint]},
}

// index of the polytropic between one inlet closing and another at cranking: the
// middle of the range in crank.CrankingOptions.
const crankingIndex = 1.25

// testScatter is how far two sound engines, two gauges and two legs differ, in
// logarithms, beyond what the range for one engine holds: workshops call ten per
// cent good and tolerate twenty; common practice, no source.
const testScatter = 0.10

// squeeze is what a sound cylinder should show.
type squeeze struct {
	c     crank.Cylinder
	level float64 // ln of absolute pressure, Pa, at the book's inlet closing
	sd    float64
	ratio float64 // trapped, at the book's inlet closing
	gauge measure.Interval[units.Pressure]
}

// newSqueeze works out the level from the middle and the width of the range that
// crank.Cylinder gives, whose ends are taken as two standard deviations. It is nil
// if no cylinder was given or it gives no answer.
func (s *sheet) newSqueeze() *squeeze {
	c := s.engine.Cylinder
	if c == (crank.Cylinder{}) {
		return nil
	}
	q := &squeeze{c: c}
	closes := s.lobes[Inlet].closes
	k, err := c.Cranking(q.place(closes), crank.CrankingOptions{})
	if err != nil {
		return nil
	}
	lo, hi := math.Log(k.Absolute.Low.SI()), math.Log(k.Absolute.High.SI())
	q.level, q.sd, q.gauge = (lo+hi)/2, math.Hypot((hi-lo)/4, testScatter), k.Gauge
	q.ratio = q.trapped(closes)
	return q
}

// place is an inlet closing, kept between BDC and 5° before firing TDC, where
// nothing is left to squeeze.
func (q *squeeze) place(after float64) units.CrankPosition {
	return units.After(units.BDC, units.CrankDegrees(min(max(after-180, 0), 175)))
}

func (q *squeeze) trapped(closes float64) float64 {
	t, err := q.c.TrappedAt(q.place(closes))
	if err != nil {
		return 1
	}
	return max(t.Ratio.Value(), 1)
}

// at is the level with the inlet closing elsewhere: n ln of the ratio of trapped
// ratios.
func (q *squeeze) at(closes float64) float64 {
	return max(q.level+crankingIndex*math.Log(q.trapped(closes)/q.ratio), math.Log(units.Atmosphere.SI()))
}

// pressures is the log of absolute pressures read, dry and wet.
func (s *sheet) pressures() measure.Data {
	d := make(measure.Data, 2)
	for i, p := range [2]measure.Reading[units.Pressure]{s.read.CompressionDry, s.read.CompressionWet} {
		if p.Taken() {
			d[i] = measure.Datum{Value: math.Log(p.Value().SI() + units.Atmosphere.SI()), Taken: true}
		}
	}
	return d
}

// pressureU is the relative uncertainty of a gauge, of absolute pressure.
func (s *sheet) pressureU() [2]float64 {
	u := [2]float64{0.05, 0.05}
	for i, p := range [2]measure.Reading[units.Pressure]{s.read.CompressionDry, s.read.CompressionWet} {
		if p.Taken() {
			u[i] = math.Max(p.U().SI()/(p.Value().SI()+units.Atmosphere.SI()), 0.005)
		}
	}
	return u
}

// shown is a state as a cause of the two pressures.
func (b *bench) shown(state int, level float64) measure.Gaussian {
	x := &cylinderStates[state]
	u := b.pressureU()
	sd := 1.0 // without a cylinder the level tells nothing
	if b.squeeze != nil {
		sd = b.squeeze.sd
	}
	return measure.Gaussian{Mean: []float64{level - x.drop, level - x.drop + x.rise}, Own: u[:], Shared: []measure.Effect{
		{Name: "level", SD: sd, Column: []float64{1, 1}}, {Name: "oil", SD: x.riseSD, Column: []float64{0, 1}}, {Name: "leak", SD: x.dropSD, Column: []float64{1, 1}},
	}}
}

// level is what a sound cylinder should show if a verdict is true: by where the
// inlet then truly closes.
func (b *bench) level(v *verdict) float64 {
	if b.squeeze == nil {
		return math.Log(7 * units.Atmosphere.SI())
	}
	return b.squeeze.at(b.lobes[Inlet].closes - b.earliness(v)[rowOpens+1])
}

// earliness is how much earlier than specified each event truly comes if a verdict
// is true: as read, less what the dead centre was late by, or as the verdict has it
// where it was not read.
func (b *bench) earliness(v *verdict) (early [4]float64) {
	misled := false // the disc or gauge misled, and the cam is right
	for _, a := range v.faults {
		misled = misled || a.family == disc || a.family == checkLift
	}
	if v.best == nil || misled {
		return early
	}
	p := v.best
	g, _ := b.gaussian(p.mask, p.fixed)
	d := b.near(p.fixed)
	if v.misread >= 0 {
		d[v.misread].Taken = false
	}
	late := g.Outlook(rowStop, d).Mean
	for i := range early {
		if d[i].Taken {
			early[i] = d[i].Value - late
		} else {
			early[i] = g.Outlook(i, d).Mean - late
		}
	}
	return early
}

// stateShares is how likely each state is before the pressures, if a verdict is
// true.
func (v *verdict) stateShares() (share [states]float64) {
	for i, x := range cylinderStates {
		share[i] = x.prior
	}
	for _, a := range v.faults {
		for i, x := range cylinderStates {
			switch a.family {
			case held:
				share[i] = x.priorHeld
			case wholeTurn:
				share[i] = x.priorOpened
			}
		}
	}
	return share
}

// tested reports whether anything was read that tells of the cylinder's state.
func (s *sheet) tested() bool {
	return s.read.CompressionDry.Taken() || s.read.CompressionWet.Taken() || s.read.Leak.Taken()
}

// stateLogs is the log likelihood of the pressures in each state, if a verdict is
// true.
func (b *bench) stateLogs(v *verdict) (logs [states]float64) {
	d := b.pressures()
	if !d[0].Taken && !d[1].Taken {
		return logs
	}
	level := b.level(v)
	for i := range logs {
		logs[i] = b.shown(i, level).LogLikelihood(d)
	}
	return logs
}

// pressed returns the log likelihood of pressures and leak-down test under a
// verdict, and of each thing that may be the matter with its share. The two tests
// are taken as independent once that is given.
func (b *bench) pressed(v *verdict) (total float64, each [shownStates]float64) {
	told := b.stateLogs(v)
	for i := range each {
		each[i] = math.Inf(-1)
	}
	for _, c := range b.conditions(v) {
		x := told[c.state] + math.Log(c.share)
		if c.leak >= 0 {
			x += b.leak[c.leak]
		}
		each[c.shown] = logSum([]float64{each[c.shown], x})
	}
	return logSum(each[:]), each
}

// pressedAnyhow is the log likelihood of both tests if the cause is not listed.
func (b *bench) pressedAnyhow() float64 {
	ll := 0.0
	if d := b.pressures(); d[0].Taken || d[1].Taken {
		ll = b.anyPressure(d)
	}
	if b.read.Leak.Taken() {
		ll += b.leakAnyhow()
	}
	return ll
}

// anyPressure is the log likelihood of the pressures if the cause is not listed.
func (b *bench) anyPressure(d measure.Data) float64 {
	level := math.Log(5 * units.Atmosphere.SI())
	if b.squeeze != nil {
		level = b.squeeze.level - 0.5
	}
	u := b.pressureU()
	return measure.Gaussian{Mean: []float64{level, level + 0.1}, Own: u[:], Shared: []measure.Effect{
		{SD: 0.8, Column: []float64{1, 1}}, {SD: 0.2, Column: []float64{0, 1}},
	}}.LogLikelihood(d)
}

// Compression is what compression and leak-down test say beside the events.
type Compression struct {
	// Expected is what a sound cylinder shows with the inlet closing as
	// specified, and AsTimed with it closing as the leading cause has it; zero
	// without Engine.Cylinder.
	Expected measure.Interval[units.Pressure] `json:"expected,omitzero"`
	AsTimed  measure.Interval[units.Pressure] `json:"as_timed,omitzero"`
	// Lost is the part of the supplied pressure lost in the leak-down test, and
	// LostWet the same with oil in the bore; not taken where it was not read.
	Lost    measure.Reading[units.Ratio] `json:"lost,omitzero"`
	LostWet measure.Reading[units.Ratio] `json:"lost_wet,omitzero"`
	// States ranks rings, valves and a sound cylinder, and with a leak-down test
	// inlet valve, exhaust valve and head joint in place of valves; empty if
	// neither was taken.
	States measure.Ranking `json:"states"`
}

// compression ranks the states of the cylinder over all verdicts.
func (b *bench) compression(r *Result) (Compression, error) {
	var c Compression
	if b.squeeze != nil {
		c.Expected = measure.Between(hundredths(b.squeeze.gauge.Low.SI()), hundredths(b.squeeze.gauge.High.SI()))
		if i, ok := b.index[r.Causes.Leader().Key]; ok {
			level, p0 := b.level(&b.verdicts[i]), units.Atmosphere.SI()
			shift := math.Exp(level - b.squeeze.level)
			lo, hi := (c.Expected.Low.SI()+p0)*shift-p0, (c.Expected.High.SI()+p0)*shift-p0
			c.AsTimed = measure.Between(hundredths(lo), hundredths(hi))
		}
	}
	if !b.tested() {
		return c, nil
	}
	var err error
	if c.Lost, c.LostWet, err = b.read.Leak.PartLost(); err != nil {
		return c, err
	}
	var logs [shownStates][]float64
	for _, o := range r.Causes.Odds {
		if i, ok := b.index[o.Key]; ok && o.Share > 1e-4 {
			v := &b.verdicts[i]
			_, each := b.pressed(v)
			for k, x := range each {
				// the share already holds the tests: take them out of it once
				logs[k] = append(logs[k], math.Log(o.Share)-v.pressed+x)
			}
		}
	}
	causes := make([]measure.Cause, 0, shownStates)
	for k := range logs {
		cause := measure.Cause{Key: leakStates[k].key, Text: leakStates[k].text}
		if k < states {
			x := &cylinderStates[k]
			cause = measure.Cause{Key: x.key, Text: x.text, Prior: x.prior}
		} else {
			cause.Prior = leakStates[k].part * cylinderStates[valves].prior
		}
		if listed := k < valves || b.read.Leak.Taken() == (k > valves); !listed {
			continue
		}
		ll := logSum(logs[k]) - math.Log(cause.Prior)
		cause.Hypothesis = measure.LogLikelihood(func(measure.Data) float64 { return ll })
		causes = append(causes, cause)
	}
	other, _ := r.Causes.Of(measure.SomethingElse)
	c.States, err = measure.Rank(b.pressures(), causes, measure.Cause{Text: "something else", Prior: 0.02, Hypothesis: measure.LogLikelihood(func(measure.Data) float64 {
		return math.Log(max(other.Share, 1e-9)) - math.Log(0.02)
	})})
	return c, err
}

// hundredths is a gauge pressure to 0.01 bar, not below zero.
func hundredths(pa float64) units.Pressure {
	return units.Bars(math.Round(max(units.Pascals(pa).Bars(), 0)*100) / 100)
}

func logSum(x []float64) float64 {
	top := math.Inf(-1)
	for _, v := range x {
		top = max(top, v)
	}
	if math.IsInf(top, -1) {
		return top
	}
	sum := 0.0
	for _, v := range x {
		sum += math.Exp(v - top)
	}
	return top + math.Log(sum)
}

// pressureOutlook is what a verdict makes one expect of a dry test: the mean and
// spread over the states, in logarithms.
func (b *bench) pressureOutlook(v *verdict) measure.Outlook {
	level, share := b.level(v), v.stateShares()
	var mean, square float64
	for i, w := range share {
		o := b.shown(i, level).Outlook(0, make(measure.Data, 2))
		mean += w * o.Mean
		square += w * (o.SD*o.SD + o.Mean*o.Mean)
	}
	return measure.Outlook{Mean: mean, SD: math.Sqrt(max(square-mean*mean, 1e-6))}
}
