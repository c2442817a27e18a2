// Command examples measures how much of the exported interface appears in
// runnable Examples, and whether every function is in the map of its package's
// documentation, and fails if some of it is not.
//
//	go -C .ci/quantities build -o /tmp/examples ./examples && /tmp/examples ./...
//
// An exported function or method is covered if the body of an Example of its
// own package, with checked output, uses that very function. An exported type
// is covered if such a body uses it or holds a value of it, also behind a
// pointer, in a slice, array, map or channel, or as a type argument.
//
// A function is in the map if the documentation of its package names it as a word.
//
// Not counted: constants and variables, constraints, methods of interfaces, what generated
// files declare apart from types, programs and the packages below them,
// internal packages, and the methods that text, JSON, errors, sorting and pictures call for a reader
// (String, Error, Err, Marshal..., Unmarshal..., AppendText, Len, XY).
package main

import (
	"flag"
	"fmt"
	"go/ast"
	"go/doc"
	"go/token"
	"go/types"
	"os"
	"slices"
	"strings"
	"unicode"

	"golang.org/x/tools/go/packages"
)

func main() {
	dir := flag.String("C", ".", "directory of the module to look at")
	flag.Parse()
	patterns := flag.Args()
	if len(patterns) == 0 {
		patterns = []string{"./..."}
	}
	found, err := measure(*dir, patterns)
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(2)
	}
	if !report(found) {
		os.Exit(1)
	}
}

// report writes the coverage of each package and what is missing, and reports
// whether nothing is.
func report(found []*coverage) bool {
	all, seen, missed := 0, 0, false
	for _, c := range found {
		missing := c.missing()
		all, seen = all+len(c.exported), seen+len(c.exported)-len(missing)
		fmt.Printf("%-28s %4d of %4d  %5.1f %%\n", c.path, len(c.exported)-len(missing), len(c.exported), percent(len(c.exported)-len(missing), len(c.exported)))
		for _, k := range missing {
			fmt.Printf("    %s: %s is in no Example with checked output\n", c.exported[k], strings.TrimPrefix(k, c.path+"."))
		}
		unnamed := c.unnamed()
		for _, name := range unnamed {
			fmt.Printf("    %s: %s is not in the map of the package's documentation\n", c.exported[c.path+"."+name], name)
		}
		missed = missed || len(unnamed) > 0
	}
	fmt.Printf("%-28s %4d of %4d  %5.1f %%\n", "in all", seen, all, percent(seen, all))
	return seen == all && all > 0 && !missed
}

func percent(part, whole int) float64 {
	if whole == 0 {
		return 100
	}
	return 100 * float64(part) / float64(whole)
}

// coverage is what one package exports, and what its Examples use.
type coverage struct {
	path     string
	exported map[string]token.Position
	used     map[string]bool
	doc      string   // of the package
	funcs    []string // of it, without a receiver
}

// unnamed returns the functions that the package's documentation does not name.
func (c *coverage) unnamed() []string {
	words := map[string]bool{}
	for _, w := range strings.FieldsFunc(c.doc, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '_' }) {
		words[w] = true
	}
	var out []string
	for _, f := range c.funcs {
		if !words[f] {
			out = append(out, f)
		}
	}
	return out
}

func (c *coverage) missing() []string {
	var out []string
	for k := range c.exported {
		if !c.used[k] {
			out = append(out, k)
		}
	}
	slices.SortFunc(out, func(a, b string) int {
		if d := strings.Compare(c.exported[a].Filename, c.exported[b].Filename); d != 0 {
			return d
		}
		return c.exported[a].Line - c.exported[b].Line
	})
	return out
}

// measure loads the packages with their tests and looks at each.
func measure(dir string, patterns []string) ([]*coverage, error) {
	load := packages.NeedName | packages.NeedFiles | packages.NeedCompiledGoFiles | packages.NeedImports | packages.NeedTypes | packages.NeedTypesSizes | packages.NeedSyntax | packages.NeedTypesInfo | packages.NeedForTest | packages.NeedExportFile
	loaded, err := packages.Load(&packages.Config{Mode: load, Dir: dir, Tests: true}, patterns...)
	if err != nil {
		return nil, err
	}
	var programs []string
	for _, p := range loaded {
		if p.Name == "main" && !strings.HasSuffix(p.PkgPath, ".test") {
			programs = append(programs, p.PkgPath+"/")
		}
	}
	of := map[string]*coverage{}
	for _, p := range loaded {
		below := func(program string) bool { return strings.HasPrefix(p.PkgPath+"/", program) }
		for _, e := range p.Errors {
			return nil, e
		}
		if p.ForTest != "" || slices.ContainsFunc(programs, below) || strings.HasSuffix(p.PkgPath, ".test") || strings.Contains(p.PkgPath+"/", "/internal/") {
			continue
		}
		c := &coverage{path: p.PkgPath, exported: map[string]token.Position{}, used: map[string]bool{}}
		c.exports(p)
		if len(c.exported) > 0 {
			of[p.PkgPath] = c
		}
	}
	for _, p := range loaded {
		if c := of[p.ForTest]; c != nil {
			c.examples(p)
		}
	}
	var out []*coverage
	for _, c := range of {
		out = append(out, c)
	}
	slices.SortFunc(out, func(a, b *coverage) int { return strings.Compare(a.path, b.path) })
	return out, nil
}

// exports notes the exported functions, methods and types of p.
func (c *coverage) exports(p *packages.Package) {
	generated := map[string]bool{}
	for _, f := range p.Syntax {
		if f.Doc != nil {
			c.doc += f.Doc.Text()
		}
		if ast.IsGenerated(f) {
			generated[p.Fset.Position(f.Package).Filename] = true
		}
	}
	note := func(f *types.Func) {
		if at := p.Fset.Position(f.Pos()); !generated[at.Filename] {
			c.exported[f.FullName()] = at
		}
	}
	scope := p.Types.Scope()
	for _, name := range scope.Names() {
		o := scope.Lookup(name)
		if !o.Exported() {
			continue
		}
		switch o := o.(type) {
		case *types.Func:
			note(o)
			if _, counted := c.exported[o.FullName()]; counted {
				c.funcs = append(c.funcs, name)
			}
		case *types.TypeName:
			if i, ok := o.Type().Underlying().(*types.Interface); ok && !i.IsMethodSet() {
				continue // a constraint has no place in a function's body
			}
			c.exported[typeKey(o)] = p.Fset.Position(o.Pos())
			named, ok := o.Type().(*types.Named)
			if !ok || o.IsAlias() {
				continue
			}
			for m := range named.Methods() {
				if m.Exported() && !forReaders(m.Name()) {
					note(m)
				}
			}
		}
	}
}

// forReaders reports whether a method is one that others call by its name.
func forReaders(name string) bool {
	switch name {
	case "String", "Error", "Err", "AppendText", "Len", "XY":
		return true
	}
	return strings.HasPrefix(name, "Marshal") || strings.HasPrefix(name, "Unmarshal")
}

func typeKey(o *types.TypeName) string { return o.Pkg().Path() + "." + o.Name() }

// examples notes what the Examples of p with checked output use.
func (c *coverage) examples(p *packages.Package) {
	for _, f := range p.Syntax {
		if !strings.HasSuffix(p.Fset.Position(f.Package).Filename, "_test.go") {
			continue
		}
		checked := map[string]bool{}
		for _, e := range doc.Examples(f) {
			checked["Example"+e.Name] = e.Output != "" || e.EmptyOutput
		}
		for _, d := range f.Decls {
			if fn, ok := d.(*ast.FuncDecl); ok && fn.Recv == nil && fn.Body != nil && checked[fn.Name.Name] {
				c.body(p.TypesInfo, fn.Body)
			}
		}
	}
}

func (c *coverage) body(info *types.Info, body *ast.BlockStmt) {
	seen := map[types.Type]bool{}
	ast.Inspect(body, func(n ast.Node) bool {
		e, ok := n.(ast.Expr)
		if !ok {
			return true
		}
		c.holds(info.TypeOf(e), seen)
		if id, ok := e.(*ast.Ident); ok {
			switch o := info.Uses[id].(type) {
			case *types.Func:
				c.used[o.Origin().FullName()] = true
			case *types.TypeName:
				if o.Pkg() != nil {
					c.used[typeKey(o)] = true
				}
			}
		}
		return true
	})
}

// holds notes the types that a value of t is made of.
func (c *coverage) holds(t types.Type, seen map[types.Type]bool) {
	if t == nil || seen[t] {
		return
	}
	seen[t] = true
	switch t := t.(type) {
	case *types.Alias:
		if t.Obj().Pkg() != nil {
			c.used[typeKey(t.Obj())] = true
		}
		c.holds(types.Unalias(t), seen)
	case *types.Named:
		if t.Obj().Pkg() != nil {
			c.used[typeKey(t.Obj())] = true
		}
		for a := range t.TypeArgs().Types() {
			c.holds(a, seen)
		}
	case *types.Pointer:
		c.holds(t.Elem(), seen)
	case *types.Slice:
		c.holds(t.Elem(), seen)
	case *types.Array:
		c.holds(t.Elem(), seen)
	case *types.Chan:
		c.holds(t.Elem(), seen)
	case *types.Map:
		c.holds(t.Key(), seen)
		c.holds(t.Elem(), seen)
	case *types.Tuple:
		for v := range t.Variables() {
			c.holds(v.Type(), seen)
		}
	}
}
