package job_test

import (
	"encoding/json"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/benchbook/examples/job"
	"example.com/benchbook/units/fault"
)

// edit returns the demonstration job with figures changed: path to new text;
// an empty text takes the key away.
func edit(t *testing.T, changes map[string]string) []byte {
	t.Helper()
	var root map[string]any
	if err := json.Unmarshal(job.Demo(), &root); err != nil {
		t.Fatal(err)
	}
	for path, text := range changes {
		var at any = root
		keys := strings.Split(path, ".")
		for i, key := range keys {
			if list, ok := at.([]any); ok {
				n, err := strconv.Atoi(key)
				if err != nil {
					t.Fatal(path, err)
				}
				at = list[n]
				continue
			}
			m := at.(map[string]any)
			if i < len(keys)-1 {
				at = m[key]
			} else if text == "" {
				delete(m, key)
			} else {
				m[key] = text
			}
		}
	}
	data, err := json.Marshal(root)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func run(t *testing.T, changes map[string]string) job.Report {
	t.Helper()
	r, err := job.Run(edit(t, changes))
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// repaired is the demonstration with one planted fault put right each.
var repaired = map[string]map[string]string{
	"exhaust wheel": {"timing.read.exhaust_opens": "50 BBDC", "timing.read.exhaust_closes": "8 ATDC"},
	"inlet cam":     {"timing.read.inlet_curve.from": "60 BTDC"}, // the same table, ten degrees later
	"hub nut":       {"clutch.read.hub_nut_back": "0 turn ± 0.02 turn", "clutch.read.drags": "no", "clutch.read.slips": "no", "clutch.read.nuts_in": "9.5 turns ± 0.1"},
	"carburettor":   {"carburettor.bore": "26 mm", "carburettor.main_jet": "200 cc/min"},
}

func first(r job.Report, section string) job.Finding { return r.Section(section).Findings[0] }

func TestPlantedFaultsAreFoundFirst(t *testing.T) {
	r := run(t, nil)
	timing := first(r, "timing")
	if !timing.Fault || !strings.Contains(timing.Text, "exhaust") || !strings.Contains(timing.Text, "inlet") || !strings.Contains(timing.Text, "tooth") || timing.Percent < 50 {
		t.Errorf("timing leads with %+v", timing)
	}
	clutch := r.Section("clutch")
	if f := clutch.Findings[0]; !f.Fault || f.Percent < 50 {
		t.Errorf("clutch leads with %+v", f)
	}
	if !strings.Contains(clutch.DoFirst[0], "nut") {
		t.Errorf("clutch: do first %q", clutch.DoFirst[0])
	}
	if f := first(r, "carburettor"); !f.Fault || f.Percent < 50 {
		t.Errorf("carburettor leads with %+v", f)
	}
	for i, want := range []string{"1/4-26 cycle", "5/16 BSF", "2 BA"} {
		if f := r.Section("threads").Findings[i]; !strings.Contains(f.Text, want) || f.Percent < 50 {
			t.Errorf("thread %d: %+v, want %s", i, f, want)
		}
	}
	if r.Start.Allowed {
		t.Error("the demonstration may not be started as it stands")
	}
}

func TestRemovingAFaultRemovesTheFinding(t *testing.T) {
	r := run(t, repaired["exhaust wheel"])
	if f := first(r, "timing"); strings.Contains(f.Key, "exhaust") || !strings.Contains(f.Key, "inlet") {
		t.Errorf("exhaust wheel put right, still %+v", f)
	}
	r = run(t, repaired["inlet cam"])
	if f := first(r, "timing"); !strings.Contains(f.Key, "exhaust") || strings.Contains(f.Key, "inlet") {
		t.Errorf("inlet cam put right, still %+v", f)
	}
	both := map[string]string{}
	for _, k := range []string{"exhaust wheel", "inlet cam"} {
		for path, text := range repaired[k] {
			both[path] = text
		}
	}
	if f := first(run(t, both), "timing"); f.Fault {
		t.Errorf("both cams put right, still %+v", f)
	}
	if f := first(run(t, repaired["hub nut"]), "clutch"); f.Fault {
		t.Errorf("hub nut tightened and nuts set, still %+v", f)
	}
	if s := run(t, repaired["carburettor"]).Section("carburettor"); s.Faulty() {
		t.Errorf("carburettor of the right size, still %+v", s.Findings)
	}
}

// A figure without ± never becomes exact: the odds stay odds.
func TestBareFigures(t *testing.T) {
	r := run(t, map[string]string{
		"timing.read.inlet_max_lift": "8.15 mm", "timing.read.exhaust_max_lift": "8.02 mm",
		"timing.specified.inlet_max_lift": "8.2 mm", "timing.specified.exhaust_max_lift": "8.0 mm",
		"clutch.read.nuts_in": "6 turns", "clutch.read.friction": "0.11", "clutch.read.spring_set": "1.0 mm", "clutch.read.out_of_flat": "0.5 mm",
		"clutch.read.hub_nut_back": "0.5 turn", "clutch.read.free_play": "3 mm", "engine.peak_speed": "5200 rpm",
	})
	for _, s := range r.Sections {
		for _, f := range s.Findings {
			if f.Percent < 0 || f.Percent > 100 {
				t.Errorf("%s: %+v", s.Key, f)
			}
		}
	}
	if f := first(r, "timing"); f.Percent < 50 || !strings.Contains(f.Text, "tooth") {
		t.Errorf("timing leads with %+v", f)
	}
	for _, row := range r.Section("timing").Read {
		if row.Note == "" && !strings.Contains(row.Figure, "±") {
			t.Errorf("%s: %s is bare and nothing says what stood in for its uncertainty", row.What, row.Figure)
		}
	}
}

// What stood in for the uncertainty of a bare figure is told in the reader's unit
// where it has one that fits.
func TestUncertaintyInTheReadersUnit(t *testing.T) {
	r := run(t, map[string]string{"carburettor.air_temperature": "59 °F", "carburettor.air_pressure": "29.8 inHg", "first_look.compression_dry": "120 psi"})
	for _, want := range []struct{ section, what, note string }{
		{"carburettor", "air temperature", "± 1.0 °C by default, thermometer"},
		{"carburettor", "air pressure", "± 0.059 inHg by default, barometer"}, // 2 hPa
		{"timing", "compression dry", "± 6 psi by default, compression gauge"},
	} {
		found := ""
		for _, row := range r.Section(want.section).Read {
			if row.What == want.what {
				found = row.Note
			}
		}
		if found != want.note {
			t.Errorf("%s: %q, want %q", want.what, found, want.note)
		}
	}
}

func TestEveryFaultAtOnce(t *testing.T) {
	data := edit(t, map[string]string{
		"timing.read.inlet_opens":       "400 BTDC",   // impossible
		"timing.read.inlett_closes":     "48 ABDC",    // unknown key
		"timing.read.inlet_curve.every": "10",         // which shaft?
		"timing.specified.clearance":    "0.1",        // no unit
		"clutch.made.spring_rate":       "25 N",       // unit of another quantity
		"clutch.read.friction":          "0.11 ± 0",   // no such certainty
		"carburettor.main_jet":          "110",        // a bare jet number
		"carburettor.air_temperature":   "15 gallons", // nonsense
		"threads.0.pitch":               "0 tpi",
		"engine.bore":                   "78 furlongs",
	})
	data = []byte(strings.Replace(string(data), `"faces":10`, `"faces":10,"faces":12,"driven_plates":-1`, 1))
	r, err := job.Run(data)
	if len(r.Sections) != 0 {
		t.Error("something was computed from a faulty job")
	}
	got := map[string]fault.Code{}
	for _, f := range fault.Faults(err) {
		got[f.Path] = f.Code
	}
	want := map[string]fault.Code{
		"timing.read.inlet_opens": fault.OutOfRange, "timing.read.inlett_closes": fault.UnknownName, "timing.read.inlet_curve.every": fault.UnitMissing, "timing.specified.clearance": fault.UnitMissing,
		"clutch.made.spring_rate": fault.UnitUnknown, "clutch.read.friction": fault.OutOfRange, "carburettor.main_jet.jet": fault.UnitMissing,
		"carburettor.air_temperature": fault.UnitUnknown, "threads[0].pitch.threads per inch": fault.OutOfRange, "engine.bore": fault.UnitUnknown,
		"clutch.made.faces": fault.Conflict, "clutch.made.driven_plates": fault.OutOfRange,
	}
	for path, code := range want {
		if got[path] != code {
			t.Errorf("%s: got code %q, want %q", path, got[path], code)
		}
	}
	if len(got) != len(want) {
		t.Errorf("%d faults, want %d: %v", len(got), len(want), err)
	}
}

func TestSectionsMayBeMissing(t *testing.T) {
	r, err := job.Run([]byte(`{"schema":"benchbook/job/1","machine":"a bare one"}`))
	if err != nil || len(r.Sections) != 0 || r.Start.Allowed {
		t.Errorf("%+v %v", r, err)
	}
	for _, key := range []string{"timing", "clutch", "carburettor", "threads", "engine", "first_look"} {
		r, err := job.Run(edit(t, map[string]string{key: ""}))
		if key == "engine" { // carburettor and head cannot do without it
			if f := fault.Faults(err); len(f) != 2 || f[0].Path != "timing.head" || f[1].Path != "carburettor" {
				t.Errorf("without engine: %v", err)
			}
			continue
		}
		if err != nil || r.Section(key) != nil {
			t.Errorf("without %s: %v", key, err)
		}
	}
}

// Each part of the empty job that stands there as a remark is a part that runs once
// its name is freed, and all of them together are every part there is.
func TestTheEmptyJobShowsEveryPart(t *testing.T) {
	empty := strings.Replace(string(job.Empty()), `"bore": "", "stroke": "", "rod": ""`, `"bore": "78 mm", "stroke": "83 mm", "rod": "165 mm"`, 1)
	all := empty
	for _, part := range []string{"ignition", "clutch", "carburettor", "limits", "road"} {
		freed := strings.Replace(empty, `"#`+part+`"`, `"`+part+`"`, 1)
		r, err := job.Run([]byte(freed))
		if err != nil || r.Section(part) == nil {
			t.Errorf("%s: %v", part, err)
		}
		all = strings.Replace(all, `"#`+part+`"`, `"`+part+`"`, 1)
	}
	r, err := job.Run([]byte(all))
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range run(t, nil).Sections {
		if r.Section(s.Key) == nil {
			t.Errorf("the empty job does not show %s", s.Key)
		}
	}
}

// Every quantity of a report is {text, value, unit}, a reading has u as well.
func TestReportIsData(t *testing.T) {
	b, err := json.Marshal(run(t, nil))
	if err != nil {
		t.Fatal(err)
	}
	var root any
	if err := json.Unmarshal(b, &root); err != nil {
		t.Fatal(err)
	}
	quantities, readings := 0, 0
	var walk func(path string, v any)
	walk = func(path string, v any) {
		switch v := v.(type) {
		case []any:
			for i, x := range v {
				walk(path+"["+strconv.Itoa(i)+"]", x)
			}
		case map[string]any:
			if _, ok := v["unit"]; ok {
				if _, text := v["text"].(string); !text {
					t.Errorf("%s has a unit and no text", path)
				}
				if _, value := v["value"].(float64); !value {
					t.Errorf("%s has a unit and no value", path)
				}
				quantities++
				if _, u := v["u"]; u {
					readings++
				}
			}
			for k, x := range v {
				if k != strings.ToLower(k) {
					t.Errorf("%s.%s is not in snake case", path, k)
				}
				walk(path+"."+k, x)
			}
		}
	}
	walk("", root)
	if quantities < 50 || readings < 20 {
		t.Errorf("only %d quantities, %d of them readings", quantities, readings)
	}
}

func FuzzRun(f *testing.F) {
	f.Add(job.Demo())
	f.Add([]byte(`{"schema":"benchbook/job/1","threads":[{"outside":"6 mm"}]}`))
	f.Add([]byte(`[`))
	f.Fuzz(func(t *testing.T, data []byte) {
		r, err := job.Run(data)
		if err != nil {
			if len(r.Sections) > 0 || len(fault.Faults(err)) == 0 {
				t.Errorf("half a result: %v", err)
			}
			return
		}
		if _, err := json.Marshal(r); err != nil {
			t.Error(err)
		}
		if !slices.ContainsFunc(r.Order, func(s job.Step) bool { return s.Key == "oil" }) {
			t.Error("no oil in the order of work")
		}
	})
}
