package main

import (
	"example.com/benchbook/timing/cam"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

func camDeg(x float64) units.CamAngle { return units.CamDegrees(x) }

func mmOf(x, u float64) measure.Reading[units.Length] { return measure.Of(mm(x), mm(u)) }

// arcCam is an invented cam of four arcs for a flat foot.
func arcCam() cam.ArcCam {
	return cam.ArcCam{BaseRadius: mm(16), NoseRadius: mm(4), Lift: mm(8), HalfAngle: camDeg(62)}
}

func tangentCam() cam.TangentCam {
	return cam.TangentCam{BaseRadius: mm(16), Lift: mm(8), HalfAngle: camDeg(62), Roller: mm(10)}
}

// arcCurve is the curve of an arc cam.
type arcCurve struct {
	Cam  cam.ArcCam     `json:"cam"`
	Nose units.CamAngle `json:"nose_at"`
}

func (c arcCurve) make() (any, error) { return c.Cam.Curve(c.Nose) }

// samples are lifts read off an arc cam.
func (c arcCurve) samples(every float64) []cam.Sample {
	curve, err := c.Cam.Curve(c.Nose)
	if err != nil {
		return nil
	}
	var out []cam.Sample
	for deg := 0.0; deg < 360; deg += every {
		lift, _ := curve.Lift(camDeg(deg))
		out = append(out, cam.Sample{At: camDeg(deg), Lift: units.Millimetres(rounded(lift.Millimetres()))})
	}
	return out
}

// valve is a valve on an arc cam.
type valve struct {
	Curve     arcCurve     `json:"curve"`
	Rocker    cam.Rocker   `json:"rocker"`
	Clearance units.Length `json:"clearance"`
}

func (v valve) make() (any, error) {
	c, err := v.Curve.Cam.Curve(v.Curve.Nose)
	return cam.Valve{Cam: c, Rocker: v.Rocker, Clearance: v.Clearance}, err
}

// fitted is a curve drawn through readings.
type fitted struct {
	Samples []cam.Sample   `json:"samples"`
	Options cam.FitOptions `json:"options"`
}

func (f fitted) make() (any, error) { return cam.Fit(f.Samples, f.Options) }

// profiles are cams that a curve is compared with.
type profiles []profile

type profile struct {
	Name  string   `json:"name"`
	Curve arcCurve `json:"curve"`
	Prior float64  `json:"prior"`
}

func (p profiles) make() (any, error) {
	var out []cam.Profile
	for _, x := range p {
		c, err := x.Curve.Cam.Curve(x.Curve.Nose)
		if err != nil {
			return nil, err
		}
		out = append(out, cam.Profile{Name: x.Name, Curve: c, Prior: x.Prior})
	}
	return out, nil
}

// through is a curve as the file shows it: what it is drawn through, and its
// lift between those points.
func through(c *cam.Curve) any {
	lift, nose := c.MaxLift()
	lifts := map[string]units.Length{}
	for name, deg := range map[string]float64{"at_15": 15, "at_40.3": 40.3, "at_77": 77, "at_121": 121} {
		lifts[name], _ = c.Lift(camDeg(deg))
	}
	return map[string]any{"points": c.Len(), "greatest": lift, "at": nose, "lifts": lifts}
}

// cubic is the tolerance of what a curve gives.
const cubic = 1e-6

func camCases(b *book) {
	lobeCases(b)
	curveCases(b)
	valveCases(b)
	fitCases(b)
	fixingCases(b)
}

func lobeCases(b *book) {
	arc, tangent := arcCam(), tangentCam()
	arcs := each(arc, cam.ArcCam{BaseRadius: mm(14), NoseRadius: mm(3), Lift: mm(7), HalfAngle: camDeg(58)}, cam.ArcCam{BaseRadius: mm(16), NoseRadius: mm(40), Lift: mm(8), HalfAngle: camDeg(62)})
	tangents := each(tangent, cam.TangentCam{BaseRadius: mm(14), Lift: mm(7), HalfAngle: camDeg(58), Roller: mm(8)}, cam.TangentCam{BaseRadius: mm(16)})
	b.ask(cam.ArcCam.Shape, "cam", arcs)
	b.ask(cam.TangentCam.Shape, "cam", tangents)
	b.ask(cam.ArcCam.At, "cam, from_nose", cross(arcs, each(camDeg(0), camDeg(10), camDeg(-25), camDeg(50), camDeg(70))))
	b.ask(cam.TangentCam.At, "cam, from_nose", cross(tangents, each(camDeg(0), camDeg(10), camDeg(-25), camDeg(50), camDeg(70))))
	b.ask(cam.ArcCam.Curve, "cam, nose_at", cross(arcs, each(camDeg(55), camDeg(-54))), seen(through), rel(cubic))
	b.ask(cam.TangentCam.Curve, "cam, nose_at", cross(tangents, each(camDeg(55))), seen(through), rel(cubic))
	b.ask(cam.Place, "from_overlap", each(camDeg(0), camDeg(10), camDeg(55), camDeg(-54), camDeg(200)))
	rises := each(cam.Rise{Law: cam.Harmonic, Lift: mm(8), Over: camDeg(60)}, cam.Rise{Law: cam.Cycloidal, Lift: mm(8), Over: camDeg(60)}, cam.Rise{Law: cam.Parabolic, Lift: mm(6), Over: camDeg(50)}, cam.Rise{Lift: mm(8)})
	b.ask(cam.Rise.At, "rise, from", cross(rises, each(camDeg(0), camDeg(15), camDeg(40))))
	b.ask(cam.Rise.Greatest, "rise, cam_speed", cross(rises, each(rpm(2500))))
	levers := each(cam.Lever{Pivot: mm(40), Arm: mm(38)}, cam.Lever{Pivot: mm(40), Arm: mm(38), Output: mm(45), ToPivot: true})
	b.ask(cam.Flat, "", []row{{}})
	b.ask(cam.Radiused, "radius", each(mm(20), mm(60)))
	b.ask(cam.Roller, "radius", each(mm(10), mm(8)))
	b.ask(cam.Swinging, "radius, lever", cross(each(mm(12)), levers))
	b.ask(cam.CrankSample, "at, lift", []row{{crankDeg(110), mm(4.2)}, {crankDeg(500), mm(0)}})
	b.ask(cam.Motion.At, "motion, crank_speed", cross(each(cam.Motion{Lift: mm(5), VelocityMMPerDegree: 0.12, AccelerationMMPerDegree2: -0.004, JerkMMPerDegree3: 0.0001}, cam.Motion{}), each(rpm(5000), rpm(0))))
	var even []units.Length
	for _, s := range (arcCurve{arc, camDeg(55)}).samples(5) {
		even = append(even, s.Lift)
	}
	b.ask(cam.InterpolateEven, "lift", each(even, []units.Length{mm(0), mm(1), mm(3), mm(6), mm(8), mm(6), mm(3), mm(1)}, even[:7]), seen(through), rel(cubic))
}

func curveCases(b *book) {
	inlet, exhaust := arcCurve{arcCam(), camDeg(55)}, arcCurve{arcCam(), camDeg(-54)}
	curves := each(inlet, arcCurve{cam.ArcCam{BaseRadius: mm(14), NoseRadius: mm(3), Lift: mm(7), HalfAngle: camDeg(58)}, camDeg(100)})
	checks := each(mm(0.3), mm(1), mm(9))
	drawn := []manner{rel(cubic)}
	b.ask((*cam.Curve).Lift, "curve, at", cross(curves, each(camDeg(0), camDeg(30), camDeg(55), camDeg(90), camDeg(300))), drawn...)
	b.ask((*cam.Curve).Motion, "curve, at", cross(curves, each(camDeg(40), camDeg(55), camDeg(88))), rel(1e-3), keep("lift", "velocity_mm_per_deg"))
	b.ask((*cam.Curve).MaxLift, "curve > lift, at", curves, drawn...)
	b.ask((*cam.Curve).Len, "curve", curves)
	b.ask((*cam.Curve).Events, "curve, check", cross(curves, checks), drawn...)
	b.ask((*cam.Curve).Centres, "curve, check", cross(curves, checks), rel(loose), keep("by_events", "by_area", "max_lift", "no_answer"))
	b.ask((*cam.Curve).Area, "curve, check, crank_speed", cross(curves, checks, each(rpm(0), rpm(4000))), drawn...)
	b.ask((*cam.Curve).Advanced, "curve, by", cross(curves, each(camDeg(7.5), camDeg(-3))), seen(through), rel(cubic))
	b.ask((*cam.Curve).Reversed, "curve", curves, seen(through), rel(cubic))
	b.ask((*cam.Curve).Contact, "curve, at, follower, base", cross(curves, each(camDeg(40), camDeg(60)), each(cam.Flat(), cam.Roller(mm(10)), cam.Radiused(mm(40))), each(mm(16))), rel(1e-4), keep("offset", "pressure"))
	b.ask((*cam.Curve).WithFollower, "curve, from, to, base > curve, no_answer", cross(curves[:1], []row{{cam.Flat(), cam.Radiused(mm(60))}, {cam.Flat(), cam.Roller(mm(12))}, {cam.Roller(mm(3)), cam.Flat()}, {cam.Flat(), cam.Swinging(mm(12), cam.Lever{Pivot: mm(40), Arm: mm(38)})}}, each(mm(16))),
		seen(maybe(through)), rel(1e-4), keep("curve.greatest", "no_answer"))
	b.ask((*cam.Curve).Trace, "curve, order", cross(curves, each(0, 1, 4)), seen(func(t cam.Trace) any {
		x, y := t.XY(140)
		return map[string]any{"points": t.Len(), "point_140": map[string]any{"angle": x, "value": y}}
	}), rel(1e-4))
	b.ask(cam.OverlapOf, "exhaust, inlet, check", cross(each(exhaust), each(inlet, arcCurve{arcCam(), camDeg(70)}), each(mm(0.1), mm(1))), drawn...)
}

// maybe leaves out what is not there.
func maybe[T any](f func(*T) any) func(*T) any {
	return func(v *T) any {
		if v == nil {
			return "none"
		}
		return f(v)
	}
}

func valveCases(b *book) {
	inlet := arcCurve{arcCam(), camDeg(55)}
	rocker := cam.Rocker{CamArm: mm(30), ValveArm: mm(36), CamTilt: angle(10), ValveTilt: angle(4)}
	rockers := each(rocker, cam.Rocker{CamArm: mm(32), ValveArm: mm(32)}, cam.Rocker{CamArm: mm(30)})
	b.ask(cam.Rocker.At, "rocker, cam", cross(rockers, each(mm(0), mm(4), mm(8), mm(50))))
	b.ask(cam.Rocker.Err, "rocker", rockers)
	valves := each(valve{Curve: inlet}, valve{Curve: inlet, Clearance: mm(0.1)}, valve{Curve: inlet, Rocker: rocker, Clearance: mm(0.2)}, valve{Curve: inlet, Clearance: mm(-1)})
	drawn := []manner{rel(1e-5)}
	b.ask(cam.Valve.Err, "valve", valves)
	b.ask(cam.Valve.Events, "valve, check", cross(valves, each(mm(0.3), mm(1), mm(12))), drawn...)
	b.ask(cam.Valve.Lift, "valve, at", cross(valves, each(camDeg(0), camDeg(40), camDeg(55))), drawn...)
	b.ask(cam.Valve.WithClearance, "valve, clearance, check", cross(valves, each(mm(0.3)), each(mm(1))), drawn...)
	b.ask(cam.Valve.ClearanceFor, "valve, duration, check > clearance, no_answer", cross(valves[:3], each(camDeg(95), camDeg(100), camDeg(200)), each(mm(1))), drawn...)
	load := cam.SpringLoad{Seated: newtons(250), Rate: rate(20), Mass: units.Grams(215)}
	b.ask(cam.Valve.LiftOff, "valve, load", cross(valves, each(load)), rel(1e-3), keep("crank_speed"))
	seats := each(cam.Seat{Head: mm(40), Port: mm(35), Stem: mm(8), Width: mm(2)}, cam.Seat{Head: mm(38), Port: mm(33), Stem: mm(8), Width: mm(1.5), Angle: angle(30)}, cam.Seat{Head: mm(30), Port: mm(35)})
	b.ask(cam.Seat.Opening, "seat, lift", cross(seats, each(mm(0), mm(1), mm(5), mm(9))))
	b.ask(cam.Seat.LiftForPort, "seat", seats)
	b.ask(cam.Valve.FlowArea, "valve, seat, crank_speed", cross(valves[1:3], seats, each(rpm(0), rpm(5000))), rel(1e-4))
	b.ask(cam.Parts.AtValve, "parts", each(cam.Parts{Valve: units.Grams(90), Retainer: units.Grams(25), Spring: units.Grams(60), Follower: units.Grams(80)},
		cam.Parts{Valve: units.Grams(90), Retainer: units.Grams(25), Spring: units.Grams(60), Follower: units.Grams(80), Rocker: units.Grams(140), Ratio: units.Value(1.2), ValveArm: mm(36), CamArm: mm(30)}, cam.Parts{Valve: units.Grams(-1)}))
	b.ask(cam.PortFor, "bore, mean_piston, gas, seat > port, lift", []row{
		{mm(78), units.MetresPerSecond(14), units.MetresPerSecond(75), angle(45)}, {mm(78), units.MetresPerSecond(12), units.MetresPerSecond(60), angle(30)}, {mm(78), units.MetresPerSecond(14), units.MetresPerSecond(75), angle(90)},
	})
}

func fitCases(b *book) {
	inlet := arcCurve{arcCam(), camDeg(55)}
	other := arcCurve{cam.ArcCam{BaseRadius: mm(14), NoseRadius: mm(3), Lift: mm(7), HalfAngle: camDeg(58)}, camDeg(55)}
	read := inlet.samples(5)
	known := cam.FitOptions{Criterion: cam.KnownNoise, KeepZero: true}
	b.ask(cam.Fit, "samples, options", []row{{read, known}, {other.samples(6), known}, {read, cam.FitOptions{Criterion: cam.Interpolated}}, {read[:5], known}}, seen(func(f cam.Fitted) any {
		e, _ := f.Events(mm(1))
		lift, _ := f.MaxLift()
		return map[string]any{"readings": f.Readings, "events_at_1_mm": map[string]any{"opens": e.Opens, "closes": e.Closes}, "greatest": lift}
	}), rel(1e-5))
	b.ask(cam.Fitted.Doubts, "fitted, events, zero, wheel", cross(each(fitted{read, known}), each(cam.Events{Check: mm(1), Opens: camDeg(10), Closes: camDeg(100), OpeningRise: mm(0.1), ClosingRise: mm(0.1)}, cam.Events{}), []row{{mm(0.02), camDeg(0.25)}, {mm(0), camDeg(0.25)}, {mm(-1), camDeg(0.25)}}), rel(1e-2))
	set := profiles{{Name: "as specified", Curve: inlet}, {Name: "another", Curve: other, Prior: 0.5}}
	b.ask(cam.Identify, "samples, known, options", []row{{read, set, cam.IdentifyOptions{}}, {other.samples(6), set, cam.IdentifyOptions{BothWays: true}}, {read[:2], set, cam.IdentifyOptions{}}}, rel(1e-3))
}

func fixingCases(b *book) {
	fits := each(cam.PressFit{Joint: mm(20), Hub: mm(40), Length: mm(15), Interference: measure.Between(mm(0.02), mm(0.04))},
		cam.PressFit{Joint: mm(20), Hub: mm(36), ShaftBore: mm(8), Length: mm(12), Interference: measure.Between(mm(0.01), mm(0.03)), HubMetal: cam.Metal{Modulus: units.Gigapascals(100), Poisson: 0.25}}, cam.PressFit{Joint: mm(20), Hub: mm(15)})
	b.ask(cam.PressFit.Hold, "fit", fits)
	tapers := each(cam.Taper{OneIn: 8, MeanDiameter: mm(15), Length: mm(20)}, cam.Taper{HalfAngle: angle(5), MeanDiameter: mm(18), Length: mm(22)}, cam.Taper{HalfAngle: angle(20), MeanDiameter: mm(15), Length: mm(20)}, cam.Taper{})
	b.ask(cam.Taper.Hold, "taper, push", cross(tapers, each(units.Kilonewtons(8))))
	b.ask(cam.Taper.Bedded, "taper, push", cross(tapers, each(units.Kilonewtons(8))))
	b.ask(cam.Taper.Locks, "taper", tapers)
	b.ask(cam.Taper.DriveUp, "taper, by", cross(tapers, each(mm(0.2))))
	b.ask(cam.Taper.FaceFor, "taper, normal, pressure", cross(tapers, each(units.Kilonewtons(20)), each(megapascals(30), megapascals(0))))
	b.ask(cam.Friction, "", []row{{}})
	keys := each(cam.Key{Shaft: mm(16), Width: mm(4), Height: mm(4), Length: mm(12)}, cam.Key{Shaft: mm(20), Width: mm(6), Height: mm(6), Length: mm(18)}, cam.Key{Shaft: mm(16)})
	b.ask(cam.Key.Holds, "key, shear, bearing", cross(keys, each(megapascals(60)), each(megapascals(120))))
	b.ask(cam.Key.LengthFor, "key, torque, shear, bearing", cross(keys, each(newtonMetres(20), newtonMetres(60)), each(megapascals(60)), each(megapascals(120))))
	b.ask(cam.KeySlack, "slack, shaft", cross(each(mm(0.05), mm(0.2)), each(mm(16), mm(0))))
	b.ask(cam.Lame, "inner, outer, at, inside, outside", []row{{mm(20), mm(40), mm(20), megapascals(60), megapascals(0)}, {mm(20), mm(40), mm(40), megapascals(60), megapascals(0)}, {mm(20), mm(40), mm(30), megapascals(0), megapascals(10)}, {mm(40), mm(20), mm(30), megapascals(60), megapascals(0)}})
	splines := each(cam.Splines{Number: 6, Inner: mm(21), Outer: mm(25), Length: mm(20)}, cam.Splines{Number: 8, Inner: mm(32), Outer: mm(38), Length: mm(25)}, cam.Splines{Number: 6, Inner: mm(25), Outer: mm(21)})
	b.ask(cam.Splines.Torque, "splines, pressure", cross(splines, each(megapascals(10))))
	b.ask(cam.Splines.ShiftForce, "splines, torque, friction", cross(splines, each(newtonMetres(60)), each(units.Value(0.08))))
}
