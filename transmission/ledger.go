package transmission

import "math"

// off is the compression of a spring with the nut flush: free length less set,
// less the length there, which wear of the pack makes longer.
func (s *state) off(v *vector) float64 {
	return (s.free - v[springSet]) - (s.flush + v[wear])
}

// lift is what the pressure plate must rise for every face to be free: a gap at
// each face, what the plates are out of flat, and half the run-out, since the
// low side lifts that much less than the middle.
func (s *state) lift(v *vector) float64 {
	return v[faces]*s.gap + v[outOfFlat] + v[runOut]/2
}

// spare is the cable pull left for stretch once free play, play, the slack nut
// and a lift of y are paid.
func (s *state) spare(v *vector, y float64) float64 {
	return v[cablePull] + v[preload] - v[freePlay] - s.lost - v[trainRatio]*(v[rodPlay]+v[hubNutBack]*s.hubPitch+v[slack]+y)
}

// give is the cable pull that one newton at the plate takes: the cable's stretch
// at the lever end and the train's.
func (s *state) give(v *vector) float64 {
	return 1/(v[cableStiffness]*v[trainRatio]*s.efficiency*v[cableEfficiency]) + s.stretch
}

// forceByHand is the load at the plate, lifted by y, at which the hand force is
// as much as may be asked.
func (s *state) forceByHand(v *vector, y float64) float64 {
	if s.train != nil {
		return s.mostForce(func(f float64) bool { _, tension := s.walk(v, y, f); return tension/v[leverRatio] <= s.hand })
	}
	return s.hand * v[leverRatio] * v[trainRatio] * s.efficiency * v[cableEfficiency]
}

// forceByPull is the load at the plate, lifted by y, at which stretch takes all
// the pull that is left; below zero if there is none left.
func (s *state) forceByPull(v *vector, y float64) float64 {
	if s.train != nil {
		return s.mostForce(func(f float64) bool { pull, _ := s.walk(v, y, f); return pull <= v[cablePull] })
	}
	return s.spare(v, y) / s.give(v)
}

// bounds are the turns each limit sets.
type bounds struct{ torque, contact, bind, hand, travel, thread float64 }

// bounds solves every limit for the turns n of the nuts, with compression
// x = off + n P and load W(x) of all springs:
//
//	torque    mu z Rm W(x) >= wanted torque
//	contact   x >= 0 and n >= 0
//	bind      x + y <= solid
//	hand      W(x + y) <= the load at which the hand force is reached
//	travel    W(x + y) <= the load at which the pull is used up
func (s *state) bounds(v *vector) bounds {
	off, y := s.off(v), s.lift(v)
	return bounds{
		torque:  (s.pressed(v, s.wanted/s.carried(v)) - off) / s.pitch,
		contact: math.Max(-off/s.pitch, 0),
		bind:    (s.solid(v) - y - off) / s.pitch,
		hand:    (s.pressed(v, s.forceByHand(v, y)) - y - off) / s.pitch,
		travel:  (s.pressed(v, s.forceByPull(v, y)) - y - off) / s.pitch,
		thread:  s.thread,
	}
}

func (b *bounds) low() (float64, Limit) {
	if b.contact > b.torque {
		return b.contact, Contact
	}
	return b.torque, Torque
}

func (b *bounds) high() (float64, Limit) {
	n, l := b.bind, CoilBind
	if b.hand < n {
		n, l = b.hand, HandForce
	}
	if b.travel < n {
		n, l = b.travel, Travel
	}
	if b.thread < n {
		n, l = b.thread, Thread
	}
	return n, l
}

func (b *bounds) width() float64 {
	low, _ := b.low()
	high, _ := b.high()
	return high - low
}
