package refdata

import "strings"

// originColumns are the two columns that say what a group of others rests on.
type originColumns struct{ source, status, slot int }

// recent is the origin that a pair of columns had in the row before: it is
// usually the same again.
type recent struct {
	keys, words string
	origin      Origin
}

func (s *scanner) originColumns(group string) originColumns {
	s.recent = append(s.recent, recent{})
	slot := len(s.recent) - 1
	if group == "" {
		return originColumns{s.must("source"), s.must("status"), slot}
	}
	return originColumns{s.column("source_" + group), s.column("status_" + group), slot}
}

// origin reads a pair such as "bs84-form+bsw-tool-seller", "published".
func (s *scanner) origin(c originColumns) Origin {
	keys, words := s.text(c.source), s.text(c.status)
	if keys == "" && words == "" {
		return Origin{}
	}
	last := &s.recent[c.slot]
	if last.keys == keys && last.words == words {
		return last.origin
	}
	o := Origin{status: statusNamed(words)}
	if o.status == 0 {
		s.fail("no such status: " + words)
	}
	list, n := sources(), 0
	for key := range strings.SplitSeq(keys, "+") {
		p := list.place[key]
		if p == 0 || n == len(o.source) {
			s.fail("no such source, or too many: " + key)
			continue
		}
		o.source[n] = p
		n++
	}
	*last = recent{keys, words, o}
	return o
}
