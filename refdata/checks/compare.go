package checks

import (
	"math"
	"strconv"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Compare returns nil if got agrees with the answer of that name within the
// answer's tolerance. Errors: [fault.UnknownName] if the case has no such
// answer, the faults of [units.Parse] if the answer is not a Q, and
// [fault.OutOfRange] if got lies outside, with the figure in the answer's unit.
func Compare[Q units.Quantity](c Case, answer string, got Q) error {
	f, err := c.answer(answer)
	if err != nil {
		return err
	}
	one, err := units.Parse[Q]("1 " + unitText(f.Unit))
	if err != nil {
		return fault.Under(c.ID+"."+answer, err)
	}
	zero, err := units.Parse[Q]("0 " + unitText(f.Unit))
	if err != nil { // miles to the gallon run the other way up and have no zero
		return c.CompareNumbers(answer, one.SI()/got.SI())
	}
	return c.CompareNumbers(answer, (got.SI()-zero.SI())/(one.SI()-zero.SI()))
}

// CompareNumbers returns nil if got, in the unit the answer is printed in,
// agrees with the answer within its tolerance; a list needs as many figures as
// it has. Errors: [fault.UnknownName] if the case has no such answer,
// [fault.OutOfRange] for each figure that lies outside.
func (c Case) CompareNumbers(answer string, got ...float64) error {
	f, err := c.answer(answer)
	if err != nil {
		return err
	}
	want := f.Values
	if want == nil {
		want = []float64{f.Value}
	}
	var l fault.List
	if len(want) != len(got) {
		l.Add(fault.Fault{Code: fault.Conflict, Path: c.ID + "." + answer, Value: strconv.Itoa(len(got)) + " figures", Rule: "the answer has " + strconv.Itoa(len(want))})
		return l.Err()
	}
	for i := range want {
		allowed := max(f.Tol.Abs, f.Tol.Rel*math.Abs(want[i]))
		// Half a unit in the last printed place is not a binary fraction, so a
		// figure on the edge is given its last bits.
		allowed += 4 * 0x1p-52 * math.Abs(want[i])
		if !(math.Abs(got[i]-want[i]) <= allowed) {
			path := c.ID + "." + answer
			if f.Values != nil {
				path += "[" + strconv.Itoa(i) + "]"
			}
			l.Add(fault.Fault{
				Code: fault.OutOfRange, Path: path, Value: strconv.FormatFloat(got[i], 'g', 10, 64), Unit: f.Unit,
				Rule: "the source has " + strconv.FormatFloat(want[i], 'g', -1, 64) + " ± " + strconv.FormatFloat(allowed, 'g', 3, 64) + " " + f.Unit,
			})
		}
	}
	return l.Err()
}

func (c Case) answer(name string) (Figure, error) {
	f, ok := c.Expected[name]
	if !ok || f.Tol == nil {
		return f, fault.Fault{Code: fault.UnknownName, Path: c.ID + "." + name, Rule: "the case has no such answer"}
	}
	return f, nil
}
