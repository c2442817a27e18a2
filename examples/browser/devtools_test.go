//go:build !js && !windows

package main

import (
	"bufio"
	"encoding/base64"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// tab is one page of a headless Chromium, driven by the DevTools protocol over
// a pair of pipes: messages are JSON, each ended by a zero byte.
type tab struct {
	t       *testing.T
	to      *os.File
	answers chan reply
	session string
	last    int
	console []string // what the page complained of
}

type reply struct {
	ID     int             `json:"id"`
	Method string          `json:"method"`
	Params json.RawMessage `json:"params"`
	Result json.RawMessage `json:"result"`
	Error  *struct {
		Message string `json:"message"`
	} `json:"error"`
}

func chromium() string {
	for _, name := range []string{"chromium", "chromium-browser"} {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	return ""
}

// newTab starts a browser with nothing in it. It ends with the test.
func newTab(t *testing.T, path string) *tab {
	t.Helper()
	theirIn, ourOut, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	ourIn, theirOut, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	profile, err := os.MkdirTemp("", "benchbook-profile-")
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(path, "--headless", "--remote-debugging-pipe", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
		"--disable-dev-shm-usage", "--disable-background-networking", "--disable-component-update", "--disable-sync", "--hide-scrollbars", "--user-data-dir="+profile, "about:blank")
	cmd.ExtraFiles = []*os.File{theirIn, theirOut} // its descriptors 3 and 4
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	theirIn.Close()
	theirOut.Close()
	b := &tab{t: t, to: ourOut, answers: make(chan reply, 256)}
	t.Cleanup(func() {
		b.session = ""
		b.call("Browser.close", nil, nil)
		ended := make(chan error, 1)
		go func() { ended <- cmd.Wait() }()
		select {
		case <-ended:
		case <-time.After(10 * time.Second):
			cmd.Process.Kill()
			<-ended
		}
		ourOut.Close()
		ourIn.Close()
		for range 20 { // its helpers may still write there for a moment
			if os.RemoveAll(profile) == nil {
				break
			}
			time.Sleep(100 * time.Millisecond)
		}
	})
	go func() {
		defer close(b.answers)
		r := bufio.NewReader(ourIn)
		for {
			message, err := r.ReadBytes(0)
			if err != nil {
				return
			}
			var a reply
			if json.Unmarshal(message[:len(message)-1], &a) == nil {
				b.answers <- a
			}
		}
	}()
	var target struct {
		TargetID string `json:"targetId"`
	}
	b.must("Target.createTarget", map[string]any{"url": "about:blank"}, &target)
	var attached struct {
		SessionID string `json:"sessionId"`
	}
	b.must("Target.attachToTarget", map[string]any{"targetId": target.TargetID, "flatten": true}, &attached)
	b.session = attached.SessionID
	for _, domain := range []string{"Page", "Runtime", "Log", "Network"} {
		b.must(domain+".enable", nil, nil)
	}
	return b
}

// patience is how long one call may take: the machine may be busy.
const patience = 60 * time.Second

func (b *tab) call(method string, params, result any) error {
	b.last++
	message := map[string]any{"id": b.last, "method": method}
	if params != nil {
		message["params"] = params
	}
	if b.session != "" {
		message["sessionId"] = b.session
	}
	data, err := json.Marshal(message)
	if err != nil {
		return err
	}
	if _, err := b.to.Write(append(data, 0)); err != nil {
		return err
	}
	late := time.After(patience)
	for {
		select {
		case a, open := <-b.answers:
			switch {
			case !open:
				return errors.New("the browser ended")
			case a.ID == 0:
				b.hear(a)
			case a.ID == b.last && a.Error != nil:
				return fmt.Errorf("%s: %s", method, a.Error.Message)
			case a.ID == b.last && result != nil:
				return json.Unmarshal(a.Result, result)
			case a.ID == b.last:
				return nil
			}
		case <-late:
			return fmt.Errorf("%s: no answer in %v", method, patience)
		}
	}
}

// hear keeps what a page complains of, and where it wanted to go.
func (b *tab) hear(a reply) {
	switch a.Method {
	case "Runtime.exceptionThrown", "Log.entryAdded":
		b.console = append(b.console, string(a.Params))
	case "Network.requestWillBeSent":
		var p struct {
			Request struct {
				URL string `json:"url"`
			} `json:"request"`
		}
		json.Unmarshal(a.Params, &p)
		u := p.Request.URL
		if !strings.HasPrefix(u, "http://127.0.0.1:") && !strings.HasPrefix(u, "data:") && !strings.HasPrefix(u, "file:") && !strings.HasPrefix(u, "about:") {
			b.console = append(b.console, "asked another machine: "+u)
		}
	}
}

func (b *tab) must(method string, params, result any) {
	b.t.Helper()
	if err := b.call(method, params, result); err != nil {
		b.t.Fatal(err)
	}
}

// value evaluates an expression of the page, waiting for it if it is a promise.
func (b *tab) value(expression string, to any) {
	b.t.Helper()
	var r struct {
		Result struct {
			Value json.RawMessage `json:"value"`
		} `json:"result"`
		Exception *struct {
			Text      string `json:"text"`
			Exception struct {
				Description string `json:"description"`
			} `json:"exception"`
		} `json:"exceptionDetails"`
	}
	b.must("Runtime.evaluate", map[string]any{"expression": expression, "returnByValue": true, "awaitPromise": true}, &r)
	if r.Exception != nil {
		b.t.Fatalf("%.80s: %s %s", expression, r.Exception.Text, r.Exception.Exception.Description)
	}
	if to == nil {
		return
	}
	if err := json.Unmarshal(r.Result.Value, to); err != nil {
		b.t.Fatalf("%.80s: %v in %s", expression, err, r.Result.Value)
	}
}

func (b *tab) text(expression string) string {
	b.t.Helper()
	var s string
	b.value(expression, &s)
	return s
}

// visit opens an address and waits until a condition of the page holds.
func (b *tab) visit(url, until string) {
	b.t.Helper()
	b.must("Page.navigate", map[string]any{"url": url}, nil)
	b.wait(until)
}

func (b *tab) wait(until string) {
	b.t.Helper()
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(10 * time.Millisecond) {
		var is bool
		if b.value("Boolean("+until+")", &is); is {
			return
		}
	}
	b.t.Fatalf("never came true: %s; the page said %v", until, b.console)
}

// size sets the width of the page in CSS pixels.
func (b *tab) size(width int) {
	b.t.Helper()
	b.must("Emulation.setDeviceMetricsOverride", map[string]any{"width": width, "height": 1123, "deviceScaleFactor": 1, "mobile": false}, nil)
	// Two frames, so that the page has seen its new size and drawn to it.
	b.value("new Promise(done => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(() => done(1), 50))))", nil)
}

// press presses and lets go a key such as "Tab" or "ArrowRight".
func (b *tab) press(key string) {
	b.t.Helper()
	code := map[string]int{"Tab": 9, "ArrowRight": 39, "ArrowLeft": 37, "ArrowDown": 40, "ArrowUp": 38, "Home": 36, "End": 35}[key]
	for _, kind := range []string{"rawKeyDown", "keyUp"} {
		b.must("Input.dispatchKeyEvent", map[string]any{"type": kind, "key": key, "code": key, "windowsVirtualKeyCode": code, "nativeVirtualKeyCode": code}, nil)
	}
}

// shoot writes a picture of the whole page.
func (b *tab) shoot(dir, name string) {
	b.t.Helper()
	var shot struct {
		Data string `json:"data"`
	}
	b.must("Page.captureScreenshot", map[string]any{"format": "png", "captureBeyondViewport": true}, &shot)
	data, err := base64.StdEncoding.DecodeString(shot.Data)
	if err == nil {
		err = os.WriteFile(filepath.Join(dir, name), data, 0o644)
	}
	if err != nil {
		b.t.Fatal(err)
	}
	if len(data) < 5000 {
		b.t.Errorf("%s is only %d bytes: an empty page", name, len(data))
	}
}
