package visit_test

import (
	"io"
	"testing"

	"manway.example/manway/examples/visit"
)

func BenchmarkVisitToHTML(b *testing.B) {
	s, book := read(b, "rusted-handle.json")
	b.ReportAllocs()
	for b.Loop() {
		v, err := visit.Run(s, book)
		if err != nil {
			b.Fatal(err)
		}
		if err := v.WriteHTML(io.Discard); err != nil {
			b.Fatal(err)
		}
	}
}
