package transmission

import (
	"math"
	"math/rand/v2"
	"testing"
)

// What one part's spread does to the effects agrees with central differences
// wherever both sides are on the same branch, and the effects with the ledgers worked out afresh in [truth].
func TestSlopes(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	seen := map[motion]int{}
	for range 3000 {
		sim := draw(rng, 0.7+1.8*rng.Float64())
		m := &sim.m
		var v vector
		for p := range all {
			v[p] = m.base[p].x + m.base[p].u*rng.NormFloat64()
		}
		c := &m.causes[rng.IntN(len(m.causes))]
		for _, f := range c.fixed {
			v[f.part] += f.by
		}
		v[c.open] += c.low + rng.Float64()*(c.high-c.low)
		v[nuts] = 14 * rng.Float64()
		for p := range parts {
			v[p] = math.Min(math.Max(v[p], rules[p].low), rules[p].high)
		}
		var w workings
		w.at(m.s, &v)
		seen[w.moves]++
		lift, hand, torque := truth{v: v, s: m.s}.whole()
		if math.Abs(lift-w.lift) > 1e-9 || math.Abs(math.Max(hand, 1)-w.hand) > 1e-7 || math.Abs(torque-w.torque) > 1e-6 {
			t.Fatalf("%s at %v: lift %v, hand %v, torque %v; afresh %v, %v, %v", c.key, v, w.lift, w.hand, w.torque, lift, hand, torque)
		}
		for p := range nuts + 1 { // no other part has a spread
			h := 1e-5 * math.Max(math.Abs(v[p]), 0.1)
			up, down := v, v
			up[p] += h
			down[p] -= h
			var a, b workings
			a.at(m.s, &up)
			b.at(m.s, &down)
			if p == tongueGrip && v[p] < h { // a corner: tongues do not push
				continue
			}
			same := a.moves == w.moves && b.moves == w.moves && (a.x > 0) == (b.x > 0) && (a.held < a.clamp) == (b.held < b.clamp) && (a.hand > 1) == (b.hand > 1) && (a.load < a.clamp) == (b.load < b.clamp)
			if !same {
				continue
			}
			st := spread{mean: v}
			st.sd[p] = 1
			var got covariance
			w.widen(m.s, &st, m.s.gripped(&st.mean, &st.sd), &got)
			high, low := m.s.does(&up), m.s.does(&down)
			var n effect
			for i := range n {
				n[i] = (high[i] - low[i]) / (2 * h)
				for j := range i + 1 {
					// central differences: rounding of figures up to a few hundred (of the torque,
					// some 1e5) over the step, for either slope
					size := [...]float64{1, 1, 1e5, 1}
					fine := func(i int) float64 { return 1e-5*math.Max(size[i]*1e-5, math.Abs(n[i])) + 1e-14*size[i]/h }
					if math.Abs(got[i][j]-n[i]*n[j]) > 1e-12*size[i]*size[j]+fine(i)*math.Abs(n[j])+fine(j)*math.Abs(n[i])+fine(i)*fine(j) {
						t.Fatalf("%s: part %d spreads effects %d and %d by %v, differences %v (moves %d)", c.key, p, i, j, got[i][j], n[i]*n[j], w.moves)
					}
				}
			}
		}
	}
	t.Log(seen)
	for k := still; k <= coilbound; k++ {
		if seen[k] == 0 && k != loose { // slack springs that lift free need a nut far out
			t.Errorf("motion %d never came up", k)
		}
	}
}
