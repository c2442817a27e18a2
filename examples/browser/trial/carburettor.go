package trial

import (
	"math"
	"strconv"
	"strings"

	"example.com/benchbook/carburation"
	"example.com/benchbook/examples/job"
	"example.com/benchbook/units"
)

// fittedPart is a control of something in the carburettor.
type fittedPart struct {
	key         string
	least, most int
	now         func(*job.CarburettorResult) (n int, taken bool) // as in the file
	say         func(c *job.CarburettorResult, n int) string
	file        func(c *job.CarburettorResult, n int) any // what the job file then has at field
	field       string
	share       func(*job.CarburettorResult) carburation.Jet // of which steps are per cent; nil where they are not
}

// grooves is how many a needle is taken to have whose clip nobody read.
const grooves = 5

func parts() []fittedPart {
	jet := func(key, field string, of func(*job.CarburettorResult) carburation.Jet) fittedPart {
		return fittedPart{key, 40, 250,
			func(c *job.CarburettorResult) (int, bool) { return 100, of(c).Taken() },
			func(c *job.CarburettorResult, n int) string { return jetAt(of(c), n) + " (" + strconv.Itoa(n) + " %)" },
			func(c *job.CarburettorResult, n int) any { return jetAt(of(c), n) }, field, of}
	}
	return []fittedPart{
		jet(MainJet, "main_jet", func(c *job.CarburettorResult) carburation.Jet { return c.Input.Fitted.MainJet }),
		jet(PilotJet, "pilot_jet", func(c *job.CarburettorResult) carburation.Jet { return c.Input.Fitted.PilotJet }),
		{
			Cutaway, 2, 16,
			func(c *job.CarburettorResult) (int, bool) {
				r := c.Input.Fitted.Cutaway
				return int(math.Round(r.Value().Inches() * 32)), r.Taken()
			},
			func(_ *job.CarburettorResult, n int) string {
				return strconv.FormatFloat(float64(n)/2, 'f', 1, 64) + " sixteenths"
			},
			func(_ *job.CarburettorResult, n int) any { return strconv.Itoa(n) + "/32 in" }, "cutaway", nil,
		},
		{
			Clip, 1, grooves,
			func(c *job.CarburettorResult) (int, bool) {
				g := c.Input.Fitted.Groove
				if !g.Taken() {
					return (grooves + 1) / 2, false
				}
				return g.FromTop, true
			},
			func(c *job.CarburettorResult, n int) string {
				return carburation.Groove{FromTop: n, Of: ofGrooves(c)}.String()
			},
			func(c *job.CarburettorResult, n int) any {
				return map[string]any{"from_top": n, "of": ofGrooves(c)}
			}, "clip_groove", nil,
		},
	}
}

func ofGrooves(c *job.CarburettorResult) int {
	if g := c.Input.Fitted.Groove; g.Taken() {
		return g.Of
	}
	return grooves
}

// jetAt is a jet that passes so many per cent of another, as a job file has it: a
// flow mark under the same head, or a hole of as much more area.
func jetAt(j carburation.Jet, percent int) string {
	switch share := float64(percent) / 100; {
	case percent == 100:
		return j.String()
	case j.Flow().Taken():
		_, head, known := strings.Cut(j.String(), " at ")
		text := j.Flow().Value().Times(share).In(units.CubicCentimetrePerMinute, 1)
		if known {
			text += " at " + head
		}
		return text
	case j.Bore().Taken():
		return j.Bore().Value().Times(math.Sqrt(share)).In(units.Millimetre, 3)
	}
	return ""
}

// part writes a moved part into the tree.
func (t *Trial) part(p fittedPart) {
	section, _ := t.tree["carburettor"].(map[string]any)
	was, _ := t.was["carburettor"].(map[string]any)
	if section == nil {
		return
	}
	if n, _ := p.now(t.carburettor); n == t.at[p.key] { // as the file had it
		if v, there := was[p.field]; there {
			section[p.field] = v
		} else {
			delete(section, p.field)
		}
		return
	}
	section[p.field] = p.file(t.carburettor, t.at[p.key])
}

// fitted is the control of a part.
func (t *Trial) fitted(p fittedPart) Control {
	n, taken := p.now(t.carburettor)
	c := Control{Key: p.key, Panel: "carburettor", Least: p.least, Most: p.most, Taken: taken}
	if at, moved := t.at[p.key]; moved {
		c.Moved, n = at != n, at
	}
	if p.key == Clip {
		c.Most = ofGrooves(t.carburettor)
	}
	c.Least, c.Most = min(c.Least, n), max(c.Most, n)
	c.At = strconv.Itoa(n)
	c.Taken = c.Taken || c.Moved
	switch {
	case p.key == Clip && !c.Taken:
		c.Text = p.say(t.carburettor, n) + ", taken for granted"
	case !c.Taken:
		c.Text = "not read"
		if p.key != Cutaway { // there is no jet to take a share of
			c.Least, c.Most = 0, 0
		}
	default:
		c.Text = p.say(t.carburettor, n)
	}
	if p.share != nil && p.share(t.carburettor).Effective().Taken() { // no mark to write another by
		c.Least, c.Most = n, n
	}
	return c
}
