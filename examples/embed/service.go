package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"net"
	"net/http"
	"runtime"
	"strings"
	"time"

	"manway.example/manway/cost"
	"manway.example/manway/examples/visit"
)

const (
	maxBody  = 256 << 10 // bytes of a survey
	patience = 30 * time.Second
)

// newServer answers surveys with visits, as many at a time as there are cores. It
// gives each client so long to send, to wait for a core and to read.
func newServer(book cost.Book, patience time.Duration) *http.Server {
	cores := make(chan struct{}, runtime.GOMAXPROCS(0))
	mux := http.NewServeMux()
	mux.HandleFunc("POST /visit", func(w http.ResponseWriter, r *http.Request) {
		survey, err := visit.Read(http.MaxBytesReader(w, r.Body, maxBody))
		if tooLarge := new(http.MaxBytesError); errors.As(err, &tooLarge) {
			refuse(w, http.StatusRequestEntityTooLarge, err)
			return
		} else if err != nil {
			refuse(w, http.StatusBadRequest, err)
			return
		}
		select {
		case cores <- struct{}{}: // taken only once the client has sent all of it
		case <-time.After(patience):
			refuse(w, http.StatusServiceUnavailable, errors.New("busy: want another try later"))
			return
		}
		html := strings.Contains(r.Header.Get("Accept"), "text/html")
		answer, err := work(survey, book, html)
		<-cores // and given back before the client reads
		if err != nil {
			refuse(w, http.StatusBadRequest, err)
			return
		}
		kind := "application/json"
		if html {
			kind = "text/html; charset=utf-8"
		}
		w.Header().Set("Content-Type", kind)
		w.Header().Set("X-Content-Type-Options", "nosniff")
		_, _ = w.Write(answer) // a client that has gone gets nothing
	})
	return &http.Server{Handler: mux, ReadTimeout: patience, WriteTimeout: 3 * patience, IdleTimeout: patience, MaxHeaderBytes: 16 << 10}
}

// work makes the visit of a survey, whole before its first byte is sent.
func work(s visit.Survey, book cost.Book, html bool) ([]byte, error) {
	v, err := visit.Run(s, book)
	if err != nil {
		return nil, err
	}
	if !html {
		return json.Marshal(v)
	}
	var b bytes.Buffer
	err = v.WriteHTML(&b)
	return b.Bytes(), err
}

// refuse lists every fault that the error is made of.
func refuse(w http.ResponseWriter, status int, err error) {
	list, _ := json.Marshal(err) // of faults
	if !bytes.HasPrefix(list, []byte("[")) {
		list, _ = json.Marshal([]string{err.Error()})
	}
	w.Header().Set("Content-Type", "application/json")
	w.WriteHeader(status)
	_, _ = w.Write(append(append([]byte(`{"errors":`), list...), '}'))
}

// serve answers until the context ends, and then what it has taken on.
func serve(ctx context.Context, s *http.Server, l net.Listener) error {
	ended := make(chan error, 1)
	go func() { ended <- s.Serve(l) }()
	select {
	case err := <-ended:
		return err
	case <-ctx.Done():
	}
	last, cancel := context.WithTimeout(context.Background(), patience)
	defer cancel()
	return s.Shutdown(last)
}
