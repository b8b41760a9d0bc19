package main

import (
	"slices"
	"strconv"

	"manway.example/manway"
	"manway.example/manway/cost"
	"manway.example/manway/examples/internal/prices"
)

// output is the comparison and the owner's quote.
type output struct {
	options    []option
	estimates  []*cost.Estimate // nil where the first cost was given
	comparison cost.Comparison
	quote      cost.Quote
}

// compute prices the options that have a scope, compares all and puts the quote
// together. An option that is ruled out is told and not compared.
func compute(in *input, book prices.Book) (output, error) {
	out := output{options: slices.Clone(in.Options)}
	var err error
	switch {
	case in.Neglect != nil && len(out.options) > 0:
		err = manway.InputErrors{{Field: "Neglect", Value: "given beside options", Want: "one of the two"}}
	case in.Neglect != nil:
		out.options, err = in.Neglect.options()
	case len(out.options) == 0:
		out.options, err = in.pair()
	}
	if err != nil {
		return output{}, err
	}
	spreads, err := out.price(in, book)
	if err != nil {
		return output{}, err
	}
	var options []cost.Option
	for _, o := range out.options {
		if o.RuledOut == "" {
			options = append(options, o.cost())
		}
	}
	if out.comparison, err = cost.Compare(options, in.Horizon); err != nil {
		return output{}, err
	}
	out.quote = out.write(in, spreads)
	return out, nil
}

// price sets the first cost of every option with a scope.
func (out *output) price(in *input, book prices.Book) ([]*cost.Spread, error) {
	out.estimates = make([]*cost.Estimate, len(out.options))
	spreads := make([]*cost.Spread, len(out.options))
	var faults manway.InputErrors
	if in.Terms.Currency != in.Horizon.Currency {
		faults.Add("Terms.Currency", string(in.Terms.Currency), string(in.Horizon.Currency)+", the currency of the horizon")
	}
	for i := range out.options {
		o := &out.options[i]
		if len(o.Scope) == 0 || o.RuledOut != "" {
			continue
		}
		at := "Options[" + strconv.Itoa(i) + "]"
		if !book.Given {
			faults.Add(at+".Scope", "no prices", "a price book, by -prices")
			continue
		}
		if !o.First.IsZero() {
			faults.Add(at+".First", o.First.String(), "nothing, where a scope is priced")
			continue
		}
		e, spread, err := estimate(in, o, book)
		if err != nil {
			faults.Under(at, err)
			continue
		}
		if !e.Complete {
			faults.Add(at+".Scope", "no price for "+e.Missing[0].Code+": "+e.Missing[0].Reason, "a price for every line, since options are compared by it")
		}
		o.First.Decimal, out.estimates[i], spreads[i] = e.Total, &e, spread
	}
	return spreads, faults.Err()
}

func estimate(in *input, o *option, book prices.Book) (cost.Estimate, *cost.Spread, error) {
	scope, err := prices.Scope(o.Scope)
	if err != nil {
		return cost.Estimate{}, nil, err
	}
	lines, err := cost.Takeoff(scope)
	if err != nil {
		return cost.Estimate{}, nil, err
	}
	lines = cost.Merge(lines)
	ranged := false
	for _, r := range in.Ranges {
		ranged = r.Set(lines) || ranged
	}
	job, err := in.Terms.Job(o.Title, lines, in.On)
	if err != nil {
		return cost.Estimate{}, nil, err
	}
	job.Book = book.Book
	e, err := job.Estimate()
	if err != nil || !ranged || !e.Complete {
		return e, nil, err
	}
	spread, err := e.Simulate(cost.Simulation{Draws: in.Draws, Seed: in.Seed})
	return e, &spread, err
}

// write puts the owner's quote together.
func (out *output) write(in *input, spreads []*cost.Spread) cost.Quote {
	q := cost.Quote{
		Title: in.Title, Site: in.Site, Currency: in.Horizon.Currency, Saw: in.Saw, Means: in.Means,
		Exclusions: in.Terms.Exclusions, Terms: in.Conditions, Cautions: out.comparison.Cautions,
	}
	if in.On != nil {
		q.On = *in.On
	}
	for i, o := range out.options {
		w := cost.Way{
			Title: o.name(), Cures: o.Cures, Delays: o.Delays, Leaves: o.Leaves, Price: o.First.Decimal, Life: o.Life,
			NeedsEntry: o.NeedsEntry, NeedsDig: o.NeedsDig, NeedsPump: o.NeedsPump, Permit: o.Permit, RuledOut: o.RuledOut,
		}
		if next := slices.IndexFunc(out.options, func(n option) bool { return n.ID == o.Then }); next >= 0 {
			w.Then = out.options[next].name()
		}
		if k := slices.IndexFunc(out.comparison.Options, func(c cost.Outlook) bool { return c.ID == o.ID }); k >= 0 {
			w.Paid, w.PaidBad = out.comparison.Options[k].Courses[cost.Usual].Marks, out.comparison.Options[k].Courses[cost.Bad].Marks
		}
		if e := out.estimates[i]; e != nil {
			w.Missing, w.Changes, w.Cautions = e.Missing, e.Changes, e.Cautions
			q.ValidUntil = e.ValidUntil
		}
		if s := spreads[i]; s != nil {
			w.SetRange(*s)
		}
		if o.NeedsEntry {
			w.Cautions |= manway.NeverEnter | manway.PermitEntry
		}
		if o.NeedsDig {
			w.Cautions |= manway.TrenchCollapse | manway.LocateUtilities
		}
		q.Cautions |= w.Cautions
		q.Ways = append(q.Ways, w)
	}
	return q
}
