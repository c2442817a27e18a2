package job

import (
	"strings"

	"example.com/benchbook/units/measure"
)

// order fills in the order of work and whether the engine may be turned and
// started. The order is the trade's (common practice, no source): what can ruin
// an engine first, then what it cannot run without, then tuning, and brakes
// before the road.
func (r *Report) order(j *job) {
	f := j.first
	add := func(key, text string, state State, why string) {
		r.Order = append(r.Order, Step{Key: key, Text: text, State: state, Why: why})
	}

	state, why := Open, "look at the return and crack the feed while turning by hand"
	switch {
	case f.oilFeed == "not seen" || f.oilReturn == "not seen":
		state, why = Wrong, "oil was looked for and not seen; nothing is started until it is"
	case f.oilFeed == "seen" && f.oilReturn == "seen":
		state, why = Good, ""
	case f.oilFeed == "seen" || f.oilReturn == "seen":
		state, why = Unsure, "only one of feed and return was seen"
	}
	add("oil", "oil feed and return", state, why)

	state, why = r.compression(j)
	add("compression", "compression", state, why)

	state, why = Open, "plug on the head, watch for the spark as the piston comes up on compression"
	switch f.spark {
	case "on compression":
		state, why = Good, ""
	case "on overlap":
		state, why = Wrong, "the spark comes on the wrong stroke: magneto half a turn out, or the cams a whole crank turn"
	case "none":
		state, why = Wrong, "no spark"
	}
	add("spark", "spark on the right stroke", state, why)

	state, why = Open, "time a measured volume through the pipe, tank cap closed"
	if f.fuelFlow.Taken() {
		state, why = Unsure, "compare "+f.fuelFlow.Text()+" with twice the demand given under carburettor"
	}
	add("fuel", "fuel: flow, level, freshness", state, why)

	r.step("timing", "valve timing")
	r.step("ignition", "ignition timing")
	r.step("carburettor", "then tune: carburettor, from rich to weak")
	r.step("clutch", "clutch")
	if r.Section("limits") != nil {
		r.step("limits", "wear and fits")
	}

	state, why = Open, "brakes, tyres, steering and chain before any road test"
	switch f.brakes {
	case "good":
		state, why = Good, "look once more before the road"
	case "poor":
		state, why = Wrong, "no road test until they are right"
	}
	add("brakes", "brakes before the road", state, why)
	r.permit(j)
}

// step adds a step that a section of the report answers for.
func (r *Report) step(key, text string) {
	s := r.Section(key)
	switch {
	case s == nil:
		r.Order = append(r.Order, Step{Key: key, Text: text, State: Open, Why: "not in the job file"})
	case s.Open:
		r.Order = append(r.Order, Step{Key: key, Text: text, State: Open, Why: s.Findings[0].Text})
	case s.Faulty():
		r.Order = append(r.Order, Step{Key: key, Text: text, State: Wrong, Why: s.headline()})
	case s.led(measure.SomethingElse):
		r.Order = append(r.Order, Step{Key: key, Text: text, State: Unsure, Why: "the readings fit none of the causes that were weighed; read again, then look further"})
	case len(s.Findings) > 0 && s.Findings[0].Sure != "" && s.Findings[0].Percent < settled:
		r.Order = append(r.Order, Step{Key: key, Text: text, State: Unsure, Why: s.Findings[0].Text + ", but only " + s.Findings[0].Sure})
	default:
		r.Order = append(r.Order, Step{Key: key, Text: text, State: Good})
	}
}

// led reports whether a finding of the section has the key.
func (s *Section) led(key string) bool {
	for _, f := range s.Findings {
		if f.Key == key && !strings.HasPrefix(f.Text, "or: ") {
			return true
		}
	}
	return false
}

// settled is the per cent from which "nothing wrong" is taken as in order.
const settled = 85

// headline returns the first fault of a section.
func (s *Section) headline() string {
	for _, f := range s.Findings {
		if f.Fault {
			return f.Text
		}
	}
	return ""
}

// permit answers whether the engine may be turned and started as it stands.
func (r *Report) permit(j *job) {
	var stop, turn []string
	for _, s := range r.Order {
		if s.State == Wrong && s.Key != "carburettor" && s.Key != "clutch" && s.Key != "brakes" {
			stop = append(stop, s.Text+": "+s.Why)
		}
		if s.Key == "oil" && s.State != Wrong && s.State != Good {
			stop = append(stop, "oil feed and return not both seen")
		}
	}
	switch j.first.turns {
	case "stops":
		turn = append(turn, "it stops at a point: valve may be on piston; find out before any force")
	case "seized":
		turn = append(turn, "it does not turn")
	case "stiff":
		turn = append(turn, "it is stiff: find out why before any force")
	case "":
		stop = append(stop, "whether it turns freely was not tried")
	}
	if s := r.Section("ignition"); s != nil && len(s.BeforeTurning) > 0 {
		stop = append(stop, s.BeforeTurning...)
	}
	if r.Section("timing") == nil {
		stop = append(stop, "valve timing was not read")
	}
	r.Turn = Permission{Allowed: len(turn) == 0, Text: "By hand only, plug out, slowly, two full turns, stopping at any resistance.", Why: turn}
	if len(turn) > 0 {
		r.Turn.Text = "No, not as it stands."
	}
	r.Start = Permission{Allowed: len(turn)+len(stop) == 0, Text: "Yes, outdoors, ignition retarded, watching oil return and ready to stop.", Why: append(stop, turn...)}
	if !r.Start.Allowed {
		r.Start.Text = "Not yet:"
	}
}
