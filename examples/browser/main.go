// Command browser serves the bench as a page on this machine: a job file, the
// adjusters to move, and what the bench says redrawn while they move.
//
//	go run ./examples/browser
//	go run ./examples/browser -port 8080
//
// It builds the library for the browser with the go command, so it runs where
// Go and this repository are. The page is served on the loopback address only,
// and asks nothing of any other machine. Port 0, the default, takes a free one;
// the address is printed.
package main

import (
	"context"
	"flag"
	"fmt"
	"net"
	"net/http"
	"os"
	"os/signal"
	"strconv"
	"time"
)

func main() {
	port := flag.Int("port", 0, "port on the loopback address; 0 takes a free one")
	flag.Parse()
	if flag.NArg() > 0 {
		fmt.Fprintf(os.Stderr, "browser: %q is not understood\n", flag.Arg(0))
		os.Exit(2)
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	if err := serve(ctx, *port); err != nil {
		fmt.Fprintln(os.Stderr, "browser:", err)
		os.Exit(1)
	}
}

func serve(ctx context.Context, port int) error {
	fmt.Println("building the library for the browser ...")
	site, err := build(ctx)
	if err != nil {
		return err
	}
	l, err := net.Listen("tcp", net.JoinHostPort("127.0.0.1", strconv.Itoa(port)))
	if err != nil {
		return err
	}
	fmt.Printf("%d kB, %d kB compressed\nopen http://%s/ - end with ctrl-C\n", len(site.program)/1000, len(site.compressed)/1000, l.Addr())
	server := &http.Server{Handler: site, ReadHeaderTimeout: 10 * time.Second}
	done := make(chan error, 1)
	go func() { done <- server.Serve(l) }()
	select {
	case err := <-done:
		return err
	case <-ctx.Done():
		return server.Close()
	}
}
