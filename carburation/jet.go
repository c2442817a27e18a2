package carburation

import (
	"encoding/json"
	"math"
	"strconv"
	"strings"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Jet is a fuel jet as it is marked or measured. What a bare number on a jet
// means depends on its maker: hundredths of a millimetre of bore, or cubic
// centimetres a minute under a head that was not published. It must be said,
// and is never guessed. The zero Jet was not read. Jets are comparable.
type Jet struct {
	bore      measure.Reading[units.Length]
	flow      measure.Reading[units.VolumeFlow]
	head      measure.Reading[units.Length]
	effective measure.Reading[units.Area]
	text      string
}

// BoreJet is a jet whose bore was measured or is marked on it: a jet numbered
// in hundredths of a millimetre, 110, has a bore of 1.10 mm.
func BoreJet(bore measure.Reading[units.Length]) Jet { return Jet{bore: bore} }

// FlowJet is a jet marked by what it passes. head is the height of fuel that
// the mark belongs to; not taken, the prior of Options.Head stands in for it.
func FlowJet(flow measure.Reading[units.VolumeFlow], head measure.Reading[units.Length]) Jet {
	return Jet{flow: flow, head: head}
}

// TimedJet is a jet of known effective area, as FallingHead.Effective measures
// it: neither its mark nor anyone's head is needed.
func TimedJet(effective measure.Reading[units.Area]) Jet { return Jet{effective: effective} }

const jetForms = `"280 cc/min" (flow mark, head not known), "280 cc/min at 0.5 m", "1.10 mm", "bore 110" (hundredths of a mm) or "drill 57" (number drill)`

// ReadJet reads "280 cc/min" or "flow 280" (a flow mark whose head is not
// known), "280 cc/min at 0.5 m", "1.10 mm", "bore 110" (hundredths of a
// millimetre) or "drill 57" (a number drill, 50 to 80). Empty text, or "-", is
// a jet not read. Figures may carry ±; without it a flow mark is taken as good
// to 2 %, a bore to 0.01 mm, a drilled hole to 0.02 mm, a head to 5 %. A bare
// number is refused: the rule lists the choices. The error is a fault.Fault.
func ReadJet(text string) (Jet, error) {
	s := strings.TrimSpace(text)
	if s == "" || s == "-" {
		return Jet{}, nil
	}
	bad := func(code fault.Code) (Jet, error) {
		return Jet{}, fault.Fault{Code: code, Path: "jet", Value: text, Rule: jetForms}
	}
	lower := strings.ToLower(s)
	if rest, ok := strings.CutPrefix(lower, "bore "); ok {
		n, err := strconv.ParseFloat(strings.TrimSpace(rest), 64)
		if err != nil || !(n >= 10 && n <= 500) {
			return bad(fault.BadForm)
		}
		return Jet{bore: measure.By(units.Millimetres(n/100), boreMark()), text: s}, nil
	}
	if rest, ok := strings.CutPrefix(lower, "drill "); ok {
		d, ok := refdata.JetDrills().ByName("#" + strings.TrimPrefix(strings.TrimSpace(rest), "#"))
		if !ok {
			return bad(fault.UnknownName)
		}
		return Jet{bore: measure.Of(d.Diameter, units.Millimetres(0.02)), text: s}, nil
	}
	if rest, ok := strings.CutPrefix(lower, "flow "); ok {
		n, err := strconv.ParseFloat(strings.TrimSpace(rest), 64)
		if err != nil || !(n >= 1 && n <= 5000) {
			return bad(fault.BadForm)
		}
		return Jet{flow: measure.By(units.CubicCentimetresPerMinute(n), measure.Nominal[units.VolumeFlow](0.02)), text: s}, nil
	}
	if _, err := strconv.ParseFloat(s, 64); err == nil {
		return bad(fault.UnitMissing)
	}
	flow, head, stated := strings.Cut(s, " at ")
	if q, err := measure.Read(strings.TrimSpace(flow), measure.Nominal[units.VolumeFlow](0.02)); err == nil && q.Taken() {
		j := Jet{flow: q, text: s}
		if stated {
			h, err := measure.Read(strings.TrimSpace(head), measure.Nominal[units.Length](0.05))
			if err != nil || !h.Taken() {
				return bad(fault.BadForm)
			}
			j.head = h
		}
		return j.checked(text)
	}
	if d, err := measure.Read(s, boreMark()); err == nil && d.Taken() {
		return Jet{bore: d, text: s}.checked(text)
	}
	return bad(fault.BadForm)
}

// MustReadJet is ReadJet for text fixed in a program; it panics on bad text.
func MustReadJet(text string) Jet {
	j, err := ReadJet(text)
	if err != nil {
		panic(err)
	}
	return j
}

func boreMark() measure.Instrument[units.Length] {
	return measure.Instrument[units.Length]{Name: "jet bore", U: units.Millimetres(0.01)}
}

func (j Jet) checked(text string) (Jet, error) {
	if err := j.Err(); err != nil {
		f := fault.Faults(err)[0]
		f.Value = text
		return Jet{}, f
	}
	return j, nil
}

// Taken reports whether the jet was read.
func (j Jet) Taken() bool { return j.bore.Taken() || j.flow.Taken() || j.effective.Taken() }

// Flow returns the flow mark; not taken for a jet known by its bore.
func (j Jet) Flow() measure.Reading[units.VolumeFlow] { return j.flow }

// Bore returns the marked or measured bore; not taken for a flow mark.
func (j Jet) Bore() measure.Reading[units.Length] { return j.bore }

// Effective returns the effective area; not taken for a jet known by its mark.
func (j Jet) Effective() measure.Reading[units.Area] { return j.effective }

// String returns the user's text, or the figure.
func (j Jet) String() string {
	switch {
	case j.text != "":
		return j.text
	case j.bore.Taken():
		return j.bore.Text()
	case j.flow.Taken() && j.head.Taken():
		return j.flow.Text() + " at " + j.head.Text()
	case j.flow.Taken():
		return j.flow.Text()
	case j.effective.Taken():
		return j.effective.Text() + " effective"
	}
	return "not taken"
}

// MarshalJSON writes the figure the jet is known by as {text, value, unit, u};
// null if not read.
func (j Jet) MarshalJSON() ([]byte, error) {
	switch {
	case j.bore.Taken():
		return json.Marshal(j.bore)
	case j.effective.Taken():
		return json.Marshal(j.effective)
	}
	return json.Marshal(j.flow)
}

// Err returns the faults in the jet's figures, or nil.
func (j Jet) Err() error {
	var l fault.List
	if j.bore.Taken() {
		l.Under("bore", j.bore.Err())
		known(&l, "bore", j.bore)
		positive(&l, "bore", j.bore.Value(), units.Millimetres(0.1), units.Millimetres(5))
	}
	if j.flow.Taken() {
		l.Under("flow", j.flow.Err())
		known(&l, "flow", j.flow)
		positive(&l, "flow", j.flow.Value(), units.CubicCentimetresPerMinute(1), units.CubicCentimetresPerMinute(5000))
	}
	if j.head.Taken() {
		l.Under("head", j.head.Err())
		positive(&l, "head", j.head.Value(), units.Metres(0.05), units.Metres(10))
	}
	if j.effective.Taken() {
		l.Under("effective", j.effective.Err())
		known(&l, "effective", j.effective)
		positive(&l, "effective", j.effective.Value(), units.SquareMillimetres(0.005), units.SquareMillimetres(20))
	}
	return l.Err()
}

// known notes a fault where a figure is less certain than it is large.
func known[Q units.Quantity](l *fault.List, path string, r measure.Reading[Q]) {
	if r.Err() == nil && r.U() > r.Value() {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: path, Value: r.Text(), Rule: "an uncertainty no larger than the figure"})
	}
}

// JetOptions are the choices of Jet.Size. The zero value takes the defaults.
type JetOptions struct {
	// Head behind flow marks that do not tell their own, and the head at which
	// flows are given. Not taken, 0.4 m to 1.5 m is held equally likely by its
	// logarithm.
	Head measure.Reading[units.Length]
	// LengthOverBore of the drilled part; 0 takes 3.
	LengthOverBore float64
	// Spread is the standard share by which chamfers, burrs and length move a
	// jet's discharge coefficient; 0 takes 0.08.
	Spread units.Ratio
	// Viscosity of the liquid; 0 takes 0.55 mm²/s, petrol at 20 °C.
	Viscosity units.KinematicViscosity
}

// The head behind flow marks: nobody published it. 0.4 m to 1.5 m is the range
// in which bench heads are judged to have lain; within it nothing is known.
const headLow, headHigh = 0.4, 1.5

// lnHead returns mean and standard deviation of the logarithm of a head in m.
func lnHead(h measure.Reading[units.Length]) (mean, sd float64, assumed bool) {
	if h.Taken() {
		return math.Log(h.Value().Metres()), h.U().Ratio(h.Value()), false
	}
	return (math.Log(headLow) + math.Log(headHigh)) / 2, math.Log(headHigh/headLow) / math.Sqrt(12), true
}

func headAssumption() refdata.Assumption {
	return refdata.Assumption{What: "head behind flow marks", Value: "0.4 m to 1.5 m, equally likely by its logarithm, middle 0.77 m", Status: refdata.FromMemory}
}

// JetSize is a jet in every marking. Uncertainties are standard.
type JetSize struct {
	Effective   measure.Reading[units.Area]       `json:"effective"` // coefficient times area: what it passes, whatever its mark
	Bore        measure.Reading[units.Length]     `json:"bore"`
	Flow        measure.Reading[units.VolumeFlow] `json:"flow"` // under Head
	Head        measure.Reading[units.Length]     `json:"head"` // its u is that of its logarithm times itself
	HeadAssumed bool                              `json:"head_assumed"`
	Coefficient float64                           `json:"coefficient"`
	Reynolds    float64                           `json:"reynolds"`
	Drill       string                            `json:"drill"` // nearest number drill, "#57"; "" outside 50 to 80
	Basis       refdata.Basis                     `json:"basis"`
}

// Size returns the jet in every marking:
//
//	Q = Cd A sqrt(2 g h)
//
// with Cd by ParallelBore at the jet's own Reynolds number; above 20000 it is
// taken as at 20000, where it no longer changes. A flow mark under a head that
// is not known carries some 19 % of standard uncertainty for that alone; timing
// the jet with FallingHead removes it. Errors: a jet not read, figures outside.
func (j Jet) Size(opt JetOptions) (JetSize, error) {
	var l fault.List
	if !j.Taken() {
		l.Add(fault.Fault{Code: fault.Missing, Path: "jet", Rule: jetForms})
	}
	l.Under("jet", j.Err())
	opt.faults(&l)
	if l.Len() > 0 {
		return JetSize{}, l.Err()
	}
	opt = opt.filled()
	head := j.head.Or(opt.Head)
	lh, sdh, assumed := lnHead(head)
	h := math.Exp(lh)
	fall := math.Sqrt(2 * standardGravity * h)
	spread := opt.Spread.Value()
	out := JetSize{Head: measure.Of(units.Metres(h), units.Metres(math.Max(h*sdh, 1e-9))), HeadAssumed: assumed}
	var ca, d, relCA, relD, relQ float64
	switch {
	case j.bore.Taken():
		d = j.bore.Value().Metres()
		relD = j.bore.U().Ratio(j.bore.Value())
		out.Coefficient, out.Reynolds = boreCoefficient(d, fall, opt)
		ca = out.Coefficient * math.Pi / 4 * d * d
		relCA = math.Hypot(spread, 2*relD)
		relQ = math.Hypot(relCA, sdh/2)
	default:
		if j.effective.Taken() {
			ca, relCA = j.effective.Value().SquareMetres(), j.effective.U().Ratio(j.effective.Value())
			relQ = math.Hypot(relCA, sdh/2)
		} else {
			ca = j.flow.Value().CubicMetresPerSecond() / fall
			relQ = j.flow.U().Ratio(j.flow.Value())
			relCA = math.Hypot(relQ, sdh/2)
		}
		d, out.Coefficient, out.Reynolds = boreFor(ca, fall, opt)
		relD = math.Hypot(relCA, spread) / 2
	}
	out.Effective = measure.Of(units.SquareMetres(ca), units.SquareMetres(ca*atLeast(relCA)))
	out.Bore = measure.Of(units.Metres(d), units.Metres(d*atLeast(relD)))
	out.Flow = measure.Of(units.CubicMetresPerSecond(ca*fall), units.CubicMetresPerSecond(ca*fall*atLeast(relQ)))
	out.Drill = nearestDrill(units.Metres(d))
	out.Basis = refdata.Basis{Sources: []refdata.Source{lichtarowicz()}, Assumed: []refdata.Assumption{
		{What: "length of the jet over its bore", Value: units.Value(opt.LengthOverBore).String(), Status: refdata.FromMemory},
		{What: "spread of the discharge coefficient", Value: opt.Spread.In(units.Percent, 0) + " for chamfers, burrs and length", Status: refdata.FromMemory},
		{What: "viscosity of the liquid", Value: opt.Viscosity.String(), Status: refdata.Published},
	}}
	out.Basis.Cautions = []refdata.Caution{refdata.PetrolVapour}
	if assumed {
		out.Basis.Assumed = append(out.Basis.Assumed, headAssumption())
		out.Basis.NotChecked = append(out.Basis.NotChecked, refdata.Unchecked{What: "head behind the flow mark", Why: "no maker published it", Settle: "time a fall of water through the jet in a straight tube"})
	}
	return out, nil
}

// atLeast keeps an uncertainty above zero, as a reading needs, where all parts
// were declared exact.
func atLeast(rel float64) float64 { return math.Max(rel, 1e-12) }

func (o JetOptions) filled() JetOptions {
	if o.LengthOverBore == 0 {
		o.LengthOverBore = 3
	}
	if o.Spread == 0 {
		o.Spread = 0.08
	}
	if o.Viscosity == 0 {
		o.Viscosity = units.SquareMillimetresPerSecond(0.55)
	}
	return o
}

func (o JetOptions) faults(l *fault.List) {
	o = o.filled()
	if o.Head.Taken() {
		l.Under("options.head", o.Head.Err())
		positive(l, "options.head", o.Head.Value(), units.Metres(0.05), units.Metres(10))
	}
	positive(l, "options.length_over_bore", units.Value(o.LengthOverBore), 1.5, 10)
	positive(l, "options.spread", o.Spread, 0.001, 0.5)
	positive(l, "options.viscosity", o.Viscosity, units.SquareMillimetresPerSecond(0.1), units.SquareMillimetresPerSecond(10))
}

// boreCoefficient returns Cd and the Reynolds number of a bore (m) that liquid
// falls through at an ideal speed (m/s).
func boreCoefficient(d, fall float64, opt JetOptions) (cd, re float64) {
	cd = 0.78
	ideal := fall * d / opt.Viscosity.SquareMetresPerSecond()
	for range 30 {
		re = cd * ideal
		next := parallelBore(math.Min(math.Max(re, 10), 20000), opt.LengthOverBore)
		if math.Abs(next-cd) <= 1e-14 {
			break
		}
		cd = next
	}
	return cd, re
}

// boreFor returns the bore whose effective area is ca, with its coefficient and
// Reynolds number. With d² = 4 ca/(pi Cd) that number is sqrt(Cd) times what the
// area alone fixes, so that Cd is all there is to find.
func boreFor(ca, fall float64, opt JetOptions) (d, cd, re float64) {
	across := math.Sqrt(4 * ca / math.Pi)
	ideal := fall * across / opt.Viscosity.SquareMetresPerSecond()
	cd = 0.78
	for range 40 { // Cd changes slowly with the bore: each turn gains two digits
		re = math.Sqrt(cd) * ideal
		next := parallelBore(math.Min(math.Max(re, 10), 20000), opt.LengthOverBore)
		if math.Abs(next-cd) <= 1e-14 {
			break
		}
		cd = next
	}
	return across / math.Sqrt(cd), cd, re
}

func nearestDrill(d units.Length) string {
	best, name := units.Millimetres(0.04), "" // half the widest step of the series
	for row := range refdata.JetDrills().All() {
		if gap := (row.Diameter - d).Abs(); gap < best {
			best, name = gap, row.Number
		}
	}
	return name
}

func lichtarowicz() refdata.Source {
	return refdata.Source{Title: "A. Lichtarowicz, R. K. Duggins, E. Markland, J. Mech. Engng Sci. 7 (1965) 210-219", Clause: "equation 12", Read: "extraction notes", Status: refdata.Published}
}

// Groove is the clip groove of a needle, counted from the blunt top end: a
// clip in a lower groove holds the needle higher, which is richer. The zero
// Groove was not read.
type Groove struct {
	FromTop int `json:"from_top"` // 1 is nearest the top
	Of      int `json:"of"`       // grooves in all
}

// Taken reports whether the groove was read.
func (g Groove) Taken() bool { return g != Groove{} }

func (g Groove) faults(l *fault.List, path string) {
	if g.Taken() && !(g.Of >= 1 && g.Of <= 12 && g.FromTop >= 1 && g.FromTop <= g.Of) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: path, Value: strconv.Itoa(g.FromTop) + " of " + strconv.Itoa(g.Of), Rule: "1 to the number of grooves, of 1 to 12, counted from the top"})
	}
}

// SlideScale says what a slide's number counts. The number 3 is 4.8 mm in one
// and 1.5 mm or 3.0 mm in another: it must be asked, never guessed.
type SlideScale uint8

// The scales.
const (
	Sixteenths       SlideScale = iota + 1 // of an inch: number 3 is 3/16 in
	HalfMillimetres                        // number 3 is 1.5 mm
	TenthMillimetres                       // number 30 is 3.0 mm
)

// CutawayOf returns the height of a slide's cut by its number on a scale.
// Errors: no scale named, a height outside 0.5 mm to 20 mm.
func CutawayOf(number float64, scale SlideScale) (units.Length, error) {
	var c units.Length
	switch scale {
	case Sixteenths:
		c = units.Inches(number / 16)
	case HalfMillimetres:
		c = units.Millimetres(number / 2)
	case TenthMillimetres:
		c = units.Millimetres(number / 10)
	default:
		return 0, fault.Fault{Code: fault.UnknownName, Path: "scale", Rule: "Sixteenths, HalfMillimetres or TenthMillimetres"}
	}
	var l fault.List
	positive(&l, "number", c, units.Millimetres(0.5), units.Millimetres(20))
	return c, l.Err()
}
