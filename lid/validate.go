package lid

import (
	"math"
	"strconv"

	"manway.example/manway"
)

const (
	leastWidth   = 4 * manway.Inch
	mostWidth    = 10 * manway.Foot
	mostLength   = 20 * manway.Foot
	leastThick   = 0.25 * manway.Inch
	mostThick    = 24 * manway.Inch
	mostPieces   = 20
	mostRecesses = 50
)

// Validate returns every fault of l at once as [manway.InputErrors]: a size
// missing, outside its range or not of this shape, an underside wider than
// the top, a loss as deep as the lid, recesses that do not fit.
func (l Lid) Validate() error {
	var faults manway.InputErrors
	within(&faults, "Shape", l.Shape, shapes[:])
	l.validatePlan(&faults)
	manway.Within(&faults, "Thickness", l.Thickness, leastThick, mostThick)
	if l.Shape.stepped() {
		inside(&faults, "Flange", l.Flange, l.Thickness)
	} else {
		absent(&faults, "Flange", l.Flange, l.Shape)
	}
	below(&faults, "Loss", l.Loss, l.Thickness)
	within(&faults, "Material", l.Material, materials[:])
	faults.Under("Concrete", l.Concrete.Validate())
	within(&faults, "Moisture", l.Moisture, moistures[:])
	manway.Within(&faults, "Absorption", l.Absorption, 0, 0.15)
	if l.Measured != 0 {
		manway.Within(&faults, "Measured", l.Measured, 0.5*manway.Pound, 20000*manway.Pound)
	} else if l.Material != OfConcrete {
		faults.Add("Measured", "0", "the weight on a scale or as marked on the cover: a "+l.Material.String()+" lid is not weighed by its size")
	}
	manway.Within(&faults, "Pieces", l.Pieces, 0, mostPieces)
	manway.Within(&faults, "Overburden.Depth", l.Overburden.Depth, 0, 20*manway.Foot)
	faults.Under("Overburden.Soil", l.Overburden.Soil.Validate())
	l.validateRecesses(&faults)
	return faults.Err()
}

// validatePlan checks the sizes in plan.
func (l Lid) validatePlan(faults *manway.InputErrors) {
	if l.Shape.Round() {
		manway.Within(faults, "Diameter", l.Diameter, leastWidth, mostWidth)
		absent(faults, "Length", l.Length, l.Shape)
		absent(faults, "Width", l.Width, l.Shape)
	} else if l.Shape != 0 {
		absent(faults, "Diameter", l.Diameter, l.Shape)
		manway.Within(faults, "Length", l.Length, leastWidth, mostLength)
		manway.Within(faults, "Width", l.Width, leastWidth, mostWidth)
		if l.Width > l.Length {
			faults.Add("Width", l.Width.String(), "at most the Length, "+l.Length.String())
		}
	}
	if l.Shape.Round() && l.Shape.narrows() {
		upTo(faults, "BottomDiameter", l.BottomDiameter, l.Diameter)
	} else {
		absent(faults, "BottomDiameter", l.BottomDiameter, l.Shape)
	}
	if l.Shape == TaperedSlab || l.Shape == SteppedSlab {
		upTo(faults, "BottomLength", l.BottomLength, l.Length)
		upTo(faults, "BottomWidth", l.BottomWidth, l.Width)
	} else {
		absent(faults, "BottomLength", l.BottomLength, l.Shape)
		absent(faults, "BottomWidth", l.BottomWidth, l.Shape)
	}
}

// validateRecesses checks that each recess lies within the lid, and that they
// leave at least half of it.
func (l Lid) validateRecesses(faults *manway.InputErrors) {
	taken := 0.0
	for i, r := range l.Recesses {
		if err := r.within(l); err != nil {
			faults.Under("Recesses["+strconv.Itoa(i)+"]", err)
		}
		taken += r.volume(float64(l.Thickness))
	}
	if len(*faults) == 0 && !(taken <= l.solid()/2) {
		faults.Add("Recesses", manway.Volume(taken).String(), "at most half of the lid's "+manway.Volume(l.solid()).String())
	}
}

// within returns the faults of a recess of lid l. Of a lid of unknown shape no
// size in plan is known for the recess to lie in.
func (r Recess) within(l Lid) error {
	var faults manway.InputErrors
	switch {
	case l.Shape == 0:
	case r.Diameter != 0 && (r.Length != 0 || r.Width != 0):
		faults.Add("Diameter", text(r.Diameter), "0 beside Length and Width, or these 0")
	case r.Diameter != 0 || r.Length == 0 && r.Width == 0:
		inside(&faults, "Diameter", r.Diameter, l.under())
	default:
		inside(&faults, "Length", r.Length, max(l.Diameter, l.Length))
		inside(&faults, "Width", r.Width, l.across())
	}
	below(&faults, "Depth", r.Depth, l.Thickness)
	manway.Within(&faults, "Count", r.Count, 0, mostRecesses)
	return faults.Err()
}

// absent adds a fault where a size is given that the shape does not have.
func absent(faults *manway.InputErrors, field string, v manway.Length, s Shape) {
	if v != 0 && s != 0 {
		faults.Add(field, text(v), "0: a "+s.String()+" has none")
	}
}

// inside adds a fault unless 0 < v < limit.
func inside(faults *manway.InputErrors, field string, v, limit manway.Length) {
	if !(v > 0 && v < limit) {
		faults.Add(field, text(v), "above 0 and below "+bound(limit))
	}
}

// below adds a fault unless 0 <= v < limit.
func below(faults *manway.InputErrors, field string, v, limit manway.Length) {
	if !(v >= 0 && (v < limit || v == 0)) {
		faults.Add(field, text(v), "0 or more and below "+bound(limit))
	}
}

// upTo adds a fault unless 0 < v <= limit.
func upTo(faults *manway.InputErrors, field string, v, limit manway.Length) {
	if !(v > 0 && v <= limit) {
		faults.Add(field, text(v), "above 0 and at most "+bound(limit))
	}
}

// bound is a limit as an error shows it. One that is no number comes from another
// field, which has a fault of its own.
func bound(v manway.Length) string {
	if x := float64(v); math.IsNaN(x) || math.IsInf(x, 0) {
		return "a limit that another field spoils"
	}
	return v.String()
}

// text is v as an error shows it.
func text(v manway.Length) string {
	if x := float64(v); math.IsNaN(x) || math.IsInf(x, 0) {
		return strconv.FormatFloat(x, 'g', -1, 64)
	}
	return v.String()
}
