package manway

// The exact definitions behind the units, untyped so that every unit constant
// is rounded to float64 once, from the exact product.
const (
	inch       = 0.0254                  // m (international inch)
	cubicInch  = inch * inch * inch      // m3
	gallon     = 231 * cubicInch         // m3
	pound      = 0.45359237              // kg (avoirdupois)
	poundForce = pound * StandardGravity // N
)
