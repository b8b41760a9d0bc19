package hydraulics

import (
	"math"

	"manway.example/manway"
)

// Truck is the tank of the truck.
type Truck struct {
	Capacity manway.Volume  // 10 to 15,000 gal
	Aboard   manway.Volume  // already in it
	Tare     manway.Mass    // empty truck with crew; 0: not known
	Limit    manway.Mass    // greatest gross weight allowed; 0: not known
	Density  manway.Density // of the load, 60 to 80 lb/ft3; 0: septage of 63.6 lb/ft3 (1.02 of water) is taken
}

// septageDensity is taken where the load's density is not known: two parts in a
// hundred above water. Common practice.
const septageDensity = 1.02 * manway.WaterDensity

// Full is the volume at which the truck is full: its capacity, or less where
// the weight limit comes first.
//
//	full = min(capacity, (limit - tare)/density)
//
// It says whether the weight limits it; without tare and limit the weight is
// not judged.
//
// Source: practice, as 2 parts in a hundred above water for septage.
func (t Truck) Full() (full manway.Volume, byWeight bool, err error) {
	if err := t.Validate(); err != nil {
		return 0, false, err
	}
	full, byWeight = t.full()
	return full, byWeight, nil
}

func (t Truck) full() (manway.Volume, bool) {
	if t.Tare == 0 || t.Limit == 0 {
		return t.Capacity, false
	}
	if w := manway.Volume(float64(t.Limit-t.Tare) / float64(t.density())); w < t.Capacity {
		return w, true
	}
	return t.Capacity, false
}

func (t Truck) density() manway.Density {
	if t.Density == 0 {
		return septageDensity
	}
	return t.Density
}

// Validate returns the faults of t.
func (t Truck) Validate() error {
	var faults manway.InputErrors
	manway.Within(&faults, "Capacity", t.Capacity, 10*manway.Gallon, 15000*manway.Gallon)
	manway.Within(&faults, "Aboard", t.Aboard, 0, t.Capacity)
	if t.Tare != 0 {
		manway.Within(&faults, "Tare", t.Tare, 500*manway.Pound, 100000*manway.Pound)
	}
	if t.Limit != 0 {
		manway.Within(&faults, "Limit", t.Limit, max(t.Tare, 500*manway.Pound)+1*manway.Pound, 200000*manway.Pound)
	}
	if t.Density != 0 {
		manway.Within(&faults, "Density", t.Density, 60*manway.PoundPerCubicFoot, 80*manway.PoundPerCubicFoot)
	}
	if len(faults) == 0 {
		if full, by := t.full(); by && t.Aboard > full {
			faults.Add("Aboard", t.Aboard.String(), "at most "+full.String()+", the weight limit")
		}
	}
	return faults.Err()
}

// Loads is a volume set against one truck.
type Loads struct {
	Room      manway.Volume // on the truck on arrival
	Full      manway.Volume // of the empty truck
	ByWeight  bool          // Full is set by the weight limit
	Trips     int           // to disposal that the volume needs: before, between and none after the last part
	Loads     int           // truck loads the volume makes, the room on arrival being the first
	LeftRoom  manway.Volume // on the truck after the last part
	Gross     manway.Mass   // greatest on the way; 0 where Tare is not known
	WeightUse float64       // Gross over Limit; 0 where either is not known
}

// Loads counts the loads that a volume of 0 to 1,000,000 gal makes: the room
// on arrival is filled first, then whole trucks.
//
//	loads = 1 + ⌈(volume - room)/full⌉ where it does not fit the room
//
// Source: practice.
func (t Truck) Loads(volume manway.Volume) (Loads, error) {
	var faults manway.InputErrors
	faults.Under("Truck", t.Validate())
	manway.Within(&faults, "Volume", volume, 0, 1e6*manway.Gallon)
	if err := faults.Err(); err != nil {
		return Loads{}, err
	}
	return t.loads(volume), nil
}

func (t Truck) loads(volume manway.Volume) Loads {
	full, by := t.full()
	l := Loads{Full: full, ByWeight: by, Room: full - t.Aboard}
	aboard := t.Aboard + volume
	switch {
	case volume == 0:
	case manway.Reached(l.Room, volume):
		l.Loads = 1
	default:
		over := float64((volume - l.Room) / full)
		l.Trips = int(math.Ceil(over - 1e-9))
		l.Loads = l.Trips + 1
		if l.Room <= 0 {
			l.Loads = l.Trips
		}
		aboard = volume - l.Room - full*manway.Volume(l.Trips-1)
	}
	l.LeftRoom = max(full-aboard, 0)
	if t.Tare > 0 {
		most := aboard
		if l.Trips > 0 {
			most = full
		}
		l.Gross = t.Tare + min(most, full).Times(t.density())
		if t.Limit > 0 {
			l.WeightUse = float64(l.Gross / t.Limit)
		}
	}
	return l
}

// Stop is one stop of a day as the truck meets it.
type Stop struct {
	Volume      manway.Volume // pumped here
	TripsBefore int           // to disposal on the way here: the stop fits an empty truck but not the room
	TripsDuring int           // to disposal while here: the stop is more than a truck
	Aboard      manway.Volume // on leaving
	Gross       manway.Mass   // on leaving; 0 where Tare is not known
}

// Day is a day's stops in the given order.
type Day struct {
	Stops []Stop
	Total manway.Volume
	Trips int           // to disposal, the last one at the day's end among them where anything is aboard
	Left  manway.Volume // aboard before that last one
}

// Day runs a truck through 1 to 200 stops in the given order. A stop that does
// not fit the room but fits an empty truck is kept whole, so that no tank is
// left half pumped: the truck empties first. A stop that is more than a truck
// fills the room first.
//
// Source: practice.
func (t Truck) Day(stops []manway.Volume) (Day, error) {
	var faults manway.InputErrors
	faults.Under("Truck", t.Validate())
	manway.Within(&faults, "Stops", len(stops), 1, 200)
	for i, v := range stops {
		manway.Within(&faults, indexed("Stops", i), v, 0, 1e6*manway.Gallon)
	}
	if err := faults.Err(); err != nil {
		return Day{}, err
	}
	full, _ := t.full()
	day := Day{Stops: make([]Stop, len(stops))}
	for i, v := range stops {
		s := Stop{Volume: v}
		if v > 0 && !manway.Reached(full-t.Aboard, v) && manway.Reached(full, v) {
			s.TripsBefore, t.Aboard = 1, 0
		}
		l := t.loads(v)
		s.TripsDuring = l.Trips
		t.Aboard = full - l.LeftRoom
		s.Aboard = t.Aboard
		if t.Tare > 0 {
			s.Gross = t.Tare + s.Aboard.Times(t.density())
		}
		day.Stops[i] = s
		day.Total += v
		day.Trips += s.TripsBefore + s.TripsDuring
	}
	day.Left = t.Aboard
	if day.Left > 0 {
		day.Trips++
	}
	return day, nil
}

// Basis lists the source of the loads.
func (Loads) Basis() []manway.Citation {
	return []manway.Citation{{Source: manway.Practice, Place: "truck loads"}}
}

// Basis lists the source of the day.
func (Day) Basis() []manway.Citation { return Loads{}.Basis() }
