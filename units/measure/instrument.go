package measure

import (
	"math"

	"example.com/benchbook/units"
)

// Instrument is what a figure was read with, and the standard uncertainty that
// a bare figure then carries: the greater of U and Relative times the figure.
type Instrument[Q units.Quantity] struct {
	Name     string
	U        Q       // absolute part
	Relative float64 // part of the figure: 0.03 is three per cent
}

func (i Instrument[Q]) uncertainty(v Q) Q {
	return max(i.U, Q(math.Abs(float64(v))*i.Relative))
}

// The defaults below are what careful hands reach in an ordinary workshop:
// common practice, no source. Give the reading its own ± where you know better.

// DegreeDisc reads a disc on the crank to the whole degree by eye: u 1°.
func DegreeDisc() Instrument[units.CrankAngle] {
	return Instrument[units.CrankAngle]{Name: "degree disc", U: units.CrankDegree}
}

// Protractor reads an angle on a part in the hand: u 1°.
func Protractor() Instrument[units.Angle] {
	return Instrument[units.Angle]{Name: "protractor", U: units.Degree}
}

// DialGauge reads travel or lift: u 0.01 mm.
func DialGauge() Instrument[units.Length] {
	return Instrument[units.Length]{Name: "dial gauge", U: units.Millimetre / 100}
}

// Caliper reads a slide caliper: u 0.02 mm.
func Caliper() Instrument[units.Length] {
	return Instrument[units.Length]{Name: "caliper", U: units.Millimetre / 50}
}

// Micrometer reads an outside micrometer: u 0.005 mm.
func Micrometer() Instrument[units.Length] {
	return Instrument[units.Length]{Name: "micrometer", U: units.Millimetre / 200}
}

// Rule reads a steel rule: u 0.3 mm.
func Rule() Instrument[units.Length] {
	return Instrument[units.Length]{Name: "rule", U: 3 * units.Millimetre / 10}
}

// FeelerGauge reads a gap by blades: u 0.02 mm.
func FeelerGauge() Instrument[units.Length] {
	return Instrument[units.Length]{Name: "feeler gauge", U: units.Millimetre / 50}
}

// PitchGauge reads a pitch by a screw-thread gauge: u 0.5 % of the pitch, since
// a wrong leaf shows light within about ten threads.
func PitchGauge() Instrument[units.Length] {
	return Instrument[units.Length]{Name: "pitch gauge", U: units.Micrometre, Relative: 0.005}
}

// SpringBalance reads a pull: u 3 %, at least 1 N.
func SpringBalance() Instrument[units.Force] {
	return Instrument[units.Force]{Name: "spring balance", U: units.Newton, Relative: 0.03}
}

// CompressionGauge reads a cranking pressure: u 5 %, at least 0.1 bar.
func CompressionGauge() Instrument[units.Pressure] {
	return Instrument[units.Pressure]{Name: "compression gauge", U: units.Bar / 10, Relative: 0.05}
}

// LeakGauge reads the part of a pressure that a leak-down test loses, in per cent:
// u 3 of the scale's hundred.
func LeakGauge() Instrument[units.Ratio] {
	return Instrument[units.Ratio]{Name: "leak-down gauge", U: 3 * units.Percent}
}

// Thermometer reads the air: u 1 K.
func Thermometer() Instrument[units.Temperature] {
	return Instrument[units.Temperature]{Name: "thermometer", U: units.Kelvins(1)}
}

// Barometer reads the pressure of the day: u 2 hPa.
func Barometer() Instrument[units.Pressure] {
	return Instrument[units.Pressure]{Name: "barometer", U: 2 * units.Hectopascal}
}

// Nominal is a figure taken from a drawing, a book or a marking, good to the
// given part of itself: 0.02 is two per cent. It serves any quantity.
func Nominal[Q units.Quantity](relative float64) Instrument[Q] {
	return Instrument[Q]{Name: "nominal", U: units.FromFigure[Q](1e-9), Relative: relative}
}

// Count reads a number by counting turns or parts to within half a unit of the
// last one counted: u 0.1.
func Count() Instrument[units.Ratio] {
	return Instrument[units.Ratio]{Name: "count", U: units.One / 10}
}
