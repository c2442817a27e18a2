package main

import (
	_ "embed"
	"html/template"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"example.com/benchbook/examples/job"
	"example.com/benchbook/examples/picture"
	"example.com/benchbook/refdata"
)

//go:embed page.html
var pageText string

// writePage writes the report as one HTML page that asks for nothing outside
// itself, prints on A4 and needs no script.
func writePage(out io.Writer, r job.Report) error {
	pictures, err := picture.All(r)
	if err != nil {
		return err
	}
	drawn := map[string][]figure{}
	for _, p := range pictures {
		svg, err := p.Inline()
		if err != nil {
			return err
		}
		drawn[p.Section] = append(drawn[p.Section], figure{p.Title, p.Finding, template.HTML(svg)})
	}
	cautions := []refdata.Caution{refdata.DeferToManual, refdata.OilBeforeStart, refdata.BrakesBeforeRoad}
	for _, s := range r.Sections {
		for _, c := range s.Cautions {
			if !slices.Contains(cautions, c) {
				cautions = append(cautions, c)
			}
		}
	}
	page, err := template.New("page").Funcs(template.FuncMap{
		"pictures": func(section string) []figure { return drawn[section] },
		"plain":    func(c refdata.Caution) string { return strings.ReplaceAll(string(c), "-", " ") },
	}).Parse(pageText)
	if err != nil {
		return err
	}
	return page.Execute(out, struct {
		job.Report
		Cautions []refdata.Caution
	}{r, cautions})
}

// figure is a picture with its words.
type figure struct {
	Title, Finding string
	Drawing        template.HTML
}

// writePictures writes every picture of a report into a folder, as SVG, and as
// PNG too if asked.
func writePictures(dir string, png bool, r job.Report) error {
	pictures, err := picture.All(r)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(dir, 0o777); err != nil {
		return err
	}
	for _, p := range pictures {
		svg, err := p.SVG()
		if err != nil {
			return err
		}
		if err := os.WriteFile(filepath.Join(dir, p.Name+".svg"), svg, 0o666); err != nil {
			return err
		}
		if !png {
			continue
		}
		dots, err := p.PNG()
		if err != nil {
			return err
		}
		if err := os.WriteFile(filepath.Join(dir, p.Name+".png"), dots, 0o666); err != nil {
			return err
		}
	}
	return nil
}
