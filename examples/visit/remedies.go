package visit

import (
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"manway.example/manway"
	"manway.example/manway/cost"
	"manway.example/manway/lid"
	"manway.example/manway/riser"
	"manway.example/manway/tank"
)

// OptionsAnswer is the price of every remedy and the comparison of those that
// deal with the riser, one entry an access.
type OptionsAnswer struct {
	Accesses []AccessOptions
	PumpOut  cost.Estimate // of this visit's pump-out
	Currency cost.Currency
	HasBook  bool // there is a price book
	Invented bool // it calls its prices invented
}

// AccessOptions is the priced remedies of one access.
type AccessOptions struct {
	Priced     []PricedRemedy
	Comparison cost.Comparison
	Compared   bool // at least two remedies of the riser could be priced
}

// PricedRemedy is a remedy with its estimate.
type PricedRemedy struct {
	riser.Remedy
	Estimate cost.Estimate
}

// forRiser are the remedies that are alternatives for the riser and its joint,
// from the cheap patch to the permanent riser.
var forRiser = []riser.RemedyKind{
	riser.ResealFromGrade, riser.PatchFromInside, riser.OutsideCollar, riser.RebedRing, riser.ReplaceConcrete, riser.ReplacePlastic,
}

// judge turns what was seen at each access into defects and remedies.
func (v *Visit) judge() error {
	for i, a := range v.Survey.Accesses {
		r := &v.Accesses[i]
		var err error
		condition := v.condition(a, *r)
		if r.Defects, err = riser.Defects(condition); err != nil {
			return under("Accesses", i, err)
		}
		r.NotSeen = condition.NotSeen()
		site := v.site(a, *r)
		if site.StandingMass, err = r.standing(a); err != nil {
			return under("Accesses", i, err)
		}
		if r.Remedies, err = riser.Remedies(condition, site); err != nil {
			return under("Accesses", i, err)
		}
	}
	return nil
}

// condition is the access in the riser's own terms.
func (v *Visit) condition(a Access, r AccessAnswer) riser.Condition {
	seen := a.Seen
	seen.Spall, seen.SteelExposed = a.tryRiser(seen.Spall, seen.SteelExposed)
	c := riser.Condition{
		Units: v.Survey.Units, Missing: manway.No, Size: manway.Read(a.Opening), CoverDrops: seen.Drops, CoverCracked: seen.LidCracked,
		CoverDepth: manway.Read(a.Cover - a.Riser.Height), Fastened: seen.Fastened, Guard: seen.Guard, Handle: seen.Handle,
		RimGap: seen.RimGap, Bearing: seen.Bearing, JointSealed: a.Riser.Sealed, JointGap: seen.Gap, Roots: seen.Roots,
		WaterStain: seen.WaterStain, Odour: seen.Odour, SpallDepth: seen.Spall, Thickness: seen.Sound,
		SteelExposed: seen.SteelExposed, CrackWidth: seen.Crack, Settled: seen.Settled,
	}
	if r.HasLid {
		c.CoverPresent = manway.Yes
		c.CoverMass = r.Moves.Weight.Heaviest
		c.CoverStrength = worst(r.Strength.Checks)
		crew := lid.Crew{People: v.Survey.Crew.People, Limit: v.Survey.Crew.Limit}
		c.CrewLimit, _ = crew.Together()
		if r.Strength.Falls == manway.Yes {
			c.CoverDrops = manway.Yes
		}
	}
	c.RoofSeen = len(v.Roof.Loadings) > 0
	c.RoofStrength = worst(v.personOnRoof())
	return c
}

// worst is the gravest outcome of some checks.
func worst(checks []manway.Check) manway.Status {
	grave := [...]manway.Status{manway.Fail, manway.NotPermitted, manway.NotShown, manway.NotJudged, manway.Pass}
	for _, s := range grave {
		if slices.ContainsFunc(checks, func(c manway.Check) bool { return c.Status == s }) {
			return s
		}
	}
	return manway.NotJudged
}

// site is what the scope of a remedy is derived from.
func (v *Visit) site(a Access, r AccessAnswer) riser.Site {
	s := riser.Site{
		Units: v.Survey.Units, Port: a.Opening, Bore: r.TakenBore, Outside: r.Joint.Outside, JointClosed: usualJoint,
		JointDown: manway.Read(a.Cover), Standing: a.Riser.Rings, Height: r.Reach.Height,
		Water: v.Survey.Ground.Groundwater, Liquid: v.Pump.Remove, Emptying: manway.No,
	}
	if v.Float.Leave == tank.LeaveNone {
		s.Emptying = manway.Unknown // floats not, but the walls were not judged
	}
	if liquid, known := v.Tank.AtOutlet(); known {
		s.TankVolume = liquid
	}
	if len(r.Stacks.Best) > 0 {
		s.Stack = r.Stacks.Best[0]
	}
	s.Pit = r.Dig.Pit
	if a.Seen.Spall.Taken && a.Seen.Spall.Length > 0 && a.Riser.Height > 0 {
		s.SpallDepth = a.Seen.Spall.Length
		s.SpallArea = r.Joint.InsideLength().Times(a.Riser.Height)
	}
	return s
}

// rate is the real discount rate of the survey, 3 % where none is given.
func (m Money) rate() (cost.Rate, error) {
	if m.Rate == "" {
		return 0.03, nil
	}
	d, err := decimal.NewFromString(m.Rate)
	if err != nil || len(m.Rate) > 12 || d.IsNegative() || d.GreaterThan(decimal.New(25, -2)) {
		return 0, fmt.Errorf("rate %.20q", m.Rate)
	}
	return cost.Rate(d.InexactFloat64()), nil
}

// horizon is the time over which remedies are compared, 20 years where none is
// given.
func (v *Visit) horizon(currency cost.Currency) cost.Horizon {
	rate, _ := v.Survey.Money.rate() // validated with the survey
	years := v.Survey.Money.Years
	if years == 0 {
		years = 20
	}
	return cost.Horizon{Years: years, Rate: rate, Currency: currency}
}

// price prices every remedy by the book and compares those of the riser.
func (v *Visit) price(book cost.Book) error {
	if err := v.estimates(book); err != nil {
		return err
	}
	for i := range v.Options.Accesses {
		if err := v.compare(&v.Options.Accesses[i]); err != nil {
			return under("Accesses", i, err)
		}
	}
	return nil
}

// estimates prices every remedy by the book.
func (v *Visit) estimates(book cost.Book) error {
	all := book.Prices()
	v.Options.Currency = "USD"
	if v.Options.HasBook = len(all) > 0; v.Options.HasBook {
		v.Options.Currency = all[0].Currency
		v.Options.Invented = slices.ContainsFunc(all, func(p cost.Price) bool { return strings.Contains(p.Note, "invented") })
	}
	if err := v.pricePumpOut(book); err != nil {
		return err
	}
	for i := range v.Accesses {
		options, err := v.priceAccess(v.Accesses[i].Remedies, book)
		if err != nil {
			return under("Accesses", i, err)
		}
		v.Options.Accesses = append(v.Options.Accesses, options)
	}
	return nil
}

// band is what the base price of a pump-out covers: one lid under 1 ft of soil,
// 1,000 gal, 100 ft of hose. Common practice of the trade.
var band = cost.Band{Gallons: 1000 * manway.Gallon, Lids: 1, Cover: 1 * manway.Foot, Hose: 100 * manway.Foot}

// pricePumpOut prices the pump-out of this visit.
func (v *Visit) pricePumpOut(book cost.Book) error {
	p := cost.PumpOut{Gallons: v.Pump.Remove, Loads: v.Pump.Loads.Loads, Disposal: v.Pump.Remove > 0, Hose: v.Pump.Hose.Length}
	for _, a := range v.Survey.Accesses {
		if a.Opened == manway.Yes {
			p.Covers = append(p.Covers, max(a.Cover-a.Riser.Height, 0))
		}
	}
	lines, err := p.Lines(band)
	if err != nil {
		return err
	}
	v.Options.PumpOut, err = v.estimate("Pump-out", lines, book)
	return err
}

// estimate prices lines on the day of the visit, valid for a month.
func (v *Visit) estimate(title string, lines []cost.Line, book cost.Book) (cost.Estimate, error) {
	return cost.Job{
		Title: title, Lines: cost.Merge(lines), Book: book, On: v.Survey.Date,
		Terms: cost.Terms{Currency: v.Options.Currency, ValidDays: 30},
	}.Estimate()
}

func (v *Visit) priceAccess(remedies []riser.Remedy, book cost.Book) (AccessOptions, error) {
	var out AccessOptions
	for _, r := range remedies {
		if wanted := v.Survey.Money.Remedies; len(wanted) > 0 && !slices.Contains(wanted, r.Kind) {
			continue
		}
		lines, err := cost.Takeoff(r.Scope)
		if err != nil {
			return out, err
		}
		estimate, err := v.estimate(r.Title, lines, book)
		if err != nil {
			return out, err
		}
		out.Priced = append(out.Priced, PricedRemedy{r, estimate})
	}
	return out, nil
}

// compare sets the remedies of the riser that are priced whole side by side over
// the years.
func (v *Visit) compare(out *AccessOptions) error {
	var options []cost.Option
	for _, p := range out.Priced {
		if slices.Contains(forRiser, p.Kind) && p.RuledOut == "" && len(p.Unscoped) == 0 && p.Estimate.Complete && p.Life.Low > 0 {
			options = append(options, cost.Option{
				ID: string(p.Kind), Title: p.Title, First: p.Estimate.Total,
				Life: cost.Lives{Good: p.Life.High.In(manway.Year), Usual: p.Life.Usual.In(manway.Year), Bad: p.Life.Low.In(manway.Year)},
			})
		}
	}
	if len(options) < 2 {
		return nil
	}
	var err error
	out.Comparison, err = cost.Compare(options, v.horizon(v.Options.Currency))
	out.Compared = err == nil
	return err
}
