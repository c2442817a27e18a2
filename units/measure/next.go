package measure

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Outlook is what one cause expects of a reading not yet taken: the chances of
// each named outcome, or a normal figure. Chances, if any, decide.
type Outlook struct {
	Chances  []float64 // one per outcome, adding up to 1
	Mean, SD float64   // of a figure
}

// Check is a reading or look that could be taken next.
type Check struct {
	Key, Text string
	Work      units.Time         // how long it takes
	Outlooks  map[string]Outlook // by cause key; all figures, or all the same outcomes
	// InOrder gives the outlooks in the order of the ranking's odds instead, and
	// saves the look-up; the zero Outlook is one that is lacking. Causes that
	// expect the same may share their Chances.
	InOrder []Outlook
}

// Gain is what a check is expected to tell.
type Gain struct {
	Key  string     `json:"key"`
	Text string     `json:"text"`
	Work units.Time `json:"work"`
	Bits float64    `json:"bits"` // expected information about the cause
}

// negligible is the share below which a cause may lack an outlook: it could
// not change the order of checks.
const negligible = 1e-3

// Next returns the checks by the information they are expected to give about
// which cause is true, most first, the quicker first where they give the same:
// sum over causes of share times the mean of log2(p(outcome | cause) /
// p(outcome)) (D. V. Lindley, On a measure of the information provided by an
// experiment, Ann. Math. Stat. 27 (1956) 986, from memory). Errors: a cause of
// more than 0.1 % without an outlook, chances that do not add up to one, a
// spread that is not above zero, a share or a time below zero or not finite,
// more than 5000 causes.
func Next(r Ranking, checks []Check) ([]Gain, error) {
	var faults fault.List
	if len(r.Odds) > 5000 {
		return nil, fault.Fault{Code: fault.OutOfRange, Path: "odds", Value: strconv.Itoa(len(r.Odds)), Rule: "at most 5000 causes"}
	}
	q := nodes()
	var few [16]class
	room := few[:0]
	told := make([]expected, 0, len(checks))
	for i := range checks {
		var bits float64
		var err error
		bits, room, err = information(q, r, &checks[i], room[:0])
		if err == nil || faults.Under("checks["+strconv.Itoa(i)+"]", err) {
			told = append(told, expected{i, bits, math.Round(bits * 100)})
		}
	}
	slices.SortStableFunc(told, func(a, b expected) int {
		// a hundredth of a bit is no difference: the quicker check goes first
		switch {
		case a.hundredths > b.hundredths:
			return -1
		case a.hundredths < b.hundredths:
			return 1
		}
		return cmp.Compare(checks[a.check].Work, checks[b.check].Work)
	})
	gains := make([]Gain, len(told))
	for i, t := range told {
		c := &checks[t.check]
		gains[i] = Gain{Key: c.Key, Text: c.Text, Work: c.Work, Bits: t.bits}
	}
	return gains, faults.Err()
}

// expected is what a check is expected to tell.
type expected struct {
	check            int
	bits, hundredths float64
}

// class is causes that expect the same, with their share together.
type class struct {
	share float64
	Outlook
}

// information uses the room of classes, which are empty, and returns it.
func information(q hermite, r Ranking, c *Check, classes []class) (float64, []class, error) {
	if c.InOrder != nil && len(c.InOrder) != len(r.Odds) {
		return 0, classes, fault.Fault{Code: fault.Conflict, Path: "in_order", Value: strconv.Itoa(len(c.InOrder)), Rule: "needs one outlook for each cause of the ranking"}
	}
	if !(c.Work >= 0) || math.IsInf(c.Work.Seconds(), 0) {
		return 0, classes, fault.Fault{Code: fault.OutOfRange, Path: "work", Value: c.Work.String(), Rule: "must be zero or more"}
	}
	outcomes := -1
	for i := range r.Odds {
		o := &r.Odds[i]
		if !(o.Share >= 0 && o.Share <= 1) {
			return 0, classes, fault.Fault{Code: fault.OutOfRange, Path: "odds." + o.Key + ".share", Value: strconv.FormatFloat(o.Share, 'g', 6, 64), Rule: "must be 0 to 1"}
		}
		var look Outlook
		var ok bool
		if c.InOrder != nil {
			look = c.InOrder[i]
			ok = look.Chances != nil || look.SD != 0
		} else {
			look, ok = c.Outlooks[o.Key]
		}
		if !ok {
			if o.Share > negligible {
				return 0, classes, fault.Fault{Code: fault.Missing, Path: "outlooks", Value: o.Key, Rule: "every cause above 0.1 % needs an outlook"}
			}
			continue
		}
		if as := like(classes, &look); as != nil {
			as.share += o.Share
			continue
		}
		if err := look.check(outcomes); err != nil {
			return 0, classes, fault.Under("outlooks."+o.Key, err)
		}
		outcomes = len(look.Chances)
		classes = append(classes, class{o.Share, look})
	}
	if outcomes > 0 {
		return max(ofOutcomes(classes, outcomes)/math.Ln2, 0), classes, nil
	}
	return max(ofFigures(q, classes)/math.Ln2, 0), classes, nil
}

// like returns the class that shares the chances of a look, if one of the last few does.
func like(classes []class, l *Outlook) *class {
	if len(l.Chances) == 0 {
		return nil
	}
	for i := len(classes) - 1; i >= max(0, len(classes)-8); i-- {
		if c := &classes[i]; len(c.Chances) == len(l.Chances) && &c.Chances[0] == &l.Chances[0] {
			return c
		}
	}
	return nil
}

func (l Outlook) check(outcomes int) error {
	if outcomes >= 0 && len(l.Chances) != outcomes {
		return fault.Fault{Code: fault.Conflict, Path: "chances", Value: strconv.Itoa(len(l.Chances)), Rule: "every cause must speak of the same outcomes"}
	}
	if len(l.Chances) > 0 {
		sum := 0.0
		for _, p := range l.Chances {
			if !(p >= 0) {
				sum = math.NaN()
			}
			sum += p
		}
		if !(math.Abs(sum-1) < 1e-9) {
			return fault.Fault{Code: fault.OutOfRange, Path: "chances", Value: strconv.FormatFloat(sum, 'g', 6, 64), Rule: "chances must add up to one"}
		}
		return nil
	}
	if !(l.SD > 0) || math.IsInf(l.SD, 0) || l.Mean-l.Mean != 0 {
		return fault.Fault{Code: fault.OutOfRange, Path: "sd", Value: strconv.FormatFloat(l.SD, 'g', 6, 64), Rule: "the spread must be above zero and finite"}
	}
	return nil
}

// ofOutcomes is the information, in nats, of which of several things is seen.
func ofOutcomes(classes []class, outcomes int) float64 {
	nats := 0.0
	for k := range outcomes {
		mix := 0.0 // the chance of it whichever cause is true
		for i := range classes {
			mix += classes[i].share * classes[i].Chances[k]
		}
		if !(mix > 0) {
			continue
		}
		for i := range classes {
			if p := classes[i].Chances[k]; p > 0 {
				nats += classes[i].share * p * math.Log(p/mix)
			}
		}
	}
	return nats
}

// ofFigures is that of a figure read.
func ofFigures(q hermite, classes []class) float64 {
	nats := 0.0
	mix := newMixture(classes)
	for i := range classes {
		c := &classes[i]
		if c.share < 1e-100 {
			continue
		}
		// mean over the cause's own normal spread, by Gauss-Hermite quadrature
		for k, t := range q.node {
			x := c.Mean + math.Sqrt2*c.SD*t
			nats += c.share * q.weight[k] / math.SqrtPi * (mix.term(i, x) - math.Log(c.share) - mix.logDensity(x))
		}
	}
	return nats
}

// mixture is the normal figures of all causes with their shares, each term's
// constant worked out once.
type mixture struct {
	classes []class
	level   []float64 // ln of share/(SD sqrt(2 pi)); -Inf for no share
	terms   []float64
}

func newMixture(classes []class) mixture {
	m := mixture{classes, make([]float64, len(classes)), make([]float64, len(classes))}
	for i := range classes {
		m.level[i] = math.Log(classes[i].share / classes[i].SD / math.Sqrt(2*math.Pi))
	}
	return m
}

// term is ln of a cause's share times its density at x.
func (m *mixture) term(i int, x float64) float64 {
	z := (x - m.classes[i].Mean) / m.classes[i].SD
	return m.level[i] - z*z/2
}

// logDensity returns the log density of the mixture, by way of the largest term
// so that far outcomes do not underflow.
func (m *mixture) logDensity(x float64) float64 {
	top := math.Inf(-1)
	for i := range m.terms {
		m.terms[i] = m.term(i, x)
		top = max(top, m.terms[i])
	}
	sum := 0.0
	for _, t := range m.terms {
		if t -= top; t > -40 { // e^-40 is below the last digit
			sum += math.Exp(t)
		}
	}
	return top + math.Log(sum)
}
