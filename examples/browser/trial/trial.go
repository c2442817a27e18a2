package trial

import (
	"bytes"
	"encoding/json"
	"maps"
	"strconv"
	"strings"

	"example.com/benchbook/examples/job"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Trial is a job with some readings moved.
type Trial struct {
	data   []byte         // the job file as it was opened
	tree   map[string]any // the same, readings moved
	was    map[string]any // the same, as it was
	report job.Report     // of the file as it was opened
	clutch *job.ClutchResult
	timing *job.TimingResult
	// carburettor is nil also where its mixture could not be worked out.
	carburettor *job.CarburettorResult
	at          map[string]int    // steps of the controls that were moved
	signs       map[string]string // and the words of the others
}

// Open reads a job file and works it whole. Errors: every fault of the file,
// each with its path.
func Open(data []byte) (*Trial, error) {
	report, err := job.Run(data)
	if err != nil {
		return nil, err
	}
	t := &Trial{data: bytes.Clone(data), report: report}
	if err := t.Back(); err != nil {
		return nil, err
	}
	if s := report.Section("clutch"); s != nil {
		if r, ok := s.Result.(job.ClutchResult); ok {
			t.clutch = &r
		}
	}
	if s := report.Section("timing"); s != nil {
		if r, ok := s.Result.(job.TimingResult); ok {
			t.timing = &r
		}
	}
	if s := report.Section("carburettor"); s != nil {
		if r, ok := s.Result.(job.CarburettorResult); ok && len(r.Mixture) > 0 {
			t.carburettor = &r
		}
	}
	return t, nil
}

// Back puts every reading back to where the job file has it.
func (t *Trial) Back() error {
	for _, to := range []*map[string]any{&t.tree, &t.was} {
		*to = nil
		dec := json.NewDecoder(bytes.NewReader(t.data))
		dec.UseNumber()
		if err := dec.Decode(to); err != nil { // job.Run has read it, so it is whole
			return fault.Fault{Code: fault.BadForm, Rule: "not JSON: " + err.Error()}
		}
	}
	t.at, t.signs = map[string]int{}, map[string]string{}
	return nil
}

// Report returns the report of the job as it was opened.
func (t *Trial) Report() job.Report { return t.report }

// Panels returns the parts of this job that have controls, by the keys of their
// sections, in the order of the page.
func (t *Trial) Panels() []string {
	var all []string
	for _, p := range []struct {
		key string
		is  bool
	}{{"clutch", t.clutch != nil}, {"timing", t.timing != nil}, {"carburettor", t.carburettor != nil}} {
		if p.is {
			all = append(all, p.key)
		}
	}
	return all
}

// Move sets a control: to a whole number of its steps, or for a sign to "yes",
// "no" or "". It returns the panel that the control bears on. Errors: no such
// control in this job, a value outside its range; the readings then stay as they
// were.
func (t *Trial) Move(key, value string) (panel string, err error) {
	for _, c := range t.Controls() {
		if c.Key != key {
			continue
		}
		switch key {
		case Slips, Drags:
			if value != "" && value != "yes" && value != "no" {
				return "", fault.Fault{Code: fault.UnknownName, Path: key, Value: value, Rule: "one of: yes, no, or nothing for not tried"}
			}
			t.signs[key] = value
		default:
			n, err := strconv.Atoi(value)
			if err != nil || n < c.Least || n > c.Most {
				return "", fault.Fault{Code: fault.OutOfRange, Path: key, Value: value, Rule: "a whole number from " + strconv.Itoa(c.Least) + " to " + strconv.Itoa(c.Most)}
			}
			t.at[key] = n
		}
		t.write(key)
		return c.Panel, nil
	}
	return "", fault.Fault{Code: fault.UnknownName, Path: key, Rule: "not a control of this job"}
}

// write puts a moved control into the tree.
func (t *Trial) write(key string) {
	for _, s := range scales() {
		if s.key == key {
			t.reading(s.section, s.field, s.file(t.clutch, t.at[key]))
			return
		}
	}
	for _, p := range parts() {
		if p.key == key {
			t.part(p)
			return
		}
	}
	switch key {
	case Slips, Drags:
		t.reading("clutch", key, t.signs[key])
	case InletEarly:
		r := t.timing.Input.Readings
		t.event("inlet_opens", r.InletOpens, t.at[key])
		t.event("inlet_closes", r.InletCloses, t.at[key])
		t.table("inlet_curve", t.at[key])
		t.without("inlet_lift_at_tdc", r.InletLiftAtTDC, t.at[key])
	case ExhaustEarly:
		r := t.timing.Input.Readings
		t.event("exhaust_opens", r.ExhaustOpens, t.at[key])
		t.event("exhaust_closes", r.ExhaustCloses, t.at[key])
		t.table("exhaust_curve", t.at[key])
		t.without("exhaust_lift_at_tdc", r.ExhaustLiftAtTDC, t.at[key])
	}
}

// reading writes text at a field of what was read in a section.
func (t *Trial) reading(section, field, text string) {
	sub, _ := t.tree[section].(map[string]any)
	if sub == nil {
		return
	}
	read, _ := sub["read"].(map[string]any)
	if read == nil {
		read = map[string]any{}
		sub["read"] = read
	}
	if text == "" {
		delete(read, field)
		return
	}
	read[field] = text
}

// event writes a valve event moved so many crank degrees earlier.
func (t *Trial) event(field string, p measure.Position, early int) {
	what := strings.ReplaceAll(field, "_", " ")
	if p.Taken() && !standsIn(t.timing.InletCurve, what) && !standsIn(t.timing.ExhaustCurve, what) {
		t.reading("timing", field, moved(p, early))
	}
}

// table writes a table of lift with its places so many crank degrees earlier than
// in the file as it was opened.
func (t *Trial) table(field string, early int) {
	was := readOf(t.was, "timing")[field]
	if readOf(t.tree, "timing")[field] == nil || was == nil {
		return
	}
	earlier := func(place any) any {
		text, _ := place.(string)
		at, err := units.ParsePosition(text)
		if err != nil || early == 0 {
			return place
		}
		return units.After(at.Datum(), at.After()-units.CrankDegree.Times(float64(early))).String()
	}
	switch was := was.(type) {
	case map[string]any:
		even := maps.Clone(was)
		even["from"] = earlier(was["from"])
		readOf(t.tree, "timing")[field] = even
	case []any:
		var places []any
		for _, p := range was {
			point, _ := p.(map[string]any)
			point = maps.Clone(point)
			point["at"] = earlier(point["at"])
			places = append(places, point)
		}
		readOf(t.tree, "timing")[field] = places
	}
}

// readOf returns what was read in a section, nil if nothing was.
func readOf(tree map[string]any, section string) map[string]any {
	sub, _ := tree[section].(map[string]any)
	read, _ := sub["read"].(map[string]any)
	return read
}

// moved returns an event so many crank degrees earlier as a job file has it,
// with the uncertainty it had there.
func moved(p measure.Position, early int) string {
	if early == 0 {
		return p.Text()
	}
	at := p.Value()
	text := units.After(at.Datum(), at.After()-units.CrankDegree.Times(float64(early))).String()
	if p.Instrument() == "" {
		text += " ± " + strconv.FormatFloat(p.U().Degrees(), 'g', 4, 64) + "°"
	}
	return text
}

// without leaves a lift at top dead centre out while its cam is moved: it was
// read with the cam where it was.
func (t *Trial) without(field string, lift measure.Reading[units.Length], early int) {
	text := ""
	if lift.Taken() && early == 0 {
		text = lift.Text()
	}
	t.reading("timing", field, text)
}

// file returns steps as a job file has them, with the uncertainty the reading
// had; without one, the figure takes its instrument's default.
func (s scale) file(c *job.ClutchResult, n int) string {
	text := strconv.FormatFloat(float64(n)*s.step, 'f', s.digits, 64) + " " + s.unit
	if _, u, taken := s.now(c); taken && u > 0 {
		text += " ± " + strconv.FormatFloat(u, 'g', 4, 64)
	}
	return text
}

// work runs one section of the job with the readings as they stand, together
// with what the others tell it.
func (t *Trial) work(section string) (*job.Section, error) {
	part := map[string]any{}
	for _, key := range []string{"schema", "machine", "engine", "first_look", section} {
		if v, ok := t.tree[key]; ok {
			part[key] = v
		}
	}
	data, err := json.Marshal(part)
	if err != nil {
		return nil, err
	}
	r, err := job.Run(data)
	if err != nil {
		return nil, err
	}
	return r.Section(section), nil
}

// File returns the job file with the readings as moved, keys in the order of
// the alphabet.
func (t *Trial) File() ([]byte, error) {
	tree := maps.Clone(t.tree)
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	err := enc.Encode(tree)
	return b.Bytes(), err
}

// widest is how far a cam may be moved either way in crank degrees.
const widest = 40

// Controls returns the readings of this job that can be moved, in the order of
// the page.
func (t *Trial) Controls() []Control {
	var all []Control
	if t.clutch != nil {
		for _, s := range scales() {
			all = append(all, t.scaled(s))
		}
		all = append(all, t.sign(Slips, t.clutch.Input.Signs.Slips.String()), t.sign(Drags, t.clutch.Input.Signs.Drags.String()))
	}
	if t.timing != nil {
		r := t.timing.Input.Readings
		all = append(all, t.cam(InletEarly, r.InletOpens, r.InletCloses), t.cam(ExhaustEarly, r.ExhaustOpens, r.ExhaustCloses))
	}
	if t.carburettor != nil {
		for _, p := range parts() {
			all = append(all, t.fitted(p))
		}
	}
	return all
}

func (t *Trial) scaled(s scale) Control {
	value, _, taken := s.now(t.clutch)
	n, moved := t.at[s.key]
	c := Control{Key: s.key, Panel: s.section, Least: s.least, Most: s.most, Taken: taken || moved, Moved: moved}
	if !moved {
		n = int(value/s.step + 0.5)
	}
	c.Most = max(c.Most, n)
	c.At = strconv.Itoa(n)
	c.Text = "not read"
	if c.Taken {
		c.Text = s.say(n)
	}
	return c
}

func (t *Trial) sign(key, as string) Control {
	word, moved := t.signs[key]
	if !moved {
		word = as
		if as != "yes" && as != "no" {
			word = ""
		}
	}
	text := word
	if word == "" {
		text = "not tried"
	}
	return Control{Key: key, Panel: "clutch", At: word, Text: text, Taken: word != "", Moved: moved}
}

func (t *Trial) cam(key string, opens, closes measure.Position) Control {
	n := t.at[key]
	c := Control{Key: key, Panel: "timing", Least: -widest, Most: widest, At: strconv.Itoa(n), Text: degrees(n), Moved: n != 0, Taken: opens.Taken() || closes.Taken()}
	if !c.Taken {
		c.Least, c.Most, c.Text = 0, 0, "no event read"
	}
	return c
}
