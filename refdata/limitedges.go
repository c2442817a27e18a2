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

// edge is one end of a range in SI units, with the uncertainty it has from the
// size it grows with.
type edge struct {
	at, u float64
	given bool
}

func edgeOf[Q units.Quantity](f Figure[Q]) edge {
	v, ok := f.Get()
	return edge{at: v.SI(), given: ok}
}

func limitEdges(r LimitRange, size measure.Reading[units.Length]) [2]edge {
	switch {
	case r.Length.Given():
		return [2]edge{edgeOf(r.Length.Low), edgeOf(r.Length.High)}
	case r.Force.Given():
		return [2]edge{edgeOf(r.Force.Low), edgeOf(r.Force.High)}
	case r.Share.Given():
		return [2]edge{edgeOf(r.Share.Low), edgeOf(r.Share.High)}
	}
	out := [2]edge{edgeOf(r.PerSize.Low), edgeOf(r.PerSize.High)}
	for i := range out {
		out[i].at, out[i].u = out[i].at*size.SI().X, out[i].at*size.SI().U
	}
	return out
}

func rangeOfEdges[Q units.Quantity](e [2]edge) Range[Q] {
	var r Range[Q]
	if e[0].given {
		r.Low = Known(units.FromSI[Q](e[0].at))
	}
	if e[1].given {
		r.High = Known(units.FromSI[Q](e[1].at))
	}
	return r
}

// edges are a reading and the ends of its limits, in SI units.
type edges struct {
	x, u       float64
	fit, renew [2]edge
	down       bool
}

// ends returns which end of a range wear reaches first, and which last.
func (e edges) ends() (near, far int) {
	if e.down {
		return 1, 0
	}
	return 0, 1
}

// sign is the direction of wear.
func (e edges) sign() float64 {
	if e.down {
		return -1
	}
	return 1
}

// judge returns the verdict of the band the reading lies in, its chance, and the
// likeliest of the other verdicts if its chance is a hundredth or more. Bands
// follow each other in the direction of wear.
func (e edges) judge() (LimitVerdict, units.Ratio, LimitVerdict) {
	sign := e.sign()
	near, far := e.ends()
	type band struct {
		verdict LimitVerdict
		upto    edge
	}
	var bands []band
	if e.fit[near].given {
		bands = append(bands, band{Tight, e.fit[near]})
	}
	if e.fit[far].given {
		bands = append(bands, band{Right, e.fit[far]})
		last := Loose
		if e.renew[near].given {
			bands = append(bands, band{Serviceable, e.renew[near]})
			last = AtLimit
		}
		if e.renew[far].given {
			if !e.renew[near].given {
				last = Serviceable
			}
			bands = append(bands, band{last, e.renew[far]})
			last = Renew
		}
		bands = append(bands, band{verdict: last, upto: edge{at: sign * math.Inf(1)}})
	} else {
		bands = append(bands, band{verdict: Right, upto: edge{at: sign * math.Inf(1)}})
	}
	verdict, second := NotJudged, NotJudged
	var chance, next float64
	below := 0.0 // chance of lying before the bands seen so far
	for _, b := range bands {
		upto := 1.0
		inside := true
		if !math.IsInf(b.upto.at, 0) {
			d := sign * (b.upto.at - e.x)
			inside = d > 0 || d == 0 && b.verdict != Tight // an end belongs to the fit
			upto = normal(d, math.Hypot(e.u, b.upto.u), inside)
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
