package record

import "reflect"

// starter gives every record the values that stand in for those it does not
// have: the flags' and their defaults. Lists, maps and pointers are set only
// after the record was read, and only where it has none of its own, so that no
// record is read into what others share.
type starter[In any] struct {
	base   In
	shared []sharedValue
}

type sharedValue struct {
	index []int
	value reflect.Value
}

func newStarter[In any](base In) starter[In] {
	s := starter[In]{base: base}
	if v := reflect.ValueOf(&s.base).Elem(); v.Kind() == reflect.Struct {
		s.take(v, nil)
	}
	return s
}

// take moves the references out of a struct into shared.
func (s *starter[In]) take(v reflect.Value, index []int) {
	for i := range v.NumField() {
		f := v.Field(i)
		at := append(index[:len(index):len(index)], i)
		switch f.Kind() {
		case reflect.Struct:
			s.take(f, at)
		case reflect.Pointer, reflect.Slice, reflect.Map, reflect.Interface:
			if f.CanSet() && !f.IsNil() {
				s.shared = append(s.shared, sharedValue{at, reflect.ValueOf(f.Interface())})
				f.SetZero()
			}
		}
	}
}

func (s *starter[In]) begin(in *In) { *in = s.base }

func (s *starter[In]) finish(in *In) {
	for _, shared := range s.shared {
		if f := reflect.ValueOf(in).Elem().FieldByIndex(shared.index); f.IsNil() {
			f.Set(shared.value)
		}
	}
}
