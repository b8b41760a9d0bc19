package hostile

import (
	"reflect"

	"manway.example/manway"
)

// usual are values of the quantities and of plain types that a calculation
// about a tank may well be asked with.
var usual = values([]any{
	manway.Length(0.6), manway.Length(0.05), manway.Length(0.1), manway.Length(0.3), manway.Length(1.2), manway.Length(2.4), manway.Length(0),
	manway.Area(0.3), manway.Area(0.01), manway.Area(4.0), manway.Volume(1.0), manway.Volume(0.02), manway.Volume(4.0),
	manway.Mass(80), manway.Mass(5), manway.Mass(2000), manway.Force(500), manway.Force(50), manway.Force(7e4),
	manway.Pressure(5e4), manway.Pressure(1e3), manway.Pressure(25e6), manway.Pressure(4e8), manway.Density(2400), manway.Density(1000), manway.Density(1800),
	manway.Flow(1e-3), manway.Flow(1e-5), manway.Flow(0.01), manway.Duration(86400), manway.Duration(60), manway.Duration(3e7), manway.Duration(3e8),
	manway.Velocity(1), manway.Temperature(285), manway.Temperature(300), manway.Angle(0.5), manway.Angle(0.1), manway.Angle(1.5),
	manway.Moment(1e3), manway.MomentPerLength(1e4), manway.LineLoad(1e4),
	0.5, 0.0, 0.05, 1.0, 0.99, 3.0, 20.0, 1e5, 1, 0, 2, 3, 4, 12, uint64(1), "", "a", "riser", true, false,
	manway.US, manway.SI, manway.Date{Year: 2026, Month: 10, Day: 14}, manway.Date{Year: 2028, Month: 2, Day: 29}, manway.Date{},
	[]byte("2 ft 3 in"), []byte("unknown"), []byte("\xff\x00 9e999"),
	manway.InputErrors{{Field: "Depth", Value: "-1 m", Want: "0 or more"}}, error(manway.InputErrors{{Field: "Depth", Value: "-1 m", Want: "0 or more"}}),
	manway.Concrete{}, manway.Concrete{Strength: 28e6, Density: 2400}, manway.Soil{}, manway.Soil{Moist: 1900, Saturated: 2100, Friction: 0.5},
	manway.Groundwater{}, manway.GroundwaterAt(0.5), manway.Reinforcement{},
	manway.Reinforcement{State: manway.SteelKnown, Diameter: 0.0127, Spacing: 0.2, Cover: 0.025, Yield: 4e8}, manway.TruckWheel, manway.MowerWheel,
	manway.Person{}, manway.Person{Mass: 90},
})

func values(list []any) map[reflect.Type][]reflect.Value {
	byType := map[reflect.Type][]reflect.Value{}
	for _, x := range list {
		v := reflect.ValueOf(x)
		byType[v.Type()] = append(byType[v.Type()], v)
	}
	return byType
}

// made is a value of a type: one of those listed, or one put together from
// such.
func (r *room) made(t reflect.Type, c *choice, depth int) reflect.Value {
	list := r.seeds[t]
	if len(list) == 0 && t.Kind() == reflect.Interface {
		for _, s := range r.types {
			if s.Implements(t) {
				list = append(list, r.seeds[s]...)
			}
		}
	}
	if len(list) == 0 {
		list = usual[t]
	}
	if len(list) > 0 {
		v := reflect.New(t).Elem()
		v.Set(list[c.of(len(list))])
		return clone(v)
	}
	v := reflect.New(t).Elem()
	switch t.Kind() {
	case reflect.Uint8, reflect.Uint16, reflect.Uint32:
		v.SetUint(uint64(c.of(4)))
	case reflect.Float64, reflect.Int, reflect.Uint64, reflect.String, reflect.Bool:
		for u, plain := range usual {
			if u == basic[t.Kind()] {
				v.Set(plain[c.of(len(plain))].Convert(t))
			}
		}
	case reflect.Struct:
		for i := range t.NumField() {
			if t.Field(i).IsExported() && depth < 6 {
				v.Field(i).Set(r.made(t.Field(i).Type, c, depth+1))
			}
		}
	case reflect.Slice:
		if depth < 6 {
			for range c.of(4) {
				v.Set(reflect.Append(v, r.made(t.Elem(), c, depth+1)))
			}
		}
	case reflect.Array:
		for i := range t.Len() {
			v.Index(i).Set(r.made(t.Elem(), c, depth+1))
		}
	case reflect.Pointer:
		if depth < 6 {
			v.Set(reflect.New(t.Elem()))
			v.Elem().Set(r.made(t.Elem(), c, depth+1))
		}
	}
	return v
}

// basic are the plain types that usual has values of.
var basic = map[reflect.Kind]reflect.Type{
	reflect.Float64: reflect.TypeFor[float64](), reflect.Int: reflect.TypeFor[int](), reflect.Uint64: reflect.TypeFor[uint64](),
	reflect.String: reflect.TypeFor[string](), reflect.Bool: reflect.TypeFor[bool](),
}

// clone is a copy that shares nothing with v through exported fields.
func clone(v reflect.Value) reflect.Value {
	w := reflect.New(v.Type()).Elem()
	w.Set(v)
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				w.Field(i).Set(clone(v.Field(i)))
			}
		}
	case reflect.Array:
		for i := range v.Len() {
			w.Index(i).Set(clone(v.Index(i)))
		}
	case reflect.Slice:
		if !v.IsNil() {
			w.Set(reflect.MakeSlice(v.Type(), v.Len(), v.Len()))
			for i := range v.Len() {
				w.Index(i).Set(clone(v.Index(i)))
			}
		}
	case reflect.Interface:
		if !v.IsNil() {
			w.Set(clone(v.Elem()))
		}
	case reflect.Pointer:
		if !v.IsNil() {
			w.Set(reflect.New(v.Type().Elem()))
			w.Elem().Set(clone(v.Elem()))
		}
	}
	return w
}

// same reports whether two values are equal to the bit, NaN among them, as far
// as exported fields show.
func same(a, b reflect.Value) bool {
	if a.IsValid() != b.IsValid() || !a.IsValid() {
		return a.IsValid() == b.IsValid()
	}
	if a.Type() != b.Type() {
		return false
	}
	switch a.Kind() {
	case reflect.Float64:
		return a.Float() == b.Float() || a.Float() != a.Float() && b.Float() != b.Float()
	case reflect.Struct:
		for i := range a.NumField() {
			if a.Type().Field(i).IsExported() && !same(a.Field(i), b.Field(i)) {
				return false
			}
		}
		return true
	case reflect.Slice, reflect.Array:
		if a.Len() != b.Len() {
			return false
		}
		for i := range a.Len() {
			if !same(a.Index(i), b.Index(i)) {
				return false
			}
		}
		return true
	case reflect.Pointer, reflect.Interface:
		if a.IsNil() || b.IsNil() {
			return a.IsNil() == b.IsNil()
		}
		return same(a.Elem(), b.Elem())
	case reflect.Func, reflect.Map:
		return true
	}
	return a.Equal(b)
}
