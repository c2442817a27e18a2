package measure

import (
	"math"
	"slices"
	"strconv"

	"example.com/benchbook/units/fault"
)

// Datum is one component of the readings a cause is weighed by, in whatever
// unit the trade keeps that component in. One not taken says nothing.
type Datum struct {
	Value float64
	Taken bool
}

// Data is the vector of readings. Every cause of one ranking sees the same
// vector in the same order.
type Data []Datum

// Hypothesis gives the natural logarithm of the likelihood of the readings that
// were taken, if it were true. Constants shared by all hypotheses of a ranking
// may be left out. -Inf says the readings rule it out.
type Hypothesis interface {
	LogLikelihood(d Data) float64
}

// LogLikelihood is a function used as a [Hypothesis].
type LogLikelihood func(d Data) float64

// LogLikelihood calls f; a nil f gives NaN, which [Rank] refuses.
func (f LogLikelihood) LogLikelihood(d Data) float64 {
	if f == nil {
		return math.NaN()
	}
	return f(d)
}

// Cause is one thing that may be wrong, or "nothing is".
type Cause struct {
	Key   string  // stable name: "inlet-wheel:+1"
	Text  string  // for the reader: "inlet camwheel one tooth early"
	Prior float64 // weight before the readings, above zero; any scale
	Hypothesis
}

// SomethingElse is the key of the cause that stands for all that was not
// listed. Its likelihood is wide, so that a bad fit is not forced on a listed
// cause.
const SomethingElse = "something-else"

// NothingWrong is the key of the cause that says all is as it should be, in
// every trade's ranking.
const NothingWrong = "nothing-wrong"

// Odds is a cause with the share of belief it holds after the readings.
type Odds struct {
	Key           string  `json:"key"`
	Text          string  `json:"text"`
	Share         float64 `json:"share"`   // 0 to 1; all shares of a ranking add up to 1
	Percent       int     `json:"percent"` // whole per cent; all of a ranking add up to 100
	Prior         float64 `json:"prior"`   // share before the readings
	LogLikelihood float64 `json:"-"`       // natural logarithm; -Inf has no JSON
	Group         int     `json:"group"`   // causes with the same number cannot be told apart by these readings
}

// Ranking is a list of causes, likeliest first.
type Ranking struct {
	Odds []Odds `json:"odds"`
}

// logIndistinct is the ratio of likelihoods, as its logarithm, below which readings
// do not tell two causes apart: Kass and Raftery, Bayes Factors, J. Am. Stat. Assoc. 90 (1995)
// 773, call a factor of 1 to 3 "not worth more than a bare mention" (from
// memory).
const logIndistinct = 1.09861228866810969140 // natural logarithm of 3

// Rank weighs causes by the readings. other is the "something else" cause; its
// key is set to [SomethingElse]. Errors: no listed cause, a prior that is not
// above zero, a key twice, a likelihood that is NaN or +Inf, or no cause that
// the readings leave possible.
func Rank(d Data, causes []Cause, other Cause) (Ranking, error) {
	other.Key = SomethingElse
	n := len(causes) + 1
	var room [short]likelihood // of a few causes nothing but the result is allocated
	var places [short]int
	likes, order := room[:], places[:]
	var faults fault.List
	if len(causes) == 0 {
		faults.Add(fault.Fault{Code: fault.Missing, Path: "causes", Rule: "at least one cause must be listed"})
	}
	var seen map[string]struct{} // of a few keys each is quicker compared with all
	if n > short {
		likes, order = make([]likelihood, n), make([]int, n)
		seen = make(map[string]struct{}, n)
	}
	likes, order = likes[:n], order[:n]
	best, priors := math.Inf(-1), 0.0
	for i := range likes {
		c := &other
		if i < len(causes) {
			c = &causes[i]
		}
		path := func() string { return "causes[" + strconv.Itoa(i) + "]" }
		twice := false
		if seen == nil {
			for j := range min(i, len(causes)) {
				twice = twice || causes[j].Key == c.Key
			}
		} else {
			_, twice = seen[c.Key]
			seen[c.Key] = struct{}{}
		}
		if twice || c.Key == "" {
			faults.Add(fault.Fault{Code: fault.Conflict, Path: path() + ".key", Value: c.Key, Rule: "keys must be there and differ"})
		}
		if !(c.Prior > 0) || math.IsInf(c.Prior, 0) {
			faults.Add(fault.Fault{Code: fault.OutOfRange, Path: path() + ".prior", Value: strconv.FormatFloat(c.Prior, 'g', 4, 64), Rule: "a prior must be above zero"})
			continue
		}
		if c.Hypothesis == nil {
			faults.Add(fault.Fault{Code: fault.Missing, Path: path() + ".hypothesis", Value: c.Key, Rule: "a cause needs a likelihood"})
			continue
		}
		l := c.LogLikelihood(d)
		if math.IsNaN(l) || math.IsInf(l, 1) {
			faults.Add(fault.Fault{Code: fault.OutOfRange, Path: path() + ".likelihood", Value: c.Key, Rule: "the likelihood must be finite"})
			continue
		}
		priors += c.Prior
		likes[i] = likelihood{log: l, share: l + math.Log(c.Prior)}
		best = max(best, likes[i].share)
	}
	if faults.Len() == 0 && math.IsInf(best, -1) {
		faults.Add(fault.Fault{Code: fault.Conflict, Path: "causes", Rule: "the readings rule out every cause, something else included"})
	}
	if err := faults.Err(); err != nil {
		return Ranking{}, err
	}
	sum := 0.0
	for i := range likes {
		likes[i].share = math.Exp(likes[i].share - best)
		sum += likes[i].share
	}
	descending(order, func(i int) float64 { return likes[i].share })
	ranked := make([]Odds, n)
	for i, j := range order {
		c := &other
		if j < len(causes) {
			c = &causes[j]
		}
		o := &ranked[i]
		o.Key, o.Text, o.Prior = c.Key, c.Text, c.Prior/priors
		o.Share, o.LogLikelihood = likes[j].share/sum, likes[j].log
	}
	percent(ranked, order)
	group(ranked, order)
	return Ranking{Odds: ranked}, nil
}

// likelihood is a cause's, with its share: the logarithm of its weight until all are
// known.
type likelihood struct{ log, share float64 }

// short is how many causes are put in order one by one.
const short = 64

// descending fills order with the places of all figures, greatest first.
func descending(order []int, of func(i int) float64) {
	if len(order) <= short { // as it is for most, putting each in its place is quickest
		var room [short]float64
		for i := range order {
			x, at := of(i), i
			for ; at > 0 && room[at-1] < x; at-- {
				room[at], order[at] = room[at-1], order[at-1]
			}
			room[at], order[at] = x, i
		}
		return
	}
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int {
		a, b := of(i), of(j)
		switch {
		case a > b:
			return -1
		case a < b:
			return 1
		}
		return 0
	})
}

// percent rounds shares to whole per cent that add up to 100: the largest
// remainders go up. It overwrites order.
func percent(odds []Odds, order []int) {
	left := 100
	for i := range odds {
		odds[i].Percent = int(odds[i].Share * 100)
		left -= odds[i].Percent
	}
	descending(order, func(i int) float64 { return odds[i].Share*100 - float64(odds[i].Percent) })
	for _, i := range order {
		if left <= 0 {
			break
		}
		odds[i].Percent++
		left--
	}
}

// group numbers the causes: the likelihood of each member of a group is within
// a factor of three of the group's most likely one. It overwrites order.
func group(odds []Odds, order []int) {
	descending(order, func(i int) float64 { return odds[i].LogLikelihood })
	n, top := 0, math.Inf(1)
	for _, i := range order {
		if !(top-odds[i].LogLikelihood < logIndistinct) {
			n++
			top = odds[i].LogLikelihood
		}
		odds[i].Group = n
	}
}

// Leader returns the likeliest cause; the zero Odds for an empty ranking.
func (r Ranking) Leader() Odds {
	if len(r.Odds) == 0 {
		return Odds{}
	}
	return r.Odds[0]
}

// Within returns the causes whose share is at least the leader's divided by
// ratio, leader first.
func (r Ranking) Within(ratio float64) []Odds {
	for i, o := range r.Odds {
		if !(o.Share*ratio >= r.Odds[0].Share) {
			return slices.Clone(r.Odds[:i])
		}
	}
	return slices.Clone(r.Odds)
}

// Holding returns the smallest set of causes whose shares add up to p, 0 to 1, or
// more: the likeliest first, as many as it takes. Where shares come true as often as
// they say, the truth is in it in p of all cases or more, whatever the readings;
// that no ratio to the leader can promise where nothing leads. The leader is always
// in it; the list is empty for an empty ranking or a p that is not a number.
func (r Ranking) Holding(p float64) []Odds {
	if math.IsNaN(p) {
		return nil
	}
	held := 0.0
	for i, o := range r.Odds {
		held += o.Share
		if held >= p {
			return slices.Clone(r.Odds[:i+1])
		}
	}
	return slices.Clone(r.Odds)
}

// LikeLeader returns the causes with a share of one per cent or more that these
// readings cannot tell from the leader, the leader first.
func (r Ranking) LikeLeader() []Odds {
	var same []Odds
	for i, o := range r.Odds {
		if i == 0 || o.Group == r.Odds[0].Group && o.Share >= 0.01 {
			same = append(same, o)
		}
	}
	return same
}

// Suspects returns, by share, the causes that are not ruled out beside the
// leader: those whose share is at least the leader's divided by ratio, and those
// that only their prior sets below, since these readings do not tell them from
// the leader or speak for them rather - their likelihood is more than a third of
// the leader's, the ratio [Odds].Group goes by. A rare cause that does exactly
// what a common one does stays suspected beside it until a reading tells them
// apart. The leader is first; the list is empty for an empty ranking.
func (r Ranking) Suspects(ratio float64) []Odds {
	suspected := func(i int) bool {
		o, first := &r.Odds[i], &r.Odds[0]
		return i == 0 || o.Share*ratio >= first.Share || first.LogLikelihood-o.LogLikelihood < logIndistinct
	}
	n := 0
	for i := range r.Odds {
		if suspected(i) {
			n++
		}
	}
	if n == 0 {
		return nil
	}
	s := make([]Odds, 0, n)
	for i := range r.Odds {
		if suspected(i) {
			s = append(s, r.Odds[i])
		}
	}
	return s
}

// Of returns the odds of one cause.
func (r Ranking) Of(key string) (Odds, bool) {
	for i := range r.Odds {
		if r.Odds[i].Key == key {
			return r.Odds[i], true
		}
	}
	return Odds{}, false
}

// Words says the share in words.
func (o Odds) Words() string {
	switch {
	case o.Share >= 0.97:
		return "as good as certain"
	case o.Share >= 0.85:
		return "very likely"
	case o.Share >= 0.60:
		return "likely"
	case o.Share >= 0.40:
		return "about even"
	case o.Share >= 0.15:
		return "possible"
	case o.Share >= 0.03:
		return "unlikely"
	}
	return "hardly"
}
