package timing

// The rows of the vector that causes are weighed by. Angles are advance against
// the specification in crank degrees, lifts are read less book in mm.
const (
	rowOpens   = 0  // + 2 for the exhaust cam; closing is the row after
	rowTDCLift = 4  // + 1 for the exhaust cam: advance told by the lift at TDC
	rowMaxLift = 6  // + 1
	rowStop    = 8  // what a stop shows of the mark that was used
	rowWheel   = 9  // + 1: the cam on its wheel in the hand
	rowGap     = 11 // + 1: clearance found less supposed
	rows       = 13
)

// column is what one unit of an amount does to every row.
type column [rows]float64

// phase returns the column of a shift of the cams given, as the valves show it.
func phase(cams ...Cam) column {
	var c column
	for _, k := range cams {
		c[rowOpens+2*int(k)] = 1
		c[rowOpens+2*int(k)+1] = 1
		c[rowTDCLift+int(k)] = 1
	}
	return c
}

// times returns the column with every figure multiplied.
func (c column) times(k float64) column {
	for i := range c {
		c[i] *= k
	}
	return c
}

// plus returns the sum of two columns.
func (c column) plus(d column) column {
	for i := range c {
		c[i] += d[i]
	}
	return c
}
