package gear

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/solve"
)

// OfDiametralPitch returns the module of a diametral pitch, in teeth per inch of
// pitch diameter: 25.4/DP mm. Zero for a pitch that is not above zero or not
// finite, which every use of a module refuses.
func OfDiametralPitch(perInch float64) units.Length {
	if m := max(units.Inches(1/perInch), 0); sane(m) {
		return m
	}
	return 0
}

// OfCircularPitch returns the module of a circular pitch: p/pi. Zero for a pitch
// that is not above zero or not finite, as [OfDiametralPitch].
func OfCircularPitch(p units.Length) units.Length {
	if m := max(p.Times(1/math.Pi), 0); sane(m) {
		return m
	}
	return 0
}

// DiametralPitch returns the diametral pitch of a module, teeth per inch. Zero for a
// module that is not above zero or not finite.
func DiametralPitch(module units.Length) float64 {
	if dp := 1 / max(module, 0).Inches(); sane(module) && !math.IsInf(dp, 0) {
		return dp
	}
	return 0
}

// Wheel is a spur or helical wheel with involute teeth outside. Zero fields take the
// usual proportions.
type Wheel struct {
	Teeth    int          `json:"teeth"`
	Module   units.Length `json:"module"`   // normal module; see [OfDiametralPitch]
	Pressure units.Angle  `json:"pressure"` // normal pressure angle; default 20°, older inch gears 14.5°
	Helix    units.Angle  `json:"helix"`    // default 0, a spur wheel
	Shift    float64      `json:"shift"`    // profile shift in modules, outwards positive; default 0
	Addendum float64      `json:"addendum"` // in modules; default 1
	Dedendum float64      `json:"dedendum"` // in modules; default 1.25
	Face     units.Length `json:"face"`     // width, for the overlap of helical teeth; default not known
}

func (w Wheel) filled() Wheel {
	if w.Pressure == 0 {
		w.Pressure = 20 * units.Degree
	}
	if w.Addendum == 0 {
		w.Addendum = 1
	}
	if w.Dedendum == 0 {
		w.Dedendum = 1.25
	}
	return w
}

// Err returns every fault: teeth, module, angle, shift or proportion out of range.
func (w Wheel) Err() error {
	w = w.filled()
	var l fault.List
	checkTeeth(&l, w.Teeth)
	above(&l, "module", w.Module, "mm")
	positive(&l, "face", w.Face, "mm")
	if !(w.Pressure >= 5*units.Degree && w.Pressure <= 35*units.Degree) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "pressure", Value: w.Pressure.String(), Unit: "°", Rule: "a pressure angle of 5° to 35°"})
	}
	if a := w.Helix.Abs(); !(a <= 60*units.Degree) || a > 0 && math.IsInf(1e6/math.Sin(a.SI())*w.Module.Metres(), 0) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "helix", Value: w.Helix.String(), Unit: "°", Rule: "0 for a spur wheel, or up to 60° and enough for a lead"})
	}
	for _, p := range [...]struct {
		path    string
		v, a, b float64
	}{{"shift", w.Shift, -2, 2}, {"addendum", w.Addendum, 0, 4}, {"dedendum", w.Dedendum, 0, 4}} {
		if !(p.v >= p.a && p.v <= p.b) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: p.path, Unit: "modules", Rule: "out of any proportion in use"})
		}
	}
	return l.Err()
}

// Geometry is what follows from a wheel's figures. Diameters and pitches are
// transverse, square to the axis, unless they say normal.
type Geometry struct {
	TransverseModule   units.Length `json:"transverse_module"`   // mn/cos b
	TransversePressure units.Angle  `json:"transverse_pressure"` // tan at = tan an/cos b
	Reference          units.Length `json:"reference"`           // diameter mn z/cos b
	Base               units.Length `json:"base"`                // diameter d cos at
	Tip                units.Length `json:"tip"`                 // diameter d + 2 mn (ha + x)
	Root               units.Length `json:"root"`                // diameter d - 2 mn (hf - x)
	CircularPitch      units.Length `json:"circular_pitch"`      // pi mt
	BasePitch          units.Length `json:"base_pitch"`          // normal, pi mn cos an
	AxialPitch         units.Length `json:"axial_pitch"`         // pi mn/sin b; 0 for a spur wheel
	Lead               units.Length `json:"lead"`                // z axial pitches; 0 for a spur wheel
	VirtualTeeth       float64      `json:"virtual_teeth"`       // z/cos^3 b
	Thickness          units.Length `json:"thickness"`           // normal, along the reference circle
	ChordAngle         units.Angle  `json:"chord_angle"`         // half the tooth at the centre of the virtual wheel
	Chord              units.Length `json:"chord"`               // normal thickness straight across
	ChordalAddendum    units.Length `json:"chordal_addendum"`    // from tip to that chord
}

// Geometry returns the sizes of a wheel. Thickness mn (pi/2 + 2 x tan an), half
// angle 90/zv + 360 x tan an/(pi zv) degrees, chord zv mn sin, chordal addendum
// ha + x + zv mn (1 - cos)/2 (Elements of Metric Gear Technology, section 10, tables
// 10-1 and 10-4; Jindal, Machine Design, example 26-1, read in a textbook companion;
// ISO 21771 from memory). Errors: those of [Wheel.Err].
func (w Wheel) Geometry() (Geometry, error) {
	if err := w.Err(); err != nil {
		return Geometry{}, err
	}
	w = w.filled()
	g := w.figures()
	m, x := g.mn, w.Shift
	tan := math.Tan(w.Pressure.SI())
	zv := g.z / math.Pow(g.cosB, 3)
	half := math.Pi/(2*zv) + 2*x*tan/zv
	out := Geometry{
		TransverseModule: units.Millimetres(g.mt), TransversePressure: units.Radians(g.at),
		Reference: units.Millimetres(g.d), Base: units.Millimetres(g.db),
		Tip: units.Millimetres(g.da), Root: units.Millimetres(g.d - 2*m*(w.Dedendum-x)),
		CircularPitch: units.Millimetres(math.Pi * g.mt), BasePitch: units.Millimetres(math.Pi * m * math.Cos(w.Pressure.SI())),
		VirtualTeeth: zv, Thickness: units.Millimetres(m * (math.Pi/2 + 2*x*tan)),
		ChordAngle: units.Radians(half), Chord: units.Millimetres(zv * m * math.Sin(half)),
		ChordalAddendum: units.Millimetres(m*(w.Addendum+x) + zv*m*(1-math.Cos(half))/2),
	}
	if w.Helix != 0 {
		axial := math.Pi * m / math.Abs(math.Sin(w.Helix.SI()))
		out.AxialPitch, out.Lead = units.Millimetres(axial), units.Millimetres(axial*g.z)
	}
	return out, nil
}

// figures are a wheel in mm and radians.
type figures struct {
	z, mn, mt, an, at, cosB, d, db, da, x float64
}

func (w Wheel) figures() figures {
	f := figures{z: float64(w.Teeth), mn: w.Module.Millimetres(), an: w.Pressure.SI(), cosB: math.Cos(w.Helix.SI()), x: w.Shift}
	f.mt = f.mn / f.cosB
	f.at = math.Atan(math.Tan(f.an) / f.cosB)
	f.d = f.mt * f.z
	f.db = f.d * math.Cos(f.at)
	f.da = f.d + 2*f.mn*(w.Addendum+w.Shift)
	return f
}

// inv is the involute function.
func inv(a float64) float64 { return math.Tan(a) - a }

// uninv is the angle whose involute is y, from 0 to a quarter turn; NaN for none.
func uninv(y float64) float64 {
	a, err := solve.Inverse(inv, y, 0.0, 1.55, 1e-15)
	if err != nil {
		return math.NaN()
	}
	return a
}

// Span is a measurement over several teeth with plain anvils.
type Span struct {
	Over int          `json:"over"` // teeth
	W    units.Length `json:"w"`
	// Touches is the diameter where the anvils meet the flanks, never inside the
	// base circle; it must lie between root and tip.
	Touches units.Length `json:"touches"`
	OnFlank bool         `json:"on_flank"` // Touches lies inside the tip
}

// Span returns the measurement over k teeth without backlash allowance:
// mn cos an [pi (k - 0.5) + z inv at] + 2 x mn sin an (formula seen in a drawing
// program's handbook; the shift term from memory). k of zero takes the number whose
// anvils touch nearest the reference circle, z a/180 + 0.5 for plain teeth. One tooth
// more adds exactly a base pitch. Errors: those of [Wheel.Err]; k out of range.
func (w Wheel) Span(k int) (Span, error) {
	if err := w.Err(); err != nil {
		return Span{}, err
	}
	w = w.filled()
	f := w.figures()
	cos, sin := math.Cos(f.an), math.Sin(f.an)
	at := func(k int) float64 {
		return f.mn*cos*(math.Pi*(float64(k)-0.5)+f.z*inv(f.at)) + 2*f.x*f.mn*sin
	}
	// The anvils touch at half the span from the point of tangency; a helical span
	// runs slanting, so only its transverse part counts.
	baseHelix := math.Asin(math.Sin(w.Helix.SI()) * cos)
	touches := func(k int) float64 { return math.Hypot(f.db, at(k)*math.Cos(baseHelix)) }
	if k == 0 {
		off := func(k int) float64 { return math.Abs(touches(k) - (f.d + 2*f.x*f.mn)) }
		for k = 2; off(k+1) < off(k); k++ { // it touches further out with each tooth
		}
	}
	if k < 1 || k >= max(w.Teeth, 2) {
		return Span{}, fault.Fault{Code: fault.OutOfRange, Path: "k", Unit: "teeth", Rule: "span from one tooth to fewer than the wheel has"}
	}
	d := touches(k)
	return Span{Over: k, W: units.Millimetres(at(k)), Touches: units.Millimetres(d), OnFlank: d < f.da}, nil
}

// OverPins is a measurement over two pins or balls in opposite tooth spaces.
type OverPins struct {
	M units.Length `json:"m"`
	// PerThickness is how much M grows for each unit the teeth are thicker,
	// square to the tooth.
	PerThickness float64     `json:"per_thickness"`
	Pressure     units.Angle `json:"pressure"` // at the pins' centres, transverse
}

// OverPins returns the measurement over pins of a diameter: inv f = inv at + dp/(z mn
// cos an) - pi/(2 z) + 2 x tan an/z, centres on z mt cos at/cos f, twice that radius
// plus a pin, times cos(90°/z) for odd teeth (example of a handbook, a spur wheel of 32
// teeth of 4 DP, 8.6032 in, reproduced to the last digit; odd form from memory). On
// a helical wheel it is that over two balls held square across the axis, which pins
// give too if the teeth are even (derived: the ball touches the flank in its normal
// plane, and db cos bb = z mn cos an). A pin of 1.728 modules is customary for outside
// teeth (from memory). Errors: those of [Wheel.Err]; a pin that falls to the root or
// stands out of reach.
func (w Wheel) OverPins(pin units.Length) (OverPins, error) {
	var l fault.List
	l.Under("", w.Err())
	above(&l, "pin", pin, "mm")
	if err := l.Err(); err != nil {
		return OverPins{}, err
	}
	w = w.filled()
	f := w.figures()
	y := inv(f.at) + pin.Millimetres()/(f.z*f.mn*math.Cos(f.an)) - math.Pi/(2*f.z) + 2*f.x*math.Tan(f.an)/f.z
	if !(y > 0) {
		return OverPins{}, fault.Fault{Code: fault.OutOfRange, Path: "pin", Value: pin.String(), Unit: "mm", Rule: "too thin: it touches no flank"}
	}
	a := uninv(y)
	if a-a != 0 {
		return OverPins{}, fault.Fault{Code: fault.OutOfRange, Path: "pin", Value: pin.String(), Unit: "mm", Rule: "too thick to sit between the teeth"}
	}
	across := 1.0
	if w.Teeth%2 == 1 {
		across = math.Cos(math.Pi / (2 * f.z))
	}
	return OverPins{
		M:            units.Millimetres(f.db/math.Cos(a)*across + pin.Millimetres()),
		PerThickness: math.Cos(f.at) / (f.cosB * math.Sin(a)) * across,
		Pressure:     units.Radians(a),
	}, nil
}
