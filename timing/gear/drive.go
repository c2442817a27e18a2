package gear

import (
	"strconv"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Mesh is one place in a branching drive where a wheel on one spindle drives a
// wheel on another. Spindles are named by the caller: "crank", "inlet",
// "exhaust", "magneto".
type Mesh struct {
	From   string `json:"from"`   // the driving spindle
	Driver int    `json:"driver"` // teeth of the wheel on it
	To     string `json:"to"`     // the driven spindle
	Driven int    `json:"driven"` // teeth of the wheel on it
	Link   Link   `json:"link,omitempty"`
}

// Drive is a train with branches, given as its meshes in any order. The one
// spindle that nothing drives is its root, the crank in an engine:
//
//	gear.Drive{
//		{From: "crank", Driver: 24, To: "inlet", Driven: 48},
//		{From: "inlet", Driver: 48, To: "exhaust", Driven: 48},
//	}
//
// Here the tooth marks of the first mesh move both cams and those of the second
// the exhaust cam alone.
type Drive []Mesh

// Err returns every fault: a spindle without a name, one driven twice, a ring of
// spindles that drive each other, several roots, and the faults of the trains.
func (d Drive) Err() error {
	var l fault.List
	if len(d) == 0 {
		l.Add(fault.Fault{Code: fault.Missing, Path: "drive", Rule: "a drive needs at least one mesh"})
	}
	for i, m := range d {
		path := "drive[" + strconv.Itoa(i) + "]"
		if m.From == "" || m.To == "" {
			l.Add(fault.Fault{Code: fault.Missing, Path: path, Rule: "both spindles need a name"})
		}
		for _, n := range d[:i] {
			if n.To == m.To {
				l.Add(fault.Fault{Code: fault.Conflict, Path: path + ".to", Value: m.To, Rule: "a spindle is driven at one mesh only"})
				break
			}
		}
	}
	if l.Len() > 0 {
		return l.Err()
	}
	root := ""
	for i, m := range d {
		path := "drive[" + strconv.Itoa(i) + "]"
		line, top, ok := d.line(m.To)
		if !ok {
			l.Add(fault.Fault{Code: fault.Conflict, Path: path, Value: m.From + " to " + m.To, Rule: "these spindles drive each other in a ring"})
			continue
		}
		if root == "" {
			root = top
		} else if root != top {
			l.Add(fault.Fault{Code: fault.Conflict, Path: path + ".from", Value: top, Rule: "the drive must have one root; " + root + " is another"})
		}
		if d.train(line[:len(line)-1]).Err() == nil { // report each wheel once
			l.Under(path, d.train(line).Err())
		}
	}
	return l.Err()
}

// line returns the meshes from the root to a spindle, as indices, and the root.
func (d Drive) line(spindle string) (meshes []int, root string, ok bool) {
	for at := spindle; ; {
		i := d.drivenAt(at)
		if i < 0 {
			return meshes, at, true
		}
		if len(meshes) == len(d) {
			return nil, "", false
		}
		meshes = append([]int{i}, meshes...)
		at = d[i].From
	}
}

func (d Drive) drivenAt(spindle string) int {
	for i, m := range d {
		if m.To == spindle {
			return i
		}
	}
	return -1
}

func (d Drive) train(line []int) Train {
	var t Train
	for k, i := range line {
		m := d[i]
		t.pairs = append(t.pairs, Pair{Driver: m.Driver, Driven: m.Driven, Link: m.Link, Idler: k > 0 && d[line[k-1]].Driven == m.Driver})
	}
	return t
}

// Root returns the spindle that drives all others, or "" if the drive has faults.
func (d Drive) Root() string {
	if d.Err() != nil {
		return ""
	}
	_, root, _ := d.line(d[0].To)
	return root
}

// Train returns the wheels from the root to a spindle. Two wheels of equal teeth
// on one spindle are taken as one idler, which changes no figure. Errors: those
// of [Drive.Err], or a spindle the drive does not have.
func (d Drive) Train(spindle string) (Train, error) {
	if err := d.Err(); err != nil {
		return Train{}, err
	}
	line, _, _ := d.line(spindle)
	if len(line) == 0 && spindle != d.Root() {
		return Train{}, fault.Fault{Code: fault.UnknownName, Path: "spindle", Value: spindle, Rule: "the drive has no such spindle"}
	}
	return d.train(line), nil
}

// CheckHalfSpeed returns nil if each of the named spindles turns exactly once for
// two turns of the root, else every fault, under the spindle's name.
func (d Drive) CheckHalfSpeed(spindles ...string) error {
	if err := d.Err(); err != nil {
		return err
	}
	var l fault.List
	for _, s := range spindles {
		t, err := d.Train(s)
		if l.Under(s, err) {
			l.Under(s, t.CheckHalfSpeed())
		}
	}
	return l.Err()
}

// Step is what meshing one tooth further on at one mesh does to a drive.
type Step struct {
	Mesh       int              `json:"mesh"`        // index in the Drive
	Crank      units.CrankAngle `json:"crank"`       // how much earlier all it moves comes, in crank degrees
	CrankExact Rational         `json:"crank_exact"` // the same as an exact fraction of degrees
	Moves      []string         `json:"moves"`       // the spindles moved: the driven one and all behind it
}

// Steps returns, for every mesh, what one tooth there is worth and which spindles
// it moves. In crank degrees the worth is the same for every spindle moved:
// 360°/driven teeth times the crank's turns per turn of the driven wheel.
// Errors: those of [Drive.Err].
func (d Drive) Steps() ([]Step, error) {
	if err := d.Err(); err != nil {
		return nil, err
	}
	steps := make([]Step, len(d))
	for i, m := range d {
		line, _, _ := d.line(m.To)
		w, err := d.train(line).ToothWorth(len(line) - 1)
		if err != nil {
			return nil, err
		}
		steps[i] = Step{Mesh: i, Crank: w.Crank, CrankExact: w.CrankExact}
		for _, n := range d {
			behind, _, _ := d.line(n.To)
			for _, k := range behind {
				if k == i {
					steps[i].Moves = append(steps[i].Moves, n.To)
				}
			}
		}
	}
	return steps, nil
}
