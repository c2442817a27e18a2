// Command quantities is a vet tool that holds the module to its laws on
// quantities, documentation and floors (see [documented] and [floors]): outside the package units and its readings, solver and faults, a
// number becomes a quantity through a constructor or a unit constant and comes
// out through an accessor.
//
//	go -C .ci/quantities build -o /tmp/quantities . && go vet -vettool=/tmp/quantities ./...
//
// It refuses
//
//	a * b, a / b of two quantities      write a.Ratio(b), or work in SI numbers
//	x / a of a number by a quantity
//	units.Length(f)                     write units.Millimetres(x) or units.FromSI
//	float64(l)                          write l.Millimetres() or l.SI()
//	units.Force(l), of another quantity
//	l > 5, Length 5 as an argument ...  write 5 * units.Millimetre
//	l++, l--
//
// A plain constant as a factor or divisor (3 * units.Millimetre, l / 2) and a
// bare zero pass. So does arithmetic among units.Ratio and bare numbers as one,
// since a Ratio is a pure number; casts of it are refused like the rest. Test
// files and generated files are not looked at.
package main

import (
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"strings"

	"golang.org/x/tools/go/analysis"
	"golang.org/x/tools/go/analysis/unitchecker"
)

func main() { unitchecker.Main(analyzer, documented, floors) }

const unitsPath = "example.com/benchbook/units"

// pure is the quantity that is a number without a unit.
const pure = "Ratio"

// exempt lists the packages that may touch the numbers.
var exempt = []string{unitsPath, unitsPath + "/measure", unitsPath + "/solve", unitsPath + "/fault", unitsPath + "/internal"}

var analyzer = &analysis.Analyzer{
	Name: "quantities",
	Doc:  "refuse arithmetic and casts that lose or invent a unit",
	Run:  run,
}

func run(pass *analysis.Pass) (any, error) {
	path := strings.TrimSuffix(strings.TrimSuffix(pass.Pkg.Path(), ".test"), "_test")
	for _, e := range exempt {
		if path == e || strings.HasPrefix(path, e+"/") && e != unitsPath {
			return nil, nil
		}
	}
	for _, f := range pass.Files {
		if ast.IsGenerated(f) || isTest(pass, f) {
			continue
		}
		(&file{pass: pass, allowed: map[ast.Expr]bool{}}).check(f)
	}
	return nil, nil
}

func isTest(pass *analysis.Pass, f *ast.File) bool {
	return strings.HasSuffix(pass.Fset.Position(f.Package).Filename, "_test.go")
}

// file is one file being checked.
type file struct {
	pass    *analysis.Pass
	allowed map[ast.Expr]bool // plain numbers that scale a quantity
}

func (f *file) check(root *ast.File) {
	ast.Inspect(root, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.BinaryExpr:
			f.binary(n.Op, n.X, n.Y, n.OpPos)
		case *ast.AssignStmt:
			if n.Tok == token.MUL_ASSIGN || n.Tok == token.QUO_ASSIGN {
				op := token.MUL
				if n.Tok == token.QUO_ASSIGN {
					op = token.QUO
				}
				f.binary(op, n.Lhs[0], n.Rhs[0], n.TokPos)
			}
		case *ast.IncDecStmt:
			if q := f.quantity(n.X); q != "" {
				f.pass.Reportf(n.Pos(), "%s on a %s adds a bare number; write the unit", n.Tok, q)
			}
		case *ast.CallExpr:
			if f.conversion(n) {
				return true
			}
		}
		if e, ok := n.(ast.Expr); ok {
			return f.literal(e)
		}
		return true
	})
}

// binary checks a product or a quotient, and notes the plain numbers in it.
func (f *file) binary(op token.Token, x, y ast.Expr, at token.Pos) {
	if op != token.MUL && op != token.QUO {
		return
	}
	qx, qy := f.quantity(x), f.quantity(y)
	if qx == "" || qy == "" || qx == pure && qy == pure {
		return
	}
	switch px, py := f.plain(x), f.plain(y); {
	case px && py:
	case py:
		f.allowed[y] = true
	case px && op == token.MUL:
		f.allowed[x] = true
	case px:
		f.allowed[x] = true
		f.pass.Reportf(at, "a number divided by a %s is not a %s; work in SI numbers", qy, qy)
	case op == token.MUL:
		f.pass.Reportf(at, "a %s times a %s is not a %s; work in SI numbers, or scale with Times", qx, qy, qx)
	default:
		f.pass.Reportf(at, "a %s over a %s is a pure number; write Ratio", qx, qy)
	}
}

// conversion checks T(x), and reports whether the call is a conversion that it
// has dealt with.
func (f *file) conversion(call *ast.CallExpr) bool {
	fun, ok := f.pass.TypesInfo.Types[call.Fun]
	if !ok || !fun.IsType() || len(call.Args) != 1 {
		return false
	}
	arg := call.Args[0]
	from, to := f.quantity(arg), name(fun.Type)
	given := f.pass.TypesInfo.Types[arg]
	switch {
	case to != "" && f.plain(arg):
		// The argument of a conversion of a constant has the target's type.
		if !zero(given.Value) {
			f.pass.Reportf(call.Pos(), "a bare number as a %s; write the unit, or a constructor of units", to)
		}
		f.allowed[arg] = true
	case to != "" && from == "" && isNumber(given.Type):
		f.pass.Reportf(call.Pos(), "a cast of a number to a %s; write a constructor of units, or units.FromSI", to)
	case to != "" && from != "" && !types.Identical(fun.Type, given.Type):
		f.pass.Reportf(call.Pos(), "a cast of a %s to a %s", from, to)
	case to == "" && from != "" && isNumber(fun.Type):
		f.pass.Reportf(call.Pos(), "a cast of a %s to a number; write an accessor, such as SI", from)
	default:
		return false
	}
	return true
}

// literal refuses a bare number used as a quantity, and reports whether to
// look inside e.
func (f *file) literal(e ast.Expr) bool {
	q := f.quantity(e)
	if q == "" || !f.plain(e) {
		return true
	}
	if q != pure && !f.allowed[e] && !zero(f.pass.TypesInfo.Types[e].Value) {
		f.pass.Reportf(e.Pos(), "a bare number as a %s; write the unit", q)
	}
	return false
}

// plain reports whether e is a constant built of numbers and untyped constants
// alone, so that it holds no unit.
func (f *file) plain(e ast.Expr) bool {
	if tv := f.pass.TypesInfo.Types[e]; tv.Value == nil {
		return false
	}
	switch e := e.(type) {
	case *ast.BasicLit:
		return true
	case *ast.ParenExpr:
		return f.plain(e.X)
	case *ast.UnaryExpr:
		return f.plain(e.X)
	case *ast.BinaryExpr:
		return f.plain(e.X) && f.plain(e.Y)
	case *ast.Ident:
		return f.untyped(e)
	case *ast.SelectorExpr:
		return f.untyped(e.Sel)
	}
	return false
}

func (f *file) untyped(id *ast.Ident) bool {
	c, ok := f.pass.TypesInfo.Uses[id].(*types.Const)
	if !ok {
		return false
	}
	b, ok := c.Type().(*types.Basic)
	return ok && b.Info()&types.IsUntyped != 0
}

// quantity returns the name of e's quantity type, or "".
func (f *file) quantity(e ast.Expr) string {
	tv, ok := f.pass.TypesInfo.Types[e]
	if !ok || !tv.IsValue() || tv.Type == nil {
		return ""
	}
	return name(tv.Type)
}

// name returns the name of a quantity type, "quantity" for a type parameter
// that stands for any of them, or "".
func name(t types.Type) string {
	switch t := types.Unalias(t).(type) {
	case *types.Named:
		if o := t.Obj(); o.Pkg() != nil && o.Pkg().Path() == unitsPath {
			if b, ok := t.Underlying().(*types.Basic); ok && b.Kind() == types.Float64 {
				return o.Name()
			}
		}
	case *types.TypeParam:
		if holdsQuantity(t.Constraint()) {
			return "quantity"
		}
	}
	return ""
}

// holdsQuantity reports whether a constraint is units.Quantity or embeds it.
func holdsQuantity(t types.Type) bool {
	if n, ok := types.Unalias(t).(*types.Named); ok && n.Obj().Pkg() != nil && n.Obj().Pkg().Path() == unitsPath && n.Obj().Name() == "Quantity" {
		return true
	}
	i, ok := t.Underlying().(*types.Interface)
	if !ok {
		return false
	}
	for k := range i.NumEmbeddeds() {
		if holdsQuantity(i.EmbeddedType(k)) {
			return true
		}
	}
	return false
}

func isNumber(t types.Type) bool {
	if t == nil {
		return false
	}
	if p, ok := types.Unalias(t).(*types.TypeParam); ok {
		t = p.Constraint()
		i, ok := t.Underlying().(*types.Interface)
		return ok && i.NumEmbeddeds() > 0 && !i.IsMethodSet()
	}
	b, ok := t.Underlying().(*types.Basic)
	return ok && b.Info()&types.IsNumeric != 0
}

func zero(v constant.Value) bool {
	return v != nil && (v.Kind() == constant.Int || v.Kind() == constant.Float) && constant.Sign(v) == 0
}
