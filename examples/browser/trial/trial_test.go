package trial_test

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"fmt"
	"io"
	"reflect"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/benchbook/examples/browser/trial"
	"example.com/benchbook/examples/job"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

func demo(t testing.TB) *trial.Trial {
	t.Helper()
	tr, err := trial.Open(job.Demo())
	if err != nil {
		t.Fatal(err)
	}
	return tr
}

func must(t testing.TB, tr *trial.Trial, key, value string) {
	t.Helper()
	if _, err := tr.Move(key, value); err != nil {
		t.Fatal(err)
	}
}

func TestUnmovedIsTheBenchSheet(t *testing.T) {
	tr := demo(t)
	for _, key := range []string{"clutch", "timing"} {
		p, err := tr.Panel(key, 700)
		if err != nil {
			t.Fatal(err)
		}
		if want := tr.Report().Section(key).Findings; !reflect.DeepEqual(p.Findings, want) {
			t.Errorf("%s:\n got %v\nwant %v", key, p.Findings, want)
		}
		if len(p.Cautions) == 0 {
			t.Errorf("%s has no cautions", key)
		}
	}
}

// Whatever is moved, the quick answer is the whole one's, the drawing is XML,
// and the file written reads back to the same answer.
func TestQuickIsWhole(t *testing.T) {
	tr := demo(t)
	controls := tr.Controls()
	rapid.Check(t, func(t *rapid.T) {
		if err := tr.Back(); err != nil {
			t.Fatal(err)
		}
		last, brief := "", ""
		for range rapid.IntRange(1, 2).Draw(t, "moves") {
			c := rapid.SampledFrom(controls).Draw(t, "control")
			to := rapid.SampledFrom([]string{"", "yes", "no"}).Draw(t, "word")
			if c.Most > c.Least {
				to = strconv.Itoa(rapid.IntRange(c.Least, c.Most).Draw(t, "to"))
			}
			panel, err := tr.Move(c.Key, to)
			if err != nil {
				t.Fatal(err)
			}
			width := rapid.SampledFrom([]int{-1, 320, 760}).Draw(t, "width")
			quick, errQuick := tr.Quick(panel, width)
			whole, errWhole := tr.Panel(panel, width)
			if (errQuick == nil) != (errWhole == nil) {
				t.Fatalf("quick says %v, whole says %v", errQuick, errWhole)
			}
			if errQuick != nil {
				continue
			}
			if quick.Brief != whole.Brief || !reflect.DeepEqual(quick.Pictures, whole.Pictures) || !reflect.DeepEqual(quick.Bars, whole.Bars) || !reflect.DeepEqual(quick.Controls, whole.Controls) {
				t.Fatalf("quick:\n%+v\nwhole:\n%+v", quick, whole)
			}
			wellFormed(t, quick.Pictures[0].SVG)
			last, brief = panel, whole.Brief
		}
		if last == "" {
			return
		}
		file, err := tr.File()
		if err != nil {
			t.Fatal(err)
		}
		again, err := trial.Open(file)
		if err != nil {
			t.Fatalf("%v\n%s", err, file)
		}
		if p, err := again.Quick(last, 700); err != nil || p.Brief != brief {
			t.Fatalf("its own file: %v, %q, want %q", err, p.Brief, brief)
		}
	})
}

func wellFormed(t *rapid.T, svg string) {
	d := xml.NewDecoder(strings.NewReader(svg))
	for {
		_, err := d.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatalf("%v in %s", err, svg)
		}
	}
	if strings.Contains(svg, "NaN") || strings.Contains(svg, "Inf") {
		t.Fatalf("not drawn: %s", svg)
	}
}

// A cam moved as far back as it stands early is right: the finding follows.
func TestMovedBackIsRight(t *testing.T) {
	tr := demo(t)
	must(t, tr, trial.InletEarly, "-9")
	must(t, tr, trial.ExhaustEarly, "15")
	p, err := tr.Panel("timing", 700)
	if err != nil {
		t.Fatal(err)
	}
	if p.Findings[0].Fault || !strings.HasPrefix(p.Brief, "Inlet right, exhaust right") {
		t.Errorf("%q, %v", p.Brief, p.Findings[0])
	}
	if err := tr.Back(); err != nil {
		t.Fatal(err)
	}
	if p, err = tr.Quick("timing", 700); err != nil || !strings.HasPrefix(p.Brief, "Inlet 9.6° early, exhaust 14.5° late") {
		t.Errorf("back again: %v, %q", err, p.Brief)
	}
}

// A lift at top dead centre belongs to the cam as it stood when it was read.
func TestLiftAtTDCIsLeftOut(t *testing.T) {
	file := bytes.Replace(job.Demo(), []byte(`"exhaust_opens": "35 BBDC",`), []byte(`"exhaust_opens": "35 BBDC", "inlet_lift_at_tdc": "2.5 mm",`), 1)
	tr, err := trial.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	has := func() bool {
		data, err := tr.File()
		if err != nil {
			t.Fatal(err)
		}
		return bytes.Contains(data, []byte("inlet_lift_at_tdc"))
	}
	for _, step := range []struct {
		to   string
		want bool
	}{{"0", true}, {"-3", false}, {"0", true}} {
		must(t, tr, trial.InletEarly, step.to)
		if has() != step.want {
			t.Errorf("moved to %s: in the file %v", step.to, !step.want)
		}
		quick, err := tr.Quick("timing", 700)
		if err != nil {
			t.Fatal(err)
		}
		if whole, err := tr.Panel("timing", 700); err != nil || whole.Brief != quick.Brief {
			t.Errorf("%v: quick %q, whole %q", err, quick.Brief, whole.Brief)
		}
	}
}

// A table of lift moves with its cam: at even steps or place by place, alone or
// beside an event that was read by itself.
func TestTableMovesWithItsCam(t *testing.T) {
	var places []string
	for i, l := range lifts(t) {
		places = append(places, fmt.Sprintf(`{"at": %q, "lift": %q}`, units.After(units.TDC, units.CrankDegrees(float64(10*i-70))), l))
	}
	table := regexp.MustCompile(`(?s)"inlet_curve": \{.*?\},`)
	for name, file := range map[string][]byte{
		"even":      job.Demo(),
		"by places": table.ReplaceAll(job.Demo(), []byte(`"inlet_curve": [`+strings.Join(places, ", ")+`],`)),
		"an event":  bytes.Replace(job.Demo(), []byte(`"exhaust_opens": "35 BBDC"`), []byte(`"inlet_opens": "19 BTDC", "exhaust_opens": "35 BBDC"`), 1),
	} {
		tr, err := trial.Open(file)
		if err != nil {
			t.Fatal(name, err)
		}
		before, err := tr.Quick("timing", 700)
		if err != nil {
			t.Fatal(name, err)
		}
		for _, to := range []string{"-9", "17", "0"} {
			must(t, tr, trial.InletEarly, to)
			quick, err := tr.Quick("timing", 700)
			if err != nil {
				t.Fatal(name, err)
			}
			whole, err := tr.Panel("timing", 700)
			if err != nil || whole.Brief != quick.Brief || !reflect.DeepEqual(whole.Pictures, quick.Pictures) {
				t.Errorf("%s, %s: %v: quick %q, whole %q", name, to, err, quick.Brief, whole.Brief)
			}
			if len(whole.First) > 0 && strings.HasPrefix(whole.First[0], "read again") {
				t.Errorf("%s, %s: the table did not move: %s", name, to, whole.First[0])
			}
			if same := quick.Brief == before.Brief; same != (to == "0") {
				t.Errorf("%s, %s: %q", name, to, quick.Brief)
			}
		}
	}
}

// lifts are those of the demonstration's table.
func lifts(t *testing.T) []string {
	var root struct {
		Timing struct {
			Read struct {
				Curve struct{ Lifts []string } `json:"inlet_curve"`
			}
		}
	}
	if err := json.Unmarshal(job.Demo(), &root); err != nil {
		t.Fatal(err)
	}
	return root.Timing.Read.Curve.Lifts
}

func TestRefused(t *testing.T) {
	_, err := trial.Open([]byte(`{"schema":"benchbook/job/1","engin":{},"clutch":{"made":{"springs":0}}}`))
	if got := len(fault.Faults(err)); got != 2 {
		t.Errorf("%d faults, wanted both: %v", got, err)
	}
	tr := demo(t)
	for _, m := range [][2]string{{trial.Nuts, "999"}, {trial.Nuts, "6.5"}, {trial.Nuts, ""}, {trial.InletEarly, "-41"}, {trial.Slips, "perhaps"}, {"throttle", "1"}} {
		if _, err := tr.Move(m[0], m[1]); len(fault.Faults(err)) != 1 || fault.Faults(err)[0].Path != m[0] {
			t.Errorf("%v: %v", m, err)
		}
	}
	if _, err := tr.Panel("road", 700); err == nil {
		t.Error("a panel that is none")
	}
	bare, err := trial.Open([]byte(`{"schema":"benchbook/job/1"}`))
	if err != nil {
		t.Fatal(err)
	}
	if c := bare.Controls(); len(c) != 0 {
		t.Errorf("a bare job has controls: %v", c)
	}
	if _, err := bare.Quick("clutch", 700); err == nil {
		t.Error("a clutch that is none")
	}
}

func ExampleOpen() {
	_, err := trial.Open([]byte(`{"schema": "benchbook/job/1", "engine": {"bore": "78 lb"}, "clutch": 3}`))
	for _, f := range fault.Faults(err) {
		fmt.Println(f.Path)
	}
	// Output:
	// engine.bore
	// clutch
}

func ExampleTrial_Move() {
	t, err := trial.Open(job.Demo())
	if err != nil {
		fmt.Println(err)
		return
	}
	panel, err := t.Move(trial.InletEarly, "-9")
	if err != nil {
		fmt.Println(err)
		return
	}
	p, err := t.Quick(panel, 700)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(p.Pictures[0].Finding)
	// Output:
	// inlet right, exhaust 14.5° late
}
