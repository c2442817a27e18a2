package main

import (
	"bytes"
	"fmt"
	"go/ast"
	"go/constant"
	"go/printer"
	"go/token"
	"go/types"
	"path/filepath"
	"strings"

	"golang.org/x/tools/go/packages"
)

// site is one change: an operator of the source and what stands in its place.
type site struct {
	id     int
	file   string // base name
	line   int
	node   ast.Node
	from   token.Token
	to     token.Token
	key    string // file, function, expression and change: holds when lines move
	fixed  bool   // in a constant that the compiler must know
	status status
}

// instead lists what an operator is changed to.
var instead = map[token.Token][]token.Token{
	token.ADD: {token.SUB}, token.SUB: {token.ADD},
	token.MUL: {token.QUO}, token.QUO: {token.MUL}, token.REM: {token.MUL},
	token.LSS: {token.LEQ, token.GEQ}, token.LEQ: {token.LSS, token.GTR},
	token.GTR: {token.GEQ, token.LEQ}, token.GEQ: {token.GTR, token.LSS},
	token.EQL: {token.NEQ}, token.NEQ: {token.EQL},
	token.INC: {token.DEC}, token.DEC: {token.INC},
}

// sites finds the changes of a package, in the order of its files, numbered from 1.
func sites(p *packages.Package) []*site {
	var list []*site
	seen := map[string]int{}
	for _, f := range p.Syntax {
		name := filepath.Base(p.Fset.Position(f.Pos()).Filename)
		function := ""
		fixed := 0
		var stack []ast.Node
		ast.Inspect(f, func(n ast.Node) bool {
			if n == nil {
				if isFixed(stack[len(stack)-1]) {
					fixed--
				}
				stack = stack[:len(stack)-1]
				return true
			}
			stack = append(stack, n)
			if isFixed(stack[len(stack)-1]) {
				fixed++
			}
			if len(stack) == 2 {
				function = declared(n)
			}
			var op token.Token
			switch n := n.(type) {
			case *ast.BinaryExpr:
				op = n.Op
				if isString(p, n.X) && op == token.ADD {
					return true
				}
			case *ast.UnaryExpr:
				if n.Op == token.SUB {
					op = n.Op
				}
			case *ast.IncDecStmt:
				op = n.Tok
			}
			for _, to := range instead[op] {
				s := &site{id: len(list) + 1, file: name, line: p.Fset.Position(n.Pos()).Line, node: n, from: op, to: to, fixed: fixed > 0}
				key := fmt.Sprintf("%s/%s %s: %s -> %s", strings.TrimPrefix(p.PkgPath, p.Module.Path+"/"), strings.TrimSuffix(name, ".go"), function, source(p.Fset, n), to)
				if seen[key]++; seen[key] > 1 {
					key += fmt.Sprintf(" (%d)", seen[key])
				}
				s.key = key
				list = append(list, s)
			}
			return true
		})
	}
	return list
}

// isFixed reports whether n is where only constants may stand.
func isFixed(n ast.Node) bool {
	switch n := n.(type) {
	case *ast.GenDecl:
		return n.Tok == token.CONST
	case *ast.ArrayType:
		return true
	}
	return false
}

func declared(n ast.Node) string {
	switch d := n.(type) {
	case *ast.FuncDecl:
		if d.Recv == nil || len(d.Recv.List) == 0 {
			return d.Name.Name
		}
		t := d.Recv.List[0].Type
		if s, ok := t.(*ast.StarExpr); ok {
			t = s.X
		}
		switch g := t.(type) {
		case *ast.IndexExpr:
			t = g.X
		case *ast.IndexListExpr:
			t = g.X
		}
		if id, ok := t.(*ast.Ident); ok {
			return id.Name + "." + d.Name.Name
		}
		return d.Name.Name
	}
	return "var"
}

func isString(p *packages.Package, e ast.Expr) bool {
	b, ok := p.TypesInfo.TypeOf(e).Underlying().(*types.Basic)
	return ok && b.Info()&types.IsString != 0
}

// isConstant reports whether the compiler works e out.
func isConstant(p *packages.Package, e ast.Expr) bool {
	v := p.TypesInfo.Types[e].Value
	return v != nil && v.Kind() != constant.Unknown
}

// source is a node's text on one line, shortened.
func source(fset *token.FileSet, n ast.Node) string {
	var b bytes.Buffer
	printer.Fprint(&b, fset, n)
	s := strings.Join(strings.Fields(b.String()), " ")
	if r := []rune(s); len(r) > 70 {
		s = string(r[:40]) + " … " + string(r[len(r)-27:])
	}
	return s
}
