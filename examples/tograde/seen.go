package main

import (
	"strconv"

	"manway.example/manway"
	"manway.example/manway/lid"
	"manway.example/manway/riser"
)

// seen is what was observed, see riser.Condition.
type seen struct {
	Missing       manway.Answer   `json:"missing"`
	Size          manway.Reading  `json:"size"`
	CoverPresent  manway.Answer   `json:"cover_present"`
	CoverDrops    manway.Answer   `json:"cover_drops"`
	CoverCracked  manway.Answer   `json:"cover_cracked"`
	CoverStrength status          `json:"cover_strength"`
	CoverMass     manway.Mass     `json:"cover_mass"`
	CrewLimit     manway.Mass     `json:"crew_limit"`
	CoverDepth    manway.Reading  `json:"cover_depth"`
	Fastened      manway.Answer   `json:"fastened"`
	Guard         manway.Answer   `json:"guard"`
	Handle        lid.HandleState `json:"handle"`
	RimGap        manway.Reading  `json:"rim_gap"`
	Bearing       manway.Reading  `json:"bearing"`
	JointSealed   manway.Answer   `json:"joint_sealed"`
	JointGap      manway.Reading  `json:"joint_gap"`
	Roots         manway.Answer   `json:"roots"`
	WaterStain    manway.Answer   `json:"water_stain"`
	Odour         manway.Answer   `json:"odour"`
	SpallDepth    manway.Reading  `json:"spall_depth"`
	Thickness     manway.Reading  `json:"thickness"`
	SteelExposed  manway.Answer   `json:"steel_exposed"`
	CrackWidth    manway.Reading  `json:"crack_width"`
	Settled       manway.Reading  `json:"settled"`
	RoofStrength  status          `json:"roof_strength"`
}

// status is the outcome of a screening as a record says it.
type status struct {
	manway.Status
	given bool
}

// UnmarshalText accepts pass, fail, not shown and not judged.
func (s *status) UnmarshalText(text []byte) error {
	for _, k := range []manway.Status{manway.NotJudged, manway.Pass, manway.Fail, manway.NotShown, manway.NotPermitted} {
		if k.String() == string(text) {
			s.Status, s.given = k, k != manway.NotJudged
			return nil
		}
	}
	return &manway.InputError{Field: "status", Value: strconv.Quote(string(text)), Want: "pass, fail, not shown, not permitted or not judged"}
}

// condition is what was seen in the riser's own terms.
func (s *seen) condition() riser.Condition {
	return riser.Condition{
		Missing: s.Missing, Size: s.Size,
		CoverPresent: s.CoverPresent, CoverDrops: s.CoverDrops, CoverCracked: s.CoverCracked, CoverStrength: s.CoverStrength.Status,
		CoverMass: s.CoverMass, CrewLimit: s.CrewLimit, CoverDepth: s.CoverDepth, Fastened: s.Fastened, Guard: s.Guard,
		Handle: s.Handle, RimGap: s.RimGap, Bearing: s.Bearing,
		JointSealed: s.JointSealed, JointGap: s.JointGap, Roots: s.Roots, WaterStain: s.WaterStain, Odour: s.Odour,
		SpallDepth: s.SpallDepth, Thickness: s.Thickness, SteelExposed: s.SteelExposed, CrackWidth: s.CrackWidth, Settled: s.Settled,
		RoofStrength: s.RoofStrength.Status, RoofSeen: s.RoofStrength.given,
	}
}
