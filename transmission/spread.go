package transmission

// spread is a state whose parts are normal and independent.
type spread struct{ mean, sd vector }

// covariance of the effects of one state, lower triangle.
type covariance [len(effect{})][len(effect{})]float64

// add widens the spread by an amount of the given variance that moves the effects
// along g.
func (c *covariance) add(g *effect, variance float64) {
	for i := range c {
		a := variance * g[i]
		for j := range i + 1 {
			c[i][j] += a * g[j]
		}
	}
}

// covariance returns that of the effects, to first order. The parts nothing is
// read of and that only causes move have no spread.
func (w *workings) covariance(s *state, st *spread) (c covariance) {
	v, u := &st.mean, &st.sd
	g := w.slopes(s, v)
	set := u[springSet] * u[springSet]
	turn := u[nuts] * s.pitch
	seat := u[wear]*u[wear] + turn*turn // wear takes compression and gives seat, nuts the other way
	if w.moves == coilbound {
		for i := range g.seat {
			g.seat[i] -= g.x[i]
		}
		c.add(&g.seat, seat)
		seat = 0
	}
	c.add(&g.x, set+seat)
	rate := s.count * u[springRate]
	c.add(&g.rate, rate*rate)
	c.add(&g.pull, u[freePlay]*u[freePlay]+u[cablePull]*u[cablePull])
	// play at the rod takes pull and leaves the cable idle
	play := g.pull
	for i := range play {
		play[i] *= -v[trainRatio]
	}
	play[onIdle] = v[trainRatio]
	nut := u[hubNutBack] * s.hubPitch
	c.add(&play, u[rodPlay]*u[rodPlay]+nut*nut)
	// stiffness and drag of the cable enter its give, drag the hand force too
	cable := w.give - s.stretch
	soft, drag := u[cableStiffness]/v[cableStiffness]*cable, u[cableEfficiency]/v[cableEfficiency]
	c.add(&g.give, soft*soft)
	for i := range g.give {
		g.give[i] *= cable
	}
	if w.hand > 1 {
		g.give[onHand]++
		lever := u[leverRatio] / v[leverRatio]
		c[onHand][onHand] += lever * lever
	}
	c.add(&g.give, drag*drag)
	grip := w.torque * u[friction] / v[friction]
	c[onTorque][onTorque] += grip * grip
	return c
}
