package job

import (
	"example.com/benchbook/timing"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// firstLook is what is seen and tried before any tool comes out: the things
// that stop an engine, or a rider, whatever its settings.
type firstLook struct {
	oilFeed, oilReturn string // "seen", "not seen"
	turns              string // "freely", "stiff", "stops", "seized"
	spark              string // "on compression", "on overlap", "none"
	brakes             string // "good", "poor"
	leakHeardAt        string
	leak               timing.LeakTest
	dry, wet           measure.Reading[units.Pressure]   // cranking pressure above atmosphere
	fuelFlow           measure.Reading[units.VolumeFlow] // at the carburettor end of the pipe
}

func readFirstLook(s section) firstLook {
	f := firstLook{
		oilFeed:     s.choice("oil_feed", "seen", "not seen"),
		oilReturn:   s.choice("oil_return", "seen", "not seen"),
		turns:       s.choice("turns", "freely", "stiff", "stops", "seized"),
		spark:       s.choice("spark", "on compression", "on overlap", "none"),
		brakes:      s.choice("brakes", "good", "poor"),
		leakHeardAt: s.choice("leak_heard_at", "inlet", "exhaust", "crankcase", "head joint", "nowhere"),
		dry:         reading(s, "compression_dry", measure.CompressionGauge()),
		wet:         reading(s, "compression_wet", measure.CompressionGauge()),
		fuelFlow:    reading(s, "fuel_flow", measure.Nominal[units.VolumeFlow](0.1)),
	}
	f.leak = readLeak(s, f.leakHeardAt)
	s.close()
	return f
}

// readLeak reads a leak-down test. Whoever says where he heard it listened at the
// other places too.
func readLeak(s section, heard string) timing.LeakTest {
	var t timing.LeakTest
	if sub, ok := s.object("leak_down"); ok {
		t.Supply = reading(sub, "supply", measure.CompressionGauge())
		t.Held = reading(sub, "held", measure.CompressionGauge())
		t.HeldWet = reading(sub, "held_wet", measure.CompressionGauge())
		t.Lost = reading(sub, "lost", measure.LeakGauge())
		t.LostWet = reading(sub, "lost_wet", measure.LeakGauge())
		if at := sub.text("at"); at != "" {
			p, err := units.ParsePosition(at)
			sub.faults.Under(under(sub.path, "at"), err)
			t.At = p
		}
		sub.close()
		_, _, err := t.PartLost()
		sub.faults.Under(sub.path, err)
	}
	if heard != "" {
		for place, seen := range map[string]*timing.Seen{"inlet": &t.AtInlet, "exhaust": &t.AtExhaust, "crankcase": &t.AtBreather, "head joint": &t.AtJoint} {
			if *seen = timing.No; place == heard {
				*seen = timing.Yes
			}
		}
	}
	return t
}

// What a leak-down test calls good, and what poor: common practice, no source.
const (
	leakGood = 0.10
	leakPoor = 0.25
)

// leakDown says how a leak-down test stands; empty if there was none.
func (f firstLook) leakDown() (State, string) {
	if !f.leak.Taken() {
		return Open, ""
	}
	lost, wet, err := f.leak.PartLost()
	if err != nil {
		return Open, ""
	}
	state, said := Unsure, "leak-down"
	if lost.Taken() {
		said += " " + percent(lost.Value().Value()) + " lost"
		switch {
		case lost.Value() > units.Value(leakPoor):
			state = Wrong
		case lost.Value() <= units.Value(leakGood):
			state = Good
		}
	}
	if wet.Taken() {
		said += ", " + percent(wet.Value().Value()) + " with oil in the bore"
	}
	switch f.leakHeardAt {
	case "inlet":
		said += ", heard at the inlet: its valve, or what holds it open"
	case "exhaust":
		said += ", heard in the exhaust: its valve, or what holds it open"
	case "crankcase":
		said += ", heard in the crankcase: rings or bore"
	case "head joint":
		said += ", heard at the head joint"
	case "nowhere":
		said += ", heard nowhere"
	default:
		said += "; listen where it goes: inlet, exhaust, crankcase, head joint"
	}
	if !lost.Taken() && f.leakHeardAt == "nowhere" {
		state = Good
	}
	return state, said
}
