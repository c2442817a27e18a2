package carburation

import (
	"math"
	"strconv"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// Band is a computed figure with the ends that leave 5 % on either side. It is
// zero, not given, where what is not known leaves the figure open to more than some
// twentyfold either way.
type Band[Q units.Quantity] struct {
	Low    Q `json:"low"`
	Middle Q `json:"middle"`
	High   Q `json:"high"`
}

// ninety is how many standard deviations leave 5 % on either side.
const ninety = 1.6448536269514722

// String returns text such as "163 to 352 cc/min, middle 239 cc/min".
func (b Band[Q]) String() string {
	return spanText(b.Low, b.High) + ", middle " + shown(b.Middle)
}

// Given reports whether there is a band.
func (b Band[Q]) Given() bool { return b != Band[Q]{} }

// Holds reports whether q lies within the band, ends included.
func (b Band[Q]) Holds(q Q) bool { return q >= b.Low && q <= b.High }

// openEnded is the standard deviation of a logarithm from which a band says nothing.
const openEnded = 3.0

// lnBand returns the band of a figure whose logarithm, in SI, has a mean and a
// standard deviation, none if that leaves it open.
func lnBand[Q units.Quantity](mean, sd float64) Band[Q] {
	if !(sd <= openEnded) {
		return Band[Q]{}
	}
	return Band[Q]{units.FromSI[Q](math.Exp(mean - ninety*sd)), units.FromSI[Q](math.Exp(mean)), units.FromSI[Q](math.Exp(mean + ninety*sd))}
}

// propagated returns the band of exp(f) at knobs and further inputs, to first
// order in the logarithm, in which the figures of carburation are nearly normal.
func propagated[Q units.Quantity](f func(v *[nKnobs]float64, x []float64) float64, mean, sd knobs, more ...measure.Input) (Band[Q], bool) {
	in := make([]measure.Input, 0, nKnobs+len(more))
	for i := range mean {
		in = append(in, measure.Input{X: mean[i], U: sd[i]})
	}
	r, err := measure.Propagate[units.Ratio](func(x []float64) float64 {
		var k knobs
		copy(k[:], x)
		v := k.values()
		return f(&v, x[nKnobs:])
	}, append(in, more...)...)
	if err != nil {
		return Band[Q]{}, false
	}
	return lnBand[Q](r.Value().Value(), r.U().Value()), true
}

// lnInput is a reading as its logarithm in SI.
func lnInput[Q units.Quantity](r measure.Reading[Q]) measure.Input {
	v := r.Value().SI()
	return measure.Input{X: math.Log(v), U: r.SI().U / v}
}

// shown returns a figure with three significant digits in the trade's unit.
func shown[Q units.Quantity](q Q) string {
	figure, unit := tradeFigure(q)
	return digits3(figure) + unit
}

// tradeFigure returns a quantity in the unit the trade counts it in.
func tradeFigure[Q units.Quantity](q Q) (figure float64, unit string) {
	switch x := any(q).(type) {
	case units.VolumeFlow:
		return x.CubicCentimetresPerMinute(), " cc/min"
	case units.Length:
		return x.Millimetres(), " mm"
	case units.Area:
		return x.SquareMillimetres(), " mm²"
	case units.Ratio:
		return x.Value(), ""
	}
	return q.SI(), " (SI)"
}

func digits3(x float64) string {
	if x == 0 || math.IsNaN(x) || math.IsInf(x, 0) {
		return strconv.FormatFloat(x, 'g', 3, 64)
	}
	decimals := 2 - int(math.Floor(math.Log10(math.Abs(x))))
	p := math.Pow(10, float64(decimals))
	return strconv.FormatFloat(math.Round(x*p)/p, 'f', -1, 64)
}

// neat rounds a figure to four digits in the trade's unit, so that it prints and
// goes into JSON as a person would write it. Nothing this package serves as a
// range or a band is good to a thousandth.
func neat[Q units.Quantity](q Q) Q {
	figure, _ := tradeFigure(q)
	if figure == 0 || math.IsNaN(figure) || math.IsInf(figure, 0) {
		return q
	}
	p := math.Pow(10, 3-math.Floor(math.Log10(math.Abs(figure))))
	x := math.Round(figure*p) / p
	var out any = q
	switch any(q).(type) {
	case units.VolumeFlow:
		out = units.CubicCentimetresPerMinute(x)
	case units.Length:
		out = units.Millimetres(x)
	case units.Area:
		out = units.SquareMillimetres(x)
	case units.Ratio:
		out = units.Value(x)
	}
	return out.(Q)
}

func (b Band[Q]) neat() Band[Q] { return Band[Q]{neat(b.Low), neat(b.Middle), neat(b.High)} }

func neatRange[Q units.Quantity](r refdata.Range[Q]) refdata.Range[Q] {
	low, high, ok := r.Ends()
	if !ok {
		return r
	}
	return refdata.RangeOf(neat(low), neat(high))
}

// spanText returns text such as "200 to 290 cc/min".
func spanText[Q units.Quantity](low, high Q) string {
	a, unit := tradeFigure(low)
	b, _ := tradeFigure(high)
	return digits3(a) + " to " + digits3(b) + unit
}

func rangeText[Q units.Quantity](r refdata.Range[Q]) string {
	low, high, ok := r.Ends()
	if !ok {
		return r.String()
	}
	return spanText(low, high)
}
