package job

import (
	"strconv"
	"strings"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// section reads the fields of one object of the job file. It notes faults with
// their path and goes on, so that a reader sees all of them at once; closing it
// reports the keys nobody asked for.
type section struct {
	path   string
	node   *node
	faults *fault.List
	asked  map[string]bool
}

func open(path string, n *node, faults *fault.List) section {
	return section{path: path, node: n, faults: faults, asked: map[string]bool{}}
}

// take returns the node at key, nil if it is not there or null. A key that
// begins with "#" is a remark and is never asked for.
func (s section) take(key string) *node {
	s.asked[key] = true
	if s.node == nil {
		return nil
	}
	n := s.node.child[key]
	if n == nil || n.kind == isNull {
		return nil
	}
	return n
}

func (s section) fault(key string, code fault.Code, value, rule string) {
	s.faults.Add(fault.Fault{Code: code, Path: under(s.path, key), Value: value, Rule: rule})
}

// has reports whether key is there.
func (s section) has(key string) bool { return s.node != nil && s.node.child[key] != nil }

// object opens the object at key; ok is false if it is not there.
func (s section) object(key string) (sub section, ok bool) {
	n := s.take(key)
	sub = open(under(s.path, key), n, s.faults)
	if n != nil && n.kind != isObject {
		s.fault(key, fault.BadForm, n.text, "expected an object in braces, found "+n.kind.String())
		sub.node = nil
		return sub, false
	}
	return sub, n != nil
}

// list opens the objects of the list at key.
func (s section) list(key string) []section {
	n := s.take(key)
	if n == nil {
		return nil
	}
	if n.kind != isList {
		s.fault(key, fault.BadForm, n.text, "expected a list in brackets, found "+n.kind.String())
		return nil
	}
	var subs []section
	for i, item := range n.items {
		at := key + "[" + strconv.Itoa(i) + "]"
		if item.kind != isObject {
			s.fault(at, fault.BadForm, item.text, "expected an object in braces, found "+item.kind.String())
			continue
		}
		subs = append(subs, open(under(s.path, at), item, s.faults))
	}
	return subs
}

// text returns the string at key, "" if not there.
func (s section) text(key string) string {
	n := s.take(key)
	if n == nil {
		return ""
	}
	if n.kind != isText {
		rule := "expected text in quotes, found " + n.kind.String()
		if n.kind == isNumber {
			rule = "put the figure in quotes with its unit"
		}
		s.fault(key, fault.BadForm, n.text, rule)
		return ""
	}
	return strings.TrimSpace(n.text)
}

// choice returns the text at key, which must be one of the allowed words.
func (s section) choice(key string, allowed ...string) string {
	t := s.text(key)
	if t == "" {
		return ""
	}
	for _, a := range allowed {
		if strings.EqualFold(a, t) {
			return a
		}
	}
	s.fault(key, fault.UnknownName, t, "one of: "+strings.Join(allowed, ", "))
	return ""
}

// flag returns the truth at key; ok is false if it is not there.
func (s section) flag(key string) (value, ok bool) {
	n := s.take(key)
	if n == nil {
		return false, false
	}
	if n.kind != isBool {
		s.fault(key, fault.BadForm, n.text, "expected true or false, found "+n.kind.String())
		return false, false
	}
	return n.text == "true", true
}

// count returns the whole number at key, a bare number or text, from least to
// most; zero and false if it is not there.
func (s section) count(key string, least, most int) (int, bool) {
	n := s.take(key)
	if n == nil {
		return 0, false
	}
	v, err := strconv.Atoi(strings.TrimSpace(n.text))
	if err != nil || v < least || v > most {
		s.fault(key, fault.OutOfRange, n.text, "a whole number from "+strconv.Itoa(least)+" to "+strconv.Itoa(most))
		return 0, false
	}
	return v, true
}

// counts returns the list of whole numbers at key.
func (s section) counts(key string, least, most int) []int {
	n := s.take(key)
	if n == nil {
		return nil
	}
	if n.kind != isList {
		s.fault(key, fault.BadForm, n.text, "expected a list of whole numbers in brackets, found "+n.kind.String())
		return nil
	}
	var all []int
	for i, item := range n.items {
		v, err := strconv.Atoi(item.text)
		if err != nil || v < least || v > most {
			s.fault(key+"["+strconv.Itoa(i)+"]", fault.OutOfRange, item.text, "a whole number from "+strconv.Itoa(least)+" to "+strconv.Itoa(most))
			continue
		}
		all = append(all, v)
	}
	return all
}

// quantity returns the figure at key and whether it is there.
func quantity[Q units.Quantity](s section, key string) (Q, bool) {
	t := s.text(key)
	if t == "" {
		return 0, false
	}
	q, err := units.Parse[Q](t)
	return q, s.faults.Under(under(s.path, key), err)
}

// reading returns the reading at key, not taken if it is not there.
func reading[Q units.Quantity](s section, key string, with measure.Instrument[Q]) measure.Reading[Q] {
	r, err := measure.Read(s.text(key), with)
	s.faults.Under(under(s.path, key), err)
	return r
}

// positionOf returns the crank position read at key.
func positionOf(s section, key string, with measure.Instrument[units.CrankAngle]) measure.Position {
	r, err := measure.ReadPosition(s.text(key), with)
	s.faults.Under(under(s.path, key), err)
	return r
}

// needPlace returns the crank position specified at key, which must be there.
func (s section) needPlace(key string) units.CrankPosition {
	t := s.text(key)
	if t == "" {
		if !s.has(key) {
			s.fault(key, fault.Missing, "", "needed, such as 25 BTDC")
		}
		return units.CrankPosition{}
	}
	p, err := units.ParsePosition(t)
	s.faults.Under(under(s.path, key), err)
	return p
}

// close notes every key that was not asked for, with the nearest one that is
// known. Keys beginning with "#" are the user's remarks.
func (s section) close() {
	if s.node == nil {
		return
	}
	for _, key := range s.node.keys {
		if s.asked[key] || strings.HasPrefix(key, "#") {
			continue
		}
		rule := "not a key of this section"
		if near := nearest(key, s.asked); near != "" {
			rule += "; did you mean " + strconv.Quote(near) + "?"
		}
		s.fault(key, fault.UnknownName, "", rule)
	}
}

// nearest returns the known key within two edits of key, or "".
func nearest(key string, known map[string]bool) string {
	best, at := "", 3
	for k := range known {
		if d := edits(key, k); d < at || d == at && k < best {
			best, at = k, d
		}
	}
	return best
}

// edits is the Levenshtein distance.
func edits(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			cost := diagonal
			if a[i] != b[j] {
				cost++
			}
			diagonal = row[j+1]
			row[j+1] = min(cost, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(b)]
}

// texts returns the list of texts at key.
func (s section) texts(key string) []string {
	n := s.take(key)
	if n == nil {
		return nil
	}
	if n.kind != isList {
		s.fault(key, fault.BadForm, n.text, "expected a list of texts in brackets, found "+n.kind.String())
		return nil
	}
	var all []string
	for i, item := range n.items {
		if item.kind != isText {
			s.fault(key+"["+strconv.Itoa(i)+"]", fault.BadForm, item.text, "expected text in quotes, found "+item.kind.String())
			continue
		}
		all = append(all, strings.TrimSpace(item.text))
	}
	return all
}
