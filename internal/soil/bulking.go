package soil

import (
	"fmt"

	"manway.example/manway"
)

// Spoil is a kind of ground by how its volume changes when it is dug.
type Spoil uint8

// The kinds of ground. The zero value is common earth.
const (
	CommonEarth Spoil = iota
	SandSpoil
	ClaySpoil
	BlastedRock
)

// volumes are the loose and the compacted volume of one volume in the bank.
// Sand is read in a text that quotes the table, the others are remembered.
var volumes = [...]struct{ loose, compacted float64 }{
	CommonEarth: {1.25, 0.90},
	SandSpoil:   {1.11, 0.95},
	ClaySpoil:   {1.43, 0.90},
	BlastedRock: {1.50, 1.30},
}

// Volumes is one mass of soil in its three states.
type Volumes struct {
	Bank, Loose, Compacted manway.Volume
	Warn                   manway.Cautions
}

// FromBank is what a volume in the bank, 0 to 1e6 m3, becomes when it is dug
// and when it is put back and compacted: bank times the factors of the ground.
// Source: US Navy training manual, Table 10-1 (sand); the other rows of the
// table are remembered.
func (s Spoil) FromBank(bank manway.Volume) (Volumes, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Spoil", int(s), int(CommonEarth), int(BlastedRock))
	if !(bank >= 0 && bank <= 1e6) {
		faults.Add("Bank", fmt.Sprintf("%g m3", float64(bank)), "0 to 1e6 m3")
	}
	if len(faults) > 0 {
		return Volumes{}, faults
	}
	v := volumes[s]
	out := Volumes{Bank: bank, Loose: bank * manway.Volume(v.loose), Compacted: bank * manway.Volume(v.compacted)}
	if s != SandSpoil {
		out.Warn = manway.RememberedFigure
	}
	return out, nil
}
