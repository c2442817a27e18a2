package carburation

import (
	"math"
	"strconv"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Station is the diameter of a needle at its jet's mouth at one lift of the
// slide, the clip in the middle groove.
type Station struct {
	Lift     units.Length `json:"lift"`
	Diameter units.Length `json:"diameter"`
}

// Needle is a jet needle as it is measured: straight at the top, tapering
// below; or any other shape by stations.
type Needle struct {
	// Diameter of the straight part. It is needed.
	Diameter measure.Reading[units.Length] `json:"diameter"`
	// TaperFrom is the lift at which the taper enters the needle jet with the
	// clip in the middle groove: 0 is a needle that tapers from the start. Not
	// taken, a quarter of the bore is assumed.
	TaperFrom measure.Reading[units.Length] `json:"taper_from"`
	// Taper is the full angle between the sides, 0.2° to 10°. It is needed
	// without a Profile.
	Taper measure.Reading[units.Angle] `json:"taper"`
	// Profile, if given, takes the place of TaperFrom and Taper: two stations or
	// more by rising lift, straight between them and level beyond. Diameter is
	// still needed, and is that at its top.
	Profile []Station `json:"profile,omitempty"`
	// Pitch of the clip grooves. Not taken, 1.6 mm is assumed.
	Pitch measure.Reading[units.Length] `json:"pitch"`
	// Groove the clip is in. Not read, the middle one is assumed.
	Groove Groove `json:"groove"`
}

// needleShape is a needle in SI numbers: diameter at the jet by slide lift.
type needleShape struct {
	diameter, from, slope float64 // m, m, loss of diameter per m of lift
	raised                float64 // m, by the clip
	profile               []Station
}

func (n needleShape) at(lift float64) float64 {
	if n.profile != nil {
		return n.along(lift + n.raised)
	}
	if s := lift + n.raised - n.from; s > 0 {
		if d := n.diameter - n.slope*s; d > 0 {
			return d
		}
		return 0
	}
	return n.diameter
}

// along returns the diameter (m) at a lift by the stations.
func (n needleShape) along(lift float64) float64 {
	p := n.profile
	if lift <= p[0].Lift.Metres() {
		return p[0].Diameter.Metres()
	}
	for i := 1; i < len(p); i++ {
		a, b := p[i-1], p[i]
		if x := b.Lift.Metres(); lift <= x {
			t := (lift - a.Lift.Metres()) / (x - a.Lift.Metres())
			return a.Diameter.Metres() + t*(b.Diameter.Metres()-a.Diameter.Metres())
		}
	}
	return p[len(p)-1].Diameter.Metres()
}

// shape returns the needle in SI numbers, clip offset taken in: a lower groove
// lifts the needle, so that its taper enters sooner.
func (n Needle) shape() needleShape {
	s := needleShape{diameter: n.Diameter.Value().Metres(), slope: 2 * math.Tan(n.Taper.Value().Radians()/2)}
	s.from = n.TaperFrom.Value().Metres()
	if len(n.Profile) > 0 {
		s.profile = append([]Station(nil), n.Profile...)
	}
	return s
}

// offset returns how much higher than in the middle groove the needle hangs, m.
func (n Needle) offset() float64 {
	if !n.Groove.Taken() {
		return 0
	}
	return (float64(n.Groove.FromTop) - float64(n.Groove.Of+1)/2) * n.pitch()
}

// usualPitch of clip grooves, m (judged).
const usualPitch = 1.6e-3

func (n Needle) pitch() float64 {
	if n.Pitch.Taken() {
		return n.Pitch.Value().Metres()
	}
	return usualPitch
}

func (n Needle) faults(l *fault.List) {
	needed(l, "needle.diameter", n.Diameter)
	if len(n.Profile) == 0 {
		needed(l, "needle.taper", n.Taper)
	}
	if len(n.Profile) == 1 {
		l.Add(fault.Fault{Code: fault.Missing, Path: "needle.profile", Rule: "two stations or more, or none"})
	}
	for i, s := range n.Profile {
		path := "needle.profile[" + strconv.Itoa(i) + "]"
		positive(l, path+".lift", s.Lift, units.Millimetres(-20), units.Millimetres(80))
		positive(l, path+".diameter", s.Diameter, units.Millimetres(0.2), units.Millimetres(8))
		if i > 0 && !(s.Lift > n.Profile[i-1].Lift) {
			l.Add(fault.Fault{Code: fault.Conflict, Path: path + ".lift", Value: s.Lift.String(), Unit: "mm", Rule: "above that of the station before"})
		}
	}
	if n.Diameter.Taken() {
		positive(l, "needle.diameter", n.Diameter.Value(), units.Millimetres(0.8), units.Millimetres(8))
	}
	if n.Taper.Taken() {
		positive(l, "needle.taper", n.Taper.Value(), units.Degrees(0.2), units.Degrees(10))
	}
	if n.TaperFrom.Taken() {
		l.Under("needle.taper_from", n.TaperFrom.Err())
		positive(l, "needle.taper_from", n.TaperFrom.Value(), units.Millimetres(-10), units.Millimetres(40))
	}
	if n.Pitch.Taken() {
		l.Under("needle.pitch", n.Pitch.Err())
		positive(l, "needle.pitch", n.Pitch.Value(), units.Millimetres(0.3), units.Millimetres(5))
	}
	n.Groove.faults(l, "needle.groove")
}
