package lid

import (
	"math"
	"reflect"
	"testing"

	"manway.example/manway"
)

// numbers fails where a float anywhere in v is not finite.
func numbers(t *testing.T, path string, v reflect.Value) {
	t.Helper()
	switch v.Kind() {
	case reflect.Float64:
		if x := v.Float(); math.IsNaN(x) || math.IsInf(x, 0) {
			t.Errorf("%s is %v with a nil error", path, x)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			numbers(t, path+"."+v.Type().Field(i).Name, v.Field(i))
		}
	case reflect.Array, reflect.Slice:
		for i := range v.Len() {
			numbers(t, path, v.Index(i))
		}
	}
}

// FuzzLid gives every calculation about a lid raw numbers: none may panic, and
// none may give a number that is not finite with a nil error.
func FuzzLid(f *testing.F) {
	add := func(shape, fit, state uint8, a, b, c, d, e float64) { f.Add(shape, fit, state, a, b, c, d, e) }
	add(1, 1, 0, 0.6096, 0, 0.0762, 0, 0.5)              // disc on top
	add(2, 3, 1, 0.66, 0.61, 0.1, 0.01, 0.6)             // bevelled plug in its seat
	add(3, 4, 2, 0.7, 0.58, 0.13, 0.05, 0)               // stepped plug
	add(4, 2, 1, 0.9, 0.5, 0.1, 0.09, 0.5)               // slab let in
	add(5, 3, 3, 3, 3, 0.6, 0.59, 3)                     // tapered slab, nearly gone
	add(1, 2, 1, 0.1016, 0, 0.6096, 0, 0.1016)           // deeper than wide
	add(9, 9, 9, math.NaN(), math.Inf(1), -1, 1e308, -0) // nothing of it is valid
	add(1, 1, 1, 1e-320, 1e-320, 1e-320, 1e-320, 1e-320) // below any size
	f.Fuzz(func(t *testing.T, shape, fit, state uint8, a, b, c, d, e float64) {
		l := Lid{Shape: Shape(shape), Thickness: manway.Length(c), Loss: manway.Length(d), Moisture: Moisture(state)}
		switch {
		case l.Shape.Round():
			l.Diameter = manway.Length(a)
			if l.Shape.narrows() {
				l.BottomDiameter = manway.Length(b)
			}
		default:
			l.Length, l.Width = manway.Length(a), manway.Length(b)
			if l.Shape.narrows() {
				l.BottomLength, l.BottomWidth = manway.Length(a*0.9), manway.Length(b*0.9)
			}
		}
		if l.Shape.stepped() {
			l.Flange = manway.Length(c / 3)
		}
		l.Overburden.Depth = manway.Length(e)
		seat := Seat{Fit: Fit(fit), Opening: manway.Length(e), Depth: manway.Length(d), Gap: manway.Length(d), GapKnown: state%2 == 1,
			Friction: Friction{e, e}, Chips: []Chip{{manway.Length(d), manway.Length(e), manway.Length(c)}}}
		if e == 0 {
			seat.Friction = Friction{}
		}
		if r, err := l.Sit(seat); err == nil {
			numbers(t, "Seating", reflect.ValueOf(r))
		}
		if r, err := l.Move(MoveCase{Seat: seat, Bond: manway.Force(e * 100), Edition: Edition(state % 2), HandHeight: manway.Length(a)}); err == nil {
			numbers(t, "Moves", reflect.ValueOf(r))
			if r.OnePerson.Standing == Limited && l.across() > 30*manway.Inch*(1+1e-6) {
				t.Errorf("one person for a lid of %v", l.across())
			}
		}
		if r, err := l.Bend(BendCase{Span: manway.Length(e), Steel: manway.Reinforcement{State: manway.SteelState(state)}}); err == nil {
			numbers(t, "Bending", reflect.ValueOf(r))
			for _, check := range r.Checks {
				if check.Status == manway.Pass {
					t.Errorf("%s passes", check.Name)
				}
			}
		}
		h := Handle{State: HandleState(state), Waist: manway.Length(d), Spacing: manway.Length(e), Embedment: manway.Length(d), Edge: manway.Length(e)}
		if r, err := l.CheckHandle(h); err == nil {
			numbers(t, "HandleCheck", reflect.ValueOf(r))
			if !r.DoNotLift && h.State != HandleSound {
				t.Errorf("%v handle may be lifted on", h.State)
			}
		}
		if r, err := l.CheckGuard(Guard{Opening: manway.Length(e), Depth: manway.Length(d), DepthKnown: true, Locked: manway.Answer(state)}, GuardRules()); err == nil {
			numbers(t, "GuardCheck", reflect.ValueOf(r))
		}
	})
}

// FuzzLift looks for a lift that gets a limit above the load constant, a
// number that is not finite, or a limit without standing.
func FuzzLift(f *testing.F) {
	f.Add(uint8(0), uint8(0), uint8(0), 0.58, 0.38, 0.58, 1.62, 0.0, 0.2, 20.0)  // Example 1
	f.Add(uint8(1), uint8(2), uint8(2), 0.25, 0.75, 0.63, 1.75, 2.35, 15.0, 1.0) // every term at its end
	f.Add(uint8(0), uint8(1), uint8(1), -1.0, math.NaN(), 1e300, 0.0, 9.0, -1.0, math.Inf(1))
	f.Fuzz(func(t *testing.T, edition, grip, spell uint8, ho, vo, hd, vd, turn, rate, load float64) {
		l := Lift{Edition: Edition(edition), Grip: Grip(grip), Spell: Spell(spell), Control: grip%2 == 0,
			Origin:      Hands{manway.Length(ho), manway.Length(vo), manway.Angle(turn)},
			Destination: Hands{manway.Length(hd), manway.Length(vd), 0}, Frequency: rate, Load: manway.Mass(load)}
		r, err := l.Limit()
		if err != nil {
			return
		}
		numbers(t, "LiftLimit", reflect.ValueOf(r))
		if most := constants[l.Edition].load; r.Limit > most || r.Limit < 0 || (r.Standing == Limited) != (r.Limit > 0) {
			t.Errorf("limit %v, standing %v", r.Limit, r.Standing)
		}
	})
}
