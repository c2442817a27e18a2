package refdata

import "slices"

// LimitVerdict says where a reading lies.
type LimitVerdict string

// The verdicts, along the way of wear.
const (
	NotJudged   LimitVerdict = ""            // nothing to judge: see Reason
	Tight       LimitVerdict = "tight"       // short of the fit on the side away from wear
	Right       LimitVerdict = "right"       // within the fit
	Serviceable LimitVerdict = "serviceable" // worn beyond the fit, short of the limit
	AtLimit     LimitVerdict = "at-limit"    // where some would renew it and some would not
	Renew       LimitVerdict = "renew"       // beyond the limit
	Loose       LimitVerdict = "loose"       // beyond the fit of something that is set, not worn
)

// Text returns the verdict in words.
func (v LimitVerdict) Text() string {
	switch v {
	case Tight:
		return "outside the fit, not by wear"
	case Right:
		return "right"
	case Serviceable:
		return "worn, and still serviceable"
	case AtLimit:
		return "at its limit: renew it if the engine is apart"
	case Renew:
		return "beyond its limit: renew it"
	case Loose:
		return "beyond the setting"
	}
	return "not judged"
}

// weight orders verdicts by how much they call for.
func (v LimitVerdict) weight() int {
	return slices.Index([]LimitVerdict{NotJudged, Right, Serviceable, Loose, AtLimit, Tight, Renew}, v)
}
