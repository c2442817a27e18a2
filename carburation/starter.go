package carburation

import (
	"math"
	"strconv"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// starter works one question of Start out.
type starter struct {
	in       Input
	opt      Options
	engine   Engine
	out      outside
	lambda   measure.Reading[units.Ratio]
	begin    refdata.Begin
	mean, sd knobs
	result   Starting
}

func (s *starter) run() {
	factor := s.out.change.FlowFactor * s.out.swap.FlowFactor
	lh, sdh, assumed := lnHead(s.opt.Head)
	s.result.Head = lnBand[units.Length](lh, sdh).neat()
	if assumed {
		// a band of equal likelihood ends where it ends
		s.result.Head = Band[units.Length]{units.Metres(headLow), neat(units.Metres(math.Exp(lh))), units.Metres(headHigh)}
		s.note(headAssumption())
		s.result.Basis.NotChecked = append(s.result.Basis.NotChecked, refdata.Unchecked{What: "head behind flow marks", Why: "never published; it moves the physics of a flow mark by some 19 %", Settle: "time a fall of water through a jet of known mark in a straight tube"})
	}
	if s.begin.Reason.Given() {
		s.result.Basis.NotChecked = append(s.result.Basis.NotChecked, refdata.Unchecked{What: "ranges of the trade", Why: s.begin.Reason.Text, Settle: "the setting of a like engine that runs well"})
	}
	p := s.begin.Point
	s.bore(p)
	s.demand(factor)
	s.mainJet(p, factor)
	s.pilot(p, factor)
	s.cutaway(p)
	s.needle(p)
	for _, a := range s.begin.Basis.Assumed {
		s.note(a)
	}
}

func (s *starter) note(a refdata.Assumption) {
	s.result.Basis.Assumed = append(s.result.Basis.Assumed, a)
}

func (s *starter) bore(p refdata.StartingPoint) {
	point := Point[units.Length]{Key: "bore", Text: "bore", Practice: p.Bore, Corrected: p.Bore, NoPractice: s.begin.Reason, Fitted: s.in.Fitted.Bore}
	// D = sqrt(4 eta V N/(30 pi w)): the air of a suction stroke at a mean speed w
	lw, sdw := (math.Log(80)+math.Log(130))/2, math.Log(130.0/80)/2/ninety
	b, ok := propagated[units.Length](func(v *[nKnobs]float64, x []float64) float64 {
		// one cylinder draws at a time: the carburettor sees one swept volume
		volume, speed, w := math.Exp(x[0]), math.Exp(x[1])/(2*math.Pi), math.Exp(x[2])
		return math.Log(math.Sqrt(4 * v[kEta] * volume * 2 * speed / (math.Pi * w)))
	}, s.mean, s.sd, lnInput(s.engine.Displacement), lnInput(s.engine.PeakSpeed), measure.Input{X: lw, U: sdw})
	point.physics(b, ok)
	s.note(refdata.Assumption{What: "mean air speed over the suction stroke", Value: "80 m/s to 130 m/s", Status: refdata.Derived})
	finish(s, &point)
	s.result.Bore = point
}

// inBore is the bore that the other parts are worked out for.
func (s *starter) inBore() measure.Reading[units.Length] {
	if s.in.Fitted.Bore.Taken() {
		return s.in.Fitted.Bore
	}
	if low, high, ok := s.begin.Point.Bore.Ends(); ok {
		return measure.Of((low + high).Times(0.5), (high - low).Times(1/math.Sqrt(12)))
	}
	b := s.result.Bore.Physics
	return measure.Of(b.Middle, (b.High - b.Low).Times(1/(2*ninety)))
}

// plant returns the model's constants for full lift, where needle and slide are
// out of the way.
func (s *starter) plant() plant {
	o := s.out
	p := plant{swept: s.engine.Displacement.Value().CubicMetres() * float64(s.engine.cylinders()), cylinders: float64(s.engine.cylinders()), peak: s.engine.PeakSpeed.Value().RevolutionsPerSecond(),
		pressure: o.weather.Pressure.Pascals(), rhoAir: o.moist.Density.KilogramsPerCubicMetre(), dry: o.moist.DryMassShare,
		rhoFuel: o.liquid.KilogramsPerCubicMetre(), nu: 0.55e-6, stoich: o.fuel.AFR.Value(), bore: s.inBore().Value().Metres(), longJet: 3, screw: 1, mixtureScrew: 1}
	p.rootRT = math.Sqrt(p.pressure / p.rhoAir)
	p.blocked = 1 - 4*needleShare/math.Pi
	return p
}

// needleShare is the usual diameter of a needle over that of the bore (judged).
const needleShare = 0.09

func (s *starter) demand(factor float64) {
	p := s.plant()
	v := s.mean.values()
	st := p.at(p.bore, p.peak, &v)
	d := &s.result.Demand
	d.AirDensity, d.DensityRatio, d.JetFactor = s.out.moist.Density, s.out.change.Density, factor
	d.Air = units.KilogramsPerSecond(st.air)
	d.Mixture = s.out.fuel.AFR.Times(s.lambda.Value().Value())
	d.Fuel = units.KilogramsPerSecond(st.air * p.dry / d.Mixture.Value())
	d.FuelVolume = neat(units.CubicMetresPerSecond(d.Fuel.KilogramsPerSecond() / p.rhoFuel))
	d.InBore = units.Metres(p.bore)
	one := p.swept / p.cylinders * 2 * p.peak * v[kEta]
	d.SuctionSpeed = units.MetresPerSecond(one / (math.Pi / 4 * p.bore * p.bore))
	d.Suction = units.Pascals(st.suction)
}

// series is the needle annulus over the main jet, both as effective areas, that
// a carburettor in order has at full lift: 3, from 2 to 4.5. The jet then passes
// nearly all it would pass alone.
const series, seriesSD = 3, 0.25

func (s *starter) mainJet(p refdata.StartingPoint, factor float64) {
	point := Point[units.VolumeFlow]{Key: "main-jet", Text: "main jet, flow mark", Practice: p.MainJet, Corrected: scaled(p.MainJet, factor), NoPractice: s.begin.Reason}
	base := s.plant()
	bore := s.inBore()
	effective := func(v *[nKnobs]float64, x []float64) float64 {
		q := base
		q.swept *= math.Exp(x[0])
		q.peak = math.Exp(x[1]) / (2 * math.Pi)
		q.bore = math.Exp(x[2])
		st := q.at(q.bore, q.peak, v)
		fuel := st.air * q.dry / (q.stoich * math.Exp(x[3]))
		drive := st.suction - q.rhoFuel*standardGravity*v[kLip]
		ratio := math.Exp(x[4])
		return math.Log(fuel / math.Sqrt(2*q.rhoFuel*drive) * math.Sqrt(1+1/(ratio*ratio)))
	}
	lh, sdh, _ := lnHead(s.opt.Head)
	inputs := []measure.Input{{X: 0, U: s.engine.Displacement.U().Ratio(s.engine.Displacement.Value())}, lnInput(s.engine.PeakSpeed), lnInput(bore), lnInput(s.lambda),
		{X: math.Log(series), U: seriesSD}, {X: lh, U: sdh}}
	b, ok := propagated[units.VolumeFlow](func(v *[nKnobs]float64, x []float64) float64 {
		return effective(v, x) + math.Log(2*standardGravity)/2 + x[5]/2
	}, s.mean, s.sd, inputs...)
	point.physics(b, ok)
	area, ok := propagated[units.Area](func(v *[nKnobs]float64, x []float64) float64 { return effective(v, x) }, s.mean, s.sd, inputs...)
	if ok {
		s.result.MainJetBore = boreBand(area).neat()
	}
	s.note(refdata.Assumption{What: "needle annulus over main jet at full lift", Value: "3, 2 to 4.5, as effective areas", Status: refdata.FromMemory})
	s.fittedJet(&point, s.in.Fitted.MainJet)
	finish(s, &point)
	s.result.MainJet = point
}

// boreBand turns a band of effective area into one of bore, with 8 % of spread
// in the coefficient of an individual jet.
func boreBand(area Band[units.Area]) Band[units.Length] {
	cd, _ := boreCoefficient(1.1e-3, 4, JetOptions{}.filled()) // it hardly changes with the size of a main jet
	sd := math.Log(area.High.Ratio(area.Middle)) / ninety
	return lnBand[units.Length](math.Log(math.Sqrt(area.Middle.SquareMetres()/cd*4/math.Pi)), math.Hypot(sd, 0.08)/2)
}

// fittedJet brings a jet to the flow mark that the table counts by.
func (s *starter) fittedJet(point *Point[units.VolumeFlow], j Jet) {
	if !j.Taken() {
		return
	}
	if j.flow.Taken() && !j.head.Taken() {
		point.Fitted = j.flow // the same unpublished head as the table's
		return
	}
	lh, sdh, _ := lnHead(s.opt.Head)
	size, err := j.Size(JetOptions{Head: s.opt.Head})
	if err != nil {
		return
	}
	ca := size.Effective.Value().SquareMetres()
	q := ca * math.Sqrt(2*standardGravity*math.Exp(lh))
	point.Fitted = measure.Of(neat(units.CubicMetresPerSecond(q)), neat(units.CubicMetresPerSecond(q*math.Hypot(size.Effective.U().Ratio(size.Effective.Value()), sdh/2))))
	s.result.Basis.NotChecked = append(s.result.Basis.NotChecked, refdata.Unchecked{What: point.Text, Why: "the jet fitted is not marked as the table's are, and was brought to their mark with the head above", Settle: "time the jet beside one that carries a flow mark"})
}

func (s *starter) cutaway(p refdata.StartingPoint) {
	point := Point[units.Length]{Key: "cutaway", Text: "slide cutaway", NoPractice: s.begin.Reason, Fitted: s.in.Fitted.Cutaway}
	if low, high, ok := p.Slide.Ends(); ok {
		point.Practice = refdata.RangeOf(units.Inches(low.Value()/16), units.Inches(high.Value()/16))
		point.Corrected = point.Practice
	}
	s.slideAndClip(&point)
	finish(s, &point)
	s.result.Cutaway = point
}

// slideAndClip works slide and clip out by the model where the needle was
// measured, the other parts as fitted or, unread, as served.
func (s *starter) slideAndClip(point *Point[units.Length]) {
	notMeasured := fault.Reason{Code: "needle-jet-not-measured", Text: "the cutaway and groove that suit follow from needle jet and needle: measure both"}
	point.NoPhysics, s.result.Needle.NoPhysics = notMeasured, notMeasured
	f := s.in.Fitted
	if !f.measured() || s.result.MainJet.NoPhysics.Given() {
		return
	}
	c := Carburettor{Bore: s.inBore(), Cutaway: f.Cutaway.Or(measure.Of(units.Inches(3.5/16), units.Millimetres(0.5))), NeedleJet: f.NeedleJet, Needle: f.Needle, MainJet: f.MainJet, PilotJet: f.PilotJet}
	c.Needle.Groove = f.Groove
	served := func(j Jet, p Point[units.VolumeFlow]) Jet {
		if j.Taken() {
			return j
		}
		if low, high, ok := p.Corrected.Ends(); ok {
			return FlowJet(measure.Of((low+high).Times(0.5), (high-low).Times(1/math.Sqrt(12))), measure.Reading[units.Length]{})
		}
		return FlowJet(measure.Of(p.Physics.Middle, (p.Physics.High-p.Physics.Low).Times(1/(2*ninety))), measure.Reading[units.Length]{})
	}
	c.MainJet, c.PilotJet = served(c.MainJet, s.result.MainJet), served(c.PilotJet, s.result.PilotJet)
	m, err := NewModel(Setup{Engine: s.engine, Surroundings: s.in.Surroundings, Carburettor: c}, s.opt)
	if err != nil {
		why := fault.Reason{Code: "outside-model", Text: err.Error()}
		point.NoPhysics, s.result.Needle.NoPhysics = why, why
		return
	}
	set, err := m.Settings(Targets{Full: Target{Lambda: s.lambda.Value()}})
	if err != nil {
		why := fault.Reason{Code: "outside-model", Text: err.Error()}
		point.NoPhysics, s.result.Needle.NoPhysics = why, why
		return
	}
	s.result.Needle.Physics, s.result.Needle.NoPhysics = set.Needle.Groove, set.Needle.NotReached
	if point.NoPhysics = set.Cutaway.NotReached; point.NoPhysics.Given() {
		return
	}
	// how far lambda may be off at pick-up, over what the cutaway does there
	after := set.model
	at := set.Cutaway.At
	u, ok := after.relative(at.Lift.Value(), at.Speed.RevolutionsPerSecond())
	p := after.plant
	p.cutaway = set.Cutaway.Wanted.Metres() * 1.01
	one := p.at(at.Lift.Value()*p.bore, at.Speed.RevolutionsPerSecond(), &after.value).lambda
	p.cutaway = set.Cutaway.Wanted.Metres()
	zero := p.at(at.Lift.Value()*p.bore, at.Speed.RevolutionsPerSecond(), &after.value).lambda
	say := math.Log(one/zero) / math.Log(1.01)
	if !ok || !(say > 1e-3) {
		point.NoPhysics = fault.Reason{Code: "outside-model", Text: "the cutaway has no say there"}
		return
	}
	point.Physics = lnBand[units.Length](math.Log(set.Cutaway.Wanted.Metres()), u/say)
}

func (s *starter) pilot(p refdata.StartingPoint, factor float64) {
	point := Point[units.VolumeFlow]{Key: "pilot-jet", Text: "pilot jet, flow mark", Practice: p.Pilot, Corrected: scaled(p.Pilot, factor), NoPractice: s.begin.Reason}
	base := s.plant()
	lh, sdh, _ := lnHead(s.opt.Head)
	// tick-over: 1000 rev/min, lambda 0.85, 0.45 of the outside pressure behind
	// the slide, four fifths of the breathing at the peak; all judged
	b, ok := propagated[units.VolumeFlow](func(v *[nKnobs]float64, x []float64) float64 {
		y := math.Exp(x[1])
		air := 0.8 * v[kEta] * y * base.rhoAir * base.swept * math.Exp(x[0]) / (2 * 2 * math.Pi)
		fuel := air * base.dry / (base.stoich * math.Exp(x[2]))
		drive := base.pilotSignal(0, v[kPilot])*(1-y)*base.pressure - base.rhoFuel*standardGravity*v[kLip]
		return math.Log(fuel/math.Sqrt(2*base.rhoFuel*drive)) + math.Log(2*standardGravity)/2 + x[3]/2
	}, s.mean, s.sd, measure.Input{X: math.Log(1000 * 2 * math.Pi / 60), U: 0.15}, measure.Input{X: math.Log(0.45), U: 0.2}, measure.Input{X: math.Log(0.85), U: 0.05}, measure.Input{X: lh, U: sdh})
	point.physics(b, ok)
	if ok {
		point.Text = "pilot jet, flow mark (order of magnitude by physics)"
	}
	s.note(refdata.Assumption{What: "tick-over", Value: "1000 ± 150 rev/min, lambda 0.85 ± 0.04, pressure behind the slide 0.45 ± 0.09 of that outside", Status: refdata.FromMemory})
	s.fittedJet(&point, s.in.Fitted.PilotJet)
	finish(s, &point)
	s.result.PilotJet = point
}

func (s *starter) needle(p refdata.StartingPoint) {
	n := s.result.Needle // its physics came with the slide's
	n.Practice, n.Fitted, n.Standing = p.Needle, s.in.Fitted.Groove, NotRead
	if g := s.in.Fitted.Groove; g.Taken() {
		middle := float64(g.Of+1) / 2
		n.Groove = Groove{FromTop: int(middle), Of: g.Of}
		switch d := float64(g.FromTop) - middle; {
		case p.Needle == "":
			n.Standing = Unknown
		case math.Abs(d) < 1:
			n.Standing = Inside
		case d > 0:
			n.Standing = Above
		default:
			n.Standing = Below
		}
		if n.Standing == Above || n.Standing == Below {
			how := map[Standing]string{Above: "higher, richer", Below: "lower, weaker"}[n.Standing]
			s.result.Outside = append(s.result.Outside, Part{Key: "needle", Standing: n.Standing, Chance: 1,
				Text: "needle clip in groove " + strconv.Itoa(g.FromTop) + " of " + strconv.Itoa(g.Of) + " from the top holds the needle " + how + " than the " + n.Practice})
		}
	} else {
		s.unread("needle groove", "count the grooves and say which one the clip is in")
	}
	s.result.Needle = n
}

func (s *starter) unread(what, settle string) {
	s.result.Basis.NotChecked = append(s.result.Basis.NotChecked, refdata.Unchecked{What: what, Why: "not read", Settle: settle})
}

func (p *Point[Q]) physics(b Band[Q], ok bool) {
	if !ok {
		p.NoPhysics = fault.Reason{Code: "outside-model", Text: "the model draws no fuel, or no air, within its uncertainty here"}
		return
	}
	p.Physics = b
}

// finish sets practice and physics against each other and the fitted part
// against the practice range.
func finish[Q units.Quantity](s *starter, p *Point[Q]) {
	p.Physics = p.Physics.neat()
	if p.Key != "cutaway" { // whole fractions of an inch: exact as they are
		p.Practice, p.Corrected = neatRange(p.Practice), neatRange(p.Corrected)
	}
	low, high, known := p.Corrected.Ends()
	if known && p.Physics.Given() {
		b := p.Physics
		p.Agree = b.Low <= high && b.High >= low
		switch {
		case !p.Agree && b.Low > high:
			p.Differ = "physics asks for more than practice: " + b.String() + ", against " + rangeText(p.Corrected)
		case !p.Agree:
			p.Differ = "physics asks for less than practice: " + b.String() + ", against " + rangeText(p.Corrected)
		case b.Middle > high:
			p.Differ = "they overlap, but the middle of physics, " + shown(b.Middle) + ", lies above practice, " + rangeText(p.Corrected)
		case b.Middle < low:
			p.Differ = "they overlap, but the middle of physics, " + shown(b.Middle) + ", lies below practice, " + rangeText(p.Corrected)
		}
	}
	if !p.Fitted.Taken() {
		p.Standing = NotRead
		settle := map[string]string{"bore": "a caliper across the bore", "main-jet": "read the mark on the main jet and say whether it is a flow or a bore", "pilot-jet": "read the mark on the pilot jet",
			"cutaway": "read the slide's number and say on which scale, or measure the cut with a caliper"}[p.Key]
		s.unread(p.Text, settle)
		return
	}
	if !known {
		p.Standing = Unknown
		return
	}
	x := p.Fitted.SI()
	below, above := 0.0, 0.0
	if x.U > 0 {
		below, above = normal((low.SI()-x.X)/x.U), normal((x.X-high.SI())/x.U)
	} else {
		below, above = step(low.SI()-x.X), step(x.X-high.SI())
	}
	p.Chance = math.Max(0, 1-below-above)
	// half a unit in the last place of what is printed counts as inside: a part
	// of exactly the range's end is in it
	edge := 1e-9 * math.Abs(x.X)
	switch {
	case x.X >= low.SI()-edge && x.X <= high.SI()+edge:
		p.Standing = Inside
	case x.X < low.SI():
		p.Standing = Below
	default:
		p.Standing = Above
	}
	if p.Standing != Inside {
		s.result.Outside = append(s.result.Outside, Part{Key: p.Key, Standing: p.Standing, Chance: below + above,
			Text: p.Text + " " + shown(p.Fitted.Value()) + " is " + string(p.Standing) + " " + rangeText(p.Corrected)})
	}
}

// normal is the chance that a standard normal figure lies below z.
func normal(z float64) float64 { return math.Erfc(-z/math.Sqrt2) / 2 }

func step(d float64) float64 {
	if d > 0 {
		return 1
	}
	return 0
}

// scaled returns a range times a factor.
func scaled[Q units.Quantity](r refdata.Range[Q], k float64) refdata.Range[Q] {
	low, high, ok := r.Ends()
	if !ok {
		return r
	}
	return refdata.RangeOf(units.FromSI[Q](low.SI()*k), units.FromSI[Q](high.SI()*k))
}
