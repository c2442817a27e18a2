package drive

import (
	"slices"
	"strconv"
	"strings"

	"example.com/benchbook/units/fault"
)

// Gear is one gear of a gearbox.
type Gear struct {
	Name  string `json:"name"` // "first", "top"; "" counts from 1
	Ratio Ratio  `json:"ratio"`
}

// Box is a gearbox: its gears, lowest (greatest ratio) first. The zero value has
// no gears.
type Box struct{ gears []Gear }

// NewBox returns a gearbox with the given ratios, put in order, lowest gear
// first. Errors: no gear, a gear without a ratio, two gears of one name or ratio.
func NewBox(gears ...Gear) (Box, error) {
	var l fault.List
	if len(gears) == 0 {
		l.Add(fault.Fault{Code: fault.Missing, Path: "gears", Rule: "at least one gear"})
	}
	for i, g := range gears {
		if !g.Ratio.Given() {
			l.Add(fault.Fault{Code: fault.Missing, Path: "gears." + strconv.Itoa(i) + ".ratio", Rule: "give a ratio"})
		}
	}
	if err := l.Err(); err != nil {
		return Box{}, err
	}
	b := Box{slices.Clone(gears)}
	slices.SortStableFunc(b.gears, func(a, c Gear) int { return c.Ratio.Compare(a.Ratio) })
	for i := range b.gears {
		if b.gears[i].Name == "" {
			b.gears[i].Name = strconv.Itoa(i + 1)
		}
	}
	named := map[string]bool{}
	for i, g := range b.gears {
		if i > 0 && g.Ratio == b.gears[i-1].Ratio {
			l.Add(fault.Fault{Code: fault.Conflict, Path: "gears", Value: g.Ratio.String(), Rule: "two gears have the same ratio"})
		}
		if named[g.Name] {
			l.Add(fault.Fault{Code: fault.Conflict, Path: "gears", Value: g.Name, Rule: "two gears have the same name"})
		}
		named[g.Name] = true
	}
	if err := l.Err(); err != nil {
		return Box{}, err
	}
	return b, nil
}

// BoxOf returns a gearbox from its ratios as a book prints them, in any order:
// BoxOf("2.42", "1.61", "1.21", "1"). Errors: those of [ParseRatio] and [NewBox].
func BoxOf(ratios ...string) (Box, error) {
	var l fault.List
	var gears []Gear
	for i, s := range ratios {
		r, err := ParseRatio(s)
		l.Under("gears."+strconv.Itoa(i), err)
		gears = append(gears, Gear{Ratio: r})
	}
	if err := l.Err(); err != nil {
		return Box{}, err
	}
	return NewBox(gears...)
}

// Mesh is one pair that joins the layshaft to the shaft that leaves the box.
type Mesh struct {
	Name string `json:"name"`
	Pair Pair   `json:"pair"` // driver on the layshaft
}

// Layshaft is a gearbox whose layshaft is turned by a constant pair, and turns
// the outgoing shaft by one pair for each indirect gear.
type Layshaft struct {
	Constant Pair   `json:"constant"` // driver on the incoming shaft, driven on the layshaft
	Indirect []Mesh `json:"indirect"`
	Direct   string `json:"direct"` // name of the gear that goes straight through, one to one; "" if there is none
}

// NewLayshaft returns the gearbox. An indirect gear is
// (driven/driver of the constant pair) × (driven/driver of its own)
// (Jindal, Machine Design, 2010, ex. 29-2); the direct one is 1. In a box where
// the constant pair is at the output the product is the same. Errors: teeth
// outside 4 to 1000, and those of [NewBox].
func NewLayshaft(in Layshaft) (Box, error) {
	var l fault.List
	in.Constant.check(&l, "constant")
	for i, m := range in.Indirect {
		m.Pair.check(&l, "indirect."+strconv.Itoa(i)+".pair")
	}
	if err := l.Err(); err != nil {
		return Box{}, err
	}
	var gears []Gear
	for _, m := range in.Indirect {
		r, err := Train{in.Constant, m.Pair}.Ratio()
		if err != nil {
			return Box{}, err
		}
		gears = append(gears, Gear{m.Name, r})
	}
	if in.Direct != "" {
		gears = append(gears, Gear{in.Direct, OneToOne()})
	}
	return NewBox(gears...)
}

// Gears returns the gears, lowest first.
func (b Box) Gears() []Gear { return slices.Clone(b.gears) }

// Gear returns the gear of a name.
func (b Box) Gear(name string) (Gear, bool) {
	for _, g := range b.gears {
		if g.Name == name {
			return g, true
		}
	}
	return Gear{}, false
}

// choices says which names there are.
func (b Box) choices() string {
	if len(b.gears) == 0 {
		return "make the gearbox with NewBox, BoxOf or NewLayshaft"
	}
	names := make([]string, len(b.gears))
	for i, g := range b.gears {
		names[i] = g.Name
	}
	return "one of the gears of the box: " + strings.Join(names, ", ")
}

// Top returns the highest gear, the zero Gear of an empty box.
func (b Box) Top() Gear {
	if len(b.gears) == 0 {
		return Gear{}
	}
	return b.gears[len(b.gears)-1]
}

// MarshalJSON writes the gears as a list.
func (b Box) MarshalJSON() ([]byte, error) { return marshal(b.gears) }
