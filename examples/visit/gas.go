package visit

import (
	"fmt"

	"manway.example/manway"
)

// gasLimit is one limit of the air in a space, as a meter reads it.
type gasLimit struct {
	name, unit string
	low, high  float64 // outside is hazardous
	hasLow     bool
	source     manway.Citation
}

// The limits of a hazardous atmosphere. Hydrogen sulfide is set against the
// ceiling of general industry; the limit of NIOSH is 10 ppm for 10 minutes, and
// 100 ppm is immediately dangerous to life.
var (
	oxygenLimit    = gasLimit{"oxygen", "%", 19.5, 23.5, true, manway.Citation{Source: manway.OSHA1910, Place: "1910.146(b), hazardous atmosphere"}}
	sulfideLimit   = gasLimit{"hydrogen sulfide", "ppm", 0, 20, false, manway.Citation{Source: manway.OSHA1910, Place: "1910.1000 Table Z-2"}}
	flammableLimit = gasLimit{"flammable gas", "% of its lower limit", 0, 10, false, manway.Citation{Source: manway.OSHA1910, Place: "1910.146(b), hazardous atmosphere"}}
)

// gasNotRead stands where no meter was read.
const gasNotRead = "Gas: no reading. Lower a meter into the opening before anything is stirred, stand upwind, and keep flames and engines away."

// gasSays is what the meter's readings mean. A reading within the limits lets
// nobody in: it holds for the moment and the place of the probe.
func (s Survey) gasSays() (says []string, basis []manway.Citation) {
	if s.Gas == nil {
		return []string{gasNotRead}, nil
	}
	for _, r := range [...]struct {
		v     *float64
		limit gasLimit
	}{{s.Gas.Oxygen, oxygenLimit}, {s.Gas.Sulfide, sulfideLimit}, {s.Gas.Flammable, flammableLimit}} {
		if r.v == nil {
			continue
		}
		basis = append(basis, r.limit.source)
		if *r.v > r.limit.high || r.limit.hasLow && *r.v < r.limit.low {
			says = append(says, fmt.Sprintf("Gas: %s read %g %s, a hazardous atmosphere. Stand upwind, keep ignition away, let it air before anything is stirred.", r.limit.name, *r.v, r.limit.unit))
		}
	}
	if len(basis) == 0 {
		return []string{gasNotRead}, nil
	}
	if len(says) == 0 {
		says = append(says, "Gas: the readings were within the limits at the place and moment of the probe. They let nobody in.")
	}
	return says, merge(basis)
}
