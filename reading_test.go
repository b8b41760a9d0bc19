package manway

import (
	"encoding/json"
	"strings"
	"testing"
)

func TestReadingReads(t *testing.T) {
	var r Reading
	for text, want := range map[string]Reading{"": {}, "not measured": {}, " not seen ": {}, "unknown": {}, "0 in": Read(0), "1 ft": Read(Foot)} {
		if err := r.UnmarshalText([]byte(text)); err != nil || r != want {
			t.Errorf("%q: %v, %v", text, r, err)
		}
	}
	if err := r.UnmarshalText([]byte("12")); err == nil {
		t.Error("a bare number is a reading")
	}
	if r := Read(Inch); !r.AtLeast(Inch) || r.Below(Inch) || !r.Below(2*Inch) || (Reading{}).AtLeast(0) || (Reading{}).Below(Inch) {
		t.Error("1 in is at least 1 in and below 2 in; what was not taken is neither")
	}
}

// FuzzReading: a reading that is read reads back the same.
func FuzzReading(f *testing.F) {
	f.Add("not seen")
	f.Add(`2 1/2"`)
	f.Add("0 in") // a reading, not the lack of one
	f.Add("2")
	f.Fuzz(func(t *testing.T, text string) {
		var r, again Reading
		if err := r.UnmarshalText([]byte(text)); err != nil {
			if !strings.Contains(err.Error(), "not measured") {
				t.Fatalf("%v: want the words that are accepted", err)
			}
			return
		}
		data, err := json.Marshal(r)
		if err != nil {
			t.Fatal(err)
		}
		if err := json.Unmarshal(data, &again); err != nil || again != r {
			t.Fatalf("%q: %+v, then %+v (%v)", text, r, again, err)
		}
	})
}

func TestWordsReadBack(t *testing.T) {
	for i, want := range []string{"unknown", "no", "yes", "unknown value 3"} {
		var a Answer
		if text, _ := Answer(i).MarshalText(); string(text) != want {
			t.Errorf("%d is written as %q", i, text)
		}
		if err := a.UnmarshalText([]byte(strings.ToUpper(want))); (err == nil) != (i < 3) || err == nil && a != Answer(i) {
			t.Errorf("%q: %v, %v", want, a, err)
		}
		var faults InputErrors
		if Answer(i).Within(&faults, "Asked"); (faults.Err() == nil) != (i < 3) {
			t.Errorf("%d: %v", i, faults)
		}
	}
	a := Yes
	if err := a.UnmarshalText([]byte("not seen")); err != nil || a != Unknown {
		t.Errorf("not seen: %v, %v", a, err)
	}
	// A list that begins with an empty word has a zero value that must be set.
	v := uint8(1)
	err := ReadWord(&v, "shape", []string{"", "round"}, []byte(strings.Repeat("x", 1000)))
	if fault, ok := err.(*InputError); !ok || v != 1 || fault.Field != "shape" || fault.Want != "round" || len(fault.Value) > 2*maxText {
		t.Errorf("%d, %v", v, err)
	}
}
