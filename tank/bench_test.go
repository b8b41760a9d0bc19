package tank_test

import (
	"testing"

	"manway.example/manway"
	"manway.example/manway/tank"
)

// BenchmarkNew makes and asks the tank of one row of a day's work.
func BenchmarkNew(b *testing.B) {
	spec := tank.Spec{
		Shape:      tank.Box{Length: 96 * manway.Inch, Width: 48 * manway.Inch, Height: 48 * manway.Inch},
		Partitions: []tank.Partition{{At: 62 * manway.Inch, Thickness: 3 * manway.Inch}},
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := tank.New(spec); err != nil {
			b.Fatal(err)
		}
	}
}
