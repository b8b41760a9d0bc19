package main

import (
	"fmt"
	"hash/fnv"
	"math"
	"reflect"
	"strconv"
)

// figure is one number of a result with its way to it, as
// "tank.Roof.Loadings[1].Load".
type figure struct {
	path  string
	value float64
}

// figures runs the calculations and lists every real number of their results
// that a user can read.
func figures(table []calculation) ([]figure, error) {
	var list []figure
	for _, c := range table {
		result, err := c.do()
		if err != nil {
			return nil, fmt.Errorf("%s: %w", c.name, err)
		}
		before := len(list)
		list = walk(list, c.name, reflect.ValueOf(result), map[uintptr]bool{})
		if len(list) == before {
			return nil, fmt.Errorf("%s: no number in the result", c.name)
		}
	}
	return list, nil
}

func walk(list []figure, path string, v reflect.Value, above map[uintptr]bool) []figure {
	switch v.Kind() {
	case reflect.Float32, reflect.Float64:
		return append(list, figure{path, v.Float()})
	case reflect.Complex128:
		return append(list, figure{path + ".re", real(v.Complex())}, figure{path + ".im", imag(v.Complex())})
	case reflect.Pointer:
		if v.IsNil() || above[v.Pointer()] {
			return list
		}
		above[v.Pointer()] = true
		list = walk(list, path, v.Elem(), above)
		delete(above, v.Pointer())
	case reflect.Interface:
		if !v.IsNil() {
			return walk(list, path, v.Elem(), above)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if f := v.Type().Field(i); f.IsExported() {
				list = walk(list, path+"."+f.Name, v.Field(i), above)
			}
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			list = walk(list, path+"["+strconv.Itoa(i)+"]", v.Index(i), above)
		}
	}
	return list
}

// hash is one number for all bits of all figures and their paths.
func hash(list []figure) uint64 {
	h := fnv.New64a()
	for _, f := range list {
		fmt.Fprintf(h, "%s %016x\n", f.path, math.Float64bits(f.value))
	}
	return h.Sum64()
}
