package main

import (
	"manway.example/manway"
	"manway.example/manway/examples/visit"
	"manway.example/manway/hydraulics"
)

// load is what one visit took to disposal.
type load struct {
	date  manway.Date
	visit string
	units manway.System
	done  visit.Done
}

// loadsOf is the load of a visit, none where nothing was taken away.
func loadsOf(v visit.Visit) []load {
	d := v.Survey.Done
	if d.Volume == 0 && d.Ticket == "" && d.Disposal == "" && d.Field == nil {
		return nil
	}
	return []load{{v.Survey.Date, v.Survey.ID, v.Survey.Units, d}}
}

// disposal is the log, one row a load.
func disposal(loads []load) (rows [][]cell) {
	for _, l := range loads {
		volume := func(v manway.Volume) cell {
			return number(v.In(manway.Gallon), v.Text(l.units))
		}
		row := []cell{words(l.date.String()), words(l.visit), {}, words(l.done.Disposal), words(l.done.Ticket), {}, {}, {}}
		if l.done.Volume > 0 {
			row[2] = volume(l.done.Volume)
		}
		if f := l.done.Field; f != nil {
			row[5], row[6] = words(f.Name), volume(spreadInYear(loads, l))
			if rate, err := (hydraulics.SeptageField{Area: f.Area, Nitrogen: f.Nitrogen}).Rate(); err == nil {
				row[7] = volume(rate.Most)
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
