package carburation

import (
	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Fitted is a carburettor as it was found, each part as far as it was read.
type Fitted struct {
	Bore     measure.Reading[units.Length] `json:"bore"`
	MainJet  Jet                           `json:"main_jet"`
	PilotJet Jet                           `json:"pilot_jet"`
	Cutaway  measure.Reading[units.Length] `json:"cutaway"` // height of the slide's cut; number 3 in sixteenths is 3/16 in
	Groove   Groove                        `json:"groove"`
}

// Input is the question of Start.
type Input struct {
	Engine       Engine       `json:"engine"`
	Surroundings Surroundings `json:"surroundings"`
	// Lambda is the mixture wanted at full throttle. Not taken, 0.87 ± 0.03 is
	// assumed (common practice 0.85 to 0.90).
	Lambda measure.Reading[units.Ratio] `json:"lambda"`
	Fitted Fitted                       `json:"fitted"`
}

// Options are the choices of Start. The zero value takes the defaults.
type Options struct {
	// Head is the height of fuel behind flow marks that do not tell their own.
	// Not taken, anything from 0.4 m to 1.5 m is held equally likely by its
	// logarithm, and is listed as assumed.
	Head measure.Reading[units.Length]
}

// Range is what the trade starts from: two ends, both in it.
type Range[Q units.Quantity] struct {
	Low  Q `json:"low"`
	High Q `json:"high"`
}

// Band is a computed figure with the ends that leave 5 % on either side.
type Band[Q units.Quantity] struct {
	Low    Q `json:"low"`
	Middle Q `json:"middle"`
	High   Q `json:"high"`
}

// Standing says where a part stands to the practice range.
type Standing string

// The standings.
const (
	NotRead Standing = "not-read" // the part was not read
	Inside  Standing = "inside"   // more likely than not within the range
	Below   Standing = "below"    // smaller, more likely than not
	Above   Standing = "above"    // larger, more likely than not
	Unknown Standing = "unknown"  // nothing to compare it with
)

// Point is one starting point, by practice and by physics side by side.
type Point[Q units.Quantity] struct {
	Key        string             `json:"key"`       // "main-jet"
	Text       string             `json:"text"`      // "main jet, flow mark"
	Practice   Range[Q]           `json:"practice"`  // from the table, for its petrol and air
	Corrected  Range[Q]           `json:"corrected"` // for this air and fuel; equal to Practice where neither acts
	NoPractice fault.Reason       `json:"no_practice,omitzero"`
	Physics    Band[Q]            `json:"physics"`
	NoPhysics  fault.Reason       `json:"no_physics,omitzero"`
	Agree      bool               `json:"agree"`            // the band and the corrected range overlap
	Differ     string             `json:"differ,omitempty"` // how they do not, for the reader
	Fitted     measure.Reading[Q] `json:"fitted"`
	Standing   Standing           `json:"standing"`
	Chance     float64            `json:"chance"` // that the fitted part lies inside, 0 to 1
}

// Starting is where to begin.
type Starting struct {
	Demand   Demand                  `json:"demand"`
	Bore     Point[units.Length]     `json:"bore"`
	MainJet  Point[units.VolumeFlow] `json:"main_jet"`
	Cutaway  Point[units.Length]     `json:"cutaway"`
	PilotJet Point[units.VolumeFlow] `json:"pilot_jet"`
	Needle   NeedleStart             `json:"needle"`
	Outside  []Part                  `json:"outside"` // fitted parts that are not inside, in the order to change them
	Basis    refdata.Basis           `json:"basis"`
}

// Demand is what the engine takes at its peak.
type Demand struct {
	AirDensity   units.Density    `json:"air_density"`
	Air          units.MassFlow   `json:"air"`
	Fuel         units.MassFlow   `json:"fuel"`
	FuelVolume   units.VolumeFlow `json:"fuel_volume"`
	DensityRatio float64          `json:"density_ratio"` // of the air, to 15 °C and 1013.25 hPa dry
}

// NeedleStart is where to put the clip.
type NeedleStart struct {
	Practice string   `json:"practice"` // "middle groove"
	Groove   Groove   `json:"groove"`   // that groove of the fitted needle, if its grooves were counted
	Standing Standing `json:"standing"`
}

// Part is a fitted part that lies outside.
type Part struct {
	Key      string   `json:"key"`
	Text     string   `json:"text"` // "main jet 190 cc/min is below 200 to 290 cc/min"
	Standing Standing `json:"standing"`
	Chance   float64  `json:"chance"` // that it is outside
}

// Start gives the starting bore, main jet, slide, needle and pilot as ranges of
// the trade by displacement, and as bands of physics beside them, corrected for
// air and fuel, and says which parts of a carburettor from another machine lie
// outside. Errors: fault.Missing without a displacement, fault.OutOfRange and
// others for readings that cannot be; all are returned together.
func Start(in Input, opt Options) (Starting, error) {
	return Starting{}, fault.Fault{Code: fault.UnknownName, Path: "start", Rule: "not computed yet"}
}
