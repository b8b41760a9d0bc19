package visit

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"manway.example/manway"
	"manway.example/manway/cost"
)

// Tolerance is by how much one measured length of the survey may be off.
type Tolerance struct {
	Path string        // of the value in the survey: accesses[0].lid.thickness
	Off  manway.Length // either way
}

// plusMinus is a text that carries a tolerance: "41 in ± 1 in" or "41 in +/- 1 in".
var plusMinus = regexp.MustCompile(`"([^"\\]*(?:\\.[^"\\]*)*?)\s*(?:±|\+/-)\s*([^"\\]*(?:\\.[^"\\]*)*)"`)

// maxTolerances bounds how many values of a survey may carry one: each costs
// two more runs.
const maxTolerances = 24

// takeTolerances takes the tolerances out of a survey's text: the text comes
// back with the bare values, on the same lines. A tolerance that is no length is
// left where it stands, so that the decoder refuses it with its line.
func takeTolerances(text []byte) ([]byte, []Tolerance) {
	if !bytes.Contains(text, []byte("±")) && !bytes.Contains(text, []byte("+/-")) {
		return text, nil
	}
	var doc any
	if err := json.Unmarshal(text, &doc); err != nil {
		return text, nil // the decoder says what is wrong
	}
	var list []Tolerance
	walk(doc, "", func(path, value string) {
		_, off, found := cutTolerance(value)
		var l manway.Length
		if found && l.UnmarshalText([]byte(off)) == nil && l > 0 && len(list) < maxTolerances {
			list = append(list, Tolerance{path, l})
		}
	})
	slices.SortFunc(list, func(a, b Tolerance) int { return strings.Compare(a.Path, b.Path) })
	bare := plusMinus.ReplaceAllFunc(text, func(m []byte) []byte {
		parts := plusMinus.FindSubmatch(m)
		var s string
		var l manway.Length
		if json.Unmarshal(append(append([]byte{'"'}, parts[2]...), '"'), &s) != nil || l.UnmarshalText([]byte(s)) != nil || !(l > 0) {
			return m
		}
		return append(append([]byte{'"'}, parts[1]...), '"')
	})
	return bare, list
}

func cutTolerance(value string) (bare, off string, found bool) {
	for _, sign := range [...]string{"±", "+/-"} {
		if bare, off, found = strings.Cut(value, sign); found {
			return strings.TrimSpace(bare), strings.TrimSpace(off), true
		}
	}
	return value, "", false
}

// walk visits every text of a JSON document with its path.
func walk(v any, path string, visit func(path, value string)) {
	switch v := v.(type) {
	case string:
		visit(path, v)
	case []any:
		for i, item := range v {
			walk(item, fmt.Sprintf("%s[%d]", path, i), visit)
		}
	case map[string]any:
		for name, item := range v {
			at := name
			if path != "" {
				at = path + "." + name
			}
			walk(item, at, visit)
		}
	}
}

// moved is the survey with the length at a path moved by off. It fails where
// the path leads to no length that was measured.
func (s Survey) moved(path string, off manway.Length) (Survey, error) {
	// A copy of its own: lists of the survey must not be shared.
	out := s
	out.Accesses = slices.Clone(s.Accesses)
	out.Compartments = slices.Clone(s.Compartments)
	out.Rings = slices.Clone(s.Rings)
	out.Tank.Partitions = slices.Clone(s.Tank.Partitions)
	v := reflect.ValueOf(&out).Elem()
	for part := range strings.SplitSeq(path, ".") {
		name, index, indexed := strings.Cut(strings.TrimSuffix(part, "]"), "[")
		if v.Kind() != reflect.Struct {
			return s, fmt.Errorf("%s is no part of a survey", path)
		}
		if v = byTag(v, name); !v.IsValid() {
			return s, fmt.Errorf("%s is no part of a survey", path)
		}
		if indexed {
			i, err := strconv.Atoi(index)
			if err != nil || v.Kind() != reflect.Slice || i >= v.Len() {
				return s, fmt.Errorf("%s is no part of a survey", path)
			}
			v = v.Index(i)
		}
	}
	switch x := v.Addr().Interface().(type) {
	case *manway.Length:
		*x += off
	case *manway.Reading:
		x.Length += off
	case *manway.Groundwater:
		x.Depth += off
	default:
		return s, fmt.Errorf("%s carries a tolerance and is no length", path)
	}
	return out, nil
}

// byTag is the field of a struct by its JSON name.
func byTag(v reflect.Value, name string) reflect.Value {
	for i := range v.NumField() {
		if v.Type().Field(i).Tag.Get("json") == name {
			return v.Field(i)
		}
	}
	return reflect.Value{}
}

// Spread is one figure of the visit as measured, and how far it may be off.
type Spread struct {
	Name      string
	Key       string // with its unit, as in JSON
	Value     float64
	Low, High float64
	Drives    string // path of the measurement that moves it the most
}

// spread re-runs the visit with every measurement moved by its tolerance, one
// at a time, up and down:
//
//	low, high = value -/+ sqrt(sum of squares of the shifts to that side)
//
// as for independent errors. A move that the survey does not allow, such as a
// lid thinner than its loss, counts as no shift.
func (v *Visit) spread(prices cost.Book) error {
	if len(v.Survey.Tolerances) == 0 {
		return nil
	}
	base := v.figures()
	down, up, most := make([]float64, len(base)), make([]float64, len(base)), make([]float64, len(base))
	for _, t := range v.Survey.Tolerances {
		for _, off := range [...]manway.Length{-t.Off, t.Off} {
			s, err := v.Survey.moved(t.Path, off)
			if err != nil {
				return manway.InputErrors{{Field: "Tolerances", Value: t.Path, Want: "a length that was measured"}}
			}
			s.Tolerances = nil
			other, err := Run(s, prices)
			if err != nil {
				continue
			}
			for i, f := range other.figures() {
				if i >= len(base) || f.Key != base[i].Key {
					break
				}
				shift := f.Value - base[i].Value
				if shift < 0 {
					down[i] += shift * shift
				} else {
					up[i] += shift * shift
				}
				if math.Abs(shift) > most[i] {
					most[i], base[i].Drives = math.Abs(shift), t.Path
				}
			}
		}
	}
	for i := range base {
		base[i].Low, base[i].High = base[i].Value-math.Sqrt(down[i]), base[i].Value+math.Sqrt(up[i])
	}
	v.Spreads = base
	return nil
}

// figures are the figures of the visit that a tolerance is followed to.
func (v *Visit) figures() []Spread {
	full, _ := v.Tank.AtOutlet()
	list := []Spread{
		{Name: "Tank to the outlet", Key: "liquid_gal", Value: full.In(manway.Gallon)},
		{Name: "To pump", Key: "pump_gal", Value: v.Pump.Remove.In(manway.Gallon)},
		{Name: "Factor against floating", Key: "factor", Value: v.Float.Factor},
	}
	for i, a := range v.Survey.Accesses {
		r := v.Accesses[i]
		list = append(list, Spread{Name: a.Name + ", roof to finished top", Key: slug(a.Name) + "_reach_in", Value: r.Reach.Top.In(manway.Inch)})
		if r.HasLid {
			list = append(list,
				Spread{Name: a.Name + ", weight at most", Key: slug(a.Name) + "_lb", Value: r.Moves.Weight.Heaviest.In(manway.Pound)},
				Spread{Name: a.Name + ", first pull of the easiest way", Key: slug(a.Name) + "_pull_lbf", Value: r.Moves.Methods[r.Moves.Least].FirstPull.In(manway.PoundForce)})
			for _, c := range r.Strength.Checks {
				if c.Capacity > 0 && strings.Contains(c.Name, "a person") && strings.Contains(c.Name, "bending") {
					list = append(list, Spread{Name: a.Name + ", Use in " + c.Name, Key: slug(a.Name) + "_use", Value: c.Demand / c.Capacity})
				}
			}
		}
		for _, p := range v.Options.Accesses[i].Priced {
			if p.RuledOut == "" && p.Estimate.Complete {
				list = append(list, Spread{
					Name: a.Name + ", price of: " + p.Title,
					Key:  slug(a.Name) + "_" + slug(string(p.Kind)) + "_" + strings.ToLower(string(v.Options.Currency)), Value: p.Estimate.Total.InexactFloat64(),
				})
			}
		}
	}
	return list
}

// spreadSection says how far the figures may be off, and what would tighten
// them the most.
func (v Visit) spreadSection() Section {
	s := Section{
		ID: "spread", Title: "How far the figures may be off", For: ForDesk,
		Method: "Every measurement with a tolerance is moved by it alone, up and down, and the whole visit is worked again; shifts to one side add as squares.",
		Basis:  []manway.Citation{{Source: manway.Practice, Place: "independent errors add as squares"}},
	}
	if len(v.Spreads) == 0 {
		s.Unjudged = []string{`No measurement carries a tolerance, such as "41 in ± 1 in".`}
		return s
	}
	t := Table{ID: "figures", Columns: []string{"Figure", "As measured", "Low", "High", "Driven by"}}
	for _, f := range v.Spreads {
		if f.Drives == "" {
			continue
		}
		unit := f.Key[strings.LastIndexByte(f.Key, '_')+1:]
		number := func(key string, x float64) Cell {
			return Cell{Key: key, Text: strconv.FormatFloat(x, 'g', 4, 64) + " " + unit, Number: x, Is: Number}
		}
		t.Rows = append(t.Rows, []Cell{
			words("figure", f.Name), number("value", f.Value), number("low", f.Low), number("high", f.High), words("driven_by", f.Drives),
		})
	}
	s.Tables = []Table{t}
	return s
}
