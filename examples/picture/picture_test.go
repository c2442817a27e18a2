package picture_test

import (
	"bytes"
	"encoding/xml"
	"io"
	"strings"
	"testing"

	"example.com/benchbook/examples/job"
	"example.com/benchbook/examples/picture"
)

func TestEveryPictureDraws(t *testing.T) {
	everyPicture(t, job.Demo(), 9)
	demo := string(job.Demo())
	for _, change := range [][2]string{
		{`"from": "70 BTDC"`, `"from": "100 ATDC"`},                              // an inlet cam a good half turn late
		{`"exhaust_opens": "35 BBDC"`, `"exhaust_opens": "100 BBDC"`},            // a very long exhaust
		{`"exhaust_closes": "22 ATDC"`, `"exhaust_closes": "60 BTDC"`},           // no overlap
		{`"hub_nut_back": "0.5 turn ± 0.05"`, `"hub_nut_back": "0 turn ± 0.02"`}, // a window that is open
		{`"nuts_in": "6 turns ± 0.1"`, `"nuts_in": "0 turns ± 0.1"`},             // nuts at the edge of the paper
		{`"main_jet": "110 cc/min"`, `"main_jet": "900 cc/min"`},                 // mixture off the paper
		{`"at": "50 mile/h"`, `"at": "95 mile/h"`},                               // beyond top gear
	} {
		changed := strings.Replace(demo, change[0], change[1], 1)
		if changed == demo {
			t.Errorf("the demonstration has no %s", change[0])
		}
		everyPicture(t, []byte(changed), 8)
	}
}

func everyPicture(t *testing.T, data []byte, least int) {
	t.Helper()
	r, err := job.Run(data)
	if err != nil {
		t.Fatal(err)
	}
	all, err := picture.All(r)
	if err != nil || len(all) < least {
		t.Fatal(len(all), err)
	}
	seen := map[string]bool{}
	for _, p := range all {
		if seen[p.Name] || p.Finding == "" || p.Title == "" {
			t.Errorf("%s: name twice, or nothing said", p.Name)
		}
		seen[p.Name] = true
		svg, err := p.SVG()
		if err != nil {
			t.Fatal(p.Name, err)
		}
		d := xml.NewDecoder(bytes.NewReader(svg))
		for {
			if _, err := d.Token(); err == io.EOF {
				break
			} else if err != nil {
				t.Fatalf("%s: %v", p.Name, err)
			}
		}
		if bytes.Contains(svg, []byte("NaN")) || bytes.Contains(svg, []byte("Inf")) {
			t.Errorf("%s holds a figure that is none", p.Name)
		}
		// every piece of writing is held to its length, whatever face it is set in
		if n, m := bytes.Count(svg, []byte("<text ")), bytes.Count(svg, []byte("textLength=")); n == 0 || n != m {
			t.Errorf("%s: %d pieces of writing, %d of them held to their length", p.Name, n, m)
		}
	}
}
