package tank

import (
	"fmt"
	"sort"

	"gonum.org/v1/gonum/interp"

	"manway.example/manway"
)

// Surveyed is a tank of any form of which plan areas or gallons were measured
// at depths: one list of the two. It takes no partition.
//
// Between two areas the area runs straight, so that a volume is the sum of
// average end areas:
//
//	V(d) = V(i) + (d - d(i)) (A(i) + A(d))/2
//
// Volumes run on the monotone cubic of Fritsch and Butland (1984). Both lists
// begin at the floor (depth 0) and end at the inside height; nothing is
// reckoned beyond.
type Surveyed struct {
	Areas   []AreaAt
	Volumes []VolumeAt
}

// AreaAt is the plan area at a depth above the floor.
type AreaAt struct {
	Depth manway.Length
	Area  manway.Area
}

// VolumeAt is the liquid below a depth above the floor.
type VolumeAt struct {
	Depth  manway.Length
	Volume manway.Volume
}

// Drop is one reading of a truck's gauge: how far the level fell from where it
// stood when pumping began, and what the truck had taken by then.
type Drop struct {
	Dropped manway.Length
	Pumped  manway.Volume
}

// FromDrops turns gauge readings, taken with the inflow stopped, into volumes
// at depths: start is the depth of liquid when pumping began, drops run
// downwards and the last one reaches the floor.
//
// Errors: fewer than two readings, readings that do not run downwards, a last
// one off the floor by more than 1/4 in.
//
// Source: practice, a truck gauge read against inches dropped.
func FromDrops(start manway.Length, drops []Drop) (Surveyed, error) {
	var faults manway.InputErrors
	size(&faults, "start", start)
	if len(drops) < 2 {
		faults.Add("drops", fmt.Sprint(len(drops)), "two readings or more")
		return Surveyed{}, faults
	}
	last := drops[len(drops)-1]
	level := func(d Drop) VolumeAt { return VolumeAt{max(0, start-d.Dropped), last.Pumped - d.Pumped} }
	for i, d := range drops {
		field := fmt.Sprintf("drops[%d].", i)
		manway.Within(&faults, field+"Dropped", d.Dropped, 0, greatestSize)
		manway.Within(&faults, field+"Pumped", d.Pumped, 0, 1e6*manway.Gallon)
		if i > 0 && level(d).Depth >= level(drops[i-1]).Depth {
			faults.Add(field+"Dropped", d.Dropped.String(), "more than at the reading before it")
		}
		if i > 0 && level(d).Volume >= level(drops[i-1]).Volume {
			faults.Add(field+"Pumped", d.Pumped.String(), "more than at the reading before it")
		}
	}
	manway.Within(&faults, fmt.Sprintf("drops[%d].Dropped", len(drops)-1), last.Dropped, start-manway.Inch/4, start+manway.Inch/4)
	if len(faults) > 0 {
		return Surveyed{}, faults
	}
	levels := make([]VolumeAt, 0, len(drops)+1)
	for i := len(drops) - 1; i >= 0; i-- {
		levels = append(levels, level(drops[i]))
	}
	levels[0].Depth = 0
	if levels[len(levels)-1].Depth < start {
		levels = append(levels, VolumeAt{start, last.Pumped})
	}
	return Surveyed{Volumes: levels}, nil
}

// Inside knows the height only: a survey of areas has no length or width.
func (s Surveyed) Inside() Extent {
	if n := len(s.Areas); n > 0 {
		return Extent{Height: s.Areas[n-1].Depth}
	}
	if n := len(s.Volumes); n > 0 {
		return Extent{Height: s.Volumes[n-1].Depth}
	}
	return Extent{}
}

func (s Surveyed) validate(faults *manway.InputErrors) {
	if (len(s.Areas) < 2) == (len(s.Volumes) < 2) || len(s.Areas) > 0 && len(s.Volumes) > 0 {
		faults.Add("Areas", fmt.Sprintf("%d areas, %d volumes", len(s.Areas), len(s.Volumes)), "two areas or more, or two volumes or more")
		return
	}
	last := manway.Length(-1)
	depth := func(field string, d manway.Length) {
		if last < 0 {
			manway.Within(faults, field, d, 0, 0)
		} else if !(d > last && d <= greatestSize) {
			faults.Add(field, d.String(), "above the level before it, at most 100 ft")
		}
		last = d
	}
	for i, l := range s.Areas {
		depth(fmt.Sprintf("Areas[%d].Depth", i), l.Depth)
		manway.Within(faults, fmt.Sprintf("Areas[%d].Area", i), l.Area, 0, greatestSize.Times(greatestSize))
		if i > 0 && l.Area == 0 && s.Areas[i-1].Area == 0 {
			faults.Add(fmt.Sprintf("Areas[%d].Area", i), "0", "no two areas of 0 in a row")
		}
	}
	for i, l := range s.Volumes {
		depth(fmt.Sprintf("Volumes[%d].Depth", i), l.Depth)
		field := fmt.Sprintf("Volumes[%d].Volume", i)
		if i == 0 {
			manway.Within(faults, field, l.Volume, 0, 0)
		} else if !(l.Volume > s.Volumes[i-1].Volume && float64(l.Volume) < 1e9) {
			faults.Add(field, l.Volume.String(), "more than at the level before it")
		}
	}
}

func (s Surveyed) shrunk(_, _, _ manway.Length) Shape { return s }

func (s Surveyed) ends() (from, to float64, ok bool) { return 0, 0, false }

// solid prepares the lists for reading.
func (s Surveyed) solid() solid {
	p := &strapping{}
	for i, l := range s.Areas {
		p.depths = append(p.depths, float64(l.Depth))
		p.areas = append(p.areas, float64(l.Area))
		p.sums = append(p.sums, 0)
		if i > 0 {
			p.sums[i] = p.sums[i-1] + (p.depths[i]-p.depths[i-1])*(p.areas[i]+p.areas[i-1])/2
		}
	}
	for _, l := range s.Volumes {
		p.depths = append(p.depths, float64(l.Depth))
		p.sums = append(p.sums, float64(l.Volume))
	}
	if len(s.Areas) > 0 {
		return p
	}
	c := new(curve)
	if err := c.Fit(p.depths, p.sums); err == nil {
		return c
	}
	// Fit wants two or more rising depths, which validate has seen to; were it
	// not so, the straight line between the volumes would remain.
	p.areas = make([]float64, len(p.sums))
	return p
}

// strapping is a survey of areas.
type strapping struct{ depths, areas, sums []float64 }

// at is the level at or below a depth, at most the last but one.
func (p *strapping) at(depth float64) int {
	return min(max(sort.SearchFloat64s(p.depths, depth)-1, 0), len(p.depths)-2)
}

func (p *strapping) volume(s span, depth float64) float64 {
	i := p.at(depth)
	return p.sums[i] + (depth-p.depths[i])*(p.areas[i]+p.area(s, depth))/2
}

func (p *strapping) area(_ span, depth float64) float64 {
	i := p.at(depth)
	return p.areas[i] + (p.areas[i+1]-p.areas[i])*(depth-p.depths[i])/(p.depths[i+1]-p.depths[i])
}

// curve is a survey of volumes.
type curve struct{ interp.FritschButland }

func (c *curve) volume(_ span, depth float64) float64 { return c.Predict(depth) }
func (c *curve) area(_ span, depth float64) float64   { return max(0, c.PredictDerivative(depth)) }
