package transmission

import "math"

// sights are what was seen of the whole clutch, as figures that the effects give:
// factor times effect plus offset, told with a spread.
type sights struct {
	list  [dataLength - atLift]sight
	taken int
}

// sight is one of them: a figure, or a sign that is told where its figure passes
// zero, which is uncertain by one.
type sight struct {
	on             int // which effect
	offset, factor float64
	variance       float64 // of a figure
	side           float64 // of a sign: 1 yes, -1 no; 0 is a figure
	gap            bool    // the lift wanted counts too
}

// whole returns the likelihood of what was seen of the whole clutch: like times
// exp(-miss/2), kept apart so that a miss however large does not end in zero.
func (m *model) whole(st *spread) (like, miss float64) {
	s, v := m.s, &st.mean
	var w workings
	w.at(s, v)
	y := effect{onLift: w.lift, onTorque: w.torque, onIdle: s.idle(v)}
	if m.weighed {
		y[onHand] = math.Log(w.hand)
	}
	var c covariance
	w.widen(s, st, &c)
	like = 1
	seen := m.sights.list[:m.sights.taken]
	for i := range seen {
		t := &seen[i]
		k := t.factor
		x := t.offset + k*y[t.on]
		variance := t.variance + k*k*c[t.on][t.on]
		if t.gap {
			flat, out := st.sd[outOfFlat], st.sd[runOut]/2
			x += s.lift(v) / dragSpread
			variance += (flat*flat + out*out) / (dragSpread * dragSpread)
		}
		last := i == len(seen)-1
		if t.side == 0 {
			miss += x * x / variance
			like /= math.Sqrt(2 * math.Pi * variance)
			if !last {
				c.learn(&y, t.on, -k*x/variance, k*k/variance)
			}
			continue
		}
		// chance of the answer given: misheard, or the figure past its uncertain turning point
		const sure = 1 - 2*misheard
		r := 1 / math.Sqrt(variance)
		q := t.side * x * r
		if q > plain || q < -plain {
			z := misheard
			if q > 0 {
				z += sure
			}
			like *= z
			continue
		}
		below, dense := normal(q)
		z := misheard + sure*below
		like *= z
		if !last {
			a := sure * dense * r / z
			c.learn(&y, t.on, t.side*k*a, k*k*a*(a+q*r))
		}
	}
	return like, miss
}

// plain is from how many spreads off a sign is as good as sure: a normal figure
// is beyond with a chance of 1e-9.
const plain = 6

// learn moves effects and covariance by what was seen on effect i: a is the slope
// of the log likelihood in its mean, b what its curvature takes.
func (c *covariance) learn(y *effect, i int, a, b float64) {
	var row effect
	for j := range row {
		if j <= i {
			row[j] = c[i][j]
		} else {
			row[j] = c[j][i]
		}
	}
	for j := range y {
		y[j] += row[j] * a
		for k := range j + 1 {
			c[j][k] -= row[j] * row[k] * b
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
