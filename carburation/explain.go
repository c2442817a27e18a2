package carburation

import (
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
)

// Explained is one operating point with what moves it and how sure it is.
type Explained struct {
	Operating
	LambdaBand    Band[units.Ratio] `json:"lambda_band"`
	RelativeU     float64           `json:"relative_u"` // standard uncertainty of lambda, as a share
	Sensitivities []Sensitivity     `json:"sensitivities"`
	Basis         refdata.Basis     `json:"basis"`
}

// Sensitivity is what one step of a part does to lambda.
type Sensitivity struct {
	Key    string      `json:"key"`    // "main-jet"
	Step   string      `json:"step"`   // "5 % more flow"
	Effect units.Ratio `json:"effect"` // on lambda, as a share: -0.03 is 3 % richer
}

// Explain returns the flow at a lift and speed with the effect of one usual step
// of every part and the band of lambda. The band is that of the model's figures,
// to first order in their logarithms; that the engine is no steady flow is not
// in it. Errors are those of At.
func (m *Model) Explain(lift units.Ratio, speed units.RotationalSpeed) (Explained, error) {
	if err := m.inside(lift, speed); err != nil {
		return Explained{}, err
	}
	x, n := lift.Value(), speed.RevolutionsPerSecond()
	e := Explained{Operating: m.operating(x, n), Basis: m.basis}
	if !(e.Lambda > 0) {
		return e, nil
	}
	if sd, ok := m.relative(x, n); ok {
		e.RelativeU = sd
		e.LambdaBand = lnBand[units.Ratio](math.Log(e.Lambda.Value()), sd)
	}
	for _, s := range m.steps() {
		p := m.plant
		s.change(&p)
		v := m.value
		if st := p.at(x*p.bore, n, &v); st.lambda > 0 {
			e.Sensitivities = append(e.Sensitivities, Sensitivity{Key: s.key, Step: s.text, Effect: units.Value(st.lambda/e.Lambda.Value() - 1)})
		}
	}
	return e, nil
}

// relative returns the standard uncertainty of ln lambda.
func (m *Model) relative(lift, speed float64) (float64, bool) {
	g, ok := m.gradient(lift, speed, &m.knobs)
	if !ok {
		return 0, false
	}
	return math.Sqrt(math.Max(0, (*square)(&m.cov).quadratic(&g))), true
}

// partStep is a usual step of a part.
type partStep struct {
	key, text string
	change    func(*plant)
}

func (m *Model) steps() []partStep {
	pitch := m.setup.Carburettor.Needle.pitch()
	return []partStep{
		{"main-jet", "5 % more flow", func(p *plant) { p.mainJet = p.mainJet.times(1.05) }},
		{"needle", "one groove higher", func(p *plant) { p.needle.raised += pitch }},
		{"needle-jet", "0.02 mm larger, by wear or choice", func(p *plant) { p.needleJet += 0.02e-3 }},
		{"cutaway", "half a number (1/32 in) higher", func(p *plant) { p.cutaway += 25.4e-3 / 32 }},
		{"pilot-jet", "10 % more flow", func(p *plant) { p.pilotJet = p.pilotJet.times(1.1) }},
		{"pilot-screw", "half a turn out", func(p *plant) {
			if m.setup.Carburettor.Screw.Kind == FuelScrew {
				p.mixtureScrew += 0.5 / usualTurns
			} else {
				p.screw += 0.5 / usualTurns
			}
		}},
		{"fuel-level", "1 mm higher", func(p *plant) { p.level -= 1e-3 }},
	}
}
