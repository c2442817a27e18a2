package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"example.com/benchbook/examples/job"
)

func sheet(t *testing.T, in string, args ...string) (status int, out, errs string) {
	t.Helper()
	var o, e bytes.Buffer
	status = run(args, strings.NewReader(in), &o, &e)
	return status, o.String(), e.String()
}

// A terminal is 80 columns wide, a page of it 66 lines of type at 6 to the inch
// on 11 inch paper.
func TestSheetFitsItsPage(t *testing.T) {
	status, out, errs := sheet(t, "")
	if status != 0 || errs != "" {
		t.Fatal(status, errs)
	}
	for _, line := range strings.Split(out, "\n") {
		if utf8.RuneCountInString(line) > width {
			t.Errorf("too wide: %s", line)
		}
	}
	for _, section := range strings.Split(out, "\n\n") {
		if n := strings.Count(section, "\n") + 1; n > 66 {
			t.Errorf("%d lines: %s", n, section[:40])
		}
	}
	if i, j := strings.Index(out, "ORDER OF WORK"), strings.Index(out, "VALVE TIMING"); i < 0 || j < i {
		t.Error("the sheet must open with the order of work")
	}
}

func TestJSONIsTheReport(t *testing.T) {
	status, out, errs := sheet(t, "", "-json")
	if status != 0 {
		t.Fatal(status, errs)
	}
	var r struct {
		Schema   string `json:"schema"`
		Sections []struct {
			Key      string `json:"key"`
			Findings []job.Finding
		} `json:"sections"`
	}
	if err := json.Unmarshal([]byte(out), &r); err != nil {
		t.Fatal(err)
	}
	if r.Schema != job.ReportSchema || len(r.Sections) < 4 {
		t.Errorf("%+v", r)
	}
}

func TestFaultyJobPrintsNothingElse(t *testing.T) {
	status, out, errs := sheet(t, `{"schema":"benchbook/job/1","machin":"x","threads":[{"outside":"6 furlongs"},{"outside":6}]}`, "-job", "-")
	if status != 2 || out != "" {
		t.Errorf("status %d, printed %q", status, out)
	}
	for _, want := range []string{"machin", "did you mean \"machine\"", "threads[0].outside", "threads[1].outside", "3 fault(s)"} {
		if !strings.Contains(errs, want) {
			t.Errorf("no %q in %s", want, errs)
		}
	}
}

func TestJobFromAFile(t *testing.T) {
	if _, err := os.Stat("."); err != nil {
		t.Skip("no files here")
	}
	name := filepath.Join(t.TempDir(), "job.json")
	if err := os.WriteFile(name, job.Demo(), 0o600); err != nil {
		t.Fatal(err)
	}
	_, demo, _ := sheet(t, "")
	if status, out, errs := sheet(t, "", "-job", name); status != 0 || out != demo {
		t.Errorf("status %d: %s", status, errs)
	}
	if status, _, _ := sheet(t, "", "-job", name+".not"); status != 1 {
		t.Errorf("a file that is not there gives status %d, want 1", status)
	}
	if status, _, _ := sheet(t, "", "stray"); status != 2 {
		t.Errorf("a stray word gives status %d, want 2", status)
	}
}
