package riser

import (
	"manway.example/manway"
	"manway.example/manway/tank"
)

// Opened is the state of a tank while a pit stands open over it.
type Opened struct {
	Before tank.Flotation // with its soil
	During tank.Flotation // with the soil of the pit gone
	Walls  tank.WallStrength
	// Emptying says whether the tank may be pumped dry meanwhile: Yes where it has
	// the required factor empty and the walls pass every check, No where one of
	// them does not, Unknown where the walls were not judged.
	Emptying manway.Answer
	Cautions manway.Cautions
}

// While is what an open pit does to the tank below it: the flotation of the tank
// as the case says, with all of the pit's bank volume taken as soil that lay on
// the tank, and the screening of its walls. Groundwater is that of the pit. It
// fails where one of the two cases does.
//
// Source: those of tank.Float and tank.Wall.
func (d Dig) While(t *tank.Tank, f tank.FloatCase, w tank.WallCase) (Opened, error) {
	if t == nil {
		return Opened{}, manway.InputErrors{{Field: "Tank", Value: "nil", Want: "a tank made by tank.New"}}
	}
	var faults manway.InputErrors
	var o Opened
	var err error
	f.Groundwater, w.Groundwater = d.Pit.Water, d.Pit.Water
	o.Before, err = t.Float(f)
	faults.Under("Float", err)
	f.Dug += d.Bank
	o.During, err = t.Float(f)
	if len(faults) == 0 {
		faults.Under("Float", err)
	}
	o.Walls, err = t.Wall(w)
	faults.Under("Wall", err)
	if len(faults) > 0 {
		return Opened{}, faults
	}
	o.Emptying = emptying(o.During, o.Walls)
	o.Cautions = d.Cautions | o.During.Cautions | manway.Screening
	if o.Emptying != manway.Yes {
		o.Cautions |= manway.DoNotEmpty
	}
	return o, nil
}

func emptying(f tank.Flotation, w tank.WallStrength) manway.Answer {
	if f.Leave != tank.LeaveNone {
		return manway.No
	}
	answer, ran := manway.Yes, false
	for _, c := range w.Checks() {
		switch c.Status {
		case manway.Fail:
			return manway.No
		case manway.Pass:
			ran = true
		default:
			answer = manway.Unknown
		}
	}
	if !ran {
		return manway.Unknown
	}
	return answer
}
