package plate_test

import (
	"fmt"

	"manway.example/manway/internal/plate"
)

// A simply supported slab, twice as long as wide, under 10 kPa. Timoshenko and
// Woinowsky-Krieger, Table 8, b/a = 2: the moment is 0.1017 q a2 at the centre for
// nu = 0.3.
func ExampleStudy() {
	var st plate.Study
	slab := plate.Slab{Length: 3, Width: 1.5, Thickness: 0.1, E: 25e9, Nu: 0.3}
	if err := st.Run(&slab, [][]plate.Load{{plate.Uniform{Pressure: 10e3}}}); err != nil {
		fmt.Println(err)
		return
	}
	c := &st.Cases[0]
	m := c.Governing()
	fmt.Printf("%.4f q a2 at %.2f, %.2f\n", m.Value/(10e3*1.5*1.5), m.At.X, m.At.Y)
	fmt.Printf("load %.0f N, reaction %.0f N, settled %v\n", c.Load, c.Reaction, st.Converged)
	// Output:
	// 0.1017 q a2 at 1.50, 0.75
	// load 45000 N, reaction 45000 N, settled true
}

// Where a wheel moves, an influence surface gives a moment for every place of it
// without solving again.
func ExampleSolver_Influence() {
	var s plate.Solver
	slab := plate.Slab{Length: 3, Width: 1.5, Thickness: 0.1, E: 25e9, Nu: 0.2}
	if err := s.Factor(&slab, plate.Mesh{}); err != nil {
		fmt.Println(err)
		return
	}
	var in plate.Influence
	if err := s.Influence(&in, plate.MomentY, plate.Point{X: 1.5, Y: 0.75}); err != nil {
		fmt.Println(err)
		return
	}
	var f plate.Field
	for _, x := range []float64{0.5, 1, 1.5} {
		wheel := []plate.Load{plate.Patch{X: x, Y: 0.75, Length: 0.5, Width: 0.25, Force: 20e3}}
		m, err := in.Under(wheel)
		if err == nil {
			err = s.Solve(&f, wheel)
		}
		v, _ := f.At(1.5, 0.75)
		fmt.Printf("wheel at %.1f m: %.6f of what solving gives %v\n", x, m/v.M.Y, err)
	}
	// Output:
	// wheel at 0.5 m: 1.000000 of what solving gives <nil>
	// wheel at 1.0 m: 1.000000 of what solving gives <nil>
	// wheel at 1.5 m: 1.000000 of what solving gives <nil>
}
