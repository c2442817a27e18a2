package transmission

import (
	"math"

	"example.com/benchbook/units/measure"
)

// The figures a cause is weighed by stand in one vector: every part that can be
// read, where the nuts stand, then what the whole clutch does.
const (
	atLift = int(parts) + 1 + iota
	atHand // logarithm of the hand force
	atSlips
	atDrags
	atHeavy
	atSoft
	atKick
	dataLength
)

// outputs are what the whole clutch does, as figures that causes predict: lift
// in mm; logarithm of hand force in newtons; then how far each sign is from
// turning, in the unit of its spread.
const (
	outLift = iota
	outHand
	outSlips
	outDrags
	outHeavy
	outSoft
	outKick
	outs
)

// How surely a rider tells: the spread of the point where a sign is told, and
// the chance that a sign is told wrongly however plain. Common practice, no
// source.
const (
	slipSpread  = 0.10 // of the engine's torque
	dragSpread  = 0.25 // mm of lift
	heavyAt     = 1.25 // times the hand force of a good clutch
	heavySpread = 0.12
	softAt      = 2.0 // mm of cable with nothing moving, beyond the usual
	softSpread  = 1.0
	misheard    = 0.02
)

// model weighs causes for one clutch.
type model struct {
	s         *state
	base      [all]figure // with nothing wrong but ordinary use
	own       [dataLength]float64
	causes    []cause
	usualHand float64 // logarithm of the hand force of a good clutch

	kick figure // what a kick test put the clutch to, N mm

	wholeTaken    bool    // any sign or figure of the whole clutch
	best, elseLog float64 // most that lift and hand force can add to a log likelihood; that of "something else" with its prior
}

// weigh notes what was taken, and how likely it is if nothing listed is wrong.
func (m *model) weigh(d measure.Data) {
	for _, x := range d[atLift:] {
		m.wholeTaken = m.wholeTaken || x.Taken
	}
	for _, at := range [...]int{atLift, atHand} {
		if d[at].Taken {
			m.best -= math.Log(m.own[at] * math.Sqrt(2*math.Pi))
		}
	}
	m.elseLog = elsewhere{m}.LogLikelihood(d) + math.Log(elsePrior)
}
