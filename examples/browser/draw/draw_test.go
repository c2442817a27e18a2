package draw

import (
	"encoding/xml"
	"fmt"
	"io"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/benchbook/examples/job"
	"example.com/benchbook/timing"
	"example.com/benchbook/units/measure"
)

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
		if finding, svg := Circle(job.TimingResult{}, width); finding != "inlet not read, exhaust not read" || strings.Contains(svg, "NaN") {
			t.Errorf("%d: %q %s", width, finding, svg)
		}
		if finding, svg := Mixture(job.CarburettorResult{}, width); finding != "no mixture worked out" || strings.Contains(svg, "NaN") {
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

func ExampleCircle() {
	report, err := job.Run(job.Demo())
	if err != nil {
		fmt.Println(err)
		return
	}
	finding, svg := Circle(report.Section("timing").Result.(job.TimingResult), 360)
	fmt.Println(finding, strings.Count(svg, "ABDC"))
	// Output:
	// inlet 9.6° early, exhaust 14.5° late 1
}

func ExampleMixture() {
	report, err := job.Run(job.Demo())
	if err != nil {
		fmt.Println(err)
		return
	}
	finding, _ := Mixture(report.Section("carburettor").Result.(job.CarburettorResult), 360)
	fmt.Println(finding)
	// Output:
	// lambda by the model: 0.89 wide open, 0.79 half open, 0.36 an eighth open
}

func ExampleWindow() {
	report, err := job.Run(job.Demo())
	if err != nil {
		fmt.Println(err)
		return
	}
	finding, _ := Window(report.Section("clutch").Result.(job.ClutchResult), 360)
	fmt.Println(finding)
	// Output:
	// no setting both holds and frees: it holds from 8.8 turns on and frees only up to 2.3; now, 6.0 in: slips and drags at once
}
