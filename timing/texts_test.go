package timing_test

import (
	"encoding"
	"fmt"
	"testing"

	"example.com/benchbook/timing"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Names as they stand in results and job files.
func TestNames(t *testing.T) {
	for want, all := range map[string][]any{
		"inlet": {timing.Inlet}, "exhaust": {timing.Exhaust},
		"inlet opens": {timing.InletOpens}, "inlet closes": {timing.InletCloses}, "exhaust opens": {timing.ExhaustOpens}, "exhaust closes": {timing.ExhaustCloses},
		"at the valve": {timing.AtValve}, "at the follower": {timing.AtFollower},
		"not known": {timing.FixingUnknown, timing.Fixing(9)}, "pressed": {timing.Pressed}, "one piece": {timing.OnePiece},
		"not looked": {timing.NotLooked}, "yes": {timing.Yes}, "no": {timing.No},
		"by eye": {timing.TDCByEye}, "by stop": {timing.TDCByStop}, "by dial": {timing.TDCByDial}, "by mark": {timing.TDCByMark},
	} {
		for _, v := range all {
			text, err := v.(encoding.TextMarshaler).MarshalText()
			if got := v.(fmt.Stringer).String(); got != want || string(text) != want || err != nil {
				t.Errorf("%T %v: %q, %q, want %q", v, v, got, text, want)
			}
		}
	}
}

// What ParseEvent reads, and how it is written.
func TestEventsAsText(t *testing.T) {
	thou := units.Inches(0.001)
	at := func(d units.Datum, x units.CrankAngle) units.CrankPosition { return units.After(d, x) }
	for text, want := range map[string]struct {
		event   timing.Event
		written string
	}{
		"inlet opens 25 BTDC":                              {timing.Event{At: at(units.TDC, -25)}, "inlet opens 25° BTDC"},
		"  IVO   TDC ":                                     {timing.Event{}, "inlet opens TDC"},
		"ivc 65 ABDC":                                      {timing.Event{Name: timing.InletCloses, At: at(units.BDC, 65)}, "inlet closes 65° ABDC"},
		"EVO 65 BBDC, clearance 8 thou":                    {timing.Event{Name: timing.ExhaustOpens, At: at(units.BDC, -65), Check: timing.Check{Clearance: thou.Times(8)}}, "exhaust opens 65° BBDC, clearance 0.2032 mm"},
		"exhaust closes 25 ATDC at 1 mm":                   {timing.Event{Name: timing.ExhaustCloses, At: at(units.TDC, 25), Check: timing.Check{Lift: 1 * units.Millimetre}}, "exhaust closes 25° ATDC at 1 mm lift"},
		"Exhaust Closes 25 ATDC AT 1 mm LIFT":              {timing.Event{Name: timing.ExhaustCloses, At: at(units.TDC, 25), Check: timing.Check{Lift: 1 * units.Millimetre}}, "exhaust closes 25° ATDC at 1 mm lift"},
		"EVC 5 ATDC at 1 mm at the valve, clearance 0.3mm": {timing.Event{Name: timing.ExhaustCloses, At: at(units.TDC, 5), Check: timing.Check{Lift: 1 * units.Millimetre, Clearance: 0.3 * units.Millimetre}}, "exhaust closes 5° ATDC at 1 mm lift, clearance 0.3 mm"},
		"IVO 5 BTDC clearance 0.3 mm at 1 mm":              {timing.Event{At: at(units.TDC, -5), Check: timing.Check{Lift: 1 * units.Millimetre, Clearance: 0.3 * units.Millimetre}}, "inlet opens 5° BTDC at 1 mm lift, clearance 0.3 mm"},
		"IVO 5 BTDC clearance 0.3 mm, at 1 mm":             {timing.Event{At: at(units.TDC, -5), Check: timing.Check{Lift: 1 * units.Millimetre, Clearance: 0.3 * units.Millimetre}}, "inlet opens 5° BTDC at 1 mm lift, clearance 0.3 mm"},
		"IVO 5 BTDC at the follower":                       {timing.Event{At: at(units.TDC, -5), Check: timing.Check{At: timing.AtFollower}}, "inlet opens 5° BTDC at 0 mm lift at the follower"},
		"IVO 5 BTDC at the follower at 1 mm":               {timing.Event{At: at(units.TDC, -5), Check: timing.Check{Lift: 1 * units.Millimetre, At: timing.AtFollower}}, "inlet opens 5° BTDC at 1 mm lift at the follower"},
		"IVO 5 BTDC at 1 mm lift at the follower, clearance 0.3 mm": {timing.Event{At: at(units.TDC, -5), Check: timing.Check{Lift: 1 * units.Millimetre, At: timing.AtFollower, Clearance: 0.3 * units.Millimetre}},
			"inlet opens 5° BTDC at 1 mm lift at the follower, clearance 0.3 mm"},
		"IVO 5 BTDC at 20 mm clearance 5 mm": {timing.Event{At: at(units.TDC, -5), Check: timing.Check{Lift: 20 * units.Millimetre, Clearance: 5 * units.Millimetre}}, "inlet opens 5° BTDC at 20 mm lift, clearance 5 mm"},
	} {
		got, err := timing.ParseEvent(text)
		if err != nil || got.Name != want.event.Name || got.At != want.event.At || got.Check != want.event.Check {
			t.Errorf("%q: %+v, %v", text, got, err)
		}
		if s := got.String(); s != want.written {
			t.Errorf("%q is written %q, want %q", text, s, want.written)
		}
		var back timing.Event
		if err := back.UnmarshalText([]byte(want.written)); err != nil || back != got {
			t.Errorf("%q reads back as %+v, %v", want.written, back, err)
		}
	}
	const form = "expected such as inlet opens 25 BTDC, or IVO 25 BTDC at 1 mm lift at the follower, clearance 0.3 mm"
	for text, want := range map[string]fault.Fault{
		"":                                     {Code: fault.UnknownName, Rule: form},
		"IVO":                                  {Code: fault.UnknownName, Rule: form},
		"IVO25 BTDC":                           {Code: fault.UnknownName, Rule: form},
		"spark 25 BTDC":                        {Code: fault.UnknownName, Rule: form},
		"IVO 25 BTDC at 1 mm at 2 mm":          {Code: fault.BadForm, Rule: form},
		"IVO 25 BTDC clearance 1 mm nonsense":  {},
		"IVO 25 BTDC clearance 1 mm, nonsense": {Code: fault.BadForm, Rule: form},
		"IVO 25 BTDC clearance 1 mm clearance 2 mm":   {Code: fault.BadForm, Rule: form},
		"IVO 25 BTDC at the follower at the follower": {Code: fault.Conflict, Rule: "where the lift is measured is said twice"},
		"IVO 25 BTDC at 20.001 mm":                    {Code: fault.OutOfRange, Rule: "lift: 0 to 20 mm"},
		"IVO 25 BTDC clearance 5.001 mm":              {Code: fault.OutOfRange, Rule: "clearance: 0 to 5 mm"},
		"IVO 25 BTDC at lift":                         {},
		"IVO 25 BTDC at 1 mm lifted":                  {},
		"IVO 25":                                      {},
		"IVO 25 BTDC clearance 1 mm lift":             {},
	} {
		got, err := timing.ParseEvent(text)
		f := fault.Faults(err)
		if got != (timing.Event{}) || len(f) != 1 || want.Code != "" && (f[0].Code != want.Code || f[0].Rule != want.Rule) {
			t.Errorf("%q: %+v, %v", text, got, err)
		}
		var e timing.Event
		if e.UnmarshalText([]byte(text)) == nil || e != (timing.Event{}) {
			t.Errorf("%q read as %+v", text, e)
		}
	}
}

// A check alone, as it stands in an event.
func TestChecksAsText(t *testing.T) {
	for want, c := range map[string]timing.Check{
		"":                             {},
		"at 1 mm lift":                 {Lift: 1 * units.Millimetre},
		"clearance 0.3 mm":             {Clearance: 0.3 * units.Millimetre},
		"at 0 mm lift at the follower": {At: timing.AtFollower},
		"at 1 mm lift at the follower, clearance 0.3 mm": {Lift: 1 * units.Millimetre, At: timing.AtFollower, Clearance: 0.3 * units.Millimetre},
	} {
		if got := c.String(); got != want {
			t.Errorf("%+v is %q, want %q", c, got, want)
		}
	}
}
