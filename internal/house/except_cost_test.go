package house_test

var costExceptions = exceptions{
	source: {
		"cost.ReadPriceBook": "reads a table",
	},
	figure: {
		"cost.Estimate.Simulate": "no figure found: worked simulations are those of programs; its mean and deviation are held against the closed forms, which have rows",
		"cost.Neglect.Options":   "no figure found: sums on neglected systems are of their writers' prices; it only words two options for Compare, which has rows",
		"cost.PumpOut.Lines":     "no figure found: prices of pump-outs are trade offers, no public body prints base and adders worked out",
		"cost.Truck.Lines":       "no figure found: no public body prints the hours of a pump-out worked out",
	},
}
