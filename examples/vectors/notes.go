package main

import "strings"

// What each recipe says of itself in the file.

func (arcCurve) note() string {
	return "the curve is a periodic cubic spline through 720 points of the arc cam with its nose at nose_at; another way through them agrees to about 1e-5 mm"
}
func (valve) note() string    { return arcCurve{}.note() }
func (fitted) note() string   { return "the curve is drawn through the samples as Fit does" }
func (profiles) note() string { return arcCurve{}.note() }
func (headWithCams) note() string {
	return "the lifts of the head's valves are those of the two curves of arc cams"
}
func (plan) note() string    { return "the plan is of all that can be moved on the engine" }
func (magneto) note() string { return "train is the wheels to the ignition shaft, if they are told" }

func (armed) note() string       { return "the release is a bell crank of the arms and rests given" }
func (coil) note() string        { return "the spring is made by NewHelical" }
func (disc1) note() string       { return "the spring is made by NewDisc" }
func (linear) note() string      { return "the spring is made by NewLinear" }
func (stack) note() string       { return "the spring is made by NewDisc and NewStack" }
func (levered) note() string     { return "the spring is made by NewLinear and NewLevered" }
func (inRow) note() string       { return "the spring is made by NewLinear and NewSeries, end to end" }
func (together) note() string    { return "the spring is made by NewLinear and NewParallel, side by side" }
func (parts) note() string       { return "the parts are made by NewLinear" }
func (elements) note() string    { return "the springs are made by NewLinear" }
func (strengthRow) note() string { return "the row of that name in the table of spring strengths" }

func (jet) note() string { return "the jet is read by ReadJet" }
func (setup) note() string {
	return "the carburettor's jets are read from main_jet and pilot_jet by ReadJet"
}
func (model) note() string { return setup{}.note() + ", the model is made by NewModel" }
func (grid) note() string  { return "the map is that of the model at the lifts and speeds" }
func (beginning) note() string {
	return "the fitted jets are read from main_jet and pilot_jet by ReadJet"
}
func (changed) note() string   { return "main_jet is read by ReadJet" }
func (advising) note() string  { return "the model, if there is one, is made of its setup by NewModel" }
func (wanting) note() string   { return "the settings are those of the model for the targets" }
func (namedFuel) note() string { return "the fuel is that of the table of fuels" }
func (blend) note() string     { return namedFuel("").note() }
func (burning) note() string   { return "the exhaust is that of the formula burnt at lambda by Burn" }

func (formula) note() string  { return "the formula in SI units, its letters the inputs in order" }
func (equation) note() string { return "the formula, of x" }
func (cause) note() string    { return "the cause's readings are normal, as gaussian says" }
func (causes) note() string   { return cause{}.note() }
func (weighed) note() string  { return "the ranking is that of Rank" }
func (spread) note() string   { return "the precision is that of the gaussian over the data taken" }

func (drills) note() string       { return "the drills are a set by its name, all: every set" }
func (joint) note() string        { return "the bolt's strength is that of its class or grade, if it has one" }
func (twinAmong) note() string    { return "among: the threads looked through, all of the tables if none" }
func (standInAmong) note() string { return twinAmong{}.note() }
func (handed) note() string       { return "the thread with its hand noted" }
func (found) note() string        { return "the identification is that of Identify" }

func (chainTable) note() string   { return "the table of chains" }
func (threadTable) note() string  { return "the table of all threads" }
func (tyreTable) note() string    { return "the table of tyres" }
func (threadRow) note() string    { return "the row of that name in the table of threads" }
func (openRange) note() string    { return "an end that is left out is open" }
func (openFigure) note() string   { return "a value that is left out is not known" }
func (limitOptions) note() string { return openRange{}.note() }
func (givenRange) note() string   { return openRange{}.note() }

// notes joins what there is to say of a row of arguments, each once.
func notes(first string, r row) string {
	var said []string
	if first != "" {
		said = append(said, first)
	}
	seen := map[string]bool{}
	for _, v := range r {
		if m, ok := v.(recipe); ok && !seen[m.note()] {
			seen[m.note()] = true
			said = append(said, m.note())
		}
	}
	return strings.Join(said, "; ")
}
