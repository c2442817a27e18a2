package transmission

import (
	"strings"
	"sync"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
)

// sources returns what the ledgers rest on.
func sources() []refdata.Source {
	return []refdata.Source{
		{Title: "R. S. Khurmi and J. K. Gupta, Theory of Machines, 14th ed. 2009", Clause: "chapter 10, examples 10.22 to 10.30", Read: "published worked solutions of its examples", Status: refdata.Published},
		{Title: "V. B. Bhandari, Design of Machine Elements", Clause: "chapter 11", Read: "published worked solutions of its examples", Status: refdata.Published},
		{Title: "travel and force ledger from hand lever to pressure plate, statics", Status: refdata.Derived},
		refdata.Practice(),
	}
}

// usually says what each part is with nothing wrong, if the caller does not say;
// put into words once.
var usually = sync.OnceValue(func() (text [parts]string) {
	for p := range text {
		r := &rules[p]
		text[p] = strings.TrimSpace(units.WithUncertainty(units.Value(r.fresh.x), units.Value(r.fresh.u)) + " " + r.unit)
	}
	return text
})

// basis lists what the verdict rests on, assumed and did not look at.
func (in *Input) basis(s *state) refdata.Basis {
	b := refdata.Basis{
		Sources:  sources(),
		Cautions: []refdata.Caution{refdata.SpringsUnderLoad, refdata.AsbestosLinings, refdata.RetainingNuts, refdata.BrakesBeforeRoad, refdata.DeferToManual},
	}
	b.Assumed, b.NotChecked = make([]refdata.Assumption, 0, parts), make([]refdata.Unchecked, 0, parts+2)
	assume := func(what, value string) {
		b.Assumed = append(b.Assumed, refdata.Assumption{What: what, Value: value, Status: refdata.CommonPractice})
	}
	c := &in.Clutch
	d := &c.Demand
	if d.Margin == 0 {
		assume("torque margin", number(defaultMargin))
	}
	if d.HandForce == 0 {
		assume("most hand force", units.Newtons(defaultHand).String())
	}
	if d.FreePlay == 0 {
		assume("least free play", units.Millimetres(defaultPlay).String())
	}
	if d.FaceGap == 0 {
		assume("clearance of each rubbing face", units.Millimetres(defaultGap).String())
	}
	if d.Width == 0 {
		assume("least width of a workable window", number(defaultWidth)+" turn")
	}
	if c.HubNut.Pitch == 0 {
		assume("pitch of the hub's retaining nut", units.Millimetres(defaultHubPitch).String())
	}
	if c.Plates.Thickness == 0 {
		assume("thickness of a friction plate", units.Millimetres(defaultPlate).String())
	}
	if c.Play.Pitch == 0 {
		assume("pitch of the play adjuster", units.Millimetres(defaultPlayPitch).String())
	}
	for p := range parts {
		r := &rules[p]
		if s.took[p] {
			continue
		}
		_, given, _ := c.New.at(p)
		known := given || p == springRate || p == cablePull && c.Lever.swept() || p == leverRatio && c.Lever.Finger.Taken() && c.Lever.Nipple.Taken()
		if !known {
			assume(r.what, usually()[p])
		}
		if p == leverRatio && known {
			continue
		}
		b.NotChecked = append(b.NotChecked, refdata.Unchecked{What: r.what, Why: "not read; taken as new", Settle: r.settle})
	}
	if in.Clutch.HubNut.Hand == UnknownHand {
		b.NotChecked = append(b.NotChecked, refdata.Unchecked{What: "hand of the hub's retaining nut", Why: "not given", Settle: "look at the thread where it leaves the nut before putting a spanner on it"})
	}
	if !in.Setting.Nuts.Taken() && !in.Setting.FromTouch.Taken() {
		b.NotChecked = append(b.NotChecked, refdata.Unchecked{What: "where the spring nuts stand", Why: "not read", Settle: "count the turns out to flush, one nut, and turn it back"})
	}
	return b
}
