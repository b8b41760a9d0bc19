// Package concrete answers what a section of structural concrete carries by
// ACI 318-19, in US customary units as the code prints its equations: bending,
// one-way and two-way shear, bearing, plain concrete, the breakout cone of an
// anchor, and the tables of bars and welded wire. [Strip] puts them together
// for what stands there: a slab or wall worn on one face, whose steel may be
// unknown, below the code's least, or laid bare.
//
//	material.go  fr 19.2.3, Ec 19.2.2, lambda 19.2.4, beta1 22.2.2.4.3
//	flexure.go   22.2 and 21.2.2
//	shear.go     22.5.5.1 with the size effect
//	punching.go  22.6
//	plain.go     chapter 14
//	bearing.go   22.8.3
//	breakout.go  17.6.2 and 17.7.2
//	bars.go      ASTM A615 bars, A1064 wire
//	strip.go     an existing slab or wall, per width
//
// Loads are positive where they press, moments where they pull the face that
// the steel is near. Steel is elastic to its yield and then flat; its modulus
// is 29,000 ksi (20.2.2.2). Concrete in tension is not counted except as plain
// concrete. Bars are taken as anchored: hooks, laps and development length are
// not judged here.
//
// Every calculation refuses NaN, infinities and values outside its range with
// manway.InputErrors, does not allocate where it accepts, and returns finite
// figures. The strengths of existing structures come closer to the truth by
// chapter 27 of the code, measured dimensions and cores, or a load test, than
// by any of this.
package concrete
