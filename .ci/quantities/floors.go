package main

import (
	"go/ast"
	"strconv"
	"strings"

	"golang.org/x/tools/go/analysis"
)

// floors refuses an import of a higher floor or of another trade, a package
// named for nothing, an init function and the log package.
var floors = &analysis.Analyzer{
	Name: "floors",
	Doc:  "refuse imports that the house does not allow",
	Run:  runFloors,
}

const module = "example.com/benchbook"

// floor returns the floor of a package of the module, from the ground up, and
// its trade or "".
func floor(path string) (level int, trade string) {
	rest := strings.TrimPrefix(path, module+"/")
	top, below, _ := strings.Cut(rest, "/")
	switch {
	case rest == "units/fastener" || rest == "refdata/checks":
		return 2, ""
	case top == "units":
		return 0, ""
	case top == "refdata":
		return 1, ""
	case top == "examples":
		return 5, ""
	case below == "":
		return 4, top
	}
	return 3, top
}

func runFloors(pass *analysis.Pass) (any, error) {
	path := pass.Pkg.Path()
	level, trade := floor(path)
	for _, f := range pass.Files {
		if isTest(pass, f) {
			continue
		}
		switch f.Name.Name {
		case "util", "utils", "common", "helper", "helpers", "types", "core":
			pass.Reportf(f.Name.Pos(), "package %s is named for nothing", f.Name.Name)
		}
		for _, d := range f.Decls {
			if fn, ok := d.(*ast.FuncDecl); ok && fn.Recv == nil && fn.Name.Name == "init" {
				pass.Reportf(fn.Pos(), "an init function")
			}
		}
		for _, i := range f.Imports {
			to, err := strconv.Unquote(i.Path.Value)
			if err != nil {
				continue
			}
			if f.Name.Name != "main" && (to == "log" || to == "log/slog") {
				pass.Reportf(i.Pos(), "a library does not log")
			}
			if !strings.HasPrefix(to, module+"/") {
				continue
			}
			switch up, other := floor(to); {
			case up > level:
				pass.Reportf(i.Pos(), "%s is on a higher floor", to)
			case trade != "" && other != "" && other != trade:
				pass.Reportf(i.Pos(), "%s is another trade", to)
			}
		}
	}
	return nil, nil
}
