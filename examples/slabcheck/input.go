package main

import (
	"flag"

	"manway.example/manway"
	"manway.example/manway/examples/internal/record"
	"manway.example/manway/internal/plate"
)

// input is one record: a slab or a lid, what is on it, and where to look.
type input struct {
	ID     string        `json:"id"`
	Units  manway.System `json:"units"` // of text and picture
	Slab   *slab         `json:"slab"`
	Lid    *disc         `json:"lid"`
	Tank   *tankRecord   `json:"tank"`
	Loads  []load        `json:"loads"`
	Points []point       `json:"points"`

	Lists slab  `json:"-"` // of the slab, given by flags of their own
	Whole whole `json:"-"` // a tank, given by flags of its own
}

type slab struct {
	Length      manway.Length   `json:"length"`
	Width       manway.Length   `json:"width"`
	Thickness   manway.Length   `json:"thickness"`
	E           manway.Pressure `json:"e"`
	Nu          *float64        `json:"nu"`
	Edges       []edge          `json:"edges"`
	BearingOnly bool            `json:"bearing_only"`
	Lines       []line          `json:"lines"`
	Supports    []point         `json:"supports"`
	Openings    []opening       `json:"openings"`
	Zones       []zone          `json:"zones"`
}

type disc struct {
	Diameter  manway.Length   `json:"diameter"`
	Thickness manway.Length   `json:"thickness"`
	E         manway.Pressure `json:"e"`
	Nu        *float64        `json:"nu"`
	Edge      edge            `json:"edge"`
}

type point struct {
	X manway.Length `json:"x"`
	Y manway.Length `json:"y"`
}

type line struct {
	X *manway.Length `json:"x"`
	Y *manway.Length `json:"y"`
}

type opening struct {
	Shape    shape         `json:"shape"`
	X        manway.Length `json:"x"`
	Y        manway.Length `json:"y"`
	Length   manway.Length `json:"length"`
	Width    manway.Length `json:"width"`
	Diameter manway.Length `json:"diameter"`
}

type zone struct {
	X         manway.Length `json:"x"`
	Y         manway.Length `json:"y"`
	Length    manway.Length `json:"length"`
	Width     manway.Length `json:"width"`
	Thickness manway.Length `json:"thickness"`
}

// load is any load; the pointers tell what was given.
type load struct {
	Kind           kind             `json:"kind"`
	Pressure       *manway.Pressure `json:"pressure"`
	X              *manway.Length   `json:"x"`
	Y              *manway.Length   `json:"y"`
	Length         *manway.Length   `json:"length"`
	Width          *manway.Length   `json:"width"`
	Force          *manway.Force    `json:"force"`
	Opening        *int             `json:"opening"`
	Offset         *manway.Length   `json:"offset"`
	ForcePerLength *manway.LineLoad `json:"force_per_length"`
	ToX            *manway.Length   `json:"to_x"`
	ToY            *manway.Length   `json:"to_y"`
	Level          *manway.Length   `json:"level"`
	Density        *manway.Density  `json:"density"`
}

type edge uint8

const threePoints = edge(plate.Free + 1) // only of lids

var edges = []string{plate.Simple: "simple", plate.Clamped: "clamped", plate.Free: "free", threePoints: "three points"}

func (e *edge) UnmarshalText(text []byte) error { return manway.ReadWord(e, "edge", edges, text) }
func (e edge) String() string                   { return edges[e] }

type shape uint8

const (
	rect shape = iota
	round
)

func (s *shape) UnmarshalText(text []byte) error {
	return manway.ReadWord(s, "shape", []string{"rect", "round"}, text)
}

type kind uint8

const (
	noKind kind = iota
	uniform
	patch
	ring
	lineLoad
	liquid
)

var kinds = []string{"", "uniform", "patch", "ring", "line", "liquid"}

func (k *kind) UnmarshalText(text []byte) error {
	return manway.ReadWord(k, "kind", kinds, text)
}

func (k kind) String() string { return kinds[k] }

// flags declares the flags of one slab or lid.
func flags(fs *flag.FlagSet, in *input) {
	fs.StringVar(&in.ID, "id", "", "`NAME` of the slab")
	fs.TextVar(&in.Units, "units", manway.US, "`SYSTEM` of text and picture: us, si")
	l := &in.Lists
	record.List(fs, &l.Edges, "edges", "`EDGES` at y=0, x=length, y=width, x=0: simple, clamped or free, with semicolons")
	record.Appended(fs, &l.Lines, "line", "`LINE` support: \"x=64 in\"; once for each")
	record.Appended(fs, &l.Supports, "support", "point `SUPPORT`: \"x=4 in; y=4 in\"; once for each")
	record.Appended(fs, &l.Openings, "opening", "`OPENING`: \"shape=round; x=70 in; y=30 in; diameter=24 in\"; once for each")
	record.Appended(fs, &l.Zones, "zone", "`ZONE` of other thickness: \"x=4 in; y=4 in; length=10 in; width=8 in; thickness=3 in\"; once for each")
	record.Nested(fs, &in.Slab, "slab", "`SLAB`: \"length=96 in; width=60 in; thickness=4 in; e=3600 ksi; nu=0.2; bearing_only=true\"")
	record.Nested(fs, &in.Lid, "lid", "`LID`: \"diameter=24 in; thickness=3 in; e=3600 ksi; edge=simple\"")
	record.Appended(fs, &in.Loads, "load", "`LOAD`: \"kind=uniform; pressure=200 psf\"; once for each")
	tankFlags(fs, &in.Whole)
	record.Appended(fs, &in.Points, "point", "`POINT` to report: \"x=30 in; y=30 in\"; once for each")
}
