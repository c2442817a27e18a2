package job

import (
	"example.com/benchbook/timing/crank"
	"example.com/benchbook/units"
)

// dampRise is the part by which oil in the bore lifts the reading when rings
// leak; below it rings are not to blame (common practice, no source).
const dampRise = 0.15

// compression says how the compression step stands. What a sound engine should
// show is worked out where the job gives bore, stroke, rod, compression ratio
// and inlet closing. A leak-down test speaks beside it, and for it where the gauge
// was not used.
func (r *Report) compression(j *job) (State, string) {
	state, said := r.gauged(j)
	leaks, heard := j.first.leakDown()
	switch {
	case heard == "":
		return state, said
	case state == Open:
		return leaks, heard
	case leaks == Wrong || leaks == Unsure && state == Good:
		state = leaks
	}
	return state, said + "; " + heard
}

// gauged is what the compression gauge says.
func (r *Report) gauged(j *job) (State, string) {
	f := j.first
	if !f.dry.Taken() {
		return Open, "warm if it runs, throttle open, plug out, note first and last stroke"
	}
	if f.dry.Value() <= 0 {
		return Wrong, "no compression at all"
	}
	low, expected := false, ""
	if want, ok := r.cranking(j); ok {
		expected = ", a sound one should show " + want.Gauge.Low.In(units.PoundForcePerSquareInch, 0) + " to " +
			want.Gauge.High.In(units.PoundForcePerSquareInch, 0) + " with the inlet closing as read"
		low = f.dry.Value()+2*f.dry.U() < want.Gauge.Low
	}
	if !f.wet.Taken() {
		if low {
			return Wrong, "low" + expected + "; read it again with a spoonful of oil in the bore"
		}
		return Unsure, "read it again with a spoonful of oil in the bore: a rise is rings, no rise is valves, seat, gasket or timing" + expected
	}
	rise := f.wet.Value().Ratio(f.dry.Value()) - 1
	switch {
	case rise > dampRise:
		return Wrong, "oil raised it by " + percent(rise) + ": rings or bore leak" + expected
	case low:
		return Wrong, "low, and oil raised it by " + percent(max(rise, 0)) + " only: valves, gasket or timing rather than rings" + expected
	case expected != "":
		return Good, f.dry.Text() + " dry, " + f.wet.Text() + " wet" + expected
	}
	return Unsure, "oil raised it by " + percent(max(rise, 0)) + " only: if it is low, valves, gasket or timing rather than rings; give the compression ratio to judge it"
}

// cranking returns what the gauge should show with the inlet valve closing where
// it was read, so that leaks and timing are not taken for each other.
func (r *Report) cranking(j *job) (crank.Cranking, bool) {
	s := r.Section("timing")
	if s == nil || j.engine.rod == 0 || !j.engine.compression.Taken() {
		return crank.Cranking{}, false
	}
	closes := j.inletCloses
	if !closes.Taken() {
		return crank.Cranking{}, false
	}
	cylinder, err := j.engine.cylinder().WithRatio(j.engine.compression.Value())
	if err != nil {
		return crank.Cranking{}, false
	}
	want, err := cylinder.Cranking(closes.Value(), crank.CrankingOptions{})
	return want, err == nil
}
