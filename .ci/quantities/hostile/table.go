package main

import (
	"bytes"
	"fmt"
	"go/ast"
	"go/format"
	"go/types"
	"slices"
	"strings"

	"golang.org/x/tools/go/packages"
)

// table writes the list of functions for one package's sweep.
type table struct {
	m       *module
	p       *packages.Package
	exempt  []exemption
	imports []string // paths; the alias is p and the place in the list
	rows    bytes.Buffer
}

// sweeper returns the test file that runs the sweep of p.
func (m *module) sweeper(p *packages.Package, exempt []exemption) ([]byte, error) {
	t := &table{m: m, p: p, exempt: exempt}
	generated := generatedFiles(p)
	for _, f := range functionsOf(p.Types) {
		t.add(f, generated[p.Fset.Position(f.Pos()).Filename], false)
	}
	for _, q := range m.below(p) {
		for _, f := range functionsOf(q.Types) {
			if f.Signature().Recv() == nil && makesOpaque(f) {
				t.add(f, false, true)
			}
		}
	}
	untyped := `func(error) string { return "" }`
	if fault := m.path + "/units/fault"; m.all[fault] != nil {
		a := t.alias(fault)
		untyped = fmt.Sprintf(`func(err error) string {
			for _, f := range %s.Faults(err) {
				if f.Code == "" || f.Rule == "" {
					return "a fault without code or rule"
				}
			}
			var f %s.Fault
			if !errors.As(err, &f) {
				return "an error that is no fault"
			}
			return ""
		}`, a, a)
	}
	var b bytes.Buffer
	fmt.Fprintf(&b, "package %s_test\n\nimport (\n\t\"errors\"\n\t\"os\"\n\t\"testing\"\n\t\"path/filepath\"\n\n\thostiledriver %q\n", p.Name, m.path+"/internal/hostile")
	for i, path := range t.imports {
		fmt.Fprintf(&b, "\tp%d %q\n", i, path)
	}
	fmt.Fprintf(&b, ")\n\nvar _ = errors.As\n\nfunc TestMain(m *testing.M) {\n\thostiledriver.Record(true)\n\tm.Run() // the tests judge the Examples; here their arguments are wanted\n\thostiledriver.Record(false)\n")
	fmt.Fprintf(&b, "\tset := hostiledriver.FromEnvironment()\n\tset.Package = %q\n\tset.Out = filepath.Join(os.Getenv(\"HOSTILE_WORK\"), %q)\n", p.PkgPath, reportName(p.PkgPath))
	fmt.Fprintf(&b, "\thostiledriver.Main(set, []hostiledriver.Func{\n%s\t}, %s)\n}\n", t.rows.String(), untyped)
	out, err := format.Source(b.Bytes())
	if err != nil {
		return nil, fmt.Errorf("%s: %w\n%s", p.PkgPath, err, b.Bytes())
	}
	return out, nil
}

// below returns the packages of the module that p imports, directly or not.
func (m *module) below(p *packages.Package) []*packages.Package {
	var out []*packages.Package
	packages.Visit([]*packages.Package{p}, nil, func(q *packages.Package) {
		if q != p && strings.HasPrefix(q.PkgPath, m.path+"/") && !strings.Contains(q.PkgPath+"/", "/internal/") {
			out = append(out, q)
		}
	})
	slices.SortFunc(out, func(a, b *packages.Package) int { return strings.Compare(a.PkgPath, b.PkgPath) })
	return out
}

// own returns the packages of the module that were loaded.
func (m *module) own() []*packages.Package {
	var out []*packages.Package
	for path, p := range m.all {
		if strings.HasPrefix(path, m.path+"/") && !strings.Contains(path+"/", "/internal/") {
			out = append(out, p)
		}
	}
	slices.SortFunc(out, func(a, b *packages.Package) int { return strings.Compare(a.PkgPath, b.PkgPath) })
	return out
}

func generatedFiles(p *packages.Package) map[string]bool {
	out := map[string]bool{}
	for _, f := range p.Syntax {
		if ast.IsGenerated(f) {
			out[p.Fset.Position(f.Package).Filename] = true
		}
	}
	return out
}

// functionsOf returns the exported functions of p and the exported methods of its
// exported types, by name.
func functionsOf(p *types.Package) []*types.Func {
	var out []*types.Func
	scope := p.Scope()
	for _, name := range scope.Names() {
		o := scope.Lookup(name)
		if !o.Exported() {
			continue
		}
		switch o := o.(type) {
		case *types.Func:
			out = append(out, o)
		case *types.TypeName:
			n, ok := o.Type().(*types.Named)
			if !ok || o.IsAlias() {
				continue
			}
			for f := range n.Methods() {
				if f.Exported() {
					out = append(out, f)
				}
			}
		}
	}
	return out
}

// makesOpaque reports whether f returns a struct of its module that shows no fields.
func makesOpaque(f *types.Func) bool {
	for v := range f.Signature().Results().Variables() {
		t := v.Type()
		if p, ok := t.(*types.Pointer); ok {
			t = p.Elem()
		}
		n, ok := t.(*types.Named)
		if !ok || n.Obj().Pkg() != f.Pkg() {
			continue
		}
		s, ok := n.Underlying().(*types.Struct)
		if !ok || s.NumFields() == 0 {
			continue
		}
		shown := false
		for v := range s.Fields() {
			shown = shown || v.Exported()
		}
		if !shown {
			return true
		}
	}
	return false
}

func (t *table) alias(path string) string {
	i := slices.Index(t.imports, path)
	if i < 0 {
		i = len(t.imports)
		t.imports = append(t.imports, path)
	}
	return fmt.Sprintf("p%d", i)
}

func (t *table) typeText(typ types.Type) string {
	return types.TypeString(typ, func(p *types.Package) string { return t.alias(p.Path()) })
}

// add writes the rows of one function: one, or one for each choice of its type
// arguments.
func (t *table) add(f *types.Func, generated, maker bool) {
	key := t.m.key(f)
	sig := f.Signature()
	var e exemption
	for _, x := range t.exempt {
		if x.covers(key, f, generated) {
			e = x
			break
		}
	}
	row := func(expr string) {
		fmt.Fprintf(&t.rows, "\t\t{Key: %q, F: %s, Method: %t, Exempt: %q, Panics: %t, Maker: %t},\n", key, expr, sig.Recv() != nil, e.reason, e.panics, maker)
	}
	if sig.Recv() == nil {
		name := t.alias(f.Pkg().Path()) + "." + f.Name()
		for _, inst := range t.choices(sig.TypeParams(), maker) {
			row(name + inst)
		}
		return
	}
	recv := sig.Recv().Type()
	star := ""
	if p, ok := recv.(*types.Pointer); ok {
		recv, star = p.Elem(), "*"
	}
	n := recv.(*types.Named)
	for _, inst := range t.choices(n.TypeParams(), maker) {
		row(fmt.Sprintf("(%s%s.%s%s).%s", star, t.alias(n.Obj().Pkg().Path()), n.Obj().Name(), inst, f.Name()))
	}
}

// choices returns type arguments that satisfy the parameters, as text; "" if
// there are none to choose. A maker is wanted for every quantity there is.
func (t *table) choices(params *types.TypeParamList, maker bool) []string {
	if params.Len() == 0 {
		return []string{""}
	}
	most := 3
	if maker {
		most = 1000
	}
	var out []string
	for _, c := range t.candidates() {
		fits := true
		for p := range params.TypeParams() {
			i, ok := p.Constraint().Underlying().(*types.Interface)
			fits = fits && ok && types.Satisfies(c, i)
		}
		if fits {
			text := t.typeText(c)
			list := make([]string, params.Len())
			for i := range list {
				list[i] = text
			}
			out = append(out, "["+strings.Join(list, ", ")+"]")
			if len(out) == most {
				break
			}
		}
	}
	return out
}

// candidates are the types that a type parameter is tried with: the defined
// floats of the module, and the plain types.
func (t *table) candidates() []types.Type {
	var first, rest []types.Type
	for _, q := range t.m.own() {
		scope := q.Types.Scope()
		for _, name := range scope.Names() {
			o, ok := scope.Lookup(name).(*types.TypeName)
			if !ok || !o.Exported() || o.IsAlias() {
				continue
			}
			if b, ok := o.Type().Underlying().(*types.Basic); ok && b.Kind() == types.Float64 {
				switch o.Name() {
				case "Length", "CrankAngle", "Temperature":
					first = append(first, o.Type())
				default:
					rest = append(rest, o.Type())
				}
			}
		}
	}
	list := append(first, rest...)
	for _, k := range []types.BasicKind{types.Float64, types.String, types.Int} {
		list = append(list, types.Typ[k])
	}
	return list
}
