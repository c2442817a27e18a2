package measure_test

import "testing"

// fuzzBytes gives a fuzz target bytes enough for every draw of its property: from none
// at all it would be long in finding any.
func fuzzBytes(f *testing.F) {
	for k := range 4 {
		b := make([]byte, 1<<12)
		for i := range b {
			b[i] = byte((i + k) * (i + 3*k + 1) * 167 >> 3)
		}
		f.Add(b)
	}
}
