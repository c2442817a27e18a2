package fastener

import (
	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// IdentifyOptions change what [Identify] takes for granted.
type IdentifyOptions struct {
	// Wear is the most by which crests may stand short of the basic diameter,
	// by wear and making together; any loss up to it is equally likely. Zero
	// means 0.1 mm.
	Wear units.Length `json:"wear"`
	// Undercut is the share of threads whose crests stand lower still, by up to a
	// further fifth of the pitch, as modern ones cut to commercial limits do.
	// Zero means 5 %.
	Undercut units.Ratio `json:"undercut"`
	// Weights are the weight of each thread of a system before the readings; zero
	// leaves a system out, one not named weighs 1. Nil means that every thread
	// of the tables is equally likely.
	Weights map[System]float64 `json:"-"`
	// Among restricts the search to these threads. Nil means all of the tables.
	Among []Thread `json:"-"`
}

// Candidate is a thread with its odds.
type Candidate struct {
	Thread Thread       `json:"thread"`
	Odds   measure.Odds `json:"odds"`
}

// Identification is which thread the readings speak for.
type Identification struct {
	// Causes are the threads by their odds, "something else" among them. Keys
	// are those of [Thread.Key]. Threads whose share is below one in a million
	// of the leader's are left out.
	Causes measure.Ranking `json:"causes"`
	// Candidates are the same threads in the same order, without "something else".
	Candidates []Candidate `json:"candidates"`
	// Alike are the threads that these readings cannot tell from the likeliest,
	// itself first: the readings are less than 20 times likelier under it than
	// under them. Empty if no thread of the tables is likely.
	Alike []Thread `json:"alike"`
	// NextReadings are the further readings that would tell most, best first.
	NextReadings []measure.Gain `json:"next_readings"`
	// Pitch is the pitch from gauge and count together.
	Pitch measure.Reading[units.Length] `json:"pitch"`
	// Reason says why no thread of the tables is likely; zero if one is.
	Reason fault.Reason  `json:"reason"`
	Basis  refdata.Basis `json:"basis"`
}

// Thread returns the likeliest thread, its hand noted if it was read; the zero
// Thread if no thread of the tables is likely.
func (i Identification) Thread() Thread {
	if len(i.Candidates) == 0 || i.Reason.Given() {
		return Thread{}
	}
	return i.Candidates[0].Thread
}
