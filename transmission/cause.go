package transmission

import (
	"math"

	"example.com/benchbook/units"
)

// cause is one thing that may be wrong: what it moves by a fixed amount, and at
// most one figure that it moves by an amount it leaves open, evenly likely
// between two bounds.
type cause struct {
	key, text string
	do        string  // what to do about it
	prior     float64 // weight, common practice, no source
	minutes   float64 // to put right
	fixed     [2]shift
	open      part
	low, high float64 // of the open amount, signed; both 0 if nothing is open
}

type shift struct {
	part part
	by   float64
}

// KnownCause is one thing [Diagnose] weighs.
type KnownCause struct {
	Key   string     `json:"key"`
	Text  string     `json:"text"`
	Do    string     `json:"do"`
	Prior float64    `json:"prior"` // weight before the readings, common practice, no source
	Work  units.Time `json:"work"`  // hands-on, common practice, no source
}

// KnownCauses returns what [Diagnose] weighs, with the default priors. What is not
// listed has a weight of 6 beside them.
func KnownCauses() []KnownCause {
	var s state // words and weights do not depend on the clutch
	list := s.causes(0, 0, 0)
	known := make([]KnownCause, len(list))
	for i, c := range list {
		known[i] = KnownCause{Key: c.key, Text: c.text, Do: c.do, Prior: c.prior, Work: units.MinutesOfTime(c.minutes)}
	}
	return known
}

// causeCount is how many causes are listed, and sound the place of the one that
// says nothing is wrong.
const (
	causeCount = 24
	sound      = 0
)

// Fractions and lengths below say how far each fault goes before anyone would
// look for it, and how far it is ever found: common practice, no source.

// causes lists what may be wrong with a clutch that was once right. at is where
// its nuts should stand, low and high the ends of the window it had.
func (s *state) causes(at, low, high float64) [causeCount]cause {
	f := &s.fresh
	ball := 6.35 // mm, a quarter-inch ball
	return [causeCount]cause{
		{key: "nothing", text: "nothing wrong in the clutch", do: "leave it alone", prior: 20},
		{key: "nuts-out", text: "the spring nuts are too far out", do: "turn all the nuts in alike, into the window", prior: 8, minutes: 15,
			open: nuts, low: low - at - 4, high: low - at - 0.25},
		{key: "nuts-in", text: "the spring nuts are too far in", do: "turn all the nuts out alike, into the window", prior: 8, minutes: 15,
			open: nuts, low: high - at + 0.25, high: high - at + 4},
		{key: "free-play-large", text: "too much free play at the lever", do: "take up the cable adjuster", prior: 10, minutes: 5,
			open: freePlay, low: 3, high: 12},
		{key: "free-play-none", text: "no free play: the rod carries part of the spring load", do: "slacken the cable adjuster until there is free play", prior: 8, minutes: 5,
			fixed: [2]shift{{freePlay, -f[freePlay]}}, open: preload, low: 0.3, high: 3},
		{key: "hub-nut", text: "the hub's retaining nut has backed off", do: "tighten the nut on a new lock washer, and look at key, taper and splines", prior: 4, minutes: 60,
			open: hubNutBack, low: 0.15, high: 1.5},
		{key: "springs-weak", text: "the springs have gone short", do: "renew the springs as a set", prior: 8, minutes: 45,
			open: springSet, low: 0.02 * s.free, high: 0.08 * s.free},
		{key: "plates-oiled", text: "the linings are oiled or glazed", do: "degrease and dress the plates, and find where the oil comes from", prior: 12, minutes: 90,
			open: friction, low: -0.65 * f[friction], high: -0.2 * f[friction]},
		{key: "plates-bent", text: "the plates are not flat", do: "flatten or renew the plain plates", prior: 8, minutes: 100,
			open: outOfFlat, low: 0.3, high: 1.5},
		{key: "plates-worn", text: "the plates are worn thin", do: "renew the friction plates", prior: 8, minutes: 110,
			open: wear, low: 0.8, high: 3.5},
		{key: "cable-soft", text: "the cable stretches too much", do: "renew the cable, and see that its ferrules seat", prior: 6, minutes: 30,
			open: cableStiffness, low: -0.8 * f[cableStiffness], high: -0.35 * f[cableStiffness]},
		{key: "cable-drag", text: "the cable is dry or kinked", do: "oil or renew the cable and ease its bends", prior: 6, minutes: 25,
			open: cableEfficiency, low: -0.45 * f[cableEfficiency], high: -0.2 * f[cableEfficiency]},
		{key: "lever-short", text: "a worn lever, or one that pulls too little cable", do: "renew pivot and nipple, or fit the lever that belongs", prior: 4, minutes: 20,
			open: cablePull, low: -0.35 * f[cablePull], high: -0.12 * f[cablePull]},
		{key: "rod-worn", text: "the push rod or its ball is worn short", do: "renew rod and ball with hardened ends", prior: 6, minutes: 40,
			open: rodPlay, low: 0.4, high: 2},
		{key: "lift-uneven", text: "the plate lifts unevenly", do: "trim the nuts one against another until it runs true", prior: 6, minutes: 25,
			open: runOut, low: 0.4, high: 2},
		{key: "slots-notched", text: "the slots are notched, so the plates' tongues catch in them", do: "dress the slots smooth, or renew drum and hub", prior: 3, minutes: 150,
			fixed: [2]shift{{outOfFlat, 0.4}}, open: tongueGrip, low: 0.12, high: 0.45},
		{key: "plate-left-out", text: "a friction plate was left out", do: "fit the full set of plates", prior: 1.5, minutes: 100,
			fixed: [2]shift{{faces, -math.Min(2, f[faces])}, {wear, s.plate}}},
		{key: "plates-together", text: "two plates of a kind lie together", do: "put the plates in turn, one of each kind", prior: 1.5, minutes: 100,
			fixed: [2]shift{{faces, -math.Min(2, f[faces]-1)}}},
		{key: "rod-short", text: "the push rod is the wrong one, too short", do: "fit the rod that belongs", prior: 1, minutes: 40,
			open: rodPlay, low: 2, high: 6},
		{key: "ball-lost", text: "the ball between the rods is missing", do: "fit the ball", prior: 1, minutes: 30,
			fixed: [2]shift{{rodPlay, ball}}},
		{key: "rod-long", text: "the push rod is the wrong one, too long", do: "fit the rod that belongs", prior: 1, minutes: 40,
			fixed: [2]shift{{freePlay, -f[freePlay]}, {rodPlay, -f[rodPlay]}}, open: preload, low: 3, high: 12},
		{key: "washer-omitted", text: "a washer behind the hub was left out, so the hub slides before the springs lift", do: "fit the washer", prior: 1.5, minutes: 90,
			open: slack, low: 0.8, high: 2.5},
		{key: "arm-out", text: "the release arm stands out of its place on its spline or thread", do: "set the arm square to the cable at mid travel", prior: 2.5, minutes: 30,
			open: trainRatio, low: -0.35 * f[trainRatio], high: -0.1 * f[trainRatio]},
		{key: "springs-mixed", text: "springs or cups of different sets are mixed", do: "fit one set of springs and cups", prior: 2, minutes: 45,
			fixed: [2]shift{{springSet, 0.02 * s.free}}, open: runOut, low: 0.3, high: 1.5},
	}
}
