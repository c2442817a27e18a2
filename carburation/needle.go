package carburation

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Needle is a jet needle as it is measured: straight at the top, tapering
// below.
type Needle struct {
	// Diameter of the straight part. It is needed.
	Diameter measure.Reading[units.Length] `json:"diameter"`
	// TaperFrom is the lift at which the taper enters the needle jet with the
	// clip in the middle groove: 0 is a needle that tapers from the start. Not
	// taken, a quarter of the bore is assumed.
	TaperFrom measure.Reading[units.Length] `json:"taper_from"`
	// Taper is the full angle between the sides, 0.2° to 10°. It is needed.
	Taper measure.Reading[units.Angle] `json:"taper"`
	// Pitch of the clip grooves. Not taken, 1.6 mm is assumed.
	Pitch measure.Reading[units.Length] `json:"pitch"`
	// Groove the clip is in. Not read, the middle one is assumed.
	Groove Groove `json:"groove"`
}

// needleShape is a needle in SI numbers: diameter at the jet by slide lift.
type needleShape struct {
	diameter, from, slope float64 // m, m, loss of diameter per m of lift
	raised                float64 // m, by the clip
}

func (n needleShape) at(lift float64) float64 {
	if s := lift + n.raised - n.from; s > 0 {
		if d := n.diameter - n.slope*s; d > 0 {
			return d
		}
		return 0
	}
	return n.diameter
}

// shape returns the needle in SI numbers, clip offset taken in: a lower groove
// lifts the needle, so that its taper enters sooner.
func (n Needle) shape() needleShape {
	s := needleShape{diameter: n.Diameter.Value().Metres(), slope: 2 * math.Tan(n.Taper.Value().Radians()/2)}
	s.from = n.TaperFrom.Value().Metres()
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
	needed(l, "needle.taper", n.Taper)
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
