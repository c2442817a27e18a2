package units

import (
	"math"
	"strconv"
)

// WithUncertainty returns q and its standard uncertainty u as text with no more
// digits than u allows: "7.94 ± 0.02 mm". u is given to one significant digit,
// to two if the first is a 1 (GUM 7.2.6 asks for at most two). A zero u prints
// q alone.
func WithUncertainty[Q Quantity](q, u Q) string {
	k := q.kind()
	if u == 0 || !Finite(q) || !Finite(u) {
		return q.String()
	}
	symbol, num, den, off, post := k.stored, 1.0, 1.0, 0.0, 0.0
	for _, p := range k.prefer {
		c := k.find(p)
		if x := math.Abs(float64(q) * c.den / c.num); k.affine || x >= 0.1 && x < 1e5 || q == 0 {
			symbol, num, den, off, post = p, c.num, c.den, c.off, c.post
			break
		}
	}
	return k.rounded(float64(q), float64(u), symbol, num, den, off, post)
}

// WithUncertaintyIn is [WithUncertainty] in a unit of the caller's choice, a
// constant of the type: "70.3 ± 1.7 mile/h". A zero u prints q alone, to twelve
// digits. A size that is no unit of the type gives the text of WithUncertainty, and
// so does every unit of a temperature, whose scale has no constant.
func WithUncertaintyIn[Q Quantity](q, u, unit Q) string {
	k := q.kind()
	if !Finite(q) || !Finite(u) || k.affine {
		return WithUncertainty(q, u)
	}
	for i := range k.units {
		c := &k.units[i]
		if !c.printed || c.per || math.Abs(c.num/c.den-float64(unit)) > 4*ulp*math.Abs(float64(unit)) {
			continue
		}
		if u == 0 {
			b := strconv.AppendFloat(nil, float64(q)*c.den/c.num, 'g', 12, 64)
			x, err := strconv.ParseFloat(string(b), 64)
			if err != nil {
				break
			}
			return string(k.suffix(strconv.AppendFloat(nil, x, 'f', -1, 64), c.symbol))
		}
		return k.rounded(float64(q), float64(u), c.symbol, c.num, c.den, 0, 0)
	}
	return WithUncertainty(q, u)
}

// rounded writes q and u in a unit with no more digits than u allows.
func (k *kind) rounded(q, u float64, symbol string, num, den, off, post float64) string {
	x, ux := (q-post)*den/num-off, math.Abs(u*den/num)
	place := int(math.Floor(math.Log10(ux)))
	if ux/math.Pow(10, float64(place)) < 1.95 {
		place--
	}
	decimals := max(-place, 0)
	if place > 0 { // round away digits left of the point that u does not support
		p := math.Pow(10, float64(place))
		x, ux = math.Round(x/p)*p, math.Round(ux/p)*p
	}
	b := strconv.AppendFloat(nil, x, 'f', decimals, 64)
	b = append(b, " ± "...)
	b = strconv.AppendFloat(b, ux, 'f', decimals, 64)
	return string(k.suffix(b, symbol))
}
