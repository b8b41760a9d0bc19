package hostile

import (
	"fmt"
	"path"
	"reflect"
	"runtime"
	"slices"
	"strings"
	"time"
)

// call is one function, or method with its receiver as the first argument.
type call struct {
	name string // Lid.Weigh
	fn   reflect.Value
	args [][]reflect.Value // accepted sets of arguments; none: by their types

	method bool
}

// nameOf is the name of a function in its package.
func nameOf(f any) string {
	name := path.Base(runtime.FuncForPC(reflect.ValueOf(f).Pointer()).Name())
	_, name, _ = strings.Cut(name, ".")
	return strings.NewReplacer("(*", "", ")", "", "[...]", "").Replace(name)
}

func packageOf(f reflect.Value) string {
	name := runtime.FuncForPC(f.Pointer()).Name()
	dir, base := path.Split(name)
	base, _, _ = strings.Cut(base, ".")
	return dir + base
}

// limit is the longest that one call may take.
const limit = time.Second

// try makes one call, or the same twice. It gives what is wrong with it, and
// whether the arguments were taken.
func (r *room) try(c *call, args []reflect.Value, again bool) (fault string, taken bool) {
	before := cloneAll(args)
	defer func() {
		if p := recover(); p != nil {
			stack := make([]byte, 4000)
			fault = fmt.Sprintf("panic: %v\n%s\n%s", p, shown(before), stack[:runtime.Stack(stack, false)])
		}
	}()
	hangs := time.AfterFunc(20*limit, func() { panic(c.name + " does not end:\n" + shown(before)) })
	defer hangs.Stop()
	begun := time.Now()
	out := c.call(args)
	took := time.Since(begun)
	for tries := 0; took > limit && tries < 3; tries++ { // the machine may be busy
		begun = time.Now()
		c.call(cloneAll(before))
		took = min(took, time.Since(begun))
	}
	if took > limit {
		return fmt.Sprintf("takes %v\n%s", took, shown(before)), false
	}
	j := judge{room: r, args: args, ownName: strings.Contains(c.name, "arshal") || len(args) > 0 && args[0].Type().Implements(errorType)}
	for i, a := range args {
		if a.Kind() != reflect.Pointer && !same(a, before[i]) {
			j.fault("arguments", "were changed to %s", shown(args))
		}
	}
	if answers(out) {
		j.results("result", out, 2)
	}
	if again {
		if second := c.call(cloneAll(before)); !alike(out, second) {
			j.fault("result", "differs when it is done again: %s, then %s", shown(out), shown(second))
		}
	}
	if len(j.faults) > 0 {
		return strings.Join(j.faults, "\n") + "\n" + shown(before), false
	}
	return "", !failed(out)
}

func (c *call) call(args []reflect.Value) []reflect.Value {
	if c.fn.Type().IsVariadic() {
		return c.fn.CallSlice(args)
	}
	return c.fn.Call(args)
}

// plainly makes a call with nothing spoiled, and gives its results.
func (r *room) plainly(c *call, data []byte) (out []reflect.Value) {
	defer func() {
		if recover() != nil {
			out = nil // try meets it again
		}
	}()
	if out = c.call(r.accepted(c, &choice{data})); failed(out) {
		return nil
	}
	return out
}

// accepted are arguments of which nothing is spoiled.
func (r *room) accepted(c *call, choose *choice) []reflect.Value {
	if n := len(c.args); n > 0 {
		return cloneAll(c.args[choose.of(n)])
	}
	args := make([]reflect.Value, c.fn.Type().NumIn())
	for i := range args {
		args[i] = r.made(c.fn.Type().In(i), choose, 0)
	}
	if strings.Contains(c.name, ".Unmarshal") {
		args[1].SetBytes(written(args[0], strings.TrimPrefix(c.name[strings.Index(c.name, ".")+1:], "Un")))
	}
	return args
}

// arguments are accepted ones, of which up to three places are spoiled.
func (r *room) arguments(c *call, choose *choice) []reflect.Value {
	args := r.accepted(c, choose)
	total := r.placesOf(c, args)
	for range choose.of(4) {
		r.spoil(c, args, choose.of(total), choose)
	}
	return args
}

// open are the arguments as far as they may be spoiled: a method may ask for a
// receiver.
func (c *call) open(args []reflect.Value) []reflect.Value {
	open := slices.Clone(args)
	if c.method && open[0].Kind() == reflect.Pointer {
		open[0] = open[0].Elem()
	}
	return open
}

func (r *room) placesOf(c *call, args []reflect.Value) int {
	total := 0
	for _, a := range c.open(args) {
		total += r.places(a)
	}
	return total
}

// spoil spoils place number at of the arguments.
func (r *room) spoil(c *call, args []reflect.Value, at int, choose *choice) {
	for _, a := range c.open(args) {
		if r.spoilAt(a, &at, choose) {
			return
		}
	}
}

// written is the text that v gives of itself, by MarshalText or MarshalJSON.
func written(v reflect.Value, method string) []byte {
	m := v.MethodByName("M" + method[1:])
	if !m.IsValid() {
		return []byte("unknown")
	}
	return m.Call(nil)[0].Bytes()
}

// answers reports whether a call says with its last result, an error or a
// bool after others, that the others are an answer. A call that cannot say so may
// give anything for input that is none, but no panic.
func answers(out []reflect.Value) bool {
	n := len(out)
	return n > 0 && (out[n-1].Type() == errorType || n > 1 && out[n-1].Kind() == reflect.Bool && out[n-1].Bool())
}

// refuses reports whether a call can say so.
func (c *call) refuses() bool {
	n := c.fn.Type().NumOut()
	return n > 0 && (c.fn.Type().Out(n-1) == errorType || n > 1 && c.fn.Type().Out(n-1).Kind() == reflect.Bool)
}

func failed(out []reflect.Value) bool {
	return slices.ContainsFunc(out, func(v reflect.Value) bool { return v.Type() == errorType && !v.IsNil() })
}

func alike(a, b []reflect.Value) bool { return slices.EqualFunc(a, b, same) }

func cloneAll(list []reflect.Value) []reflect.Value {
	out := make([]reflect.Value, len(list))
	for i, v := range list {
		out[i] = clone(v)
	}
	return out
}

func shown(list []reflect.Value) string {
	var b strings.Builder
	for _, v := range list {
		if v.Kind() == reflect.Pointer && !v.IsNil() {
			v = v.Elem()
		}
		fmt.Fprintf(&b, "  %.3000s\n", fmt.Sprintf("%#v", v.Interface()))
	}
	return b.String()
}
