package trade

import (
	"math"

	"example.com/benchbook/units"
)

type row struct {
	Size units.Length
	Pull units.Force
}

const (
	three              = 3
	gap                = 0.15 * units.Millimetre
	bad   units.Length = 2 // want `a bare number as a Length`
)

func use(l units.Length, f units.Force) {}

func Right(l, m units.Length, x float64) (units.Length, float64) {
	use(3*units.Millimetre, 0)
	use(three*units.Inch, units.Newton*2)
	use(units.Millimetres(x), units.FromSI[units.Force](x))
	use(-l, 0.0)
	l += m - gap
	l = l.Times(x) + (1.5*units.Inch)/2
	l *= 2
	l /= three
	l = l / 2
	if l > 0 && l != m && l >= 5*units.Millimetre {
		l = units.Length(m) // its own type
		l = units.Length(0)
	}
	_ = row{Size: units.Inch, Pull: -units.Newton}
	_ = []units.Length{0, units.Millimetre, 2 * gap}
	_ = [3]units.Length{2: units.Inch} // an index is no quantity
	d := units.Datum(1)
	_ = d
	return max(l, 0), l.Ratio(m) * 2 * math.Pi * float64(three)
}

func Wrong(l, m units.Length, f units.Force, x float64, n int) {
	_ = l * m                                  // want `a Length times a Length is not a Length`
	_ = l / m                                  // want `a Length over a Length is a pure number`
	_ = units.Inch * units.Inch                // want `a Length times a Length is not a Length`
	_ = l * units.Millimetre                   // want `a Length times a Length is not a Length`
	_ = 1 / l                                  // want `a number divided by a Length`
	l *= m                                     // want `a Length times a Length is not a Length`
	l /= m                                     // want `a Length over a Length is a pure number`
	l++                                        // want `adds a bare number`
	l--                                        // want `adds a bare number`
	_ = units.Length(x)                        // want `a cast of a number to a Length`
	_ = units.Length(n)                        // want `a cast of a number to a Length`
	_ = units.Length(3)                        // want `a bare number as a Length`
	_ = units.Length(x * 25.4)                 // want `a cast of a number to a Length`
	_ = units.Force(l)                         // want `a cast of a Length to a Force`
	_ = units.Force(units.Inch)                // want `a cast of a Length to a Force`
	_ = float64(l)                             // want `a cast of a Length to a number`
	_ = int(l)                                 // want `a cast of a Length to a number`
	_ = math.Sqrt(float64(l * m))              // want `a cast of a Length to a number` `a Length times a Length`
	_ = l > 5                                  // want `a bare number as a Length`
	_ = l + 2*three                            // want `a bare number as a Length`
	_ = max(l, 1)                              // want `a bare number as a Length`
	use(3, 1)                                  // want `a bare number as a Length` `a bare number as a Force`
	use(-(2.5), units.Newton)                  // want `a bare number as a Length`
	_ = row{Size: 3, Pull: 1e3 * units.Newton} // want `a bare number as a Length`
	_ = row{4, 0}                              // want `a bare number as a Length`
	_ = []units.Length{0, 5}                   // want `a bare number as a Length`
	switch l {
	case 7: // want `a bare number as a Length`
	}
	var k units.Length = 9 // want `a bare number as a Length`
	k = 8                  // want `a bare number as a Length`
	_ = k
}

type lengths interface{ units.Quantity }

func Generic[Q units.Quantity, L lengths](q Q, l L, x float64) Q {
	_ = float64(q) // want `a cast of a quantity to a number`
	_ = q * q      // want `a quantity times a quantity`
	_ = l / l      // want `a quantity over a quantity`
	_ = q + q/2
	_ = units.FromSI[Q](q.SI() * x)
	return Q(x) // want `a cast of a number to a quantity`
}

func Other[T ~float64](t T) float64 { return float64(t) * float64(t) }

func Pure(r, s units.Ratio, x float64) units.Ratio {
	if r > 1 {
		r = 0.5
	}
	_ = float64(s)     // want `a cast of a Ratio to a number`
	_ = units.Ratio(x) // want `a cast of a number to a Ratio`
	return r * s / 2 * (1 - r/s)
}
