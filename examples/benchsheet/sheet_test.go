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

// The page asks for nothing outside itself, holds every section and at least a
// picture for each that has one, and closes what it opens.
func TestPage(t *testing.T) {
	r, err := job.Run(job.Demo())
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := writePage(&b, r); err != nil {
		t.Fatal(err)
	}
	page := b.String()
	for _, s := range r.Sections {
		if !strings.Contains(page, "<h2>"+s.Title+"</h2>") {
			t.Errorf("no section %s", s.Title)
		}
	}
	if n := strings.Count(page, `<svg role="img" aria-label="`); n < 8 {
		t.Errorf("%d pictures with a name", n)
	}
	for _, outside := range []string{"<script", "src=", "<link", "@import", "url("} {
		if strings.Contains(page, outside) {
			t.Errorf("the page holds %s", outside)
		}
	}
	for _, tag := range []string{"section", "table", "ul", "ol", "figure", "svg"} {
		if a, z := strings.Count(page, "<"+tag+" ")+strings.Count(page, "<"+tag+">"), strings.Count(page, "</"+tag+">"); a != z {
			t.Errorf("%d <%s>, %d closed", a, tag, z)
		}
	}
}

// The empty job is a job: it runs as it stands, and says it read nothing.
func TestNewJobRuns(t *testing.T) {
	status, fresh, errs := sheet(t, "", "-new")
	if status != 0 {
		t.Fatal(errs)
	}
	status, out, errs := sheet(t, fresh, "-job", "-")
	if status != 0 || !strings.Contains(out, "no valve event was read") {
		t.Errorf("status %d: %s%s", status, errs, out)
	}
}
