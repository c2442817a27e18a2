package fastener

import (
	"strings"
	"sync"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units/fault"
)

// longest is the longest name Parse looks at; no thread's is half of it.
const longest = 64

// Parse returns the thread of a name as the trade writes it: "1/4 BSF", "M8",
// "M8 x 1", "2BA", "10-32 UNF", "1/4-26 cycle", "1/4 CEI", "G 1/8", "3/8-26 brass",
// with "LH" or "RH" at the end if its hand is known. Capitals, spaces, inch
// marks and noughts at the end of a decimal do not count. The error is a
// fault.Fault: a name that several threads share, such as "1/2 cycle" or
// "1/4-20", which is Whitworth as well as UNC, lists them.
func Parse(name string) (Thread, error) {
	text, hand := cutHand(strings.TrimSpace(name))
	switch {
	case text == "":
		return Thread{}, noThread("")
	case len(text) > longest:
		return Thread{}, fault.Fault{Code: fault.BadForm, Value: text[:longest] + "...", Rule: "a thread's name, such as \"1/4 BSF\""}
	}
	// the tables' own names and other names first
	if row, ok := refdata.Threads().ByName(text); ok {
		return fromRow(row).WithHand(hand), nil
	}
	list := byName()[foldName(text)]
	switch len(list) {
	case 0:
		return Thread{}, fault.Fault{Code: fault.UnknownName, Value: name, Rule: "a thread of the tables, such as 1/4 BSF, 2 BA, M8x1, 10-32 UNF, 1/4-26 cycle, G 1/8"}
	case 1:
		return tables()[list[0]].WithHand(hand), nil
	}
	var names []string
	for _, i := range list {
		names = append(names, tables()[i].name)
	}
	return Thread{}, fault.Fault{Code: fault.UnitAmbiguous, Value: name, Rule: "one of " + strings.Join(names, ", ")}
}

// MustParse is [Parse] for a name fixed in a program; it panics on a bad one.
func MustParse(name string) Thread {
	t, err := Parse(name)
	if err != nil {
		panic(err)
	}
	return t
}

// cutHand takes the hand off the end of a name.
func cutHand(s string) (string, Hand) {
	for _, h := range [...]struct {
		end  string
		hand Hand
	}{
		{"left-hand", Left}, {"left hand", Left}, {"lh", Left}, {"l.h.", Left},
		{"right-hand", Right}, {"right hand", Right}, {"rh", Right}, {"r.h.", Right},
	} {
		if n := len(s) - len(h.end); n > 0 && strings.EqualFold(s[n:], h.end) {
			if head := strings.TrimRight(s[:n], " ,-"); head != s[:n] {
				return head, h.hand
			}
		}
	}
	return s, HandUnknown
}

// foldName is a name without what people write differently. Numbers stay
// apart and decimals whole, so that M2.0 is M2 and never M20.
func foldName(s string) string {
	s = strings.ToLower(s)
	for _, w := range [...][2]string{
		{"threads per inch", "tpi"}, {"t.p.i.", "tpi"}, {"gauge", "swg"}, {"tpi", " "}, {"whitworth", "bsw"}, {"whit", "bsw"}, {"unified", "un"},
		{"bscy", "cycle"}, {"bsc", "cycle"}, {"cei", "cycle"}, {"bspp", "bsp"}, {"inch", " "}, {"in", " "}, {"swg spoke", "g spoke"},
	} {
		s = strings.Replace(s, w[0], w[1], 1)
	}
	b := make([]byte, 0, len(s))
	apart := false // something stood between the last number and here
	last := byte(0)
	for i := 0; i < len(s); i++ {
		c := s[i]
		switch {
		case c >= '0' && c <= '9':
			if apart && last >= '0' && last <= '9' {
				b = append(b, '-')
			}
		case c == '.' && digitAt(s, i-1):
			end := i + 1
			for digitAt(s, end) {
				end++
			}
			if end < len(s) && s[end] == '/' { // 1.1/4
				apart = true
				continue
			}
			if decimals := strings.TrimRight(s[i:end], "0"); decimals != "." {
				b = append(b, decimals...)
			}
			last, apart, i = '0', false, end-1
			continue
		case c == 'x', c == ' ', c == '"', c == '#', c == '-', c == '.', c >= 0x80: // × and ″ too
			apart = true
			continue
		}
		b = append(b, c)
		last, apart = c, false
	}
	return string(b)
}

func digitAt(s string, i int) bool { return i >= 0 && i < len(s) && s[i] >= '0' && s[i] <= '9' }

// byName finds the places of threads by folded names that the tables do not
// hold as such; several threads may share one.
var byName = sync.OnceValue(func() map[string][]int {
	m := make(map[string][]int)
	for i, t := range tables() {
		add := func(name string) {
			f := foldName(name)
			for _, j := range m[f] {
				if j == i {
					return
				}
			}
			m[f] = append(m[f], i)
		}
		add(t.name)
		size := t.name
		if row, ok := t.Row(); ok {
			size = row.Size
		}
		tpi := trimFloat(t.ThreadsPerInch())
		switch t.system {
		case Cycle:
			add(size + " cycle")
			add(size + " " + tpi + " cycle")
			add(size + " cycle " + tpi)
			add(size + " " + tpi)
		case BSW, BSF:
			add(size + " " + tpi + " " + t.system.String())
			add(size + " " + t.system.String() + " " + tpi)
			add(t.system.String() + " " + size)
			add(size + " " + tpi) // 1/4-20 is Whitworth as well as UNC
			if t.system == BSW {
				add("W " + size)
			}
		case Brass:
			add(size + " brass")
			add(size + " brass 26")
			add(size + " 26")
		case Spoke:
			add(size + " g spoke")
		case BA:
			add("BA " + size)
		case BSPP:
			add(size + " BSP")
			add("BSP " + size)
		case UNC, UNF:
			add(size + " " + t.system.String())
			add(size + " " + tpi) // "10-32"
			add(size + " UN " + tpi)
			add(size + " " + t.system.String() + " " + tpi)
		case MetricCoarse:
			add(size + " x " + trimFloat(t.pitch.Millimetres()))
		}
	}
	return m
})
