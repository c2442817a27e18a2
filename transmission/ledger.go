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

// bounds are the turns each limit sets.
type bounds struct{ torque, contact, bind, hand, travel, thread float64 }

// bounds solves every limit for the turns n of the nuts, with compression
// x = off + n P and load N k x of N springs of rate k:
//
//	torque    mu z Rm N k x >= wanted torque
//	contact   x >= 0 and n >= 0
//	bind      spring length less lift >= shortest
//	hand      N k (x + y) <= hand force times leverage, ratio and efficiencies
//	travel    N k (x + y) give <= spare
func (s *state) bounds(v *vector) bounds {
	off, y := s.off(v), s.lift(v)
	rate := s.count * v[springRate]
	gain := v[leverRatio] * v[trainRatio] * s.efficiency * v[cableEfficiency]
	return bounds{
		torque:  (s.wanted/(v[friction]*v[faces]*s.radius*rate) - off) / s.pitch,
		contact: math.Max(-off/s.pitch, 0),
		bind:    (s.flush + v[wear] - y - s.shortest) / s.pitch,
		hand:    (s.hand*gain/rate - y - off) / s.pitch,
		travel:  (s.spare(v, y)/(s.give(v)*rate) - y - off) / s.pitch,
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
