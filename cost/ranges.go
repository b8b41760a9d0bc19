package cost

import (
	"math"
	"strconv"

	"manway.example/manway"
)

// Shape is how the values between low and high are taken to be spread.
type Shape uint8

// The shapes.
const (
	// PERT is the beta distribution on [low, high] with
	// alpha = 1 + 4(m-a)/(b-a) and beta = 1 + 4(b-m)/(b-a), whose mean is
	// (a+4m+b)/6.
	PERT Shape = iota
	// Triangular rises in a straight line to the likely value and falls to high.
	Triangular
	// Normal is the normal distribution about the middle with a sixth of the
	// spread as standard deviation, cut off at low and high, where 0.27 % of it
	// would lie beyond. The likely value must be the middle.
	Normal
)

var shapes = [...]string{"pert", "triangular", "normal"}

// String is the shape in one word.
func (s Shape) String() string { return manway.Word(shapes[:], s) }

// MarshalText is the same as String.
func (s Shape) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads pert, triangular or normal.
func (s *Shape) UnmarshalText(text []byte) error {
	return manway.ReadWord(s, "shape", shapes[:], text)
}

// Range is a value that is known only within limits: the lowest, the likely and
// the highest. Low equal to high is a value known exactly.
type Range struct {
	Low    float64 `json:"low"`
	Likely float64 `json:"likely"`
	High   float64 `json:"high"`
	Shape  Shape   `json:"shape"`
}

// IsZero reports whether r is no range.
func (r Range) IsZero() bool { return r == Range{} }

// Validate returns every fault of r.
func (r Range) Validate() error {
	var faults manway.InputErrors
	checkFloat(&faults, "Low", r.Low, 0, 1e12)
	checkFloat(&faults, "Likely", r.Likely, 0, 1e12)
	checkFloat(&faults, "High", r.High, 0, 1e12)
	if int(r.Shape) >= len(shapes) {
		faults.Add("Shape", r.Shape.String(), "pert, triangular or normal")
	}
	if len(faults) == 0 {
		middle := (r.Low + r.High) / 2
		g := func(v float64) string { return strconv.FormatFloat(v, 'g', 6, 64) }
		switch {
		case !(r.Low <= r.Likely && r.Likely <= r.High):
			faults.Add("Likely", g(r.Likely), g(r.Low)+" to "+g(r.High))
		case r.Shape == Normal && math.Abs(r.Likely-middle) > 1e-9*math.Max(r.High, 1):
			faults.Add("Likely", g(r.Likely), "the middle of a normal range, "+g(middle))
		}
	}
	return faults.Err()
}

// Moments are the mean and the standard deviation of an uncertain value.
type Moments struct{ Mean, SD float64 }

// ThreePoint are the moments by the three-point rule of project planning:
//
//	mean = (a + 4m + b)/6
//	sd   = (b - a)/6
//
// The mean is that of the PERT shape; the standard deviation is the rule's, not
// that of the beta distribution, which [Range.Moments] gives. Source: common
// practice of project planning.
func (r Range) ThreePoint() (Moments, error) {
	if err := r.Validate(); err != nil {
		return Moments{}, err
	}
	return Moments{(r.Low + 4*r.Likely + r.High) / 6, (r.High - r.Low) / 6}, nil
}

// Moments are the moments of the shape that is drawn from:
//
//	PERT        mean (a+4m+b)/6, variance (mean-a)(b-mean)/7
//	Triangular  mean (a+m+b)/3, variance (a²+m²+b²-am-ab-mb)/18
//	Normal      mean m, sd (b-a)/6 times 0.98658, for what is cut off
//
// Source: the distributions of gonum's stat/distuv; the cut normal by its formula.
func (r Range) Moments() (Moments, error) {
	if err := r.Validate(); err != nil {
		return Moments{}, err
	}
	return r.moments(), nil
}

func (r Range) moments() Moments {
	a, m, b := r.Low, r.Likely, r.High
	switch r.Shape {
	case Triangular:
		// The variance in differences from a loses no digits.
		p, q := m-a, b-a
		return Moments{(a + m + b) / 3, math.Sqrt((p*p + q*q - p*q) / 18)}
	case Normal:
		return Moments{m, (b - a) / 6 * cutNormal}
	}
	mean := (a + 4*m + b) / 6
	return Moments{mean, math.Sqrt(math.Max((mean-a)*(b-mean)/7, 0))}
}

// cutNormal is the standard deviation of the standard normal distribution cut
// off at ±3: sqrt(1 - 2·3·phi(3)/(2·Phi(3)-1)), with phi(3) = 0.00443184841193801
// and 2·Phi(3)-1 = 0.997300203936740.
var cutNormal = math.Sqrt(1 - 6*0.00443184841193801/0.997300203936740)

// SumOf are the moments of a sum of uncertain values with one correlation rho
// between each two of them, 0 to 1:
//
//	mean = sum of means
//	var  = (1 - rho) sum sd² + rho (sum sd)²
//
// At rho = 0 the deviations add by root-sum-square, at 1 plainly: leaving out a
// positive correlation makes the spread look too small. Means within 1e12,
// deviations of 0 or more. Source: the variance of a sum, textbooks of statistics.
func SumOf(parts []Moments, rho float64) (Moments, error) {
	var faults manway.InputErrors
	checkFloat(&faults, "Rho", rho, 0, 1)
	var mean, squares, sum float64
	for i, p := range parts {
		if checkItem(&faults, "Parts", i, ".Mean", p.Mean, -1e12, 1e12) && checkItem(&faults, "Parts", i, ".SD", p.SD, 0, 1e12) {
			mean += p.Mean
			squares += p.SD * p.SD
			sum += p.SD
		}
	}
	if err := faults.Err(); err != nil {
		return Moments{}, err
	}
	return Moments{mean, math.Sqrt((1-rho)*squares + rho*sum*sum)}, nil
}
