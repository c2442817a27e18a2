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
	s        *state
	base     [all]figure // with nothing wrong but ordinary use
	own      [dataLength]float64
	causes   [causeCount]cause
	bell     *bell
	logPrior [causeCount]float64
	figures  bool   // lift or hand force was read
	fineness int    // in how many pieces an open amount is looked at
	usual    vector // a serviceable clutch at the middle of its spread
	usually  effect // what that does
	kick     figure // what a kick test put the clutch to, N mm
	sights   sights
	stuck    sights       // the same with a plate that does not stir in place of its lift
	still    float64      // density of the lift read, if so; 0 if too much was read for that
	weighed  bool         // the hand force is seen or told
	elseLog  float64      // log likelihood of "something else", with its prior
	most     float64      // that what was seen of the whole clutch can add to a log likelihood
	told     [all]float64 // log density of the reading of each part with nothing wrong
	toldSum  float64
	hold     hold
	known    spread // the parts with nothing wrong, as their readings leave them
}

// weigh notes what was taken, and how likely it is if nothing listed is wrong.
func (m *model) weigh(d measure.Data) {
	for p := range all {
		b := m.base[p]
		if p <= nuts && d[p].Taken {
			m.told[p], b = m.tell(d, p, b)
			m.toldSum += m.told[p]
		}
		m.known.mean[p], m.known.sd[p] = b.x, b.u
	}
	see := func(at int, t sight) {
		if !d[at].Taken {
			return
		}
		if t.variance == 0 { // a sign
			t.variance = 1
			t.side, t.doubt = -1, misheard
			if d[at].Value > 0.5 {
				t.side = 1
			}
			if d[at].Value == crept { // at its turning point, within its spread
				t.side = 0
			}
		} else {
			m.figures = true
			m.most -= 0.5 * math.Log(2*math.Pi*t.variance)
		}
		m.weighed = m.weighed || t.on == onHand
		m.sights.list[m.sights.taken] = t
		m.sights.taken++
	}
	see(atLift, sight{on: onLift, factor: 1, offset: -d[atLift].Value, variance: m.own[atLift] * m.own[atLift]})
	see(atHand, sight{on: onHand, factor: 1, offset: -d[atHand].Value, variance: m.own[atHand] * m.own[atHand]})
	see(atSlips, sight{on: onTorque, factor: -1 / (m.s.engine * slipSpread), offset: 1 / slipSpread})
	see(atDrags, sight{on: onLift, factor: -1 / dragSpread, gap: true})
	see(atHeavy, sight{on: onHand, factor: 1 / heavySpread, offset: -(m.usually[onHand] + math.Log(heavyAt)) / heavySpread})
	see(atSoft, sight{on: onIdle, factor: 1 / softSpread, offset: -softAt / softSpread})
	// under a kick test the torque's spread is a part of it, as under the engine,
	// with what the test's own torque is uncertain by
	spread := math.Hypot(slipSpread*m.kick.x, m.kick.u)
	see(atKick, sight{on: onTorque, factor: -1 / spread, offset: m.kick.x / spread})
	m.sights.ahead()
	if lift, u := d[atLift].Value, m.own[atLift]; d[atLift].Taken && lift < 4*u {
		m.still = density(lift/u) / u
		m.stuck = m.sights
		still := &m.stuck.list[0] // the lift comes first
		still.factor, still.offset, still.variance, still.side = -1/u, 0, 1, 1
	}
	m.fineness = 1
	if m.figures {
		m.fineness = 4
		if m.known.sd[nuts] > wideTurns { // looked at place by place, which does for much of it
			m.fineness = 2
		}
	}
	m.elseLog = elsewhere{m}.LogLikelihood(d) + math.Log(elsePrior)
}

// tell is what the reading of a part says of one that is about b: the log density
// and the part after it.
func (m *model) tell(d measure.Data, p part, b figure) (float64, figure) {
	read := figure{d[p].Value, m.own[p]}
	return logNormal(read.x, b.x, math.Sqrt(b.u*b.u+read.u*read.u)), update(b, read)
}
