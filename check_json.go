package manway

import (
	"encoding/json"
	"math"
	"strconv"
)

// MarshalJSON writes the check with its figures in the SI unit that it names,
// to twelve significant digits; Use is left out where the check did not run.
func (c Check) MarshalJSON() ([]byte, error) {
	out := struct {
		Name        string      `json:"name"`
		Status      Status      `json:"status"`
		Reason      string      `json:"reason,omitempty"`
		Use         json.Number `json:"use,omitempty"`
		Demand      json.Number `json:"demand"`
		Capacity    json.Number `json:"capacity"`
		Unfactored  json.Number `json:"unfactored"`
		Unit        string      `json:"unit"`
		Combination string      `json:"combination"`
		Phi         json.Number `json:"phi,omitempty"`
		Source      string      `json:"source"`
	}{
		Name: c.Name, Status: c.Status, Reason: c.Reason,
		Demand: digits12(c.Demand), Capacity: digits12(c.Capacity), Unfactored: digits12(c.Unfactored),
		Unit: c.Kind.SI(), Combination: c.Combination.String(), Source: c.Source.String(),
	}
	if use, ok := c.Use(); ok {
		out.Use = digits12(use)
	}
	if c.Phi != 0 {
		out.Phi = digits12(c.Phi)
	}
	return json.Marshal(out)
}

// SI is the SI unit in which a bare float64 of the kind stands; empty for a
// ratio.
func (k Kind) SI() string {
	if k == Ratio || int(k) >= len(kinds) {
		return ""
	}
	return kinds[k].base
}

// digits12 is x to at most twelve significant digits; what is not finite is 0,
// which a judged check never holds.
func digits12(x float64) json.Number {
	if !finite(x) {
		return "0"
	}
	if x != 0 && math.Abs(x) < 1e-300 {
		x = 0
	}
	s := strconv.FormatFloat(x, 'g', 12, 64)
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		return "0"
	}
	return json.Number(strconv.FormatFloat(v, 'g', -1, 64))
}
