package job

import (
	"math"
	"strconv"

	"example.com/benchbook/transmission/drive"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

func readRoad(s section) part {
	var line drive.Line
	var opt drive.TableOptions
	line.Primary = s.pairs("primary")
	line.Final = s.pairs("final")
	box, err := drive.BoxOf(s.texts("gears")...)
	s.faults.Under(under(s.path, "gears"), err)
	line.Box = box
	if t := s.text("rear_tyre"); t != "" {
		tyre, err := drive.ParseTyre(t)
		if s.faults.Under(under(s.path, "rear_tyre"), err) {
			rolling, err := tyre.Rolling()
			s.faults.Under(under(s.path, "rear_tyre"), err)
			line.Rolling = rolling.Reading
		}
	}
	line.Rolling = reading(s, "roll_out", measure.Rule()).Or(line.Rolling)
	opt.At, _ = quantity[units.Speed](s, "at")
	s.close()
	return func(j *job) (Section, error) {
		if j.engine.peak.Taken() {
			opt.ChangeAt = j.engine.peak.Value()
		}
		return roadSection(line, opt)
	}
}

// pairs returns the pairs of wheels at key, each a list of driver and driven.
func (s section) pairs(key string) drive.Train {
	teeth := s.counts(key, 2, 1000)
	if len(teeth)%2 != 0 {
		s.fault(key, fault.BadForm, "", "driver and driven teeth in pairs, such as [22, 46]")
		return nil
	}
	var t drive.Train
	for i := 0; i < len(teeth); i += 2 {
		t = append(t, drive.Pair{Driver: teeth[i], Driven: teeth[i+1]})
	}
	return t
}

func roadSection(line drive.Line, opt drive.TableOptions) (Section, error) {
	s := Section{Key: "road", Title: "Gearing and the road test"}
	r, err := line.Table(opt)
	if err != nil {
		return s, err
	}
	s.Result = RoadResult{line, opt, r}
	top := r.Gears[len(r.Gears)-1]
	if top.EngineAt.Taken() {
		s.Findings = append(s.Findings, Finding{Key: "top", Text: "in top, overall " + top.Overall.String() + ", expect " +
			tens(top.EngineAt.Value()) + " at " + r.At.In(units.MilePerHour, 0)})
	}
	if !r.Steady {
		s.Findings = append(s.Findings, Finding{Key: "steps", Text: "the steps between gears do not shrink towards top", Fault: true})
	}
	t := Table{Title: "Gears", Head: []string{"gear", "box", "overall", "per 1000 rev/min", "at " + r.At.In(units.MilePerHour, 0), "after a change up"}}
	for _, g := range r.Gears {
		speed, engine, drops := "needs the tyre", "needs the tyre", "-"
		if g.PerThousand.Taken() {
			speed, engine = g.PerThousand.Value().In(units.MilePerHour, 1), tens(g.EngineAt.Value())
			if r.ChangeAt > 0 && g.EngineAt.Value() > r.ChangeAt {
				engine = "too fast for it"
			}
		}
		if g.DropsTo > 0 {
			drops = tens(g.DropsTo)
		}
		t.Rows = append(t.Rows, []string{g.Name, strconv.FormatFloat(g.Box.Float(), 'f', 2, 64), strconv.FormatFloat(g.Overall.Float(), 'f', 2, 64), speed, engine, drops})
	}
	s.Tables = append(s.Tables, t)
	row(&s, "rolling circumference", line.Rolling)
	s.basis(r.Basis)
	return s, nil
}

// tens says an engine speed to the nearest ten: tyres roll no truer.
func tens(s units.RotationalSpeed) string {
	return units.RevolutionsPerMinute(math.Round(s.RevolutionsPerMinute()/10)*10).In(units.RevolutionPerMinute, 0)
}
