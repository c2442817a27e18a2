package picture_test

import (
	"bytes"
	"encoding/xml"
	"io"
	"testing"

	"example.com/benchbook/examples/job"
	"example.com/benchbook/examples/picture"
)

func TestEveryPictureDraws(t *testing.T) {
	r, err := job.Run(job.Demo())
	if err != nil {
		t.Fatal(err)
	}
	all, err := picture.All(r)
	if err != nil || len(all) < 6 {
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
	}
}
