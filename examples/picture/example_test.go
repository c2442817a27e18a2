package picture_test

import (
	"bytes"
	"fmt"

	"example.com/benchbook/examples/job"
	"example.com/benchbook/examples/picture"
)

// Every picture of the demonstration, with what it shows.
func ExampleAll() {
	report, err := job.Run(job.Demo())
	if err != nil {
		fmt.Println(err)
		return
	}
	pictures, err := picture.All(report)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range pictures[:2] {
		fmt.Printf("%s: %s\n", p.Name, p.Finding)
	}
	// Output:
	// valve-lift: Inlet 9.6° early, exhaust 14.5° late
	// timing-circle: Inlet 9.6° early, exhaust 14.5° late
}

// A picture as a document, as part of a page, and as dots.
func ExamplePicture_SVG() {
	report, err := job.Run(job.Demo())
	if err != nil {
		fmt.Println(err)
		return
	}
	pictures, err := picture.All(report)
	if err != nil {
		fmt.Println(err)
		return
	}
	document, _ := pictures[0].SVG()
	element, _ := pictures[0].Inline()
	dots, _ := pictures[0].PNG()
	fmt.Println(bytes.HasPrefix(document, []byte("<?xml")), bytes.HasPrefix(element, []byte("<svg role=\"img\"")), bytes.HasPrefix(dots, []byte("\x89PNG")))
	// Output: true true true
}
