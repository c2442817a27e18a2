package transmission

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Region is the range of both adjusters together: the screw that takes up free
// play, and the spring nuts. Turns of the play adjuster are counted from where it
// stands, taking play up. Least free play gives the widest window of the nuts,
// hence the order of work: free play first, nuts second.
type Region struct {
	PerTurn  units.Length `json:"per_turn"`        // free play at the lever that one turn takes up
	Most     units.Angle  `json:"most"`            // turns at which the least free play is left
	Least    units.Angle  `json:"least"`           // turns below which no setting of the nuts holds and frees, negative where play may even be let out
	Now      Window       `json:"now"`             // of the nuts, adjuster left alone
	Widest   Window       `json:"widest"`          // of the nuts, at Most
	FreePlay units.Length `json:"free_play"`       // now
	Reason   fault.Reason `json:"reason,omitzero"` // why no setting of both holds and frees, if there is none
}

// Region returns the settings of both adjusters that hold, free and leave free
// play: free play less turns times pitch (times the train's ratio for a screw at
// the rod) at least the least, and the window of the nuts at that free play not
// empty. A reading of free play is needed to count turns from; without one the
// figure as new stands. Errors: as [Clutch.Window].
func (c Clutch) Region(found Condition) (Region, error) {
	s, err := c.resolve(&found)
	if err != nil {
		return Region{}, err
	}
	return s.region(), nil
}

func (s *state) region() Region {
	per := s.perTurn()
	most := (s.v[freePlay] - s.leastPlay) / per
	r := Region{PerTurn: units.Millimetres(per), Most: units.Turns(most), Now: s.window(&s.v), FreePlay: units.Millimetres(s.v[freePlay])}
	v := s.v
	v[freePlay] = s.leastPlay
	r.Widest = s.window(&v)
	r.Least = r.Most
	if !r.Widest.Open() {
		r.Reason = r.Widest.Reason
		return r
	}
	// the window narrows as play grows, and is gone at the latest when play uses
	// up the whole pull
	low, high := s.leastPlay, s.v[cablePull]
	for range 60 {
		v[freePlay] = (low + high) / 2
		if b := s.bounds(&v); b.width() >= 0 {
			low = v[freePlay]
		} else {
			high = v[freePlay]
		}
	}
	r.Least = units.Turns((s.v[freePlay] - low) / per)
	return r
}

// perTurn is the free play at the lever that one turn of its adjuster takes up.
func (s *state) perTurn() float64 {
	if !s.playAtRod {
		return s.playPitch
	}
	if s.train == nil {
		return s.playPitch * s.v[trainRatio]
	}
	v := s.v
	now, _ := s.walk(&v, 0, 0)
	v[rodPlay] += s.playPitch
	then, _ := s.walk(&v, 0, 0)
	return math.Abs(then - now)
}
