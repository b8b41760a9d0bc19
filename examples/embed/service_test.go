package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"testing"
	"time"

	"manway.example/manway/cost"
	"manway.example/manway/examples/visit"
)

// small is a survey that is soon worked: no strength of a plastic tank is judged.
const small = `{"id":"%s","date":"2026-10-14","tank":{"kind":"box","material":"plastic","length":"96 in","width":"60 in","height":"60 in","outlet_invert":"48 in"},` +
	`"accesses":[{"name":"lid","compartment":1,"at":"48 in","opening":"20 in","cover":"18 in"}]}`

// service is the server on a port of this machine.
func service(t *testing.T) *httptest.Server {
	s := httptest.NewUnstartedServer(nil)
	s.Config = newServer(cost.Book{}, time.Hour)
	s.Start()
	t.Cleanup(s.Close)
	return s
}

// post sends a body and gives status, kind and answer.
func post(client *http.Client, url, accept string, body io.Reader) (int, string, []byte, error) {
	req, err := http.NewRequest(http.MethodPost, url+"/visit", body)
	if err != nil {
		return 0, "", nil, err
	}
	req.Header.Set("Accept", accept)
	res, err := client.Do(req)
	if err != nil {
		return 0, "", nil, err
	}
	defer res.Body.Close()
	answer, err := io.ReadAll(res.Body)
	return res.StatusCode, res.Header.Get("Content-Type"), answer, err
}

func TestAnswers(t *testing.T) {
	s := service(t)
	body, err := os.ReadFile(filepath.Join("..", "..", "testdata", "sites", "rusted-handle.json"))
	if err != nil {
		t.Fatal(err)
	}
	survey, err := visit.Read(bytes.NewReader(body))
	if err != nil {
		t.Fatal(err)
	}
	v, err := visit.Run(survey, cost.Book{})
	if err != nil {
		t.Fatal(err)
	}
	var page bytes.Buffer
	if err := v.WriteHTML(&page); err != nil {
		t.Fatal(err)
	}
	plain, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	plain = append(plain, '\n')
	for _, c := range []struct {
		accept, kind string
		want         []byte
	}{
		{"", "application/json", plain},
		{"application/json", "application/json", plain},
		{"text/html,application/xhtml+xml;q=0.9", "text/html; charset=utf-8", page.Bytes()},
	} {
		status, kind, answer, err := post(s.Client(), s.URL, c.accept, bytes.NewReader(body))
		if err != nil || status != 200 || kind != c.kind || !bytes.Equal(answer, c.want) {
			t.Errorf("%q: %d %s, %d bytes, want %d, %v", c.accept, status, kind, len(answer), len(c.want), err)
		}
	}
}

func TestRefusals(t *testing.T) {
	s := service(t)
	for _, c := range []struct {
		name, body string
		status     int
		want       string
	}{
		{"no survey", "", 400, `"errors":[`},
		{"unknown field", `{"id":"a","colour":1}`, 400, `"field":"colour"`},
		{"every fault", `{"id":"a","colour":1}`, 400, `"field":"tank"`},
		{"markup", `{"id":"<script>alert(1)</script>","x":"<b>"}`, 400, `\u003cb\u003e`},
		{"too large", `{"id":"` + strings.Repeat("a", maxBody) + `"}`, 413, `too large`},
		{"deep", strings.Repeat("[", 100000), 400, `"errors":[`},
	} {
		status, kind, answer, err := post(s.Client(), s.URL, "text/html", strings.NewReader(c.body))
		if err != nil || status != c.status || kind != "application/json" || !json.Valid(answer) || !strings.Contains(string(answer), c.want) {
			t.Errorf("%s: %d %s %.300s %v", c.name, status, kind, answer, err)
		}
	}
	res, err := s.Client().Get(s.URL + "/visit")
	if err != nil {
		t.Fatal(err)
	}
	res.Body.Close()
	if res.StatusCode != http.StatusMethodNotAllowed {
		t.Errorf("GET: %s", res.Status)
	}
}

// dribble gives a body in small pieces that are far apart, the second half only
// once on is closed.
type dribble struct {
	rest string
	half int
	on   <-chan struct{}
}

func (d *dribble) Read(p []byte) (int, error) {
	if d.rest == "" {
		return 0, io.EOF
	}
	if len(d.rest) <= d.half {
		<-d.on
	}
	time.Sleep(2 * time.Millisecond)
	n := copy(p, d.rest[:min(16, len(d.rest))])
	d.rest = d.rest[n:]
	return n, nil
}

// 200 clients that send slowly beside 200 that do not, and the service is told to
// end while the slow ones are half way: every one gets the answer to its own
// survey, memory stays within bounds, and the service ends.
func TestManyClients(t *testing.T) {
	const clients = 400
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	ctx, end := context.WithCancel(context.Background())
	s := newServer(cost.Book{}, time.Hour)
	var begun, all sync.WaitGroup
	begun.Add(clients)
	handler := s.Handler
	s.Handler = http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		begun.Done()
		handler.ServeHTTP(w, r)
	})
	ended, ending := make(chan error, 1), make(chan struct{})
	go func() { ended <- serve(ctx, s, l) }()
	client := &http.Client{Transport: &http.Transport{MaxIdleConnsPerHost: clients}}
	defer client.CloseIdleConnections()
	for i := range clients {
		all.Go(func() {
			id := fmt.Sprintf("client-%d", i)
			text := fmt.Sprintf(small, id)
			body := io.Reader(strings.NewReader(text))
			if i%2 == 0 {
				body = &dribble{text, len(text) / 2, ending}
			}
			status, _, answer, err := post(client, "http://"+l.Addr().String(), "", body)
			if err != nil || status != 200 || !strings.HasPrefix(string(answer), `{"id":"`+id+`"`) {
				t.Errorf("%s: %d %.100s %v", id, status, answer, err)
			}
		})
	}
	begun.Wait()
	end()
	close(ending)
	all.Wait()
	if err := <-ended; err != nil {
		t.Error(err)
	}
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	if t.Logf("%d MiB taken from the system", m.Sys>>20); m.Sys > 256<<20 {
		t.Errorf("%d MiB taken from the system", m.Sys>>20)
	}
}

// A client that stops in the middle is cut off and holds nobody up.
func TestStalledClient(t *testing.T) {
	s := httptest.NewUnstartedServer(nil)
	s.Config = newServer(cost.Book{}, time.Hour)
	s.Config.ReadTimeout = 2 * time.Second
	s.Start()
	defer s.Close()
	conn, err := net.Dial("tcp", s.Listener.Addr().String())
	if err != nil {
		t.Fatal(err)
	}
	defer conn.Close()
	fmt.Fprint(conn, "POST /visit HTTP/1.1\r\nHost: here\r\nContent-Length: 1000\r\n\r\n{\"id\":")
	if status, _, answer, err := post(s.Client(), s.URL, "", strings.NewReader(fmt.Sprintf(small, "a"))); err != nil || status != 200 {
		t.Errorf("%d %s %v", status, answer, err)
	}
	if answer, err := io.ReadAll(conn); err != nil || bytes.Contains(answer, []byte("200 OK")) {
		t.Errorf("%q, %v", answer, err)
	}
}

// Once the context ends, what was taken on is answered and serve returns.
func TestShutdown(t *testing.T) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(context.Background())
	s := newServer(cost.Book{}, time.Hour)
	// Taken on is what the handler has begun with: a request whose first line
	// comes just as the server ends is dropped by net/http.
	busy, handler := make(chan struct{}), s.Handler
	s.Handler = http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		close(busy)
		handler.ServeHTTP(w, r)
	})
	ended := make(chan error, 1)
	go func() { ended <- serve(ctx, s, l) }()
	reading, writing := io.Pipe()
	answered := make(chan error, 1)
	go func() {
		status, _, answer, err := post(http.DefaultClient, "http://"+l.Addr().String(), "", reading)
		if err == nil && status != 200 {
			err = fmt.Errorf("%d %s", status, answer)
		}
		answered <- err
	}()
	text := fmt.Sprintf(small, "a")
	fmt.Fprint(writing, text[:20])
	<-busy
	stop()
	fmt.Fprint(writing, text[20:])
	writing.Close()
	if err := <-answered; err != nil {
		t.Error(err)
	}
	if err := <-ended; err != nil {
		t.Error(err)
	}
}

func TestCalls(t *testing.T) {
	ended, stop := context.WithCancel(context.Background())
	stop()
	for _, c := range []struct {
		args string
		code int
		want string
	}{
		{"-h", 0, "POST a survey"},
		{"-listen 127.0.0.1:0 -prices ../../testdata/prices/example.csv", 0, "listening at http://127.0.0.1:"},
		{"-listen 127.0.0.1:0 -prices none.csv", 1, "none.csv"},
		{"-listen 127.0.0.1:port", 1, "unknown port"},
		{"-port 1", 2, "-port"},
		{"survey.json", 2, "survey.json"},
	} {
		var out bytes.Buffer
		if code := run(ended, strings.Fields(c.args), &out, &out); code != c.code || !strings.Contains(out.String(), c.want) {
			t.Errorf("%s: exit %d, %s", c.args, code, out.String())
		}
	}
}
