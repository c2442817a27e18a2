package job

import (
	"strconv"
	"strings"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fastener"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// unknownThread is one thread of the job.
type unknownThread struct {
	path, where string
	read        fastener.Readings
}

func readThreads(subs []section) part {
	var all []unknownThread
	for _, s := range subs {
		t := unknownThread{path: s.path, where: s.text("where")}
		t.read.Major = reading(s, "outside", measure.Caliper())
		t.read.Hole = reading(s, "hole", measure.Caliper())
		t.read.Flank = reading(s, "flank", measure.Protractor())
		pitch, err := fastener.ReadPitch(s.text("pitch"), measure.PitchGauge())
		s.faults.Under(under(s.path, "pitch"), err)
		t.read.Pitch = pitch
		if count, ok := s.object("count"); ok {
			t.read.Count.Pitches = reading(count, "pitches", measure.Count())
			t.read.Count.Over = reading(count, "over", measure.Rule())
			count.close()
		}
		t.read.Part = map[string]fastener.Part{"bolt": fastener.Bolt, "fitting": fastener.Fitting, "spoke": fastener.WheelSpoke}[s.choice("part", "bolt", "fitting", "spoke")]
		t.read.Hand = map[string]fastener.Hand{"right": fastener.Right, "left": fastener.Left}[s.choice("hand", "right", "left")]
		s.close()
		all = append(all, t)
	}
	return func(*job) (Section, error) { return threadsSection(all) }
}

func threadsSection(all []unknownThread) (Section, error) {
	s := Section{Key: "threads", Title: "Threads"}
	var faults fault.List
	var results ThreadsResult
	for i, t := range all {
		id, err := fastener.Identify(t.read, fastener.IdentifyOptions{})
		if !faults.Under("["+strconv.Itoa(i)+"]", err) {
			continue
		}
		where := t.where
		if where == "" {
			where = "thread " + strconv.Itoa(i+1)
		}
		results.Threads = append(results.Threads, ThreadResult{where, id})
		s.Findings = append(s.Findings, threadFinding(where, id))
		row(&s, where+", outside", t.read.Major)
		row(&s, where+", hole", t.read.Hole)
		row(&s, where+", pitch", t.read.Pitch)
		row(&s, where+", flank", t.read.Flank)
		if len(id.NextReadings) > 0 && len(id.Alike) > 1 {
			g := id.NextReadings[0]
			s.Next = append(s.Next, Settle{Text: where + ": " + g.Text, Bits: g.Bits, Minutes: g.Work.MinutesOfTime()})
		}
		unknown := id.Basis.NotChecked
		id.Basis.NotChecked = nil
		s.basis(id.Basis)
		for _, u := range unknown {
			u.What = where + ": " + u.What
			s.NotChecked = append(s.NotChecked, u)
		}
	}
	s.Tables = append(s.Tables, threadTable(results))
	s.Result = results
	return s, faults.Err()
}

func threadFinding(where string, id fastener.Identification) Finding {
	if id.Reason.Given() {
		return Finding{Key: "thread", Text: where + ": " + id.Reason.Text, Fault: true}
	}
	lead := id.Causes.Leader()
	f := Finding{Key: lead.Key, Text: where + ": " + id.Thread().String(), Sure: lead.Words(), Percent: lead.Percent}
	if len(id.Alike) > 1 {
		var names []string
		for _, t := range id.Alike[1:] {
			names = append(names, t.Name())
		}
		f.Text += ", which these readings cannot tell from " + strings.Join(names, ", ")
	}
	return f
}

// threadTable gives the pitch, tapping drill and spanner of each likely thread.
func threadTable(results ThreadsResult) Table {
	table := Table{Title: "For the likeliest", Head: []string{"thread", "outside", "pitch", "tap drill", "spanner"}}
	done := map[string]bool{}
	drills := fastener.Drills()
	for _, t := range results.Threads {
		th := t.Identification.Thread()
		if th.IsZero() || done[th.Key()] {
			continue
		}
		done[th.Key()] = true
		drill := "none in the set"
		if tap, err := fastener.TappingDrill(th, units.Percents(engagement), fastener.ChartDepth, drills); err == nil && !tap.Reason.Given() {
			drill = tap.Choice.Drill.Name + ", " + percent(tap.Choice.Engagement.Value())
		}
		spanner := "not in the tables"
		if hexes, err := fastener.Hexagons(th, fastener.HexOptions{}); err == nil && len(hexes.Hexagons) > 0 {
			spanner = hexes.Hexagons[0].Spanner
		}
		table.Rows = append(table.Rows, []string{th.Name(), th.Major().In(units.Millimetre, 2), strconv.FormatFloat(th.ThreadsPerInch(), 'f', 1, 64) + " tpi", drill, spanner})
	}
	return table
}

// engagement is the per cent of thread to drill for, by the usual drill charts
// (common practice, no source).
const engagement = 75
