package job_test

import (
	"strings"
	"testing"

	"example.com/benchbook/examples/job"
	"example.com/benchbook/units/fault"
)

// leaking is the demonstration with more said under first_look, and without its
// compression readings if dry is false.
func leaking(t *testing.T, dry bool, more string) []byte {
	t.Helper()
	const spark = `"spark": "on compression"`
	text := string(job.Demo())
	if strings.Count(text, spark) != 1 {
		t.Fatal("the demonstration no longer says " + spark)
	}
	if !dry {
		text = strings.Replace(text, "compression_dry", "#dry", 1)
		text = strings.Replace(text, "compression_wet", "#wet", 1)
	}
	return []byte(strings.Replace(text, spark, spark+", "+more, 1))
}

// A leak-down test speaks in the order of work, in the rows of the timing, and with
// the caution that goes with air in a cylinder.
func TestLeakDown(t *testing.T) {
	for _, c := range []struct {
		name, more string
		dry        bool
		state      job.State
		says       string
	}{
		{"two gauges", `"leak_down": {"supply": "6 bar", "held": "3.6 bar"}, "leak_heard_at": "exhaust"`, false, job.Wrong, "leak-down 40 % lost, heard in the exhaust"},
		{"per cent, and oil", `"leak_down": {"lost": "30 %", "lost_wet": "12 %", "at": "5 ATDC"}, "leak_heard_at": "crankcase"`, true, job.Wrong, "30 % lost, 12 % with oil in the bore, heard in the crankcase: rings"},
		{"tight", `"leak_down": {"lost": "6 %"}`, false, job.Good, "listen where it goes"},
		{"ears alone", `"leak_heard_at": "inlet"`, false, job.Unsure, "heard at the inlet"},
		{"beside the gauge", `"leak_down": {"lost": "8 %"}, "leak_heard_at": "nowhere"`, true, job.Good, "8 % lost, heard nowhere"},
	} {
		r, err := job.Run(leaking(t, c.dry, c.more))
		if err != nil {
			t.Fatal(c.name, err)
		}
		for _, s := range r.Order {
			if s.Key == "compression" && (s.State != c.state || !strings.Contains(s.Why, c.says)) {
				t.Errorf("%s: %v, %q", c.name, s.State, s.Why)
			}
		}
		rows := 0
		for _, row := range r.Section("timing").Read {
			if strings.HasPrefix(row.What, "leak-down lost") {
				rows++
			}
		}
		if want := strings.Count(c.more, "lost") + strings.Count(c.more, "held\""); rows != want {
			t.Errorf("%s: %d rows of the loss, want %d", c.name, rows, want)
		}
	}
	_, err := job.Run(leaking(t, true, `"leak_down": {"held": "5 bar", "lost_wet": "101 %", "at": "20 BBDC", "loud": "yes"}`))
	got := map[string]bool{}
	for _, f := range fault.Faults(err) {
		got[f.Path] = true
	}
	for _, path := range []string{"supply", "lost_wet", "at", "loud"} {
		if !got["first_look.leak_down."+path] {
			t.Errorf("no fault of %s: %v", path, err)
		}
	}
}
