package refdata_test

import (
	"fmt"

	"example.com/benchbook/refdata"
)

// Two verdicts that rest on the same caution.
func ExampleBasis_Join() {
	var sheet refdata.Basis
	sheet.Join(refdata.Basis{Sources: []refdata.Source{{Title: "BS 84", Status: refdata.Standard}}, Cautions: []refdata.Caution{refdata.OldBolts}})
	sheet.Join(refdata.Basis{Sources: []refdata.Source{{Title: "BS 811", Status: refdata.Standard}}, Cautions: []refdata.Caution{refdata.OldBolts}})
	fmt.Println(len(sheet.Sources), len(sheet.Cautions))
	// Output:
	// 2 1
}

func ExampleCaution_Text() {
	fmt.Println(refdata.StartingPointsOnly.Text())
	// Output:
	// Starting points are ranges to begin from, not promises.
}

func ExampleSource() {
	fmt.Println(refdata.Source{Title: "ISO 724", Clause: "table 1", Status: refdata.Standard})
	fmt.Println(refdata.Practice())
	// Output:
	// ISO 724, table 1 [standard]
	// common practice, no source [common practice]
}

// What a verdict took for granted and did not look at, as a sheet prints it.
func ExampleBasis() {
	b := refdata.Basis{
		Assumed:    []refdata.Assumption{{What: "cable efficiency", Value: "0.80 ± 0.06", Status: refdata.CommonPractice}},
		NotChecked: []refdata.Unchecked{{What: "piston-to-valve clearance", Why: "no lift curve given", Settle: "modelling clay on the crown"}},
	}
	fmt.Println("assumed", b.Assumed[0])
	fmt.Println("not checked", b.NotChecked[0])
	// Output:
	// assumed cable efficiency: 0.80 ± 0.06 [common practice]
	// not checked piston-to-valve clearance: no lift curve given; to settle it: modelling clay on the crown
}
