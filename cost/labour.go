package cost

import (
	"strconv"

	"manway.example/manway"
	"manway.example/manway/riser"
)

// Productivity is how many labour hours one unit of a task takes.
type Productivity struct {
	Task  string // code of the labour line it makes
	Name  string
	Hours float64 // labour hours a unit
	Unit  Unit
	Basis manway.Citation
}

var (
	storm55  = manway.Citation{Source: storm, Place: "p. 55"}
	storm54  = manway.Citation{Source: storm, Place: "p. 54"}
	trench   = manway.Citation{Source: trenchHours, Place: "hand trench up to 1 m deep"}
	seabee   = manway.Citation{Source: navfacp405, Place: "man-hour tables"}
	footings = manway.Citation{Source: buildingEstimating, Place: "Fig. 10.17"}
	manholes = manway.Citation{Source: manhoursManual, Place: "removal"}
	piping   = manway.Citation{Source: pagePiping, Place: "p. 196"}
)

// productivities are the published rows. Hand digging stands twice: by soil for
// a small pit in open ground, and the heavier figure of an industrial plant,
// which has the limits of access in it.
var productivities = [...]Productivity{
	{"dig-machine", "dig with a backhoe", 0.20, "YDQ", storm55},
	{"dig-hand", "dig by hand, hard access", 2.80, "YDQ", storm55},
	{"dig-hand-sand", "dig by hand up to 1 m, sand", 1.20, "MTQ", trench},
	{"dig-hand-medium", "dig by hand up to 1 m, medium soil", 2.20, "MTQ", trench},
	{"dig-hand-heavy", "dig by hand up to 1 m, heavy soil", 3.30, "MTQ", trench},
	{"backfill-machine", "backfill and compact with loader and tamper", 0.60, "YDQ", storm55},
	{"backfill-hand", "backfill and compact by hand", 3.00, "YDQ", storm55},
	{"backfill-hand-open", "backfill and compact by hand, small pit", 1.00, "MTQ", trench},
	{"load-spoil-sand", "load and remove spoil by hand, sand", 1.00, "MTQ", trench},
	{"load-spoil-medium", "load and remove spoil by hand, medium soil", 1.30, "MTQ", trench},
	{"load-spoil-heavy", "load and remove spoil by hand, heavy soil", 1.90, "MTQ", trench},
	{"wheel-spread", "wheel spoil up to 50 m, spread and level", 1.25, "MTQ", trench},
	{"grade", "level and grade", 0.05, "MTK", trench},
	{"form-foundation", "forms of foundations, made, set and stripped", 0.30, "FTK", storm55},
	{"form-wall", "forms of walls", 0.20, "FTK", storm55},
	{"reinforce", "cut, bend and place bars", 0.03, "LBR", storm55},
	{"mesh", "place mesh", 0.02, "FTK", storm55},
	{"place-concrete", "place concrete, slab at grade", 1.00, "YDQ", storm55},
	{"place-concrete-below", "place concrete below grade from the truck", 0.80, "YDQ", storm55},
	{"place-concrete-walls", "place concrete in pedestals and walls", 2.00, "YDQ", storm55},
	{"place-footing", "place concrete of a continuous footing by chute", 0.40, "YDQ", footings},
	{"place-spread", "place concrete of a spread footing by chute", 0.873, "YDQ", footings},
	{"place-wall", "place concrete of a foundation wall by chute", 0.5, "YDQ", footings},
	{"place-slab", "place concrete of a slab by chute", 0.32, "YDQ", footings},
	{"finish", "finish flat concrete", 0.12, "FTK", storm55},
	{"patch", "patch and sack concrete", 0.05, "FTK", storm55},
	{"set-pipe-4in", "set and align 4 in clay pipe", 0.08, "FOT", storm54},
	{"set-pipe-6in", "set and align 6 in clay pipe", 0.12, "FOT", storm54},
	{"join-pipe-4in", "make a joint of 4 in clay pipe", 0.32, "EA", storm54},
	{"set-concrete-pipe-4in", "set and align 4 in concrete pipe", 0.07, "FOT", storm54},
	{"set-concrete-pipe-6in", "set and align 6 in concrete pipe", 0.11, "FOT", storm54},
	{"pour-joint-4in", "pour a joint of 4 in clay pipe", 0.25, "EA", piping},
	{"cement-joint-4in", "cement a joint of 4 in concrete pipe", 0.20, "EA", piping},
	{"remove-cover", "remove a manhole frame and cover", 1.25, "EA", manholes},
	{"remove-pipe-4in", "remove 4 in drain pipe", 0.328, "MTR", manholes},
	{"lay-block", "lay 8x8x16 block", 0.160, "FTK", seabee},
	{"hang-board", "hang half-inch board over studs", 0.033, "FTK", seabee},
}

// Productivities is every published row.
func Productivities() []Productivity { return append([]Productivity(nil), productivities[:]...) }

// Task is a quantity of work by one crew.
type Task struct {
	Name     string  // of a row of [Productivities]
	Quantity float64 // in Unit
	Unit     Unit    // any unit of the row's measure
	Crew     int
	Delay    float64 // delay factor, 1 to 5; 0 is 1
}

// Line is the labour of the task:
//
//	labour hours = quantity x hours a unit x delay factor
//
// Quantity up to 1e9, crew 1 to 100, delay factor 1 to 5. Sources: those of the
// row, see [Productivities]; delay factors NAVFAC P-405.
func (t Task) Line() (Line, error) {
	var faults manway.InputErrors
	var row Productivity
	for _, p := range productivities {
		if p.Task == t.Name {
			row = p
		}
	}
	if row.Task == "" {
		faults.Add("Name", strconv.Quote(clip(t.Name)), "a task of the productivity table")
	}
	checkFloat(&faults, "Quantity", t.Quantity, 0, 1e9)
	manway.Within(&faults, "Crew", t.Crew, 1, 100)
	delay := t.Delay
	if delay == 0 {
		delay = 1
	}
	checkFloat(&faults, "Delay", delay, 1, 5)
	faults.Under("", t.Unit.Validate())
	if err := faults.Err(); err != nil {
		return Line{}, err
	}
	per, err := t.Unit.Per(row.Unit)
	if err != nil {
		return Line{}, err
	}
	hours := round12(t.Quantity * per * row.Hours * delay)
	from := shortNumber(round12(t.Quantity*per)) + " " + string(row.Unit) + " x " + shortNumber(row.Hours) + " h"
	if delay != 1 {
		from += " x " + shortNumber(delay) + " delay"
	}
	return Line{Code: row.Task, Description: row.Name, Class: riser.Labour, Quantity: hours, Unit: "LH", Crew: t.Crew, From: from, Basis: [3]manway.Citation{row.Basis}}, nil
}

// Crew turns labour hours into days on site.
type Crew struct {
	People       int
	Availability float64 // part of the time at the work, 0.1 to 1; 0.75 to 0.85 in the field
	Hours        float64 // of a working day, 1 to 16; 8 are a man-day
}

// Days is how long the crew takes:
//
//	days = labour hours / people / availability / hours of a day
//
// One man at all 8 hours of the day takes the man-days. Hours up to 1e9. Source:
// NAVFAC P-405, duration of an activity.
func (c Crew) Days(labourHours float64) (float64, error) {
	var faults manway.InputErrors
	checkFloat(&faults, "LabourHours", labourHours, 0, 1e9)
	manway.Within(&faults, "Crew.People", c.People, 1, 1000)
	checkFloat(&faults, "Crew.Availability", c.Availability, 0.1, 1)
	checkFloat(&faults, "Crew.Hours", c.Hours, 1, 16)
	if err := faults.Err(); err != nil {
		return 0, err
	}
	return labourHours / float64(c.People) / c.Availability / c.Hours, nil
}
