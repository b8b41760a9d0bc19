package plate

import "math"

// Study solves load cases of a slab on finer and finer meshes until the governing
// moment settles. The zero value is ready; like a Solver it keeps its memory and
// serves one goroutine.
type Study struct {
	Solver
	// Tolerance is the estimated relative error of the governing moment that
	// ends the refinement; 0 means 1 percent.
	Tolerance float64
	// MostUnknowns stops the refinement before a mesh of more; 0 means 30,000.
	MostUnknowns int

	Cases    []Case
	Meshes   []MeshStep
	Governs  int     // the case with the largest moment
	Error    float64 // estimated relative error of its governing moment
	ErrorW   float64 // estimated relative error of its largest deflection
	Residual float64 // the largest of all cases
	// Converged says that Error is within the tolerance. When it is not, the
	// figures are those of the finest mesh and are not to be relied on.
	Converged bool

	near  []Rect
	seats []seating // of the mesh before
}

// Case is the answer to one load case on the finest mesh.
type Case struct {
	Field
	Extremes
}

// MeshStep is what one mesh gave.
type MeshStep struct {
	CellsX, CellsY, Unknowns int
	Moment                   float64 // governing principal moment of all cases, N
	W                        float64 // largest deflection of all cases by size, m
}

// The scales of the meshes: by each step the number of unknowns about doubles.
var scales = [...]float64{1.4, 1, 0.7, 0.5, 0.35, 0.25, 0.175}

// mostCases is how many load cases one study has at most.
const mostCases = 50

// Run solves up to 50 cases on three meshes, and on finer ones until the last
// three agree. Errors are those of Factor and Solve.
func (st *Study) Run(slab *Slab, cases [][]Load) error {
	st.Converged = false
	st.Meshes = st.Meshes[:0]
	if err := slab.Check(); err != nil {
		return err
	}
	var faults Faults
	if faults.atMost("Cases", len(cases), mostCases); len(faults) > 0 {
		return faults
	}
	for len(st.Cases) < len(cases) {
		st.Cases = append(st.Cases, Case{})
	}
	st.Cases = st.Cases[:len(cases)]
	st.near = st.near[:0]
	for _, loads := range cases {
		if err := slab.CheckLoads(loads); err != nil {
			return err
		}
		for _, l := range loads {
			if p, ok := l.(Patch); ok {
				st.near = append(st.near, Rect{p.X - p.Length/2, p.Y - p.Width/2, p.X + p.Length/2, p.Y + p.Width/2})
			}
		}
	}
	tolerance, most := st.Tolerance, st.MostUnknowns
	if tolerance == 0 {
		tolerance = 0.01
	}
	if most == 0 {
		most = 30_000
	}
	for k, scale := range scales {
		if k >= 3 && 2*st.Unknowns() > most {
			break
		}
		if err := st.step(slab, cases, scale); err != nil {
			return err
		}
		if k < 2 {
			continue
		}
		m := st.Meshes[k-2:]
		st.Error = settled(m[0].Moment, m[1].Moment, m[2].Moment)
		st.ErrorW = settled(m[0].W, m[1].W, m[2].W)
		if st.Converged = st.Error <= tolerance; st.Converged {
			break
		}
	}
	return st.finishAll()
}

// finishAll finds the support forces on the finest mesh.
func (st *Study) finishAll() error {
	st.Residual = 0
	for k := range st.Cases {
		if err := st.Cases[k].Balance(); err != nil {
			return err
		}
		st.Residual = math.Max(st.Residual, st.Cases[k].Residual)
	}
	return nil
}

// step solves every case on one mesh.
func (st *Study) step(slab *Slab, cases [][]Load, scale float64) error {
	if err := st.Factor(slab, Mesh{Scale: scale, Near: st.near}); err != nil {
		return err
	}
	m := MeshStep{Unknowns: st.Unknowns()}
	m.CellsX, m.CellsY = st.Cells()
	for k, loads := range cases {
		c := &st.Cases[k]
		var from []seating
		if len(st.Meshes) > 0 {
			st.seats = append(st.seats[:0], c.seats...)
			from = st.seats
		}
		if err := st.deflect(&c.Field, Scaled{}, loads, from); err != nil {
			return err
		}
		c.Extremes = c.Field.Extremes()
		if g := c.Governing().Value; math.Abs(g) > math.Abs(m.Moment) {
			m.Moment, st.Governs = g, k
		}
		m.W = math.Max(m.W, math.Max(math.Abs(c.W.Value), math.Abs(c.Rise.Value)))
	}
	st.Meshes = append(st.Meshes, m)
	return nil
}

// settled estimates the relative error of c from a, b, c on three meshes. If the
// differences shrink in the ratio r, what is left after c is r/(1-r) times the
// last difference. That factor is taken no smaller than 1, and no larger than 2,
// which it is when the differences do not shrink.
func settled(a, b, c float64) float64 {
	first, last := math.Abs(b-a), math.Abs(c-b)
	if first == 0 && last == 0 {
		return 0
	}
	factor := 2.0
	if r := last / first; r < 2.0/3 {
		factor = math.Max(1, r/(1-r))
	}
	if c == 0 {
		return math.Inf(1)
	}
	return factor * last / math.Abs(c)
}
