package riser

import (
	"slices"
	"strings"

	"manway.example/manway"
)

// Remedies is every known way of dealing with what was found at an access, each
// with what it cures, delays and leaves, its scope from the survey, its life
// and where that comes from. A remedy that a condition rules out is listed with
// the reason. Guarding an unsafe opening comes first; heavier covers are not
// among them, whatever was found.
//
// A remedy is listed where it cures or delays at least one defect. It fails
// unless condition and site are within their ranges. Sources: those of each line of
// the scope and of the life, in their Basis; the rest is common practice.
func Remedies(c Condition, s Site) ([]Remedy, error) {
	var faults manway.InputErrors
	defects, err := Defects(c)
	faults.Under("Condition", err)
	faults.Under("Site", s.Validate())
	if len(faults) > 0 {
		return nil, faults
	}
	var list []Remedy
	for i := range catalogue {
		p := &catalogue[i]
		if p.kind == GuardNow && !slices.ContainsFunc(defects, unsafeOpening) {
			continue
		}
		if p.fits != nil && !p.fits(s) {
			continue
		}
		r := p.remedy(c, s, defects)
		if len(r.Cures)+len(r.Delays) > 0 {
			list = append(list, r)
		}
	}
	return list, nil
}

// remedy is the proposal on this site.
func (p *proposal) remedy(c Condition, s Site, defects []Defect) Remedy {
	r := Remedy{Kind: p.kind, Title: p.title, NeedsEntry: p.entry, NeedsDig: p.dig, NeedsPump: p.pump, Permit: p.permit}
	r.Life = Life{manway.Duration(p.life[0]) * manway.Year, manway.Duration(p.life[1]) * manway.Year, manway.Duration(p.life[2]) * manway.Year, p.lasts}
	for _, d := range defects {
		switch {
		case slices.Contains(r.Cures, d.Kind) || slices.Contains(r.Delays, d.Kind) || slices.Contains(r.Leaves, d.Kind):
		case slices.Contains(p.cures, d.Kind):
			r.Cures = append(r.Cures, d.Kind)
		case slices.Contains(p.delays, d.Kind):
			r.Delays = append(r.Delays, d.Kind)
		default:
			r.Leaves = append(r.Leaves, d.Kind)
		}
	}
	var reasons []string
	for _, bar := range p.bars {
		if reason := bar(c, s); reason != "" && !slices.Contains(reasons, reason) {
			reasons = append(reasons, reason)
		}
	}
	r.RuledOut = strings.Join(reasons, "; ")
	b := scoper{s: s}
	p.scope(&b)
	r.Scope, r.Unscoped, r.Assumed = b.items, b.wants, b.made
	r.Cautions = p.extra | manway.GuardHole | manway.NeverEnter | manway.LocalCode | manway.Pathogens
	if p.entry {
		r.Cautions |= manway.PermitEntry | manway.GasAndIgnition
	}
	if p.dig {
		r.Cautions |= manway.TrenchCollapse | manway.LocateUtilities | manway.KeepOffRoof | manway.MayFloat | manway.MayCave | manway.AsbestosCement
	}
	if p.pump {
		r.Cautions |= manway.MayFloat | manway.MayCave | manway.LicensedWork
	}
	for _, item := range r.Scope {
		if item.Code == "hoist" {
			r.Cautions |= manway.HeavyLift | manway.OverheadLines | manway.FingersAndFeet
		}
	}
	return r
}

// Notice is the written notice that the owner is given before the crew leaves
// an unsafe opening; it is false where none was found.
func Notice(access string, defects []Defect) (text string, ok bool) {
	var b strings.Builder
	if access != "" {
		access = " \"" + access + "\""
	}
	b.WriteString("NOTICE: the opening" + access + " is not safe to leave open, to stand on or to let children near.\n")
	for _, d := range defects {
		if unsafeOpening(d) {
			ok = true
			b.WriteString("- " + d.Reason + ".\n")
		}
	}
	if !ok {
		return "", false
	}
	b.WriteString("It was guarded before we left. Keep people, animals and vehicles away, do not remove the guard, and have it repaired before the access is used again.\n")
	return b.String(), true
}
