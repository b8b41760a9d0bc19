package hydraulics

import "manway.example/manway"

// What the federal rule counts on in septage, and what the rules ask of septage
// that is limed against pathogens and flies, and of the records.
const (
	SeptageNitrogen = 0.0026 * manway.PoundPerGallon // available to a crop

	LimedPH       = 12.0               // or higher, without more lime
	LimedTime     = 30 * manway.Minute // at that pH, read at its start and its end
	PlowedInBy    = 6 * manway.Hour    // where it is spread on top and not limed
	RecordsForYrs = 5                  // years that records are kept
)

// SeptageField is a field on which domestic septage is spread.
type SeptageField struct {
	Area     manway.Area   // that is spread on, 100 ft2 to 10,000 acres
	Nitrogen manway.Mass   // that the crop of the whole field needs in 365 days, less what manure and fertilizer bring; 0 to 1,000 lb an acre
	Spread   manway.Volume // on it in the last 365 days
}

// SeptageRate is what a field takes in 365 days.
type SeptageRate struct {
	Most     manway.Volume // on the whole field
	Depth    manway.Length // the same over the area
	Left     manway.Volume // that may still be spread; 0 where Over
	Over     bool          // more was spread than Most
	Cautions manway.Cautions
}

// Rate is the annual application rate of domestic septage:
//
//	AAR = N/0.0026   gallons an acre in 365 days, N in pounds an acre
//
// on agricultural land, forest or a reclamation site. Septage of trade and
// industry is not domestic septage, and states may allow less.
//
// Errors: an area, nitrogen or volume outside its range.
//
// Source: 40 CFR 503.13(c), as WAC 173-308-270 quotes it.
func (f SeptageField) Rate() (SeptageRate, error) {
	if err := f.Validate(); err != nil {
		return SeptageRate{}, err
	}
	most := manway.Volume(float64(f.Nitrogen) / float64(SeptageNitrogen))
	return SeptageRate{
		Most: most, Depth: manway.Length(float64(most) / float64(f.Area)),
		Left: max(most-f.Spread, 0), Over: f.Spread > most*(1+1e-9),
		Cautions: manway.LocalCode | manway.LicensedWork | manway.Pathogens,
	}, nil
}

// gallonAnAcre is a gallon over an acre as a depth.
const gallonAnAcre = manway.Length(float64(manway.Gallon) / float64(manway.Acre))

// Drive is how far a spreader goes on one load, spreading evenly over a width of
// 1 to 100 ft, so that the field gets its rate in one pass:
//
//	length = load/(width × depth)
//
// Errors: a load of less than 1 or more than 20,000 gal, a width outside its
// range, a field that takes less than a gallon an acre or more than a foot.
//
// Source: WAC 173-308-270, equation (4).
func (r SeptageRate) Drive(load manway.Volume, width manway.Length) (manway.Length, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Load", load, 1*manway.Gallon, 20000*manway.Gallon)
	manway.Within(&faults, "Width", width, 1*manway.Foot, 100*manway.Foot)
	manway.Within(&faults, "Depth", r.Depth, gallonAnAcre, 1*manway.Foot)
	if err := faults.Err(); err != nil {
		return 0, err
	}
	return manway.Length(float64(load) / float64(width) / float64(r.Depth)), nil
}

// Basis lists the sources of the rate.
func (SeptageRate) Basis() []manway.Citation {
	return []manway.Citation{{Source: cfr503, Place: "503.13(c)"}, {Source: wac173308, Place: "equations (3) and (4)"}}
}

// Working is the rate step by step.
func (r SeptageRate) Working(f SeptageField, s manway.System) manway.Working {
	return manway.Working{
		{Symbol: "most", Formula: "nitrogen / 0.0026 lb/gal", Numbers: f.Nitrogen.Text(s) + " / 0.0026 lb/gal", Value: r.Most.Text(s)},
		{Symbol: "left", Formula: "most - spread", Numbers: r.Most.Text(s) + " - " + f.Spread.Text(s), Value: r.Left.Text(s)},
	}
}

// Validate returns the faults of f.
func (f SeptageField) Validate() error {
	var faults manway.InputErrors
	manway.Within(&faults, "Area", f.Area, 100*manway.SquareFoot, 10000*manway.Acre)
	manway.Within(&faults, "Nitrogen", f.Nitrogen, 0, manway.Mass(max(f.Area.In(manway.Acre), 0)*1000)*manway.Pound)
	manway.Within(&faults, "Spread", f.Spread, 0, 1e9*manway.Gallon)
	return faults.Err()
}

// SeptageWait is how long a use of the land waits after septage was spread.
type SeptageWait struct {
	Use    string
	Months int // 0: Days
	Days   int
	Limed  bool // holds for limed septage too
	Source manway.Citation
}

// SeptageWaits lists the waits of the rule. For limed septage those for crops
// hold and those for grazing, turf and people do not.
//
// Source: NR 113.07(3)(d), Wisconsin's wording of 40 CFR 503.32.
func SeptageWaits() []SeptageWait {
	at := func(place string) manway.Citation {
		return manway.Citation{Source: nr113, Place: "113.07(3)(d)" + place}
	}
	return []SeptageWait{
		{Use: "food crops that touch the soil", Months: 14, Limed: true, Source: at("2.a")},
		{Use: "food crops below the surface, septage on top for 4 months", Months: 20, Limed: true, Source: at("2.b")},
		{Use: "food crops below the surface", Months: 38, Limed: true, Source: at("2.c")},
		{Use: "food, feed and fibre crops", Days: 30, Limed: true, Source: at("2.d")},
		{Use: "grazing", Days: 30, Source: at("2.e")},
		{Use: "turf for lawns", Months: 12, Source: at("2.f")},
		{Use: "public access where people often come", Months: 12, Source: at("2.g")},
		{Use: "public access elsewhere", Days: 30, Source: at("2.h")},
	}
}

// Basis is the place of the rule.
func (w SeptageWait) Basis() []manway.Citation { return []manway.Citation{w.Source} }

// Until is the first day on which the use is open again.
//
// Source: as [SeptageWaits].
func (w SeptageWait) Until(spread manway.Date) (manway.Date, error) {
	if err := spread.Validate(); err != nil {
		return manway.Date{}, err
	}
	return spread.AddMonths(w.Months).AddDays(w.Days), nil
}
