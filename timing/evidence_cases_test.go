package timing_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"example.com/benchbook/timing"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// singles is every cause the documentation lists with one thing wrong, for an engine
// of two spindles or one shaft, 24 teeth to 48, with default priors and widths. The
// drive may hold an idler that neither cam goes by.
func (w *world) singles() map[string]*guess {
	all := map[string]*guess{}
	own := true
	for _, m := range w.e.Drive {
		own = own && m.To != timing.Camshaft
	}
	put := func(key string, prior float64, forms ...form) *guess {
		all[key] = &guess{prior: prior, forms: forms}
		return all[key]
	}
	put("nothing-wrong", 0.40, form{share: 1})
	teeth := func(key string, prior float64, by vector) {
		sum := 2 * (1 + 1.0/3 + 1.0/9)
		for n := 1; n <= 3; n++ {
			for _, sign := range [2]float64{1, -1} {
				k := sign * float64(n)
				put(fmt.Sprintf("%s:%+d", key, int(k)), prior/math.Pow(3, float64(n-1))/sum, form{share: 1, fixed: vector{}.plus(by, 15*k)}).tooth = true
			}
		}
	}
	if own {
		teeth("inlet-wheel", 0.08, one(0))
		teeth("exhaust-wheel", 0.08, one(1))
		teeth("whole-train", 0.02, both())
	} else {
		teeth("whole-train", 0.08, both())
	}
	if w.e.Keyways == 7 { // the pinion meshed anew to the nearest of 24 teeth: 1/168 of a turn
		for n := -3; n <= 3; n++ {
			if n != 0 {
				put(fmt.Sprintf("pinion-keyway:%+d", n), 0.03/6, form{share: 1, fixed: vector{}.plus(both(), float64(n)*360/168)})
			}
		}
	}
	slip := func(key string, by vector) {
		put(key, 0.06, form{share: 0.7, open: []loose{{sd: 10, opening: 1, by: by}}}, form{share: 0.3, far: own, open: []loose{{opening: 1, by: by}}})
	}
	wheel := func(c int) vector { return one(c).plus(vec(float64(fInWheel+c), 1), 1) }
	if !own {
		if w.e.InletFixing != timing.OnePiece {
			slip("camshaft-slip", wheel(0).plus(wheel(1), 1))
		}
	}
	if w.r.TDC != timing.TDCByStop {
		put("tdc-mark", 0.06, form{share: 1, open: []loose{{sd: 8, opening: 1, by: both().plus(vec(fStop, 1), 1)}}})
	}
	check := w.e.Check
	if w.r.Check != nil {
		check = *w.r.Check
	}
	for c, name := range []string{"inlet", "exhaust"} {
		l, o, k := &w.lobes[c], &w.lobes[1-c], float64(c)
		spec, fixing := w.e.Inlet, w.e.InletFixing
		if c == 1 {
			spec, fixing = w.e.Exhaust, w.e.ExhaustFixing
		}
		if own && fixing != timing.OnePiece {
			slip(name+"-slip", wheel(c))
		}
		steeps, shares := []float64{1, 1.7, 1 / 1.7}, []float64{0.4, 0.3, 0.3}
		if spec.OpeningRise > 0 {
			steeps, shares = steeps[:1], []float64{1}
		}
		var gaps, helds []form
		for i, steep := range steeps {
			events, atTDC := w.wider(c, steep)
			opening := 1 / l.rise[0] / steep
			gaps = append(gaps, form{share: shares[i], open: []loose{{sd: 0.25, opening: opening, by: events.plus(atTDC, 1).plus(vec(fInTop+k, -1, fInGap+k, 1), 1)}}})
			helds = append(helds, form{share: shares[i], fixed: vec(fInGap+k, -check.Clearance.Millimetres()), open: []loose{{sd: 0.4, sided: true, opening: opening, by: vector{}.plus(events.plus(atTDC, 1), -1)}}})
		}
		put(name+"-clearance", 0.04, gaps...)
		put(name+"-held", 0.015, helds...)
		put(name+"-cam", 0.02, form{share: 1, open: []loose{{sd: 20, by: longerBy(c)}, {sd: 5, by: one(c)}, {sd: 1, by: vec(fInTop+k, 1)}}})
		put(name+"-follower", 0.01, form{share: 1, open: []loose{{sd: 12, opening: 0.5, by: longerBy(c)}}})
		// a third of the nose's wear on the opening flank, a tenth on the closing one
		put(name+"-worn", 0.02, form{share: 1, open: []loose{{sd: 0.6, sided: true, by: vec(fInTop+k, -1, 2*k, -0.3/l.rise[0], 2*k+1, 0.1/l.rise[1])}}})
		rivals := 0.0
		for _, r := range w.e.Rivals {
			if int(r.Cam) == c {
				rivals++
			}
		}
		for _, r := range w.e.Rivals {
			if int(r.Cam) != c {
				continue
			}
			from, to := r.Lobe.Opens.FromTDC().Degrees(), r.Lobe.Closes.FromTDC().Degrees()
			if from > to { // the same side of TDC as the book's
				from, to = from-360*boolOf(c == 0), to+360*boolOf(c == 1)
			}
			if c == 1 && from > 0 {
				from, to = from-360, to-360
			}
			other := newLobe(from, to, r.Lobe.MaxLift.Value().Millimetres()+check.Clearance.Millimetres(), w.e.Check.Lift.Millimetres()+w.e.Check.Clearance.Millimetres())
			fixed := vec(2*k, l.opens-other.opens, 2*k+1, l.closes-other.closes, fInTop+k, other.top-l.top)
			if y := usual(other.top, other.half, other.middle()); y > 0.1 && y < 0.9*l.top {
				fixed[fInAtTDC+c] = l.advanceOf(c, y)
			}
			put(name+"-cam:"+r.Name, 0.03/rivals, form{share: 1, fixed: fixed})
		}
		if !own {
			continue
		}
		if fixing != timing.OnePiece {
			if spec.KeyAngle.Taken() { // late by twice the angle on the cam: by four times as much of crank
				by := simWrap(-4 * spec.KeyAngle.Value().Degrees())
				put(name+"-reversed", 0.005, form{share: 1, fixed: vector{}.plus(wheel(c), by), open: []loose{{sd: 5, by: one(c)}}})
			} else {
				put(name+"-reversed", 0.005, form{share: 1, far: true, open: []loose{{opening: 1, by: wheel(c)}}})
			}
		}
		put(name+"-wheel:turn", 0.005, form{share: 1}).turn = true
		if c == 0 {
			var fixed vector
			more := (o.closes - o.opens - l.closes + l.opens) / 2
			fixed = fixed.plus(longerBy(0), 2*more).plus(longerBy(1), -2*more)
			if l.given && o.given {
				fixed = fixed.plus(vec(fInTop, o.top-l.top, fExTop, l.top-o.top), 1)
			}
			if math.Abs(more) >= trifleOf || o.top != l.top {
				put("cams-exchanged", 0.01, form{share: 0.5, fixed: fixed, open: []loose{{sd: 10, by: wheel(0)}, {sd: 10, by: wheel(1)}}}, form{share: 0.5, fixed: fixed, far: true, open: []loose{{by: wheel(0)}, {by: wheel(1)}}})
			}
		}
	}
	a, b := w.lobes[0], w.lobes[1]
	put("disc-backwards", 0.02, form{share: 1, fixed: vec(fIO, 2*a.opens, fIC, 2*a.closes, fEO, 2*b.opens, fEC, 2*b.closes)})
	put("check-lift", 0.02)
	in, _ := w.wider(0, 1)
	ex, _ := w.wider(1, 1)
	all["check-lift"].forms = []form{{share: 1, open: []loose{{sd: 0.4, opening: 1 / a.rise[0], by: in.plus(ex, 1)}}}}
	return all
}

func cams(v float64) measure.Reading[units.CamAngle] {
	return measure.Of(units.CamDegrees(v), 1.5*units.CamDegree)
}

// everything is an engine of unlike cams of which all is known, and all that can be
// read from it; the readings fit nothing in particular, so that no cause is out.
func everything() (timing.Engine, timing.Readings, [4]float64) {
	e := engine()
	e.Check = timing.Check{Lift: 0.5 * units.Millimetre, Clearance: 0.1 * units.Millimetre}
	e.Inlet.MaxLift, e.Inlet.KeyAngle = mm(9, 0.05), cams(4)
	e.Exhaust = timing.Lobe{Opens: units.Before(units.BDC, 60), Closes: units.After(units.TDC, 20), MaxLift: mm(8.6, 0.08)}
	e.Keyways = 7
	e.Rivals = []timing.Rival{
		{Name: "sports", Cam: timing.Inlet, Lobe: timing.Lobe{Opens: units.Before(units.TDC, 30), Closes: units.After(units.BDC, 74), MaxLift: mm(9.4, 0.1)}},
		{Name: "trials", Cam: timing.Inlet, Lobe: timing.Lobe{Opens: units.Before(units.TDC, 18), Closes: units.After(units.BDC, 60), MaxLift: mm(8.7, 0.1)}},
		{Name: "sports", Cam: timing.Exhaust, Lobe: timing.Lobe{Opens: units.Before(units.BDC, 68), Closes: units.After(units.TDC, 24), MaxLift: mm(9, 0.1)}},
	}
	at := func(d units.Datum, after, u float64) measure.Position {
		return measure.At(units.After(d, units.CrankDegrees(after)), units.CrankDegrees(u))
	}
	r := timing.Readings{
		InletOpens: at(units.TDC, -20, 1), InletCloses: at(units.BDC, 71, 1.5), ExhaustOpens: at(units.BDC, -59, 1), ExhaustCloses: at(units.TDC, 24, 2),
		TDC: timing.TDCByMark, TDCLate: measure.Of(1.2*units.CrankDegree, 0.4*units.CrankDegree), Lag: measure.Of(0.6*units.CrankDegree, 0.4*units.CrankDegree),
		InletMaxLift: mm(8.8, 0.05), ExhaustMaxLift: mm(8.5, 0.06), InletLiftAtTDC: mm(1.7, 0.05), ExhaustLiftAtTDC: mm(1.5, 0.05),
		InletClearance: mm(0.2, 0.02), ExhaustClearance: mm(0.05, 0.05), InletOnWheel: cams(-2), ExhaustOnWheel: cams(0.5),
		MarksAlign: timing.No, Sequence: timing.Yes,
	}
	return e, r, [4]float64{-25, 245, -240, 20}
}

func TestEvidenceOfEverySingleFault(t *testing.T) {
	// What is misread wildly leaves open amounts to be judged by the reading as it
	// stands, so that here nothing is: see TestWildMisreading.
	all := timing.Options{SingleFaults: true, Misread: timing.Misread{Wild: -1}}
	for _, c := range []struct {
		name   string
		change func(e *timing.Engine, r *timing.Readings, at *[4]float64)
	}{
		{"all of it", func(*timing.Engine, *timing.Readings, *[4]float64) {}},
		{"marks in line, valves out of order", func(_ *timing.Engine, r *timing.Readings, _ *[4]float64) {
			r.MarksAlign, r.Sequence, r.TDC = timing.Yes, timing.No, timing.TDCByDial
			r.TDCLate, r.Lag = measure.Reading[units.CrankAngle]{}, measure.Reading[units.CrankAngle]{}
		}},
		{"TDC by a stop, cams cut with their wheels", func(e *timing.Engine, r *timing.Readings, _ *[4]float64) {
			r.TDC, r.MarksAlign, r.Sequence = timing.TDCByStop, timing.NotLooked, timing.NotLooked
			e.InletFixing, e.ExhaustFixing = timing.OnePiece, timing.OnePiece
		}},
		{"events alone, by eye", func(e *timing.Engine, r *timing.Readings, _ *[4]float64) {
			*r = timing.Readings{InletOpens: r.InletOpens, InletCloses: r.InletCloses, ExhaustOpens: r.ExhaustOpens, ExhaustCloses: r.ExhaustCloses}
			e.Inlet.KeyAngle = measure.Reading[units.CamAngle]{}
		}},
		{"one event", func(e *timing.Engine, r *timing.Readings, _ *[4]float64) {
			*r = timing.Readings{ExhaustOpens: r.ExhaustOpens}
			e.Inlet.KeyAngle = measure.Reading[units.CamAngle]{}
		}},
		{"one event and a lift", func(_ *timing.Engine, r *timing.Readings, _ *[4]float64) {
			*r = timing.Readings{InletCloses: r.InletCloses, ExhaustLiftAtTDC: r.ExhaustLiftAtTDC, ExhaustMaxLift: r.ExhaustMaxLift}
		}},
		{"lifts at the follower, slopes known, read at another lift", func(e *timing.Engine, r *timing.Readings, _ *[4]float64) {
			e.Check = timing.Check{Lift: 0.4 * units.Millimetre, At: timing.AtFollower, Clearance: 0.1 * units.Millimetre}
			e.Rocker = measure.Of(units.Value(1.3), units.Value(0.01))
			e.Inlet.MaxLift, e.Exhaust.MaxLift, e.Rivals = mm(7, 0.05), mm(6.8, 0.08), nil
			e.Inlet.OpeningRise, e.Exhaust.OpeningRise, e.Exhaust.ClosingRise = 0.02*units.Millimetre, 0.03*units.Millimetre, 0.024*units.Millimetre
			r.InletMaxLift, r.ExhaustMaxLift = mm(8.9, 0.05), mm(8.9, 0.06)
			r.Check = &timing.Check{Lift: 0.5 * units.Millimetre, Clearance: 0.15 * units.Millimetre}
		}},
		{"read at the follower", func(e *timing.Engine, r *timing.Readings, _ *[4]float64) {
			e.Rocker = measure.Of(units.Value(1.2), units.Value(0.01))
			r.Check = &timing.Check{Lift: 0.6 * units.Millimetre, At: timing.AtFollower, Clearance: 0.1 * units.Millimetre}
			r.InletMaxLift, r.ExhaustMaxLift = mm(7.5, 0.05), mm(7.2, 0.06)
			e.Rivals = nil
		}},
		{"one shaft", func(e *timing.Engine, r *timing.Readings, _ *[4]float64) {
			e.Drive = timing.OneCamwheel(24, 48)
			r.Sequence = timing.NotLooked
		}},
		{"one shaft, events alone", func(e *timing.Engine, r *timing.Readings, _ *[4]float64) {
			e.Drive = timing.OneCamwheel(24, 48)
			*r = timing.Readings{InletOpens: r.InletOpens, ExhaustCloses: r.ExhaustCloses, ExhaustMaxLift: r.ExhaustMaxLift}
			e.Inlet.MaxLift = measure.Reading[units.Length]{}
			e.Rivals = nil
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			e, r, at := everything()
			c.change(&e, &r, &at)
			w := newWorld(e, r, at)
			w.compare(t, all, w.posterior(w.singles(), 0.02, 0))
		})
	}
}

// A wild misreading, where nothing open has to be judged: teeth, keyways, cams of
// another pattern, exchanged, a whole turn out, the disc.
func TestWildMisreading(t *testing.T) {
	e, r, at := everything()
	w := newWorld(e, r, at)
	all := w.singles()
	for _, name := range []string{"inlet", "exhaust"} {
		for _, k := range []string{"slip", "clearance", "held", "follower", "worn"} {
			delete(all, name+"-"+k)
		}
	}
	delete(all, "exhaust-reversed")
	delete(all, "tdc-mark")
	delete(all, "check-lift")
	delete(all, "inlet-reversed")
	w.compare(t, timing.Options{
		SingleFaults: true, Misread: timing.Misread{Wild: 0.35},
		Priors: timing.Priors{Slip: -1, Clearance: -1, Held: -1, Follower: -1, Worn: -1, Reversed: -1, TDC: -1, CheckLift: -1},
	}, w.posterior(all, 0.02, 0.35))
}

// Two things wrong at once: each as if by itself, so that the odds against "nothing
// wrong" multiply. Pairs with two open amounts are judged one at a time by the
// library; the exact posterior of the simulation holds those.
func TestEvidenceOfPairs(t *testing.T) {
	off := timing.Priors{CheckLift: -1, OtherCam: -1, UnknownCam: -1, Exchanged: -1, WholeTurn: -1, Reversed: -1, Follower: -1, Held: -1, Worn: -1, Disc: -1, Slip: -1, TDC: -1, Clearance: -1, Keyway: -1}
	for _, c := range []struct {
		name string
		with func(e *timing.Engine, p *timing.Priors)
	}{
		{"teeth alone", func(*timing.Engine, *timing.Priors) {}},
		{"teeth and keyways", func(_ *timing.Engine, p *timing.Priors) { p.Keyway = 0 }},
		{"teeth and clearances", func(_ *timing.Engine, p *timing.Priors) { p.Clearance = 0 }},
		{"teeth and a slip", func(e *timing.Engine, p *timing.Priors) { p.Slip, e.InletFixing = 0, timing.OnePiece }},
		{"teeth, keyways and the mark", func(_ *timing.Engine, p *timing.Priors) { p.TDC, p.Keyway = 0, 0 }},
		{"one shaft, keyways and a slip", func(e *timing.Engine, p *timing.Priors) {
			e.Drive = timing.OneCamwheel(24, 48)
			p.Slip, p.Keyway = 0, 0
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			e, r, at := everything()
			e.Inlet.KeyAngle, e.Rivals = measure.Reading[units.CamAngle]{}, nil
			// read so roughly that no pair is out
			rough := func(p measure.Position) measure.Position { return measure.At(p.Value(), 9*units.CrankDegree) }
			r = timing.Readings{
				InletOpens: rough(r.InletOpens), InletCloses: rough(r.InletCloses), ExhaustOpens: rough(r.ExhaustOpens), ExhaustCloses: rough(r.ExhaustCloses),
				MarksAlign: timing.Yes,
			}
			opt := timing.Options{Priors: off, Misread: timing.Misread{Wild: -1}}
			c.with(&e, &opt.Priors)
			w := newWorld(e, r, at)
			list := w.singles()
			for k := range list {
				if !kept(k, &opt.Priors) {
					delete(list, k)
				}
			}
			w.compare(t, opt, w.posterior(w.pairs(list), 0.02, 0))
		})
	}
}

// kept reports whether a cause is wanted in TestEvidenceOfPairs.
func kept(key string, p *timing.Priors) bool {
	switch {
	case key == "nothing-wrong", strings.Contains(key, "-wheel:+"), strings.Contains(key, "-wheel:-"), strings.HasPrefix(key, "whole-train"):
		return true
	case strings.HasPrefix(key, "pinion-keyway"):
		return p.Keyway == 0
	case strings.HasSuffix(key, "-clearance"):
		return p.Clearance == 0
	case strings.HasSuffix(key, "-slip"):
		return p.Slip == 0
	case key == "tdc-mark":
		return p.TDC == 0
	}
	return false
}

// pairs adds the pairs that Options.SingleFaults names to single causes.
func (w *world) pairs(list map[string]*guess) map[string]*guess {
	all := map[string]*guess{}
	own := list["inlet-wheel:+1"] != nil
	// teeth, keyways, slips; clearances; the mark
	rank := func(k string) int {
		for i, part := range []string{"inlet-wheel", "exhaust-wheel", "whole-train", "pinion-keyway", "inlet-slip", "exhaust-slip", "camshaft-slip", "tdc-mark", "inlet-clearance", "exhaust-clearance"} {
			if strings.HasPrefix(k, part) {
				return i
			}
		}
		return -1
	}
	for a, x := range list {
		all[a] = x
		for b, y := range list {
			i, j := rank(a), rank(b)
			if i < 0 || j <= i || i >= 7 { // in order, each pair once; the first moves cams
				continue
			}
			switch {
			case j <= 2 && !(i == 0 && j == 1 && a[len(a)-2:] != b[len(b)-2:]):
				continue // the train is both wheels alike, and goes with neither
			case j == 7 && (i == 2 || i == 3 || i == 6 || !own):
				continue // both cams moved alike seem a wrong mark, or hide one
			}
			g := &guess{prior: x.prior * y.prior / 0.40, tooth: x.tooth || y.tooth}
			for k := range x.forms {
				for l := range y.forms {
					f, h := &x.forms[k], &y.forms[l]
					g.forms = append(g.forms, form{share: f.share * h.share, fixed: f.fixed.plus(h.fixed, 1), open: append(append([]loose(nil), f.open...), h.open...), far: f.far || h.far, of: [2]*form{f, h}})
				}
			}
			g.parts = [2]string{a, b}
			all[a+"/"+b] = g
		}
	}
	return all
}
