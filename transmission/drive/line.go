package drive

import (
	"encoding/json"
	"strconv"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Line is the whole line of drive from crankshaft to road.
type Line struct {
	Primary Train                         `json:"primary"` // crankshaft to gearbox; empty: one to one
	Box     Box                           `json:"box"`
	Final   Train                         `json:"final"`   // gearbox to wheel; empty: one to one
	Rolling measure.Reading[units.Length] `json:"rolling"` // what the wheel rolls in one turn, loaded: [RollOut] or [Tyre.Rolling]
}

// Overall returns primary × gear × final, exact: crankshaft turns for one of the
// wheel. Errors: a fault in the trains, no such gear, too many digits.
func (n Line) Overall(gear string) (Ratio, error) {
	var l fault.List
	r := n.overall(&l, gear)
	return r, l.Err()
}

func (n Line) overall(l *fault.List, gear string) Ratio {
	p, errP := n.Primary.Ratio()
	l.Under("primary", errP)
	f, errF := n.Final.Ratio()
	l.Under("final", errF)
	g, ok := n.Box.Gear(gear)
	if !ok {
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "gear", Value: gear, Rule: n.Box.choices()})
	}
	if l.Len() > 0 {
		return Ratio{}
	}
	r, err := p.Times(g.Ratio)
	if err == nil {
		r, err = r.Times(f)
	}
	if err != nil {
		l.Add(fault.Faults(err)...)
		return Ratio{}
	}
	return r
}

// SpeedAt returns the road speed at an engine speed in a gear, with no slip:
// v = n U/i, U being the rolling circumference; the uncertainty is that of U.
// Errors: as for [Line.Overall], and a circumference that was not taken or is
// not above zero.
func (n Line) SpeedAt(gear string, engine units.RotationalSpeed) (measure.Reading[units.Speed], error) {
	var l fault.List
	i := n.overall(&l, gear)
	n.checkRolling(&l)
	if !units.Finite(engine) || engine < 0 {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "engine", Value: engine.String(), Unit: "rev/min", Rule: "must not be below zero, and of a size a machine can have"})
	}
	if err := l.Err(); err != nil {
		return measure.Reading[units.Speed]{}, err
	}
	return n.speed(engine.RevolutionsPerSecond() / i.Float()), nil
}

// speed is the road speed at wheel turns per second.
func (n Line) speed(turns float64) measure.Reading[units.Speed] {
	v := units.MetresPerSecond(turns * n.Rolling.Value().Metres())
	u := units.MetresPerSecond(turns * n.Rolling.U().Metres())
	if u == 0 {
		return measure.Exact(v)
	}
	return measure.Of(v, u)
}

// EngineAt returns the engine speed at a road speed in a gear: n = v i/U, with
// the uncertainty of U. Errors as for [Line.SpeedAt].
func (n Line) EngineAt(gear string, road units.Speed) (measure.Reading[units.RotationalSpeed], error) {
	var l fault.List
	i := n.overall(&l, gear)
	n.checkRolling(&l)
	if !units.Finite(road) || road < 0 {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "road", Value: road.String(), Unit: "mile/h", Rule: "must not be below zero, and of a size a machine can have"})
	}
	if err := l.Err(); err != nil {
		return measure.Reading[units.RotationalSpeed]{}, err
	}
	turns := road.MetresPerSecond() / n.Rolling.Value().Metres() * i.Float()
	v := units.RevolutionsPerSecond(turns)
	u := units.RevolutionsPerSecond(turns * n.Rolling.U().Ratio(n.Rolling.Value()))
	if u == 0 {
		return measure.Exact(v), nil
	}
	return measure.Of(v, u), nil
}

func (n Line) checkRolling(l *fault.List) {
	switch {
	case !n.Rolling.Taken():
		l.Add(fault.Fault{Code: fault.Missing, Path: "rolling", Unit: "mm", Rule: "give the rolling circumference: roll the wheel one turn and measure, or read the tyre's code"})
	default:
		checkReading(l, "rolling", n.Rolling)
	}
}

// TableOptions says what a gearing table is reckoned at.
type TableOptions struct {
	ChangeAt units.RotationalSpeed // engine speed of a change up; zero: 5000 rev/min
	At       units.Speed           // road speed the engine speeds are given for; zero: 50 mile/h
}

// Table is a gearing table.
type Table struct {
	Primary  Ratio                 `json:"primary"`
	Final    Ratio                 `json:"final"`
	Gears    []GearFigures         `json:"gears"`            // lowest first
	Spread   Ratio                 `json:"spread"`           // lowest over highest gear
	Steady   bool                  `json:"steady"`           // the steps shrink towards top, as they should
	Uneven   []string              `json:"uneven,omitempty"` // gears whose step up is wider than the one below it
	ChangeAt units.RotationalSpeed `json:"change_at"`
	At       units.Speed           `json:"at"`
	Basis    refdata.Basis         `json:"basis"`
}

// GearFigures is one gear of a table.
type GearFigures struct {
	Name        string                                 `json:"name"`
	Box         Ratio                                  `json:"box"`
	Overall     Ratio                                  `json:"overall"`
	PerThousand measure.Reading[units.Speed]           `json:"per_thousand"` // road speed at 1000 rev/min; not taken without a circumference
	EngineAt    measure.Reading[units.RotationalSpeed] `json:"engine_at"`    // engine speed at the table's road speed
	Step        Ratio                                  `json:"step"`         // this gear over the next higher; none for top
	DropsTo     units.RotationalSpeed                  `json:"drops_to"`     // engine speed after changing up from ChangeAt
	Gap         float64                                `json:"gap"`          // part of the engine speed lost, 1 - 1/step
}

// Table returns the ratios and speeds of all gears. The circumference may be
// missing; then the speeds are not taken and Basis says so. Engine speed after a
// change is n/step; steps should shrink towards top, since road load grows with
// speed (common practice). Errors: faults in trains or box.
func (n Line) Table(opt TableOptions) (Table, error) {
	var l fault.List
	t := Table{ChangeAt: opt.ChangeAt, At: opt.At, Steady: true}
	if opt.ChangeAt == 0 {
		t.ChangeAt = units.RevolutionsPerMinute(5000)
	}
	if opt.At == 0 {
		t.At = units.MilesPerHour(50)
	}
	positive(&l, "change_at", t.ChangeAt)
	positive(&l, "at", t.At)
	var errP, errF error
	t.Primary, errP = n.Primary.Ratio()
	l.Under("primary", errP)
	t.Final, errF = n.Final.Ratio()
	l.Under("final", errF)
	if len(n.Box.gears) == 0 {
		l.Add(fault.Fault{Code: fault.Missing, Path: "box", Rule: "make the gearbox with NewBox, BoxOf or NewLayshaft"})
	}
	if n.Rolling.Taken() {
		n.checkRolling(&l)
	}
	if err := l.Err(); err != nil {
		return Table{}, err
	}
	for k, g := range n.Box.gears {
		f := GearFigures{Name: g.Name, Box: g.Ratio}
		if f.Overall = n.overall(&l, g.Name); l.Len() > 0 {
			return Table{}, l.Err()
		}
		if n.Rolling.Taken() {
			f.PerThousand = n.speed(1000.0 / 60 / f.Overall.Float())
			f.EngineAt, _ = n.EngineAt(g.Name, t.At)
		}
		if k+1 < len(n.Box.gears) {
			var err error
			if f.Step, err = g.Ratio.Over(n.Box.gears[k+1].Ratio); err != nil {
				return Table{}, err
			}
			f.DropsTo = t.ChangeAt.Times(1 / f.Step.Float())
			f.Gap = 1 - 1/f.Step.Float()
			if k > 0 && f.Step.Compare(t.Gears[k-1].Step) > 0 {
				t.Steady, t.Uneven = false, append(t.Uneven, g.Name)
			}
		}
		t.Gears = append(t.Gears, f)
	}
	var err error
	if t.Spread, err = n.Box.gears[0].Ratio.Over(n.Box.Top().Ratio); err != nil {
		return Table{}, err
	}
	t.Basis = n.basis(opt)
	return t, nil
}

func (n Line) basis(opt TableOptions) refdata.Basis {
	b := refdata.Basis{
		Sources: []refdata.Source{
			{Title: "Khurmi & Gupta, Theory of Machines, 14th ed. 2009", Clause: "ex. 13.1: ratio of a compound train", Status: refdata.Published},
			{Title: "road speed from wheel turns and rolling circumference", Status: refdata.Derived},
			refdata.Practice(),
		},
		Cautions: []refdata.Caution{refdata.BrakesBeforeRoad, refdata.DeferToManual},
	}
	if opt.ChangeAt == 0 {
		b.Assumed = append(b.Assumed, refdata.Assumption{What: "engine speed of a change up", Value: "5000 rev/min", Status: refdata.CommonPractice})
	}
	if !n.Rolling.Taken() {
		b.NotChecked = append(b.NotChecked, refdata.Unchecked{What: "road speeds", Why: "no rolling circumference", Settle: "mark tyre and floor, roll one turn with the rider up, measure the floor"})
	}
	b.NotChecked = append(b.NotChecked, refdata.Unchecked{What: "clutch and tyre slip", Why: "speeds are those of a drive that does not slip", Settle: "compare a tachometer and a timed mile"})
	return b
}

func marshal(v any) ([]byte, error) { return json.Marshal(v) }

// Figures beyond these, in SI units, belong to no machine; keeping within them
// keeps every formula here from overflowing.
const leastSI, mostSI = 1e-9, 1e12

// positive notes a fault if q is not above zero and of a size that a machine can
// have.
func positive[Q units.Quantity](l *fault.List, path string, q Q) bool {
	if x := q.SI(); x >= leastSI && x <= mostSI {
		return true
	}
	code := fault.OutOfRange
	if q == 0 {
		code = fault.Missing
	}
	l.Add(fault.Fault{Code: code, Path: path, Value: q.String(), Unit: units.Example(q), Rule: "must be above zero, and of a size a machine can have"})
	return false
}

// notNegative notes a fault if q is below zero or beyond any machine.
func notNegative[Q units.Quantity](l *fault.List, path string, q Q) bool {
	if x := q.SI(); x >= 0 && x <= mostSI {
		return true
	}
	l.Add(fault.Fault{Code: fault.OutOfRange, Path: path, Value: q.String(), Unit: units.Example(q), Rule: "must not be below zero, and of a size a machine can have"})
	return false
}

// within notes a fault if x is outside low to high.
func within(l *fault.List, path string, x, low, high float64) bool {
	if x >= low && x <= high {
		return true
	}
	l.Add(fault.Fault{Code: fault.OutOfRange, Path: path, Value: number(x), Rule: "must be " + number(low) + " to " + number(high)})
	return false
}

func number(x float64) string { return strconv.FormatFloat(x, 'g', 6, 64) }
