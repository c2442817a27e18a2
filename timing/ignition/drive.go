package ignition

import (
	"strconv"

	"example.com/benchbook/timing/gear"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Drive is how the ignition shaft is driven: the shaft of a magneto, a
// distributor or the points cam. Its zero value is a half-speed shaft with one
// spark a turn, as on most four-stroke singles.
type Drive struct {
	// Ratio is turns of the shaft for one turn of the crank; default 1/2. The
	// sense does not matter here.
	Ratio gear.Rational `json:"ratio"`
	// Sparks is the number of sparks for one turn of the shaft; default 1.
	Sparks int `json:"sparks"`
}

// HalfSpeed returns the drive of a shaft at half engine speed.
func HalfSpeed() Drive { return Drive{Ratio: gear.NewRational(1, 2), Sparks: 1} }

// EngineSpeed returns the drive of a shaft at engine speed, which also sparks
// when the exhaust closes.
func EngineSpeed() Drive { return Drive{Ratio: gear.NewRational(1, 1), Sparks: 1} }

// DriveOf returns the drive a train gives, with one spark a turn. The error is
// the train's or [Drive.Err].
func DriveOf(t gear.Train) (Drive, error) {
	r, err := t.Ratio()
	if err != nil {
		return Drive{}, err
	}
	d := Drive{Ratio: r.Abs(), Sparks: 1}
	return d, d.Err()
}

// Err returns the faults: a ratio below zero or that the engine's two turns do
// not bring back to the same spark, so that it would fall elsewhere each time.
func (d Drive) Err() error {
	d = d.filled()
	var l fault.List
	if d.Sparks < 1 || d.Sparks > 64 {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "sparks", Value: strconv.Itoa(d.Sparks), Rule: "1 to 64 sparks a turn"})
	}
	if !d.Ratio.Valid() || d.Ratio.Num() <= 0 {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "ratio", Value: d.Ratio.String(), Rule: "turns of the ignition shaft for one of the crank, above zero"})
	} else if l.Len() == 0 && d.sparksACycle().Den() != 1 {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "ratio", Value: d.Ratio.String(), Rule: "the spark would fall elsewhere in each cycle: two turns of the crank must be a whole number of sparks"})
	}
	return l.Err()
}

func (d Drive) filled() Drive {
	if d.Ratio == (gear.Rational{}) {
		d.Ratio = gear.NewRational(1, 2)
	}
	if d.Sparks == 0 {
		d.Sparks = 1
	}
	return d
}

// AtShaft returns the angle the ignition shaft turns while the crank turns c:
// half as much at half speed. Zero if the drive has faults, which [Drive.Err] tells,
// or the angle is not finite.
func (d Drive) AtShaft(c units.CrankAngle) units.Angle {
	if d.Err() != nil || !sane(c) {
		return 0
	}
	return units.Degrees(c.Degrees() * d.filled().Ratio.Float())
}

// AtCrank returns the crank angle of an angle of the ignition shaft: twice as much
// at half speed, so an automatic advance of A at the shaft moves the spark 2 A
// (arithmetic). Zero if the drive has faults, which [Drive.Err] tells, or the angle
// is not finite.
func (d Drive) AtCrank(a units.Angle) units.CrankAngle {
	if d.Err() != nil || !sane(a) {
		return 0
	}
	return units.CrankDegrees(a.Degrees() / d.filled().Ratio.Float())
}

// Period returns the crank angle from spark to spark: 720° for one a cycle, 360°
// where every turn sparks. Zero if the drive has faults, which [Drive.Err] tells.
func (d Drive) Period() units.CrankAngle {
	if d.Err() != nil {
		return 0
	}
	return units.CrankDegrees(720 / float64(d.sparksACycle().Num()))
}

// sparksACycle is how many sparks two turns of the crank bring, a whole number in a
// sound drive.
func (d Drive) sparksACycle() gear.Rational {
	d = d.filled()
	return d.Ratio.Times(gear.NewRational(2*int64(d.Sparks), 1))
}

// Retarded returns where the spark falls on full retard, given full advance and
// the range of the control or automatic advance at the ignition shaft. Errors: those
// of [Drive.Err]; a range outside 0 to 90°.
func (d Drive) Retarded(full units.CrankPosition, shaftRange units.Angle) (units.CrankPosition, error) {
	var l fault.List
	l.Under("drive", d.Err())
	if !(shaftRange >= 0 && shaftRange <= 90*units.Degree) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "range", Value: shaftRange.String(), Unit: "°", Rule: "0° to 90° at the ignition shaft"})
	}
	if !sane(full.After()) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "full", Unit: "° crank", Rule: "must be finite"})
	}
	if err := l.Err(); err != nil {
		return units.CrankPosition{}, err
	}
	return units.After(full.Datum(), full.After()+d.AtCrank(shaftRange)), nil
}

// HalfTurn is what half a turn of the ignition shaft does to the spark.
type HalfTurn struct {
	Shift units.CrankAngle `json:"shift"` // of the spark, within half the period
	// OnOverlap says that the spark keeps its place on the disc but falls at the
	// wrong TDC, as the exhaust closes: the trap of a half-speed magneto.
	OnOverlap bool `json:"on_overlap"`
	Harmless  bool `json:"harmless"` // the shaft sparks there too
}

// HalfTurn returns what putting the ignition shaft in half a turn out does. At half
// speed that is 360° of the crank: the disc shows nothing. Half a turn is half the
// sparks of a turn: an even number of them come to where others were, an odd number
// half a period from it (derived). The error is that of [Drive.Err].
func (d Drive) HalfTurn() (HalfTurn, error) {
	if err := d.Err(); err != nil {
		return HalfTurn{}, err
	}
	if d.filled().Sparks%2 == 0 {
		return HalfTurn{Harmless: true}, nil
	}
	shift := d.Period().Times(0.5)
	return HalfTurn{Shift: shift, OnOverlap: shift.Degrees() == 360}, nil
}
