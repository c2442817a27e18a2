package draw

import (
	"strconv"

	"example.com/benchbook/examples/internal/lift"
	"example.com/benchbook/examples/job"
	"example.com/benchbook/timing"
	"example.com/benchbook/units"
)

// Lobes draws both valves' lift over the crank, as read in full lines and as
// specified dashed, what lies under both dark. A cam read as a table of lift shows
// its readings as rings; another has a plain lobe through its events. Width is in
// CSS pixels. The finding is the same in words.
func Lobes(v job.TimingResult, width int) (finding, svg string) {
	r := v.Input.Readings
	in, ex := lift.Of(v)
	finding = standings(v)

	c := &canvas{width: float64(max(width, Narrowest)), x0: -300, x1: 300}
	c.left, c.right = 26, c.width-8
	key := []legend{{"full", "as read"}, {"dash", "as specified"}}
	if in.Read.Measured() || ex.Read.Measured() {
		key = append(key, legend{"ring", "readings"})
	}
	c.top = c.legends(key) + 3*row
	c.bottom = c.top + 190
	c.y1 = 1.05 * max(in.Book.Max, ex.Book.Max, in.Read.Max, ex.Read.Max)

	if in.Read.Known && ex.Read.Known {
		c.overlap(in.Read, ex.Read)
	}
	for mm := 0.0; mm <= c.y1; mm += 2 {
		c.line("hair", c.left, c.y(mm), c.right, c.y(mm))
		c.text(c.left-6, c.y(mm)+5, until, strconv.FormatFloat(mm, 'f', 0, 64))
	}
	for _, centre := range []float64{-180, 0, 180} {
		c.line("hair", c.x(centre), c.top, c.x(centre), c.bottom)
	}
	c.curve("dash", ex.Book)
	c.curve("dash", in.Book)
	y := c.bottom + 2*row + 6
	for _, cam := range []struct {
		name   string
		pair   lift.Pair
		phase  timing.Phase
		anchor string
		from   float64
		words  string
	}{
		{"exhaust", ex, v.Verdict.Exhaust, from, c.left, r.ExhaustOpens.Value().String() + " to " + r.ExhaustCloses.Value().String()},
		{"inlet", in, v.Verdict.Inlet, until, c.right, r.InletOpens.Value().String() + " to " + r.InletCloses.Value().String()},
	} {
		if !cam.pair.Read.Known {
			continue
		}
		c.curve("full", cam.pair.Read)
		for _, p := range cam.pair.Read.Points {
			if p.At >= c.x0 && p.At <= c.x1 {
				c.ring(c.x(p.At), c.y(max(p.Lift, 0)))
			}
		}
		c.cam(cam.name, phase(cam.phase), cam.pair)
		c.event(cam.pair.Read.Opens, cam.pair.Read.Check)
		c.event(cam.pair.Read.Closes, cam.pair.Read.Check)
		c.text(cam.from, y, cam.anchor, cam.name+" "+cam.words)
		y += row
	}
	c.line("axis", c.left, c.bottom, c.right, c.bottom)
	for _, dead := range []struct {
		at   float64
		name string
	}{{-180, "BDC"}, {0, "TDC"}, {180, "BDC"}} {
		c.text(c.x(dead.at), c.bottom+row, middle, dead.name)
	}
	c.text(0, c.top-8, from, "mm")
	c.height = c.bottom + 4*row + 14
	return finding, c.svg("Valve lift over the crank. " + finding)
}

// standings says how both cams stand.
func standings(v job.TimingResult) string {
	return "inlet " + phase(v.Verdict.Inlet) + ", exhaust " + phase(v.Verdict.Exhaust)
}

func (c *canvas) curve(class string, l lift.Cam) {
	a, b, ok := l.Span()
	if !ok {
		return
	}
	var xy []float64
	for i := range steps + 1 {
		x := a + (b-a)*float64(i)/steps
		if x < c.x0 || x > c.x1 {
			continue
		}
		xy = append(xy, c.x(x), c.y(l.At(x)))
	}
	c.line(class, xy...)
}

// cam names a lobe above its crest, says how it stands, and points from where its
// crest should be to where it is.
func (c *canvas) cam(name, stands string, p lift.Pair) {
	const room = 46 // for half of the words
	at := c.x(p.Read.Centre())
	if name == "inlet" {
		at = min(max(at, c.x(0)+room), c.right-room)
	} else {
		at = max(min(at, c.x(0)-room), c.left+room-20)
	}
	c.text(at, c.top-12-row, middle, name)
	c.text(at, c.top-12, middle, stands)
	a, b := c.x(p.Book.Centre()), c.x(p.Read.Centre())
	if d := b - a; d > 3 || d < -3 {
		c.arrow(a, b, c.top-2)
	}
}

// arrow points along the level.
func (c *canvas) arrow(a, b, y float64) {
	barb := 7.0
	if b < a {
		barb = -barb
	}
	c.line("axis", a, y, b, y)
	c.area("black", b, y, b-barb, y-5, b-barb, y+5)
}

// event marks where a valve passes the check lift.
func (c *canvas) event(at, check float64) {
	c.line("mark", c.x(at), c.y(check)-3, c.x(at), c.bottom+5)
}

// overlap darkens what lies under both lobes.
func (c *canvas) overlap(in, ex lift.Cam) {
	a, _, okIn := in.Span()
	_, b, okEx := ex.Span()
	if !okIn || !okEx {
		return
	}
	var xy []float64
	for i := range steps + 1 {
		x := a + (b-a)*float64(i)/steps
		if y := min(in.At(x), ex.At(x)); y > 0 {
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
