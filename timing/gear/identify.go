package gear

import (
	"math"
	"slices"
	"strconv"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Found is what was read on a wheel in the hand. Teeth must be counted; of the rest
// at least one is needed, and the two spans together are worth most: their
// difference is the base pitch, whatever wear or profile shift.
type Found struct {
	Teeth int `json:"teeth"`
	// Tip is the caliper's reading over the tips. Over an odd number of teeth it is
	// less than the diameter, which is allowed for.
	Tip measure.Reading[units.Length] `json:"tip,omitzero"`
	// Over is the number of teeth of the first span; default the number whose
	// anvils stand about the pitch circle.
	Over     int                           `json:"over"`
	Span     measure.Reading[units.Length] `json:"span,omitzero"`
	SpanNext measure.Reading[units.Length] `json:"span_next,omitzero"` // over one tooth more
	// Centre is the distance of its spindle from that of a mate of MateTeeth.
	Centre    measure.Reading[units.Length] `json:"centre,omitzero"`
	MateTeeth int                           `json:"mate_teeth"`
	Helix     units.Angle                   `json:"helix"` // default 0, a spur wheel
}

// IdentifyOptions are the spreads of the comparison. The zero value is the default;
// the defaults are common practice, no source.
type IdentifyOptions struct {
	Shift    float64      // spread of profile shift, modules; default 0.1
	Thinning units.Length // spread of tooth thickness by backlash and wear; default 0.05 mm
	Stub     float64      // spread of addendum, modules; default 0.03
	Other    float64      // prior of "something else" as a part of all the rest; default 0.02
	// Priors replaces the weight of a size by its key, such as "DP 12 at 20°"; by
	// default a first-choice diametral pitch has 1 at either pressure angle.
	Priors map[string]float64
}

// Size is a standard tooth that may be that of the wheel.
type Size struct {
	Key        string             `json:"key"` // as in the ranking: "DP 12 at 20°"
	Row        refdata.GearModule `json:"row"`
	Pressure   units.Angle        `json:"pressure"`
	Shift      float64            `json:"shift"` // profile shift in modules that fits best
	ShiftU     float64            `json:"shift_u"`
	ChiSquared float64            `json:"chi_squared"` // of so many readings
	BasePitch  units.Length       `json:"base_pitch"`
}

// Identified is which standard tooth a wheel has.
type Identified struct {
	Causes measure.Ranking `json:"causes"`
	Sizes  []Size          `json:"sizes"` // in the order of the ranking
	// Base is the base pitch by the two spans, and Module the module by the tips, as
	// plain figures to set against a table; not taken where they were not read.
	Base         measure.Reading[units.Length] `json:"base,omitzero"`
	Module       measure.Reading[units.Length] `json:"module,omitzero"`
	NextReadings []measure.Gain                `json:"next_readings"`
	Basis        refdata.Basis                 `json:"basis"`
}

const mostModule = 6.5 // mm, of engines

// Identify ranks the standard modules and diametral pitches, at 20° and 14.5°, by
// readings of a wheel: tip diameter z m/cos b + 2 m (1 + x), spans as [Wheel.Span],
// centre distance, with the profile shift x, the thinning and the addendum left open
// within their spreads. Diametral pitches are given both pressure angles alike,
// modules 20° six times in seven; second-choice series a third of the weight.
//
// Close twins stay together in a group: DP 10 at 20° has a base pitch of 7.498 mm,
// module 2.5 of 7.380 and at 14.5° of 7.604, so the spans need a caliper's best.
//
// Errors: teeth out of range, no reading, a bad one, a helix beyond 60°, a centre
// without the mate's teeth, a span over more teeth than there are.
func Identify(f Found, opt IdentifyOptions) (Identified, error) {
	var l fault.List
	checkTeeth(&l, f.Teeth)
	readings := []struct {
		path string
		r    measure.Reading[units.Length]
	}{{"tip", f.Tip}, {"span", f.Span}, {"span_next", f.SpanNext}, {"centre", f.Centre}}
	taken := false
	for _, x := range readings {
		l.Under(x.path, x.r.Err())
		if x.r.Taken() {
			taken = true
			above(&l, x.path, x.r.Value(), "mm")
		}
	}
	if !taken {
		l.Add(fault.Fault{Code: fault.Missing, Path: "span", Unit: "mm", Rule: "read the tips, a span over some teeth, or the centre distance"})
	}
	if f.Centre.Taken() && (f.MateTeeth < 2 || f.MateTeeth > mostTeeth) {
		l.Add(fault.Fault{Code: fault.Missing, Path: "mate_teeth", Rule: "a centre distance tells the module only with the mate's teeth"})
	}
	if !(f.Helix.Abs() <= 60*units.Degree) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "helix", Unit: "°", Rule: "at most 60°"})
	}
	opt = opt.filled(&l)
	if f.Over == 0 {
		f.Over = max(int(math.Round(float64(f.Teeth)/10+0.5)), 2)
	}
	if l.Len() == 0 && (f.Over < 1 || f.Over+1 >= f.Teeth) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "over", Value: strconv.Itoa(f.Over), Unit: "teeth", Rule: "span fewer teeth than the wheel has"})
	}
	if err := l.Err(); err != nil {
		return Identified{}, err
	}
	var out Identified
	d := make(measure.Data, len(readings))
	own := make([]float64, len(readings))
	for i, x := range readings {
		d[i] = measure.Datum{Value: x.r.Value().Millimetres(), Taken: x.r.Taken()}
		own[i] = max(x.r.U().Millimetres(), 1e-4)
		if !x.r.Taken() {
			own[i] = 0.02 // a caliper's, for the next reading
		}
	}
	out.plain(f)
	sizes := map[string]Size{}
	hyps := map[string]measure.Gaussian{}
	var causes []measure.Cause
	priors := 0.0
	for row := range refdata.GearModules().All() {
		if row.Module.Millimetres() > mostModule {
			continue
		}
		for _, a := range [...]units.Angle{20 * units.Degree, 14.5 * units.Degree} {
			key := row.Name + " at " + a.String()
			prior := 1.0
			if row.System == "module" {
				prior = 6
				if a != 20*units.Degree {
					prior = 1
				}
				prior *= 2.0 / 7
			}
			if row.Series != "I" {
				prior /= 3
			}
			if p, ok := opt.Priors[key]; ok {
				prior = p
			}
			g := f.expect(row.Module.Millimetres(), a, own, opt)
			x, u := g.Amount(0, d)
			chi, _ := g.ChiSquared(d)
			sizes[key] = Size{Key: key, Row: row, Pressure: a, Shift: x, ShiftU: u, ChiSquared: chi, BasePitch: row.Module.Times(math.Pi * math.Cos(a.SI()))}
			hyps[key] = g
			priors += prior
			causes = append(causes, measure.Cause{Key: key, Text: "teeth of " + key, Prior: prior, Hypothesis: g})
		}
	}
	// Something else: a module anywhere about that of the first reading. What is
	// expected goes with the module.
	first := slices.IndexFunc(d, func(x measure.Datum) bool { return x.Taken })
	module := d[first].Value / f.expect(1, 20*units.Degree, own, opt).Mean[first]
	other := f.expect(module, 20*units.Degree, own, opt)
	for i := range other.Mean {
		if d[i].Taken {
			other.Mean[i] = d[i].Value
		}
	}
	other.Free = append(other.Free, measure.Effect{Name: "module", SD: 1, Column: other.Mean})
	hyps[measure.SomethingElse] = other
	var err error
	if out.Causes, err = measure.Rank(d, causes, measure.Cause{Text: "a tooth that is not standard", Prior: opt.Other * priors, Hypothesis: other}); err != nil {
		return Identified{}, err
	}
	for _, o := range out.Causes.Odds {
		if s, ok := sizes[o.Key]; ok && o.Share > 1e-6 {
			out.Sizes = append(out.Sizes, s)
		}
	}
	out.next(f, d, hyps)
	out.basis(opt)
	return out, err
}

func (o IdentifyOptions) filled(l *fault.List) IdentifyOptions {
	positive(l, "options.thinning", o.Thinning, "mm")
	for _, x := range [...]float64{o.Shift, o.Stub, o.Other} {
		if !(x >= 0 && x < 10) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: "options", Rule: "spreads and weights are finite and not below zero"})
		}
	}
	if o.Shift == 0 {
		o.Shift = 0.1
	}
	if o.Thinning == 0 {
		o.Thinning = 5 * units.Millimetre / 100
	}
	if o.Stub == 0 {
		o.Stub = 0.03
	}
	if o.Other == 0 {
		o.Other = 0.02
	}
	return o
}

// across is what a caliper reads over the tips as a part of their diameter: over an
// odd number of teeth one jaw lies across two of them.
func (f Found) across() float64 {
	if f.Teeth%2 == 0 {
		return 1
	}
	return (1 + math.Cos(math.Pi/float64(f.Teeth))) / 2
}

// expect is what a module and pressure angle lead one to read: tip, span, span over
// one more, centre.
func (f Found) expect(m float64, a units.Angle, own []float64, opt IdentifyOptions) measure.Gaussian {
	z, cosB, across := float64(f.Teeth), math.Cos(f.Helix.SI()), f.across()
	sin, cos := math.Sincos(a.SI())
	at := math.Atan(math.Tan(a.SI()) / cosB)
	span := m * cos * (math.Pi*(float64(f.Over)-0.5) + z*inv(at))
	base := math.Pi * m * cos
	return measure.Gaussian{
		Mean: []float64{(m*z/cosB + 2*m) * across, span, span + base, m * (z + float64(f.MateTeeth)) / (2 * cosB)},
		Own:  own,
		Free: []measure.Effect{
			{Name: "shift", SD: opt.Shift, Column: []float64{2 * m * across, 2 * m * sin, 2 * m * sin, m}},
			{Name: "thinning", SD: opt.Thinning.Millimetres(), Column: []float64{0, cos, cos, 0}},
			{Name: "addendum", SD: opt.Stub, Column: []float64{2 * m * across, 0, 0, 0}},
			{Name: "mate", SD: opt.Shift, Column: []float64{0, 0, 0, m}},
		},
	}
}

// plain works out base pitch and module without a table.
func (out *Identified) plain(f Found) {
	if f.Span.Taken() && f.SpanNext.Taken() {
		out.Base, _ = measure.Propagate[units.Length](func(x []float64) float64 { return x[1] - x[0] }, f.Span.SI(), f.SpanNext.SI())
	}
	if f.Tip.Taken() {
		out.Module, _ = measure.Propagate[units.Length](func(x []float64) float64 {
			return x[0] / f.across() / (float64(f.Teeth)/math.Cos(f.Helix.SI()) + 2)
		}, f.Tip.SI())
	}
}

// next ranks the readings not yet taken.
func (out *Identified) next(f Found, d measure.Data, hyps map[string]measure.Gaussian) {
	names := [...]struct {
		key, text string
		minutes   float64
	}{
		{"tip", "caliper over the tips", 1},
		{"span", "caliper over " + strconv.Itoa(f.Over) + " teeth", 2},
		{"span-next", "caliper over " + strconv.Itoa(f.Over+1) + " teeth", 2},
		{"centre", "centre distance to its mate, by pins or mandrels", 20},
	}
	var checks []measure.Check
	for i, n := range names {
		if d[i].Taken || n.key == "centre" && f.MateTeeth < 2 {
			continue
		}
		c := measure.Check{Key: n.key, Text: n.text, Work: units.MinutesOfTime(n.minutes), Outlooks: map[string]measure.Outlook{}}
		for key, g := range hyps {
			c.Outlooks[key] = g.Outlook(i, d)
		}
		checks = append(checks, c)
	}
	if gains, err := measure.Next(out.Causes, checks); err == nil {
		out.NextReadings = gains
	}
}

func (out *Identified) basis(opt IdentifyOptions) {
	out.Basis.Sources = []refdata.Source{
		{Title: "involute geometry: span, tip diameter", Status: refdata.Derived},
		refdata.Practice(),
	}
	if len(out.Sizes) > 0 {
		out.Basis.Sources = append(out.Basis.Sources, out.Sizes[0].Row.Sources()...)
	}
	out.Basis.Assumed = []refdata.Assumption{
		{What: "spread of profile shift", Value: strconv.FormatFloat(opt.Shift, 'g', 3, 64) + " modules", Status: refdata.CommonPractice},
		{What: "spread of tooth thickness by backlash and wear", Value: opt.Thinning.String(), Status: refdata.CommonPractice},
		{What: "spread of addendum", Value: strconv.FormatFloat(opt.Stub, 'g', 3, 64) + " modules", Status: refdata.CommonPractice},
	}
	out.Basis.NotChecked = []refdata.Unchecked{{What: "pressure angles other than 20° and 14.5°", Why: "rare in engines", Settle: "roll it with a known wheel, or compare with a rack cutter"}}
}
