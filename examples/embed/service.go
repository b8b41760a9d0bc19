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

const maxBody, patience = 256 << 10, 30 * time.Second // of a survey, with a client

// newServer answers surveys with visits, as many at a time as there are cores. It
// gives each client so long to send, to wait for a core and to read.
func newServer(book cost.Book, patience time.Duration) *http.Server {
	cores := make(chan struct{}, runtime.GOMAXPROCS(0))
	answer := func(w http.ResponseWriter, r *http.Request) {
		survey, err := visit.Read(r.Body)
		if err != nil {
			refuse(w, http.StatusBadRequest, err)
			return
		}
		select {
		case cores <- struct{}{}: // taken only once the client has sent all of it
		case <-time.After(patience):
			refuse(w, http.StatusServiceUnavailable, errors.New("busy: want another try later"))
			return
		}
		var page bytes.Buffer
		v, err := visit.Run(survey, book)
		if kind := "text/html"; err == nil && strings.Contains(r.Header.Get("Accept"), kind) {
			w.Header().Set("Content-Type", kind+"; charset=utf-8")
			err = v.WriteHTML(&page)
		} else if err == nil {
			w.Header().Set("Content-Type", "application/json")
			err = json.NewEncoder(&page).Encode(v)
		}
		<-cores // given back before the client reads
		if err != nil {
			refuse(w, http.StatusBadRequest, err)
			return
		}
		w.Header().Set("X-Content-Type-Options", "nosniff")
		_, _ = page.WriteTo(w) // a client that has gone gets nothing
	}
	mux := http.NewServeMux()
	mux.Handle("POST /visit", http.MaxBytesHandler(http.HandlerFunc(answer), maxBody))
	return &http.Server{Handler: mux, ReadTimeout: patience, WriteTimeout: 3 * patience, IdleTimeout: patience, MaxHeaderBytes: 16 << 10}
}

// refuse lists every fault that the error is made of.
func refuse(w http.ResponseWriter, status int, err error) {
	if tooLarge := new(http.MaxBytesError); errors.As(err, &tooLarge) {
		status = http.StatusRequestEntityTooLarge
	}
	list, _ := json.Marshal(err) // of faults
	if !bytes.HasPrefix(list, []byte("[")) {
		list, _ = json.Marshal([]string{err.Error()})
	}
	w.Header().Set("Content-Type", "application/json")
	w.WriteHeader(status)
	_, _ = w.Write(append(append([]byte(`{"errors":`), list...), '}'))
}

// serve answers until the context ends, and then what it has taken on, as long as
// a client may take to send.
func serve(ctx context.Context, s *http.Server, l net.Listener) error {
	ended := make(chan error, 1)
	stop := context.AfterFunc(ctx, func() {
		last, cancel := context.WithTimeout(context.Background(), s.ReadTimeout)
		defer cancel()
		ended <- s.Shutdown(last)
	})
	if err := s.Serve(l); stop() { // it ended by itself
		return err
	}
	return <-ended
}
