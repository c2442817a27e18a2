package transmission

// spread is a state whose parts are normal and independent.
type spread struct{ mean, sd vector }

// covariance of the effects of one state, lower triangle.
type covariance [len(effect{})][len(effect{})]float64

// add widens the spread by an amount of the given variance that moves the effects
// along g.
func (c *covariance) add(g *slope, variance float64) {
	l, h, t := variance*g[onLift], variance*g[onHand], variance*g[onTorque]
	c[onLift][onLift] += l * g[onLift]
	c[onHand][onLift] += h * g[onLift]
	c[onHand][onHand] += h * g[onHand]
	c[onTorque][onLift] += t * g[onLift]
	c[onTorque][onHand] += t * g[onHand]
	c[onTorque][onTorque] += t * g[onTorque]
}

// widen adds what the spread of the parts does to the effects, to first order.
// The parts nothing is read of and that only causes move have no spread. The torque a
// newton of clamp carries has a variance of its own, in parts of its square. All c is
// zero before.
func (w *workings) widen(s *state, st *spread, held float64, c *covariance) {
	v, u := &st.mean, &st.sd
	var g slopes
	w.slopes(s, v, &g)
	turn := u[nuts] * s.pitch
	x, seat := u[springSet]*u[springSet], u[wear]*u[wear]+turn*turn
	if w.would == coilbound { // wear takes compression and gives seat, nuts the other way
		for i := range g.seat {
			g.seat[i] -= g.x[i]
		}
		c.add(&g.seat, seat)
	} else {
		x += seat
	}
	c.add(&g.x, x)
	rate := s.count * u[springRate]
	c.add(&g.rate, rate*rate)

	// play at the rod takes pull and leaves the cable idle
	nut := u[hubNutBack] * s.hubPitch
	play := v[trainRatio] * v[trainRatio] * (u[rodPlay]*u[rodPlay] + nut*nut)
	c.add(&g.pull, u[freePlay]*u[freePlay]+u[cablePull]*u[cablePull]+play)
	c[onIdle] = [...]float64{onLift: -play * g.pull[onLift], onHand: -play * g.pull[onHand], onIdle: play}
	// stiffness and drag of the cable enter its give, drag the hand force too
	cable := w.give - s.stretch
	soft, drag := u[cableStiffness]/v[cableStiffness]*cable, u[cableEfficiency]/v[cableEfficiency]
	c.add(&g.give, soft*soft+drag*drag*cable*cable)
	if w.hand > 1 {
		lever := u[leverRatio] / v[leverRatio]
		both := drag * drag * cable
		c[onHand][onLift] += both * g.give[onLift]
		c[onHand][onHand] += drag*drag + 2*both*g.give[onHand] + lever*lever
		c[onTorque][onHand] += both * g.give[onTorque]
	}
	c[onTorque][onTorque] += w.torque * w.torque * held
}
