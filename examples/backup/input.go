package main

import (
	"errors"
	"flag"
	"fmt"
	"strconv"
	"strings"

	"manway.example/manway"
	"manway.example/manway/examples/internal/record"
	"manway.example/manway/examples/internal/tankinput"
	"manway.example/manway/hydraulics"
)

// input is one tank as it is read.
type input struct {
	ID string `json:"id"`
	tankinput.Tank
	Outlet manway.Length   `json:"outlet"`
	Inlet  manway.Reading  `json:"inlet"`
	Spill  manway.Reading  `json:"spill"`
	Start  manway.Reading  `json:"start"`
	Pipe   manway.Length   `json:"pipe"`
	Open   *float64        `json:"open"`
	Slots  []slot          `json:"slots"`
	Base   manway.Flow     `json:"base"`
	Surges []surge         `json:"surges"`
	Time   manway.Duration `json:"time"`
	Step   manway.Duration `json:"step"`
	Units  manway.System   `json:"units"`
}

// slot is the opening of one partition.
type slot struct {
	Area   manway.Area   `json:"area"`
	Invert manway.Length `json:"invert"`
}

// surge is a kind with its time, or a volume over a time.
type surge struct {
	Kind   string          `json:"kind"`
	At     manway.Duration `json:"at"`
	Volume manway.Volume   `json:"volume"`
	Over   manway.Duration `json:"over"`
}

// read takes KIND;AT or AT;VOLUME;OVER, as a flag has it.
func (s *surge) read(text string) error {
	parts := strings.Split(text, ";")
	for i := range parts {
		parts[i] = strings.TrimSpace(parts[i])
	}
	switch len(parts) {
	case 2:
		s.Kind = parts[0]
		return s.At.UnmarshalText([]byte(parts[1]))
	case 3:
		if err := s.At.UnmarshalText([]byte(parts[0])); err != nil {
			return err
		}
		if err := s.Volume.UnmarshalText([]byte(parts[1])); err != nil {
			return err
		}
		return s.Over.UnmarshalText([]byte(parts[2]))
	}
	return fmt.Errorf("surge %q: want \"KIND;AT\" or \"AT;VOLUME;OVER\"", text)
}

// of is the surge; kinds have their volume and time.
func (s surge) of(field string, faults *manway.InputErrors) hydraulics.Surge {
	kinds := map[string]hydraulics.Surge{"bath": hydraulics.Bath, "laundry": hydraulics.Laundry, "flush": hydraulics.Flush}
	if s.Kind == "" {
		return hydraulics.Surge{At: s.At, Over: s.Over, Volume: s.Volume}
	}
	kind, ok := kinds[s.Kind]
	switch {
	case !ok:
		faults.Add(field+".Kind", strconv.Quote(s.Kind), "bath, laundry or flush")
	case s.Volume != 0 || s.Over != 0:
		faults.Add(field+".Kind", s.Kind, "either a kind, or a volume over a time")
	}
	return kind.Begin(s.At)
}

// flags are those of a single tank.
func flags(fs *flag.FlagSet, in *input) {
	fs.StringVar(&in.ID, "id", "", "`NAME` of the tank")
	tankinput.Flags(fs, &in.Tank)
	fs.TextVar(&in.Outlet, "outlet", manway.Length(0), "outlet invert over the floor")
	fs.TextVar(&in.Inlet, "inlet", manway.Reading{}, "inlet invert over the floor")
	fs.TextVar(&in.Spill, "spill", manway.Reading{}, "level at which liquid leaves another way")
	fs.TextVar(&in.Start, "start", manway.Reading{}, "level at the start")
	fs.TextVar(&in.Pipe, "pipe", 4*manway.Inch, "inside diameter of the outlet")
	fs.Func("open", "`SHARE` of the outlet that is open, 0 to 1", func(text string) error {
		v, err := strconv.ParseFloat(text, 64)
		in.Open = &v
		return err
	})
	fs.Func("slot", "opening of a partition: `\"AREA;INVERT\"`; once for each", func(text string) error {
		area, invert, ok := strings.Cut(text, ";")
		if !ok {
			return fmt.Errorf("slot %q: want \"AREA;INVERT\"", text)
		}
		var s slot
		if err := s.Area.UnmarshalText([]byte(area)); err != nil {
			return err
		}
		if err := s.Invert.UnmarshalText([]byte(invert)); err != nil {
			return err
		}
		in.Slots = append(in.Slots, s)
		return nil
	})
	fs.TextVar(&in.Base, "base", manway.Flow(0), "steady `INFLOW`")
	fs.Func("surge", "`\"KIND;AT\"` or \"AT;VOLUME;OVER\"; once for each", func(text string) error {
		var s surge
		if err := s.read(text); err != nil {
			return err
		}
		in.Surges = append(in.Surges, s)
		return nil
	})
	fs.TextVar(&in.Time, "time", manway.Duration(0), "`TIME` to follow; a day")
	fs.TextVar(&in.Step, "step", manway.Duration(0), "`STEP` of the reckoning; 15 s")
	record.UnitsFlag(fs, &in.Units)
}

// output is the levels of one tank.
type output struct {
	route  hydraulics.Route
	routed hydraulics.Routed
	head   [3]surgeHead
	roof   manway.Length
}

// surgeHead is the head over the outlet at the flow of a usual surge.
type surgeHead struct {
	name string
	flow manway.Flow
	head hydraulics.OutletHead
}

// compute routes one tank.
func compute(in *input) (output, error) {
	spec, faults := in.Spec()
	spec.OutletInvert = in.Outlet
	made, faults := tankinput.New(spec, faults)
	if len(faults) > 0 {
		return output{}, faults
	}
	r := hydraulics.Route{
		OutletInvert: in.Outlet, Outlet: hydraulics.Outlet{Diameter: in.Pipe, Open: 1},
		InletInvert: in.Inlet, Spill: in.Spill, Start: in.Start, Base: in.Base, Over: in.Time, Step: in.Step,
	}
	if in.Open != nil {
		r.Outlet.Open = *in.Open
	}
	shapes := made.Compartments()
	for i := range shapes {
		r.Compartments = append(r.Compartments, &shapes[i])
	}
	for _, s := range in.Slots {
		r.Slots = append(r.Slots, hydraulics.Slot{Area: s.Area, Invert: s.Invert})
	}
	for i, s := range in.Surges {
		r.Surges = append(r.Surges, s.of(fmt.Sprintf("Surges[%d]", i), &faults))
	}
	var of manway.InputErrors
	if errors.As(r.Validate(), &of) {
		for _, f := range of {
			faults.Add(fieldNames.Replace(f.Field), f.Value, f.Want)
		}
	}
	if err := faults.Err(); err != nil {
		return output{}, err
	}
	out := output{route: r, roof: made.Inside.Height}
	var err error
	if out.routed, err = r.Route(); err != nil {
		return output{}, err
	}
	return out, out.heads(r.Outlet)
}

// fieldNames turns the paths of a route into those of the record.
var fieldNames = strings.NewReplacer("OutletInvert", "Outlet", "Outlet.Diameter", "Pipe", "Outlet.Open", "Open", "InletInvert", "Inlet")

// heads sets the outlet against the flows of bath, laundry and base.
func (o *output) heads(outlet hydraulics.Outlet) error {
	for i, s := range []struct {
		name string
		flow manway.Flow
	}{
		{"base flow", o.route.Base},
		{"bath", hydraulics.Bath.Volume.Per(hydraulics.Bath.Over)},
		{"laundry", hydraulics.Laundry.Volume.Per(hydraulics.Laundry.Over)},
	} {
		h, err := outlet.Head(s.flow)
		if err != nil {
			return err
		}
		o.head[i] = surgeHead{s.name, s.flow, h}
	}
	return nil
}
