package main

import (
	"reflect"
	"slices"
)

// named is a pointer to every field of the struct at p, by its JSON name.
func named(p any) map[string]any {
	v := reflect.ValueOf(p).Elem()
	into := make(map[string]any, v.NumField())
	for i := range v.NumField() {
		into[v.Type().Field(i).Tag.Get("json")] = v.Field(i).Addr().Interface()
	}
	return into
}

// names is the names in order.
func names(into map[string]any) []string {
	list := make([]string, 0, len(into))
	for name := range into {
		list = append(list, name)
	}
	slices.Sort(list)
	return list
}
