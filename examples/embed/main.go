// Embed is an HTTP service round the whole job, short enough to be copied into
// another program: POST a survey, get the visit.
//
//	embed -listen 127.0.0.1:8080 -prices testdata/prices/example.csv
//
// The other side of it, in a shell:
//
//	cd testdata/sites
//	curl --data-binary @rusted-handle.json http://127.0.0.1:8080/visit
//	curl -H "Accept: text/html" --data-binary @rusted-handle.json \
//	  http://127.0.0.1:8080/visit
//
// The body is the survey that sitevisit reads; the answer is its JSON, or its
// page where Accept has text/html. Prices come from the book the service was
// started with: a file that the survey names is never opened.
//
// Answers: 200 the visit, which never means that anything was found to be in
// order; 400 {"errors":[…]}, every fault with its field and line; 413 more than
// 256 KiB; 503 all cores busy for longer than a client should wait. A client that
// is slow to send or to read is cut off after half a minute.
//
// On an interrupt it takes no more surveys, answers those it has, and exits 0.
// Exit 1: it could not listen or read the price book. 2: the call was wrong.
package main

import (
	"context"
	_ "embed"
	"errors"
	"flag"
	"fmt"
	"io"
	"net"
	"os"
	"os/signal"
	"syscall"

	"manway.example/manway/cost"
	"manway.example/manway/examples/internal/record"
)

//go:embed main.go
var source string

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	os.Exit(run(ctx, os.Args[1:], os.Stdout, os.Stderr))
}

func run(ctx context.Context, args []string, stdout, stderr io.Writer) int {
	fs := flag.NewFlagSet("embed", flag.ContinueOnError)
	fs.SetOutput(io.Discard)
	listen := fs.String("listen", "127.0.0.1:8080", "`ADDRESS` to listen at; without a host, at all of the machine's")
	prices := fs.String("prices", "", "price book, a CSV `FILE`; without one nothing is priced")
	switch err := fs.Parse(args); {
	case errors.Is(err, flag.ErrHelp):
		record.Manual(stdout, source, fs)
		return 0
	case err != nil:
		fmt.Fprintln(stderr, "embed:", err)
		return 2
	case fs.NArg() > 0:
		fmt.Fprintf(stderr, "embed: argument %q: want flags only\n", fs.Arg(0))
		return 2
	}
	if err := start(ctx, *listen, *prices, stderr); err != nil {
		fmt.Fprintln(stderr, "embed:", err)
		return 1
	}
	return 0
}

// start serves with a price book until the context ends.
func start(ctx context.Context, address, prices string, log io.Writer) error {
	var book cost.Book
	if prices != "" {
		f, err := os.Open(prices)
		if err != nil {
			return err
		}
		defer f.Close()
		if book, err = cost.ReadPriceBook(f); err != nil {
			return fmt.Errorf("%s: %w", prices, err)
		}
	}
	l, err := net.Listen("tcp", address)
	if err != nil {
		return err
	}
	fmt.Fprintf(log, "embed: listening at http://%s/visit\n", l.Addr())
	return serve(ctx, newServer(book, patience), l)
}
