package main

import (
	"embed"
	"fmt"
	"go/ast"
	"go/token"
	"go/types"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"golang.org/x/tools/go/packages"

	"example.com/benchbook/ci/quantities/hostile/driver"
)

//go:embed driver/*.go
var driverFiles embed.FS

// module is what was loaded of the module to sweep.
type module struct {
	path, dir string
	swept     []*packages.Package
	all       map[string]*packages.Package
}

func load(dir string, patterns []string) (*module, error) {
	mode := packages.NeedName | packages.NeedFiles | packages.NeedCompiledGoFiles | packages.NeedImports | packages.NeedDeps | packages.NeedTypes | packages.NeedTypesSizes | packages.NeedSyntax | packages.NeedTypesInfo | packages.NeedModule
	loaded, err := packages.Load(&packages.Config{Mode: mode, Dir: dir}, patterns...)
	if err != nil {
		return nil, err
	}
	m := &module{all: map[string]*packages.Package{}}
	packages.Visit(loaded, nil, func(p *packages.Package) {
		m.all[p.PkgPath] = p
	})
	for _, p := range loaded {
		for _, e := range p.Errors {
			return nil, e
		}
		if p.Name == "main" || strings.Contains(p.PkgPath+"/", "/internal/") {
			continue
		}
		if p.Module == nil {
			return nil, fmt.Errorf("%s is in no module", p.PkgPath)
		}
		m.path, m.dir = p.Module.Path, p.Module.Dir
		m.swept = append(m.swept, p)
	}
	slices.SortFunc(m.swept, func(a, b *packages.Package) int { return strings.Compare(a.PkgPath, b.PkgPath) })
	if len(m.swept) == 0 {
		return nil, fmt.Errorf("no package to sweep")
	}
	return m, nil
}

// key is the name a function goes by in reports: "timing.Diagnose",
// "timing/gear.(*Train).Ratio".
func (m *module) key(f *types.Func) string {
	return strings.ReplaceAll(f.FullName(), m.path+"/", "")
}

// stale returns a finding for every name that is exempt, is in a package that is
// swept, and is not there.
func (m *module) stale(exempt []exemption) []driver.Finding {
	there, swept := map[string]bool{}, map[string]bool{}
	for _, p := range m.swept {
		swept[strings.ReplaceAll(p.PkgPath, m.path+"/", "")] = true
		for _, f := range functionsOf(p.Types) {
			there[m.key(f)] = true
		}
	}
	var out []driver.Finding
	for _, e := range exempt {
		for _, k := range e.keys {
			path := strings.TrimLeft(k, "(*")
			slash := strings.LastIndex(path, "/") + 1
			path = path[:slash+strings.Index(path[slash:], ".")]
			if swept[path] && !there[k] {
				out = append(out, driver.Finding{Function: k, Kind: "exemption", What: "of a function that is not there", Times: 1})
			}
		}
	}
	return out
}

// overlay writes the files that stand in for those of the module, and returns
// which stands for which.
func (m *module) overlay(work string, exempt []exemption) (map[string]string, error) {
	replace := map[string]string{}
	n := 0
	put := func(at string, content []byte) error {
		n++
		file := filepath.Join(work, fmt.Sprintf("%d_%s", n, filepath.Base(at)))
		replace[at] = file
		return os.WriteFile(file, content, 0o644)
	}
	files, err := driverFiles.ReadDir("driver")
	if err != nil {
		return nil, err
	}
	for _, f := range files {
		if strings.HasSuffix(f.Name(), "_test.go") {
			continue
		}
		b, err := driverFiles.ReadFile("driver/" + f.Name())
		if err != nil {
			return nil, err
		}
		if err := put(filepath.Join(m.dir, "internal", "hostile", f.Name()), b); err != nil {
			return nil, err
		}
	}
	for _, p := range m.swept {
		for i, f := range p.Syntax {
			if ast.IsGenerated(f) {
				continue
			}
			b, err := m.recording(p, f, p.CompiledGoFiles[i])
			if err != nil {
				return nil, err
			}
			if err := put(p.CompiledGoFiles[i], b); err != nil {
				return nil, err
			}
		}
		b, err := m.sweeper(p, exempt)
		if err != nil {
			return nil, err
		}
		if err := put(filepath.Join(filepath.Dir(p.CompiledGoFiles[0]), "zz_hostile_test.go"), b); err != nil {
			return nil, err
		}
	}
	return replace, nil
}

// recording returns the text of a file with a line in front of every exported
// function that keeps its arguments. Line numbers stay as they are.
func (m *module) recording(p *packages.Package, f *ast.File, name string) ([]byte, error) {
	text, err := os.ReadFile(name)
	if err != nil {
		return nil, err
	}
	at := func(pos token.Pos) int { return p.Fset.Position(pos).Offset }
	type insert struct {
		at, drop int
		text     string
	}
	var inserts []insert
	for _, d := range f.Decls {
		fn, ok := d.(*ast.FuncDecl)
		if !ok || fn.Body == nil || !fn.Name.IsExported() {
			continue
		}
		o, ok := p.TypesInfo.Defs[fn.Name].(*types.Func)
		if !ok || !exportedReceiver(o) {
			continue
		}
		var args []string
		lists := []*ast.FieldList{fn.Type.Params}
		if fn.Recv != nil {
			lists = []*ast.FieldList{fn.Recv, fn.Type.Params}
		}
		for _, list := range lists {
			for _, field := range list.List {
				if len(field.Names) == 0 {
					arg := fmt.Sprintf("hostile%d", len(args))
					inserts = append(inserts, insert{at: at(field.Type.Pos()), text: arg + " "})
					args = append(args, arg)
				}
				for _, id := range field.Names {
					arg := id.Name
					if arg == "_" {
						arg = fmt.Sprintf("hostile%d", len(args))
						inserts = append(inserts, insert{at: at(id.Pos()), drop: 1, text: arg})
					}
					args = append(args, arg)
				}
			}
		}
		list := ""
		for _, a := range args {
			list += ", " + a
		}
		inserts = append(inserts, insert{at: at(fn.Body.Lbrace) + 1, text: fmt.Sprintf(" if hostiledriver.On() { hostiledriver.Saw(%q%s) };", m.key(o), list)})
	}
	if len(inserts) == 0 {
		return text, nil
	}
	inserts = append(inserts, insert{at: at(f.Name.End()), text: fmt.Sprintf("; import hostiledriver %q", m.path+"/internal/hostile")})
	slices.SortStableFunc(inserts, func(a, b insert) int { return a.at - b.at })
	var out []byte
	from := 0
	for _, i := range inserts {
		out = append(out, text[from:i.at]...)
		out = append(out, i.text...)
		from = i.at + i.drop
	}
	return append(out, text[from:]...), nil
}

func exportedReceiver(f *types.Func) bool {
	recv := f.Signature().Recv()
	if recv == nil {
		return true
	}
	t := recv.Type()
	if p, ok := t.(*types.Pointer); ok {
		t = p.Elem()
	}
	n, ok := t.(*types.Named)
	return ok && n.Obj().Exported()
}
