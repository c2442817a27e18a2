package refdata

import (
	"encoding/csv"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// Text that encoding/csv reads as a table is read the same here: the scanner takes
// no line feed within a cell and no carriage return, so those are left out.
func FuzzScanner(f *testing.F) {
	f.Add("a,b\n1,2\n")
	f.Add("a,b\n\"x, y\",\"say \"\"so\"\"\"\n")
	f.Add("a\n\n")
	f.Add("a,b\n\"\",\n")
	f.Fuzz(func(t *testing.T, text string) {
		s := scan(text) // never panics
		var got [][]string
		if s.head != nil {
			got = append(got, s.head)
		}
		for s.next() {
			got = append(got, append([]string(nil), s.cells...))
			s.number(0)
		}
		if strings.Contains(text, "\r") || strings.Contains(text, "\n\n") || strings.HasPrefix(text, "\n") {
			return
		}
		want, err := csv.NewReader(strings.NewReader(text)).ReadAll()
		if err != nil {
			return
		}
		for _, row := range want {
			if strings.Contains(strings.Join(row, ""), "\n") {
				return
			}
		}
		if err := s.err(); err != nil && !onlyNumbers(err) {
			t.Fatalf("%q: %v", text, err)
		}
		if len(want) != len(got) {
			t.Fatalf("%q: %d lines, want %d", text, len(got), len(want))
		}
		for i := range want {
			if strings.Join(want[i], "\x00") != strings.Join(got[i], "\x00") {
				t.Errorf("line %d of %q: %q, want %q", i+1, text, got[i], want[i])
			}
		}
	})
}

func onlyNumbers(err error) bool {
	for line := range strings.SplitSeq(err.Error(), "\n") {
		if !strings.Contains(line, "not a number") {
			return false
		}
	}
	return true
}

// A plain decimal reads as strconv.ParseFloat reads it, to the last bit, and what
// is no plain decimal is left to it.
func TestDecimalIsParseFloat(t *testing.T) { rapid.Check(t, checkDecimal) }

func FuzzDecimal(f *testing.F) {
	fuzzBytes(f)
	f.Fuzz(rapid.MakeFuzz(checkDecimal))
}

func checkDecimal(t *rapid.T) {
	text := rapid.OneOf(
		rapid.StringMatching(`-?[0-9]{0,8}\.?[0-9]{0,8}`),
		rapid.StringMatching(`[-0-9.e+]{0,10}`),
		rapid.StringMatching(`[1-9][0-9]{7}\.[0-9]{5,9}`),
	).Draw(t, "text")
	got, ok := decimal(text)
	want, err := strconv.ParseFloat(text, 64)
	if ok && (err != nil || got != want) {
		t.Fatalf("%q: %v, want %v, %v", text, got, want, err)
	}
}

// Origins follow their cells from row to row, and what is not listed is a fault.
func TestOriginCells(t *testing.T) {
	s := scan("source,status\nbs84-form,derived\nbs84-form,published\niso724+bs84-form,published\n,\n")
	c := s.originColumns("")
	want := []struct {
		status Status
		n      int
	}{{Derived, 1}, {Published, 1}, {Published, 2}, {0, 0}}
	for _, w := range want {
		s.next()
		o := s.origin(c)
		if o.Status() != w.status || len(o.Sources()) != w.n || o.Given() != (w.n > 0) {
			t.Errorf("%v, want %v of %d", o, w.status, w.n)
		}
	}
	if err := s.err(); err != nil {
		t.Error(err)
	}
	s = scan("source,status\nhearsay,derived\nbs84-form,certain\na+b+c+d+e,derived\n")
	c = s.originColumns("")
	for s.next() {
		s.origin(c)
	}
	if s.err() == nil {
		t.Error("a source that is not listed, a status that does not exist and five sources pass")
	}
}
