package drive

import (
	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// SpeedometerInput is a speedometer and its drive.
type SpeedometerInput struct {
	Rolling         measure.Reading[units.Length] `json:"rolling"`           // of the wheel that turns it, or the rear one if driven from the gearbox
	Drive           Ratio                         `json:"drive"`             // cable turns for one of the wheel, or of the gearbox sprocket
	FromGearbox     Train                         `json:"from_gearbox"`      // final drive, if the cable leaves the gearbox: sprocket to wheel; empty: driven by the wheel
	TurnsAMile      float64                       `json:"turns_a_mile"`      // cable turns a mile the head is made for, as its dial says; give this
	TurnsAKilometre float64                       `json:"turns_a_kilometre"` // or this
}

// Speedometer is how a speedometer reads.
type Speedometer struct {
	CableTurnsAMile measure.Reading[units.Ratio] `json:"cable_turns_a_mile"`
	HeadTurnsAMile  float64                      `json:"head_turns_a_mile"`
	Factor          measure.Reading[units.Ratio] `json:"factor"`       // indicated over true, pointer and distance alike
	At              []Indicated                  `json:"at"`           // every 10 mile/h to 80
	DriveWanted     float64                      `json:"drive_wanted"` // cable turns for one of the wheel that would read true
	ReadsLow        bool                         `json:"reads_low"`    // shows less than the truth, which no rule allows
	Basis           refdata.Basis                `json:"basis"`
}

// Indicated is one reading of a speedometer.
type Indicated struct {
	True      units.Speed `json:"true"`
	Indicated units.Speed `json:"indicated"`
	Within    bool        `json:"within"` // between true and the greatest a regulation allows, +10 % and 8 km/h
}

// ReadSpeedometer returns how a speedometer reads: cable turns a mile are
// (1 mile/U) × drive, times the final drive if it leaves the gearbox; indicated
// over true is that over what the head is made for (derived; a head of 1000
// turns a mile shows 60 at 1000 rev/min of the cable, SAE J678, from memory).
// Errors: no circumference, no drive, not exactly one figure for the head.
func ReadSpeedometer(in SpeedometerInput) (Speedometer, error) {
	var l fault.List
	Line{Rolling: in.Rolling}.checkRolling(&l)
	if !in.Drive.Given() {
		l.Add(fault.Fault{Code: fault.Missing, Path: "drive", Rule: "cable turns for one of the wheel: count them"})
	}
	final, err := in.FromGearbox.Ratio()
	l.Under("from_gearbox", err)
	head := in.TurnsAMile
	switch {
	case in.TurnsAMile != 0 && in.TurnsAKilometre != 0, in.TurnsAMile == 0 && in.TurnsAKilometre == 0:
		l.Add(fault.Fault{Code: fault.Missing, Path: "turns_a_mile", Rule: "give turns a mile or turns a kilometre, whichever the dial says"})
	case in.TurnsAKilometre != 0:
		head = in.TurnsAKilometre * units.Miles(1).Ratio(units.Kilometres(1))
	}
	if head != 0 {
		within(&l, "turns_a_mile", head, 100, 10000)
	}
	if err := l.Err(); err != nil {
		return Speedometer{}, err
	}
	k := in.Drive.Float() * final.Float() // cable turns for one of the wheel
	mile := units.Miles(1).Metres()
	out := Speedometer{HeadTurnsAMile: head}
	if out.CableTurnsAMile, err = measure.Propagate[units.Ratio](func(x []float64) float64 { return mile / x[0] * k }, in.Rolling.SI()); err != nil {
		return Speedometer{}, err
	}
	if out.Factor, err = measure.Propagate[units.Ratio](func(x []float64) float64 { return mile / x[0] * k / head }, in.Rolling.SI()); err != nil {
		return Speedometer{}, err
	}
	f := out.Factor.Value().SI()
	out.DriveWanted = k / f
	out.ReadsLow = f < 1
	for v := 10.0; v <= 80; v += 10 {
		at := Indicated{True: units.MilesPerHour(v), Indicated: units.MilesPerHour(v * f)}
		most, err := GreatestIndicated(at.True, units.KilometresPerHour(8))
		if err != nil {
			return Speedometer{}, err
		}
		at.Within = at.Indicated >= at.True && at.Indicated <= most
		out.At = append(out.At, at)
	}
	out.Basis = refdata.Basis{
		Sources: []refdata.Source{
			{Title: "UN Regulation 39", Clause: "5.3: 0 ≤ V1 - V2 ≤ V2/10 + 4 km/h; 8 km/h for motorcycles from memory", Read: "quoted second hand", Status: refdata.FromMemory},
			{Title: "SAE J678", Clause: "1000 turns a mile", Status: refdata.FromMemory},
			{Title: "cable turns from rolling circumference and drive", Status: refdata.Derived},
		},
		NotChecked: []refdata.Unchecked{{What: "the head itself", Why: "a weak magnet or sticky spring reads wrong at any drive", Settle: "turn the cable end at a known speed by a drill: 1000 turns a mile shows 60 at 1000 rev/min"}},
		Cautions:   []refdata.Caution{refdata.BrakesBeforeRoad, refdata.DeferToManual},
	}
	return out, nil
}

// GreatestIndicated returns the most a speedometer may show at a true speed:
// V2 + V2/10 + allowance (UN Regulation 39, clause 5.3, quoted second hand with
// an allowance of 4 km/h; 8 km/h for motorcycles is from memory). Errors:
// figures below zero.
func GreatestIndicated(true, allowance units.Speed) (units.Speed, error) {
	var l fault.List
	notNegative(&l, "true", true)
	notNegative(&l, "allowance", allowance)
	if err := l.Err(); err != nil {
		return 0, err
	}
	return true.Times(1.1) + allowance, nil
}

// SpeedometerDrive returns the cable turns for one of the wheel that make a head
// of a number of turns a mile read true: turns × U/mile. Errors: as for
// [ReadSpeedometer].
func SpeedometerDrive(rolling measure.Reading[units.Length], turnsAMile float64) (measure.Reading[units.Ratio], error) {
	var l fault.List
	Line{Rolling: rolling}.checkRolling(&l)
	within(&l, "turns_a_mile", turnsAMile, 100, 10000)
	if err := l.Err(); err != nil {
		return measure.Reading[units.Ratio]{}, err
	}
	mile := units.Miles(1).Metres()
	return measure.Propagate[units.Ratio](func(x []float64) float64 { return turnsAMile * x[0] / mile }, rolling.SI())
}
