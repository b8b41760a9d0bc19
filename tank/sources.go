package tank

import (
	"slices"

	"manway.example/manway"
)

// Sources of this package beside the shared ones.
var (
	// jones is the source of the volumes of dished heads.
	jones = &manway.Source{ID: "jones-tank-volume", Title: "Calculating Tank Volume; Compute Fluid Volumes in Vertical Tanks", Body: "D. Jones, Chemical Processing", Year: 2003}
	// sanJoaquin1999 is a permit calculation for a hold-down.
	sanJoaquin1999 = &manway.Source{ID: "san-joaquin-1999", Title: "Permit file, tank hold-down calculation", Body: "San Joaquin County, California", Year: 1999}
	// burnett is a county sheet for anchoring tanks.
	burnett = &manway.Source{ID: "burnett-anchoring", Title: "Permit file, tank anchoring sheet", Body: "Burnett County, Wisconsin", Year: 2000}
	// em2100 is the stability manual of the Corps of Engineers.
	em2100 = &manway.Source{ID: "usace-em-2100", Title: "EM 1110-2-2100 Stability Analysis of Concrete Structures", Body: "US Army Corps of Engineers", Year: 2005}
)

// Factors of safety against flotation that are named in texts.
var (
	// SanJoaquinFactor is the minimum of a county's permit calculation.
	SanJoaquinFactor = RequiredFactor{1.2, manway.Citation{Source: sanJoaquin1999, Place: "pages 6 and 8"}}
	// BurnettFactor multiplies the displaced water of a county's sheet.
	BurnettFactor = RequiredFactor{1.5, manway.Citation{Source: burnett, Place: "anchoring sheet"}}
)

// Basis lists where the volumes come from.
func (t *Tank) Basis() []manway.Citation {
	return []manway.Citation{
		{Source: manway.NISTHandbook44, Place: "Appendix C"},
		{Source: jones, Place: "horizontal tanks with dished heads"},
	}
}

// Basis lists where the volumes of the chart come from.
func (c Chart) Basis() []manway.Citation { return new(Tank).Basis() }

// Basis lists where weights come from.
func (s Shell) Basis() []manway.Citation {
	return []manway.Citation{{Source: manway.Practice, Place: "volume of the parts times density"}}
}

// Basis lists where the flotation balance comes from.
func (f Flotation) Basis() []manway.Citation {
	list := []manway.Citation{f.Required.Source, {Source: em2100, Place: "chapter 3"}}
	if f.Required.Source.Source != sanJoaquin1999 {
		list = append(list, SanJoaquinFactor.Source)
	}
	return list
}

// Basis lists where the flotation balance comes from that the level is found by.
func (w WaterLimit) Basis() []manway.Citation {
	return []manway.Citation{{Source: em2100, Place: "chapter 3"}}
}

// Basis lists the texts of the rules that were asked.
func (j Judgement) Basis() []manway.Citation {
	var list []manway.Citation
	for _, c := range j.Checks {
		if !slices.Contains(list, c.Source) {
			list = append(list, c.Source)
		}
	}
	return list
}

// Basis is the standard of the test.
func (r LeakResult) Basis() []manway.Citation { return []manway.Citation{r.Check.Source} }
