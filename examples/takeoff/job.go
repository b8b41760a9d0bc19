package main

import (
	"slices"
	"strconv"

	"manway.example/manway"
	"manway.example/manway/cost"
	"manway.example/manway/examples/internal/prices"
	"manway.example/manway/riser"
)

// output is a job taken off and, with a book, priced.
type output struct {
	lines    []cost.Line
	priced   bool
	estimate cost.Estimate
	spread   *cost.Spread
}

// compute takes one job off and prices it by the book.
func compute(in *input, book prices.Book) (output, error) {
	lines, err := in.lines()
	if err != nil {
		return output{}, err
	}
	out := output{lines: lines}
	if !book.Given {
		return out, nil
	}
	job, err := in.job(lines)
	if err != nil {
		return output{}, err
	}
	job.Book, out.priced = book.Book, true
	if out.estimate, err = job.Estimate(); err != nil {
		return output{}, err
	}
	if len(in.Ranges) == 0 || !out.estimate.Complete {
		return out, nil
	}
	spread, err := out.estimate.Simulate(cost.Simulation{Draws: in.Draws, Seed: in.Seed})
	out.spread = &spread
	return out, err
}

// lines is everything that is bought for the job.
func (in *input) lines() ([]cost.Line, error) {
	var faults manway.InputErrors
	if len(in.Scope)+len(in.Tasks) == 0 && in.PumpOut == nil {
		faults.Add("Scope", "empty", "items of a scope, tasks or a pump-out")
	}
	scope := make([]riser.Item, len(in.Scope))
	for i, it := range in.Scope {
		var err error
		scope[i], err = it.riser()
		faults.Under("Scope["+strconv.Itoa(i)+"]", err)
	}
	own := make([]cost.Supply, len(in.Supplies))
	for i, s := range in.Supplies {
		own[i] = cost.Supply{Code: s.Code, Buy: s.Buy, Description: s.Description, NetUnit: cost.Unit(s.NetUnit), Unit: cost.Unit(s.Unit), WastePercent: s.WastePercent, Bulking: s.Bulking, Pack: s.Pack, Whole: s.Whole}
	}
	if len(faults) > 0 {
		return nil, faults
	}
	lines, err := cost.Takeoff(scope, own...)
	join(&faults, err)
	for i, t := range in.Tasks {
		l, err := cost.Task{Name: t.Name, Quantity: t.Quantity, Unit: cost.Unit(t.Unit), Crew: t.Crew, Delay: t.Delay}.Line()
		faults.Under("Tasks["+strconv.Itoa(i)+"]", err)
		lines = append(lines, l)
	}
	if !in.Keep {
		lines = cost.Merge(lines)
	}
	pump, err := in.pump()
	join(&faults, err)
	lines = append(lines, pump...)
	in.setRanges(lines, &faults)
	return lines, faults.Err()
}

// riser is the item in the terms of its package; what a code of the module
// means need not be said again.
func (it item) riser() (riser.Item, error) {
	out := riser.Item{Code: it.Code, Description: it.Description, Quantity: it.Quantity, Unit: it.Unit, Crew: it.Crew, Working: it.From}
	codes := riser.ItemCodes()
	i := slices.IndexFunc(codes, func(c riser.ItemCode) bool { return c.Code == it.Code })
	if i >= 0 {
		out.Class = codes[i].Class
		if out.Description == "" {
			out.Description = codes[i].Description
		}
		if out.Unit == "" {
			out.Unit = codes[i].Unit
		}
	}
	var faults manway.InputErrors
	if it.Class != "" {
		class, err := readClass(it.Class)
		join(&faults, err)
		out.Class = class
	} else if i < 0 {
		faults.Add("Class", "none", "material, labour, equipment, haulage, fee or wait, since "+strconv.Quote(it.Code)+" is no code of this module")
	}
	return out, faults.Err()
}

func readClass(text string) (riser.Class, error) {
	for c := riser.Material; c <= riser.Wait; c++ {
		if c.String() == text {
			return c, nil
		}
	}
	return 0, manway.InputErrors{{Field: "Class", Value: strconv.Quote(text), Want: "material, labour, equipment, haulage, fee or wait"}}
}

// pump is the lines of the pump-out, by the truck's hours where a truck is given.
func (in *input) pump() ([]cost.Line, error) {
	if in.PumpOut == nil {
		return nil, nil
	}
	p := in.PumpOut
	if t := in.Truck; t != nil {
		return cost.Truck{Capacity: t.Capacity, Rate: t.Rate, Setup: t.Setup, RoundTrip: t.RoundTrip, Crew: t.Crew}.Lines(p.Gallons)
	}
	lines, err := cost.PumpOut{
		Gallons: p.Gallons, Covers: p.Covers, Hose: p.Hose, Filters: p.Filters, Crust: p.Crust, AfterHours: p.AfterHours,
		Loads: p.Loads, Disposal: p.Disposal, DisposalStep: p.DisposalStep,
	}.Lines(cost.Band{Gallons: in.Band.Gallons, Lids: in.Band.Lids, Cover: in.Band.Cover, Hose: in.Band.Hose, Step: in.Band.Step})
	var faults manway.InputErrors
	if err != nil {
		faults.Under("PumpOut", err)
	}
	return lines, faults.Err()
}

// setRanges puts each range on the lines of its code.
func (in *input) setRanges(lines []cost.Line, faults *manway.InputErrors) {
	for i, r := range in.Ranges {
		found := false
		for k := range lines {
			if lines[k].Code != r.Code {
				continue
			}
			found = true
			if r.Quantity != nil {
				lines[k].Quantities = *r.Quantity
			}
			if r.Price != nil {
				lines[k].Prices = *r.Price
			}
		}
		if !found {
			faults.Add("Ranges["+strconv.Itoa(i)+"].Code", strconv.Quote(r.Code), "the code of a line as it is bought")
		}
	}
}

// job is what is priced, without its book.
func (in *input) job(lines []cost.Line) (cost.Job, error) {
	var faults manway.InputErrors
	t := in.Terms
	out := cost.Terms{
		Currency: t.Currency, Rounding: t.Rounding, OverheadPercent: t.OverheadPercent, ContingencyPercent: t.ContingencyPercent,
		ProfitPercent: t.ProfitPercent, ProfitAs: t.ProfitAs, ProfitOn: t.ProfitOn, Minimum: t.Minimum, ValidDays: t.ValidDays, Exclusions: t.Exclusions,
	}
	for i, tax := range t.Taxes {
		class, err := readClass(tax.Class)
		faults.Under("Terms.Taxes["+strconv.Itoa(i)+"]", err)
		out.Taxes = append(out.Taxes, cost.Tax{Class: class, Percent: tax.Percent, At: tax.At, Rounding: tax.Rounding})
	}
	for _, c := range t.ChangeOrders {
		out.ChangeOrders = append(out.ChangeOrders, cost.ChangeOrder{If: c.If, Work: c.Work, Code: c.Code, Quantity: c.Quantity, Unit: cost.Unit(c.Unit)})
	}
	on := usualOn
	if in.On != nil {
		on = *in.On
	} else {
		out.ValidDays = 0 // days from no day
	}
	return cost.Job{Title: in.Title, Lines: lines, On: on, Terms: out}, faults.Err()
}

// join appends the faults of err as they are.
func join(faults *manway.InputErrors, err error) {
	if list, ok := err.(manway.InputErrors); ok {
		*faults = append(*faults, list...)
	} else if err != nil {
		faults.Add("Record", "refused", err.Error())
	}
}
