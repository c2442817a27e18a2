package draw

import (
	"math"
	"strconv"

	"example.com/benchbook/examples/job"
	"example.com/benchbook/timing"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// lobe is one cam over the degrees of the crank, 0 at the top dead centre
// between exhaust and inlet: where it opens and closes at the check lift, its
// greatest lift, and that check lift, in mm.
type lobe struct{ opens, closes, lift, check float64 }

// bdcAt is where the bottom dead centre lies that a cam's own events count from.
const (
	inletBDC   = 180
	exhaustBDC = -180
)

func place(p units.CrankPosition, bdc float64) float64 {
	at := p.After().Degrees()
	if p.Datum() == units.BDC {
		at += bdc
	}
	return at
}

// shape returns centre and half width at no lift of a plain lobe, lift times
// cos², through the events; ok is false if no such lobe passes through them. It
// shows where the cam stands, not how it was ground.
func (l lobe) shape() (centre, reach float64, ok bool) {
	if l.lift <= l.check || l.check < 0 || l.closes <= l.opens {
		return 0, 0, false
	}
	half := (l.closes - l.opens) / 2
	return (l.opens + l.closes) / 2, half / (2 / math.Pi * math.Acos(math.Sqrt(l.check/l.lift))), true
}

func (l lobe) at(x float64) float64 {
	centre, reach, ok := l.shape()
	u := (x - centre) / reach
	if !ok || u < -1 || u > 1 {
		return 0
	}
	c := math.Cos(math.Pi / 2 * u)
	return l.lift * c * c
}

// standIn is the lift drawn where none was given.
const standIn = 8 * units.Millimetre

func booked(l timing.Lobe, check units.Length, bdc float64) lobe {
	lift := standIn
	if l.MaxLift.Taken() {
		lift = l.MaxLift.Value()
	}
	return lobe{place(l.Opens, bdc), place(l.Closes, bdc), lift.Millimetres(), check.Millimetres()}
}

func found(opens, closes measure.Position, lift measure.Reading[units.Length], check units.Length, book lobe, bdc float64) (lobe, bool) {
	l := lobe{place(opens.Value(), bdc), place(closes.Value(), bdc), book.lift, check.Millimetres()}
	if lift.Taken() {
		l.lift = lift.Value().Millimetres()
	}
	return l, opens.Taken() && closes.Taken()
}

// Lobes draws both valves' lift over the crank, as read in full lines and as
// specified dashed, the overlap dark, to a plain lobe shape through the
// events. Width is in CSS pixels. The finding is the same in words.
func Lobes(v job.TimingResult, width int) (finding, svg string) {
	e, r := v.Input.Engine, v.Input.Readings
	check := e.Check.Lift
	bookIn, bookEx := booked(e.Inlet, check, inletBDC), booked(e.Exhaust, check, exhaustBDC)
	if r.Check != nil {
		check = r.Check.Lift
	}
	in, hasIn := found(r.InletOpens, r.InletCloses, r.InletMaxLift, check, bookIn, inletBDC)
	ex, hasEx := found(r.ExhaustOpens, r.ExhaustCloses, r.ExhaustMaxLift, check, bookEx, exhaustBDC)
	inlet, exhaust := phase(v.Verdict.Inlet), phase(v.Verdict.Exhaust)
	finding = "inlet " + inlet + ", exhaust " + exhaust

	c := &canvas{width: float64(max(width, Narrowest)), x0: -300, x1: 300}
	c.left, c.right = 26, c.width-8
	c.line("full", c.left, 12, c.left+30, 12)
	c.text(c.left+36, 17, from, "as read")
	c.line("dash", c.left+110, 12, c.left+140, 12)
	c.text(c.left+146, 17, from, "as specified")
	c.top, c.bottom = 3*row+16, 3*row+16+190
	c.y1 = 1.05 * max(bookIn.lift, bookEx.lift, in.lift, ex.lift)

	if hasIn && hasEx {
		c.overlap(in, ex)
	}
	for mm := 0.0; mm <= c.y1; mm += 2 {
		c.line("hair", c.left, c.y(mm), c.right, c.y(mm))
		c.text(c.left-6, c.y(mm)+5, until, strconv.FormatFloat(mm, 'f', 0, 64))
	}
	for _, centre := range []float64{-180, 0, 180} {
		c.line("hair", c.x(centre), c.top, c.x(centre), c.bottom)
	}
	c.curve("dash", bookEx)
	c.curve("dash", bookIn)
	y := c.bottom + 2*row + 6
	if hasEx {
		c.curve("full", ex)
		c.cam("exhaust", exhaust, ex)
		c.event(ex.opens, check)
		c.event(ex.closes, check)
		c.text(c.left, y, from, "exhaust "+r.ExhaustOpens.Value().String()+" to "+r.ExhaustCloses.Value().String())
	}
	if hasIn {
		c.curve("full", in)
		c.cam("inlet", inlet, in)
		c.event(in.opens, check)
		c.event(in.closes, check)
		c.text(c.right, y+row, until, "inlet "+r.InletOpens.Value().String()+" to "+r.InletCloses.Value().String())
	}
	c.line("axis", c.left, c.bottom, c.right, c.bottom)
	for _, dead := range []struct {
		at   float64
		name string
	}{{-180, "BDC"}, {0, "TDC"}, {180, "BDC"}} {
		c.text(c.x(dead.at), c.bottom+row, middle, dead.name)
	}
	c.text(0, c.top-8, from, "mm")
	c.height = y + row + 8
	return finding, c.svg("Valve lift over the crank. " + finding)
}

func (c *canvas) curve(class string, l lobe) {
	centre, reach, ok := l.shape()
	if !ok {
		return
	}
	var xy []float64
	for i := range steps + 1 {
		x := centre + reach*(2*float64(i)/steps-1)
		if x < c.x0 || x > c.x1 {
			continue
		}
		xy = append(xy, c.x(x), c.y(l.at(x)))
	}
	c.line(class, xy...)
}

// cam names a lobe above its crest, and says how it stands.
func (c *canvas) cam(name, stands string, l lobe) {
	x := min(max((l.opens+l.closes)/2, -110), 110) // kept apart, and on the paper
	anchor, at := until, min(c.x(x)+50, c.x(0)-6)
	if name == "inlet" {
		anchor, at = from, max(c.x(x)-50, c.x(0)+6)
	}
	c.text(at, c.top-8-row, anchor, name)
	c.text(at, c.top-8, anchor, stands)
}

// event marks where a valve passes the check lift.
func (c *canvas) event(at float64, check units.Length) {
	c.line("axis", c.x(at), c.y(check.Millimetres())-5, c.x(at), c.bottom+5)
}

// overlap darkens what lies under both lobes.
func (c *canvas) overlap(in, ex lobe) {
	a, b := in.opens-(in.closes-in.opens)/2, ex.closes+(ex.closes-ex.opens)/2
	var xy []float64
	for i := range steps + 1 {
		x := a + (b-a)*float64(i)/steps
		if y := min(in.at(x), ex.at(x)); y > 0 {
			xy = append(xy, c.x(x), c.y(y))
		}
	}
	if n := len(xy); n >= 4 {
		c.area("pale", append(xy, xy[n-2], c.bottom, xy[0], c.bottom)...)
	}
}

// slight is the shift below which a cam counts as where it should be.
const slight = 1 * units.CrankDegree

func phase(p timing.Phase) string {
	a := p.Crank.Value()
	switch {
	case !p.Crank.Taken():
		return "not read"
	case a.Abs() < slight:
		return "right"
	case a < 0:
		return strconv.FormatFloat(-a.Degrees(), 'f', 1, 64) + "° late"
	}
	return strconv.FormatFloat(a.Degrees(), 'f', 1, 64) + "° early"
}
