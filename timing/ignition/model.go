package ignition

import (
	"math"

	"example.com/benchbook/units/measure"
)

// The components of the readings, early positive: degrees of the crank, a gap in
// millimetres too wide, and the stroke, 1 for overlap.
const (
	advanced = iota
	retarded
	gap
	stroke
	components
)

// Spreads the model rests on: common practice, no source.
const (
	gapSetting   = 0.03 // mm, how well a good gap is set
	gapWrong     = 0.15 // mm, how far a wrong one is out
	nearSlip     = 12.0 // degrees of the crank, a slip near home
	farSlip      = 0.5  // share of slips that end up anywhere
	tdcMark      = 5.0  // degrees, a TDC mark that is wrong
	strokeMissed = 0.03 // chance that the stroke was taken for the other
	elsewhere    = 60.0 // degrees, something else
	elsewhereGap = 0.2  // mm, something else
	assumedRange = 12.5 // degrees at the shaft
	assumedU     = 4.0  // degrees at the shaft
)

// branch is one way a cause may have come about: a normal of positions and gap,
// and whether the spark then falls on overlap.
type branch struct {
	weight  float64
	normal  measure.Gaussian
	uniform bool // the common shift may be anything round the circle; the means are then nought
	overlap float64
}

// cause is one thing that may be wrong, as a mixture of branches.
type cause struct {
	key, text string
	prior     float64
	branches  []branch
	shift     float64 // degrees it moves the advanced spark, where fixed; NaN where it is open
	looks     looks
}

// looks are the chances of seeing a sign by looking.
type looks struct{ witness, rotation, mark float64 }

// wrap brings degrees into -180 to 180.
func wrap(x float64) float64 {
	x = math.Mod(x, 360)
	switch {
	case x > 180:
		return x - 360
	case x <= -180:
		return x + 360
	}
	return x
}

// near returns the readings with each angle brought round the circle to within
// half a turn of the mean.
func near(d measure.Data, mean []float64) measure.Data {
	out := make(measure.Data, gap+1)
	copy(out, d[:gap+1])
	for i := range gap {
		out[i].Value = mean[i] + wrap(d[i].Value-mean[i])
	}
	return out
}

func (b branch) logLikelihood(d measure.Data) float64 {
	g := b.normal
	angles := near(d, g.Mean)
	l := g.LogLikelihood(angles)
	if b.uniform && (d[advanced].Taken || d[retarded].Taken) {
		// A shift anywhere on the circle: 1/360 for one angle, and the normal of
		// what is left after it, the difference of the two. With a common effect of
		// spread s the evidence tends to that of the differences over s sqrt(2 pi).
		const s = 1e4
		wide := g
		wide.Free = append(append([]measure.Effect(nil), g.Free...), measure.Effect{Name: "anywhere", SD: s, Column: []float64{1, 1, 0}})
		at := angles
		if d[advanced].Taken && d[retarded].Taken {
			at = append(measure.Data(nil), angles...)
			at[retarded].Value = angles[advanced].Value + wrap(angles[retarded].Value-angles[advanced].Value)
		}
		l = wide.LogLikelihood(at) + math.Log(s*math.Sqrt(2*math.Pi)/360)
	}
	if d[stroke].Taken {
		p := b.overlap*(1-strokeMissed) + (1-b.overlap)*strokeMissed
		if d[stroke].Value == 0 {
			p = 1 - p
		}
		l += math.Log(p)
	}
	return l
}

// LogLikelihood is the logarithm of the weighted mean of the branches.
func (c cause) LogLikelihood(d measure.Data) float64 {
	best := math.Inf(-1)
	logs := make([]float64, len(c.branches))
	for i, b := range c.branches {
		logs[i] = math.Log(b.weight) + b.logLikelihood(d)
		best = max(best, logs[i])
	}
	if math.IsInf(best, -1) {
		return best
	}
	sum := 0.0
	for _, l := range logs {
		sum += math.Exp(l - best)
	}
	return best + math.Log(sum)
}

// likeliest is the branch the readings favour.
func (c cause) likeliest(d measure.Data) branch {
	best, at := math.Inf(-1), c.branches[0]
	for _, b := range c.branches {
		if l := math.Log(b.weight) + b.logLikelihood(d); l > best {
			best, at = l, b
		}
	}
	return at
}

// outlook is what the cause expects of one component not yet taken.
func (c cause) outlook(i int, d measure.Data) measure.Outlook {
	b := c.likeliest(d)
	g := b.normal
	if b.uniform {
		g.Free = append(append([]measure.Effect(nil), g.Free...), measure.Effect{SD: 180, Column: []float64{1, 1, 0}})
	}
	return g.Outlook(i, near(d, g.Mean))
}
