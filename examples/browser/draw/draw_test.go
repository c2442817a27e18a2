package draw

import (
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/benchbook/examples/job"
	"example.com/benchbook/timing"
	"example.com/benchbook/units/measure"
)

// A plain lobe passes its check lift at its events, is highest half way, and
// lies where it does whichever lift it has.
func TestLobeMeetsItsEvents(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := lobe{opens: rapid.Float64Range(-300, 100).Draw(t, "opens"), lift: rapid.Float64Range(2, 15).Draw(t, "lift")}
		l.closes = l.opens + rapid.Float64Range(100, 320).Draw(t, "open for")
		l.check = l.lift * rapid.Float64Range(0, 0.5).Draw(t, "check")
		const near = 1e-9 // of millimetres of lift, in sums of a few hundred degrees
		for _, at := range []float64{l.opens, l.closes} {
			if got := l.at(at); math.Abs(got-l.check) > near {
				t.Fatalf("lift %g at an event, check lift %g", got, l.check)
			}
		}
		if got := l.at((l.opens + l.closes) / 2); math.Abs(got-l.lift) > near {
			t.Fatalf("lift %g half way, greatest %g", got, l.lift)
		}
	})
	for _, none := range []lobe{{}, {10, 5, 8, 1}, {0, 200, 1, 2}} {
		if _, _, ok := none.shape(); ok || none.at(5) != 0 {
			t.Errorf("%v has a shape", none)
		}
	}
}

func TestBrokenKeepsWords(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.SliceOfN(rapid.StringMatching(`[a-z]{1,12}`), 1, 20).Draw(t, "words")
		letters := rapid.IntRange(1, 40).Draw(t, "letters")
		lines := broken(strings.Join(words, " "), letters)
		if got := strings.Fields(strings.Join(lines, " ")); !slices.Equal(got, words) {
			t.Fatalf("%q from %q", got, words)
		}
		for _, l := range lines {
			if len(l) > letters && strings.Contains(l, " ") {
				t.Fatalf("%q is longer than %d", l, letters)
			}
		}
	})
}

// Words of a job file must not become marks of the drawing.
func TestWordsStayWords(t *testing.T) {
	c := &canvas{width: 300, height: 20}
	const evil = `</text><script>"&'x`
	c.text(0, 0, from, evil)
	d := xml.NewDecoder(strings.NewReader(c.svg(evil)))
	var said []string
	for {
		tok, err := d.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		switch tok := tok.(type) {
		case xml.StartElement:
			if tok.Name.Local == "script" {
				t.Fatal("a script got in")
			}
		case xml.CharData:
			said = append(said, string(tok))
		}
	}
	if want := []string{evil, evil}; !slices.Equal(said, want) {
		t.Errorf("%q, want %q", said, want)
	}
}

// Nothing given must still be drawn, and say so.
func TestNothingGiven(t *testing.T) {
	for _, width := range []int{-5, 0, 360} {
		if finding, svg := Lobes(job.TimingResult{}, width); finding != "inlet not read, exhaust not read" || strings.Contains(svg, "NaN") {
			t.Errorf("%d: %q %s", width, finding, svg)
		}
		if _, svg := Window(job.ClutchResult{}, width); svg == "" || strings.Contains(svg, "NaN") {
			t.Errorf("%d: %s", width, svg)
		}
	}
	if b := Bars(measure.Ranking{}); len(b) != 0 {
		t.Errorf("bars of nothing: %v", b)
	}
	if got := phase(timing.Phase{}); got != "not read" {
		t.Errorf("phase: %q", got)
	}
}

func ExampleBars() {
	report, err := job.Run(job.Demo())
	if err != nil {
		fmt.Println(err)
		return
	}
	lead := Bars(report.Section("timing").Result.(job.TimingResult).Verdict.Causes)[0]
	fmt.Println(lead.Words + ": " + lead.Text)
	// Output:
	// very likely: exhaust camwheel one tooth late and inlet cam turned on its wheel
}

func ExampleLobes() {
	report, err := job.Run(job.Demo())
	if err != nil {
		fmt.Println(err)
		return
	}
	finding, _ := Lobes(report.Section("timing").Result.(job.TimingResult), 360)
	fmt.Println(finding)
	// Output:
	// inlet 9.6° early, exhaust 14.5° late
}
