package drive

import (
	"math"
	"strconv"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// GearSet is a set of ratios that a box may hold: wide, close, or another
// model's.
type GearSet struct {
	Key   string  `json:"key"`
	Text  string  `json:"text"` // for the reader; "": the key
	Box   Box     `json:"box"`
	Prior float64 `json:"prior"` // weight before the readings; zero: 1
}

// TurnReadings is crankshaft turns for one of the rear wheel, plug out, counted
// gear by gear. What was not taken is averaged over.
type TurnReadings struct {
	Turns   []measure.Reading[units.Ratio] `json:"turns"`   // lowest gear first
	Primary Train                          `json:"primary"` // empty: one to one
	Final   Train                          `json:"final"`   // empty: one to one
}

// BoxIdentity is which set of ratios a box holds.
type BoxIdentity struct {
	Ratios []measure.Reading[units.Ratio] `json:"ratios"` // of the box alone, as counted; lowest first
	Causes measure.Ranking                `json:"causes"` // by key of the sets
	Basis  refdata.Basis                  `json:"basis"`
}

// IdentifyBox ranks sets of gears by crank turns counted for one turn of the
// wheel in each gear. Counting over several turns of the wheel and dividing
// sharpens it. Sets with another number of gears than were counted are ruled
// out. Errors: no set or one without gears, no turn taken, unsound readings or
// exact ones, faults in the trains, two sets of one key.
func IdentifyBox(in TurnReadings, from []GearSet) (BoxIdentity, error) {
	var l fault.List
	p, errP := in.Primary.Ratio()
	l.Under("primary", errP)
	f, errF := in.Final.Ratio()
	l.Under("final", errF)
	taken := false
	for i, r := range in.Turns {
		if !r.Taken() {
			continue
		}
		taken = true
		at := "turns." + strconv.Itoa(i)
		if checkReading(&l, at, r) && r.U() == 0 {
			l.Add(fault.Fault{Code: fault.Missing, Path: at, Value: r.String(), Rule: "must have an uncertainty, such as 5.58 ± 0.05"})
		}
	}
	if !taken {
		l.Add(fault.Fault{Code: fault.Missing, Path: "turns", Rule: "count crank turns for one of the wheel in at least one gear"})
	}
	if len(from) == 0 {
		l.Add(fault.Fault{Code: fault.Missing, Path: "from", Rule: "at least one set of gears"})
	}
	for i, s := range from {
		at := "from." + strconv.Itoa(i)
		if len(s.Box.gears) == 0 {
			l.Add(fault.Fault{Code: fault.Missing, Path: at + ".box", Rule: "make the gearbox with NewBox, BoxOf or NewLayshaft"})
		}
		if s.Prior < 0 || math.IsInf(s.Prior, 0) || math.IsNaN(s.Prior) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: at + ".prior", Value: number(s.Prior), Rule: "must not be below zero"})
		}
	}
	if err := l.Err(); err != nil {
		return BoxIdentity{}, err
	}
	rest := p.Float() * f.Float()
	out := BoxIdentity{Basis: refdata.Basis{
		Sources:    []refdata.Source{{Title: "crank turns for one of the wheel: primary × gear × final", Status: refdata.Derived}},
		NotChecked: []refdata.Unchecked{{What: "primary and final drive", Why: "their teeth were taken as given", Settle: "count the teeth of all four sprockets"}},
		Cautions:   []refdata.Caution{refdata.HighTension, refdata.DeferToManual},
	}}
	data := measure.Data{}
	own := make([]float64, len(in.Turns))
	for i, r := range in.Turns {
		data = append(data, measure.Datum{Value: r.Value().SI(), Taken: r.Taken()})
		own[i] = 1
		if !r.Taken() {
			out.Ratios = append(out.Ratios, measure.Reading[units.Ratio]{})
			continue
		}
		own[i] = r.U().SI()
		out.Ratios = append(out.Ratios, measure.Of(r.Value().Times(1/rest), r.U().Times(1/rest)))
	}
	var causes []measure.Cause
	weight := 0.0
	for _, s := range from {
		text, prior := s.Text, s.Prior
		if text == "" {
			text = s.Key
		}
		if prior == 0 {
			prior = 1
		}
		weight += prior
		var h measure.Hypothesis = measure.LogLikelihood(func(measure.Data) float64 { return math.Inf(-1) })
		if len(s.Box.gears) == len(in.Turns) {
			g := measure.Gaussian{Own: own}
			for _, gear := range s.Box.gears {
				g.Mean = append(g.Mean, gear.Ratio.Float()*rest)
			}
			h = g
		}
		causes = append(causes, measure.Cause{Key: s.Key, Text: text, Prior: prior, Hypothesis: h})
	}
	// another box: each gear anywhere from 1 to 3, about evenly
	wide := measure.Gaussian{}
	for i := range in.Turns {
		wide.Mean = append(wide.Mean, 1.8*rest)
		wide.Own = append(wide.Own, math.Hypot(0.7*rest, own[i]))
	}
	var err error
	out.Causes, err = measure.Rank(data, causes, measure.Cause{Text: "none of these sets", Prior: 0.1 * weight, Hypothesis: wide})
	return out, err
}
