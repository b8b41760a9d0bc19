package concrete

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"manway.example/manway"
)

// Bar is one deformed bar of the US series.
type Bar struct {
	Number   int // in eighths of an inch
	Diameter manway.Length
	Area     manway.Area
	Weight   manway.LineLoad
}

// bars are the nominal sizes of ASTM A615, in inches, square inches, lb/ft.
var bars = [...]struct {
	number            int
	diameter, area, w float64
}{
	{3, 0.375, 0.11, 0.376}, {4, 0.500, 0.20, 0.668}, {5, 0.625, 0.31, 1.043},
	{6, 0.750, 0.44, 1.502}, {7, 0.875, 0.60, 2.044}, {8, 1.000, 0.79, 2.670},
	{9, 1.128, 1.00, 3.400}, {10, 1.270, 1.27, 4.303}, {11, 1.410, 1.56, 5.313},
	{14, 1.693, 2.25, 7.650}, {18, 2.257, 4.00, 13.600},
}

// BarOf is the bar of a number: 3 to 11, 14 or 18. Source: ASTM A615 Table 1.
func BarOf(number int) (Bar, error) {
	for _, b := range bars {
		if b.number == number {
			return Bar{
				number, manway.Length(b.diameter) * manway.Inch,
				manway.Area(b.area) * manway.SquareInch, manway.LineLoad(b.w) * manway.PoundForcePerFoot,
			}, nil
		}
	}
	return Bar{}, manway.InputErrors{{Field: "Number", Value: strconv.Itoa(number), Want: "3 to 11, 14 or 18"}}
}

// Wire is one wire of welded reinforcement. A W20 wire has 0.20 in2.
type Wire struct {
	W        float64 // size: area in hundredths of a square inch
	Diameter manway.Length
	Area     manway.Area
	Weight   manway.LineLoad
}

// SteelWeight is the density by which the tables weigh steel: 3.4 lb/ft for
// each square inch.
const SteelWeight manway.Density = 489.6 * manway.PoundPerCubicFoot

// WireOf is the wire of a size, W0.5 to W45:
//
//	area = W/100 in2,  diameter = sqrt(4 area/pi),  weight = 3.4 lb/ft per in2
//
// Source: ASTM A1064.
func WireOf(w float64) (Wire, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "W", w, 0.5, 45)
	if len(faults) > 0 {
		return Wire{}, faults
	}
	area := w / 100
	return Wire{
		w, manway.Length(math.Sqrt(4*area/math.Pi)) * manway.Inch,
		manway.Area(area) * manway.SquareInch, manway.LineLoad(3.4*area) * manway.PoundForcePerFoot,
	}, nil
}

// Mesh is a style of welded wire: the wires along it and across it.
type Mesh struct {
	AlongSpacing, AcrossSpacing manway.Length
	Along, Across               Wire
}

// ReadMesh reads a style as it is written: 6x6-W2.9xW2.9 has wires of W2.9
// along at 6 in and across at 6 in. D, for deformed wire, reads as W does.
func ReadMesh(style string) (Mesh, error) {
	refuse := func() (Mesh, error) {
		return Mesh{}, manway.InputErrors{{Field: "Style", Value: fmt.Sprintf("%.40q", style), Want: "a style such as 6x6-W2.9xW2.9, spacings 1 to 18 in, wires W0.5 to W45"}}
	}
	text := strings.ToUpper(strings.ReplaceAll(style, " ", ""))
	spacings, wires, ok1 := strings.Cut(text, "-")
	s1, s2, ok2 := strings.Cut(spacings, "X")
	w1, w2, ok3 := strings.Cut(wires, "X")
	if !ok1 || !ok2 || !ok3 {
		return refuse()
	}
	var m Mesh
	for _, part := range []struct {
		spacing, size string
		at            *manway.Length
		wire          *Wire
	}{{s1, w1, &m.AlongSpacing, &m.Along}, {s2, w2, &m.AcrossSpacing, &m.Across}} {
		spacing, err1 := strconv.ParseFloat(part.spacing, 64)
		if part.size == "" || part.size[0] != 'W' && part.size[0] != 'D' {
			return refuse()
		}
		size, err2 := strconv.ParseFloat(part.size[1:], 64)
		wire, err3 := WireOf(size)
		if err1 != nil || err2 != nil || err3 != nil || !(spacing >= 1 && spacing <= 18) {
			return refuse()
		}
		*part.at, *part.wire = manway.Length(spacing)*manway.Inch, wire
	}
	return m, nil
}

// AreaPerWidth is the area of bars or wires of a diameter over their spacing,
// as an area per width: pi d^2/4/spacing, in metres (in2/ft is In(Inch)*12).
// It is 0 for a diameter or spacing that is not above 0.
func AreaPerWidth(diameter, spacing manway.Length) manway.Length {
	if !(diameter > 0) || !(spacing > 0) || math.IsInf(float64(diameter), 1) {
		return 0
	}
	return manway.Length(math.Pi / 4 * float64(diameter) * float64(diameter) / float64(spacing))
}
