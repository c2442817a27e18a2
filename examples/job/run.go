package job

import (
	_ "embed"

	"example.com/benchbook/timing/crank"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Schema names the form of job file that this package reads. Form 2 added tables of
// lift under timing; files of form 1 are read as they always were.
const Schema = "benchbook/job/2"

const schemaBefore = "benchbook/job/1"

// ReportSchema names the form of [Report].
const ReportSchema = "benchbook/report/1"

// Version is the version of the library that a report names.
const Version = "0.1.0"

//go:embed demo.json
var demo string

// Demo returns the embedded demonstration job: an invented machine with
// invented readings and several faults planted in it.
func Demo() []byte { return []byte(demo) }

//go:embed empty.json
var empty string

// Empty returns a job file to fill in, every part explained by remarks and
// examples; parts that nothing can be said of while they are empty stand there as
// remarks themselves. It is itself a job that runs, with nothing read from the
// engine.
func Empty() []byte { return []byte(empty) }

// engine is what several sections need to know of the engine.
type engine struct {
	bore, stroke, rod units.Length
	cylinders         int
	peak              measure.Reading[units.RotationalSpeed]
	compression       measure.Reading[units.Ratio]
}

func readEngine(s section) engine {
	e := engine{cylinders: 1}
	for _, l := range []struct {
		key string
		to  *units.Length
	}{{"bore", &e.bore}, {"stroke", &e.stroke}, {"rod", &e.rod}} {
		v, ok := quantity[units.Length](s, l.key)
		if ok && (v < 10*units.Millimetre || v > 500*units.Millimetre) {
			s.fault(l.key, fault.OutOfRange, v.String(), "10 mm to 500 mm")
		}
		*l.to = v
	}
	if n, ok := s.count("cylinders_per_carburettor", 1, 4); ok {
		e.cylinders = n
	}
	e.peak = reading(s, "peak_speed", measure.Nominal[units.RotationalSpeed](0.1))
	e.compression = reading(s, "compression_ratio", measure.Nominal[units.Ratio](0.05))
	s.close()
	return e
}

// cylinder returns the engine's cylinder. Without a rod one of twice the stroke
// stands in, which changes no displacement.
func (e engine) cylinder() crank.Cylinder {
	rod := e.rod
	if rod == 0 {
		rod = e.stroke.Times(2)
	}
	return crank.Cylinder{Bore: e.bore, Slider: crank.Slider{Stroke: e.stroke, Rod: rod}}
}

// job is a job file, read and ready to be worked.
type job struct {
	machine, note string
	engine        engine
	first         firstLook
	inletCloses   measure.Position // as read, for what the compression gauge should show
	parts         []part
}

// part is a section that knows how to work itself out.
type part func(*job) (Section, error)

// Run reads a job file and works through it. The error holds every fault of the
// file, each with its path; nothing is computed unless the file is whole.
func Run(data []byte) (Report, error) {
	j, err := read(data)
	if err != nil {
		return Report{}, err
	}
	r := Report{Schema: ReportSchema, Library: Version, Tables: tablesHash(), Machine: j.machine, Note: j.note}
	var faults fault.List
	for _, p := range j.parts {
		s, err := p(j)
		if faults.Under(s.Key, err) {
			r.Sections = append(r.Sections, s)
		}
	}
	if err := faults.Err(); err != nil {
		return Report{}, err
	}
	r.order(j)
	return r, nil
}

func read(data []byte) (*job, error) {
	var faults fault.List
	root := readTree(data, &faults)
	if root == nil {
		return nil, faults.Err()
	}
	if root.kind != isObject {
		faults.Add(fault.Fault{Code: fault.BadForm, Value: root.text, Rule: "a job file is an object in braces"})
		return nil, faults.Err()
	}
	s := open("", root, &faults)
	j := &job{machine: s.text("machine"), note: s.text("note")}
	if schema := s.text("schema"); schema != Schema && schema != schemaBefore && (schema != "" || !s.has("schema")) {
		s.fault("schema", fault.UnknownName, schema, "this program reads \""+Schema+"\"")
	}
	if sub, ok := s.object("engine"); ok {
		j.engine = readEngine(sub)
	}
	if sub, ok := s.object("first_look"); ok {
		j.first = readFirstLook(sub)
	}
	for _, p := range []struct {
		key  string
		read func(section) part
	}{
		{"timing", readTiming}, {"ignition", readIgnition}, {"clutch", readClutch}, {"carburettor", readCarburettor}, {"limits", readLimits}, {"road", readRoad},
	} {
		if sub, ok := s.object(p.key); ok {
			j.parts = append(j.parts, p.read(sub))
		}
	}
	if subs := s.list("threads"); len(subs) > 0 {
		j.parts = append(j.parts, readThreads(subs))
	}
	s.close()
	return j, faults.Err()
}
