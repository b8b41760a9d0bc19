package cost

import "manway.example/manway"

// Swell is what digging makes of the volume of one kind of ground.
type Swell struct {
	Ground  string
	Percent float64 // loose over bank, less 1
	Basis   manway.Citation
}

var swells = [...]Swell{
	{"clay", 40, swellTable}, {"clay and gravel", 40, swellTable}, {"loam", 25, swellTable}, {"gravel", 12, swellTable},
	{"sand", 12, swellTable}, {"hardpan", 50, swellTable}, {"blasted rock", 65, swellTable},
	{"dense clay", 30, manway.Citation{Source: buildingEstimating, Place: "Ex. 9-2"}},
}

var swellTable = manway.Citation{Source: swellOfSoils, Place: "swell of soils"}

// Swells is the published swell of each kind of ground.
func Swells() []Swell { return append([]Swell(nil), swells[:]...) }

// Soil volumes by unit weight: the same mass in the bank, loose and compacted.
type UnitWeights struct{ Bank, Loose, Compacted manway.Density }

// Conversion is how a bank volume changes.
type Conversion struct {
	SwellPercent     float64 // (bank/loose - 1) 100
	LoadFactor       float64 // loose/bank by weight: bank volume in one loose volume
	ShrinkagePercent float64 // (1 - bank/compacted) 100
	ShrinkageFactor  float64 // bank/compacted: compacted volume from one bank volume
}

// Conversion is the change of volume by unit weights.
//
// Source: FM 5-434, soil volume changes.
func (w UnitWeights) Conversion() (Conversion, error) {
	const least, most = 10 * manway.KilogramPerCubicMetre, 5000 * manway.KilogramPerCubicMetre
	var faults manway.InputErrors
	manway.Within(&faults, "Bank", w.Bank, least, most)
	manway.Within(&faults, "Loose", w.Loose, least, most)
	manway.Within(&faults, "Compacted", w.Compacted, least, most)
	if len(faults) == 0 && w.Loose > w.Bank {
		faults.Add("Loose", w.Loose.String(), "at most the weight in the bank, "+w.Bank.String())
	}
	if err := faults.Err(); err != nil {
		return Conversion{}, err
	}
	bank, loose, compacted := float64(w.Bank), float64(w.Loose), float64(w.Compacted)
	return Conversion{(bank/loose - 1) * 100, loose / bank, (1 - bank/compacted) * 100, bank / compacted}, nil
}

// Haul is spoil to be taken away.
type Haul struct {
	Bank         manway.Volume
	SwellPercent float64
	Truck        manway.Volume // loose volume of one load
}

// Loads is the loose volume and the whole truck loads:
//
//	loose = bank (1 + swell), loads = ceil(loose / truck)
//
// Volumes up to 1e6 m3, swell 0 to 100 %, a load of 10 L to 1,000 m3.
//
// Source: Dagostino and Peterson, Ex. 9-2.
func (h Haul) Loads() (loose manway.Volume, loads int, err error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Bank", h.Bank, 0, 1e6*manway.CubicMetre)
	checkFloat(&faults, "SwellPercent", h.SwellPercent, 0, 100)
	manway.Within(&faults, "Truck", h.Truck, 0.01*manway.CubicMetre, 1000*manway.CubicMetre)
	if err := faults.Err(); err != nil {
		return 0, 0, err
	}
	loose = manway.Volume(float64(h.Bank) * (1 + h.SwellPercent/100))
	loads, err = manway.Pieces(loose, h.Truck)
	return loose, loads, err
}

// SlopedPit is a pit with sides sloped alike all round.
type SlopedPit struct {
	BottomWidth, BottomLength manway.Length
	TopWidth, TopLength       manway.Length
	Depth                     manway.Length
}

// PitVolumes is the volume of a pit by three rules. Prismoidal is exact; the
// other two are what estimating books use.
type PitVolumes struct {
	Prismoidal     manway.Volume // d/6 (ab + AB + (a+A)(b+B))
	AverageSides   manway.Volume // d (a+A)/2 (b+B)/2, never above the exact volume
	AverageEndArea manway.Volume // d (ab + AB)/2, never below it
}

// Volumes is the volume of the pit by each rule, for sizes up to 1,000 ft and a
// top no smaller than the bottom.
//
// Source: the prismoidal rule of geometry; the other two are common practice.
func (p SlopedPit) Volumes() (PitVolumes, error) {
	var faults manway.InputErrors
	const far = 1000 * manway.Foot
	manway.Within(&faults, "BottomWidth", p.BottomWidth, 0, far)
	manway.Within(&faults, "BottomLength", p.BottomLength, 0, far)
	manway.Within(&faults, "TopWidth", p.TopWidth, p.BottomWidth, far)
	manway.Within(&faults, "TopLength", p.TopLength, p.BottomLength, far)
	manway.Within(&faults, "Depth", p.Depth, 0, far)
	if err := faults.Err(); err != nil {
		return PitVolumes{}, err
	}
	a, b, d := float64(p.BottomWidth), float64(p.BottomLength), float64(p.Depth)
	top, wide := float64(p.TopWidth), float64(p.TopLength)
	return PitVolumes{
		Prismoidal:     manway.Volume(d / 6 * (a*b + top*wide + (a+top)*(b+wide))),
		AverageSides:   manway.Volume(d * (a + top) / 2 * (b + wide) / 2),
		AverageEndArea: manway.Volume(d * (a*b + top*wide) / 2),
	}, nil
}

// Placed is concrete, mortar, gravel or soil to be ordered: the volume in place,
// what is lost, and what one bag, load or roll of it gives.
type Placed struct {
	Volume       manway.Volume
	WastePercent float64
	Pack         manway.Volume // one bag or load; 0 where it is ordered by volume
}

// Order is the volume with waste, exact, and the whole packs of it:
//
//	needed = volume (1 + waste), packs = ceil(needed / pack)
//
// The number of packs is always rounded up: 21.49 yd3 of concrete is not 21.
// Packs is 0 where Pack is.
//
// Source: Dagostino and Peterson; volumes up to 1e6 m3, waste 0 to 100 %.
func (p Placed) Order() (needed manway.Volume, packs int, err error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Volume", p.Volume, 0, 1e6*manway.CubicMetre)
	checkFloat(&faults, "WastePercent", p.WastePercent, 0, 100)
	if p.Pack != 0 {
		manway.Within(&faults, "Pack", p.Pack, 1e-6*manway.CubicMetre, 1000*manway.CubicMetre)
	}
	if err := faults.Err(); err != nil {
		return 0, 0, err
	}
	needed = manway.Volume(float64(p.Volume) * (1 + p.WastePercent/100))
	if p.Pack > 0 {
		packs, err = manway.Pieces(needed, p.Pack)
	}
	return needed, packs, err
}

// MixVolume is what a dry bagged mix gives in place: 0.0075 ft3 a pound.
//
// Source: the yield of bagged mixes; 60 lb is 0.45 ft3 and 60 bags of it a cubic yard.
func MixVolume(dry manway.Mass) (manway.Volume, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Dry", dry, 0, 1e6*manway.Pound)
	return manway.Volume(dry.In(manway.Pound)*mixPerPound) * manway.CubicFoot, faults.Err()
}

// GroutMix is cement and water by weight and their solid volumes.
type GroutMix struct {
	Cement          manway.Mass
	SpecificGravity float64 // of the cement, 3.15 for portland cement
	Water           manway.Volume
}

// Volume is the absolute volume of the mix:
//
//	V = cement / (specific gravity x weight of water) + water, water at 62.4 lb/ft3
//
// Cement up to 1e6 lb, specific gravity 1 to 5, water up to 1e5 gal. Source: the
// absolute volume method of concrete practice.
func (g GroutMix) Volume() (manway.Volume, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Cement", g.Cement, 0, 1e6*manway.Pound)
	checkFloat(&faults, "SpecificGravity", g.SpecificGravity, 1, 5)
	manway.Within(&faults, "Water", g.Water, 0, 1e5*manway.Gallon)
	if err := faults.Err(); err != nil {
		return 0, err
	}
	const waterWeight = 62.4 // lb/ft3, of concrete practice
	return manway.Volume(g.Cement.In(manway.Pound)/(g.SpecificGravity*waterWeight))*manway.CubicFoot + g.Water, nil
}
