package fastener_test

import (
	"strings"
	"testing"

	"example.com/benchbook/units/fastener"
	"example.com/benchbook/units/fault"
)

// TestNamesAsWritten reads names as people write them.
func TestNamesAsWritten(t *testing.T) {
	for text, want := range map[string]string{
		"M2.0": "M2", "M6x1.0": "M6", "M10x1.250": "M10x1.25", "M8 - 1.25": "M8", "1.1/4 BSW": "1 1/4 BSW", "1/2 inch Whitworth": "1/2 BSW",
		"W 3/8": "3/8 BSW", "B.S.F. 1/4": "1/4 BSF", "1/4 BSCy": "1/4-26 cycle", "3/8 26 t.p.i. cycle": "3/8-26 cycle", "10-32": "10-32 UNF", "#10-32": "10-32 UNF",
		"M 8": "M8", "M8.0x1.25": "M8", "M10.0 x 1.250": "M10x1.25", "2.0 BA": "2 BA", "9.0 BA": "9 BA", "2. BA": "2 BA", "BA.2": "2 BA", "M39x4": "M39", "No.10-32 UNF": "10-32 UNF",
		"10\u201132 UNF": "10-32 UNF", "7/8-9 UNC": "7/8-9 UNC", // a hyphen that does not break
	} {
		if th, err := fastener.Parse(text); err != nil || th.Name() != want {
			t.Errorf("%q is %q, %v, not %q", text, th.Name(), err, want)
		}
	}
	// threads that must not be mixed share these
	for text, twins := range map[string]string{"1/4-20": "1/4 BSW, 1/4-20 UNC", "1/4-26": "1/4 BSF, 1/4-26 cycle, 1/4-26 brass", "5/16x18": "5/16 BSW, 5/16-18 UNC"} {
		_, err := fastener.Parse(text)
		if f := fault.Faults(err); len(f) != 1 || f[0].Code != fault.UnitAmbiguous || !strings.Contains(f[0].Rule, twins) {
			t.Errorf("%q: %v", text, err)
		}
	}
	for _, text := range []string{"M1.25", "1/4 UN", "11", "M1 0", "M394", "7/89 BSW", "M101.25", "M8x.75", "1/2 0 BSF"} {
		if th, err := fastener.Parse(text); err == nil {
			t.Errorf("%q is taken for %s", text, th.Name())
		}
	}
}
