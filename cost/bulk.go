package cost

import "manway.example/manway"

// Bulk is what loose material weighs as it is hauled.
type Bulk struct {
	Name   string
	Weight manway.Density
	Basis  manway.Citation
}

const poundPerCubicYard = manway.Density(manway.Pound) / manway.Density(manway.CubicYard)

var wastePage = manway.Citation{Source: calRecycle, Place: "calculations: volume to weight"}

var bulks = [...]Bulk{
	{"earth, loose and dry", 2100 * poundPerCubicYard, wastePage},
	{"earth, excavated and wet", 3000 * poundPerCubicYard, wastePage},
	{"gravel or crushed stone, loose and dry", 2600 * poundPerCubicYard, wastePage},
	{"sand, loose and dry", 2400 * poundPerCubicYard, wastePage},
	{"stone, graded, loose", 2700 * poundPerCubicYard, wastePage},
	{"broken concrete or asphalt, loose", 2400 * poundPerCubicYard, wastePage},
}

// Bulks is the published weight of each material.
func Bulks() []Bulk { return append([]Bulk(nil), bulks[:]...) }

// Haul is the weight of a loose volume up to 1e6 m3, for haulage that is charged by
// weight.
//
// Source: the weights of a Californian authority for reports of waste.
func (b Bulk) Haul(loose manway.Volume) (manway.Mass, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Weight", b.Weight, 1*manway.PoundPerCubicFoot, 1000*manway.PoundPerCubicFoot)
	manway.Within(&faults, "Loose", loose, 0, 1e6*manway.CubicMetre)
	if err := faults.Err(); err != nil {
		return 0, err
	}
	return loose.Times(b.Weight), nil
}
