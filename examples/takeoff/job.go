package main

import (
	"strconv"

	"manway.example/manway"
	"manway.example/manway/cost"
	"manway.example/manway/examples/internal/prices"
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
	job, err := in.Terms.Job(in.Title, lines, in.On)
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
	scope, err := prices.Scope(in.Scope)
	join(&faults, err)
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
		if !r.Set(lines) {
			faults.Add("Ranges["+strconv.Itoa(i)+"].Code", strconv.Quote(r.Code), "the code of a line as it is bought")
		}
	}
}

// join appends the faults of err as they are.
func join(faults *manway.InputErrors, err error) {
	if list, ok := err.(manway.InputErrors); ok {
		*faults = append(*faults, list...)
	} else if err != nil {
		faults.Add("Record", "refused", err.Error())
	}
}
