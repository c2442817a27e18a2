package main

import (
	"go/ast"
	"go/token"

	"golang.org/x/tools/go/analysis"
)

// documented refuses an exported function, method, type, constant or variable
// without a comment, and a package without one. A comment on a group or behind
// the line serves constants and variables. Fields are left to the reader.
var documented = &analysis.Analyzer{
	Name: "documented",
	Doc:  "refuse exported names without a comment",
	Run:  runDocumented,
}

func runDocumented(pass *analysis.Pass) (any, error) {
	hasDoc, first := false, token.NoPos
	for _, f := range pass.Files {
		if isTest(pass, f) {
			continue
		}
		if first == token.NoPos {
			first = f.Package
		}
		hasDoc = hasDoc || f.Doc != nil
		if pass.Pkg.Name() == "main" {
			continue
		}
		for _, d := range f.Decls {
			switch d := d.(type) {
			case *ast.FuncDecl:
				if d.Name.IsExported() && d.Doc == nil && exportedReceiver(d) {
					pass.Reportf(d.Pos(), "%s has no comment", d.Name.Name)
				}
			case *ast.GenDecl:
				for _, s := range d.Specs {
					undocumented(pass, d, s)
				}
			}
		}
	}
	if first != token.NoPos && !hasDoc {
		pass.Reportf(first, "package %s has no comment", pass.Pkg.Name())
	}
	return nil, nil
}

func undocumented(pass *analysis.Pass, d *ast.GenDecl, s ast.Spec) {
	switch s := s.(type) {
	case *ast.TypeSpec:
		if s.Name.IsExported() && s.Doc == nil && (d.Doc == nil || d.Lparen.IsValid()) {
			pass.Reportf(s.Pos(), "%s has no comment", s.Name.Name)
		}
	case *ast.ValueSpec:
		if s.Doc != nil || s.Comment != nil || d.Doc != nil {
			return
		}
		for _, n := range s.Names {
			if n.IsExported() {
				pass.Reportf(n.Pos(), "%s has no comment", n.Name)
			}
		}
	}
}

// exportedReceiver reports whether a function is no method, or one of an
// exported type.
func exportedReceiver(d *ast.FuncDecl) bool {
	if d.Recv == nil {
		return true
	}
	t := d.Recv.List[0].Type
	for {
		switch u := t.(type) {
		case *ast.StarExpr:
			t = u.X
		case *ast.IndexExpr:
			t = u.X
		case *ast.IndexListExpr:
			t = u.X
		case *ast.Ident:
			return u.IsExported()
		default:
			return true
		}
	}
}
