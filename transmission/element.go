package transmission

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Element is one link of the release between the cable and the pressure plate:
// an arm, a rocking lever, a quick thread, a ball ramp, a push rod. Fill it in
// where its ratio is fixed; [ReleaseArm], [QuickThread] and [BallRamp] make one
// whose ratio changes as it turns, and [Rocker] and [PushRod] save arithmetic.
// Stiffness, efficiency and lost motion may be set on any of them.
type Element struct {
	Name       string
	Ratio      float64          // travel put in over travel given out, 0.05 to 200: 6 if 6 mm of cable move the rod 1 mm. Of an arm, the ratio when square
	Efficiency float64          // work given out over work put in, 0.05 to 1; 0 takes 1
	Stiffness  units.SpringRate // at its output, 10 N/mm or more; 0 is rigid
	Lost       units.Length     // motion it loses at its output before it drives, 0 to 50 mm

	swing swing
}

// ReleaseArm is a bell crank: the cable pulls one arm, the other pushes the rod.
// Rests are the angles of each arm before (negative) or past (positive) square
// to what it drives or is driven by, hand off, -80° to 80°. Turned by phi from
// rest, cable travel is rc (sin(cableRest + phi) - sin cableRest) and rod travel
// the same of the other arm, so the ratio is rc cos / (rr cos): most even when
// both are square at mid lift. Radii 3 to 300 mm.
func ReleaseArm(cable, rod units.Length, cableRest, rodRest units.Angle) Element {
	return Element{Name: "release arm", Ratio: ratioOf(cable, rod), swing: swing{
		in: cable.Millimetres(), inRest: cableRest.Radians(), out: rod.Millimetres(), outRest: rodRest.Radians()}}
}

// QuickThread is an arm that turns a coarse screw against the rod: rod travel is
// lead times turns, so the ratio when the arm is square is 2 pi rc / lead. Arm 3
// to 300 mm, lead 0.5 to 300 mm a turn, cableRest as of a release arm.
func QuickThread(cable, lead units.Length, cableRest units.Angle) Element {
	perRadian := lead.Times(1 / (2 * math.Pi))
	return Element{Name: "quick thread", Ratio: ratioOf(cable, perRadian), swing: swing{
		in: cable.Millimetres(), inRest: cableRest.Radians(), lead: perRadian.Millimetres()}}
}

// BallRamp is an arm that turns one plate against another over balls in ramps of
// the given rise over the given angle: a screw of lead rise times 360°/over.
// Rise 0.1 to 30 mm, over 5° to 180°.
func BallRamp(cable, rise units.Length, over, cableRest units.Angle) Element {
	e := QuickThread(cable, rise.Times(units.Turn.Ratio(over)), cableRest)
	e.Name = "ball ramp"
	return e
}

// Rocker is a rocking thrust lever: travel goes in at the end of one arm and out
// at the end of the other, both near square. The ratio is driven over driving,
// the arm that is pushed over the arm that pushes.
func Rocker(driven, driving units.Length) Element {
	return Element{Name: "rocking lever", Ratio: ratioOf(driven, driving)}
}

// PushRod is a rod of ratio one with a stiffness, E A / L of its smallest section.
func PushRod(stiffness units.SpringRate) Element {
	return Element{Name: "push rod", Ratio: 1, Stiffness: stiffness}
}

// ratioOf gives a ratio that check refuses where a length is not above zero.
func ratioOf(a, b units.Length) float64 {
	if !(b > 0) {
		return 0
	}
	return a.Ratio(b)
}

func (e *Element) check(l *fault.List, path string) bool {
	before := l.Len()
	need(l, path+".ratio", e.Ratio, "", 0.05, 200)
	if e.Efficiency != 0 {
		need(l, path+".efficiency", e.Efficiency, "", 0.05, 1)
	}
	if e.Stiffness != 0 {
		need(l, path+".stiffness", e.Stiffness.NewtonsPerMillimetre(), "N/mm", 10, 1e9)
	}
	need(l, path+".lost", e.Lost.Millimetres(), "mm", 0, 50)
	if w := &e.swing; *w != (swing{}) {
		need(l, path+".cable_arm", w.in, "mm", 3, 300)
		rest := func(name string, a float64) {
			if d := a * 180 / math.Pi; !(d >= -80 && d <= 80) {
				l.Add(outside(path+name, d, "°", -80, 80))
			}
		}
		rest(".cable_rest", w.inRest)
		if w.lead == 0 {
			need(l, path+".rod_arm", w.out, "mm", 1, 300)
			rest(".rod_rest", w.outRest)
		} else {
			// rounded, since a lead was divided by a turn and is multiplied again
			need(l, path+".lead", math.Round(w.lead*2*math.Pi*1e9)/1e9, "mm", 0.5, 300)
		}
	}
	return l.Len() == before
}
