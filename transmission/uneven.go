package transmission

import (
	"math"

	"example.com/benchbook/units/measure"
)

// uneven is unequal springs round a plate, in metres and newtons.
type uneven struct {
	free, rate  []float64
	cos, sin    []float64 // of the studs
	seat, lift  float64   // length with plates closed; lift of the middle
	rimToCircle float64
}

func newUneven(in []measure.Input, seat, lift, rimToCircle float64) uneven {
	n := len(in) / 2
	room := make([]float64, 4*n)
	s := uneven{free: room[:n], rate: room[n : 2*n], cos: room[2*n : 3*n], sin: room[3*n:], seat: seat, lift: lift, rimToCircle: rimToCircle}
	for i := range n {
		s.free[i], s.rate[i] = in[i].X, in[n+i].X
		s.sin[i], s.cos[i] = math.Sincos(2 * math.Pi * float64(i) / float64(n))
	}
	return s
}

// balance returns how far the plate stands above its middle at the first stud and a
// quarter turn on from it: where the energy of the springs is least. order is which
// spring stands on each stud and more what each nut is turned in, in metres; nil is in
// turn, and nothing.
func (s *uneven) balance(order []int, more []float64) (a, b float64) {
	at := s.look(order, more, 0, 0)
	for range 50 { // with none loose the first step is there, each spring that comes loose takes another
		det := at.cc*at.ss - at.cs*at.cs
		if !(det > 1e-9*(at.cc+at.ss)*(at.cc+at.ss)) { // springs on one line hold no plate: it stays as it was
			return a, b
		}
		da, db := (-at.mc*at.ss+at.ms*at.cs)/det, (-at.ms*at.cc+at.mc*at.cs)/det
		// A spring that comes loose, or touches again, on the way bends the energy: half
		// the step then, until it is less.
		step, next := 1.0, s.look(order, more, a+da, b+db)
		for range 40 {
			if next.energy <= at.energy {
				break
			}
			step /= 2
			next = s.look(order, more, a+step*da, b+step*db)
		}
		na, nb := a+step*da, b+step*db
		if math.Hypot(na-a, nb-b) < 1e-15 { // metres
			return na, nb
		}
		a, b, at = na, nb, next
	}
	return a, b
}

// bearing is what springs make of a tilt: their energy, its slopes and its curvatures.
type bearing struct{ energy, mc, ms, cc, cs, ss float64 }

func (s *uneven) look(order []int, more []float64, a, b float64) (at bearing) {
	for i := range s.free {
		j := i
		if order != nil {
			j = order[i]
		}
		x := s.free[j] - s.seat + s.lift + a*s.cos[i] + b*s.sin[i]
		if more != nil {
			x += more[i]
		}
		if x <= 0 {
			continue
		}
		k := s.rate[j]
		at.energy += k * x * x / 2
		at.mc += k * x * s.cos[i]
		at.ms += k * x * s.sin[i]
		at.cc += k * s.cos[i] * s.cos[i]
		at.cs += k * s.cos[i] * s.sin[i]
		at.ss += k * s.sin[i] * s.sin[i]
	}
	return at
}

// runOut is the total reading at the rim.
func (s *uneven) runOut(order []int, more []float64) float64 {
	a, b := s.balance(order, more)
	return 2 * math.Hypot(a, b) * s.rimToCircle
}

// order tries every order of up to eight springs, the first left where it is, since
// turning the plate changes nothing; nil for more.
func (s *uneven) order() (best []int, after float64) {
	n := len(s.free)
	if n > 8 {
		return nil, s.runOut(nil, nil)
	}
	try := make([]int, n)
	for i := range try {
		try[i] = i
	}
	best, after = append([]int(nil), try...), s.runOut(nil, nil)
	var turn func(k int)
	turn = func(k int) {
		if k == n {
			// by less than a thousandth of a millimetre is no better
			if r := s.runOut(try, nil); r < after-1e-6 {
				copy(best, try)
				after = r
			}
			return
		}
		for i := k; i < n; i++ {
			try[k], try[i] = try[i], try[k]
			turn(k + 1)
			try[k], try[i] = try[i], try[k]
		}
	}
	turn(1)
	return best, after
}
