//go:build !js || !wasm

package main

import (
	"fmt"
	"os"
)

func main() {
	fmt.Fprintln(os.Stderr, "bench runs inside a browser page only: go run ./examples/browser")
	os.Exit(2)
}
