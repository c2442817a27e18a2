package transmission

import (
	"math"
	"sync"
)

func phi(t float64) float64     { return 0.5 * math.Erfc(-t/math.Sqrt2) }
func density(t float64) float64 { return math.Exp(-t*t/2) / math.Sqrt(2*math.Pi) }

// bell holds phi, with four terms of Taylor's series, at the middles of even steps,
// from which it follows in between with its slope, the density: to 1e-8.
type bell [2*plain*bellSteps + 1]struct {
	below, dense, second, third, fourth float64

	told float64 // the chance of a sign so far past its turning point
}

const bellSteps = 32 // to one

// newBell works the table out, once.
var newBell = sync.OnceValue(func() *bell {
	var b bell
	for i := range b {
		q := float64(i)/bellSteps - plain
		t, d := &b[i], density(q)
		t.below, t.dense, t.second, t.third, t.fourth = phi(q), d, -q*d/2, (q*q-1)*d/6, (3-q*q)*q*d/24
		t.told = misheard + (1-2*misheard)*t.below
	}
	return &b
})

// normal returns phi and density at q, which is within plain of nothing.
func (b *bell) normal(q float64) (below, dense float64) {
	steps := (q + plain) * bellSteps
	i := int(steps + 0.5)
	h := (steps - float64(i)) / bellSteps
	t := &b[i]
	below = t.below + h*(t.dense+h*(t.second+h*(t.third+h*t.fourth)))
	return below, t.dense + h*(2*t.second+h*(3*t.third+h*4*t.fourth))
}

// phi is the chance of a figure below z.
func (b *bell) phi(z float64) float64 {
	switch {
	case z > plain:
		return 1
	case !(z >= -plain):
		return 0
	}
	below, _ := b.normal(z)
	return below
}

// told is the chance that a sign is told which is q spreads past its turning point, to a
// hundredth of itself or so.
func (b *bell) told(q float64) float64 {
	switch {
	case q > plain:
		return b[len(b)-1].told
	case !(q >= -plain):
		return b[0].told
	}
	return b[int((q+plain)*bellSteps+0.5)].told
}

func logNormal(x, mean, u float64) float64 {
	z := (x - mean) / u
	return -z*z/2 - math.Log(u*math.Sqrt(2*math.Pi))
}

// logEven is the log density of a reading whose amount f.x, with deviation f.u,
// is evenly likely between low and high: (Phi - Phi)/(high - low), kept in logarithms
// so that it does not fall to nothing in its tails.
func logEven(f figure, low, high float64) float64 {
	a, b := (low-f.x)/f.u, (high-f.x)/f.u
	return logBetween(a, b) - math.Log(high-low)
}

// logBetween is log(Phi(b) - Phi(a)) for a < b.
func logBetween(a, b float64) float64 {
	if a > 0 {
		a, b = -b, -a // use the side where both are small
	}
	if b < -37 { // Erfc has underflowed: leading term of the tail (Abramowitz and Stegun 26.2.12, from memory)
		return -b*b/2 - math.Log(-b*math.Sqrt(2*math.Pi))
	}
	return math.Log(phi(b) - phi(a))
}

// amount is the open amount below which a part q of its chance lies, after a
// reading f, which is never without its error.
func amount(f figure, low, high, q float64) float64 {
	a, b := (low-f.x)/f.u, (high-f.x)/f.u
	switch { // far outside: it hugs the nearer bound with an exponential tail
	case a > 5:
		return math.Min(low-f.u/a*math.Log1p(-q), high)
	case b < -5:
		return math.Max(high-f.u/b*math.Log(q), low)
	}
	t := phi(a) + q*(phi(b)-phi(a))
	return math.Min(math.Max(f.x-f.u*math.Sqrt2*math.Erfcinv(2*t), low), high)
}
