package plate

// The element is the Bogner-Fox-Schmit rectangle: the product of cubic Hermite
// functions in x and in y, with w, dw/dx, dw/dy and d2w/dxdy at each corner.
// It is conforming (slopes are continuous). F. K. Bogner, R. L. Fox and
// L. A. Schmit, "The generation of inter-element-compatible stiffness and mass
// matrices by the use of interpolation formulas", 1965.

// hermite gives the four cubic Hermite functions of an interval of length h at
// xi in [0, 1], and their first and second derivatives: value and slope at the
// left end, value and slope at the right end.
func hermite(xi, h float64) (n, d, dd [4]float64) {
	n = [4]float64{
		1 - xi*xi*(3-2*xi),
		h * xi * (1 - xi) * (1 - xi),
		xi * xi * (3 - 2*xi),
		-h * xi * xi * (1 - xi),
	}
	d = [4]float64{
		-6 * xi * (1 - xi) / h,
		(1 - xi) * (1 - 3*xi),
		6 * xi * (1 - xi) / h,
		xi * (3*xi - 2),
	}
	dd = [4]float64{
		(12*xi - 6) / (h * h),
		(6*xi - 4) / h,
		(6 - 12*xi) / (h * h),
		(6*xi - 2) / h,
	}
	return n, d, dd
}

// shapes are the Hermite functions at one point and their derivatives.
type shapes struct{ n, d, dd [4]float64 }

// forms are the 4 by 4 matrices of one interval, row by row:
// a0 = int N N', a1 = int dN dN', a2 = int ddN ddN', b = int ddN N'.
type forms struct{ a0, a1, a2, b [16]float64 }

// add adds weight times the products of the functions at one point.
func (f *forms) add(weight float64, n, d, dd *[4]float64) {
	for p := range 4 {
		wn, wd, wdd := weight*n[p], weight*d[p], weight*dd[p]
		for r := range 4 {
			k := 4*p + r
			f.a0[k] += wn * n[r]
			f.a1[k] += wd * d[r]
			f.a2[k] += wdd * dd[r]
			f.b[k] += wdd * n[r]
		}
	}
}

// intervalForms integrates over a whole interval, exactly (degree 6).
func intervalForms(h float64) (f forms) {
	for g, xi := range gauss4 {
		n, d, dd := hermite(xi, h)
		f.add(weight4[g]*h, &n, &d, &dd)
	}
	return f
}

// Gauss-Legendre abscissae and weights on [0, 1].
var (
	gauss2  = [2]float64{0.21132486540518712, 0.7886751345948129}
	gauss4  = [4]float64{0.06943184420297371, 0.33000947820757187, 0.6699905217924281, 0.9305681557970263}
	weight4 = [4]float64{0.17392742256872692, 0.32607257743127307, 0.32607257743127307, 0.17392742256872692}
	gauss8  = [8]float64{0.019855071751231856, 0.10166676129318664, 0.2372337950418355, 0.4082826787521751,
		0.5917173212478249, 0.7627662049581645, 0.8983332387068134, 0.9801449282487682}
	weight8 = [8]float64{0.05061426814518813, 0.11119051722668724, 0.15685332293894363, 0.1813418916891810,
		0.1813418916891810, 0.15685332293894363, 0.11119051722668724, 0.05061426814518813}
)

// addStiffness adds the stiffness of a cell of flexural rigidity d to k: the
// products of the interval matrices of its two directions,
//
//	d (x2 y0 + x0 y2 + nu (xb yb' + xb' yb) + 2 (1-nu) x1 y1).
//
// Row and column 4*p+q is the product of function p in x and q in y.
func addStiffness(k *[256]float64, d, nu float64, x, y *forms) {
	var yt [16]float64 // transpose of y.b
	for q := range 4 {
		for s := range 4 {
			yt[4*q+s] = y.b[4*s+q]
		}
	}
	for p := range 4 {
		for r := range 4 {
			i := 4*p + r
			x2, x0, x1 := d*x.a2[i], d*x.a0[i], 2*(1-nu)*d*x.a1[i]
			xb, xt := nu*d*x.b[i], nu*d*x.b[4*r+p]
			for q := range 4 {
				row := k[64*p+16*q+4*r:][:4]
				for s := range 4 {
					j := 4*q + s
					row[s] += x2*y.a0[j] + x0*y.a2[j] + xb*yt[j] + xt*y.b[j] + x1*y.a1[j]
				}
			}
		}
	}
}

// corner gives the node (0 or 1 in x, 0 or 1 in y) and the unknown (0 w, 1 wy,
// 2 wx, 3 wxy) of local function k of a cell.
func corner(k int) (di, dj, unknown int) {
	p, q := k>>2, k&3
	return p >> 1, q >> 1, 2*(p&1) + q&1
}

// times adds k u to out.
func times(k *[256]float64, u, out *[16]float64) {
	for a := range 16 {
		sum := 0.0
		for b, v := range k[16*a:][:16] {
			sum += v * u[b]
		}
		out[a] += sum
	}
}

// timesForms adds to out what times does for the matrix of addStiffness, without
// forming it: first the matrices of y, then those of x.
func timesForms(d, nu float64, x, y *forms, u, out *[16]float64) {
	for r := range 4 {
		row := u[4*r:][:4]
		var y0, y1, y2, yb, yt [4]float64
		for q := range 4 {
			for s, v := range row {
				y0[q] += y.a0[4*q+s] * v
				y1[q] += y.a1[4*q+s] * v
				y2[q] += y.a2[4*q+s] * v
				yb[q] += y.b[4*q+s] * v
				yt[q] += y.b[4*s+q] * v
			}
		}
		for p := range 4 {
			i := 4*p + r
			x2, x0, x1 := d*x.a2[i], d*x.a0[i], 2*(1-nu)*d*x.a1[i]
			xb, xt := nu*d*x.b[i], nu*d*x.b[4*r+p]
			for q := range 4 {
				out[4*p+q] += x2*y0[q] + x0*y2[q] + xb*yt[q] + xt*yb[q] + x1*y1[q]
			}
		}
	}
}
