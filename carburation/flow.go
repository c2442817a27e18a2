package carburation

import "math"

// plant is engine, air, fuel and carburettor in SI numbers: all that the model
// needs besides its knobs.
type plant struct {
	swept, cylinders, peak   float64 // m³ through the carburettor, count, rev/s of the crank
	pressure, rhoAir, rootRT float64 // Pa, kg/m³, sqrt(p/rho) in m/s
	dry                      float64 // kg of dry air per kg of air
	rhoFuel, nu, stoich      float64 // kg/m³, m²/s, kg of dry air per kg of fuel
	bore, cutaway, needleJet float64 // m
	needle                   needleShape
	bleed, outlet            float64 // effective areas over the needle jet, m²; bleed 0 is none
	mainJet, pilotJet        jetNumbers
	screw                    float64 // air screw, turns out over its usual setting; 0 counts as closed
	level                    float64 // m by which the fuel level lies lower than the lip tells
	mixtureScrew             float64 // fuel-metering screw, turns out over its usual setting
	longJet                  float64 // length of jets over bore
	blocked                  float64 // share of the bore left open beside the needle
	curve                    bool    // breathing varies with speed by usualCurve
	restriction              float64 // Pa/(kg/s)² in front of the choke
	vented                   bool    // float chamber shares the drop of the restriction
}

// jetNumbers is a jet in SI numbers: effective area, bore, and the coefficient
// that belongs to the area at an ideal speed of the liquid.
type jetNumbers struct{ ca, bore, cd, fall float64 }

// times returns the jet that passes k times as much at that speed.
func (j jetNumbers) times(k float64) jetNumbers {
	j.ca *= k
	j.bore, j.cd, _ = boreFor(j.ca, j.fall, JetOptions{}.filled())
	return j
}

// state is one operating point in SI numbers.
type state struct {
	air, main, pilot float64 // kg/s
	open, over       float64 // m², under the engine-side edge and under the intake-side edge
	depression       float64 // Pa behind the slide, below outside
	speed            float64 // m/s over the needle jet
	suction          float64 // Pa at the needle jet, pulses counted, lip not taken off
	pulse            float64 // factor on the mean air speed
	annulus          float64 // m²
	choked           bool
	lambda           float64 // 0 if no fuel flows
}

// segment returns the area of a circle of radius r below height h: r² acos(1 -
// h/r) - (r - h) sqrt(2 r h - h²).
func segment(h, r float64) float64 {
	if h <= 0 {
		return 0
	}
	if h >= 2*r {
		return math.Pi * r * r
	}
	return r*r*math.Acos(1-h/r) - (r-h)*math.Sqrt(h*(2*r-h))
}

// usualCurve is breathing over that at the peak, by speed over peak: best at
// three quarters, falling to both ends (judged, from memory).
func usualCurve(n float64) float64 { return math.Max(0.5, 1.03-0.48*(n-0.75)*(n-0.75)) }

// values turns knobs into plain numbers.
func (k *knobs) values() (v [nKnobs]float64) {
	for i, x := range k {
		v[i] = math.Exp(x)
	}
	v[kFollow] = v[kFollow] / (1 + v[kFollow])
	return v
}

const (
	airGamma = 1.4
	psiFront = 2.6457513110645906 // sqrt(2 gamma/(gamma-1))
	critical = 0.5282817877171742 // (2/(gamma+1))^(gamma/(gamma-1))
	psiMost  = 0.6847314563772704 // psi at the critical ratio
)

// psi is the flow function of air through a hole at pressure ratio y.
func psi(y float64) float64 {
	if y <= critical {
		return psiMost
	}
	l := math.Log(y)
	a := math.Exp(l * (2 / airGamma))
	// y^(2/g) (1 - y^((g-1)/g)), the difference by expm1 so that it stays whole near 1
	return psiFront * math.Sqrt(a*-math.Expm1(l*((airGamma-1)/airGamma)))
}

// portRatio returns y = pressure behind the slide over that outside, at which
// want y = give psi(y): the engine draws in proportion to the density it finds.
func portRatio(want, give float64) float64 {
	if give <= 0 {
		return 0
	}
	if y := give * psiMost / want; y <= critical {
		return y
	}
	// Newton on s = sqrt(1 - y), in which psi is nearly straight, from the
	// solution for air of constant density: want (1 - s²) = give sqrt2 s.
	b := give * math.Sqrt2 / want
	s := (math.Sqrt(b*b+4) - b) / 2
	limit := math.Sqrt(1 - critical)
	if s > limit {
		s = limit
	}
	for range 8 {
		y := 1 - s*s
		l := math.Log(y)
		p := math.Exp(l * (2 / airGamma))
		q := -math.Expm1(l * ((airGamma - 1) / airGamma))
		// d psi²/dy = front² (2/g p/y q - (g-1)/g p y^((g-1)/g)/y)
		slope := psiFront * psiFront * p / y * (2/airGamma*q - (airGamma-1)/airGamma*(1-q))
		root := psiFront * math.Sqrt(p*q) // psi(y)
		f := want*y - give*root
		d := -2*s*want + give*slope*s/root
		step := f / d
		next := s - step
		if !(next > 0) {
			next = s / 2
		} else if next > limit {
			next = (s + limit) / 2
		}
		if math.Abs(next-s) <= 1e-13*s {
			s = next
			break
		}
		s = next
	}
	return 1 - s*s
}

// at computes one operating point: lift in m, speed in rev/s, knobs as values.
func (p *plant) at(lift, speed float64, v *[nKnobs]float64) (s state) {
	r := p.bore / 2
	full := math.Pi * r * r * p.blocked
	s.open = segment(lift, r) * p.blocked
	s.over = segment(lift+p.cutaway, r) * p.blocked
	eta := v[kEta]
	if p.curve {
		eta *= usualCurve(speed / p.peak)
	}
	want := eta * p.rhoAir * p.swept * speed / 2 // kg/s with no drop behind the slide
	share := math.Min(1, v[kShare]*p.cylinders)
	pulsing := -math.Expm1(-s.open / (v[kSteady] * full))
	flowing := 1 - (1-share)*pulsing
	give := v[kSlide] * s.open * flowing * p.rhoAir * p.rootRT
	y := portRatio(want, give)
	s.choked = y <= critical
	s.air = want * y
	s.depression = (1 - y) * p.pressure
	s.speed = s.air / (p.rhoAir * v[kFill] * s.over)
	if s.over == 0 {
		s.speed = 0
	}
	// half-sine of the drawing part over the cycle: root mean square over mean
	form := math.Pi / (2 * math.Sqrt2) / math.Sqrt(share)
	s.pulse = 1 + (form-1)*v[kFollow]*pulsing
	u := s.pulse * s.speed
	s.suction = v[kSuction] * onset(lift/p.bore, v[kOnset]) * p.rhoAir * u * u / 2
	drop := p.restriction * s.air * s.air
	level := p.rhoFuel * standardGravity * (v[kLip] + p.level)
	extra := drop
	if p.vented {
		extra = 0
	}
	s.annulus = p.annulusAt(lift, v[kRing])
	s.main = p.mainFlow(s.suction+extra*onset(lift/p.bore, v[kOnset]), level, v, s.annulus)
	if drive := p.pilotSignal(lift, v[kPilot])*s.depression + extra - level; drive > 0 && p.pilotJet.ca > 0 {
		s.pilot = p.jetFlow(p.pilotJet.ca*p.mixtureScrew*v[kPilotJet], p.pilotJet.bore, p.pilotJet.cd, drive)
	}
	if f := s.main + s.pilot; f > 0 {
		s.lambda = s.air * p.dry / (f * p.stoich)
	}
	return s
}

// onset is the part of the suction that has set in at a lift x, o being where
// half of it has: 1/(1 + (o/x)^4). Four is judged: 6 % at o/2, 94 % at 2 o.
func onset(x, o float64) float64 {
	r := o / x
	r *= r
	return 1 / (1 + r*r)
}

// pilotSignal is the share of the depression that reaches the pilot jet: air in
// through the screw, mixture out through the idle hole and, growing from 5 % to
// 10 % of lift as the slide's edge passes it, an equal transfer hole. For a well
// that air rules, signal = 1/(1 + (air/out)²).
func (p *plant) pilotSignal(lift, signal float64) float64 {
	ratio := 1/signal - 1 // (air in over out)², screw at its usual setting
	ratio *= p.screw * p.screw
	t := math.Min(1, math.Max(0, (lift/p.bore-0.05)/0.05))
	ratio /= (1 + t) * (1 + t)
	return 1 / (1 + ratio)
}

// mainFlow returns kg/s through main jet and annulus in series, and through the
// well over them if air is bled in. lifting is the pressure (Pa) that raises
// fuel to the lip.
func (p *plant) mainFlow(suction, lifting float64, v *[nKnobs]float64, annulus float64) float64 {
	ring := v[kAnnulus] * annulus
	jet := p.mainJet.ca * v[kMain]
	if jet <= 0 || ring <= 0 || suction <= lifting {
		return 0
	}
	// the jet's coefficient follows its Reynolds number; once is enough, since it
	// moves by a few per cent at most
	flow := p.seriesFlow(jet, ring, suction, lifting)
	return p.seriesFlow(jet*p.coefficient(flow, p.mainJet.bore)/p.mainJet.cd, ring, suction, lifting)
}

func (p *plant) seriesFlow(jet, ring, suction, lifting float64) float64 {
	ca := 1 / math.Sqrt(1/(jet*jet)+1/(ring*ring))
	if p.bleed > 0 {
		w := well{jet: ca, bleed: p.bleed, outlet: p.outlet, rhoA: p.rhoAir, rhoF: p.rhoFuel, head: -lifting}
		if s, ok := w.solve(suction); ok {
			fuel, _, _ := w.in(s)
			return fuel
		}
		return 0
	}
	return ca * math.Sqrt(2*p.rhoFuel*(suction-lifting))
}

func (p *plant) jetFlow(ca, bore, cd, drive float64) float64 {
	flow := ca * math.Sqrt(2*p.rhoFuel*drive)
	return flow * p.coefficient(flow, bore) / cd
}

func (p *plant) coefficient(flow, bore float64) float64 {
	re := 4 * flow / (math.Pi * bore * p.rhoFuel * p.nu)
	return parallelBore(math.Min(math.Max(re, 10), 20000), p.longJet)
}

// annulusAt returns the area round the needle at a lift.
func (p *plant) annulusAt(lift, ring float64) float64 {
	d, j := p.needle.at(lift), p.needleJet*ring
	return math.Max(0, math.Pi/4*(j*j-d*d))
}
