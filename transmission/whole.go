package transmission

import "math"

// sights are what was seen of the whole clutch, as figures that the effects give:
// factor times effect plus offset, told with a spread.
type sights struct {
	list  [dataLength - atLift]sight
	taken int
}

// ahead notes for each sight what the later ones need to learn from it: a figure
// teaches all, a sign only of its own effect. What one sign says of another effect,
// through parts that both hang on, changes the odds by less than the rest leaves open
// (0.0004 nat of the exact posterior's log loss), and costs a third of the time.
func (s *sights) ahead() {
	for i := range s.list[:s.taken] {
		t := &s.list[i]
		for e := range len(effect{}) {
			for _, o := range s.list[i+1 : s.taken] {
				if o.on == e && (t.side == 0 || e == t.on) {
					t.later[t.laterCount] = uint8(e)
					t.laterCount++
					break
				}
			}
		}
	}
}

// sight is one of them: a figure, or a sign that is told where its figure passes
// zero, which is uncertain by one.
type sight struct {
	on             int // which effect
	offset, factor float64
	variance       float64              // of a figure
	side           float64              // of a sign: 1 yes, -1 no; 0 is a figure
	doubt          float64              // that a sign is told wrongly however plain
	gap            bool                 // the lift wanted counts too
	later          [len(effect{})]uint8 // effects that later sights compare
	laterCount     int
}

// whole returns the likelihood of what was seen of the whole clutch: like times
// exp(-miss/2), kept apart so that a miss however large does not end in zero. Where the
// figures miss by more than far, signs are not looked at: they only take from it.
func (m *model) whole(st *spread, sights *sights, far float64) (like, miss float64) {
	s, v := m.s, &st.mean
	var w workings
	m.hold.take(s, st)
	w.holding(s, v, m.hold.per)
	y := effect{onLift: w.rise, onTorque: w.torque, onIdle: s.idle(v)}
	if m.weighed {
		y[onHand] = math.Log(w.hand)
	}
	var c covariance
	w.widen(s, st, m.hold.variance, &c)
	like = 1
	seen := sights.list[:sights.taken]
	for i := range seen {
		t := &seen[i]
		k := t.factor
		x, variance := t.look(s, st, &y, &c)
		if t.side == 0 {
			miss += x * x / variance
			like /= math.Sqrt(2 * math.Pi * variance)
			if miss > far {
				return like, miss
			}
			c.learn(&y, t, -k*x/variance, k*k/variance)
			continue
		}
		// chance of the answer given: misheard, or the figure past its uncertain turning point
		sure := 1 - 2*t.doubt
		r := 1 / math.Sqrt(variance)
		q := t.side * x * r
		if !(q >= -plain && q <= plain) {
			z := t.doubt
			if q > 0 {
				z += sure
			}
			like *= z
			continue
		}
		below, dense := m.bell.normal(q)
		z := t.doubt + sure*below
		like *= z
		if t.laterCount > 0 {
			a := sure * dense * r / z
			c.learn(&y, t, t.side*k*a, k*k*a*(a+q*r))
		}
	}
	return like, miss
}

// look returns the figure that a sight compares and its variance.
func (t *sight) look(s *state, st *spread, y *effect, c *covariance) (x, variance float64) {
	k := t.factor
	x, variance = t.offset+k*y[t.on], t.variance+k*k*c[t.on][t.on]
	if t.gap {
		flat, out := st.sd[outOfFlat], st.sd[runOut]/2
		x += s.lift(&st.mean) / dragSpread
		variance += (flat*flat + out*out) / (dragSpread * dragSpread)
	}
	return x, variance
}

// plain is from how many spreads off a sign is as good as sure: a normal figure
// is beyond with a chance of 1e-9.
const plain = 6.0

// learn moves effects and covariance by what a sight told: a is the slope of the log
// likelihood in the mean of its effect, b what its curvature takes.
func (c *covariance) learn(y *effect, t *sight, a, b float64) {
	var row effect
	for _, j := range t.later[:t.laterCount] {
		row[j] = c[max(int(j), t.on)][min(int(j), t.on)]
	}
	for n, j := range t.later[:t.laterCount] {
		y[j] += row[j] * a
		take := row[j] * b
		for _, k := range t.later[:n+1] {
			c[j][k] -= take * row[k]
		}
	}
}

func update(b, reading figure) figure {
	if b.u == 0 {
		return b
	}
	if reading.u == 0 {
		return figure{reading.x, 0}
	}
	w := b.u * b.u / (b.u*b.u + reading.u*reading.u)
	return figure{b.x + w*(reading.x-b.x), b.u * math.Sqrt(1-w)}
}

// crept stands in the data for a clutch that just slipped under a kick test.
const crept = 2
