package drive

import (
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// ChainReadings is an unmarked chain in the hand. What is not taken is averaged
// over.
type ChainReadings struct {
	Pitch  measure.Reading[units.Length] `json:"pitch"`  // pin centre to pin centre; better over ten, divided by ten
	Width  measure.Reading[units.Length] `json:"width"`  // between inner plates
	Roller measure.Reading[units.Length] `json:"roller"` // diameter over a roller
}

// ChainIdentity is which chain it is.
type ChainIdentity struct {
	Causes measure.Ranking `json:"causes"`          // by chain number
	Twins  []ChainTwin     `json:"twins,omitempty"` // chains that may be taken for the leader
	Basis  refdata.Basis   `json:"basis"`
}

// ChainTwin is a chain near to the one found.
type ChainTwin struct {
	Number string `json:"number"`
	Why    string `json:"why"` // what tells them apart, or that nothing does
}

// IdentifyChain ranks the chains of the table by what was read, all equally
// likely before. A chain only wears longer: up to 4 % of pitch is allowed for,
// and rollers up to 0.3 mm and widths up to 0.1 mm off the list (this library's
// judgement, no source). Chains of one pitch, width and roller come back as one
// group. Errors: nothing taken, unsound readings.
func IdentifyChain(in ChainReadings) (ChainIdentity, error) {
	var l fault.List
	any := false
	for _, r := range []struct {
		path string
		r    measure.Reading[units.Length]
	}{{"pitch", in.Pitch}, {"width", in.Width}, {"roller", in.Roller}} {
		if r.r.Taken() {
			any = true
			checkReading(&l, r.path, r.r)
		}
	}
	if !any {
		l.Add(fault.Fault{Code: fault.Missing, Path: "pitch", Unit: "mm", Rule: "take at least one of pitch, width and roller"})
	}
	if err := l.Err(); err != nil {
		return ChainIdentity{}, err
	}
	datum := func(r measure.Reading[units.Length]) measure.Datum {
		return measure.Datum{Value: r.Value().Millimetres(), Taken: r.Taken()}
	}
	data := measure.Data{datum(in.Pitch), datum(in.Width), datum(in.Roller)}
	out := ChainIdentity{Basis: refdata.Basis{
		Assumed: []refdata.Assumption{
			{What: "wear", Value: "up to 4 % of pitch, most likely little", Status: refdata.CommonPractice},
			{What: "each chain before the readings", Value: "equally likely", Status: refdata.CommonPractice},
		},
		NotChecked: []refdata.Unchecked{{What: "strength and condition", Why: "size was read", Settle: "read the number on a side plate; renew an old chain of unknown make"}},
		Cautions:   []refdata.Caution{refdata.BrakesBeforeRoad},
	}}
	rows := map[string]refdata.Chain{}
	var causes []measure.Cause
	for c := range refdata.Chains().All() {
		rows[c.Number] = c
		p, w, d := c.Pitch.Millimetres(), c.InnerWidth.Millimetres(), c.Roller.Millimetres()
		own := func(r measure.Reading[units.Length], list float64) float64 {
			return math.Hypot(math.Max(r.U().Millimetres(), 1e-3), list)
		}
		// wear: mean 1 % with a spread of 1 %, so that 4 % is three spreads off
		causes = append(causes, measure.Cause{Key: c.Number, Text: c.List + " " + c.Number + ", " + c.ImperialName, Prior: 1, Hypothesis: measure.Gaussian{
			Mean: []float64{p * 1.01, w, d},
			Own:  []float64{own(in.Pitch, 0.01*p), own(in.Width, 0.1), own(in.Roller, 0.15)},
		}})
	}
	other := measure.Cause{Text: "a chain not in the table", Prior: 0.05 * float64(len(causes)), Hypothesis: measure.Gaussian{
		Mean: []float64{14, 7, 9}, Own: []float64{6, 4, 4},
	}}
	var err error
	if out.Causes, err = measure.Rank(data, causes, other); err != nil {
		return ChainIdentity{}, err
	}
	for _, o := range out.Causes.Odds {
		// the likeliest in any case, and whatever else has a share worth showing
		if c, ok := rows[o.Key]; ok && (o.Share >= 0.01 || len(out.Basis.Sources) == 0) {
			out.Basis.Join(refdata.Basis{Sources: c.SizeOrigin.Sources()})
		}
	}
	out.Twins = twins(out.Causes, rows)
	return out, nil
}

// twins lists the chains of the leader's pitch that differ from it by less than
// 2 mm in width, and says what tells them apart.
func twins(r measure.Ranking, rows map[string]refdata.Chain) []ChainTwin {
	lead, known := rows[r.Leader().Key]
	if !known {
		return nil
	}
	var out []ChainTwin
	for _, o := range r.Odds {
		c, known := rows[o.Key]
		if !known || c.Number == lead.Number || (c.Pitch-lead.Pitch).Abs() > 10*units.Micrometre {
			continue
		}
		w, d := c.InnerWidth-lead.InnerWidth, c.Roller-lead.Roller
		switch {
		case w.Abs() >= units.Millimetres(2):
			continue
		case w.Abs() < 50*units.Micrometre && d.Abs() < 50*units.Micrometre:
			out = append(out, ChainTwin{c.Number, "same pitch, width and roller: they run on the same sprockets"})
		case d.Abs() >= 200*units.Micrometre:
			out = append(out, ChainTwin{c.Number, "roller of " + c.Roller.In(units.Millimetre, 2) + " in place of " + lead.Roller.In(units.Millimetre, 2) + ": it does not seat on the same teeth"})
		default:
			out = append(out, ChainTwin{c.Number, "inner width of " + c.InnerWidth.In(units.Millimetre, 2) + " in place of " + lead.InnerWidth.In(units.Millimetre, 2) + ": measure the sprocket's thickness before changing"})
		}
	}
	return out
}
