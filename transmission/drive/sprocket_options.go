package drive

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"example.com/benchbook/units/fault"
)

// SprocketOption is a pair of sprockets and how near it comes.
type SprocketOption struct {
	Front   int     `json:"front"`
	Rear    int     `json:"rear"`
	Final   Ratio   `json:"final"`
	Overall Ratio   `json:"overall"` // final times the rest
	Off     float64 `json:"off"`     // overall over the one wanted, less 1; above zero is lower geared
}

// SprocketChoice is the sprockets to choose from: every number of teeth from
// least to most.
type SprocketChoice struct {
	FrontLeast int `json:"front_least"`
	FrontMost  int `json:"front_most"` // zero: FrontLeast only
	RearLeast  int `json:"rear_least"`
	RearMost   int `json:"rear_most"` // zero: RearLeast only
}

// SprocketOptions returns every pair of sprockets to choose from, nearest to the
// wanted overall ratio first; of equals the one with more front teeth, which
// runs smoother. rest is all other reduction: primary × gear. Errors: no rest, a
// wanted ratio not above zero, teeth outside 4 to 200 or out of order.
func SprocketOptions(wanted float64, rest Ratio, c SprocketChoice) ([]SprocketOption, error) {
	var l fault.List
	within(&l, "wanted", wanted, 0.01, 1000)
	if !rest.Given() {
		l.Add(fault.Fault{Code: fault.Missing, Path: "rest", Rule: "give the reduction before the sprockets, or OneToOne"})
	}
	c = c.filled()
	for _, s := range []struct {
		path        string
		least, most int
	}{{"front", c.FrontLeast, c.FrontMost}, {"rear", c.RearLeast, c.RearMost}} {
		if s.least < 4 || s.most > 200 || s.most < s.least {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: s.path, Value: strconv.Itoa(s.least) + " to " + strconv.Itoa(s.most), Unit: "teeth", Rule: "must rise within 4 to 200 teeth"})
		}
	}
	if err := l.Err(); err != nil {
		return nil, err
	}
	var out []SprocketOption
	for f := c.FrontLeast; f <= c.FrontMost; f++ {
		for r := c.RearLeast; r <= c.RearMost; r++ {
			final := Pair{f, r}.ratio()
			overall, err := final.Times(rest)
			if err != nil {
				return nil, err
			}
			out = append(out, SprocketOption{f, r, final, overall, overall.Float()/wanted - 1})
		}
	}
	slices.SortStableFunc(out, func(a, b SprocketOption) int {
		return cmp.Or(cmp.Compare(math.Abs(a.Off), math.Abs(b.Off)), cmp.Compare(b.Front, a.Front))
	})
	return out, nil
}

func (c SprocketChoice) filled() SprocketChoice {
	if c.FrontMost == 0 {
		c.FrontMost = c.FrontLeast
	}
	if c.RearMost == 0 {
		c.RearMost = c.RearLeast
	}
	return c
}
