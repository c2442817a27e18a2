package fastener

import "math"

// profile is the section of a thread's basic form along the axis, as a radius
// over the distance from the middle of a bolt's ridge. All in millimetres.
type profile struct {
	pitch, tan, half  float64 // half: half the effective diameter
	top, bottom       float64 // radii at crest and root of what this is: a bolt, or a nut's groove
	topArc, bottomArc float64 // radius of rounding, zero for flat
	sin, cos          float64 // of the flank angle
}

// boltProfile is the largest metal of a bolt.
func (t Thread) boltProfile() profile {
	s := t.section()
	p := t.profile(s)
	p.top, p.bottom = t.major.Millimetres()/2, s.bolt/2
	p.topArc, p.bottomArc = s.crest, s.crest
	return p
}

// nutProfile is the smallest room of a nut: its root over the bolt's crest, its
// crest over the bolt's root. The root of a flat-crested nut is cleared by a
// sixteenth of the triangle, as taps with a little rounding leave it.
func (t Thread) nutProfile() profile {
	s := t.section()
	p := t.profile(s)
	p.top, p.bottom = t.major.Millimetres()/2, s.inner/2
	p.topArc, p.bottomArc = s.crest, s.crest
	if s.crest == 0 {
		p.top += t.form.triangle() * t.pitch.Millimetres() / 16
	}
	return p
}

func (t Thread) profile(s section) profile {
	a := t.form.Included().SI() / 2
	return profile{pitch: t.pitch.Millimetres(), tan: math.Tan(a), sin: math.Sin(a), cos: math.Cos(a), half: s.effective / 2}
}

// at returns the radius at a distance z from the middle of the ridge.
func (p profile) at(z float64) float64 {
	z = math.Abs(math.Remainder(z, p.pitch))
	r := p.half + (p.pitch/4-z)/p.tan
	// a rounding touches the flank where its normal is the flank's
	if c := p.topArc; z < c*p.cos {
		r = min(r, p.top-c+math.Sqrt(c*c-z*z))
	}
	if c, y := p.bottomArc, p.pitch/2-z; y < c*p.cos {
		r = max(r, p.bottom+c-math.Sqrt(c*c-y*y))
	}
	return min(max(r, p.bottom), p.top)
}

// overlap returns by how much radius the bolt stands into the nut at its worst,
// the middle of the ridge being off the middle of the groove by shift; negative
// is the least clearance. The worst place is found on a grid and then closed in
// on, the difference being smooth but for a few corners.
func overlap(bolt, nut profile, shift float64) float64 {
	f := func(z float64) float64 { return bolt.at(z) - nut.at(z-shift) }
	const steps = 64
	step := bolt.pitch / steps
	worst, at := math.Inf(-1), 0.0
	for i := range steps {
		z := step * (float64(i) - steps/2)
		if d := f(z); d > worst {
			worst, at = d, z
		}
	}
	lo, hi := at-step, at+step
	for range 40 { // (2/3)^40 of a step
		a, b := lo+(hi-lo)/3, hi-(hi-lo)/3
		fa, fb := f(a), f(b)
		worst = max(worst, fa, fb)
		if fa > fb {
			hi = b
		} else {
			lo = a
		}
	}
	return worst
}
