package main

import (
	"slices"
	"strconv"
	"strings"

	"manway.example/manway"
	"manway.example/manway/hydraulics"
	"manway.example/manway/lid"
	"manway.example/manway/riser"
	"manway.example/manway/tank"
)

func (in *input) setPeople(text string) error {
	n, err := strconv.Atoi(text)
	in.People = &n
	return err
}

// compartments is how many a row has at most.
const compartments = 2

// output is what a row gives. What is not known says so.
type output struct {
	liquid       known[manway.Volume]
	n            int // of compartments
	compartments [compartments]compartment
	pump         known[manway.Volume]
	sludge, scum known[manway.Volume]
	loads        known[float64]
	lid, soaked  known[manway.Mass]
	reach        known[manway.Length]
	next         hydraulics.HouseholdInterval
	nextOn       manway.Date
	float        floating
	roof         roofing
	cautions     manway.Cautions
}

// known is a value that is known or not.
type known[T ~float64] struct {
	v  T
	ok bool
}

func is[T ~float64](v T) known[T] { return known[T]{v, true} }

type compartment struct {
	liquid, pump known[manway.Volume]
	solids       known[float64]
}

// needs says which further calculations the columns ask for.
type needs uint8

const (
	needLayers needs = 1 << iota
	needNext
	needForecast
	needFloat
	needRoof
)

// job works one row. It stays on the stack.
type job struct {
	in     *input
	out    output
	faults manway.InputErrors
}

// compute works one row as far as the columns ask for it.
func compute(in *input, want needs) (output, error) {
	j := job{in: in}
	j.out.cautions = manway.NeverEnter | manway.GuardHole | manway.Pathogens | manway.LicensedWork | manway.LocalCode | manway.NotAnInspection
	j.lid()
	j.reach()
	t, ok := j.tank()
	if !ok {
		return output{}, j.faults
	}
	j.pump(&t)
	if want != 0 && len(j.faults) == 0 {
		j.further(t, want)
	}
	return j.out, j.faults.Err()
}

// further works what is asked for only by name. It has a tank of its own, so
// that the one of compute stays on the stack.
func (j *job) further(t tank.Tank, want needs) {
	for _, step := range [...]struct {
		need needs
		do   func(*tank.Tank)
	}{{needLayers, j.layers}, {needNext, j.next}, {needForecast, j.forecast}, {needFloat, j.float}, {needRoof, j.roof}} {
		if want&step.need != 0 && len(j.faults) == 0 {
			step.do(&t)
		}
	}
}

// refuse takes the faults that a room found, under the names of the row; a
// field that has a fault already keeps that one.
func (j *job) refuse(err error, names ...string) {
	var found manway.InputErrors
	found.Under("", err)
	rename := strings.NewReplacer(names...)
	for _, f := range found {
		named := *f
		named.Field = rename.Replace(strings.TrimPrefix(f.Field, "."))
		if !slices.ContainsFunc(j.faults, func(f *manway.InputError) bool { return f.Field == named.Field }) {
			j.faults = append(j.faults, &named)
		}
	}
}

func (j *job) lid() {
	if j.in.LidDia == 0 && j.in.LidThick == 0 {
		return
	}
	w, err := lid.Lid{Shape: lid.Disc, Diameter: j.in.LidDia, Thickness: j.in.LidThick}.Weigh()
	if err != nil {
		j.refuse(err, "Diameter", "LidDia", "Thickness", "LidThick")
		return
	}
	j.out.lid, j.out.soaked = is(w.Dry), is(w.Soaked)
	j.out.cautions |= w.Cautions
}

func (j *job) reach() {
	if j.in.Cover == nil {
		return
	}
	r, err := riser.ReachOf(riser.Access{Cover: *j.in.Cover})
	if err != nil {
		j.refuse(err)
		return
	}
	j.out.reach = is(r.Top)
	j.out.cautions |= r.Cautions
}

// tank is the tank of the row, and whether there is one without faults.
func (j *job) tank() (tank.Tank, bool) {
	in := j.in
	height := in.Height
	if height == 0 {
		height = in.Depth
	}
	spec := tank.Spec{Shape: tank.Box{Length: in.Length, Width: in.Width, Height: height}, Wall: in.Wall, Roof: in.Roof, Floor: in.Floor}
	j.out.n = 1
	if in.Partition != 0 || in.PartitionThick != 0 {
		spec.Partitions = []tank.Partition{{At: in.Partition, Thickness: in.PartitionThick}}
		j.out.n = 2
	}
	if in.LidAt != 0 && in.LidDia == 0 {
		j.faults.Add("LidDia", "0 in", "the lid's diameter, where its place is given")
	} else if in.LidAt != 0 {
		spec.Access = []tank.Access{{Along: in.LidAt, Diameter: in.LidDia}}
		if j.out.n == 2 && in.LidAt > in.Partition {
			spec.Access[0].Compartment = 1
		}
	}
	t, err := tank.New(spec)
	if err != nil {
		j.refuse(err, "Shape.Height", j.heightName(), "Shape.", "", "Partitions[0].At", "Partition", "Partitions[0].Thickness", "PartitionThick",
			"Access[0].Along", "LidAt", "Access[0].Diameter", "LidDia")
	} else if in.Height != 0 && in.Depth > in.Height {
		j.faults.Add("Depth", in.Depth.String(), "at most the inside height of "+in.Height.String())
	}
	return t, len(j.faults) == 0
}

// heightName is the field that the height of the box comes from.
func (j *job) heightName() string {
	if j.in.Height == 0 {
		return "Depth"
	}
	return "Height"
}
