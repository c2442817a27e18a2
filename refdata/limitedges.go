package refdata

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// isRead reports whether a limit is read in quantity Q.
func isRead[Q units.Quantity](r LimitRange) bool {
	var q Q
	switch any(q).(type) {
	case units.Length:
		return r.Length.Given() || r.PerSize.Given()
	case units.Force:
		return r.Force.Given()
	case units.Ratio:
		return r.Share.Given()
	}
	return false
}

// edge is one end of a range, with the uncertainty it has from the size it grows
// with, in SI units.
type edge[Q units.Quantity] struct {
	at Figure[Q]
	u  float64
}

func plainEdges[Q units.Quantity](r Range[Q]) [2]edge[Q] {
	return [2]edge[Q]{{at: r.Low}, {at: r.High}}
}

// limitEdges returns the ends of a limit that is read in Q, which isRead has seen
// to. Ends that grow with the size are rounded to 0.001 mm.
func limitEdges[Q units.Quantity](r LimitRange, size measure.Reading[units.Length]) [2]edge[Q] {
	for _, given := range []any{r.Length, r.Force, r.Share} {
		if own, ok := given.(Range[Q]); ok && own.Given() {
			return plainEdges(own)
		}
	}
	var out [2]edge[Q]
	for i, per := range []Figure[units.Ratio]{r.PerSize.Low, r.PerSize.High} {
		k, ok := per.Get()
		if !ok {
			continue
		}
		at := units.Millimetres(math.Round(size.Value().Times(k.Value()).Millimetres()*1000) / 1000)
		out[i].at, _ = any(Known(at)).(Figure[Q])
		out[i].u = k.Value() * size.U().SI()
	}
	return out
}

func rangeOf[Q units.Quantity](e [2]edge[Q]) Range[Q] { return Range[Q]{e[0].at, e[1].at} }

// edges are a reading and the ends of its limits.
type edges[Q units.Quantity] struct {
	x          Q
	u          float64 // SI
	fit, renew [2]edge[Q]
	down       bool
}

// ends returns which end of a range wear reaches first, and which last.
func (e edges[Q]) ends() (near, far int) {
	if e.down {
		return 1, 0
	}
	return 0, 1
}

// beyond returns how far b lies beyond a in the direction of wear.
func (e edges[Q]) beyond(a, b Q) Q {
	if e.down {
		return a - b
	}
	return b - a
}

// margin returns the way from the reading to the nearer end of the fit, negative
// outside it. A fit has at least one end.
func (e edges[Q]) margin() Q {
	low, hasLow := e.fit[0].at.Get()
	high, hasHigh := e.fit[1].at.Get()
	switch {
	case !hasLow:
		return high - e.x
	case !hasHigh:
		return e.x - low
	}
	return min(e.x-low, high-e.x)
}

// band is a stretch of figures with one verdict, up to an end in the direction of
// wear that may be open.
type band[Q units.Quantity] struct {
	verdict LimitVerdict
	upto    edge[Q]
}

// bands returns the stretches one after the other in the direction of wear.
func (e edges[Q]) bands() []band[Q] {
	near, far := e.ends()
	var out []band[Q]
	if e.fit[near].at.known {
		out = append(out, band[Q]{Tight, e.fit[near]})
	}
	if !e.fit[far].at.known {
		return append(out, band[Q]{verdict: Right})
	}
	out = append(out, band[Q]{Right, e.fit[far]})
	switch first, last := e.renew[near], e.renew[far]; {
	case first.at.known && last.at.known:
		return append(out, band[Q]{Serviceable, first}, band[Q]{AtLimit, last}, band[Q]{verdict: Renew})
	case first.at.known:
		return append(out, band[Q]{Serviceable, first}, band[Q]{verdict: AtLimit})
	case last.at.known:
		return append(out, band[Q]{Serviceable, last}, band[Q]{verdict: Renew})
	}
	return append(out, band[Q]{verdict: Loose})
}

// judge returns the verdict of the band the reading lies in, its chance, and the
// likeliest of the other verdicts if its chance is a hundredth or more. The errors
// of two ends that grow with one size go together, and so the chance of a band is
// the difference of the chances of lying before its ends.
func (e edges[Q]) judge() (LimitVerdict, units.Ratio, LimitVerdict) {
	verdict, second := NotJudged, NotJudged
	var chance, next float64
	below := 0.0 // chance of lying before the bands seen so far
	for _, b := range e.bands() {
		upto, inside := 1.0, true
		if end, ok := b.upto.at.Get(); ok {
			d := e.beyond(e.x, end)
			inside = d > 0 || d == 0 && b.verdict != Tight // an end belongs to the fit
			upto = normal(d.SI(), math.Hypot(e.u, b.upto.u), inside)
		}
		p := max(0, upto-below)
		below = max(below, upto)
		switch {
		case verdict == NotJudged && inside:
			verdict, chance = b.verdict, p
		case p >= 0.01 && p > next:
			second, next = b.verdict, p
		}
	}
	return verdict, units.Value(chance), second
}

// normal returns the chance that a normal error of standard deviation u is below
// d. Without an error it is certain, one way or the other.
func normal(d, u float64, inside bool) float64 {
	switch {
	case u > 0:
		return 0.5 * math.Erfc(-d/(u*math.Sqrt2))
	case inside:
		return 1
	}
	return 0
}
