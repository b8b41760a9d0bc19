package hydraulics

import (
	"math"
	"strconv"
	"strings"

	"manway.example/manway"
)

// LidFound is one lid for the crew's message.
type LidFound struct {
	Name  string
	Depth manway.Reading // below grade
	Note  string         // such as "heavy, two people"
}

// Brief is what the crew is sent before they roll.
type Brief struct {
	Plan       Plan
	Lids       []LidFound
	HoseLength manway.Length
	Lift       manway.Length
	Pull       Pull
	PullKnown  bool // hose and lift were reckoned
	Minutes    Span
	People     int    // 0: not said
	Tools      string // empty: not said
	Loads      Loads
	LoadsKnown bool // the truck was given
}

// Lines is the crew's message in five lines: lids and their depth; gallons per
// compartment; hose, lift, people and tools; the level not to go below; room on
// the truck.
func (b Brief) Lines(s manway.System) [5]string {
	return [5]string{b.lids(s), b.gallons(s), b.hose(s), b.keep(s), b.room(s)}
}

func (b Brief) lids(s manway.System) string {
	if len(b.Lids) == 0 {
		return "Lids: not said"
	}
	parts := make([]string, len(b.Lids))
	for i, l := range b.Lids {
		parts[i] = l.Name + ", depth not measured"
		if l.Depth.Taken {
			parts[i] = l.Name + ", " + l.Depth.Length.Text(s) + " down"
		}
		if l.Note != "" {
			parts[i] += " (" + l.Note + ")"
		}
	}
	return "Lids: " + strings.Join(parts, "; ")
}

func (b Brief) gallons(s manway.System) string {
	parts := make([]string, len(b.Plan.Compartments))
	for i, c := range b.Plan.Compartments {
		if c.State != Opened {
			parts[i] = c.Name + ": " + c.State.String() + ", holds up to " + whole(c.Capacity, s)
			if c.Reason != "" {
				parts[i] += " (" + c.Reason + ")"
			}
			if c.Remove > 0 {
				parts[i] += ", about " + whole(c.Remove, s) + " of it drain over"
			}
			continue
		}
		parts[i] = c.Name + ": " + whole(c.Remove, s)
		if c.Now.LayersKnown {
			parts[i] += " (scum " + whole(c.Now.Scum, s) + ", sludge " + whole(c.Now.Sludge, s) + ")"
		}
	}
	return "Pump: " + whole(b.Plan.Remove, s) + " = " + strings.Join(parts, "; ")
}

func (b Brief) hose(s manway.System) string {
	var parts []string
	switch {
	case !b.PullKnown:
		line := "Hose: lift not reckoned"
		if b.Minutes.Known {
			line += ", " + b.minutes() + " at the usual rate"
		}
		parts = append(parts, line)
	case b.Pull.Lifting == CannotLift:
		parts = append(parts, "Hose: "+b.HoseLength.Text(s)+", CANNOT LIFT "+b.Lift.Text(s)+", "+b.Pull.Missing.Text(s)+" missing")
	default:
		line := "Hose: " + b.HoseLength.Text(s) + ", lift " + b.Lift.Text(s) + ", about " + b.Pull.Hose.Flow.Text(s)
		if b.Minutes.Known {
			line += ", " + b.minutes() + " and stirring"
		}
		parts = append(parts, line)
	}
	if b.People > 0 {
		parts = append(parts, "people "+strconv.Itoa(b.People))
	}
	if b.Tools != "" {
		parts = append(parts, "tools "+b.Tools)
	}
	return strings.Join(parts, "; ")
}

// minutes is the time in whole minutes, rounded up.
func (b Brief) minutes() string {
	return strconv.Itoa(int(math.Ceil(b.Minutes.Time.In(manway.Minute)-1e-9))) + " min"
}

func (b Brief) keep(s manway.System) string {
	p := b.Plan
	switch {
	case p.Keep > 0:
		line := "DO NOT GO BELOW " + upTo(p.Keep, s).Text(s) + " above the floor (" + p.KeepName + assumedBriefly(p.KeepAssumed) + ")"
		if len(p.NotJudged) > 0 {
			line += "; not judged: " + strings.Join(p.NotJudged, ", ")
		}
		return line
	case p.KeepJudged:
		return "Do not go below: no level set by what was judged"
	}
	line := "Do not go below: NOT JUDGED, an emptied tank may float or cave"
	if len(p.NotJudged) > 0 {
		line += " (" + strings.Join(p.NotJudged, ", ") + ")"
	}
	return line
}

func (b Brief) room(s manway.System) string {
	if !b.LoadsKnown {
		return "Truck: room not said"
	}
	line := "Truck: room " + whole(b.Loads.Room, s) + ", "
	switch b.Loads.Trips {
	case 0:
		line += "takes it all, " + whole(b.Loads.LeftRoom, s) + " left"
	case 1:
		line += "1 trip to disposal on the way"
	default:
		line += strconv.Itoa(b.Loads.Trips) + " trips to disposal on the way"
	}
	if b.Loads.ByWeight {
		line += ", full by weight at " + whole(b.Loads.Full, s)
	}
	return line
}

// whole is a volume to the whole gallon or litre, as a crew reads a gauge.
func whole(v manway.Volume, s manway.System) string {
	unit := manway.Gallon
	if s == manway.SI {
		unit = manway.Litre
	}
	return (manway.Volume(math.Round(v.In(unit))) * unit).Text(s)
}

// upTo is a level rounded up, so that what is printed is never below it: to the
// half inch or the centimetre.
func upTo(level manway.Length, s manway.System) manway.Length {
	tick := manway.Inch / 2
	if s == manway.SI {
		tick = manway.Centimetre
	}
	return manway.Length(math.Ceil(float64(level/tick)-1e-9)) * tick
}

// assumedBriefly names what was taken, groundwater first and in words, the rest
// by count.
func assumedBriefly(a manway.Assumptions) string {
	rest := len(a.List())
	line := ""
	if a.Has(manway.AssumedGroundwaterAtGrade) {
		line, rest = "; groundwater not known, taken at grade", rest-1
	}
	switch {
	case rest == 1:
		line += "; 1 more value not measured"
	case rest > 1:
		line += "; " + strconv.Itoa(rest) + " more values not measured"
	}
	return line
}
