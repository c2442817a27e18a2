package trial

import (
	"strconv"

	"example.com/benchbook/examples/job"
	"example.com/benchbook/transmission"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// Keys of the controls.
const (
	Nuts         = "nuts"          // spring nuts, whole flats of a sixth of a turn in from flush
	FreePlay     = "free-play"     // at the clutch lever, whole tenths of a millimetre
	HubNut       = "hub-nut"       // the hub's retaining nut, whole twelfths of a turn backed off
	Slips        = "slips"         // "yes", "no" or "" for not tried
	Drags        = "drags"         // "yes", "no" or "" for not tried
	InletEarly   = "inlet-early"   // both inlet events, whole degrees of the crank earlier than in the file
	ExhaustEarly = "exhaust-early" // both exhaust events, the same
	MainJet      = "main-jet"      // per cent of the flow of the one in the file
	PilotJet     = "pilot-jet"     // the same
	Cutaway      = "cutaway"       // of the slide, whole 1/32 in
	Clip         = "clip"          // groove of the needle's clip, from the top
)

// Control is a reading that can be moved.
type Control struct {
	Key   string `json:"key"`
	Panel string `json:"panel"` // the part it bears on, one of Panels
	// At is where it stands: whole steps from Least to Most, or one of the words
	// of a sign.
	At    string `json:"at"`
	Least int    `json:"least,omitempty"`
	Most  int    `json:"most,omitempty"`
	Text  string `json:"text"`  // where it stands, to read: "6 turns 2 flats"
	Taken bool   `json:"taken"` // false: the job does not have this reading; moving it takes it
	Moved bool   `json:"moved"` // no longer as in the job file
}

// scale is how the steps of a control of one figure are written in a job file.
type scale struct {
	key, section, field string
	least, most         int
	unit                string  // of the job file
	step                float64 // of that unit
	digits              int
	say                 func(steps int) string
	now                 func(*job.ClutchResult) (in, u float64, taken bool) // in that unit
	set                 func(in *transmission.Input, text string)
}

// scales returns them. The instruments are those that package job reads the same
// fields with.
func scales() []scale {
	return []scale{
		{Nuts, "clutch", "nuts_in", 0, 84, "turns", 1.0 / 6, 4, flats, func(c *job.ClutchResult) (float64, float64, bool) { return turns(c.Input.Setting.Nuts) },
			func(in *transmission.Input, text string) {
				in.Setting.Nuts, _ = measure.Read(text, measure.Nominal[units.Angle](0.02))
			}},
		{FreePlay, "clutch", "free_play", 0, 80, "mm", 0.1, 1, tenths, func(c *job.ClutchResult) (float64, float64, bool) {
			r := c.Input.Found.FreePlay
			return r.Value().Millimetres(), r.U().Millimetres(), r.Taken()
		}, func(in *transmission.Input, text string) { in.Found.FreePlay, _ = measure.Read(text, measure.Rule()) }},
		{HubNut, "clutch", "hub_nut_back", 0, 18, "turns", 1.0 / 12, 4, twelfths, func(c *job.ClutchResult) (float64, float64, bool) { return turns(c.Input.Found.HubNutBack) },
			func(in *transmission.Input, text string) {
				in.Found.HubNutBack, _ = measure.Read(text, measure.Nominal[units.Angle](0.1))
			}},
	}
}

func turns(r measure.Reading[units.Angle]) (in, u float64, taken bool) {
	return r.Value().Turns(), r.U().Turns(), r.Taken()
}

func flats(n int) string {
	text := count(n/6, "turn")
	if n%6 != 0 {
		text += " " + count(n%6, "flat")
	}
	return text
}

func tenths(n int) string { return strconv.FormatFloat(float64(n)/10, 'f', 1, 64) + " mm" }

func twelfths(n int) string {
	if n == 0 {
		return "tight"
	}
	return strconv.FormatFloat(float64(n)/12, 'f', 2, 64) + " turn back"
}

func degrees(n int) string {
	switch {
	case n == 0:
		return "as read"
	case n < 0:
		return strconv.Itoa(-n) + "° later than read"
	}
	return strconv.Itoa(n) + "° earlier than read"
}

func count(n int, of string) string {
	if n == 1 {
		return "1 " + of
	}
	return strconv.Itoa(n) + " " + of + "s"
}
