package transmission

import "example.com/benchbook/units/fault"

// part is one figure of the state of a clutch. Inside the package they are kept
// in a vector, so that window, repairs and causes move them alike: lengths in
// millimetres, stiffness in newtons per millimetre, turns in turns.
type part uint8

const (
	friction part = iota
	springSet
	springRate
	wear
	outOfFlat
	rodPlay
	hubNutBack
	freePlay
	cableStiffness
	cableEfficiency
	cablePull
	runOut
	tongueGrip
	leverRatio // finger force to cable tension, from the lever's own readings
	parts      // how many can be read
)

// What is never read under these names: where the nuts stand is read as the
// setting, the rest is moved by causes only.
const (
	nuts       = parts + iota // turns of the spring nuts in from flush
	faces                     // rubbing faces
	trainRatio                // cable travel to lift, whole train
	preload                   // cable travel the train is loaded by with the hand off
	slack                     // lost at the rod behind a hub that is not held
	all
)

type vector [all]float64

// figure is a number with its standard uncertainty.
type figure struct{ x, u float64 }

// rule is what is allowed of a part, and what it is with nothing wrong unless
// the caller says otherwise: common practice, no source.
type rule struct {
	path, what string
	unit       string
	low, high  float64
	fresh      figure
	finest     float64 // no reading is believed to better than this, even one declared exact
	span       float64 // how far something unlisted may move it
	minutes    float64 // to read it
	settle     string  // the cheapest reading that would settle it
}

// rules is read only.
var rules = [parts]rule{
	friction:        {"friction", "friction of the plates", "", 0.02, 1, figure{0.12, 0.02}, 0.005, 0.05, 60, "pull one plate on another with a spring balance under a known weight"},
	springSet:       {"spring_set", "springs gone short", "mm", -5, 30, figure{0, 0.2}, 0.02, 1.5, 45, "measure the free length of each spring with a caliper"},
	springRate:      {"spring_rate", "spring rate", "N/mm", 0.1, 1000, figure{}, 0.05, 2, 50, "weigh a spring at two lengths on a balance"},
	wear:            {"wear", "wear of the pack", "mm", -5, 30, figure{0, 0.2}, 0.02, 1.5, 60, "measure the thickness of the whole pack with a caliper"},
	outOfFlat:       {"out_of_flat", "plates out of flat", "mm", 0, 10, figure{0.3, 0.1}, 0.02, 0.6, 75, "lay the plates on plate glass and try feelers under them"},
	rodPlay:         {"rod_play", "play of the push rod", "mm", 0, 30, figure{0.3, 0.1}, 0.02, 1, 15, "feel the rod's end play with a dial gauge"},
	hubNutBack:      {"hub_nut_back", "hub's retaining nut", "turn", 0, 10, figure{0, 0}, 0.02, 0.6, 30, "take off the cover and try the nut with a spanner of the right hand"},
	freePlay:        {"free_play", "free play at the lever", "mm", 0, 40, figure{3, 0.5}, 0.1, 4, 2, "pull the outer away from the lever and measure the gap with a rule"},
	cableStiffness:  {"cable_stiffness", "stretch of the cable", "N/mm", 1, 10000, figure{100, 15}, 2, 30, 20, "hold the lower end fast, pull with a spring balance and measure the inner's movement"},
	cableEfficiency: {"cable_efficiency", "drag of the cable", "", 0.05, 1, figure{0.80, 0.06}, 0.01, 0.15, 20, "hang a weight on one end of the inner and weigh what lifts it at the other"},
	cablePull:       {"cable_pull", "pull of the cable", "mm", 1, 80, figure{22, 2}, 0.1, 3, 3, "measure inner against outer, hand off and lever at the bar, with a rule"},
	runOut:          {"run_out", "evenness of the lift", "mm", 0, 10, figure{0, 0.05}, 0.01, 0.6, 15, "tie the lever back and turn the clutch under a dial gauge"},
	tongueGrip:      {"tongue_grip", "grip of the plates' tongues in their slots", "", 0, 0.6, figure{0, 0}, 0.02, 0.15, 80, "push a plate along its slots under a known sideways load and weigh the push with a spring balance"},
	leverRatio:      {"lever_ratio", "leverage of the hand lever", "", 0.5, 20, figure{2.9, 0.3}, 0.01, 0.3, 5, "measure the lever from pivot to nipple and from pivot to finger"},
}

// at returns a reading of the condition in the package's own units.
func (s *Condition) at(p part) (f figure, taken bool, err error) {
	switch p {
	case friction:
		return ratio(&s.Friction)
	case springSet:
		return length(&s.SpringSet)
	case springRate:
		return stiffness(&s.SpringRate)
	case wear:
		return length(&s.Wear)
	case outOfFlat:
		return length(&s.OutOfFlat)
	case rodPlay:
		return length(&s.RodPlay)
	case hubNutBack:
		return turned(&s.HubNutBack)
	case freePlay:
		return length(&s.FreePlay)
	case cableStiffness:
		return stiffness(&s.CableStiffness)
	case cableEfficiency:
		return ratio(&s.CableEfficiency)
	case cablePull:
		return length(&s.CablePull)
	case runOut:
		return length(&s.RunOut)
	case tongueGrip:
		return ratio(&s.TongueGrip)
	}
	return figure{}, false, nil
}

// readInto puts what was taken into f, with which of it was taken, and notes
// every reading that breaks its rule. It is on the hot path: most readings are
// not taken, and those cost a test each.
func (s *Condition) readInto(f *[parts]figure, took *[parts]bool, l *fault.List, path string) {
	if s.Friction.Taken() {
		s.put(friction, f, took, l, path)
	}
	if s.SpringSet.Taken() {
		s.put(springSet, f, took, l, path)
	}
	if s.SpringRate.Taken() {
		s.put(springRate, f, took, l, path)
	}
	if s.Wear.Taken() {
		s.put(wear, f, took, l, path)
	}
	if s.OutOfFlat.Taken() {
		s.put(outOfFlat, f, took, l, path)
	}
	if s.RodPlay.Taken() {
		s.put(rodPlay, f, took, l, path)
	}
	if s.HubNutBack.Taken() {
		s.put(hubNutBack, f, took, l, path)
	}
	if s.FreePlay.Taken() {
		s.put(freePlay, f, took, l, path)
	}
	if s.CableStiffness.Taken() {
		s.put(cableStiffness, f, took, l, path)
	}
	if s.CableEfficiency.Taken() {
		s.put(cableEfficiency, f, took, l, path)
	}
	if s.CablePull.Taken() {
		s.put(cablePull, f, took, l, path)
	}
	if s.RunOut.Taken() {
		s.put(runOut, f, took, l, path)
	}
	if s.TongueGrip.Taken() {
		s.put(tongueGrip, f, took, l, path)
	}
}

func (s *Condition) put(p part, f *[parts]figure, took *[parts]bool, l *fault.List, path string) {
	v, _, err := s.at(p)
	r := &rules[p]
	switch {
	case err != nil:
		l.Under(path+"."+r.path, err)
	case !(v.x >= r.low && v.x <= r.high):
		l.Add(outside(path+"."+r.path, v.x, r.unit, r.low, r.high))
	default:
		f[p], took[p] = v, true
	}
}
