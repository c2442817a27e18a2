package carburation

import (
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Zone is a part of the slide's lift, judged at a mark on the grip, not by road
// speed.
type Zone uint8

// The zones.
const (
	TickOver Zone = iota // shut, and just off it
	PickUp               // an eighth to a quarter
	Middle               // a quarter to three quarters
	FullBore             // three quarters to full
	nZones
)

var zoneNames = [nZones]string{"tick_over", "pick_up", "middle", "full"}

// String returns the zone in words.
func (z Zone) String() string {
	if z < nZones {
		return [nZones]string{"tick-over", "an eighth to a quarter", "a quarter to three quarters", "three quarters to full"}[z]
	}
	return "no zone"
}

// lift at which a zone is judged, over the bore.
func (z Zone) lift() float64 { return [nZones]float64{0.03, 0.1875, 0.5, 1}[z] }

// wanted is the lambda of the trade for a zone (common practice: full throttle
// 0.85 to 0.90, a quarter to three quarters 0.95 to 1.05, tick-over 0.80 to
// 0.90; pick-up judged between).
func (z Zone) wanted() float64 { return [nZones]float64{0.85, 0.92, 1.0, 0.875}[z] }

// Sign is what an ear or an eye says of a mixture.
type Sign string

// The signs.
const (
	NotLooked Sign = ""
	Weak      Sign = "weak"  // spits back, flat, hot, surges; a white plug; better with the air shut a little
	Right     Sign = "right" // clean
	Rich      Sign = "rich"  // lumpy, eight-stroking, sooty; better with more air
)

// Seen is what was noticed in one zone.
type Seen struct {
	Runs   Sign                         `json:"runs,omitempty"`   // how it runs there
	Plug   Sign                         `json:"plug,omitempty"`   // a new plug after a cut there: a weak witness with today's petrol
	Lambda measure.Reading[units.Ratio] `json:"lambda"`           // 0.5 to 2
	Wanted units.Ratio                  `json:"wanted,omitempty"` // lambda; 0 takes the trade's
}

// Symptoms is what a ride and a look have told.
type Symptoms struct {
	TickOver Seen `json:"tick_over"`
	PickUp   Seen `json:"pick_up"`
	Middle   Seen `json:"middle"`
	Full     Seen `json:"full"`
	// Fades says whether it runs well at full throttle at first and then fades:
	// Yes or No; "" was not tried.
	Fades Answer `json:"fades,omitempty"`
	// Screw is how the pilot screw stands. Out of half a turn to 3 turns the
	// pilot jet is next.
	Screw Screw `json:"screw"`
}

// Answer is yes, no, or not asked.
type Answer string

// The answers.
const (
	NotAsked Answer = ""
	Yes      Answer = "yes"
	No       Answer = "no"
)

func (s *Symptoms) zones() [nZones]*Seen {
	return [nZones]*Seen{&s.TickOver, &s.PickUp, &s.Middle, &s.Full}
}

// The components of the data, three per zone, and whether it fades.
const (
	dLambda = iota
	dRuns
	dPlug
	perZone
	dFades = int(nZones) * perZone
	nData  = dFades + 1
)

// What signs are worth in ln lambda: a mixture that shows is 12 % off, give or
// take 8 %; a clean one is right within 5 %; a plug says less. The wish itself
// is loose by 3 %. All judged.
const (
	signSize, runsU, rightU, plugU, wishU = 0.12, 0.08, 0.05, 0.12, 0.03
)

func (s *Symptoms) data(l *fault.List) (d measure.Data, own []float64) {
	d, own = make(measure.Data, nData), make([]float64, dFades)
	for i := range own {
		own[i] = runsU
	}
	for z, seen := range s.zones() {
		for i, c := range []struct {
			path string
			sign Sign
			u    float64
		}{{"runs", seen.Runs, runsU}, {"plug", seen.Plug, plugU}} {
			at := z*perZone + dRuns + i
			own[at] = c.u
			switch c.sign {
			case NotLooked:
				continue
			case Weak:
				d[at] = measure.Datum{Value: signSize, Taken: true}
			case Rich:
				d[at] = measure.Datum{Value: -signSize, Taken: true}
			case Right:
				d[at] = measure.Datum{Value: 0, Taken: true}
				own[at] = math.Max(rightU, c.u/1.5)
			default:
				l.Add(fault.Fault{Code: fault.UnknownName, Path: zoneNames[z] + "." + c.path, Value: string(c.sign), Rule: `"weak", "right", "rich" or nothing`})
			}
		}
		want := seen.Wanted.Value()
		if want == 0 {
			want = Zone(z).wanted()
		}
		positive(l, zoneNames[z]+".wanted", units.Value(want), 0.6, 1.3)
		at := z*perZone + dLambda
		own[at] = math.Hypot(0.02, wishU)
		if seen.Lambda.Taken() {
			l.Under(zoneNames[z]+".lambda", seen.Lambda.Err())
			positive(l, zoneNames[z]+".lambda", seen.Lambda.Value(), 0.5, 2)
			if v := seen.Lambda.Value().Value(); v > 0 && want > 0 {
				d[at] = measure.Datum{Value: math.Log(v / want), Taken: true}
				own[at] = math.Hypot(seen.Lambda.U().Value()/v, wishU)
			}
		}
	}
	switch s.Fades {
	case NotAsked:
	case Yes:
		d[dFades] = measure.Datum{Value: 1, Taken: true}
	case No:
		d[dFades] = measure.Datum{Taken: true}
	default:
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "fades", Value: string(s.Fades), Rule: `"yes", "no" or nothing`})
	}
	return d, own
}

// influence returns how much a part decides at a lift, 0 to 1, by the trade's
// table: all of it between its ends, fading beyond.
func influence(t refdata.ThrottleInfluence, lift float64) float64 {
	from, to, by := t.From.Value(), t.MainTo.Value(), t.FadesBy.Value()
	switch {
	case lift < from:
		return 0
	case lift <= to:
		return 1
	case lift < by:
		return (by - lift) / (by - to)
	}
	return 0
}
