package cost_test

import (
	"testing"

	"manway.example/manway/cost"
	"manway.example/manway/riser"
)

// takenOff is the line of one scope item.
func takenOff(t testing.TB, code string, quantity float64, unit string, own ...cost.Supply) cost.Line {
	t.Helper()
	lines, err := cost.Takeoff([]riser.Item{{Code: code, Quantity: quantity, Unit: unit}}, own...)
	if err != nil {
		t.Fatal(err)
	}
	return lines[0]
}
