package refdata

import (
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// LimitOptions puts the machine's own figures before those of the table.
type LimitOptions[Q units.Quantity] struct {
	Fit   Range[Q] // the machine's own fit; default: the table's
	Renew Range[Q] // the machine's own limit; default: the table's, unless Fit is given, then none
}

// LimitFinding is a reading checked against a workshop limit.
type LimitFinding[Q units.Quantity] struct {
	Key     string             `json:"key"`
	Part    string             `json:"part"`
	Reading measure.Reading[Q] `json:"reading"`
	Fit     Range[Q]           `json:"fit"`    // for this size
	Renew   Range[Q]           `json:"renew"`  // for this size
	Margin  Q                  `json:"margin"` // to the nearer end of the fit, negative outside it
	Verdict LimitVerdict       `json:"verdict"`
	Chance  units.Ratio        `json:"chance"`           // that the verdict is right, by the reading's uncertainty
	Words   string             `json:"words"`            // the chance in words: "very likely"
	Second  LimitVerdict       `json:"second,omitempty"` // the next likeliest verdict, if it has one per cent or more
	Text    string             `json:"text"`
	Do      string             `json:"do,omitempty"`
	Reason  fault.Reason       `json:"reason,omitzero"` // why nothing was judged
	Basis   Basis              `json:"basis"`
}

// CheckLimit checks one reading against the workshop limit of that key, such as
// "ring-gap". size is the reading of what the limit grows with, the bore for a
// ring gap, and may be left empty for a limit that does not grow: a limit for
// each unit of size is multiplied by it and rounded to 0.001 mm. The chance takes the uncertainty of both
// readings as normal: it is the normal probability between the ends of the
// verdict's range (JCGM 100:2008 annex G, from memory). A reading not taken is no
// error: the finding has Reason "not-taken" or "size-not-taken", and says in its
// Basis what would settle it. Errors, all returned together: no such limit, a
// quantity that this limit is not read in, a reading below zero where none can
// be, a size that is not above zero, and faults of the readings themselves.
func CheckLimit[Q units.Quantity](key string, reading measure.Reading[Q], size measure.Reading[units.Length], opt LimitOptions[Q]) (LimitFinding[Q], error) {
	var l fault.List
	limit, ok := WorkshopLimits().ByName(key)
	if !ok {
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "key", Value: key, Rule: "a key of the workshop limits, such as ring-gap"})
	}
	l.Under("reading", reading.Err())
	l.Under("size", size.Err())
	if size.Taken() && !(size.Value() > 0) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "size", Value: size.Text(), Unit: "mm", Rule: "above zero"})
	}
	if ok && !isRead[Q](limit.Fit) {
		var q Q
		l.Add(fault.Fault{Code: fault.Conflict, Path: "reading", Value: reading.Text(), Rule: limit.Part + " is not read as a " + units.Name(q)})
	}
	if ok && reading.Taken() && !limit.Signed && reading.Value() < 0 {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "reading", Value: reading.Text(), Rule: "zero or more"})
	}
	for _, own := range []struct {
		path string
		r    Range[Q]
	}{{"fit", opt.Fit}, {"renew", opt.Renew}} {
		low, high, both := own.r.Ends()
		if !units.Finite(low) || !units.Finite(high) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: own.path, Value: own.r.String(), Rule: "finite"})
		}
		if both && low > high {
			l.Add(fault.Fault{Code: fault.Conflict, Path: own.path, Value: own.r.String(), Rule: "the low end first"})
		}
	}
	if err := l.Err(); err != nil {
		return LimitFinding[Q]{}, err
	}

	f := LimitFinding[Q]{Key: limit.Key, Part: limit.Part, Reading: reading, Basis: Basis{Cautions: []Caution{DeferToManual}}}
	if limit.Caution != "" {
		f.Basis.Cautions = []Caution{limit.Caution, DeferToManual}
	}
	if !reading.Taken() {
		f.Reason = fault.Reason{Code: "not-taken", Text: limit.Part + " was not read"}
		f.Basis.NotChecked = []Unchecked{{What: limit.Part, Why: "not read", Settle: "read it with a " + limit.ReadWith}}
		return f, nil
	}
	e := edges[Q]{x: reading.Value(), u: reading.U().SI(), down: limit.WearsDown}
	switch {
	case opt.Fit.Given():
		e.fit, e.renew = plainEdges(opt.Fit), plainEdges(opt.Renew)
	case limit.Fit.PerSize.Given() && !size.Taken():
		f.Reason = fault.Reason{Code: "size-not-taken", Text: limit.Part + " depends on the " + limit.Size + ", which was not read"}
		f.Basis.NotChecked = []Unchecked{{What: limit.Part, Why: "the " + limit.Size + " was not read", Settle: "measure the " + limit.Size}}
		return f, nil
	default:
		e.fit, e.renew = limitEdges[Q](limit.Fit, size), limitEdges[Q](limit.Renew, size)
		if opt.Renew.Given() {
			e.renew = plainEdges(opt.Renew)
		}
		f.Basis.Sources = limit.Sources()
		f.Basis.Assumed = []Assumption{{What: limit.Part, Value: limit.Fit.String(), Status: limit.Origin.Status()}}
	}
	f.Fit, f.Renew = rangeOf(e.fit), rangeOf(e.renew)
	near, far := e.ends()
	if first, last := e.renew[near].at, e.fit[far].at; first.known && last.known && e.beyond(last.value, first.value) < 0 {
		return LimitFinding[Q]{}, fault.Fault{Code: fault.Conflict, Path: "renew", Value: f.Renew.String(), Rule: "beyond the fit in the direction of wear, " + f.Fit.String()}
	}
	f.Margin = e.margin()
	var p units.Ratio
	f.Verdict, p, f.Second = e.judge()
	f.Chance = p
	f.Words = measure.Odds{Share: p.Value()}.Words()
	f.Text = limit.Part + " " + reading.String() + " against " + f.Fit.String() + ": " + f.Verdict.Text()
	switch {
	case f.Verdict == Right:
	case e.fit[0].at.known && e.x < e.fit[0].at.value:
		f.Do = limit.LowMeans
	default:
		f.Do = limit.HighMeans
	}
	return f, nil
}
