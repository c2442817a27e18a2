package job_test

import (
	"encoding/json"
	"fmt"
	"regexp"
	"strings"
	"testing"

	"example.com/benchbook/examples/job"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// No text of the report, figures of the sheet or of the results under it, has more
// digits than anybody reads; values keep theirs.
func TestNoTextHasMoreDigitsThanAnybodyReads(t *testing.T) {
	b, err := json.Marshal(run(t, nil))
	if err != nil {
		t.Fatal(err)
	}
	text := regexp.MustCompile(`"([^"\\]|\\.)*"`)
	figure := regexp.MustCompile(`[0-9]+\.[0-9]+`)
	for _, s := range text.FindAll(b, -1) {
		for _, f := range figure.FindAll(s, -1) {
			if n := len(strings.TrimLeft(strings.ReplaceAll(string(f), ".", ""), "0")); n > 6 {
				t.Errorf("%d digits in %s", n, s)
			}
		}
	}
	if !regexp.MustCompile(`"value":[0-9]+\.[0-9]{9,}`).Match(b) {
		t.Error("values have lost their digits")
	}
}

// A figure worked out is told in digits to be read; one that was read keeps its own.
func ExampleReport_MarshalJSON() {
	r := job.Report{Sections: []job.Section{{Result: map[string]any{
		"made": units.Millimetres(25.4).Times(1.0 / 3),
		"read": measure.MustRead("7.1234567 mm ± 0.01", measure.Caliper()),
	}}}}
	b, err := json.Marshal(r)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, text := range regexp.MustCompile(`"text":"[^"]*","value":[0-9.]*`).FindAllString(string(b), -1) {
		fmt.Println(text)
	}
	// Output:
	// "text":"8.46667 mm","value":8.466666666666665
	// "text":"7.1234567 mm ± 0.01","value":7.1234567
}
