package ignition_test

import (
	"encoding/json"
	"strings"
	"testing"

	"example.com/benchbook/timing/ignition"
)

// A result with little read still marshals, what was not read being null or left out.
func TestJSON(t *testing.T) {
	for _, read := range []ignition.Readings{{}, {Advanced: at("40 BTDC")}, {Retarded: at("9 BTDC"), Stroke: ignition.Overlap}} {
		r, err := ignition.Diagnose(ignition.Input{Spec: spec(), Read: read}, ignition.Options{})
		if err != nil {
			t.Fatal(err)
		}
		b, err := json.Marshal(r)
		if err != nil || strings.Contains(string(b), "NaN") {
			t.Errorf("%s %v", b, err)
		}
	}
}
