package hydraulics

import (
	"math"
	"slices"

	"manway.example/manway"
	"manway.example/manway/tank"
)

// basin is a compartment as the routing keeps it: its volume, and a table of
// volumes at even levels to read the level from.
type basin struct {
	volume, level float64
	area          float64 // dV/dh of the piece of the table in which it stands
	table         [levelPieces + 1]float64
	rise          float64 // between two rows
	at            int     // piece in which it stood last
}

const levelPieces = 256

func newBasin(c *tank.Compartment, start, top float64) *basin {
	b := &basin{rise: top / levelPieces}
	for i := range b.table {
		v, _ := c.Volume(manway.Length(min(float64(i)*b.rise, top)))
		b.table[i] = float64(v)
	}
	v, _ := c.Volume(manway.Length(start))
	b.volume = float64(v)
	b.settle()
	return b
}

// settle finds the level of the volume.
func (b *basin) settle() {
	for b.at > 0 && b.volume < b.table[b.at] {
		b.at--
	}
	for b.at < levelPieces-1 && b.volume > b.table[b.at+1] {
		b.at++
	}
	in := b.table[b.at+1] - b.table[b.at]
	b.area = in / b.rise
	b.level = b.rise * float64(b.at)
	if in > 0 {
		b.level += b.rise * min(max((b.volume-b.table[b.at])/in, 0), 1)
	}
}

// rating is the outflow over even heads above the invert.
type rating struct {
	flow [ratingPieces + 1]float64
	rise float64
}

const ratingPieces = 256

// newRating tabulates the outflow up to a head: pairs of head and flow, along
// the critical angle until the outlet is drowned and then by even shares of
// flow, read off at even heads.
func newRating(o Outlet, most float64) *rating {
	r := &rating{rise: most / ratingPieces}
	if o.Open == 0 {
		return r
	}
	d := float64(o.Diameter)
	unit := math.Sqrt(g * d * d * d * d * d)
	var theta, head0, flow0, clear float64
	for row := 1; row <= ratingPieces; {
		q := flow0 * 1.02
		if clear < 1.2*d {
			theta += 0.015
			q = unit * criticalFlow(theta)
			clear = o.clearHead(theta, q)
		} else {
			clear = o.drownedHead(q)
		}
		head := clear + o.rise(q)
		for row <= ratingPieces && float64(row)*r.rise <= head {
			t := (float64(row)*r.rise - head0) / (head - head0)
			r.flow[row] = flow0 + t*(q-flow0)
			row++
		}
		head0, flow0 = head, q
	}
	return r
}

// at is the flow at a head and its slope.
func (r *rating) at(head float64) (flow, slope float64) {
	if head <= 0 {
		return 0, r.flow[1] / r.rise
	}
	i := min(int(head/r.rise), ratingPieces-1)
	slope = (r.flow[i+1] - r.flow[i]) / r.rise
	return r.flow[i] + slope*(head-r.rise*float64(i)), slope
}

// routeRun is one routing under way.
type routeRun struct {
	in            Route
	basins        []*basin
	out           *rating
	dt, spill     float64
	roof          float64
	steps, total  int
	every         int
	surges        []Surge // by time of start
	first         int     // the earliest that is not over
	began         float64 // volume at the start
	sumIn, sumOut float64
	spilled       float64
	done          Routed
}

func newRun(r Route) *routeRun {
	if r.Over == 0 {
		r.Over = manway.Day
	}
	if r.Step == 0 {
		r.Step = 15 * manway.Second
	}
	run := &routeRun{in: r, roof: math.Inf(1), surges: slices.Clone(r.Surges)}
	slices.SortStableFunc(run.surges, func(a, b Surge) int {
		switch {
		case a.At < b.At:
			return -1
		case a.At > b.At:
			return 1
		}
		return 0
	})
	run.total = int(math.Ceil(float64(r.Over)/float64(r.Step) - 1e-9))
	run.dt = float64(r.Over) / float64(run.total)
	run.every = (run.total + 1439) / 1440
	start := float64(r.OutletInvert)
	if r.Start.Taken {
		start = float64(r.Start.Length)
	}
	for _, c := range r.Compartments {
		height := float64(Compartment{Shape: c}.height())
		run.roof = min(run.roof, height)
		run.basins = append(run.basins, newBasin(c, start, height))
		run.began += run.basins[len(run.basins)-1].volume
	}
	run.spill = run.roof
	if r.Spill.Taken {
		run.spill = float64(r.Spill.Length)
	}
	run.out = newRating(r.Outlet, run.roof-float64(r.OutletInvert))
	run.done.Series = make([]Instant, 0, run.total/run.every+2)
	run.done.Compartments = len(run.basins)
	run.note(0, 0)
	return run
}

// inflow is the volume that comes in between two times.
func (run *routeRun) inflow(from, to float64) float64 {
	v := float64(run.in.Base) * (to - from)
	for i := run.first; i < len(run.surges); i++ {
		s := run.surges[i]
		if float64(s.At) >= to {
			break
		}
		a, b := max(float64(s.At), from), min(float64(s.At+s.Over), to)
		if b > a {
			v += float64(s.Volume) * (b - a) / float64(s.Over)
		} else if i == run.first {
			run.first++
		}
	}
	return v
}

// step moves the levels on by one step.
func (run *routeRun) step() {
	dt, last := run.dt, run.basins[len(run.basins)-1]
	t := float64(run.steps) * dt
	in := run.inflow(t, t+dt)
	run.sumIn += in
	run.basins[0].volume += in
	run.basins[0].level += in / run.basins[0].area
	for i, s := range run.in.Slots {
		exchange(run.basins[i], run.basins[i+1], s, dt)
	}
	head := last.level - float64(run.in.OutletInvert)
	q, slope := run.out.at(head)
	out := q * dt / (1 + dt*slope/last.area)
	out = min(max(out, 0), max(head, 0)*last.area)
	last.volume -= out
	run.sumOut += out
	for _, b := range run.basins {
		b.settle()
		if over := b.level - run.spill; over >= 0 {
			full := run.volumeAt(b, run.spill)
			if b.volume > full {
				run.spilled += b.volume - full
				b.volume = full
				b.settle()
			}
		}
	}
	run.steps++
	run.note(in/dt, out/dt)
}

// volumeAt is the volume of a basin at a level.
func (run *routeRun) volumeAt(b *basin, level float64) float64 {
	i := min(int(level/b.rise), levelPieces-1)
	return b.table[i] + (b.table[i+1]-b.table[i])*(level/b.rise-float64(i))
}

// exchange moves through a slot what brings the levels towards each other: with
// k = 0.61 A √(2g) and c = dt (1/A1 + 1/A2), Q² = k² (Δh - c Q).
func exchange(a, b *basin, s Slot, dt float64) {
	invert := float64(s.Invert)
	d := max(a.level, invert) - max(b.level, invert)
	if d < 0 {
		a, b, d = b, a, -d
	}
	k2 := orificeCoefficient * float64(s.Area) * orificeCoefficient * float64(s.Area) * 2 * g
	c := dt * (1/a.area + 1/b.area)
	if b.level < invert { // it falls free: the lower level does not follow
		c = dt / a.area
	}
	q := 2 * d / (c + math.Sqrt(c*c+4*d/k2))
	if d == 0 {
		q = 0
	}
	v := q * dt
	a.volume -= v
	b.volume += v
	a.level -= v / a.area
	b.level += v / b.area
}

// note keeps what is shown of the state.
func (run *routeRun) note(in, out float64) {
	t := manway.Duration(float64(run.steps) * run.dt)
	level := run.basins[0].level
	d := &run.done
	if l := manway.Length(level); l > d.Peak {
		d.Peak, d.PeakAt = l, t
	}
	mark := func(s *Span, at float64) {
		if !s.Known && level >= at*(1-1e-12) {
			*s = Span{true, t}
		}
	}
	if run.in.InletInvert.Taken {
		mark(&d.InletAt, float64(run.in.InletInvert.Length))
	}
	mark(&d.RoofAt, run.roof)
	mark(&d.SpillAt, run.spill)
	if run.steps%run.every != 0 && run.steps != run.total {
		return
	}
	now := Instant{Time: t, Inflow: manway.Flow(in), Out: manway.Flow(out)}
	for i, b := range run.basins {
		now.Levels[i] = manway.Length(b.level)
	}
	d.Series = append(d.Series, now)
}

// result closes the balance.
func (run *routeRun) result() Routed {
	end := 0.0
	for _, b := range run.basins {
		end += b.volume
	}
	d := run.done
	d.In, d.Out, d.Spilled = manway.Volume(run.sumIn), manway.Volume(run.sumOut), manway.Volume(run.spilled)
	d.Stored = manway.Volume(end - run.began)
	d.Imbalance = math.Abs(run.sumIn-run.sumOut-run.spilled-(end-run.began)) / max(run.sumIn+run.began, 1e-12)
	d.Steps = run.steps
	d.Cautions = manway.EstimateOnly | manway.NeverEnter
	return d
}
