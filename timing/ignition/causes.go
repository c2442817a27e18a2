package ignition

import (
	"fmt"
	"math"
	"strconv"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// situation is an input turned into figures: degrees of the crank, early positive.
type situation struct {
	in       Input
	opt      Options
	full     float64 // wanted, degrees after TDC
	travel   float64 // range at the crank
	uFull    float64 // of the figure for full advance
	uRetard  float64 // of the figure for full retard
	uAdv     float64 // of the readings themselves
	uRet     float64
	uGap     float64
	movable  bool
	halfTurn HalfTurn
	perCycle bool // one spark a cycle: the stroke matters
	tdc      float64
	setting  float64
	gapRate  float64 // crank degrees per mm
	gapRateU float64
}

// normal is a Gaussian with what every cause shares: the readings' own error, the
// error of TDC, how well a good setting sits, and a gap set as it should be.
func (s *situation) normal(adv, ret, gapSD float64, free ...measure.Effect) measure.Gaussian {
	return measure.Gaussian{
		Mean: []float64{adv, ret, 0},
		Own:  []float64{math.Hypot(s.uAdv, s.uFull), math.Hypot(s.uRet, s.uRetard), math.Hypot(s.uGap, gapSD)},
		Shared: []measure.Effect{
			{Name: "TDC", SD: s.tdc, Column: []float64{1, 1, 0}},
			{Name: "setting", SD: s.setting, Column: []float64{1, 1, 0}},
		},
		Free: free,
	}
}

func (s *situation) fixed(adv, ret, overlap float64) []branch {
	return []branch{{weight: 1, normal: s.normal(adv, ret, gapSetting), overlap: overlap}}
}

func both(name string, sd float64) measure.Effect {
	return measure.Effect{Name: name, SD: sd, Column: []float64{1, 1, 0}}
}

// causes generates the list from how the ignition is made.
func (s *situation) causes() (list []cause, other cause) {
	add := func(key, text string, prior, shift float64, l looks, b ...branch) {
		if p, ok := s.opt.Priors[key]; ok {
			prior = p
		}
		list = append(list, cause{key, text, prior, b, shift, l})
	}
	open := math.NaN()
	plain := looks{witness: 0.1, rotation: 0.02, mark: 0.1}

	add(measure.NothingWrong, "timed as it should be", 0.40, 0, plain, s.fixed(0, 0, 0)...)

	if h := s.halfTurn; !h.Harmless {
		overlap, shift := 0.0, h.Shift.Degrees()
		text := "ignition shaft half a turn out: the spark falls " + strconv.FormatFloat(math.Abs(shift), 'f', -1, 64) + "° of the crank away"
		if h.OnOverlap {
			overlap, shift = 1, 0
			text = "ignition shaft half a turn out: right on the disc, but the spark falls on overlap"
		}
		add("half-turn", text, 0.08, shift, plain, s.fixed(shift, shift, overlap)...)
	}

	anyStroke := 0.0
	if s.perCycle {
		anyStroke = 0.5
	}
	slip := plain
	slip.witness = 0.8
	add("slipped", "drive slipped on its taper or coupling", 0.12, open, slip,
		branch{weight: 1 - farSlip, normal: s.normal(0, 0, gapSetting, both("slip", nearSlip))},
		branch{weight: farSlip, normal: s.normal(0, 0, gapSetting), uniform: true, overlap: anyStroke})

	if s.movable {
		r := s.travel
		add("timed-on-retard", "the full-advance figure was set with the control on retard: too early by the whole range", 0.08, r, plain, s.fixed(r, r, 0)...)
		add("timed-on-advance", "the retarded figure was set with the control on advance: too late by the whole range", 0.03, -r, plain, s.fixed(-r, -r, 0)...)
		turning := plain
		turning.rotation = 0.97
		// Set once with the control on advance, or once on retard; either way it
		// then moves the wrong way.
		add("wrong-rotation", "made for the other rotation: the control works backwards", 0.04, open, turning,
			branch{weight: 0.5, normal: s.normal(0, 2*r, gapSetting)},
			branch{weight: 0.5, normal: s.normal(-2*r, 0, gapSetting)})
		add("control-short", "control or automatic advance sticks short of full advance", 0.05, open, plain,
			branch{weight: 1, normal: s.normal(-r/2, 0, gapSetting, measure.Effect{Name: "short", SD: r / math.Sqrt(12), Column: []float64{1, 0, 0}})})
	}

	if ratio := s.in.Spec.Drive.filled().Ratio.Float(); ratio != 1 {
		before := -s.full
		up, down := before/ratio-before, before*ratio-before
		add("crank-as-shaft", "the crank figure was set in degrees of the ignition shaft", 0.03, up, plain, s.fixed(up, up, 0)...)
		add("shaft-as-crank", "a figure for the ignition shaft was set in degrees of the crank", 0.02, down, plain, s.fixed(down, down, 0)...)
	}

	k := s.gapRate
	wide := gapWrong
	if g := s.in.Read.Gap; g.Taken() && s.in.Spec.Gap.Taken() {
		wide = math.Abs((g.Value() - s.in.Spec.Gap.Value()).Millimetres())
	}
	gapCause := s.normal(0, 0, 0.001,
		measure.Effect{Name: "gap", SD: gapWrong, Column: []float64{k, k, 1}},
		measure.Effect{Name: "rate", SD: s.gapRateU * wide, Column: []float64{1, 1, 0}})
	add("gap", "points gap wrong: wide opens early, close opens late", 0.10, open, plain, branch{weight: 1, normal: gapCause})

	if !s.in.Read.TDCByStop {
		mark := plain
		mark.mark = 0.95
		add("tdc-mark", "TDC mark or pointer wrong", 0.05, open, mark, branch{weight: 1, normal: s.normal(0, 0, gapSetting, both("mark", tdcMark))})
	}

	s.teeth(add, plain)

	other = cause{
		text: "something else", prior: 0.02, shift: open, looks: looks{0.3, 0.2, 0.3},
		branches: []branch{{weight: 1, overlap: anyStroke / 2, normal: s.normal(0, 0, elsewhereGap,
			measure.Effect{SD: elsewhere, Column: []float64{1, 0, 0}}, measure.Effect{SD: elsewhere, Column: []float64{0, 1, 0}})}},
	}
	if p, ok := s.opt.Priors[measure.SomethingElse]; ok {
		other.prior = p
	}
	return list, other
}

// teeth adds one and two teeth either way for each size of tooth in the train, if
// one was given.
func (s *situation) teeth(add func(string, string, float64, float64, looks, ...branch), l looks) {
	seen := map[float64]bool{}
	for mesh := range s.in.Spec.Train.Len() {
		w, err := s.in.Spec.Train.ToothWorth(mesh)
		if err != nil || seen[w.Crank.Degrees()] {
			continue
		}
		seen[w.Crank.Degrees()] = true
		for _, out := range [...]struct {
			n     int
			text  string
			prior float64
		}{{-2, "2 teeth late", 0.01}, {-1, "1 tooth late", 0.03}, {1, "1 tooth early", 0.03}, {2, "2 teeth early", 0.01}} {
			by := float64(out.n) * w.Crank.Degrees()
			add(fmt.Sprintf("tooth-%d:%+d", mesh+1, out.n), fmt.Sprintf("ignition drive %s at mesh %d", out.text, mesh+1), out.prior, by, l, s.fixed(by, by, 0)...)
		}
	}
}

// checks are the readings and looks that could come next.
func (s *situation) checks(list []cause, d measure.Data) []measure.Check {
	var out []measure.Check
	figure := func(i int, key, text string, minutes float64) {
		if d[i].Taken {
			return
		}
		c := measure.Check{Key: key, Text: text, Work: units.MinutesOfTime(minutes), Outlooks: map[string]measure.Outlook{}}
		for _, q := range list {
			c.Outlooks[q.key] = q.outlook(i, d)
		}
		out = append(out, c)
	}
	look := func(key, text string, minutes float64, p func(cause) float64) {
		c := measure.Check{Key: key, Text: text, Work: units.MinutesOfTime(minutes), Outlooks: map[string]measure.Outlook{}}
		for _, q := range list {
			x := p(q)
			c.Outlooks[q.key] = measure.Outlook{Chances: []float64{x, 1 - x}}
		}
		out = append(out, c)
	}
	figure(advanced, "advanced", "where the points open on full advance", 10)
	if s.movable {
		figure(retarded, "retarded", "where the points open on full retard", 5)
	}
	if s.in.Spec.Gap.Taken() {
		figure(gap, "gap", "the points gap, by feeler", 3)
	}
	if s.perCycle && !d[stroke].Taken {
		look("stroke", "on which stroke the spark falls: feel for compression at the plug hole", 3, func(q cause) float64 {
			o := q.likeliest(d).overlap
			return o*(1-strokeMissed) + (1-o)*strokeMissed
		})
	}
	look("taper", "witness marks and key of the drive on its taper", 30, func(q cause) float64 { return q.looks.witness })
	if s.movable {
		look("rotation", "the sense of rotation the instrument is made for against the way it turns", 5, func(q cause) float64 { return q.looks.rotation })
	}
	if !s.in.Read.TDCByStop {
		look("stop", "true TDC by a positive stop", 15, func(q cause) float64 { return q.looks.mark })
	}
	return out
}
