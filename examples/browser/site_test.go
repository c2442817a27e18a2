package main

import (
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"testing/fstest"
)

// The server by itself, with a stand-in for the program.
func TestSite(t *testing.T) {
	s := &site{program: []byte("plain"), compressed: []byte("pressed"), runner: []byte("run"), files: http.FileServerFS(fstest.MapFS{"index.html": {Data: []byte("<!doctype html>")}})}
	for _, c := range []struct {
		path, accept, body, kind, encoding string
		status                             int
	}{
		{"/", "", "<!doctype html>", "text/html; charset=utf-8", "", 200},
		{"/bench.wasm", "", "plain", "application/wasm", "", 200},
		{"/bench.wasm", "gzip, br", "pressed", "application/wasm", "gzip", 200},
		{"/runner.js", "", "run", "text/javascript; charset=utf-8", "", 200},
		{"/nothing", "", "404 page not found\n", "text/plain; charset=utf-8", "", 404},
		{"/../main.go", "", "404 page not found\n", "text/plain; charset=utf-8", "", 404},
	} {
		r := httptest.NewRequest("GET", "http://127.0.0.1/", nil)
		r.URL.Path = c.path
		r.Header.Set("Accept-Encoding", c.accept)
		w := httptest.NewRecorder()
		s.ServeHTTP(w, r)
		h := w.Header()
		if w.Code != c.status || w.Body.String() != c.body || h.Get("Content-Type") != c.kind || h.Get("Content-Encoding") != c.encoding {
			t.Errorf("%s: %d %q %v", c.path, w.Code, w.Body, h)
		}
		if !strings.HasPrefix(h.Get("Content-Security-Policy"), "default-src 'none'") {
			t.Errorf("%s: served without the policy", c.path)
		}
	}
}

// Everything a page loads must come from the page's own folder, from the Go
// installation, or be written in it.
func TestPageAsksNobody(t *testing.T) {
	for _, name := range []string{"index.html", "look.css", "bench.js"} {
		data, err := page.ReadFile("page/" + name)
		if err != nil {
			t.Fatal(err)
		}
		text := strings.ReplaceAll(string(data), "http://www.w3.org/2000/svg", "") // a name, not an address
		for _, forbidden := range []string{"http://", "https://", "//cdn", "@import", "url("} {
			if strings.Contains(text, forbidden) {
				t.Errorf("%s has %q", name, forbidden)
			}
		}
	}
}
