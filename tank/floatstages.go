package tank

import "manway.example/manway"

// Work is what a crew does to a buried tank, in the order of the stages: covers
// off, soil dug away round the riser, pumped.
type Work struct {
	Found manway.Length // liquid on arrival
	Dug   manway.Volume // soil dug away over the tank
	Left  manway.Length // liquid left after pumping
}

// Stage is the tank at one step of the work.
type Stage struct {
	Name string
	Flotation
}

// Stages reckons each step of the work as a case of its own. The case says what
// is there before it begins; its Liquid and Dug are not used.
//
//	as found      covers on, no soil dug, liquid as found
//	covers off    their weight is gone
//	dug           and the soil that was dug away
//	pumped        and the liquid down to what is left
//
// The worst of the four is the one with the lowest factor, usually the last.
//
// Errors: as Float, for each of the levels and the soil.
//
// Source: as Float.
func (t *Tank) Stages(c FloatCase, w Work) ([4]Stage, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Work.Found", w.Found, 0, manway.Length(t.height))
	manway.Within(&faults, "Work.Left", w.Left, 0, manway.Length(t.height))
	manway.Within(&faults, "Work.Dug", w.Dug, 0, mostDug)
	c.Liquid, c.Dug = 0, 0
	if c.validate(&faults, t); len(faults) > 0 {
		return [4]Stage{}, faults
	}
	c.Liquid = w.Found
	stages := [4]Stage{{Name: "as found"}, {Name: "covers off"}, {Name: "dug"}, {Name: "pumped"}}
	for i := range stages {
		switch i {
		case 1:
			c.Lids = 0
		case 2:
			c.Dug = w.Dug
		case 3:
			c.Liquid = w.Left
		}
		f, err := t.Float(c)
		if err != nil {
			return [4]Stage{}, err
		}
		stages[i].Flotation = f
	}
	return stages, nil
}
