package transmission

import (
	"math"

	"example.com/benchbook/units"
)

// Budget is both ledgers at one setting, and what they add up to. It takes the rod
// as free with the hand off: with NoFreePlay the rod may carry part of the clamp, and
// the clutch hold less than Torque.
type Budget struct {
	Turns units.Angle `json:"turns"` // of the spring nuts, inward from flush

	// Force.
	SpringLength units.Length `json:"spring_length"` // plates closed
	Compression  units.Length `json:"compression"`   // of each spring, plates closed
	Clamp        units.Force  `json:"clamp"`         // of all springs, plates closed
	Torque       units.Torque `json:"torque"`        // the clutch can carry
	TorqueEngine units.Torque `json:"torque_engine"` // greatest the engine puts on it
	TorqueWanted units.Torque `json:"torque_wanted"` // that with its margin
	Margin       float64      `json:"margin"`        // Torque over TorqueEngine
	WearLeft     units.Length `json:"wear_left"`     // of the whole pack before it slips, nuts left alone; negative if it slips now

	// Lift of the pressure plate with the lever at the bar.
	LiftWanted units.Length `json:"lift_wanted"` // for every face to be free
	LiftTravel units.Length `json:"lift_travel"` // that the pull gives
	LiftBind   units.Length `json:"lift_bind"`   // that the springs allow
	Lift       units.Length `json:"lift"`        // the lesser of these two

	// Where the cable pull goes.
	Pull         units.Length `json:"pull"`           // all there is
	PullFreePlay units.Length `json:"pull_free_play"` // free play at the lever
	PullPlay     units.Length `json:"pull_play"`      // play of the rod and lost motion of the train
	PullHubNut   units.Length `json:"pull_hub_nut"`   // the hub sliding out under its slack nut
	PullStretch  units.Length `json:"pull_stretch"`   // stretch of cable and train
	PullLift     units.Length `json:"pull_lift"`      // lifting the plate
	PullLeft     units.Length `json:"pull_left"`      // not used: the springs are solid before the lever is at the bar

	// Load on the hand.
	CableTension  units.Force `json:"cable_tension"`  // at the lever, plate as high as it goes
	HandForce     units.Force `json:"hand_force"`     // at the finger line, the same
	TensionWanted units.Force `json:"tension_wanted"` // at the lever, with the lift wanted
	HandWanted    units.Force `json:"hand_wanted"`    // at the finger line, with the lift wanted

	Slips      bool `json:"slips"`        // Torque below TorqueEngine
	ThinMargin bool `json:"thin_margin"`  // Torque below TorqueWanted
	Drags      bool `json:"drags"`        // Lift below LiftWanted
	Heavy      bool `json:"heavy"`        // HandWanted above what may be asked
	ShortOfBar bool `json:"short_of_bar"` // PullLeft above zero
	NoFreePlay bool `json:"no_free_play"` // free play below the least
}

// Symptoms says in words what the budget predicts.
func (b Budget) Symptoms() string {
	text := ""
	add := func(is bool, s string) {
		if is && text != "" {
			text += ", "
		}
		if is {
			text += s
		}
	}
	switch {
	case b.Slips && b.Drags:
		text = "slips and drags at once"
	case b.Slips:
		text = "slips at full torque"
	case b.Drags:
		text = "drags"
	}
	add(b.ThinMargin && !b.Slips, "holds without its margin")
	add(b.Heavy, "heavy")
	add(b.ShortOfBar, "will not reach the bar")
	add(b.NoFreePlay, "too little free play")
	if text == "" {
		return "holds and frees"
	}
	return text
}

// At returns both ledgers with every spring nut the given turns in from flush, 0
// to the end of the thread; [Clutch.Window] has the formulas. The lift that the
// pull gives is found together with the stretch that goes with it:
// y = (spare - give N k x)/(ratio + give N k), spare the pull left after free
// play and play, give the pull that one newton at the plate takes. It allocates
// nothing. Errors: as Clutch.Window, and turns outside the thread.
func (c Clutch) At(found Condition, turns units.Angle) (Budget, error) {
	s, err := c.resolve(&found)
	if err != nil {
		return Budget{}, err
	}
	if err := s.reach(turns); err != nil {
		return Budget{}, err
	}
	return s.budget(&s.v, turns.Turns()), nil
}

// reach says whether the nuts can stand there.
func (s *state) reach(turns units.Angle) error {
	if n := turns.Turns(); !(n >= 0 && n <= math.Min(s.thread, 200)) {
		return outside("turns", n, "turn", 0, math.Min(s.thread, 200))
	}
	return nil
}

func (s *state) budget(v *vector, n float64) Budget {
	mm, newtons := units.Millimetres, units.Newtons
	x := s.off(v) + n*s.pitch
	clamp := math.Max(s.press(v, x), 0)
	torque := s.carried(v) * clamp
	wanted := s.lift(v)
	travel := s.liftAt(v, x)
	bind := s.solid(v) - x
	lift := math.Max(math.Min(travel, bind), 0)
	load := math.Max(s.press(v, x+lift), 0)
	if travel <= 0 { // the plate does not stir: the cable pulls only as far as the pull left stretches it
		load = math.Min(math.Max(s.forceByPull(v, 0), 0), clamp)
	}
	loadWanted := math.Max(s.press(v, x+wanted), 0)
	_, tension := s.pull(v, lift, load)
	_, tensionWanted := s.pull(v, wanted, loadWanted)
	spent := s.spend(v, lift, load)
	b := Budget{
		Turns:        units.Turns(n),
		SpringLength: mm(math.Min(s.flush+v[wear]-n*s.pitch, s.free-v[springSet])), Compression: mm(math.Max(x, 0)), Clamp: newtons(clamp),
		Torque: units.NewtonMillimetres(torque), TorqueEngine: units.NewtonMillimetres(s.engine), TorqueWanted: units.NewtonMillimetres(s.wanted),
		Margin:     torque / s.engine,
		WearLeft:   mm(x - s.pressed(v, s.engine/s.carried(v))),
		LiftWanted: mm(wanted), LiftTravel: mm(math.Max(travel, 0)), LiftBind: mm(math.Max(bind, 0)), Lift: mm(lift),
		Pull: mm(v[cablePull]), PullFreePlay: mm(v[freePlay]), PullPlay: mm(spent.play), PullHubNut: mm(spent.nut),
		PullStretch: mm(spent.stretch), PullLift: mm(spent.lift),
		CableTension: newtons(tension), HandForce: newtons(tension / v[leverRatio]),
		TensionWanted: newtons(tensionWanted), HandWanted: newtons(tensionWanted / v[leverRatio]),
		Slips: torque < s.engine, ThinMargin: torque < s.wanted, Drags: lift < wanted, Heavy: tensionWanted/v[leverRatio] > s.hand,
		NoFreePlay: v[freePlay] < s.leastPlay,
	}
	if travel > lift && bind < travel {
		b.PullLeft = b.Pull - b.PullFreePlay - b.PullPlay - b.PullHubNut - b.PullStretch - b.PullLift
		b.ShortOfBar = true
	}
	return b
}

// pull is the cable pull that a lift of y against a load takes, all told, and the
// tension at the lever.
func (s *state) pull(v *vector, y, load float64) (pull, tension float64) {
	if s.train != nil {
		return s.walk(v, y, load)
	}
	return v[cablePull] - s.spare(v, y) + load*s.give(v), load / (v[trainRatio] * s.efficiency * v[cableEfficiency])
}

type spending struct{ play, nut, lift, stretch float64 }

// spend says where the pull goes. Where the ratio changes on the way the parts are
// reckoned one on top of another in the order play, nut, lift, stretch.
func (s *state) spend(v *vector, y, load float64) spending {
	if s.train == nil {
		r := v[trainRatio]
		return spending{play: s.lost + r*(v[rodPlay]+v[slack]), nut: r * v[hubNutBack] * s.hubPitch, lift: r * y, stretch: load * s.give(v)}
	}
	tight := *v
	tight[hubNutBack] = 0
	free := v[freePlay] - v[preload]
	play, _ := s.walk(&tight, 0, 0)
	nut, _ := s.walk(v, 0, 0)
	lift, _ := s.walk(v, y, 0)
	all, _ := s.walk(v, y, load)
	return spending{play: play - free, nut: nut - play, lift: lift - nut, stretch: all - lift}
}

// liftAt returns the lift that the pull gives with springs compressed by x, below
// zero if the pull is gone before the plate moves. Slack springs (x below zero)
// lift free until they touch.
func (s *state) liftAt(v *vector, x float64) float64 {
	if s.train == nil && s.law == nil {
		spare := s.spare(v, 0)
		if free := spare / v[trainRatio]; x < 0 && free <= -x {
			return free
		}
		give := s.give(v) * s.count * v[springRate]
		return (spare - give*x) / (v[trainRatio] + give)
	}
	low, high := -50.0, 50.0 // mm; what is needed rises with the lift
	for range 60 {
		y := (low + high) / 2
		if need, _ := s.pull(v, y, math.Max(s.press(v, x+y), 0)); need <= v[cablePull] {
			low = y
		} else {
			high = y
		}
	}
	return low
}
