package job_test

import (
	"fmt"

	"example.com/benchbook/examples/job"
)

// Every section of the report carries the package's own result, for a program that
// wants the figures and not the sentences.
func ExampleSection_result() {
	report, err := job.Run(job.Demo())
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range report.Sections {
		switch r := s.Result.(type) {
		case job.TimingResult:
			fmt.Println("inlet advanced by", r.Verdict.Inlet.Crank)
		case job.IgnitionResult:
			fmt.Println("spark:", r.Verdict.Causes.Leader().Text)
		case job.ClutchResult:
			fmt.Println("clutch window open:", r.Adjust.Window.Open())
		case job.CarburettorResult:
			fmt.Println("bore", r.Start.Bore.Standing)
		case job.LimitsResult:
			fmt.Println("limits read:", len(r.Report.Lengths) > 0)
		case job.RoadResult:
			fmt.Println("gears:", len(r.Table.Gears))
		case job.ThreadsResult:
			var first job.ThreadResult = r.Threads[0]
			fmt.Println(first.Where+":", first.Identification.Thread())
		}
	}
	// Output:
	// inlet advanced by 9.6 ± 0.5° crank
	// spark: timed as it should be
	// clutch window open: false
	// bore below
	// limits read: true
	// gears: 4
	// stud, timing cover: 1/4-26 cycle
}

// What a page is made of: rows of figures, tables, and what to read next.
func ExampleSection() {
	report, err := job.Run(job.Demo())
	if err != nil {
		fmt.Println(err)
		return
	}
	timing := report.Section("timing")
	var row job.Row = timing.Read[0]
	fmt.Println(row.What+":", row.Figure)
	var next job.Settle = timing.Next[0]
	fmt.Println("next:", next.Text)
	var table job.Table = report.Section("road").Tables[0]
	fmt.Println(table.Title, "-", len(table.Rows), "rows of", len(table.Head))
	// Output:
	// inlet opens: 19° BTDC ± 0.6°
	// next: measure the exhaust lobe on its wheel in the hand
	// Gears - 4 rows of 6
}
