package plate

import (
	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/gonum"
	lapack "gonum.org/v1/gonum/lapack/gonum"
)

// The dense kernels are gonum's, called in blocks of at most blockSize rows and
// columns: on larger ones Dgemm starts goroutines and allocates.
const blockSize = 64

var (
	kernel  gonum.Implementation
	lkernel lapack.Implementation
)

// factorPanel turns the m by e panel p (rows ld apart, m >= e: the lower triangle
// of the e eliminated unknowns with the m-e rows below it) into its Cholesky
// factor. It reports false when a pivot is not positive.
func factorPanel(p []float64, m, e, ld int) bool {
	for j := 0; j < e; j += blockSize {
		nb := min(blockSize, e-j)
		for i := j; i < m && j > 0; i += blockSize {
			kernel.Dgemm(blas.NoTrans, blas.Trans, min(blockSize, m-i), nb, j,
				-1, p[i*ld:], ld, p[j*ld:], ld, 1, p[i*ld+j:], ld)
		}
		if !lkernel.Dpotf2(blas.Lower, nb, p[j*ld+j:], ld) {
			return false
		}
		solveRows(p[j*ld+j:], p[min((j+nb)*ld+j, len(p)):], m-j-nb, nb, ld)
	}
	return true
}

// solveRows solves x l' = b for the m rows of b, where l is the n by n lower
// triangle; both have rows e apart. It takes four rows at a time, which on the
// short rows of most fronts is twice as fast as the library's Dtrsm.
func solveRows(l, b []float64, m, n, e int) {
	i := 0
	for ; i+4 <= m; i += 4 {
		b0, b1, b2, b3 := b[i*e:][:n], b[(i+1)*e:][:n], b[(i+2)*e:][:n], b[(i+3)*e:][:n]
		for j := range n {
			row := l[j*e:][:j]
			c0, c1, c2, c3 := b0[:len(row)], b1[:len(row)], b2[:len(row)], b3[:len(row)]
			var s0, s1, s2, s3 float64
			for k, v := range row {
				s0 += v * c0[k]
				s1 += v * c1[k]
				s2 += v * c2[k]
				s3 += v * c3[k]
			}
			d := 1 / l[j*e+j]
			b0[j] = (b0[j] - s0) * d
			b1[j] = (b1[j] - s1) * d
			b2[j] = (b2[j] - s2) * d
			b3[j] = (b3[j] - s3) * d
		}
	}
	if i < m {
		kernel.Dtrsm(blas.Right, blas.Lower, blas.Trans, blas.NonUnit, m-i, n, 1, l, e, b[i*e:], e)
	}
}

// solveLower solves l y = x in place, l the n by n lower triangle with rows ld
// apart: four rows at a time, for n is small in most fronts and a call per row, as
// the library's Dtrsv makes, costs more than the row.
func solveLower(l, x []float64, n, ld int) {
	i := 0
	for ; i+4 <= n; i += 4 {
		r0, r1, r2, r3 := l[i*ld:][:i+4], l[(i+1)*ld:][:i+4], l[(i+2)*ld:][:i+4], l[(i+3)*ld:][:i+4]
		own := x[i:][:4]
		s0, s1, s2, s3 := own[0], own[1], own[2], own[3]
		for k, v := range x[:i] {
			s0 -= r0[k] * v
			s1 -= r1[k] * v
			s2 -= r2[k] * v
			s3 -= r3[k] * v
		}
		s0 /= r0[i]
		s1 = (s1 - r1[i]*s0) / r1[i+1]
		s2 = (s2 - r2[i]*s0 - r2[i+1]*s1) / r2[i+2]
		s3 = (s3 - r3[i]*s0 - r3[i+1]*s1 - r3[i+2]*s2) / r3[i+3]
		own[0], own[1], own[2], own[3] = s0, s1, s2, s3
	}
	for ; i < n; i++ {
		row, s := l[i*ld:][:i+1], x[i]
		for k, v := range x[:i] {
			s -= row[k] * v
		}
		x[i] = s / row[i]
	}
}

// solveUpper solves l' y = x in place.
func solveUpper(l, x []float64, n, ld int) {
	i := n
	for ; i%4 > 0; i-- {
		row := l[(i-1)*ld:][:i]
		v := x[i-1] / row[i-1]
		x[i-1] = v
		for k, w := range row[:i-1] {
			x[k] -= w * v
		}
	}
	for i -= 4; i >= 0; i -= 4 {
		r0, r1, r2, r3 := l[i*ld:][:i+4], l[(i+1)*ld:][:i+4], l[(i+2)*ld:][:i+4], l[(i+3)*ld:][:i+4]
		own := x[i:][:4]
		v3 := own[3] / r3[i+3]
		v2 := (own[2] - r3[i+2]*v3) / r2[i+2]
		v1 := (own[1] - r3[i+1]*v3 - r2[i+1]*v2) / r1[i+1]
		v0 := (own[0] - r3[i]*v3 - r2[i]*v2 - r1[i]*v1) / r0[i]
		own[0], own[1], own[2], own[3] = v0, v1, v2, v3
		rest := x[:i]
		for k := range rest {
			rest[k] -= r0[k]*v0 + r1[k]*v1 + r2[k]*v2 + r3[k]*v3
		}
	}
}

// subtractOuter subtracts l l' (l is r by e, its rows ldl apart) from the lower
// triangle of the r by r matrix u.
func subtractOuter(u []float64, r, ldu int, l []float64, e, ldl int) {
	if e == 0 {
		return
	}
	for i := 0; i < r; i += blockSize {
		mi := min(blockSize, r-i)
		for j := 0; j < i; j += blockSize {
			kernel.Dgemm(blas.NoTrans, blas.Trans, mi, min(blockSize, i-j), e,
				-1, l[i*ldl:], ldl, l[j*ldl:], ldl, 1, u[i*ldu+j:], ldu)
		}
		kernel.Dsyrk(blas.Lower, blas.NoTrans, mi, e, -1, l[i*ldl:], ldl, 1, u[i*ldu+i:], ldu)
	}
}

// resize gives s the length n, reusing its memory when it can; the contents are
// not defined.
func resize[T any](s []T, n int) []T {
	if cap(s) < n {
		return make([]T, n)
	}
	return s[:n]
}

// zeroed gives s the length n, all zero.
func zeroed[T any](s []T, n int) []T {
	s = resize(s, n)
	clear(s)
	return s
}
