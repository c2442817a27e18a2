package transmission

import "math"

// ordinary is what use does to a serviceable clutch: how far it moves each
// figure from new and how unevenly. Common practice, no source. Without it every
// honest old clutch would look as if several things were wrong at once.
var ordinary = [parts]struct {
	figure
	relative bool // to the new figure
}{
	friction:        {figure{0, 0.08}, true},
	springSet:       {figure{0.4, 0.4}, false},
	wear:            {figure{0.4, 0.4}, false},
	outOfFlat:       {figure{0.1, 0.1}, false},
	rodPlay:         {figure{0.1, 0.15}, false},
	freePlay:        {figure{0, 1}, false},
	cableStiffness:  {figure{-0.05, 0.10}, true},
	cableEfficiency: {figure{-0.04, 0.05}, true},
	cablePull:       {figure{-0.02, 0.02}, true},
	runOut:          {figure{0.1, 0.1}, false},
	tongueGrip:      {figure{0, 0.04}, false},
}

// nutSpread is how far from the middle of the window as new the nuts of a
// clutch are found, in turns, less what the window's own width allows: someone
// had it working, or had begun to compensate. Common practice, no source.
const nutSpread = 1.5

func (s *state) afterUse(p part) figure {
	f := figure{s.fresh[p], s.freshU[p]}
	if p >= parts {
		return f
	}
	o := ordinary[p]
	if o.relative {
		o.x *= s.fresh[p]
		o.u *= s.fresh[p]
	}
	return figure{f.x + o.x, math.Hypot(f.u, o.u)}
}
