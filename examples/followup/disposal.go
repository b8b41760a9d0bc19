package main

import (
	"manway.example/manway"
	"manway.example/manway/examples/internal/record"
	"manway.example/manway/examples/visit"
	"manway.example/manway/hydraulics"
)

// load is what one visit took to disposal.
type load struct {
	date  manway.Date
	visit string
	done  visit.Done
}

// loadsOf is the load of a visit, none where nothing was taken away.
func loadsOf(v visit.Visit) []load {
	d := v.Survey.Done
	if d.Volume == 0 && d.Ticket == "" && d.Disposal == "" && d.Field == nil {
		return nil
	}
	return []load{{v.Survey.Date, v.Survey.ID, d}}
}

// disposal is the log, one row a load.
func disposal(loads []load) (rows [][]string) {
	gallons := func(v manway.Volume) string { return string(record.AppendNumber(nil, v.In(manway.Gallon))) }
	for _, l := range loads {
		row := []string{l.date.String(), l.visit, gallons(l.done.Volume), l.done.Disposal, l.done.Ticket, "", "", ""}
		if f := l.done.Field; f != nil {
			row[5], row[6] = f.Name, gallons(spreadInYear(loads, l))
			if rate, err := (hydraulics.SeptageField{Area: f.Area, Nitrogen: f.Nitrogen}).Rate(); err == nil {
				row[7] = gallons(rate.Most)
			}
		}
		rows = append(rows, row)
	}
	return rows
}

// spreadInYear is what the field of a load got in the 365 days that end with it.
func spreadInYear(loads []load, of load) (sum manway.Volume) {
	for _, l := range loads {
		days := l.date.DaysUntil(of.date)
		if l.done.Field != nil && l.done.Field.Name == of.done.Field.Name && days >= 0 && days < 365 {
			sum += l.done.Volume
		}
	}
	return sum
}
