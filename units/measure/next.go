package measure

import (
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
	gains := make([]Gain, 0, len(checks))
	q := nodes()
	room := make([]Outlook, 0, len(r.Odds))
	share := make([]float64, 0, len(r.Odds))
	for i, c := range checks {
		bits, err := information(q, r, c, share, room)
		if err == nil || faults.Under("checks["+strconv.Itoa(i)+"]", err) {
			gains = append(gains, Gain{Key: c.Key, Text: c.Text, Work: c.Work, Bits: bits})
		}
	}
	slices.SortStableFunc(gains, func(a, b Gain) int {
		// a hundredth of a bit is no difference: the quicker check goes first
		switch d := math.Round(a.Bits*100) - math.Round(b.Bits*100); {
		case d > 0:
			return -1
		case d < 0:
			return 1
		case a.Work < b.Work:
			return -1
		case a.Work > b.Work:
			return 1
		}
		return 0
	})
	return gains, faults.Err()
}

// information uses the room of share and looks, both empty.
func information(q hermite, r Ranking, c Check, share []float64, looks []Outlook) (float64, error) {
	outcomes := -1
	if c.InOrder != nil && len(c.InOrder) != len(r.Odds) {
		return 0, fault.Fault{Code: fault.Conflict, Path: "in_order", Value: strconv.Itoa(len(c.InOrder)), Rule: "needs one outlook for each cause of the ranking"}
	}
	if !(c.Work >= 0) || math.IsInf(c.Work.Seconds(), 0) {
		return 0, fault.Fault{Code: fault.OutOfRange, Path: "work", Value: c.Work.String(), Rule: "must be zero or more"}
	}
	for i, o := range r.Odds {
		if !(o.Share >= 0 && o.Share <= 1) {
			return 0, fault.Fault{Code: fault.OutOfRange, Path: "odds." + o.Key + ".share", Value: strconv.FormatFloat(o.Share, 'g', 6, 64), Rule: "must be 0 to 1"}
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
				return 0, fault.Fault{Code: fault.Missing, Path: "outlooks", Value: o.Key, Rule: "every cause above 0.1 % needs an outlook"}
			}
			continue
		}
		n := len(looks)
		checked := n > 0 && look.same(looks[n-1]) || n > 1 && look.same(looks[n-2])
		if !checked {
			if err := look.check(outcomes); err != nil {
				return 0, fault.Under("outlooks."+o.Key, err)
			}
		}
		outcomes = len(look.Chances)
		share = append(share, o.Share)
		looks = append(looks, look)
	}
	nats := 0.0
	if outcomes > 0 {
		mix := mixChances(share, looks, outcomes)
		var own, before float64 // what the outcome tells if the cause is true, or the one before
		for i, s := range share {
			switch {
			case i > 0 && looks[i].same(looks[i-1]):
			case i > 1 && looks[i].same(looks[i-2]):
				own, before = before, own
			default:
				own, before = 0, own
				for k, p := range looks[i].Chances {
					if p > 0 && mix[k] > 0 {
						own += p * math.Log(p/mix[k])
					}
				}
			}
			nats += s * own
		}
		return max(nats/math.Ln2, 0), nil
	}
	mix := newMixture(share, looks)
	for i, s := range share {
		if s < 1e-100 {
			continue
		}
		// mean over the cause's own normal spread, by Gauss-Hermite quadrature
		for k, t := range q.node {
			x := looks[i].Mean + math.Sqrt2*looks[i].SD*t
			nats += s * q.weight[k] / math.SqrtPi * (mix.term(i, x) - math.Log(s) - mix.logDensity(x))
		}
	}
	return max(nats/math.Ln2, 0), nil
}

// same reports whether both share their chances.
func (l *Outlook) same(o Outlook) bool {
	return len(l.Chances) > 0 && len(l.Chances) == len(o.Chances) && &l.Chances[0] == &o.Chances[0]
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

// mixChances is the chance of each outcome whichever cause is true.
func mixChances(share []float64, looks []Outlook, outcomes int) []float64 {
	mix := make([]float64, outcomes)
	for i, s := range share {
		for k, p := range looks[i].Chances {
			mix[k] += s * p
		}
	}
	return mix
}

// mixture is the normal figures of all causes with their shares, each term's
// constant worked out once.
type mixture struct {
	looks []Outlook
	level []float64 // ln of share/(SD sqrt(2 pi)); -Inf for no share
	terms []float64
}

func newMixture(share []float64, looks []Outlook) mixture {
	m := mixture{looks, make([]float64, len(looks)), make([]float64, len(looks))}
	for i, s := range share {
		m.level[i] = math.Log(s / looks[i].SD / math.Sqrt(2*math.Pi))
	}
	return m
}

// term is ln of a cause's share times its density at x.
func (m *mixture) term(i int, x float64) float64 {
	z := (x - m.looks[i].Mean) / m.looks[i].SD
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
