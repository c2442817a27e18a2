package main

import (
	"bytes"
	"compress/gzip"
	"context"
	"embed"
	"fmt"
	"io/fs"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"
)

//go:embed page
var page embed.FS

// site is everything the page consists of.
type site struct {
	program    []byte // wasm
	compressed []byte // the same, gzip
	runner     []byte // Go's own script that runs it
	files      http.Handler
}

// build makes the site with the go command.
func build(ctx context.Context) (*site, error) {
	dir, err := os.MkdirTemp("", "benchbook-browser-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	out := filepath.Join(dir, "bench.wasm")
	cmd := exec.CommandContext(ctx, "go", "build", "-trimpath", "-buildvcs=false", "-ldflags=-s -w", "-o", out, "example.com/benchbook/examples/browser/bench")
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm", "CGO_ENABLED=0")
	if said, err := cmd.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("go build: %w\n%s", err, said)
	}
	s := &site{}
	if s.program, err = os.ReadFile(out); err != nil {
		return nil, err
	}
	if s.compressed, err = compress(s.program); err != nil {
		return nil, err
	}
	root, err := exec.CommandContext(ctx, "go", "env", "GOROOT").Output()
	if err != nil {
		return nil, fmt.Errorf("go env GOROOT: %w", err)
	}
	if s.runner, err = os.ReadFile(filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec.js")); err != nil {
		return nil, err
	}
	files, err := fs.Sub(page, "page")
	if err != nil {
		return nil, err
	}
	s.files = http.FileServerFS(files)
	return s, nil
}

func compress(data []byte) ([]byte, error) {
	var b bytes.Buffer
	w, err := gzip.NewWriterLevel(&b, gzip.BestCompression)
	if err != nil {
		return nil, err
	}
	if _, err := w.Write(data); err != nil {
		return nil, err
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

// policy lets the page load what this server has, run wasm, and nothing else.
const policy = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; connect-src 'self'; img-src data:; base-uri 'none'; form-action 'none'"

// ServeHTTP serves the page, its parts and the program.
func (s *site) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	h := w.Header()
	h.Set("Content-Security-Policy", policy)
	h.Set("Cache-Control", "no-store")
	h.Set("X-Content-Type-Options", "nosniff")
	switch r.URL.Path {
	case "/bench.wasm":
		h.Set("Content-Type", "application/wasm")
		data := s.program
		if strings.Contains(r.Header.Get("Accept-Encoding"), "gzip") {
			h.Set("Content-Encoding", "gzip")
			data = s.compressed
		}
		http.ServeContent(w, r, "", time.Time{}, bytes.NewReader(data))
	case "/runner.js":
		h.Set("Content-Type", "text/javascript; charset=utf-8")
		http.ServeContent(w, r, "", time.Time{}, bytes.NewReader(s.runner))
	default:
		s.files.ServeHTTP(w, r)
	}
}
