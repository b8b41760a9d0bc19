package tank

import "manway.example/manway"

// WaterLimit is how high groundwater may stand in a flotation case.
type WaterLimit struct {
	AnyLevel bool          // even with water at grade the required factor is met
	Depth    manway.Length // below grade, otherwise: at this depth or deeper it is met
}

// WaterLimit finds the depth of groundwater below which the case has its
// required factor, to 1/1000 in on the side of deeper water: the one measurement
// that settles whether a tank may be emptied. The groundwater of the case itself
// is not used.
//
// Errors: as Float.
//
// Source: as Float.
func (t *Tank) WaterLimit(c FloatCase) (WaterLimit, error) {
	c.Groundwater = manway.GroundwaterAt(0)
	b, err := t.buried(&c)
	if err != nil {
		return WaterLimit{}, err
	}
	contents := t.liquid(float64(c.Liquid)) * float64(manway.WaterDensity) * manway.StandardGravity
	holds := func(water float64) bool {
		w := b.at(water)
		return manway.Reached(w.down()+contents, b.c.Required.Value*w.uplift())
	}
	if holds(b.grade) {
		return WaterLimit{AnyLevel: true}, nil
	}
	low, high := 0.0, b.grade
	for high-low > 0.001*float64(manway.Inch) {
		if mid := (low + high) / 2; holds(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	return WaterLimit{Depth: manway.Length(b.grade - low)}, nil
}
