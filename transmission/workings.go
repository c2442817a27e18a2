package transmission

// workings is the clutch at one state.
type workings struct {
	rate, x, clamp, give, held, torque, lift, load, hand float64

	moves motion
	per   float64 // torque for a newton of clamp

	// rise is the lift as if the plate could sink too: where it does not stir, by how
	// much it fails to. would is what then sets it.
	rise  float64
	would motion
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
func (w *workings) at(s *state, v *vector) { w.holding(s, v, s.carried(v)) }

// holding does so where a newton of clamp carries so much torque.
func (w *workings) holding(s *state, v *vector, per float64) {
	w.rate = s.count * v[springRate]
	w.x = s.off(v) + v[nuts]*s.pitch
	w.clamp = w.rate * max(w.x, 0)
	mech := v[trainRatio] * s.efficiency * v[cableEfficiency]
	w.give = 1/(v[cableStiffness]*mech) + s.stretch
	w.held = min(v[preload]/w.give, w.clamp) // what the rod carries with the hand off
	w.per = per
	w.torque = per * (w.clamp - w.held)
	spare := s.spare(v, 0)
	if w.x < 0 && spare <= -w.x*v[trainRatio] {
		w.lift, w.moves = spare/v[trainRatio], loose
	} else {
		w.lift, w.moves = (spare-w.give*w.rate*w.x)/(v[trainRatio]+w.give*w.rate), pulled
	}
	if bind := s.flush + v[wear] - v[nuts]*s.pitch - s.shortest; bind < w.lift {
		w.lift, w.moves = bind, coilbound
	}
	w.rise, w.would = w.lift, w.moves
	w.load = w.rate * max(w.x+w.lift, 0)
	if w.lift <= 0 {
		w.lift = 0
		w.load = min(max(spare, 0)/w.give, w.clamp)
		w.moves = still
	}
	w.hand = max(w.load/(v[leverRatio]*mech), 1) // a newton is nothing at the hand
}

// idle is the cable pull with nothing moving, beyond the usual.
func (s *state) idle(v *vector) float64 {
	return v[trainRatio] * (v[hubNutBack]*s.hubPitch + v[slack] + v[rodPlay] - s.fresh[rodPlay])
}

// effect is what the whole clutch does, or how fast that changes: lift in mm, the
// logarithm of the hand force, torque in N mm, idle pull in mm.
type effect [4]float64

const (
	onLift = iota
	onHand
	onTorque
	onIdle
)

// slope is how fast lift, hand and torque change; idle pull does so by itself.
type slope [onIdle]float64

// slopes are those per unit of what the parts enter by.
type slopes struct {
	x    slope // compression of the springs
	seat slope // their length where they sit, at coil bind
	rate slope // of all springs
	give slope // of cable and train
	pull slope // spare cable pull
}

// slopes works out how fast the effects change, by the chain rule on the branch the
// clutch is on, the lift as its rise. All g are zero before.
func (w *workings) slopes(s *state, v *vector, g *slopes) {
	switch w.would {
	case pulled:
		per := 1 / (v[trainRatio] + w.give*w.rate)
		g.pull[onLift] = per
		g.x[onLift] = -w.give * w.rate * per
		g.rate[onLift] = -w.give * (w.x + w.rise) * per
		g.give[onLift] = -w.rate * (w.x + w.rise) * per
	case loose:
		g.pull[onLift] = 1 / v[trainRatio]
	case coilbound:
		g.seat[onLift] = 1
	}
	if w.hand > 1 { // then there is a load
		per := 1 / w.load
		switch {
		case w.moves != still:
			k := w.rate * per
			g.x[onHand] = k * (1 + g.x[onLift])
			g.seat[onHand] = k * g.seat[onLift]
			g.rate[onHand] = k*g.rate[onLift] + (w.x+w.lift)*per
			g.give[onHand] = k * g.give[onLift]
			g.pull[onHand] = k * g.pull[onLift]
		case w.load < w.clamp:
			g.pull[onHand] = per / w.give
			g.give[onHand] = -1 / w.give
		default:
			g.x[onHand] = w.rate * per
			g.rate[onHand] = w.x * per
		}
	}
	if w.held < w.clamp {
		k := w.per
		g.x[onTorque] = k * w.rate
		g.rate[onTorque] = k * w.x
		g.give[onTorque] = k * w.held / w.give
	}
}
