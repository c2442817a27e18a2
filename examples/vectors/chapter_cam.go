package main

import (
	"example.com/benchbook/timing/cam"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// arcCam is an invented cam of four arcs for a flat foot.
func arcCam() cam.ArcCam {
	return cam.ArcCam{BaseRadius: mm(16), NoseRadius: mm(4), Lift: mm(8), HalfAngle: units.CamDegrees(62)}
}

func camDeg(x float64) units.CamAngle { return units.CamDegrees(x) }

func camCases(b *book) {
	arc := arcCam()
	tangent := cam.TangentCam{BaseRadius: mm(16), Lift: mm(8), HalfAngle: camDeg(62), Roller: mm(10)}
	b.add("timing/cam.ArcCam.Shape", in{"cam": arc}, of(arc.Shape()))
	b.add("timing/cam.TangentCam.Shape", in{"cam": tangent}, of(tangent.Shape()))
	for _, deg := range []float64{0, 10, 25, 50, 70} {
		b.add("timing/cam.ArcCam.At", in{"cam": arc, "from_nose": camDeg(deg)}, of(arc.At(camDeg(deg))))
		b.add("timing/cam.TangentCam.At", in{"cam": tangent, "from_nose": camDeg(deg)}, of(tangent.At(camDeg(deg))))
		b.add("timing/cam.Place", in{"from_overlap": camDeg(deg)}, only(cam.Place(camDeg(deg))))
	}
	for _, law := range []cam.Law{cam.Harmonic, cam.Cycloidal} {
		r := cam.Rise{Law: law, Lift: mm(8), Over: camDeg(60)}
		args := in{"law": words(law.String()), "lift": r.Lift, "over": r.Over}
		for _, deg := range []float64{15, 40} {
			b.add("timing/cam.Rise.At", in{"law": words(law.String()), "lift": r.Lift, "over": r.Over, "from": camDeg(deg)}, of(r.At(camDeg(deg))))
		}
		args["cam_speed"] = rpm(2500)
		b.add("timing/cam.Rise.Greatest", args, of(r.Greatest(rpm(2500))))
	}
	curveCases(b, arc)
	rocker := cam.Rocker{CamArm: mm(30), ValveArm: mm(36), CamTilt: units.Degrees(10), ValveTilt: units.Degrees(4)}
	for _, x := range []float64{0, 4, 8} {
		b.add("timing/cam.Rocker.At", in{"rocker": rocker, "cam": mm(x)}, of(rocker.At(mm(x))))
	}
	seat := cam.Seat{Head: mm(40), Port: mm(35), Stem: mm(8), Width: mm(2)}
	for _, x := range []float64{1, 5, 9} {
		b.add("timing/cam.Seat.Opening", in{"seat": seat, "lift": mm(x)}, of(seat.Opening(mm(x))))
	}
	b.add("timing/cam.Seat.LiftForPort", in{"seat": seat}, of(seat.LiftForPort()))
	parts := cam.Parts{Valve: units.Grams(90), Retainer: units.Grams(25), Spring: units.Grams(60), Follower: units.Grams(80)}
	b.add("timing/cam.Parts.AtValve", in{"parts": parts}, of(parts.AtValve()))
	fit := cam.PressFit{Joint: mm(20), Hub: mm(40), Length: mm(15), Interference: measure.Between(mm(0.02), mm(0.04))}
	b.add("timing/cam.PressFit.Hold", in{"fit": fit}, of(fit.Hold()))
	taper := cam.Taper{OneIn: 8, MeanDiameter: mm(15), Length: mm(20)}
	b.add("timing/cam.Taper.Hold", in{"taper": taper, "push": units.Kilonewtons(8)}, of(taper.Hold(units.Kilonewtons(8))))
	b.add("timing/cam.Taper.Locks", in{"taper": taper}, of(taper.Locks()))
	b.add("timing/cam.Taper.DriveUp", in{"taper": taper, "by": mm(0.2)}, of(taper.DriveUp(mm(0.2))))
	key := cam.Key{Shaft: mm(16), Width: mm(4), Height: mm(4), Length: mm(12)}
	b.add("timing/cam.Key.Holds", in{"key": key, "shear": units.Megapascals(60), "bearing": units.Megapascals(120)}, of(key.Holds(units.Megapascals(60), units.Megapascals(120))))
	b.add("timing/cam.KeySlack", in{"slack": mm(0.05), "shaft": mm(16)}, of(cam.KeySlack(mm(0.05), mm(16))))
	b.add("timing/cam.Lame", in{"inner": mm(20), "outer": mm(40), "at": mm(20), "inside": units.Megapascals(60), "outside": 0 * units.Pascal}, of(cam.Lame(mm(20), mm(40), mm(20), units.Megapascals(60), 0)))
	splines := cam.Splines{Number: 6, Inner: mm(21), Outer: mm(25), Length: mm(20)}
	b.add("timing/cam.Splines.Torque", in{"splines": splines, "pressure": units.Megapascals(10)}, of(splines.Torque(units.Megapascals(10))))
	port, lift, err := cam.PortFor(mm(78), units.MetresPerSecond(14), units.MetresPerSecond(75), units.Degrees(45))
	b.add("timing/cam.PortFor", in{"bore": mm(78), "mean_piston": units.MetresPerSecond(14), "gas": units.MetresPerSecond(75), "seat": units.Degrees(45)},
		of(map[string]any{"port": port, "lift": lift}, err))
}

// curveCases ask a curve of 720 points of the arc cam. The curve goes through the
// points by cubics, so that another cubic through them, or the arcs themselves,
// agree with it to about 1e-5 mm only.
func curveCases(b *book, arc cam.ArcCam) {
	c, err := arc.Curve(camDeg(55))
	args := func(more in) in {
		more["cam"], more["nose_at"] = arc, camDeg(55)
		return more
	}
	if err != nil {
		b.keep("timing-cam-curve", err)
		return
	}
	for _, deg := range []float64{0, 30, 55, 90, 300} {
		b.add("timing/cam.Curve.Lift", args(in{"at": camDeg(deg)}), of(c.Lift(camDeg(deg))))
	}
	m, err := c.Motion(camDeg(40))
	inTime, _ := m.At(rpm(5000))
	b.add("timing/cam.Curve.Motion", args(in{"at": camDeg(40)}), of(map[string]any{"lift": m.Lift, "at_5000_rev_min": inTime.Velocity}, err))
	for _, check := range []float64{0.3, 1} {
		b.add("timing/cam.Curve.Events", args(in{"check": mm(check)}), of(c.Events(mm(check))))
		b.add("timing/cam.Curve.Area", args(in{"check": mm(check), "crank_speed": rpm(4000)}), of(c.Area(mm(check), rpm(4000))))
		for _, clearance := range []float64{0, 0.1} {
			v := cam.Valve{Cam: c, Clearance: mm(clearance)}
			b.add("timing/cam.Valve.Events", args(in{"clearance": v.Clearance, "check": mm(check)}), of(v.Events(mm(check))))
		}
	}
	exhaust, err := arc.Curve(camDeg(-54))
	if err == nil {
		b.add("timing/cam.OverlapOf", args(in{"exhaust_nose_at": camDeg(-54), "check": mm(0.1)}), of(cam.OverlapOf(exhaust, c, mm(0.1))))
	}
	load := cam.SpringLoad{Seated: units.Newtons(250), Rate: units.NewtonsPerMillimetre(20), Mass: units.Grams(215)}
	off, err := cam.Valve{Cam: c}.LiftOff(load)
	b.add("timing/cam.Valve.LiftOff", args(in{"load": load}), of(map[string]any{"crank_speed": off.CrankSpeed}, err))
	var readings []cam.Sample
	for deg := 0.0; deg < 360; deg += 2.5 {
		lift, _ := c.Lift(camDeg(deg))
		readings = append(readings, cam.Sample{At: camDeg(deg), Lift: lift})
	}
	f, err := cam.Fit(readings, cam.FitOptions{Criterion: cam.KnownNoise, KeepZero: true})
	if err == nil {
		e, err := f.Events(mm(1))
		b.loosely(1e-6, "timing/cam.Fit", args(in{"every": camDeg(2.5), "check": mm(1)}), of(map[string]any{"opens": e.Opens, "closes": e.Closes}, err))
	}
}
