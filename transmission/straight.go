package transmission

// straight returns the clutch with springs and train replaced by straight ones
// that agree about the middle of the window as new: the load at both ends of the
// springs' stroke there, and pull, tension and stretch at full lift. The causes
// are weighed on it; window and budgets are not.
func (s *state) straight(low, high float64) *state {
	t := *s
	v := &s.fresh
	y := s.lift(v)
	if s.law != nil {
		from := s.off(v) + low*s.pitch
		to := s.off(v) + high*s.pitch + y
		rate := (s.press(v, to) - s.press(v, from)) / (to - from)
		shift := s.press(v, from)/rate - from // added to every compression
		t.law = nil
		t.fresh[springRate] = rate / s.count
		t.freshU[springRate] = s.freshU[springRate] / s.fresh[springRate] * t.fresh[springRate]
		t.v[springRate] *= t.fresh[springRate] / s.fresh[springRate]
		t.u[springRate] *= t.fresh[springRate] / s.fresh[springRate]
		solid := s.solid(v)
		t.free += shift
		t.shortest = t.free - v[springSet] - (solid + shift)
	}
	if s.train != nil {
		load := s.press(v, s.off(v)+(low+high)/2*s.pitch+y)
		none, _ := s.walk(v, 0, 0)
		bare, _ := s.walk(v, y, 0)
		all, tension := s.walk(v, y, load)
		t.train = nil
		r := (bare - none) / y
		t.fresh[trainRatio] = r
		t.v[trainRatio] = r
		t.efficiency = load / (tension * v[cableEfficiency] * r)
		t.lost = none - v[freePlay] - r*v[rodPlay]
		t.stretch = (all-bare)/load - tension/load/v[cableStiffness]
	}
	return &t
}
