package hydraulics

import (
	"strconv"

	"manway.example/manway"
	"manway.example/manway/tank"
)

// Opening says how far a compartment could be opened. The zero value is not
// opened: nothing is known of what is in it, and nothing is taken from the
// compartment beside it.
type Opening uint8

// The states of a compartment.
const (
	NotOpened    Opening = iota
	CleanoutOnly         // a small cleanout: for looking and rodding, not for pumping
	Opened               // through its own manway
)

var openings = [...]string{"not opened", "cleanout only", "opened"}

// String is the state in words.
func (o Opening) String() string { return manway.Word(openings[:], o) }

// MarshalText is the same as String.
func (o Opening) MarshalText() ([]byte, error) { return []byte(o.String()), nil }

// UnmarshalText accepts the words of String.
func (o *Opening) UnmarshalText(text []byte) error {
	return manway.ReadWord(o, "opening", openings[:], text)
}

// Compartment is one compartment as it was found. Shape is a compartment of a
// [tank.Tank]; Level is the surface above the floor. It may stand in a riser up
// to 20 ft above the roof, but liquid there is not counted.
type Compartment struct {
	Name   string
	Shape  *tank.Compartment
	State  Opening
	Reason string // why it was not opened, for the ticket
	Level  manway.Reading
	Sludge manway.Reading // thickness on the floor
	Scum   manway.Reading // thickness, the surface being its top
}

// Split is the gallons of one compartment in three layers. Where a layer was
// not measured only the total is known.
type Split struct {
	Known               bool // Total is known
	LayersKnown         bool // Scum, Clear and Sludge are known
	Total               manway.Volume
	Scum, Clear, Sludge manway.Volume
}

// Basis lists the source of the gallons: the shape of the compartment.
func (Split) Basis() []manway.Citation { return new(tank.Tank).Basis() }

// Plus is both splits together; what is not known in one is not known in the
// sum.
func (s Split) Plus(o Split) Split {
	return Split{
		Known: s.Known && o.Known, LayersKnown: s.LayersKnown && o.LayersKnown,
		Total: s.Total + o.Total, Scum: s.Scum + o.Scum, Clear: s.Clear + o.Clear, Sludge: s.Sludge + o.Sludge,
	}
}

// Layers is the gallons of a compartment by its real shape, with the surface
// at a level:
//
//	sludge = V(sludge)   scum = V(level) - V(level - scum)   clear = the rest
//
// Errors: as [Compartment.Validate]; layers that are thicker than the level.
//
// Source: geometry, by [tank.Compartment.Volume].
func (c Compartment) Layers(level manway.Length) (Split, error) {
	var faults manway.InputErrors
	c.validate(&faults, level)
	if err := faults.Err(); err != nil {
		return Split{}, err
	}
	return c.layers(level), nil
}

// layers is Layers for checked input.
func (c Compartment) layers(level manway.Length) Split {
	total, _ := c.Shape.Volume(level)
	s := Split{Known: true, Total: total}
	if !c.Sludge.Taken || !c.Scum.Taken {
		return s
	}
	s.LayersKnown = true
	s.Sludge, _ = c.Shape.Volume(min(c.Sludge.Length, level))
	under, _ := c.Shape.Volume(max(level-c.Scum.Length, 0))
	s.Scum = total - under
	s.Clear = max(under-s.Sludge, 0)
	return s
}

// height is the inside height of a compartment.
func (c Compartment) height() manway.Length {
	h, _ := c.Shape.Depth(c.Shape.Full())
	return h
}

// validate adds the faults of c with its surface at a level.
func (c Compartment) validate(faults *manway.InputErrors, level manway.Length) {
	if c.State > Opened {
		faults.Add("State", c.State.String(), "not opened, cleanout only or opened")
	}
	if c.Shape == nil || !(c.Shape.Full() > 0) {
		faults.Add("Shape", "none", "a compartment of a tank")
		return
	}
	height := c.height()
	manway.Within(faults, "Level", level, 0, height)
	c.Level.Within(faults, "Level", 0, height+20*manway.Foot)
	if c.State == NotOpened && (c.Level.Taken || c.Sludge.Taken || c.Scum.Taken) {
		faults.Add("State", c.State.String(), "opened or cleanout only where something was read in it")
	}
	top := max(level, min(c.Level.Length, height))
	c.Sludge.Within(faults, "Sludge", 0, top)
	c.Scum.Within(faults, "Scum", 0, top)
	if c.Sludge.Taken && c.Scum.Taken && c.Sludge.Length+c.Scum.Length > top*(1+1e-9) {
		faults.Add("Scum", c.Scum.Length.String(), "sludge and scum together at most the depth of "+top.String())
	}
}

// indexed is the path of one element of a list.
func indexed(field string, i int) string { return field + "[" + strconv.Itoa(i) + "]" }
