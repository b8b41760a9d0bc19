package concrete

import (
	"math"

	"manway.example/manway"
)

// PhiBreakout is phi of a breakout cone in tension or shear without steel that
// ties the cone back (ACI 318-19 Table 17.5.3(b)).
const PhiBreakout = 0.70

// Breakout is the cone of concrete that an anchor in tension pulls out: a
// handle cast into a lid.
type Breakout struct {
	Concrete     manway.Concrete
	Embedment    manway.Length // hef, 0.5 to 25 in; it cannot exceed the lid's thickness less cover
	Edge         manway.Length // ca,min, from the anchor to the nearest edge; 0: no edge near
	Area         manway.Area   // ANc, projected cone within the edges, at most 9 hef^2 an anchor; 0: one anchor, cut by Edge
	Coefficient  float64       // kc, 17 to 24; 0: 24, cast in
	Headed       bool          // headed stud or bolt: hef 11 in and more by 16 lambda sqrt(f'c) hef^(5/3)
	Uncracked    bool          // shown not to crack at service load: psi_c 1.25
	Eccentricity manway.Length // e'N of a group's load; 0: none
}

// BreakoutStrength is the strength of the cone and its factors.
type BreakoutStrength struct {
	Single manway.Force // Nb, one anchor far from edges
	Full   manway.Area  // ANc0 = 9 hef^2
	Area   manway.Area  // ANc
	PsiEC  float64
	PsiED  float64
	PsiC   float64
	Phi    float64
	Design manway.Force // phi Ncb
	// Nominal is Ncb or, for a group, Ncbg.
	Nominal manway.Force
}

// Validate returns the faults of b.
func (b Breakout) Validate() error {
	var faults manway.InputErrors
	if err := b.Concrete.Validate(); err != nil {
		faults.Under("Concrete", err)
	}
	manway.Within(&faults, "Embedment", b.Embedment, 0.5*manway.Inch, 25*manway.Inch)
	manway.Within(&faults, "Edge", b.Edge, 0, 100*manway.Foot)
	manway.Within(&faults, "Area", b.Area, 0, 1000*manway.SquareFoot)
	if b.Coefficient != 0 {
		manway.Within(&faults, "Coefficient", b.Coefficient, 17, 24)
	}
	manway.Within(&faults, "Eccentricity", b.Eccentricity, 0, 100*manway.Foot)
	return faults.Err()
}

// Strength is
//
//	Nb    = kc lambda sqrt(f'c) hef^1.5             in lbf, psi, in
//	Ncb   = ANc/ANc0 psi_ec psi_ed psi_c Nb,  ANc0 = 9 hef^2
//	psi_ed = 0.7 + 0.3 ca/(1.5 hef) where ca < 1.5 hef, else 1
//	psi_ec = 1/(1 + e'N/(1.5 hef))
//
// for an anchor cast in, or post-installed in concrete taken as cracked
// (psi_cp 1). Source: ACI 318-19 17.6.2; kc 24 and phi are remembered.
func (b Breakout) Strength() (BreakoutStrength, error) {
	if err := b.Validate(); err != nil {
		return BreakoutStrength{}, err
	}
	m, h := of(b.Concrete), b.Embedment.In(manway.Inch)
	kc := b.Coefficient
	if kc == 0 {
		kc = 24
	}
	nb := kc * m.rootCapped() * math.Pow(h, 1.5) // Eq. 17.6.2.2.1
	if b.Headed && h >= 11 {
		nb = 16 * m.rootCapped() * math.Pow(h, 5.0/3) // Eq. 17.6.2.2.3
	}
	reach := 1.5 * b.Embedment
	full := 4 * reach.Times(reach)
	area, psiED := b.Area, 1.0
	if area == 0 {
		area = full
	}
	if b.Edge > 0 && b.Edge < reach {
		psiED = 0.7 + 0.3*float64(b.Edge/reach) // Eq. 17.6.2.4.1b
		if b.Area == 0 {
			area = (reach + b.Edge).Times(2 * reach)
		}
	}
	psiEC := 1 / (1 + float64(b.Eccentricity/reach)) // Eq. 17.6.2.3.1
	psiC := 1.0
	if b.Uncracked {
		psiC = 1.25
	}
	single := manway.Force(nb) * manway.PoundForce
	n := single * manway.Force(float64(area/full)*psiEC*psiED*psiC)
	return BreakoutStrength{
		Single: single, Full: full, Area: area, PsiEC: psiEC, PsiED: psiED, PsiC: psiC,
		Phi: PhiBreakout, Nominal: n, Design: PhiBreakout * n,
	}, nil
}

// EdgeBreakout is the wedge that an anchor in shear breaks out of an edge.
type EdgeBreakout struct {
	Concrete  manway.Concrete
	Bearing   manway.Length // le, length of the anchor that bears, 0.5 to 25 in
	Diameter  manway.Length // da, 0.1 to 2.5 in
	Edge      manway.Length // ca1, in the direction of the load, 0.5 in to 10 ft
	Thickness manway.Length // of the member; 0: 1.5 ca1 or more
}

// EdgeBreakoutStrength is the strength of the wedge of one anchor far from
// other edges.
type EdgeBreakoutStrength struct {
	ByDiameter manway.Force // 7 (le/da)^0.2 sqrt(da) lambda sqrt(f'c) ca1^1.5
	ByEdge     manway.Force // 9 lambda sqrt(f'c) ca1^1.5
	Basic      manway.Force // Vb, the lesser
	Phi        float64
	Nominal    manway.Force // Vcb
	Design     manway.Force
}

// Strength is
//
//	Vb  = lesser of 7 (le/da)^0.2 sqrt(da) and 9, times lambda sqrt(f'c) ca1^1.5
//	Vcb = min(1, h/(1.5 ca1)) sqrt(1.5 ca1/h) Vb where h < 1.5 ca1
//
// with le at most 8 da. Source: ACI 318-19 17.7.2.
func (b EdgeBreakout) Strength() (EdgeBreakoutStrength, error) {
	var faults manway.InputErrors
	if err := b.Concrete.Validate(); err != nil {
		faults.Under("Concrete", err)
	}
	manway.Within(&faults, "Bearing", b.Bearing, 0.5*manway.Inch, 25*manway.Inch)
	manway.Within(&faults, "Diameter", b.Diameter, 0.1*manway.Inch, 2.5*manway.Inch)
	manway.Within(&faults, "Edge", b.Edge, 0.5*manway.Inch, 10*manway.Foot)
	if b.Thickness != 0 {
		manway.Within(&faults, "Thickness", b.Thickness, 0.25*manway.Inch, 20*manway.Foot)
	}
	if len(faults) > 0 {
		return EdgeBreakoutStrength{}, faults
	}
	le, da, ca := min(b.Bearing, 8*b.Diameter).In(manway.Inch), b.Diameter.In(manway.Inch), b.Edge.In(manway.Inch)
	base := of(b.Concrete).rootCapped() * math.Pow(ca, 1.5)
	byD := 7 * math.Pow(le/da, 0.2) * math.Sqrt(da) * base // Eq. 17.7.2.2.1a
	byE := 9 * base                                        // Eq. 17.7.2.2.1b
	deep := 1.0
	if h := b.Thickness.In(manway.Inch); h > 0 && h < 1.5*ca {
		deep = h / (1.5 * ca) * math.Sqrt(1.5*ca/h) // AVc/AVco and psi_h, 17.7.2.6
	}
	lbf := func(x float64) manway.Force { return manway.Force(x) * manway.PoundForce }
	vb := math.Min(byD, byE)
	return EdgeBreakoutStrength{lbf(byD), lbf(byE), lbf(vb), PhiBreakout, lbf(vb * deep), lbf(PhiBreakout * vb * deep)}, nil
}
