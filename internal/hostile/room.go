package hostile

import (
	"fmt"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"
)

// Room is what a package exports.
type Room struct {
	// Funcs are its exported functions.
	Funcs []any
	// Seeds are values that are accepted, one or several of a type. Results
	// become such values too, and each method of the types of the room that are
	// met on the way is called.
	Seeds []any
	// Calls are functions and method expressions whose arguments must suit each
	// other, each followed by its arguments.
	Calls [][]any
	// Errors are those that name no field, because none is at fault.
	Errors []error
	// Sealed are values of types that only a function makes and nobody is meant
	// to change; they are called as they are, or zero.
	Sealed []any
	// Slow names the calls that take milliseconds; they get a fiftieth of the
	// cases.
	Slow []string
	// Apart names the functions that are called in another way than by their
	// name, each with that way.
	Apart map[string]string
	// Refuse names the calls that nearly always refuse what they get, each with
	// the reason.
	Refuse map[string]string
}

// Test makes as many calls of each calculation, the same at every run. It fails
// where an exported function or method of the package that stands in the folder
// of the test is not among them, and where fewer than one call in twenty was
// taken: then the formulas were not reached. Short tests make a tenth of the
// calls, for the race detector, under which each takes ten times as long.
func (r Room) Test(t *testing.T, cases int) {
	x := r.open()
	exported, err := exported(".")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range exported {
		if !slices.ContainsFunc(x.calls, func(c call) bool { return c.name == name }) && r.Apart[name] == "" {
			t.Errorf("%s is not called: want it in Funcs, or a value of its type in Seeds", name)
		}
	}
	if testing.Short() {
		cases /= 10
	}
	for i := range x.calls {
		c := &x.calls[i]
		n, taken, begun := cases, 0, time.Now()
		switch {
		case slices.Contains(r.Slow, c.name):
			n = max(cases/50, 10)
		case !c.refuses():
			n = cases / 10 // nothing is asked of it but not to panic
		}
		for k := range n {
			fault, ok := x.try(c, x.arguments(c, &choice{drawn(k)}), k%8 == 0)
			if fault != "" {
				t.Errorf("%s, case %d: %s", c.name, k, fault)
				break
			}
			if ok {
				taken++
			}
		}
		if os.Getenv("HOSTILE") != "" {
			fmt.Printf("%-40s %5d cases %5.1f %% %8.0f us\n", c.name, n, 100*float64(taken)/float64(n), float64(time.Since(begun).Microseconds())/float64(n))
		}
		if testing.Short() {
			continue
		}
		if fault := x.sweep(c, max(n/300, 1)); fault != "" {
			t.Errorf("%s, one place at a time: %s", c.name, fault)
		}
		if few := taken*20 < n; few != (r.Refuse[c.name] != "") {
			t.Errorf("%s: %d of %d calls were taken: want one in twenty, or a reason in Refuse", c.name, taken, n)
		}
	}
}

// Fuzz lets a fuzzer choose the calculation and what is spoiled.
func (r Room) Fuzz(f *testing.F) {
	x := r.open()
	for i := range x.calls {
		f.Add(uint16(i), drawn(i)) // each calculation once
	}
	f.Fuzz(func(t *testing.T, which uint16, data []byte) {
		c := &x.calls[int(which)%len(x.calls)]
		if fault, _ := x.try(c, x.arguments(c, &choice{data}), len(data) > 0 && data[0]%8 == 0); fault != "" {
			t.Errorf("%s: %s", c.name, fault)
		}
	})
}

// room is a Room with what was found out about it.
type room struct {
	module, pkg string
	seeds       map[reflect.Type][]reflect.Value
	types       []reflect.Type // of the seeds, in the order in which they were met
	calls       []call
	errors      []error
	sealed      []reflect.Type
}

// mostSeeds is how many values of a type are kept of those that were met.
const mostSeeds = 12

func (r Room) open() *room {
	x := &room{seeds: map[reflect.Type][]reflect.Value{}, errors: r.Errors}
	for _, f := range r.Funcs {
		x.add(call{name: nameOf(f), fn: reflect.ValueOf(f)})
	}
	for _, list := range r.Calls {
		args := make([]reflect.Value, len(list)-1)
		for i, a := range list[1:] {
			args[i] = reflect.New(reflect.TypeOf(list[0]).In(i)).Elem()
			args[i].Set(reflect.ValueOf(a))
		}
		x.add(call{name: nameOf(list[0]), fn: reflect.ValueOf(list[0]), args: [][]reflect.Value{args}, method: strings.Contains(nameOf(list[0]), ".")})
	}
	for _, s := range r.Sealed {
		x.sealed = append(x.sealed, reflect.TypeOf(s))
	}
	x.pkg = packageOf(x.calls[0].fn)
	x.module = strings.Join(strings.Split(x.pkg, "/")[:2], "/")
	for _, s := range r.Seeds {
		v := reflect.ValueOf(s)
		x.meet(v, 0)
		if v.Type().PkgPath() != x.pkg {
			x.seeds[v.Type()] = append(x.seeds[v.Type()], v)
		}
	}
	for i := 0; i < len(x.calls); i++ { // while results bring new types
		tries := 24
		if slices.Contains(r.Slow, x.calls[i].name) {
			tries = 3
		}
		for k := range tries {
			for _, v := range x.plainly(&x.calls[i], drawn(k)) {
				x.meet(v, 0)
			}
		}
	}
	return x
}

func (r *room) add(c call) {
	for i := range r.calls {
		if r.calls[i].name == c.name {
			r.calls[i].args = append(r.calls[i].args, c.args...)
			return
		}
	}
	r.calls = append(r.calls, c)
}

// meet keeps v and what is in it as values to call with, and adds the methods of
// their types.
func (r *room) meet(v reflect.Value, depth int) {
	if !v.IsValid() || depth > 8 {
		return
	}
	t := v.Type()
	switch v.Kind() {
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			r.meet(v.Elem(), depth+1)
		}
		return
	case reflect.Struct:
		for i := range v.NumField() {
			if t.Field(i).IsExported() {
				r.meet(v.Field(i), depth+1)
			}
		}
	case reflect.Slice, reflect.Array:
		for i := range min(v.Len(), mostSeeds) {
			r.meet(v.Index(i), depth+1)
		}
	}
	if t.PkgPath() != r.pkg || len(r.seeds[t]) == mostSeeds {
		return
	}
	if len(r.seeds[t]) == 0 {
		r.types = append(r.types, t)
		r.addMethods(t)
	}
	if !slices.ContainsFunc(r.seeds[t], func(s reflect.Value) bool { return same(s, v) }) {
		r.seeds[t] = append(r.seeds[t], clone(v))
	}
}

func (r *room) addMethods(t reflect.Type) {
	p := reflect.PointerTo(t)
	for i := range p.NumMethod() {
		m := p.Method(i)
		if byValue, ok := t.MethodByName(m.Name); ok {
			m = byValue
		}
		r.add(call{name: t.Name() + "." + m.Name, fn: m.Func, method: true})
	}
}
