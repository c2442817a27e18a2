// Worn-or-fit holds readings of a stripped engine against the workshop limits of
// the trade: fit, near its end, used up.
package main

import (
	"flag"

	"example.com/benchbook/examples/internal/slip"
	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

func main() {
	bore := flag.String("bore", "78.06 mm", "bore of the cylinder")
	keys := []string{"ring-gap", "guide-inlet", "guide-exhaust", "big-end-float"}
	invented := []string{"0.62 mm", "0.05 mm", "0.14 mm", ""}
	var known []string
	given := map[string]*string{}
	for i, key := range keys {
		if row, ok := refdata.WorkshopLimits().ByName(key); ok {
			given[key] = flag.String(key, invented[i], row.Part+", by "+row.ReadWith)
			known = append(known, key)
		}
	}
	slip.Flags()

	size := slip.Need(measure.Read(*bore, measure.Caliper()))
	var basis refdata.Basis
	for _, key := range known {
		r, err := measure.Read(*given[key], measure.FeelerGauge())
		if err != nil {
			slip.Refuse(fault.Under(key, err))
		}
		f := slip.Need(refdata.CheckLimit(key, r, size, refdata.LimitOptions[units.Length]{}))
		basis.Join(f.Basis)
		if f.Reason.Given() {
			continue // the basis says what would settle it
		}
		slip.Say("likely", "%s: %s %v - %s", f.Words, f.Part, f.Reading, f.Verdict.Text())
		slip.Say("", "usual is %v. %s", f.Fit, f.Do)
	}
	slip.Say("unknown", "the other %d limits of the trade: not asked", refdata.WorkshopLimits().Len()-len(known))
	slip.Basis(basis)
}
