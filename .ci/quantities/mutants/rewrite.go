package main

import (
	"fmt"
	"go/ast"
	"go/token"
	"go/types"
	"slices"
	"strings"

	"golang.org/x/tools/go/packages"
)

// rewriter writes a file in which every change is there, behind its number.
type rewriter struct {
	p     *packages.Package
	file  *ast.File
	src   []byte
	sites map[ast.Node][]*site
}

func (r *rewriter) offset(p token.Pos) int { return r.p.Fset.Position(p).Offset }

// text returns the source of n with its changes.
func (r *rewriter) text(n ast.Node) string {
	if list := r.sites[n]; len(list) > 0 {
		return r.change(n, list)
	}
	return r.inner(n)
}

// inner returns the source of n with the changes of what is within it.
func (r *rewriter) inner(n ast.Node) string { return r.between(n, n.Pos(), n.End()) }

func (r *rewriter) between(n ast.Node, from, to token.Pos) string {
	var outer []ast.Node
	ast.Inspect(n, func(m ast.Node) bool {
		if m != nil && m != n && len(r.sites[m]) > 0 {
			outer = append(outer, m)
			return false
		}
		return true
	})
	slices.SortFunc(outer, func(a, b ast.Node) int { return int(a.Pos() - b.Pos()) })
	var b strings.Builder
	at := r.offset(from)
	for _, m := range outer {
		b.Write(r.src[at:r.offset(m.Pos())])
		b.WriteString(r.text(m))
		at = r.offset(m.End())
	}
	b.Write(r.src[at:r.offset(to)])
	return b.String()
}

func (r *rewriter) change(n ast.Node, list []*site) string {
	switch n := n.(type) {
	case *ast.BinaryExpr:
		x, y := r.text(n.X), r.text(n.Y)
		if comparison(n.Op) {
			var on, off string
			for _, s := range list {
				on += fmt.Sprintf("mutantOn(%d) && (%s %v %s) || ", s.id, x, s.to, y)
				off += fmt.Sprintf("mutantOff(%d) && ", s.id)
			}
			return fmt.Sprintf("(%s%s(%s %v %s))", on, off, x, n.Op, y)
		}
		return fmt.Sprintf("%s%s(%d, %s, %s)", names[n.Op], r.instance(n, n.X, n.Y), list[0].id, x, y)
	case *ast.UnaryExpr:
		return fmt.Sprintf("mutantNeg%s(%d, %s)", r.instance(n, n.X), list[0].id, r.text(n.X))
	case *ast.IncDecStmt:
		op := "+="
		if n.Tok == token.DEC {
			op = "-="
		}
		x := r.text(n.X)
		return fmt.Sprintf("%s %s mutantStep(%d, %s)", x, op, list[0].id, x)
	}
	panic("no such change")
}

var names = map[token.Token]string{token.ADD: "mutantAdd", token.SUB: "mutantSub", token.MUL: "mutantMul", token.QUO: "mutantQuo", token.REM: "mutantRem"}

func comparison(t token.Token) bool {
	return t == token.LSS || t == token.LEQ || t == token.GTR || t == token.GEQ || t == token.EQL || t == token.NEQ
}

// instance names the type where the operands, being constants, do not tell it.
func (r *rewriter) instance(n ast.Expr, operands ...ast.Expr) string {
	for _, o := range operands {
		if !isConstant(r.p, o) {
			return ""
		}
	}
	t := types.Default(r.p.TypesInfo.TypeOf(n))
	return "[" + types.TypeString(t, func(q *types.Package) string {
		if q == r.p.Types {
			return ""
		}
		return q.Name()
	}) + "]"
}

// support is what the changed files call. A change that comes past is written down
// once where the environment asks for that.
const support = `package %s

import (
	"os"
	"strconv"
)

type mutantNumber interface {
	~int | ~int8 | ~int16 | ~int32 | ~int64 | ~uint | ~uint8 | ~uint16 | ~uint32 | ~uint64 | ~uintptr | ~float32 | ~float64
}

type mutantWhole interface {
	~int | ~int8 | ~int16 | ~int32 | ~int64 | ~uint | ~uint8 | ~uint16 | ~uint32 | ~uint64 | ~uintptr
}

var mutantActive = func() int { n, _ := strconv.Atoi(os.Getenv("MUTANT")); return n }()

var mutantSeen = func() *mutantLog {
	name := os.Getenv("MUTANT_SEEN")
	if name == "" {
		return nil
	}
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_APPEND, 0o644)
	if err != nil {
		panic(err)
	}
	return &mutantLog{f: f}
}()

type mutantLog struct {
	f    *os.File
	seen [%d]bool
}

func (l *mutantLog) note(id int) {
	if !l.seen[id] {
		l.seen[id] = true
		l.f.WriteString(strconv.Itoa(id) + "\n")
	}
}

func mutantOn(id int) bool {
	if mutantSeen != nil {
		mutantSeen.note(id)
	}
	return id == mutantActive
}

func mutantOff(id int) bool { return id != mutantActive }

func mutantAdd[T mutantNumber](id int, a, b T) T {
	if mutantOn(id) {
		return a - b
	}
	return a + b
}

func mutantSub[T mutantNumber](id int, a, b T) T {
	if mutantOn(id) {
		return a + b
	}
	return a - b
}

func mutantMul[T mutantNumber](id int, a, b T) T {
	if mutantOn(id) {
		return a / b
	}
	return a * b
}

func mutantQuo[T mutantNumber](id int, a, b T) T {
	if mutantOn(id) {
		return a * b
	}
	return a / b
}

func mutantRem[T mutantWhole](id int, a, b T) T {
	if mutantOn(id) {
		return a * b
	}
	return a %% b
}

func mutantNeg[T mutantNumber](id int, a T) T {
	if mutantOn(id) {
		return a
	}
	return -a
}

func mutantStep[T mutantNumber](id int, x T) T {
	if mutantOn(id) {
		return T(0) - 1
	}
	return 1
}
`
