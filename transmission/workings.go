package transmission

import "math"

// workings is the clutch at one state, with what its outputs' slopes need.
type workings struct {
	m *model
	v *vector

	rate, x, clamp, give, held, torque, lift, load, hand float64
	moves                                                motion
	out                                                  [outs]float64
}

// motion says what ends the lift.
type motion uint8

const (
	still     motion = iota // the pull is gone before the plate stirs
	pulled                  // the lever is at the bar
	loose                   // the same, with the springs never touched
	coilbound               // the springs are solid
)

// at works out what the clutch does.
func (w *workings) at(m *model, v *vector) {
	s := m.s
	w.m, w.v = m, v
	w.rate = s.count * v[springRate]
	w.x = s.off(v) + v[nuts]*s.pitch
	w.clamp = w.rate * max(w.x, 0)
	w.give = s.give(v)
	w.held = min(v[preload]/w.give, w.clamp) // what the rod carries with the hand off
	w.torque = v[friction] * v[faces] * s.radius * (w.clamp - w.held)
	spare := s.spare(v, 0)
	free := spare / v[trainRatio]
	if w.x < 0 && free <= -w.x {
		w.lift, w.moves = free, loose
	} else {
		w.lift, w.moves = (spare-w.give*w.rate*w.x)/(v[trainRatio]+w.give*w.rate), pulled
	}
	if bind := s.flush + v[wear] - v[nuts]*s.pitch - s.shortest; bind < w.lift {
		w.lift, w.moves = bind, coilbound
	}
	w.load = w.rate * max(w.x+w.lift, 0)
	if w.lift <= 0 {
		w.lift = 0
		w.load = min(max(spare, 0)/w.give, w.clamp)
		w.moves = still
	}
	w.hand = max(w.load/(v[leverRatio]*v[trainRatio]*s.efficiency*v[cableEfficiency]), 1) // a newton is nothing at the hand
	o := &w.out
	o[outLift] = w.lift
	o[outHand] = math.Log(w.hand)
	o[outSlips] = (s.engine - w.torque) / s.engine / slipSpread
	if m.kick.x > 0 {
		o[outKick] = (m.kick.x - w.torque) / m.kickSpread()
	}
	o[outDrags] = (s.lift(v) - w.lift) / dragSpread
	o[outHeavy] = (o[outHand] - m.usualHand - logHeavy) / heavySpread
	idle := v[trainRatio] * (v[hubNutBack]*s.hubPitch + v[slack] + v[rodPlay] - s.fresh[rodPlay])
	o[outSoft] = (idle - softAt) / softSpread
}

var logHeavy = math.Log(heavyAt)

// slope returns how fast each output changes with part p. Each part enters by
// at most a few of: the compression x, the seat's length, the rate, the train's
// give, the spare pull and the ratio; the outputs follow by the chain rule.
func (w *workings) slope(p part) (g [outs]float64) {
	s, v := w.m.s, w.v
	var dx, dseat, drate, dgive, dspare, dratio, dwanted, didle float64
	var share, mech float64 // relative changes: of friction times faces; of leverage, ratio and drag
	r := v[trainRatio]
	cable := w.give - s.stretch
	switch p {
	case friction:
		share = 1 / v[friction]
	case faces:
		share, dwanted = 1/v[faces], s.gap
	case springSet:
		dx = -1
	case springRate:
		drate = s.count
	case wear:
		dx, dseat = -1, 1
	case nuts:
		dx, dseat = s.pitch, -s.pitch
	case outOfFlat:
		dwanted = 1
	case runOut:
		dwanted = 0.5
	case rodPlay, slack:
		dspare, didle = -r, r
	case hubNutBack:
		dspare, didle = -r*s.hubPitch, r*s.hubPitch
	case freePlay:
		dspare = -1
	case cablePull, preload:
		dspare = 1
	case cableStiffness:
		dgive = -cable / v[cableStiffness]
	case cableEfficiency:
		dgive, mech = -cable/v[cableEfficiency], 1/v[cableEfficiency]
	case leverRatio:
		mech = 1 / v[leverRatio]
	case trainRatio:
		lost := v[rodPlay] + v[hubNutBack]*s.hubPitch + v[slack]
		dgive, dspare, dratio, mech = -cable/r, -lost, 1, 1/r
		didle = lost - s.fresh[rodPlay]
	}
	var dclamp, dlift, dload float64
	if w.x > 0 {
		dclamp = w.rate*dx + w.x*drate
	}
	switch w.moves {
	case pulled:
		stiff := w.give * w.rate
		dstiff := w.give*drate + w.rate*dgive
		dlift = (dspare - stiff*dx - w.x*dstiff - w.lift*(dratio+dstiff)) / (r + stiff)
	case loose:
		dlift = (dspare - w.lift*dratio) / r
	case coilbound:
		dlift = dseat
	}
	switch {
	case w.moves != still && w.x+w.lift > 0:
		dload = w.rate*(dx+dlift) + (w.x+w.lift)*drate
	case w.moves == still && w.load > 0 && w.load < w.clamp:
		dload = (dspare - w.load*dgive) / w.give
	case w.moves == still && w.load > 0:
		dload = dclamp
	}
	dheld := dclamp
	if w.held < w.clamp {
		dheld = -w.held * dgive / w.give
		if p == preload {
			dheld += 1 / w.give
		}
	}
	g[outLift] = dlift
	if w.hand > 1 {
		g[outHand] = dload/w.load - mech
	}
	dtorque := w.torque*share + v[friction]*v[faces]*s.radius*(dclamp-dheld)
	g[outSlips] = -dtorque / s.engine / slipSpread
	if w.m.kick.x > 0 {
		g[outKick] = -dtorque / w.m.kickSpread()
	}
	g[outDrags] = (dwanted - dlift) / dragSpread
	g[outHeavy] = g[outHand] / heavySpread
	g[outSoft] = didle / softSpread
	return g
}

// predict returns the outputs alone.
func (m *model) predict(v *vector) [outs]float64 {
	var w workings
	w.at(m, v)
	return w.out
}

// kickSpread is the spread of the torque at which a clutch is told to slip under
// a kick test: as under the engine, in part of the torque, with what the test's
// own torque is uncertain by.
func (m *model) kickSpread() float64 {
	a := slipSpread * m.kick.x
	return math.Sqrt(a*a + m.kick.u*m.kick.u)
}
