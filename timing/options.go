package timing

import (
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Options change what Diagnose takes for granted. The zero value is usable.
type Options struct {
	Priors  Priors  `json:"priors"`
	Widths  Widths  `json:"widths"`
	Misread Misread `json:"misread"`
	// Trifle is the shift of an opening below which a fault counts as none:
	// default 3° crank, at most 30°.
	Trifle units.CrankAngle `json:"trifle"`
	// Teeth is the largest number of teeth out that is listed: default 3, at
	// most 12.
	Teeth int `json:"teeth"`
	// SingleFaults leaves out two faults at once. By default these pairs are
	// weighed, as if each fault had come about by itself: two that move cams
	// (teeth, keyways, slips), and one that moves cams with a clearance or, if it
	// moves one cam only, with a wrong TDC mark.
	SingleFaults bool `json:"single_faults"`
	// Near is how close to its specification a cam must come for a remedy to be
	// as good as any: default 2° crank.
	Near units.CrankAngle `json:"near"`
	// Work is what each job takes.
	Work Work `json:"work"`
}

// Priors are weights before the readings; only their ratios matter. Zero means
// the default, and a weight below zero leaves the cause out. The defaults are
// common practice, no source.
type Priors struct {
	Nothing float64 `json:"nothing"` // nothing wrong: default 0.40
	// WholeTrain is the whole train some teeth out, all numbers together: default
	// 0.08. Where no one mesh moves both cams, a quarter of it.
	WholeTrain float64 `json:"whole_train"`
	Wheel      float64 `json:"wheel"`       // one camwheel some teeth out, each, all numbers together: default 0.08
	Slip       float64 `json:"slip"`        // a cam turned on its wheel, each: default 0.06
	Keyway     float64 `json:"keyway"`      // pinion on another keyway, all together: default 0.03
	TDC        float64 `json:"tdc"`         // mark or pointer wrong; not weighed when found by stop: default 0.06
	Clearance  float64 `json:"clearance"`   // clearance other than supposed, each cam: default 0.04
	CheckLift  float64 `json:"check_lift"`  // events found at another lift than said: default 0.02
	OtherCam   float64 `json:"other_cam"`   // a rival cam fitted, each place, all rivals together: default 0.03
	UnknownCam float64 `json:"unknown_cam"` // a cam that is no rival fitted, each place: default 0.02
	Exchanged  float64 `json:"exchanged"`   // inlet and exhaust cams exchanged: default 0.01
	Disc       float64 `json:"disc"`        // disc read the wrong way round: default 0.02
	WholeTurn  float64 `json:"whole_turn"`  // one cam a whole crank turn out, each: default 0.005
	Reversed   float64 `json:"reversed"`    // a cam on back to front, each: default 0.005
	Follower   float64 `json:"follower"`    // a follower of another shape, each: default 0.01
	Held       float64 `json:"held"`        // a valve held off its seat by lifter or tight clearance, each: default 0.015
	Worn       float64 `json:"worn"`        // a lobe or tappet worn, each: default 0.02
	Else       float64 `json:"else"`        // something else: default 0.02
}

// Widths are standard deviations of errors and of amounts a cause leaves open.
// Zero means the default.
type Widths struct {
	TDCByEye  units.CrankAngle `json:"tdc_by_eye"`  // of every reading alike: default 1.5°
	TDCByStop units.CrankAngle `json:"tdc_by_stop"` // default 0.3°
	TDCByDial units.CrankAngle `json:"tdc_by_dial"` // default 1°
	TDCByMark units.CrankAngle `json:"tdc_by_mark"` // of a mark that is right: default 1.5°
	TDCWrong  units.CrankAngle `json:"tdc_wrong"`   // of a mark or pointer that is wrong: default 8°
	// Duration is the scatter of each cam's duration from clearance, gauge zero
	// and making, with nothing wrong: default 2°.
	Duration units.CrankAngle `json:"duration"`
	// Slip is the narrow part of a slip, near home: default 10°.
	Slip units.CrankAngle `json:"slip"`
	// SlipAnywhere is the share of slips that may be anywhere on the circle:
	// default 0.3.
	SlipAnywhere float64      `json:"slip_anywhere"`
	Clearance    units.Length `json:"clearance"` // of a clearance that is wrong: default 0.25 mm
	Lift         units.Length `json:"lift"`      // of a check lift that is wrong: default 0.4 mm
	// MaxLift is the scatter of greatest lift from making and honest wear, with
	// nothing wrong: default 0.1 mm.
	MaxLift units.Length `json:"max_lift"`
	// UnknownCam is the spread of duration of a cam that is none of the rivals:
	// default 20°.
	UnknownCam units.CrankAngle `json:"unknown_cam"`
	// Follower is the spread of duration by a follower of another shape: default
	// 12°.
	Follower units.CrankAngle `json:"follower"`
	Held     units.Length     `json:"held"` // of how far a valve is held up: default 0.4 mm
	Worn     units.Length     `json:"worn"` // of wear at the nose of a lobe: default 0.6 mm
	// Else is the spread of each reading when the cause is not listed: default
	// 30°, in one half of such cases; in the other anywhere on the circle.
	Else units.CrankAngle `json:"else"`
}

// Misread is how often a single event is read wrongly off the disc, and by what.
type Misread struct {
	// Chance is that of any one of the events of an engine, not of each:
	// default 0.02; below zero none is ever misread.
	Chance float64 `json:"chance"`
	// By is the usual mistake, a decade of the disc either way: default 10°.
	By units.CrankAngle `json:"by"`
	// Wild is the share of misreadings that are not by the usual amount but
	// spread by 30°: default 0.2; below zero none.
	Wild float64 `json:"wild"`
}

// Work is how long each job takes. Zero means the default; the defaults are
// common practice, no source.
type Work struct {
	Tooth   units.Time `json:"tooth"`    // cover off, wheel out, meshed anew: default 1 h
	Keyway  units.Time `json:"keyway"`   // pinion off and on another key: default 1.5 h
	Vernier units.Time `json:"vernier"`  // pegs or bolts to other holes: default 1 h
	Shim    units.Time `json:"shim"`     // a shim behind a helical wheel: default 1 h
	RePress units.Time `json:"re_press"` // cam pressed off its wheel and on again: default 3 h
}

// pick returns x, or the default for zero; below zero is none.
func pick(x, standard float64) float64 {
	switch {
	case x == 0:
		return standard
	case x < 0:
		return 0
	}
	return x
}

// filled returns the options with every default put in.
func (o Options) filled() Options {
	p, w, m, k := &o.Priors, &o.Widths, &o.Misread, &o.Work
	for _, x := range []struct {
		at       *float64
		standard float64
	}{
		{&p.Nothing, 0.40}, {&p.WholeTrain, 0.08}, {&p.Wheel, 0.08}, {&p.Slip, 0.06}, {&p.Keyway, 0.03}, {&p.TDC, 0.06},
		{&p.Clearance, 0.04}, {&p.CheckLift, 0.02}, {&p.OtherCam, 0.03}, {&p.UnknownCam, 0.02}, {&p.Exchanged, 0.01}, {&p.Disc, 0.02},
		{&p.WholeTurn, 0.005}, {&p.Reversed, 0.005}, {&p.Follower, 0.01}, {&p.Held, 0.015}, {&p.Worn, 0.02}, {&p.Else, 0.02}, {&w.SlipAnywhere, 0.3}, {&m.Chance, 0.02}, {&m.Wild, 0.2},
	} {
		*x.at = pick(*x.at, x.standard)
	}
	for _, x := range []struct {
		at       *units.CrankAngle
		standard units.CrankAngle
	}{
		{&w.TDCByEye, 1.5 * units.CrankDegree}, {&w.TDCByStop, 0.3 * units.CrankDegree}, {&w.TDCByDial, 1 * units.CrankDegree},
		{&w.TDCByMark, 1.5 * units.CrankDegree}, {&w.TDCWrong, 8 * units.CrankDegree}, {&w.Duration, 2 * units.CrankDegree},
		{&w.Slip, 10 * units.CrankDegree}, {&w.UnknownCam, 20 * units.CrankDegree}, {&w.Else, 30 * units.CrankDegree}, {&w.Follower, 12 * units.CrankDegree},
		{&m.By, 10 * units.CrankDegree}, {&o.Trifle, 3 * units.CrankDegree}, {&o.Near, 2 * units.CrankDegree},
	} {
		if *x.at == 0 {
			*x.at = x.standard
		}
	}
	if w.Clearance == 0 {
		w.Clearance = 0.25 * units.Millimetre
	}
	if w.Held == 0 {
		w.Held = 0.4 * units.Millimetre
	}
	if w.Worn == 0 {
		w.Worn = 0.6 * units.Millimetre
	}
	if w.MaxLift == 0 {
		w.MaxLift = 0.1 * units.Millimetre
	}
	if w.Lift == 0 {
		w.Lift = 0.4 * units.Millimetre
	}
	if o.Teeth == 0 {
		o.Teeth = 3
	}
	for _, x := range []struct {
		at    *units.Time
		hours float64
	}{{&k.Tooth, 1}, {&k.Keyway, 1.5}, {&k.Vernier, 1}, {&k.Shim, 1}, {&k.RePress, 3}} {
		if *x.at == 0 {
			*x.at = units.Hours(x.hours)
		}
	}
	return o
}

// check tells the faults of filled options.
func (o Options) check() error {
	var l fault.List
	angle := func(path string, v, most units.CrankAngle) {
		if !(v > 0 && v <= most) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: "options." + path, Value: v.String(), Unit: "° crank", Rule: "above zero and at most " + most.String()})
		}
	}
	w := o.Widths
	for _, x := range []struct {
		path string
		v    units.CrankAngle
	}{
		{"widths.tdc_by_eye", w.TDCByEye}, {"widths.tdc_by_stop", w.TDCByStop}, {"widths.tdc_by_dial", w.TDCByDial},
		{"widths.tdc_by_mark", w.TDCByMark}, {"widths.tdc_wrong", w.TDCWrong}, {"widths.duration", w.Duration}, {"widths.slip", w.Slip},
		{"widths.unknown_cam", w.UnknownCam}, {"widths.else", w.Else}, {"widths.follower", w.Follower}, {"misread.by", o.Misread.By},
	} {
		angle(x.path, x.v, 180*units.CrankDegree)
	}
	angle("trifle", o.Trifle, 30*units.CrankDegree)
	angle("near", o.Near, 30*units.CrankDegree)
	share := func(path string, v, most float64) {
		if !(v >= 0 && v <= most) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: "options." + path, Value: plain(v), Rule: "at most " + plain(most)})
		}
	}
	share("widths.slip_anywhere", w.SlipAnywhere, 1)
	share("misread.chance", o.Misread.Chance, 0.5)
	share("misread.wild", o.Misread.Wild, 1)
	p := o.Priors
	for _, x := range []struct {
		path string
		v    float64
	}{
		{"nothing", p.Nothing}, {"whole_train", p.WholeTrain}, {"wheel", p.Wheel}, {"slip", p.Slip}, {"keyway", p.Keyway}, {"tdc", p.TDC},
		{"clearance", p.Clearance}, {"check_lift", p.CheckLift}, {"other_cam", p.OtherCam}, {"unknown_cam", p.UnknownCam}, {"exchanged", p.Exchanged}, {"disc", p.Disc},
		{"whole_turn", p.WholeTurn}, {"reversed", p.Reversed}, {"follower", p.Follower}, {"held", p.Held}, {"worn", p.Worn}, {"else", p.Else},
	} {
		share("priors."+x.path, x.v, 1e9)
	}
	for _, x := range []struct {
		path string
		v    float64
	}{{"nothing", p.Nothing}, {"else", p.Else}} { // always listed
		if x.v == 0 {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: "options.priors." + x.path, Rule: "this cause cannot be left out"})
		}
	}
	for _, x := range []struct {
		path string
		v    units.Length
	}{{"widths.clearance", w.Clearance}, {"widths.lift", w.Lift}, {"widths.max_lift", w.MaxLift}, {"widths.held", w.Held}, {"widths.worn", w.Worn}} {
		path, v := x.path, x.v
		if !(v > 0 && v <= 10*units.Millimetre) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: "options." + path, Value: v.String(), Unit: "mm", Rule: "above zero and at most 10 mm"})
		}
	}
	if o.Teeth < 1 || o.Teeth > 12 {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "options.teeth", Value: plain(float64(o.Teeth)), Rule: "1 to 12"})
	}
	for _, t := range []units.Time{o.Work.Tooth, o.Work.Keyway, o.Work.Vernier, o.Work.Shim, o.Work.RePress} {
		if !(t > 0 && t <= units.Hours(1000)) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: "options.work", Value: t.String(), Rule: "above zero and at most 1000 h"})
		}
	}
	return l.Err()
}
