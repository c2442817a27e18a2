package transmission

import "math"

func phi(t float64) float64     { return 0.5 * math.Erfc(-t/math.Sqrt2) }
func density(t float64) float64 { return math.Exp(-t*t/2) / math.Sqrt(2*math.Pi) }

// normal returns phi and density together, phi to 1e-7: Abramowitz and Stegun
// 26.2.17, from memory, checked against phi by a test.
func normal(t float64) (below, dense float64) {
	dense = density(t)
	x := 1 / (1 + 0.2316419*math.Abs(t))
	past := dense * x * (0.319381530 + x*(-0.356563782+x*(1.781477937+x*(-1.821255978+x*1.330274429))))
	if t > 0 {
		return 1 - past, dense
	}
	return past, dense
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
// reading f, or evenly between the bounds if f.u is zero.
func amount(f figure, low, high, q float64) float64 {
	if f.u == 0 {
		return low + q*(high-low)
	}
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
