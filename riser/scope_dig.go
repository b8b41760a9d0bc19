package riser

import (
	"math"
	"strconv"

	"manway.example/manway"
)

// machineDig is the excavation round the whole tank.
func (b *scoper) machineDig() {
	b.locate()
	if b.s.TankPit.Depth == 0 {
		b.want("depth and size of the whole excavation")
		return
	}
	d, err := DigOf(b.s.TankPit)
	if err != nil {
		b.want("an excavation that may be dug")
		return
	}
	b.made |= d.Assumed
	yards, fill := d.Bank.In(manway.CubicYard), d.Backfill.In(manway.CubicYard)
	b.add("excavator", yards*machineDig+fill*machineFill, num(yards)+" yd3 x 0.2 h + "+num(fill)+" yd3 x 0.6 h, the operator's hours", manway.Citation{Source: storm2019, Place: "p. 55: excavate by backhoe, backfill by loader and tamper"})
	if b.s.TankPit.Shored {
		b.each("shoring", 1, "sides held vertical")
	}
	b.surplus(d)
	b.lawn(d)
}

// Machine hours for a cubic yard (Storm 2019 p. 55).
const (
	machineDig  = 0.20
	machineFill = 0.60
)

// locate is the call and the wait before any dig.
func (b *scoper) locate() {
	days := b.s.LocateDays
	if days == 0 {
		days = usualLocateDays
	}
	b.each("locate", 1, "one call before any dig")
	b.add("wait-locate", float64(days), strconv.Itoa(days)+" working days' notice", manway.Citation{Source: virginia811, Place: "3 working days; others differ"})
}

// evened is the share of the soil that is evened out on the lawn: practice.
const evened = 0.02

// surplus is soil left over, or wanting, after refilling.
func (b *scoper) surplus(d Dig) {
	e, over := d.Pit.Earth, d.Over.In(manway.CubicYard)
	if math.Abs(over) < evened*d.Bank.In(manway.CubicYard) {
		return
	}
	if over > 0 {
		b.add("spoil-haul", over*e.Loose(), num(over)+" yd3 left over x "+num(e.Loose()), manway.Citation{Source: fm5434, Place: "Table 1-1"})
	} else {
		b.add("fill", -over*e.Compacted(), num(-over)+" yd3 of bank soil short x "+num(e.Compacted()), manway.Citation{Source: fm5434, Place: "Table 1-1"})
	}
}

// dig is everything that a pit down to the joint brings with it.
func (b *scoper) dig() {
	b.locate()
	if b.s.Pit.Depth == 0 {
		b.want("depth and size of the pit")
		return
	}
	d, err := DigOf(b.s.Pit)
	if err != nil {
		b.want("a pit that may be dug")
		return
	}
	b.made |= d.Assumed
	size := "pit " + d.Bottom[0].Text(b.s.Units) + " at the bottom, " + d.Top[0].Text(b.s.Units) + " at grade, " + b.s.Pit.Depth.Text(b.s.Units) + " deep: "
	b.addCrew("dig-hand", d.HandHours.In(manway.Hour), 1, size+d.Bank.Text(manway.SI)+" x "+num(earths[b.s.Pit.Earth].hand)+" h/m3", manway.Citation{Source: handTrench, Place: "hand trench to 1 m, " + b.s.Pit.Earth.String()})
	b.addCrew("backfill-hand", d.FillHours.In(manway.Hour), 1, d.Backfill.Text(manway.SI)+" x 1 h/m3", manway.Citation{Source: handTrench, Place: "backfill and compact"})
	if d.Ladder {
		b.each("ladder", 1, "pit of 4 ft or deeper")
	}
	if b.s.Pit.Shored {
		b.each("shoring", 1, "sides held vertical")
	}
	b.surplus(d)
	b.lawn(d)
}

// lawn is topsoil and seed over the top of the pit.
func (b *scoper) lawn(d Dig) {
	soil := b.s.Topsoil
	if soil == 0 {
		soil = usualTopsoil
	}
	area := d.TopArea
	b.add("topsoil", area.Times(soil).In(manway.CubicYard), num(area.In(manway.SquareFoot))+" ft2 x "+soil.Text(b.s.Units), practice("4 to 6 in of topsoil under a new lawn"))
	b.add("seed", area.In(manway.SquareInch)*lawnSeed, num(area.In(manway.SquareFoot))+" ft2 x 3 lb per 1000 ft2", practice("lawn seed, 1 to 8 lb per 1000 ft2 by kind"))
}
