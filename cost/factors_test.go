package cost_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"manway.example/manway/cost"
)

func close12(a, b float64) bool {
	return math.Abs(a-b) <= 1e-12*math.Max(math.Abs(a), math.Abs(b))+1e-15
}

// Property (inverse): what one factor does another undoes, whatever the rate.
func TestFactorIdentities(t *testing.T) {
	for _, i := range []cost.Rate{-0.3, -0.01, -1e-9, 0, 1e-12, 1e-7, 9.9e-5, 1e-4, 0.03, 0.1, 0.35, 2, 10} {
		for _, n := range []int{1, 2, 7, 40, 200} {
			f := must(i.Factors(n))(t)
			for name, pair := range map[string][2]float64{
				"A/P = A/F + i":    {f.CapitalRecovery, f.SinkingFund + float64(i)},
				"P/F F/P = 1":      {f.SinglePresent * f.SingleCompound, 1},
				"F/A = P/A F/P":    {f.SeriesCompound, f.SeriesPresent * f.SingleCompound},
				"P/G = A/G P/A":    {f.GradientPresent, f.GradientAnnual * f.SeriesPresent},
				"P/A = (1-P/F)/i*": {f.SeriesPresent * float64(i), 1 - f.SinglePresent},
			} {
				if !(math.Abs(pair[0]-pair[1]) <= 1e-11*math.Max(1, math.Abs(pair[1]))) {
					t.Errorf("%s at %v, %d years: %v and %v", name, i, n, pair[0], pair[1])
				}
			}
			sum, gradient := 0.0, 0.0
			for k := n; k >= 1; k-- {
				v := math.Pow(1+float64(i), -float64(k))
				sum += v
				gradient += float64(k-1) * v
			}
			if !(math.Abs(f.SeriesPresent-sum) <= 1e-10*sum) || !(math.Abs(f.GradientPresent-gradient) <= 1e-9*math.Max(gradient, 1e-9)) {
				t.Errorf("rate %v, %d years: P/A %v, sum %v; P/G %v, sum %v", i, n, f.SeriesPresent, sum, f.GradientPresent, gradient)
			}
		}
	}
}

// Property (continuous): at rate 0 the factors are counts, and nothing jumps on the
// way there.
func TestFactorsAtZero(t *testing.T) {
	f := must(cost.Rate(0).Factors(20))(t)
	if f.SeriesPresent != 20 || f.CapitalRecovery != 0.05 || f.SinkingFund != 0.05 || f.GradientAnnual != 9.5 || f.SinglePresent != 1 {
		t.Errorf("%+v", f)
	}
	near := must(cost.Rate(1e-13).Factors(20))(t)
	if !(math.Abs(near.SeriesPresent-20) <= 1e-10) || !(math.Abs(near.GradientAnnual-9.5) <= 1e-10) {
		t.Errorf("beside 0: %+v", near)
	}
}

// Property (two ways): UPV* is the plain series at d = e, and the sum it stands for elsewhere.
func TestEscalatingSeries(t *testing.T) {
	for _, c := range []struct {
		d, e  cost.Rate
		years int
	}{{0.03, 0.03, 15}, {0.03, 0.02, 15}, {0, 0.02, 5}, {0.1, -0.05, 30}, {0.02, 0.08, 50}} {
		want := 0.0
		for k := c.years; k >= 1; k-- {
			want += math.Pow((1+float64(c.e))/(1+float64(c.d)), float64(k))
		}
		if got := must(c.d.Escalating(c.e, c.years))(t); !(math.Abs(got-want) <= 1e-11*want) {
			t.Errorf("%+v: %v, sum %v", c, got, want)
		}
	}
	if got := must(cost.Rate(0.03).Escalating(0.03, 15))(t); got != 15 {
		t.Errorf("at d = e: %v, want 15", got)
	}
}

func TestRealAndNominalRates(t *testing.T) {
	for _, r := range []cost.Rate{-0.02, 0, 0.04, 0.3} {
		for _, f := range []cost.Rate{-0.01, 0, 0.035, 0.2} {
			if back := r.Nominal(f).Real(f); !(math.Abs(float64(back-r)) <= 1e-15) {
				t.Errorf("%v under %v comes back as %v", r, f, back)
			}
		}
	}
}

// Property (converges): a longer and longer series comes to the perpetuity.
func TestPerpetuity(t *testing.T) {
	p := must(cost.Rate(0.06).Perpetuity(1))(t)
	long := must(cost.Rate(0.06).Factors(200))(t).SeriesPresent
	if !close12(p, 1/0.06) || p < long || p-long > 0.001 {
		t.Errorf("for ever %v, 200 years %v", p, long)
	}
}

func TestRateText(t *testing.T) {
	for text, want := range map[string]cost.Rate{"3 %": 0.03, "3%": 0.03, " -0.5 % ": -0.005, "7.64 %": 0.0764} {
		var r cost.Rate
		if err := r.UnmarshalText([]byte(text)); err != nil || !close12(float64(r), float64(want)) {
			t.Errorf("%q: %v, %v", text, r, err)
		}
		back, _ := r.MarshalText()
		var again cost.Rate
		if err := again.UnmarshalText(back); err != nil || again != r {
			t.Errorf("%q comes back as %v, %v", back, again, err)
		}
	}
	random := rand.New(rand.NewPCG(3, 4))
	for range 10_000 {
		r := cost.Rate(random.NormFloat64() * math.Pow(10, float64(random.IntN(8)-6)))
		text := must(r.MarshalText())(t)
		var back cost.Rate
		if err := back.UnmarshalText(text); err != nil || back != r {
			t.Fatalf("%v is %s is %v, %v", float64(r), text, float64(back), err)
		}
	}
	if _, err := cost.Rate(math.NaN()).MarshalText(); err == nil {
		t.Error("NaN was written")
	}
	for _, text := range []string{"3", "0.03", "", "%", "NaN %", "Inf %", "1e999 %", "--3 %", "0x3 %", "three %"} {
		var r cost.Rate
		if err := r.UnmarshalText([]byte(text)); err == nil {
			t.Errorf("%q was read as %v", text, r)
		}
	}
}
