package visit_test

import (
	"bytes"
	"encoding/json"
	"io"
	"os"
	"path/filepath"
	"testing"

	"manway.example/manway/cost"
	"manway.example/manway/examples/visit"
)

func FuzzRead(f *testing.F) {
	for _, name := range sites(f) {
		b, err := os.ReadFile(filepath.Join(testdata, "sites", name))
		if err != nil {
			f.Fatal(err)
		}
		f.Add(b)
	}
	f.Add([]byte(`{"id":"x","date":"2026-10-14","tank":{"kind":"box"},"accesses":[{}]}`))
	f.Add([]byte("{"))
	f.Add([]byte(spoken))
	f.Fuzz(func(t *testing.T, b []byte) {
		s, err := visit.Read(bytes.NewReader(b))
		if err != nil {
			if err.Error() == "" {
				t.Fatal("an error without words")
			}
			return
		}
		back, err := json.Marshal(s)
		if err != nil {
			t.Fatalf("a survey that was read is not written: %v", err)
		}
		if _, err := visit.Read(bytes.NewReader(back)); err != nil {
			t.Fatalf("it does not read back: %v\n%s", err, back)
		}
		v, err := visit.Run(s, cost.Book{})
		if err != nil {
			return
		}
		if _, err := json.Marshal(v); err != nil {
			t.Fatalf("a survey that ran does not marshal: %v", err)
		}
		if err := v.WriteHTML(io.Discard); err != nil {
			t.Fatal(err)
		}
	})
}
