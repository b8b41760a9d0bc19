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

// factorPanel turns the m by e panel p (row by row, m >= e: the lower triangle of
// the e eliminated unknowns with the m-e rows below it) into its Cholesky
// factor. It reports false when a pivot is not positive.
func factorPanel(p []float64, m, e int) bool {
	for j := 0; j < e; j += blockSize {
		nb := min(blockSize, e-j)
		for i := j; i < m && j > 0; i += blockSize {
			kernel.Dgemm(blas.NoTrans, blas.Trans, min(blockSize, m-i), nb, j,
				-1, p[i*e:], e, p[j*e:], e, 1, p[i*e+j:], e)
		}
		if !lkernel.Dpotf2(blas.Lower, nb, p[j*e+j:], e) {
			return false
		}
		if i := j + nb; i < m {
			kernel.Dtrsm(blas.Right, blas.Lower, blas.Trans, blas.NonUnit, m-i, nb,
				1, p[j*e+j:], e, p[i*e+j:], e)
		}
	}
	return true
}

// subtractOuter subtracts l l' (l is r by e) from the lower triangle of the r by
// r matrix u.
func subtractOuter(u []float64, r int, l []float64, e int) {
	if e == 0 {
		return
	}
	for i := 0; i < r; i += blockSize {
		mi := min(blockSize, r-i)
		for j := 0; j < i; j += blockSize {
			kernel.Dgemm(blas.NoTrans, blas.Trans, mi, min(blockSize, i-j), e,
				-1, l[i*e:], e, l[j*e:], e, 1, u[i*r+j:], r)
		}
		kernel.Dsyrk(blas.Lower, blas.NoTrans, mi, e, -1, l[i*e:], e, 1, u[i*r+i:], r)
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
