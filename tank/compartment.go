package tank

import "manway.example/manway"

// Compartment is the part of a tank between two partitions or ends. Liquid over
// a part-height partition belongs to none.
type Compartment struct {
	From, To manway.Length // inside faces, along the straight part

	solid        solid
	span         span
	height, full float64
}

// Volume is the liquid of the compartment below a depth above the floor. What
// stands between two levels is the difference of two volumes.
//
// Errors: a depth below 0 or above the inside height.
//
// Source: as [Tank.Volume].
func (c *Compartment) Volume(depth manway.Length) (manway.Volume, error) {
	if !(depth >= 0 && float64(depth) <= c.height) || c.solid == nil {
		return 0, outOfRange("depth", depth, manway.Length(c.height))
	}
	return manway.Volume(c.liquid(float64(depth))), nil
}

// Area is the surface of its liquid at a depth.
//
// Errors: as Volume.
//
// Source: as [Tank.Volume].
func (c *Compartment) Area(depth manway.Length) (manway.Area, error) {
	if !(depth >= 0 && float64(depth) <= c.height) || c.solid == nil {
		return 0, outOfRange("depth", depth, manway.Length(c.height))
	}
	return manway.Area(c.surface(float64(depth))), nil
}

// Depth is the depth at which the compartment holds a volume.
//
// Errors: a volume below 0 or above Full.
//
// Source: Volume, inverted.
func (c *Compartment) Depth(v manway.Volume) (manway.Length, error) {
	if !(v >= 0 && float64(v) <= c.full) || c.solid == nil {
		return 0, outOfRange("volume", v, manway.Volume(c.full))
	}
	return manway.Length(invert(c, float64(v), c.full, c.height)), nil
}

// Full is the volume up to the inside of the roof.
func (c *Compartment) Full() manway.Volume { return manway.Volume(c.full) }

// Length is the inside length along the straight part.
func (c *Compartment) Length() manway.Length { return c.To - c.From }

// Basis lists where the volumes come from.
func (c *Compartment) Basis() []manway.Citation { return new(Tank).Basis() }

func (c *Compartment) liquid(depth float64) float64  { return c.solid.volume(c.span, depth) }
func (c *Compartment) surface(depth float64) float64 { return c.solid.area(c.span, depth) }
