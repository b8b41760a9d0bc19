package main

import (
	"encoding"
	"errors"
	"fmt"
	"strings"

	"manway.example/manway"
	"manway.example/manway/hydraulics"
)

// column is one column of the answer: a number in SI with the unit that it is
// written in, or words.
type column struct {
	name   string
	usual  string // unit at the end of the name; empty: the name has none
	units  func(string) (float64, error)
	need   needs
	number func(*output) known[float64]
	words  func(*output) string // empty: not known

	header string  // the name with its unit
	unit   float64 // in SI
}

// unitOf reads a unit: what 1 of it is in SI.
func unitOf[T ~float64, P interface {
	*T
	encoding.TextUnmarshaler
}](name string) (float64, error) {
	var one T
	err := P(&one).UnmarshalText([]byte("1 " + name))
	return float64(one), err
}

var (
	lengths   = unitOf[manway.Length]
	volumes   = unitOf[manway.Volume]
	masses    = unitOf[manway.Mass]
	durations = unitOf[manway.Duration]
)

// plain is a value without its type.
func plain[T ~float64](v known[T]) known[float64] { return known[float64]{float64(v.v), v.ok} }

func span(s hydraulics.Span) known[float64] { return known[float64]{float64(s.Time), s.Known} }

// columns are all that can be asked for, beside id.
var columns = []column{
	{name: "liquid", usual: "gal", units: volumes, number: func(o *output) known[float64] { return plain(o.liquid) }},
	{name: "liquid_1", usual: "gal", units: volumes, number: func(o *output) known[float64] { return plain(o.compartments[0].liquid) }},
	{name: "liquid_2", usual: "gal", units: volumes, number: func(o *output) known[float64] { return plain(o.compartments[1].liquid) }},
	{name: "solids_1", number: func(o *output) known[float64] { return o.compartments[0].solids }},
	{name: "solids_2", number: func(o *output) known[float64] { return o.compartments[1].solids }},
	{name: "pump", usual: "gal", units: volumes, number: func(o *output) known[float64] { return plain(o.pump) }},
	{name: "pump_1", usual: "gal", units: volumes, number: func(o *output) known[float64] { return plain(o.compartments[0].pump) }},
	{name: "pump_2", usual: "gal", units: volumes, number: func(o *output) known[float64] { return plain(o.compartments[1].pump) }},
	{name: "sludge", usual: "gal", units: volumes, need: needLayers, number: func(o *output) known[float64] { return plain(o.sludge) }},
	{name: "scum", usual: "gal", units: volumes, need: needLayers, number: func(o *output) known[float64] { return plain(o.scum) }},
	{name: "loads", number: func(o *output) known[float64] { return o.loads }},
	{name: "lid", usual: "lb", units: masses, number: func(o *output) known[float64] { return plain(o.lid) }},
	{name: "lid_soaked", usual: "lb", units: masses, number: func(o *output) known[float64] { return plain(o.soaked) }},
	{name: "reach", usual: "in", units: lengths, number: func(o *output) known[float64] { return plain(o.reach) }},
	{name: "next", usual: "years", units: durations, need: needNext, number: func(o *output) known[float64] { return span(o.next.Likely) }},
	{name: "next_low", usual: "years", units: durations, need: needNext, number: func(o *output) known[float64] { return span(o.next.Low) }},
	{name: "next_high", usual: "years", units: durations, need: needNext, number: func(o *output) known[float64] { return span(o.next.High) }},
	{name: "next_on", need: needForecast, words: func(o *output) string { return o.nextOn.String() }},
	{name: "float_factor", need: needFloat, number: func(o *output) known[float64] { return o.float.factor }},
	{name: "float_state", need: needFloat, words: func(o *output) string { return o.float.words(o.float.state) }},
	{name: "leave", usual: "in", units: lengths, need: needFloat, number: func(o *output) known[float64] { return plain(o.float.leastLiquid) }},
	{name: "leave_state", need: needFloat, words: func(o *output) string { return o.float.words(o.float.leave) }},
	{name: "roof_screening_use", need: needRoof, number: func(o *output) known[float64] { return o.roof.use }},
	{name: "roof_screening_load", need: needRoof, words: func(o *output) string { return o.roof.load }},
	{name: "roof_screening_status", need: needRoof, words: func(o *output) string { return o.roof.words() }},
	{name: "cautions", words: func(o *output) string { return strings.Join(o.cautions.Codes(), ";") }},
}

// words is a state where the flotation is known.
func (f floating) words(state fmt.Stringer) string {
	if !f.known {
		return ""
	}
	return state.String()
}

func (r roofing) words() string {
	if !r.known {
		return ""
	}
	return r.status.String()
}

// usualColumns stand where -columns is not given.
const usualColumns = "id,liquid_1_gal,liquid_2_gal,pump_gal,lid_lb,reach_in"

// columnNamed finds a column by its name, with any unit of its kind.
func columnNamed(name string) (column, error) {
	if name == "id" {
		return column{header: name}, nil
	}
	for _, c := range columns {
		if c.usual == "" && c.name == name {
			c.header, c.unit = name, 1
			return c, nil
		}
	}
	at := strings.LastIndexByte(name, '_')
	for _, c := range columns {
		switch {
		case c.usual == "":
		case c.name == name:
			return c, fmt.Errorf("column %q: want its unit too, such as %s_%s", name, name, c.usual)
		case at > 0 && c.name == name[:at]:
			unit, err := c.units(name[at+1:])
			var fault *manway.InputError
			if errors.As(err, &fault) {
				return c, fmt.Errorf("column %q: want another unit: %s", name, strings.TrimPrefix(fault.Want, "a number with a unit: "))
			}
			c.header, c.unit = name, unit
			return c, err
		}
	}
	return column{}, fmt.Errorf("column %q: want id, %s", name, strings.Join(columnNames(), ", "))
}

func columnNames() []string {
	names := make([]string, len(columns))
	for i, c := range columns {
		names[i] = c.name
		if c.usual != "" {
			names[i] += "_" + c.usual
		}
	}
	return names
}

// choose reads the list of columns.
func choose(list string) (chosen []column, want needs, err error) {
	seen := map[string]bool{}
	for name := range strings.SplitSeq(list, ",") {
		c, err := columnNamed(strings.TrimSpace(name))
		if err != nil {
			return nil, 0, err
		}
		if seen[c.header] {
			return nil, 0, fmt.Errorf("column %q: want it once", c.header)
		}
		seen[c.header] = true
		chosen = append(chosen, c)
		want |= c.need
	}
	return chosen, want, nil
}
