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
// crank.Cylinder gives, whose ends are taken as two standard deviations. ok is
// false if no cylinder was given or it gives no answer.
func (s *sheet) newSqueeze() (*squeeze, bool) {
	c := s.engine.Cylinder
	if c == (crank.Cylinder{}) {
		return nil, false
	}
	q := &squeeze{c: c}
	closes := s.lobes[Inlet].closes
	k, err := c.Cranking(q.place(closes), crank.CrankingOptions{})
	if err != nil {
		return nil, false
	}
	lo, hi := math.Log(k.Absolute.Low.SI()), math.Log(k.Absolute.High.SI())
	q.level, q.sd, q.gauge = (lo+hi)/2, math.Hypot((hi-lo)/4, testScatter), k.Gauge
	q.ratio = q.trapped(closes)
	return q, q.ratio > 1 && !math.IsNaN(q.level+q.sd)
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
	g := measure.Gaussian{Mean: []float64{level - x.drop, level - x.drop + x.rise}, Own: u[:], Shared: []measure.Effect{
		{Name: "level", SD: sd, Column: []float64{1, 1}}, {Name: "oil", SD: x.riseSD, Column: []float64{0, 1}},
	}}
	if x.dropSD > 0 {
		g.Shared = append(g.Shared, measure.Effect{Name: "leak", SD: x.dropSD, Column: []float64{1, 1}})
	}
	return g
}

// level is what a sound cylinder should show if a verdict is true: by where the
// inlet then truly closes.
func (b *bench) level(v *verdict) float64 {
	if b.squeeze == nil {
		return math.Log(7 * units.Atmosphere.SI())
	}
	closes := b.lobes[Inlet].closes
	misled := false // the disc or gauge misled, and the cam is right
	for _, a := range v.faults {
		misled = misled || a.family == disc || a.family == checkLift
	}
	if v.best != nil && !misled {
		p := v.best
		g, _ := b.gaussian(p.mask, p.fixed)
		d := b.near(p.fixed)
		if v.misread >= 0 {
			d[v.misread].Taken = false
		}
		late := g.Outlook(rowStop, d).Mean
		if in := d[rowOpens+1]; in.Taken {
			closes -= in.Value - late
		} else {
			closes -= g.Outlook(rowOpens+1, d).Mean - late
		}
	}
	return b.squeeze.at(closes)
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

// pressed returns the log likelihood of the pressures under a verdict, and of
// each state with its share.
func (b *bench) pressed(v *verdict, d measure.Data) (total float64, each [states]float64) {
	level, share := b.level(v), v.stateShares()
	top := math.Inf(-1)
	for i := range each {
		each[i] = b.shown(i, level).LogLikelihood(d) + math.Log(share[i])
		top = max(top, each[i])
	}
	sum := 0.0
	for _, x := range each {
		sum += math.Exp(x - top)
	}
	return top + math.Log(sum), each
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

// Compression is what the compression test says beside the events.
type Compression struct {
	// Expected is what a sound cylinder shows with the inlet closing as
	// specified, and AsTimed with it closing as the leading cause has it; zero
	// without Engine.Cylinder.
	Expected measure.Interval[units.Pressure] `json:"expected,omitzero"`
	AsTimed  measure.Interval[units.Pressure] `json:"as_timed,omitzero"`
	// States ranks rings, valves and a sound cylinder; empty if no pressure was
	// read.
	States measure.Ranking `json:"states"`
}

// compression ranks the states of the cylinder over all verdicts.
func (b *bench) compression(r *Result) (Compression, error) {
	var c Compression
	d := b.pressures()
	if b.squeeze != nil {
		c.Expected = measure.Between(hundredths(b.squeeze.gauge.Low.SI()), hundredths(b.squeeze.gauge.High.SI()))
		if i, ok := b.index[r.Causes.Leader().Key]; ok {
			level, p0 := b.level(&b.verdicts[i]), units.Atmosphere.SI()
			shift := math.Exp(level - b.squeeze.level)
			lo, hi := (c.Expected.Low.SI()+p0)*shift-p0, (c.Expected.High.SI()+p0)*shift-p0
			c.AsTimed = measure.Between(hundredths(lo), hundredths(hi))
		}
	}
	if !d[0].Taken && !d[1].Taken {
		return c, nil
	}
	var logs [states][]float64
	for _, o := range r.Causes.Odds {
		if i, ok := b.index[o.Key]; ok && o.Share > 1e-4 {
			v := &b.verdicts[i]
			_, each := b.pressed(v, d)
			for k, x := range each {
				// the share already holds the pressures: take them out of it once
				logs[k] = append(logs[k], math.Log(o.Share)-v.pressed+x)
			}
		}
	}
	causes := make([]measure.Cause, states)
	for k, x := range cylinderStates {
		ll := logSum(logs[k])
		causes[k] = measure.Cause{Key: x.key, Text: x.text, Prior: x.prior, Hypothesis: measure.LogLikelihood(func(measure.Data) float64 { return ll - math.Log(x.prior) })}
	}
	other, _ := r.Causes.Of(measure.SomethingElse)
	var err error
	c.States, err = measure.Rank(d, causes, measure.Cause{Text: "something else", Prior: 0.02, Hypothesis: measure.LogLikelihood(func(measure.Data) float64 {
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
