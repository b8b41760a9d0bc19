package main

import (
	"strings"

	"manway.example/manway"
)

// keep adds the faults of err under the names of the record, and reports
// whether there are any. A fault that stands already is not added twice.
func (o *output) keep(faults *manway.InputErrors, err error, prefix string) bool {
	if err == nil {
		return false
	}
	list, ok := err.(manway.InputErrors)
	if !ok {
		list = manway.InputErrors{{Field: "record", Value: err.Error(), Want: "values that can be computed"}}
	}
next:
	for _, f := range list {
		name := fieldName(prefix + f.Field)
		for _, have := range *faults {
			if have.Field == name {
				continue next
			}
		}
		faults.Add(name, f.Value, f.Want)
	}
	return true
}

// fieldName is the name that a field of the calculation has in the record.
func fieldName(path string) string {
	path = strings.NewReplacer("strip.Joint.Inside", "bore", "strip.Joint.Outside", "outside", "strip.Joint.Closed", "joint", "need.Covers", "lids", "need.Gap", "cover", "need.", "", "Condition.", "seen.", "Site.", "site.",
		"Joint.Inside", "bore", "Joint.Outside", "outside", "Joint.Closed", "joint", "Pit.", "pit.", "Wall.Diameter", "bore", "Wall.", "wall.", "light.Outside", "outside", "light.Bore", "bore", "light.Base", "cover", "light.Soil.Moist", "density", "Soil.Moist", "density", "Water.Depth", "groundwater",
		"RoofThickness", "roof", "Span", "outside", "uncover.Diameter", "outside", "uncover.Depth", "cover_down", "Design", "design_flow", "Type", "soil_type", "pit.Ground", "slope", "Ground", "slope", "bead.Joint.", "", "cement.Joint.", "", "cement.Pack.Mass", "cement.bag", "cement.Pack.Yield", "cement.yield").Replace(path)
	switch path { // of riser, pit and leak
	case "Length":
		path = "outside"
	case "Depth":
		path = "cover"
	case "Wall":
		path = "outside"
	}
	var b strings.Builder
	for i, r := range path {
		if r >= 'A' && r <= 'Z' {
			if i > 0 && path[i-1] != '.' && path[i-1] != '_' {
				b.WriteByte('_')
			}
			r += 'a' - 'A'
		}
		b.WriteRune(r)
	}
	return b.String()
}
