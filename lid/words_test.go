package lid

import (
	"encoding"
	"encoding/json"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"manway.example/manway"
)

// roundTrip reads each word of a list into a value and writes it again.
func roundTrip[T interface {
	~uint8
	encoding.TextMarshaler
}, P interface {
	*T
	encoding.TextUnmarshaler
}](t *testing.T, words []string) {
	t.Helper()
	for i, w := range words {
		var v T
		if err := P(&v).UnmarshalText([]byte(w)); err != nil || int(v) != i {
			t.Errorf("%q: %d %v", w, v, err)
		}
		if got, err := v.MarshalText(); err != nil || string(got) != w {
			t.Errorf("%q written as %q %v", w, got, err)
		}
	}
	v := T(1)
	if err := P(&v).UnmarshalText([]byte("no such word")); err == nil || v != 1 {
		t.Errorf("an unknown word was read as %d", v)
	}
	if got, _ := T(200).MarshalText(); string(got) != "unknown value 200" {
		t.Errorf("200 is written as %q", got)
	}
}

func TestWords(t *testing.T) {
	roundTrip[Shape](t, shapes[:])
	roundTrip[Material](t, materials[:])
	roundTrip[Moisture](t, moistures[:])
	roundTrip[Fit](t, fits[:])
	roundTrip[Way](t, ways[:])
	roundTrip[Edition](t, editions[:])
	roundTrip[Grip](t, grips[:])
	roundTrip[Spell](t, spells[:])
	roundTrip[Zone](t, zones[:])
	roundTrip[Exertion](t, exertions[:])
	roundTrip[HandleState](t, handleStates[:])
	roundTrip[AirClass](t, airClasses[:])
	roundTrip[Metal](t, metals[:])
}

// A lid and its case are read from plain JSON.
func TestReadJSON(t *testing.T) {
	var got struct {
		Lid  Lid
		Move MoveCase
	}
	err := json.Unmarshal([]byte(`{"lid":{"shape":"tapered slab","length":"30 in","width":"20 in","bottom_length":"28 in","bottom_width":"18 in",
		"thickness":"4 in","moisture":"soaked","recesses":[{"diameter":"2 in"}],"overburden":{"depth":"6 in"}},
		"move":{"seat":{"fit":"bevel","gapKnown":true},"crew":{"people":2,"limit":"60 lb"},"outside":["kneeling"],"grip":"fair","edition":"metric"}}`), &got)
	if err != nil {
		t.Fatal(err)
	}
	want := Lid{Shape: TaperedSlab, Length: 30 * in, Width: 20 * in, BottomLength: 28 * in, BottomWidth: 18 * in, Thickness: 4 * in,
		Moisture: Soaked, Recesses: []Recess{{Diameter: 2 * in}}, Overburden: Overburden{Depth: 6 * in}}
	move := MoveCase{Seat: Seat{Fit: Bevel, GapKnown: true}, Crew: Crew{2, 60 * manway.Pound}, Outside: Kneeling, Grip: FairGrip, Edition: MetricEdition}
	near := cmp.Comparer(func(a, b manway.Length) bool { return close(float64(a), float64(b), 1e-12) })
	if diff := cmp.Diff(want, got.Lid, near); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
	if diff := cmp.Diff(move, got.Move, near, cmpopts.EquateEmpty()); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

// Every main result says where it comes from, and its working ends in the
// figure that it holds.
func TestWorkingAndBasis(t *testing.T) {
	for name, l := range lids {
		m, err := l.Move(MoveCase{Seat: Seat{Fit: OnTop}})
		if err != nil {
			t.Fatal(name, err)
		}
		b, err := l.Bend(BendCase{})
		if err != nil {
			t.Fatal(name, err)
		}
		for _, c := range []struct {
			what, symbol, want string
			working            manway.Working
		}{
			{"weight", "soaked", m.Weight.Soaked.String(), m.Weight.Working(manway.US)},
			{"moves", "LI", number(m.OnePerson.Index), m.Working(manway.US)},
			{"bending", "M person", b.LiveMoment.String(), b.Working(manway.US)},
		} {
			found := false
			for _, step := range c.working {
				if step.Formula == "" || step.Value == "" {
					t.Errorf("%s %s: step %+v", name, c.what, step)
				}
				found = found || step.Symbol == c.symbol && step.Value == c.want
			}
			if !found {
				t.Errorf("%s %s: no %s = %s in\n%s", name, c.what, c.symbol, c.want, c.working)
			}
		}
	}
	h, _ := lids["disc"].CheckHandle(soundHandle)
	if len(h.Working(manway.SI)) != 5 {
		t.Errorf("handle: %v", h.Working(manway.SI))
	}
	for _, basis := range [][]manway.Citation{Weight{}.Basis(), Moves{}.Basis(), LiftLimit{}.Basis(), Seating{}.Basis(), Bending{}.Basis(), HandleCheck{}.Basis(), GuardCheck{}.Basis(), Attack{}.Basis()} {
		if len(basis) == 0 {
			t.Error("a result without a source")
		}
		for _, c := range basis {
			if c.Source == nil || c.Place == "" {
				t.Errorf("citation %+v", c)
			}
		}
	}
}
