package main

import (
	"manway.example/manway"
	"manway.example/manway/examples/internal/tankinput"
	"manway.example/manway/tank"
)

// output is the balance of one tank.
type output struct {
	tank.Flotation
	shell  tank.Shell
	limit  tank.WaterLimit
	stages []tank.Stage // where the level on arrival was given
}

// compute reckons the balance, the groundwater that it bears, and the steps of
// the work.
func compute(in *input) (output, error) {
	t, faults := tankinput.New(in.spec())
	if len(faults) > 0 {
		in.float(&faults)
		return output{}, faults
	}
	c := in.float(&faults)
	var out output
	var err error
	if out.Flotation, err = t.Float(c); err != nil || len(faults) > 0 {
		return output{}, append(faults, renamed(err)...)
	}
	if out.limit, err = t.WaterLimit(c); err != nil {
		return output{}, renamed(err)
	}
	if out.shell, err = t.ShellWeight(out.Case.Concrete); err != nil {
		return output{}, renamed(err)
	}
	if in.Found != nil {
		stages, err := t.Stages(c, tank.Work{Found: *in.Found, Dug: in.Dug, Left: in.Liquid})
		if err != nil {
			return output{}, renamed(err)
		}
		out.stages = stages[:]
	}
	return out, nil
}

// caseNames are the fields of a case as the record has them.
var caseNames = map[string]string{
	"Soil.Moist": "SoilMoist", "Soil.Saturated": "SoilSaturated", "Concrete.Density": "ConcreteDensity",
	"concrete.Density": "ConcreteDensity", "RiserArea": "RiserDiameters", "Wedge.Slope": "WedgeSlope",
	"Required.Value": "Required", "Groundwater.Depth": "Groundwater", "Tank.Shape": "Shape.Kind",
	"Work.Found": "Found", "Work.Left": "Liquid", "Work.Dug": "Dug",
}

func renamed(err error) manway.InputErrors {
	faults := tankinput.Renamed(err)
	for _, f := range faults {
		if name, ok := caseNames[f.Field]; ok {
			f.Field = name
		}
	}
	return faults
}
