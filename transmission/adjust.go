package transmission

import (
	"math"
	"math/rand/v2"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Input is a clutch on the bench: how it is made, how it stands, what was read
// and what it does.
type Input struct {
	Clutch  Clutch
	Setting Setting
	Found   Condition
	Signs   Signs
}

// Options tunes a verdict. The zero value is ready to use.
type Options struct {
	Draws int    // for the chance that the window is open, 100 to 1 000 000; default 2000
	Seed  uint64 // of those draws; default 0; the same seed gives the same answer

	// Priors overrides the weight of causes before the readings, by key, above
	// zero, on the scale of the defaults, which add up to about 140:
	// [KnownCauses] lists them. measure.SomethingElse is a key too.
	Priors map[string]float64

	// TwoAtOnce is how often two listed causes are at work at once, as part of all
	// clutches looked at, before any reading: 0.001 to 0.5; 0 takes 0.1, common
	// practice, no source.
	TwoAtOnce  float64
	OneAtATime bool // weigh causes one at a time only
}

// Adjustment is the verdict on adjusting.
type Adjustment struct {
	Window Window                       `json:"window"`
	Low    measure.Reading[units.Angle] `json:"low"` // the window's ends and width with their uncertainty
	High   measure.Reading[units.Angle] `json:"high"`
	Width  measure.Reading[units.Angle] `json:"width"`

	ChanceOpen     float64 `json:"chance_open"`     // that some setting both holds and frees
	ChanceWorkable float64 `json:"chance_workable"` // that the window is as wide as wanted

	Pull    Pull     `json:"pull"`
	Budget  *Budget  `json:"budget,omitempty"`  // at the setting; nil if the setting was not read
	Repairs []Repair `json:"repairs,omitempty"` // of a window narrower than wanted, singly, best first
	Pairs   []Repair `json:"pairs,omitempty"`   // in twos that open it, if no single one does, best first
	Region  Region   `json:"region"`            // of play adjuster and nuts together
	Advice  Advice   `json:"advice"`

	Basis refdata.Basis `json:"basis"`
}

// Pull is the cable pull from the lever's own figures, and as measured.
type Pull struct {
	FromLever measure.Reading[units.Length] `json:"from_lever"`
	Measured  measure.Reading[units.Length] `json:"measured"`
	Used      units.Length                  `json:"used"`     // the measured one if there is one
	Disagree  bool                          `json:"disagree"` // by more than twice the uncertainty of the difference
	Text      string                        `json:"text,omitempty"`
}

// Adjust returns the window with its uncertainty, both ledgers where it stands,
// the repairs that would open it, and what to turn. The uncertainty of the ends
// is first order (measure.Propagate); the chances are counted over draws in
// which every reading is normal and no one-sided figure goes below zero.
// Errors: every figure that is missing or outside its range, as fault.Fault.
func Adjust(in Input, opt Options) (Adjustment, error) {
	s, n, err := in.resolve(opt)
	if err != nil {
		return Adjustment{}, err
	}
	a := Adjustment{Window: s.window(&s.v), Pull: in.pull(&s)}
	var l fault.List
	a.Low = s.reading(&l, func(b *bounds) float64 { n, _ := b.low(); return n })
	a.High = s.reading(&l, func(b *bounds) float64 { n, _ := b.high(); return n })
	a.Width = s.reading(&l, (*bounds).width)
	a.ChanceOpen, a.ChanceWorkable = s.chances(opt)
	if n.taken {
		b := s.budget(&s.v, n.x)
		a.Budget = &b
	}
	if a.Window.Width.Turns() < s.leastWidth {
		a.Repairs, a.Pairs = s.repairs()
	}
	a.Region = s.region()
	a.Advice = s.advise(&a, n)
	a.Basis = in.basis(&s)
	return a, l.Err()
}

func (in *Input) resolve(opt Options) (state, place, error) {
	var l fault.List
	s, err := in.Clutch.resolve(&in.Found)
	for _, f := range fault.Faults(err) {
		if len(f.Path) < 6 || f.Path[:6] != "found." {
			f.Path = "clutch." + f.Path
		}
		l.Add(f)
	}
	n := in.Setting.place(&s, &l)
	if opt.TwoAtOnce != 0 {
		need(&l, "options.two_at_once", opt.TwoAtOnce, "", 0.001, 0.5)
	}
	if opt.Draws != 0 && (opt.Draws < 100 || opt.Draws > 1e6) {
		l.Add(outside("options.draws", float64(opt.Draws), "", 100, 1e6))
	}
	return s, n, l.Err()
}

// reading returns a figure of the window with its uncertainty.
func (s *state) reading(l *fault.List, of func(*bounds) float64) measure.Reading[units.Angle] {
	in := make([]measure.Input, parts)
	for p := range in {
		in[p] = measure.Input{X: s.v[p], U: s.u[p]}
	}
	r, err := measure.Propagate[units.Angle](func(x []float64) float64 {
		v := s.v
		copy(v[:], x)
		b := s.bounds(&v)
		return units.Turns(of(&b)).SI()
	}, in...)
	l.Under("window", err)
	return r
}

// chances counts how often the window is open, and as wide as wanted, over
// draws of every reading.
func (s *state) chances(opt Options) (open, workable float64) {
	n := opt.Draws
	if n == 0 {
		n = 2000
	}
	rng := rand.New(rand.NewPCG(opt.Seed, 0x636c75746368))
	for range n {
		v := s.v
		for p := range parts {
			if s.u[p] > 0 {
				// a draw outside what the figure can be stands at its limit
				v[p] = math.Min(math.Max(v[p]+s.u[p]*rng.NormFloat64(), rules[p].low), rules[p].high)
			}
		}
		b := s.bounds(&v)
		switch w := b.width(); {
		case w >= s.leastWidth:
			workable++
			open++
		case w >= 0:
			open++
		}
	}
	return open / float64(n), workable / float64(n)
}

func (in *Input) pull(s *state) Pull {
	from, _ := in.Clutch.Lever.Pull() // resolve has told its faults
	p := Pull{FromLever: from, Measured: in.Found.CablePull, Used: units.Millimetres(s.v[cablePull])}
	if !p.FromLever.Taken() || !p.Measured.Taken() {
		return p
	}
	d := p.Measured.Value() - p.FromLever.Value()
	u := math.Hypot(p.Measured.U().Millimetres(), p.FromLever.U().Millimetres())
	if p.Disagree = d.Abs().Millimetres() > 2*u; !p.Disagree {
		return p
	}
	p.Text = "the cable moves " + d.Abs().In(units.Millimetre, 1) + " less than the lever's radius and sweep give: worn pivot or nipple, an outer that gives, or another lever"
	if d > 0 {
		p.Text = "the cable moves " + d.In(units.Millimetre, 1) + " more than the lever's radius and sweep give: measure both again, or this is another lever"
	}
	return p
}
