package timing

import (
	"strconv"

	"example.com/benchbook/timing/gear"
	"example.com/benchbook/units"
)

// wheel is one kind of tooth step: meshes that move the same cams by the same
// amount are one, since nothing that can be read tells them apart.
type wheel struct {
	key   string // "whole-train", "inlet-wheel", with "-2" for a second worth
	text  string // "inlet camwheel"
	cams  []Cam
	worth gear.Rational // crank degrees a tooth
	teeth int           // of the driven wheel
	made  bool          // there is a mesh that does this; false: both camwheels alike
}

func (w *wheel) crank() units.CrankAngle { return units.CrankDegrees(w.worth.Float()) }

// camsOf names the cams among the spindles moved.
func camsOf(spindles []string) []Cam {
	var in, ex bool
	for _, s := range spindles {
		in = in || s == InletSpindle || s == Camshaft
		ex = ex || s == ExhaustSpindle || s == Camshaft
	}
	switch {
	case in && ex:
		return []Cam{Inlet, Exhaust}
	case in:
		return []Cam{Inlet}
	case ex:
		return []Cam{Exhaust}
	}
	return nil
}

// wheels lists the tooth steps of a sound drive. Where no mesh moves both cams,
// both camwheels a tooth out alike is listed as well: it is what comes of a
// pinion mark misread.
func wheels(d gear.Drive) ([]wheel, error) {
	steps, err := d.Steps()
	if err != nil {
		return nil, err
	}
	var all []wheel
	count := map[string]int{}
	add := func(cams []Cam, worth gear.Rational, teeth int, made bool) {
		key, text := "whole-train", "whole cam train"
		if !ownShafts(d) {
			text = "camwheel"
		}
		if len(cams) == 1 {
			key, text = cams[0].String()+"-wheel", cams[0].String()+" camwheel"
		}
		for _, w := range all {
			if len(w.cams) == len(cams) && w.cams[0] == cams[0] && w.worth == worth {
				return
			}
		}
		if count[key]++; count[key] > 1 {
			n := strconv.Itoa(count[key])
			key, text = key+"-"+n, text+", at mesh "+n+","
		}
		all = append(all, wheel{key: key, text: text, cams: cams, worth: worth, teeth: teeth, made: made})
	}
	for _, s := range steps {
		if cams := camsOf(s.Moves); cams != nil {
			add(cams, s.CrankExact, d[s.Mesh].Driven, true)
		}
	}
	both, alone := false, [2]gear.Rational{}
	for _, w := range all {
		if both = both || len(w.cams) == 2; len(w.cams) == 1 {
			alone[w.cams[0]] = w.worth
		}
	}
	if !both && alone[Inlet] == alone[Exhaust] && alone[Inlet] != (gear.Rational{}) {
		add([]Cam{Inlet, Exhaust}, alone[Inlet], 0, false)
	}
	return all, nil
}

// keyStep is the shift of both cams, in crank degrees, from one keyway to the
// next with the pinion meshed anew to the nearest tooth: 360/lcm(teeth,
// keyways). Zero if there is nothing to choose or nothing to gain.
func keyStep(e *Engine) float64 {
	teeth := pinion(e.Drive)
	if e.Keyways < 2 || teeth == 0 || teeth%e.Keyways == 0 {
		return 0
	}
	g := teeth
	for a, b := teeth, e.Keyways; b != 0; a, b = b, a%b {
		g = b
	}
	return 360 / float64(teeth/g*e.Keyways)
}

// pinion returns the teeth of the crank's wheel if one wheel drives both cams.
func pinion(d gear.Drive) int {
	root, teeth := d.Root(), 0
	steps, err := d.Steps()
	if err != nil {
		return 0
	}
	for _, s := range steps {
		if m := d[s.Mesh]; m.From == root && camsOf(s.Moves) != nil {
			if teeth != 0 && teeth != m.Driver {
				return 0
			}
			teeth = m.Driver
		}
	}
	return teeth
}

// ownShafts reports whether each cam has a spindle of its own.
func ownShafts(d gear.Drive) bool {
	for _, m := range d {
		if m.To == Camshaft {
			return false
		}
	}
	return true
}
