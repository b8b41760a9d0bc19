package visit

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"sync"

	"manway.example/manway"
	"manway.example/manway/cost"
	"manway.example/manway/tank"
)

// clone is the survey with lists of its own.
func (s Survey) clone() Survey {
	s.Accesses = slices.Clone(s.Accesses)
	s.Compartments = slices.Clone(s.Compartments)
	s.Rings = slices.Clone(s.Rings)
	s.Tank.Partitions = slices.Clone(s.Tank.Partitions)
	s.History = slices.Clone(s.History)
	for i := range s.History {
		s.History[i].Compartments = slices.Clone(s.History[i].Compartments)
	}
	return s
}

// moved is the survey with the quantity at a path moved by off, in its SI unit. It
// fails where the path leads to no quantity that was measured.
func (s Survey) moved(path string, off float64) (Survey, error) {
	out := s.clone()
	v := reflect.ValueOf(&out).Elem()
	for part := range strings.SplitSeq(path, ".") {
		name, index, indexed := strings.Cut(strings.TrimSuffix(part, "]"), "[")
		if v.Kind() == reflect.Pointer && !v.IsNil() {
			own := reflect.New(v.Type().Elem())
			own.Elem().Set(v.Elem())
			v.Set(own)
			v = own.Elem()
		}
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
	case *manway.Reading:
		x.Length += manway.Length(off)
	case *manway.Groundwater:
		x.Depth += manway.Length(off)
	default:
		if !quantity(v.Type()) {
			return s, fmt.Errorf("%s carries a tolerance and is no quantity", path)
		}
		v.SetFloat(v.Float() + off)
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

// mostFollowed bounds how many tolerances are followed: each costs two more
// runs.
const mostFollowed = 24

// tolerances are the measurements that carry one.
func (s Survey) tolerances() []Said {
	return slices.DeleteFunc(slices.Clone(s.Said), func(one Said) bool { return one.Off <= 0 })
}

// followed is what becomes of the figures of the visit when every measurement is
// moved by its tolerance, one at a time, down and up.
type followed struct {
	tolerances []Said
	figures    [][2]map[string]float64 // by key; nil where the survey does not allow the move
	// person is the visit with its roof under a person only, as the re-runs have
	// it, where one of them screened the roof again; nil elsewhere.
	person *Visit
}

// follow works the re-runs.
func (v *Visit) follow(prices cost.Book) (followed, error) {
	f := followed{tolerances: v.Survey.tolerances()}
	f.tolerances = f.tolerances[:min(len(f.tolerances), mostFollowed)]
	f.figures = make([][2]map[string]float64, len(f.tolerances))
	person := sync.OnceValue(func() error {
		f.person = &Visit{Survey: v.Survey, Tank: v.Tank, Accesses: v.Accesses}
		return f.person.roofUnderPerson()
	})
	var steps []func() error
	for i, one := range f.tolerances {
		for side, off := range [...]float64{-one.Off, one.Off} {
			steps = append(steps, func() error {
				s, err := v.Survey.moved(one.Path, off)
				if err != nil {
					return nil // refused with the survey
				}
				other, roof, err := v.again(s, prices, one.Path)
				if err != nil {
					return nil // the survey does not allow the move
				}
				f.figures[i][side] = other.byKey(roof)
				if roof {
					return person()
				}
				return nil
			})
		}
	}
	err := together(steps...)
	return f, err
}

// spread says how far each figure may be off by what was followed:
//
//	low, high = value -/+ sqrt(sum of squares of the shifts to that side)
//
// as for independent errors. A move that the survey does not allow, such as a
// lid thinner than its loss, counts as no shift.
func (v *Visit) spread(f followed) {
	if len(f.tolerances) == 0 {
		return
	}
	base := *v
	if f.person != nil {
		base.Roof = f.person.Roof
	}
	v.Spreads = base.figures(true)
	for i := range v.Spreads {
		v.Spreads[i].take(f.tolerances, f.figures)
	}
}

// take adds up the shifts of one figure.
func (f *Spread) take(followed []Said, shifts [][2]map[string]float64) {
	var down, up, most float64
	for i, one := range followed {
		for _, side := range shifts[i] {
			value, ok := side[f.Key]
			if !ok {
				continue
			}
			shift := value - f.Value
			if shift < 0 {
				down += shift * shift
			} else {
				up += shift * shift
			}
			if math.Abs(shift) > most {
				most, f.Drives = math.Abs(shift), one.Path
			}
		}
	}
	f.Low, f.High = f.Value-math.Sqrt(down), f.Value+math.Sqrt(up)
}

// again works the visit of another survey, which differs in the measurement at a
// path, through the rooms that it has to do with: the walls and the comparison
// over the years are left, the accesses that it is no part of are as they were.
// The roof is screened again, under a person only, where the measurement moves
// it; again says whether.
func (v *Visit) again(s Survey, prices cost.Book, path string) (other Visit, roof bool, err error) {
	if other, err = v.of(s); err != nil {
		return other, roof, err
	}
	other.Roof, other.RoofTried, other.Accesses = v.Roof, v.RoofTried, slices.Clone(v.Accesses)
	only, one := accessOf(path)
	for i, a := range s.Accesses {
		if one && i != only {
			continue
		}
		if other.Accesses[i], err = other.access(a); err != nil {
			return other, roof, err
		}
	}
	if roof, err = v.movesRoof(&other); err != nil {
		return other, roof, err
	}
	if roof {
		if err := other.roofUnderPerson(); err != nil {
			return other, roof, err
		}
	}
	for _, step := range []func() error{other.float, other.pump, other.judge, func() error { return other.estimates(prices) }} {
		if err := step(); err != nil {
			return other, roof, err
		}
	}
	return other, roof, nil
}

// accessOf is the access that a path leads into: accesses[1].lid.thickness.
func accessOf(path string) (i int, ok bool) {
	rest, ok := strings.CutPrefix(path, "accesses[")
	index, _, closed := strings.Cut(rest, "]")
	i, err := strconv.Atoi(index)
	return i, ok && closed && err == nil
}

// restMoves is the change of all that rests on the roof, from risers and lids,
// below which the roof is not screened again.
const restMoves = 0.01

// movesRoof reports whether another visit screens another roof: of other sizes,
// concrete, steel or loss, under another soil, or under risers and lids that
// change what rests on it by more than a hundredth.
func (v *Visit) movesRoof(other *Visit) (bool, error) {
	own := Visit{Survey: v.Survey, Tank: v.Tank, Accesses: v.Accesses}
	a, err := own.roofCase(nil, false)
	if err != nil {
		return false, err
	}
	b, err := other.roofCase(nil, false)
	if err != nil {
		return false, err
	}
	rests := func(c *tank.RoofCase) (m manway.Mass) {
		for _, r := range c.Now.Risers {
			m += r.Mass
		}
		c.Now.Risers = nil
		return m
	}
	change := rests(&b) - rests(&a)
	before, after := v.Tank.Spec, other.Tank.Spec
	before.OutletInvert, after.OutletInvert = 0, 0
	if !reflect.DeepEqual(a, b) || !reflect.DeepEqual(before, after) {
		return true, nil
	}
	return math.Abs(float64(change.Weight())) > restMoves*float64(v.Roof.Change.Now), nil
}

// of is the visit of another survey before its rooms, with the walls as they
// were.
func (v *Visit) of(s Survey) (Visit, error) {
	s.Said = nil
	if err := s.Validate(); err != nil {
		return Visit{}, err
	}
	t, err := s.build()
	return Visit{Survey: s, Tank: t, Walls: v.Walls}, err
}

// byKey is the figures of the visit by their keys, with those of the roof where
// it was screened again.
func (v *Visit) byKey(roof bool) map[string]float64 {
	all := map[string]float64{}
	for _, f := range v.figures(roof) {
		all[f.Key] = f.Value
	}
	return all
}

// figures are the figures of the visit that a tolerance is followed to.
func (v *Visit) figures(roof bool) []Spread {
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
	if !roof {
		return list
	}
	for _, c := range v.personOnRoof() {
		if use, ok := c.Use(); ok && strings.Contains(c.Name, "bending") {
			list = append(list, Spread{Name: "Roof, Use in " + c.Name, Key: "roof_" + slug(c.Name) + "_use", Value: use})
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
		s.Unjudged = []string{`No measurement carries a tolerance, such as "41 in ± 1 in" or "about 41 in".`}
		return s
	}
	if n := len(v.Survey.tolerances()); n > mostFollowed {
		s.Unjudged = append(s.Unjudged, fmt.Sprintf("Of %d tolerances the first %d are followed.", n, mostFollowed))
	}
	t := Table{ID: "figures", Columns: []string{"Figure", "As measured", "Low", "High", "Driven by"}}
	for _, f := range v.Spreads {
		if f.Drives == "" {
			continue
		}
		unit := f.Key[strings.LastIndexByte(f.Key, '_')+1:]
		number := func(key string, x float64) Cell {
			return Cell{Key: key, Text: inWords(x, unit, v.Survey.Units), Number: x, Is: Number}
		}
		t.Rows = append(t.Rows, []Cell{
			words("figure", f.Name), number("value", f.Value), number("low", f.Low), number("high", f.High), {Text: v.Survey.called(f.Drives), Parts: []Cell{words("driven_by", f.Drives)}},
		})
	}
	s.Tables = []Table{t}
	return s
}

// inWords is a figure of the unit that ends its key, for people.
func inWords(x float64, unit string, sys manway.System) string {
	switch unit {
	case "gal":
		return short((manway.Volume(x) * manway.Gallon).Text(sys))
	case "lb":
		return short((manway.Mass(x) * manway.Pound).Text(sys))
	case "lbf":
		return short((manway.Force(x) * manway.PoundForce).Text(sys))
	case "in":
		return (manway.Length(x) * manway.Inch).Text(sys)
	case "use":
		return strconv.FormatFloat(100*x, 'f', 0, 64) + " %"
	case "factor":
		return strconv.FormatFloat(x, 'f', 2, 64)
	}
	return grouped(strconv.FormatFloat(x, 'f', 2, 64)) + " " + strings.ToUpper(unit)
}
