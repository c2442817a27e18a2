package transmission

import (
	"math"

	"example.com/benchbook/transmission/spring"
	"example.com/benchbook/units/fault"
)

// state is a clutch in one condition as bare figures: millimetres, newtons,
// newton millimetres, turns. The formulas work on it.
type state struct {
	v      vector
	u      vector // standard uncertainty of v
	fresh  vector // the same with nothing wrong
	freshU vector
	took   [parts]bool

	count, free, shortest, flush float64        // springs
	law                          spring.Element // nil is straight
	law0, lawEnd, lawForce       float64        // its rate at no load; where its rising branch ends, and the load of one spring there
	train                        []Element      // the train itself, if its ratio changes on the way; else nil
	pitch, thread                float64        // nuts; thread is infinite if not known
	radius, tongues, gap, plate  float64        // plates; tongues is the radius at which those bear
	engine, wanted               float64        // torque at the clutch, without and with margin
	efficiency                   float64        // train, whole
	lost, stretch                float64        // of the train: cable travel lost; cable travel per newton at the plate
	hubPitch                     float64
	playPitch                    float64
	playAtRod, central           bool
	hand, leastPlay, leastWidth  float64 // what may be asked
}

// resolve turns a clutch and the condition found into figures, or says
// everything that is wrong with them.
func (c *Clutch) resolve(found *Condition) (state, error) {
	var l fault.List
	s := state{thread: math.Inf(1)}
	var pl fault.List
	s.fresh[faces] = float64(c.Plates.check(&pl))
	if pl.Len() > 0 {
		l.Under("plates", pl.Err())
	}
	s.radius = c.Plates.radius()
	s.tongues = c.Plates.tongueRadius(s.radius)
	s.plate = or(c.Plates.Thickness.Millimetres(), defaultPlate)
	c.springs(&s, &l)
	c.release(&s, &l)
	c.demand(&s, &l)

	var fresh [parts]figure
	for p := range parts {
		fresh[p] = rules[p].fresh
	}
	fresh[springRate] = figure{s.fresh[springRate], s.freshU[springRate]}
	c.Lever.figures(&fresh, &l)
	var took [parts]bool
	c.New.readInto(&fresh, &took, &l, "new")
	now := fresh
	found.readInto(&now, &s.took, &l, "found")
	for p := range parts {
		s.fresh[p], s.freshU[p] = fresh[p].x, fresh[p].u
		s.v[p], s.u[p] = now[p].x, now[p].u
	}
	s.v[faces], s.v[trainRatio] = s.fresh[faces], s.fresh[trainRatio]
	return s, l.Err()
}

func (c *Clutch) springs(s *state, l *fault.List) {
	p := &c.Springs
	s.count, s.free, s.shortest, s.flush = float64(p.Count), p.FreeLength.Millimetres(), p.Shortest.Millimetres(), p.AtFlush.Millimetres()
	need(l, "springs.count", s.count, "", 1, 60)
	rate := p.Rate.NewtonsPerMillimetre()
	if p.Law != nil {
		rate = s.straighten(p.Law, l)
	}
	need(l, "springs.rate", rate, "N/mm", 0.1, 1e5)
	s.fresh[springRate], s.freshU[springRate] = rate, 0.03*rate
	need(l, "springs.free_length", s.free, "mm", 1, 300)
	need(l, "springs.shortest", s.shortest, "mm", 0.1, 300)
	need(l, "springs.at_flush", s.flush, "mm", 0.5, 400)
	if s.shortest >= s.free && s.free > 0 {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "springs.shortest", Value: number(s.shortest) + " mm", Unit: "mm", Rule: "must be less than the free length of " + number(s.free) + " mm"})
	}
	s.pitch = c.Nuts.Pitch.Millimetres()
	need(l, "nuts.pitch", s.pitch, "mm", 0.2, 5)
	if t := c.Nuts.Thread.Turns(); t != 0 {
		need(l, "nuts.thread", t, "turn", 0.5, 100)
		s.thread = t
	}
	s.hubPitch = c.HubNut.Pitch.Millimetres()
	s.hubPitch = or(s.hubPitch, defaultHubPitch)
	need(l, "hub_nut.pitch", s.hubPitch, "mm", 0.2, 5)
	if c.Nuts.Kind > Central {
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "nuts.kind", Rule: "must be a nut to each spring or one central nut"})
	}
	if c.Nuts.Circle != 0 {
		need(l, "nuts.circle", c.Nuts.Circle.Millimetres(), "mm", 10, 500)
	}
	s.central = c.Nuts.Kind == Central
	s.playPitch, s.playAtRod = or(c.Play.Pitch.Millimetres(), defaultPlayPitch), c.Play.AtRod
	need(l, "play.pitch", s.playPitch, "mm", 0.2, 5)
	if c.HubNut.Hand > LeftHand {
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "hub_nut.hand", Rule: "must be right-hand, left-hand or unknown"})
	}
}

func (c *Clutch) demand(s *state, l *fault.List) {
	d := &c.Demand
	torque := d.EngineTorque.NewtonMillimetres()
	need(l, "demand.engine_torque", torque/1000, "N·m", 0.5, 1000)
	need(l, "demand.primary_ratio", d.PrimaryRatio, "", 0.2, 10)
	margin := or(d.Margin, defaultMargin)
	need(l, "demand.margin", margin, "", 1, 5)
	s.engine = torque * d.PrimaryRatio
	s.wanted = s.engine * margin
	s.hand = or(d.HandForce.Newtons(), defaultHand)
	need(l, "demand.hand_force", s.hand, "N", 5, 1000)
	s.leastPlay = or(d.FreePlay.Millimetres(), defaultPlay)
	need(l, "demand.free_play", s.leastPlay, "mm", 0.1, 20)
	s.gap = or(d.FaceGap.Millimetres(), defaultGap)
	need(l, "demand.face_gap", s.gap, "mm", 0.01, 2)
	s.leastWidth = or(d.Width.Turns(), defaultWidth)
	need(l, "demand.width", s.leastWidth, "turn", 0.01, 10)
}

// What a zero field of [Demand] stands for.
const (
	defaultHubPitch  = 1.27 // mm, 20 threads per inch; of [HubNut]
	defaultPlayPitch = 1    // mm, of [PlayAdjuster]
	defaultPlate     = 3    // mm, of [Plates]
	defaultMargin    = 1.3
	defaultHand      = 200  // N
	defaultPlay      = 2    // mm
	defaultGap       = 0.15 // mm
	defaultWidth     = 0.5  // turn
)

func or(x, otherwise float64) float64 {
	if x == 0 {
		return otherwise
	}
	return x
}
