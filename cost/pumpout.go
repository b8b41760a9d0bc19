package cost

import (
	"fmt"
	"math"
	"strconv"

	"manway.example/manway"
	"manway.example/manway/riser"
)

// PumpOut is one visit of the truck as far as its price goes.
type PumpOut struct {
	Gallons      manway.Volume   // pumped and hauled away
	Covers       []manway.Length // soil over each lid that is opened, 0 for a lid at grade
	Hose         manway.Length   // laid out from truck to tank
	Filters      int             // outlet filters cleaned
	Crust        bool            // scum that must be broken up by hand
	AfterHours   bool
	Loads        int // truck loads taken to the disposal site
	Disposal     bool
	DisposalStep manway.Volume // disposal charged by started steps; 0 by the gallon
}

// Band is what the base price of a pump-out covers; what goes beyond is an adder.
type Band struct {
	Gallons manway.Volume
	Lids    int
	Cover   manway.Length // of soil over a lid
	Hose    manway.Length
	Step    manway.Volume // gallons over the band are charged by started steps; 0 by the gallon
}

// Lines is the pump-out as the trade quotes it, base price and adders, each with
// a code of its own: pump-base, pump-over, lid-more, lid-deeper, hose-over,
// filter-clean, crust-break, after-hours, disposal, disposal-load.
//
//	gallons over = gallons - band, in started steps
//	digging      = cover - cover in the base, a line for each lid deeper than that
//
// An adder that is not needed makes no line. Source: common practice of the trade.
func (p PumpOut) Lines(b Band) ([]Line, error) {
	if err := p.validate(b); err != nil {
		return nil, err
	}
	var lines []Line
	add := func(code, description string, class riser.Class, quantity float64, unit Unit, from string) {
		if quantity > 0 {
			lines = append(lines, Line{Code: code, Description: description, Class: class, Quantity: round12(quantity), Unit: unit, From: from, Basis: [3]manway.Citation{practice}})
		}
	}
	add("pump-base", "pump-out, base price", riser.Haulage, 1, "E51", fmt.Sprintf("covers %s, %d lids under %s, %s of hose", b.Gallons, b.Lids, b.Cover, b.Hose))
	over := started(math.Max(float64(p.Gallons-b.Gallons), 0), float64(b.Step))
	add("pump-over", "gallons over the base", riser.Haulage, manway.Volume(over).In(manway.Gallon), "GLL", fmt.Sprintf("%s - %s", p.Gallons, b.Gallons))
	add("lid-more", "further lid opened", riser.Labour, float64(max(len(p.Covers)-b.Lids, 0)), "EA", fmt.Sprintf("%d lids - %d", len(p.Covers), b.Lids))
	for i, c := range p.Covers {
		add("lid-deeper", "lid "+strconv.Itoa(i+1)+" dug up, by depth over the base", riser.Labour, math.Max((c-b.Cover).In(manway.Foot), 0), "FOT", fmt.Sprintf("%s - %s", c, b.Cover))
	}
	add("hose-over", "hose beyond the base", riser.Equipment, math.Max((p.Hose-b.Hose).In(manway.Foot), 0), "FOT", fmt.Sprintf("%s - %s", p.Hose, b.Hose))
	add("filter-clean", "outlet filter cleaned", riser.Labour, float64(p.Filters), "EA", "")
	if p.Crust {
		add("crust-break", "crust broken up", riser.Labour, 1, "E51", "")
	}
	if p.AfterHours {
		add("after-hours", "after hours", riser.Labour, 1, "E51", "")
	}
	if p.Disposal {
		gallons := manway.Volume(started(float64(p.Gallons), float64(p.DisposalStep)))
		add("disposal", "disposal at the treatment works", riser.Fee, gallons.In(manway.Gallon), "GLL", p.Gallons.String())
		add("disposal-load", "gate fee of the treatment works, by load", riser.Fee, float64(p.Loads), "NL", "")
	}
	return lines, nil
}

// started is v in whole steps, the last one started; v where there is no step.
func started(v, step float64) float64 {
	if step == 0 {
		return v
	}
	n, err := manway.Pieces(v, step)
	if err != nil {
		return v
	}
	return float64(n) * step
}

func (p PumpOut) validate(b Band) error {
	const most = 1e5 * manway.Gallon
	const far = 5280 * manway.Foot
	var faults manway.InputErrors
	manway.Within(&faults, "Gallons", p.Gallons, 0, most)
	manway.Within(&faults, "Covers", len(p.Covers), 0, 100)
	for i, c := range p.Covers {
		manway.Within(&faults, indexed("Covers", i), c, 0, 30*manway.Foot)
	}
	manway.Within(&faults, "Hose", p.Hose, 0, far)
	manway.Within(&faults, "Filters", p.Filters, 0, 100)
	manway.Within(&faults, "Loads", p.Loads, 0, 1000)
	for _, s := range [...]struct {
		field string
		step  manway.Volume
	}{{"DisposalStep", p.DisposalStep}, {"Band.Step", b.Step}} {
		if s.step != 0 {
			manway.Within(&faults, s.field, s.step, manway.Gallon/10, most)
		}
	}
	manway.Within(&faults, "Band.Gallons", b.Gallons, 0, most)
	manway.Within(&faults, "Band.Lids", b.Lids, 0, 100)
	manway.Within(&faults, "Band.Cover", b.Cover, 0, 30*manway.Foot)
	manway.Within(&faults, "Band.Hose", b.Hose, 0, far)
	return faults.Err()
}

// Truck is a vacuum truck and its crew, for a pump-out priced by its parts
// instead of by a base price.
type Truck struct {
	Capacity  manway.Volume   // hauled in one load
	Rate      manway.Flow     // pumped on site
	Setup     manway.Duration // on site besides pumping
	RoundTrip manway.Duration // to the disposal site and back, unloading included, for each load
	Crew      int
}

// Lines is the pump-out by its parts: truck hours, labour hours, gallons and
// loads of disposal.
//
//	loads = ceil(gallons / capacity)
//	hours = setup + gallons / rate + loads x round trip
//
// Source: common practice of the trade.
func (t Truck) Lines(gallons manway.Volume) ([]Line, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Gallons", gallons, 0, 1e5*manway.Gallon)
	manway.Within(&faults, "Truck.Capacity", t.Capacity, 50*manway.Gallon, 2e4*manway.Gallon)
	manway.Within(&faults, "Truck.Rate", t.Rate, manway.GallonPerMinute, 2000*manway.GallonPerMinute)
	manway.Within(&faults, "Truck.Setup", t.Setup, 0, manway.Day)
	manway.Within(&faults, "Truck.RoundTrip", t.RoundTrip, 0, manway.Day)
	manway.Within(&faults, "Truck.Crew", t.Crew, 1, 20)
	if err := faults.Err(); err != nil {
		return nil, err
	}
	loads, err := manway.Pieces(gallons, t.Capacity)
	if err != nil {
		return nil, err
	}
	pumping := manway.Duration(float64(gallons) / float64(t.Rate))
	hours := round12((t.Setup + pumping).In(manway.Hour) + float64(loads)*t.RoundTrip.In(manway.Hour))
	from := fmt.Sprintf("%s set-up + %s pumping + %d loads x %s", t.Setup, pumping, loads, t.RoundTrip)
	basis := [3]manway.Citation{practice}
	return []Line{
		{Code: "truck", Description: "vacuum truck", Class: riser.Equipment, Quantity: hours, Unit: "HUR", From: from, Basis: basis},
		{Code: "truck-crew", Description: "crew of the truck", Class: riser.Labour, Quantity: round12(hours * float64(t.Crew)), Unit: "LH", Crew: t.Crew, From: from, Basis: basis},
		{Code: "disposal", Description: "disposal at the treatment works", Class: riser.Fee, Quantity: round12(gallons.In(manway.Gallon)), Unit: "GLL", From: gallons.String(), Basis: basis},
		{Code: "disposal-load", Description: "gate fee of the treatment works, by load", Class: riser.Fee, Quantity: float64(loads), Unit: "NL", From: fmt.Sprintf("%s / %s, rounded up", gallons, t.Capacity), Basis: basis},
	}, nil
}
