package timing

import (
	"math"
	"strconv"

	"example.com/benchbook/units"
)

// family groups faults that are weighed, paired and mended alike.
type family uint8

const (
	nothing family = iota
	tooth
	wholeTurn
	keyway
	slip
	mark
	gap
	checkLift
	otherCam
	exchanged
	disc
	reversed
	follower
	held
	worn
)

// atom is one thing wrong.
type atom struct {
	key, text string
	family    family
	cams      []Cam
	prior     float64
	ways      []way
	steps     int     // teeth or keyways, advance positive
	worth     float64 // crank degrees of one step
	alike     bool    // both camwheels by the same, where no one mesh moves both
}

// way is one form a fault can take: a fixed shift, and amounts left open.
type way struct {
	share float64 // of the fault's prior
	fixed column
	mask  uint32 // open amounts
	judge int    // the open amount that says whether it is a trifle, or -1
	far   bool   // may be on the other turn
}

// trifling is how a fault with no judged amount is judged: by its fixed shift.
func (w *way) trifling(limit float64) bool {
	if w.judge >= 0 || w.mask != 0 {
		return false
	}
	for i := range rowTDCLift {
		if math.Abs(wrap(w.fixed[i])) >= limit {
			return false
		}
	}
	return w.fixed[rowMaxLift] == 0 && w.fixed[rowMaxLift+1] == 0
}

func fixed(c column) []way { return []way{{share: 1, fixed: c, judge: -1}} }

func open(amount int) []way { return []way{{share: 1, mask: 1 << amount, judge: amount}} }

// sloped is an open amount whose effect on the events goes by the slope of the
// flanks: where that is the usual shape's, steeper and flatter ones too.
func (s *sheet) sloped(c Cam, amounts [3]int, fixed column) []way {
	all := make([]way, 0, 3)
	for i, share := range [3]float64{0.4, 0.3, 0.3} {
		a := amounts[i] + int(c)
		all = append(all, way{share: share, fixed: fixed, mask: 1 << a, judge: a})
	}
	if !s.lobes[c].riseAssumed {
		all = all[:1]
		all[0].share = 1
	}
	return all
}

func early(n int) string {
	if n < 0 {
		return "late"
	}
	return "early"
}

// count writes "one tooth", "2 teeth".
func count(n int, one, many string) string {
	if n = max(n, -n); n == 1 {
		return "one " + one
	}
	return strconv.Itoa(n) + " " + many
}

func signed(n int) string {
	if n > 0 {
		return "+" + strconv.Itoa(n)
	}
	return strconv.Itoa(n)
}

// atoms lists every single fault this engine and these readings allow.
func (s *sheet) atoms() ([]atom, error) {
	var all []atom
	add := func(a atom) {
		if a.prior > 0 {
			all = append(all, a)
		}
	}
	e, p := s.engine, &s.opt.Priors
	train, err := wheels(e.Drive)
	if err != nil {
		return nil, err
	}
	kinds := map[int]float64{} // tooth steps that move one cam, or both
	for _, w := range train {
		kinds[len(w.cams)*2+int(w.cams[0])]++
	}
	for _, w := range train {
		prior := p.Wheel
		if len(w.cams) == 2 {
			prior = p.WholeTrain
		}
		prior /= kinds[len(w.cams)*2+int(w.cams[0])]
		if !w.made {
			prior /= 4 // two hands' work, or a pinion mark misread
		}
		// fewer teeth are likelier: each further one a third as likely
		sum := 0.0
		for n := range s.opt.Teeth {
			sum += 2 * math.Pow(3, -float64(n))
		}
		for n := 1; n <= s.opt.Teeth && float64(n)*w.worth.Float() < 180; n++ {
			for _, k := range [2]int{n, -n} {
				add(atom{
					key: w.key + ":" + signed(k), text: w.text + " " + count(k, "tooth", "teeth") + " " + early(k), family: tooth, cams: w.cams,
					prior: prior * math.Pow(3, -float64(n-1)) / sum, ways: fixed(phase(w.cams...).times(float64(k) * w.worth.Float())),
					steps: k, worth: w.worth.Float(), alike: !w.made,
				})
			}
		}
	}
	if step := keyStep(e); step > 0 {
		most := min(e.Keyways/2, 3)
		for n := 1; n <= most; n++ {
			for _, k := range [2]int{n, -n} {
				add(atom{
					key: "pinion-keyway:" + signed(k), text: "pinion " + count(k, "keyway", "keyways") + " " + early(k), family: keyway, cams: []Cam{Inlet, Exhaust},
					prior: p.Keyway / float64(2*most), ways: fixed(phase(Inlet, Exhaust).times(float64(k) * step)), steps: k, worth: step,
				})
			}
		}
	}
	for c := range Cam(2) {
		if e.fixing(c) == OnePiece || !ownShafts(e.Drive) && c == Exhaust {
			continue
		}
		a := atom{key: c.String() + "-slip", text: c.String() + " cam turned on its wheel", family: slip, cams: []Cam{c}, prior: p.Slip}
		near, far := uint32(1)<<(slipNear+int(c)), uint32(1)<<(slipFar+int(c))
		if !ownShafts(e.Drive) { // one shaft: both lobes turn together
			a.key, a.text, a.cams = "camshaft-slip", "camshaft turned on its wheel", []Cam{Inlet, Exhaust}
		}
		a.ways = []way{{share: 1 - s.opt.Widths.SlipAnywhere, mask: near, judge: slipNear + int(c)}}
		if s.opt.Widths.SlipAnywhere > 0 {
			a.ways = append(a.ways, way{share: s.opt.Widths.SlipAnywhere, mask: far, judge: slipFar + int(c), far: ownShafts(e.Drive)})
		}
		add(a)
	}
	if s.read.TDC != TDCByStop {
		add(atom{key: "tdc-mark", text: "top dead centre wrongly found or marked", family: mark, prior: p.TDC, ways: open(markWrong)})
	}
	for c := range Cam(2) {
		add(atom{key: c.String() + "-clearance", text: c.String() + " clearance not what it was taken for", family: gap, cams: []Cam{c}, prior: p.Clearance, ways: s.sloped(c, [3]int{gapWrong, gapSteep, gapFlat}, column{})})
	}
	add(atom{key: "check-lift", text: "events found at another lift than said", family: checkLift, prior: p.CheckLift, ways: open(liftWrong)})
	for c := range Cam(2) {
		s.otherCams(c, add)
	}
	s.valveGear(add)
	if ownShafts(e.Drive) {
		s.exchangedCams(add)
		for c := range Cam(2) {
			add(atom{
				key: c.String() + "-wheel:turn", text: c.String() + " cam a whole turn of the crank out", family: wholeTurn, cams: []Cam{c},
				prior: p.WholeTurn, ways: fixed(column{}),
			})
		}
	}
	var back column // a place read as its mirror image seems early by twice itself
	for c := range Cam(2) {
		l := &s.lobes[c]
		back[rowOpens+2*int(c)], back[rowOpens+2*int(c)+1] = 2*l.opens, 2*l.closes
	}
	add(atom{key: "disc-backwards", text: "disc read the wrong way round, before for after", family: disc, prior: p.Disc, ways: fixed(back)})
	return all, nil
}

// differs is what another lobe in place of the book's shows, both timed by book.
func differs(c Cam, book, other *shape) column {
	k := int(c)
	d := column{}.set(rowOpens+2*k, book.opens-other.opens).set(rowOpens+2*k+1, book.closes-other.closes)
	if !book.liftAssumed && !other.liftAssumed {
		d[rowMaxLift+k] = other.top - book.top
	}
	// the lift at TDC, read as an advance of the book's lobe
	if lift := other.lift(0, 0); lift > flatLift && lift < 0.9*book.top {
		if c == Inlet {
			d[rowTDCLift+k] = book.centre() - book.from(lift)
		} else {
			d[rowTDCLift+k] = book.from(lift) + book.centre()
		}
	}
	return d
}

// otherCams lists the rivals in one place, and a cam that is none of them.
func (s *sheet) otherCams(c Cam, add func(atom)) {
	prior := s.opt.Priors.OtherCam
	var known []Rival
	for _, r := range s.engine.Rivals {
		if r.Cam == c {
			known = append(known, r)
		}
	}
	for _, r := range known {
		other := shapeOf(c, r.Lobe, s.engine.Check, s.engine.ratioOf())
		add(atom{
			key: c.String() + "-cam:" + r.Name, text: c.String() + " cam is the " + r.Name, family: otherCam, cams: []Cam{c},
			prior: prior / float64(len(known)), ways: fixed(differs(c, &s.lobes[c], &other)),
		})
	}
	k := int(c)
	add(atom{
		key: c.String() + "-cam", text: c.String() + " cam of another pattern", family: otherCam, cams: []Cam{c}, prior: s.opt.Priors.UnknownCam,
		ways: []way{{share: 1, mask: 1<<(longer+k) | 1<<(offset+k) | 1<<(higher+k), judge: -1}},
	})
}

// exchangedCams lists each cam in the other's place. Each keeps its own length
// and lift; where its centre comes to lie depends on how it is marked, so it is
// left open: near the right place, or anywhere.
func (s *sheet) exchangedCams(add func(atom)) {
	var d column
	for c := range Cam(2) {
		l, o, k := &s.lobes[c], &s.lobes[1-c], int(c)
		more := (o.duration() - l.duration()) / 2
		d[rowOpens+2*k], d[rowOpens+2*k+1] = more, -more
		d[rowTDCLift+k] = sign(c) * more
		if !l.liftAssumed && !o.liftAssumed {
			d[rowMaxLift+k] = o.top - l.top
		}
	}
	w := &way{fixed: d, judge: -1}
	if w.trifling(s.opt.Trifle.Degrees()) {
		return // alike: exchanging them does no harm, and shows nowhere
	}
	add(atom{key: "cams-exchanged", text: "inlet and exhaust cams exchanged", family: exchanged, cams: []Cam{Inlet, Exhaust}, prior: s.opt.Priors.Exchanged, ways: []way{
		{share: 0.5, fixed: d, mask: 1<<slipNear | 1<<(slipNear+1), judge: -1},
		{share: 0.5, fixed: d, mask: 1<<slipFar | 1<<(slipFar+1), judge: -1, far: true},
	}})
}

// valveGear lists faults of followers, lobes and valves, one cam at a time.
func (s *sheet) valveGear(add func(atom)) {
	p := &s.opt.Priors
	for c := range Cam(2) {
		k, name, cams := int(c), c.String(), []Cam{c}
		add(atom{key: name + "-follower", text: name + " follower of another shape", family: follower, cams: cams, prior: p.Follower, ways: open(shaped + k)})
		// a held valve leaves no clearance at all, whatever was supposed
		none := column{}
		none[rowGap+k] = -s.supposed().Millimetres()
		by := "tight clearance"
		if c == Exhaust {
			by = "its lifter or a tight clearance"
		}
		add(atom{key: name + "-held", text: name + " valve held off its seat by " + by, family: held, cams: cams, prior: p.Held, ways: s.sloped(c, [3]int{heldUp, heldSteep, heldFlat}, none)})
		add(atom{key: name + "-worn", text: name + " lobe or tappet worn", family: worn, cams: cams, prior: p.Worn, ways: []way{{share: 1, mask: 1 << (wornOff + k), judge: -1}}})
		if ownShafts(s.engine.Drive) && s.engine.fixing(c) != OnePiece {
			s.reversedCam(c, add)
		}
	}
}

// supposed is the clearance the events were read with.
func (s *sheet) supposed() units.Length {
	if s.read.Check != nil {
		return s.read.Check.Clearance
	}
	return s.engine.Check.Clearance
}

// reversedCam lists a cam on back to front. Its lobe then lies as far the other
// way from its key, so the cam is late by twice the key angle; the flanks change
// places, which events at one check lift do not show.
func (s *sheet) reversedCam(c Cam, add func(atom)) {
	a := atom{key: c.String() + "-reversed", text: c.String() + " cam on back to front", family: reversed, cams: []Cam{c}, prior: s.opt.Priors.Reversed}
	if key := s.engine.lobe(c).KeyAngle; key.Taken() {
		shift := wrap(-2 * key.Value().AtCrank().Degrees())
		// the lobe has turned over on its wheel: what is measured there is not a slip
		a.ways = []way{{share: 1, fixed: phase(c).times(shift).set(rowWheel+int(c), shift), mask: 1 << (offset + int(c)), judge: -1}}
	} else {
		a.ways = []way{{share: 1, mask: 1 << (slipFar + int(c)), judge: slipFar + int(c), far: true}}
	}
	add(a)
}

// paired reports whether two faults are weighed together: those that move cams,
// and one that moves cams with one that changes what is read.
func paired(a, b *atom) bool {
	moves := func(f family) bool { return f == tooth || f == keyway || f == slip }
	switch {
	case a.family == tooth && b.family == tooth:
		if len(a.cams) == 2 && len(b.cams) == 2 || a.alike || b.alike {
			return false
		}
		// both camwheels alike is the whole train
		if len(a.cams) == 1 && len(b.cams) == 1 && (a.cams[0] == b.cams[0] || a.worth*float64(a.steps) == b.worth*float64(b.steps)) {
			return false
		}
		return true
	case moves(a.family) && moves(b.family):
		return a.family != b.family || a.family == slip && a.key != b.key
	case moves(a.family) && b.family == gap:
		return true
	case moves(a.family) && b.family == mark:
		return len(a.cams) == 1
	}
	return false
}
