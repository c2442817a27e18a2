package fastener

import (
	"strings"
	"testing"

	"example.com/benchbook/units/fault"
)

func TestParse(t *testing.T) {
	for in, want := range map[string]string{
		"1/4 BSF": "1/4 BSF", "1/4\" bsf": "1/4 BSF", "1/4 in BSW": "1/4 BSW", "1/4 Whitworth": "1/4 BSW", "3/8 Whit": "3/8 BSW", "1 1/8 BSF": "1 1/8 BSF",
		"M8": "M8", "M8x1": "M8x1", "M8 x 1": "M8x1", "M8×1.25": "M8", "m10 X 1.25": "M10x1.25",
		"2BA": "2 BA", "2 BA": "2 BA", "BA 2": "2 BA", "0BA": "0 BA",
		"10-32 UNF": "10-32 UNF", "#10-32": "10-32 UNF", "No. 10-32 UNF": "10-32 UNF", "1/2-13": "1/2-13 UNC", "1/4 UNC": "1/4-20 UNC",
		"1/4-26 cycle": "1/4-26 cycle", "1/4 CEI": "1/4-26 cycle", "1/4 cycle": "1/4-26 cycle", "3/8 BSC 26 tpi": "3/8-26 cycle", "1/2-20 cycle 55°": "1/2-20 cycle 55°", "1/2-20 cycle 60": "1/2-20 cycle 60°",
		"G 1/8": "G 1/8", "G1/2": "G 1/2", "1/8 BSP": "G 1/8", "3/8 brass": "3/8-26 brass", "3/8-26 brass": "3/8-26 brass",
	} {
		th, err := Parse(in)
		if err != nil || th.Name() != want || th.Hand() != HandUnknown {
			t.Errorf("%q = %v (%v), %v; want %s", in, th, th.Hand(), err, want)
		}
	}
	for in, hand := range map[string]Hand{"9/16-20 cycle 60° LH": Left, "M10 left-hand": Left, "1/4 BSF RH": Right, "2BA, l.h.": Left} {
		if th, err := Parse(in); err != nil || th.Hand() != hand {
			t.Errorf("%q = %v hand %v, %v", in, th, th.Hand(), err)
		}
	}
	for in, code := range map[string]fault.Code{
		"": fault.Missing, "1/2 cycle": fault.UnitAmbiguous, "1/2-20 CEI": fault.UnitAmbiguous, "9/7 BSF": fault.UnknownName, "LH": fault.UnknownName,
		strings.Repeat("x", 100): fault.BadForm,
	} {
		_, err := Parse(in)
		if f := fault.Faults(err); len(f) != 1 || f[0].Code != code {
			t.Errorf("%q: %v, want %s", in, err, code)
		}
	}
}

// TestEveryNameComesBack: names and keys are unique, and every name is read as
// its own thread.
func TestEveryNameComesBack(t *testing.T) {
	names, keys := map[string]bool{}, map[string]bool{}
	for th := range Threads() {
		if names[th.Name()] || keys[th.Key()] {
			t.Errorf("%v twice", th)
		}
		names[th.Name()], keys[th.Key()] = true, true
		back, err := Parse(th.Name())
		if err != nil || back != th {
			t.Errorf("%v = %v, %v", th, back, err)
		}
		if row, ok := th.Row(); ok && (row.Name != th.Name() || row.Major != th.Major() || row.Pitch != th.Pitch()) {
			t.Errorf("%v: row %v", th, row)
		}
	}
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"1/4 BSF", "M8x1", "2BA", "#10-32 UNF", "1/2 cycle LH", "G 1/8", "½ BSW", "1/4\" - 26 c.e.i.", "M1e9x1", "26 tpi"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		th, err := Parse(s)
		if err != nil {
			if len(fault.Faults(err)) != 1 || !th.IsZero() {
				t.Errorf("%q: %v with %v", s, err, th)
			}
			return
		}
		if back, err := Parse(th.String()); err != nil || back.WithHand(th.Hand()) != th {
			t.Errorf("%q = %v, back as %v, %v", s, th, back, err)
		}
	})
}

func FuzzParsePitch(f *testing.F) {
	for _, s := range []string{"26 tpi", "1.25 mm", "tpi", "0 tpi", "1/26 in", "11 1/2 tpi", "-3 tpi", "26 TPI ± 1"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		p, err := ParsePitch(s)
		if err == nil && p-p != 0 {
			t.Errorf("%q = %v", s, p)
		}
		if err != nil && len(fault.Faults(err)) == 0 {
			t.Errorf("%q: %v", s, err)
		}
	})
}
