package refdata

import "testing"

func TestFastenerTablesRead(t *testing.T) {
	n := Threads().Len()
	for name, r := range map[string]struct {
		rows int
		err  error
	}{
		"numbers":   {NumberDrills().Len(), NumberDrills().err},
		"letters":   {LetterDrills().Len(), LetterDrills().err},
		"metric":    {MetricDrills().Len(), MetricDrills().err},
		"swg":       {WireGauge().Len(), WireGauge().err},
		"classes":   {PropertyClasses().Len(), PropertyClasses().err},
		"grades":    {Grades().Len(), Grades().err},
		"whitworth": {WhitworthHexagons().Len(), WhitworthHexagons().err},
		"spanners":  {WhitworthSpanners().Len(), WhitworthSpanners().err},
		"unified":   {UnifiedHexagons().Len(), UnifiedHexagons().err},
		"ba":        {BAHexagons().Len(), BAHexagons().err},
		"metrichex": {MetricHexagons().Len(), MetricHexagons().err},
	} {
		if r.err != nil || r.rows == 0 {
			t.Errorf("%s: %d rows, %v", name, r.rows, r.err)
		}
		n += r.rows
	}
	if n < 683 {
		t.Errorf("%d fastener rows, want 683 at least", n)
	}
	for c := range PropertyClasses().All() {
		t.Log(c.Name, c.Proof, c.ProofOrigin)
	}
	for c := range Grades().All() {
		t.Log(c.Name, c.Proof, c.Origin)
	}
}
